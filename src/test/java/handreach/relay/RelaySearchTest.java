package handreach.relay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Carry;
import handreach.reach.Areas;
import handreach.reach.CellGrid;
import handreach.reach.Progress;
import handreach.reach.SweepArea;
import handreach.uncertainty.Odds;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

class RelaySearchTest {
    /** Losses are kept as 32-bit numbers and path lengths differ by how a cell is cut: a hundredth of a standing. */
    private static final double SAME_STANDING = 0.02;

    /** Two valleys 3 km apart, a ridge of 300 m between them with one knob 40 m higher at its north end. */
    private static final PaperWorld RIDGE = new PaperWorld((east, north) -> {
        double ridge = 300 * Math.max(0, 1 - Math.abs(east) / 600);
        double knob = 40 * Math.max(0, 1 - Math.hypot(east, north - 600) / 250);
        return 100 + ridge + knob;
    });

    private static Party person(String name, double east, double north) {
        return new Party(name, PaperWorld.at(east, north), PaperWorld.person(5, Carry.FACE));
    }

    private static PaperWorld.Run onRidge(RelayConstraints constraints) {
        List<Party> demands = List.of(person("west", -1500, 600), person("east", 1500, 600));
        return RIDGE.run(
                RIDGE.question("delta-bullington", demands),
                PaperWorld.relay(RelayMode.STORE_AND_FORWARD, false),
                1800,
                150,
                constraints);
    }

    @Test
    void theKnownBestRidgeIsFound() {
        PaperWorld.Run run = onRidge(RelayConstraints.NONE);
        assertFalse(run.direct().isEnough(), "the ridge must stand in the way");
        SiteScore best = run.search().best(ServiceLevel.BY_WORST).orElseThrow();
        // by hand: both people see the crest only, and the knob, level with both, looks over it by 40 m more than the
        // rest
        assertTrue(GeodesicLine.distanceM(run.position(best.cell()), PaperWorld.at(0, 600)) <= 160);
        assertTrue(best.service().servesAll());
    }

    @ParameterizedTest
    @ValueSource(longs = {3, 17})
    void bruteForceFromPointToPointFindsTheSameCellAndTheSameOdds(long seed) {
        PaperWorld world = rough(seed);
        List<Party> demands = List.of(person("a", -1400, -900), person("b", 1300, -700), person("c", 100, 1500));
        RelayEquipment relay = PaperWorld.relay(RelayMode.TWO_FREQUENCY, false);
        PaperWorld.Run run =
                world.run(world.question("delta-bullington", demands), relay, 1500, 250, RelayConstraints.NONE);
        SiteScore best = run.search().best(ServiceLevel.BY_WORST).orElseThrow();
        double bestOdds = -1;
        int bestCell = -1;
        for (int cell = 0; cell < run.grid().count(); cell++) {
            SiteCheck check = SiteCheck.of(run.question(), relay, List.of(run.position(cell)), run.direct());
            double worst = check.talks().stream()
                    .mapToDouble(SiteCheck.TalkOdds::weaker)
                    .min()
                    .orElseThrow();
            assertEquals(worst, run.at(cell).worstOdds(), SAME_STANDING, "seed " + seed + ", cell " + cell);
            assertEquals(run.at(cell).share(), run.search().map().share(cell), 1e-6);
            assertEquals(run.at(cell).pessimisticShare(), run.search().map().pessimisticShare(cell), 1e-6);
            if (worst > bestOdds) {
                bestOdds = worst;
                bestCell = cell;
            }
        }
        assertEquals(bestCell, best.cell(), "seed " + seed);
        assertEquals(bestOdds, best.service().worstOdds(), SAME_STANDING, "seed " + seed);
    }

    /** Slopes of a few wavelengths of a kilometre or so, the same for the same seed. */
    private static PaperWorld rough(long seed) {
        Random random = new Random(seed);
        double[] wave = random.doubles(24, -1, 1).toArray();
        return new PaperWorld((east, north) -> {
            double sum = 300;
            for (int k = 0; k < 8; k++)
                sum += 70 * wave[k] * Math.sin((east * wave[k + 8] + north * wave[k + 16]) / 250 + k);
            return sum;
        });
    }

