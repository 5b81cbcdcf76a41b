package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import handreach.loadout.Band;
import handreach.loadout.Carry;
import handreach.uncertainty.Doubt;
import handreach.units.Db;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DoubtCauseTest {
    private static final double EXACT = 1e-12;

    private static List<DoubtCause> named(String name) {
        return List.of(
                new DoubtCause.Anchor(name),
                new DoubtCause.Body(Carry.FACE, Band.VHF, name),
                new DoubtCause.Counterpoise(name),
                new DoubtCause.Delta(name, PaperLink.delta(2.3, "hand")),
                new DoubtCause.Desense(),
                new DoubtCause.Extra(name),
                new DoubtCause.Gain(name),
                new DoubtCause.Mast(name),
                new DoubtCause.MastUse(name),
                new DoubtCause.Model(),
                new DoubtCause.PathExtra(name),
                new DoubtCause.Move(name, ""),
                new DoubtCause.Move("", name));
    }

    /** One name for all: what tells causes apart is what they are, and a cause that is made anew is the same one. */
    @Test
    void causesAreToldApartByWhatTheyAreAndNotByTheirWords() {
        List<DoubtCause> causes = named("anchor of the model");
        List<DoubtCause> again = named("anchor of the model");
        for (int i = 0; i < causes.size(); i++)
            for (int j = 0; j < causes.size(); j++)
                assertEquals(
                        i == j, causes.get(i).compareTo(again.get(j)) == 0, causes.get(i) + " and " + again.get(j));
    }

    @Test
    void anotherDeltaOfTheSameAntennaIsAnotherCause() {
        DoubtCause one = new DoubtCause.Delta("whip", PaperLink.delta(2.3, "hand"));
        assertNotEquals(0, one.compareTo(new DoubtCause.Delta("whip", PaperLink.delta(2.4, "hand"))));
        assertNotEquals(0, one.compareTo(new DoubtCause.Delta("whip", PaperLink.delta(2.3, "bare box"))));
        assertNotEquals(
                0,
                one.compareTo(new DoubtCause.Delta(
                        "whip", PaperLink.delta(2.3, "hand").withFurtherDoubt(1))));
        assertEquals(0, one.compareTo(new DoubtCause.Delta("whip", PaperLink.delta(2.3, "hand"))));
    }

    /** Floating sums hang on their order; here it is that of the causes, whichever end is asked first. */
    @Test
    void theSumIsTheSameToTheLastDigitInWhateverOrderDoubtsCome() {
        List<DoubtCause> causes = new ArrayList<>(named("one"));
        DoubtSources first = new DoubtSources();
        for (DoubtCause cause : causes) first.add(cause, 0.1 + 0.37 * cause.rank());
        Random order = new Random(5);
        for (int i = 0; i < 20; i++) {
            Collections.shuffle(causes, order);
            DoubtSources other = new DoubtSources();
            for (DoubtCause cause : causes) other.add(cause, 0.1 + 0.37 * cause.rank());
            assertEquals(first.combinedDb(), other.combinedDb(), 0);
            assertEquals(0, first.differenceDb(other), 0);
        }
    }

    /** By hand: 3 dB of one cause at both ends are 6 dB, of two causes √18. A further line may be called like any other cause. */
    @Test
    void aLineOfTheEndAndALineOfThePathOfOneNameAreTwoCauses() {
        ExtraLine line = new ExtraLine("model", new Db(0), Doubt.common(3), "invented", Optional.empty());
        LinkEnd plain = UsualLinks.end(PaperLink.control(5, Carry.FACE), SiteNoise.NONE);
        LinkEnd lined = new LinkEnd(plain.loadout(), SiteNoise.NONE, Posture.UPRIGHT, List.of(line));
        LinkTerms terms = PaperLink.terms();
        LinkTerms both = new LinkTerms(
                terms.frequency(), terms.quality(), terms.fading(), terms.odds(), terms.model(), List.of(line));
        LinkBudget none = LinkBudget.between(plain, plain, terms);
        assertEquals(6, LinkBudget.between(lined, lined, terms).differenceDoubtDb(none), EXACT);
        assertEquals(Math.sqrt(18), LinkBudget.between(lined, plain, both).differenceDoubtDb(none), EXACT);
    }
}
