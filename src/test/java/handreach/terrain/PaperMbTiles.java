package handreach.terrain;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;

/** Writes MBTiles files, right or wrong as a test wants them. Tiles are counted from the north-west here, from the south in the file. */
public final class PaperMbTiles {
    private final Map<String, String> metadata = new LinkedHashMap<>();
    private final List<Tile> tiles = new ArrayList<>();

    private record Tile(int level, int column, int row, byte[] packed) {}

    /** The colour of a pixel of a tile, 0xRRGGBB. */
    public interface Colour {
        int of(int xPx, int yPx);
    }

    public PaperMbTiles say(String name, String value) {
        metadata.put(name, value);
        return this;
    }

    public PaperMbTiles tile(int level, int column, int row, Colour colour) {
        return packed(level, column, row, png(256, colour));
    }

    PaperMbTiles packed(int level, int column, int row, byte[] packed) {
        tiles.add(new Tile(level, column, row, packed));
        return this;
    }

    static byte[] png(int side, Colour colour) {
        BufferedImage image = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < side; y++) for (int x = 0; x < side; x++) image.setRGB(x, y, colour.of(x, y));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", out);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    public Path write(Path file) {
        try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            for (String line : List.of(
                    "CREATE TABLE metadata (name text, value text)",
                    "CREATE TABLE images (id integer, packed blob)",
                    "CREATE TABLE map (zoom_level integer, tile_column integer, tile_row integer, id integer)",
                    // As many programs write them: each picture once, and a view that joins.
                    "CREATE VIEW tiles AS SELECT zoom_level, tile_column, tile_row, packed AS tile_data"
                            + " FROM map JOIN images ON images.id = map.id",
                    "CREATE UNIQUE INDEX place ON map (zoom_level, tile_column, tile_row)"))
                database.createStatement().execute(line);
            for (var entry : metadata.entrySet())
                run(database, "INSERT INTO metadata VALUES (?, ?)", entry.getKey(), entry.getValue());
            for (int i = 0; i < tiles.size(); i++) {
                Tile tile = tiles.get(i);
                run(database, "INSERT INTO images VALUES (?, ?)", i, tile.packed());
                run(
                        database,
                        "INSERT INTO map VALUES (?, ?, ?, ?)",
                        tile.level(),
                        tile.column(),
                        (1 << tile.level()) - 1 - tile.row(),
                        i);
            }
            return file;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void run(Connection database, String words, Object... values) throws SQLException {
        try (PreparedStatement step = database.prepareStatement(words)) {
            for (int i = 0; i < values.length; i++) step.setObject(i + 1, values[i]);
            step.executeUpdate();
        }
    }
}
