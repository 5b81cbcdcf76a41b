package handreach.budget;

import handreach.loadout.Antenna;
import handreach.loadout.AntennaDelta;
import handreach.loadout.AntennaGain;
import handreach.loadout.Band;
import handreach.loadout.Burden;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.ControlAnchor;
import handreach.loadout.CopyQuality;
import handreach.loadout.Loadout;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.loadout.UsualLoadouts;
import handreach.propagation.LossPart;
import handreach.propagation.PathLoss;
import handreach.uncertainty.Doubt;
import handreach.units.Db;
import handreach.units.Dbd;
import handreach.units.Dbm;
import handreach.units.Frequency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented radios, antennas and paths for the tests of this room. */
final class PaperLink {
    static final Frequency CHANNEL = new Frequency(155);
    static final Burden LIGHT = new Burden(15, 25, 0, 1);
    static final SiteNoise NOISY = new SiteNoise("invented", 12.5, 6, "invented");
    static final SiteNoise RURAL = new SiteNoise("invented", 6.5, 6, "invented");

    private PaperLink() {}

    static Radio radio(double powerW) {
        return new Radio("invented", Dbm.ofWatts(powerW), new Dbm(-119), Modulation.FM_12_5);
    }

    static Antenna helical() {
        return new Antenna("factory", Radiator.SHORT_HELICAL, 0.15, false, LIGHT, Optional.empty());
    }

    static Antenna whip(boolean wire) {
        String name = wire ? "whip with wire" : "whip";
        return new Antenna(name, Radiator.QUARTER_WAVE, 0.46, wire, LIGHT, Optional.empty());
    }

    static Loadout control(double powerW, Carry carry) {
        return UsualLoadouts.of("control", radio(powerW), helical(), carry, Band.VHF, UsualLoadouts.control(Band.VHF));
    }

    static AntennaDelta delta(double db, String mounting) {
        return AntennaDelta.declared("whip", new Db(db), Doubt.common(0.6), mounting, "invented bench");
    }

    static Loadout whipped(double db, Carry carry) {
        return new Loadout(
                "whip",
                radio(5),
                whip(false),
                CarryLoss.standard(carry, Band.VHF),
                carry.usualHeightM(),
                UsualLoadouts.over(delta(db, "hand"), Band.VHF));
    }

    static Loadout with(Loadout loadout, AntennaGain gain) {
        return new Loadout(
                loadout.name(), loadout.radio(), loadout.antenna(), loadout.carry(), loadout.heightM(), gain);
    }

    static AntennaGain anchored(AntennaGain gain, double dbd) {
        ControlAnchor anchor = ControlAnchor.measured(Band.VHF, new Dbd(dbd), 1, "invented range");
        return gain instanceof AntennaGain.OverControl over
                ? new AntennaGain.OverControl(over.delta(), over.move(), anchor, over.swr())
                : new AntennaGain.Control(anchor, OptionalDouble.empty());
    }

    static LinkTerms terms() {
        return UsualLinks.terms(CHANNEL, CopyQuality.DAQ_3_4, 0.9);
    }

    static LinkEnd end(Loadout loadout) {
        return UsualLinks.end(loadout, RURAL);
    }

    static PathLoss path(double... parts) {
        double sum = 0;
        List<LossPart> list = new java.util.ArrayList<>();
        for (double part : parts) {
            list.add(new LossPart("part " + list.size(), part, "invented"));
            sum += part;
        }
        return new PathLoss("invented", sum, parts[0], list, List.of(), List.of());
    }
}
