package handreach.report.card;

import handreach.report.draw.Fitted;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import java.util.List;

/** The field card on one sheet: loadouts, the rose over the relief, who is where, and everything in words. */
final class CardPage extends CardLayout {
    private static final double EDGE_PX = 44;
    private static final double GAP_PX = 26;
    private static final double TOP_PX = 112;
    private static final double CAUTION_PX = 12;
    private static final double LARGEST_ROSE_PX = 192;
    /** Words come before the picture, but below this the rose could not be read at arm's length. */
    private static final double SMALLEST_ROSE_PX = 144;

    /** Names and check times come before the picture, too: where there is no room for all of them it may shrink to this. */
    private static final double SMALLEST_CROWDED_PX = 104;

    /** Dead ground and relay may stand beside the rose. */
    private static final int WORDS_BESIDE = 2;

    private static final Lines HEAD = new Lines(48, 13, 75, 25, 15);

    /** 0 until it is asked for, which happens while the page is being made. */
    private double cautionPx;

    private CardPage(CardView view, CardSize paper, double rosePx) {
        super(view, paper, view.rose().beside().sized(rosePx));
    }

    /** The card with the largest rose that leaves room for all words. */
    static CardPage of(CardView view, CardSize paper) {
        double rosePx = LARGEST_ROSE_PX;
        CardPage page = new CardPage(view, paper, rosePx);
        while (page.fit.isCut() && rosePx > SMALLEST_ROSE_PX) {
            rosePx -= 16;
            page = new CardPage(view, paper, rosePx);
        }
        for (double px = rosePx - 8; page.fit.cutsChecks() && px >= SMALLEST_CROWDED_PX; px -= 8) {
            CardPage smaller = new CardPage(view, paper, px);
            if (smaller.fit.cutsChecks()) continue;
            rosePx = px;
            page = smaller;
        }
        while (page.fit.leavesOut() && rosePx > SMALLEST_CROWDED_PX) {
            rosePx -= 8;
            page = new CardPage(view, paper, rosePx);
        }
        return page;
    }

    private double width() {
        return paper.widthPx() - 2 * EDGE_PX;
    }

    private double sideX() {
        return EDGE_PX + rose.widthPx() + GAP_PX;
    }

    private double sideWidth() {
        return width() - rose.widthPx() - GAP_PX;
    }

    private double half() {
        return (width() - GAP_PX) / 2;
    }

    private double columnHeight(List<Caution> cautions) {
        return CardText.height(t -> cautions.forEach(c -> caution(t, c)), half() - 14, CAUTION_PX);
    }

