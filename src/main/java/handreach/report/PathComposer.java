package handreach.report;

import handreach.geodesy.GeodesicLine;
import handreach.plan.CalibrationFile;
import handreach.plan.PlanHeader;
import handreach.propagation.LossModels;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.march.FieldMarch;
import handreach.report.draw.Figure;
import handreach.report.figure.FieldFigure;
import handreach.report.figure.ProfileFigure;
import handreach.report.figure.ProfileMark;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Column;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.ModelSpread;
import handreach.study.PathAnswer;
import handreach.study.Turning;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** One path for every face: the verdict, what is in the way, the ground, the loss, the ledger, and the figures. */
public final class PathComposer {
    private static final int FIELD_COLUMNS = 900;
    private static final int FIELD_ROWS = 360;
    /** How far above the highest ground the picture reaches, m. */
    private static final double FIELD_ABOVE_M = 100;
    /** So much of the first Fresnel radius free counts as unobstructed, Rec. ITU-R P.526. */
    private static final double CLEAR_RADII = 0.6;

    private PathComposer() {}

    /** The whole answer; intermediate values of the model when asked to explain. */
    public static Page page(PathAnswer answer, PlanHeader header, boolean explain) {
        Lengths lengths = header.lengths();
        List<Block> first =
                new ArrayList<>(List.of(Paragraph.answer(verdict(answer)), Paragraph.of(inTheWay(answer, lengths))));
        if (answer.ledger().isPresent())
            first.add(Paragraph.of(
                    "The ledger and its odds are by " + answer.loss().model() + "."));
        answer.link()
                .line()
                .map(line -> "Bearings are " + NorthNote.words(header, line.at(0), "the first end") + ".")
                .map(Paragraph::quiet)
                .ifPresent(first::add);
        FoliageComposer.words(answer).map(Paragraph::of).ifPresent(first::add);
        for (Turning turning : answer.turnings()) first.add(Paragraph.of(turning.words()));
        answer.calibration().map(CalibrationFile::words).map(Paragraph::of).ifPresent(first::add);
        return new Page("path", title(answer, header), "", first, sections(answer, lengths, explain), "");
    }

    private static List<Section> sections(PathAnswer answer, Lengths lengths, boolean explain) {
        List<Section> sections = new ArrayList<>(List.of(ground(answer, lengths), loss(answer.losses())));
        answer.ledger().ifPresent(ledger -> {
            List<Block> blocks = new ArrayList<>(List.of(LedgerComposer.table(ledger)));
            spread(answer).ifPresent(blocks::add);
            sections.add(new Section("The ledger both ways", blocks));
        });
        if (explain) sections.add(steps(answer.loss()));
        answer.ledger()
                .map(LedgerComposer::notes)
                .filter(notes -> !notes.isEmpty())
                .ifPresent(notes -> sections.add(Section.of("Notes to the ledger", new Bullets(notes))));
        return sections;
    }

    /** The answer in one sentence: of the ledger where there is one, else of the loss. */
    public static String verdict(PathAnswer answer) {
        return answer.ledger()
                .map(LedgerComposer::verdict)
                .orElseGet(
                        () -> "The path loses " + Decibels.number(answer.loss().lossDb(), 1) + " dB by "
                                + answer.loss().model() + ".");
    }

    /** What stands between the antennas, and what it costs. */
    public static String inTheWay(PathAnswer answer, Lengths lengths) {
        return obstacleWords(answer.geometry(), lengths) + " " + LossComposer.beyondFreeSpace(answer.loss());
    }

