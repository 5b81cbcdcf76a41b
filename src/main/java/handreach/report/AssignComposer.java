package handreach.report;

import handreach.loadout.Antenna;
import handreach.loadout.Burden;
import handreach.loadout.Loadout;
import handreach.plan.Plan;
import handreach.relay.Assignment;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.CautionBlock;
import handreach.report.page.Cautions;
import handreach.report.page.Column;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.PlainText;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.AssignAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Who must carry what: the sentences and tables that every face shows. JSON: {@link AssignJson}. */
public final class AssignComposer {
    /** Talks that a page has room for; JSON has all. */
    private static final int MOST_TALKS = 30;

    /** Talks that nothing serves and a sentence has room for. */
    private static final int MOST_NAMED = 3;

    /** Half of the last digit in which decibels are told. */
    private static final double LEAST_DB = 0.05;

    private static final String RELAY = " The relay command says where a relay would help.";

    private final AssignAnswer answer;
    private final Plan plan;
    private final Lengths lengths;

    public AssignComposer(AssignAnswer answer) {
        this.answer = answer;
        this.plan = answer.scene().plan();
        this.lengths = plan.header().lengths();
    }

    /** A page of its own. */
    public Page page() {
        List<Section> sections = new ArrayList<>(details());
        if (!answer.warnings().isEmpty())
            sections.add(Section.of("Doubtful about the talks", new Bullets(answer.warnings())));
        sections.add(cautions());
        return page(sections);
    }

    /** The same for a terminal, on which what is doubtful stands apart from the answer. */
    public String text(int width) {
        List<Section> sections = new ArrayList<>(details());
        sections.add(cautions());
        return PlainText.of(page(sections), width);
    }

