package handreach.desktop;

import handreach.geodesy.Place;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.plan.Places;
import handreach.study.Scene;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Goes to a place that is typed, in any form or by the name of a position, and says what speaks against it. */
final class GoToPane extends VBox {
    private final Session session;
    private final MapView map;
    private final MapTools tools;
    private final PlaceVerbs places;
    private final Worker.LatestOnly looking;
    private final TextField typed = new TextField();
    private final Label doubt = Labels.line("", "plain");
    private final Button put = new Button("Put a position there");
    private final Button copy = new Button("Copy it");
    private Optional<Position> found = Optional.empty();

    GoToPane(Session session, MapView map, MapTools tools) {
        super(6);
        this.session = session;
        this.map = map;
        this.tools = tools;
        this.places = new PlaceVerbs(session);
        this.looking = session.worker().latestOnly();
        getStyleClass().add("layer-bar");
        setId("go-to");
        setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        typed.setId("go-to-place");
        typed.setPrefColumnCount(22);
        typed.setAccessibleText("Place to go to");
        typed.setTooltip(
                new Tooltip("Degrees, degrees and minutes, UTM or MGRS, or the name of a position; Enter goes there"));
        typed.setOnAction(entered -> go());
        put.setId("go-to-put");
        put.setOnAction(pressed -> found.ifPresent(places::add));
        copy.setId("go-to-copy");
        copy.setOnAction(pressed -> found.ifPresent(this::copy));
        Button leave = Labels.link("Leave", this::leave);
        Label words = new Label("Go to");
        words.setLabelFor(typed);
        FlowPane line = new FlowPane(8, 6, words, typed, put, copy, leave);
        line.setAlignment(Pos.CENTER_LEFT);
        line.setPrefWrapLength(560);
        doubt.setId("go-to-doubt");
        doubt.setMaxWidth(560);
        getChildren().addAll(line, doubt);
        setOnKeyPressed(key -> {
            if (key.getCode() != KeyCode.ESCAPE) return;
            leave();
            key.consume();
        });
        show(Optional.empty(), "");
        setVisible(false);
        setManaged(false);
    }

    void ask() {
        if (session.scene().get() == null) return;
        setVisible(true);
        setManaged(true);
        typed.requestFocus();
        typed.selectAll();
    }

    private void leave() {
        setVisible(false);
        setManaged(false);
        tools.looked().set(Optional.empty());
        map.requestFocus();
    }

    private void show(Optional<Position> at, String words) {
        found = at;
        put.setDisable(at.isEmpty());
        copy.setDisable(at.isEmpty());
        doubt.setText(words);
        doubt.setVisible(!words.isEmpty());
        doubt.setManaged(!words.isEmpty());
    }

    private void go() {
        Scene scene = session.scene().get();
        String words = typed.getText().strip();
        if (scene == null || words.isEmpty()) return;
        try {
            Position at = named(scene, words).orElseGet(() -> Place.parse("The place", words));
            String name = scene.plan().header().placeForm().format(at);
            show(Optional.of(at), "");
            tools.looked().set(Optional.of(new MapTools.Looked(at, name)));
            map.centreOn(at);
            looking.ask(
                    progress -> PlaceDoubt.of(scene, name, at),
                    wrong -> wrong.ifPresent(sentence -> show(Optional.of(at), sentence)),
                    session::tell);
        } catch (InputFault wrong) {
            looking.drop();
            show(Optional.empty(), wrong.faults().get(0).message());
        }
    }

    private static Optional<Position> named(Scene scene, String words) {
        return scene.plan().places().positions().stream()
                .filter(entry -> entry.name().equalsIgnoreCase(words))
                .map(Places.PositionEntry::at)
                .findFirst();
    }

    private void copy(Position at) {
        copied(session, at);
    }

    /** Puts a place, in the form the plan writes places, where other programs can take it up. */
    static void copied(Session session, Position at) {
        ClipboardContent content = new ClipboardContent();
        content.putString(session.scene().get().plan().header().placeForm().format(at));
        Clipboard.getSystemClipboard().setContent(content);
    }
}
