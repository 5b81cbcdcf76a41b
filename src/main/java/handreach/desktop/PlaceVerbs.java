package handreach.desktop;

import handreach.geodesy.Position;
import handreach.plan.NameKind;
import handreach.plan.Places;
import handreach.plan.PlanText;
import handreach.study.Scene;
import java.util.ArrayList;
import java.util.List;
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

    void move(String name, Position to) {
        session.edit("move " + name, plan -> PlanText.withEntryValue(plan, SECTION, name, "at", PlanText.place(to)));
    }

    /** Tells what speaks against a place that was typed. */
    void doubt(String name, Position typed) {
        Scene scene = session.scene().get();
        session.worker()
                .inOrder(
                        () -> PlaceDoubt.of(scene, name, typed),
                        doubt -> doubt.ifPresent(words ->
                                session.tell(Notice.remark(words + " Undo (Ctrl+Z) puts it back where it was."))),
                        session::tell);
    }

    /** Adds a position under a free name. */
    void add(Position at) {
        add("place", List.of(at));
    }

    /** Adds positions under free names that begin with this word. */
    void add(String word, List<Position> places) {
        List<String> fresh = freeNames(word, places.size());
        session.edit("put " + String.join(", ", fresh), plan -> {
            String text = plan;
            for (int i = 0; i < fresh.size(); i++) text = put(text, fresh.get(i), places.get(i));
            return text;
        });
    }

    /** Makes a place the middle of the reach, by a position of the plan: the one that is there, else one that is put there. */
    void standHere(Position at) {
        List<Places.PositionEntry> there = session.scene().get().plan().places().positions().stream()
                .filter(entry -> PlanText.place(entry.at()).equals(PlanText.place(at)))
                .toList();
        if (!there.isEmpty()) {
            standAt(there.get(0).name());
            return;
        }
        String name = freeNames("place", 1).get(0);
        session.edit(
                "stand at " + name,
                plan -> PlanText.withValue(put(plan, name, at), "reach", "from", PlanText.quoted(name)));
    }

    private List<String> freeNames(String word, int count) {
        Set<String> taken = names();
        List<String> fresh = new ArrayList<>();
        for (int number = 1; fresh.size() < count; number++)
            if (!taken.contains(word + " " + number)) fresh.add(word + " " + number);
        return fresh;
    }

    private static String put(String plan, String name, Position at) {
        return PlanText.withEntry(
                plan, SECTION, List.of("name = " + PlanText.quoted(name), "at = " + PlanText.place(at)));
    }

    private Set<String> names() {
        return session.scene().get().plan().places().positions().stream()
                .map(Places.PositionEntry::name)
                .collect(Collectors.toSet());
    }

    void remove(String name) {
        session.edit("take out " + name, plan -> PlanText.withoutEntry(plan, SECTION, name));
    }

    /** Another name for a position; all that refers to it follows. */
    void rename(String name, String fresh) {
        session.edit("rename " + name, plan -> PlanText.rename(plan, NameKind.POSITION, name, fresh));
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
