package handreach.geodesy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.input.InputFault;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlaceTest {
    @ParameterizedTest
    @CsvFileSource(resources = "grid-geoconvert.csv", useHeadersInDisplayName = true)
    void gridReferencesAgreeWithGeoConvert(
            double lat, double lon, int zone, String hemisphere, double eastingM, double northingM, String mgrs) {
        Position place = new Position(lat, lon);
        assertEquals(mgrs, PlaceForm.MGRS.format(place).replace(" ", ""));
        assertEquals(0, GeodesicLine.distanceM(place, Place.parse("--from", mgrs)), Math.sqrt(0.5) + 0.001);
        String utm = PlaceForm.UTM.format(place);
        assertTrue(utm.startsWith(zone + mgrs.substring(2, 3) + " "), utm);
        assertTrue(utm.endsWith(String.format(Locale.ROOT, "%06d %07d", Math.round(eastingM), Math.round(northingM))));
    }

    /** Published: GeoConvert manual page, 38SMB4488 is 33.33424 N 44.40363 E, centre of the square 38n 444500 3688500. */
    @Test
    void aCoarseReferenceMeansTheCentreOfItsSquare() {
        Position place = Place.parse("--from", "38SMB4488");
        assertEquals(33.33424, place.latitudeDeg(), 5e-6);
        assertEquals(44.40363, place.longitudeDeg(), 5e-6);
        assertEquals("38S MB 44500 88500", PlaceForm.MGRS.format(place));
        assertEquals(0, GeodesicLine.distanceM(place, Place.parse("--from", "38S 444500 3688500")), 1e-6);
    }

    /** Oracle: the NGA library for MGRS; it may differ in the last metre, since it rounds its projection. */
    @Test
    void agreesWithAnotherLibrary() {
        Random random = new Random(20260104);
        for (int i = 0; i < 500; i++) {
            Position place = new Position(random.nextDouble() * 160 - 79, random.nextDouble() * 360 - 180);
            var other = mil.nga.mgrs.MGRS.from(
                    mil.nga.grid.features.Point.point(place.longitudeDeg(), place.latitudeDeg()));
            String ours = PlaceForm.MGRS.format(place).replace(" ", "");
            assertEquals(
                    other.getZone() + "" + other.getBand(),
                    "" + Integer.parseInt(ours.substring(0, 2)) + ours.charAt(2));
            Position theirs = Place.parse("oracle", other.toString());
            assertTrue(GeodesicLine.distanceM(place, theirs) < 3, ours + " and " + other);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "46.5,8.1",
                "46.5 8.1",
                " 46.5 ; 8.1 ",
                "46.5N 8.1E",
                "N46.5 E8.1",
                "8.1E, 46.5N",
                "46 30 8 6",
                "46 30.0 N 8 06.0 E",
                "46\u00b030'N 8\u00b06'E",
                "N 46\u00b030.000' E 008\u00b006.000'",
                "46\u00b030'00.0\"N 8\u00b006'00\"E",
                "46:30:00N 8:06:00E",
                "46\u00ba30\u203200\u2033n, 8\u00ba06\u203200\u2033e",
                "+46.5,+8.1"
            })
    void degreesAreReadInTheirUsualSpellings(String text) {
        assertEquals(new Position(46.5, 8.1), Place.parse("--from", text));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "-33.86,151.21",
                "33.86S 151.21E",
                "\u221233.86 151.21",
                "33\u00b051.6'S 151\u00b012.6'E",
                "-33 51.6, 151 12.6"
            })
    void theSouthIsReadToo(String text) {
        Position place = Place.parse("--to", text);
        assertEquals(-33.86, place.latitudeDeg(), 1e-12);
        assertEquals(151.21, place.longitudeDeg(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"32T 430941 5149997", "32 T 430941 5149997", "32t 430941mE 5149997mN", "32T 430941, 5149997"})
    void utmIsReadInItsUsualSpellings(String text) {
        assertEquals(0, GeodesicLine.distanceM(new Position(46.5, 8.1), Place.parse("--to", text)), 0.5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "151.21,-33.86 | Did you mean -33.86,151.21?",
                "46,5 8,1 | Write points: 46.5 8.1",
                "46.5;200 | longitude 200 is not between -180 and 180",
                "46 75 N 8 6 E | 75 minutes, they end below 60",
                "46 30 8 | Put a comma",
                "46.5 | two are needed",
                "46.5N 8.1N | one of N or S and one of E or W",
                "-46.5S 8.1E | both a minus sign and S",
                "46.5 30N 8E | fraction before its last number",
                "the old hut | A place is written",
                "NaN,8 | A place is written",
                "46.5,8.1,9 | 2 commas",
                "33S 334416 6251925 | not the hemisphere",
                "61T 430941 5149997 | zone 61",
                "32I 430941 5149997 | band I does not exist",
                "32T 30941 5149997 | easting 30941 m",
                "32T 430941 51499970 | northing 51499970 m",
                "32TMS309 | 3 digits",
                "32TZZ3094149996 | square ZZ does not exist",
                "32IMS3094149996 | band I does not exist",
                "34XWG1136686318 | 34X does not exist",
                "99TMS3094149996 | zone 99",
                "32TJS3094149996 | does not lie in zone 32T",
                "'' | is empty",
            })
    void whatCannotBeAPlaceIsExplained(String text, String part) {
        InputFault fault = assertThrows(InputFault.class, () -> Place.parse("--from", text));
        assertEquals(1, fault.faults().size());
        assertEquals("--from", fault.faults().get(0).source());
        assertTrue(fault.getMessage().contains(part), fault.getMessage());
    }

    @ParameterizedTest
    @EnumSource(PlaceForm.class)
    void whatIsShownCanBeReadBack(PlaceForm form) {
        Random random = new Random(20260105);
        for (int i = 0; i < 700; i++) {
            Position place = new Position(random.nextDouble() * 164 - 80, random.nextDouble() * 360 - 180);
            Position back = Place.parse("test", form.format(place));
            assertTrue(GeodesicLine.distanceM(place, back) < 1.6, form.format(place));
            if (form == PlaceForm.MGRS) assertEquals(form.format(place), form.format(back));
        }
        assertEquals(form, PlaceForm.KEYWORD.find(form.word()).orElseThrow());
    }

    @Test
    void roundingCarriesAndZeroHasNoSign() {
        assertEquals(
                "60\u00b000.000'N 0\u00b000.000'E", PlaceForm.DEGREES_MINUTES.format(new Position(59.999999, -1e-9)));
        assertEquals("0.00000, 0.00000", PlaceForm.DECIMAL.format(new Position(-1e-9, 0)));
        assertEquals("88.00000, 5.00000", PlaceForm.MGRS.format(new Position(88, 5)));
    }

    @Test
    void theLocaleChangesNothing() {
        Locale before = Locale.getDefault();
        try {
            for (String tag : new String[] {"de-DE", "tr-TR", "ar-EG-u-nu-arab"}) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                assertEquals("46.50000, 8.10000", PlaceForm.DECIMAL.format(new Position(46.5, 8.1)));
                assertEquals("32T MS 30941 49996", PlaceForm.MGRS.format(new Position(46.5, 8.1)));
                assertEquals(new Position(46.5, 8.1), Place.parse("x", "46.5n 8.1e"));
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    /** No text makes it hang or speak of anything but the input. */
    @Test
    void noiseIsRefusedInWords() {
        Random random = new Random(20260106);
        String letters = "0123456789.,;-+ NSEWXTM\u00b0'\":E";
        for (int i = 0; i < 6_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int k = random.nextInt(24); k >= 0; k--) text.append(letters.charAt(random.nextInt(letters.length())));
            try {
                Place.parse("noise", text.toString());
            } catch (InputFault fault) {
                assertEquals(1, fault.faults().size());
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0,north",
        "22.4,north",
        "22.6,north-east",
        "90,east",
        "181,south",
        "315,north-west",
        "359,north",
        "-45,north-west"
    })
    void directionsHaveWords(double azimuthDeg, String word) {
        assertEquals(word, Compass.word(azimuthDeg));
    }
}
