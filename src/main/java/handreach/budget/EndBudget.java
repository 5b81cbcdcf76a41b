package handreach.budget;

import handreach.bench.Effect;
import handreach.loadout.Antenna;
import handreach.loadout.AntennaDelta;
import handreach.loadout.AntennaGain;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.ControlAnchor;
import handreach.loadout.DeltaMove;
import handreach.loadout.ElevationPattern;
import handreach.loadout.Loadout;
import handreach.uncertainty.Doubt;
import handreach.units.Dbd;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What one end brings to a link: its antenna's lines at the horizon, its pattern, its doubts. */
final class EndBudget {
    private static final Doubt UNMEASURED_COUNTERPOISE = Doubt.common(2);

    /** A common doubt of this end: what it comes from and how far it moves the gain. */
    record Cause(DoubtCause what, double commonDb) {}

    private final LinkEnd end;
    private final List<LedgerLine> lines = new ArrayList<>();
    private final List<Cause> causes = new ArrayList<>();
    private final Antenna antenna;
    private final ElevationPattern pattern;
    private final double uprightHorizonDbi;
    private final double spreadDb;
    private final double horizonDbi;
    private final double lossToNoiseDb;

    EndBudget(LinkEnd end, Frequency frequency) {
        this.end = end;
        Loadout loadout = end.loadout();
        this.antenna = loadout.antenna();
        ElevationPattern upright =
                loadout.antenna().pattern(frequency, loadout.carry().carry());
        this.pattern = upright.tilted(end.posture().towardsPathDeg());
        this.uprightHorizonDbi = upright.gainDbi(0);
        addGain(loadout.gain());
        addBody(loadout);
        double spread = addHeading(loadout.carry());
        addCounterpoise(loadout);
        addMismatch(loadout.gain());
        for (ExtraLine extra : end.extras()) spread = Math.hypot(spread, addExtra(extra));
        this.spreadDb = spread;
        this.horizonDbi = lines.stream().mapToDouble(LedgerLine::valueDb).sum();
        this.lossToNoiseDb = Math.max(0, -noiseGainDbd());
    }

    private void addGain(AntennaGain gain) {
        CarryLoss carry = end.loadout().carry();
        if (gain instanceof AntennaGain.Absolute stated) {
            add(LineKey.ANTENNA, "antenna, stated gain dBi", stated.gain().dbi(), stated.doubt(), stated.source(), "");
            causes.add(new Cause(
                    new DoubtCause.Gain(end.loadout().antenna().name()),
                    stated.doubt().commonDb()));
            return;
        }
        boolean atBody = carry.carry().isAtBody();
        ControlAnchor anchor = anchor(gain);
        Dbd onBox = atBody ? anchor.onBox() : carry.mean();
        Doubt doubt = Doubt.common(atBody ? anchor.commonDb() : carry.doubt().commonDb());
        String source = atBody ? anchor.source() : carry.origin();
        String label = atBody
                ? "control antenna on its chassis, dBi"
                : carry.carry() == Carry.ROOF
                        ? "antenna with full counterpoise on a roof, dBi"
                        : "antenna with full counterpoise on a mast, dBi";
        add(LineKey.ANTENNA, label, onBox.toDbi().dbi(), doubt, source, "");
        causes.add(new Cause(atBody ? new DoubtCause.Anchor(source) : new DoubtCause.Mast(source), doubt.commonDb()));
        if (gain instanceof AntennaGain.OverControl over) addDelta(over, carry.carry());
        else add(LineKey.DELTA, "delta over the control", 0, Doubt.NONE, "this is the control", "");
    }

    private void addDelta(AntennaGain.OverControl over, Carry carry) {
        AntennaDelta delta = over.delta();
        DeltaMove move = over.move();
        double transferDb = move.isKnown() ? 0 : delta.transferDoubtDb(carry);
        if (!carry.isAtBody() && transferDb > 0) {
            add(
                    LineKey.DELTA,
                    "delta over the control",
                    0,
                    Doubt.common(1.5),
                    delta.source(),
                    "measured in \"" + delta.mounting().name() + "\", not used: the " + carry.word()
                            + " figure already holds a full counterpoise");
            causes.add(new Cause(new DoubtCause.MastUse(end.loadout().antenna().name()), 1.5));
            return;
        }
        double common = Math.hypot(delta.doubt().commonDb(), transferDb);
        String note = transferDb > 0
                ? String.format(
                        Locale.ROOT,
                        "measured in \"%s\", carried over: %.1f dB more doubt",
                        delta.mounting().name(),
                        transferDb)
                : "measured in \"" + delta.mounting().name() + "\"";
        if (!move.isKnown() && !move.words().isEmpty()) note += "; " + move.words();
        Doubt doubt = new Doubt(common, delta.doubt().spreadDb());
        add(LineKey.DELTA, "delta over the control", delta.delta().db(), doubt, delta.source(), note);
        causes.add(new Cause(new DoubtCause.Delta(end.loadout().antenna().name(), delta), common));
        if (move.isKnown()) addMove(move);
    }

    private void addMove(DeltaMove move) {
        double common = Math.hypot(move.controlDoubtDb(), move.kindDoubtDb());
        String label = "delta moved to where it is carried";
        add(LineKey.MOVE, label, move.shiftDb(), Doubt.common(common), DeltaMove.SOURCE, move.words());
        causes.add(new Cause(new DoubtCause.Move("", move.words()), move.controlDoubtDb()));
        causes.add(new Cause(
                new DoubtCause.Move(end.loadout().antenna().radiator().word(), move.words()), move.kindDoubtDb()));
    }

