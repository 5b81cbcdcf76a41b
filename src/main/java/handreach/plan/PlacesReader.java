package handreach.plan;

import handreach.geodesy.Compass;
import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.Range;
import handreach.reach.AreaRequest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads where people are out of a plan. */
final class PlacesReader {
    static final Range SPACING = new Range("spacing_m", 30, 20_000, "m");
    static final Range PACE = new Range("pace_kmh", 0.2, 150, "km/h");
    private static final Pattern CLOCK = Pattern.compile("([01]?\\d|2[0-3]):([0-5]\\d)");
    static final Range WEIGHT = new Range("weight", 0, 1000, "");

    private final Path folder;
    private final PlanSection root;
    private final Faults faults;
    private final List<String> loadouts;
    private final Set<String> names = new HashSet<>();

    PlacesReader(Path folder, PlanSection root, Faults faults, List<String> loadouts) {
        this.folder = folder;
        this.root = root;
        this.faults = faults;
        this.loadouts = loadouts;
    }

    Places places() {
        List<Places.PositionEntry> positions = positions();
        List<Places.RouteEntry> routes = new ArrayList<>();
        for (PlanSection section : root.tables("route")) {
            String name = name(section, "patrol north");
            Optional<Path> file = file(section, "file");
            routes.add(new Places.RouteEntry(
                    name, file.orElse(folder), loadout(section), weight(section), schedule(section)));
            section.refuseUnknownKeys();
        }
        List<Places.SectorEntry> sectors = new ArrayList<>();
        for (PlanSection section : root.tables("sector")) {
            String name = name(section, "sector 3");
            Optional<Path> file = file(section, "polygon");
            sectors.add(new Places.SectorEntry(
                    name, file.orElse(folder), loadout(section), weight(section), section.number(SPACING)));
            section.refuseUnknownKeys();
        }
        List<Places.StationEntry> stations = new StationReader(root, faults).stations(this::name);
        return new Places(area(positions), positions, routes, sectors, stations);
    }

    private static Optional<Places.Schedule> schedule(PlanSection section) {
        Optional<String> start = section.text("start");
        OptionalDouble pace = section.number(PACE);
        boolean isTimed = section.flag("timed", false);
        boolean hasStart = section.has("start");
        if (isTimed && (hasStart || section.has(PACE.key())))
            section.fault(
                    "timed", "says that the track has times of its own; start and pace_kmh say others. Keep one.");
        if (hasStart != section.has(PACE.key()))
            section.fault(
                    hasStart ? "start" : PACE.key(),
                    "does not say when people are where. Give both start = \"08:00\" and pace_kmh = 4.");
        if (isTimed) return Optional.of(new Places.Schedule(OptionalDouble.empty(), 0));
        if (start.isEmpty() || pace.isEmpty()) return Optional.empty();
        Matcher clock = CLOCK.matcher(start.get());
        if (!clock.matches()) {
            section.fault(
                    "start", "is \"" + start.get() + "\", a time by the clock is expected. Write it as \"08:00\".");
            return Optional.empty();
        }
        double seconds = 3600.0 * Integer.parseInt(clock.group(1)) + 60.0 * Integer.parseInt(clock.group(2));
        return Optional.of(new Places.Schedule(OptionalDouble.of(seconds), pace.getAsDouble()));
    }

    private Places.Area area(List<Places.PositionEntry> positions) {
        if (!root.has("area"))
            root.fault("area", "is missing. Add [area] with radius_km, and centre if it is not the first position.");
        PlanSection section = root.table("area");
        Optional<Position> centre = section.has("centre")
                ? centre(section, positions)
                : positions.stream().map(Places.PositionEntry::at).findFirst();
        if (centre.isEmpty() && !section.has("centre"))
            section.fault(
                    "centre", "is missing and there is no [[position]] to take it from. Add centre = \"a place\".");
        double radius = section.requiredNumber(AreaRequest.RADIUS);
        Optional<Path> polygon = PlanReader.existing(section, "polygon", false, folder, faults);
        section.refuseUnknownKeys();
        return new Places.Area(centre.orElse(new Position(0, 0)), radius, polygon);
    }

    private Optional<Position> centre(PlanSection section, List<Places.PositionEntry> positions) {
        String key = section.keyOf(Reference.CENTRE);
        Optional<String> written = section.text(key);
        Optional<Position> named = positions.stream()
                .filter(p -> written.isPresent() && p.name().equals(written.get()))
                .map(Places.PositionEntry::at)
                .findFirst();
        return named.isPresent() ? named : PlanReader.place(section, key);
    }

    private List<Places.PositionEntry> positions() {
        List<Places.PositionEntry> positions = new ArrayList<>();
        List<PlanSection> sections = root.tables("position");
        List<String> known =
                sections.stream().flatMap(one -> one.text("name").stream()).toList();
        for (PlanSection section : sections) {
            String name = name(section, "base camp");
            Optional<Places.Facing> facing = facing(section, name, known);
            Optional<Position> at = PlanReader.place(section, "at");
            if (!section.has("at"))
                section.fault("at", "is missing. Add at = \"46.5, 8.1\" (or degrees-minutes, UTM, MGRS).");
            boolean base = section.flag("base", false);
            if (at.isPresent())
                positions.add(
                        new Places.PositionEntry(name, at.get(), loadout(section), base, weight(section), facing));
            else {
                loadout(section);
                weight(section);
            }
            section.refuseUnknownKeys();
        }
        return positions;
    }

    private static Optional<Places.Facing> facing(PlanSection section, String name, List<String> known) {
        OptionalDouble heading = section.number(Compass.HEADING);
        Optional<String> towards = section.reference(Reference.TOWARDS, known);
        if (section.has("heading_deg") && section.has("towards"))
            section.fault("towards", "and heading_deg both say which way people face. Keep one of them.");
        if (towards.isPresent() && towards.get().equals(name))
            section.fault("towards", "is \"" + name + "\" itself. Name another position, or write heading_deg.");
        if (heading.isEmpty() && towards.isEmpty()) return Optional.empty();
        return Optional.of(new Places.Facing(heading, towards));
    }

    private Optional<String> loadout(PlanSection section) {
        return section.reference(Reference.LOADOUT, loadouts);
    }

    private static double weight(PlanSection section) {
        return section.number(WEIGHT, 1);
    }

    private Optional<Path> file(PlanSection section, String key) {
        if (!section.has(key)) section.fault(key, "is missing. Name a file beside the plan.");
        return PlanReader.existing(section, key, false, folder, faults);
    }

    private String name(PlanSection section, String example) {
        String name = section.requiredName("name", example);
        if (!name.isEmpty() && !names.add(name))
            section.fault("name", "\"" + name + "\" is used twice. Give every place a name of its own.");
        return name;
    }
}
