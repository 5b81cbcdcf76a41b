package handreach.bench;

import handreach.bench.AntennaResult.Finding;
import handreach.bench.AntennaResult.Verdict;
import handreach.input.NearestWord;
import handreach.uncertainty.Holm;
import handreach.units.Db;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** Received levels of a file, session by session, against the control. */
final class LevelComparison {
    private static final double LEVEL = 0.05;
    /** An ambient 10 dB below the reading adds 0.4 dB to it. */
    private static final double FLOOR_MARGIN_DB = 10;

    private static final double OVERLOAD_MARGIN_DB = 1;

    /** Names spelled out before a remark; further ones are counted. */

    /** No antenna moves by as much from trial to trial, dB; our suggestion. */
    private static final double SLIP_DB = 30;
    /** With two readings nobody can say which is the slip. */
    private static final int LEAST_FOR_SLIPS = 3;

    private final BenchFile file;
    private final String control;
    private final List<String> warnings;
    private final Map<SessionKey, LevelSession> sessions = new LinkedHashMap<>();

    LevelComparison(BenchFile file, String control, List<String> warnings) {
        this.file = file;
        this.control = control;
        this.warnings = warnings;
        SessionKey.sessions(file.readings(), Quantity.RECEIVED_LEVEL).forEach((key, readings) -> {
            LevelSession session = new LevelSession(file.declarations());
            for (Reading r : readings) session.add(r, r.value(), r.measured().step());
            sessions.put(key, session);
            warnOfSlips(key, readings);
        });
    }

    Optional<LevelSession> session(SessionKey key) {
        return Optional.ofNullable(sessions.get(key));
    }

    List<MountResult> mounts() {
        List<MountResult> results = new ArrayList<>();
        sessions.forEach((key, session) -> {
            warnOfLimits(key, session);
            if (session.antenna(control).isEmpty()) warnings.add(withoutControl(key));
            else if (session.antennas().size() < 2)
                warnings.add(key.named() + ": only the control was read, so there is no delta.");
            else results.add(result(key, session));
        });
        return results;
    }

    private MountResult result(SessionKey key, LevelSession session) {
        session.setControl(control);
        List<AntennaResult> antennas = compared(key, session, control, warnings);
        if (session.antennas().size() > AlikeGroups.MOST_ANTENNAS)
            warnings.add(key.named() + ": more than " + AlikeGroups.MOST_ANTENNAS
                    + " antennas were read: groups that cannot be told apart are not worked out.");
        return new MountResult(key, session, antennas);
    }

    /** All antennas of a session against its control, strongest first; what should be known is added to the warnings. */
    static List<AntennaResult> compared(SessionKey key, LevelSession session, String control, List<String> warnings) {
        AntennaReadings reference = session.antenna(control).orElseThrow();
        List<AntennaReadings> others =
                session.antennas().stream().filter(a -> a != reference).toList();
        List<LevelDifference> differences =
                others.stream().map(a -> session.difference(a, reference)).toList();
        List<Verdict> verdicts = verdicts(
                differences.stream().filter(d -> d.estimate().isPresent()).toList());
        List<AntennaResult> results = new ArrayList<>();
        Remarks remarks = new Remarks();
        int next = 0;
        for (int i = 0; i < others.size(); i++) {
            LevelDifference difference = differences.get(i);
            Optional<Verdict> verdict =
                    difference.estimate().isPresent() ? Optional.of(verdicts.get(next++)) : Optional.empty();
            results.add(result(key, others.get(i), reference, difference, verdict));
            for (String remark : difference.remarks()) remarks.add(others.get(i).antenna(), remark);
        }
        warnings.addAll(remarks.told(key));
        session.drift()
                .filter(ControlDrift::significant)
                .ifPresent(drift -> warnOfDrift(key, drift, results, warnings));
        warnOfFewTrials(key, results, warnings);
        warnOfHolm(key, results, warnings);
        results.sort(
                Comparator.comparingDouble((AntennaResult a) -> a.delta().db()).reversed());
        return results;
    }

