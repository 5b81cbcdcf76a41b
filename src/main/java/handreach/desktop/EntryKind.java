package handreach.desktop;

import handreach.plan.NameKind;
import handreach.plan.Plan;
import handreach.plan.PlanText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The parts of a plan in the order in which their forms are listed. */
enum EntryKind {
    PLAN("", Several.ONE, "Plan", "The plan", plan -> EntryKeys.PLAN),
    TARGET("target", Several.ONE, "Plan", "What counts as copy", plan -> EntryKeys.TARGET),
    CHANNEL("channel", Several.NUMBERED, "Channels", "channel", plan -> EntryKeys.CHANNEL),
    RADIO("radio", Several.NAMED, "Radios", "radio", plan -> EntryKeys.RADIO),
    POWER_STEP("power_step", Several.NUMBERED, "Lower powers", "lower power", EntryKeys::powerStep),
    ANTENNA("antenna", Several.NAMED, "Antennas", "antenna", plan -> EntryKeys.ANTENNA),
    DELTA("delta", Several.NUMBERED, "Deltas on a channel", "delta on a channel", EntryKeys::delta),
    LOADOUT("loadout", Several.NAMED, "Loadouts", "loadout", EntryKeys::loadout),
    CARRY_LOSS(
            "carry_loss", Several.NUMBERED, "Own body losses", "body loss you measured", plan -> EntryKeys.CARRY_LOSS),
    BENCH("bench", Several.OPTIONAL, "Measured", "The bench readings", plan -> EntryKeys.BENCH),
    ANCHOR("anchor", Several.OPTIONAL, "Measured", "The control against a dipole", plan -> EntryKeys.ANCHOR),
    GROUND("ground", Several.ONE, "Ground", "The ground", plan -> GroundKeys.GROUND),
    AREA("area", Several.ONE, "Ground", "The area", plan -> GroundKeys.AREA),
    POSITION("position", Several.NAMED, "Positions", "position", GroundKeys::position),
    ROUTE("route", Several.NAMED, "Routes", "route", GroundKeys::route),
    SECTOR("sector", Several.NAMED, "Sectors", "sector", GroundKeys::sector),
    STATION("station", Several.NAMED, "Stations", "station", plan -> GroundKeys.STATION),
    REACH("reach", Several.OPTIONAL, "Questions", "The reach", QuestionKeys::reach),
    DECIDE("decide", Several.OPTIONAL, "Questions", "What is worth carrying", plan -> QuestionKeys.DECIDE),
    RELAY("relay", Several.OPTIONAL, "Questions", "The relay", QuestionKeys::relay),
    ASSIGN("assign", Several.OPTIONAL, "Questions", "Who must carry what", QuestionKeys::assign),
    WALK("walk", Several.NAMED, "Walks", "walk", QuestionKeys::walk),
    CALIBRATION("calibration", Several.OPTIONAL, "Learned", "What walks have taught", plan -> QuestionKeys.CALIBRATION),
    DOUBT("doubt", Several.OPTIONAL, "Learned", "Doubts you know better", plan -> QuestionKeys.DOUBT);

    /** How many of a kind there can be, and how they are told apart. */
    enum Several {
        ONE,
        /** One, which can be left out. */
        OPTIONAL,
        NAMED,
        NUMBERED
    }

    private final String section;
    private final Several several;
    private final String group;
    private final String words;
    private final Function<Plan, List<EntryKey>> keys;

    EntryKind(String section, Several several, String group, String words, Function<Plan, List<EntryKey>> keys) {
        this.section = section;
        this.several = several;
        this.group = group;
        this.words = words;
        this.keys = keys;
    }

    static EntryKind of(Entry entry) {
        return Arrays.stream(values())
                .filter(kind -> kind.section.equals(entry.section()))
                .findFirst()
                .orElseThrow();
    }

    String section() {
        return section;
    }

    Several several() {
        return several;
    }

    boolean isSeveral() {
        return several == Several.NAMED || several == Several.NUMBERED;
    }

    /** Head under which its entries are listed. */
    String group() {
        return group;
    }

    /** The keys of one entry, without the name of one of several that have names. */
    List<EntryKey> keys(Plan plan) {
        return keys.apply(plan);
    }

    /** A fresh one: {@code A station}. */
    String fresh() {
        return (words.startsWith("a") ? "An " : "A ") + words;
    }

    /** The kind of its names, where other keys may name it. */
    Optional<NameKind> nameKind() {
        return Arrays.stream(NameKind.values())
                .filter(kind -> kind.name().equals(name()))
                .findFirst();
    }

    /** What the text has of this kind; the one entry of a kind of which there is one, whether it stands there yet or not. */
    List<Entry> entries(String text) {
        boolean isOne = !isSeveral() || this == CHANNEL && PlanText.hasSection(text, section);
        if (isOne) return List.of(Entry.of(section));
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < PlanText.count(text, section); i++) {
            Entry numbered = Entry.at(section, i);
            Optional<String> name = numbered.value(text, "name").map(Entry::plain);
            entries.add(
                    several == Several.NAMED && name.isPresent()
                            ? Entry.of(section, name.get().strip())
                            : numbered);
        }
        return entries;
    }

    /** Names that are taken, where entries have names. */
    List<String> names(String text) {
        return entries(text).stream().flatMap(entry -> entry.name().stream()).toList();
    }

    /** What an entry is called in the list. */
    String words(String text, Entry entry) {
        if (!isSeveral()) return words;
        if (entry.name().isPresent()) return entry.name().get();
        String said = EntryKeys.TITLES.stream()
                .flatMap(key -> entry
                        .value(text, key.key())
                        .map(value -> key.range()
                                .map(range -> value + " " + range.unit())
                                .orElse(Entry.plain(value)))
                        .stream())
                .collect(Collectors.joining(", "));
        return said.isEmpty() ? fresh() : said;
    }
}
