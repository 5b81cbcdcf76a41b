package handreach.report.card;

import handreach.report.draw.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import java.util.function.BiPredicate;
import java.util.stream.Stream;

/** Makes the words of a card fit: first by the size of the letters, then by leaving lines out and saying so. */
final class CardFit {
    private static final double LARGEST_PX = 15;
    private static final double STEP_PX = 0.5;
    /** Place of the doubts among the lists that can be cut. */
    private static final int DOUBTS = 6;
    /** Place of the people among them. */
    private static final int PEOPLE = 5;
    /** Place of the check times among them. */
    private static final int CHECKS = 3;
    /** Place of the loadouts among them. */
    private static final int LOADOUTS = 4;
    /** Dead ground, which the report has too; then relay and check times, which ask for a back. */
    private static final List<List<Integer>> CUT_FIRST = List.of(List.of(0), List.of(1, CHECKS));
    /** What relays there are, what to do when contact is lost, and the key to the lines of the rose: cut when nothing else is left. */
    private static final List<Integer> KEPT_LONGEST = List.of(1, 2, 4);

    /** People, relays, check times, loadouts, what to do, dead ground. */
    private static final List<Integer> GIVEN_BACK = List.of(PEOPLE, 1, CHECKS, 4, 2, 0);

    /** Place of what is said of relays. */
    private static final int RELAY = 1;
    /** Where relays stand and whom they leave out comes first in it, and goes only when there is nothing else left to cut. */
    private static final int RELAY_KEPT = 5;

    private static final String DOUBTFUL = "Doubtful:";
    /** More doubts than this are counted where they have no room in full. */
    private static final int MOST_NAMED = 3;
    /** In place of how many doubts are told in full: one is named, the others are counted. */
    private static final int ONE_NAMED = -1;

    private final CardView view;
    private final double sizePx;

    private final boolean isCut;
    private final boolean leavesOut;
    private final boolean hasBack;
    private final boolean cutsChecks;

    private CardFit(
            CardView view, double sizePx, boolean isCut, boolean leavesOut, boolean hasBack, boolean cutsChecks) {
        this.view = view;
        this.sizePx = sizePx;
        this.isCut = isCut;
        this.leavesOut = leavesOut;
        this.hasBack = hasBack;
        this.cutsChecks = cutsChecks;
    }

    private static CardFit whole(CardView view, double sizePx) {
        return new CardFit(view, sizePx, false, false, false, false);
    }

    /** Whether lines had to be left out. */
    boolean isCut() {
        return isCut;
    }

    /** Whether somebody had to be left out. */
    boolean leavesOut() {
        return leavesOut;
    }

    /** Whether what is left out asks for a back: somebody's place or name, a relay, a check time. Doubts and dead ground do not. */
    boolean hasBack() {
        return hasBack;
    }

    /** Whether a check time had to be left out, even in brief. */
    boolean cutsChecks() {
        return cutsChecks;
    }

    CardView view() {
        return view;
    }

    double sizePx() {
        return sizePx;
    }

    /**
     * The largest letters at which everything fits. Else the smallest: first with fewer empty lines, then with doubts in name only,
     * then with less dead ground, both of which the report has too; then with check times in brief, relays and check times cut, then
     * with people in a list in place of their table, then with that list cut, for all of which there is a back.
     */
    static CardFit of(CardView view, BiPredicate<CardView, Double> fits) {
        for (double size = LARGEST_PX; size >= TextStyle.SMALLEST_PX; size -= STEP_PX)
            if (fits.test(view, size)) return whole(view, size);
        CardView tight = view.with(view.notes().tight());
        if (fits.test(tight, TextStyle.SMALLEST_PX)) return whole(tight, TextStyle.SMALLEST_PX);
        int[] left = {
            view.notes().deadGround().size(),
            view.notes().relay().size(),
            view.notes().fallback().size(),
            mostChecks(view),
            view.loadouts().lines().size(),
            view.people().rows().size(),
            view.notes().doubts().size()
        };
        while (left[DOUBTS] > 0) {
            left[DOUBTS]--;
            CardView shorter = cut(view, left, false);
            if (fits.test(shorter, TextStyle.SMALLEST_PX))
                return new CardFit(shorter, TextStyle.SMALLEST_PX, true, false, false, false);
        }
        List<CardFit> tabled = new ArrayList<>(tabled(view, fits, left));
        for (CardFit fit : tabled) if (!fit.hasBack) return fit;
        if (names(view.notes().doubts()).size() > 1) {
            left[DOUBTS] = ONE_NAMED;
            List<CardFit> shorter = tabled(view, fits, left);
            for (CardFit fit : shorter) if (!fit.hasBack) return fit;
            tabled.addAll(shorter);
        }
        if (!tabled.isEmpty()) return tabled.get(0);
        CardView listed = view.with(view.people().asList());
        return cutToFit(
                listed,
                fits,
                left,
                true,
                Stream.concat(CUT_FIRST.stream(), Stream.of(List.of(PEOPLE), KEPT_LONGEST))
                        .toList());
    }

