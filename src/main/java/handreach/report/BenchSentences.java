package handreach.report;

import handreach.bench.AntennaResult;
import handreach.bench.AntennaResult.Finding;
import handreach.bench.MeterResult;
import handreach.bench.MeterScale;
import handreach.bench.MountResult;
import handreach.uncertainty.Interval;
import handreach.uncertainty.RankAgreement;
import handreach.units.Decibels;
import java.util.Optional;

/** What a bench session comes to, in sentences. */
final class BenchSentences {
    private BenchSentences() {}

    /** One antenna in one mounting, in a sentence or two. */
    private static String verdict(String mounting, AntennaResult antenna) {
        double delta = antenna.delta().db();
        String size = Decibels.number(Math.abs(delta), 1) + " dB " + (delta < 0 ? "weaker" : "stronger") + " than "
                + antenna.delta().control() + " (" + mounting + ")";
        Optional<Interval> interval = antenna.delta().interval95();
        if (interval.isEmpty())
            return antenna.antenna() + " read " + size
                    + ", once: nothing is known about its scatter, so nothing more can be said.";
        String doubt = ", 95 % interval " + span(interval.get());
        if (antenna.finding() == Finding.TOLD_APART) return antenna.antenna() + " is " + size + doubt + ": told apart.";
        if (antenna.finding() == Finding.TOO_FEW_TRIALS)
            return antenna.antenna() + " read " + size + doubt + ": "
                    + antenna.finding().words() + ".";
        String limit = antenna.detection()
                .map(d -> " This session would have shown a difference of "
                        + Decibels.number(d.minimumDifferenceDb(), 1) + " dB.")
                .orElse("");
        return antenna.antenna() + " read " + size + doubt + ": not told apart." + limit;
    }

    /** Which antenna of a mounting did best and how sure that is of one picked as the best. */
    static String ranking(MountResult mount) {
        AntennaResult best = mount.antennas().get(0);
        String control = best.delta().control();
        if (best.delta().db() <= 0)
            return "Mounting \"" + mount.mounting().name() + "\": none of " + count(mount)
                    + " read stronger than the control, " + control + ". "
                    + verdict(mount.mounting().name(), best);
        StringBuilder words = new StringBuilder("Mounting \"" + mount.mounting().name() + "\": strongest of "
                + count(mount) + " is " + best.antenna() + ", "
                + Decibels.signed(best.delta().db(), 1) + " dB over "
                + control + ".");
        best.intervalTogether().ifPresent(together -> {
            if (mount.antennas().size() > 1)
                words.append(" The best of ")
                        .append(mount.antennas().size())
                        .append(" looks better than it is: take ")
                        .append(span(together))
                        .append(", the interval that holds for all of them together, not its own (")
                        .append(span(best.delta().interval95().orElseThrow()))
                        .append(").");
            else words.append(" 95 % interval ").append(span(together)).append(".");
        });
        switch (best.finding()) {
            case TOLD_APART -> words.append(" It is told apart from the control.");
            case NOT_TOLD_APART -> words.append(" It is not told apart from the control.");
            case TOO_FEW_TRIALS, NO_SCATTER ->
                words.append(' ')
                        .append(Sentences.begun(best.finding().words()))
                        .append('.');
        }
        return words.toString();
    }

    private static String count(MountResult mount) {
        int n = mount.antennas().size();
        return n == 1 ? "one antenna" : n + " antennas";
    }

    /** What decibels of a field meter rest on, and how far its order agrees with that of the levels. */
    static String meter(MeterResult meter) {
        String basis = meter.basis() == MeterScale.Basis.UNDECLARED
                ? "Microamps only rank; " + meter.basis().words() + "."
                : "Decibels by the " + meter.basis().words() + ".";
        return basis + meter.agreement().map(BenchSentences::agreement).orElse("");
    }

    private static String agreement(RankAgreement agreement) {
        return " Its order of " + agreement.count() + " antennas against that of the received levels: Kendall "
                + Decibels.signed(agreement.kendall(), 2) + ", Spearman " + Decibels.signed(agreement.spearman(), 2)
                + " (+1 the same order, 0 no relation, \u22121 the reverse).";
    }

    private static String span(Interval interval) {
        return Decibels.signed(interval.low(), 1) + " to " + Decibels.signed(interval.high(), 1) + " dB";
    }
}
