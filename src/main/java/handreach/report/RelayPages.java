package handreach.report;

import handreach.cartography.Graticule;
import handreach.cartography.MapFrame;
import handreach.plan.Plan;
import handreach.relay.Demand;
import handreach.relay.DirectLink;
import handreach.relay.DirectVerdict;
import handreach.relay.HopPath;
import handreach.relay.RelayQuestion;
import handreach.relay.SiteCheck;
import handreach.report.card.CardLine;
import handreach.report.draw.Picture;
import handreach.report.figure.MapFigure;
import handreach.report.figure.MapGround;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.CautionBlock;
import handreach.report.page.Cautions;
import handreach.report.page.Drawing;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Sheet;
import handreach.report.page.Subheading;
import handreach.study.PathAnswer;
import handreach.study.PathLink;
import handreach.study.RelayAnswer;
import handreach.study.Scene;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The relay answer on paper: sections for the report, a page of its own, lines for the field card. */
public final class RelayPages {
    private static final int MAP_PX = 760;
    private static final double MARGIN = 1.08;
    /** More people than this make a matrix that no page holds. */
    private static final int MOST_IN_MATRIX = 12;

    /** Names of people not served that a card has room for. */
    private static final int MOST_UNSERVED = 8;

    private final RelayAnswer answer;
    private final RelayQuestion question;
    private final Plan plan;
    private final Lengths lengths;

    private RelayPages(RelayAnswer answer) {
        this.answer = answer;
        this.question = answer.question();
        this.plan = answer.scene().plan();
        this.lengths = plan.heading().lengths();
    }

