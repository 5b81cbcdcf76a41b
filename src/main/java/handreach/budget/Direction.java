package handreach.budget;

import handreach.loadout.Radio;
import handreach.propagation.ExternalNoise;
import handreach.propagation.LossPart;
import handreach.propagation.PathLoss;
import handreach.uncertainty.Doubt;
import handreach.uncertainty.Odds;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** One direction of a link: lines that do not hang on the path, their sum, and how sure it is. */
final class Direction {
    /** Step for slopes of the noise, dB. */
    private static final double STEP_DB = 0.01;

    private final LinkEnd sender;
    private final LinkEnd receiver;
    private final EndBudget from;
    private final EndBudget to;
    private final LinkTerms terms;
    private final List<LedgerLine> receiving;
    private final DoubtSources sources = new DoubtSources();
    private final double fixedDb;
    private final double spreadDb;

    Direction(LinkEnd sender, EndBudget from, LinkEnd receiver, EndBudget to, LinkTerms terms) {
        this.sender = sender;
        this.receiver = receiver;
        this.from = from;
        this.to = to;
        this.terms = terms;
        this.receiving = receivingLines();
        double sum = sender.loadout().radio().power().dbm() + from.horizonDbi() + tiltDb() + to.horizonDbi();
        for (LedgerLine line : receiving) sum += line.valueDb();
        for (ExtraLine extra : terms.extras()) sum += extra.value().db();
        this.fixedDb = sum;
        this.spreadDb = collectDoubts();
    }

    /** What outside noise costs this receiver, given how much of it the antenna lets in, dB. */
    private double noiseDb(double moreNoiseDb, double moreLossDb) {
        double externalDb = receiver.noise().medianDb() + moreNoiseDb;
        double figureDb = receiver.loadout().radio().noiseFigureDb();
        return ExternalNoise.degradationDb(externalDb, to.lossToNoiseDb() + moreLossDb, figureDb);
    }

    /** Share by which a better antenna only brings in more noise: 0 in quiet, near 1 in noise. */
    private double noiseShare() {
        return to.lossToNoiseDb() == 0 ? 0 : (noiseDb(0, 0) - noiseDb(0, STEP_DB)) / STEP_DB;
    }

    private double noiseSpreadDb() {
        double slope = (noiseDb(STEP_DB, 0) - noiseDb(0, 0)) / STEP_DB;
        return slope * receiver.noise().spreadDb();
    }

    private double collectDoubts() {
        double receiveShare = 1 - noiseShare();
        for (EndBudget.Cause cause : from.causes()) sources.add(cause.what(), cause.commonDb());
        for (EndBudget.Cause cause : to.causes()) {
            boolean isAnchor = cause.what() instanceof DoubtCause.Anchor;
            sources.add(cause.what(), cause.commonDb() * (isAnchor ? 1 : receiveShare));
        }
        sources.add(new DoubtCause.Model(), terms.model().commonDb());
        double squares = 0;
        for (ExtraLine extra : terms.extras()) {
            sources.add(new DoubtCause.PathExtra(extra.label()), extra.doubt().commonDb());
            squares += extra.doubt().spreadDb() * extra.doubt().spreadDb();
        }
        if (receiver.desense().isPresent()) {
            Doubt doubt = receiver.desense().get().doubt();
            sources.add(new DoubtCause.Desense(), doubt.commonDb());
            squares += doubt.spreadDb() * doubt.spreadDb();
        }
        double noise = noiseSpreadDb();
        double body = to.spreadDb() * receiveShare;
        double model = terms.model().spreadDb();
        return Math.sqrt(squares + from.spreadDb() * from.spreadDb() + body * body + noise * noise + model * model);
    }

    private double tiltDb() {
        return 0.0
                - LinkBudget.tiltLossDb(
                        sender.posture().sideTiltDeg() + receiver.posture().sideTiltDeg());
    }