    /** The family is that of the comparisons that can be judged; those that cannot are told by all. */
    private static List<Verdict> verdicts(List<LevelDifference> differences) {
        List<Double> odds =
                differences.stream().map(d -> d.odds().orElseThrow()).toList();
        List<Double> judgedOdds = new ArrayList<>();
        for (int i = 0; i < odds.size(); i++) if (differences.get(i).judged()) judgedOdds.add(odds.get(i));
        List<Double> amongAll = Holm.adjusted(odds);
        List<Double> amongJudged = Holm.adjusted(judgedOdds);
        List<Verdict> verdicts = new ArrayList<>();
        int judged = 0;
        for (int i = 0; i < odds.size(); i++) {
            boolean isJudged = differences.get(i).judged();
            double adjusted = isJudged ? amongJudged.get(judged++) : amongAll.get(i);
            Finding finding =
                    !isJudged ? Finding.TOO_FEW_TRIALS : adjusted < LEVEL ? Finding.TOLD_APART : Finding.NOT_TOLD_APART;
            verdicts.add(new Verdict(odds.get(i), adjusted, finding, odds.size()));
        }
        return verdicts;
    }

    private static void warnOfDrift(
            SessionKey key, ControlDrift drift, List<AntennaResult> results, List<String> warnings) {
        List<String> corrected = results.stream()
                .filter(r -> r.method() == ComparisonMethod.PAIRED_DRIFT_CORRECTED
                        || r.method() == ComparisonMethod.WELCH_DRIFT_CORRECTED)
                .map(AntennaResult::antenna)
                .toList();
        if (corrected.isEmpty()) return;
        warnings.add(String.format(
                Locale.ROOT,
                "In %s the levels drifted by %s dB from one reading to the next (odds of chance %.4f). The drift is taken out of"
                        + " %s, along a straight line over the order of readings, and the doubt of the line is carried. Change"
                        + " the order of antennas from trial to trial, and a drift cancels by itself.",
                key.words(),
                Decibels.signed(drift.dbPerReading(), 3),
                drift.p(),
                corrected.size() == results.size() ? "every delta" : "the deltas of " + Remarks.together(corrected)));
    }

    private static void warnOfFewTrials(SessionKey key, List<AntennaResult> results, List<String> warnings) {
        List<String> few = results.stream()
                .filter(r -> r.finding() == Finding.TOO_FEW_TRIALS)
                .map(AntennaResult::antenna)
                .toList();
        if (few.isEmpty()) return;
        warnings.add(Remarks.line(
                few,
                key,
                "no verdict from fewer than " + LevelSession.LEAST_TRIALS
                        + " trials, since two or three that agree may do so by luck. Read on, or declare earlier_scatter_db or"
                        + " the doubts of the instrument."));
    }

    private static AntennaResult result(
            SessionKey key,
            AntennaReadings antenna,
            AntennaReadings control,
            LevelDifference difference,
            Optional<Verdict> verdict) {
        DeltaOverControl delta = new DeltaOverControl(
                antenna.antenna(),
                control.antenna(),
                key.mounting(),
                key.frequencyMhz(),
                new Db(difference.db()),
                difference.estimate());
        return new AntennaResult(
                antenna.summary(), delta, difference.method(), difference.parts(), verdict, difference.detection());
    }

    private static void warnOfHolm(SessionKey key, List<AntennaResult> results, List<String> warnings) {
        List<AntennaResult> chance = results.stream()
                .filter(result -> result.verdict()
                        .filter(verdict -> verdict.p() < LEVEL && verdict.finding() == Finding.NOT_TOLD_APART)
                        .isPresent())
                .toList();
        if (chance.isEmpty()) return;
        boolean isOne = chance.size() == 1;
        warnings.add(Remarks.line(
                chance.stream().map(AntennaResult::antenna).toList(),
                key,
                (isOne ? "its own interval leaves" : "their own intervals leave")
                        + " out zero (odds of chance " + odds(chance, Verdict::p) + "), but among the " + results.size()
                        + " antennas judged together " + (isOne ? "one such result is" : "such results are")
                        + " to be expected by chance (" + odds(chance, Verdict::adjustedP) + "): not told apart."));
    }

