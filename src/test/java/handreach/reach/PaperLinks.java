package handreach.reach;

import handreach.budget.LinkBudget;
import handreach.budget.LinkEnd;
import handreach.budget.LinkTerms;
import handreach.budget.SiteNoise;
import handreach.budget.UsualLinks;
import handreach.loadout.Antenna;
import handreach.loadout.AntennaDelta;
import handreach.loadout.Band;
import handreach.loadout.Burden;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.CopyQuality;
import handreach.loadout.Loadout;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.loadout.UsualLoadouts;
import handreach.propagation.Terminals;
import handreach.uncertainty.Doubt;
import handreach.units.Db;
import handreach.units.Dbm;
import handreach.units.Frequency;
import java.util.Optional;

/** Invented links for the tests of this room: a base with the factory antenna, and people with better or longer ones. */
final class PaperLinks {
    static final Frequency CHANNEL = new Frequency(155);
    static final Terminals HEIGHTS = new Terminals(1.5, 1.5);
    private static final SiteNoise QUIET = new SiteNoise("invented", 6.5, 6, "invented");
    private static final Radio RADIO = new Radio("invented", Dbm.ofWatts(5), new Dbm(-119), Modulation.FM_12_5);
    private static final Burden LIGHT = new Burden(15, 25, 0, 1);

    private PaperLinks() {}

    static ReachLink control() {
        return link("control", control(1.5));
    }

    /** A quarter-wave whip so many decibels over the control. */
    static ReachLink whip(double overControlDb, double doubtDb) {
        return link("whip", whip(Radiator.QUARTER_WAVE, 0.46, overControlDb, doubtDb));
    }

    /** A long whip with a flattened pattern. */
    static ReachLink longWhip(double overControlDb) {
        return link("long whip", whip(Radiator.FIVE_EIGHTHS, 1.2, overControlDb, 0.6));
    }

    /** Somebody with the control at the face, without outside noise. */
    static LinkEnd person() {
        return UsualLinks.end(control(1.5), SiteNoise.NONE);
    }

    private static ReachLink link(String name, Loadout carried) {
        LinkTerms terms = UsualLinks.terms(CHANNEL, CopyQuality.DAQ_3_4, 0.9);
        LinkBudget budget =
                LinkBudget.between(UsualLinks.end(control(1.5), QUIET), UsualLinks.end(carried, QUIET), terms);
        return ReachLink.of(name, budget, HEIGHTS);
    }

    private static Loadout control(double heightM) {
        Antenna helical = new Antenna("factory", Radiator.SHORT_HELICAL, 0.15, false, LIGHT, Optional.empty());
        return new Loadout(
                "control",
                RADIO,
                helical,
                CarryLoss.standard(Carry.FACE, Band.VHF),
                heightM,
                UsualLoadouts.control(Band.VHF));
    }

    private static Loadout whip(Radiator radiator, double lengthM, double overControlDb, double doubtDb) {
        Antenna whip = new Antenna("whip", radiator, lengthM, false, LIGHT, Optional.empty());
        AntennaDelta delta =
                AntennaDelta.declared("whip", new Db(overControlDb), Doubt.common(doubtDb), "hand", "invented bench");
        return new Loadout(
                "whip",
                RADIO,
                whip,
                CarryLoss.standard(Carry.FACE, Band.VHF),
                1.5,
                UsualLoadouts.over(delta, Band.VHF));
    }
}
