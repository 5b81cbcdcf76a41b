package handreach.desktop;

import handreach.geodesy.PlaceForm;
import handreach.loadout.Battery;
import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.loadout.Loadout;
import handreach.loadout.Modulation;
import handreach.loadout.NeededWays;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.loadout.StatedSensitivity;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.Plan;
import handreach.plan.PlanHeader;
import handreach.plan.PlanLimits;
import handreach.propagation.NoiseEnvironment;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Which keys of the plan stand on which form: the plan itself, the channel, and what is carried. */
final class EntryKeys {
    static final List<EntryKey> PLAN = List.of(
            EntryKey.text("title", "title"),
            EntryKey.text("note", "note"),
            EntryKey.word("places are written", "place_form", PlaceForm.KEYWORD),
            EntryKey.choice("lengths are", "units", PlanLimits.UNITS),
            EntryKey.number("magnetic north from true", PlanHeader.DECLINATION),
            EntryKey.number("format", PlanLimits.FORMAT));

    static final List<EntryKey> TARGET = List.of(
            EntryKey.word("copy wanted", "quality", CopyQuality.KEYWORD),
            EntryKey.word("people are", "fading", Fading.KEYWORD),
            EntryKey.number("share of places", Channel.ODDS),
            EntryKey.word("ways that must work", "ways", NeededWays.KEYWORD));

    static final List<EntryKey> CHANNEL = List.of(
            EntryKey.name("name", "name"),
            EntryKey.number("frequency", Channel.FREQUENCY),
            EntryKey.word("polarization", "polarization", Channel.POLARIZATION),
            EntryKey.word("modulation", "modulation", Modulation.KEYWORD),
            EntryKey.number("a relay hears", PlanLimits.RECEIVE).with("transmit_mhz"),
            EntryKey.number("and sends", PlanLimits.TRANSMIT).with("receive_mhz"));

    /** By which entries without a name are told apart. */
    static final List<EntryKey> TITLES = List.of(
            EntryKey.text("name", "name"),
            EntryKey.text("radio", "radio"),
            EntryKey.number("power", Radio.POWER),
            EntryKey.text("antenna", "antenna"),
            EntryKey.text("channel", "channel"),
            EntryKey.text("carried", "carry"),
            EntryKey.number("frequency", Channel.FREQUENCY));

    static final List<EntryKey> BENCH = List.of(
            EntryKey.file("readings", "file"),
            EntryKey.text("the control is", "control"),
            EntryKey.text("mounting used", "mount"));

    static final List<EntryKey> ANCHOR = List.of(
            EntryKey.number("the control radiates", PlanLimits.ANCHOR_GAIN).with("uncertainty_db"),
            EntryKey.number("its uncertainty", PlanLimits.UNCERTAINTY).with("control_gain_dbd"),
            EntryKey.text("measured how", "source"));

    static final List<EntryKey> RADIO = joined(
            List.of(EntryKey.number("power", Radio.POWER)),
            sensitivity(),
            List.of(
                    EntryKey.number("noise figure", Radio.NOISE_FIGURE),
                    EntryKey.number("battery", Battery.CAPACITY).with("send_ma", "receive_ma", "wait_ma"),
                    EntryKey.number("draws sending", Battery.SEND).with("battery_mah", "receive_ma", "wait_ma"),
                    EntryKey.number("draws receiving", Battery.RECEIVE).with("battery_mah", "send_ma", "wait_ma"),
                    EntryKey.number("draws waiting", Battery.WAIT).with("battery_mah", "send_ma", "receive_ma"),
                    EntryKey.number("sends", Battery.SEND_PERCENT),
                    EntryKey.number("receives", Battery.RECEIVE_PERCENT)));

    static final List<EntryKey> ANTENNA = joined(
            List.of(
                    EntryKey.mark("factory antenna", "control"),
                    EntryKey.word("radiator", "radiator", Radiator.KEYWORD),
                    EntryKey.number("length", PlanLimits.LENGTH),
                    EntryKey.number("mass", PlanLimits.MASS),
                    EntryKey.number("price", PlanLimits.PRICE),
                    EntryKey.number("stiffness", PlanLimits.STIFFNESS),
                    EntryKey.number("burden, as a rank", PlanLimits.BURDEN_RANK),
                    EntryKey.number("over the control", PlanLimits.DELTA).with("delta_uncertainty_db", "delta_mount"),
                    EntryKey.number("its uncertainty", PlanLimits.DELTA_UNCERTAINTY)
                            .with("delta_db", "delta_mount"),
                    EntryKey.text("measured how", "delta_mount").with("delta_db", "delta_uncertainty_db"),
                    EntryKey.text("name on the bench", "bench"),
                    EntryKey.text("with the wire", "bench_with_counterpoise"),
                    EntryKey.number("standing-wave ratio", PlanLimits.SWR),
                    EntryKey.file("measured pattern", "pattern")),
            gain());

