package handreach.report.card;

import handreach.report.draw.Figure;
import handreach.report.file.AnswerFile;
import handreach.report.file.PdfFile;
import java.util.ArrayList;
import java.util.List;

/** The field card as PDF: one sheet to be pinned up, or one sheet to be folded into a pocket. */
public final class FieldCard {
    private FieldCard() {}

    /** One page, and its back where the page has no room for every place, name, relay and check time. */
    public static AnswerFile.Content sheet(CardView view, CardSize paper) {
        return pages(view, CardPage.of(view, paper));
    }

    /** One page to be folded twice, a quarter of the paper, A6 from A4; and a back as a sheet has it. */
    public static AnswerFile.Content fold(CardView view, CardSize paper) {
        return pages(view, new CardFold(view, paper));
    }

    private static AnswerFile.Content pages(CardView view, CardLayout front) {
        List<Figure> pages = new ArrayList<>(List.of(front));
        pages.addAll(CardBack.of(view, front.fit, front.paper));
        return PdfFile.content(title(view), pages, view.header().made());
    }

    private static String title(CardView view) {
        return "Field card: " + view.header().title();
    }
}
