package handreach.study;

import handreach.loadout.Loadout;
import handreach.plan.Questions;
import handreach.reach.Progress;
import handreach.relay.AssignTable;
import handreach.relay.Assignment;
import handreach.relay.Conversation;
import handreach.relay.Party;
import handreach.relay.TalkBook;
import handreach.relay.TooManyChoices;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Who of a plan must carry what, with the least burden in all, so that every wanted talk works without a relay. */
public final class AssignStudy {
    private final Scene scene;
    private final Questions.AssignQuestion asked;
    private final Progress progress;
    private final List<String> warnings;
    private final TalkBook book;

    private AssignStudy(Scene scene, Progress progress) {
        this.scene = scene;
        this.asked = scene.plan().questions().assign();
        this.progress = progress;
        this.warnings = new ArrayList<>(scene.warnings());
        this.book = TalkBook.of(RelayStudy.setting(scene));
    }

    public static AssignAnswer run(Scene scene, Progress progress) {
        return new AssignStudy(scene, progress).answer();
    }

    private AssignAnswer answer() {
        List<Party> demands = RelayDemands.of(scene, warnings);
        List<Conversation> talks = RelayDemands.talks(scene, demands);
        List<PlacesAnswer.Place> places = Stream.concat(PlacesStudy.places(scene).stream(), stations(demands).stream())
                .filter(place -> !place.points().isEmpty())
                .toList();
        List<AssignAnswer.Person> people = places.stream().map(this::person).toList();
        Map<Conversation, List<Conversation>> between = between(demands, places, talks);
        AssignTable table = table(demands, people, between);
        List<Integer> planned = people.stream()
                .map(person -> person.options().indexOf(person.planned()))
                .toList();
        warnings.addAll(scene.warnings());
        Assignment found = assignment(table, people);
        return new AssignAnswer(
                scene,
                people,
                planned.contains(-1) ? Optional.empty() : Optional.of(table.choice(planned)),
                found,
                relayed(demands, between, found.hopeless()),
                List.copyOf(new LinkedHashSet<>(warnings)));
    }

    /** What stands already, for the talks that no loadout serves. */
    private List<Optional<String>> relayed(
            List<Party> demands, Map<Conversation, List<Conversation>> between, List<Assignment.Short> hopeless) {
        double wanted = scene.terms().odds();
        StationStudy stations = new StationStudy(scene, progress);
        List<Optional<String>> relays = new ArrayList<>();
        for (Assignment.Short talk : hopeless) {
            List<Optional<StationStudy.Served>> over =
                    stations.talks(demands, between.get(Conversation.of(talk.a(), talk.b())));
            boolean areAll = over.stream()
                    .allMatch(one -> one.filter(served -> served.odds().weaker() >= wanted)
                            .isPresent());
            relays.add(
                    areAll
                            ? Optional.of(over.stream()
                                    .flatMap(Optional::stream)
                                    .map(StationStudy.Served::relay)
                                    .distinct()
                                    .collect(Collectors.joining(" and ")))
                            : Optional.empty());
        }
        return relays;
    }

    private Assignment assignment(AssignTable table, List<AssignAnswer.Person> people) {
        try {
            return Assignment.of(table);
        } catch (TooManyChoices unordered) {
            long choosing =
                    people.stream().filter(one -> one.options().size() > 1).count();
            throw scene.file()
                    .fault(
                            "assign",
                            "loadouts",
                            "leaves " + handedOut().size() + " loadouts to " + choosing
                                    + " people, more choices than can be compared. Name fewer loadouts, or let more people keep theirs"
                                    + " (keep).");
        }
    }

    /** Those with which people must talk; nobody carries anything there. */
    private List<PlacesAnswer.Place> stations(List<Party> demands) {
        return scene.plan().places().stations().stream()
                .flatMap(entry -> demands.stream()
                        .filter(one -> one.group().isEmpty() && one.name().equals(entry.name())))
                .map(one -> new PlacesAnswer.Place(
                        one.name(), PlacesAnswer.Kind.STATION, one.end().loadout(), List.of(one)))
                .toList();
    }

