package handreach.units;

import java.util.OptionalDouble;

/**
 * How bearings are written: three digits from true north, said so, and beside it the magnetic bearing where the declination is known.
 * Every face writes its bearings here.
 *
 * @param declinationDeg angle from true to magnetic north, positive east; empty where nobody has stated it
 */
public record Bearings(OptionalDouble declinationDeg) {
    /** From true north alone. */
    public static final Bearings TRUE = new Bearings(OptionalDouble.empty());

    /** For a sentence: {@code 045° true (038° magnetic)}. */
    public String text(double trueDeg) {
        return text(trueDeg, 0);
    }

    /** The same with so many decimals. */
    public String text(double trueDeg, int decimals) {
        return degrees(trueDeg, decimals)
                + " true"
                + (declinationDeg.isPresent() ? " (" + degrees(magneticDeg(trueDeg), decimals) + " magnetic)" : "");
    }

    /** From one bearing to another: {@code 050° to 120° true, 039° to 109° magnetic}. */
    public String range(double fromTrueDeg, double toTrueDeg) {
        return span(fromTrueDeg, toTrueDeg)
                + " true"
                + (declinationDeg.isPresent()
                        ? ", " + span(magneticDeg(fromTrueDeg), magneticDeg(toTrueDeg)) + " magnetic"
                        : "");
    }

    private static String span(double fromDeg, double toDeg) {
        return degrees(fromDeg, 0) + " to " + degrees(toDeg, 0);
    }

    /** For a table or a map, beside which it is said that bearings are true: {@code 045°}, {@code 045° (038° M)}. */
    public String brief(double trueDeg) {
        return degrees(trueDeg, 0)
                + (declinationDeg.isPresent() ? " (" + degrees(magneticDeg(trueDeg), 0) + " M)" : "");
    }

    private double magneticDeg(double trueDeg) {
        return trueDeg - declinationDeg.getAsDouble();
    }

    private static String degrees(double anyDeg, int decimals) {
        double step = Math.pow(10, -decimals);
        double rounded = Math.floor(anyDeg / step + 0.5) * step;
        double turned = rounded - 360 * Math.floor(rounded / 360 + 1e-9);
        int width = decimals == 0 ? 3 : 4 + decimals;
        String number = Decibels.number(Math.abs(turned), decimals);
        return "0".repeat(Math.max(0, width - number.length())) + number + "\u00b0";
    }
}
