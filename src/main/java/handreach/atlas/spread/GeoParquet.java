package handreach.atlas.spread;

import handreach.atlas.HeardBits;
import handreach.atlas.LoadoutFigures;
import handreach.atlas.PositionFigures;
import handreach.geodesy.Position;
import handreach.reach.ReachEstimate;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.conf.ParquetConfiguration;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.api.WriteSupport;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.io.LocalInputFile;
import org.apache.parquet.io.OutputFile;
import org.apache.parquet.io.PositionOutputStream;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.io.api.RecordConsumer;
import org.apache.parquet.schema.LogicalTypeAnnotation;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;
import org.apache.parquet.schema.Types;

/**
 * Positions as columns that readers of tables know: one row a position and loadout, the place as a point. Source of the layout of places:
 * GeoParquet 1.1.0 of the Open Geospatial Consortium; points as well-known binary (OGC 06-103r4), longitude first.
 */
public final class GeoParquet {
    /** The digest of the rows that these columns were made from. */
    private static final String ROWS = "handreach.rows";

    private static final String PLACE = "geometry";
    private static final MessageType COLUMNS = columns();

    private GeoParquet() {}

    private static MessageType columns() {
        Types.MessageTypeBuilder all = Types.buildMessage();
        all.required(PrimitiveTypeName.INT32).named("cell");
        all.required(PrimitiveTypeName.BINARY).named(PLACE);
        all.optional(PrimitiveTypeName.BINARY)
                .as(LogicalTypeAnnotation.stringType())
                .named("loadout");
        for (String name : List.of(
                "median_m",
                "median_low_m",
                "median_high_m",
                "worst_m",
                "worst_low_m",
                "worst_high_m",
                "worst_bearing_deg",
                "share",
                "share_low",
                "share_high")) all.optional(PrimitiveTypeName.DOUBLE).named(name);
        for (String name : List.of(
                "open_ended",
                "unknown",
                "targets",
                "targets_known",
                "window_row",
                "window_column",
                "window_rows",
                "window_columns")) all.optional(PrimitiveTypeName.INT32).named(name);
        all.optional(PrimitiveTypeName.BINARY).named("heard");
        return all.named("positions");
    }

    /**
     * Writes rows to a stream, which stays open.
     *
     * @param digest of the rows, kept in the foot
     */
    public static void write(OutputStream out, List<String> loadouts, List<PositionFigures> rows, String digest)
            throws IOException {
        Map<String, String> about = new TreeMap<>(Map.of("geo", geo(rows), ROWS, digest));
        try (ParquetWriter<Row> writer = new Builder(new StreamFile(out), about)
                .withConf(new Configuration(false))
                .withCompressionCodec(CompressionCodecName.ZSTD)
                .build()) {
            for (PositionFigures row : rows) {
                if (!row.isKnown()) writer.write(new Row(row, "", null));
                for (int i = 0; i < row.loadouts().size(); i++)
                    writer.write(new Row(row, loadouts.get(i), row.loadouts().get(i)));
            }
        }
    }

    /** Whether a file is there, whole, and made of the rows of this digest. */
    public static boolean isOf(Path file, String digest) {
        if (!Files.isRegularFile(file)) return false;
        try (ParquetFileReader reader = ParquetFileReader.open(new LocalInputFile(file))) {
            return digest.equals(reader.getFileMetaData().getKeyValueMetaData().get(ROWS));
        } catch (IOException | RuntimeException | LinkageError unreadable) {
            // an engine of another release may lack the reader: the file is then written anew
            return false;
        }
    }

    /** What GeoParquet wants to be told; without a reference system it is longitude and latitude of WGS 84. */
    private static String geo(List<PositionFigures> rows) {
        double west = 180;
        double south = 90;
        double east = -180;
        double north = -90;
        for (PositionFigures row : rows) {
            west = Math.min(west, row.at().longitudeDeg());
            east = Math.max(east, row.at().longitudeDeg());
            south = Math.min(south, row.at().latitudeDeg());
            north = Math.max(north, row.at().latitudeDeg());
        }
        return String.format(
                Locale.ROOT,
                "{\"version\":\"1.1.0\",\"primary_column\":\"%s\",\"columns\":{\"%s\":{\"encoding\":\"WKB\","
                        + "\"geometry_types\":[\"Point\"],\"bbox\":[%s,%s,%s,%s]}}}",
                PLACE,
                PLACE,
                west,
                south,
                east,
                north);
    }