    private static List<CardFit> tabled(CardView view, BiPredicate<CardView, Double> fits, int[] left) {
        return Stream.of(false, true)
                .map(isTight -> cutToFit(view, fits, left.clone(), isTight, CUT_FIRST))
                .filter(fit -> fits.test(fit.view, fit.sizePx))
                .toList();
    }

    private static List<String> names(List<CardLine> doubts) {
        return doubts.stream().map(CardLine::brief).distinct().toList();
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
        boolean hasRoom = fits.test(shorter, TextStyle.SMALLEST_PX);
        while (!hasRoom && groups.stream().anyMatch(group -> cutLongest(left, group))) {
            shorter = cut(view, left, isTight);
            hasRoom = fits.test(shorter, TextStyle.SMALLEST_PX);
        }
        if (hasRoom) shorter = filled(view, fits, left, most, isTight, shorter);
        return new CardFit(
                shorter,
                TextStyle.SMALLEST_PX,
                true,
                left[PEOPLE] < all,
                needsBack(view, left),
                left[CHECKS] < view.notes().checkTimes().size());
    }

    private static boolean needsBack(CardView view, int[] left) {
        return left[PEOPLE] < view.people().everybody().size()
                || !view.people().rest().isEmpty()
                || left[LOADOUTS] < view.loadouts().lines().size()
                || left[RELAY] < view.notes().relay().size()
                || left[CHECKS] < mostChecks(view);
    }

    /** One more than there are where they can stand in brief: that many are told in full, fewer in brief. */
    private static int mostChecks(CardView view) {
        List<CardLine> checks = view.notes().checkTimes();
        return checks.size() + (checks.stream().anyMatch(CardLine::hasBrief) ? 1 : 0);
    }

    private static List<CardLine> checks(CardView view, int count, String where) {
        List<CardLine> checks = view.notes().checkTimes();
        if (count >= mostChecks(view)) return checks;
        List<CardLine> brief = checks.stream().map(CardLine::inBrief).toList();
        if (count < checks.size()) return cut(brief, count, where);
        return Stream.concat(brief.stream(), Stream.of(CardLine.of("Places: " + where)))
                .toList();
    }

    /** Doubts for which there is no room keep their names. */
    private static List<CardLine> doubts(List<CardLine> doubts, int count, String where) {
        if (doubts.isEmpty()) return doubts;
        if (count > 0) return cut(doubts, count, where);
        List<String> all = names(doubts);
        int named = Math.min(all.size(), count == ONE_NAMED ? 1 : MOST_NAMED);
        StringJoiner names = new StringJoiner("; ");
        all.subList(0, named).forEach(names::add);
        if (all.size() > named) names.add((all.size() - named) + " more");
        return List.of(new CardLine(DOUBTFUL, names + " (" + where + ")"));
    }

    /** Whether these are names of doubts in one line, which needs no heading. */
    static boolean areNamedOnly(List<CardLine> doubts) {
        return doubts.size() == 1 && doubts.get(0).strong().equals(DOUBTFUL);
    }

    /** What was cut last leaves room for lines that were cut before it. */
    private static CardView filled(
            CardView view,
            BiPredicate<CardView, Double> fits,
            int[] left,
            int[] most,
            boolean isTight,
            CardView least) {
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
        return isTight ? shorter.with(shorter.notes().tight()) : shorter;
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
        String where = needsBack(view, left) ? "overleaf" : "in the report";
        CardView.Notes shorter = new CardView.Notes(
                cut(notes.deadGround(), left[0], where),
                cut(notes.relay(), left[1], where),
                cut(notes.fallback(), left[2], where),
                checks(view, left[CHECKS], where),
                doubts(notes.doubts(), left[DOUBTS], where));
        CardView.Loadouts loadouts = view.loadouts().first(left[LOADOUTS], where);
        return new CardView(
                view.header(), loadouts, view.people().first(left[PEOPLE]), view.rose(), shorter, view.cautions());
    }

    private static List<CardLine> cut(List<CardLine> lines, int count, String where) {
        if (count >= lines.size()) return lines;
        List<CardLine> kept = new ArrayList<>(lines.subList(0, count));
        kept.add(CardLine.of((lines.size() - count) + (count == 0 ? " " : " more ") + where));
        return kept;
    }
}
