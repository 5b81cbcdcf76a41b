package handreach.reach;

import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.uncertainty.Interval;
import handreach.uncertainty.Odds;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * The program held against measured loss, printed, never asserted: the tables of docs/field-comparison.md, which tells how to run it
 * and what the folder of the data holds. The data are not in the tree: their licences do not allow it, or are not stated.
 */
@EnabledIfSystemProperty(named = "measured", matches = ".+")
class MeasuredFields {
    private static final Path FOLDER = Path.of(System.getProperty("measured", "../measured"));
    private static final String LINES = "denmark-rural-profiles-144-to-1900mhz";
    private static final double[] COMMON_DB = {1, 2, 3, 4, 5, 6};
    private static final double[] SPREAD_DB = {4, 4.5, 5, 6, 7};
    /** Losses that a link is taken to allow, dB. */
    private static final int FIRST_ALLOWED_DB = 90;

    private static final int LAST_ALLOWED_DB = 160;
    private static final int ALLOWED_STEP_DB = 5;
    /** The same for odds, which are asked of every place. */
    private static final int ODDS_STEP_DB = 1;

    private static final double SHORTEST_REACH_M = 200;

    @Test
    void printTheLines() throws IOException {
        List<MeasuredLine> lines = new ArrayList<>();
        for (String site : MeasuredLine.SITES) {
            lines.add(MeasuredLine.read(FOLDER.resolve(LINES), site, 1, 144));
            lines.add(MeasuredLine.read(FOLDER.resolve(LINES), site, 2, 435));
        }
        Map<String, List<double[]>> predicted = new TreeMap<>();
        print("| model | MHz | posts | mean, dB | sd, dB | sd within a line, dB | means of the lines, dB |");
        print("| --- | --- | --- | --- | --- | --- | --- |");
        for (LossModel model : LossModels.all()) {
            List<double[]> losses =
                    lines.stream().map(line -> line.predictedDb(model)).toList();
            predicted.put(model.name(), losses);
            for (double mhz : new double[] {144, 435}) errors(model.name(), lines, losses, mhz);
        }
        print("");
        print("| model | cases | predicted over measured: median, 16 to 84 % | "
                + columns("intervals that hold it, doubt %.0f dB", COMMON_DB));
        print("| --- | --- | --- | " + "--- | ".repeat(COMMON_DB.length));
        for (LossModel model : LossModels.all()) coverage(model.name(), cases(lines, predicted.get(model.name())));
        for (double spreadDb : SPREAD_DB) {
            print("");
            print(String.format(Locale.ROOT, "Odds by fifths, handheld, spread %.1f dB: said, true, places", spreadDb));
            for (double mhz : new double[] {144, 435, 0})
                for (boolean isShifted : new boolean[] {false, true})
                    reliability(lines, predicted.get(LossModels.HANDHELD.name()), mhz, spreadDb, isShifted);
        }
        print("");
        for (double mhz : new double[] {144, 435}) alike(lines, predicted.get(LossModels.HANDHELD.name()), mhz);
        print("");
        print("Rows of measured-lines-computed.csv:");
        rows(lines, predicted.get(LossModels.HANDHELD.name()));
    }

    /** Low nodes to a gateway; the ground between is not in the set, and a straight slope stands in for it, without cover. */
    @Test
    void printTheLowNodes() throws IOException {
        List<LowNode> nodes =
                LowNode.read(FOLDER.resolve("lebanon-868mhz-low-nodes").resolve("given.csv"));
        print(
                "| place | means that count | model | n | mean, dB | sd, dB | RMSE, dB | by height of the node, mean (n) |");
        print("| --- | --- | --- | --- | --- | --- | --- | --- |");
        for (String site : nodes.stream().map(LowNode::site).distinct().toList())
            for (LossModel model : List.of(LossModels.HANDHELD, LossModels.DELTA_BULLINGTON))
                for (LowNode.Kept kept : LowNode.Kept.values()) {
                    Map<Double, List<Double>> byHeight = new TreeMap<>();
                    List<Double> all = new ArrayList<>();
                    for (LowNode node : nodes)
                        if (node.site().equals(site) && kept.holds(node)) {
                            double error = node.medianDb() - node.predictedDb(model);
                            all.add(error);
                            byHeight.computeIfAbsent(node.heightM(), h -> new ArrayList<>())
                                    .add(error);
                        }
                    print(String.format(
                            Locale.ROOT,
                            "| %s | %s | `%s` | %d | %+.1f | %.1f | %.1f | %s |",
                            site,
                            kept.words,
                            model.name(),
                            all.size(),
                            mean(all),
                            deviation(all),
                            Math.sqrt(all.stream()
                                    .mapToDouble(e -> e * e)
                                    .average()
                                    .orElseThrow()),
                            String.join(
                                    ", ",
                                    byHeight.entrySet().stream()
                                            .map(one -> String.format(
                                                    Locale.ROOT,
                                                    "%.1f m %+.1f (%d)",
                                                    one.getKey(),
                                                    mean(one.getValue()),
                                                    one.getValue().size()))
                                            .toList())));
                }
    }

