package handreach.terrain;

import handreach.input.InputFault;
import handreach.input.Memory;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReader;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import javax.imageio.ImageReadParam;
import javax.imageio.stream.FileImageInputStream;

/**
 * The pixels of a TIFF file, values with one sample a pixel or a picture: checked before anything is unpacked, then read by a TIFF
 * library.
 */
final class TiffImage {
    /** What one value of the image is. */
    enum Sample {
        UNSIGNED_8,
        SIGNED_16,
        UNSIGNED_16,
        SIGNED_32,
        FLOAT_32,
        FLOAT_64,
        /** Colour or grey of up to 8 bits a band. */
        PICTURE
    }

    private static final Map<Integer, String> COMPRESSIONS =
            Map.of(1, "none", 5, "LZW", 8, "Deflate", 32773, "PackBits", 32946, "Deflate", 50000, "ZSTD");
    private static final Map<Integer, String> UNREADABLE = Map.of(
            34887, "LERC", 6, "JPEG", 7, "JPEG", 50001, "WebP", 34712, "JPEG 2000", 34925, "LZMA", 50002, "JPEG XL");
    /** JPEG as it stands in TIFF files since 1995, for pictures alone: it alters values. */
    private static final int JPEG = 7;

    private static final Set<Integer> PICTURE_BITS = Set.of(1, 2, 4, 8);
    private static final int MOST_BANDS = 4;
    private static final Set<Integer> DEFLATE = Set.of(8, 32946);
    private static final int ZSTD = 50000;
    private static final int WIDEST = 1_000_000;
    private static final int MOST_NAMED = 5;
    private static final long LARGEST_BLOCK_BYTES = 512L << 20;
    /** A block as it is packed, unpacked and handed on. */
    private static final double MEMORY_PER_BYTE = 3;

    private final Path file;
    private final TiffHeader header;
    private final int width;
    private final int height;
    private final Sample sample;
    private final TiffBlocks blocks;
    /** Null where blocks carry none that is looked at here. */
    private BlockChecksums checksums;

    private TiffImage(Path file, TiffHeader header, boolean isPicture) {
        this.file = file;
        this.header = header;
        this.width = (int) header.number(TiffHeader.WIDTH, 0);
        this.height = (int) header.number(TiffHeader.HEIGHT, 0);
        if (width < 2 || height < 2 || width > WIDEST || height > WIDEST)
            throw fault("is " + width + " by " + height + " pixels; 2 to " + WIDEST + " each way can be used.");
        checkCompression(isPicture);
        if (header.text(TiffHeader.GDAL_METADATA).contains("<!DOCTYPE"))
            throw fault("has a document type declaration in its metadata, which none needs and which can hide traps."
                    + " Write the file anew without metadata.");
        this.sample = isPicture ? pictureKind() : sampleKind();
        this.blocks = blocks();
    }

    static TiffImage of(Path file, TiffHeader header) {
        return new TiffImage(file, header, false);
    }

    /** The same of a file that holds a picture. */
    static TiffImage picture(Path file, TiffHeader header) {
        return new TiffImage(file, header, true);
    }

    private void checkCompression(boolean isPicture) {
        int code = compression();
        if (COMPRESSIONS.containsKey(code) || isPicture && code == JPEG) return;
        throw fault("is packed with " + UNREADABLE.getOrDefault(code, "compression " + code)
                + "; none, LZW, Deflate, ZSTD" + (isPicture ? ", JPEG" : "")
                + " and PackBits can be read. Convert it, for instance to Deflate.");
    }

    private Sample pictureKind() {
        int bands = (int) header.number(TiffHeader.SAMPLES_PER_PIXEL, 1);
        int bits = (int) header.number(TiffHeader.BITS_PER_SAMPLE, 1);
        int format = (int) header.number(TiffHeader.SAMPLE_FORMAT, 1);
        if (format != 1 || bands > MOST_BANDS || !PICTURE_BITS.contains(bits))
            throw fault("holds " + bands + (bands == 1 ? " band" : " bands") + " of " + bits
                    + " bits, which is no picture; one to four bands of 8 bits are. Take the map, not its values.");
        return Sample.PICTURE;
    }

    private Sample sampleKind() {
        int samples = (int) header.number(TiffHeader.SAMPLES_PER_PIXEL, 1);
        if (samples != 1)
            throw fault("has " + samples + " bands, a tile has one. It may be a picture; fetch the tile of values.");
        int bits = (int) header.number(TiffHeader.BITS_PER_SAMPLE, 1);
        int format = (int) header.number(TiffHeader.SAMPLE_FORMAT, 1);
        if (format == 3 && bits == 32) return Sample.FLOAT_32;
        if (format == 3 && bits == 64) return Sample.FLOAT_64;
        if (format == 2 && bits == 16) return Sample.SIGNED_16;
        if (format == 2 && bits == 32) return Sample.SIGNED_32;
        if (format == 1 && bits == 8) return Sample.UNSIGNED_8;
        if (format == 1 && bits == 16) return Sample.UNSIGNED_16;
        throw fault("has values of " + bits + " bits in sample format " + format
                + "; integers of 8, 16 or 32 bits and floats of 32 or 64 bits can be read. Convert it.");
    }

