package handreach.desktop;

import handreach.loadout.Battery;
import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.loadout.Loadout;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.loadout.StatedSensitivity;
import handreach.plan.Channel;
import handreach.plan.Equipment;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.PlanLimits;
import handreach.propagation.GroundType;
import handreach.propagation.NoiseEnvironment;
import handreach.terrain.Cover;
import handreach.terrain.Surface;
import java.util.List;

/** Which keys of the plan stand on which form. What is not here can be written in the text. */
final class EntryKeys {
    static final List<EntryKey> CHANNEL = List.of(
            EntryKey.text("name", "name"),
            EntryKey.number("frequency", Channel.FREQUENCY),
            EntryKey.word("polarization", "polarization", Channel.POLARIZATION),
            EntryKey.word("modulation", "modulation", Modulation.KEYWORD));

    static final List<EntryKey> TARGET = List.of(
            EntryKey.word("copy wanted", "quality", CopyQuality.KEYWORD),
            EntryKey.word("people are", "fading", Fading.KEYWORD),
            EntryKey.number("share of places", Channel.ODDS));

    static final List<EntryKey> GROUND = List.of(
            EntryKey.word("tiles read as", "surface", Surface.KEYWORD),
            EntryKey.word("stands on it", "cover", Cover.KEYWORD),
            EntryKey.number("trees", Cover.CANOPY),
            EntryKey.number("roofs", Cover.ROOF),
            EntryKey.word("soil", "type", GroundType.KEYWORD),
            EntryKey.word("noise", "noise", NoiseEnvironment.KEYWORD),
            EntryKey.number("measured noise", PlanLimits.NOISE_FLOOR).with(PlanLimits.NOISE_BANDWIDTH.key()),
            EntryKey.number("read in", PlanLimits.NOISE_BANDWIDTH).with(PlanLimits.NOISE_FLOOR.key()));

    static final List<EntryKey> BENCH =
            List.of(EntryKey.text("the control is", "control"), EntryKey.text("mounting used", "mount"));

    static final List<EntryKey> RADIO = List.of(
            EntryKey.number("power", Radio.POWER),
            EntryKey.number("sensitivity", Radio.SENSITIVITY)
                    .insteadOf("sensitivity_uv", "sensitivity_across", "sensitivity_for"),
            EntryKey.number("or in microvolts", StatedSensitivity.MICROVOLTS)
                    .with("sensitivity_across")
                    .insteadOf("sensitivity_dbm"),
            EntryKey.word("these are", "sensitivity_across", StatedSensitivity.Across.KEYWORD)
                    .with("sensitivity_uv"),
            EntryKey.number("noise figure", Radio.NOISE_FIGURE),
            EntryKey.number("battery", Battery.CAPACITY).with("send_ma", "receive_ma", "wait_ma"),
            EntryKey.number("draws sending", Battery.SEND).with("battery_mah", "receive_ma", "wait_ma"),
            EntryKey.number("draws receiving", Battery.RECEIVE).with("battery_mah", "send_ma", "wait_ma"),
            EntryKey.number("draws waiting", Battery.WAIT).with("battery_mah", "send_ma", "receive_ma"));

    static final List<EntryKey> ANTENNA = List.of(
            EntryKey.word("radiator", "radiator", Radiator.KEYWORD),
            EntryKey.number("length", PlanLimits.LENGTH),
            EntryKey.number("mass", PlanLimits.MASS),
            EntryKey.number("price", PlanLimits.PRICE),
            EntryKey.number("stiffness", PlanLimits.STIFFNESS),
            EntryKey.number("over the control", PlanLimits.DELTA).with("delta_uncertainty_db", "delta_mount"),
            EntryKey.number("its uncertainty", PlanLimits.DELTA_UNCERTAINTY).with("delta_db", "delta_mount"),
            EntryKey.text("measured how", "delta_mount").with("delta_db", "delta_uncertainty_db"),
            EntryKey.text("name on the bench", "bench"),
            EntryKey.text("with the wire", "bench_with_counterpoise"));

    private EntryKeys() {}

    static List<EntryKey> loadout(Plan plan) {
        return List.of(
                EntryKey.choice(
                        "radio",
                        "radio",
                        plan.equipment().radios().stream()
                                .map(Equipment.RadioEntry::name)
                                .toList()),
                EntryKey.choice(
                        "antenna",
                        "antenna",
                        plan.equipment().antennas().stream()
                                .map(Equipment.AntennaEntry::name)
                                .toList()),
                EntryKey.flag("counterpoise wire", "counterpoise"),
                EntryKey.word("carried", "carry", Carry.KEYWORD),
                EntryKey.number("antenna stands", Loadout.HEIGHT),
                EntryKey.number("leans", Loadout.TILT),
                EntryKey.word("noise there", "noise", NoiseEnvironment.KEYWORD));
    }

    static List<EntryKey> relay(Plan plan) {
        return List.of(
                EntryKey.number("power", Radio.POWER),
                EntryKey.number("sensitivity", Radio.SENSITIVITY),
                EntryKey.number("antenna gain", PlanLimits.RELAY_GAIN),
                EntryKey.number("feed loss", PlanLimits.FEED_LOSS),
                EntryKey.number("mast", PlanLimits.MAST),
                EntryKey.number("slope at most", PlanLimits.MAX_SLOPE),
                EntryKey.number("apart at least", PlanLimits.MIN_SEPARATION),
                EntryKey.choice(
                        "walked to from",
                        "walk_from",
                        plan.places().positions().stream()
                                .map(Places.PositionEntry::name)
                                .toList()),
                EntryKey.number("walk at most", PlanLimits.MAX_WALK_MINUTES).with("walk_from"));
    }
}
