package handreach.walk;

import handreach.reach.Progress;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;

/** A track that a test writes out. */
final class GpxText {
    private GpxText() {}

    static GpxTrack track(String name, String text) {
        return new GpxReader(name, Progress.SILENT)
                .read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }
}