    private AssignAnswer.Person person(PlacesAnswer.Place place) {
        boolean keeps = asked.keep().contains(place.name())
                || !place.loadout().carry().carry().isOnFoot();
        List<Loadout> options = keeps ? List.of(place.loadout()) : handedOut();
        return new AssignAnswer.Person(place.name(), place.kind(), place.loadout(), options);
    }

    /** What the plan names, else all that is carried on the body. */
    private List<Loadout> handedOut() {
        List<Loadout> all = scene.loadouts().stream()
                .filter(one -> asked.loadouts().isEmpty()
                        ? one.carry().carry().isOnFoot()
                        : asked.loadouts().contains(one.name()))
                .toList();
        if (all.size() > AssignTable.MOST_OPTIONS)
            throw scene.file()
                    .fault(
                            "assign",
                            "loadouts",
                            "leaves " + all.size() + " loadouts to choose from, at most " + AssignTable.MOST_OPTIONS
                                    + " are allowed. Name those that are at hand.");
        return all;
    }

    /** The talks between any two that carry something of their own. */
    private static Map<Conversation, List<Conversation>> between(
            List<Party> demands, List<PlacesAnswer.Place> places, List<Conversation> talks) {
        Map<Conversation, List<Conversation>> between = new LinkedHashMap<>();
        for (Conversation talk : talks) {
            int a = carrier(places, demands.get(talk.a()));
            int b = carrier(places, demands.get(talk.b()));
            if (a != b)
                between.computeIfAbsent(Conversation.of(a, b), two -> new ArrayList<>())
                        .add(talk);
        }
        return between;
    }

    private AssignTable table(
            List<Party> demands, List<AssignAnswer.Person> people, Map<Conversation, List<Conversation>> between) {
        AssignTable.Builder builder = new AssignTable.Builder();
        for (AssignAnswer.Person person : people)
            builder.person(
                    person.options().stream()
                            .mapToDouble(one -> isStation(person) ? 0 : scene.burdenScore(one))
                            .toArray(),
                    person.options().indexOf(person.planned()));
        int done = 0;
        for (Map.Entry<Conversation, List<Conversation>> two : between.entrySet()) {
            AssignAnswer.Person a = people.get(two.getKey().a());
            AssignAnswer.Person b = people.get(two.getKey().b());
            builder.talk(two.getKey().a(), two.getKey().b(), spareDb(demands, two.getValue(), a, b));
            progress.done("straight paths", ++done / (double) between.size());
        }
        if (between.isEmpty())
            throw scene.file()
                    .fault(
                            "relay",
                            "talk",
                            "lists talks within one route or sector alone, whose people all carry the same. List two that differ.");
        return builder.table();
    }

    private static int carrier(List<PlacesAnswer.Place> places, Party demand) {
        for (int i = 0; i < places.size(); i++) {
            PlacesAnswer.Place place = places.get(i);
            boolean isOne = place.kind() == PlacesAnswer.Kind.POSITION || place.kind() == PlacesAnswer.Kind.STATION;
            if (demand.group().isPresent() == isOne) continue;
            if (place.name().equals(demand.group().orElse(demand.name()))) return i;
        }
        throw new IllegalArgumentException("nobody carries for " + demand.name());
    }

    private static boolean isStation(AssignAnswer.Person person) {
        return person.kind() == PlacesAnswer.Kind.STATION;
    }

    private Party carrying(Party demand, AssignAnswer.Person person, int option) {
        return isStation(person)
                ? demand
                : demand.carrying(scene.end(person.options().get(option)));
    }

    /** The least of all talks between two people, by what the first carries, then the second. */
    private double[][] spareDb(
            List<Party> demands, List<Conversation> talks, AssignAnswer.Person a, AssignAnswer.Person b) {
        double[][] least = new double[a.options().size()][b.options().size()];
        for (double[] row : least) Arrays.fill(row, Double.POSITIVE_INFINITY);
        for (Conversation talk : talks) {
            progress.goOn();
            for (int i = 0; i < least.length; i++)
                for (int j = 0; j < least[i].length; j++) {
                    Party one = carrying(demands.get(talk.a()), a, i);
                    Party other = carrying(demands.get(talk.b()), b, j);
                    double spare =
                            book.talk(one, other).map(TalkBook.Talk::sureDb).orElse(Double.NEGATIVE_INFINITY);
                    least[i][j] = Math.min(least[i][j], spare);
                }
        }
        return least;
    }
}
