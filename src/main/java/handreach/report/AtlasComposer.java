package handreach.report;

import handreach.atlas.LoadoutFigures;
import handreach.atlas.PositionFigures;
import handreach.atlas.RelayCover;
import handreach.atlas.Shadow;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.Plan;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.CautionBlock;
import handreach.report.page.Cautions;
import handreach.report.page.Column;
import handreach.report.page.Facts;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.PlainText;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.AtlasAnswer;
import handreach.study.AtlasLayer;
import handreach.study.AtlasStudy;
import handreach.study.BlockFault;
import handreach.units.Bearings;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** What an atlas says of a region: the sentences and tables that every face shows. JSON: {@link AtlasJson}. */
public final class AtlasComposer {
    /** Places that a table has room for; the files have all. */
    static final int MOST_PLACES = 20;

    private static final double M2_PER_KM2 = 1e6;

    private final AtlasAnswer answer;
    private final AtlasStudy study;
    private final Plan plan;
    private final Lengths lengths;
    private final Bearings bearings;
    private final List<String> names;
    private final int control;
    private final double knownKm2;

    public AtlasComposer(AtlasAnswer answer) {
        this.answer = answer;
        this.study = answer.study();
        this.plan = study.scene().plan();
        this.lengths = plan.header().lengths();
        this.bearings = plan.header().bearings();
        this.names = study.scene().loadouts().stream().map(Loadout::name).toList();
        this.control = study.control();
        this.knownKm2 = answer.knownKm2();
    }

    /** A page of its own, with maps. */
    Page page() {
        return page(sections(maps()));
    }

    /** The same for a terminal. */
    public String text(int width) {
        return PlainText.of(page(sections(Optional.empty())), width);
    }

    /** Maps where one can be drawn; near a pole none can. */
    private Optional<AtlasMaps> maps() {
        try {
            return Optional.of(new AtlasMaps(answer));
        } catch (InputFault nearAPole) {
            return Optional.empty();
        }
    }

    private Page page(List<Section> sections) {
        List<Block> first = new ArrayList<>();
        for (String sentence : sentences())
            first.add(first.isEmpty() ? Paragraph.answer(sentence) : Paragraph.of(sentence));
        return new Page(
                "Atlas of a region",
                plan.header().title(),
                "From where in the region can people talk, with what, and where is nobody heard?",
                first,
                sections,
                "Made by Handreach from " + study.scene().file().file().getFileName() + ".");
    }

    /** The answer, the most important sentence first. */
    List<String> sentences() {
        List<String> words = new ArrayList<>();
        if (knownKm2 == 0) return List.of("Nothing is known of this region: no position could be reckoned.");
        String serve =
                "a median reach of " + lengths.text(study.question().reach().servesM()) + " or more";
        double served = answer.servesKm2(control);
        words.add("With " + names.get(control) + " "
                + (served > 0 ? ground(served) + " of the region has " : "no position of the region has ") + serve
                + "; half of all positions reach " + lengths.text(answer.medianM(control))
                + " or more in their median direction.");
        int most = strongest();
        if (most != control && answer.servesKm2(most) > served)
            words.add(names.get(most) + " serves on " + ground(answer.servesKm2(most)) + ", "
                    + change(answer.servesKm2(most) - served) + " than " + names.get(control) + " does.");
        if (answer.has(AtlasLayer.SHADOW)) words.add(shadow());
        if (answer.has(AtlasLayer.TALK)) words.add(talk());
        if (study.wish().relays() > 0) words.add(relays(control));
        if (!answer.faults().isEmpty())
            words.add(
                    answer.faults().size() + " of " + study.positions().blocks().size()
                            + " blocks could not be reckoned and are left out of all figures"
                            + (study.pairsAreOnce()
                                    ? "; places within the radius of them are not credited with every talk into them."
                                    : "."));
        return words;
    }

    private int strongest() {
        return IntStream.range(0, names.size())
                .boxed()
                .max(Comparator.<Integer>comparingDouble(answer::servesKm2).thenComparing(i -> -i))
                .orElse(control);
    }

    private String ground(double km2) {
        double share = knownKm2 > 0 ? Math.min(1, km2 / knownKm2) : 0;
        return lengths.area(km2 * M2_PER_KM2) + " (" + Shares.share(share) + ")";
    }

    private String change(double km2) {
        if (km2 == 0) return "as much";
        return ground(Math.abs(km2)) + (km2 < 0 ? " less" : " more");
    }

    private String shadow() {
        List<Shadow> pieces = answer.shadows();
        if (pieces.isEmpty()) return "Every place of the region is heard by somebody with some loadout.";
        double km2 = pieces.stream().mapToDouble(Shadow::areaKm2).sum();
        return ground(km2) + " of the region is heard by nobody, whatever is carried: "
                + (pieces.size() == 1 ? "one piece" : pieces.size() + " pieces") + ", the largest of "
                + lengths.area(pieces.get(0).areaKm2() * M2_PER_KM2) + ".";
    }

