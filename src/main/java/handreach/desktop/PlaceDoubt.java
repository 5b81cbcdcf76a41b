package handreach.desktop;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What speaks against a place that was typed: one wrong digit puts it in another country. Reads tiles: away from the screen thread. */
final class PlaceDoubt {
    private PlaceDoubt() {}

    /** A sentence such as {@code lake crew lies 99 km from the middle of the area: beyond its radius of 8 km, and off the tiles.} */
    static Optional<String> of(Scene scene, String name, Position at) {
        Lengths lengths = scene.plan().header().lengths();
        double awayM =
                GeodesicLine.between(scene.plan().places().area().centre(), at).lengthM();
        double radiusM = 1000 * scene.plan().places().area().radiusKm();
        List<String> doubts = new ArrayList<>();
        if (awayM > radiusM) doubts.add("beyond its radius of " + lengths.text(radiusM));
        if (scene.tiles().at(at).isVoid()) doubts.add("off the tiles, where no height is known");
        return doubts.isEmpty()
                ? Optional.empty()
                : Optional.of(name + " lies " + lengths.text(awayM) + " from the middle of the area: "
                        + String.join(", and ", doubts) + ". Check its digits.");
    }
}