    private static String obstacleWords(PathGeometry geometry, Lengths lengths) {
        List<PathGeometry.Obstacle> edges = geometry.obstacles();
        Optional<PathGeometry.Clearance> worst = geometry.worstClearance();
        if (!edges.isEmpty()) {
            PathGeometry.Obstacle highest = edges.stream()
                    .reduce((a, b) -> b.aboveLineM() > a.aboveLineM() ? b : a)
                    .orElseThrow();
            return "In the way: " + (edges.size() == 1 ? "one edge, " : edges.size() + " edges, the highest ")
                    + height(highest.aboveLineM(), lengths) + " above the straight line at "
                    + distance(highest.distanceKm(), lengths) + ".";
        }
        if (!geometry.lineOfSight()) return "In the way: the ground, out of sight of each other.";
        if (worst.isPresent() && worst.get().inFresnelRadii() < CLEAR_RADII)
            return "In the way: no edge, but the ground comes close to the straight line at "
                    + distance(worst.get().distanceKm(), lengths) + ".";
        return "In the way: nothing over bare ground.";
    }

    /** A height or a clearance with its unit, finer than elsewhere: what counts here is less than a metre. */
    private static String height(double metres, Lengths lengths) {
        return heightNumber(metres, lengths) + " " + lengths.shortUnit();
    }

    private static String heightNumber(double metres, Lengths lengths) {
        return Decibels.number(metres / lengths.shortUnitM(), 1);
    }

    private static String distance(double km, Lengths lengths) {
        return distanceNumber(km, lengths) + " " + lengths.longUnit();
    }

    private static String distanceNumber(double km, Lengths lengths) {
        return Decibels.number(1000 * km / lengths.longUnitM(), 2);
    }

    private static String title(PathAnswer answer, PlanHeader header) {
        Lengths lengths = header.lengths();
        Optional<GeodesicLine> line = answer.link().line();
        String way = line.map(each -> ", bearing " + header.bearings().text(each.azimuthDeg(), 1))
                .orElse("");
        return String.format(
                Locale.ROOT,
                "%.3f %s%s, %.3f MHz, antennas %.2f and %.2f %s above ground",
                1000 * answer.profile().lengthKm() / lengths.longUnitM(),
                lengths.longUnit(),
                way,
                answer.link().conditions().frequency().mhz(),
                answer.link().terminals().txHeightM() / lengths.shortUnitM(),
                answer.link().terminals().rxHeightM() / lengths.shortUnitM(),
                lengths.shortUnit());
    }

    private static Section ground(PathAnswer answer, Lengths lengths) {
        List<Block> blocks = new ArrayList<>(List.of(Paragraph.of(groundSentence(answer, lengths))));
        if (!answer.geometry().obstacles().isEmpty()) blocks.add(edges(answer.geometry(), lengths));
        return new Section("Over the ground", blocks);
    }

    private static Table<PathGeometry.Obstacle> edges(PathGeometry geometry, Lengths lengths) {
        return Table.of(
                "",
                geometry.obstacles(),
                List.of(
                        Column.number(
                                "edge at, " + lengths.longUnit(), edge -> distanceNumber(edge.distanceKm(), lengths)),
                        Column.number(
                                "above sea level, " + lengths.shortUnit(),
                                edge -> Decibels.number(edge.heightM() / lengths.shortUnitM(), 0)),
                        Column.number(
                                "above the straight line, " + lengths.shortUnit(),
                                edge -> heightNumber(edge.aboveLineM(), lengths)),
                        Column.number("diffraction parameter \u03bd", edge -> Decibels.number(edge.nu(), 2))));
    }

    private static Section loss(List<PathLoss> losses) {
        if (losses.size() == 1) return Section.of("Loss by parts", LossComposer.parts(losses.get(0)));
        return Section.of(
                "Models side by side",
                LossComposer.models(losses.stream().map(LossComposer.Said::of).toList()),
                Paragraph.of(LossComposer.reading(losses)));
    }

