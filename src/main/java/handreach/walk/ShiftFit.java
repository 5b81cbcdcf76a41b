package handreach.walk;

import handreach.reach.Progress;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The shifts that fit best at one spread, with a bell curve laid to the top (Laplace's approximation; MacKay, Information Theory,
 * Inference, and Learning Algorithms, 2003, chapter 27, from memory).
 */
final class ShiftFit {
    private static final int MOST_STEPS = 60;
    private static final double SETTLED_DB = 1e-4;

    private final List<WalkPair> pairs;
    private final double[] weight;
    private final int[][] terms;
    private final double[] priorVariance;
    private final Evidence evidence = new Evidence();

    ShiftFit(List<WalkPair> pairs, double[] weight, ShiftTerms shiftTerms, Priors priors) {
        this.pairs = pairs;
        this.weight = weight;
        this.terms = pairs.stream().map(shiftTerms::of).toArray(int[][]::new);
        this.priorVariance = shiftTerms.variances(priors);
    }

    int termCount() {
        return priorVariance.length;
    }

    /** The top, the covariance of the bell curve, and the logarithm of the evidence for the spread. */
    record Top(double[] shift, RealMatrix covariance, double logEvidence) {}

    Top at(double spreadDb, double[] start, Progress progress) {
        double[] shift = start.clone();
        double value = logPosterior(shift, spreadDb);
        for (int step = 0; step < MOST_STEPS; step++) {
            progress.goOn();
            double[] gradient = new double[shift.length];
            RealMatrix bowl = precision(shift, spreadDb, gradient, true);
            double[] move = new CholeskyDecomposition(bowl, 1e-9, 1e-12)
                    .getSolver()
                    .solve(new ArrayRealVector(gradient))
                    .toArray();
            double length = 1;
            double[] next = moved(shift, move, length);
            double nextValue = logPosterior(next, spreadDb);
            while (nextValue < value && length > 1e-4) {
                length /= 2;
                next = moved(shift, move, length);
                nextValue = logPosterior(next, spreadDb);
            }
            if (nextValue < value) break;
            double moved = 0;
            for (double m : move) moved = Math.max(moved, Math.abs(m * length));
            shift = next;
            value = nextValue;
            if (moved < SETTLED_DB) break;
        }
        return top(shift, value, spreadDb);
    }

    private Top top(double[] shift, double value, double spreadDb) {
        CholeskyDecomposition root;
        try {
            root = new CholeskyDecomposition(precision(shift, spreadDb, new double[shift.length], false), 1e-9, 1e-12);
        } catch (NonPositiveDefiniteMatrixException notATop) {
            root = new CholeskyDecomposition(precision(shift, spreadDb, new double[shift.length], true), 1e-9, 1e-12);
        }
        double logDeterminant = 0;
        for (int i = 0; i < shift.length; i++)
            logDeterminant += 2 * Math.log(root.getL().getEntry(i, i));
        return new Top(shift, root.getSolver().getInverse(), value - logDeterminant / 2);
    }

    private static double[] moved(double[] shift, double[] move, double length) {
        double[] next = shift.clone();
        for (int i = 0; i < next.length; i++) next[i] += length * move[i];
        return next;
    }

    private double total(int pair, double[] shift) {
        double sum = 0;
        for (int term : terms[pair]) if (term >= 0) sum += shift[term];
        return sum;
    }

    private double logPosterior(double[] shift, double spreadDb) {
        double log = 0;
        for (int i = 0; i < shift.length; i++) log -= shift[i] * shift[i] / (2 * priorVariance[i]);
        for (int i = 0; i < weight.length; i++) {
            evidence.set(pairs.get(i), total(i, shift), spreadDb);
            log += weight[i] * evidence.log;
        }
        return log;
    }

    /** Minus the second derivatives; fills the gradient on the way. */
    private RealMatrix precision(double[] shift, double spreadDb, double[] gradient, boolean asBowl) {
        double[][] precision = new double[shift.length][shift.length];
        for (int i = 0; i < shift.length; i++) {
            precision[i][i] = 1 / priorVariance[i];
            gradient[i] = -shift[i] / priorVariance[i];
        }
        for (int i = 0; i < weight.length; i++) {
            evidence.set(pairs.get(i), total(i, shift), spreadDb);
            double curved = weight[i] * (asBowl ? evidence.bowl : -evidence.curvature);
            for (int a : terms[i]) {
                if (a < 0) continue;
                gradient[a] += weight[i] * evidence.slope;
                for (int b : terms[i]) if (b >= 0) precision[a][b] += curved;
            }
        }
        return new Array2DRowRealMatrix(precision, false);
    }
}
