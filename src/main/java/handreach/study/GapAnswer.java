package handreach.study;

import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import java.util.List;

/**
 * What a path lacks for the wanted odds, and what would help.
 *
 * @param scene the plan
 * @param lackingDb what the less likely way lacks, dB; below 0 what it has to spare
 * @param options what was tried and helps, the best first
 */
public record GapAnswer(Scene scene, double lackingDb, List<Option> options) {
    /** What is changed. */
    public enum Remedy {
        LOADOUT,
        UP,
        ASIDE
    }

    /**
     * One remedy, computed anew.
     *
     * @param isNear whether the first end is changed, else the other
     * @param lackingDb what the path lacks then, dB
     * @param asideDeg azimuth of the step aside; 0 where nobody steps
     */
    public record Option(
            Remedy remedy,
            boolean isNear,
            Position from,
            Loadout near,
            Position to,
            Loadout far,
            PathAnswer answer,
            double lackingDb,
            double asideDeg) {}

    public GapAnswer {
        options = List.copyOf(options);
    }
}
