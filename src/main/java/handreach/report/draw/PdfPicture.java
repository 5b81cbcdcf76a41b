package handreach.report.draw;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.color.PDColorSpace;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceGray;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/**
 * A picture inside a PDF: grey ones in one channel, each row as differences from the pixel to the left. The library's own way
 * turns a grey relief into three channels, or changes its brightness.
 */
final class PdfPicture {
    /** Differences from the left neighbour: PNG filter 1, which PDF calls predictor 11 (ISO 32000-1, 7.4.4.4). */
    private static final int LEFT_PREDICTOR = 11;

    /** More effort makes relief hardly smaller and takes several times as long. */
    private static final int EFFORT = 3;

    private PdfPicture() {}

    static PDImageXObject of(PDDocument document, Picture picture) throws IOException {
        int channels = picture.isGrey() ? 1 : 3;
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        Deflater deflater = new Deflater(EFFORT);
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed, deflater, 1 << 16)) {
            for (int y = 0; y < picture.heightPx(); y++) out.write(row(picture, y, channels));
        } finally {
            deflater.end();
        }
        PDColorSpace colours = channels == 1 ? PDDeviceGray.INSTANCE : PDDeviceRGB.INSTANCE;
        PDImageXObject image = new PDImageXObject(
                document,
                new ByteArrayInputStream(packed.toByteArray()),
                COSName.FLATE_DECODE,
                picture.widthPx(),
                picture.heightPx(),
                8,
                colours);
        COSDictionary how = new COSDictionary();
        how.setInt(COSName.PREDICTOR, LEFT_PREDICTOR);
        how.setInt(COSName.COLORS, channels);
        how.setInt(COSName.BITS_PER_COMPONENT, 8);
        how.setInt(COSName.COLUMNS, picture.widthPx());
        image.getCOSObject().setItem(COSName.DECODE_PARMS, how);
        return image;
    }

    private static byte[] row(Picture picture, int y, int channels) {
        byte[] row = new byte[1 + picture.widthPx() * channels];
        row[0] = 1;
        int left = 0;
        for (int x = 0; x < picture.widthPx(); x++) {
            int rgb = picture.rgb(x, y);
            for (int c = 0; c < channels; c++) {
                int shift = 8 * (channels - 1 - c);
                row[1 + x * channels + c] = (byte) ((rgb >> shift) - (left >> shift));
            }
            left = rgb;
        }
        return row;
    }
}