    private String talk() {
        for (int loadout : study.byBurden())
            if (answer.talk(loadout).sizes().size() == 1)
                return "With " + names.get(loadout)
                        + " on all, the least that does so, every position can talk with every other over people at positions between.";
        int least = study.byBurden().stream()
                .min(Comparator.comparingInt(l -> answer.talk(l).sizes().size()))
                .orElseThrow();
        return "With no loadout is the region one: with " + names.get(least) + " on all it still falls into "
                + answer.talk(least).sizes().size() + " parts between which nobody can talk, even over others.";
    }

    private String relays(int loadout) {
        RelayCover cover = answer.cover(loadout);
        if (cover.picks().isEmpty()) return "No place reaches any other with " + names.get(loadout) + ".";
        double all = study.targets().count();
        int n = cover.picks().size();
        double covered = cover.picks().get(n - 1).covered() / all;
        return "From " + (n == 1 ? "one place" : n + " places") + " somebody with " + names.get(loadout) + " reaches "
                + Shares.share(covered) + " of the region; no " + n + " places reach more than "
                + Shares.share(Math.min(1, cover.most() / all)) + ".";
    }

    private List<Section> sections(Optional<AtlasMaps> maps) {
        List<Section> sections = new ArrayList<>();
        if (answer.has(AtlasLayer.REACH)) sections.add(bought(maps));
        sections.add(best());
        if (answer.has(AtlasLayer.SHADOW)) sections.add(unheard(maps));
        if (answer.has(AtlasLayer.TALK)) sections.add(parts());
        if (study.wish().relays() > 0) sections.add(cover());
        sections.add(asked());
        List<String> doubts = doubts();
        if (!doubts.isEmpty()) sections.add(Section.of("Doubtful", new Bullets(doubts)));
        sections.add(Section.of(
                "Cautions", new CautionBlock(study.wish().relays() > 0 ? Cautions.RAISING : Cautions.CARRYING)));
        return sections;
    }

    private Section bought(Optional<AtlasMaps> maps) {
        List<Column<Integer>> columns = new ArrayList<>(List.of(
                Column.words("loadout", names::get),
                Column.number("half of all places reach", l -> lengths.text(answer.medianM(l))),
                Column.number("serves on", l -> ground(answer.servesKm2(l))),
                Column.number(
                        "over " + names.get(control),
                        l -> l == control ? "" : change(answer.servesKm2(l) - answer.servesKm2(control)))));
        if (answer.has(AtlasLayer.SHADOW))
            columns.add(Column.number("heard by nobody", l -> lengths.area(answer.unheardKm2(l) * M2_PER_KM2)));
        List<Block> blocks = new ArrayList<>();
        blocks.add(Table.of(
                "From the least burdensome up. A loadout serves where its median reach is "
                        + lengths.text(study.question().reach().servesM()) + " or more.",
                study.byBurden(),
                columns));
        maps.map(
                        all -> all.leastServing(
                                "The least burdensome loadout that serves at each place. Bare relief inside the edge: none does."))
                .ifPresent(blocks::add);
        return new Section("What the bigger antenna buys", blocks);
    }

    private Section best() {
        record Place(PositionFigures row, LoadoutFigures with) {}
        List<Place> places = answer.best(control).stream()
                .limit(MOST_PLACES)
                .map(row -> new Place(row, row.loadouts().get(control)))
                .toList();
        return Section.of(
                "Best places to stand",
                Table.of(
                        "With " + names.get(control) + ", those first that reach most of the region.",
                        places,
                        List.of(
                                Column.words("place", place -> place(place.row().at())),
                                Column.number(
                                        "reaches of the region",
                                        place -> AtlasPlaceComposer.ground(
                                                lengths,
                                                place.with(),
                                                study.question().targetsM())),
                                Column.number(
                                        "median reach", place -> AtlasPlaceComposer.median(lengths, place.with())),
                                Column.number(
                                        "worst", place -> AtlasPlaceComposer.worst(lengths, bearings, place.with())))));
    }

    private Section unheard(Optional<AtlasMaps> maps) {
        List<Block> blocks = new ArrayList<>();
        List<Shadow> pieces = answer.shadows();
        if (pieces.isEmpty()) blocks.add(Paragraph.of("There is none."));
        else
            blocks.add(Table.of(
                    "Pieces of ground on which nobody of all places asked hears anybody, the largest first.",
                    pieces.stream().limit(MOST_PLACES).toList(),
                    List.of(
                            Column.words(
                                    "deepest place",
                                    piece -> place(study.targets().cells().positionOf(piece.deepest()))),
                            Column.number("ground", piece -> lengths.area(piece.areaKm2() * M2_PER_KM2)),
                            Column.number(
                                    "from there to ground that is heard",
                                    piece -> lengths.text(
                                            piece.depth() * study.question().targetsM())))));
        maps.map(all -> all.leastHeard("The least burdensome loadout with which anybody in the region hears a place."
                        + " Bare relief inside the edge: nobody does."))
                .ifPresent(blocks::add);
        return new Section("Ground that nobody hears", blocks);
    }

