package handreach.terrain;

import handreach.input.InputFault;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/**
 * A tile in SRTM layout: no header, 16-bit big-endian metres, row by row from the north, void −32768, first and last rows and
 * columns on whole degrees (JPL, SRTM FAQ and SRTM_Topo). The size alone tells the spacing. Nothing beyond that size is ever read
 * out of an archive, whatever it claims to hold.
 */
final class HgtTile implements PostSource {
    private static final int SIDE_3_SECONDS = 1201;
    private static final int SIDE_1_SECOND = 3601;
    private static final String SIZES =
            "an .hgt file has 2884802 bytes (3 arc-seconds) or 25934402 bytes (1 arc-second)";

    private enum Packing {
        PLAIN,
        ZIP,
        GZIP
    }

    private final Path file;
    private final String name;
    private final Packing packing;
    private final int side;

    private HgtTile(Path file, Packing packing, int side) {
        this.file = file;
        this.name = String.valueOf(file.getFileName());
        this.packing = packing;
        this.side = side;
    }

    static boolean isOne(String fileName) {
        String low = fileName.toLowerCase(Locale.ROOT);
        return low.endsWith(".hgt") || low.endsWith(".hgt.gz") || low.endsWith(".zip");
    }

    /** Looks at name and size only. */
    static TileHeader draft(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        String low = name.toLowerCase(Locale.ROOT);
        Packing packing = low.endsWith(".zip") ? Packing.ZIP : low.endsWith(".gz") ? Packing.GZIP : Packing.PLAIN;
        String inner = name;
        long size;
        switch (packing) {
            case ZIP -> {
                try (ZipFile zip = new ZipFile(file.toFile())) {
                    ZipEntry entry = hgtEntry(zip, name);
                    inner = HgtName.of(entry.getName()).isPresent() ? entry.getName() : name;
                    size = entry.getSize();
                } catch (ZipException e) {
                    throw new InputFault(name, 0, "is not a whole zip file. Fetch it again.");
                }
            }
            case GZIP -> size = gzipSize(file, name);
            default -> size = Files.size(file);
        }
        int side = side(size, name);
        HgtName corner = HgtName.of(inner)
                .orElseThrow(() -> new InputFault(
                        name, 0, "does not tell its south-west corner. Name it like N46E008.hgt or S01W078.hgt.zip."));
        return draft(new HgtTile(file, packing, side), corner);
    }

    private static TileHeader draft(HgtTile tile, HgtName corner) {
        int perDegree = tile.side - 1;
        GridFit fit = new GridFit(Frame.DEGREES, corner.westDeg(), corner.southDeg() + 1, perDegree, perDegree);
        TileBounds bounds =
                new TileBounds(corner.southDeg(), corner.westDeg(), corner.southDeg() + 1.0, corner.westDeg() + 1.0);
        double[] ground = Tile.groundSpacingM(fit, bounds);
        double seconds = 3600.0 / perDegree;
        TileSummary summary = new TileSummary(
                tile.name,
                "HGT",
                bounds,
                new PostSpacing(seconds, seconds, "arc-seconds", Math.min(ground[0], ground[1])),
                "EPSG:4326",
                TileProvenance.of(tile.name));
        return new TileHeader(summary, fit, tile);
    }

    private static int side(long size, String name) {
        if (size == 2L * SIDE_3_SECONDS * SIDE_3_SECONDS) return SIDE_3_SECONDS;
        if (size == 2L * SIDE_1_SECOND * SIDE_1_SECOND) return SIDE_1_SECOND;
        throw new InputFault(
                name, 0, "holds " + size + " bytes, but " + SIZES + ". It may be cut off; fetch it again.");
    }

    private static ZipEntry hgtEntry(ZipFile zip, String name) {
        List<? extends ZipEntry> entries = zip.stream()
                .filter(e -> e.getName().toLowerCase(Locale.ROOT).endsWith(".hgt"))
                .limit(2)
                .toList();
        if (entries.size() != 1)
            throw new InputFault(
                    name,
                    0,
                    (entries.isEmpty() ? "holds no .hgt file" : "holds several .hgt files")
                            + ", one is expected. Unpack it and put the tiles themselves into the folder.");
        ZipEntry entry = entries.get(0);
        if (entry.getName().matches(".*[/\\\\:].*"))
            throw new InputFault(
                    name,
                    0,
                    "holds its .hgt file inside a folder, a plain name is expected. Unpack it into the tiles folder.");
        return entry;
    }

    /** A gzip file ends with the size of what it holds, modulo 2 to the 32 (RFC 1952). */
    private static long gzipSize(Path file, String name) throws IOException {
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            if (in.length() < 18 || in.readUnsignedShort() != 0x1F8B)
                throw new InputFault(name, 0, "is not a gzip file. Fetch it again.");
            in.seek(in.length() - 4);
            return Integer.toUnsignedLong(Integer.reverseBytes(in.readInt()));
        }
    }

    @Override
    public int rows() {
        return side;
    }

    @Override
    public int columns() {
        return side;
    }

    @Override
    public Posts read() {
        try {
            return switch (packing) {
                case PLAIN -> posts(Files.newInputStream(file));
                case GZIP ->
                    posts(new GZIPInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 16), 1 << 16));
                case ZIP -> zipped();
            };
        } catch (EOFException e) {
            throw new InputFault(name, 0, "ends too early, " + SIZES + ". Fetch it again.");
        } catch (IOException e) {
            throw new InputFault(
                    name,
                    0,
                    "cannot be read (" + TileFiles.reason(e) + "). Fetch it again, or check the rights on it.");
        }
    }

    private Posts zipped() throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            ZipEntry entry = hgtEntry(zip, name);
            CheckedInputStream checked = new CheckedInputStream(zip.getInputStream(entry), new CRC32());
            Posts posts = posts(checked);
            if (checked.getChecksum().getValue() != entry.getCrc())
                throw new InputFault(name, 0, "is damaged: its checksum does not fit. Fetch it again.");
            return posts;
        }
    }

    private Posts posts(InputStream opened) throws IOException {
        try (InputStream in = opened) {
            short[] heightM = new short[side * side];
            byte[] chunk = new byte[1 << 18];
            int done = 0;
            while (done < heightM.length) {
                int want = Math.min(chunk.length, 2 * (heightM.length - done));
                if (in.readNBytes(chunk, 0, want) < want) throw new EOFException();
                ByteBuffer.wrap(chunk, 0, want).asShortBuffer().get(heightM, done, want / 2);
                done += want / 2;
            }
            if (in.read() >= 0)
                throw new InputFault(name, 0, "holds more than it should, " + SIZES + ". Fetch it again.");
            return new ShortPosts(side, side, heightM);
        }
    }
}
