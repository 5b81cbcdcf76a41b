package handreach.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.report.SampleFigures;
import handreach.report.draw.Figure;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class HtmlPageTest {
    private static final String BAD = SampleFigures.HOSTILE;

    private static Page page() {
        List<Block> blocks = new ArrayList<>(List.of(
                Paragraph.of(BAD),
                Paragraph.warning(BAD),
                new Bullets(List.of(BAD, "b")),
                new Facts(List.of(new Facts.Fact(BAD, BAD))),
                Table.of(
                                BAD,
                                List.of(List.of(BAD, "1\n2"), List.of("sum", "3")),
                                List.of(
                                        Column.<List<String>>words(BAD, row -> row.get(0)),
                                        Column.<List<String>>number("n, dB", row -> row.get(1))))
                        .summing(row -> row.get(0).equals("sum")),
                new Subheading(BAD),
                new CautionBlock(Cautions.RAISING)));
        SampleFigures.all().forEach(figure -> blocks.add(new Drawing(figure, BAD)));
        Section section = new Section(BAD, blocks);
        return new Page(BAD, BAD, BAD, List.of(Paragraph.answer(BAD)), List.of(section, section, section), BAD);
    }

    private static final String HTML = HtmlPage.text(page());

    @Test
    void noWordFromOutsideBecomesMarkup() {
        assertFalse(HTML.contains("<script"));
        assertFalse(HTML.contains("</script"));
        assertTrue(HTML.contains("&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; &#39;Tom&#39;"));
    }

    @Test
    void everyElementIsClosedInOrder() {
        List<String> open = new ArrayList<>();
        Matcher tag = Pattern.compile("<(/?)([a-z][a-z0-9]*)((?:[^>\"]|\"[^\"]*\")*?)(/?)>", Pattern.CASE_INSENSITIVE)
                .matcher(HTML);
        while (tag.find()) {
            String name = tag.group(2);
            if (List.of("meta", "br").contains(name) || !tag.group(4).isEmpty()) continue;
            if (tag.group(1).isEmpty()) open.add(name);
            else assertEquals(open.remove(open.size() - 1), name, "at " + tag.start());
        }
        assertEquals(List.of(), open);
    }

    @Test
    void nothingIsFetchedFromAnywhere() {
        Matcher link = Pattern.compile("(?:href|src|action|url)\\s*[=(]\\s*[\"']?([^\"')>\\s]{1,40})")
                .matcher(HTML);
        while (link.find()) {
            String target = link.group(1);
            assertTrue(target.startsWith("#") || target.startsWith("data:image/png;base64,"), target);
        }
        assertTrue(HTML.contains("default-src &#39;none&#39;"), "content policy");
        assertFalse(HTML.contains("@import") || HTML.contains("<link"));
    }

    @Test
    void identifiersAreUniqueAcrossFigures() {
        List<String> seen = new ArrayList<>();
        Matcher id = Pattern.compile(" id=\"([^\"]+)\"").matcher(HTML);
        while (id.find()) {
            assertFalse(seen.contains(id.group(1)), id.group(1));
            seen.add(id.group(1));
        }
        assertTrue(seen.size() > 30);
    }

    @Test
    void theAnswerComesBeforeEverythingElse() {
        assertTrue(HTML.indexOf("class=\"answer\"") < HTML.indexOf("<nav"));
        assertTrue(HTML.indexOf("<nav") < HTML.indexOf("<h2>"));
    }

    @Test
    void tablesAreTablesForThoseWhoHearThem() {
        assertTrue(HTML.contains("<caption>"));
        assertTrue(HTML.contains("scope=\"col\""));
        assertTrue(HTML.contains("scope=\"row\""));
        assertTrue(HTML.contains("1<br>2"));
        assertTrue(HTML.contains("lang=\"en\""));
    }

    @Test
    void noSizeInTheStyleSheetIsBelowTwelvePixels() { // 1 rem is 16 px, 1 pt is 4/3 px
        Matcher size =
                Pattern.compile("font(?:-size)?:\\s*([0-9.]+)(rem|pt|px)").matcher(PageStyle.SHEET);
        int found = 0;
        while (size.find()) {
            double px = Double.parseDouble(size.group(1))
                    * (size.group(2).equals("rem") ? 16 : size.group(2).equals("pt") ? 4 / 3.0 : 1);
            assertTrue(px >= 12, size.group());
            found++;
        }
        assertTrue(found > 10);
    }

    private static Page indexed() {
        Section reach = Section.of("Reach", Paragraph.of("far")).answering("How far?");
        Section ledger = Section.of("Ledger", Paragraph.of("decibels"))
                .answering("Where do they go?")
                .asDetail();
        return new Page("k", "t", "q", List.of(), List.of(ledger, reach, Section.of("Cautions")), "");
    }

    /** A reader looks for a question, on a screen by a link and on paper by the mark before the heading. */
    @Test
    void theIndexAsksAndTheHeadingsCarryItsMarks() {
        String html = HtmlPage.text(indexed()).replace("\n", "");
        assertTrue(html.contains("<a href=\"#s1\"><span class=\"mark\">1</span>How far?</a>"), html);
        assertTrue(html.contains("<a href=\"#s2\"><span class=\"mark\">2</span>Cautions</a>"), html);
        assertTrue(html.contains("<a href=\"#sA\"><span class=\"mark\">A</span>Where do they go?</a>"), html);
        assertTrue(html.contains("<section id=\"s1\"><h2><span class=\"mark\">1</span>Reach</h2>"), html);
    }

    /** Folded on the screen behind what answers, and opened by the style sheet on paper, where nobody can click. */
    @Test
    void detailsAreFoldedAndComeLast() {
        String html = HtmlPage.text(indexed()).replace("\n", "");
        assertTrue(
                html.contains("<details><summary><h2><span class=\"mark\">A</span>Ledger</h2></summary>"
                        + "<div id=\"sA\"><p>decibels</p></div></details>"),
                html);
        assertTrue(html.indexOf(">Cautions</h2>") < html.indexOf("<details>"), html);
        String print = PageStyle.SHEET.substring(PageStyle.SHEET.indexOf("@media print"));
        assertTrue(print.contains("details::details-content { content-visibility: visible;"), print);
        assertTrue(print.contains("h2, h3, caption, thead { break-after: avoid; }"), print);
        assertTrue(print.contains("figure, tr, .warning, dl > div { break-inside: avoid; }"), print);
    }

    @Test
    void aFigureOfATableIsKnownAsOne() {
        Figure chart = SampleFigures.all().stream()
                .filter(each -> !each.holdsPicture())
                .findFirst()
                .orElseThrow();
        Drawing drawing = new Drawing(chart, "").ofTable();
        Page page = new Page("k", "t", "q", List.of(), List.of(Section.of("h", drawing)), "");
        assertTrue(HtmlPage.text(page).contains("<figure class=\"of-table\">"));
    }

    @Test
    void aSpanOfATableMayHaveItsSecondNumberBelow() {
        Table<String> table = Table.of(
                "",
                List.of("x"),
                List.of(
                        Column.words("who", x -> "Division A"),
                        Column.words("place", x -> "12T 434193 4515738"),
                        Column.number("odds", x -> "under 1 % to over 99 %")));
        String html = HtmlPage.text(new Page("k", "t", "q", List.of(table), List.of(), ""));
        assertTrue(
                html.contains("<span class=\"whole\">under 1 %</span> <span class=\"whole\">to over 99 %</span>"),
                html);
        assertTrue(html.contains("class=\"short\">Division A</th>"), html);
    }

    @Test
    void aPlaceAndAPerCentSignKeepTheirLineAndTheirPlainBlanks() {
        Page page = new Page(
                "k", "t", "q", List.of(Paragraph.of("At 12T VL 34624 16844 & up, under 1 % of it.")), List.of(), "");
        String html = HtmlPage.text(page);
        assertTrue(html.contains("At <span class=\"whole\">12T VL 34624 16844</span> &amp; up"), html);
        assertTrue(html.contains("<span class=\"whole\">under 1 %</span> of it."), html);
        assertTrue(PageStyle.SHEET.contains(".whole { white-space: nowrap; }"));
    }
}
