package handreach.propagation.march;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.VectorSpecies;

/** The inner loops with as many lanes at once as the machine holds; loaded by name where the vector module is present. */
final class VectorLanes implements LaneMath {
    private static final VectorSpecies<Float> SPECIES =
            FloatVector.SPECIES_PREFERRED.length() > LANES ? FloatVector.SPECIES_512 : FloatVector.SPECIES_PREFERRED;
    private static final int WIDTH = SPECIES.length();

    private static FloatVector at(float[] of, int index) {
        return FloatVector.fromArray(SPECIES, of, index);
    }

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
        for (int lane = 0; lane < LANES; lane += WIDTH)
            down(n, lane, scale, poles, first, of.re(), of.im(), base, out, work.low);
    }

    private static void down(
            int n,
            int lane,
            float scale,
            LanePole[] poles,
            int first,
            float[] re,
            float[] im,
            LaneField base,
            LaneField out,
            float[][] low) {
        float[] baseRe = base.re();
        float[] baseIm = base.im();
        float[] outRe = out.re();
        float[] outIm = out.im();
        FloatVector s = FloatVector.broadcast(SPECIES, scale);
        FloatVector s2 = FloatVector.broadcast(SPECIES, -2 * scale);
        LanePole a = poles[first + 0];
        FloatVector agr = at(a.gRe, lane);
        FloatVector agi = at(a.gIm, lane);
        FloatVector awr = at(a.downRe, lane);
        FloatVector awi = at(a.downIm, lane);
        FloatVector agn = agi.neg();
        FloatVector awn = awi.neg();
        LanePole b = poles[first + 1];
        FloatVector bgr = at(b.gRe, lane);
        FloatVector bgi = at(b.gIm, lane);
        FloatVector bwr = at(b.downRe, lane);
        FloatVector bwi = at(b.downIm, lane);
        FloatVector bgn = bgi.neg();
        FloatVector bwn = bwi.neg();
        FloatVector zero = FloatVector.zero(SPECIES);
        FloatVector ar = zero;
        FloatVector ai = zero;
        FloatVector br = zero;
        FloatVector bi = zero;
        FloatVector aboveRe = zero;
        FloatVector aboveIm = zero;
        FloatVector hereRe = at(re, (n - 1) * LANES + lane);
        FloatVector hereIm = at(im, (n - 1) * LANES + lane);
        for (int i = n - 1; i > 0; i--) {
            int k = i * LANES + lane;
            FloatVector sr = at(baseRe, k);
            FloatVector si = at(baseIm, k);
            sr = awn.fma(ai, awr.fma(ar, sr));
            si = awi.fma(ar, awr.fma(ai, si));
            sr = bwn.fma(bi, bwr.fma(br, sr));
            si = bwi.fma(br, bwr.fma(bi, si));
            sr.intoArray(outRe, k);
            si.intoArray(outIm, k);
            FloatVector belowRe = at(re, k - LANES);
            FloatVector belowIm = at(im, k - LANES);
            FloatVector sideRe = s2.fma(hereRe, s.mul(belowRe.add(aboveRe)));
            FloatVector sideIm = s2.fma(hereIm, s.mul(belowIm.add(aboveIm)));
            aboveRe = hereRe;
            aboveIm = hereIm;
            hereRe = belowRe;
            hereIm = belowIm;
            FloatVector t = agn.fma(ai, agr.fma(ar, sideRe));
            ai = agi.fma(ar, agr.fma(ai, sideIm));
            ar = t;
            t = bgn.fma(bi, bgr.fma(br, sideRe));
            bi = bgi.fma(br, bgr.fma(bi, sideIm));
            br = t;
        }
        FloatVector sr = at(baseRe, lane);
        FloatVector si = at(baseIm, lane);
        sr = awn.fma(ai, awr.fma(ar, sr));
        si = awi.fma(ar, awr.fma(ai, si));
        sr = bwn.fma(bi, bwr.fma(br, sr));
        si = bwi.fma(br, bwr.fma(bi, si));
        sr.intoArray(outRe, lane);
        si.intoArray(outIm, lane);
        ar.intoArray(low[0], lane);
        ai.intoArray(low[1], lane);
        br.intoArray(low[2], lane);
        bi.intoArray(low[3], lane);
    }

    @Override
    public void up(int n, float scale, LanePole[] poles, int first, LaneField of, LaneField out, LaneWork work) {
        for (int lane = 0; lane < LANES; lane += WIDTH)
            up(n, lane, scale, poles, first, of.re(), of.im(), out, work.start);
    }

    private static void up(
            int n,
            int lane,
            float scale,
            LanePole[] poles,
            int first,
            float[] re,
            float[] im,
            LaneField out,
            float[][] start) {
        float[] outRe = out.re();
        float[] outIm = out.im();
        FloatVector s = FloatVector.broadcast(SPECIES, scale);
        FloatVector s2 = FloatVector.broadcast(SPECIES, -2 * scale);
        LanePole a = poles[first + 0];
        FloatVector agr = at(a.gRe, lane);
        FloatVector agi = at(a.gIm, lane);
        FloatVector awr = at(a.upRe, lane);
        FloatVector awi = at(a.upIm, lane);
        FloatVector agn = agi.neg();
        FloatVector awn = awi.neg();
        LanePole b = poles[first + 1];
        FloatVector bgr = at(b.gRe, lane);
        FloatVector bgi = at(b.gIm, lane);
        FloatVector bwr = at(b.upRe, lane);
        FloatVector bwi = at(b.upIm, lane);
        FloatVector bgn = bgi.neg();
        FloatVector bwn = bwi.neg();
        FloatVector ar = at(start[0], lane);
        FloatVector ai = at(start[1], lane);
        FloatVector br = at(start[2], lane);
        FloatVector bi = at(start[3], lane);
        FloatVector belowRe = at(re, lane);
        FloatVector belowIm = at(im, lane);
        FloatVector hereRe = at(re, LANES + lane);
        FloatVector hereIm = at(im, LANES + lane);
        for (int i = 0; i < n - 1; i++) {
            int k = i * LANES + lane;
            FloatVector sr = at(outRe, k);
            FloatVector si = at(outIm, k);
            sr = awn.fma(ai, awr.fma(ar, sr));
            si = awi.fma(ar, awr.fma(ai, si));
            sr = bwn.fma(bi, bwr.fma(br, sr));
            si = bwi.fma(br, bwr.fma(bi, si));
            sr.intoArray(outRe, k);
            si.intoArray(outIm, k);
            FloatVector aboveRe = at(re, k + 2 * LANES);
            FloatVector aboveIm = at(im, k + 2 * LANES);
            FloatVector sideRe = s2.fma(hereRe, s.mul(belowRe.add(aboveRe)));
            FloatVector sideIm = s2.fma(hereIm, s.mul(belowIm.add(aboveIm)));
            belowRe = hereRe;
            belowIm = hereIm;
            hereRe = aboveRe;
            hereIm = aboveIm;
            FloatVector t = agn.fma(ai, agr.fma(ar, sideRe));
            ai = agi.fma(ar, agr.fma(ai, sideIm));
            ar = t;
            t = bgn.fma(bi, bgr.fma(br, sideRe));
            bi = bgi.fma(br, bgr.fma(bi, sideIm));
            br = t;
        }
        int last = (n - 1) * LANES + lane;
        FloatVector sr = at(outRe, last);
        FloatVector si = at(outIm, last);
        sr = awn.fma(ai, awr.fma(ar, sr));
        si = awi.fma(ar, awr.fma(ai, si));
        sr = bwn.fma(bi, bwr.fma(br, sr));
        si = bwi.fma(br, bwr.fma(bi, si));
        sr.intoArray(outRe, last);
        si.intoArray(outIm, last);
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

    @Override
    public void firstTurn(int n, LaneTerm term, float spacingM, float[] re, float[] im, LaneWork work) {
        for (int lane = 0; lane < LANES; lane += WIDTH) {
            firstTurnUp(n, lane, term, re, im, work);
            turnDown(n, lane, term, spacingM, re, im, work);
        }
    }

    /** A pivot waits for a division at every node; what goes up needs the one before, and runs meanwhile. */
    private static void firstTurnUp(int n, int lane, LaneTerm term, float[] re, float[] im, LaneWork work) {
        float[] yRe = work.yRe;
        float[] yIm = work.yIm;
        float[] vRe = term.vRe;
        float[] vIm = term.vIm;
        FloatVector one = FloatVector.broadcast(SPECIES, 1f);
        FloatVector off = FloatVector.broadcast(SPECIES, term.off);
        FloatVector diagonal = FloatVector.broadcast(SPECIES, term.diagonal);
        FloatVector growth = at(term.growth, lane);
        FloatVector t = at(term.scale, lane);
        FloatVector two = FloatVector.broadcast(SPECIES, -2f);
        FloatVector ar = at(yRe, lane);
        FloatVector ai = at(yIm, lane);
        FloatVector beforeRe = at(re, lane);
        FloatVector beforeIm = at(im, lane);
        FloatVector hereRe = at(re, LANES + lane);
        FloatVector hereIm = at(im, LANES + lane);
        // multiplier of the row, times the element over its diagonal in {@code over}
        FloatVector vr = at(vRe, lane);
        FloatVector vi = at(vIm, lane);
        FloatVector lr = off.mul(vr);
        FloatVector li = off.mul(vi);
        FloatVector overRe = at(term.firstRe, lane);
        FloatVector overIm = at(term.firstIm, lane);
        for (int i = 1; i < n; i++) {
            int k = i * LANES + lane;
            FloatVector low = growth.mul((float) i);
            FloatVector dr = diagonal.sub(overRe);
            FloatVector di = low.add(low).add(overIm);
            FloatVector p = one.div(dr.fma(dr, di.mul(di)));
            FloatVector nextRe = at(re, k + LANES);
            FloatVector nextIm = at(im, k + LANES);
            FloatVector xr = t.mul(two.fma(hereIm, beforeIm.add(nextIm)));
            FloatVector xi = t.mul(two.fma(hereRe, beforeRe.add(nextRe)));
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
            dr = dr.mul(p);
            di = di.mul(p);
            dr.intoArray(vRe, k);
            di.intoArray(vIm, k);
            lr = off.mul(dr).sub(low.mul(di));
            li = off.fma(di, low.mul(dr));
            FloatVector up = low.add(growth);
            overRe = lr.mul(off).sub(li.mul(up));
            overIm = lr.fma(up, li.mul(off));
        }
    }

    private static void turnUp(int n, int lane, LaneTerm term, float[] re, float[] im, LaneWork work) {
        float[] yRe = work.yRe;
        float[] yIm = work.yIm;
        float[] vRe = term.vRe;
        float[] vIm = term.vIm;
        FloatVector off = FloatVector.broadcast(SPECIES, term.off);
        FloatVector growth = at(term.growth, lane);
        FloatVector t = at(term.scale, lane);
        FloatVector two = FloatVector.broadcast(SPECIES, -2f);
        FloatVector ar = at(yRe, lane);
        FloatVector ai = at(yIm, lane);
        FloatVector beforeRe = at(re, lane);
        FloatVector beforeIm = at(im, lane);
        FloatVector hereRe = at(re, LANES + lane);
        FloatVector hereIm = at(im, LANES + lane);
        for (int i = 1; i < n; i++) {
            int k = i * LANES + lane;
            FloatVector nextRe = at(re, k + LANES);
            FloatVector nextIm = at(im, k + LANES);
            FloatVector xr = t.mul(two.fma(hereIm, beforeIm.add(nextIm)));
            FloatVector xi = t.mul(two.fma(hereRe, beforeRe.add(nextRe)));
            FloatVector low = growth.mul((float) (i - 1));
            FloatVector vr = at(vRe, k - LANES);
            FloatVector vi = at(vIm, k - LANES);
            FloatVector lr = low.mul(vi).sub(off.mul(vr));
            FloatVector li = off.fma(vi, low.mul(vr));
            // −x is on the real side
            FloatVector q = lr.fma(ar, li.mul(ai).sub(xr));
            ai = lr.fma(ai, xi.sub(li.mul(ar)));
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
        float[] yRe = work.yRe;
        float[] yIm = work.yIm;
        float[] vRe = term.vRe;
        float[] vIm = term.vIm;
        FloatVector off = FloatVector.broadcast(SPECIES, term.off);
        FloatVector growth = at(term.growth, lane);
        FloatVector ar = FloatVector.zero(SPECIES);
        FloatVector ai = ar;
        for (int i = n - 1; i > 0; i--) {
            int k = i * LANES + lane;
            FloatVector high = growth.mul((float) (i + 1));
            FloatVector vr = at(vRe, k);
            FloatVector vi = at(vIm, k);
            FloatVector yr = at(yRe, k);
            FloatVector yi = at(yIm, k);
            FloatVector xr = vr.mul(yr).sub(vi.mul(yi));
            FloatVector xi = vr.fma(yi, vi.mul(yr));
            // less the element over the diagonal over the pivot
            FloatVector er = high.mul(vi).sub(off.mul(vr));
            FloatVector ei = off.fma(vi, high.mul(vr));
            FloatVector q = er.fma(ar, ei.fma(ai, xr));
            ai = er.fma(ai, xi.sub(ei.mul(ar)));
            ar = q;
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
