package handreach.desktop;

import handreach.loadout.Loadout;
import handreach.loadout.Radio;
import handreach.plan.Channel;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.PlanLimits;
import handreach.propagation.Atmosphere;
import handreach.propagation.Foliage;
import handreach.propagation.Ground;
import handreach.propagation.GroundType;
import handreach.reach.AreaRequest;
import handreach.relay.RelayMode;
import handreach.terrain.Cover;
import handreach.terrain.CoverLegend;
import handreach.terrain.Surface;
import java.util.List;
import java.util.stream.Stream;

/** Which keys of the plan stand on the forms of the ground and of who and what is where. */
final class GroundKeys {
    static final List<EntryKey> GROUND = EntryKeys.joined(
            List.of(
                    EntryKey.folder("elevation tiles", "tiles"),
                    EntryKey.word("tiles read as", "surface", Surface.KEYWORD),
                    EntryKey.word("stands on it", "cover", Cover.KEYWORD),
                    EntryKey.word("leaves", "foliage", Foliage.KEYWORD),
                    EntryKey.number("trees", Cover.CANOPY),
                    EntryKey.number("roofs", Cover.ROOF),
                    EntryKey.file("land-cover raster", "land_cover"),
                    EntryKey.word("its legend", "legend", CoverLegend.KEYWORD),
                    EntryKey.file("areas of cover", "cover_areas")),
            EntryKeys.noise("noise"),
            List.of(
                    EntryKey.word("soil", "type", GroundType.KEYWORD),
                    EntryKey.number("permittivity", Ground.PERMITTIVITY),
                    EntryKey.number("conductivity", Ground.CONDUCTIVITY),
                    EntryKey.number("refractivity gradient", Atmosphere.GRADIENT)
                            .insteadOf("k_factor"),
                    EntryKey.number("or earth radius factor", Atmosphere.FACTOR).insteadOf("refractivity_gradient"),
                    EntryKey.number("surface refractivity", Atmosphere.SURFACE_REFRACTIVITY)));

    static final List<EntryKey> AREA = List.of(
            EntryKey.text("centre, place or position", "centre"),
            EntryKey.number("radius", AreaRequest.RADIUS),
            EntryKey.file("narrowed to", "polygon"));

    static final List<EntryKey> STATION = EntryKeys.joined(
            List.of(EntryKey.place("stands at", "at"), EntryKey.number("power", Radio.POWER)),
            EntryKeys.sensitivity(),
            EntryKeys.gain(),
            List.of(
                    EntryKey.choice("antenna is on a", "on", PlanLimits.SUPPORTS),
                    EntryKey.number("antenna stands", Loadout.HEIGHT),
                    EntryKey.number("feed loss", PlanLimits.FEED_LOSS)),
            EntryKeys.noise("noise there"),
            List.of(
                    EntryKey.number("frequency", Channel.FREQUENCY).insteadOf("receive_mhz", "transmit_mhz"),
                    EntryKey.number("or hears", PlanLimits.RECEIVE)
                            .with("transmit_mhz")
                            .insteadOf("frequency_mhz"),
                    EntryKey.number("and sends", PlanLimits.TRANSMIT)
                            .with("receive_mhz")
                            .insteadOf("frequency_mhz"),
                    EntryKey.flag("the base", "base"),
                    EntryKey.flag("passes speech on", "relay"),
                    EntryKey.word("works by", "mode", RelayMode.KEYWORD)));

    private GroundKeys() {}

    static List<String> positions(Plan plan) {
        return plan.places().positions().stream()
                .map(Places.PositionEntry::name)
                .toList();
    }

    /** Positions, routes and sectors: who can be asked for by name. */
    static List<String> everybody(Plan plan) {
        return Stream.of(
                        positions(plan).stream(),
                        plan.places().routes().stream().map(Places.RouteEntry::name),
                        plan.places().sectors().stream().map(Places.SectorEntry::name))
                .flatMap(names -> names)
                .toList();
    }

    /** Everybody, and the stations that can be talked with. */
    static List<String> parties(Plan plan) {
        return Stream.concat(
                        everybody(plan).stream(),
                        plan.places().stations().stream().map(Places.StationEntry::name))
                .toList();
    }

    private static List<EntryKey> people(Plan plan) {
        return List.of(
                EntryKey.choice("carries", "loadout", EntryKeys.loadouts(plan)),
                EntryKey.number("weight", PlanLimits.WEIGHT));
    }

    static List<EntryKey> position(Plan plan) {
        return EntryKeys.joined(
                List.of(EntryKey.place("is at", "at")),
                people(plan),
                List.of(
                        EntryKey.flag("the base", "base"),
                        EntryKey.number("faces", PlanLimits.HEADING).insteadOf("towards"),
                        EntryKey.choice("or faces", "towards", positions(plan)).insteadOf("heading_deg")));
    }

    static List<EntryKey> route(Plan plan) {
        return EntryKeys.joined(
                List.of(EntryKey.file("track", "file")),
                people(plan),
                List.of(
                        EntryKey.text("starts, such as 08:00", "start")
                                .with("pace_kmh")
                                .insteadOf("timed"),
                        EntryKey.number("pace", PlanLimits.PACE).with("start").insteadOf("timed"),
                        EntryKey.flag("or as the track was timed", "timed").insteadOf("start", "pace_kmh")));
    }

    static List<EntryKey> sector(Plan plan) {
        return EntryKeys.joined(
                List.of(EntryKey.file("its outline", "polygon")),
                people(plan),
                List.of(EntryKey.number("people stand every", PlanLimits.SPACING)));
    }
}