    /**
     * A position with one loadout.
     *
     * @param loadout its name; empty where the ground is not known
     * @param figures of it; null where the ground is not known
     */
    private record Row(PositionFigures position, String loadout, LoadoutFigures figures) {}

    private static final class Builder extends ParquetWriter.Builder<Row, Builder> {
        private final Map<String, String> about;

        Builder(OutputFile file, Map<String, String> about) {
            super(file);
            this.about = about;
        }

        @Override
        protected Builder self() {
            return this;
        }

        @Override
        protected WriteSupport<Row> getWriteSupport(Configuration settings) {
            return new Rows(about);
        }
    }

    private static final class Rows extends WriteSupport<Row> {
        private final Map<String, String> about;
        private RecordConsumer to;
        private int column;

        Rows(Map<String, String> about) {
            this.about = about;
        }

        @Override
        public WriteContext init(Configuration settings) {
            return new WriteContext(COLUMNS, about);
        }

        @Override
        public WriteContext init(ParquetConfiguration settings) {
            return new WriteContext(COLUMNS, about);
        }

        @Override
        public void prepareForWrite(RecordConsumer consumer) {
            to = consumer;
        }

        @Override
        public void write(Row row) {
            column = 0;
            to.startMessage();
            put(row.position().cell());
            put(point(row.position().at()));
            LoadoutFigures figures = row.figures();
            if (figures != null) {
                put(Binary.fromString(row.loadout()));
                put(figures.medianM());
                put(figures.worst().reachM());
                put(figures.worst().bearingDeg());
                put(figures.share());
                put(figures.openEnded());
                put(figures.partlyUnknown());
                put(figures.heard().count());
                put(figures.heard().known());
                HeardBits.Window window = figures.heard().window();
                put(window.row());
                put(window.column());
                put(window.rows());
                put(window.columns());
                put(Binary.fromConstantByteArray(figures.heard().bytes()));
            }
            to.endMessage();
        }

        private void put(ReachEstimate estimate) {
            put(estimate.value());
            put(estimate.interval95().low());
            put(estimate.interval95().high());
        }

        private void put(int value) {
            start();
            to.addInteger(value);
            end();
        }

        private void put(double value) {
            start();
            to.addDouble(value);
            end();
        }

        private void put(Binary value) {
            start();
            to.addBinary(value);
            end();
        }

        private void start() {
            to.startField(COLUMNS.getFieldName(column), column);
        }

        private void end() {
            to.endField(COLUMNS.getFieldName(column), column);
            column++;
        }

        /** Byte order 1 for little end first, kind 1 for a point, longitude, latitude. */
        private static Binary point(Position at) {
            return Binary.fromConstantByteArray(ByteBuffer.allocate(21)
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .put((byte) 1)
                    .putInt(1)
                    .putDouble(at.longitudeDeg())
                    .putDouble(at.latitudeDeg())
                    .array());
        }
    }

    /** A stream as the library wants it: it asks how far it is. */
    private static final class StreamFile implements OutputFile {
        private final OutputStream out;

        StreamFile(OutputStream out) {
            this.out = out;
        }

        @Override
        public PositionOutputStream create(long blockSizeHint) {
            return new Counted(out);
        }

        @Override
        public PositionOutputStream createOrOverwrite(long blockSizeHint) {
            return create(blockSizeHint);
        }

        @Override
        public boolean supportsBlockSize() {
            return false;
        }

        @Override
        public long defaultBlockSize() {
            return 0;
        }
    }

    private static final class Counted extends PositionOutputStream {
        private final OutputStream out;
        private long written;

        Counted(OutputStream out) {
            this.out = out;
        }

        @Override
        public long getPos() {
            return written;
        }

        @Override
        public void write(int one) throws IOException {
            out.write(one);
            written++;
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
            written += count;
        }
    }
}
