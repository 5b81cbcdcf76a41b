package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.geodesy.Position;
import handreach.loadout.Burden;
import handreach.relay.Conversation;
import handreach.relay.DirectLink;
import handreach.relay.DirectVerdict;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayRequest;
import handreach.relay.SiteCheck;
import handreach.report.file.Json;
import handreach.study.RelayAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** The relay answer as one JSON object; keys are described in docs/relay.md. A record stands for an object, its components for the keys. */
public final class RelayJson {
    private final RelayAnswer answer;
    private final RelayRequest question;

    private RelayJson(RelayAnswer answer) {
        this.answer = answer;
        this.question = answer.question();
    }

    /** The answer as {@link Json} writes it. */
    public static Object of(RelayAnswer answer) {
        return new RelayJson(answer).whole();
    }

    private record Whole(
            @JsonUnwrapped Verdict verdict,
            @JsonUnwrapped People people,
            JsonNode stations,
            boolean newRelayNeeded,
            WithStations withStations,
            Equipment relay,
            @JsonUnwrapped Found found,
            List<String> warnings) {}

    private record Verdict(
            @JsonUnwrapped PlanSubject subject,
            boolean relayNeeded,
            Optional<String> notNeededWith,
            double odds,
            String model,
            @JsonUnwrapped Sentences words) {}

    private record Sentences(JsonNode calibration, List<String> verdict) {}

    private record People(List<Person> demands, Direct direct, List<Carried> ifEverybodyCarried) {}

    private record Person(
            String name,
            Optional<String> group,
            @JsonUnwrapped Place place,
            String loadout,
            double weight) {}

    private record Place(double latitude, double longitude, String place) {}

    private record ServiceLevel(double share, double sharePessimistic, double worstOdds) {
        static ServiceLevel of(handreach.relay.ServiceLevel service) {
            return new ServiceLevel(service.share(), service.pessimisticShare(), service.worstOdds());
        }
    }

    private record Direct(@JsonUnwrapped ServiceLevel service, List<Straight> talks) {}

    private record WithStations(@JsonUnwrapped ServiceLevel service, List<Helped> talks) {}

    private record Helped(@JsonUnwrapped Pair pair, double odds, Optional<String> via) {}

    private record Pair(String a, String b) {}

    /** The path is left out where the ground is unknown. */
    private record Straight(
            @JsonUnwrapped Pair pair,
            boolean known,
            double odds,
            @JsonUnwrapped Path path) {}

    private record Path(
            double distanceKm, double lossDb, @JsonUnwrapped Odds odds, Optional<Ridge> ridge) {
        static Path of(HopPath path) {
            HopPath.HopOdds odds = path.odds();
            return new Path(
                    path.line().lengthM() / 1000,
                    path.loss().lossDb(),
                    new Odds(odds.there(), odds.back(), odds.pessimistic(), odds.marginDb(), odds.siteShiftDb()),
                    path.worstEdge()
                            .filter(edge -> edge.aboveLineM() > 0)
                            .map(edge -> new Ridge(edge.distanceKm(), edge.heightM(), edge.aboveLineM())));
        }
    }

    private record Odds(
            double oddsThere, double oddsBack, double oddsPessimistic, double marginDb, double siteShiftDb) {}

    private record Ridge(double distanceKm, double heightM, double aboveLineM) {}

    private record Carried(
            String loadout, Burden burden, @JsonUnwrapped ServiceLevel service) {}

    private record Equipment(
            String mode,
            double desenseDb,
            double mastM,
            boolean chained,
            @JsonUnwrapped Isolation isolation,
            double keepAwayM,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> receiveMhz,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<Double> transmitMhz) {}

    private record Isolation(double isolationNeededDb, double isolationOnMastDb, double isolationMarginDb) {}

    /** How it was searched is left out where it was not. */
    private record Found(
            List<Site> sites,
            List<Trade> tradeOff,
            List<Unserved> unserved,
            Optional<Together> together,
            @JsonInclude(JsonInclude.Include.NON_NULL) Search search) {}

    private record Access(OptionalDouble heightM, double slopeDeg, OptionalDouble walkMinutes) {
        static Access of(RelayAnswer.Access access) {
            return new Access(access.heightM(), access.slopeDeg(), access.minutes());
        }
    }

    private record Site(
            @JsonUnwrapped Place place,
            @JsonUnwrapped Access access,
            @JsonUnwrapped ServiceLevel service,
            double worstOddsOtherMode,
            @JsonUnwrapped Check check) {}

    private record Check(List<Hop> hops, List<Relayed> talks) {}

    private record Hop(
            String name,
            int relay,
            @JsonUnwrapped Path path,
            @JsonInclude(JsonInclude.Include.NON_NULL) LedgerJson ledger) {}

    private record Relayed(
            @JsonUnwrapped Pair pair, double odds, double oddsProduct, double oddsPessimistic, boolean direct) {}

    private record Together(
            @JsonUnwrapped ServiceLevel service,
            double boundShare,
            List<Relay> relays,
            @JsonUnwrapped Check check) {}

    private record Relay(
            @JsonUnwrapped Place place, @JsonUnwrapped Access access, double shareIfItFails) {}

    private record Trade(
            @JsonUnwrapped Place place, @JsonUnwrapped ServiceLevel service) {}

