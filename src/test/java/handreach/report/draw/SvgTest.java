package handreach.report.draw;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.report.SampleFigures;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class SvgTest {
    private static Document parsed(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    }

    @TestFactory
    Stream<DynamicTest> everyFigureIsWellFormedWhateverItsWords() {
        return SampleFigures.all().stream()
                .map(figure -> DynamicTest.dynamicTest(figure.getClass().getSimpleName(), () -> {
                    String xml = SampleFigures.svg(figure);
                    Document document = parsed(xml);
                    assertEquals(0, document.getElementsByTagName("script").getLength());
                    NodeList all = document.getElementsByTagName("*");
                    for (int i = 0; i < all.getLength(); i++) {
                        Element element = (Element) all.item(i);
                        for (int a = 0; a < element.getAttributes().getLength(); a++)
                            assertFalse(element.getAttributes()
                                    .item(a)
                                    .getNodeName()
                                    .startsWith("on"));
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> noWordIsBelowTwelvePixels() {
        return SampleFigures.all().stream()
                .map(figure -> DynamicTest.dynamicTest(figure.getClass().getSimpleName(), () -> {
                    NodeList words = parsed(SampleFigures.svg(figure)).getElementsByTagName("text");
                    assertTrue(words.getLength() > 3);
                    for (int i = 0; i < words.getLength(); i++)
                        assertTrue(Double.parseDouble(((Element) words.item(i)).getAttribute("font-size")) >= 12);
                }));
    }

    @TestFactory
    Stream<DynamicTest> everyFigureTellsThoseWhoCannotSeeIt() {
        return SampleFigures.all().stream()
                .map(figure -> DynamicTest.dynamicTest(figure.getClass().getSimpleName(), () -> {
                    Document document = parsed(SampleFigures.svg(figure));
                    Element root = document.getDocumentElement();
                    assertEquals("img", root.getAttribute("role"));
                    assertEquals("f1-t f1-d", root.getAttribute("aria-labelledby"));
                    String description =
                            document.getElementsByTagName("desc").item(0).getTextContent();
                    assertTrue(description.length() > 15, description);
                }));
    }

    @TestFactory
    Stream<DynamicTest> nothingIsFetchedAndIdentifiersAreUnique() {
        return SampleFigures.all().stream()
                .map(figure -> DynamicTest.dynamicTest(figure.getClass().getSimpleName(), () -> {
                    String xml = SampleFigures.svg(figure);
                    Matcher link = Pattern.compile("(?:href|src)=\"([^\"]{0,30})|url\\(([^)]*)\\)")
                            .matcher(xml);
                    while (link.find()) {
                        String target = link.group(1) != null ? link.group(1) : link.group(2);
                        assertTrue(target.startsWith("data:image/png;base64,") || target.startsWith("#f1-"), target);
                    }
                    Set<String> seen = new HashSet<>();
                    Matcher id = Pattern.compile(" id=\"([^\"]+)\"").matcher(xml);
                    while (id.find()) assertTrue(seen.add(id.group(1)), id.group(1));
                }));
    }

    @TestFactory
    Stream<DynamicTest>
            everyWordStandsInsideItsFigure() { // law: no label is cut off, by the width of the typeface at hand
        return Stream.of(SampleFigures.rose(), SampleFigures.pattern(), SampleFigures.swr())
                .map(figure -> DynamicTest.dynamicTest(figure.getClass().getSimpleName(), () -> {
                    NodeList words = parsed(Svg.file(figure)).getElementsByTagName("text");
                    for (int i = 0; i < words.getLength(); i++) {
                        Element word = (Element) words.item(i);
                        if (word.getTextContent().contains("Tom")) continue;
                        double x = Double.parseDouble(word.getAttribute("x"));
                        double width = Typeface.of(
                                        !word.getAttribute("font-weight").isEmpty())
                                .widthPx(word.getTextContent(), Double.parseDouble(word.getAttribute("font-size")));
                        if (word.hasAttribute("transform")) width = 0;
                        double left = switch (word.getAttribute("text-anchor")) {
                            case "middle" -> x - width / 2;
                            case "end" -> x - width;
                            default -> x;
                        };
                        assertTrue(left >= -0.5 && left + width <= figure.widthPx() + 0.5, word.getTextContent());
                    }
                }));
    }

    @Test
    void numbersAreShortAndFinite() {
        assertEquals("3", Svg.n(3));
        assertEquals("-0.5", Svg.n(-0.5));
        assertEquals("12.35", Svg.n(12.3456));
        assertEquals("0.07", Svg.n(0.0654));
        assertEquals("0", Svg.n(-0.001));
        assertThrows(IllegalArgumentException.class, () -> Svg.n(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Svg.n(Double.POSITIVE_INFINITY));
    }

    @Test
    void anIdentifierFromOutsideIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Svg.text(SampleFigures.rose(), "a\"><script"));
    }

    @Test
    void smallLetteringCannotBeMade() {
        assertThrows(IllegalArgumentException.class, () -> TextStyle.plain(11.9));
        assertDoesNotThrow(() -> TextStyle.plain(12));
    }
}
