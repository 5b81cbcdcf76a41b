package handreach.desktop;

import handreach.budget.LedgerLine;
import handreach.budget.LineKey;
import handreach.report.LedgerPair;
import handreach.report.LedgerSheet;
import handreach.report.figure.Axis;
import java.util.Map;

/** What a line of a ledger means, in plain words. */
final class LedgerWords {
    private static final Map<String, String> MEANINGS = Map.ofEntries(
            Map.entry("power", "What the transmitter puts out at its antenna socket; the sum starts here."),
            Map.entry(
                    "antenna",
                    "What the antenna radiates towards the horizon against one that radiates evenly to all sides."),
            Map.entry(
                    "delta",
                    "How much stronger this antenna came in than the control on the bench, in the same mounting."),
            Map.entry("carry", "What hand, head and body of the wearer take away, the mean over all directions."),
            Map.entry("heading", "What it adds or takes that the wearer faces towards the path or away from it."),
            Map.entry("counterpoise", "What the hanging wire gives, unless the bench reading already holds it."),
            Map.entry(
                    "mismatch",
                    "Power sent back by an antenna that is not tuned to the channel; counted once, here or in the delta."),
            Map.entry("pattern", "What it changes that the path leaves or arrives above or below the horizon."),
            Map.entry("extra", "A further line that the plan states."),
            Map.entry("polarisation", "What it costs that the two antennas do not stand parallel."),
            Map.entry(
                    "desense",
                    "What the relay's own transmitter, on the air at the same time, takes from its receiver."),
            Map.entry("site", "How much better or worse walks have found this ground than the model says."),
            Map.entry("path", "Part of the loss over this very ground, as the model reckons it."),
            Map.entry(
                    "sensitivity",
                    "The weakest signal the receiver turns into its reference quality; the weaker, the more is left over."),
            Map.entry(
                    "noise",
                    "How much outside noise lifts what the receiver needs, as much of it as antenna and body let in."),
            Map.entry(
                    "quality",
                    "How much stronger than the reference the signal must be for the wanted copy, fading included."));

    private LedgerWords() {}

    /** The line in both directions: what it is, how much, how sure, who says so. */
    static String of(LedgerPair pair) {
        LedgerLine first = pair.first();
        LedgerLine second = pair.second();
        StringBuilder words =
                new StringBuilder(MEANINGS.getOrDefault(first.key().word(), ""));
        add(words, "Why: ", first.note(), second.note());
        add(words, "Doubt, dB: ", LedgerSheet.doubt(first.doubt()), LedgerSheet.doubt(second.doubt()));
        add(words, "Source: ", first.source(), second.source());
        return words.toString().strip();
    }

    private static void add(StringBuilder words, String head, String there, String back) {
        if (there.isBlank() && back.isBlank()) return;
        words.append("  ").append(head);
        if (there.equals(back)) words.append(there);
        else words.append(orNone(there)).append("; back: ").append(orNone(back));
        if (!words.toString().endsWith(".")) words.append('.');
    }

    private static String orNone(String words) {
        return words.isBlank() ? "none" : words;
    }

    static String title(LedgerPair pair) {
        String there = pair.there().map(LedgerWords::amount).orElse("none");
        String back = pair.back().map(LedgerWords::amount).orElse("none");
        String label = pair.first().label();
        String amount = there.equals(back) ? there + " both ways" : there + " there, " + back + " back";
        return Character.toUpperCase(label.charAt(0)) + label.substring(1) + ": " + amount;
    }

    private static String amount(LedgerLine line) {
        return Axis.signed(line.valueDb(), 1) + (line.key() == LineKey.POWER ? " dBm" : " dB");
    }

    /** What a sum below the lines means. */
    static String ofSum(int number) {
        return switch (number) {
            case 0 ->
                "The sum of all lines: how much more arrives at the median place than is needed. Half of like places do"
                        + " better, half worse.";
            case 1 ->
                "Put aside because places differ: so much is needed at the median place for the wanted share of places"
                        + " to have copy.";
            case 2 -> "What is left after that; at 0 or more the wanted odds are met.";
            default -> "Share of places like this one at which copy is to be expected.";
        };
    }
}
