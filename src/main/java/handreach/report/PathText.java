package handreach.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.budget.Ledger;
import handreach.budget.LedgerLine;
import handreach.budget.TwoWayLedger;
import handreach.geodesy.GeodesicLine;
import handreach.plan.CalibrationFile;
import handreach.propagation.LossModels;
import handreach.propagation.LossPart;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.Step;
import handreach.propagation.march.FieldMarch;
import handreach.report.draw.Figure;
import handreach.report.draw.Svg;
import handreach.report.figure.FieldFigure;
import handreach.report.figure.ProfileFigure;
import handreach.report.figure.ProfileMark;
import handreach.report.file.Json;
import handreach.report.file.WholeFile;
import handreach.report.page.TextTable;
import handreach.study.PathAnswer;
import handreach.units.Decibels;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One path as JSON and as text. */
public final class PathText {
    private static final int FIELD_COLUMNS = 900;
    private static final int FIELD_ROWS = 360;
    /** How far above the highest ground the picture reaches, m. */
    private static final double FIELD_ABOVE_M = 100;

    private PathText() {}

    /** The answer with the keys of the command line's contract; intermediate values when asked to explain. */
    public static ObjectNode json(PathAnswer answer, boolean explain) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        PathLoss loss = answer.loss();
        node.put("model", loss.model());
        node.put("distance_km", answer.profile().lengthKm());
        node.put("frequency_mhz", answer.link().conditions().frequency().mhz());
        node.put("loss_db", loss.lossDb());
        node.put("free_space_db", loss.freeSpaceDb());
        putParts(node, loss);
        node.set("parts", parts(loss));
        node.set("geometry", geometry(answer));
        if (answer.losses().size() > 1) {
            ArrayNode models = node.putArray("models");
            for (PathLoss each : answer.losses()) {
                ObjectNode one = models.addObject();
                one.put("model", each.model());
                one.put("loss_db", each.lossDb());
                one.set("parts", parts(each));
            }
            node.put("reading", ModelReading.of(answer.losses()));
        }
        if (explain) node.set("steps", Json.tree(loss.steps()));
        answer.ledger().ifPresent(ledger -> {
            node.set("ledger", ledger(ledger));
            node.put("ledger_model", loss.model());
        });
        CalibrationJson.put(node, answer.calibration(), Optional.empty());
        node.set("warnings", Json.tree(answer.warnings()));
        return node;
    }

    private static void putParts(ObjectNode node, PathLoss loss) {
        double excess = loss.lossDb() - loss.freeSpaceDb();
        switch (loss.model()) {
            case "delta-bullington" -> node.put("diffraction_db", partOr(loss, "diffraction", excess));
            case "two-ray" -> node.put("excess_db", excess);
            default -> {
                // Other models are told by their parts alone.
            }
        }
    }

    private static double partOr(PathLoss loss, String word, double otherwise) {
        List<LossPart> named = loss.parts().stream()
                .filter(part -> part.name().toLowerCase(Locale.ROOT).contains(word))
                .toList();
        return named.isEmpty()
                ? otherwise
                : named.stream().mapToDouble(LossPart::db).sum();
    }

    private static ArrayNode parts(PathLoss loss) {
        ArrayNode parts = (ArrayNode) Json.tree(List.of());
        for (LossPart part : loss.parts()) {
            ObjectNode one = parts.addObject();
            one.put("name", part.name());
            one.put("db", part.db());
            one.put("source", part.source());
        }
        return parts;
    }

    private static ObjectNode geometry(PathAnswer answer) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        PathGeometry geometry = answer.geometry();
        answer.link().line().ifPresent(line -> {
            node.put("azimuth_deg", line.azimuthDeg());
            node.put("final_azimuth_deg", line.finalAzimuthDeg());
            node.put("length_m", line.lengthM());
        });
        node.put("samples", answer.profile().count());
        node.put("line_of_sight", geometry.lineOfSight());
        node.put("departure_deg", geometry.departureDeg());
        node.put("arrival_deg", geometry.arrivalDeg());
        geometry.worstClearance().ifPresent(worst -> {
            ObjectNode clearance = node.putObject("worst_clearance");
            clearance.put("distance_km", worst.distanceKm());
            clearance.put("clearance_m", worst.clearanceM());
            clearance.put("fresnel_radius_m", worst.fresnelRadiusM());
            clearance.put("in_fresnel_radii", worst.inFresnelRadii());
        });
        node.set("obstacles", Json.tree(geometry.obstacles()));
        return node;
    }

    /** Both directions line by line. */
    static ObjectNode ledger(TwoWayLedger ledger) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.set("there", ledger(ledger.there()));
        node.set("back", ledger(ledger.back()));
        node.put("weaker", ledger.weaker().equals(ledger.there()) ? "there" : "back");
        node.put("margin_db", ledger.marginDb());
        node.put("odds_of_copy", ledger.odds());
        return node;
    }

    private static ObjectNode ledger(Ledger ledger) {
        ObjectNode node = (ObjectNode) Json.tree(new Object() {});
        node.put("from", ledger.from());
        node.put("to", ledger.to());
        ArrayNode lines = node.putArray("lines");
        for (LedgerLine line : ledger.lines()) {
            ObjectNode one = lines.addObject();
            one.put("key", line.word());
            one.put("label", line.label());
            one.put("db", line.valueDb());
            one.put("common_doubt_db", line.doubt().commonDb());
            one.put("spread_db", line.doubt().spreadDb());
            one.put("source", line.source());
            one.put("note", line.note());
        }
        node.put("margin_db", ledger.marginDb());
        node.put("location_margin_db", ledger.locationMarginDb());
        node.put("margin_at_odds_db", ledger.marginAtOddsDb());
        node.put("common_doubt_db", ledger.doubt().commonDb());
        node.put("spread_db", ledger.doubt().spreadDb());
        node.put("odds_of_copy", ledger.odds());
        return node;
    }

    /** The answer for people. */
    public static String text(PathAnswer answer, boolean explain) {
        StringBuilder out = new StringBuilder();
        out.append(heading(answer)).append('\n').append(groundWords(answer)).append("\n\n");
        if (answer.losses().size() > 1) out.append(sideBySide(answer.losses()));
        else out.append(parts(answer.loss().parts(), answer.loss()));
        if (explain) out.append('\n').append(steps(answer.loss()));
        answer.ledger()
                .ifPresent(ledger -> out.append('\n')
                        .append(String.join("\n", ledgerWords(answer)))
                        .append("\n\n")
                        .append(LedgerText.of(ledger)));
        return out.toString();
    }

    /** Draws the profile with its edges as SVG; for the full-wave march the field over the ground. */
    public static void writeFigure(PathAnswer answer, Path file) {
        boolean marched = answer.loss().model().equals(LossModels.FULL_WAVE.name());
        Figure figure = marched ? field(answer) : figure(answer, "first end", "other end");
        WholeFile.write(file, Svg.file(figure));
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

    /** The profile with its edges. */
    public static ProfileFigure figure(PathAnswer answer, String from, String to) {
        List<ProfileMark> marks = answer.geometry().obstacles().stream()
                .map(edge ->
                        new ProfileMark(edge.sample(), String.format(Locale.ROOT, "%.1f km", edge.distanceKm()), true))
                .toList();
        String title = String.format(
                Locale.ROOT,
                "%.2f km, %.1f dB by %s",
                answer.profile().lengthKm(),
                answer.loss().lossDb(),
                answer.loss().model());
        return ProfileFigure.of(
                new ProfileFigure.Words(title, from, to),
                answer.profile(),
                answer.link().terminals(),
                answer.link().conditions(),
                marks);
    }

    /** By which model the ledger is, and what walks have taught that it holds, one sentence each. */
    public static List<String> ledgerWords(PathAnswer answer) {
        List<String> words = new ArrayList<>();
        if (answer.ledger().isEmpty()) return words;
        words.add("The ledger and its odds are by " + answer.loss().model() + ".");
        answer.calibration().map(CalibrationFile::words).ifPresent(words::add);
        return words;
    }

    /** Sight and clearance in one sentence. */
    public static String groundSentence(PathAnswer answer) {
        return groundWords(answer).lines().findFirst().orElse("");
    }

    private static String heading(PathAnswer answer) {
        Optional<GeodesicLine> line = answer.link().line();
        String way = line.map(each -> String.format(Locale.ROOT, ", azimuth %.1f\u00b0", each.azimuthDeg()))
                .orElse("");
        return String.format(
                Locale.ROOT,
                "%.3f km%s, %.3f MHz, antennas %.2f and %.2f m above ground",
                answer.profile().lengthKm(),
                way,
                answer.link().conditions().frequency().mhz(),
                answer.link().terminals().txHeightM(),
                answer.link().terminals().rxHeightM());
    }

    private static String groundWords(PathAnswer answer) {
        PathGeometry geometry = answer.geometry();
        StringBuilder words =
                new StringBuilder(geometry.lineOfSight() ? "In line of sight" : "Out of sight of each other");
        geometry.worstClearance()
                .ifPresent(worst -> words.append("; least clearance over bare ground ")
                        .append(Decibels.number(worst.clearanceM(), 1))
                        .append(" m (")
                        .append(Decibels.number(worst.inFresnelRadii(), 2))
                        .append(" of the first Fresnel radius) at ")
                        .append(Decibels.number(worst.distanceKm(), 2))
                        .append(" km"));
        words.append("; departs at ")
                .append(Decibels.signed(geometry.departureDeg(), 2))
                .append("\u00b0, arrives at ")
                .append(Decibels.signed(geometry.arrivalDeg(), 2))
                .append("\u00b0.");
        for (PathGeometry.Obstacle edge : geometry.obstacles())
            words.append(String.format(
                    Locale.ROOT,
                    "%n  edge at %.2f km, %.0f m above sea level, %.1f m above the straight line, \u03bd %.2f",
                    edge.distanceKm(),
                    edge.heightM(),
                    edge.aboveLineM(),
                    edge.nu()));
        return words.toString();
    }

    private static String parts(List<LossPart> parts, PathLoss loss) {
        TextTable table = TextTable.of("loss by parts", "dB", "source");
        for (LossPart part : parts) table.row(part.name(), decibels(part.db()), part.source());
        table.row("basic transmission loss (" + loss.model() + ")", decibels(loss.lossDb()), "");
        return table.text();
    }

    private static String sideBySide(List<PathLoss> losses) {
        TextTable table = TextTable.of("model", "loss dB", "over free space dB");
        for (PathLoss loss : losses) table.row(loss.model(), decibels(loss.lossDb()), decibels(loss.excessDb()));
        return table.text() + ModelReading.of(losses) + "\n";
    }

    private static String steps(PathLoss loss) {
        TextTable table = TextTable.of("step", "value", "unit");
        for (Step step : loss.steps())
            table.row(step.symbol(), String.format(Locale.ROOT, "%.8g", step.value()), step.unit());
        return table.rowCount() == 0 ? "This model has no further steps.\n" : table.text();
    }

    private static String decibels(double value) {
        return Decibels.number(value, 2);
    }
}
