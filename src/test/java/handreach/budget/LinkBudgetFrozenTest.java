package handreach.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;

import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.Fading;
import handreach.uncertainty.Doubt;
import handreach.units.Db;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Figures as the program gave them with the default table of bodies that was computed. They prove nothing about truth. */
class LinkBudgetFrozenTest {
    /** Powers and logarithms may differ in their last digit between machines; a cause lost or counted twice moves 0.01 dB. */
    private static final double LAST_DIGITS = 1e-11;

    private static final LinkEnd JACKET = new LinkEnd(
            PaperLink.whipped(2.3, Carry.CHEST),
            PaperLink.NOISY,
            UsualLinks.facing(200),
            List.of(line("wet jacket", -1, new Doubt(0.7, 1))));
    private static final LinkEnd DESENSED =
            PaperLink.end(PaperLink.whipped(-1.1, Carry.HIP_TIGHT)).desensed(line("beside", -3, new Doubt(1.3, 0.4)));
    private static final LinkEnd MAST = PaperLink.end(PaperLink.whipped(6, Carry.MAST));
    private static final LinkEnd CONTROL = PaperLink.end(PaperLink.control(5, Carry.FACE));

    /** Margin, common doubt and spread, each there and back; odds both ways. */
    private static final double[][] LINKS = {
        {
            -2.7738664950285177,
            -0.013395012369326054,
            7.946835153539964,
            7.771783280142447,
            9.668527392112273,
            9.621744169659168,
            0.38709579213073514
        },
        {
            13.420806263473779,
            11.800251487470796,
            6.801154991106055,
            7.003012848591564,
            9.509077031672557,
            9.294644798593723,
            0.8978820243783415
        },
        {
            17.09750819460683,
            15.957591487950623,
            7.038509455381991,
            7.03602936414046,
            9.451347039780636,
            9.708890049551625,
            0.9498712095978906
        },
        {
            5.74238068187999,
            5.586976980348329,
            8.040866661851796,
            8.001913230815596,
            9.89977483219871,
            9.881698278452454,
            0.7140944848076269
        },
        {
            19.024408311741524,
            20.319728719929394,
            7.062981609281367,
            7.109538429017712,
            9.772028755293476,
            9.534964170264878,
            0.9742220083023475
        }
    };
    /** Each link against the next. */
    private static final double[] DIFFERENCES = {
        3.8911412071246323, 4.272521306517776, 3.719133629490273, 3.6684843485485463, 5.644280128642212
    };

    private static ExtraLine line(String label, double db, Doubt doubt) {
        return new ExtraLine(label, new Db(db), doubt, "invented", Optional.empty());
    }

    private static List<LinkBudget> links() {
        LinkTerms terms = new LinkTerms(
                PaperLink.CHANNEL,
                CopyQuality.DAQ_3_4,
                Fading.WALKING,
                0.9,
                LinkTerms.MODEL_COVERED,
                List.of(line("rain", -0.5, new Doubt(0.3, 0.2))));
        return List.of(
                LinkBudget.between(JACKET, DESENSED, terms),
                LinkBudget.between(DESENSED, MAST, terms),
                LinkBudget.between(MAST, JACKET, terms),
                LinkBudget.between(JACKET, CONTROL, terms),
                LinkBudget.between(CONTROL, MAST, terms));
    }

    @Test
    void marginsDoubtsAndOddsAreAsTheyWere() {
        List<LinkBudget> links = links();
        for (int i = 0; i < links.size(); i++) {
            TwoWayLedger both = links.get(i).ledger(PaperLink.path(95.123, 12.7), -2, 3);
            Ledger there = both.there();
            Ledger back = both.back();
            double[] now = {
                there.marginDb(),
                back.marginDb(),
                there.doubt().commonDb(),
                back.doubt().commonDb(),
                there.doubt().spreadDb(),
                back.doubt().spreadDb(),
                both.odds()
            };
            for (int k = 0; k < now.length; k++) assertEquals(LINKS[i][k], now[k], LAST_DIGITS, i + ", " + k);
        }
    }

    @Test
    void doubtsOfDifferencesAreAsTheyWere() {
        List<LinkBudget> links = links();
        for (int i = 0; i < links.size(); i++)
            assertEquals(
                    DIFFERENCES[i], links.get(i).differenceDoubtDb(links.get((i + 1) % links.size())), LAST_DIGITS);
    }
}
