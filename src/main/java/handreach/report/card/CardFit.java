package handreach.report.card;

import handreach.report.draw.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;

/** Makes the words of a card fit: first by the size of the letters, then by leaving lines to the back and saying so. */
final class CardFit {
    private static final double LARGEST_PX = 15;
    private static final double STEP_PX = 0.5;
    /** Place of the doubts among the lists that can be cut. */
    private static final int DOUBTS = 6;
    /** Place of the people among them. */
    private static final int PEOPLE = 5;
    /** Dead ground, relay and check times. */
    private static final List<Integer> CUT_FIRST = List.of(0, 1, 3);
    /** What relays there are, what to do when contact is lost, and the key to the lines of the rose: cut when nothing else is left. */
    private static final List<Integer> KEPT_LONGEST = List.of(1, 2, 4);

    /** People, relays, check times, loadouts, what to do, dead ground. */
    private static final List<Integer> GIVEN_BACK = List.of(PEOPLE, 1, 3, 4, 2, 0);

    /** Place of what is said of relays. */
    private static final int RELAY = 1;
    /** Where relays stand and whom they leave out comes first in it, and goes only when there is nothing else left to cut. */
    private static final int RELAY_KEPT = 5;

    private final CardView view;
    private final double sizePx;

    private final boolean isCut;
    private final boolean leavesOut;

    private CardFit(CardView view, double sizePx, boolean isCut, boolean leavesOut) {
        this.view = view;
        this.sizePx = sizePx;
        this.isCut = isCut;
        this.leavesOut = leavesOut;
    }

    /** Whether lines had to be left out. */
    boolean isCut() {
        return isCut;
    }

    /** Whether somebody had to be left out. */
    boolean leavesOut() {
        return leavesOut;
    }

    CardView view() {
        return view;
    }

    double sizePx() {
        return sizePx;
    }

    /**
     * The largest letters at which everything fits. Else the smallest: first with fewer empty lines, then without the doubts, then
     * with the longest lists cut, then with fewer empty lines, then with people in a list in place of their table, then with that
     * list cut.
     */
    static CardFit of(CardView view, BiPredicate<CardView, Double> fits) {
        for (double size = LARGEST_PX; size >= TextStyle.SMALLEST_PX; size -= STEP_PX)
            if (fits.test(view, size)) return new CardFit(view, size, false, false);
        CardView tight = view.with(view.notes().tight(view.notes().doubts().size()));
        if (fits.test(tight, TextStyle.SMALLEST_PX)) return new CardFit(tight, TextStyle.SMALLEST_PX, false, false);
        int[] left = {
            view.notes().deadGround().size(),
            view.notes().relay().size(),
            view.notes().fallback().size(),
            view.notes().checkTimes().size(),
            view.loadouts().lines().size(),
            view.people().rows().size(),
            view.notes().doubts().size()
        };
        while (left[DOUBTS] > 0) {
            left[DOUBTS]--;
            CardView shorter = cut(view, left);
            if (fits.test(shorter, TextStyle.SMALLEST_PX))
                return new CardFit(shorter, TextStyle.SMALLEST_PX, true, false);
        }
        CardFit tabled = cutToFit(view, fits, left.clone(), false, List.of(CUT_FIRST));
        if (fits.test(tabled.view, tabled.sizePx)) return tabled;
        tabled = cutToFit(view, fits, left.clone(), true, List.of(CUT_FIRST));
        if (fits.test(tabled.view, tabled.sizePx)) return tabled;
        CardView listed = view.with(view.people().asList());
        return cutToFit(listed, fits, left, true, List.of(CUT_FIRST, List.of(PEOPLE), KEPT_LONGEST));
    }

    /** Takes line by line off these lists, one group after the other, until all fits or nothing is left to take. */
    private static CardFit cutToFit(
            CardView view,
            BiPredicate<CardView, Double> fits,
            int[] left,
            boolean isTight,
            List<List<Integer>> groups) {
        int all = left[PEOPLE];
        int[] most = left.clone();
        CardView shorter = cut(view, left, isTight);
        while (!fits.test(shorter, TextStyle.SMALLEST_PX)) {
            if (groups.stream().noneMatch(group -> cutLongest(left, group)))
                return new CardFit(shorter, TextStyle.SMALLEST_PX, true, left[PEOPLE] < all);
            shorter = cut(view, left, isTight);
        }
        shorter = filled(view, fits, left, most, isTight, shorter);
        return new CardFit(shorter, TextStyle.SMALLEST_PX, true, left[PEOPLE] < all);
    }

    /** What was cut last leaves room for lines that were cut before it. */
    private static CardView filled(
            CardView view, BiPredicate<CardView, Double> fits, int[] left, int[] most, boolean isTight, CardView least) {
        CardView fullest = least;
        for (int i : GIVEN_BACK)
            while (left[i] < most[i]) {
                left[i]++;
                CardView fuller = cut(view, left, isTight);
                if (!fits.test(fuller, TextStyle.SMALLEST_PX)) {
                    left[i]--;
                    break;
                }
                fullest = fuller;
            }
        return fullest;
    }

    private static CardView cut(CardView view, int[] left, boolean isTight) {
        CardView shorter = cut(view, left);
        return isTight ? shorter.with(shorter.notes().tight(left[DOUBTS])) : shorter;
    }

    /** Takes a line off the longest of these lists; false where each is down to what it keeps. */
    private static boolean cutLongest(int[] left, List<Integer> among) {
        int longest = -1;
        for (int i : among) {
            int kept = i == RELAY && !among.equals(KEPT_LONGEST) ? RELAY_KEPT : 1;
            if (left[i] > kept && (longest < 0 || left[i] > left[longest])) longest = i;
        }
        if (longest < 0) return false;
        left[longest]--;
        return true;
    }

    private static CardView cut(CardView view, int[] left) {
        CardView.Notes notes = view.notes();
        CardView.Notes shorter = new CardView.Notes(
                cut(notes.deadGround(), left[0]),
                cut(notes.relay(), left[1]),
                cut(notes.fallback(), left[2]),
                cut(notes.checkTimes(), left[3]),
                cut(notes.doubts(), left[DOUBTS]));
        CardView.Loadouts loadouts = new CardView.Loadouts(
                view.loadouts().far(), view.loadouts().lines().subList(0, left[4]));
        return new CardView(
                view.header(), loadouts, view.people().first(left[PEOPLE]), view.rose(), shorter, view.cautions());
    }

    private static List<CardLine> cut(List<CardLine> lines, int count) {
        if (count >= lines.size()) return lines;
        List<CardLine> kept = new ArrayList<>(lines.subList(0, count));
        kept.add(CardLine.of((lines.size() - count) + (count == 0 ? " overleaf" : " more overleaf")));
        return kept;
    }
}