    @Test
    void theSweepFindsWhatOneProfileACellFinds() {
        PaperWorld.Run exact = onRidge(RelayConstraints.NONE);
        HopSurvey swept = HopSurvey.of(
                exact.question(),
                PaperWorld.relay(RelayMode.STORE_AND_FORWARD, false),
                exact.grid(),
                new SweepArea(2).withoutMeasuring(),
                Progress.SILENT);
        RelaySearch search = RelaySearch.of(swept, exact.ground(), exact.direct(), Progress.SILENT);
        SiteScore bySweep = search.best(ServiceLevel.BY_WORST).orElseThrow();
        SiteScore byPaths = exact.search().best(ServiceLevel.BY_WORST).orElseThrow();
        assertTrue(GeodesicLine.distanceM(exact.position(bySweep.cell()), exact.position(byPaths.cell())) <= 220);
        assertEquals(byPaths.service().worst(), bySweep.service().worst(), 0.3);
    }

    @Test
    void desenseNeverHelps() {
        PaperWorld.Run forward = onRidge(RelayConstraints.NONE);
        List<Party> demands = forward.question().demands();
        for (Party demand : demands) {
            RelayRequest.Setting setting = forward.question().setting();
            Position knob = PaperWorld.at(0, 600);
            HopPath quiet = HopPath.toRelay(setting, demand, knob, PaperWorld.relay(RelayMode.STORE_AND_FORWARD, false))
                    .orElseThrow();
            HopPath duplex = HopPath.toRelay(setting, demand, knob, PaperWorld.relay(RelayMode.TWO_FREQUENCY, false))
                    .orElseThrow();
            assertTrue(duplex.odds().there() < quiet.odds().there());
            assertEquals(quiet.odds().back(), duplex.odds().back());
        }
    }

    @Test
    void theProductIsNeverAboveTheWeakerHop() {
        PaperWorld.Run run = onRidge(RelayConstraints.NONE);
        SiteCheck check = SiteCheck.of(
                run.question(),
                PaperWorld.relay(RelayMode.STORE_AND_FORWARD, false),
                List.of(PaperWorld.at(0, 0)),
                run.direct());
        for (SiteCheck.TalkOdds odds : check.talks()) {
            assertTrue(odds.product() <= odds.weaker());
            assertTrue(odds.pessimistic() < odds.weaker());
            assertFalse(odds.isDirect());
        }
    }

    @Test
    void polygonsKeepTheRelayInAndOut() {
        GeometryFactory factory = new GeometryFactory();
        Position corner = PaperWorld.at(-1900, -1900);
        Position middle = PaperWorld.at(1900, 0);
        var south = factory.toGeometry(
                new Envelope(corner.longitudeDeg(), middle.longitudeDeg(), corner.latitudeDeg(), middle.latitudeDeg()));
        RelayConstraints inside = new RelayConstraints(
                Optional.of(south), Optional.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty(), 0);
        RelayConstraints outside = new RelayConstraints(
                Optional.empty(), Optional.of(south), OptionalDouble.empty(), Optional.empty(), Optional.empty(), 0);
        PaperWorld.Run in = onRidge(inside);
        PaperWorld.Run out = onRidge(outside);
        assertTrue(in.position(in.search()
                                .best(ServiceLevel.BY_SERVED)
                                .orElseThrow()
                                .cell())
                        .latitudeDeg()
                <= middle.latitudeDeg());
        assertTrue(out.position(out.search()
                                .best(ServiceLevel.BY_SERVED)
                                .orElseThrow()
                                .cell())
                        .latitudeDeg()
                > middle.latitudeDeg());
        assertEquals(
                in.grid().count(), in.ground().allowedCount() + out.ground().allowedCount());
    }