    private record Unserved(String name, double bestOddsAnywhere, String reason) {}

    private record Search(double cellM, int allowedCells, int knownCells) {}

    private Whole whole() {
        DirectVerdict direct = answer.direct();
        ObjectNode learned = (ObjectNode) Json.tree(new Object() {});
        CalibrationJson.put(
                learned,
                answer.scene().calibration(),
                Optional.of(answer.scene().plan().header()));
        Verdict verdict = new Verdict(
                PlanSubject.of(answer.scene().plan()),
                !direct.isEnough(),
                direct.enoughIfCarried().map(one -> one.loadout().name()),
                question.setting().terms().odds(),
                question.setting().model().name(),
                new Sentences(learned.get("calibration"), answer.summary().verdict()));
        People people = new People(
                question.demands().stream().map(this::person).toList(),
                new Direct(
                        ServiceLevel.of(direct.service()),
                        direct.links().stream().map(this::straight).toList()),
                direct.everybody().stream()
                        .map(one -> new Carried(
                                one.loadout().name(), one.loadout().antenna().burden(), ServiceLevel.of(one.service())))
                        .toList());
        Found found = answer.found()
                .map(this::found)
                .orElse(new Found(List.of(), List.of(), List.of(), Optional.empty(), null));
        RelayAnswer.Already already = answer.already();
        return new Whole(
                verdict,
                people,
                StationsJson.of(already.stations(), answer.scene().plan()),
                !already.verdict().isEnough(),
                new WithStations(
                        ServiceLevel.of(already.verdict().service()),
                        IntStream.range(0, question.talks().size())
                                .mapToObj(t -> new Helped(
                                        pair(question.talks().get(t)),
                                        DirectVerdict.odds(
                                                already.verdict().links().get(t)),
                                        already.via().get(t)))
                                .toList()),
                equipment(),
                found,
                answer.summary().warnings());
    }

    private Person person(Party demand) {
        return new Person(
                demand.name(),
                demand.group(),
                place(demand.at()),
                demand.end().loadout().name(),
                demand.weight());
    }

    private Straight straight(DirectLink link) {
        return new Straight(
                pair(link.talk()),
                link.path().isPresent(),
                DirectVerdict.odds(link),
                link.path().map(Path::of).orElse(null));
    }

    private Pair pair(Conversation talk) {
        return new Pair(name(talk.a()), name(talk.b()));
    }

    private Equipment equipment() {
        RelayEquipment relay = answer.equipment();
        RelayEquipment.IsolationMargin isolation =
                relay.isolation(answer.scene().plan().channel().frequency());
        return new Equipment(
                relay.mode().word(),
                relay.mode().desenseDb(),
                relay.mastM(),
                relay.chained(),
                new Isolation(isolation.neededDb(), isolation.onThisMastDb(), isolation.marginDb()),
                RelayExposure.keepAwayM(answer),
                relay.receiveMhz(),
                relay.transmitMhz());
    }

    private Found found(RelayAnswer.Found found) {
        List<Site> sites = new ArrayList<>();
        for (RelayAnswer.Site site : found.sites())
            sites.add(new Site(
                    place(site.at()),
                    Access.of(site.access()),
                    ServiceLevel.of(site.check().service()),
                    site.otherMode().worstOdds(),
                    check(site.check(), sites.isEmpty())));
        return new Found(
                sites,
                found.front().stream()
                        .map(trade -> new Trade(place(trade.at()), ServiceLevel.of(trade.service())))
                        .toList(),
                found.unserved().stream()
                        .map(one -> new Unserved(name(one.demand()), one.bestOdds(), one.reason()))
                        .toList(),
                found.together().map(this::together),
                new Search(
                        found.search().cellM(),
                        found.search().allowed(),
                        found.search().cells()));
    }

    private Together together(RelayAnswer.Together together) {
        SiteCheck check = together.check();
        return new Together(
                ServiceLevel.of(check.service()),
                together.choice().boundShare(),
                IntStream.range(0, check.sites().size())
                        .mapToObj(i -> new Relay(
                                place(check.sites().get(i)),
                                Access.of(together.access().get(i)),
                                together.choice().ifOneFails().get(i).share()))
                        .toList(),
                check(check, true));
    }

    /** Hops and talks; the ledgers only of what is recommended, or a large question makes a file of megabytes. */
    private Check check(SiteCheck check, boolean withLedgers) {
        return new Check(
                check.hops().stream()
                        .flatMap(Optional::stream)
                        .map(hop -> new Hop(
                                name(hop.demand()),
                                hop.site() + 1,
                                Path.of(hop.path()),
                                withLedgers ? LedgerJson.of(hop.path().ledger()) : null))
                        .toList(),
                IntStream.range(0, check.talks().size())
                        .mapToObj(t ->
                                relayed(question.talks().get(t), check.talks().get(t)))
                        .toList());
    }

    private Relayed relayed(Conversation talk, SiteCheck.TalkOdds odds) {
        return new Relayed(pair(talk), odds.weaker(), odds.product(), odds.pessimistic(), odds.isDirect());
    }

    private String name(int demand) {
        return question.demands().get(demand).name();
    }

    private Place place(Position at) {
        return new Place(
                at.latitudeDeg(),
                at.longitudeDeg(),
                answer.scene().plan().header().placeForm().format(at));
    }
}
