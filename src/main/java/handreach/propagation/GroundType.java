package handreach.propagation;

import handreach.input.Keyword;
import handreach.units.Frequency;
import java.util.List;
import java.util.Locale;

/**
 * Kinds of ground with their electrical constants.
 *
 * <p>{@link #ground} gives the round values a planner enters, {@link #at} lets the conductivity rise with frequency. Sources:
 * Rec. ITU-R P.527-3 curves (from memory) for the low-frequency values; NTIA Report 82-100 (from memory) for poor, average and
 * good; Rec. ITU-R P.2040 for the rise, stated there from 1 GHz and carried below it by us.
 */
public enum GroundType {
    AVERAGE(15, 0.005, 0.035, 1.63),
    WET(30, 0.01, 0.15, 1.30),
    DRY(4, 0.001, 0.00015, 2.52),
    SEA(80, 5, 0, 0),
    FRESH_WATER(80, 0.01, 0.25, 2),
    POOR(4, 0.001, 0.00015, 2.52),
    GOOD(25, 0.02, 0.15, 1.30);

    /** How files and options name them. */
    public static final Keyword<GroundType> KEYWORD = Keyword.of(List.of(values()), GroundType::word);

    private final Ground ground;
    private final double riseAtOneGhz;
    private final double riseExponent;

    GroundType(double permittivity, double conductivity, double riseAtOneGhz, double riseExponent) {
        this.ground = new Ground(permittivity, conductivity);
        this.riseAtOneGhz = riseAtOneGhz;
        this.riseExponent = riseExponent;
    }

    /** The constants without dispersion, as entered by name. */
    public Ground ground() {
        return ground;
    }

    /**
     * Constants at a frequency: the conductivity is the greater of the low-frequency value and c f^d.
     *
     * @shape  scalar in, constants out; pure
     * @unit   as {@link Ground}
     * @valid  30 MHz to 1 GHz
     * @error  conductivity within a factor of 3, permittivity within 30 %: soils differ by more than the curves
     * @source Rec. ITU-R P.527-3 and P.2040-3 (c, d of very dry, medium dry and wet ground); fresh water: dielectric loss of the
     *     17 GHz relaxation (from memory); joining them below 1 GHz is ours
     */
    public Ground at(Frequency frequency) {
        double rise = riseAtOneGhz * Math.pow(frequency.ghz(), riseExponent);
        double permittivity = this == SEA && frequency.mhz() > 200 ? 70 : ground.permittivity();
        return new Ground(permittivity, Math.max(ground.conductivity(), rise));
    }

    /** Name as written in plans and options, such as {@code fresh-water}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
