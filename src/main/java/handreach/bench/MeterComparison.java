package handreach.bench;

import handreach.uncertainty.Interval;
import handreach.uncertainty.RankAgreement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Field-meter readings of a file: an order always, decibels only with a declared law. */
final class MeterComparison {
    private final BenchFile file;
    private final String control;
    private final LevelComparison levels;
    private final List<String> warnings;

    MeterComparison(BenchFile file, String control, LevelComparison levels, List<String> warnings) {
        this.file = file;
        this.control = control;
        this.levels = levels;
        this.warnings = warnings;
    }

    List<MeterResult> meters() {
        List<MeterResult> results = new ArrayList<>();
        SessionKey.sessions(file.readings(), Quantity.FIELD_METER)
                .forEach((key, readings) -> results.add(result(key, readings)));
        if (!results.isEmpty() && !file.declarations().meter().isDeclared())
            warnings.add("Microamps of a field meter put antennas in order and say no more: without detector_law or"
                    + " meter_calibration declared, a ratio is anything between 10 log and 20 log.");
        return results;
    }

    private MeterResult result(SessionKey key, List<Reading> readings) {
        Map<String, List<Reading>> byAntenna = new LinkedHashMap<>();
        for (Reading r : readings)
            byAntenna.computeIfAbsent(r.antenna(), name -> new ArrayList<>()).add(r);
        Map<String, Double> medians = new LinkedHashMap<>();
        byAntenna.forEach((name, rows) -> medians.put(name, median(rows)));
        List<MeterResult.Rank> ranks = new ArrayList<>();
        medians.forEach((name, value) -> {
            int better = (int) medians.values().stream().filter(m -> m > value).count();
            ranks.add(new MeterResult.Rank(
                    name, byAntenna.get(name).size(), value, better + 1, bracket(value, medians.get(control))));
        });
        ranks.sort((a, b) -> Integer.compare(a.rank(), b.rank()));
        return new MeterResult(
                key.mounting(),
                key.frequencyMhz(),
                file.declarations().meter().basis(),
                ranks,
                agreement(key, medians),
                deltas(key, readings));
    }

    private static double median(List<Reading> readings) {
        List<Double> values =
                new ArrayList<>(readings.stream().map(Reading::value).toList());
        Collections.sort(values);
        int n = values.size();
        return n % 2 == 1 ? values.get(n / 2) : (values.get(n / 2 - 1) + values.get(n / 2)) / 2;
    }

    private Optional<Interval> bracket(double value, Double reference) {
        if (file.declarations().meter().isDeclared()) return Optional.empty();
        if (reference == null || !(value > 0) || !(reference > 0)) return Optional.empty();
        double small = 10 * Math.log10(value / reference);
        return Optional.of(new Interval(Math.min(small, 2 * small), Math.max(small, 2 * small)));
    }

    private Optional<RankAgreement> agreement(SessionKey key, Map<String, Double> medians) {
        Optional<LevelSession> session = levels.session(key);
        if (session.isEmpty()) return Optional.empty();
        List<Double> meter = new ArrayList<>();
        List<Double> level = new ArrayList<>();
        medians.forEach((name, value) -> session.get().antenna(name).ifPresent(a -> {
            meter.add(value);
            level.add(a.mean());
        }));
        boolean ranks = meter.size() >= 3
                && meter.stream().distinct().count() > 1
                && level.stream().distinct().count() > 1;
        return ranks ? Optional.of(RankAgreement.of(meter, level)) : Optional.empty();
    }

    private List<AntennaResult> deltas(SessionKey key, List<Reading> readings) {
        MeterScale scale = file.declarations().meter();
        if (!scale.isDeclared()) return List.of();
        LevelSession session = new LevelSession(file.declarations());
        List<String> outside = readings.stream()
                .filter(r -> scale.levelDb(r.value()).isEmpty())
                .map(Reading::antenna)
                .distinct()
                .toList();
        for (Reading r : readings)
            if (!outside.contains(r.antenna()))
                session.add(r, scale.levelDb(r.value()).getAsDouble(), stepDb(scale, r));
        if (!outside.isEmpty())
            warnings.add("Field meter, " + key.words() + ": readings of " + String.join(", ", outside)
                    + " are zero or outside the calibration, so these antennas keep their rank and get no decibels.");
        if (session.antenna(control).isEmpty()) {
            warnings.add("Field meter, " + key.words() + ": the control \"" + control
                    + "\" has no usable reading: there is an order but no delta.");
            return List.of();
        }
        if (session.antennas().size() < 2) return List.of();
        session.setControl(control);
        List<String> remarks = new ArrayList<>();
        List<AntennaResult> results = LevelComparison.compared(key, session, control, remarks);
        for (String remark : remarks) warnings.add("Field meter, " + remark);
        return results;
    }

    /** What one step of the needle is worth in decibels here. */
    private static double stepDb(MeterScale scale, Reading r) {
        double here = scale.levelDb(r.value()).getAsDouble();
        double step = r.measured().step();
        double up = scale.levelDb(r.value() + step).orElse(here);
        double down = scale.levelDb(r.value() - step).orElse(here);
        double size = Math.max(up - here, here - down);
        return size > 0 ? size : 1;
    }
}