    /** Sections to stand in a report, verdict first. */
    public List<Section> sections() {
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("Who must carry what", verdict()));
        sections.addAll(details());
        return sections;
    }

    private Page page(List<Section> sections) {
        return new Page(
                "Who carries what",
                plan.header().title(),
                "Who must carry what, so that every wanted talk works?",
                verdict(),
                sections,
                "Made by Handreach from " + answer.scene().file().file().getFileName() + ".");
    }

    private static Section cautions() {
        return Section.of("Cautions", new CautionBlock(Cautions.CARRYING));
    }

    private List<Block> verdict() {
        List<Block> blocks = new ArrayList<>();
        for (String sentence : sentences())
            blocks.add(blocks.isEmpty() ? Paragraph.answer(sentence) : Paragraph.of(sentence));
        plan.channel().wish().ways().sentence().map(Paragraph::of).ifPresent(blocks::add);
        answer.scene().calibration().ifPresent(learned -> blocks.add(Paragraph.of(learned.words())));
        return blocks;
    }

    /** The answer, the most important sentence first. */
    List<String> sentences() {
        List<String> words = new ArrayList<>();
        Assignment found = answer.found();
        if (found.best().isPresent()) {
            Assignment.Choice best = found.best().get();
            words.add(best(best));
            best.tightest()
                    .ifPresent(talk -> words.add(
                            "The tightest talk is " + pair(talk) + ", with " + db(talk.spareDb()) + " to spare."));
            words.add(found.next()
                    .map(next -> "Next best: " + gives(best, next) + ", " + more(best, next) + ".")
                    .orElse("No other way of handing out the loadouts serves them."));
            words.add(found.oneMore()
                    .filter(one -> one.burden() < best.burden() - 1e-6)
                    .map(one -> "One more decibel on every path would save " + less(best, one) + ": " + gives(best, one)
                            + ".")
                    .orElse("One more decibel on every path would save nothing."));
            notStated().ifPresent(words::add);
        } else
            found.together()
                    .ifPresent(talk ->
                            words.add("No way of handing out what may be carried brings all talks to the wanted "
                                    + wanted() + " at once: " + pair(talk) + " lack at least "
                                    + db(-talk.spareDb())
                                    + "." + RELAY));
        if (!found.hopeless().isEmpty()) words.add(found.best().isPresent() ? 1 : 0, hopeless(found.hopeless()));
        return words;
    }

    private String best(Assignment.Choice best) {
        int talks = best.talks().size();
        boolean isRest = !answer.found().hopeless().isEmpty();
        String which =
                (isRest ? "the " : "all ") + talks + (isRest ? " other" : "") + (talks == 1 ? " talk" : " talks");
        String aim = " to the wanted " + wanted() + ", at the pessimistic end, too";
        List<Integer> changed = IntStream.range(0, answer.people().size())
                .filter(p -> !carried(best, p).equals(answer.people().get(p).planned()))
                .boxed()
                .toList();
        if (changed.isEmpty()
                && answer.people().stream().allMatch(one -> one.options().size() == 1))
            return "Everybody keeps what the plan gives, which brings " + which + aim + ".";
        if (changed.isEmpty())
            return "Nothing lighter than what the plan gives brings " + which + aim + ": everybody keeps it.";
        return "The least burden that brings " + which + aim + ": " + handedOut(best, changed)
                + (changed.size() == answer.people().size() ? "" : "; all others keep what the plan gives them")
                + answer.asPlanned()
                        .map(planned -> ". Against the plan " + more(planned, best))
                        .orElse("")
                + ".";
    }

    /** By loadout, in the order of the people who carry it. */
    private String handedOut(Assignment.Choice choice, List<Integer> who) {
        Map<String, List<String>> names = new LinkedHashMap<>();
        for (int p : who)
            names.computeIfAbsent(carried(choice, p).name(), loadout -> new ArrayList<>())
                    .add(name(p));
        return names.entrySet().stream()
                .map(one -> one.getKey() + " for " + RelayComposer.listed(one.getValue()))
                .collect(Collectors.joining("; "));
    }

    private String hopeless(List<Assignment.Short> talks) {
        int all = talks.size()
                + answer.found().best().map(best -> best.talks().size()).orElse(0);
        Assignment.Short nearest = nearest(talks);
        boolean areNamed = talks.size() <= MOST_NAMED;
        String no = areNamed || talks.size() == all
                ? "No choice of loadouts brings "
                        + (areNamed
                                ? String.join(
                                        ", ", talks.stream().map(this::pair).toList())
                                : "any of the " + all + " talks")
                : talks.size() + " of " + all + " talks are brought by no choice of loadouts";
        String it = talks.size() == 1 ? "it" : areNamed ? "the nearest" : "the nearest, " + pair(nearest) + ",";
        String lacks = Double.isInfinite(nearest.spareDb())
                ? "the ground between them is unknown."
                : it + " lacks " + db(-nearest.spareDb()) + " even with "
                        + option(nearest.a(), nearest.optionA()) + " and " + option(nearest.b(), nearest.optionB())
                        + ".";
        return no + " to the wanted " + wanted() + " at the pessimistic end: " + lacks + relayed(talks);
    }

    /** What stands already comes before a relay that would have to be put up. */
    private String relayed(List<Assignment.Short> talks) {
        List<String> relays =
                answer.relayed().stream().flatMap(Optional::stream).distinct().toList();
        if (relays.isEmpty()) return RELAY;
        long served = answer.relayed().stream().flatMap(Optional::stream).count();
        String way = " the wanted odds, as people are loaded, by way of what stands already ("
                + RelayComposer.listed(relays) + ").";
        if (served < talks.size())
            return " Of these " + served + (served == 1 ? " has" : " have") + way
                    + " What the others need, the relay command says: parts of a route or sector may do without a relay.";
        return (talks.size() == 1 ? " It has" : " They have") + way;
    }

    /** Nought would read as if nothing were lacking, or left. */
    private static String db(double db) {
        return db < LEAST_DB ? "less than " + Decibels.text(2 * LEAST_DB) : Decibels.text(db);
    }

    private static Assignment.Short nearest(List<Assignment.Short> talks) {
        return talks.stream()
                .max(Comparator.comparingDouble(Assignment.Short::spareDb))
                .orElseThrow();
    }

    private Table<Assignment.Short> beyond() {
        List<Assignment.Short> talks = answer.found().hopeless();
        List<Column<Assignment.Short>> columns = new ArrayList<>(List.of(
                Column.words("who", talk -> name(talk.a())),
                Column.words("with", talk -> name(talk.b())),
                Column.number("lacks, dB", talk -> lacks(talk)),
                Column.words("carrying", talk -> option(talk.a(), talk.optionA())),
                Column.words("and", talk -> option(talk.b(), talk.optionB()))));
        if (answer.relayed().stream().anyMatch(Optional::isPresent))
            columns.add(Column.words(
                    "served by way of",
                    talk -> answer.relayed().get(talks.indexOf(talk)).orElse("no relay alone")));
        return Table.of("What they lack with the best of what may be handed out.", talks, columns);
    }

    private static String lacks(Assignment.Short talk) {
        return Double.isInfinite(talk.spareDb()) ? "unknown" : Decibels.number(-talk.spareDb(), 1);
    }

    /** Who carries what in a choice in place of what another gives them. */
    private String gives(Assignment.Choice before, Assignment.Choice now) {
        List<String> changes = IntStream.range(0, answer.people().size())
                .filter(p -> !before.options().get(p).equals(now.options().get(p)))
                .mapToObj(p -> name(p) + " carries " + carried(now, p).name() + " in place of "
                        + carried(before, p).name())
                .toList();
        return RelayComposer.listed(changes);
    }

    private String more(Assignment.Choice before, Assignment.Choice now) {
        double lengthCm = lengthCm(before, now);
        OptionalDouble massG = massG(before, now);
        boolean isNoLonger = Math.abs(lengthCm) < 0.5;
        if (isNoLonger && massG.isEmpty()) return "no longer in all" + open(before, now);
        if (isNoLonger && Math.abs(massG.getAsDouble()) < 0.5) return "as much to carry in all" + open(before, now);
        return lengths.antenna(Math.abs(lengthCm))
                + (lengthCm < 0 || isNoLonger && massG.orElse(0) <= 0 ? " less" : " more")
                + (massG.isEmpty()
                        ? ""
                        : " and " + lengths.mass(Math.abs(massG.getAsDouble()))
                                + (massG.getAsDouble() < 0 ? " less" : " more"))
                + " in all" + open(before, now);
    }

    private String less(Assignment.Choice before, Assignment.Choice now) {
        OptionalDouble massG = massG(before, now);
        return lengths.antenna(Math.abs(lengthCm(before, now)))
                + (massG.isEmpty() ? "" : " and " + lengths.mass(Math.abs(massG.getAsDouble())))
                + open(before, now);
    }

    /** What a difference leaves open, in brackets; nothing where all was stated. */
    private String open(Assignment.Choice before, Assignment.Choice now) {
        List<String> words = new ArrayList<>();
        if (changed(before, now).stream()
                .anyMatch(
                        p -> burden(before, p).lengthIsUsual() || burden(now, p).lengthIsUsual()))
            words.add(Burden.USUAL_LENGTH);
        if (massG(before, now).isEmpty()) words.add(Burden.NO_MASS);
        return words.isEmpty() ? "" : " (" + String.join(", ", words) + ")";
    }

    private double lengthCm(Assignment.Choice before, Assignment.Choice now) {
        return changed(before, now).stream()
                .mapToDouble(p -> burden(now, p).lengthCm() - burden(before, p).lengthCm())
                .sum();
    }

    /** Empty where the mass of anything that changes hands was not stated: it is not known to be nothing. */
    private OptionalDouble massG(Assignment.Choice before, Assignment.Choice now) {
        double sum = 0;
        for (int p : changed(before, now)) {
            OptionalDouble was = burden(before, p).massG();
            OptionalDouble is = burden(now, p).massG();
            if (was.isEmpty() || is.isEmpty()) return OptionalDouble.empty();
            sum += is.getAsDouble() - was.getAsDouble();
        }
        return OptionalDouble.of(sum);
    }

    private Burden burden(Assignment.Choice choice, int person) {
        return carried(choice, person).antenna().burden();
    }

    /** Who has another antenna in one choice than in the other. */
    private List<Integer> changed(Assignment.Choice before, Assignment.Choice now) {
        return IntStream.range(0, answer.people().size())
                .filter(p -> !carried(before, p)
                        .antenna()
                        .name()
                        .equals(carried(now, p).antenna().name()))
                .boxed()
                .toList();
    }

    /** What the burden was computed without; empty where all that may be handed out was stated. */
    private Optional<String> notStated() {
        List<Antenna> handed = answer.people().stream()
                .filter(person -> person.options().size() > 1)
                .flatMap(person -> person.options().stream())
                .map(Loadout::antenna)
                .toList();
        List<String> words = new ArrayList<>();
        notStated(handed, one -> one.burden().massG().isEmpty())
                .ifPresent(names ->
                        words.add("The mass of " + names + " is not given and counts as nothing in the burden."));
        notStated(handed, one -> one.burden().lengthIsUsual())
                .ifPresent(names -> words.add("The length of " + names + " is not given; the usual one is taken."));
        return words.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", words));
    }

    private static Optional<String> notStated(List<Antenna> handed, Predicate<Antenna> isOpen) {
        List<String> names =
                handed.stream().filter(isOpen).map(Antenna::name).distinct().toList();
        return names.isEmpty() ? Optional.empty() : Optional.of(RelayComposer.listed(names));
    }

    private List<Section> details() {
        List<Section> sections = new ArrayList<>();
        answer.found().best().ifPresent(best -> {
            sections.add(Section.of("What everybody carries", people(best)));
            List<Block> talks = new ArrayList<>();
            talks.add(talks(best));
            if (best.talks().size() > MOST_TALKS)
                talks.add(Paragraph.quiet("And " + (best.talks().size() - MOST_TALKS)
                        + " talks more, each with more to spare than these; the JSON has all of them."));
            sections.add(new Section("What the talks have to spare", talks).asDetail());
        });
        if (!answer.found().hopeless().isEmpty())
            sections.add(Section.of("Talks that no loadout serves", beyond()).asDetail());
        return sections;
    }

    private Table<Integer> people(Assignment.Choice best) {
        return Table.of(
                "Keeps: as the plan says, or because it is on a mast or in a vehicle.",
                IntStream.range(0, answer.people().size()).boxed().toList(),
                List.of(
                        Column.words("who", this::name),
                        Column.words(
                                "in the plan",
                                p -> answer.people().get(p).planned().name()),
                        Column.words(
                                "least burden",
                                p -> kept(p) ? "keeps it" : carried(best, p).name()),
                        Column.words(
                                "next best",
                                p -> answer.found()
                                        .next()
                                        .map(next -> same(best, next, p)
                                                ? "the same"
                                                : carried(next, p).name())
                                        .orElse(""))));
    }

    private static boolean same(Assignment.Choice best, Assignment.Choice next, int person) {
        return best.options().get(person).equals(next.options().get(person));
    }

    private boolean kept(int person) {
        return answer.people().get(person).options().size() == 1;
    }

    private Table<Assignment.Short> talks(Assignment.Choice best) {
        return Table.of(
                "Decibels above what the wanted " + wanted()
                        + " need in the weaker way, should all that is uncertain everywhere at once turn out badly.",
                best.talks().stream().limit(MOST_TALKS).toList(),
                List.of(
                        Column.words("who", talk -> name(talk.a())),
                        Column.words("with", talk -> name(talk.b())),
                        Column.number("to spare, dB", talk -> Decibels.signed(talk.spareDb(), 1)),
                        Column.number("as planned, dB", this::asPlanned)));
    }

    private String asPlanned(Assignment.Short talk) {
        return answer.asPlanned().stream()
                .flatMap(planned -> planned.talks().stream())
                .filter(one -> one.a() == talk.a() && one.b() == talk.b())
                .findFirst()
                .map(one -> Double.isInfinite(one.spareDb()) ? "unknown" : Decibels.signed(one.spareDb(), 1))
                .orElse("");
    }

    private String pair(Assignment.Short talk) {
        return name(talk.a()) + " with " + name(talk.b());
    }

    private String name(int person) {
        return answer.people().get(person).name();
    }

    private String option(int person, int option) {
        return answer.people().get(person).options().get(option).name();
    }

    private Loadout carried(Assignment.Choice choice, int person) {
        return answer.people().get(person).options().get(choice.options().get(person));
    }

    private String wanted() {
        return Shares.wanted(plan.channel().wish().odds());
    }
}