    private Section parts() {
        return Section.of(
                "Who can talk to whom over others",
                Table.of(
                        "Parts of the region between which no talk is possible, even over people between; the same loadout on all."
                                + " A place holds a part together when others lose touch without it.",
                        study.byBurden(),
                        List.of(
                                Column.words("loadout", names::get),
                                Column.number(
                                        "parts",
                                        l -> Integer.toString(
                                                answer.talk(l).sizes().size())),
                                Column.number(
                                        "the largest",
                                        l -> Shares.share(answer.talk(l).sizes().stream()
                                                        .findFirst()
                                                        .orElse(0)
                                                / (double) Math.max(
                                                        1,
                                                        answer.talk(l).sizes().stream()
                                                                .mapToInt(size -> size)
                                                                .sum()))),
                                Column.number(
                                        "places that hold it together",
                                        l -> Integer.toString(
                                                answer.talk(l).bridges().size())),
                                Column.words(
                                        "the gravest",
                                        l -> answer.talk(l).bridges().stream()
                                                .findFirst()
                                                .map(bridge -> place(study.positions()
                                                                .cells()
                                                                .positionOf(bridge.cell()))
                                                        + ", cuts off " + bridge.cutOff())
                                                .orElse("none")))));
    }

    private Section cover() {
        record Pick(int loadout, int number, RelayCover.Pick pick) {}
        List<Pick> picks = new ArrayList<>();
        for (int loadout : study.byBurden()) {
            int number = 1;
            for (RelayCover.Pick pick : answer.cover(loadout).picks()) picks.add(new Pick(loadout, number++, pick));
        }
        double all = study.targets().count();
        List<String> bounds = study.byBurden().stream().map(this::relays).toList();
        return Section.of(
                "The few places that reach the most",
                Table.of(
                        "Each is added where it helps most.",
                        picks,
                        List.of(
                                Column.words("loadout", one -> names.get(one.loadout())),
                                Column.number("number", one -> Integer.toString(one.number())),
                                Column.words(
                                        "place",
                                        one -> place(answer.positions()
                                                .get(one.pick().position())
                                                .at())),
                                Column.number(
                                        "adds", one -> Shares.share(one.pick().gained() / all)),
                                Column.number(
                                        "together",
                                        one -> Shares.share(one.pick().covered() / all)))),
                new Bullets(bounds),
                Paragraph.of(
                        "This is somebody who stands there with that loadout. Whether a relay does as well, how it relays and"
                                + " whether the places hear one another is for the relay command to say."));
    }

    private Section asked() {
        return new Section(
                "What was asked",
                List.of(new Facts(List.of(
                        new Facts.Fact(
                                "positions",
                                positions() + ", "
                                        + lengths.text(study.question().gridM()) + " apart"),
                        new Facts.Fact(
                                "targets",
                                study.targets().count() + ", "
                                        + lengths.text(study.question().targetsM()) + " apart, inside the region"),
                        new Facts.Fact(
                                "radius", lengths.text(study.question().reach().radiusM())),
                        new Facts.Fact(
                                "counts as copy",
                                Shares.wanted(study.question().reach().odds()) + " of the places or more, "
                                        + plan.channel().wish().ways().towards("the position")),
                        new Facts.Fact(
                                "at the position",
                                study.scene()
                                        .middleLoadoutName()
                                        .filter(name ->
                                                plan.questions().reach().with().isPresent())
                                        .orElse("the same loadout as at the target")),
                        new Facts.Fact("model", ReachComposer.model(study.scene()))))));
    }

    private String positions() {
        long known =
                answer.positions().stream().filter(PositionFigures::isKnown).count();
        return known + " of " + study.positions().count();
    }

    private List<String> doubts() {
        List<String> doubts = new ArrayList<>();
        doubts.addAll(faults(answer.faults()));
        long blind = answer.positions().stream().filter(one -> !one.isKnown()).count();
        if (blind > 0) doubts.add(blind + " positions stand on ground that no tile knows; nothing is claimed of them.");
        long open = answer.positions().stream()
                .filter(one -> one.isKnown() && one.loadouts().get(control).openEnded() > 0)
                .count();
        if (open > 0)
            doubts.add(
                    "From " + open + " positions " + names.get(control)
                            + " reaches on some bearings to the end of the radius or of the known ground: it is at least what is said.");
        doubts.add(
                "Targets lie inside the region: a position near its edge is not credited with what it reaches outside.");
        doubts.addAll(study.scene().warnings());
        return doubts;
    }

    /** Blocks that failed, those together that failed for the same reason. */
    public static List<String> faults(List<BlockFault> faults) {
        Map<String, List<BlockFault>> byWords = new LinkedHashMap<>();
        for (BlockFault fault : faults)
            byWords.computeIfAbsent(fault.words(), fresh -> new ArrayList<>()).add(fault);
        List<String> lines = new ArrayList<>();
        byWords.forEach((words, all) -> lines.add("Block " + all.get(0).block()
                + (all.size() == 1 ? "" : " and " + (all.size() - 1) + (all.size() == 2 ? " other" : " others"))
                + " could not be reckoned: " + words));
        return lines;
    }

    private String place(Position at) {
        return plan.header().placeForm().format(at);
    }
}
