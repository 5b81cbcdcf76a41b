package handreach.report;

import handreach.reach.CellGrid;
import java.awt.image.BandedSampleModel;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferFloat;
import java.awt.image.Raster;
import java.awt.image.SampleModel;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import javax.imageio.IIOImage;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.GeoTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;
import javax.imageio.plugins.tiff.TIFFTagSet;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A grid of numbers as GeoTIFF: 32-bit floating point, EPSG:4326, pixel-is-area, deflate.
 *
 * <p>Written by the image library of the JDK, which knows the tags: the geographic library would cost a second at first use and
 * is needed only to read foreign projections. Source of keys and tags: OGC GeoTIFF 1.1 (19-008r4); the no-data tag 42113 is a
 * de-facto tag of general raster tools.
 */
public final class GeoTiff {
    private static final int TILE_PX = 256;
    /** Deflate at its quickest level: numbers of this kind gain a twentieth from a slower one, and cost three times as much. */
    private static final float QUICK = 0;
    private static final int NO_DATA_TAG = 42113;
    private static final int METADATA_TAG = 42112;
    private static final int PREDICTOR_TAG = 317;
    private static final int SAMPLE_FORMAT_TAG = 339;

    private static final TIFFTagSet OWN_TAGS =
            new TIFFTagSet(List.of(ascii("no data", NO_DATA_TAG), ascii("layer", METADATA_TAG))) {};

    private GeoTiff() {}

    /** Content to be handed to {@link WholeFile#write}. */
    public static WholeFile.Content content(Georaster raster) {
        return out -> write(raster, out);
    }

    private static void write(Georaster raster, OutputStream out) throws IOException {
        ImageWriter writer = ImageFormat.writer("TIFF");
        try (ImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
            BufferedImage image = image(raster);
            ImageWriteParam wish = writer.getDefaultWriteParam();
            wish.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            wish.setCompressionType("Deflate");
            wish.setCompressionQuality(QUICK);
            wish.setTilingMode(ImageWriteParam.MODE_EXPLICIT);
            wish.setTiling(TILE_PX, TILE_PX, 0, 0);
            IIOMetadata start = writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), wish);
            writer.setOutput(stream);
            writer.write(null, new IIOImage(image, null, georeferenced(start, raster)), wish);
        } finally {
            writer.dispose();
        }
    }

    private static BufferedImage image(Georaster raster) {
        int width = raster.grid().columns();
        int height = raster.grid().rows();
        float[] values = new float[width * height];
        for (int cell = 0; cell < values.length; cell++) values[cell] = raster.written(cell);
        SampleModel model = new BandedSampleModel(DataBuffer.TYPE_FLOAT, width, height, 1);
        WritableRaster pixels = Raster.createWritableRaster(model, new DataBufferFloat(values, values.length), null);
        ColorModel grey = new ComponentColorModel(
                java.awt.color.ColorSpace.getInstance(java.awt.color.ColorSpace.CS_GRAY),
                false,
                false,
                java.awt.Transparency.OPAQUE,
                DataBuffer.TYPE_FLOAT);
        return new BufferedImage(grey, pixels, false, null);
    }

    private static IIOMetadata georeferenced(IIOMetadata start, Georaster raster) throws IOException {
        CellGrid grid = raster.grid();
        TIFFDirectory directory = TIFFDirectory.createFromMetadata(start);
        GeoTIFFTagSet geo = GeoTIFFTagSet.getInstance();
        directory.addTagSet(geo);
        directory.addTagSet(OWN_TAGS);
        add(directory, geo.getTag(GeoTIFFTagSet.TAG_MODEL_PIXEL_SCALE), TIFFTag.TIFF_DOUBLE, new double[] {
            grid.longitudeStepDeg(), grid.latitudeStepDeg(), 0
        });
        double west = grid.westDeg() < -180 ? grid.westDeg() + 360 : grid.westDeg();
        add(directory, geo.getTag(GeoTIFFTagSet.TAG_MODEL_TIE_POINT), TIFFTag.TIFF_DOUBLE, new double[] {
            0, 0, 0, west, grid.northDeg(), 0
        });
        // version 1.1.0, three keys: model type geographic (2), raster pixel-is-area (1), geodetic system EPSG:4326
        add(directory, geo.getTag(GeoTIFFTagSet.TAG_GEO_KEY_DIRECTORY), TIFFTag.TIFF_SHORT, new char[] {
            1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326
        });
        String none = String.format(Locale.ROOT, "%.0f", Georaster.NO_DATA);
        add(directory, OWN_TAGS.getTag(NO_DATA_TAG), TIFFTag.TIFF_ASCII, new String[] {none});
        String words = "<GDALMetadata><Item name=\"DESCRIPTION\" sample=\"0\" role=\"description\">"
                + Markup.escaped(raster.layer()) + "</Item></GDALMetadata>";
        add(directory, OWN_TAGS.getTag(METADATA_TAG), TIFFTag.TIFF_ASCII, new String[] {words});
        BaselineTIFFTagSet base = BaselineTIFFTagSet.getInstance();
        add(directory, base.getTag(BaselineTIFFTagSet.TAG_SOFTWARE), TIFFTag.TIFF_ASCII, new String[] {"Handreach"});
        directory.addTIFFField(new TIFFField(base.getTag(SAMPLE_FORMAT_TAG), TIFFTag.TIFF_SHORT, 1, new char[] {3}));
        directory.removeTIFFField(PREDICTOR_TAG);
        return directory.getAsMetadata();
    }

    private static TIFFTag ascii(String name, int number) {
        return new TIFFTag(name, number, 1 << TIFFTag.TIFF_ASCII);
    }

    private static void add(TIFFDirectory directory, TIFFTag tag, int type, Object values) {
        directory.addTIFFField(new TIFFField(tag, type, java.lang.reflect.Array.getLength(values), values));
    }
}
