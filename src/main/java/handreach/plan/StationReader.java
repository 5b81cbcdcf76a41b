package handreach.plan;

import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.Keyword;
import handreach.input.Range;
import handreach.loadout.Carry;
import handreach.loadout.Loadout;
import handreach.loadout.Radio;
import handreach.relay.RelayMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;

/** Reads what stands already out of a plan. */
final class StationReader {
    static final Range RECEIVE = new Range("receive_mhz", 30, 1000, "MHz");
    static final Range TRANSMIT = new Range("transmit_mhz", 30, 1000, "MHz");
    /** Usual loss of a short line; common practice, no source. */
    private static final double USUAL_FEED_LOSS_DB = 1;

    private final PlanSection root;
    private final Faults faults;

    StationReader(PlanSection root, Faults faults) {
        this.root = root;
        this.faults = faults;
    }

    /** What the antenna stands on, outside in either case. */
    enum Support {
        MAST(Carry.MAST),
        VEHICLE(Carry.ROOF);

        static final Keyword<Support> KEYWORD =
                Keyword.of(List.of(values()), one -> one.name().toLowerCase(Locale.ROOT));

        private final Carry stand;

        Support(Carry stand) {
            this.stand = stand;
        }
    }

    /** @param names the name of a section, noting that it is taken */
    List<Places.StationEntry> stations(BiFunction<PlanSection, String, String> names) {
        List<Places.StationEntry> stations = new ArrayList<>();
        for (PlanSection section : root.tables("station")) {
            String name = names.apply(section, "ridge relay");
            Optional<Position> at = PlanReader.place(section, "at");
            if (!section.has("at"))
                section.fault("at", "is missing. Add at = \"46.5, 8.1\" (or degrees-minutes, UTM, MGRS).");
            Places.StationGear gear = gear(section, name);
            Places.Tuning tuning = tuning(section);
            boolean isRelay = section.flag("relay", false);
            RelayMode mode = section.word("mode", RelayMode.KEYWORD, RelayMode.TWO_FREQUENCY);
            if (section.has("mode") && !isRelay)
                section.fault(
                        "mode", "says how a relay passes speech on. Add relay = true, or leave it out for a base.");
            boolean isBase = section.flag("base", false);
            if (isBase && isRelay)
                section.fault(
                        "base",
                        "stands beside relay = true. A relay passes speech on and nobody talks with it; keep one.");
            if (isBase
                    && !isRelay
                    && (tuning.receiveMhz().isPresent() || tuning.transmitMhz().isPresent()))
                section.fault(
                        "base",
                        "stands on a frequency of its own, on which people do not talk with one another. Leave its frequencies out.");
            section.refuseUnknownKeys();
            at.ifPresent(place -> stations.add(new Places.StationEntry(
                    name, place, gear, tuning, isRelay ? Optional.of(mode) : Optional.empty(), isBase)));
        }
        return stations;
    }

    private Places.StationGear gear(PlanSection section, String name) {
        double power = section.requiredNumber(Radio.POWER);
        OptionalDouble sensitivity = EquipmentReader.sensitivity(section);
        if (!section.has("sensitivity_dbm") && !section.has("sensitivity_uv"))
            missing(section, name, "sensitivity_dbm or sensitivity_uv", "sensitivity_dbm = -119, from its data sheet");
        Optional<Equipment.StatedGain> gain = EquipmentReader.statedGain(section, false);
        if (!section.has("gain_dbd") && !section.has("gain_dbi"))
            missing(section, name, "gain_dbd or gain_dbi", "gain_dbd = 0 for a half-wave dipole or the like");
        Support support = section.word("on", Support.KEYWORD, Support.MAST);
        double height = section.number(Loadout.HEIGHT, support.stand.usualHeightM());
        double feed = section.number(QuestionsReader.FEED_LOSS, USUAL_FEED_LOSS_DB);
        return new Places.StationGear(
                power,
                sensitivity.orElse(Radio.SENSITIVITY.low()),
                gain.orElse(new Equipment.StatedGain(0, 1, "")),
                support.stand,
                height,
                feed,
                section.has(QuestionsReader.FEED_LOSS.key()),
                NoiseChoice.read(section));
    }

    private void missing(PlanSection section, String name, String key, String example) {
        faults.add(section.source(), section.line(), "[station] " + name + " has no " + key + ". Add " + example + ".");
    }

    private static Places.Tuning tuning(PlanSection section) {
        OptionalDouble both = section.number(Channel.FREQUENCY);
        OptionalDouble receive = section.number(RECEIVE);
        OptionalDouble transmit = section.number(TRANSMIT);
        boolean isSplit = section.has(RECEIVE.key()) || section.has(TRANSMIT.key());
        if (isSplit && section.has(Channel.FREQUENCY.key()))
            section.fault(
                    Channel.FREQUENCY.key(), "stands beside receive_mhz or transmit_mhz. Keep one way of saying it.");
        if (isSplit && !(section.has(RECEIVE.key()) && section.has(TRANSMIT.key())))
            section.fault(
                    section.has(RECEIVE.key()) ? RECEIVE.key() : TRANSMIT.key(),
                    "stands alone. Give both: receive_mhz, what the station hears, and transmit_mhz, what it sends.");
        return isSplit ? new Places.Tuning(receive, transmit) : new Places.Tuning(both, both);
    }
}
