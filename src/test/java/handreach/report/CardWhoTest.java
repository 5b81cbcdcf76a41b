package handreach.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.plan.PlanFile;
import handreach.reach.Progress;
import handreach.relay.DirectLink;
import handreach.relay.Party;
import handreach.report.card.CardLine;
import handreach.report.card.CardPerson;
import handreach.report.card.CardSize;
import handreach.report.figure.MapPlace;
import handreach.report.figure.RoseWay;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.RelayAnswer;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import handreach.study.Whereabouts;
import handreach.units.Shares;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A crew of two, a patrol and a sector on real ground, with one relay that cannot serve all of them. */
class CardWhoTest {
    private static final Path SAMPLE = Path.of("elevation-samples/forest-hills").toAbsolutePath();
    private static final Instant MADE = Instant.parse("2026-05-02T06:30:00Z");

    @TempDir
    static Path folder;

    private static Scene scene;
    private static RelayAnswer relay;
    private static ReachAnswer reach;

    private static Path plan(String name, String more) throws IOException {
        String plan = Files.readString(SAMPLE.resolve("plan.toml"))
                .replace("tiles = \"tiles\"", "tiles = '" + SAMPLE.resolve("tiles") + "'")
                .replace("\"../invented-bench/bench.csv\"", "'" + SAMPLE.resolve("../invented-bench/bench.csv") + "'")
                .replaceAll("(?s)\\[\\[walk\\]\\].*", "")
                .replace("radius_km = 5", "radius_km = 4")
                .replace("cell_m = 30", "cell_m = 150")
                .replace("bearing_step_deg = 5", "bearing_step_deg = 15")
                .replace("count = 2 ", "count = 1 ")
                .replace("mast_m = 6", "mast_m = 2");
        Path file = folder.resolve(name);
        Files.writeString(file, plan + more);
        return file;
    }

    @BeforeAll
    static void reckonOnce() throws IOException {
        Files.writeString(folder.resolve("sector.geojson"), """
                {"type":"Polygon","coordinates":[[[-84.240,36.285],[-84.215,36.285],[-84.215,36.305],[-84.240,36.305],
                [-84.240,36.285]]]}
                """);
        scene = Scene.open(PlanFile.open(plan("plan.toml", """

                [[route]]
                name = "patrol loop"
                file = '%s'
                loadout = "factory at hip"

                [[sector]]
                name = "Sector 1"
                polygon = "sector.geojson"
                loadout = "factory at hip"
                """.formatted(SAMPLE.resolve("walk-track.gpx")))));
        relay = RelayStudy.run(scene, Progress.SILENT);
        reach = ReachStudy.run(scene, false, Progress.SILENT);
    }

    private static CardWho who(Optional<RelayAnswer> sites) {
        return new CardWho(Whereabouts.of(scene), sites, scene.plan());
    }

