package handreach.desktop;

import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.PlanText;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What can be done to positions, written as edits of the plan's text. */
final class PlaceVerbs {
    private static final String SECTION = "position";

    private final Session session;

    PlaceVerbs(Session session) {
        this.session = session;
    }

    static String text(Position at) {
        return PlanText.quoted(String.format(Locale.ROOT, "%.6f, %.6f", at.latitudeDeg(), at.longitudeDeg()));
    }

    void move(String name, Position to) {
        session.edit("move " + name, plan -> PlanText.withEntryValue(plan, SECTION, name, "at", text(to)));
    }

    /** Adds a position under a free name. */
    void add(Position at) {
        Set<String> taken = names();
        int n = 1;
        while (taken.contains("place " + n)) n++;
        String name = "place " + n;
        session.edit(
                "put " + name,
                plan -> PlanText.withEntry(
                        plan, SECTION, List.of("name = " + PlanText.quoted(name), "at = " + text(at))));
    }

    private Set<String> names() {
        return session.scene().get().plan().places().positions().stream()
                .map(Places.PositionEntry::name)
                .collect(Collectors.toSet());
    }

    void remove(String name) {
        session.edit("take out " + name, plan -> PlanText.withoutEntry(plan, SECTION, name));
    }

    /** Another name for a position; what refers to it follows where the plan keeps it in one line. */
    void rename(String name, String fresh) {
        session.edit("rename " + name, plan -> {
            String renamed = PlanText.withEntryValue(plan, SECTION, name, "name", PlanText.quoted(fresh));
            String old = PlanText.quoted(name);
            StringBuilder out = new StringBuilder();
            for (String line : renamed.lines().toList()) {
                boolean isReference = line.matches("\\s*(from|centre|walk_from|base|start)\\s*=.*");
                out.append(isReference ? line.replace(old, PlanText.quoted(fresh)) : line)
                        .append('\n');
            }
            return out.toString();
        });
    }

    void carry(String name, Optional<String> loadout) {
        loadout.ifPresent(chosen -> session.edit(
                "loadout of " + name,
                plan -> PlanText.withEntryValue(plan, SECTION, name, "loadout", PlanText.quoted(chosen))));
    }

    /** Makes a position the middle of the reach. */
    void standAt(String name) {
        session.edit("reach from " + name, plan -> PlanText.withValue(plan, "reach", "from", PlanText.quoted(name)));
    }
}
