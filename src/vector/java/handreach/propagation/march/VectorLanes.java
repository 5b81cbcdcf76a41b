package handreach.propagation.march;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorSpecies;

/** The inner loops with as many lanes at once as the machine holds; loaded by name where the vector module is present. */
final class VectorLanes implements LaneMath {
    private static final VectorSpecies<Float> SPECIES = FloatVector.SPECIES_PREFERRED.length() > LANES
            ? FloatVector.SPECIES_512
            : FloatVector.SPECIES_PREFERRED;
    private static final int WIDTH = SPECIES.length();

    private static FloatVector at(float[] of, int index) {
        return FloatVector.fromArray(SPECIES, of, index);
    }

    @Override
    public void solve(
            int n, LanePole a, LanePole b, float[] sideRe, float[] sideIm, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane += WIDTH) {
            up(n, lane, a, b, sideRe, sideIm, work);
            down(n, lane, a, b, re, im, work);
        }
    }

    private static void up(int n, int lane, LanePole a, LanePole b, float[] sideRe, float[] sideIm, LaneWork work) {
        float[] yaRe = work.yaRe;
        float[] yaIm = work.yaIm;
        float[] ybRe = work.ybRe;
        float[] ybIm = work.ybIm;
        FloatVector agr = at(a.gRe, lane);
        FloatVector agi = at(a.gIm, lane);
        FloatVector agn = agi.neg();
        FloatVector bgr = at(b.gRe, lane);
        FloatVector bgi = at(b.gIm, lane);
        FloatVector bgn = bgi.neg();
        FloatVector ar = FloatVector.zero(SPECIES);
        FloatVector ai = ar;
        FloatVector br = ar;
        FloatVector bi = ar;
        for (int i = 0; i < n; i++) {
            int k = i * LANES + lane;
            FloatVector xr = at(sideRe, k);
            FloatVector xi = at(sideIm, k);
            FloatVector tr = agn.fma(ai, agr.fma(ar, xr));
            ai = agi.fma(ar, agr.fma(ai, xi));
            ar = tr;
            FloatVector sr = bgn.fma(bi, bgr.fma(br, xr));
            bi = bgi.fma(br, bgr.fma(bi, xi));
            br = sr;
            ar.intoArray(yaRe, k);
            ai.intoArray(yaIm, k);
            br.intoArray(ybRe, k);
            bi.intoArray(ybIm, k);
        }
    }

    private static void down(int n, int lane, LanePole a, LanePole b, float[] re, float[] im, LaneWork work) {
        float[] yaRe = work.yaRe;
        float[] yaIm = work.yaIm;
        float[] ybRe = work.ybRe;
        float[] ybIm = work.ybIm;
        FloatVector agr = at(a.gRe, lane);
        FloatVector agi = at(a.gIm, lane);
        FloatVector bgr = at(b.gRe, lane);
        FloatVector bgi = at(b.gIm, lane);
        FloatVector avr = at(a.vRe, lane);
        FloatVector avi = at(a.vIm, lane);
        FloatVector bvr = at(b.vRe, lane);
        FloatVector bvi = at(b.vIm, lane);
        FloatVector agn = agi.neg();
        FloatVector bgn = bgi.neg();
        FloatVector avn = avi.neg();
        FloatVector bvn = bvi.neg();
        FloatVector ar = FloatVector.zero(SPECIES);
        FloatVector ai = ar;
        FloatVector br = ar;
        FloatVector bi = ar;
        float[][] low = work.low;
        for (int i = n - 1; i >= 0; i--) {
            int k = i * LANES + lane;
            if (i == 0) {
                ar.intoArray(low[2], lane);
                ai.intoArray(low[3], lane);
                br.intoArray(low[6], lane);
                bi.intoArray(low[7], lane);
            }
            FloatVector yr = at(yaRe, k);
            FloatVector yi = at(yaIm, k);
            FloatVector zr = at(ybRe, k);
            FloatVector zi = at(ybIm, k);
            FloatVector tr = agn.fma(ai, agr.fma(ar, avn.fma(yi, avr.mul(yr))));
            ai = agi.fma(ar, agr.fma(ai, avi.fma(yr, avr.mul(yi))));
            ar = tr;
            FloatVector sr = bgn.fma(bi, bgr.fma(br, bvn.fma(zi, bvr.mul(zr))));
            bi = bgi.fma(br, bgr.fma(bi, bvi.fma(zr, bvr.mul(zi))));
            br = sr;
            at(re, k).add(ar.add(br)).intoArray(re, k);
            at(im, k).add(ai.add(bi)).intoArray(im, k);
        }
        ar.intoArray(low[0], lane);
        ai.intoArray(low[1], lane);
        br.intoArray(low[4], lane);
        bi.intoArray(low[5], lane);
    }

    @Override
    public void mend(int nodes, LanePole a, LanePole b, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane += WIDTH) mend(nodes, lane, a, b, re, im, work.alpha);
    }

    private static void mend(int nodes, int lane, LanePole a, LanePole b, float[] re, float[] im, float[][] alpha) {
        FloatVector agr = at(a.gRe, lane);
        FloatVector agi = at(a.gIm, lane);
        FloatVector bgr = at(b.gRe, lane);
        FloatVector bgi = at(b.gIm, lane);
        FloatVector agn = agi.neg();
        FloatVector bgn = bgi.neg();
        FloatVector ar = at(alpha[0], lane);
        FloatVector ai = at(alpha[1], lane);
        FloatVector br = at(alpha[2], lane);
        FloatVector bi = at(alpha[3], lane);
        for (int i = 0; i < nodes; i++) {
            int k = i * LANES + lane;
            at(re, k).add(ar.add(br)).intoArray(re, k);
            at(im, k).add(ai.add(bi)).intoArray(im, k);
            FloatVector tr = agn.fma(ai, agr.mul(ar));
            ai = agi.fma(ar, agr.mul(ai));
            ar = tr;
            FloatVector sr = bgn.fma(bi, bgr.mul(br));
            bi = bgi.fma(br, bgr.mul(bi));
            br = sr;
        }
    }

    @Override
    public void phase(int n, float[] cosine, float[] sine, float[] re, float[] im) {
        for (int lane = 0; lane < LANES; lane += WIDTH) phase(n, lane, cosine, sine, re, im);
    }

    private static void phase(int n, int lane, float[] cosine, float[] sine, float[] re, float[] im) {
        FloatVector c = at(cosine, lane);
        FloatVector s = at(sine, lane);
        FloatVector sn = s.neg();
        FloatVector pr = FloatVector.broadcast(SPECIES, 1f);
        FloatVector pi = FloatVector.zero(SPECIES);
        for (int i = 0; i < n; i++) {
            int k = i * LANES + lane;
            FloatVector x = at(re, k);
            FloatVector y = at(im, k);
            x.mul(pr).sub(y.mul(pi)).intoArray(re, k);
            x.fma(pi, y.mul(pr)).intoArray(im, k);
            FloatVector q = sn.fma(pi, c.mul(pr));
            pi = s.fma(pr, c.mul(pi));
            pr = q;
        }
    }

    @Override
    public void pivots(int n, LaneTerm a, LaneTerm b) {
        for (int lane = 0; lane < LANES; lane += WIDTH) pivots(n, lane, a, b);
    }

    /** Both terms together: each waits for a division at every node, and the other runs meanwhile. */
    private static void pivots(int n, int lane, LaneTerm a, LaneTerm b) {
        float[] avRe = a.vRe;
        float[] avIm = a.vIm;
        float[] bvRe = b.vRe;
        float[] bvIm = b.vIm;
        FloatVector growthA = at(a.growth, lane);
        FloatVector growthB = at(b.growth, lane);
        FloatVector one = FloatVector.broadcast(SPECIES, 1f);
        FloatVector offA = FloatVector.broadcast(SPECIES, a.off);
        FloatVector offB = FloatVector.broadcast(SPECIES, b.off);
        FloatVector diagonalA = FloatVector.broadcast(SPECIES, a.diagonal);
        FloatVector diagonalB = FloatVector.broadcast(SPECIES, b.diagonal);
        FloatVector ar = at(a.firstRe, lane);
        FloatVector ai = at(a.firstIm, lane);
        FloatVector br = at(b.firstRe, lane);
        FloatVector bi = at(b.firstIm, lane);
        for (int i = 1; i < n; i++) {
            int k = i * LANES + lane;
            FloatVector lowA = growthA.mul((float) i);
            FloatVector lowB = growthB.mul((float) i);
            FloatVector dr = diagonalA.sub(ar);
            // the negative imaginary part, as the inverse wants it
            FloatVector di = lowA.add(lowA).add(ai);
            FloatVector er = diagonalB.sub(br);
            FloatVector ei = lowB.add(lowB).add(bi);
            FloatVector p = one.div(dr.fma(dr, di.mul(di)));
            FloatVector q = one.div(er.fma(er, ei.mul(ei)));
            dr = dr.mul(p);
            di = di.mul(p);
            er = er.mul(q);
            ei = ei.mul(q);
            dr.intoArray(avRe, k);
            di.intoArray(avIm, k);
            er.intoArray(bvRe, k);
            ei.intoArray(bvIm, k);
            FloatVector lr = offA.mul(dr).sub(lowA.mul(di));
            FloatVector li = offA.fma(di, lowA.mul(dr));
            FloatVector mr = offB.mul(er).sub(lowB.mul(ei));
            FloatVector mi = offB.fma(ei, lowB.mul(er));
            FloatVector upA = lowA.add(growthA);
            FloatVector upB = lowB.add(growthB);
            ar = lr.mul(offA).sub(li.mul(upA));
            ai = lr.fma(upA, li.mul(offA));
            br = mr.mul(offB).sub(mi.mul(upB));
            bi = mr.fma(upB, mi.mul(offB));
        }
    }

    @Override
    public void turn(int n, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane += WIDTH) {
            turnUp(n, lane, term, re, im, work);
            turnDown(n, lane, term, spacingM, re, im, work);
        }
    }

    private static void turnUp(int n, int lane, LaneTerm term, float[] re, float[] im, LaneWork work) {
        float[] yRe = work.yaRe;
        float[] yIm = work.yaIm;
        float[] vRe = term.vRe;
        float[] vIm = term.vIm;
        FloatVector off = FloatVector.broadcast(SPECIES, term.off);
        FloatVector growth = at(term.growth, lane);
        FloatVector t = at(term.scale, lane);
        FloatVector two = FloatVector.broadcast(SPECIES, -2f);
        FloatVector zero = FloatVector.zero(SPECIES);
        FloatVector ar = at(yRe, lane);
        FloatVector ai = at(yIm, lane);
        FloatVector beforeRe = at(re, lane);
        FloatVector beforeIm = at(im, lane);
        FloatVector hereRe = at(re, LANES + lane);
        FloatVector hereIm = at(im, LANES + lane);
        for (int i = 1; i < n; i++) {
            int k = i * LANES + lane;
            FloatVector nextRe = i + 1 < n ? at(re, k + LANES) : zero;
            FloatVector nextIm = i + 1 < n ? at(im, k + LANES) : zero;
            FloatVector xr = t.mul(two.fma(hereIm, beforeIm.add(nextIm)));
            FloatVector xi = t.mul(two.fma(hereRe, beforeRe.add(nextRe)));
            FloatVector low = growth.mul((float) (i - 1));
            FloatVector vr = at(vRe, k - LANES);
            FloatVector vi = at(vIm, k - LANES);
            FloatVector lr = off.mul(vr).sub(low.mul(vi));
            FloatVector li = off.fma(vi, low.mul(vr));
            // −x is on the real side
            FloatVector q = li.mul(ai).sub(lr.fma(ar, xr));
            ai = xi.sub(lr.fma(ai, li.mul(ar)));
            ar = q;
            ar.intoArray(yRe, k);
            ai.intoArray(yIm, k);
            beforeRe = hereRe;
            beforeIm = hereIm;
            hereRe = nextRe;
            hereIm = nextIm;
        }
    }

    private static void turnDown(
            int n, int lane, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work) {
        float[] yRe = work.yaRe;
        float[] yIm = work.yaIm;
        float[] vRe = term.vRe;
        float[] vIm = term.vIm;
        FloatVector off = FloatVector.broadcast(SPECIES, term.off);
        FloatVector growth = at(term.growth, lane);
        FloatVector ar = FloatVector.zero(SPECIES);
        FloatVector ai = ar;
        for (int i = n - 1; i > 0; i--) {
            int k = i * LANES + lane;
            FloatVector high = growth.mul((float) (i + 1));
            FloatVector xr = at(yRe, k).sub(off.mul(ar).sub(high.mul(ai)));
            FloatVector xi = at(yIm, k).sub(off.fma(ai, high.mul(ar)));
            FloatVector vr = at(vRe, k);
            FloatVector vi = at(vIm, k);
            ar = vr.mul(xr).sub(vi.mul(xi));
            ai = vr.fma(xi, vi.mul(xr));
            float eta = i * spacingM;
            ar.mul(eta).add(at(re, k)).intoArray(re, k);
            ai.mul(eta).add(at(im, k)).intoArray(im, k);
        }
    }

    @Override
    public void fade(int from, int n, float[] factor, float[] re, float[] im) {
        for (int lane = 0; lane < LANES; lane += WIDTH) {
            for (int i = from; i < n; i++) {
                int k = i * LANES + lane;
                float f = factor[i - from];
                at(re, k).mul(f).intoArray(re, k);
                at(im, k).mul(f).intoArray(im, k);
            }
        }
    }
}
