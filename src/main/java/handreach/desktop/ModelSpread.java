package handreach.desktop;

import handreach.input.InputFault;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.LossPart;
import handreach.propagation.PathLoss;
import handreach.reach.Progress;
import handreach.report.ModelReading;
import handreach.report.figure.Axis;
import handreach.report.page.Sheet;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Loss of one path by parts, and what every other model says of it when asked. */
final class ModelSpread extends VBox {
    private final Session session;
    private final Button compare = new Button("Compare all models");
    private final VBox parts = new VBox();
    private final VBox models = new VBox(6);
    private Optional<PathAnswer> shown = Optional.empty();
    private Optional<WatchedWork> work = Optional.empty();

    /** What one model says: a loss, or why it does not apply. */
    private record Said(String model, Optional<PathLoss> loss, String refusal) {}

    ModelSpread(Session session) {
        super(8);
        this.session = session;
        setId("path-models");
        compare.setId("path-compare");
        compare.setOnAction(pressed -> ask());
        getChildren().addAll(parts, compare, models);
    }

    void show(PathAnswer answer) {
        work.ifPresent(WatchedWork::stop);
        work = Optional.empty();
        shown = Optional.of(answer);
        compare.setDisable(false);
        models.getChildren().clear();
        parts.getChildren().setAll(new SheetGrid(parts(answer.loss())));
    }

    private static Sheet parts(PathLoss loss) {
        List<Sheet.Row> rows = new ArrayList<>();
        for (LossPart part : loss.parts())
            rows.add(Sheet.Row.of(part.name(), Axis.number(part.db(), 1), part.source()));
        rows.add(Sheet.Row.sum("basic transmission loss", Axis.number(loss.lossDb(), 1), ""));
        return new Sheet(
                "Loss by parts, model " + loss.model() + "; the same both ways.",
                List.of(Sheet.Column.words("part"), Sheet.Column.number("dB"), Sheet.Column.words("source")),
                rows);
    }

    private void ask() {
        if (shown.isEmpty()) return;
        PathAnswer path = shown.get();
        compare.setDisable(true);
        WatchedWork asked = session.worker()
                .watched(
                        "All models over this path",
                        progress -> all(path, progress),
                        said -> {
                            if (shown.filter(path::equals).isEmpty()) return;
                            compare.setDisable(false);
                            fill(said);
                        },
                        wrong -> {
                            compare.setDisable(false);
                            session.tell(wrong);
                        });
        work = Optional.of(asked);
    }

    private static List<Said> all(PathAnswer path, Progress progress) {
        List<Said> said = new ArrayList<>();
        for (LossModel model : LossModels.all()) {
            progress.goOn();
            progress.done(model.name(), said.size() / (double) LossModels.all().size());
            said.add(one(path, model));
        }
        return said;
    }

    private static Said one(PathAnswer path, LossModel model) {
        try {
            PathAnswer answer = PathStudy.over(
                    path.profile(), path.link().terminals(), path.link().conditions(), List.of(model));
            return new Said(model.name(), Optional.of(answer.loss()), "");
        } catch (InputFault refused) {
            return new Said(
                    model.name(), Optional.empty(), refused.faults().get(0).text());
        }
    }

    private void fill(List<Said> said) {
        List<PathLoss> losses =
                said.stream().flatMap(each -> each.loss().stream()).toList();
        Label reading = new Label(ModelReading.of(losses));
        reading.setId("path-models-reading");
        reading.setWrapText(true);
        reading.setMinHeight(Region.USE_PREF_SIZE);
        double least = losses.stream().mapToDouble(PathLoss::lossDb).min().orElse(0);
        double most = losses.stream().mapToDouble(PathLoss::lossDb).max().orElse(0);
        List<Sheet.Row> rows = new ArrayList<>();
        for (Said each : said.stream()
                .sorted(Comparator.comparingDouble(
                        one -> one.loss().map(PathLoss::lossDb).orElse(Double.MAX_VALUE)))
                .toList()) rows.add(row(each, least, most));
        models.getChildren()
                .setAll(
                        reading,
                        new SheetGrid(new Sheet(
                                "",
                                List.of(
                                        Sheet.Column.words("model"),
                                        Sheet.Column.number("loss, dB"),
                                        Sheet.Column.number("over free space, dB"),
                                        Sheet.Column.words("")),
                                rows)));
    }

    private static Sheet.Row row(Said said, double leastDb, double mostDb) {
        if (said.loss().isEmpty()) return Sheet.Row.of(said.model(), "\u2013", "\u2013", said.refusal());
        PathLoss loss = said.loss().get();
        String mark = loss.lossDb() == leastDb ? "least" : loss.lossDb() == mostDb ? "most" : "";
        return Sheet.Row.of(said.model(), Axis.number(loss.lossDb(), 1), Axis.signed(loss.excessDb(), 1), mark);
    }
}
