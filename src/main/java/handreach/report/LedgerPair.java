package handreach.report;

import handreach.budget.LedgerLine;
import handreach.budget.LineEnd;
import handreach.budget.LineKey;
import handreach.budget.TwoWayLedger;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The same line in both directions of a link: what an end sends with on one way it receives with on the other.
 *
 * @param thereLine as it stands from the first end to the second, if it does
 * @param backLine as it stands the other way, if it does
 */
record LedgerPair(Optional<LedgerLine> thereLine, Optional<LedgerLine> backLine) implements LedgerRow {
    private static final String NONE = "\u2013";

    public LedgerPair {
        if (thereLine.isEmpty() && backLine.isEmpty()) throw new IllegalArgumentException("a pair without a line");
    }

    /** All lines of a link, in the order of the way there; what only the way back has comes last. */
    static List<LedgerPair> of(TwoWayLedger ledger) {
        List<LedgerPair> pairs = new ArrayList<>();
        List<LedgerLine> back = new ArrayList<>(ledger.back().lines());
        for (LedgerLine line : ledger.there().lines())
            pairs.add(new LedgerPair(
                    Optional.of(line), taken(back, line, ledger.there().lines())));
        for (LedgerLine line : back) pairs.add(new LedgerPair(Optional.empty(), Optional.of(line)));
        return pairs;
    }

    /** The line of the other direction that says the same thing, else one of the same kind that no other line here claims. */
    private static Optional<LedgerLine> taken(List<LedgerLine> others, LedgerLine line, List<LedgerLine> all) {
        for (int i = 0; i < others.size(); i++) if (isSame(line, others.get(i))) return Optional.of(others.remove(i));
        for (int i = 0; i < others.size(); i++) {
            LedgerLine other = others.get(i);
            if (isLike(line, other) && all.stream().noneMatch(one -> isSame(one, other)))
                return Optional.of(others.remove(i));
        }
        return Optional.empty();
    }

    private static boolean isSame(LedgerLine there, LedgerLine back) {
        return isLike(there, back) && there.label().equals(back.label());
    }

    /** Who sends on the way there receives on the way back. */
    private static boolean isLike(LedgerLine there, LedgerLine back) {
        return there.key() == back.key() && there.end().opposite() == back.end();
    }

    /** At which end of the link the line stands, for those that stand at one. */
    private String place() {
        LineEnd end = first().end();
        if (end == LineEnd.NEITHER) return "";
        boolean isSenderThere = (end == LineEnd.SENDER) == thereLine.isPresent();
        return isSenderThere ? "first end: " : "other end: ";
    }

    /** Label of the way there, or of the way back where that alone has the line. */
    String firstLabel() {
        return place() + first().label();
    }

    /** Label of the way back, or of the way there where that alone has the line. */
    String secondLabel() {
        return place() + second().label();
    }

    /** The line there, or the one back where there is none. */
    LedgerLine first() {
        return thereLine.or(() -> backLine).orElseThrow();
    }

    /** The line back, or the one there where there is none. */
    LedgerLine second() {
        return backLine.or(() -> thereLine).orElseThrow();
    }

    @Override
    public String label() {
        return place() + both(LedgerLine::label);
    }

    @Override
    public String there() {
        return thereLine.map(LedgerPair::amount).orElse(NONE);
    }

    @Override
    public String back() {
        return backLine.map(LedgerPair::amount).orElse(NONE);
    }

    @Override
    public String commonDoubt() {
        return both(line -> LedgerSum.doubt(line.doubt().commonDb()));
    }

    @Override
    public String spread() {
        return both(line -> LedgerSum.doubt(line.doubt().spreadDb()));
    }

    @Override
    public String source() {
        return both(LedgerLine::source);
    }

    private static String amount(LedgerLine line) {
        return Decibels.signed(line.valueDb(), 1);
    }

    /** One text for both ways; where they differ, each on a line. */
    private String both(Function<LedgerLine, String> text) {
        String one = text.apply(first());
        String other = text.apply(second());
        if (one.equals(other)) return one;
        return (one.isBlank() ? NONE : one) + "\nback: " + (other.isBlank() ? NONE : other);
    }

    @Override
    public String title() {
        String unit = first().key() == LineKey.POWER ? " dBm" : " dB";
        String there = thereLine.map(line -> amount(line) + unit).orElse("none");
        String back = backLine.map(line -> amount(line) + unit).orElse("none");
        String amount = there.equals(back) ? there + " both ways" : there + " there, " + back + " back";
        return Sentences.begun(firstLabel()) + ": " + amount;
    }

    @Override
    public String meaning() {
        StringBuilder words = new StringBuilder(meaning(first().key()));
        add(words, "Why: ", LedgerLine::note);
        add(words, "Doubt, dB: ", line -> LedgerSum.doubt(line.doubt()));
        add(words, "Source: ", LedgerLine::source);
        return words.toString();
    }

    private void add(StringBuilder words, String head, Function<LedgerLine, String> text) {
        String there = text.apply(first());
        String back = text.apply(second());
        if (there.isBlank() && back.isBlank()) return;
        words.append("  ").append(head);
        if (there.equals(back)) words.append(there);
        else words.append(orNone(there)).append("; back: ").append(orNone(back));
        if (words.charAt(words.length() - 1) != '.') words.append('.');
    }

    private static String orNone(String words) {
        return words.isBlank() ? "none" : words;
    }

    private static String meaning(LineKey key) {
        return switch (key) {
            case POWER -> "What the transmitter puts out at its antenna socket; the sum starts here.";
            case ANTENNA ->
                "What the antenna radiates towards the horizon against one that radiates evenly to all sides.";
            case DELTA -> "How much stronger this antenna came in than the control on the bench, in the same mounting.";
            case MOVE ->
                "What the delta gains or loses because the body loads the control and this antenna differently than the bench did.";
            case CARRY -> "What hand, head and body of the wearer take away, the mean over all directions.";
            case HEADING -> "What it adds or takes that the wearer faces towards the path or away from it.";
            case COUNTERPOISE -> "What the hanging wire gives, unless the bench reading already holds it.";
            case MISMATCH ->
                "Power sent back by an antenna that is not tuned to the channel; counted once, here or in the delta.";
            case PATTERN -> "What it changes that the path leaves or arrives above or below the horizon.";
            case EXTRA -> "A further line that the plan states.";
            case POLARISATION -> "What it costs that the two antennas do not stand parallel.";
            case DESENSE -> "What the relay's own transmitter, on the air at the same time, takes from its receiver.";
            case SITE -> "How much better or worse walks have found this ground than the model says.";
            case PATH -> "Part of the loss over this very ground, as the model reckons it.";
            case SENSITIVITY ->
                "The weakest signal the receiver turns into its reference quality; the weaker, the more is left over.";
            case NOISE ->
                "How much outside noise lifts what the receiver needs, as much of it as antenna and body let in.";
            case QUALITY ->
                "How much stronger than the reference the signal must be for the wanted copy, fading included.";
        };
    }
}
