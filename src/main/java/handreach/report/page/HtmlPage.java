package handreach.report.page;

import java.util.List;

/**
 * A page as one HTML file that needs nothing else: style inside, figures inside, no script, no request to anywhere, which a
 * content policy in its head enforces. It prints on A4 and Letter.
 */
public final class HtmlPage {
    private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

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
        contents(html, page.sections());
        for (int i = 0; i < page.sections().size(); i++) {
            Section section = page.sections().get(i);
            html.open("section", "id", anchor(i)).element("h2", section.heading());
            for (Block block : section.blocks()) block.appendTo(html);
            html.close("section");
        }
        html.close("main").element("footer", page.imprint()).close("body").close("html");
        return html.end();
    }

    private static String anchor(int section) {
        return "s" + (section + 1);
    }

    private static void contents(Html html, List<Section> sections) {
        if (sections.size() < 3) return;
        html.open("nav", "aria-label", "Contents").open("ol");
        for (int i = 0; i < sections.size(); i++)
            html.open("li")
                    .element("a", sections.get(i).heading(), "href", "#" + anchor(i))
                    .close("li");
        html.close("ol").close("nav");
    }
}
