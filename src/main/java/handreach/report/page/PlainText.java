package handreach.report.page;

import handreach.input.Unseen;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntUnaryOperator;

/**
 * An answer as lines of text for a terminal or a text file: the same blocks as on the page, words wrapped to a width, drawings left
 * out. Not for use by several threads.
 */
public final class PlainText {
    /** Columns of a line when nothing better is known. */
    public static final int USUAL_WIDTH = 100;

    private static final String GAP = "  ";
    /** A column of words is not made narrower than this, or it reads like a ribbon. */
    private static final int NARROWEST = 14;
    /** Better a ribbon than a line that the terminal breaks anywhere; but the first column, of names, stays as it is. */
    private static final int RIBBON = 9;
    /** Only names that are longer, such as those of files, are broken in the end. */
    private static final int SHORTEST_NAME = 24;
    /** Where numbers may be broken: where a second one begins, and at worst behind a comma. */
    private static final String PARTS = " (?=to )|(?<=,) ";

    private final StringBuilder out = new StringBuilder();
    private final int width;

    private PlainText(int width) {
        this.width = width;
    }

    /** A page: title, the answer, then its sections in order. */
    public static String of(Page page, int width) {
        PlainText text = new PlainText(width);
        text.wrapped("", page.title());
        text.gap();
        for (Block block : page.answer()) text.block(block);
        for (Section section : page.sections()) text.section(section);
        return text.said();
    }

    /** A table alone. */
    public static String of(Table<?> table, int width) {
        PlainText text = new PlainText(width);
        text.table(table);
        return text.said();
    }

    /** A sentence as lines, the first behind a mark, the others below it. */
    public static String of(String mark, String words, int width) {
        PlainText text = new PlainText(width);
        text.wrapped(mark, words);
        return text.said();
    }

    private String said() {
        return Unbroken.plain(out.toString());
    }

    private void section(Section section) {
        if (section.blocks().stream().allMatch(Drawing.class::isInstance)) return;
        gap();
        line(section.heading());
        for (Block block : section.blocks()) block(block);
    }

    private void block(Block block) {
        if (block instanceof Paragraph paragraph) wrapped("", paragraph.words());
        else if (block instanceof Bullets bullets) for (String point : bullets.points()) wrapped("- ", point);
        else if (block instanceof Subheading heading) {
            gap();
            line(heading.words());
        } else if (block instanceof Facts facts)
            for (Facts.Fact fact : facts.facts()) wrapped("", fact.name() + ": " + fact.value());
        else if (block instanceof Table<?> table) table(table);
        else if (block instanceof CautionBlock cautions)
            for (Caution caution : cautions.cautions()) wrapped("", Cautions.brief(caution));
        else if (!(block instanceof Drawing))
            throw new IllegalArgumentException("no text for a block of kind " + block.getClass());
    }

    /** An empty line between what stands above and what follows; none at the start, none twice. */
    private void gap() {
        int end = out.length();
        boolean isThere = end > 1 && out.charAt(end - 1) == '\n' && out.charAt(end - 2) == '\n';
        if (end > 0 && !isThere) out.append('\n');
    }

    private void line(String words) {
        out.append(oneLine(words)).append('\n');
    }

    private void wrapped(String mark, String words) {
        String hanging = " ".repeat(mark.length());
        List<String> lines = wrap(oneLine(words), Math.max(1, width - mark.length()));
        for (int i = 0; i < lines.size(); i++)
            out.append(i == 0 ? mark : hanging).append(lines.get(i)).append('\n');
    }

    /** Broken at the last blank that the width has room for; a word longer than the width has a line of its own. */
    static List<String> wrap(String words, int width) {
        List<String> lines = new ArrayList<>();
        int from = 0;
        while (words.length() - from > width) {
            int blank = words.charAt(from) == ' ' ? from : words.lastIndexOf(' ', from + width);
            if (blank < from) blank = words.indexOf(' ', from + width);
            if (blank < 0) break;
            if (blank > from) lines.add(words.substring(from, blank));
            from = blank + 1;
        }
        while (from < words.length() && words.charAt(from) == ' ') from++;
        lines.add(words.substring(from));
        return lines;
    }