    private List<LedgerLine> receivingLines() {
        Radio radio = receiver.loadout().radio();
        String passed =
                "antenna and body hold off " + Decibels.number(to.lossToNoiseDb(), 1) + " dB of the outside noise";
        List<LedgerLine> lines = new ArrayList<>(List.of(
                new LedgerLine(
                        LineKey.SENSITIVITY,
                        "reference sensitivity, " + radio.modulation().label(),
                        -radio.sensitivity().dbm(),
                        Doubt.NONE,
                        "radio " + radio.name(),
                        ""),
                new LedgerLine(
                        LineKey.NOISE,
                        "noise from outside: " + receiver.noise().label(),
                        0.0 - noiseDb(0, 0),
                        Doubt.spread(noiseSpreadDb()),
                        receiver.noise().source(),
                        passed),
                new LedgerLine(
                        LineKey.QUALITY,
                        terms.quality().word().toUpperCase(Locale.ROOT) + ", "
                                + terms.fading().word(),
                        0.0 - radio.qualityDb(terms.quality(), terms.fading()),
                        Doubt.NONE,
                        "TIA TSB-88 Annex A (from memory)",
                        terms.quality().meaning())));
        receiver.desense()
                .ifPresent(line -> lines.add(new LedgerLine(
                        LineKey.DESENSE, line.label(), line.value().db(), line.doubt(), line.source(), "")));
        return List.copyOf(lines);
    }

    double fixedDb() {
        return fixedDb;
    }

    EndBudget from() {
        return from;
    }

    EndBudget to() {
        return to;
    }

    DoubtSources sources() {
        return sources;
    }

    Doubt doubt() {
        return new Doubt(sources.combinedDb(), spreadDb);
    }

    /** Asked for in every cell of a map. */
    double spreadDb() {
        return spreadDb;
    }

    double locationMarginDb() {
        return Odds.marginFor(terms.odds(), spreadDb);
    }

    Ledger ledger(PathLoss path, double fromElevationDeg, double toElevationDeg) {
        List<LedgerLine> lines = new ArrayList<>();
        Radio radio = sender.loadout().radio();
        lines.add(new LedgerLine(
                LineKey.POWER, "transmitter power, dBm", radio.power().dbm(), Doubt.NONE, "radio " + radio.name(), ""));
        addEnd(lines, LineEnd.SENDER, from, fromElevationDeg);
        lines.add(new LedgerLine(
                LineKey.POLARISATION, "antennas lean apart", tiltDb(), Doubt.NONE, "−20 log cos, at most 15 dB", ""));
        addPath(lines, path);
        for (ExtraLine extra : terms.extras())
            lines.add(new LedgerLine(
                    LineKey.EXTRA, extra.label(), extra.value().db(), extra.doubt(), extra.source(), ""));
        addEnd(lines, LineEnd.RECEIVER, to, toElevationDeg);
        lines.addAll(receiving);
        return new Ledger(sender.loadout().name(), receiver.loadout().name(), lines, locationMarginDb(), doubt());
    }

    private static void addEnd(List<LedgerLine> lines, LineEnd which, EndBudget end, double elevationDeg) {
        for (LedgerLine line : end.lines()) lines.add(line.at(which));
        lines.add(new LedgerLine(
                        LineKey.PATTERN,
                        "pattern at " + Decibels.number(elevationDeg, 1) + "° against the horizon",
                        end.patternDb(elevationDeg),
                        Doubt.NONE,
                        end.patternSource(),
                        String.join(" ", end.pattern().notes()))
                .at(which));
    }

    private void addPath(List<LedgerLine> lines, PathLoss path) {
        if (path.parts().isEmpty()) {
            lines.add(new LedgerLine(LineKey.PATH, "path loss", 0.0 - path.lossDb(), terms.model(), path.model(), ""));
            return;
        }
        double left = path.lossDb();
        for (LossPart part : path.parts()) {
            lines.add(new LedgerLine(LineKey.PATH, part.name(), 0.0 - part.db(), Doubt.NONE, part.source(), ""));
            left -= part.db();
        }
        if (Math.abs(left) > 1e-9)
            lines.add(new LedgerLine(LineKey.PATH, "rest of the path loss", 0.0 - left, Doubt.NONE, path.model(), ""));
        lines.add(new LedgerLine(LineKey.PATH, "doubt of the loss as a whole", 0.0, terms.model(), path.model(), ""));
    }
}
