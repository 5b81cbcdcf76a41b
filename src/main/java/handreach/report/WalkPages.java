package handreach.report;

import handreach.cartography.Graticule;
import handreach.cartography.MapFrame;
import handreach.geodesy.Compass;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.Plan;
import handreach.report.draw.Picture;
import handreach.report.figure.Axis;
import handreach.report.figure.MapFigure;
import handreach.report.figure.MapGround;
import handreach.report.figure.WalkMapFigure;
import handreach.report.figure.WalkRangeFigure;
import handreach.report.figure.WalkReliabilityFigure;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Drawing;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Sheet;
import handreach.study.Scene;
import handreach.study.WalkAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import handreach.walk.Comparison;
import handreach.walk.CopyTable;
import handreach.walk.WalkPair;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** A walk beside its prediction on paper: sections for the report, and a page of its own. */
public final class WalkPages {
    private static final int MAP_PX = 760;
    private static final double MARGIN = 1.12;
    private static final double LEAST_RADIUS_M = 300;
    /** Profiles of the worst places that are drawn. */
    private static final int DRAWN = 3;

    private final WalkAnswer answer;
    private final Scene scene;
    private final Plan plan;
    private final Lengths lengths;

    private WalkPages(WalkAnswer answer) {
        this.answer = answer;
        this.scene = answer.scene();
        this.plan = scene.plan();
        this.lengths = plan.heading().lengths();
    }