    @Test
    void steepGroundIsLeftOut() {
        // by hand: the flank rises 300 m in 600 m, 26.6 degrees
        RelayConstraints gentle = new RelayConstraints(
                Optional.empty(), Optional.empty(), OptionalDouble.of(20), Optional.empty(), Optional.empty(), 0);
        PaperWorld.Run run = onRidge(gentle);
        int flank = run.grid().indexOf(PaperWorld.at(-300, -900));
        int crest = run.grid().indexOf(PaperWorld.at(0, -900));
        assertEquals(26.6, run.ground().slopeDeg(flank), 0.2);
        assertFalse(run.ground().isAllowed(flank));
        assertTrue(run.ground().isAllowed(crest));
    }

    @Test
    void farFromTheTrackIsLeftOut() {
        List<Position> track = List.of(PaperWorld.at(-1800, 0), PaperWorld.at(1800, 0));
        RelayConstraints near = new RelayConstraints(
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.of(new RelayConstraints.NearTrack(List.of(track), 400)),
                Optional.empty(),
                0);
        PaperWorld.Run run = onRidge(near);
        for (int cell = 0; cell < run.grid().count(); cell++) {
            double north = (run.position(cell).latitudeDeg() - 45) * 111_132;
            if (Math.abs(Math.abs(north) - 400) > 10)
                assertEquals(Math.abs(north) < 400, run.ground().isAllowed(cell));
        }
    }

    @Test
    void theSecondBestStandsApart() {
        PaperWorld.Run run = onRidge(RelayConstraints.NONE);
        List<SiteScore> sites = run.search().ranked(ServiceLevel.BY_SERVED, 700, 4);
        assertEquals(4, sites.size());
        for (int i = 0; i < sites.size(); i++)
            for (int j = 0; j < i; j++) {
                Position a = run.position(sites.get(i).cell());
                Position b = run.position(sites.get(j).cell());
                assertTrue(GeodesicLine.distanceM(a, b) >= 695);
                assertTrue(ServiceLevel.BY_SERVED.compare(
                                sites.get(j).service(), sites.get(i).service())
                        >= 0);
            }
    }

    @Test
    void nobodyNeedsARelayOnOpenGround() {
        PaperWorld flat = new PaperWorld((east, north) -> 100);
        List<Party> demands = List.of(person("a", -200, 0), person("b", 200, 0));
        DirectVerdict verdict = DirectVerdict.of(flat.question("handheld", demands), List.of(), Progress.SILENT);
        assertTrue(verdict.isEnough());
    }

    @Test
    void aBetterLoadoutAloneIsAnAnswer() {
        // by hand: on flat ground odds only fall with distance; between where the hip fails and where the face fails,
        // carrying decides
        PaperWorld flat = new PaperWorld((east, north) -> 100);
        for (double apart = 300; apart < 20_000; apart *= 1.1) {
            Party a = new Party("a", PaperWorld.at(0, 0), PaperWorld.person(5, Carry.HIP_TIGHT));
            Party b = new Party("b", PaperWorld.at(apart, 0), PaperWorld.person(5, Carry.HIP_TIGHT));
            DirectVerdict verdict = DirectVerdict.of(
                    flat.question("handheld", List.of(a, b)),
                    List.of(PaperWorld.person(5, Carry.HIP_TIGHT), PaperWorld.person(5, Carry.FACE)),
                    Progress.SILENT);
            if (verdict.isEnough()) continue;
            assertEquals(
                    "face 5.0",
                    verdict.enoughIfCarried().orElseThrow().loadout().name());
            return;
        }
        throw new AssertionError("the hip never failed");
    }

