package handreach.units;

import java.util.stream.DoubleStream;

/**
 * How the user wants lengths written: kilometres and metres, or miles and feet; what an antenna weighs goes with them. Computing is always metric. Every face of an answer
 * writes its lengths here, so that the same length never reads differently in two places.
 */
public enum Lengths {
    METRIC("km", 1000, 0.95, "m", 1, "cm", 1, "g", 1, 0),
    /** International mile, foot, inch and avoirdupois ounce, exact by definition (1959). */
    IMPERIAL("mi", 1609.344, 0.5, "ft", 0.3048, "in", 2.54, "oz", 28.349523125, 1);

    /** Short lengths over ground are told to ten metres or ten feet, about what a cell or a sample is good for; our suggestion. */
    private static final double SHORT_STEP = 10;
    /** From this part of the long unit upwards it is told to a tenth. */
    private static final double LONG_TENTHS_FROM = 0.95;

    private final String longUnit;
    private final double longM;
    /** From this part of the long unit upwards it is used. */
    private final double longFrom;

    private final String shortUnit;
    private final double shortM;
    private final String antennaUnit;
    private final double antennaCm;
    private final String massUnit;
    private final double massG;
    private final int massDecimals;

    Lengths(
            String longUnit,
            double longM,
            double longFrom,
            String shortUnit,
            double shortM,
            String antennaUnit,
            double antennaCm,
            String massUnit,
            double massG,
            int massDecimals) {
        this.longUnit = longUnit;
        this.longM = longM;
        this.longFrom = longFrom;
        this.shortUnit = shortUnit;
        this.shortM = shortM;
        this.antennaUnit = antennaUnit;
        this.antennaCm = antennaCm;
        this.massUnit = massUnit;
        this.massG = massG;
        this.massDecimals = massDecimals;
    }

    public String longUnit() {
        return longUnit;
    }

    public String shortUnit() {
        return shortUnit;
    }

    public double longUnitM() {
        return longM;
    }

    public double shortUnitM() {
        return shortM;
    }

    /** Unit in which antennas are measured: {@code cm}, {@code in}. */
    public String antennaUnit() {
        return antennaUnit;
    }

    public double antennaUnitCm() {
        return antennaCm;
    }

    /** A length over ground: {@code 2.9 km}, {@code 140 m}, {@code 1.8 mi}, {@code 450 ft}. */
    public String text(double metres) {
        return isLong(metres)
                ? longDecimals(metres) + " " + longUnit
                : decimals(shortSteps(metres), 0) + " " + shortUnit;
    }

    /** The same with its sign: {@code +90 m}, {@code −1.2 km}. */
    public String signed(double metres) {
        return (metres < 0 ? "\u2212" : "+") + text(Math.abs(metres));
    }

    /**
     * From one length to another, the unit once where it is the same: {@code 340 to 780 m}, {@code 450 m to 1.4 km}. Feet and miles
     * do not stand beside one another, as nobody converts them at a glance: {@code 0.28 to 1.4 mi}.
     */
    public String range(double lowM, double highM) {
        String low = this == IMPERIAL && isLong(highM) ? longNumber(lowM) + " " + longUnit : text(lowM);
        String high = text(highM);
        if (low.equals(high)) return low;
        String unit = " " + unit(highM);
        return (low.endsWith(unit) ? low.substring(0, low.length() - unit.length()) : low) + " to " + high;
    }

    /** The unit in which {@link #text} writes this length. */
    public String unit(double metres) {
        return isLong(metres) ? longUnit : shortUnit;
    }

    /**
     * A length for a column whose head names the long unit: rounded as {@link #text} rounds it, so that both say the same:
     * {@code 2.9}, {@code 0.14}.
     */
    public String longNumber(double metres) {
        return isLong(metres) ? longDecimals(metres) : decimals(shortSteps(metres) * shortM / longM, 2);
    }

    /** One unit for lengths that stand in one column: the long one as soon as one of them is written in it. */
    public OneUnit together(DoubleStream metres) {
        return new OneUnit(this, metres.anyMatch(this::isLong));
    }