    private static CardPerson row(String name) {
        return who(Optional.of(relay)).people().rows().stream()
                .filter(person -> person.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static PDFTextStripper front() throws IOException {
        PDFTextStripper front = new PDFTextStripper();
        front.setEndPage(1);
        return front;
    }

    /** The front; a back it has only where places stand in a list that has no room for them. */
    private static String text(boolean fold, CardSize paper) throws IOException {
        Path file = folder.resolve("card.pdf");
        CardFiles.write(reach, Optional.of(relay), MADE, paper, fold, file);
        try (PDDocument card = Loader.loadPDF(file.toFile())) {
            String text = front().getText(card).replaceAll("\\s+", " ");
            assertEquals(text.contains("overleaf") ? 2 : 1, card.getNumberOfPages());
            return text;
        }
    }

    @Test
    void everybodyWhomTheRelaysLeaveOutIsNamed() throws IOException {
        List<RelayAnswer.Unserved> unserved = relay.found().orElseThrow().unserved();
        List<Party> demands = relay.question().demands();
        assertTrue(unserved.size() > 1, "the case needs several, there are " + unserved.size());
        List<CardLine> lines = new RelayComposer(relay).cardLines();
        assertTrue(lines.get(0).strong().startsWith("Relay"), "where it stands comes first: " + lines);
        String line = lines.stream()
                .filter(one -> one.strong().equals("Not served:"))
                .findFirst()
                .orElseThrow()
                .words();
        for (RelayAnswer.Unserved one : unserved) {
            Party demand = demands.get(one.demand());
            long inGroup = unserved.stream()
                    .filter(other -> demands.get(other.demand()).group().equals(demand.group()))
                    .count();
            String told =
                    demand.group().isEmpty() ? demand.name() : demand.group().get() + " (" + inGroup + " of ";
            assertTrue(line.contains(told), told + " in " + line);
        }
        for (boolean fold : new boolean[] {false, true})
            for (CardSize paper : CardSize.values()) {
                String card = text(fold, paper);
                // what is turned upside down is read back without its blanks
                assertTrue(card.replace(" ", "").contains(line.replace(" ", "")), line + " on " + card);
            }
    }

    @Test
    void namesWithoutRoomAreCounted() {
        List<String> ten = List.of("a", "b", "c", "d", "e", "f", "g", "h", "i", "j");
        assertEquals("a, b, c, d, e, f, g, h and 2 more", RelayComposer.listed(ten));
        assertEquals("a, b", RelayComposer.listed(ten.subList(0, 2)));
    }

    @Test
    void everybodyStandsOnOnePageUnderTheirOwnName() throws IOException {
        for (boolean fold : new boolean[] {false, true})
            for (CardSize paper : CardSize.values()) {
                String card = text(fold, paper);
                for (String name : List.of("spike camp", "north spur", "creek crew", "patrol loop", "Sector 1"))
                    assertTrue(card.contains(name), name + " on " + card);
            }
        List<String> labels =
                who(Optional.of(relay)).places().stream().map(MapPlace::label).toList();
        assertEquals(List.of("spike camp", "north spur", "creek crew", "Relay"), labels);
        assertEquals(
                List.of("patrol loop", "Sector 1"),
                who(Optional.of(relay)).ways().stream().map(RoseWay::label).toList());
    }

    @Test
    void placeBearingAndDistanceStandBesideTheName() {
        // by hand: 0.0300° of latitude is 3.33 km, 0.0150° of longitude at 36.3° is 1.35 km: 3.6 km towards 22°
        assertEquals("16S 751877 4020875", row("north spur").place());
        assertEquals("022\u00b0, 3.6 km", row("north spur").way());
        assertEquals("", row("spike camp").way());
    }

    @Test
    void oddsAreThoseOfTheTalkWithoutARelay() { // oracle: the straight talks of the relay study
        List<Party> demands = relay.question().demands();
        int checked = 0;
        for (DirectLink link : relay.direct().links()) {
            String a = demands.get(link.talk().a()).name();
            String b = demands.get(link.talk().b()).name();
            boolean isFirstBase = a.equals("spike camp");
            String other = isFirstBase ? b : a;
            if (!List.of("north spur", "creek crew").contains(other)) continue;
            double there = link.path().orElseThrow().odds().there();
            double back = link.path().orElseThrow().odds().back();
            CardPerson.Odds told = row(other).odds();
            assertEquals(Shares.odds(isFirstBase ? back : there), told.calls().words());
            assertEquals(Shares.odds(isFirstBase ? there : back), told.hears().words());
            checked++;
        }
        assertEquals(2, checked);
    }

    @Test
    void oddsBelowTheWantedAreMarkedAndOthersAreNot() {
        double wanted = scene.plan().channel().wish().odds();
        for (Whereabouts.Person person : Whereabouts.of(scene).people()) {
            if (person.odds().isEmpty()) continue;
            CardPerson.Odds told = row(person.name()).odds();
            assertEquals(person.odds().get().there() < wanted, told.calls().isWeak(), person.name());
            assertEquals(person.odds().get().back() < wanted, told.hears().isWeak(), person.name());
        }
    }

    @Test
    void theRelayStandsOnTheRoseAndItsOddsInTheTable() {
        MapPlace last = who(Optional.of(relay)).places().get(3);
        assertEquals(MapPlace.Kind.RELAY, last.kind());
        assertEquals(relay.recommended().orElseThrow().sites().get(0), last.position());
        assertFalse(row("creek crew").odds().byRelay().words().isBlank());
        assertTrue(who(Optional.empty()).people().rows().stream()
                .allMatch(person -> person.odds().byRelay().words().isBlank()));
    }

    /** A place beside the base had the odds of the straight talk in the column of the relay. */
    @Test
    void byRelayIsTheWeakestHopEvenWhereTheStraightTalkIsBetter() throws IOException {
        Scene near = Scene.open(PlanFile.open(plan(
                "near.toml",
                "\n[[position]]\nname = \"next door\"\nat = \"36.2712, -84.2100\"\nloadout = \"factory at hip\"\n")));
        RelayAnswer answer = RelayStudy.run(near, Progress.SILENT);
        CardWho who = new CardWho(Whereabouts.of(near), Optional.of(answer), near.plan());
        String base = Whereabouts.of(near).base().orElseThrow().name();
        CardPerson row = who.people().rows().stream()
                .filter(person -> person.name().equals("next door"))
                .findFirst()
                .orElseThrow();
        double weakest = Math.min(hop(answer, "next door"), hop(answer, base));
        assertEquals(
                Shares.oddsRange(weakest, weakest, near.plan().channel().wish().odds()),
                row.odds().byRelay().words());
        assertTrue(who.people().note().contains("talk straight"), who.people().note());
    }

    private static double hop(RelayAnswer answer, String name) {
        return answer.recommended().orElseThrow().hops().stream()
                .flatMap(Optional::stream)
                .filter(hop ->
                        answer.question().demands().get(hop.demand()).name().equals(name))
                .findFirst()
                .orElseThrow()
                .path()
                .odds()
                .weaker();
    }

    @Test
    void manyPlacesGoOntoTheRoseByTheNumbersOfTheTable() throws IOException {
        StringBuilder more = new StringBuilder();
        for (int i = 0; i < 9; i++)
            more.append(
                    "\n[[position]]\nname = \"Division %d\"\nat = \"%.4f, -84.2000\"\nloadout = \"factory at hip\"\n"
                            .formatted(i, 36.262 + 0.004 * i));
        Scene many = Scene.open(PlanFile.open(plan("many.toml", more.toString())));
        CardWho who = new CardWho(Whereabouts.of(many), Optional.empty(), many.plan());
        List<CardPerson> rows = who.people().rows();
        assertEquals(12, rows.size());
        for (int i = 0; i < rows.size(); i++) {
            assertEquals(String.valueOf(i + 1), rows.get(i).number());
            assertEquals(rows.get(i).number(), who.places().get(i).label());
        }
        Path file = folder.resolve("many.pdf");
        CardFiles.write(ReachStudy.run(many, false, Progress.SILENT), Optional.empty(), MADE, CardSize.A4, false, file);
        try (PDDocument card = Loader.loadPDF(file.toFile())) {
            String text = front().getText(card).replaceAll("\\s+", " ");
            for (CardPerson person : rows) assertTrue(text.contains(person.name()), person.name() + " on " + text);
            String all = new PDFTextStripper().getText(card).replaceAll("\\s+", " ");
            for (CardPerson person : rows) assertTrue(all.contains(person.place()), person.place() + " in " + all);
        }
    }

    @Test
    void overUnknownGroundTheOddsAreUnknown() throws IOException {
        Scene far = Scene.open(PlanFile.open(
                plan("far.toml", "\n[[position]]\nname = \"off the tile\"\nat = \"36.4700, -84.2000\"\n")));
        CardPerson person = new CardWho(Whereabouts.of(far), Optional.empty(), far.plan())
                .people()
                .rows()
                .get(3);
        assertEquals("unknown", person.odds().calls().words());
        assertFalse(person.place().isBlank());
        assertTrue(person.way().startsWith("002\u00b0, 22."), person.way());
    }
}