    private static void errors(String model, List<MeasuredLine> lines, List<double[]> losses, double mhz) {
        List<Double> all = new ArrayList<>();
        List<Double> within = new ArrayList<>();
        List<Double> means = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).mhz != mhz) continue;
            List<Double> mine = new ArrayList<>();
            for (int p = 0; p < losses.get(i).length; p++)
                if (!Double.isNaN(losses.get(i)[p])) mine.add(losses.get(i)[p] - lines.get(i).measuredDb[p]);
            if (mine.isEmpty()) continue;
            double mean = mean(mine);
            means.add(mean);
            all.addAll(mine);
            for (double error : mine) within.add(error - mean);
        }
        if (all.isEmpty()) return;
        print(String.format(
                Locale.ROOT,
                "| `%s` | %.0f | %d | %+.1f | %.1f | %.1f | %s |",
                model,
                mhz,
                all.size(),
                mean(all),
                deviation(all),
                deviation(within),
                String.join(
                        ", ",
                        means.stream()
                                .map(m -> String.format(Locale.ROOT, "%+.1f", m))
                                .toList())));
    }

    /** One reach that was measured, and the shift of the prediction that would meet it. */
    record Case(String site, double mhz, int allowedDb, double measuredM, double predictedM, double shiftDb) {}

    private static List<Case> cases(List<MeasuredLine> lines, List<double[]> losses) {
        List<Case> cases = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            MeasuredLine line = lines.get(i);
            double[] loss = losses.get(i);
            if (Arrays.stream(loss).anyMatch(Double::isNaN)) continue;
            for (int allowedDb = FIRST_ALLOWED_DB; allowedDb <= LAST_ALLOWED_DB; allowedDb += ALLOWED_STEP_DB) {
                RadialReach measured = reach(line, line.measuredDb, allowedDb);
                if (measured.openEnded() || measured.continuousM() < SHORTEST_REACH_M) continue;
                double shiftDb = shift(line, loss, allowedDb, measured.continuousM());
                cases.add(new Case(
                        line.site,
                        line.mhz,
                        allowedDb,
                        measured.continuousM(),
                        reach(line, loss, allowedDb).continuousM(),
                        shiftDb));
            }
        }
        return cases;
    }

    private static RadialReach reach(MeasuredLine line, double[] lossDb, double allowedDb) {
        double[] margin = Arrays.stream(lossDb).map(loss -> allowedDb - loss).toArray();
        return RadialReach.of(line.distanceM, RadialReach.rings(line.distanceM), margin, margin.length, 0);
    }

    /** The least shift, to 0.1 dB, with which the predicted reach meets the measured; positive where more was allowed than predicted. */
    private static double shift(MeasuredLine line, double[] loss, double allowedDb, double measuredM) {
        for (int tenths = 0; tenths < 600; tenths++) {
            double db = tenths / 10.0;
            double low = reach(line, loss, allowedDb - db).continuousM();
            double high = reach(line, loss, allowedDb + db).continuousM();
            if (low <= measuredM && measuredM <= high)
                return reach(line, loss, allowedDb).continuousM() < measuredM ? db : -db;
        }
        return Double.POSITIVE_INFINITY;
    }

    private static void coverage(String model, List<Case> cases) {
        if (cases.isEmpty()) return;
        double[] ratio = cases.stream()
                .mapToDouble(one -> one.predictedM() / one.measuredM())
                .sorted()
                .toArray();
        List<String> held = new ArrayList<>();
        for (double commonDb : COMMON_DB)
            held.add(String.format(
                    Locale.ROOT,
                    "%.1f %%",
                    100.0
                            * cases.stream()
                                    .filter(one -> Math.abs(one.shiftDb()) <= Interval.COVERAGE_95 * commonDb)
                                    .count()
                            / cases.size()));
        print(String.format(
                Locale.ROOT,
                "| `%s` | %d | %.2f, %.2f to %.2f | %s |",
                model,
                cases.size(),
                ratio[ratio.length / 2],
                ratio[(int) (0.16 * ratio.length)],
                ratio[(int) (0.84 * ratio.length)],
                String.join(" | ", held)));
    }

    /** What the line as a whole lies above its prediction, dB: what a walk along it would have taught. */
    private static double shiftDb(MeasuredLine line, double[] lossDb, boolean isShifted) {
        if (!isShifted) return 0;
        double sum = 0;
        for (int p = 0; p < lossDb.length; p++) sum += line.measuredDb[p] - lossDb[p];
        return sum / lossDb.length;
    }

    private static void reliability(
            List<MeasuredLine> lines, List<double[]> losses, double mhz, double spreadDb, boolean isShifted) {
        double[] said = new double[5];
        int[] came = new int[5];
        int[] count = new int[5];
        for (int i = 0; i < lines.size(); i++) {
            if (mhz != 0 && lines.get(i).mhz != mhz) continue;
            for (int allowedDb = FIRST_ALLOWED_DB; allowedDb <= LAST_ALLOWED_DB; allowedDb += ODDS_STEP_DB)
                for (int p = 0; p < losses.get(i).length; p++) {
                    double odds = Odds.ofMargin(
                            allowedDb - losses.get(i)[p] - shiftDb(lines.get(i), losses.get(i), isShifted), spreadDb);
                    int fifth = Math.min(4, (int) (5 * odds));
                    said[fifth] += odds;
                    count[fifth]++;
                    if (lines.get(i).measuredDb[p] <= allowedDb) came[fifth]++;
                }
        }
        StringBuilder row = new StringBuilder(mhz == 0 ? "| both" : String.format(Locale.ROOT, "| %.0f", mhz));
        row.append(isShifted ? ", each line's own shift taken out |" : " |");
        for (int f = 0; f < 5; f++)
            row.append(String.format(
                    Locale.ROOT, " %.2f, %.2f, %d |", said[f] / count[f], (double) came[f] / count[f], count[f]));
        print(row.toString());
    }

    /** Correlation of the errors, each line's own mean taken out, of posts so many posts apart. */
    private static void alike(List<MeasuredLine> lines, List<double[]> losses, double mhz) {
        StringBuilder row = new StringBuilder(String.format(Locale.ROOT, "Errors of handheld alike, %.0f MHz:", mhz));
        for (int apart : new int[] {1, 2, 4, 8}) {
            double product = 0;
            double square = 0;
            int pairs = 0;
            int posts = 0;
            for (int i = 0; i < lines.size(); i++) {
                if (lines.get(i).mhz != mhz) continue;
                double shiftDb = shiftDb(lines.get(i), losses.get(i), true);
                double[] error = losses.get(i).clone();
                for (int p = 0; p < error.length; p++) error[p] += shiftDb - lines.get(i).measuredDb[p];
                for (int p = 0; p < error.length; p++, posts++) square += error[p] * error[p];
                for (int p = apart; p < error.length; p++, pairs++) product += error[p] * error[p - apart];
            }
            row.append(String.format(Locale.ROOT, " %d m %.2f", 50 * apart, product / pairs / (square / posts)));
        }
        print(row.toString());
    }

    /**
     * What the test of the defaults reads: each case's shift, and for each decibel of margin, the line's own shift taken out, how many
     * places there were and how many with copy.
     */
    private static void rows(List<MeasuredLine> lines, List<double[]> losses) {
        print("what,mhz,db,places,copies");
        for (Case one : cases(lines, losses))
            print(String.format(Locale.ROOT, "reach,%.0f,%.1f,1,1", one.mhz(), 0.0 + one.shiftDb()));
        for (double mhz : new double[] {144, 435}) {
            TreeMap<Integer, int[]> byMargin = new TreeMap<>();
            for (int i = 0; i < lines.size(); i++)
                if (lines.get(i).mhz == mhz) count(lines.get(i), losses.get(i), byMargin);
            byMargin.forEach((margin, at) -> {
                if (Math.abs(margin) <= 25)
                    print(String.format(Locale.ROOT, "odds,%.0f,%d,%d,%d", mhz, margin, at[0], at[1]));
            });
        }
    }

    private static void count(MeasuredLine line, double[] lossDb, TreeMap<Integer, int[]> byMargin) {
        double shiftDb = shiftDb(line, lossDb, true);
        for (int allowedDb = FIRST_ALLOWED_DB; allowedDb <= LAST_ALLOWED_DB; allowedDb += ODDS_STEP_DB)
            for (int p = 0; p < lossDb.length; p++) {
                int marginDb = (int) Math.round(allowedDb - lossDb[p] - shiftDb);
                int[] at = byMargin.computeIfAbsent(marginDb, key -> new int[2]);
                at[0]++;
                if (line.measuredDb[p] <= allowedDb) at[1]++;
            }
    }

    private static String columns(String form, double[] values) {
        return String.join(
                        " | ",
                        Arrays.stream(values)
                                .mapToObj(value -> String.format(Locale.ROOT, form, value))
                                .toList())
                + " |";
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElseThrow();
    }

    private static double deviation(List<Double> values) {
        double mean = mean(values);
        return Math.sqrt(
                values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum() / (values.size() - 1));
    }

    private static void print(String line) {
        System.out.println(line);
    }
}
