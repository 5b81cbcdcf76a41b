package handreach.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.study.AtlasOptions;
import handreach.study.AtlasStudy;
import handreach.study.AtlasTrial;
import handreach.study.Scene;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the folder of an atlas says before anything is reckoned. */
class AtlasFolderTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"59, less than a minute", "61, about a minute", "95, some 2 minutes", "9000, some 2.5 hours"})
    void aTimeReadsAsPeopleSayIt(double seconds, String words) throws IOException {
        AtlasStudy study = AtlasStudy.of(
                Scene.open(PlanFile.open(Path.of("elevation-samples", "forest-hills"))),
                new AtlasOptions(3000, OptionalDouble.empty(), Optional.empty(), Set.of(), 0, OptionalDouble.empty()));
        try (AtlasFolder atlas = AtlasFolder.open(study, folder.resolve("out"))) {
            AtlasTrial trial =
                    new AtlasTrial(List.of(), seconds / study.positions().count());
            String cost = atlas.cost(trial, 1);
            assertTrue(cost.contains(", " + words + " here on 1 core"), cost);
        }
    }
}
