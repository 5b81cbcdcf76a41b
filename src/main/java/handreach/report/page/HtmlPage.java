package handreach.report.page;

import java.util.List;

/**
 * A page as one HTML file that needs nothing else: style inside, figures inside, no script, no request to anywhere, which a
 * content policy in its head enforces. It prints on A4 and Letter.
 */
public final class HtmlPage {
    private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

    private static final String APPENDIX = "Details, for those who want to look behind the answers";

    private HtmlPage() {}

    /** The text of the file. */
    public static String text(Page page) {
        Html html = new Html();
        html.doctype().open("html", "lang", "en").open("head").open("meta", "charset", "utf-8");
        html.open("meta", "http-equiv", "Content-Security-Policy", "content", POLICY);
        html.open("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        html.element("title", page.title() + " – " + page.kind())
                .style(PageStyle.SHEET)
                .close("head");
        html.open("body")
                .open("header")
                .element("p", page.kind(), "class", "kind")
                .element("h1", page.title());
        html.element("p", page.question(), "class", "question").close("header");
        html.open("main").open("section", "class", "first");
        for (Block block : page.answer()) block.appendTo(html);
        html.close("section");
        List<Section> sections =
                page.sections().stream().filter(section -> !section.isDetail()).toList();
        List<Section> details =
                page.sections().stream().filter(Section::isDetail).toList();
        index(html, sections, details);
        for (int i = 0; i < sections.size(); i++) section(html, sections.get(i), number(i));
        if (!details.isEmpty()) html.element("p", APPENDIX, "class", "appendix");
        for (int i = 0; i < details.size(); i++) detail(html, details.get(i), letter(i));
        html.close("main").element("footer", page.imprint()).close("body").close("html");
        return html.end();
    }

    private static String number(int section) {
        return String.valueOf(section + 1);
    }

    /** Details are counted in letters: A to Z, then AA. */
    private static String letter(int detail) {
        String last = String.valueOf((char) ('A' + detail % 26));
        return detail < 26 ? last : letter(detail / 26 - 1) + last;
    }

    private static String anchor(String mark) {
        return "s" + mark;
    }

    private static void section(Html html, Section section, String mark) {
        html.open("section", "id", anchor(mark)).open("h2");
        heading(html, mark, section.heading());
        html.close("h2");
        for (Block block : section.blocks()) block.appendTo(html);
        html.close("section");
    }

    /** Folded on a screen; the style sheet opens it on paper. */
    private static void detail(Html html, Section section, String mark) {
        html.open("details").open("summary").open("h2");
        heading(html, mark, section.heading());
        // the anchor lies inside, since browsers open what is folded round the target of a link
        html.close("h2").close("summary").open("div", "id", anchor(mark));
        for (Block block : section.blocks()) block.appendTo(html);
        html.close("div").close("details");
    }

    private static void heading(Html html, String mark, String words) {
        html.element("span", mark, "class", "mark").text(words);
    }

    /** What is asked, and where it is answered; on paper by the marks of the headings. */
    private static void index(Html html, List<Section> sections, List<Section> details) {
        if (sections.size() + details.size() < 3) return;
        html.open("nav", "aria-label", "Contents").open("ul");
        for (int i = 0; i < sections.size(); i++) entry(html, sections.get(i), number(i));
        html.close("ul");
        if (!details.isEmpty()) {
            html.element("p", APPENDIX).open("ul");
            for (int i = 0; i < details.size(); i++) entry(html, details.get(i), letter(i));
            html.close("ul");
        }
        html.close("nav");
    }

    private static void entry(Html html, Section section, String mark) {
        html.open("li").open("a", "href", "#" + anchor(mark));
        heading(html, mark, section.question().isEmpty() ? section.heading() : section.question());
        html.close("a").close("li");
    }
}
