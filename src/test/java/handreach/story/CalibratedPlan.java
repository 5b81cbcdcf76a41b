package handreach.story;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The forest sample with a calibration accepted into it, invented, whose shifts differ by cover and by carry position. */
final class CalibratedPlan {
    /** Words every face says, with shift, doubt and spread. */
    static final String SENTENCE =
            "Calibrated by the long way round of 2026-05-04 (40 independent reports): loss shifted by +9.0 dB ± 2.0 dB, spread 7.5 dB";

    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();

    private static final String CALIBRATION = """
            made_from = "the long way round"
            day = "2026-05-04"
            observations = 40
            spread_db = 7.5
            links = [["quarter-wave with wire at face", "factory at face"]]

            [area]
            middle = "36.27, -84.21"
            radius_m = 6000

            [bias]
            loss_db = 9
            uncertainty_db = 2

            [[cover]]
            name = "open"
            loss_db = -3
            uncertainty_db = 1

            [[cover]]
            name = "woodland"
            loss_db = 1.5
            uncertainty_db = 1

            [[carry]]
            name = "hip-tight"
            loss_db = 2.5
            uncertainty_db = 1.5
            """;

    /** Open ground round the north spur, so that the ends of a path differ in what stands there. */
    private static final String CLEARING = """
            {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"cover": "open"},
             "geometry": {"type": "Polygon", "coordinates": [[[-84.199, 36.297], [-84.191, 36.297], [-84.191, 36.303],
             [-84.199, 36.303], [-84.199, 36.297]]]}}]}
            """;

    private CalibratedPlan() {}

    /** The plan without the calibration. */
    static Path plain(Path folder) throws IOException {
        String bench = SAMPLE.resolveSibling("invented-bench").toString().replace('\\', '/');
        String text = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace(
                        "tiles = \"tiles\"",
                        "tiles = \"" + SAMPLE.resolve("tiles").toString().replace('\\', '/') + "\"")
                .replace("../invented-bench", bench)
                .replace("cover = \"woodland\"", "cover = \"woodland\"\ncover_areas = \"clearing.geojson\"")
                .replace("radius_km = 5", "radius_km = 4")
                .replace("cell_m = 30", "cell_m = 200")
                .replace("talk = \"all-to-base\"", "talk = \"all-to-all\"");
        for (String name : new String[] {"walk-track.gpx", "walk-reports.csv"})
            Files.writeString(folder.resolve(name), Files.readString(SAMPLE.resolve(name)));
        Files.writeString(folder.resolve("clearing.geojson"), CLEARING);
        Path plan = folder.resolve("plain.toml");
        Files.writeString(plan, text);
        return plan;
    }

    /** The plan that has accepted it. */
    static Path accepted(Path folder) throws IOException {
        String text = Files.readString(plain(folder));
        Files.writeString(folder.resolve("calibration.toml"), CALIBRATION);
        Path plan = folder.resolve("plan.toml");
        Files.writeString(plan, text + "\n[calibration]\nfile = \"calibration.toml\"\n");
        return plan;
    }
}
