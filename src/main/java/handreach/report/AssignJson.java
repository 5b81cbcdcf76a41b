package handreach.report;

import handreach.relay.Assignment;
import handreach.study.AssignAnswer;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Who must carry what as one JSON object; component names are its keys, see docs/schema. */
public record AssignJson(
        String title,
        double odds,
        String model,
        List<String> verdict,
        List<Person> people,
        Optional<Choice> asPlanned,
        Optional<Choice> best,
        Optional<Choice> next,
        Optional<Choice> oneDbMore,
        List<Talk> hopeless,
        Optional<Talk> together,
        List<String> warnings) {
    private record Person(String name, String kind, String planned, List<String> options) {}

    private record Choice(double burden, List<Carries> carries, List<Talk> talks) {}

    private record Carries(String name, String loadout) {}

    private record Talk(String a, String b, String loadoutA, String loadoutB, Optional<Double> spareDb) {}

    /** The answer as it is written. */
    public static AssignJson of(AssignAnswer answer) {
        return new AssignJson(
                answer.scene().plan().header().title(),
                answer.scene().plan().channel().wish().odds(),
                answer.scene().model().name(),
                new AssignComposer(answer).sentences(),
                answer.people().stream()
                        .map(person -> new Person(
                                person.name(),
                                person.kind().word(),
                                person.planned().name(),
                                person.options().stream().map(one -> one.name()).toList()))
                        .toList(),
                answer.asPlanned().map(one -> choice(answer, one)),
                answer.found().best().map(one -> choice(answer, one)),
                answer.found().next().map(one -> choice(answer, one)),
                answer.found().oneMore().map(one -> choice(answer, one)),
                answer.found().hopeless().stream().map(one -> talk(answer, one)).toList(),
                answer.found().together().map(one -> talk(answer, one)),
                answer.warnings());
    }

    private static Choice choice(AssignAnswer answer, Assignment.Choice choice) {
        return new Choice(
                choice.burden(),
                IntStream.range(0, answer.people().size())
                        .mapToObj(p -> new Carries(
                                answer.people().get(p).name(),
                                option(answer, p, choice.options().get(p))))
                        .toList(),
                choice.talks().stream().map(one -> talk(answer, one)).toList());
    }

    private static Talk talk(AssignAnswer answer, Assignment.Short talk) {
        return new Talk(
                answer.people().get(talk.a()).name(),
                answer.people().get(talk.b()).name(),
                option(answer, talk.a(), talk.optionA()),
                option(answer, talk.b(), talk.optionB()),
                Double.isInfinite(talk.spareDb()) ? Optional.empty() : Optional.of(talk.spareDb()));
    }

    private static String option(AssignAnswer answer, int person, int option) {
        return answer.people().get(person).options().get(option).name();
    }
}
