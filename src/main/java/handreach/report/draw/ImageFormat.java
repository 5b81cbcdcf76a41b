package handreach.report.draw;

import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;

/** Writers of image formats. */
final class ImageFormat {
    private ImageFormat() {}

    /** The JDK's own writer: other libraries bring theirs, which differ in what tags they keep. */
    static ImageWriter writer(String format) {
        for (Iterator<ImageWriter> i = ImageIO.getImageWritersByFormatName(format); i.hasNext(); ) {
            ImageWriter writer = i.next();
            if ("java.desktop".equals(writer.getClass().getModule().getName())) return writer;
        }
        throw new IllegalStateException("this Java runtime has no " + format + " writer");
    }
}
