package handreach.propagation.march;

import org.apache.commons.math3.complex.Complex;

/**
 * One pole of a range step in every lane: the tridiagonal matrix M + qD/k² solved by what comes down and what goes up.
 *
 * <p>Away from the ground its rows are constant, and p the larger root of p = d − o²/p. With g = −o/p the solution of these rows
 * is w(yᵢ + gzᵢ₊₁), where yᵢ = gyᵢ₋₁ + bᵢ goes up, zᵢ = gzᵢ₊₁ + bᵢ comes down, and w = 1/(p(1 − g²)). The true first row asks for a
 * multiple of gⁱ more, which is a start y₀ other than b₀.
 */
final class LanePole {
    final float[] gRe = new float[LaneMath.LANES];
    final float[] gIm = new float[LaneMath.LANES];
    /** Weight of what goes up from a node, and of what comes down to the node above it. */
    final float[] upRe = new float[LaneMath.LANES];

    final float[] upIm = new float[LaneMath.LANES];
    final float[] downRe = new float[LaneMath.LANES];
    final float[] downIm = new float[LaneMath.LANES];
    private final Settled[] settled = new Settled[LaneMath.LANES];

    /**
     * The constants of one lane; found once for a length of step and used again.
     *
     * @param g share of the node before
     * @param up weight of what goes up
     * @param down weight of what comes down
     * @param side how the start goes with b on the ground
     * @param low and with what comes down to node 1
     */
    record Settled(Complex g, Complex up, Complex down, Complex side, Complex low) {
        /** A pole that adds nothing, where an order is no multiple of {@link LaneMath#POLES}. */
        static final Settled NONE = new Settled(Complex.ZERO, Complex.ZERO, Complex.ZERO, Complex.ZERO, Complex.ZERO);

        static Settled of(Complex q, Complex weight, Complex ground, LaneNodes nodes) {
            Complex off = q.add(nodes.share());
            Complex diagonal = q.multiply(-2).add(1 - 2 * nodes.share());
            Complex root = diagonal.multiply(diagonal)
                    .subtract(off.multiply(off).multiply(4))
                    .sqrt();
            Complex plus = diagonal.add(root).multiply(0.5);
            Complex minus = diagonal.subtract(root).multiply(0.5);
            Complex pivot = plus.abs() >= minus.abs() ? plus : minus;
            Complex g = off.divide(pivot).negate();
            Complex over = pivot.multiply(Complex.ONE.subtract(g.multiply(g)));
            Complex up = weight.divide(over);
            Complex first = q.multiply(ground).negate().add(2.0 / 3);
            Complex second = q.multiply(2).add(1.0 / 3);
            // first row: first x₀ + second x₁ = b₀, with x₀ = w(y₀ + gz₁), x₁ = w(gy₀ + z₁)
            Complex bottom = first.add(second.multiply(g));
            Complex side = over.divide(bottom);
            Complex low = first.multiply(g).add(second).divide(bottom).negate();
            return new Settled(g, up, up.multiply(g), side, low);
        }
    }

    void put(int lane, Settled of) {
        gRe[lane] = (float) of.g.getReal();
        gIm[lane] = (float) of.g.getImaginary();
        upRe[lane] = (float) of.up.getReal();
        upIm[lane] = (float) of.up.getImaginary();
        downRe[lane] = (float) of.down.getReal();
        downIm[lane] = (float) of.down.getImaginary();
        settled[lane] = of;
    }

    /** The start of what goes up in every lane, as the first row asks, from what came down. */
    void start(int at, LaneWork work) {
        for (int lane = 0; lane < LaneMath.LANES; lane++) {
            Settled s = settled[lane];
            double br = work.groundRe[lane];
            double bi = work.groundIm[lane];
            double zr = work.low[2 * at][lane];
            double zi = work.low[2 * at + 1][lane];
            double sr = s.side.getReal();
            double si = s.side.getImaginary();
            double lr = s.low.getReal();
            double li = s.low.getImaginary();
            work.start[2 * at][lane] = (float) (sr * br - si * bi + lr * zr - li * zi);
            work.start[2 * at + 1][lane] = (float) (sr * bi + si * br + lr * zi + li * zr);
        }
    }
}