    private static String odds(List<AntennaResult> results, ToDoubleFunction<Verdict> odds) {
        DoubleSummaryStatistics all = results.stream()
                .mapToDouble(result -> odds.applyAsDouble(result.verdict().orElseThrow()))
                .summaryStatistics();
        String low = Decibels.number(all.getMin(), 3);
        String high = Decibels.number(all.getMax(), 3);
        return low.equals(high) ? low : low + " to " + high;
    }

    private String withoutControl(SessionKey key) {
        List<String> where = sessions.entrySet().stream()
                .filter(e -> e.getValue().antenna(control).isPresent())
                .map(e -> e.getKey().words())
                .toList();
        List<String> mountings = sessions.entrySet().stream()
                .filter(e -> e.getValue().antenna(control).isPresent())
                .map(e -> e.getKey().mounting().name())
                .distinct()
                .toList();
        return key.named() + ": the control \"" + control + "\" was not read"
                + (where.isEmpty() ? "" : " (it was: " + String.join(", ", where) + ")")
                + ", so there is no delta. Read the control in the same mounting and at the same frequency."
                + (mountings.contains(key.mounting().name())
                        ? ""
                        : NearestWord.hint(key.mounting().name(), mountings));
    }

    /** A reading far from the others of its antenna is more often a slip, such as a lost sign, than a measurement. */
    private void warnOfSlips(SessionKey key, List<Reading> readings) {
        Map<String, List<Reading>> byAntenna = new LinkedHashMap<>();
        for (Reading reading : readings)
            byAntenna
                    .computeIfAbsent(LevelSession.identity(reading.antenna()), same -> new ArrayList<>())
                    .add(reading);
        List<String> slips = new ArrayList<>();
        byAntenna.values().forEach(own -> {
            double[] levels = own.stream().mapToDouble(Reading::value).sorted().toArray();
            double middle = levels[levels.length / 2];
            if (levels.length >= LEAST_FOR_SLIPS)
                for (Reading one : own)
                    if (Math.abs(one.value() - middle) > SLIP_DB)
                        slips.add("line " + one.line() + ", " + one.antenna() + ", " + key.words() + ": "
                                + Decibels.number(one.value(), 1) + " dBm, while others of it lie about "
                                + Decibels.number(middle, 1)
                                + " dBm. Is it a slip, such as a lost sign? Mend or leave out"
                                + " the reading.");
        });
        if (!slips.isEmpty())
            warnings.add(slips.get(0) + (slips.size() == 1 ? "" : " And " + (slips.size() - 1) + " readings more."));
    }

    private void warnOfLimits(SessionKey key, LevelSession session) {
        OptionalDouble floor = file.declarations().instrument().noiseFloorDbm();
        if (floor.isPresent())
            warnOfNear(
                    key,
                    session,
                    level -> level < floor.getAsDouble() + FLOOR_MARGIN_DB,
                    "less than 10 dB above the noise floor of " + Decibels.number(floor.getAsDouble(), 1)
                            + " dBm, which lifts them by 0.4 dB or more and hides differences. Go closer, or raise the power.");
        OptionalDouble overload = file.declarations().instrument().overloadDbm();
        if (overload.isPresent())
            warnOfNear(
                    key,
                    session,
                    level -> level > overload.getAsDouble() - OVERLOAD_MARGIN_DB,
                    "within 1 dB of the overload level of " + Decibels.number(overload.getAsDouble(), 1)
                            + " dBm or above it, where the instrument reads too low. Go farther, or put in an attenuator.");
    }

    private void warnOfNear(SessionKey key, LevelSession session, Predicate<Double> isNear, String where) {
        Map<String, String> near = new LinkedHashMap<>();
        for (AntennaReadings antenna : session.antennas()) {
            long count = antenna.levels().stream().filter(isNear).count();
            if (count > 0) near.put(antenna.antenna(), count + " of " + antenna.n());
        }
        if (near.size() == 1)
            near.forEach((antenna, count) ->
                    warnings.add(Remarks.line(List.of(antenna), key, count + " readings lie " + where)));
        else if (!near.isEmpty())
            warnings.add(Remarks.line(
                    near.entrySet().stream()
                            .map(one -> one.getKey() + " (" + one.getValue() + ")")
                            .toList(),
                    key,
                    "readings lie " + where));
    }
}
