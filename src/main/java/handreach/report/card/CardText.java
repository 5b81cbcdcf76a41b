package handreach.report.card;

import handreach.cartography.LoadoutMark;
import handreach.report.draw.Fitted;
import handreach.report.draw.Outline;
import handreach.report.draw.Pen;
import handreach.report.draw.ShapeStyle;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.report.figure.Badge;
import handreach.report.page.Unbroken;
import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import java.util.function.BiFunction;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;

/** Text flowing down a column of a card. Without a pen it only measures. */
final class CardText {
    static final String LOADOUTS = "Loadouts";

    private static final double LEADING = 1.32;
    private static final int BLANK_LINES = 3;
    /** Narrower than this a table of people would be all wrapped lines, px. */
    private static final double TABLE_PX = 500;

    private static final double CELL_GAP_PX = 14;
    /** What stays free at the right of every cell, px. */
    private static final double BETWEEN_PX = CELL_GAP_PX / 2 - 0.5;

    /** No column of running text is as narrow as a cell, px. */
    private static final double NARROW_PX = 200;

    private static final double COLUMN_GAP_PX = 26;
    private static final int NAME = 1;
    private static final int CARRIES = 2;
    private static final int PLACE = 3;
    private static final int WAY = 4;
    private static final List<String> HEADS =
            List.of("", "", "carries", "place", "true bearing", "calls", "hears", "by relay");
    /** With less room for names two small tables beside one another would be all wrapped lines. */
    private static final double NARROWEST_NAME_EM = 5.5;
    /** With less room for name and loadout each stands a word a line. */
    private static final double ROOMY_EM = 14;

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
            pen.draw(Outline.line(x, y, x + widthPx, y), ShapeStyle.line(TextStyle.INK, 1.4));
            TextStyle lettering = TextStyle.plain(sizePx * 1.08).bold();
            double baseLine = y + sizePx * 1.45;
            pen.part(
                    Pen.Part.HEADING,
                    words,
                    () -> pen.write(x, baseLine, Fitted.words(words, lettering, widthPx), lettering));
        }
        y += sizePx * 2.05;
    }

    void gap() {
        y += sizePx * 0.9;
    }

    /** Lines with a bold start, each wrapped; none leaves ruled lines to be filled in by hand. */
    void lines(List<CardLine> lines) {
        for (CardLine line : lines) {
            if (line.equals(CardLine.BLANK)) blanks(1);
            else line(line, 0);
            y += sizePx * 0.25;
        }
        if (lines.isEmpty()) blanks(BLANK_LINES);
    }

    void numbered(List<CardLine> lines) {
        double indent = sizePx * 1.5;
        for (int i = 0; i < lines.size(); i++) {
            numbered(i + 1, lines.get(i), indent);
            y += sizePx * 0.25;
        }
        if (lines.isEmpty()) blanks(BLANK_LINES);
    }

    private void numbered(int number, CardLine line, double indent) {
        part(number + ". " + (line.strong() + " " + line.words()).strip(), () -> {
            if (pen != null)
                pen.write(x, y + sizePx, number + ".", TextStyle.plain(sizePx).bold());
            line(line, indent);
        });
    }

    /** Something that is read in one piece. */
    private void part(String words, Runnable drawing) {
        if (pen == null) drawing.run();
        else pen.part(Pen.Part.PARAGRAPH, words, drawing);
    }

    private void blanks(int count) {
        for (int i = 0; i < count; i++) {
            y += sizePx * 1.9;
            if (pen != null) pen.draw(Outline.line(x, y, x + widthPx, y), ShapeStyle.line(0x8A949A, 0.8));
        }
        y += sizePx * 0.4;
    }

    /** A loadout with the line that stands for it on the rose. */
    void loadout(CardLoadout loadout) {
        String letter = loadout.mark().map(mark -> mark.letter() + ": ").orElse("");
        part(letter + loadout.loadout() + ", " + loadout.reach(), () -> lines(loadout));
        y += sizePx * 0.45;
    }

    private void lines(CardLoadout loadout) {
        double indent = 46;
        if (pen != null && loadout.mark().isPresent()) {
            LoadoutMark mark = loadout.mark().get();
            double middle = y + sizePx * 0.66;
            ShapeStyle ink = ShapeStyle.line(mark.rgb(), 2.2, mark.dashPx());
            pen.draw(Outline.line(x, middle, x + 36, middle), ink);
            Badge.draw(pen, x + 18, middle, mark.letter(), ink);
        }
        line(new CardLine(loadout.loadout(), ""), indent);
        line(CardLine.of(loadout.reach()), indent);
    }

    /** Everybody, under a heading that says from where they are seen. */
    void whoIsWhere(CardPeople people) {
        heading("Who is where, seen from " + people.from());
        people(people);
    }

    /** Everybody in a table where there is room for one, else one below the other. */
    private void people(CardPeople people) {
        if (widthPx >= TABLE_PX && !people.rows().isEmpty()) table(people.rows(), widths(people.rows(), false));
        else for (CardPerson person : people.rows()) stacked(person);
        if (!people.rest().isEmpty()) brief(people.rest());
        if (!people.note().isBlank()) paragraph(people.note());
    }

    private void stacked(CardPerson person) {
        String where = person.way().isBlank() ? person.place() : person.place() + "; " + person.way();
        line(new CardLine((person.number() + " " + person.name()).strip(), where), 0);
        List<Word> words = new ArrayList<>(words(CardLine.of(person.carries())));
        say(words, "calls", person.odds().calls());
        say(words, "hears", person.odds().hears());
        say(words, "by relay", person.odds().byRelay());
        flow(words, 0);
        y += sizePx * 0.3;
    }

    /** Name, way and odds, one person below the other, in two columns where there is room for them. */
    private void brief(List<CardPerson> people) {
        int columns = widthPx >= TABLE_PX ? 2 : 1;
        int each = (people.size() + columns - 1) / columns;
        double width = (widthPx - (columns - 1) * COLUMN_GAP_PX) / columns;
        double[] bare = new CardText(null, 0, 0, width, sizePx).widths(people, true);
        boolean isTable = columns > 1 && bare[NAME] >= NARROWEST_NAME_EM * sizePx;
        double bottom = y;
        for (int c = 0; c < columns; c++) {
            CardText column = new CardText(pen, x + c * (width + COLUMN_GAP_PX), y, width, sizePx);
            List<CardPerson> part =
                    people.stream().skip((long) c * each).limit(each).toList();
            if (isTable) column.table(part, bare);
            else part.forEach(column::brief);
            bottom = Math.max(bottom, column.y());
        }
        y = bottom + sizePx * 0.25;
    }

    private void brief(CardPerson person) {
        double indent = person.number().isEmpty() ? 0 : sizePx * 1.7;
        List<Word> words = new ArrayList<>();
        add(words, person.name(), true);
        add(words, person.way(), false);
        say(words, "calls", person.odds().calls());
        say(words, "hears", person.odds().hears());
        say(words, "by relay", person.odds().byRelay());
        String said = words.stream().map(Word::text).collect(Collectors.joining(" "));
        part((person.number() + " " + said).strip(), () -> {
            if (pen != null) pen.write(x, y + sizePx, person.number(), TextStyle.plain(sizePx));
            flow(words, indent);
        });
    }

    private static void end(List<Word> words, String mark) {
        Word last = words.remove(words.size() - 1);
        words.add(new Word(last.text() + mark, last.isBold()));
    }

    private void say(List<Word> words, String what, CardPerson.Share share) {
        if (share.words().isBlank()) return;
        end(words, ",");
        add(words, what, false);
        add(words, share.words(), share.isWeak());
    }

    private static List<String> cells(CardPerson person) {
        return List.of(
                person.number(),
                person.name(),
                person.carries(),
                person.place(),
                person.way(),
                person.odds().calls().words(),
                person.odds().hears().words(),
                person.odds().byRelay().words());
    }

    private static boolean isWeak(CardPerson person, int column) {
        CardPerson.Odds odds = person.odds();
        return List.of(odds.calls(), odds.hears(), odds.byRelay())
                .get(column - WAY - 1)
                .isWeak();
    }

    private static double gapPx(boolean isBare) {
        return isBare ? CELL_GAP_PX / 2 : CELL_GAP_PX;
    }

    /** Columns as wide as their words, or where names have no room beside them as their parts; name and loadout share what is left. */
    private double[] widths(List<CardPerson> people, boolean isBare) {
        double[] whole = widths(people, isBare, (column, cell) -> List.of(cell));
        if (isBare || whole[NAME] + whole[CARRIES] >= ROOMY_EM * sizePx) return whole;
        double[] width = widths(people, false, CardText::span);
        if (!keepsWords(people, width)) width = widths(people, false, CardText::spanAndDistance);
        if (!keepsWords(people, width)) width = widths(people, false, CardText::spanAndParts);
        return width;
    }

    private static List<String> span(int column, String cell) {
        return column < WAY ? List.of(cell) : List.of(cell.split(" (?=to )"));
    }

    /** The distance behind a bearing below it. */
    private static List<String> spanAndDistance(int column, String cell) {
        return column == WAY ? List.of(cell.split(" (?=to )|(?<=,) ")) : span(column, cell);
    }

    /** The last number of a place below the others, too. */
    private static List<String> spanAndParts(int column, String cell) {
        return column == PLACE ? List.of(cell.split(" (?=\\S+$)")) : spanAndDistance(column, cell);
    }

    /** Whether no name and no loadout has a word cut in two. */
    private boolean keepsWords(List<CardPerson> people, double[] width) {
        for (CardPerson person : people)
            for (int c : new int[] {NAME, CARRIES})
                for (String word : Typeface.clean(cells(person).get(c)).split(" "))
                    if (Typeface.of(c == NAME).widthPx(word, sizePx) > width[c] - BETWEEN_PX) return false;
        return true;
    }

    /** Whether a table of these people has room for every word. */
    boolean hasRoomFor(CardPeople people) {
        return widthPx < TABLE_PX || people.rows().isEmpty() || keepsWords(people.rows(), widths(people.rows(), false));
    }

    /** Bare of loadouts and coordinates it is narrow. */
    private double[] widths(List<CardPerson> people, boolean isBare, BiFunction<Integer, String, List<String>> parts) {
        int columns = HEADS.size();
        double[] width = new double[columns];
        for (CardPerson person : people)
            for (int c = 0; c < columns; c++) {
                if (isBare && (c == CARRIES || c == PLACE)) continue;
                String cell = cells(person).get(c);
                for (String part : parts.apply(c, cell))
                    width[c] =
                            Math.max(width[c], Typeface.of(c == NAME || c > WAY).widthPx(part, sizePx));
            }
        for (int c = WAY + 1; c < columns; c++)
            if (width[c] > 0) width[c] = Math.max(width[c], Typeface.of(false).widthPx(HEADS.get(c), sizePx));
        double gap = gapPx(isBare);
        double fixed = 0;
        for (int c = 0; c < columns; c++) {
            if (width[c] > 0) width[c] += gap;
            if (c != NAME && c != CARRIES) fixed += width[c];
        }
        double left = widthPx - fixed;
        if (isBare) {
            width[NAME] = Math.max(left, 0);
            return width;
        }
        double name = Math.min(width[NAME], Math.max(left / 2, left - width[CARRIES]));
        double word = longestWord(people, CARRIES) + gap / 2;
        if (left - name < word) name = Math.max(left - word, Math.min(name, longestWord(people, NAME) + gap / 2));
        width[NAME] = Math.max(name, sizePx * 4);
        width[CARRIES] = Math.max(left - width[NAME], sizePx * 4);
        return width;
    }

    private double longestWord(List<CardPerson> people, int column) {
        double longest = 0;
        for (CardPerson person : people)
            for (String word : Typeface.clean(cells(person).get(column)).split(" "))
                longest = Math.max(longest, Typeface.of(column == NAME).widthPx(word, sizePx));
        return longest;
    }

    private void table(List<CardPerson> people, double[] width) {
        part(said(HEADS, HEADS), () -> row(HEADS, width, column -> false));
        for (CardPerson person : people)
            part(
                    said(HEADS, cells(person)),
                    () -> row(
                            cells(person), width, column -> column == NAME || column > WAY && isWeak(person, column)));
        y += sizePx * 0.2;
    }

    /** A row as it is read: each cell behind the head of its column. */
    private static String said(List<String> heads, List<String> cells) {
        StringJoiner said = new StringJoiner(", ");
        for (int c = 0; c < cells.size(); c++)
            if (!cells.get(c).isBlank())
                said.add(
                        heads.get(c).isEmpty() || heads.get(c).equals(cells.get(c))
                                ? cells.get(c)
                                : heads.get(c) + " " + cells.get(c));
        return said.toString();
    }

    private void row(List<String> cells, double[] width, IntPredicate isBold) {
        double left = x;
        double bottom = y;
        for (int c = 0; c < cells.size(); c++) {
            if (width[c] <= 0) continue;
            double room = width[c] - BETWEEN_PX;
            CardText cell = new CardText(pen, left, y, room, sizePx);
            if (c < WAY) cell.line(isBold.test(c) ? new CardLine(cells.get(c), "") : CardLine.of(cells.get(c)), 0);
            else cell.flow(cell.parts(cells.get(c), isBold.test(c)), 0);
            bottom = Math.max(bottom, cell.y());
            left += width[c];
        }
        y = bottom;
        if (pen != null) pen.draw(Outline.line(x, y + 1, x + widthPx, y + 1), ShapeStyle.line(0xB4BCC1, 0.7));
        y += sizePx * 0.15;
    }

    /** A span, parted where its second number begins; by words only where a part has no room. */
    private List<Word> parts(String span, boolean isBold) {
        List<Word> words = new ArrayList<>();
        for (String part : Typeface.clean(span).strip().split(" (?=to )"))
            if (Typeface.of(isBold).widthPx(part, sizePx) > widthPx) add(words, part, isBold);
            else words.add(new Word(part, isBold));
        return words;
    }

    void paragraph(String words) {
        line(CardLine.of(words), 0);
        y += sizePx * 0.25;
    }

    private void line(CardLine line, double indent) {
        flow(words(line), indent);
    }

    private void flow(List<Word> words, double indent) {
        if (pen == null) write(words, indent);
        else part(words.stream().map(Word::text).collect(Collectors.joining(" ")), () -> write(words, indent));
    }

    private void write(List<Word> words, double indent) {
        double left = 0;
        double space = Typeface.of(false).widthPx(" ", sizePx);
        for (Word word : words) {
            double width = Typeface.of(word.isBold()).widthPx(word.text(), sizePx);
            if (left > 0 && left + width > widthPx - indent) {
                left = 0;
                y += sizePx * LEADING;
            }
            if (pen != null) {
                TextStyle lettering = TextStyle.plain(sizePx);
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
        add(words, Typeface.clean(line.strong()), true);
        add(words, Typeface.clean(line.words()), false);
        return words;
    }

    /** A place, and a number with its per cent sign, stay in one piece where the column has room for it. */
    private void add(List<Word> words, String sentence, boolean isBold) {
        for (String text : Unbroken.words(sentence.strip()).split(" ")) {
            String whole = Unbroken.plain(text);
            if (text.equals(whole) || Typeface.of(isBold).widthPx(whole, sizePx) > widthPx)
                for (String word : whole.split(" ")) addWord(words, word, isBold);
            else words.add(new Word(whole, isBold));
        }
    }

    /** For one word: a cell has it to its edge, a column of text less its indent. */
    private double roomPx() {
        return widthPx < NARROW_PX ? widthPx : widthPx * 0.85;
    }

    private void addWord(List<Word> words, String text, boolean isBold) {
        String rest = text;
        double room = roomPx();
        while (!rest.isEmpty()) {
            int end = rest.length();
            while (end > 1 && Typeface.of(isBold).widthPx(rest.substring(0, end), sizePx) > room)
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
