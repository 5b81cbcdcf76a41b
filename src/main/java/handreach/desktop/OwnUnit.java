package handreach.desktop;

import handreach.input.NumberText;
import handreach.input.Range;
import handreach.plan.PlanText;
import handreach.units.Lengths;

/** Numbers typed in the user's unit and written by the plan in its own, and back. */
final class OwnUnit {
    private static final double HUNDREDTHS = 100;

    private OwnUnit() {}

    /** As the plan writes a number that was typed in a unit so many of the plan's long. */
    static String planned(String typed, double unit) {
        return unit == 1
                ? typed
                : PlanText.number(Math.rint(NumberText.parse(typed).orElseThrow() * unit * 1e4) / 1e4);
    }

    /** To the third figure behind the point, so that what was typed comes back as it was typed. */
    static double shown(double planned, double unit) {
        return unit == 1 ? planned : Math.rint(planned / unit * 1000) / 1000;
    }

    /** How many of the plan's units the user's own unit is long. */
    static double of(Range range, Lengths lengths) {
        return switch (range.unit()) {
            case "km", "km/h" -> lengths.longUnitM() / Lengths.METRIC.longUnitM();
            case "m" -> lengths.shortUnitM();
            case "cm" -> lengths.antennaUnitCm();
            default -> 1;
        };
    }

    /** The same limits in the user's unit, rounded inwards so that what they allow the plan allows too. */
    static Range limits(Range range, Lengths lengths) {
        double unit = of(range, lengths);
        if (unit == 1) return range;
        String name = switch (range.unit()) {
            case "km" -> lengths.longUnit();
            case "km/h" -> lengths.longUnit() + "/h";
            case "m" -> lengths.shortUnit();
            default -> lengths.antennaUnit();
        };
        return new Range(
                range.key(),
                Math.ceil(range.low() / unit * HUNDREDTHS) / HUNDREDTHS,
                Math.floor(range.high() / unit * HUNDREDTHS) / HUNDREDTHS,
                name,
                range.advice());
    }
}
