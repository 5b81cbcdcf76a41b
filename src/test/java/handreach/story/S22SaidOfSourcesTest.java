package handreach.story;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A default is never called stated in the plan. */
class S22SaidOfSourcesTest {
    private static final String TALK = """

            [[position]]
            name = "far side"
            at = "36.2520, -84.2300"
            loadout = "factory at hip"
            """;

    @TempDir
    Path folder;

    /** The equipment of the forest sample, two people, and what else is written. */
    private String plan(String ground, String more) throws IOException {
        Path sample = Path.of("elevation-samples", "forest-hills").toAbsolutePath();
        String text = Files.readString(sample.resolve("plan.toml"));
        String kit = text.substring(0, text.indexOf("[area]"))
                .replaceAll("\ncover = [^\n]*", "")
                .replace("tiles = \"tiles\"", "tiles = '" + sample.resolve("tiles") + "'\n" + ground)
                .replace("\"../invented-bench/bench.csv\"", "'" + sample.resolve("../invented-bench/bench.csv") + "'");
        String rest = """
                [area]
                centre = "base"
                radius_km = 3

                [reach]
                bearing_step_deg = 90
                cell_m = 150
                model = "handheld"

                [[position]]
                name = "base"
                at = "36.2700, -84.2100"
                loadout = "factory at face"
                base = true
                """;
        return Files.writeString(folder.resolve("plan.toml"), kit + rest + TALK + more)
                .toString();
    }

    /** Like for like differs in the last digit of a sum, and was told as the way back being weaker. */
    @Test
    void waysWithTheSameMarginAreAlike() throws IOException {
        String like = plan("", "");
        int alike = 0;
        for (String at :
                new String[] {"36.2520, -84.2300", "36.2600, -84.2000", "36.2810, -84.2210", "36.2500, -84.2110"}) {
            String told = run("path", "--plan", like, "--from", "base", "--to", at, "--to-loadout", "factory at face");
            if (told.contains("both ways are alike")) alike++;
        }
        assertEquals(4, alike);
    }

    @Test
    void aRelaySaysWhichTalksAndWhichDefaultsItCounts() throws IOException {
        String silent = run("relay", plan("", "\n[relay]\npower_w = 10\ntalk = \"all-to-all\"\n"));
        assertTrue(silent.contains("Talks counted: everybody with everybody."), silent);
        assertTrue(silent.contains("Our defaults, not in the plan's [relay]: \u2212118 dBm,"), silent);
        assertFalse(silent.contains("[relay]: 10"), silent);
        CommandRun auto =
                CommandRun.of("path", "--plan", plan("", ""), "--from", "base", "--to", "far side", "--model", "auto");
        assertEquals(2, auto.code());
        assertTrue(auto.err().contains("works in a plan"), auto.err());
    }

    private static String run(String... words) {
        CommandRun run = CommandRun.of(words);
        assertEquals(0, run.code(), run.err());
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void theGearOfARelayIsStatedOnlyWhereThePlanStatesIt() throws IOException {
        String silent = run("relay", plan("", "\n[relay]\nmast_m = 6\n"), "--json");
        assertFalse(silent.contains("stated in the plan"), silent);
        assertTrue(silent.contains("our suggestion, not in the plan"), silent);
        String said = run("relay", plan("", "\n[relay]\ngain_dbd = 0\nfeed_loss_db = 1.5\n"), "--json");
        assertTrue(said.contains("stated in the plan"), said);
        assertFalse(said.contains("our suggestion, not in the plan"), said);
    }

    @Test
    void theConstantsOfTheGroundAreThePlansOnlyWhereItStatesThem() throws IOException {
        String silent = report(plan("", ""));
        for (String what : new String[] {"P.527", "P.453"})
            assertTrue(silent.contains("our default, not in the plan; Rec. ITU-R " + what), what);
        assertTrue(silent.contains("open where nothing else is stated our default, not in the plan"), silent);
        String said = report(plan("type = \"wet\"\nk_factor = 1.3\ncover = \"woodland\"\n", ""));
        for (String what : new String[] {"P.527", "P.453"})
            assertTrue(
                    said.contains(" plan; Rec. ITU-R " + what) && !said.contains("default, not in the plan; Rec."),
                    what);
        assertTrue(said.contains("woodland where nothing else is stated plan "), said);
    }

    private String report(String plan) throws IOException {
        Path out = Files.createTempDirectory(folder, "out").resolve("report.html");
        run("report", plan, "--out", out.toString());
        return Files.readString(out).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    }
}
