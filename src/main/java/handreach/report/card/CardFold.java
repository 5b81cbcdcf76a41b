package handreach.report.card;

import handreach.report.draw.Fitted;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import java.awt.geom.AffineTransform;
import java.util.List;

/**
 * The field card on one side of a sheet to be folded twice into a quarter (A6 from A4): cover at the lower right, back at the
 * lower left, the two inner pages above, upside down until folded.
 */
final class CardFold extends CardLayout {
    private static final double EDGE_PX = 24;
    private static final double CAUTION_PX = 12;

    private static final Lines HEAD = new Lines(EDGE_PX + 12, 12, EDGE_PX + 40, 21, 14);

    CardFold(CardView view, CardSize paper) {
        super(view, paper, view.rose().sized(Math.min((paper.widthPx() / 2 - 2 * EDGE_PX) / 2 - 42, 148)));
    }

    private double panelWidth() {
        return paper.widthPx() / 2;
    }

    private double panelHeight() {
        return paper.heightPx() / 2;
    }

    private double inner() {
        return panelWidth() - 2 * EDGE_PX;
    }

    @Override
    boolean fits(CardView view, double size) {
        double room = panelHeight() - 2 * EDGE_PX;
        return 84 + CardText.height(t -> cover(t, view), inner(), size) <= room
                && CardText.height(t -> second(t, view), inner(), size) <= room
                && CardText.height(t -> back(t, view), inner(), Math.min(size, 12.5)) + cautionHeight(view) <= room;
    }

    private double cautionHeight(CardView view) {
        return CardText.height(t -> cautions(t, view.cautions()), inner(), CAUTION_PX);
    }

    @Override
    public String title() {
        return "Folding field card: " + fit.view().header().title();
    }

    @Override
    public void draw(Pen pen) {
        double w = panelWidth();
        double h = panelHeight();
        CardView view = fit.view();
        pen.moved(AffineTransform.getTranslateInstance(w, h), () -> drawCover(pen, view));
        pen.moved(AffineTransform.getTranslateInstance(0, h), () -> drawBack(pen, view));
        pen.moved(turned(2 * w, h), () -> drawRose(pen));
        pen.moved(turned(w, h), () -> second(new CardText(pen, EDGE_PX, EDGE_PX, inner(), fit.sizePx()), view));
        ShapeStyle fold = ShapeStyle.line(0x8A949A, 0.8, List.of(2.0, 4.0));
        pen.draw(Outline.line(w, 0, w, 2 * h), fold);
        pen.draw(Outline.line(0, h, 2 * w, h), fold);
    }

    /** Half a turn that puts the panel's upper left corner at its lower right. */
    private static AffineTransform turned(double right, double bottom) {
        return new AffineTransform(-1, 0, 0, -1, right, bottom);
    }

    private void drawCover(Pen pen, CardView view) {
        CardView.Header header = view.header();
        head(pen, header, EDGE_PX, inner(), HEAD);
        TextStyle plain = TextStyle.plain(14);
        pen.part(
                Pen.Part.PARAGRAPH,
                header.channel(),
                () -> pen.write(EDGE_PX, EDGE_PX + 62, Fitted.words(header.channel(), plain, inner()), plain));
        cover(new CardText(pen, EDGE_PX, EDGE_PX + 84, inner(), fit.sizePx()), view);
    }

    private static void cover(CardText text, CardView view) {
        if (!view.people().isEmpty()) text.whoIsWhere(view.people());
        if (!view.header().target().isBlank()) text.paragraph(view.header().target());
    }

    private void drawRose(Pen pen) {
        double x = (panelWidth() - rose.widthPx()) / 2;
        pen.part(
                Pen.Part.HEADING,
                "Reach by bearing",
                () -> pen.write(
                        EDGE_PX,
                        EDGE_PX + 13,
                        "Reach by bearing",
                        TextStyle.plain(14).bold()));
        pen.part(
                Pen.Part.FIGURE,
                rose.description(),
                () -> pen.moved(AffineTransform.getTranslateInstance(x, EDGE_PX + 22), () -> rose.draw(pen)));
    }

    private static void second(CardText text, CardView view) {
        carriers(text, view);
        deadGround(text, view);
        text.gap();
        relay(text, view);
        doubts(text, view);
    }

    private static void back(CardText text, CardView view) {
        fallback(text, view);
        text.gap();
        checkTimes(text, view);
        text.gap();
    }

    private static void cautions(CardText text, List<Caution> cautions) {
        text.heading("Cautions");
        for (Caution caution : cautions) text.paragraph(Cautions.brief(caution));
    }

    private void drawBack(Pen pen, CardView view) {
        back(new CardText(pen, EDGE_PX, EDGE_PX, inner(), Math.min(fit.sizePx(), 12.5)), view);
        double top = panelHeight() - EDGE_PX - cautionHeight(view);
        cautions(new CardText(pen, EDGE_PX, top, inner(), CAUTION_PX), view.cautions());
    }
}
