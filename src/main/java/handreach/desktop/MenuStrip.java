package handreach.desktop;

import handreach.plan.PlanText;
import handreach.units.Lengths;
import java.nio.file.Path;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.KeyCombination;

/** Everything that can be done to the plan and the window, by mouse and by key. */
final class MenuStrip extends MenuBar {
    private final DeskWindow window;

    MenuStrip(DeskWindow window) {
        this.window = window;
        getMenus()
                .addAll(
                        plan(),
                        edit(),
                        window.handOver(),
                        look(),
                        new HelpMenu(window::showHelp, window::showFirstSteps));
    }

    private Menu plan() {
        Menu menu = new Menu("_Plan");
        Menu recent = new Menu("Opened lately");
        menu.setOnShowing(shown -> {
            recent.getItems().clear();
            for (Path plan : RecentPlans.list())
                recent.getItems()
                        .add(item(plan.toString(), null, () -> window.verbs().open(plan)));
            recent.setDisable(recent.getItems().isEmpty());
        });
        menu.getItems()
                .addAll(
                        item("New plan\u2026", "Shortcut+N", window::showNewPlan),
                        item("Open\u2026", "Shortcut+O", () -> window.verbs().openAsked()),
                        recent,
                        item("Save", "Shortcut+S", () -> {
                            if (window.hasPlan()) window.verbs().save();
                        }),
                        item("Save under another name\u2026", "Shortcut+Shift+S", () -> {
                            if (window.hasPlan()) window.verbs().saveAsAsked();
                        }),
                        new SeparatorMenuItem(),
                        item(
                                "Bring in\u2026 (GPX, GeoJSON, bench CSV, .s1p)",
                                "Shortcut+I",
                                () -> window.verbs().filesAsked().ifPresent(window.drop()::take)),
                        item(
                                "Channel, radios, antennas, loadouts",
                                "Shortcut+E",
                                () -> window.showEquipment(Entry.of(EntryKind.CHANNEL.section()))),
                        item("The plan as text", "Shortcut+T", window::showPlanText),
                        item("Path between two positions", "Shortcut+P", window::showPath),
                        item("Bench evidence", "Shortcut+B", () -> {
                            if (window.hasPlan()) window.showBench();
                        }),
                        new SeparatorMenuItem(),
                        item(
                                "Leave Handreach",
                                "Shortcut+Q",
                                () -> window.verbs().leaveAsked()));
        return menu;
    }

    private Menu edit() {
        Menu menu = new Menu("_Edit");
        MenuItem undo = item("Undo", "Shortcut+Z", () -> window.session().undo());
        MenuItem redo = item("Redo", "Shortcut+Shift+Z", () -> window.session().redo());
        undo.textProperty()
                .bind(window.session()
                        .undoable()
                        .map(step -> step.map(what -> "Undo: " + what).orElse("Undo")));
        redo.textProperty()
                .bind(window.session()
                        .redoable()
                        .map(step -> step.map(what -> "Redo: " + what).orElse("Redo")));
        undo.disableProperty().bind(window.session().undoable().map(java.util.Optional::isEmpty));
        redo.disableProperty().bind(window.session().redoable().map(java.util.Optional::isEmpty));
        menu.getItems().addAll(undo, redo);
        return menu;
    }

    private Menu look() {
        Menu menu = new Menu("_Window");
        CheckMenuItem night = new CheckMenuItem("Dark, for the night");
        night.setAccelerator(KeyCombination.valueOf("Shortcut+D"));
        night.selectedProperty()
                .addListener((chosen, was, is) -> window.map().palette().set(is ? Palette.NIGHT : Palette.DAY));
        night.setSelected(window.map().palette().get() == Palette.NIGHT);
        window.map().palette().addListener((palette, was, is) -> night.setSelected(is == Palette.NIGHT));
        CheckMenuItem folded = new CheckMenuItem("Fold the questions away (F9)");
        folded.selectedProperty().bindBidirectional(window.side().folded());
        CheckMenuItem miles = new CheckMenuItem("Miles and feet");
        miles.setOnAction(chosen -> {
            if (!window.hasPlan()) return;
            String units = PlanText.quoted(miles.isSelected() ? "imperial" : "metric");
            window.session().edit("units", plan -> PlanText.withTopValue(plan, "units", units));
        });
        menu.setOnShowing(shown -> miles.setSelected(window.session().scene().get() != null
                && window.session().scene().get().plan().header().lengths() == Lengths.IMPERIAL));
        Backdrop backdrop = window.map().backdrop();
        MenuItem noPicture = item("Take the map picture away", null, backdrop::takePictureAway);
        noPicture.disableProperty().bind(backdrop.picture().map(java.util.Optional::isEmpty));
        MenuItem noNames = item("Take the names away", null, backdrop::takeNamesAway);
        noNames.disableProperty().bind(backdrop.names().map(java.util.Optional::isEmpty));
        MenuItem noAtlas =
                item("Take the atlas away", null, () -> window.session().takeAtlasAway());
        noAtlas.disableProperty().bind(window.session().atlas().map(java.util.Optional::isEmpty));
        menu.getItems()
                .addAll(
                        night,
                        miles,
                        new SeparatorMenuItem(),
                        item("Larger words", "Shortcut+PLUS", window.looks()::larger),
                        item("Smaller words", "Shortcut+MINUS", window.looks()::smaller),
                        item("Usual words", "Shortcut+DIGIT0", window.looks()::usual),
                        new SeparatorMenuItem(),
                        folded,
                        new SeparatorMenuItem(),
                        item(
                                "Lay a map picture under the reach\u2026 (GeoTIFF, MBTiles)",
                                null,
                                () -> window.verbs().pictureAsked().ifPresent(backdrop::lay)),
                        noPicture,
                        item(
                                "Names on the map\u2026 (GPX, GeoJSON)",
                                null,
                                () -> window.verbs().namesAsked().ifPresent(backdrop::name)),
                        noNames,
                        item("Lay an atlas over the map\u2026 (folder)", null, () -> {
                            if (window.hasPlan()) window.verbs().atlasAsked().ifPresent(window.session()::layAtlas);
                        }),
                        noAtlas,
                        new SeparatorMenuItem(),
                        item("Go to a place\u2026", "Shortcut+G", window::goTo));
        return menu;
    }

    static MenuItem item(String words, String keys, Runnable verb) {
        MenuItem item = new MenuItem(words);
        if (keys != null) item.setAccelerator(KeyCombination.valueOf(keys));
        item.setOnAction(chosen -> verb.run());
        return item;
    }
}
