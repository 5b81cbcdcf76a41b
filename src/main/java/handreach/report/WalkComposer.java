package handreach.report;

import handreach.cartography.Graticule;
import handreach.cartography.MapFrame;
import handreach.geodesy.Compass;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.Plan;
import handreach.reach.SiteCalibration;
import handreach.report.draw.Picture;
import handreach.report.figure.MapGround;
import handreach.report.figure.WalkMapFigure;
import handreach.report.figure.WalkRangeFigure;
import handreach.report.figure.WalkReliabilityFigure;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Column;
import handreach.report.page.Drawing;
import handreach.report.page.Facts;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.Scene;
import handreach.study.SilentLogging;
import handreach.study.WalkAnswer;
import handreach.uncertainty.Interval;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import handreach.walk.BlockedCheck;
import handreach.walk.Comparison;
import handreach.walk.CopyTable;
import handreach.walk.MarginTrend;
import handreach.walk.WalkPair;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Composes a walk beside its prediction, once for every face: was the prediction right, what does the walk teach, what to do, then
 * the figures.
 */
public final class WalkComposer {
    private static final double MARGIN = 1.12;
    private static final double LEAST_RADIUS_M = 300;
    /** Profiles of the worst places that are drawn. */
    private static final int DRAWN = 3;

    private final WalkAnswer answer;
    private final Scene scene;
    private final Plan plan;
    private final Lengths lengths;

    private WalkComposer(WalkAnswer answer) {
        this.answer = answer;
        this.scene = answer.scene();
        this.plan = scene.plan();
        this.lengths = plan.header().lengths();
    }

    /** A page of its own, with the map, the ground of the worst places and what was doubtful. */
    public static Page page(WalkAnswer answer, Instant made) {
        WalkComposer composer = new WalkComposer(answer);
        List<Section> sections = new ArrayList<>(composer.sections(Optional.of(composer.map(made)), DRAWN));
        sections.add(Section.of("Cautions", new CautionBlock(List.of(Caution.RELIANCE))));
        if (!answer.warnings().isEmpty()) sections.add(Section.of("Doubtful", new Bullets(answer.warnings())));
        return composer.page(sections);
    }

    /** The same for a screen that has a map, and tells what was doubtful, beside it. */
    public static Page screen(WalkAnswer answer) {
        WalkComposer composer = new WalkComposer(answer);
        List<Section> sections = new ArrayList<>(composer.sections(Optional.empty(), 0));
        sections.add(Section.of("Cautions", new CautionBlock(List.of(Caution.RELIANCE))));
        return composer.page(sections);
    }

