package handreach.propagation.march;

/** The inner loops lane by lane, for machines and virtual machines without vectors. */
final class PlainLanes implements LaneMath {
    @Override
    public void solve(
            int n, LanePole a, LanePole b, float[] sideRe, float[] sideIm, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane++) {
            up(n, lane, a.gRe[lane], a.gIm[lane], b.gRe[lane], b.gIm[lane], sideRe, sideIm, work);
            down(n, lane, a, b, re, im, work);
        }
    }

    private static void up(
            int n, int lane, float agr, float agi, float bgr, float bgi, float[] sideRe, float[] sideIm, LaneWork w) {
        float[] yaRe = w.yaRe;
        float[] yaIm = w.yaIm;
        float[] ybRe = w.ybRe;
        float[] ybIm = w.ybIm;
        float ar = 0;
        float ai = 0;
        float br = 0;
        float bi = 0;
        for (int i = 0; i < n; i++) {
            int at = i * LANES + lane;
            float xr = sideRe[at];
            float xi = sideIm[at];
            float tr = xr + agr * ar - agi * ai;
            ai = xi + agr * ai + agi * ar;
            ar = tr;
            float sr = xr + bgr * br - bgi * bi;
            bi = xi + bgr * bi + bgi * br;
            br = sr;
            yaRe[at] = ar;
            yaIm[at] = ai;
            ybRe[at] = br;
            ybIm[at] = bi;
        }
    }

    private static void down(int n, int lane, LanePole a, LanePole b, float[] re, float[] im, LaneWork w) {
        float[] yaRe = w.yaRe;
        float[] yaIm = w.yaIm;
        float[] ybRe = w.ybRe;
        float[] ybIm = w.ybIm;
        float agr = a.gRe[lane];
        float agi = a.gIm[lane];
        float bgr = b.gRe[lane];
        float bgi = b.gIm[lane];
        float avr = a.vRe[lane];
        float avi = a.vIm[lane];
        float bvr = b.vRe[lane];
        float bvi = b.vIm[lane];
        float ar = 0;
        float ai = 0;
        float br = 0;
        float bi = 0;
        for (int i = n - 1; i >= 0; i--) {
            int at = i * LANES + lane;
            if (i == 0) keep(lane, 2, ar, ai, br, bi, w.low);
            float yr = yaRe[at];
            float yi = yaIm[at];
            float zr = ybRe[at];
            float zi = ybIm[at];
            float tr = avr * yr - avi * yi + agr * ar - agi * ai;
            ai = avr * yi + avi * yr + agr * ai + agi * ar;
            ar = tr;
            float sr = bvr * zr - bvi * zi + bgr * br - bgi * bi;
            bi = bvr * zi + bvi * zr + bgr * bi + bgi * br;
            br = sr;
            re[at] += ar + br;
            im[at] += ai + bi;
        }
        keep(lane, 0, ar, ai, br, bi, w.low);
    }

    private static void keep(int lane, int at, float ar, float ai, float br, float bi, float[][] low) {
        low[at][lane] = ar;
        low[at + 1][lane] = ai;
        low[at + 4][lane] = br;
        low[at + 5][lane] = bi;
    }

    @Override
    public void mend(int nodes, LanePole a, LanePole b, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane++) {
            float agr = a.gRe[lane];
            float agi = a.gIm[lane];
            float bgr = b.gRe[lane];
            float bgi = b.gIm[lane];
            float ar = work.alpha[0][lane];
            float ai = work.alpha[1][lane];
            float br = work.alpha[2][lane];
            float bi = work.alpha[3][lane];
            for (int i = 0; i < nodes; i++) {
                int at = i * LANES + lane;
                re[at] += ar + br;
                im[at] += ai + bi;
                float tr = agr * ar - agi * ai;
                ai = agr * ai + agi * ar;
                ar = tr;
                float sr = bgr * br - bgi * bi;
                bi = bgr * bi + bgi * br;
                br = sr;
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
        float[] yRe = work.yaRe;
        float[] yIm = work.yaIm;
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
            float nextRe = i + 1 < n ? re[at + LANES] : 0;
            float nextIm = i + 1 < n ? im[at + LANES] : 0;
            float xr = -t * (im[down] - 2 * im[at] + nextIm);
            float xi = t * (re[down] - 2 * re[at] + nextRe);
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
        float[] yRe = work.yaRe;
        float[] yIm = work.yaIm;
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
