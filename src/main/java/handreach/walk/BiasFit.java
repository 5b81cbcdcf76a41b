package handreach.walk;

import handreach.reach.Progress;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The shifts that fit best at one spread, with a bell curve laid to the top (Laplace's approximation; MacKay, Information Theory,
 * Inference, and Learning Algorithms, 2003, chapter 27, from memory).
 */
final class BiasFit {
    private static final int MOST_STEPS = 60;
    private static final double SETTLED_DB = 1e-4;

    private final Evidence.Edge[] edges;
    private final double[] weight;
    /** Sets of terms as they are met, and for each report the number of its own: there are few. */
    private final int[][] terms;

    private final int[] set;
    private final double[] priorVariance;
    private final Evidence evidence = new Evidence();

    BiasFit(List<WalkPair> pairs, double[] weight, ShiftTerms shiftTerms, Priors priors) {
        this.edges = pairs.stream().map(Evidence.Edge::of).toArray(Evidence.Edge[]::new);
        this.weight = weight;
        this.priorVariance = shiftTerms.variances(priors);
        this.set = new int[weight.length];
        Map<List<Integer>, Integer> numbers = new LinkedHashMap<>();
        for (int i = 0; i < set.length; i++) {
            List<Integer> own = Arrays.stream(shiftTerms.of(pairs.get(i)))
                    .filter(term -> term >= 0)
                    .boxed()
                    .toList();
            int next = numbers.size();
            set[i] = numbers.computeIfAbsent(own, key -> next);
        }
        this.terms = numbers.keySet().stream()
                .map(own -> own.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }

    int termCount() {
        return priorVariance.length;
    }

    /** The top, the covariance of the bell curve, and the logarithm of the evidence for the spread. */
    record Top(double[] shift, RealMatrix covariance, double logEvidence) {}

    /** What is seen at one choice of shifts: the logarithm of the posterior, its slope, and minus its second derivatives. */
    private record View(double[] shift, double log, double[] gradient, double[][] bowl, double[][] curved) {}

    Top at(double spreadDb, double[] start, Progress progress) {
        View here = view(start.clone(), spreadDb);
        for (int step = 0; step < MOST_STEPS; step++) {
            progress.goOn();
            double[] move = root(here.bowl)
                    .getSolver()
                    .solve(new ArrayRealVector(here.gradient))
                    .toArray();
            double length = 1;
            View next = view(moved(here.shift, move, length), spreadDb);
            while (next.log < here.log && length > 1e-4) {
                length /= 2;
                next = view(moved(here.shift, move, length), spreadDb);
            }
            if (next.log < here.log) break;
            double moved = 0;
            for (double m : move) moved = Math.max(moved, Math.abs(m * length));
            here = next;
            if (moved < SETTLED_DB) break;
        }
        return top(here);
    }

    private static Top top(View view) {
        CholeskyDecomposition root;
        try {
            root = root(view.curved);
        } catch (NonPositiveDefiniteMatrixException notATop) {
            root = root(view.bowl);
        }
        double logDeterminant = 0;
        for (int i = 0; i < view.shift.length; i++)
            logDeterminant += 2 * Math.log(root.getL().getEntry(i, i));
        return new Top(view.shift, root.getSolver().getInverse(), view.log - logDeterminant / 2);
    }

    private static CholeskyDecomposition root(double[][] precision) {
        return new CholeskyDecomposition(new Array2DRowRealMatrix(precision, false), 1e-9, 1e-12);
    }

    private static double[] moved(double[] shift, double[] move, double length) {
        double[] next = shift.clone();
        for (int i = 0; i < next.length; i++) next[i] += length * move[i];
        return next;
    }

    /** Reports with the same terms are summed before the terms are told apart. */
    private View view(double[] shift, double spreadDb) {
        double[] whole = new double[terms.length];
        for (int s = 0; s < whole.length; s++) for (int term : terms[s]) whole[s] += shift[term];
        double[] slope = new double[terms.length];
        double[] bowl = new double[terms.length];
        double[] curved = new double[terms.length];
        double log = 0;
        for (int i = 0; i < set.length; i++) {
            int s = set[i];
            evidence.set(edges[i], whole[s], spreadDb);
            log += weight[i] * evidence.log;
            slope[s] += weight[i] * evidence.slope;
            bowl[s] += weight[i] * evidence.bowl;
            curved[s] -= weight[i] * evidence.curvature;
        }
        double[] gradient = new double[shift.length];
        for (int t = 0; t < shift.length; t++) {
            log -= shift[t] * shift[t] / (2 * priorVariance[t]);
            gradient[t] = -shift[t] / priorVariance[t];
        }
        for (int s = 0; s < terms.length; s++) for (int term : terms[s]) gradient[term] += slope[s];
        return new View(shift, log, gradient, precision(bowl), precision(curved));
    }

    /** Of all terms from the sums over the sets of terms. */
    private double[][] precision(double[] ofSet) {
        double[][] precision = new double[priorVariance.length][priorVariance.length];
        for (int t = 0; t < priorVariance.length; t++) precision[t][t] = 1 / priorVariance[t];
        for (int s = 0; s < terms.length; s++)
            for (int a : terms[s]) for (int b : terms[s]) precision[a][b] += ofSet[s];
        return precision;
    }
}