    private static ControlAnchor anchor(AntennaGain gain) {
        if (gain instanceof AntennaGain.OverControl over) return over.anchor();
        return ((AntennaGain.Control) gain).anchor();
    }

    private void addBody(Loadout loadout) {
        CarryLoss carry = loadout.carry();
        double tableDb = carry.doubt().commonDb();
        double anchorDb =
                carry.isStandard() ? ControlAnchor.standard(carry.band()).commonDb() : 0;
        double bodyDb = carry.carry().isAtBody() ? Math.sqrt(Math.max(0, tableDb * tableDb - anchorDb * anchorDb)) : 0;
        String label = "carried: " + carry.carry().meaning();
        add(LineKey.CARRY, label, carry.bodyDb(), Doubt.common(bodyDb), carry.origin(), "");
        causes.add(new Cause(new DoubtCause.Body(carry.carry(), carry.band(), carry.origin()), bodyDb));
    }

    private double addHeading(CarryLoss carry) {
        boolean known = end.posture().pathFromFrontDeg().isPresent();
        double spread = known ? carry.spreadAtKnownHeadingDb() : carry.doubt().spreadDb();
        double db = known ? carry.headingDb(end.posture().pathFromFrontDeg().getAsDouble()) : 0;
        String label = carry.carry().isAtBody() ? "heading of the wearer" : "what stands around the antenna";
        add(LineKey.HEADING, label, db, Doubt.spread(spread), carry.origin(), headingNote(carry));
        return spread;
    }

    private String headingNote(CarryLoss carry) {
        if (!carry.carry().isAtBody()) return "no person at the antenna";
        if (end.posture().pathFromFrontDeg().isEmpty()) return "mean over headings; the shadow is in the spread";
        return String.format(
                Locale.ROOT,
                "the path is %.0f° right of the wearer's front, best is %.0f°; radio on the right",
                turnDeg(end.posture().pathFromFrontDeg().getAsDouble()),
                turnDeg(carry.bestHeadingDeg()));
    }

    private static double turnDeg(double deg) {
        return ((Math.round(deg) % 360) + 360) % 360;
    }

    private void addCounterpoise(Loadout loadout) {
        if (!loadout.antenna().counterpoise()) return;
        AntennaGain gain = loadout.gain();
        if (gain.holds(Effect.COUNTERPOISE) || !loadout.carry().carry().isAtBody()) {
            add(LineKey.COUNTERPOISE, "counterpoise wire", 0, Doubt.NONE, "bench", gain.heldWords());
            return;
        }
        String note = "no reading with the wire on: counted as 0, measure it";
        add(LineKey.COUNTERPOISE, "counterpoise wire", 0, UNMEASURED_COUNTERPOISE, "our suggestion", note);
        causes.add(
                new Cause(new DoubtCause.Counterpoise(loadout.antenna().name()), UNMEASURED_COUNTERPOISE.commonDb()));
    }

    private void addMismatch(AntennaGain gain) {
        if (gain.swr().isEmpty()) return;
        double swr = gain.swr().getAsDouble();
        double lossDb = AntennaGain.mismatchLossDb(swr);
        boolean held = gain.holds(Effect.MISMATCH);
        String explained = String.format(Locale.ROOT, "SWR %.2f is %.2f dB of mismatch", swr, lossDb);
        String note = held ? gain.heldWords() + "; " + explained : explained;
        add(LineKey.MISMATCH, "mismatch", held ? 0 : -lossDb, Doubt.NONE, "line theory", note);
    }

    private double addExtra(ExtraLine extra) {
        boolean held = extra.effect().isPresent()
                && end.loadout().gain().holds(extra.effect().get());
        Doubt doubt = held ? Doubt.NONE : extra.doubt();
        String note = held ? end.loadout().gain().heldWords() + ": not counted" : "";
        add(LineKey.EXTRA, extra.label(), held ? 0 : extra.value().db(), doubt, extra.source(), note);
        causes.add(new Cause(new DoubtCause.Extra(extra.label()), doubt.commonDb()));
        return doubt.spreadDb();
    }

    private void add(LineKey key, String label, double valueDb, Doubt doubt, String source, String note) {
        lines.add(new LedgerLine(key, label, valueDb + 0.0, doubt, source, note));
    }

    /**
     * Gain that stands for how much outside noise comes in. It stands on the default anchor, whatever the control's own: the
     * difference between two loadouts must not hang on the anchor.
     */
    private double noiseGainDbd() {
        double dbd = horizonDbi - Dbd.DIPOLE_DBI;
        AntennaGain gain = end.loadout().gain();
        if (gain instanceof AntennaGain.Absolute
                || !end.loadout().carry().carry().isAtBody()) return dbd;
        return dbd - anchor(gain).shiftDb();
    }

    List<LedgerLine> lines() {
        return lines;
    }

    List<Cause> causes() {
        return causes;
    }

    /** Whose pattern it is; a kind that nobody stated is only taken for granted. */
    String patternSource() {
        boolean isTaken = !antenna.isKindStated() && antenna.ownPattern().isEmpty();
        return isTaken ? "kind not stated, taken as " + pattern.name() : pattern.name();
    }

    ElevationPattern pattern() {
        return pattern;
    }

    /** Gain at this elevation over that of the upright antenna at the horizon, where deltas and gains hold, dB. */
    double patternDb(double elevationDeg) {
        return pattern.gainDbi(elevationDeg) - uprightHorizonDbi;
    }

    double spreadDb() {
        return spreadDb;
    }

    /** Gain towards the horizon, everything in, dBi. */
    double horizonDbi() {
        return horizonDbi;
    }

    /** Loss of antenna and body together that outside noise meets on its way in, dB. */
    double lossToNoiseDb() {
        return lossToNoiseDb;
    }
}
