package handreach.propagation;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;

/**
 * Kinds of ground with their electrical constants, the round values a planner enters. Sources: Rec. ITU-R P.527-3 curves (from
 * memory), low-frequency values; NTIA Report 82-100 (from memory) for poor, average and good.
 */
public enum GroundType {
    AVERAGE(15, 0.005),
    WET(30, 0.01),
    DRY(4, 0.001),
    SEA(80, 5),
    FRESH_WATER(80, 0.01),
    POOR(4, 0.001),
    GOOD(25, 0.02);

    /** How files and options name them. */
    public static final Keyword<GroundType> KEYWORD = Keyword.of(List.of(values()), GroundType::word);

    private final Ground ground;

    GroundType(double permittivity, double conductivity) {
        this.ground = new Ground(permittivity, conductivity);
    }

    /** The constants, the same at every frequency. */
    public Ground ground() {
        return ground;
    }

    /** Name as written in plans and options, such as {@code fresh-water}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
