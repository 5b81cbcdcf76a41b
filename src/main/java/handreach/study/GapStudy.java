package handreach.study;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.reach.Progress;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What would close the gap of a path: another loadout, an antenna held up, some steps aside, each computed anew by the plan's model. */
public final class GapStudy {
    /** How far an antenna is raised: a person on a rock, a pole of two pieces; our suggestion. */
    public static final double UP_M = 3;
    /** How far somebody walks for a better place; our suggestion. */
    public static final double ASIDE_M = 200;

    private static final int WAYS_ASIDE = 8;
    private static final double FULL_TURN_DEG = 360;
    /** What adds less helps nobody, dB; our suggestion. */
    private static final double LEAST_DB = 0.5;

    private final Scene scene;
    private final Position from;
    private final Loadout near;
    private final Position to;
    private final Loadout far;

    private GapStudy(Scene scene, Position from, Loadout near, Position to, Loadout far) {
        this.scene = scene;
        this.from = from;
        this.near = near;
        this.to = to;
        this.far = far;
    }

    /** Tries everything for one path whose answer is known. */
    public static GapAnswer run(
            Scene scene, Position from, Loadout near, Position to, Loadout far, PathAnswer known, Progress progress) {
        return new GapStudy(scene, from, near, to, far).run(lackingDb(known), progress);
    }

    private static double lackingDb(PathAnswer answer) {
        return -answer.ledger().orElseThrow().marginAtOddsDb();
    }

    private GapAnswer run(double lackingDb, Progress progress) {
        List<GapAnswer.Option> helping = new ArrayList<>();
        if (lackingDb > 0)
            for (boolean isNear : new boolean[] {true, false}) {
                best(loadouts(isNear, progress)).ifPresent(helping::add);
                up(isNear).ifPresent(helping::add);
                best(aside(isNear, progress)).ifPresent(helping::add);
            }
        helping.removeIf(option -> option.lackingDb() > lackingDb - LEAST_DB);
        helping.sort(Comparator.comparingDouble(GapAnswer.Option::lackingDb));
        return new GapAnswer(scene, lackingDb, helping);
    }

    private static Optional<GapAnswer.Option> best(List<GapAnswer.Option> options) {
        return options.stream().min(Comparator.comparingDouble(GapAnswer.Option::lackingDb));
    }

    private List<GapAnswer.Option> loadouts(boolean isNear, Progress progress) {
        List<GapAnswer.Option> options = new ArrayList<>();
        for (Loadout other : scene.loadouts()) {
            progress.goOn();
            if (other.carry().carry().isAtBody() && !other.equals(isNear ? near : far))
                with(GapAnswer.Remedy.LOADOUT, isNear, other, isNear ? from : to, 0)
                        .ifPresent(options::add);
        }
        return options;
    }

    private Optional<GapAnswer.Option> up(boolean isNear) {
        Loadout now = isNear ? near : far;
        Loadout raised =
                new Loadout(now.name(), now.radio(), now.antenna(), now.carry(), now.heightM() + UP_M, now.gain());
        return with(GapAnswer.Remedy.UP, isNear, raised, isNear ? from : to, 0);
    }

    private List<GapAnswer.Option> aside(boolean isNear, Progress progress) {
        List<GapAnswer.Option> options = new ArrayList<>();
        for (int i = 0; i < WAYS_ASIDE; i++) {
            progress.goOn();
            double azimuthDeg = FULL_TURN_DEG / WAYS_ASIDE * i;
            Position there = GeodesicLine.destination(isNear ? from : to, azimuthDeg, ASIDE_M);
            with(GapAnswer.Remedy.ASIDE, isNear, isNear ? near : far, there, azimuthDeg)
                    .ifPresent(options::add);
        }
        return options;
    }

    /** Empty where the ground is unknown. */
    private Optional<GapAnswer.Option> with(
            GapAnswer.Remedy remedy, boolean isNear, Loadout carried, Position at, double asideDeg) {
        Position start = isNear ? at : from;
        Position end = isNear ? to : at;
        Loadout first = isNear ? carried : near;
        Loadout second = isNear ? far : carried;
        try {
            PathAnswer answer = PathStudy.between(scene, start, first, end, second, List.of(scene.model()));
            return Optional.of(new GapAnswer.Option(
                    remedy, isNear, start, first, end, second, answer, lackingDb(answer), asideDeg));
        } catch (InputFault unknownGround) {
            return Optional.empty();
        }
    }
}