    /** Every block must lie inside the file, and none may unpack to more than a bound. */
    private TiffBlocks blocks() {
        boolean isTiled = header.has(TiffHeader.TILE_WIDTH);
        double[] offsets = header.numbers(isTiled ? TiffHeader.TILE_OFFSETS : TiffHeader.STRIP_OFFSETS);
        double[] counts = header.numbers(isTiled ? TiffHeader.TILE_BYTE_COUNTS : TiffHeader.STRIP_BYTE_COUNTS);
        long blockWidth = isTiled ? (long) header.number(TiffHeader.TILE_WIDTH, 0) : width;
        long blockHeight = isTiled
                ? (long) header.number(TiffHeader.TILE_HEIGHT, 0)
                : Math.min(height, (long) header.number(TiffHeader.ROWS_PER_STRIP, height));
        if (blockWidth < 1 || blockHeight < 1) throw fault("has a broken header. Fetch it again.");
        long largest = Memory.most(LARGEST_BLOCK_BYTES, MEMORY_PER_BYTE);
        if (blockWidth > largest || blockWidth * blockHeight * bytesPerSample() > largest)
            throw fault("is packed in blocks of " + blockWidth + " by " + blockHeight + " pixels, at most "
                    + (largest >> 20) + " MiB can be unpacked at once. Convert it to smaller blocks."
                    + Memory.advice(largest, LARGEST_BLOCK_BYTES, MEMORY_PER_BYTE));
        long count = ((width + blockWidth - 1) / blockWidth) * ((height + blockHeight - 1) / blockHeight);
        if (offsets.length < count || counts.length < count) throw fault("has a broken header. Fetch it again.");
        for (int i = 0; i < count; i++)
            if (offsets[i] + counts[i] > header.fileBytes())
                throw fault("is cut off: it has " + header.fileBytes() + " bytes, and block " + (i + 1) + " of " + count
                        + " would end at byte " + (long) (offsets[i] + counts[i]) + ". Fetch it again.");
        TiffBlocks all = new TiffBlocks(offsets, counts, blockWidth, blockHeight, width);
        if (sample != Sample.PICTURE && DEFLATE.contains(compression()))
            checksums = new BlockChecksums(file, all, blockWidth * blockHeight * bytesPerSample());
        return all;
    }

    private int compression() {
        return (int) header.number(TiffHeader.COMPRESSION, 1);
    }

    private int bytesPerSample() {
        return switch (sample) {
            case UNSIGNED_8 -> 1;
            case SIGNED_16, UNSIGNED_16 -> 2;
            case SIGNED_32, FLOAT_32 -> 4;
            case FLOAT_64 -> 8;
            case PICTURE -> (int) header.number(TiffHeader.SAMPLES_PER_PIXEL, 1);
        };
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    Sample sample() {
        return sample;
    }

    /** Whether the image is stored in tiles rather than in strips over its whole width. */
    boolean isTiled() {
        return header.has(TiffHeader.TILE_WIDTH);
    }

    /** The values of a part of the image; its upper left corner is at 0, 0 of the raster. */
    Raster read(int x, int y, int columns, int rows) {
        Rectangle part = new Rectangle(x, y, columns, rows);
        int broken = firstBroken(part);
        if (broken >= 0)
            throw fault("holds other than its checksum says in block " + (broken + 1)
                    + ": it was damaged on the way. Fetch it again.");
        Raster raster = unpacked(part, 1).getRaster();
        if (raster.getWidth() != columns || raster.getHeight() != rows || raster.getNumBands() != 1)
            throw fault("does not unpack to its stated size. Fetch it again.");
        return raster;
    }

    /** Number of the first block under a part whose checksum does not fit, from 0; -1 where all fit or none has one. */
    private int firstBroken(Rectangle part) {
        try {
            return checksums == null ? -1 : checksums.firstBroken(part);
        } catch (IOException e) {
            throw notUnpacked(e);
        }
    }

    private InputFault notUnpacked(Exception e) {
        return fault("cannot be unpacked (" + TileFiles.reason(e) + "). Fetch it again.");
    }

    /** A part of a picture, of every so many pixels one each way. */
    BufferedImage unpacked(Rectangle part, int every) {
        TIFFImageReader reader = (TIFFImageReader) new TIFFImageReaderSpi().createReaderInstance(null);
        try (FileImageInputStream in = new FileImageInputStream(file.toFile())) {
            reader.setInput(in, false, true);
            ImageReadParam param = reader.getDefaultReadParam();
            param.setSourceRegion(part);
            param.setSourceSubsampling(every, every, 0, 0);
            return reader.read(header.imageIndex(), param);
        } catch (IOException | RuntimeException e) {
            throw notUnpacked(e);
        } finally {
            reader.dispose();
        }
    }

    /**
     * The values of a part, or where it cannot be read as a whole those of the blocks whose checksum fits. Without checksums one damaged
     * block says that others may be damaged unseen, and the fault is that of the whole.
     */
    SoundPart part(Rectangle part) {
        try {
            return SoundPart.whole(read(part.x, part.y, part.width, part.height));
        } catch (InputFault damaged) {
            boolean isChecked = checksums != null || compression() == ZSTD && ZstdFrames.areChecked(file, blocks, part);
            if (!isChecked) throw damaged;
            return DamageSearch.sound(this, blocks, part, damaged);
        }
    }

    /** What is told of blocks that were damaged, by their numbers from 0. */
    String lost(List<Integer> numbers) {
        String which = numbers.stream()
                .limit(MOST_NAMED)
                .map(number -> String.valueOf(number + 1))
                .collect(Collectors.joining(", "));
        return header.name() + ": holds other than its checksum says in " + numbers.size() + " of "
                + blocks.count(height)
                + " blocks (" + which + (numbers.size() > MOST_NAMED ? " and more" : "")
                + "): it was damaged on the way. Fetch it again. What lies there is unknown.";
    }

    private InputFault fault(String text) {
        return new InputFault(header.name(), 0, text);
    }
}
