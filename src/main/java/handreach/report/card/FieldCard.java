package handreach.report.card;

import handreach.report.draw.Figure;
import handreach.report.file.PdfFile;
import handreach.report.file.WholeFile;
import java.util.List;

/** The field card as PDF: one sheet to be pinned up, or one sheet to be folded into a pocket. */
public final class FieldCard {
    private FieldCard() {}

    /** One page. */
    public static WholeFile.Content sheet(CardView view, CardSize paper) {
        return PdfFile.content(
                title(view), List.of(sheetFigure(view, paper)), view.header().made());
    }

    /** One page, printed on one side, folded twice: a quarter of the paper, A6 from A4. */
    public static WholeFile.Content fold(CardView view, CardSize paper) {
        return PdfFile.content(
                title(view), List.of(new CardFold(view, paper)), view.header().made());
    }

    /** The one-page card as a figure, to be shown on a screen before it is printed. */
    public static Figure sheetFigure(CardView view, CardSize paper) {
        return CardPage.of(view, paper);
    }

    private static String title(CardView view) {
        return "Field card: " + view.header().title();
    }
}
