package handreach.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.Hatch;
import handreach.cartography.Hillshade;
import handreach.cartography.LoadoutMark;
import handreach.cartography.MapFrame;
import handreach.cartography.OddsRamp;
import handreach.cartography.PaperGround;
import handreach.cartography.Srgb;
import handreach.report.SampleFigures;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;

class PictureTest {
    private static final MapFrame FRAME = new MapFrame(SampleFigures.MIDDLE, 20, 60, 40);
    private static final Hillshade SHADE = Hillshade.fromManySides(SampleFigures.HILLS, FRAME, 1);

    private static int decodedGrey(BufferedImage image, int x, int y) {
        return image.getRaster().getSample(x, y, 0);
    }

    @Test
    void aReliefIsGreyAndItsPngHasOneChannelWithTheSameLevels() throws Exception {
        Picture relief = Picture.relief(SHADE);
        assertTrue(relief.isGrey());
        BufferedImage back = ImageIO.read(new ByteArrayInputStream(relief.png()));
        assertEquals(1, back.getRaster().getNumBands());
        for (int y = 0; y < 40; y += 3)
            for (int x = 0; x < 60; x += 3) {
                assertEquals(OddsRamp.lightened(SHADE.shade(x, y)), decodedGrey(back, x, y));
                assertEquals(relief.rgb(x, y) & 0xFF, decodedGrey(back, x, y));
            }
    }

    @Test
    void oddsTintTheirPlaceAndNoOther() {
        double middle = FRAME.centre().longitudeDeg();
        Picture picture = Picture.odds(SHADE, (lat, lon) -> lon < middle ? 0.95 : -1);
        assertFalse(picture.isGrey());
        assertEquals(OddsRamp.overShade(0.95, SHADE.shade(5, 20)), picture.rgb(5, 20));
        int bare = OddsRamp.lightened(SHADE.shade(55, 20));
        // by hand: outside the answer the relief is mixed with 55 % of white
        assertEquals(Math.round(bare + 0.55 * (255 - bare)), picture.rgb(55, 20) & 0xFF);
        assertEquals(Srgb.grey(bare), Picture.odds(SHADE, (lat, lon) -> 0.05).rgb(55, 20));
    }

    @Test
    void groundWithoutHeightsIsHatchedNotGrey() {
        PaperGround half = new PaperGround((lat, lon) -> lon < 8.1 ? Double.NaN : 500, 20);
        Picture picture = Picture.relief(Hillshade.fromManySides(half, FRAME, 1));
        int lines = 0;
        for (int x = 0; x < 16; x++) if (picture.rgb(x, 5) != 0xFFFFFF) lines++;
        assertEquals(2, lines);
    }

    @Test
    void leastLoadoutsDifferWithoutColour() { // law: two marks of one colour still differ by their pattern
        LoadoutMark full = new LoadoutMark("A", 0x0072B2, List.of(), Hatch.NONE);
        LoadoutMark lined = new LoadoutMark("B", 0x0072B2, List.of(), Hatch.RISING);
        double middle = FRAME.centre().longitudeDeg();
        Picture picture = Picture.leastLoadout(SHADE, (lat, lon) -> lon < middle ? 0 : 1, List.of(full, lined));
        double[] spread = new double[2];
        for (int half = 0; half < 2; half++) {
            double least = 1;
            double most = 0;
            for (int y = 0; y < 40; y++)
                for (int x = 30 * half; x < 30 * half + 30; x++) {
                    // the light of the relief divided out, what stays is the pattern
                    double paper = OddsRamp.lightened(SHADE.shade(x, y)) / 255.0;
                    double ink = (picture.rgb(x, y) >> 16 & 0xFF) / 255.0 / paper;
                    least = Math.min(least, ink);
                    most = Math.max(most, ink);
                }
            spread[half] = most - least;
        }
        assertEquals(0, spread[0], 0.02);
        assertEquals(0.55, spread[1], 0.03); // by hand: red channel 1 − tint, tints 0.3 and 0.85
    }

    @Test
    void aPictureInAPdfKeepsEveryPixel() throws Exception { // oracle: the library's own decoder
        double middle = FRAME.centre().longitudeDeg();
        for (Picture picture :
                List.of(Picture.relief(SHADE), Picture.odds(SHADE, (lat, lon) -> lon < middle ? 0.6 : -1)))
            try (PDDocument document = new PDDocument()) {
                BufferedImage back = PdfPicture.of(document, picture).getImage();
                for (int y = 0; y < 40; y++)
                    for (int x = 0; x < 60; x++) {
                        int found =
                                picture.isGrey() ? Srgb.grey(decodedGrey(back, x, y)) : back.getRGB(x, y) & 0xFFFFFF;
                        assertEquals(picture.rgb(x, y), found, x + ", " + y);
                    }
            }
    }
}
