package handreach.report;

import handreach.budget.Ways;
import handreach.loadout.Burden;
import handreach.plan.Plan;
import handreach.plan.Questions;
import handreach.relay.DirectLink;
import handreach.relay.DirectVerdict;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayMode;
import handreach.relay.RelayRequest;
import handreach.relay.ServiceLevel;
import handreach.relay.SiteCheck;
import handreach.report.card.CardLine;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Cautions;
import handreach.report.page.Column;
import handreach.report.page.Drawing;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.PlainText;
import handreach.report.page.Section;
import handreach.report.page.Subheading;
import handreach.report.page.Table;
import handreach.study.PathAnswer;
import handreach.study.PathLink;
import handreach.study.RelayAnswer;
import handreach.study.Scene;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Whether a relay is needed and where it should stand: the sections, tables and sentences that every face shows. JSON: {@link RelayJson}. */
public final class RelayComposer {

    /** Talks that a page has room for; JSON has all. */
    private static final int MOST_TALKS = 24;

    /** Names of people not served that a card has room for. */
    private static final int MOST_UNSERVED = 8;

    private static final String UNKNOWN = "unknown";

    /** Relays that serve less than this share of the talks are hardly any; our suggestion. */
    private static final double HARDLY = 0.5;
    /** A hop that lacks more than this is not mended by any line of its ledger; our suggestion. */
    private static final double HOPELESS_DB = -20;
    /** A site that keeps so much more of the talks if things turn out badly is steadier; our suggestion. */
    private static final double FELT_SHARE = 0.05;

    private final RelayAnswer answer;
    private final RelayRequest question;
    private final Plan plan;
    private final Lengths lengths;

    public RelayComposer(RelayAnswer answer) {
        this.answer = answer;
        this.question = answer.question();
        this.plan = answer.scene().plan();
        this.lengths = plan.header().lengths();
    }

    /** A page of its own. */
    public Page page(Instant made) {
        List<Section> sections = new ArrayList<>(details(map(made)));
        sections.addAll(lineByLine());
        sections.addAll(doubts());
        sections.add(cautions());
        return page(sections);
    }

    /** The same for a terminal, on which what is doubtful stands apart from the answer. */
    public String text(int width) {
        List<Section> sections = new ArrayList<>(details(List.of()));
        sections.addAll(lineByLine());
        sections.add(cautions());
        return PlainText.of(page(sections), width);
    }