    /** How far the models that apply to the path are apart, beside the doubt that the ledger has of its model. */
    static Optional<Paragraph> spread(PathAnswer answer) {
        if (answer.spread().isEmpty() || answer.ledger().isEmpty()) return Optional.empty();
        ModelSpread spread = answer.spread().get();
        double doubtDb = LedgerComposer.modelDoubtDb(answer.ledger().get());
        String names = named(spread.applicable().stream().map(PathLoss::model));
        int count = spread.applicable().size();
        String apart = count == 1
                ? "One model applies to this path: " + names + ", so no spread of models can be told."
                : String.format(
                        Locale.ROOT,
                        "%d models apply to this path and lie apart by %.1f dB (standard deviation), %.1f to %.1f dB of loss: %s.",
                        count,
                        spread.standardDeviationDb(),
                        spread.leastDb(),
                        spread.mostDb(),
                        names);
        return Optional.of(Paragraph.of("Spread of the models: " + apart
                + String.format(
                        Locale.ROOT,
                        " It stands beside the common doubt of the model, %.1f dB, and is not added to it: models share what they"
                                + " leave out.",
                        doubtDb)
                + (spread.leftOut().isEmpty()
                        ? ""
                        : " Not applicable here: "
                                + named(spread.leftOut().stream().map(ModelSpread.LeftOut::model)) + ".")));
    }

    private static String named(Stream<String> names) {
        return String.join(", ", names.toList());
    }

    private static Section steps(PathLoss loss) {
        return Section.of(
                "Steps of " + loss.model(),
                loss.steps().isEmpty() ? Paragraph.of("This model has no further steps.") : LossComposer.steps(loss));
    }

    /** Sight, clearance and angles in one sentence. */
    public static String groundSentence(PathAnswer answer, Lengths lengths) {
        PathGeometry geometry = answer.geometry();
        StringBuilder words =
                new StringBuilder(geometry.lineOfSight() ? "In line of sight" : "Out of sight of each other");
        geometry.worstClearance()
                .ifPresent(worst -> words.append("; least clearance over bare ground ")
                        .append(height(worst.clearanceM(), lengths))
                        .append(" (")
                        .append(Decibels.number(worst.inFresnelRadii(), 2))
                        .append(" of the first Fresnel radius) at ")
                        .append(distance(worst.distanceKm(), lengths)));
        return words.append("; departs at ")
                .append(Decibels.signed(geometry.departureDeg(), 2))
                .append("\u00b0, arrives at ")
                .append(Decibels.signed(geometry.arrivalDeg(), 2))
                .append("\u00b0.")
                .toString();
    }

    /** The profile with its edges; for the full-wave march the field over the ground. */
    public static Figure figure(PathAnswer answer) {
        boolean isMarched = answer.loss().model().equals(LossModels.FULL_WAVE.name());
        return isMarched ? field(answer) : profile(answer, "first end", "other end", Lengths.METRIC);
    }

    private static FieldFigure field(PathAnswer answer) {
        String title = String.format(
                Locale.ROOT,
                "Field of an antenna %.1f m up, %.2f MHz, %s polarisation",
                answer.link().terminals().txHeightM(),
                answer.link().conditions().frequency().mhz(),
                answer.link().conditions().polarization().name().toLowerCase(Locale.ROOT));
        return FieldFigure.of(
                title,
                FieldMarch.picture(
                        answer.profile(),
                        answer.link().terminals().txHeightM(),
                        answer.link().conditions(),
                        FIELD_COLUMNS,
                        FIELD_ROWS,
                        FIELD_ABOVE_M));
    }

    /** The profile between two named ends with its edges, each with how far it stands up into the straight line. */
    public static ProfileFigure profile(PathAnswer answer, String from, String to, Lengths lengths) {
        List<ProfileMark> marks = answer.geometry().obstacles().stream()
                .map(edge ->
                        new ProfileMark(edge.sample(), lengths.heightText(edge.aboveLineM()) + " in the way", true))
                .toList();
        String title = String.format(
                Locale.ROOT,
                "%.2f %s, %.1f dB by %s",
                1000 * answer.profile().lengthKm() / lengths.longUnitM(),
                lengths.longUnit(),
                answer.loss().lossDb(),
                answer.loss().model());
        return ProfileFigure.of(
                new ProfileFigure.Labels(title, from, to, lengths),
                answer.profile(),
                answer.link().terminals(),
                answer.link().conditions(),
                marks);
    }
}
