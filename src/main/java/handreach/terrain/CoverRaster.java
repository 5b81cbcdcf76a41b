package handreach.terrain;

import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Land cover from GeoTIFF class maps and a legend. A position has the class of the pixel it lies in. Pixels are read block by block
 * when first needed; at most 256 MiB of them are kept.
 */
public final class CoverRaster implements LandCover {
    static final long KEPT_BYTES = 256L << 20;
    private static final int LOOKED_A_SIDE = 16;
    private static final Cover[] KINDS = Cover.values();

    private final List<CoverTile> tiles;
    private final CoverLegend legend;
    private final Cover ifUnknown;
    private final Map<CoverTile.Block, byte[]> kept = new LinkedHashMap<>(16, 0.75f, true);
    private final Set<String> warnings = new LinkedHashSet<>();
    private long keptBytes;

    private CoverRaster(List<CoverTile> tiles, CoverLegend legend, Cover ifUnknown) {
        this.tiles = tiles;
        this.legend = legend;
        this.ifUnknown = ifUnknown;
    }

    /**
     * Opens one class map or a folder of them.
     *
     * @shape path in, cover out; reads headers only
     * @unit class codes of the legend
     * @valid GeoTIFF with one band of whole numbers; {@link InputFault} if none can be used
     * @error half a pixel in position
     * @source legends as in {@link CoverLegend}
     * @param ifUnknown cover outside the maps, where they hold no data, and for codes that the legend does not know
     */
    public static CoverRaster open(Path path, CoverLegend legend, Cover ifUnknown) {
        List<CoverTile> tiles = new ArrayList<>();
        List<String> troubles = new ArrayList<>();
        for (Path file : files(path)) {
            try {
                tiles.add(CoverTile.of(file));
            } catch (InputFault fault) {
                troubles.add(fault.getMessage());
            } catch (IOException e) {
                troubles.add(
                        file.getFileName() + ": cannot be read (" + TileFiles.reason(e) + "). Check the rights on it.");
            }
        }
        if (tiles.isEmpty())
            throw new InputFault(
                    path.toString(),
                    0,
                    "holds no land-cover map that can be used; a GeoTIFF of class codes is expected. "
                            + String.join(" ", troubles));
        CoverRaster raster = new CoverRaster(List.copyOf(tiles), legend, ifUnknown);
        raster.warnings.addAll(troubles);
        return raster;
    }

    private static List<Path> files(Path path) {
        if (Files.isRegularFile(path)) return List.of(path);
        if (!Files.isDirectory(path))
            throw new InputFault(path.toString(), 0, "there is no such file or folder. Name the land-cover map.");
        try (Stream<Path> entries = Files.list(path)) {
            return entries.filter(p -> TileFiles.isTiff(String.valueOf(p.getFileName())))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new InputFault(
                    path.toString(), 0, "cannot be listed (" + TileFiles.reason(e) + "). Check the rights on it.");
        }
    }

    /** What was wrong with files and codes so far. */
    public List<String> warnings() {
        synchronized (kept) {
            return List.copyOf(warnings);
        }
    }

    /**
     * Whether the maps hold a class anywhere inside a rectangle, looked for on a raster of 16 by 16 places, from its middle outward, over
     * what each map has of it.
     */
    public boolean holdsAny(TileBounds area) {
        for (CoverTile tile : tiles) {
            Optional<TileBounds> shared = tile.bounds().overlap(area);
            if (shared.isPresent() && holdsAny(tile, shared.get())) return true;
        }
        return false;
    }

    private boolean holdsAny(CoverTile tile, TileBounds area) {
        double[] xy = new double[2];
        for (int ring = 1; ring <= LOOKED_A_SIDE / 2; ring++)
            for (int i = -ring; i < ring; i++)
                for (int k = -ring; k < ring; k++) {
                    if (Math.max(Math.abs(2 * i + 1), Math.abs(2 * k + 1)) != 2 * ring - 1) continue;
                    double lat = area.southDeg() + (area.northDeg() - area.southDeg()) * share(i);
                    long pixel = tile.pixel(lat, area.longitudeDeg(share(k)), xy);
                    if (pixel < 0) continue;
                    CoverTile.Block block = tile.block((int) (pixel >> 32), (int) pixel);
                    if (kinds(block)[block.index((int) (pixel >> 32), (int) pixel)] != 0) return true;
                }
        return false;
    }

    private static double share(int fromMiddle) {
        return (fromMiddle + LOOKED_A_SIDE / 2 + 0.5) / LOOKED_A_SIDE;
    }

    @Override
    public void covers(double[] latitudeDeg, double[] longitudeDeg, int count, Cover[] cover) {
        Arrays.fill(cover, 0, count, null);
        double[] xy = new double[2];
        for (CoverTile tile : tiles) {
            CoverTile.Block block = null;
            byte[] kinds = null;
            for (int i = 0; i < count; i++) {
                if (cover[i] != null || !tile.mayHold(latitudeDeg[i], longitudeDeg[i])) continue;
                long pixel = tile.pixel(latitudeDeg[i], longitudeDeg[i], xy);
                if (pixel < 0) continue;
                int row = (int) (pixel >> 32);
                int column = (int) pixel;
                if (block == null || !block.holds(row, column)) {
                    block = tile.block(row, column);
                    kinds = kinds(block);
                }
                byte kind = kinds[block.index(row, column)];
                if (kind != 0) cover[i] = KINDS[kind - 1];
            }
        }
        for (int i = 0; i < count; i++) if (cover[i] == null) cover[i] = ifUnknown;
    }

    private byte[] kinds(CoverTile.Block block) {
        synchronized (kept) {
            byte[] kinds = kept.get(block);
            if (kinds != null) return kinds;
            kinds = read(block);
            kept.put(block, kinds);
            keptBytes += kinds.length;
            var oldest = kept.entrySet().iterator();
            while (keptBytes > KEPT_BYTES && kept.size() > 1) {
                keptBytes -= oldest.next().getValue().length;
                oldest.remove();
            }
            return kinds;
        }
    }

    private byte[] read(CoverTile.Block block) {
        Set<Integer> strange = new LinkedHashSet<>();
        try {
            return block.read(code -> kind(code, strange), warnings::add);
        } catch (InputFault fault) {
            warnings.add(fault.getMessage() + " Its cover is unknown.");
            return new byte[block.rows() * block.columns()];
        } finally {
            for (int code : strange)
                warnings.add("code " + code + " is not in the legend " + legend.word() + " and counts as unknown");
        }
    }

    /** One more than the ordinal of the cover; 0 for unknown. Code 0 is "no data" in all legends. */
    private byte kind(int code, Set<Integer> strange) {
        var cover = legend.of(code);
        if (cover.isEmpty() && code != 0 && code != 255 && strange.size() < 8) strange.add(code);
        return (byte) cover.map(c -> c.ordinal() + 1).orElse(0).intValue();
    }
}