    /**
     * Lengths over ground as bare numbers under a head that names the unit, each rounded as {@link #text} rounds it.
     *
     * @param isLong whether the long unit is meant
     */
    public record OneUnit(Lengths lengths, boolean isLong) {
        public String unit() {
            return isLong ? lengths.longUnit : lengths.shortUnit;
        }

        /** {@code 2.9}, {@code 0.14}; under the short unit {@code 140}. */
        public String number(double metres) {
            return isLong ? lengths.longNumber(metres) : decimals(lengths.shortSteps(metres), 0);
        }

        /** With its unit, for sentences about the same lengths: metres beside kilometres read well, feet beside miles do not. */
        public String text(double metres) {
            return lengths == METRIC ? lengths.text(metres) : number(metres) + " " + unit();
        }

        /** A range with its unit, likewise. */
        public String rangeText(double lowM, double highM) {
            return lengths == METRIC ? lengths.range(lowM, highM) : range(lowM, highM) + " " + unit();
        }

        /** {@code 0.34 to 1.3}. */
        public String range(double lowM, double highM) {
            String low = number(lowM);
            String high = number(highM);
            return low.equals(high) ? low : low + " to " + high;
        }
    }

    /** A height or a short length to the whole unit: {@code 1240 m}. */
    public String heightText(double metres) {
        return decimals(metres / shortM, 0) + " " + shortUnit;
    }

    /** From one height to another, the unit once: {@code 1240 to 1298 m}. */
    public String heightRange(double lowM, double highM) {
        String low = decimals(lowM / shortM, 0);
        String high = heightText(highM);
        return high.startsWith(low + " ") ? high : low + " to " + high;
    }

    /** An antenna's length as a bare number under a head that names {@link #antennaUnit}. */
    public String antennaNumber(double centimetres) {
        return decimals(centimetres / antennaCm, 0);
    }

    /** An antenna's length: {@code 46 cm}, {@code 18 in}. */
    public String antenna(double centimetres) {
        return antennaNumber(centimetres) + " " + antennaUnit();
    }

    /** Unit in which antennas are weighed: {@code g}, {@code oz}. */
    public String massUnit() {
        return massUnit;
    }

    /** What an antenna weighs, without its unit: {@code 16}, {@code 0.6}. */
    public String massNumber(double grams) {
        return decimals(grams / massG, massDecimals);
    }

    /** What an antenna weighs: {@code 16 g}, {@code 0.6 oz}. */
    public String mass(double grams) {
        return massNumber(grams) + " " + massUnit;
    }

    /** A mast, or a distance to keep, to a tenth: {@code 1.5 m}, {@code 4.9 ft}. */
    public String closeText(double metres) {
        return decimals(metres / shortM, 1) + " " + shortUnit;
    }

    /** An area of ground: {@code 5.1 km²}, {@code 0.24 km²}, {@code 120 mi²}. */
    public String area(double squareMetres) {
        double area = squareMetres / (longM * longM);
        return decimals(area, area >= 99.5 ? 0 : area >= 0.95 ? 1 : 2) + " " + longUnit + "\u00b2";
    }

    /** From one change of an area to another, signed, the unit once: {@code +4.5 to +7.2 km²}. */
    public String areaRange(double lowM2, double highM2) {
        String low = signedArea(lowM2);
        return low.substring(0, low.indexOf(' ')) + " to " + signedArea(highM2);
    }

    private String signedArea(double squareMetres) {
        return (squareMetres < 0 ? "\u2212" : "+") + area(Math.abs(squareMetres));
    }

    private boolean isLong(double metres) {
        return metres >= longFrom * longM;
    }

    /** A tenth of a mile is 528 feet: below one mile a hundredth, so that the step does not leap where feet end. */
    private String longDecimals(double metres) {
        return decimals(metres / longM, metres < LONG_TENTHS_FROM * longM ? 2 : 1);
    }

    private double shortSteps(double metres) {
        return SHORT_STEP * Math.rint(metres / shortM / SHORT_STEP);
    }

    private static String decimals(double value, int decimals) {
        return Decibels.number(value, decimals);
    }
}
