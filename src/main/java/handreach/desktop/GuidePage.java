package handreach.desktop;

import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Subheading;
import handreach.report.page.Table;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** A page of the documentation that travels with the program, read into the blocks of an answer. Knows the forms those pages use. */
final class GuidePage {
    private final List<String> lines;
    private int at;

    private GuidePage(List<String> lines) {
        this.lines = lines;
    }

    /** The page of this name, such as {@code guide}; empty where it does not travel with this build. */
    static Optional<List<Block>> of(String name) {
        return text(name).map(text -> new GuidePage(text.lines().toList()).blocks());
    }

    /** What stands under one heading of a page. */
    static Optional<List<Block>> section(String name, String heading) {
        return text(name).map(text -> {
            List<String> all = text.lines().toList();
            int from = all.indexOf("## " + heading);
            int to = from + 1;
            while (to < all.size() && !all.get(to).startsWith("## ")) to++;
            return from < 0 ? List.of() : new GuidePage(all.subList(from, to)).blocks();
        });
    }

    private static Optional<String> text(String name) {
        try (InputStream in = GuidePage.class.getResourceAsStream("/handreach/docs/" + name + ".md")) {
            return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        while (at < lines.size()) {
            String line = lines.get(at);
            if (line.isBlank() || line.startsWith("![") || line.startsWith("<")) at++;
            else if (line.startsWith("#")) {
                blocks.add(new Subheading(plain(line.replaceFirst("#+ *", ""))));
                at++;
            } else if (line.startsWith("```")) code(blocks);
            else if (line.startsWith("|")) blocks.add(table());
            else if (isPoint(line)) blocks.add(points());
            else blocks.add(Paragraph.of(plain(joined())));
        }
        return blocks;
    }

    private static boolean isPoint(String line) {
        return line.matches(" *[-*] .*");
    }

    /** Line by line, as it is typed. */
    private void code(List<Block> blocks) {
        for (at++; at < lines.size() && !lines.get(at).startsWith("```"); at++)
            blocks.add(Paragraph.quiet("\u2002\u2002" + lines.get(at)));
        at++;
    }

    /** Lines up to the next that begins something else, as one. */
    private String joined() {
        StringBuilder words = new StringBuilder(lines.get(at++).strip().replaceFirst("^> ?", ""));
        while (at < lines.size() && isMore(lines.get(at)))
            words.append(' ').append(lines.get(at++).strip().replaceFirst("^> ?", ""));
        return words.toString();
    }

    private static boolean isMore(String line) {
        return !line.matches("[0-9]+\\. .*")
                && !line.isBlank()
                && !line.startsWith("#")
                && !line.startsWith("```")
                && !line.startsWith("|")
                && !isPoint(line);
    }

    private Block points() {
        List<String> points = new ArrayList<>();
        while (at < lines.size() && isPoint(lines.get(at))) points.add(plain(joined().replaceFirst("^[-*] ", "")));
        return new Bullets(points);
    }

    private Block table() {
        List<List<String>> rows = new ArrayList<>();
        for (; at < lines.size() && lines.get(at).startsWith("|"); at++)
            if (!lines.get(at).matches("[|\\s:-]+")) rows.add(cells(lines.get(at)));
        List<String> heads = rows.remove(0);
        List<Column<List<String>>> columns = IntStream.range(0, heads.size())
                .mapToObj(i -> Column.<List<String>>words(heads.get(i), row -> i < row.size() ? row.get(i) : ""))
                .toList();
        return Table.of("", rows, columns);
    }

    private static List<String> cells(String line) {
        String inner = line.strip().replaceAll("^\\||\\|$", "");
        return Arrays.stream(inner.split("(?<!\\\\)\\|", -1))
                .map(cell -> plain(cell.strip().replace("\\|", "|")))
                .toList();
    }

    /** Without the marks of links, weight and code. */
    private static String plain(String words) {
        return words.replaceAll("\\[([^\\]]*)\\]\\([^)]*\\)", "$1")
                .replaceAll("\\*\\*([^*]+)\\*\\*", "$1")
                .replaceAll("(?<![\\w*])\\*([^*]+)\\*(?![\\w*])", "$1")
                .replace("`", "");
    }
}
