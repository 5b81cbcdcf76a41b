package handreach.desktop;

import handreach.geodesy.Position;
import handreach.walk.TrackPoint;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** A small sheet that asks what a file that was brought in should become. */
final class ImportPane extends ScrollPane {
    /** More waypoints than this nobody ticks one by one. */
    private static final int MOST_TICKED = 200;

    private final VBox column = new VBox(8);
    private final ImportFiles verbs;
    private final Label done = Labels.line("", "strong");

    private ImportPane(ImportFiles verbs) {
        this.verbs = verbs;
        setId("bring-in");
        setFitToWidth(true);
        getStyleClass().add("drawer-scroll");
        column.setPadding(new Insets(10, 16, 14, 16));
        done.setId("bring-in-done");
        setContent(column);
    }

    /** Waypoints and track of a GPX file. */
    static ImportPane of(ImportFiles verbs, ImportFiles.Gpx read, java.util.function.Function<Position, String> place) {
        ImportPane pane = new ImportPane(verbs);
        if (!read.track().waypoints().isEmpty())
            pane.askOfWaypoints(read.track().waypoints(), place);
        if (!read.track().points().isEmpty()) pane.askOfTrack(read);
        pane.column.getChildren().add(pane.done);
        return pane;
    }

    /** Polygons of a GeoJSON file. */
    static ImportPane of(ImportFiles verbs, Path areas) {
        ImportPane pane = new ImportPane(verbs);
        pane.column.getChildren().add(Labels.line("What do these polygons say?", "panel-head"));
        pane.offer(
                "bring-area", "The area of the plan", () -> verbs.key(areas, "bring in the area", "area", "polygon"));
        pane.offer("bring-sector", "People move within them", () -> verbs.sector(areas));
        pane.offer(
                "bring-cover",
                "What stands on the ground (each has a property \"cover\")",
                () -> verbs.key(areas, "bring in cover", "ground", "cover_areas"));
        pane.offer(
                "bring-inside",
                "A relay may stand only within them",
                () -> verbs.key(areas, "ground for relays", "relay", "inside"));
        pane.offer(
                "bring-outside",
                "No relay may stand within them",
                () -> verbs.key(areas, "no relay there", "relay", "outside"));
        pane.column.getChildren().add(pane.done);
        return pane;
    }

    /** A log of reports. */
    static ImportPane of(ImportFiles verbs, ImportFiles.Log log) {
        ImportPane pane = new ImportPane(verbs);
        pane.column.getChildren().add(Labels.line("Where were these reports made?", "panel-head"));
        for (Path track : log.tracks())
            pane.offer(
                    "bring-log-along-" + track.getFileName(),
                    "Along " + track.getFileName() + ", by their times",
                    () -> verbs.walk(Optional.of(track), log.file()));
        pane.offer("bring-log-alone", "Where the log itself says", () -> verbs.walk(Optional.empty(), log.file()));
        pane.column.getChildren().add(pane.done);
        return pane;
    }

    private void offer(String id, String words, Runnable verb) {
        Button button = new Button(words);
        button.setMnemonicParsing(false);
        button.setId(id);
        button.setOnAction(pressed -> {
            verb.run();
            done.textProperty()
                    .bind(verbs.lastEdit()
                            .map(step -> step.map(what -> "Last edit: " + what + ". Undo takes it back.")
                                    .orElse("")));
        });
        column.getChildren().add(button);
    }

    private void askOfWaypoints(List<TrackPoint> waypoints, java.util.function.Function<Position, String> place) {
        Map<CheckBox, TrackPoint> ticks = new LinkedHashMap<>();
        FlowPane boxes = new FlowPane(18, 5);
        for (TrackPoint point : waypoints.subList(0, Math.min(MOST_TICKED, waypoints.size()))) {
            String name = point.name().isBlank() ? "no name" : point.name();
            CheckBox box = new CheckBox(name + ", " + place.apply(point.at()));
            box.setMnemonicParsing(false);
            box.setSelected(waypoints.size() <= 12);
            ticks.put(box, point);
            boxes.getChildren().add(box);
        }
        int left = waypoints.size() - ticks.size();
        column.getChildren().add(Labels.line("Which waypoints become positions?", "panel-head"));
        column.getChildren().add(boxes);
        if (left > 0)
            column.getChildren()
                    .add(Labels.line(left + " more waypoints are not shown: a plan holds fewer people.", "quiet"));
        offer("bring-positions", "Put the ticked ones on the map", () -> {
            List<TrackPoint> chosen = new ArrayList<>();
            ticks.forEach((box, point) -> {
                if (box.isSelected()) chosen.add(point);
            });
            if (!chosen.isEmpty()) verbs.positions(chosen);
        });
    }

    private void askOfTrack(ImportFiles.Gpx read) {
        column.getChildren()
                .add(Labels.line("What is the track, " + read.track().points().size() + " points?", "panel-head"));
        offer("bring-route", "A route that people move along", () -> verbs.route(read.file()));
        Map<String, Path> logs = new LinkedHashMap<>();
        for (Path log : read.logs()) logs.putIfAbsent(log.getFileName().toString(), log);
        if (logs.isEmpty()) {
            column.getChildren()
                    .add(Labels.line(
                            "To hold it against the prediction as a walk, the log of its reports (CSV) must stand beside it.",
                            "quiet"));
            return;
        }
        ComboBox<String> log = new ComboBox<>();
        log.setId("bring-log");
        log.getItems().setAll(logs.keySet());
        log.setValue(log.getItems().stream()
                .filter(name -> name.contains("report"))
                .findFirst()
                .orElse(log.getItems().get(0)));
        offer(
                "bring-walk",
                "A walk that was made, with the reports below",
                () -> verbs.walk(Optional.of(read.file()), logs.get(log.getValue())));
        Label reports = new Label("reports");
        reports.setLabelFor(log);
        Node line = new HBox(8, reports, log);
        ((HBox) line).setAlignment(Pos.CENTER_LEFT);
        column.getChildren().add(line);
    }
}
