package handreach.report.card;

import handreach.report.draw.Figure;
import handreach.report.draw.Fitted;
import handreach.report.draw.Pen;
import handreach.report.draw.Picture;
import handreach.report.draw.TextStyle;
import handreach.report.file.AnswerFile;
import handreach.report.file.PdfFile;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import java.awt.geom.Rectangle2D;
import java.time.Instant;
import java.util.List;

/** A picture of the map on one sheet across: what it is above, the picture as large as it fits, the cautions below. */
public final class MapPage implements Figure {
    private static final double EDGE_PX = 40;
    private static final double TITLE_PX = 22;
    private static final double WORDS_PX = 13;
    private static final double GAP_PX = 12;

    private final String title;
    private final String about;
    private final Picture map;
    private final CardSize paper;

    private MapPage(String title, String about, Picture map, CardSize paper) {
        this.title = title;
        this.about = about;
        this.map = map;
        this.paper = paper;
    }

    /**
     * As a PDF file.
     *
     * @param about channel and power, with what and from where, the date
     * @param map with its scale and key on it
     */
    public static AnswerFile.Content pdf(String title, String about, Picture map, CardSize paper, Instant made) {
        return PdfFile.content("Map: " + title, List.of(new MapPage(title, about, map, paper)), made);
    }

    /** What stands under every picture of a map. */
    public static String cautions() {
        return Cautions.brief(Caution.RELIANCE) + " " + Cautions.brief(Caution.LICENCE);
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String description() {
        return "Map of " + title + ": " + about + ".";
    }

    @Override
    public double widthPx() {
        return paper.heightPx();
    }

    @Override
    public double heightPx() {
        return paper.widthPx();
    }

    @Override
    public boolean holdsPicture() {
        return true;
    }

    @Override
    public void draw(Pen pen) {
        double wide = widthPx() - 2 * EDGE_PX;
        TextStyle head = TextStyle.plain(TITLE_PX).bold();
        pen.part(
                Pen.Part.TITLE,
                title,
                () -> pen.write(EDGE_PX, EDGE_PX + TITLE_PX, Fitted.words(title, head, wide), head));
        CardText above = new CardText(pen, EDGE_PX, EDGE_PX + TITLE_PX + GAP_PX, wide, WORDS_PX);
        above.lines(List.of(CardLine.of(about)));
        double foot = CardText.height(text -> text.lines(List.of(CardLine.of(cautions()))), wide, WORDS_PX);
        double top = above.y() + GAP_PX / 2;
        double room = heightPx() - EDGE_PX - foot - GAP_PX - top;
        double scale = Math.min(wide / map.widthPx(), room / map.heightPx());
        double left = EDGE_PX + (wide - scale * map.widthPx()) / 2;
        pen.part(
                Pen.Part.FIGURE,
                description(),
                () -> pen.place(map, new Rectangle2D.Double(left, top, scale * map.widthPx(), scale * map.heightPx())));
        new CardText(pen, EDGE_PX, heightPx() - EDGE_PX - foot, wide, WORDS_PX).lines(List.of(CardLine.of(cautions())));
    }
}
