package handreach.report;

import handreach.atlas.AtlasGrid;
import handreach.cartography.Graticule;
import handreach.cartography.Hillshade;
import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.reach.CellGrid;
import handreach.reach.ReachOutline;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Picture;
import handreach.report.figure.MapFigure;
import handreach.report.figure.MapGround;
import handreach.report.figure.MapOutline;
import handreach.report.page.Drawing;
import handreach.study.AtlasAnswer;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;

/** Maps of a region over its relief. */
final class AtlasMaps {
    private static final double MARGIN = 1.05;

    private final AtlasAnswer answer;
    private final Scene scene;
    private final Hillshade relief;
    private final MapGround bare;

    AtlasMaps(AtlasAnswer answer) {
        this.answer = answer;
        this.scene = answer.study().scene();
        CellGrid cells = answer.study().positions().cells();
        Position middle = new Position(
                (cells.northDeg() + cells.southDeg()) / 2,
                Math.IEEEremainder((cells.westDeg() + cells.eastDeg()) / 2, 360));
        double highM = GeodesicLine.distanceM(middle, new Position(cells.northDeg(), middle.longitudeDeg()));
        double wideM = highM * cells.columns() / cells.rows();
        MapFrame frame = MapGround.frame(middle, MARGIN * Math.max(highM, wideM));
        this.relief = MapGround.hillshade(scene.tiles(), frame);
        this.bare = MapGround.of(
                scene.tiles(),
                frame,
                Picture.relief(relief),
                Graticule.of(frame, scene.plan().header().placeForm(), 5),
                scene.plan().header().lengths());
    }

    /** The least loadout that serves at each position. */
    Drawing leastServing(String caption) {
        return drawing("Least loadout that serves", caption, answer.study().positions(), answer::leastServing);
    }

    /** The least loadout with which each place is heard by anybody. */
    Drawing leastHeard(String caption) {
        return drawing(
                "Least loadout with which anybody hears a place",
                caption,
                answer.study().targets(),
                answer::leastHeard);
    }

    private Drawing drawing(String title, String caption, AtlasGrid grid, IntUnaryOperator least) {
        CellGrid cells = grid.cells();
        List<Loadout> loadouts = scene.loadouts();
        List<LoadoutMark> marks =
                IntStream.range(0, loadouts.size()).mapToObj(LoadoutMark::of).toList();
        boolean[] isThere = new boolean[marks.size()];
        for (int cell = 0; cell < cells.count(); cell++) {
            int at = least.applyAsInt(cell);
            if (at >= 0) isThere[at] = true;
        }
        List<LegendEntry> entries = new ArrayList<>();
        for (int loadout : answer.study().byBurden())
            if (isThere[loadout])
                entries.add(Picture.leastLoadoutEntry(
                        marks.get(loadout), loadouts.get(loadout).name()));
        Picture picture = Picture.leastLoadout(
                relief,
                (latitude, longitude) -> {
                    int cell = cells.indexOf(new Position(latitude, longitude));
                    return cell < 0 ? AtlasAnswer.UNKNOWN : least.applyAsInt(cell);
                },
                marks);
        MapFigure figure = MapFigure.of(
                new MapFigure.Caption(title, caption),
                bare.with(picture),
                List.of(new MapOutline(marks.get(0), "edge of the region", ReachOutline.of(cells, grid::isAsked))),
                ReachMaps.places(scene.plan()),
                new MapFigure.Key(entries, scene.plan().header().lengths()));
        return new Drawing(figure, caption);
    }
}