    /** How many cautions stand in the first column so that the two end nearest to each other. */
    private int split(List<Caution> cautions) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k <= cautions.size(); k++) {
            double longer =
                    Math.max(columnHeight(cautions.subList(0, k)), columnHeight(cautions.subList(k, cautions.size())));
            if (longer < least) {
                least = longer;
                best = k;
            }
        }
        return best;
    }

    /** The same for every cut of a view, and asked for at each. */
    private double cautionHeight(CardView view) {
        if (cautionPx == 0) {
            int k = split(view.cautions());
            cautionPx = 40
                    + Math.max(
                            columnHeight(view.cautions().subList(0, k)),
                            columnHeight(
                                    view.cautions().subList(k, view.cautions().size())));
        }
        return cautionPx;
    }

    @Override
    boolean fits(CardView view, double size) {
        int beside = beside(view, size);
        double side = TOP_PX + CardText.height(t -> side(t, view, beside), sideWidth(), size);
        double below = Math.max(side, TOP_PX + rose.heightPx()) + 14;
        double people = CardText.height(t -> everybody(t, view), width(), size);
        double words = belowHeight(view, size, columns(view, size, beside));
        return below + people + words + 12 <= paper.heightPx() - EDGE_PX - cautionHeight(view);
    }

    /** How many of dead ground and relay, in this order, find room under the loadouts, beside the rose. */
    private int beside(CardView view, double size) {
        int count = WORDS_BESIDE;
        while (count > 0) {
            int tried = count;
            if (CardText.height(t -> side(t, view, tried), sideWidth(), size) <= rose.heightPx()) return count;
            count--;
        }
        return 0;
    }

    private static void side(CardText text, CardView view, int count) {
        carriers(text, view);
        if (count > 0) deadGround(text, view);
        if (count > 1) {
            text.gap();
            relay(text, view);
        }
    }

    /** Which column takes the check times and which the doubts, so that both end as soon as they can. */
    private record Columns(int beside, boolean checksLeft, boolean doubtsLeft) {
        void left(CardText text, CardView view) {
            if (beside == 0) {
                deadGround(text, view);
                text.gap();
            }
            if (beside < WORDS_BESIDE) relay(text, view);
            if (beside < WORDS_BESIDE && checksLeft) text.gap();
            if (checksLeft) checkTimes(text, view);
            if (doubtsLeft) doubts(text, view);
        }

        void right(CardText text, CardView view) {
            fallback(text, view);
            if (!checksLeft) {
                text.gap();
                checkTimes(text, view);
            }
            if (!doubtsLeft) doubts(text, view);
        }
    }

    private double belowHeight(CardView view, double size, Columns columns) {
        return Math.max(
                CardText.height(t -> columns.left(t, view), half(), size),
                CardText.height(t -> columns.right(t, view), half(), size));
    }

    /** Check times stand in the left column where they would be alone in it; else what ends both columns soonest. */
    private Columns columns(CardView view, double size, int beside) {
        Columns best = new Columns(beside, true, true);
        List<Columns> others = List.of(
                new Columns(beside, true, false), new Columns(beside, false, false), new Columns(beside, false, true));
        for (Columns other : others)
            if ((other.checksLeft() || beside < WORDS_BESIDE)
                    && belowHeight(view, size, other) < belowHeight(view, size, best)) best = other;
        return best;
    }

    @Override
    public String title() {
        return "Field card: " + fit.view().header().title();
    }

    @Override
    public void draw(Pen pen) {
        CardView view = fit.view();
        drawHeader(pen, view.header());
        pen.moved(
                java.awt.geom.AffineTransform.getTranslateInstance(EDGE_PX, TOP_PX),
                () -> pen.part(Pen.Part.FIGURE, rose.description(), () -> rose.draw(pen)));
        CardText side = new CardText(pen, sideX(), TOP_PX, sideWidth(), sideSize(view));
        double size = fit.sizePx();
        int beside = beside(view, size);
        side(side, view, beside);
        CardText people = new CardText(pen, EDGE_PX, Math.max(side.y(), TOP_PX + rose.heightPx()) + 14, width(), size);
        everybody(people, view);
        Columns columns = columns(view, size, beside);
        columns.left(new CardText(pen, EDGE_PX, people.y(), half(), size), view);
        columns.right(new CardText(pen, EDGE_PX + half() + GAP_PX, people.y(), half(), size), view);
        drawCautions(pen, view);
    }

    /** The column beside the rose often has room for larger letters than the words below it. */
    private double sideSize(CardView view) {
        double size = fit.sizePx();
        int beside = beside(view, size);
        while (size < 15.5 && CardText.height(t -> side(t, view, beside), sideWidth(), size + 0.5) <= rose.heightPx())
            size += 0.5;
        return size;
    }

    private void drawHeader(Pen pen, CardView.Header header) {
        head(pen, header, EDGE_PX, width(), HEAD);
        String line = header.channel() + (header.target().isBlank() ? "" : "  ·  " + header.target());
        TextStyle plain = TextStyle.plain(fitting(line, false, width(), 14, TextStyle.SMALLEST_PX));
        pen.part(Pen.Part.PARAGRAPH, line, () -> pen.write(EDGE_PX, 97, Fitted.words(line, plain, width()), plain));
    }

    private static void everybody(CardText text, CardView view) {
        if (view.people().isEmpty()) return;
        text.whoIsWhere(view.people());
        text.gap();
    }

    private static void caution(CardText text, Caution caution) {
        text.lines(List.of(new CardLine(Cautions.opening(caution), Cautions.rest(caution))));
    }

    private void drawCautions(Pen pen, CardView view) {
        double height = cautionHeight(view);
        double top = paper.heightPx() - EDGE_PX - height;
        pen.draw(Outline.box(EDGE_PX, top, width(), height), ShapeStyle.line(TextStyle.INK, 1.6));
        pen.part(
                Pen.Part.HEADING,
                "Cautions",
                () -> pen.write(
                        EDGE_PX + 14, top + 22, "Cautions", TextStyle.plain(14).bold()));
        int k = split(view.cautions());
        CardText left = new CardText(pen, EDGE_PX + 14, top + 32, half() - 14, CAUTION_PX);
        view.cautions().subList(0, k).forEach(c -> caution(left, c));
        CardText right = new CardText(pen, EDGE_PX + half() + GAP_PX, top + 32, half() - 14, CAUTION_PX);
        view.cautions().subList(k, view.cautions().size()).forEach(c -> caution(right, c));
    }
}