    @Test
    void whoCannotBeServedIsNamedWithTheRidge() {
        // "deep" sits in a narrow pit of 400 m, 120 m wide at the bottom, outside the area in which a relay may stand
        PaperWorld pit = new PaperWorld((east, north) -> {
            double fromPit = Math.hypot(east - 2600, north);
            return fromPit < 300 ? 100 + 500 * Math.min(1, Math.max(0, fromPit - 60) / 240) : 600;
        });
        List<Party> demands = List.of(person("a", -1200, 0), person("b", -900, 500), person("deep", 2600, 0));
        RelayEquipment relay = PaperWorld.relay(RelayMode.TWO_FREQUENCY, false);
        PaperWorld.Run run =
                pit.run(pit.question("delta-bullington", demands), relay, 1300, 200, RelayConstraints.NONE);
        SiteScore best = run.search().best(ServiceLevel.BY_SERVED).orElseThrow();
        SiteCheck check = SiteCheck.of(run.question(), relay, List.of(run.position(best.cell())), run.direct());
        assertEquals(List.of(2), check.unserved(run.question()));
        assertTrue(run.search().bestFor(2).orElseThrow().service().worstOdds() < 0.8);
        var edge = check.hops().get(2).orElseThrow().path().worstEdge().orElseThrow();
        // the rim of the pit, 300 m from its middle
        assertEquals(0.3, edge.distanceKm(), 0.06);
        assertEquals(600, edge.heightM(), 5);
    }