    static final List<EntryKey> CARRY_LOSS = List.of(
            EntryKey.word("carried", "carry", Carry.KEYWORD),
            EntryKey.number("the control radiates", PlanLimits.CARRY_GAIN),
            EntryKey.number("its uncertainty", PlanLimits.UNCERTAINTY),
            EntryKey.number("spread", PlanLimits.SPREAD));

    private EntryKeys() {}

    @SafeVarargs
    static List<EntryKey> joined(List<EntryKey>... parts) {
        return Stream.of(parts).flatMap(List::stream).toList();
    }

    /** What a receiver hears, in one of its spellings. */
    static List<EntryKey> sensitivity() {
        return List.of(
                EntryKey.number("sensitivity", Radio.SENSITIVITY)
                        .insteadOf("sensitivity_uv", "sensitivity_across", "sensitivity_for"),
                EntryKey.number("or in microvolts", StatedSensitivity.MICROVOLTS)
                        .with("sensitivity_across")
                        .insteadOf("sensitivity_dbm"),
                EntryKey.word("these are", "sensitivity_across", StatedSensitivity.Across.KEYWORD)
                        .with("sensitivity_uv"),
                EntryKey.word("and hold for", "sensitivity_for", StatedSensitivity.Mark.KEYWORD)
                        .with("sensitivity_uv"));
    }

    /** A gain clear of any body, over one reference or the other. */
    static List<EntryKey> gain() {
        return List.of(
                EntryKey.number("gain over a dipole", PlanLimits.GAIN_DBD).insteadOf("gain_dbi"),
                EntryKey.number("or over isotropic", PlanLimits.GAIN_DBI).insteadOf("gain_dbd"),
                EntryKey.number("uncertainty of the gain", PlanLimits.GAIN_UNCERTAINTY),
                EntryKey.text("who states the gain", "gain_source"));
    }

    /** Noise from outside, and the floor where it was measured. */
    static List<EntryKey> noise(String words) {
        return List.of(
                EntryKey.word(words, "noise", NoiseEnvironment.KEYWORD),
                EntryKey.number("measured noise", PlanLimits.NOISE_FLOOR)
                        .with("noise_bandwidth_khz")
                        .insteadOf("noise_floor_uv"),
                EntryKey.number("or in microvolts", PlanLimits.NOISE_FLOOR_MICROVOLTS)
                        .with("noise_bandwidth_khz")
                        .insteadOf("noise_floor_dbm"),
                EntryKey.number("read in", PlanLimits.NOISE_BANDWIDTH).withOneOf("noise_floor_dbm", "noise_floor_uv"));
    }

    static List<String> radios(Plan plan) {
        return plan.equipment().radios().stream()
                .map(Equipment.RadioEntry::name)
                .toList();
    }

    private static List<String> antennas(Plan plan) {
        return plan.equipment().antennas().stream()
                .map(Equipment.AntennaEntry::name)
                .toList();
    }

    static List<String> loadouts(Plan plan) {
        return plan.equipment().loadouts().stream()
                .map(Equipment.LoadoutEntry::name)
                .toList();
    }

    static List<EntryKey> powerStep(Plan plan) {
        return List.of(
                EntryKey.choice("of the radio", "radio", radios(plan)),
                EntryKey.number("power", Radio.POWER),
                EntryKey.number("draws sending", Battery.SEND));
    }

    static List<EntryKey> delta(Plan plan) {
        return List.of(
                EntryKey.choice("antenna", "antenna", antennas(plan)),
                EntryKey.choice(
                        "channel",
                        "channel",
                        plan.channels().stream().map(Channel::name).toList()),
                EntryKey.number("over the control", PlanLimits.DELTA),
                EntryKey.number("its uncertainty", PlanLimits.DELTA_UNCERTAINTY),
                EntryKey.text("measured how", "delta_mount"));
    }

    static List<EntryKey> loadout(Plan plan) {
        List<EntryKey> keys = new ArrayList<>(List.of(
                EntryKey.choice("radio", "radio", radios(plan)),
                EntryKey.choice("antenna", "antenna", antennas(plan)),
                EntryKey.flag("counterpoise wire", "counterpoise"),
                EntryKey.word("carried", "carry", Carry.KEYWORD),
                EntryKey.number("antenna stands", Loadout.HEIGHT),
                EntryKey.number("leans", Loadout.TILT),
                EntryKey.number("feed loss", PlanLimits.FEED_LOSS)));
        keys.addAll(noise("noise there"));
        return keys;
    }
}
