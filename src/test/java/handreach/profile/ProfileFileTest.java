package handreach.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.terrain.Cover;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProfileFileTest {
    @Test
    void allColumnsAreRead() {
        Profile profile = read(
                "# a path\n\nzone, height_m ,clutter_m,Distance_km\ninland,100,0,0\n\"coastal\",\"90.5\",,0.5\n# between\nsea,-3,2.5,1e0\n");
        assertEquals(3, profile.count());
        assertEquals(0.5, profile.distanceKm(1));
        assertEquals(90.5, profile.heightM(1));
        assertEquals(0, profile.clutterM(1));
        assertEquals(2.5, profile.clutterM(2));
        assertEquals(Zone.COASTAL, profile.zone(1));
        assertEquals(Zone.SEA, profile.zone(2));
        assertEquals(Cover.WATER, profile.cover(2));
        assertEquals(Cover.OPEN, profile.cover(0));
    }

    @Test
    void twoColumnsAreEnough() {
        Profile profile = read("distance_km,height_m\r\n0,1\r\n2,3\r\n");
        assertEquals(2, profile.lengthKm());
        assertEquals(Zone.INLAND, profile.zone(0));
    }

    @Test
    void aSpreadsheetMayPartBySemicolonsAndWriteDecimalCommas() {
        Profile profile = read("sep=;\ndistance_km;height_m\n0;100,5\n0,25;90\n");
        assertEquals(0.25, profile.distanceKm(1));
        assertEquals(100.5, profile.heightM(0));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "distance_km,heigth_m\\n0,1|line 1: there is no column \"heigth_m\". Did you mean height_m? Columns are distance_km, height_m, clutter_m, zone.",
                "0,1\\n1,2|line 1: the first row names none of the columns. A line of column heads is needed: distance_km,height_m,clutter_m,zone",
                "distance_km,clutter_m\\n0,1|the column heads lack height_m",
                "distance_km,height_m,height_m\\n0,1,1|the column height_m stands twice",
                "distance_km,height_m\\n0.1,5\\n1,2|line 2: distance_km begins at \"0.1\", but the first sample is at 0",
                "distance_km,height_m\\n0,5\\n0,2|line 3: distance_km is \"0\" after \"0.0\", but distances must increase",
                "distance_km,height_m\\n0,x\\n1,2|line 2: height_m is \"x\", allowed is a number from -500 to 9000 m.",
                "distance_km,height_m\\n0,\\n1,2|line 2: height_m is empty. Fill it in",
                "distance_km,height_m\\n0,NaN\\n1,2|height_m is \"NaN\"",
                "distance_km,height_m\\n0,1\\n1,9500|line 3: height_m is \"9500\", allowed is a number from -500 to 9000 m.",
                "distance_km,height_m\\n0,1\\n1,-9999|line 3: height_m is \"-9999\", allowed is a number from -500 to 9000 m.",
                "distance_km,height_m\\n0,1\\n1,2,3|line 3: has 3 cells, the column heads are 2. A decimal comma",
                "distance_km,height_m,clutter_m\\n0,1,-2\\n1,2,0|line 2: clutter_m is \"-2\", allowed is a number from 0 to 150 m.",
                "distance_km,height_m,zone\\n0,1,costal\\n1,2,sea|line 2: zone is \"costal\", allowed is inland, coastal, sea. Did you mean coastal?",
                "distance_km,height_m\\n0,1|has 1 sample, a profile needs at least 2",
                "distance_km,height_m|has 0 samples",
                "# nothing|holds no table. A line of column heads is expected: distance_km,height_m,clutter_m,zone",
            })
    void faultsNameLineAndRemedy(String text, String part) {
        String said = assertThrows(InputFault.class, () -> read(text.replace("\\n", "\n")))
                .getMessage();
        assertTrue(said.contains(part), said);
    }

    @Test
    void allFaultsAreToldTogetherEqualOnesOnce() {
        InputFault three =
                assertThrows(InputFault.class, () -> read("distance_km,height_m\n0,x\n1,2\n0.5,3\n2,99999\n"));
        assertEquals(3, three.faults().size());
        InputFault many = assertThrows(InputFault.class, () -> read("distance_km,height_m\n" + "1,x\n".repeat(10_000)));
        assertEquals(3, many.faults().size(), many.getMessage());
        assertTrue(many.getMessage().contains("And 9999 more like it: lines 3, 4, 5, 6 and so on."), many.getMessage());
    }

    @Test
    void twoHundredThousandSamplesAreRead() {
        StringBuilder text = new StringBuilder("distance_km,height_m,clutter_m\n");
        for (int i = 0; i < 200_000; i++)
            text.append(i / 1000)
                    .append('.')
                    .append(String.valueOf(1000 + i % 1000), 1, 4)
                    .append(',')
                    .append(i % 700)
                    .append(",0\n");
        Profile profile = read(text.toString());
        assertEquals(200_000, profile.count());
        assertEquals(199.999, profile.lengthKm());
    }

    @Test
    void noiseIsRefusedInWords() {
        String seed = "distance_km,height_m,clutter_m,zone\n0,100,0,inland\n0.5,120,10,coastal\n1,90,,sea\n";
        Random random = new Random(20260120);
        for (int i = 0; i < 2000; i++) {
            byte[] data = seed.getBytes(StandardCharsets.US_ASCII);
            for (int k = random.nextInt(5); k >= 0; k--)
                data[random.nextInt(data.length)] = (byte) (32 + random.nextInt(95));
            try {
                read(new String(data, StandardCharsets.US_ASCII));
            } catch (InputFault fault) {
                assertTrue(fault.faults().stream().allMatch(f -> f.source().equals("p.csv")));
            }
        }
    }

    private static Profile read(String text) {
        return ProfileFile.read(SourceText.of("p.csv", text));
    }
}
