package handreach.desktop;

import handreach.input.InputFault;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathLoss;
import handreach.reach.Progress;
import handreach.report.LossComposer;
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
final class ModelSpread extends VBox implements Aside.Divided {
    private final Session session;
    private final Button compare = new Button("Compare all models");
    private final VBox parts = new VBox();
    private final VBox models = new VBox(6);
    private Optional<PathAnswer> shown = Optional.empty();
    private Optional<WatchedWork> work = Optional.empty();

    ModelSpread(Session session) {
        super(8);
        this.session = session;
        setId("path-models");
        compare.setId("path-compare");
        compare.setOnAction(pressed -> ask());
        getChildren().addAll(parts, compare, models);
    }

    /** Steps that show the parts of a loss; what models said of another path is taken away first. */
    List<Runnable> steps(PathAnswer answer) {
        List<Runnable> steps = new ArrayList<>();
        steps.add(() -> {
            work.ifPresent(WatchedWork::stop);
            work = Optional.empty();
            shown = Optional.of(answer);
            compare.setDisable(false);
            models.getChildren().clear();
            parts.getChildren().clear();
        });
        TableGrid grid = TableGrid.ofHeads(LossComposer.parts(answer.loss()), List.of());
        steps.add(() -> parts.getChildren().setAll(grid));
        steps.addAll(grid.rows());
        return steps;
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

    private static List<LossComposer.Said> all(PathAnswer path, Progress progress) {
        List<LossComposer.Said> said = new ArrayList<>();
        for (LossModel model : LossModels.all()) {
            progress.goOn();
            progress.done(model.name(), said.size() / (double) LossModels.all().size());
            said.add(one(path, model));
        }
        return said;
    }

    private static LossComposer.Said one(PathAnswer path, LossModel model) {
        try {
            PathAnswer answer = PathStudy.over(
                    path.profile(), path.link().terminals(), path.link().conditions(), List.of(model));
            return new LossComposer.Said(model.name(), Optional.of(answer.loss()), "");
        } catch (InputFault refused) {
            return new LossComposer.Said(
                    model.name(), Optional.empty(), refused.faults().get(0).text());
        }
    }

    private void fill(List<LossComposer.Said> said) {
        List<PathLoss> losses =
                said.stream().flatMap(each -> each.loss().stream()).toList();
        Label reading = new Label(LossComposer.reading(losses));
        reading.setId("path-models-reading");
        reading.setWrapText(true);
        reading.setMinHeight(Region.USE_PREF_SIZE);
        List<LossComposer.Said> byLoss = said.stream()
                .sorted(Comparator.comparingDouble(
                        one -> one.loss().map(PathLoss::lossDb).orElse(Double.MAX_VALUE)))
                .toList();
        models.getChildren().setAll(reading, new TableGrid(LossComposer.models(byLoss), List.of()));
    }
}
