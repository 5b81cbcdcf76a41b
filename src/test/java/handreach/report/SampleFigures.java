package handreach.report;

import handreach.cartography.Graticule;
import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.cartography.PaperGround;
import handreach.geodesy.PlaceForm;
import handreach.geodesy.Position;
import handreach.profile.Profiles;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.report.draw.Figure;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Picture;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.Svg;
import handreach.report.figure.ChannelMark;
import handreach.report.figure.Curve;
import handreach.report.figure.DeltaFigure;
import handreach.report.figure.DeltaRow;
import handreach.report.figure.MapFigure;
import handreach.report.figure.MapGround;
import handreach.report.figure.MapOutline;
import handreach.report.figure.MapPlace;
import handreach.report.figure.PairCell;
import handreach.report.figure.PairFigure;
import handreach.report.figure.PatternFigure;
import handreach.report.figure.ProfileFigure;
import handreach.report.figure.ProfileMark;
import handreach.report.figure.RoseFigure;
import handreach.report.figure.RosePoint;
import handreach.report.figure.RosePoints;
import handreach.report.figure.RoseTrace;
import handreach.report.figure.SwrFigure;
import handreach.uncertainty.Interval;
import handreach.units.Frequency;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** One of each figure, every user word in them the same hostile one. */
public final class SampleFigures {
    public static final String HOSTILE = "<script>alert(\"x\")</script> & 'Tom' ]]> \u0000\u0007\uD800 é 山";
    public static final Position MIDDLE = new Position(46.5, 8.1);
    public static final PaperGround HILLS = new PaperGround(
            (lat, lon) -> 900 + 250 * Math.sin(lat * 400) + 180 * Math.cos(lon * 350) + 2000 * (lat - 46.5), 30);

    private SampleFigures() {}

    /** Apart, so that threads which draw need not wait for the class whose functions they call to be ready. */
    private static final class Drawn {
        static final List<Figure> ALL =
                List.of(map(), rose(), roseOverRelief(), profile(), delta(), swr(), pattern(), pairs());
        static final List<String> SVG =
                ALL.stream().map(figure -> Svg.text(figure, "f1")).toList();
    }

    public static List<Figure> all() {
        return Drawn.ALL;
    }

    /** The same as SVG with identifiers that start with f1. */
    public static String svg(Figure figure) {
        return Drawn.SVG.get(Drawn.ALL.indexOf(figure));
    }

    public static MapFigure map() {
        MapFrame frame = MapFrame.around(MIDDLE, 3000, 300, 260);
        Picture picture = Picture.odds(
                MapGround.hillshade(HILLS, frame),
                (lat, lon) -> lon > 8.13 ? -1 : Math.min(1, Math.abs(lat - 46.48) * 30));
        MapGround ground = MapGround.of(HILLS, frame, picture, Graticule.of(frame, PlaceForm.UTM, 4), Lengths.METRIC);
        Coordinate[] ring = {
            new Coordinate(8.08, 46.49),
            new Coordinate(8.12, 46.49),
            new Coordinate(8.11, 46.51),
            new Coordinate(8.08, 46.49)
        };
        MapOutline outline = new MapOutline(LoadoutMark.of(1), HOSTILE, new GeometryFactory().createPolygon(ring));
        return MapFigure.of(
                new MapFigure.Caption(HOSTILE, "A map. " + HOSTILE),
                ground,
                List.of(outline, new MapOutline(LoadoutMark.of(2), "b", new GeometryFactory().createPolygon(ring))),
                List.of(
                        new MapPlace(MIDDLE, MapPlace.Kind.BASE, HOSTILE),
                        new MapPlace(new Position(46.505, 8.12), MapPlace.Kind.RELAY, "R"),
                        new MapPlace(new Position(46.495, 8.09), MapPlace.Kind.POINT, "")),
                new MapFigure.Key(List.of(LegendEntry.area(ShapeStyle.fill(0x123456), HOSTILE)), Lengths.METRIC));
    }

    public static RoseTrace trace(int index, boolean showsInterval) {
        List<RosePoint> points = new ArrayList<>();
        for (int b = 0; b < 360; b += 10) {
            double km = 2 + index * 0.3 + Math.cos(Math.toRadians(b));
            points.add(
                    b < 100 || b > 120
                            ? RosePoints.known(b, km, km * 0.8, km * 1.2)
                            : RosePoints.endedByUnknown(b, km));
        }
        return new RoseTrace(LoadoutMark.of(index), HOSTILE, points, showsInterval);
    }

    public static RoseFigure rose() {
        return RoseFigure.of(HOSTILE, List.of(trace(0, true), trace(1, false)), Lengths.IMPERIAL);
    }

    static RoseFigure roseOverRelief() {
        return RoseFigure.of(HOSTILE, List.of(trace(0, true)), Lengths.METRIC)
                .sized(90)
                .over(HILLS, MIDDLE, List.of(new MapPlace(MIDDLE, MapPlace.Kind.BASE, HOSTILE)), List.of());
    }

    public static ProfileFigure profile() {
        double[] d = new double[81];
        double[] h = new double[81];
        for (int i = 0; i < d.length; i++) {
            d[i] = i * 0.1;
            h[i] = i == 40 ? 260 : 100 + 10 * Math.sin(i);
        }
        return ProfileFigure.of(
                new ProfileFigure.Labels(HOSTILE, HOSTILE, "B", Lengths.METRIC),
                Profiles.of(d, h),
                new Terminals(1.5, 10),
                UsualConditions.at(new Frequency(155)),
                List.of(new ProfileMark(40, HOSTILE, true), new ProfileMark(41, "second", false)));
    }

    public static DeltaFigure delta() {
        return DeltaFigure.of(
                HOSTILE,
                HOSTILE,
                List.of(
                        new DeltaRow(HOSTILE, HOSTILE, 2, new Interval(1, 3), true, HOSTILE),
                        new DeltaRow("box", "b", -0.2, new Interval(-1.5, 1.1), false, "")),
                820);
    }

    public static SwrFigure swr() {
        return SwrFigure.of(
                HOSTILE,
                List.of(new Curve(LoadoutMark.of(0), HOSTILE, List.of(150.0, 155.0, 160.0), List.of(30.0, 1.2, 9.0))),
                List.of(new ChannelMark(HOSTILE, 155.1), new ChannelMark("near", 155.2)),
                820);
    }

    public static PatternFigure pattern() {
        return PatternFigure.of(
                HOSTILE,
                List.of(new Curve(
                        LoadoutMark.of(3), HOSTILE, List.of(-20.0, 0.0, 45.0, 90.0), List.of(1.0, 2.1, -1.0, -40.0))),
                360);
    }

    public static PairFigure pairs() {
        return PairFigure.of(
                HOSTILE,
                List.of(HOSTILE, "b", "c"),
                List.of(new PairCell(1, 0, 2.2, true), new PairCell(2, 0, 0.1, false), new PairCell(2, 1, -2.1, true)));
    }
}