    /** Sections to stand in a report, false hopes first. */
    public static List<Section> sections(WalkAnswer answer) {
        WalkPages pages = new WalkPages(answer);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("Walked against predicted", pages.verdict(true)));
        sections.add(Section.of("Where the walk differed", pages.map()));
        sections.add(new Section("Were the odds honest", pages.odds()));
        if (!answer.worst().isEmpty()) sections.add(new Section("Farthest from the prediction", pages.worst()));
        sections.add(Section.of("What the walk teaches", Paragraph.of(WalkText.learned(answer)), pages.accepting()));
        return sections;
    }

    /** A page of its own. */
    static Page page(WalkAnswer answer) {
        WalkPages pages = new WalkPages(answer);
        List<Section> sections = new ArrayList<>(sections(answer));
        sections.set(0, new Section("By loadout and direction", pages.verdict(false)));
        sections.add(Section.of("Cautions", new CautionBlock(List.of(Caution.RELIANCE))));
        if (!answer.warnings().isEmpty()) sections.add(Section.of("Doubtful", new Bullets(answer.warnings())));
        return new Page(
                "Walk report",
                answer.scene().plan().heading().title(),
                "How good was the prediction, and what does the walk teach?",
                List.of(Paragraph.answer(pages.headline()), Paragraph.of(WalkText.learned(answer))),
                sections,
                "Made by Handreach from " + answer.scene().file().file().getFileName() + ".");
    }

    private String headline() {
        CopyTable all = answer.comparison().all().copies();
        return String.format(
                Locale.ROOT,
                "%d reports: %d false hopes (copy promised, not found), %d false fears (copy found, not promised), %d right.",
                all.count(),
                all.falseHopes(),
                all.falseFears(),
                all.kept() + all.rightlyDoubted());
    }

    private List<Block> verdict(boolean withHeadline) {
        List<Sheet.Column> columns = new ArrayList<>(List.of(
                Sheet.Column.words("loadout"),
                Sheet.Column.words("direction"),
                Sheet.Column.number("reports"),
                Sheet.Column.number("false hopes"),
                Sheet.Column.number("false fears"),
                Sheet.Column.number("right"),
                Sheet.Column.number("Brier")));
        boolean hasLevels = answer.comparison().all().levels().isPresent();
        if (hasLevels)
            for (String head : List.of("levels", "mean error, dB", "sd, dB", "RMSE, dB"))
                columns.add(Sheet.Column.number(head));
        List<Sheet.Row> rows = new ArrayList<>();
        for (Comparison.Score score : answer.comparison().groups()) rows.add(row(score, hasLevels, false));
        if (rows.size() > 1) rows.add(row(answer.comparison().all(), hasLevels, true));
        String error =
                hasLevels ? "Error is predicted minus walked: positive where the prediction was too hopeful. " : "";
        Sheet sheet = new Sheet(error + "Copy counts as promised from odds of one half.", columns, rows);
        return withHeadline ? List.of(Paragraph.of(headline()), sheet) : List.of(sheet);
    }

    private static Sheet.Row row(Comparison.Score score, boolean hasLevels, boolean isSum) {
        CopyTable copies = score.copies();
        List<String> cells = new ArrayList<>(List.of(
                score.loadout().isEmpty() ? "all" : score.loadout(),
                score.way().map(way -> way.word()).orElse(""),
                String.valueOf(copies.count()),
                String.valueOf(copies.falseHopes()),
                String.valueOf(copies.falseFears()),
                Shares.share(copies.shareRight().orElse(0)),
                Decibels.number(score.brier(), 3)));
        if (hasLevels)
            cells.addAll(score.levels()
                    .map(levels -> List.of(
                            String.valueOf(levels.count()),
                            Axis.signed(levels.meanDb(), 1),
                            Decibels.number(levels.standardDeviationDb(), 1),
                            Decibels.number(levels.rmseDb(), 1)))
                    .orElse(List.of("", "", "", "")));
        return new Sheet.Row(cells, isSum);
    }

    private Drawing map() {
        MapFrame frame = frame();
        MapGround ground = MapGround.of(
                scene.tiles(),
                frame,
                Picture.relief(MapGround.hillshade(scene.tiles(), frame)),
                Graticule.of(frame, plan.heading().placeForm(), 5));
        Lengths style = lengths;
        WalkMapFigure figure =
                WalkMapFigure.of(ground, answer.pairs(), ReachMaps.places(plan), new MapFigure.Key(List.of(), style));
        return new Drawing(
                figure,
                "Reports of the walks. Triangles down are places that were worse than predicted, triangles up better ones.");
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
        return MapGround.frame(middle, Math.max(LEAST_RADIUS_M, MARGIN * Math.max(tall, wide) / 2), MAP_PX, MAP_PX);
    }

    private List<Block> odds() {
        Comparison comparison = answer.comparison();
        double brier = comparison.all().brier();
        return List.of(
                new Drawing(
                        WalkReliabilityFigure.of(comparison.reliability(), brier),
                        String.format(
                                Locale.ROOT,
                                "Share of copy found against the odds promised, in fifths of the odds, with 95 %% intervals as if the"
                                        + " reports were independent. On the broken line the odds were honest. Brier score %.3f (0 at"
                                        + " best, 0.25 for always saying one half).",
                                brier)),
                new Drawing(
                        WalkRangeFigure.of(comparison.sectors(), lengths),
                        "Range promised and found by bearing from the base, as far as was walked."));
    }

    private List<Block> worst() {
        List<Block> blocks = new ArrayList<>();
        List<Sheet.Row> rows = new ArrayList<>();
        for (WalkAnswer.Seen seen : answer.worst()) {
            WalkPair pair = seen.pair();
            rows.add(Sheet.Row.of(
                    String.valueOf(pair.spot().line()),
                    plan.heading().placeForm().format(pair.spot().at()),
                    from(pair),
                    pair.link().loadout(),
                    Shares.odds(pair.odds()),
                    pair.copied() ? "copy" : "no copy",
                    pair.isLevel() ? Axis.signed(pair.errorDb(), 1) : ""));
        }
        blocks.add(new Sheet(
                "Reports farthest from their prediction; the line is that of the log.",
                List.of(
                        Sheet.Column.number("line"),
                        Sheet.Column.words("place"),
                        Sheet.Column.words("from the base"),
                        Sheet.Column.words("loadout"),
                        Sheet.Column.number("odds"),
                        Sheet.Column.words("found"),
                        Sheet.Column.number("error, dB")),
                rows));
        answer.worst().stream().limit(DRAWN).forEach(seen -> blocks.add(profile(seen)));
        return blocks;
    }

    private Drawing profile(WalkAnswer.Seen seen) {
        WalkPair pair = seen.pair();
        String base = seen.base().name().orElse("the base");
        String walker = "line " + pair.spot().line();
        String found = pair.isLevel()
                ? String.format(
                        Locale.ROOT,
                        "predicted %.0f dBm, walked %.0f dBm",
                        pair.predictedDbm(),
                        pair.heard().value())
                : "odds " + Shares.odds(pair.odds()) + ", " + (pair.copied() ? "copy" : "no copy");
        return new Drawing(
                PathComposer.profile(seen.path(), base, walker, lengths),
                "From " + base + " to " + walker + ", " + from(pair) + ", "
                        + pair.link().loadout() + ": " + found + ". " + PathComposer.groundSentence(seen.path()));
    }

    private String from(WalkPair pair) {
        return lengths.text(pair.spot().distanceM()) + " "
                + Compass.word(pair.spot().bearingDeg());
    }

    private Paragraph accepting() {
        if (scene.calibration().isPresent())
            return Paragraph.quiet("The plan has accepted a calibration already, which this comparison leaves out. "
                    + scene.calibration().get().words());
        return Paragraph.quiet(
                "Nothing changes until a person accepts it: name the calibration file in the plan, [calibration] file = …");
    }
}
