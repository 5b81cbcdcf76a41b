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

/** Figures as the program gave them when causes of doubt were still told apart by their words. They prove nothing about truth. */
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
            0.24705588556086866,
            2.5416449514360586,
            8.533349736678602,
            8.276203474198551,
            10.997223227534441,
            10.85056321926012,
            0.508961602988874
        },
        {
            11.920806263473775,
            10.309691834211819,
            7.48369622666813,
            7.662770891033659,
            10.543839243571698,
            10.341127536019611,
            0.8406080680883217
        },
        {
            21.152548158412223,
            20.46907352179899,
            6.919938146135135,
            7.035318700176049,
            9.681669389891423,
            10.05845644193395,
            0.9790751370176437
        },
        {
            15.01209026525153,
            14.642016944153717,
            7.51159603270461,
            7.340677349287065,
            10.200389971271223,
            10.086363178825188,
            0.9267025644531989
        },
        {
            24.024408311741524,
            25.077956269452557,
            6.433949736596238,
            6.505695578379274,
            9.755641752046996,
            9.489360124160667,
            0.9931036400248996
        }
    };
    /** Each link against the next. */
    private static final double[] DIFFERENCES = {
        3.885378151176948, 5.283966983771059, 2.3537391081868537, 3.662876019132992, 5.747500930101673
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