    /** Sections to stand in a report, verdict first; the weakest hop line by line stands in the relay's own report. */
    public List<Section> sections(Instant made) {
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("Is a relay needed", verdict()).answering("Is a relay needed?"));
        sections.addAll(details(map(made)));
        sections.addAll(doubts());
        return sections;
    }

    /** What stands under the verdict in the window, where the map is at hand and each hop can be laid on it with its ledger. */
    public List<Section> underVerdict() {
        List<Section> sections = new ArrayList<>(details(List.of()));
        sections.addAll(doubts());
        sections.add(cautions());
        return sections;
    }

    private Page page(List<Section> sections) {
        return new Page(
                "Relay report",
                plan.header().title(),
                "Is a relay needed, and where should it stand?",
                verdict(),
                sections,
                "Made by Handreach from " + answer.scene().file().file().getFileName() + ".");
    }

    /** The answer in sentences. Who is not served, and why, has a section of its own. */
    private List<Block> verdict() {
        List<Block> blocks = new ArrayList<>();
        List<String> reasons = reasons();
        for (String sentence : answer.summary().verdict())
            if (!reasons.contains(sentence))
                blocks.add(blocks.isEmpty() ? Paragraph.answer(sentence) : Paragraph.of(sentence));
        blocks.add(Paragraph.quiet("Talks counted: "
                + switch (plan.questions().relay().talk()) {
                    case ALL_TO_ALL -> "everybody with everybody";
                    case ALL_TO_BASE -> "everybody with the base";
                    case LISTED -> "the pairs that the plan lists";
                }
                + "."));
        hardly().map(Paragraph::of).ifPresent(blocks::add);
        steadier().map(Paragraph::of).ifPresent(blocks::add);
        answer.scene()
                .calibration()
                .ifPresent(learned -> blocks.add(Paragraph.of(learned.words() + " Every hop below holds it.")));
        return blocks;
    }

    /** What to think of relays that leave more talks without copy than they serve. */
    private Optional<String> hardly() {
        return answer.recommended()
                .filter(check -> check.service().share() < HARDLY)
                .map(check ->
                        "That is hardly a relay: it leaves more talks without copy than it serves. Try more than one, a higher"
                                + " mast, a stronger one, or other places to call from before anybody carries it up.");
    }

    /** The site that keeps most talks if things turn out badly, where the one advised keeps fewer. */
    private Optional<RelaySite> steadiest() {
        Optional<SiteCheck> best = answer.recommended();
        if (best.isEmpty()) return Optional.empty();
        double kept = best.get().service().pessimisticShare();
        return RelaySite.alone(answer).stream()
                .filter(site -> !site.isAdvised() && site.service().pessimisticShare() >= kept + FELT_SHARE)
                .max(Comparator.comparingDouble(site -> site.service().pessimisticShare()));
    }

    private Optional<String> steadier() {
        return steadiest().map(site -> {
            ServiceLevel here = answer.recommended().orElseThrow().service();
            return site.name() + " at " + place(site)
                    + " is steadier: if all that is uncertain everywhere at once turns out badly, it still serves "
                    + Shares.part(site.service().pessimisticShare()) + " of the talks, the one advised "
                    + Shares.part(here.pessimisticShare()) + "; as reckoned "
                    + Shares.part(site.service().share())
                    + " against " + Shares.part(here.share())
                    + ". Who must be able to count on the relay takes the steadier one; whom it leaves out needs another means.";
        });
    }

    /** The answer where one line has room: whether, and what then. */
    public String headline() {
        List<String> said = answer.summary().verdict();
        if (answer.found().isEmpty() || said.size() < 2) return said.get(0);
        boolean isEnough = answer.recommended()
                .filter(check -> check.service().servesAll())
                .isPresent();
        return (isEnough ? "A relay is needed. " : "A relay is needed, but not everybody can be served. ")
                + said.get(1);
    }

    /** The verdict without what the headline says. */
    public List<Block> underHeadline() {
        String first = headline();
        return verdict().stream()
                .filter(block -> !(block instanceof Paragraph said) || !first.endsWith(said.words()))
                .toList();
    }

    private List<String> reasons() {
        return answer.found().stream()
                .flatMap(found -> found.unserved().stream())
                .map(RelayAnswer.Unserved::reason)
                .toList();
    }

    /** Why somebody is not served; a route or sector in one entry, with the reason of its worst point. */
    private List<String> notServed() {
        Map<String, List<RelayAnswer.Unserved>> groups = new LinkedHashMap<>();
        for (RelayAnswer.Unserved one : answer.found().orElseThrow().unserved())
            groups.computeIfAbsent(groupOf(one.demand()), group -> new ArrayList<>())
                    .add(one);
        return groups.entrySet().stream()
                .map(group -> group.getValue().size() == 1
                        ? group.getValue().get(0).reason()
                        : group.getKey() + ": "
                                + counted(group.getKey(), group.getValue().size()) + ". Worst off: "
                                + worst(group.getValue()).reason())
                .toList();
    }

    /** The route or sector it is a point of, else its own name. */
    private String groupOf(int demand) {
        return question.demands().get(demand).group().orElse(name(demand));
    }

    private RelayAnswer.Unserved worst(List<RelayAnswer.Unserved> among) {
        List<Optional<SiteCheck.Hop>> hops = answer.best().orElseThrow().hops();
        return among.stream()
                .min(Comparator.comparingDouble((RelayAnswer.Unserved one) -> hops.get(one.demand())
                        .map(hop -> hop.path().odds().marginDb())
                        .orElse(Double.NEGATIVE_INFINITY)))
                .orElseThrow();
    }

    private String counted(String group, int count) {
        long all = question.demands().stream()
                .filter(demand -> demand.group().equals(Optional.of(group)))
                .count();
        return count + " of " + all + (all == 1 ? " point" : " points");
    }

    /** The same beside an answer on reach, which says what stands already. */
    public List<Section> sectionsBesideReach(Instant made) {
        return sections(made).stream()
                .filter(section -> !section.heading().equals(StationsComposer.HEADING))
                .toList();
    }

    private List<Section> details(List<Block> map) {
        List<Section> sections = new ArrayList<>();
        if (!reasons().isEmpty()) sections.add(Section.of("Not served", new Bullets(notServed())));
        answer.recommended().ifPresent(check -> {
            sections.add(
                    new Section("Where a relay should stand", places(map)).answering("Where should a relay stand?"));
            sections.add(new Section(
                            check.sites().size() == 1
                                    ? "Hops of the recommended site"
                                    : "Hops of the recommended sites",
                            hops(check))
                    .answering("How well is everybody served by it?"));
            sections.add(new Section("Putting it up", puttingUp())
                    .answering("What does it take to put it up?")
                    .asDetail());
        });
        if (answer.best().isPresent() && answer.recommended().isEmpty())
            sections.add(new Section("Where a relay was tried", places(map))
                    .answering("Where was a relay tried?")
                    .asDetail());
        StationsComposer.of(answer.already().stations(), plan).section().ifPresent(sections::add);
        sections.add(new Section("Without a relay", direct())
                .answering("Who talks to whom without it?")
                .asDetail());
        return sections;
    }

    private List<Section> lineByLine() {
        return answer
                .recommended()
                .flatMap(SiteCheck::weakest)
                .filter(hop -> hop.path().odds().marginDb() > HOPELESS_DB)
                .map(this::weakest)
                .stream()
                .toList();
    }

    private List<Section> doubts() {
        List<String> warnings = answer.summary().warnings();
        return warnings.isEmpty()
                ? List.of()
                : List.of(Section.of("Doubtful about the relay", new Bullets(warnings))
                        .asDetail());
    }

    private Section cautions() {
        List<Caution> cautions = answer.recommended().isEmpty() ? Cautions.CARRYING : Cautions.RAISING;
        return Section.of("Cautions", new CautionBlock(cautions));
    }

    private List<Block> places(List<Block> map) {
        List<Block> blocks = new ArrayList<>(map);
        RelayAnswer.Found found = answer.found().orElseThrow();
        if (found.together().isPresent()) {
            blocks.add(together());
            blocks.add(new Subheading("With one relay alone"));
        }
        blocks.add(alone());
        blocks.add(
                Paragraph.quiet(
                        "Every one of " + found.search().allowed() + " cells of "
                                + lengths.heightText(found.search().cellM())
                                + " in which a relay may stand was tried by sweep; these sites are reckoned again, one profile a hop."));
        return blocks;
    }

    private Table<RelaySite> together() {
        List<Column<RelaySite>> columns = placeColumns();
        columns.add(Column.number(
                "talks left if it fails", site -> Shares.part(site.otherwise().share())));
        return Table.of("", RelaySite.together(answer), columns);
    }

    private Table<RelaySite> alone() {
        List<Column<RelaySite>> columns = placeColumns();
        columns.add(Column.number("served", site -> Shares.part(site.service().share())));
        columns.add(
                Column.number("pessimistic", site -> Shares.part(site.service().pessimisticShare())));
        columns.add(Column.number("worst talk", site -> odds(site.service().worstOdds())));
        columns.add(Column.number("other mode", site -> odds(site.otherwise().worstOdds())));
        return Table.of(
                "Best first, each apart from the better ones. Served: share of the talks; other mode: the worst talk there.",
                RelaySite.alone(answer),
                columns);
    }

    private List<Column<RelaySite>> placeColumns() {
        List<Column<RelaySite>> columns = new ArrayList<>();
        columns.add(Column.words("site", RelaySite::name));
        columns.add(Column.words("place", this::place));
        columns.add(Column.number("height", site -> height(site.access())));
        columns.add(Column.number("slope", site -> Decibels.number(site.access().slopeDeg(), 0) + "\u00b0"));
        if (RelaySite.of(answer).stream()
                .anyMatch(site -> site.access().minutes().isPresent()))
            columns.add(Column.number("on foot", site -> onFoot(site.access()).orElse("")));
        return columns;
    }

    private List<Block> hops(SiteCheck check) {
        List<Block> blocks = new ArrayList<>();
        check.weakest().ifPresent(hop -> blocks.add(Paragraph.of(hop(hop) + another(check, hop))));
        blocks.add(hopTable(check));
        return blocks;
    }

    private Table<SiteCheck.Hop> hopTable(SiteCheck check) {
        List<SiteCheck.Hop> rows = check.hops().stream()
                .flatMap(Optional::stream)
                .sorted(Comparator.comparingDouble(hop -> hop.path().odds().weaker()))
                .toList();
        List<Column<SiteCheck.Hop>> columns = new ArrayList<>();
        columns.add(Column.words("who", hop -> name(hop.demand())));
        if (check.sites().size() > 1) columns.add(Column.number("relay", hop -> String.valueOf(hop.site() + 1)));
        columns.add(Column.number("distance, " + lengths.longUnit(), hop -> distance(hop.path())));
        columns.add(Column.number("to relay", hop -> odds(hop.path().odds().there())));
        columns.add(Column.number("from relay", hop -> odds(hop.path().odds().back())));
        columns.add(Column.number("pessimistic", hop -> odds(hop.path().odds().pessimistic())));
        columns.add(Column.number("worst talk", hop -> odds(check.demandOdds(question, hop.demand()))));
        columns.add(Column.words("in the way", hop -> inTheWay(hop.path())));
        return Table.of("Weakest first. The wanted odds are " + wanted() + ".", rows, columns);
    }

    private String inTheWay(HopPath path) {
        return path.worstEdge()
                .filter(edge -> edge.aboveLineM() > 0)
                .map(edge -> lengths.heightText(edge.heightM()) + " high, " + lengths.text(1000 * edge.distanceKm())
                        + " away")
                .orElse("nothing");
    }

    /** The hop that fails first, in words. */
    private String hop(SiteCheck.Hop hop) {
        HopPath path = hop.path();
        return "The weakest is " + name(hop.demand()) + " to the relay, "
                + lengths.text(path.line().lengthM()) + ": odds "
                + odds(path.odds().there()) + " there, "
                + odds(path.odds().back()) + " back. Margin of the "
                + (path.odds().needed() == Ways.BOTH ? "weaker way" : "way that counts") + ": "
                + Decibels.text(path.odds().marginDb()) + " at the median place.";
    }

    /** A weak hop on which nothing hangs, since its talks work straight, by another relay or by what stands already. */
    private String another(SiteCheck check, SiteCheck.Hop hop) {
        double wanted = question.setting().terms().odds();
        double talks = check.demandOdds(question, hop.demand());
        return hop.path().odds().weaker() >= wanted || talks < wanted
                ? ""
                : " Nothing hangs on it: the talks of " + name(hop.demand()) + " work another way, the worst at "
                        + odds(talks) + ".";
    }

    /** Figure and ledger of the hop that fails first. */
    private Section weakest(SiteCheck.Hop hop) {
        HopPath path = hop.path();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Drawing(
                PathComposer.profile(path(hop), name(hop.demand()), "relay", lengths),
                "Ground from " + name(hop.demand()) + " to the relay."));
        blocks.addAll(LedgerComposer.blocks(path.ledger()));
        return new Section("The weakest hop, line by line", blocks).asDetail();
    }

    /** A hop as a path, from who must be served to the relay on its mast. */
    public PathAnswer path(SiteCheck.Hop hop) {
        HopPath path = hop.path();
        return new PathAnswer(
                new PathLink(
                        Scene.terminals(
                                question.demands().get(hop.demand()).end().loadout(),
                                answer.equipment().end().loadout()),
                        question.setting().conditions(),
                        Optional.of(path.line())),
                path.profile(),
                List.of(path.loss()),
                path.geometry(),
                Optional.of(path.ledger()),
                List.of());
    }

    private List<Block> direct() {
        List<Block> blocks = new ArrayList<>();
        List<DirectLink> weakestFirst = answer.direct().links().stream()
                .sorted(Comparator.comparingDouble(DirectLink::standing))
                .toList();
        blocks.add(direct(weakestFirst.stream().limit(MOST_TALKS).toList()));
        if (weakestFirst.size() > MOST_TALKS)
            blocks.add(Paragraph.quiet("And " + (weakestFirst.size() - MOST_TALKS)
                    + " talks more, each with better odds than these; the JSON has all of them."));
        if (!answer.direct().everybody().isEmpty()) {
            blocks.add(new Subheading("If everybody carried"));
            blocks.add(everybody());
        }
        return blocks;
    }

    private Table<DirectLink> direct(List<DirectLink> links) {
        return Table.of(
                "Odds of copy as people are loaded, weakest talk first; wanted are " + wanted()
                        + ". Pessimistic: should all that is uncertain everywhere at once turn out badly.",
                links,
                List.of(
                        Column.words("who", link -> name(link.talk().a())),
                        Column.words("with", link -> name(link.talk().b())),
                        Column.number(
                                "there",
                                link -> of(link, path -> odds(path.odds().there()))),
                        Column.number(
                                "back",
                                link -> of(link, path -> odds(path.odds().back()))),
                        Column.number(
                                "pessimistic",
                                link -> of(link, path -> odds(path.odds().pessimistic()))),
                        Column.number("distance, " + lengths.longUnit(), link -> of(link, this::distance))));
    }

    private static String of(DirectLink link, Function<HopPath, String> cell) {
        return link.path().map(cell).orElse(UNKNOWN);
    }

    private Table<DirectVerdict.IfCarried> everybody() {
        Function<DirectVerdict.IfCarried, Burden> burden =
                one -> one.loadout().antenna().burden();
        return Table.of(
                "Everybody who carries a radio on the body, without a relay.",
                answer.direct().everybody(),
                List.of(
                        Column.words("loadout", one -> one.loadout().name()),
                        Column.number(
                                "antenna, " + lengths.antennaUnit(),
                                one -> AntennaCost.length(burden.apply(one), lengths)),
                        Column.number(
                                "antenna, " + lengths.massUnit(), one -> AntennaCost.mass(burden.apply(one), lengths)),
                        Column.number(
                                "talks served", one -> Shares.part(one.service().share())),
                        Column.number("worst talk", one -> odds(one.service().worstOdds()))));
    }

    private List<Block> puttingUp() {
        return List.of(new Bullets(equipment()), new Subheading("Check at the site"), new Bullets(siteCheck()));
    }

    /** What the relay is, and what keeps its transmitter out of its receiver. */
    private List<String> equipment() {
        RelayEquipment relay = answer.equipment();
        RelayEquipment.IsolationMargin isolation =
                relay.isolation(plan.channel().frequency());
        String counted = relay.mode() == RelayMode.TWO_FREQUENCY
                ? "Counted: two frequencies"
                        + plan.channel()
                                .split()
                                .map(split -> String.format(
                                        Locale.ROOT,
                                        ", it hears %.4f MHz and sends %.4f MHz, each way reckoned at its own",
                                        split.receive().mhz(),
                                        split.transmit().mhz()))
                                .orElse("")
                        + ", 1 dB lost on the way in to its own transmitter (desense)."
                : "Counted: store and forward on one channel, nothing lost to its own transmitter; every relay on the way adds"
                        + " the length of the call.";
        String needed = "Two frequencies at once need " + wholeDb(isolation.neededDb())
                + " between its transmitter and its receiver; one antenna above the other on this mast gives "
                + wholeDb(isolation.onThisMastDb()) + " at most, margin "
                + Decibels.signed(isolation.marginDb(), 0) + " dB"
                + (isolation.marginDb() < 0
                        ? ": filters must make it up, or use store and forward, or two bands (mind the third harmonic)."
                        : ".");
        List<String> bullets = new ArrayList<>(List.of(counted, needed));
        taken().ifPresent(bullets::add);
        bullets.add(
                "A relay transmits far more than a handheld: derate its power, plan its battery for the hours; no line power is assumed.");
        return bullets;
    }

    /** What of the relay is our default, since the plan does not state it. */
    private Optional<String> taken() {
        Questions.RelayRadio said = plan.questions().relay().equipment();
        Map<String, String> all = new LinkedHashMap<>();
        all.put("power_w", Decibels.number(said.powerW(), 1) + " W");
        all.put("sensitivity_dbm", Decibels.number(said.sensitivityDbm(), 0) + " dBm");
        all.put("gain_dbd", Decibels.signed(said.gainDbd(), 1) + " dBd");
        all.put("mast_m", "a mast of " + lengths.closeText(said.mastM()));
        all.put("feed_loss_db", "feed line " + Decibels.text(said.feedLossDb()));
        all.keySet().removeAll(said.stated());
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of("Our defaults, not in the plan's [relay]: " + String.join(", ", all.values()) + ".");
    }

    private static String wholeDb(double db) {
        return Decibels.number(db, 0) + " dB";
    }

    /** A short list for whoever walks up. */
    private List<String> siteCheck() {
        return List.of(
                "Land: whose ground is it, and may you put it there?",
                "Licence: does it allow a relay here, on these frequencies, with this antenna and power?",
                "Thunder: if you can hear it, stay off; raise nothing; wait 30 minutes after the last.",
                "Power lines: none within twice the height of mast and antenna.",
                "People: keep " + lengths.closeText(RelayExposure.keepAwayM(answer))
                        + " from the antenna while it transmits (public, half the time on the air; local rules decide).",
                "Antenna: upright, " + lengths.closeText(answer.equipment().mastM())
                        + " above ground, clear of leaves and metal.",
                "Call every party from the site before you leave, both ways; note level or copy.");
    }

    private List<Block> map(Instant made) {
        return answer.recommended()
                .map(check -> List.<Block>of(new RelayMap(answer, check).drawing(made)))
                .orElse(List.of());
    }

    /** What the field card says about relays: where they stand comes first, since the last lines go where there is no room. */
    public List<CardLine> cardLines() {
        Optional<SiteCheck> best = answer.recommended();
        if (best.isEmpty())
            return answer.summary().verdict().stream()
                    .limit(answer.found().isPresent() ? 2 : 1)
                    .map(CardLine::of)
                    .toList();
        List<CardLine> lines = new ArrayList<>();
        for (RelaySite site : RelaySite.of(answer))
            if (site.isAdvised())
                lines.add(new CardLine(
                        site.name(),
                        place(site) + ", " + height(site.access())
                                + onFoot(site.access())
                                        .map(walk -> ", " + walk + " on foot")
                                        .orElse("")));
        steadiest()
                .ifPresent(site -> lines.add(new CardLine(
                        "Steadier:",
                        place(site) + ", serves " + Shares.part(site.service().share())
                                + " of the talks; if things turn out badly "
                                + Shares.part(site.service().pessimisticShare()) + ", the relay above "
                                + Shares.part(best.get().service().pessimisticShare()) + ".")));
        List<String> unserved = unserved();
        if (!unserved.isEmpty()) lines.add(new CardLine("Not served:", listed(unserved)));
        lines.add(CardLine.of("Serves " + Shares.part(best.get().service().share()) + " of the talks; the worst has "
                + odds(best.get().service().worstOdds()) + "."));
        return lines;
    }

    /** Everybody whom the recommended relays leave without copy; points of a route or sector are counted under its name. */
    private List<String> unserved() {
        Map<String, Integer> groups = new LinkedHashMap<>();
        List<String> names = new ArrayList<>();
        for (RelayAnswer.Unserved one : answer.found().orElseThrow().unserved()) {
            Party demand = question.demands().get(one.demand());
            if (demand.group().isEmpty()) names.add(demand.name());
            else groups.merge(demand.group().get(), 1, Integer::sum);
        }
        groups.forEach((group, count) -> names.add(group + " (" + counted(group, count) + ")"));
        return names;
    }

    /** All names, or the first with the number of the rest. */
    static String listed(List<String> names) {
        if (names.size() <= MOST_UNSERVED) return String.join(", ", names);
        return String.join(", ", names.subList(0, MOST_UNSERVED)) + " and " + (names.size() - MOST_UNSERVED) + " more";
    }

    private String name(int demand) {
        return question.demands().get(demand).name();
    }

    private String place(RelaySite site) {
        return plan.header().placeForm().format(site.at());
    }

    private String distance(HopPath path) {
        return lengths.longNumber(path.line().lengthM());
    }

    private String odds(double odds) {
        return Shares.odds(odds, question.setting().terms().odds());
    }

    private String wanted() {
        return Shares.wanted(question.setting().terms().odds());
    }

    private String height(RelayAnswer.Access access) {
        OptionalDouble metres = access.heightM();
        return metres.isPresent() ? lengths.heightText(metres.getAsDouble()) : UNKNOWN;
    }

    private static Optional<String> onFoot(RelayAnswer.Access access) {
        OptionalDouble minutes = access.minutes();
        return minutes.isPresent() ? Optional.of(Decibels.number(minutes.getAsDouble(), 0) + " min") : Optional.empty();
    }
}
