package handreach.plan;

import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.Range;
import handreach.input.SourceText;
import handreach.input.Unseen;
import handreach.loadout.Carry;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.reach.SiteCalibration;
import handreach.terrain.Cover;
import handreach.units.Decibels;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tomlj.TomlParseResult;

/**
 * A site calibration as a small text file, which a person accepts by naming it in the plan.
 *
 * @param site what was learned
 * @param links loadouts at the base and with the walker that it was learned from
 * @param model what the walks were compared with
 */
public record CalibrationFile(SiteCalibration site, List<List<String>> links, LossModel model) {
    private static final Range OBSERVATIONS = new Range("observations", 1, 1e6, "");
    private static final Range SPREAD = new Range("spread_db", 0, 60, "dB");
    private static final Range RADIUS = new Range("radius_m", 1, 1e6, "m");
    private static final Range LOSS = new Range("loss_db", -100, 100, "dB");
    private static final Range UNCERTAINTY = new Range("uncertainty_db", 0, 100, "dB");

    public CalibrationFile {
        links = links.stream().map(List::copyOf).toList();
    }

    /** Reads a calibration; every fault is told together. */
    public static CalibrationFile read(Path file) {
        return of(SourceText.read(file, PlanReader.CAP));
    }

    /** Reads a calibration from its text. */
    public static CalibrationFile of(SourceText text) {
        Faults faults = new Faults();
        TomlParseResult toml = PlanReader.parsed(text, "Have the walk command write it anew.");
        PlanSection root = new PlanSection(text.name(), "", toml, 1, faults, false);
        String madeFrom = root.required("made_from", "first walk");
        LocalDate day = day(root);
        int count = root.requiredWhole(OBSERVATIONS);
        double spreadDb = root.requiredNumber(SPREAD);
        List<List<String>> links = root.pairs("links");
        LossModel model = root.word("model", LossModels.KEYWORD, LossModels.HANDHELD);
        PlanSection place = root.table("area");
        Position middle = PlanReader.place(place, "middle").orElse(new Position(0, 0));
        if (!place.has("middle")) place.fault("middle", "is missing. Name the middle of the walked ground.");
        double radiusM = place.requiredNumber(RADIUS);
        place.refuseUnknownKeys();
        SiteCalibration.Shift bias = shift(root.table("bias"));
        Map<Cover, SiteCalibration.Shift> covers = new EnumMap<>(Cover.class);
        for (PlanSection section : root.tables("cover"))
            covers.put(section.word("name", Cover.KEYWORD, Cover.OPEN), shift(section));
        Map<String, SiteCalibration.Shift> carries = new LinkedHashMap<>();
        for (PlanSection section : root.tables("carry"))
            carries.put(section.word("name", Carry.KEYWORD, Carry.FACE).word(), shift(section));
        root.refuseUnknownKeys();
        faults.throwIfAny();
        SiteCalibration.Origin origin = new SiteCalibration.Origin(madeFrom, day, count);
        SiteCalibration.Area area = new SiteCalibration.Area(middle, radiusM);
        return new CalibrationFile(new SiteCalibration(bias, covers, carries, spreadDb, origin, area), links, model);
    }

    private static LocalDate day(PlanSection root) {
        String text = root.required("day", "2026-05-04");
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            if (!text.isEmpty()) root.fault("day", "is \"" + text + "\", a day such as 2026-05-04 is expected.");
            return LocalDate.EPOCH;
        }
    }

    private static SiteCalibration.Shift shift(PlanSection section) {
        double lossDb = section.requiredNumber(LOSS);
        double doubtDb = section.requiredNumber(UNCERTAINTY);
        section.refuseUnknownKeys();
        return new SiteCalibration.Shift(lossDb, doubtDb);
    }

    /** The text of the file. */
    public String text() {
        StringBuilder out = new StringBuilder();
        out.append(
                        "# Site calibration, learned from walks. Name it in the plan to accept it: [calibration] file = \"…\"\n")
                .append("# loss_db is added to the loss: positive where the site is worse than predicted.\n")
                .append("made_from = ")
                .append(PlanText.quoted(site.origin().source()))
                .append('\n')
                .append("day = ")
                .append(PlanText.quoted(site.origin().date().toString()))
                .append('\n')
                .append("observations = ")
                .append(site.origin().observations())
                .append("    # independent ones\n")
                .append("spread_db = ")
                .append(number(site.spreadDb()))
                .append("    # between places, in place of the ledger's\n");
        List<String> pairs = new ArrayList<>();
        for (List<String> ends : links)
            pairs.add("[" + PlanText.quoted(ends.get(0)) + ", " + PlanText.quoted(ends.get(1)) + "]");
        out.append("links = [").append(String.join(", ", pairs)).append("]    # loadouts at base and walker\n");
        if (!model.equals(LossModels.HANDHELD))
            out.append("model = ").append(PlanText.quoted(model.name())).append("    # that was compared with\n");
        out.append('\n');
        Position middle = site.area().middle();
        out.append("[area]    # where it holds\nmiddle = ")
                .append(PlanText.place(middle))
                .append("\nradius_m = ")
                .append(number(site.area().radiusM()))
                .append("\n\n[bias]\n");
        append(out, site.bias());
        for (Cover cover : Cover.values())
            if (site.biasByCover().containsKey(cover)) {
                out.append("\n[[cover]]\nname = ")
                        .append(PlanText.quoted(cover.word()))
                        .append('\n');
                append(out, site.biasByCover().get(cover));
            }
        site.biasByCarry().keySet().stream().sorted().forEach(carry -> {
            out.append("\n[[carry]]\nname = ").append(PlanText.quoted(carry)).append('\n');
            append(out, site.biasByCarry().get(carry));
        });
        return Unseen.escaped(out.toString());
    }

    private static void append(StringBuilder out, SiteCalibration.Shift shift) {
        out.append("loss_db = ")
                .append(number(shift.lossDb()))
                .append("\nuncertainty_db = ")
                .append(number(shift.standardUncertaintyDb()))
                .append('\n');
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.3f", value);
        return text.equals("-0.000") ? "0.000" : text;
    }

    /** What it does to the prediction, in one sentence. */
    public String words() {
        String spread = site.spreadDb() == 0
                ? "spread as in the ledger"
                : String.format(Locale.ROOT, "spread %.1f dB", site.spreadDb());
        return String.format(
                Locale.ROOT,
                "Calibrated by %s of %s (%d independent reports): loss shifted by %s dB ± %.1f dB, %s; it holds"
                        + " within %.1f km of the walked ground's middle, beyond that it is a guess.",
                site.origin().source(),
                site.origin().date(),
                site.origin().observations(),
                Decibels.signed(site.bias().lossDb(), 1),
                site.bias().standardUncertaintyDb(),
                spread,
                site.area().radiusM() / 1000);
    }
}
