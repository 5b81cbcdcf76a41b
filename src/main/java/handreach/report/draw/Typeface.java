package handreach.report.draw;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.regex.Pattern;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The typeface that travels with the program, so that text has the same width and shape on every machine, with or without
 * installed fonts: DejaVu Sans Condensed, Book and Bold.
 */
public final class Typeface {
    private static final String FOLDER = "/handreach/report/fonts/";
    private static final int MISSING = '?';
    /** Code points whose widths are looked up once. */
    private static final int LATIN = 0x250;

    private static final Pattern BLANKS = Pattern.compile("[\\s\\u0085\\u2028\\u2029]+");
    private static final Pattern UNPRINTED = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Cs}\\p{Co}\\p{Cn}]");

    private final String resource;
    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final double unitsPerEm;
    private final int[] advances = new int[LATIN];

    private Typeface(String resource) {
        this.resource = FOLDER + resource;
        try (InputStream in = open()) {
            font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
            glyphs = font.getUnicodeCmapLookup();
            unitsPerEm = font.getUnitsPerEm();
            for (int c = 0; c < advances.length; c++) advances[c] = lookedUp(c);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Loaded at first use: tables and JSON never need it. */
    private static final class Loaded {
        static final Typeface BOOK = new Typeface("DejaVuSansCondensed.ttf");
        static final Typeface BOLD = new Typeface("DejaVuSansCondensed-Bold.ttf");
    }

    public static Typeface of(boolean isBold) {
        return isBold ? Loaded.BOLD : Loaded.BOOK;
    }

    /** The font file. */
    InputStream open() {
        InputStream in = Typeface.class.getResourceAsStream(resource);
        if (in == null) throw new IllegalStateException(resource + " is missing from the program");
        return in;
    }

    /** Width of a line of text, px. */
    public double widthPx(String text, double sizePx) {
        double units = 0;
        if (isPlain(text)) {
            for (int i = 0; i < text.length(); i++) units += advances[text.charAt(i)];
            return units / unitsPerEm * sizePx;
        }
        String clean = clean(text);
        for (int i = 0; i < clean.length(); i = clean.offsetByCodePoints(i, 1)) units += advance(clean.codePointAt(i));
        return units / unitsPerEm * sizePx;
    }

    private int advance(int codePoint) {
        return codePoint < advances.length ? advances[codePoint] : lookedUp(codePoint);
    }

    private synchronized int lookedUp(int codePoint) {
        try {
            int glyph = glyphs.getGlyphId(codePoint);
            return font.getAdvanceWidth(glyph == 0 ? glyphs.getGlyphId(MISSING) : glyph);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The text with what this face cannot print replaced. */
    synchronized String printable(String text) {
        StringBuilder out = new StringBuilder();
        clean(text).codePoints().forEach(c -> out.appendCodePoint(glyphs.getGlyphId(c) == 0 ? MISSING : c));
        return out.toString();
    }

    /** Text on one line, without control and format characters. */
    public static String clean(String text) {
        if (isPlain(text)) return text;
        return UNPRINTED.matcher(BLANKS.matcher(text).replaceAll(" ")).replaceAll("");
    }

    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c > '~' || c == ' ' && i > 0 && text.charAt(i - 1) == ' ') return false;
        }
        return true;
    }

    /** Outline of a line of text with its base line start at the origin, y downwards. */
    synchronized Path2D outline(String text, double sizePx) {
        try {
            Path2D all = new Path2D.Double(Path2D.WIND_NON_ZERO);
            double scale = sizePx / unitsPerEm;
            double x = 0;
            for (int c : printable(text).codePoints().toArray()) {
                int glyph = glyphs.getGlyphId(c);
                GeneralPath path = font.getGlyph().getGlyph(glyph) == null
                        ? new GeneralPath()
                        : font.getGlyph().getGlyph(glyph).getPath();
                all.append(path.getPathIterator(new AffineTransform(scale, 0, 0, -scale, x, 0)), false);
                x += font.getAdvanceWidth(glyph) * scale;
            }
            return all;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
