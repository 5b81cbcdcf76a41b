package handreach.study;

import handreach.loadout.Loadout;
import handreach.relay.Assignment;
import java.util.List;
import java.util.Optional;

/**
 * Who of a plan must carry what.
 *
 * @param scene the plan, opened
 * @param people who carries; numbers in what was found count these, and their options
 * @param asPlanned what comes of what the plan gives them; empty where that may not be handed out
 * @param found the least burden, the next best, and talks that nothing serves
 * @param relayed relays that stand and bring the talks that nothing serves to the wanted odds, as people are loaded, in their order; nothing
 *     where none does
 * @param warnings what was doubtful
 */
public record AssignAnswer(
        Scene scene,
        List<Person> people,
        Optional<Assignment.Choice> asPlanned,
        Assignment found,
        List<Optional<String>> relayed,
        List<String> warnings) {
    /**
     * Somebody who carries something; all of a route or sector carry the same.
     *
     * @param name of the position, route or sector
     * @param kind which of them
     * @param planned what the plan gives them
     * @param options what they may carry; their own alone where they keep it
     */
    public record Person(String name, PlacesAnswer.Kind kind, Loadout planned, List<Loadout> options) {
        public Person {
            options = List.copyOf(options);
        }
    }

    public AssignAnswer {
        people = List.copyOf(people);
        relayed = List.copyOf(relayed);
        warnings = List.copyOf(warnings);
    }
}
