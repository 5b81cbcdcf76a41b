package handreach.desktop;

import handreach.geodesy.Position;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;

/** What is looked at on the map without being in the plan: a place that was gone to, and a line that is being measured. */
final class MapTools {
    private final ObjectProperty<Optional<Looked>> looked = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Optional<Measured>> measured = new SimpleObjectProperty<>(Optional.empty());

    /** A place and what is written beside it. */
    record Looked(Position at, String words) {}

    /** A line from a place to another; to the mouse until that is set. */
    record Measured(Position from, Optional<Position> to) {}

    ObjectProperty<Optional<Looked>> looked() {
        return looked;
    }

    ObjectProperty<Optional<Measured>> measured() {
        return measured;
    }

    boolean isMeasuring() {
        return measured.get().filter(line -> line.to().isEmpty()).isPresent();
    }

    void measureFrom(Position at) {
        measured.set(Optional.of(new Measured(at, Optional.empty())));
    }

    void measureTo(Position at) {
        measured.set(measured.get().map(line -> new Measured(line.from(), Optional.of(at))));
    }

    void clear() {
        looked.set(Optional.empty());
        measured.set(Optional.empty());
    }
}
