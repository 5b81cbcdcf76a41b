package handreach.report;

import handreach.report.draw.ShapeStyle;
import handreach.report.figure.MapWay;
import handreach.study.Scene;
import handreach.study.Whereabouts;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Routes and sectors of a plan as lines of a map. */
final class PlanWays {
    private static final int RGB = 0x5A2FD0;
    private static final MapWay.Kind ROUTE = new MapWay.Kind("route", ShapeStyle.line(RGB, 1.8));
    private static final MapWay.Kind SECTOR = new MapWay.Kind("sector", ShapeStyle.line(RGB, 1.8, List.of(7.0, 4.0)));

    private PlanWays() {}

    /** Those with a name that is wanted, in the plan's order. */
    static List<MapWay> of(Scene scene, Predicate<String> isWanted) {
        List<MapWay> ways = new ArrayList<>();
        Whereabouts.shapes(scene).forEach((name, shape) -> {
            if (isWanted.test(name)) ways.add(new MapWay(shape, shape.getDimension() == 2 ? SECTOR : ROUTE));
        });
        return ways;
    }
}
