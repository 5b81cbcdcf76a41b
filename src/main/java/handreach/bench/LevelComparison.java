package handreach.bench;

import handreach.bench.AntennaResult.Verdict;
import handreach.uncertainty.Estimate;
import handreach.uncertainty.Holm;
import handreach.units.Db;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Received levels of a file, session by session, against the control. */
final class LevelComparison {
    private static final double LEVEL = 0.05;
    /** An ambient 10 dB below the reading adds 0.4 dB to it. */
    private static final double FLOOR_MARGIN_DB = 10;

    private static final double OVERLOAD_MARGIN_DB = 1;

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
                warnings.add("In " + key.words() + " only the control was read: there is no delta.");
            else results.add(result(key, session));
        });
        return results;
    }

    private MountResult result(SessionKey key, LevelSession session) {
        session.setControl(control);
        List<AntennaResult> antennas = compared(key, session, control, warnings);
        if (session.antennas().size() > AlikeGroups.MOST_ANTENNAS)
            warnings.add("In " + key.words() + " more than " + AlikeGroups.MOST_ANTENNAS
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
        List<Double> odds = differences.stream()
                .flatMap(d -> d.estimate().stream())
                .map(Estimate::twoSidedP)
                .toList();
        List<Double> adjusted = Holm.adjusted(odds);
        List<AntennaResult> results = new ArrayList<>();
        int judged = 0;
        for (int i = 0; i < others.size(); i++) {
            LevelDifference difference = differences.get(i);
            Optional<Verdict> verdict = Optional.empty();
            if (difference.estimate().isPresent()) {
                double p = adjusted.get(judged);
                verdict = Optional.of(new Verdict(odds.get(judged), p, p < LEVEL));
                judged++;
            }
            results.add(result(key, others.get(i), reference, difference, verdict));
            for (String remark : difference.remarks())
                warnings.add(others.get(i).antenna() + ", " + key.words() + ": " + remark);
        }
        warnOfHolm(key, results, warnings);
        results.sort(
                Comparator.comparingDouble((AntennaResult a) -> a.delta().db()).reversed());
        return results;
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
        for (AntennaResult result : results) {
            if (result.verdict().isEmpty()) continue;
            Verdict verdict = result.verdict().get();
            if (verdict.p() < LEVEL && !verdict.toldApart())
                warnings.add(String.format(
                        Locale.ROOT,
                        "%s, %s: its own interval leaves out zero (odds of chance %.3f), but among the %d antennas judged"
                                + " together one such result is to be expected by chance (%.3f): not told apart.",
                        result.antenna(),
                        key.words(),
                        verdict.p(),
                        results.size(),
                        verdict.adjustedP()));
        }
    }

    private String withoutControl(SessionKey key) {
        List<String> where = sessions.entrySet().stream()
                .filter(e -> e.getValue().antenna(control).isPresent())
                .map(e -> e.getKey().words())
                .toList();
        return "In " + key.words() + " the control \"" + control + "\" was not read"
                + (where.isEmpty() ? "" : " (it was in " + String.join(", ", where) + ")")
                + ": there is no delta. Read the control in the same mounting and at the same frequency.";
    }

    private void warnOfLimits(SessionKey key, LevelSession session) {
        file.declarations().instrument().noiseFloorDbm().ifPresent(floor -> {
            for (AntennaReadings antenna : session.antennas()) {
                long near = antenna.levels().stream()
                        .filter(level -> level < floor + FLOOR_MARGIN_DB)
                        .count();
                if (near > 0)
                    warnings.add(String.format(
                            Locale.ROOT,
                            "%s, %s: %d of %d readings lie less than 10 dB above the noise floor of %s dBm, which lifts them"
                                    + " by 0.4 dB or more and hides differences. Go closer, or raise the power.",
                            antenna.antenna(),
                            key.words(),
                            near,
                            antenna.n(),
                            SessionKey.plain(floor)));
            }
        });
        file.declarations().instrument().overloadDbm().ifPresent(overload -> {
            for (AntennaReadings antenna : session.antennas()) {
                long near = antenna.levels().stream()
                        .filter(level -> level > overload - OVERLOAD_MARGIN_DB)
                        .count();
                if (near > 0)
                    warnings.add(String.format(
                            Locale.ROOT,
                            "%s, %s: %d of %d readings lie within 1 dB of the overload level of %s dBm or above it, where the"
                                    + " instrument reads too low. Go farther, or put in an attenuator.",
                            antenna.antenna(),
                            key.words(),
                            near,
                            antenna.n(),
                            SessionKey.plain(overload)));
            }
        });
    }
}
