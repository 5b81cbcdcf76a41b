package handreach.report.card;

import handreach.report.draw.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;

/** Makes the words of a card fit: first by the size of the letters, then by leaving lines out and saying so. */
final class CardFit {
    private static final double LARGEST_PX = 15;
    private static final double STEP_PX = 0.5;
    /** Place of the doubts among the lists that can be cut. */
    private static final int DOUBTS = 6;
    /** What to do when contact is lost, and the key to the lines of the rose: cut when nothing else is left to cut. */
    private static final List<Integer> KEPT_LONGEST = List.of(2, 4);

    private final CardView view;
    private final double sizePx;

    private final boolean isCut;

    private CardFit(CardView view, double sizePx, boolean isCut) {
        this.view = view;
        this.sizePx = sizePx;
        this.isCut = isCut;
    }

    /** Whether lines had to be left out. */
    boolean isCut() {
        return isCut;
    }

    CardView view() {
        return view;
    }

    double sizePx() {
        return sizePx;
    }

    /** The largest letters at which everything fits, or the smallest with the longest lists cut. */
    static CardFit of(CardView view, BiPredicate<CardView, Double> fits) {
        for (double size = LARGEST_PX; size >= TextStyle.SMALLEST_PX; size -= STEP_PX)
            if (fits.test(view, size)) return new CardFit(view, size, false);
        CardView shorter = view;
        int[] left = {
            view.words().deadGround().size(),
            view.words().relay().size(),
            view.words().fallback().size(),
            view.words().checkTimes().size(),
            view.loadouts().lines().size(),
            view.people().rows().size(),
            view.words().doubts().size()
        };
        while (!fits.test(shorter, TextStyle.SMALLEST_PX)) {
            int longest = longest(left, false);
            // What to do comes before what is doubtful about the figures, which the report has too.
            if (left[DOUBTS] > 0) longest = DOUBTS;
            else if (left[longest] <= 1) longest = longest(left, true);
            if (longest != DOUBTS && left[longest] <= 1) break;
            left[longest]--;
            shorter = cut(view, left);
        }
        return new CardFit(shorter, TextStyle.SMALLEST_PX, true);
    }

    private static int longest(int[] left, boolean isKeptToo) {
        int longest = 0;
        for (int i = 1; i < DOUBTS; i++)
            if (left[i] > left[longest] && (isKeptToo || !KEPT_LONGEST.contains(i))) longest = i;
        return longest;
    }

    private static CardView cut(CardView view, int[] left) {
        CardView.Words words = view.words();
        CardView.Words shorter = new CardView.Words(
                cut(words.deadGround(), left[0]),
                cut(words.relay(), left[1]),
                cut(words.fallback(), left[2]),
                cut(words.checkTimes(), left[3]),
                cut(words.doubts(), left[DOUBTS]));
        CardView.Loadouts loadouts = new CardView.Loadouts(
                view.loadouts().far(), view.loadouts().lines().subList(0, left[4]));
        return new CardView(
                view.heading(), loadouts, view.people().first(left[5]), view.rose(), shorter, view.cautions());
    }

    private static List<CardLine> cut(List<CardLine> lines, int count) {
        if (count >= lines.size()) return lines;
        List<CardLine> kept = new ArrayList<>(lines.subList(0, count));
        kept.add(CardLine.of((lines.size() - count) + " more in the report"));
        return kept;
    }
}
