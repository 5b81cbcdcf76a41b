package handreach.report.card;

import handreach.report.draw.Figure;
import handreach.report.draw.Fitted;
import handreach.report.draw.Pen;
import handreach.report.draw.TextStyle;
import java.util.ArrayList;
import java.util.List;

/** The back of a field card: in full what its front had room for in part only. More pages follow where one is not enough. */
final class CardBack implements Figure {
    private static final double EDGE_PX = 44;
    private static final double TOP_PX = 84;
    private static final double SIZE_PX = 13;
    private static final double STEP_PX = 0.5;

    /** Something under a heading that may go on on the next page. */
    private interface Part {
        int count();

        void write(CardText text, int from, int to);
    }

    private record Piece(Part part, int from, int to) {
        void write(CardText text) {
            part.write(text, from, to);
            text.gap();
        }
    }

    private final CardView.Header header;
    private final CardSize paper;
    private final List<Piece> pieces;
    private final double sizePx;

    private CardBack(CardView.Header header, CardSize paper, List<Piece> pieces, double sizePx) {
        this.sizePx = sizePx;
        this.header = header;
        this.paper = paper;
        this.pieces = List.copyOf(pieces);
    }

    /** What a front leaves out; nothing where it leaves out nothing that asks for a back. */
    static List<Figure> of(CardView whole, CardFit front, CardSize paper) {
        if (!front.hasBack()) return List.of();
        List<Figure> best = of(whole, front, paper, SIZE_PX);
        for (double size = SIZE_PX - STEP_PX;
                size >= TextStyle.SMALLEST_PX && (best.size() > 1 || !hasRoomForWords(whole, paper, size + STEP_PX));
                size -= STEP_PX) {
            List<Figure> smaller = of(whole, front, paper, size);
            if (smaller.size() < best.size() || smaller.size() == 1) best = smaller;
        }
        return best;
    }

    private static boolean hasRoomForWords(CardView whole, CardSize paper, double sizePx) {
        return new CardText(null, 0, 0, paper.widthPx() - 2 * EDGE_PX, sizePx)
                .hasRoomFor(new CardPeople("", "", whole.people().everybody(), List.of()));
    }

    private static List<Figure> of(CardView whole, CardFit front, CardSize paper, double sizePx) {
        List<Figure> pages = new ArrayList<>();
        List<Piece> page = new ArrayList<>();
        for (Part part : parts(whole, front.view())) {
            int from = 0;
            while (from < part.count()) {
                int to = from;
                while (to < part.count() && fits(page, new Piece(part, from, to + 1), paper, sizePx)) to++;
                if (to == from && page.isEmpty()) to++;
                if (to > from) page.add(new Piece(part, from, to));
                from = to;
                if (from == part.count()) break;
                pages.add(new CardBack(whole.header(), paper, page, sizePx));
                page.clear();
            }
        }
        if (!page.isEmpty()) pages.add(new CardBack(whole.header(), paper, page, sizePx));
        return pages;
    }

    private static boolean fits(List<Piece> page, Piece next, CardSize paper, double sizePx) {
        double height = CardText.height(
                text -> {
                    page.forEach(piece -> piece.write(text));
                    next.write(text);
                },
                paper.widthPx() - 2 * EDGE_PX,
                sizePx);
        return TOP_PX + height <= paper.heightPx() - EDGE_PX;
    }

    private static List<Part> parts(CardView whole, CardView front) {
        List<Part> parts = new ArrayList<>();
        if (!front.people().equals(whole.people())) parts.add(new People(whole.people()));
        if (front.loadouts().lines().size() < whole.loadouts().lines().size())
            parts.add(new Carriers(whole.loadouts().lines()));
        for (NoteSection section : NoteSection.values()) {
            List<CardLine> all = section.of(whole.notes());
            List<CardLine> said = section.of(front.notes());
            boolean isWhole =
                    said.size() >= all.size() && said.subList(0, all.size()).equals(all);
            if (!isWhole) parts.add(new Lines(section.heading(), all));
        }
        return parts;
    }

    private record Lines(String heading, List<CardLine> lines) implements Part {
        @Override
        public int count() {
            return lines.size();
        }

        @Override
        public void write(CardText text, int from, int to) {
            text.heading(heading);
            text.lines(lines.subList(from, to));
        }
    }

    private record Carriers(List<CardLoadout> lines) implements Part {
        @Override
        public int count() {
            return lines.size();
        }

        @Override
        public void write(CardText text, int from, int to) {
            text.heading(CardText.LOADOUTS);
            lines.subList(from, to).forEach(text::loadout);
        }
    }

    private record People(CardPeople people) implements Part {
        @Override
        public int count() {
            return people.everybody().size();
        }

        @Override
        public void write(CardText text, int from, int to) {
            String note = to == count() ? people.note() : "";
            text.whoIsWhere(
                    new CardPeople(people.from(), note, people.everybody().subList(from, to), List.of()));
        }
    }

    @Override
    public String title() {
        return "Field card, back: " + header.title();
    }

    @Override
    public String description() {
        return title();
    }

    @Override
    public double widthPx() {
        return paper.widthPx();
    }

    @Override
    public double heightPx() {
        return paper.heightPx();
    }

    @Override
    public void draw(Pen pen) {
        double width = paper.widthPx() - 2 * EDGE_PX;
        TextStyle quiet = TextStyle.quiet(sizePx).bold();
        String words = "Field card, back: " + header.title();
        pen.part(Pen.Part.PARAGRAPH, words, () -> pen.write(EDGE_PX, 58, Fitted.words(words, quiet, width), quiet));
        CardText text = new CardText(pen, EDGE_PX, TOP_PX, width, sizePx);
        pieces.forEach(piece -> piece.write(text));
    }
}