    /** Sections to stand in the report of the plan; the ground of the worst places stands in the report of the walk. */
    public static List<Section> sections(WalkAnswer answer, Instant made) {
        WalkComposer composer = new WalkComposer(answer);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("Walked against predicted", composer.verdict())
                .answering("Was the prediction right where people walked?"));
        sections.addAll(composer.sections(Optional.of(composer.map(made)), 0));
        return sections;
    }

    /** Was the prediction right, in one sentence. */
    public static String headline(WalkAnswer answer) {
        CopyTable all = answer.comparison().all().copies();
        return String.format(
                Locale.ROOT,
                "The prediction was right for %d of %d reports (%s): %s (copy promised, not found), %s (copy found, not promised).",
                all.kept() + all.rightlyDoubted(),
                all.count(),
                Shares.share(all.shareRight().orElse(0)),
                counted(all.falseHopes(), "false hope"),
                counted(all.falseFears(), "false fear"));
    }

    private static String counted(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    private Page page(List<Section> sections) {
        return new Page(
                "Walk report",
                plan.header().title(),
                "How good was the prediction, and what does the walk teach?",
                verdict(),
                sections,
                "Made by Handreach from " + scene.file().file().getFileName() + ".");
    }

    private List<Section> sections(Optional<Drawing> map, int profiles) {
        List<Section> sections = new ArrayList<>();
        sections.add(Section.of("By loadout and direction", scores()).asDetail());
        map.ifPresent(drawn ->
                sections.add(Section.of("Where the walk differed", drawn).answering("Where did the walk differ?")));
        sections.add(new Section("Were the odds honest", odds())
                .answering("Were the odds honest?")
                .asDetail());
        sections.add(new Section("Range by bearing from the base", ranges())
                .answering("How far was there copy, in which direction?")
                .asDetail());
        if (!answer.worst().isEmpty())
            sections.add(new Section("Farthest from the prediction", worst(profiles)).asDetail());
        sections.add(Section.of("What the walk teaches", taught()).answering("What does the walk teach?"));
        return sections;
    }

    private List<Block> verdict() {
        List<Block> blocks = new ArrayList<>(List.of(Paragraph.answer(headline(answer)), Paragraph.of(learned())));
        againstTheCount().map(Paragraph::of).ifPresent(blocks::add);
        blocks.add(Paragraph.of(advice()));
        return blocks;
    }

    /** Why the shift of the site may go the other way than the count of hopes and fears; nothing where it does not. */
    private Optional<String> againstTheCount() {
        if (answer.learned().refusal().isPresent()) return Optional.empty();
        CopyTable all = answer.comparison().all().copies();
        int fears = all.falseFears() - all.falseHopes();
        double lossDb = answer.learned().file().site().bias().lossDb();
        if (Decibels.text(Math.abs(lossDb)).equals(Decibels.text(0)) || fears * lossDb <= 0) return Optional.empty();
        double promised = 0;
        long found = 0;
        for (Comparison.Reliability bin : answer.comparison().reliability()) {
            promised += bin.count() * bin.meanOdds();
            found += Math.round(bin.shareFound() * bin.count());
        }
        return Optional.of(
                "This is no contradiction: hopes and fears are counted at odds of one half, the shift weighs every report by its odds and"
                        + " by how near it lies to others. The odds promised copy for "
                        + Decibels.number(promised, 1) + " of " + all.count() + " reports, and it was found for "
                        + found
                        + ".");
    }

    /** What was learned and whether it helps, in one sentence. */
    private String learned() {
        Optional<String> refusal = answer.learned().refusal();
        if (refusal.isPresent()) return refusal.get();
        SiteCalibration.Shift bias = answer.learned().file().site().bias();
        String size = Decibels.text(Math.abs(bias.lossDb()));
        String side = size.equals(Decibels.text(0))
                ? "The site is as predicted"
                : "The site is " + size + (bias.lossDb() > 0 ? " worse" : " better") + " than predicted";
        return side + " (\u00b1 " + Decibels.text(bias.standardUncertaintyDb()) + ")"
                + answer.check()
                        .map(check -> helps(check.verdict()))
                        .orElse(
                                "; the walk is too short to hold stretches back, so nothing can be said of whether knowing this"
                                        + " helps elsewhere.");
    }

    private static String helps(BlockedCheck.Verdict verdict) {
        String there = " on the stretches of the walk that were held back.";
        return switch (verdict) {
            case HELPS -> ", and knowing this helps" + there;
            case HELPS_ODDS -> "; knowing this helps the odds, and makes the levels worse," + there;
            case HELPS_LEVELS -> "; knowing this helps the levels, and makes the odds worse," + there;
            case DOES_NOT_HELP -> "; knowing this does not help" + there;
        };
    }

    /** What to do. */
    private String advice() {
        if (answer.learned().refusal().isPresent())
            return "Walk again and log every call, those without an answer too: they teach most.";
        if (scene.calibration().isPresent())
            return "The plan has accepted a calibration already, which this comparison leaves out. "
                    + scene.calibration().get().words();
        String accept =
                "Nothing changes until a person accepts it: name the calibration file in the plan under [calibration].";
        if (answer.check().isEmpty())
            return "Walk farther, and log every call, before the plan takes this over. " + accept;
        return switch (answer.check().get().verdict()) {
            case HELPS -> accept;
            case HELPS_ODDS, HELPS_LEVELS ->
                "Look at the reports farthest from the prediction before the plan takes this over. " + accept;
            case DOES_NOT_HELP -> "Leave the plan as it is, and walk elsewhere to learn more.";
        };
    }

    private Table<Comparison.Score> scores() {
        List<Column<Comparison.Score>> columns = new ArrayList<>(List.of(
                Column.words("loadout and direction", WalkComposer::group),
                Column.number("reports", score -> String.valueOf(score.copies().count())),
                Column.number(
                        "false hopes", score -> String.valueOf(score.copies().falseHopes())),
                Column.number(
                        "false fears", score -> String.valueOf(score.copies().falseFears())),
                Column.number(
                        "right",
                        score -> Shares.share(score.copies().shareRight().orElse(0))),
                Column.number("Brier score", score -> Decibels.number(score.brier(), 3))));
        boolean hasLevels = answer.comparison().all().levels().isPresent();
        if (hasLevels)
            columns.addAll(List.of(
                    Column.number("levels", level(levels -> String.valueOf(levels.count()))),
                    Column.number("mean error, dB", level(levels -> Decibels.signed(levels.meanDb(), 1))),
                    Column.number("scatter, dB", level(levels -> Decibels.number(levels.standardDeviationDb(), 1))),
                    Column.number("RMS error, dB", level(levels -> Decibels.number(levels.rmseDb(), 1)))));
        List<Comparison.Score> rows = new ArrayList<>(answer.comparison().groups());
        if (rows.size() > 1) rows.add(answer.comparison().all());
        String error =
                hasLevels ? "Error is predicted minus walked: positive where the prediction was too hopeful. " : "";
        return Table.of(error + "Copy counts as promised from odds of one half.", rows, columns)
                .summing(score -> score.loadout().isEmpty());
    }

    private static String group(Comparison.Score score) {
        return score.way().map(way -> score.loadout() + ", " + way.word()).orElse("all");
    }

    private static Function<Comparison.Score, String> level(Function<Comparison.LevelScore, String> words) {
        return score -> score.levels().map(words).orElse("");
    }

    private Drawing map(Instant made) {
        MapFrame frame = frame();
        MapGround ground = MapGround.of(
                scene.tiles(),
                frame,
                Picture.relief(MapGround.hillshade(scene.tiles(), frame)),
                Graticule.of(frame, plan.header().placeForm(), 5),
                lengths);
        WalkMapFigure figure = WalkMapFigure.of(ground, answer.pairs(), ReachMaps.places(plan), lengths);
        Drawing map = new Drawing(
                figure,
                "Reports of the walks. Triangles down are places that were worse than predicted, triangles up better ones.");
        return new MapHeading(scene, called(), carried(), made).over(map);
    }

    /** Who was called, as far as the farthest misses tell it. */
    private String called() {
        List<String> bases = answer.worst().stream()
                .map(WalkAnswer.Seen::base)
                .map(base -> base.name().map(name -> name + ", ").orElse("")
                        + plan.header().placeForm().format(base.at()))
                .distinct()
                .toList();
        return bases.isEmpty() ? "Walks of the plan" : "Called: " + String.join("; ", bases);
    }

    private String carried() {
        List<String> loadouts = answer.pairs().stream()
                .map(pair -> pair.link().loadout())
                .distinct()
                .toList();
        return "Walked with " + String.join(", ", loadouts) + ".";
    }

    /** A square that holds every report and the base. */
    private MapFrame frame() {
        List<Position> all = Stream.concat(
                        answer.pairs().stream().map(pair -> pair.spot().at()),
                        answer.worst().stream().map(seen -> seen.base().at()))
                .toList();
        double first = all.get(0).longitudeDeg();
        double south = 90;
        double north = -90;
        double west = 180;
        double east = -180;
        for (Position at : all) {
            double along = Math.IEEEremainder(at.longitudeDeg() - first, 360);
            south = Math.min(south, at.latitudeDeg());
            north = Math.max(north, at.latitudeDeg());
            west = Math.min(west, along);
            east = Math.max(east, along);
        }
        Position middle = new Position((south + north) / 2, Math.IEEEremainder(first + (west + east) / 2, 360));
        double tall = GeodesicLine.distanceM(
                new Position(south, middle.longitudeDeg()), new Position(north, middle.longitudeDeg()));
        double wide = GeodesicLine.distanceM(
                new Position(middle.latitudeDeg(), first + west), new Position(middle.latitudeDeg(), first + east));
        return MapGround.frame(middle, Math.max(LEAST_RADIUS_M, MARGIN * Math.max(tall, wide) / 2));
    }

    private List<Block> odds() {
        Comparison comparison = answer.comparison();
        double brier = comparison.all().brier();
        return List.of(
                Table.of(
                        "Copy found against the odds promised, in fifths of the odds.",
                        comparison.reliability(),
                        List.of(
                                Column.<Comparison.Reliability>number(
                                        "odds from, %", bin -> Decibels.number(100 * bin.low(), 0)),
                                Column.number("to, %", bin -> Decibels.number(100 * bin.high(), 0)),
                                Column.number("reports", bin -> String.valueOf(bin.count())),
                                Column.number("promised", bin -> Shares.odds(bin.meanOdds())),
                                Column.number("found", WalkComposer::found))),
                new Drawing(
                                WalkReliabilityFigure.of(comparison.reliability(), brier),
                                String.format(
                                        Locale.ROOT,
                                        "With 95 %% intervals as if the reports were independent. On the broken line the odds were"
                                                + " honest; above it more was found than promised, below it less. Brier score %.3f (0 at best, 0.25 for always saying one half).",
                                        brier))
                        .ofTable());
    }

    /** What was counted is no odds: none of nine is said so, and not as nothing in a hundred. */
    private static String found(Comparison.Reliability bin) {
        return Math.round(bin.shareFound() * bin.count()) + " of " + bin.count();
    }

    private List<Block> ranges() {
        String unit = ", " + lengths.longUnit();
        List<Comparison.Sector> sectors = answer.comparison().sectors();
        return List.of(
                Table.of(
                        "Range promised and found, as far as was walked.",
                        sectors,
                        List.of(
                                Column.<Comparison.Sector>words("towards", sector -> Compass.word(sector.bearingDeg())),
                                Column.number("reports", sector -> String.valueOf(sector.reports())),
                                Column.number("farthest copy" + unit, sector -> length(sector.farthestCopyM())),
                                Column.number("nearest failure" + unit, sector -> length(sector.nearestFailureM())),
                                Column.number("farthest promise" + unit, sector -> length(sector.farthestPromiseM())))),
                new Drawing(WalkRangeFigure.of(sectors, lengths), "").ofTable());
    }

    private String length(OptionalDouble metres) {
        return metres.isPresent() ? lengths.longNumber(metres.getAsDouble()) : "none";
    }

    private List<Block> worst(int profiles) {
        List<Block> blocks = new ArrayList<>();
        boolean hasLevels = answer.worst().stream().anyMatch(seen -> seen.pair().isLevel());
        List<Column<WalkAnswer.Seen>> columns = new ArrayList<>(List.of(
                Column.number("line", seen -> String.valueOf(seen.pair().spot().line())),
                Column.words(
                        "place",
                        seen -> plan.header()
                                .placeForm()
                                .format(seen.pair().spot().at())),
                Column.number(
                        "away, " + lengths.longUnit(),
                        seen -> lengths.longNumber(seen.pair().spot().distanceM())),
                Column.words("loadout", seen -> seen.pair().link().loadout()),
                Column.number("odds", seen -> Shares.odds(seen.pair().odds())),
                Column.words("found", seen -> seen.pair().copied() ? "copy" : "no copy")));
        if (hasLevels)
            columns.add(Column.number(
                    "error, dB",
                    seen -> seen.pair().isLevel() ? Decibels.signed(seen.pair().errorDb(), 1) : ""));
        blocks.add(Table.of(
                "The line is that of the log. Look at the ground to each of these: a ridge or a wood that the data do not know?",
                answer.worst(),
                columns));
        answer.worst().stream().limit(profiles).forEach(seen -> blocks.add(profile(seen)));
        return blocks;
    }

    private Drawing profile(WalkAnswer.Seen seen) {
        WalkPair pair = seen.pair();
        String base = seen.base().name().orElse("the base");
        String walker = "line " + pair.spot().line();
        String found = pair.isLevel()
                ? String.format(
                        Locale.ROOT,
                        "predicted %s dBm, walked %s dBm",
                        Decibels.number(pair.predictedDbm(), 0),
                        Decibels.number(pair.heard().value(), 0))
                : "odds " + Shares.odds(pair.odds()) + ", " + (pair.copied() ? "copy" : "no copy");
        return new Drawing(
                PathComposer.profile(seen.path(), base, walker, lengths),
                "From " + base + " to " + walker + ", "
                        + lengths.text(pair.spot().distanceM()) + " "
                        + Compass.word(pair.spot().bearingDeg()) + ", "
                        + pair.link().loadout() + ": " + found + ". "
                        + PathComposer.groundSentence(seen.path(), lengths));
    }

    private Block taught() {
        WalkAnswer.Learned learned = answer.learned();
        if (learned.refusal().isPresent()) return Paragraph.of(learned.refusal().get());
        SiteCalibration.Shift bias = learned.file().site().bias();
        Interval spread = learned.calibration().spread95Db();
        List<Facts.Fact> facts = new ArrayList<>();
        facts.add(new Facts.Fact(
                "Loss at this site over the prediction",
                Decibels.signed(bias.lossDb(), 1) + " dB, standard uncertainty "
                        + Decibels.text(bias.standardUncertaintyDb())));
        facts.add(new Facts.Fact(
                "Spread between places",
                String.format(
                        Locale.ROOT,
                        "%.1f dB (95 %%: %.1f to %.1f)",
                        learned.calibration().spreadDb(),
                        spread.low(),
                        spread.high())));
        facts.add(new Facts.Fact(
                "Independent reports",
                String.format(
                        Locale.ROOT,
                        "%.0f, with a decorrelation distance of %s (%s)",
                        learned.calibration().effectiveCount(),
                        lengths.heightText(learned.decorrelationM()),
                        learned.estimated() ? "estimated" : "usual value")));
        facts.add(new Facts.Fact("Calls without an answer", silentCalls(learned.logging())));
        facts.add(new Facts.Fact("Errors against the predicted margin", trend(learned.trend())));
        answer.check().ifPresent(check -> addHeldBack(facts, check));
        return new Facts(facts);
    }

    private static String silentCalls(SilentLogging logging) {
        String said = switch (logging.said()) {
            case LOGGED -> "logged, as the plan says";
            case LEFT_OUT -> "not logged, as the plan says";
            case UNKNOWN -> "not known whether they were logged; the doubt covers seven of ten missing";
        };
        return String.format(
                Locale.ROOT,
                "%.1f found, %.1f predicted, of the independent reports; %s",
                logging.calls().found(),
                logging.calls().expected(),
                said);
    }

    private static String trend(MarginTrend trend) {
        String found = String.format(
                Locale.ROOT,
                "%s dB more loss a dB of margin, standard uncertainty %s",
                Decibels.signed(trend.slope(), 2),
                Decibels.number(trend.standardUncertainty(), 2));
        return found
                + (trend.isSeen()
                        ? ": the shift is right in the middle of what was walked and not far from it; its doubt is wider for that"
                        : "");
    }

    private static void addHeldBack(List<Facts.Fact> facts, BlockedCheck check) {
        facts.add(new Facts.Fact(
                String.format(
                        Locale.ROOT,
                        "Brier score on %d held-back stretches (%d reports)",
                        check.stretches(),
                        check.reports()),
                String.format(Locale.ROOT, "%.3f before, %.3f after", check.brierBefore(), check.brierAfter())));
        if (check.rmseBeforeDb().isPresent() && check.rmseAfterDb().isPresent())
            facts.add(new Facts.Fact(
                    "RMS error of the levels there",
                    String.format(
                            Locale.ROOT,
                            "%.1f dB before, %.1f dB after",
                            check.rmseBeforeDb().getAsDouble(),
                            check.rmseAfterDb().getAsDouble())));
    }
}