    private void table(Table<?> table) {
        if (!table.caption().isBlank()) wrapped("", table.caption());
        int[] widths = widths(table);
        List<List<String>> heads = new ArrayList<>();
        for (int c = 0; c < widths.length; c++) heads.add(lines(table.head(c), widths[c]));
        row(table, heads, widths);
        List<List<String>> rule = new ArrayList<>();
        for (int w : widths) rule.add(List.of("-".repeat(w)));
        row(table, rule, widths);
        for (int r = 0; r < table.rowCount(); r++) {
            List<List<String>> cells = new ArrayList<>();
            for (int c = 0; c < widths.length; c++) cells.add(lines(spanned(table, r, c, widths[c]), widths[c]));
            row(table, cells, widths);
        }
    }

    /**
     * As wide as the widest cell; where the table is wider than the line, heads that are wider than what stands under them give way
     * first, then the widest columns of words, then spans of numbers, each end on a line of its own.
     */
    private int[] widths(Table<?> table) {
        int columns = table.columnCount();
        int[] widths = each(columns, c -> Math.max(longest(table.head(c)), longestCell(table, c)));
        int over = Arrays.stream(widths).sum() + GAP.length() * (columns - 1) - width;
        if (over > 0)
            over = narrow(widths, over, each(columns, c -> Math.max(longestCell(table, c), longestHeadWord(table, c))));
        if (over > 0) over = narrow(widths, over, each(columns, c -> least(table, c)));
        if (over > 0) over = narrow(widths, over, each(columns, c -> leastOfSpans(table, c)));
        if (over > 0) {
            int[] whole = widths.clone();
            int stillOver = narrow(
                    whole, over, each(columns, c -> c == 0 || table.isNumber(c) ? whole[c] : least(table, c, RIBBON)));
            if (stillOver > 0) stillOver = narrow(whole, stillOver, leastOfParts(table, whole));
            if (stillOver == 0) return whole;
            over = narrow(widths, over, each(columns, c -> leastOfBrokenPlaces(table, c, widths[c])));
            if (over > 0) over = narrow(widths, over, leastOfParts(table, widths));
        }
        if (over > 0) narrow(widths, over, each(columns, c -> c > 0 || table.isNumber(c) ? widths[c] : SHORTEST_NAME));
        return widths;
    }

    private static int[] each(int columns, IntUnaryOperator figure) {
        int[] figures = new int[columns];
        for (int c = 0; c < columns; c++) figures[c] = figure.applyAsInt(c);
        return figures;
    }

    /** Takes a place at a time from the widest of the columns that are wider than they have to be; says how many are still over. */
    private static int narrow(int[] widths, int over, int[] least) {
        for (int left = over; left > 0; left--) {
            int widest = -1;
            for (int c = 0; c < widths.length; c++)
                if (widths[c] > least[c] && (widest < 0 || widths[c] > widths[widest])) widest = c;
            if (widest < 0) return left;
            widths[widest]--;
        }
        return 0;
    }

    /** Numbers stay on one line; heads and words may be broken between words, and no word is broken. */
    private static int least(Table<?> table, int column) {
        return least(table, column, NARROWEST);
    }

    private static int least(Table<?> table, int column, int narrowest) {
        int least = table.isNumber(column) ? longestCell(table, column) : narrowest;
        if (!table.isNumber(column))
            for (int r = 0; r < table.rowCount(); r++)
                least = Math.max(least, longestWord(Unbroken.words(table.cell(r, column))));
        return Math.max(least, longestHeadWord(table, column));
    }

    /** A span may be broken where the second number begins. */
    private static int leastOfSpans(Table<?> table, int column) {
        if (!table.isNumber(column)) return least(table, column);
        int least = longestHeadWord(table, column);
        for (int r = 0; r < table.rowCount(); r++)
            for (String end : table.cell(r, column).split(" (?=to )")) least = Math.max(least, longest(end));
        return least;
    }

