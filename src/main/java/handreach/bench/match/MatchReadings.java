package handreach.bench.match;

import handreach.bench.BenchFile;
import handreach.bench.Mounting;
import handreach.bench.Quantity;
import handreach.bench.Reading;
import handreach.bench.SessionKey;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What the match rows of a bench file say about one antenna in one mounting. It explains a delta; it is never added to one.
 *
 * @param antenna which
 * @param mounting what it stood on
 * @param resonanceMhz mean of the resonance rows
 * @param bandwidthMhz mean of the bandwidth rows, at SWR 3
 * @param points match over frequency, rising, from SWR and return-loss rows
 */
public record MatchReadings(
        String antenna,
        Mounting mounting,
        OptionalDouble resonanceMhz,
        OptionalDouble bandwidthMhz,
        List<Point> points) {
    /** SWR and return loss of the same thing should agree this far. */
    private static final double AGREEMENT_SWR = 0.2;

    /**
     * Match at one frequency.
     *
     * @param frequencyMhz where
     * @param match how good
     */
    public record Point(double frequencyMhz, Match match) {}

    public MatchReadings {
        Objects.requireNonNull(antenna);
        Objects.requireNonNull(mounting);
        points = List.copyOf(points);
    }

    private record Subject(String antenna, Mounting mounting) {
        /** Written out, as in {@link Mounting}. */
        @Override
        public boolean equals(Object other) {
            return other instanceof Subject that && antenna.equals(that.antenna) && mounting.equals(that.mounting);
        }

        @Override
        public int hashCode() {
            return 31 * antenna.hashCode() + mounting.hashCode();
        }
    }

    public static List<MatchReadings> of(BenchFile file, List<String> warnings) {
        Map<Subject, List<Reading>> bySubject = new LinkedHashMap<>();
        for (Reading r : file.readings())
            if (r.quantity() != Quantity.RECEIVED_LEVEL && r.quantity() != Quantity.FIELD_METER)
                bySubject
                        .computeIfAbsent(new Subject(r.antenna(), r.mounting()), key -> new ArrayList<>())
                        .add(r);
        List<MatchReadings> all = new ArrayList<>();
        List<String> contradictions = new ArrayList<>();
        bySubject.forEach((subject, rows) -> all.add(new MatchReadings(
                subject.antenna(),
                subject.mounting(),
                mean(rows, Quantity.RESONANCE),
                mean(rows, Quantity.BANDWIDTH),
                points(subject, rows, contradictions))));
        if (!contradictions.isEmpty())
            warnings.add(contradictions.get(0)
                    + (contradictions.size() == 1
                            ? ""
                            : " The same of " + (contradictions.size() - 1) + " more pairs of rows."));
        return all;
    }

    private static OptionalDouble mean(List<Reading> rows, Quantity quantity) {
        return rows.stream()
                .filter(r -> r.quantity() == quantity)
                .mapToDouble(Reading::value)
                .average();
    }

    private static List<Point> points(Subject subject, List<Reading> rows, List<String> contradictions) {
        Map<Double, List<Match>> bySwr = new TreeMap<>();
        Map<Double, List<Match>> byLoss = new TreeMap<>();
        for (Reading r : rows) {
            if (r.frequencyMhz().isEmpty()) continue;
            double mhz = r.frequencyMhz().getAsDouble();
            if (r.quantity() == Quantity.SWR)
                bySwr.computeIfAbsent(mhz, key -> new ArrayList<>()).add(Match.ofSwr(r.value()));
            if (r.quantity() == Quantity.RETURN_LOSS)
                byLoss.computeIfAbsent(mhz, key -> new ArrayList<>()).add(Match.ofReturnLossDb(r.value()));
        }
        Map<Double, Match> merged = new TreeMap<>();
        bySwr.forEach((mhz, list) -> merged.put(mhz, mean(list)));
        byLoss.forEach((mhz, list) -> {
            Match other = merged.putIfAbsent(mhz, mean(list));
            if (other == null) return;
            double swr = other.swr();
            double fromLoss = mean(list).swr();
            if (Math.abs(swr - fromLoss) > AGREEMENT_SWR * Math.max(1, swr - 1))
                contradictions.add(String.format(
                        Locale.ROOT,
                        "%s, %s at %s MHz: SWR %.2f and a return loss that means SWR %.2f do not agree; the SWR is used. Check"
                                + " both rows.",
                        subject.antenna(),
                        subject.mounting().name(),
                        SessionKey.plain(mhz),
                        swr,
                        fromLoss));
        });
        List<Point> points = new ArrayList<>();
        merged.forEach((mhz, match) -> points.add(new Point(mhz, match)));
        return points;
    }

    /** Repeated readings are averaged as reflection, which is what a bridge measures. */
    private static Match mean(List<Match> list) {
        return Match.ofReflection(
                list.stream().mapToDouble(Match::reflection).average().orElseThrow());
    }
}
