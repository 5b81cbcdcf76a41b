package handreach.report.file;

import handreach.input.Unseen;
import handreach.report.draw.Markup;
import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** XML element by element, every text escaped by the library, line breaks between elements. */
final class XmlText {
    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter out;

    XmlText() {
        try {
            out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            out.writeStartDocument("UTF-8", "1.0");
            out.writeCharacters("\n");
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Opens an element with attributes given as name, value, name, value …. */
    XmlText open(String name, String... attributes) {
        try {
            out.writeStartElement(name);
            for (int i = 0; i + 1 < attributes.length; i += 2) {
                if (attributes[i].equals("xmlns")) out.writeDefaultNamespace(attributes[i + 1]);
                else out.writeAttribute(attributes[i], legal(attributes[i + 1]));
            }
            return this;
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    XmlText close() {
        try {
            out.writeEndElement();
            out.writeCharacters("\n");
            return this;
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    XmlText element(String name, String content) {
        try {
            out.writeStartElement(name);
            out.writeCharacters(legal(content));
            out.writeEndElement();
            out.writeCharacters("\n");
            return this;
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    String end() {
        try {
            out.writeEndDocument();
            out.close();
            return text.toString();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** One line; the library escapes but lets through what XML 1.0 forbids, and what turns the reading direction. */
    private static String legal(String words) {
        StringBuilder legal = new StringBuilder();
        Unseen.oneLine(words).codePoints().forEach(c -> legal.appendCodePoint(Markup.isAllowed(c) ? c : 0xFFFD));
        return legal.toString();
    }
}
