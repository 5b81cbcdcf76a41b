package handreach.report;

import handreach.geodesy.Position;
import handreach.plan.PlanHeader;
import handreach.units.Decibels;
import java.util.Locale;
import java.util.OptionalDouble;

/** From which north bearings are counted, and how the other norths lie to it. */
final class NorthNote {
    private NorthNote() {}

    /** {@code from true north; magnetic = true − 7.0°; grid = true + 1.2° at the middle}. */
    static String words(PlanHeader header, Position place, String where) {
        StringBuilder words = new StringBuilder("from true north");
        OptionalDouble declination = header.bearings().declinationDeg();
        if (declination.isPresent())
            words.append("; magnetic = true ")
                    .append(less(declination.getAsDouble()))
                    .append(" (declination as the plan states it)");
        OptionalDouble grid = header.placeForm().convergenceDeg(place);
        if (grid.isPresent())
            words.append("; grid (")
                    .append(header.placeForm().word().toUpperCase(Locale.ROOT))
                    .append(") = true ")
                    .append(less(grid.getAsDouble()))
                    .append(" at ")
                    .append(where);
        return words.toString();
    }

    private static String less(double degrees) {
        return (degrees < 0 ? "+ " : "\u2212 ") + Decibels.number(Math.abs(degrees), 1) + "\u00b0";
    }
}
