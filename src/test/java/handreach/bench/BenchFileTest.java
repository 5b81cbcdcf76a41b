package handreach.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BenchFileTest {
    private static final String H = Bench.HEADER;

    /** Far above what reading takes on a busy machine, far below what a square of blanks takes. */
    private static final java.time.Duration HANG = java.time.Duration.ofSeconds(60);

    @Test
    void aPlainRowIsRead() {
        Reading r = Bench.read(H + "whip,in hand,received_level,-41.80,dBm,155,3,breezy\n")
                .readings()
                .get(0);
        assertEquals("whip", r.antenna());
        assertEquals(MountKind.HAND, r.mounting().kind());
        assertEquals(Quantity.RECEIVED_LEVEL, r.quantity());
        assertEquals(-41.8, r.value(), 0);
        assertEquals(0.01, r.measured().step(), 1e-15);
        assertEquals(OptionalDouble.of(155), r.frequencyMhz());
        assertEquals(OptionalInt.of(3), r.trial());
        assertEquals(2, r.line());
        assertEquals("breezy", r.row().note());
    }

    @Test
    void columnsStandInAnyOrderAndOptionalOnesMayLack() {
        Reading r = Bench.read("value,unit,quantity,mount,antenna\n1.5,:1,swr,box,whip\n")
                .readings()
                .get(0);
        assertEquals(1.5, r.value(), 0);
        assertEquals(OptionalDouble.empty(), r.frequencyMhz());
        assertEquals(OptionalInt.empty(), r.trial());
    }

    @Test
    void blankLinesCommentsAndQuotesKeepTheLineNumbers() {
        String text = "# a remark\n\n" + H + "\n# another\n\"whip, long\",box,swr,1.5,:1,155,1,\"two\nlines\"\n\n"
                + "whip,box,swr,2,:1,155,2,\n,,,,,,,\n  \nwhip,box,swr,2.5,:1,155,3,\n";
        List<Reading> readings = Bench.read(text).readings();
        assertEquals(List.of(6, 9, 12), readings.stream().map(Reading::line).toList());
        assertEquals("whip, long", readings.get(0).antenna());
        assertEquals("two\nlines", readings.get(0).row().note());
    }

    @Test
    void aSpreadsheetsExportWithSemicolonsAndDecimalCommasIsReadWithANote(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("sheet.csv");
        String text =
                "\uFEFFsep=;\r\n\"# linearity_db = 0,5\";;;;;;;\r\nantenna;mount;quantity;value;unit;frequency_mhz;trial;note\r\n"
                        + "whip;hand;received_level;-41,8;dBm;155,0;1;\r\n;;;;;;;\r\nwhip;hand;field_meter;12,5;\u00B5A;155;1;\r\n";
        Files.writeString(file, text, StandardCharsets.UTF_8);
        BenchFile read = BenchFile.read(file);
        assertEquals(-41.8, read.readings().get(0).value(), 0);
        assertEquals(12.5, read.readings().get(1).value(), 0);
        assertEquals(6, read.readings().get(1).line());
        assertEquals(1, read.declarations().doubts().size());
        assertTrue(Bench.together(read.notes()).contains("Decimal commas were read as decimal points (lines 4, 6)"));
    }

    @Test
    void anOldSpreadsheetsCodePageIsReadWithANote(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("old.csv");
        Files.write(
                file,
                "antenna;mount;quantity;value;unit;note\nlange R\u00FCte;hand;field_meter;12,5;\u00B5A;f\u00FCnf\n"
                        .getBytes(Charset.forName("windows-1252")));
        BenchFile read = BenchFile.read(file);
        assertEquals("lange R\u00FCte", read.readings().get(0).antenna());
        assertTrue(Bench.together(read.notes()).contains("Windows"));
    }

    @Test
    void aWorkbookIsNotTakenForText(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("book.xlsx");
        Files.write(file, new byte[] {'P', 'K', 3, 4, 0, 0, 8});
        InputFault fault = assertThrows(InputFault.class, () -> BenchFile.read(file));
        assertTrue(fault.getMessage().contains("book.xlsx: is not text"), fault.getMessage());
    }

    @Test
    void theSpreadsheetsOwnLineSaysWhatPartsTheCells() {
        String text = "sep=;\nantenna;mount,hand or box;mount;quantity;value;unit\nwhip;a,b,c,d,e;box;swr;1,5;:1\n";
        assertEquals(1.5, Bench.read(text).readings().get(0).value(), 0);
    }

    @Test
    void aFaultOfManyRowsIsToldOnce() {
        String row = "whip,hand,received_level,-41,volts,155,,\n";
        assertEquals(
                List.of(
                        "bench.csv line 2: unit is \"volts\", but received_level is written in dBm. Convert the value, or correct"
                                + " the unit. And 5 more like it: lines 3, 4, 5, 6 and so on."),
                Bench.faults(H + row.repeat(6)));
    }

    @Test
    void aRowMayLeaveOffCellsAtItsEnd() {
        assertEquals(
                "",
                Bench.read(H + "whip,hand,swr,2,:1\n").readings().get(0).row().note());
    }

    @Test
    void tabsSeparateToo() {
        String text = "antenna\tmount\tquantity\tvalue\tunit\nwhip\tbox\tswr\t1,5\t:1\n";
        assertEquals(1.5, Bench.read(text).readings().get(0).value(), 0);
    }

    @Test
    void aDecimalCommaAmongCommasIsAFaultWithItsLine() {
        String quoted = Bench.together(Bench.faults(H + "whip,hand,received_level,\"-41,8\",dBm,155,1,\n"));
        assertTrue(quoted.startsWith("bench.csv line 2: value is -41,8, written with a decimal comma"), quoted);
        String bare = Bench.together(Bench.faults(H + "whip,hand,received_level,-41,8,dBm,155,1,\n"));
        assertTrue(bare.startsWith("bench.csv line 2: value is -41,8, written with a decimal comma"), bare);
        String note = Bench.together(Bench.faults(H + "whip,hand,received_level,-41.8,dBm,155,1,calm, dry\n"));
        assertTrue(note.startsWith("bench.csv line 2: has 9 cells, the column heads are 8."), note);
    }

    /** Quantity, value, unit, and what the fault must say. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "received_level|20|uA|unit is \"uA\", but received_level is written in dBm. Microamps",
                "received_level|20||unit is missing: received_level is written in dBm.",
                "received_level|6|dB|Decibels alone have no reference",
                "received_level|6|dBi|A gain has no meaning without its reference",
                "received_level|40|dBuV|dBm is dBuV less 107",
                "received_level|5|W|unit is \"W\", but received_level is written in dBm.",
                "received_level|-500|dBm|received_level is -500, allowed is -200 to 60 dBm.",
                "received_level|loud|dBm|value is \"loud\", a number is expected.",
                "received_level|NaN|dBm|value is \"NaN\", a number is expected.",
                "field_meter|-50|dBm|A level in dBm belongs to the quantity received_level.",
                "field_meter|-5|uA|field_meter is -5, allowed is 0 to 1000000 uA.",
                "swr|0.8|:1|swr is 0.8, but SWR is never below 1",
                "gain|6|dB|A gain has no meaning without its reference: over isotropic (dBi), over a half-wave dipole (dBd)",
                "antenna gain|6|dBi|Give the received_level of this antenna and of the control instead",
                "recieved_level|-41|dBm|Did you mean received_level?",
                "resonance|155000|kHz|resonance is written in MHz",
                "bandwidth|0|MHz|bandwidth is 0, allowed is 0.001 to 10000 MHz.",
                "return_loss|300|dB|return_loss is 300, allowed is -100 to 100 dB.",
            })
    void whatCannotBeMeantIsRefusedWithItsLine(String quantity, String value, String unit, String words) {
        String row = "whip,hand," + quantity + "," + (value == null ? "" : value) + "," + (unit == null ? "" : unit);
        String said = Bench.together(Bench.faults(H + row + ",155,1,\n"));
        assertTrue(said.startsWith("bench.csv line 2: "), said);
        assertTrue(said.contains(words), said);
    }

    @Test
    void frequenciesAndTrialsAreChecked() {
        String said = Bench.together(Bench.faults(H
                + "whip,hand,received_level,-41,dBm,155000000,1,\n"
                + "whip,hand,received_level,-41,dBm,155000,1,\n"
                + "whip,hand,received_level,-41,dBm,155,1.5,\n"
                + "whip,hand,received_level,-41,dBm,155,first,\n"));
        assertTrue(said.contains("line 2: frequency_mhz is 155000000") && said.contains("looks like hertz"), said);
        assertTrue(said.contains("line 3: frequency_mhz is 155000,") && said.contains("looks like kilohertz"), said);
        assertTrue(said.contains("line 4: trial is \"1.5\""), said);
        assertTrue(said.contains("Number the trials 1, 2, 3 and so on. And 1 more like it: line 5."), said);
    }

    @Test
    void allFaultsOfAFileAreToldTogether() {
        List<String> said =
                Bench.faults("# linearity_db = loud\n" + H + ",hand,swr,0.5,:1,155,1,\nwhip,,swr,2,dB,155,2,\n");
        assertEquals(5, said.size(), said::toString);
    }

    @Test
    void aTrialStandsOnce() {
        String said = Bench.together(Bench.faults(
                H + "whip,hand,received_level,-41,dBm,155,1,\nWhip,Hand,received_level,-42,dBm,155.0,1,\n"));
        assertEquals(
                "bench.csv line 3: trial 1 of whip, hand, received_level stands already in line 2. Number each trial once, or"
                        + " drop one row.",
                said);
        assertEquals(
                2,
                Bench.read(H + "whip,hand,swr,2,:1,155,1,\nwhip,hand,swr,2,:1,156,1,\n")
                        .readings()
                        .size());
    }

    @Test
    void aNegativeReturnLossIsTakenAsPositiveWithANote() {
        BenchFile read = Bench.read(H + "whip,hand,return_loss,-12.5,dB,155,1,\n");
        assertEquals(12.5, read.readings().get(0).value(), 0);
        assertTrue(Bench.together(read.notes()).contains("A negative return loss was taken as its positive value"));
        assertTrue(Bench.together(read.notes()).contains("line 2"));
    }

    @Test
    void theHeaderIsChecked() {
        assertTrue(Bench.faults("whip,hand,swr,2,:1\n")
                .get(0)
                .contains("line 1: the first row names none of the columns"));
        assertTrue(Bench.faults("antenna,mount,value,unit\n").get(0).contains("the column heads lack quantity."));
        assertTrue(
                Bench.faults("antenna,mount,quantity,value,unit,trail\n").get(0).contains("Did you mean trial?"));
        assertTrue(Bench.faults("antenna,mount,quantity,value,unit,unit\n")
                .get(0)
                .contains("the column unit stands twice"));
        assertTrue(Bench.faults("").get(0).contains("holds no table"));
        assertTrue(Bench.faults("# only a remark\n").get(0).contains("holds no table"));
        assertTrue(Bench.faults(H)
                .get(0)
                .contains("has column heads but no reading yet. Fill in the column of values and save the file again"));
        BenchFile read = Bench.read("antenna,mount,quantity,value,unit,operator\nwhip,hand,swr,2,:1,somebody\n");
        assertTrue(Bench.together(read.notes()).contains("The column \"operator\" is not used."));
    }

    @Test
    void wordsThatPeopleWriteAreRead() {
        BenchFile read = Bench.read(
                "Antenna,Mounting,Quantity,Value,Units,Frequency (MHz),Turn,Remarks\n"
                        + "whip,hand,level,-41.8,dBm,155,1,\nwhip,hand,Field strength,38,\u00B5A,155,1,\nwhip,hand,SWR,1.6,,155,1,dry\n");
        assertEquals(
                List.of(Quantity.RECEIVED_LEVEL, Quantity.FIELD_METER, Quantity.SWR),
                read.readings().stream().map(Reading::quantity).toList());
        assertEquals(OptionalDouble.of(155), read.readings().get(0).frequencyMhz());
        assertEquals(1, read.readings().get(0).trial().getAsInt());
        assertEquals("dry", read.readings().get(2).row().note());
        assertEquals(List.of(), read.notes());
    }

    @Test
    void aColumnMayBeHeadedByWhatWasReadAndItsUnit() {
        BenchFile read = Bench.read("antenna;mount;Received level [dBm];trial\nwhip;hand;-41,8;1\n");
        assertEquals(Quantity.RECEIVED_LEVEL, read.readings().get(0).quantity());
        assertEquals(-41.8, read.readings().get(0).value(), 0);
        assertEquals(0.1, read.readings().get(0).measured().step(), 1e-12);
        String said = Bench.together(Bench.faults("antenna,mount,level (W),trial\nwhip,hand,0.1,1\n"));
        assertTrue(said.contains("line 2: unit is \"w\", but received_level is written in dBm"), said);
        String hertz =
                Bench.together(Bench.faults("antenna,mount,level (dBm),frequency (kHz)\nwhip,hand,-40,155000\n"));
        assertTrue(hertz.contains("line 1: the column \"frequency_(khz)\" is not in megahertz"), hertz);
    }

    @Test
    void whatWasNotReadIsLeftOutAndCounted() {
        BenchFile read = Bench.read(H + "whip,hand,level,-41.8,dBm,155,1,\nwhip,hand,level,,dBm,155,2,\n"
                + "whip,hand,level,n/a,dBm,155,3,\nwhip,hand,level,-,dBm,155,4,battery flat\n");
        assertEquals(1, read.readings().size());
        assertEquals(
                "3 readings are empty or marked as not read and left out (lines 3, 4, 5).",
                Bench.together(read.notes()));
    }

    @Test
    void oneColumnATrialIsReadTurnByTurn() {
        String table = "Antenna;Mount;Frequency (MHz);Trial 1 (dBm);Trial 2 (dBm);3 (dBm)\n"
                + "helical;hand;155;-41,8;-42,3;-41,5\nwhip;hand;155;-39,6;n/a;-39,7\n";
        BenchFile read = Bench.read(table);
        assertEquals(
                List.of("helical 1 -41.8", "whip 1 -39.6", "helical 2 -42.3", "helical 3 -41.5", "whip 3 -39.7"),
                read.readings().stream()
                        .map(r -> r.antenna() + " " + r.trial().getAsInt() + " " + r.value())
                        .toList());
        assertTrue(Bench.together(read.notes()).contains("each column is taken as one turn"), read.notes()::toString);
        BenchFile blocks = Bench.read("# order = blocks\n" + table);
        assertEquals(
                List.of("helical", "helical", "helical", "whip", "whip"),
                blocks.readings().stream().map(Reading::antenna).toList());
        assertTrue(!Bench.together(blocks.notes()).contains("one turn"), blocks.notes()::toString);
    }

    @Test
    void aWideTableSaysTheSameAsALongOne() {
        StringBuilder wide = new StringBuilder("antenna,mount");
        for (int i = 1; i <= 6; i++) wide.append(",trial ").append(i).append(" (dBm)");
        wide.append("\nhelical,hand");
        for (double level : Bench.CONTROL) wide.append(',').append(level);
        wide.append("\nwhip,hand");
        for (double level : Bench.CANDIDATE) wide.append(',').append(level);
        BenchAnalysis one = BenchAnalysis.of(Bench.read(wide + "\n"), "helical");
        BenchAnalysis other = new Bench()
                .header()
                .inTurns("helical", Bench.CONTROL, "whip", Bench.CANDIDATE)
                .against("helical");
        assertEquals(
                other.deltas("whip").get(0).estimate(),
                one.deltas("whip").get(0).estimate());
    }

    @Test
    void aWideTableThatDoesNotSayWhatWasReadIsAFault() {
        String said = Bench.together(Bench.faults("antenna,mount,trial 1,trial 2\nwhip,hand,-41.8,-42\n"));
        assertTrue(said.contains("line 2: nothing says what was read. Head the trials with the unit"), said);
        String twice = Bench.together(Bench.faults("antenna,mount,trial 1 (dBm),turn 1 (dBm)\nwhip,hand,-41.8,-42\n"));
        assertTrue(twice.contains("trial 1 of whip, hand, received_level stands already in line 2"), twice);
    }

    @Test
    void anOpenQuoteIsAFault() {
        String said = Bench.together(Bench.faults(H + "whip,hand,swr,2,:1,155,1,\"open\nwhip,hand,swr,2,:1,155,2,\n"));
        assertTrue(said.contains("a quotation mark is not closed"), said);
        assertTrue(said.startsWith("bench.csv line 2: "), said);
    }

    @Test
    void otherSpellingsOfANameAreOneAntenna() {
        BenchFile read = Bench.read(H + "Long  whip,hand,swr,2,:1,155,1,\nlong whip,hand,swr,2,:1,155,2,\n");
        assertEquals("Long whip", read.readings().get(1).antenna());
        assertTrue(Bench.together(read.notes()).contains("taken as the same antenna"));
    }

    @Test
    void anUnknownMountingIsToldAndTreatedAsAChassis() {
        BenchFile read = Bench.read(H + "whip,windowsill,swr,2,:1,155,1,\n");
        assertEquals(MountKind.CHASSIS, read.readings().get(0).mounting().kind());
        assertTrue(Bench.together(read.notes())
                .contains("\"windowsill\" is not a known word and is treated as a chassis"));
    }

    @Test
    void declarationsAreRead() {
        Declarations d = Bench.read("# control = factory helical\n# order = interleaved\n# noise_floor_dbm = -110\n"
                        + "# overload_dbm = -10\n# distance_m = 12\n# tx_height_m = 1.5\n# rx_height_m = 1.4\n# ground = dry\n"
                        + "# earlier_scatter_db = 0.6\n# earlier_scatter_trials = 20\n# resolution_db = 1\n"
                        + "# linearity_db = 0.5\n# phase_centre_db for long whip = 0.8 triangular 50 %\n"
                        + "# just a remark = of somebody\n" + H + "whip,hand,swr,2,:1,155,1,\n")
                .declarations();
        assertEquals("factory helical", d.control().orElseThrow());
        assertEquals(Declarations.TrialOrder.INTERLEAVED, d.order().orElseThrow());
        assertEquals(-110, d.instrument().noiseFloorDbm().getAsDouble(), 0);
        assertEquals(-10, d.instrument().overloadDbm().getAsDouble(), 0);
        assertEquals(12, d.range().orElseThrow().distanceM(), 0);
        assertEquals(RangeGround.DRY, d.range().orElseThrow().ground());
        assertEquals(20, d.instrument().earlierScatter().orElseThrow().trials());
        assertEquals(1, d.doubtsOf("whip", "control").size());
        assertEquals(2, d.doubtsOf("Long Whip", "control").size());
        assertEquals(0.8 / Math.sqrt(6), d.doubts().get(1).part().standardUncertainty(), 1e-12);
        assertEquals(2, d.doubts().get(1).part().degreesOfFreedom(), 1e-12);
        assertEquals(1, d.instrument().resolutionDb().getAsDouble(), 0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "linearty_db = 0.5|Did you mean linearity_db?",
                "linearity_db = 0.5 oval|expected are decibels from 0 to 60",
                "linearity_db =|linearity_db has no value",
                "order = random|allowed are interleaved",
                "distance_m = 12|alone do not give the test range",
                "distance_m = far|a number from 0.1 to 100000 is expected",
                "detector_law = cubic|allowed are square",
                "meter_calibration = 10:-30, 20|has the step \"20\"",
                "meter_calibration = 10:-30, 20:-31|falls or stands still",
                "meter_calibration = 10:-30|has one step",
                "earlier_scatter_db = 0.5|are needed together",
                "earlier_scatter_trials = 20.5|earlier_scatter_trials is 20.5, allowed are whole numbers from 2",
                "permittivity = 15|are needed together",
                "ground = swamp|allowed are average, wet and dry",
                "distance_m for whip = 12|holds for the whole file",
            })
    void wrongDeclarationsAreRefusedWithTheirLine(String declaration, String words) {
        String said = Bench.together(Bench.faults("# " + declaration + "\n" + H + "whip,hand,swr,2,:1,155,1,\n"));
        assertTrue(said.startsWith("bench.csv line 1: "), said);
        assertTrue(said.contains(words), said);
    }

    @Test
    void declarationsBelowTheHeaderOrTwiceAreRefused() {
        assertTrue(Bench.faults(H + "# distance_m = 3\nwhip,hand,swr,2,:1,155,1,\n")
                .get(0)
                .contains("line 2: the declaration distance_m stands below the header"));
        assertTrue(Bench.faults("# order = blocks\n# order = blocks\n" + H + "whip,hand,swr,2,:1,155,1,\n")
                .get(0)
                .contains("line 2: order is declared twice"));
        assertTrue(Bench.faults(
                        "# detector_law = square\n# meter_calibration = 1:2,3:4\n" + H + "whip,hand,swr,2,:1,155,1,\n")
                .get(0)
                .contains("Keep the calibration"));
    }

    /** A million blanks in a declaration: read over, not searched from each blank anew. */
    @Test
    void blanksOfAnyLengthAreReadOver() {
        String blanks = " ".repeat(1_000_000);
        for (String line : List.of(
                "# linearity_db" + blanks + "x",
                "# linearity_db for whip" + blanks + "= 0.5",
                "# linearity_db =" + blanks + "0.5" + blanks + "10 %" + blanks + ",",
                "# remark " + blanks + ";" + blanks + "end"))
            assertTimeoutPreemptively(HANG, () -> Bench.read(line + "\n" + H + "whip,hand,swr,2,:1,155,1,\n"));
        Declarations read = Bench.read("# linearity_db for long" + blanks + "whip = 0.5" + blanks + "10 %\n" + H
                        + "whip,hand,swr,2,:1,155,1,\n")
                .declarations();
        assertEquals(1, read.doubtsOf("long whip", "control").size());
    }

    @Test
    void microampsThatNoMeterShowsAreRefused() {
        assertTrue(Bench.faults(H + "whip,hand,field_meter,4.9e-324,uA,155,1,\n")
                .get(0)
                .contains("no meter shows less than 0.000001"));
        assertEquals(
                1,
                Bench.read(H + "whip,hand,field_meter,0,uA,155,1,\n").readings().size());
    }
}
