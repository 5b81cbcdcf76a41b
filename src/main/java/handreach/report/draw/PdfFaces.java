package handreach.report.draw;

import java.io.IOException;
import java.io.InputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The typeface embedded in one document; only the letters used go into the file. */
public record PdfFaces(PDFont book, PDFont bold) {
    public static PdfFaces in(PDDocument document) throws IOException {
        try (InputStream book = Typeface.of(false).open();
                InputStream bold = Typeface.of(true).open()) {
            return new PdfFaces(PDType0Font.load(document, book, true), PDType0Font.load(document, bold, true));
        }
    }

    PDFont of(boolean isBold) {
        return isBold ? bold : book;
    }
}
