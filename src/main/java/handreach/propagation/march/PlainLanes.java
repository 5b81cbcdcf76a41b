package handreach.propagation.march;

/** The inner loops lane by lane, for machines and virtual machines without vectors. */
final class PlainLanes implements LaneMath {
    @Override
    public void down(
            int n,
            float scale,
            LanePole[] poles,
            int first,
            LaneField of,
            LaneField base,
            LaneField out,
            LaneWork work) {
        if (!out.equals(base)) {
            System.arraycopy(base.re(), 0, out.re(), 0, n * LANES);
            System.arraycopy(base.im(), 0, out.im(), 0, n * LANES);
        }
        for (int lane = 0; lane < LANES; lane++)
            for (int p = 0; p < POLES; p++) {
                LanePole pole = poles[first + p];
                float gr = pole.gRe[lane];
                float gi = pole.gIm[lane];
                float wr = pole.downRe[lane];
                float wi = pole.downIm[lane];
                float zr = 0;
                float zi = 0;
                for (int i = n - 1; i >= 0; i--) {
                    int at = i * LANES + lane;
                    out.re()[at] += wr * zr - wi * zi;
                    out.im()[at] += wr * zi + wi * zr;
                    if (i == 0) break;
                    float t = bend(i, lane, scale, of.re()) + gr * zr - gi * zi;
                    zi = bend(i, lane, scale, of.im()) + gr * zi + gi * zr;
                    zr = t;
                }
                work.low[2 * p][lane] = zr;
                work.low[2 * p + 1][lane] = zi;
            }
    }

    private static float bend(int node, int lane, float scale, float[] of) {
        int at = node * LANES + lane;
        return scale * (of[at - LANES] - of[at] + (of[at + LANES] - of[at]));
    }

    @Override
    public void up(int n, float scale, LanePole[] poles, int first, LaneField of, LaneField out, LaneWork work) {
        for (int lane = 0; lane < LANES; lane++)
            for (int p = 0; p < POLES; p++) {
                LanePole pole = poles[first + p];
                float gr = pole.gRe[lane];
                float gi = pole.gIm[lane];
                float wr = pole.upRe[lane];
                float wi = pole.upIm[lane];
                float yr = work.start[2 * p][lane];
                float yi = work.start[2 * p + 1][lane];
                for (int i = 0; i < n; i++) {
                    int at = i * LANES + lane;
                    if (i > 0) {
                        float t = bend(i, lane, scale, of.re()) + gr * yr - gi * yi;
                        yi = bend(i, lane, scale, of.im()) + gr * yi + gi * yr;
                        yr = t;
                    }
                    out.re()[at] += wr * yr - wi * yi;
                    out.im()[at] += wr * yi + wi * yr;
                }
            }
    }

    @Override
    public void phase(int n, float[] cosine, float[] sine, float[] re, float[] im) {
        for (int lane = 0; lane < LANES; lane++) {
            float c = cosine[lane];
            float s = sine[lane];
            float pr = 1;
            float pi = 0;
            for (int i = 0; i < n; i++) {
                int at = i * LANES + lane;
                float t = re[at] * pr - im[at] * pi;
                im[at] = re[at] * pi + im[at] * pr;
                re[at] = t;
                float q = pr * c - pi * s;
                pi = pr * s + pi * c;
                pr = q;
            }
        }
    }

    @Override
    public void pivots(int n, LaneTerm a, LaneTerm b) {
        for (int lane = 0; lane < LANES; lane++) {
            pivots(n, lane, a);
            pivots(n, lane, b);
        }
    }

    @Override
    public void firstTurn(int n, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane++) pivots(n, lane, term);
        turn(n, term, spacingM, re, im, work);
    }

    private static void pivots(int n, int lane, LaneTerm term) {
        float growth = term.growth[lane];
        float off = term.off;
        float diagonal = term.diagonal;
        float ar = term.firstRe[lane];
        float ai = term.firstIm[lane];
        for (int i = 1; i < n; i++) {
            float low = growth * i;
            float dr = diagonal - ar;
            float di = -2 * low - ai;
            float p = 1 / (dr * dr + di * di);
            dr *= p;
            di *= -p;
            term.vRe[i * LANES + lane] = dr;
            term.vIm[i * LANES + lane] = di;
            float lr = off * dr - low * di;
            float li = off * di + low * dr;
            float up = low + growth;
            ar = lr * off - li * up;
            ai = lr * up + li * off;
        }
    }

    @Override
    public void turn(int n, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane++) {
            turnUp(n, lane, term, re, im, work);
            turnDown(n, lane, term, spacingM, re, im, work);
        }
    }

    private static void turnUp(int n, int lane, LaneTerm term, float[] re, float[] im, LaneWork work) {
        float[] yRe = work.yRe;
        float[] yIm = work.yIm;
        float[] vRe = term.vRe;
        float[] vIm = term.vIm;
        float off = term.off;
        float growth = term.growth[lane];
        float t = term.scale[lane];
        float ar = yRe[lane];
        float ai = yIm[lane];
        for (int i = 1; i < n; i++) {
            int at = i * LANES + lane;
            int down = at - LANES;
            float xr = -t * (im[down] - 2 * im[at] + im[at + LANES]);
            float xi = t * (re[down] - 2 * re[at] + re[at + LANES]);
            float low = growth * (i - 1);
            float lr = off * vRe[down] - low * vIm[down];
            float li = off * vIm[down] + low * vRe[down];
            float q = xr - lr * ar + li * ai;
            ai = xi - lr * ai - li * ar;
            ar = q;
            yRe[at] = ar;
            yIm[at] = ai;
        }
    }

    private static void turnDown(
            int n, int lane, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work) {
        float[] yRe = work.yRe;
        float[] yIm = work.yIm;
        float[] vRe = term.vRe;
        float[] vIm = term.vIm;
        float off = term.off;
        float growth = term.growth[lane];
        float ar = 0;
        float ai = 0;
        for (int i = n - 1; i > 0; i--) {
            int at = i * LANES + lane;
            float high = growth * (i + 1);
            // yᵢ less what the element over the diagonal takes, then the inverse pivot
            float xr = yRe[at] - off * ar + high * ai;
            float xi = yIm[at] - off * ai - high * ar;
            ar = vRe[at] * xr - vIm[at] * xi;
            ai = vRe[at] * xi + vIm[at] * xr;
            float eta = i * spacingM;
            re[at] += eta * ar;
            im[at] += eta * ai;
        }
    }

    @Override
    public void fade(int from, int n, float[] factor, float[] re, float[] im) {
        for (int i = from; i < n; i++) {
            float f = factor[i - from];
            for (int at = i * LANES; at < (i + 1) * LANES; at++) {
                re[at] *= f;
                im[at] *= f;
            }
        }
    }
}