    /** Sections to stand in a report, verdict first. */
    public static List<Section> sections(RelayAnswer answer) {
        RelayPages pages = new RelayPages(answer);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("Is a relay needed", pages.need()));
        answer.found().filter(found -> !found.sites().isEmpty()).ifPresent(found -> {
            sections.add(new Section("Where a relay should stand", pages.sites(found)));
            pages.weakest().ifPresent(sections::add);
            sections.add(Section.of(
                    "Putting it up",
                    new Bullets(RelayText.equipment(answer)),
                    new Subheading("Check at the site"),
                    new Bullets(RelayText.siteCheck(answer))));
        });
        return sections;
    }

    /** A page of its own. */
    static Page page(RelayAnswer answer) {
        List<Section> sections = new ArrayList<>(sections(answer));
        sections.add(Section.of("Cautions", new CautionBlock(Cautions.RAISING)));
        if (!answer.words().warnings().isEmpty())
            sections.add(Section.of("Doubtful", new Bullets(answer.words().warnings())));
        List<String> verdict = answer.words().verdict();
        List<Block> opening = new ArrayList<>();
        for (String sentence : verdict) opening.add(Paragraph.answer(sentence));
        return new Page(
                "Relay report",
                answer.scene().plan().heading().title(),
                "Is a relay needed, and where should it stand?",
                opening,
                sections,
                "Made by Handreach from " + answer.scene().file().file().getFileName() + ".");
    }

    /** What the field card says about relays. */
    public static List<CardLine> cardLines(RelayAnswer answer) {
        RelayPages pages = new RelayPages(answer);
        Optional<SiteCheck> best = answer.recommended();
        if (best.isEmpty())
            return answer.words().verdict().stream().limit(1).map(CardLine::of).toList();
        List<CardLine> lines = new ArrayList<>();
        List<RelayAnswer.Access> access = pages.access();
        for (int i = 0; i < best.get().sites().size(); i++) {
            String walk = RelayText.walk(access.get(i));
            lines.add(new CardLine(
                    relayName(i, best.get().sites().size()),
                    plan(answer).heading().placeForm().format(best.get().sites().get(i)) + ", "
                            + RelayText.height(access.get(i)) + " m"
                            + (walk.isEmpty() ? "" : ", " + walk + " on foot")));
        }
        lines.add(CardLine.of(Shares.share(best.get().standing().share()) + " of the talks; the worst has "
                + Shares.odds(best.get().standing().worstOdds()) + "."));
        List<String> unserved = pages.unserved();
        if (!unserved.isEmpty()) lines.add(0, new CardLine("Not served:", listed(unserved)));
        return lines;
    }

    /** What a recommended relay is called on every sheet. */
    static String relayName(int index, int count) {
        return count == 1 ? "Relay" : "Relay " + (index + 1);
    }

    /** Everybody whom the recommended relays leave without copy; points of a route or sector are counted under its name. */
    private List<String> unserved() {
        Map<String, Integer> groups = new LinkedHashMap<>();
        List<String> names = new ArrayList<>();
        for (RelayAnswer.Unserved one : answer.found().orElseThrow().unserved()) {
            Demand demand = question.demands().get(one.demand());
            if (demand.group().isEmpty()) names.add(demand.name());
            else groups.merge(demand.group().get(), 1, Integer::sum);
        }
        groups.forEach((group, count) -> {
            long all = question.demands().stream()
                    .filter(demand -> demand.group().equals(Optional.of(group)))
                    .count();
            names.add(group + " (" + count + " of " + all + (all == 1 ? " point)" : " points)"));
        });
        return names;
    }

    /** All names, or the first with the number of the rest. */
    static String listed(List<String> names) {
        if (names.size() <= MOST_UNSERVED) return String.join(", ", names);
        return String.join(", ", names.subList(0, MOST_UNSERVED)) + " and " + (names.size() - MOST_UNSERVED) + " more";
    }

    private static Plan plan(RelayAnswer answer) {
        return answer.scene().plan();
    }

    private List<RelayAnswer.Access> access() {
        RelayAnswer.Found found = answer.found().orElseThrow();
        return found.together()
                .map(RelayAnswer.Together::access)
                .orElseGet(() -> List.of(found.sites().get(0).access()));
    }

    private List<Block> need() {
        List<Block> blocks = new ArrayList<>();
        for (String sentence : answer.words().verdict()) blocks.add(Paragraph.of(sentence));
        answer.scene()
                .calibration()
                .ifPresent(learned -> blocks.add(Paragraph.of(learned.words() + " Every hop below holds it.")));
        blocks.add(question.demands().size() <= MOST_IN_MATRIX ? matrix() : list());
        List<Sheet.Row> rows = new ArrayList<>();
        for (DirectVerdict.IfCarried one : answer.direct().everybody())
            rows.add(Sheet.Row.of(
                    one.loadout().name(),
                    String.format(
                            Locale.ROOT,
                            "%.0f",
                            one.loadout().antenna().burden().lengthCm()),
                    AntennaCost.side(one.loadout().antenna().burden().massG()),
                    Shares.share(one.standing().share()),
                    Shares.odds(one.standing().worstOdds())));
        if (!rows.isEmpty())
            blocks.add(new Sheet(
                    "If everybody who carries a radio on the body carried this, without a relay.",
                    List.of(
                            Sheet.Column.words("loadout"),
                            Sheet.Column.number("antenna, cm"),
                            Sheet.Column.number("antenna, g"),
                            Sheet.Column.number("talks served"),
                            Sheet.Column.number("worst talk")),
                    rows));
        return blocks;
    }

    /** From the row to the column. */
    private Sheet matrix() {
        int n = question.demands().size();
        String[][] cell = new String[n][n];
        for (String[] row : cell) java.util.Arrays.fill(row, "");
        for (DirectLink link : answer.direct().links()) {
            int a = link.talk().a();
            int b = link.talk().b();
            cell[a][b] = link.path().map(p -> Shares.odds(p.odds().there())).orElse("unknown");
            cell[b][a] = link.path().map(p -> Shares.odds(p.odds().back())).orElse("unknown");
        }
        List<Sheet.Column> columns = new ArrayList<>();
        columns.add(Sheet.Column.words("from \\ to"));
        List<Sheet.Row> rows = new ArrayList<>();
        for (int a = 0; a < n; a++) {
            columns.add(Sheet.Column.number(question.demands().get(a).name()));
            List<String> cells =
                    new ArrayList<>(List.of(question.demands().get(a).name()));
            cells.addAll(List.of(cell[a]));
            rows.add(new Sheet.Row(cells, false));
        }
        return new Sheet("Odds of copy without a relay, as people are loaded.", columns, rows);
    }

    private Sheet list() {
        List<Sheet.Row> rows = new ArrayList<>();
        for (DirectLink link : answer.direct().links())
            rows.add(Sheet.Row.of(
                    question.demands().get(link.talk().a()).name(),
                    question.demands().get(link.talk().b()).name(),
                    link.path().map(p -> Shares.odds(p.odds().there())).orElse("unknown"),
                    link.path().map(p -> Shares.odds(p.odds().back())).orElse("unknown")));
        return new Sheet(
                "Odds of copy without a relay, as people are loaded.",
                List.of(
                        Sheet.Column.words("who"),
                        Sheet.Column.words("with"),
                        Sheet.Column.number("there"),
                        Sheet.Column.number("back")),
                rows);
    }

    private List<Block> sites(RelayAnswer.Found found) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(map());
        List<Sheet.Row> rows = new ArrayList<>();
        int number = 0;
        for (RelayAnswer.Site site : found.sites())
            rows.add(Sheet.Row.of(
                    String.valueOf(++number),
                    plan.heading().placeForm().format(site.at()),
                    RelayText.height(site.access()),
                    RelayText.walk(site.access()),
                    Shares.share(site.check().standing().share()),
                    Shares.share(site.check().standing().pessimisticShare()),
                    Shares.odds(site.check().standing().worstOdds())));
        blocks.add(new Sheet(
                "Sites for one relay, best first, each apart from the better ones; reckoned with one profile a hop after a sweep over"
                        + " all allowed cells.",
                List.of(
                        Sheet.Column.words(""),
                        Sheet.Column.words("place"),
                        Sheet.Column.number("height, m"),
                        Sheet.Column.number("on foot"),
                        Sheet.Column.number("talks served"),
                        Sheet.Column.number("at the pessimistic end"),
                        Sheet.Column.number("worst talk")),
                rows));
        found.together().ifPresent(together -> blocks.add(together(together)));
        return blocks;
    }

    private Sheet together(RelayAnswer.Together together) {
        List<Sheet.Row> rows = new ArrayList<>();
        for (int i = 0; i < together.check().sites().size(); i++)
            rows.add(Sheet.Row.of(
                    String.valueOf(i + 1),
                    plan.heading().placeForm().format(together.check().sites().get(i)),
                    RelayText.height(together.access().get(i)),
                    Shares.share(together.choice().ifOneFails().get(i).share())));
        return new Sheet(
                "Several relays: together "
                        + Shares.share(together.check().standing().share())
                        + " of the talks; no choice of as many serves more than "
                        + Shares.share(together.choice().boundShare()) + " (by sweep, at the median).",
                List.of(
                        Sheet.Column.words("relay"),
                        Sheet.Column.words("place"),
                        Sheet.Column.number("height, m"),
                        Sheet.Column.number("talks left if it fails")),
                rows);
    }

    private Drawing map() {
        Scene scene = answer.scene();
        double radiusM = MARGIN * 1000 * plan.places().area().radiusKm();
        MapFrame frame = MapGround.frame(plan.places().area().centre(), radiusM, MAP_PX, MAP_PX);
        MapGround ground = MapGround.of(
                scene.tiles(),
                frame,
                Picture.relief(MapGround.hillshade(scene.tiles(), frame)),
                Graticule.of(frame, plan.heading().placeForm(), 5));
        Lengths style = lengths;
        MapFigure figure = MapFigure.of(
                new MapFigure.Words(
                        "People and relay sites", "Map of the people to serve and of the sites found, over relief."),
                ground,
                List.of(),
                RelayFiles.places(answer),
                new MapFigure.Key(List.of(), style));
        return new Drawing(figure, "People to serve, the recommended relay, and further sites.");
    }

    private String who(SiteCheck.Hop hop) {
        return question.demands().get(hop.demand()).name();
    }

    /** A hop as a path, from who must be served to the relay on its mast. */
    public static PathAnswer path(RelayAnswer answer, SiteCheck.Hop hop) {
        HopPath path = hop.path();
        return new PathAnswer(
                new PathLink(
                        Scene.terminals(
                                answer.question()
                                        .demands()
                                        .get(hop.demand())
                                        .end()
                                        .loadout(),
                                answer.equipment().end().loadout()),
                        answer.question().setting().conditions(),
                        Optional.of(path.line())),
                path.profile(),
                List.of(path.loss()),
                path.geometry(),
                Optional.of(path.ledger()),
                List.of());
    }

    /** Profile and ledger of the hop that fails first. */
    private Optional<Section> weakest() {
        return answer.recommended().flatMap(SiteCheck::weakest).map(hop -> {
            HopPath path = hop.path();
            String caption = "From " + who(hop) + " to the relay, "
                    + lengths.text(path.line().lengthM()) + ": odds "
                    + Shares.odds(path.odds().there()) + " there, "
                    + Shares.odds(path.odds().back()) + " back.";
            return Section.of(
                    "The weakest hop",
                    new Drawing(PathText.figure(path(answer, hop), who(hop), "relay"), caption),
                    LedgerSheet.of(path.ledger()));
        });
    }
}
