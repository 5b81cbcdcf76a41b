package handreach.report;

import java.util.ArrayList;
import java.util.List;

/** Text flowing down a column of a card. Without a pen it only measures. */
final class CardText {
    private static final double LEADING = 1.32;
    private static final int BLANK_LINES = 3;

    private final Pen pen;
    private final double x;
    private final double widthPx;
    private final double sizePx;
    private double y;

    /** @param pen null to measure only */
    CardText(Pen pen, double x, double y, double widthPx, double sizePx) {
        this.pen = pen;
        this.x = x;
        this.y = y;
        this.widthPx = widthPx;
        this.sizePx = sizePx;
    }

    /** Where the next line would begin, px. */
    double y() {
        return y;
    }

    void heading(String words) {
        if (pen != null) {
            pen.draw(Outline.line(x, y, x + widthPx, y), Ink.line(Lettering.INK, 1.4));
            pen.write(
                    x, y + sizePx * 1.45, words, Lettering.plain(sizePx * 1.08).bold());
        }
        y += sizePx * 2.05;
    }

    void gap() {
        y += sizePx * 0.9;
    }

    /** Lines with a bold start, each wrapped; none leaves ruled lines to be filled in by hand. */
    void lines(List<CardLine> lines) {
        for (CardLine line : lines) {
            line(line, 0);
            y += sizePx * 0.25;
        }
        if (lines.isEmpty()) blanks();
    }

    void numbered(List<CardLine> lines) {
        double indent = sizePx * 1.5;
        for (int i = 0; i < lines.size(); i++) {
            if (pen != null)
                pen.write(x, y + sizePx, (i + 1) + ".", Lettering.plain(sizePx).bold());
            line(lines.get(i), indent);
            y += sizePx * 0.25;
        }
        if (lines.isEmpty()) blanks();
    }

    private void blanks() {
        for (int i = 0; i < BLANK_LINES; i++) {
            y += sizePx * 1.9;
            if (pen != null) pen.draw(Outline.line(x, y, x + widthPx, y), Ink.line(0x8A949A, 0.8));
        }
        y += sizePx * 0.4;
    }

    /** A loadout with the line that stands for it on the rose. */
    void loadout(CardLoadout loadout) {
        double indent = 46;
        if (pen != null) {
            double middle = y + sizePx * 0.66;
            Ink ink = Ink.line(loadout.mark().rgb(), 2.2, loadout.mark().dashPx());
            pen.draw(Outline.line(x, middle, x + 36, middle), ink);
            Badge.draw(pen, x + 18, middle, loadout.mark().letter(), ink);
        }
        String who = loadout.who().isBlank() ? loadout.loadout() : loadout.who();
        line(new CardLine(who, ""), indent);
        if (!loadout.who().isBlank()) line(CardLine.of(loadout.loadout()), indent);
        line(CardLine.of(loadout.reach()), indent);
        y += sizePx * 0.45;
    }

    void paragraph(String words) {
        line(CardLine.of(words), 0);
        y += sizePx * 0.25;
    }

    private void line(CardLine line, double indent) {
        double left = 0;
        List<Word> words = words(line);
        double space = Typeface.of(false).widthPx(" ", sizePx);
        for (Word word : words) {
            double width = Typeface.of(word.isBold()).widthPx(word.text(), sizePx);
            if (left > 0 && left + width > widthPx - indent) {
                left = 0;
                y += sizePx * LEADING;
            }
            if (pen != null) {
                Lettering lettering = Lettering.plain(sizePx);
                pen.write(x + indent + left, y + sizePx, word.text(), word.isBold() ? lettering.bold() : lettering);
            }
            left += width + space;
        }
        y += sizePx * LEADING;
    }

    private record Word(String text, boolean isBold) {}

    /** Words of a line; one longer than the column is broken so that nothing runs over the edge. */
    private List<Word> words(CardLine line) {
        List<Word> words = new ArrayList<>();
        for (String text : Typeface.clean(line.strong()).strip().split(" ")) add(words, text, true);
        for (String text : Typeface.clean(line.words()).strip().split(" ")) add(words, text, false);
        return words;
    }

    private void add(List<Word> words, String text, boolean isBold) {
        String rest = text;
        while (!rest.isEmpty()) {
            int end = rest.length();
            while (end > 1 && Typeface.of(isBold).widthPx(rest.substring(0, end), sizePx) > widthPx * 0.85)
                end = rest.offsetByCodePoints(end, -1);
            words.add(new Word(rest.substring(0, end), isBold));
            rest = rest.substring(end);
        }
    }

    /** Height that a drawing of text takes at a size, px. */
    static double height(java.util.function.Consumer<CardText> drawing, double widthPx, double sizePx) {
        CardText measure = new CardText(null, 0, 0, widthPx, sizePx);
        drawing.accept(measure);
        return measure.y();
    }
}
