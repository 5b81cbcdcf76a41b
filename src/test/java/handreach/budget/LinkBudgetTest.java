package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.bench.Effect;
import handreach.loadout.Antenna;
import handreach.loadout.AntennaGain;
import handreach.loadout.Band;
import handreach.loadout.Carry;
import handreach.loadout.CarryLoss;
import handreach.loadout.CopyQuality;
import handreach.loadout.ElevationPattern;
import handreach.loadout.Fading;
import handreach.loadout.Loadout;
import handreach.loadout.Radiator;
import handreach.loadout.UsualLoadouts;
import handreach.uncertainty.Doubt;
import handreach.uncertainty.Odds;
import handreach.units.Db;
import handreach.units.Dbd;
import handreach.units.Dbi;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LinkBudgetTest {
    private static final double EXACT = 1e-9;

    @ParameterizedTest // −20 log cos, by hand, rounded to 0.01 dB; limited to 15 dB
    @CsvSource({"0,0", "15,0.30", "30,1.25", "45,3.01", "60,6.02", "75,11.74", "90,15", "-30,1.25"})
    void leaningApartCosts(double deg, double lossDb) {
        assertEquals(lossDb, LinkBudget.tiltLossDb(deg), 0.006);
    }

    @Test
    void aPlainLinkAddsUpByHand() {
        // 5 W 36.99 dBm, control at the face −12 dBd = −9.85 dBi at both ends, no noise, sensitivity −119 dBm,
        // grade 3.4 needs 26 − 7 = 19 dB more: 36.99 − 9.85 − 9.85 + 119 − 19 − 120 = −2.71 dB
        LinkEnd end = UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE);
        LinkBudget link = LinkBudget.between(end, end, PaperLink.terms());
        assertEquals(-2.71, link.marginDb(120, 0, 0), 0.005);
        assertEquals(-2.71, link.marginThereDb(120, 0, 0), 0.005);
        assertEquals(-2.71, link.marginBackDb(120, 0, 0), 0.005);
    }

    @Test
    void theLedgerIsTheMarginLineByLine() {
        LinkEnd a = new LinkEnd(
                PaperLink.whipped(2.3, Carry.CHEST),
                PaperLink.NOISY,
                new Posture(OptionalDouble.of(200), 20, 10),
                List.of(new ExtraLine("wet jacket", new Db(-1), Doubt.spread(1), "invented", Optional.empty())));
        LinkBudget link =
                LinkBudget.between(a, PaperLink.end(PaperLink.control(4, Carry.HIP_TIGHT)), PaperLink.terms());
        TwoWayLedger ledger = link.ledger(PaperLink.path(95.123, 12.7, 8.01, -0.4), -7.5, 4.2);
        double loss = 95.123 + 12.7 + 8.01 - 0.4;
        assertEquals(link.marginThereDb(loss, -7.5, 4.2), ledger.there().marginDb(), EXACT);
        assertEquals(link.marginBackDb(loss, -7.5, 4.2), ledger.back().marginDb(), EXACT);
        assertEquals(link.marginDb(loss, -7.5, 4.2), ledger.marginDb(), EXACT);
        assertEquals(link.odds(ledger.marginDb()), ledger.weaker().odds(), EXACT);
        assertEquals(-loss, ledger.there().valueDb(LineKey.PATH), EXACT);
        assertEquals(-LinkBudget.tiltLossDb(20), ledger.there().valueDb(LineKey.POLARISATION), EXACT);
        assertEquals(link.commonDoubtDb(), ledger.weaker().doubt().commonDb(), EXACT);
    }

    /** The model may be wrong in any of its parts; free space, the first of them, is not doubtful. */
    @Test
    void theDoubtOfTheModelStandsInALineOfItsOwn() {
        TwoWayLedger ledger = even(5, 5).ledger(PaperLink.path(95, 12, 8, 0), 0, 0);
        List<LedgerLine> path = ledger.there().lines().stream()
                .filter(line -> line.key() == LineKey.PATH)
                .toList();
        for (LedgerLine line : path.subList(0, path.size() - 1)) assertEquals(Doubt.NONE, line.doubt(), line.label());
        assertEquals(PaperLink.terms().model(), path.get(path.size() - 1).doubt());
        assertEquals(0, path.get(path.size() - 1).valueDb());
    }

    @Test
    void aLossWithoutPartsStillAddsUp() {
        LinkBudget link = even(5, 5);
        TwoWayLedger ledger =
                link.ledger(new handreach.propagation.PathLoss("bare", 111, 90, List.of(), List.of(), List.of()), 0, 0);
        assertEquals(link.marginDb(111, 0, 0), ledger.marginDb(), EXACT);
    }

    @Test
    void morePowerIsThatMuchMoreMarginItsOwnWayOnly() {
        LinkBudget five = even(5, 5);
        LinkBudget twenty = even(20, 5);
        double gained = 10 * Math.log10(4);
        assertEquals(gained, twenty.marginThereDb(120, 0, 0) - five.marginThereDb(120, 0, 0), EXACT);
        assertEquals(five.marginBackDb(120, 0, 0), twenty.marginBackDb(120, 0, 0), EXACT);
        assertEquals(five.marginDb(120, 0, 0), twenty.marginDb(120, 0, 0), EXACT);
        assertTrue(twenty.isBackWeaker());
    }

    @Test
    void morePathLossIsThatMuchLessMargin() {
        LinkBudget link = even(5, 5);
        for (double loss = 80; loss < 160; loss += 7.3)
            assertEquals(link.marginDb(80, 0, 0) - (loss - 80), link.marginDb(loss, 0, 0), EXACT);
    }

    @Test
    void swappingTheEndsSwapsTheWays() {
        LinkEnd a = new LinkEnd(PaperLink.whipped(3, Carry.FACE), PaperLink.NOISY, UsualLinks.facing(30), List.of());
        LinkEnd b = PaperLink.end(PaperLink.control(25, Carry.HIP_SWIVEL));
        LinkBudget ab = LinkBudget.between(a, b, PaperLink.terms());
        LinkBudget ba = LinkBudget.between(b, a, PaperLink.terms());
        assertEquals(ab.marginThereDb(120, 3, -4), ba.marginBackDb(120, -4, 3), EXACT);
        assertEquals(ab.marginBackDb(120, 3, -4), ba.marginThereDb(120, -4, 3), EXACT);
        assertEquals(ab.commonDoubtDb(), ba.commonDoubtDb(), EXACT);
    }

    @Test
    void theBodyCostsTheReceiverLessThanTheSender() {
        // by hand (cascade of a lossy antenna and a receiver, Rec. ITU-R P.372 section 2): NF 9.05 dB and Fa 12.5 dB;
        // both
        // positions hold off noise, so the way to the hip gains what less noise there gives
        Loadout hip = PaperLink.control(5, Carry.HIP_TIGHT);
        Loadout face = PaperLink.control(5, Carry.FACE);
        LinkEnd other = PaperLink.end(PaperLink.control(5, Carry.FACE));
        LinkBudget hipLink = LinkBudget.between(UsualLinks.end(hip, PaperLink.NOISY), other, PaperLink.terms());
        LinkBudget faceLink = LinkBudget.between(UsualLinks.end(face, PaperLink.NOISY), other, PaperLink.terms());
        double sending = faceLink.marginThereDb(120, 0, 0) - hipLink.marginThereDb(120, 0, 0);
        double receiving = faceLink.marginBackDb(120, 0, 0) - hipLink.marginBackDb(120, 0, 0);
        assertEquals(4.5, sending, EXACT); // −12 against −16.5 dBd
        double f = Math.pow(10, 0.905);
        double fa = Math.pow(10, 1.25);
        double faceDb = 10 * Math.log10((Math.pow(10, -1.2) * (fa - 1) + f) / f);
        double hipDb = 10 * Math.log10((Math.pow(10, -1.65) * (fa - 1) + f) / f);
        assertEquals(4.5 - (faceDb - hipDb), receiving, 0.01);
        assertTrue(receiving < sending - 0.2);
    }

    @Test
    void swrIsAnExplanationWhereTheDeltaHoldsIt() {
        Loadout plain = PaperLink.whipped(2.3, Carry.FACE);
        AntennaGain.OverControl gain = (AntennaGain.OverControl) plain.gain();
        Loadout explained = PaperLink.with(
                plain, new AntennaGain.OverControl(gain.delta(), gain.move(), gain.anchor(), OptionalDouble.of(2.4)));
        TwoWayLedger without = ledger(plain);
        TwoWayLedger with = ledger(explained);
        assertEquals(without.there().marginDb(), with.there().marginDb(), 0);
        assertEquals(without.back().marginDb(), with.back().marginDb(), 0);
        LedgerLine line = line(with.there(), "tx-mismatch");
        assertEquals(0, line.valueDb(), 0);
        assertTrue(line.note().contains("already in the delta"), line.note());
        assertTrue(line.note().contains("SWR 2.40 is 0.81 dB"), line.note()); // 10 log(1 − (1.4/3.4)²)
    }

    @Test
    void swrIsALossWhereNothingHoldsIt() { // a stated gain is a matched one: SWR 2 costs 0.512 dB each way
        Loadout base = base(OptionalDouble.empty());
        Loadout mismatched = base(OptionalDouble.of(2));
        assertEquals(
                0.512,
                ledger(base).there().marginDb() - ledger(mismatched).there().marginDb(),
                0.001);
    }

    @Test
    void anExtraLineForWhatTheDeltaHoldsIsRefused() {
        ExtraLine mismatch =
                new ExtraLine("SWR of the whip", new Db(-3), Doubt.common(1), "user", Optional.of(Effect.MISMATCH));
        ExtraLine feed = new ExtraLine("feed", new Db(-3), Doubt.NONE, "user", Optional.empty());
        Loadout whip = PaperLink.whipped(2.3, Carry.FACE);
        LinkEnd other = UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE);
        double plain = margin(new LinkEnd(whip, SiteNoise.NONE, Posture.UPRIGHT, List.of()), other);
        double refused = margin(new LinkEnd(whip, SiteNoise.NONE, Posture.UPRIGHT, List.of(mismatch)), other);
        double counted = margin(new LinkEnd(whip, SiteNoise.NONE, Posture.UPRIGHT, List.of(feed)), other);
        assertEquals(plain, refused, 0);
        assertEquals(plain - 3, counted, EXACT);
    }

    @Test
    void theCounterpoiseIsInTheDeltaOrSaidToBeMissing() {
        Loadout measured = wired(true);
        Loadout guessed = wired(false);
        LedgerLine held = line(ledger(measured).there(), "tx-counterpoise");
        LedgerLine open = line(ledger(guessed).there(), "tx-counterpoise");
        assertEquals(0, held.valueDb(), 0);
        assertEquals(0, open.valueDb(), 0);
        assertTrue(held.note().contains("already in the delta"));
        assertTrue(open.note().contains("measure it"));
        assertTrue(open.doubt().commonDb() > held.doubt().commonDb());
    }

    private static Loadout wired(boolean measuredWithWire) {
        return UsualLoadouts.of(
                "wired",
                PaperLink.radio(5),
                PaperLink.whip(true),
                Carry.FACE,
                Band.VHF,
                UsualLoadouts.over(PaperLink.delta(4, measuredWithWire ? "hand, with wire" : "hand"), Band.VHF));
    }

    @Test
    void theDifferenceBetweenLoadoutsDoesNotHangOnTheAnchor() {
        Loadout whip = PaperLink.whipped(4.4, Carry.CHEST);
        Loadout control = PaperLink.control(5, Carry.CHEST);
        LinkBudget usualWhip = noisy(whip);
        LinkBudget usualControl = noisy(control);
        for (double dbd : new double[] {-12, -7.5, -4, 0, 2}) {
            LinkBudget movedWhip = noisy(PaperLink.with(whip, PaperLink.anchored(whip.gain(), dbd)));
            LinkBudget movedControl = noisy(PaperLink.with(control, PaperLink.anchored(control.gain(), dbd)));
            assertEquals(
                    usualWhip.marginThereDb(120, 0, 0) - usualControl.marginThereDb(120, 0, 0),
                    movedWhip.marginThereDb(120, 0, 0) - movedControl.marginThereDb(120, 0, 0),
                    EXACT);
            assertEquals(
                    usualWhip.marginBackDb(120, 0, 0) - usualControl.marginBackDb(120, 0, 0),
                    movedWhip.marginBackDb(120, 0, 0) - movedControl.marginBackDb(120, 0, 0),
                    EXACT);
            assertEquals(usualControl.marginThereDb(120, 0, 0) + dbd + 4, movedControl.marginThereDb(120, 0, 0), EXACT);
        }
    }

    /** A handheld in outside noise against a base station. */
    private static LinkBudget noisy(Loadout loadout) {
        LinkEnd base = UsualLinks.end(base(OptionalDouble.empty()), PaperLink.NOISY);
        return LinkBudget.between(UsualLinks.end(loadout, PaperLink.NOISY), base, PaperLink.terms());
    }

    @Test
    void aBodyErrorMattersLessWhereItAlsoHoldsOffNoise() {
        // by hand, 0.5 W base so that the way back rules: η = 10^−0.7, share of the noise that comes through the
        // antenna
        // k = η (fa − 1)/(η (fa − 1) + f); anchor 1.5, body 3.2 (1 − k), base 1, model 6
        double f = Math.pow(10, PaperLink.radio(5).noiseFigureDb() / 10);
        double through = Math.pow(10, -1.2) * (Math.pow(10, 1.25) - 1);
        double k = through / (through + f);
        LinkEnd base = UsualLinks.end(
                UsualLoadouts.of(
                        "base",
                        PaperLink.radio(0.5),
                        PaperLink.whip(true),
                        Carry.MAST,
                        Band.VHF,
                        new AntennaGain.Absolute(new Dbi(5), Doubt.common(1), "stated", OptionalDouble.empty())),
                SiteNoise.NONE);
        LinkBudget link = LinkBudget.between(
                UsualLinks.end(PaperLink.control(5, Carry.FACE), PaperLink.NOISY), base, PaperLink.terms());
        assertTrue(link.isBackWeaker());
        double body = 3.2 * (1 - k);
        assertEquals(Math.sqrt(36 + 2.25 + body * body + 1), link.commonDoubtDb(), 1e-3);
        double persons = Math.hypot(1.6, 2.6) * (1 - k);
        assertEquals(Math.sqrt(81 + persons * persons + 1 + Math.pow(6 * noiseSlope(f), 2)), link.spreadDb(), 1e-2);
    }

    /** Decibels of sensitivity lost a decibel of outside noise, by hand: η fa/(η fa + 1 − η + f − 1). */
    private static double noiseSlope(double f) {
        double let = Math.pow(10, -1.2);
        return let * Math.pow(10, 1.25) / (let * (Math.pow(10, 1.25) - 1) + f);
    }

    @Test
    void inQuietTheDifferenceBetweenLoadoutsIsTheDelta() {
        LinkEnd other = UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE);
        for (Carry carry : new Carry[] {Carry.FACE, Carry.CHEST, Carry.HIP_TIGHT})
            assertEquals(
                    2.3,
                    margin(UsualLinks.end(PaperLink.whipped(2.3, carry), SiteNoise.NONE), other)
                            - margin(UsualLinks.end(PaperLink.control(5, carry), SiteNoise.NONE), other),
                    EXACT);
    }

    @Test
    void aDeltaFromTheHandIsNotAddedOnAMast() {
        LinkEnd other = UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE);
        double control = margin(UsualLinks.end(PaperLink.control(5, Carry.MAST), SiteNoise.NONE), other);
        double whip = margin(UsualLinks.end(PaperLink.whipped(6, Carry.MAST), SiteNoise.NONE), other);
        assertEquals(control, whip, EXACT);
    }

    @Test
    void whatTwoLinksShareCancelsInTheirDifference() {
        LinkEnd other = PaperLink.end(PaperLink.control(5, Carry.FACE));
        LinkBudget control =
                LinkBudget.between(PaperLink.end(PaperLink.control(5, Carry.FACE)), other, PaperLink.terms());
        LinkBudget whip = LinkBudget.between(PaperLink.end(PaperLink.whipped(2, Carry.FACE)), other, PaperLink.terms());
        LinkBudget hip =
                LinkBudget.between(PaperLink.end(PaperLink.control(5, Carry.HIP_TIGHT)), other, PaperLink.terms());
        assertEquals(0, control.differenceDoubtDb(control), EXACT);
        assertTrue(whip.differenceDoubtDb(control) >= 0.55 && whip.differenceDoubtDb(control) < 0.8);
        assertEquals(whip.differenceDoubtDb(control), control.differenceDoubtDb(whip), EXACT);
        double body = hip.differenceDoubtDb(control); // by hand, sending: body parts 2 and 3.2 dB
        assertTrue(body > 3 && body < Math.hypot(2, 3.2) + 0.01, "" + body);
        assertTrue(whip.commonDoubtDb() > 6);
    }

    @Test
    void theSameBodyErrorAtBothEndsAddsWithoutSquares() {
        // by hand in quiet: anchor 1.5 and body 3.2 at each end, twice: 3² + 6.4² + model 6² = 85.96, 9.271
        LinkBudget link = LinkBudget.between(
                UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE),
                UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE),
                PaperLink.terms());
        assertEquals(Math.sqrt(85.96), link.commonDoubtDb(), EXACT);
        assertEquals(
                Math.sqrt(81 + 2 * (1.6 * 1.6 + 2.6 * 2.6)), link.spreadDb(), EXACT); // persons at both ends, places
    }

    /** A base in noise and a walker in quiet spread differently: the odds of the pair are those of the worse way, on every face. */
    @Test
    void waysThatSpreadDifferentlyHaveOddsOfTheirOwn() {
        LinkEnd base = UsualLinks.end(PaperLink.control(5, Carry.FACE), new SiteNoise("invented", 30, 12, "invented"));
        LinkEnd walker = UsualLinks.end(PaperLink.control(50, Carry.FACE), SiteNoise.NONE);
        LinkBudget link = LinkBudget.between(base, walker, PaperLink.terms());
        assertTrue(link.spreadThereDb() + 1 < link.spreadBackDb());
        for (double lossDb = 100; lossDb < 190; lossDb += 0.5) {
            TwoWayLedger both = link.ledger(PaperLink.path(lossDb), 0, 0);
            double pair = Math.min(both.there().odds(), both.back().odds());
            assertEquals(pair, both.odds());
            assertEquals(pair, link.odds(link.marginDb(lossDb, 0, 0)), EXACT, "at " + lossDb);
            assertEquals(both.there().odds(), link.oddsThere(link.marginThereDb(lossDb, 0, 0)), EXACT);
            assertEquals(both.back().odds(), link.oddsBack(link.marginBackDb(lossDb, 0, 0)), EXACT);
            assertEquals(
                    pair >= 0.9,
                    link.marginDb(lossDb, 0, 0) >= link.locationMarginDb(0.9),
                    "reached where both ways reach, at " + lossDb);
        }
    }

    @Test
    void atTheAllowedLossTheOddsAreTheWantedOnes() {
        LinkBudget link = even(5, 5);
        double allowedLossDb = link.marginDb(0, 0, 0) - link.locationMarginDb(0.9);
        double margin = link.marginDb(allowedLossDb, 0, 0);
        assertEquals(0.9, link.odds(margin), EXACT);
        assertEquals(Odds.marginFor(0.9, link.spreadDb()), margin, EXACT);
        TwoWayLedger ledger = link.ledger(PaperLink.path(allowedLossDb), 0, 0);
        assertEquals(0, ledger.weaker().marginAtOddsDb(), EXACT);
    }

    @Test
    void thePatternIsTakenAtTheAngleOfThePath() {
        Antenna fiveEighths = new Antenna("5/8", Radiator.FIVE_EIGHTHS, 1.15, false, PaperLink.LIGHT, Optional.empty());
        Loadout loadout = UsualLoadouts.of(
                "5/8", PaperLink.radio(5), fiveEighths, Carry.FACE, Band.VHF, UsualLoadouts.control(Band.VHF));
        LinkEnd other = PaperLink.end(PaperLink.control(5, Carry.FACE));
        LinkBudget link = LinkBudget.between(PaperLink.end(loadout), other, PaperLink.terms());
        ElevationPattern pattern = fiveEighths.pattern(PaperLink.CHANNEL, Carry.FACE);
        double shift = pattern.gainDbi(-15) - pattern.gainDbi(0);
        assertTrue(shift < -0.5, "" + shift);
        assertEquals(shift, link.marginDb(120, -15, 0) - link.marginDb(120, 0, 0), EXACT);
    }

    @Test
    void aMarginMakesNoObject() {
        LinkBudget link = even(5, 5);
        com.sun.management.ThreadMXBean threads =
                (com.sun.management.ThreadMXBean) java.lang.management.ManagementFactory.getThreadMXBean();
        long id = Thread.currentThread().getId();
        double sum = 0;
        threads.getThreadAllocatedBytes(id);
        long before = threads.getThreadAllocatedBytes(id);
        for (int i = 0; i < 20_000; i++) sum += link.marginDb(80 + i * 1e-3, i % 60 - 30, 0.1 * (i % 50));
        long made = threads.getThreadAllocatedBytes(id) - before;
        assertTrue(made < 20_000, made + " bytes for a sum of " + sum);
    }

    @Test
    void facingTheOtherEndHelpsAndTurningAwayCosts() {
        LinkEnd other = PaperLink.end(PaperLink.control(5, Carry.FACE));
        double facing = margin(turned(0), other);
        double any = margin(PaperLink.end(PaperLink.control(5, Carry.FACE)), other);
        double away = margin(turned(180), other);
        assertTrue(facing > any && any > away);
        assertEquals(
                6 * Math.cos(Math.toRadians(5)),
                facing - away,
                0.8); // by hand; on receive less, with the noise it holds off
    }

    private static LinkEnd turned(double deg) {
        return new LinkEnd(PaperLink.control(5, Carry.FACE), PaperLink.RURAL, UsualLinks.facing(deg), List.of());
    }

    @Test
    void standingStillNeverNeedsMoreAndBetterCopyNeverLess() {
        LinkTerms walking = PaperLink.terms();
        LinkTerms standing =
                new LinkTerms(walking.frequency(), walking.quality(), Fading.STANDING, 0.9, walking.model(), List.of());
        LinkTerms better = UsualLinks.terms(PaperLink.CHANNEL, CopyQuality.DAQ_4, 0.9);
        LinkEnd end = PaperLink.end(PaperLink.control(5, Carry.FACE));
        double base = LinkBudget.between(end, end, walking).marginDb(120, 0, 0);
        assertTrue(LinkBudget.between(end, end, standing).marginDb(120, 0, 0) > base);
        assertEquals(base - 7, LinkBudget.between(end, end, better).marginDb(120, 0, 0), EXACT);
    }

    @Test
    void anOwnBodyReadingReplacesTheDefaultWithItsDoubt() {
        Loadout usual = PaperLink.control(5, Carry.HIP_TIGHT);
        CarryLoss own = new CarryLoss(
                Carry.HIP_TIGHT,
                Band.VHF,
                new Dbd(usual.carry().mean().dbd() + 5),
                Doubt.common(1),
                usual.carry().shadow(),
                "own reading");
        Loadout measured = new Loadout("m", usual.radio(), usual.antenna(), own, usual.heightM(), usual.gain());
        LinkEnd other = UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE);
        LinkEnd end = UsualLinks.end(measured, SiteNoise.NONE);
        assertEquals(
                5,
                margin(end, other) - margin(UsualLinks.end(usual, SiteNoise.NONE), other),
                EXACT); // 5 dB over the table
        LinkBudget link = LinkBudget.between(end, other, PaperLink.terms());
        assertFalse(link.commonDoubtDb()
                > LinkBudget.between(UsualLinks.end(usual, SiteNoise.NONE), other, PaperLink.terms())
                        .commonDoubtDb());
    }

    private static Loadout base(OptionalDouble swr) {
        return UsualLoadouts.of(
                "base",
                PaperLink.radio(25),
                PaperLink.whip(true),
                Carry.MAST,
                Band.VHF,
                new AntennaGain.Absolute(new Dbi(5), Doubt.common(1), "stated", swr));
    }

    private static LinkBudget even(double aW, double bW) {
        return LinkBudget.between(
                PaperLink.end(PaperLink.control(aW, Carry.FACE)),
                PaperLink.end(PaperLink.control(bW, Carry.FACE)),
                PaperLink.terms());
    }

    private static double margin(LinkEnd a, LinkEnd b) {
        return LinkBudget.between(a, b, PaperLink.terms()).marginDb(120, 0, 0);
    }

    private static TwoWayLedger ledger(Loadout a) {
        LinkEnd other = PaperLink.end(PaperLink.control(5, Carry.FACE));
        return LinkBudget.between(PaperLink.end(a), other, PaperLink.terms()).ledger(PaperLink.path(100, 20), 0, 0);
    }

    private static LedgerLine line(Ledger ledger, String key) {
        return ledger.lines().stream()
                .filter(l -> l.word().equals(key))
                .findFirst()
                .orElseThrow();
    }
}