    @Test
    void aDemandInAVoidIsUnservedAndTheRestAnswered() {
        PaperWorld holed = new PaperWorld((east, north) -> east > 1700 ? Double.NaN : 100);
        List<Party> demands = List.of(person("a", -1000, 0), person("b", 1000, 0), person("lost", 1900, 0));
        RelayEquipment relay = PaperWorld.relay(RelayMode.TWO_FREQUENCY, false);
        PaperWorld.Run run = holed.run(holed.question("handheld", demands), relay, 1500, 250, RelayConstraints.NONE);
        SiteScore best = run.search().best(ServiceLevel.BY_SERVED).orElseThrow();
        assertEquals(1.0 / 3, best.service().share(), 1e-9);
        assertTrue(run.direct().links().get(1).path().isEmpty());
        assertEquals(0, DirectVerdict.odds(run.direct().links().get(1)));
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theBoundForTwoRelaysHoldsAgainstEveryPair(boolean chained) {
        for (long seed = 1; seed <= 4; seed++) {
            PaperWorld world = rough(40 + seed);
            List<Party> demands = new ArrayList<>();
            Random random = new Random(seed);
            for (int i = 0; i < 5; i++)
                demands.add(new Party(
                        "d" + i,
                        PaperWorld.at(3000 * random.nextDouble() - 1500, 3000 * random.nextDouble() - 1500),
                        PaperWorld.person(0.02, Carry.HIP_TIGHT)));
            RelayEquipment relay = PaperWorld.relay(RelayMode.STORE_AND_FORWARD, chained);
            PaperWorld.Run run =
                    world.run(world.question("delta-bullington", demands), relay, 1500, 375, RelayConstraints.NONE);
            RelayChoice choice = run.search().choose(2);
            TalkTable talks = new TalkTable(run.survey(), run.direct());
            double best = 0;
            for (int one = 0; one < run.grid().count(); one++) {
                RelaySet first = RelaySet.of(talks, List.of(one), Progress.SILENT);
                for (int other = 0; other < one; other++)
                    if (first.hears(other))
                        best = Math.max(best, first.with(other, new double[5]).share());
            }
            String where = "seed " + seed + ", best " + best + ", bound " + choice.boundShare();
            assertTrue(choice.boundShare() >= best - 1e-9, where);
            assertTrue(choice.service().share() <= best + 1e-9, where);
            assertTrue(choice.service().share() >= (1 - 1 / Math.E) * best - 1e-9, where);
            assertEquals(choice.cells().size(), choice.ifOneFails().size());
        }
    }

    @Test
    void aChainPassesOverTwoRidgesThatOneRelayCannot() {
        // by hand: two ridges of 250 m at 1.2 km either side; each end sees only its own ridge's crest
        PaperWorld world = new PaperWorld((east, north) ->
                100 + 250 * Math.max(0, 1 - Math.abs(Math.abs(east) - 1200) / 250) + (Math.abs(east) < 700 ? 160 : 0));
        List<Party> demands = List.of(
                new Party("west", PaperWorld.at(-1700, 0), PaperWorld.person(0.05, Carry.HIP_TIGHT)),
                new Party("east", PaperWorld.at(1700, 0), PaperWorld.person(0.05, Carry.HIP_TIGHT)));
        RelayRequest question = world.question("delta-bullington", demands);
        PaperWorld.Run chained = world.run(
                question, PaperWorld.relay(RelayMode.STORE_AND_FORWARD, true), 1800, 200, RelayConstraints.NONE);
        PaperWorld.Run apart = world.run(
                question, PaperWorld.relay(RelayMode.STORE_AND_FORWARD, false), 1800, 200, RelayConstraints.NONE);
        double one = apart.search()
                .best(ServiceLevel.BY_WORST)
                .orElseThrow()
                .service()
                .worst();
        RelayChoice chain = chained.search().choose(2);
        RelayChoice single = apart.search().choose(2);
        assertEquals(one, single.service().worst(), 1e-6, "relays that do not pass on cannot help one pair twice");
        assertTrue(chain.service().worst() > one + 0.3, chain.service().worst() + " against " + one);
        SiteCheck check = SiteCheck.of(
                question,
                PaperWorld.relay(RelayMode.STORE_AND_FORWARD, true),
                chain.cells().stream().map(chained::position).toList(),
                chained.direct());
        assertEquals(chain.service().worstOdds(), check.talks().get(0).weaker(), SAME_STANDING);
    }

    @Test
    void aLaterRelayNeverServesLess() {
        PaperWorld world = rough(9);
        List<Party> demands = new ArrayList<>();
        for (int i = 0; i < 4; i++)
            demands.add(new Party(
                    "d" + i, PaperWorld.at(1200 - 800 * i, 900 - 600 * i), PaperWorld.person(0.05, Carry.HIP_TIGHT)));
        PaperWorld.Run run = world.run(
                world.question("delta-bullington", demands),
                PaperWorld.relay(RelayMode.TWO_FREQUENCY, false),
                1500,
                300,
                RelayConstraints.NONE);
        double before = 0;
        for (int count = 1; count <= 4; count++) {
            RelayChoice choice = run.search().choose(count);
            assertTrue(choice.service().share() >= before - 1e-9);
            assertTrue(choice.boundShare() >= choice.service().share() - 1e-9);
            for (ServiceLevel left : choice.ifOneFails())
                assertTrue(left.share() <= choice.service().share() + 1e-9);
            before = choice.service().share();
        }
    }

    @Test
    void theFrontHoldsNothingThatIsBettered() {
        PaperWorld.Run run = onRidge(RelayConstraints.NONE);
        List<SiteScore> front = run.search().front();
        assertFalse(front.isEmpty());
        for (SiteScore one : front)
            for (int cell = 0; cell < run.grid().count(); cell++) {
                ServiceLevel other = run.at(cell);
                assertFalse(other.share() > one.service().share() + 1e-9
                        && other.worst() > one.service().worst() + 1e-9);
            }
    }

    @Test
    void cancellingHandsNothingOut() {
        List<Party> demands = List.of(person("west", -1500, 600), person("east", 1500, 600));
        Progress stopped = new Progress() {
            @Override
            public void done(String what, double share) {}

            @Override
            public boolean isCancelled() {
                return true;
            }
        };
        RelayRequest question = RIDGE.question("delta-bullington", demands);
        assertThrows(CancellationException.class, () -> DirectVerdict.of(question, List.of(), stopped));
        assertThrows(
                CancellationException.class,
                () -> HopSurvey.of(
                        question,
                        PaperWorld.relay(RelayMode.STORE_AND_FORWARD, false),
                        CellGrid.around(PaperWorld.MIDDLE, 1500, 150),
                        Areas.exact(2),
                        stopped));
    }

    @Test
    void standingsAreOddsInAnotherDress() {
        assertEquals(Odds.ofMargin(5, 10), new ServiceLevel(0, 0, 0.5).worstOdds(), 1e-12);
        assertEquals(0, new ServiceLevel(0, 0, Double.NEGATIVE_INFINITY).worstOdds());
        assertEquals(1, new ServiceLevel(1, 1, Double.POSITIVE_INFINITY).worstOdds());
        assertEquals(0.5, HopBudget.standingOf(Odds.ofMargin(0.5, 1)), 1e-9);
    }
}
