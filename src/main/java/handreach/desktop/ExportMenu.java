package handreach.desktop;

import handreach.report.card.CardSize;
import handreach.report.file.AnswerFile;
import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javafx.scene.control.Menu;
import javafx.scene.control.SeparatorMenuItem;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Stage;

/** The menu of all that can be handed over; asks where to, and leaves the making to {@link ExportVerbs}. */
final class ExportMenu extends Menu {
    private final Stage stage;
    private final Session session;
    private final BooleanSupplier hasPlan;

    /** {@code hasPlan} says how to begin where there is nothing to hand over. */
    ExportMenu(Stage stage, Session session, MapPicture picture, BooleanSupplier hasPlan) {
        super("_Hand over");
        this.stage = stage;
        this.session = session;
        this.hasPlan = hasPlan;
        ExportVerbs verbs = new ExportVerbs(session);
        getItems()
                .addAll(
                        MenuStrip.item("Field card, A4\u2026", null, () -> card(verbs, CardSize.A4, false)),
                        MenuStrip.item("Field card, Letter\u2026", null, () -> card(verbs, CardSize.LETTER, false)),
                        MenuStrip.item("Field card to fold, A4\u2026", null, () -> card(verbs, CardSize.A4, true)),
                        MenuStrip.item(
                                "Field card to fold, Letter\u2026", null, () -> card(verbs, CardSize.LETTER, true)),
                        new SeparatorMenuItem(),
                        MenuStrip.item("Report\u2026", "Shortcut+R", () -> file("report.html", verbs::report)),
                        MenuStrip.item("Bench report\u2026", null, () -> file("bench.html", verbs::benchReport)),
                        new SeparatorMenuItem(),
                        MenuStrip.item(
                                "Map files of the reach (GeoTIFF, GeoJSON, KMZ, PNG)\u2026",
                                null,
                                () -> folder(verbs::mapFiles)),
                        MenuStrip.item(
                                "Relay files (HTML, text, JSON, GPX, GeoJSON)\u2026",
                                null,
                                () -> folder(verbs::relayFiles)),
                        MenuStrip.item("Places (GPX)\u2026", null, () -> file("places.gpx", verbs::places)),
                        MenuStrip.item("Picture of the map (PNG)\u2026", null, () -> {
                            if (!hasPlan.getAsBoolean()) return;
                            BufferedImage taken = picture.take();
                            file("map.png", where -> verbs.picture(taken, where));
                        }),
                        MenuStrip.item("Map sheet, A4 (PDF)\u2026", null, () -> sheet(verbs, picture, CardSize.A4)),
                        MenuStrip.item(
                                "Map sheet, Letter (PDF)\u2026", null, () -> sheet(verbs, picture, CardSize.LETTER)),
                        MenuStrip.item("Print the map\u2026", "Shortcut+Shift+P", () -> {
                            if (hasPlan.getAsBoolean()) picture.print(stage);
                        }));
    }

    private void card(ExportVerbs verbs, CardSize paper, boolean isFold) {
        file(isFold ? "field-card-fold.pdf" : "field-card.pdf", where -> verbs.card(paper, isFold, where));
    }

    private void sheet(ExportVerbs verbs, MapPicture picture, CardSize paper) {
        if (!hasPlan.getAsBoolean()) return;
        AnswerFile.Content taken = picture.sheet(paper);
        file("map.pdf", where -> verbs.mapSheet(taken, where));
    }

    private void file(String name, Consumer<Path> then) {
        if (!hasPlan.getAsBoolean()) return;
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Hand over as");
        chooser.setInitialFileName(name);
        startFolder().ifPresent(chooser::setInitialDirectory);
        File file = chooser.showSaveDialog(stage);
        String ending = name.substring(name.lastIndexOf('.'));
        if (file != null) WindowVerbs.named(session, file.toPath(), ending).ifPresent(then);
    }

    private void folder(Consumer<Path> then) {
        if (!hasPlan.getAsBoolean()) return;
        DirectoryChooser chooser = new DirectoryChooser();
        chooser.setTitle("Into which folder");
        startFolder().ifPresent(chooser::setInitialDirectory);
        File folder = chooser.showDialog(stage);
        if (folder != null) then.accept(folder.toPath());
    }

    private Optional<File> startFolder() {
        File folder = session.scene().get().file().folder().toAbsolutePath().toFile();
        return folder.isDirectory() ? Optional.of(folder) : Optional.empty();
    }
}