    /** At worst behind a comma, too. */
    private static int leastOfParts(Table<?> table, int column) {
        int least = longestHeadWord(table, column);
        for (int r = 0; r < table.rowCount(); r++)
            for (String part : table.cell(r, column).split(PARTS)) least = Math.max(least, longest(part));
        return least;
    }

    private static int[] leastOfParts(Table<?> table, int[] widths) {
        return each(widths.length, c -> table.isNumber(c) ? leastOfParts(table, c) : widths[c]);
    }

    /** Only where whole places leave no room is a place parted, and then before any number. */
    private static int leastOfBrokenPlaces(Table<?> table, int column, int width) {
        if (column == 0 || table.isNumber(column)) return width;
        int least = Math.max(RIBBON, longestHeadWord(table, column));
        for (int r = 0; r < table.rowCount(); r++) least = Math.max(least, longestWord(table.cell(r, column)));
        return Math.min(least, width);
    }

    private static int longestCell(Table<?> table, int column) {
        int longest = 0;
        for (int r = 0; r < table.rowCount(); r++) longest = Math.max(longest, longest(table.cell(r, column)));
        return longest;
    }

    private static int longestHeadWord(Table<?> table, int column) {
        return longestWord(table.head(column));
    }

    private static int longestWord(String words) {
        int longest = 0;
        int start = 0;
        for (int i = 0; i <= words.length(); i++) {
            if (i < words.length() && " \t\n\f\r\u000B".indexOf(words.charAt(i)) < 0) continue;
            longest = Math.max(longest, length(words.substring(start, i)));
            start = i + 1;
        }
        return longest;
    }

    private void row(Table<?> table, List<List<String>> cells, int[] widths) {
        int deep = cells.stream().mapToInt(List::size).max().orElse(0);
        for (int k = 0; k < deep; k++) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < widths.length; c++) {
                if (c > 0) line.append(GAP);
                String cell = k < cells.get(c).size() ? cells.get(c).get(k) : "";
                String blanks = " ".repeat(Math.max(0, widths[c] - length(cell)));
                line.append(table.isNumber(c) ? blanks + cell : cell + blanks);
            }
            out.append(line.toString().stripTrailing()).append('\n');
        }
    }

    /** A span that its column has no room for, with the second number on a line of its own. */
    private static String spanned(Table<?> table, int row, int column, int width) {
        String cell = table.cell(row, column);
        if (!table.isNumber(column) || longest(cell) <= width) return cell;
        String halves = cell.replaceFirst(" (?=to )", "\n");
        return longest(halves) <= width ? halves : cell.replaceAll(PARTS, "\n");
    }

    private static List<String> lines(String cell, int width) {
        List<String> lines = new ArrayList<>();
        for (String line : cell.split("\n", -1))
            for (String part : wrap(inColumn(oneLine(line), width), Math.max(1, width)))
                lines.addAll(cut(part, Math.max(1, width)));
        return lines;
    }

    /** Places in one piece where the column has room for them. */
    private static String inColumn(String line, int width) {
        return longestWord(line) <= width ? line : Unbroken.plain(line);
    }

    /** A word that is wider than its column, cut at the column's edge. */
    private static List<String> cut(String part, int width) {
        List<String> pieces = new ArrayList<>();
        int from = 0;
        for (; part.length() - from > width; from += width) pieces.add(part.substring(from, from + width));
        pieces.add(part.substring(from));
        return pieces;
    }

    private static int longest(String cell) {
        if (cell.indexOf('\n') < 0) return length(oneLine(cell));
        int longest = 0;
        for (String line : cell.split("\n", -1)) longest = Math.max(longest, length(oneLine(line)));
        return longest;
    }

    private static String oneLine(String words) {
        return Unbroken.words(Unseen.oneLine(words).strip());
    }

    /** Places on the screen: marks that sit on a letter and marks of direction take none. */
    private static int length(String text) {
        int length = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int type = Character.getType(text.codePointAt(i));
            if (type != Character.NON_SPACING_MARK && type != Character.FORMAT) length++;
        }
        return length;
    }
}
