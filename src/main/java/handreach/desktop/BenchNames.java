package handreach.desktop;

import handreach.bench.BenchFile;
import handreach.plan.Equipment;
import handreach.plan.PlanText;
import java.util.List;
import java.util.stream.Stream;
import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * Antennas of the plan that the readings know under another name, and the names there are: one click says which it is. Until then
 * nothing that was read counts for them.
 */
final class BenchNames extends VBox {
    /** A sheet may name many; the form of the antenna takes any of them. */
    private static final int MOST = 12;

    private final Session session;

    BenchNames(Session session) {
        super(4);
        this.session = session;
        setId("bench-names");
        getStyleClass().add("path-bar");
        clear();
    }

    void clear() {
        getChildren().clear();
        setVisible(false);
        setManaged(false);
    }

    /** Asks for each antenna of the plan that is not among the readings; {@code control} is the antenna the others are compared with. */
    void show(Equipment plan, BenchFile readings, String control) {
        clear();
        List<String> read = BenchImport.antennas(readings);
        List<String> taken = plan.antennas().stream()
                .flatMap(antenna ->
                        Stream.concat(Stream.of(antenna.delta().benchName()), antenna.delta().withWire().stream()))
                .toList();
        for (Equipment.AntennaEntry antenna : plan.antennas()) {
            boolean isStated = antenna.delta().deltaDb().isPresent()
                    || antenna.known().gain().isPresent();
            if (isStated || holds(read, antenna.delta().benchName())) continue;
            List<String> names = antenna.control()
                    ? List.of(control)
                    : read.stream()
                            .filter(name -> !name.equalsIgnoreCase(control) && !holds(taken, name))
                            .limit(MOST)
                            .toList();
            if (!names.isEmpty()) ask(antenna, names);
        }
        setVisible(!getChildren().isEmpty());
        setManaged(isVisible());
    }

    private static boolean holds(List<String> names, String wanted) {
        return names.stream().anyMatch(wanted::equalsIgnoreCase);
    }

    private void ask(Equipment.AntennaEntry antenna, List<String> names) {
        Label says = Labels.line(
                "No reading is called \"" + antenna.delta().benchName() + "\", so none counts for " + antenna.name()
                        + ". On the bench it is:",
                "plain");
        FlowPane line = new FlowPane(10, 2, says);
        Labels.fitInto(says, line);
        line.setRowValignment(VPos.BASELINE);
        for (String name : names) line.getChildren().add(Labels.link(name, () -> name(antenna.name(), name)));
        getChildren().add(line);
    }

    private void name(String antenna, String benchName) {
        session.edit(
                "bench name of " + antenna,
                text -> PlanText.withEntryValue(text, "antenna", antenna, "bench", PlanText.quoted(benchName)));
    }
}
