package handreach.report.file;

import handreach.report.draw.Figure;
import handreach.report.draw.PdfFaces;
import handreach.report.draw.PdfPen;
import handreach.report.draw.PdfTags;
import handreach.report.draw.Typeface;
import java.awt.geom.AffineTransform;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Figures as the pages of a PDF, each page as large as its figure, with the typeface inside. */
public final class PdfFile {
    private static final double POINTS_PER_PX = 0.75;

    private PdfFile() {}

    /** Content to be handed to {@link AnswerFile#write}; the same input gives the same file. */
    public static AnswerFile.Content content(String title, List<Figure> pages, Instant made) {
        return out -> write(title, pages, made, out);
    }

    private static void write(String title, List<Figure> pages, Instant made, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDDocumentInformation about = new PDDocumentInformation();
            about.setTitle(Typeface.clean(title));
            about.setCreator("Handreach");
            about.setCreationDate(GregorianCalendar.from(ZonedDateTime.ofInstant(made, ZoneOffset.UTC)));
            document.setDocumentInformation(about);
            document.setDocumentId(made.getEpochSecond());
            document.getDocumentCatalog().setLanguage("en");
            PdfFaces faces = PdfFaces.in(document);
            PdfTags tags = new PdfTags(document);
            for (Figure figure : pages) page(document, faces, tags, figure);
            tags.end();
            ByteArrayOutputStream whole = new ByteArrayOutputStream();
            document.save(whole);
            whole.writeTo(out);
        }
    }

    private static void page(PDDocument document, PdfFaces faces, PdfTags tags, Figure figure) throws IOException {
        float width = (float) (figure.widthPx() * POINTS_PER_PX);
        float height = (float) (figure.heightPx() * POINTS_PER_PX);
        PDPage page = new PDPage(new PDRectangle(width, height));
        document.addPage(page);
        tags.turnTo(page);
        AffineTransform toPage = new AffineTransform(POINTS_PER_PX, 0, 0, -POINTS_PER_PX, 0, height);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
            new PdfPen(document, out, faces, tags, toPage).draw(figure);
        }
    }
}
