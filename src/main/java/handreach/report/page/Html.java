package handreach.report.page;

import handreach.geodesy.PlaceForm;
import handreach.report.draw.Figure;
import handreach.report.draw.Markup;
import handreach.report.draw.Svg;

/** HTML element by element. Text and attribute values are escaped here and nowhere else. */
final class Html {
    private final StringBuilder out = new StringBuilder();
    private int figures;

    Html() {}

    Html open(String tag, String... attributes) {
        out.append('<').append(tag);
        for (int i = 0; i + 1 < attributes.length; i += 2)
            out.append(' ')
                    .append(attributes[i])
                    .append("=\"")
                    .append(Markup.escaped(attributes[i + 1]))
                    .append('"');
        out.append('>');
        return this;
    }

    Html close(String tag) {
        out.append("</").append(tag).append(">\n");
        return this;
    }

    Html text(String words) {
        String unbroken = Unbroken.words(words);
        if (unbroken.equals(words)) out.append(Markup.escaped(words));
        else for (String word : unbroken.split("(?<= )|(?= )")) word(word);
        return this;
    }

    /** Words that keep their line by style. */
    Html whole(String words) {
        out.append("<span class=\"whole\">")
                .append(Markup.escaped(words.strip()))
                .append("</span>");
        if (words.endsWith(" ")) out.append(' ');
        return this;
    }

    /** What holds no-break blanks keeps its line by style, so that what is copied from the page has plain blanks. */
    private void word(String word) {
        boolean isWhole = word.indexOf(PlaceForm.NO_BREAK) >= 0;
        if (isWhole) open("span", "class", "whole");
        out.append(Markup.escaped(Unbroken.plain(word)));
        if (isWhole) out.append("</span>");
    }

    Html element(String tag, String words, String... attributes) {
        return open(tag, attributes).text(words).close(tag);
    }

    Html figure(Figure figure) {
        figures++;
        out.append(Svg.text(figure, "f" + figures));
        return this;
    }

    /** The style sheet of this program: the only text that is not escaped, and never the user's. */
    Html style(String sheet) {
        out.append("<style>\n").append(sheet).append("</style>\n");
        return this;
    }

    Html doctype() {
        out.append("<!DOCTYPE html>\n");
        return this;
    }

    String end() {
        return out.toString();
    }
}
