package handreach.walk;

import handreach.terrain.Cover;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/** The terms a shift is made of: one common to the area, one for each cover, one for each carry position. */
final class ShiftTerms {
    private final List<String> carries;

    ShiftTerms(List<WalkPair> pairs, Collection<String> further) {
        TreeSet<String> names = new TreeSet<>(further);
        for (WalkPair pair : pairs) {
            names.add(pair.link().carryBase());
            names.add(pair.link().carryWalker());
        }
        carries = List.copyOf(new ArrayList<>(names));
    }

    int count() {
        return 1 + Cover.values().length + carries.size();
    }

    List<String> carries() {
        return carries;
    }

    int cover(Cover cover) {
        return 1 + cover.ordinal();
    }

    /** Index of a carry position, −1 for one that is not among the terms. */
    int carry(String name) {
        int at = carries.indexOf(name);
        return at < 0 ? -1 : 1 + Cover.values().length + at;
    }

    /** Indices of the terms that a report adds up; those below zero add nothing. */
    int[] of(Cover cover, String carryA, String carryB) {
        return new int[] {0, cover(cover), carry(carryA), carry(carryB)};
    }

    int[] of(WalkPair pair) {
        return of(pair.spot().cover(), pair.link().carryBase(), pair.link().carryWalker());
    }

    double[] row(int[] terms) {
        double[] row = new double[count()];
        for (int term : terms) if (term >= 0) row[term]++;
        return row;
    }

    double[] variances(Priors priors) {
        double[] variance = new double[count()];
        for (int i = 0; i < variance.length; i++) {
            double sd = i == 0 ? priors.biasDb() : i <= Cover.values().length ? priors.coverDb() : priors.carryDb();
            variance[i] = sd * sd;
        }
        return variance;
    }
}
