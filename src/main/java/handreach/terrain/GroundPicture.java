package handreach.terrain;

import handreach.input.InputFault;
import handreach.input.SourceText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** A picture of the ground out of a file of the user, such as a scanned map: to look at, never to compute with. Safe for several threads. */
public interface GroundPicture {
    /** What the names of tiled pictures end with. */
    String TILED = ".mbtiles";

    /**
     * Opens a GeoTIFF picture or an MBTiles file of PNG or JPEG tiles.
     *
     * @shape file in, picture out; reads its head only
     * @unit no quantity
     * @valid colour or grey GeoTIFF of up to 8 bits a band, north up, in any projection; else {@link InputFault} in one line
     * @error see {@link #argb}
     * @source OGC GeoTIFF 1.1 (19-008r4); MBTiles specification 1.3
     */
    static GroundPicture open(Path file) {
        String name = String.valueOf(file.getFileName());
        try {
            if (!Files.isRegularFile(file))
                throw new InputFault(file.toString(), 0, "there is no such file. Check the name and the folder.");
            if (name.toLowerCase(Locale.ROOT).endsWith(TILED)) return MbTiles.open(file);
            if (TileFiles.isTiff(name)) return TiffPicture.open(file);
        } catch (IOException e) {
            throw new InputFault(name, 0, "cannot be read (" + SourceText.reason(e) + "). Check the rights on it.");
        }
        throw new InputFault(
                name, 0, "is no map picture that can be read. GeoTIFF (.tif) and MBTiles (.mbtiles) can; convert it.");
    }

    /** Whether a file is a picture by its head, not a tile of heights; what cannot be read is none. */
    static boolean isOne(Path file) {
        String name = String.valueOf(file.getFileName());
        if (name.toLowerCase(Locale.ROOT).endsWith(TILED)) return true;
        try {
            return TileFiles.isTiff(name) && TiffPicture.hasColours(TiffHeader.read(file));
        } catch (IOException | InputFault notReadable) {
            return false;
        }
    }

    /** The name of the file. */
    String name();

    /** Whose work it is, as the file says; empty where it says nothing. */
    String attribution();

    /** The rectangle that holds it. */
    TileBounds bounds();

    /**
     * What a window of degrees shows.
     *
     * @param goOn asked now and then; throws where nobody wants the answer any more
     * @shape window in, its pixels out, row after row from the north; reads the parts of the file that it needs
     * @unit 0xAARRGGBB, opaque; 0 where the picture has nothing
     * @valid every window; an {@link InputFault} where the file is damaged there
     * @error the place of a pixel within a twentieth of a pixel: places are worked out every 16 pixels and joined by straight lines
     *     (GeoTIFF), or exactly (MBTiles, on the sphere of its own projection); colours are those of the four nearest pixels, weighed
     * @source OGC GeoTIFF 1.1 (19-008r4), section 7; MBTiles 1.3 with spherical Mercator tiles counted from the south
     */
    int[] argb(PictureWindow window, Runnable goOn);
}
