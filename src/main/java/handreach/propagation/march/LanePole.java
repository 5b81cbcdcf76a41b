package handreach.propagation.march;

import org.apache.commons.math3.complex.Complex;

/**
 * One pole of a range step in every lane: its tridiagonal matrix with settled pivots, and what puts its first row right.
 *
 * <p>Away from the ground the rows of M + qD/k² are constant and the pivot settles to the larger root p of p = d − o²/p. With that pivot
 * from the first row on, a solve has constant factors g = −o/p; the true first row differs by δ₀ and δ₁ in two elements, which moves
 * the solution by a geometric series (Sherman and Morrison's formula): xᵢ −= κ(δ₀x₀ + δ₁x₁)gⁱ, κ = 1/(p(1 − g²) + δ₀ + δ₁g).
 */
final class LanePole {
    /** The series is carried on until it has come down to this. */
    private static final double NEGLIGIBLE = 1e-9;

    final float[] gRe = new float[LaneMath.LANES];
    final float[] gIm = new float[LaneMath.LANES];
    final float[] vRe = new float[LaneMath.LANES];
    final float[] vIm = new float[LaneMath.LANES];
    private final Settled[] settled = new Settled[LaneMath.LANES];

    /** The constants of one lane; found once for a length of step and used again. */
    record Settled(
            float gRe,
            float gIm,
            float vRe,
            float vIm,
            double firstRe,
            double firstIm,
            double secondRe,
            double secondIm,
            int nodes) {
        static Settled of(Complex q, Complex weight, Complex ground) {
            Complex off = q.add(1.0 / 12);
            Complex diagonal = q.multiply(-2).add(10.0 / 12);
            Complex root = diagonal.multiply(diagonal)
                    .subtract(off.multiply(off).multiply(4))
                    .sqrt();
            Complex plus = diagonal.add(root).multiply(0.5);
            Complex minus = diagonal.subtract(root).multiply(0.5);
            Complex pivot = plus.abs() >= minus.abs() ? plus : minus;
            Complex g = off.divide(pivot).negate();
            Complex v = weight.divide(pivot);
            Complex first = q.multiply(ground).negate().add(2.0 / 3).subtract(pivot);
            Complex second = q.multiply(2).add(1.0 / 3).subtract(off);
            Complex bottom = pivot.multiply(Complex.ONE.subtract(g.multiply(g)))
                    .add(first)
                    .add(second.multiply(g));
            Complex a = first.divide(bottom).negate();
            Complex b = second.divide(bottom).negate();
            int nodes = (int) Math.ceil(Math.log(NEGLIGIBLE) / Math.log(Math.min(0.98, g.abs())));
            return new Settled(
                    (float) g.getReal(),
                    (float) g.getImaginary(),
                    (float) v.getReal(),
                    (float) v.getImaginary(),
                    a.getReal(),
                    a.getImaginary(),
                    b.getReal(),
                    b.getImaginary(),
                    nodes);
        }
    }

    void put(int lane, Settled of) {
        gRe[lane] = of.gRe;
        gIm[lane] = of.gIm;
        vRe[lane] = of.vRe;
        vIm[lane] = of.vIm;
        settled[lane] = of;
    }

    /** Starts of the series that mends the first row, from the values on the two lowest nodes; its longest length. */
    int mend(float[][] low, int from, float[][] alpha, int to) {
        int nodes = 1;
        for (int lane = 0; lane < LaneMath.LANES; lane++) {
            Settled s = settled[lane];
            double x0 = low[from][lane];
            double y0 = low[from + 1][lane];
            double x1 = low[from + 2][lane];
            double y1 = low[from + 3][lane];
            alpha[to][lane] = (float) (s.firstRe * x0 - s.firstIm * y0 + s.secondRe * x1 - s.secondIm * y1);
            alpha[to + 1][lane] = (float) (s.firstRe * y0 + s.firstIm * x0 + s.secondRe * y1 + s.secondIm * x1);
            nodes = Math.max(nodes, s.nodes);
        }
        return nodes;
    }
}
