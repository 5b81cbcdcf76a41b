package handreach.reach;

import handreach.propagation.LossModels;
import handreach.propagation.Terminals;
import handreach.propagation.march.CoveredMarch;
import handreach.propagation.radial.MarchedWalker;
import handreach.propagation.radial.Radial;
import handreach.propagation.radial.RadialMarch;
import handreach.propagation.radial.RadialWalker;
import java.util.List;
import java.util.stream.IntStream;

/** Losses along all bearings from one position for one pair of antenna heights. Immutable. */
public final class BearingLosses {
    private static final int LOOKED = 8;

    private final BearingRequest request;
    private final Terminals terminals;
    private final List<RadialLosses> radials;

    private BearingLosses(BearingRequest request, Terminals terminals, List<RadialLosses> radials) {
        this.request = request;
        this.terminals = terminals;
        this.radials = radials;
    }

    /**
     * Computes the losses for several pairs of heights; the ground is read once. The figures are those of one exact path per
     * sample: radials walk the same samples and carry the horizons along.
     *
     * @shape  one result per pair of heights, in their order; bearings in parallel
     * @unit   as {@link RadialLosses}
     * @valid  samples from 50 m to the radius, at most half a post apart; a march that would take too long is refused
     * @error  against one path per sample below 0.01 dB
     * @source the model named in the request
     */
    public static List<BearingLosses> of(
            BearingRequest request, List<Terminals> heights, AreaGround ground, int threads, Progress progress) {
        RadialLosses[][] found = new RadialLosses[heights.size()][request.bearings()];
        AreaSetting setting =
                new AreaSetting(request.source(), request.radiusM(), request.conditions(), request.model(), ground);
        new Workers(threads)
                .run(
                        request.bearings(),
                        () -> new BearingWorker(request, heights, setting, progress),
                        (worker, number) -> worker.bearing(number, found),
                        new SubProgress(progress, "bearings", 0, 1));
        return of(request, heights, found);
    }

    /** Of what was filled in by pair of heights and bearing. */
    static List<BearingLosses> of(BearingRequest request, List<Terminals> heights, RadialLosses[][] found) {
        return IntStream.range(0, heights.size())
                .mapToObj(k -> new BearingLosses(request, heights.get(k), List.of(found[k])))
                .toList();
    }

    /** The same with the ground outside a drawn area not counted in any share. */
    public BearingLosses within(DrawnArea drawn) {
        return new BearingLosses(
                request,
                terminals,
                radials.stream()
                        .map(radial -> radial.within(drawn, request.source()))
                        .toList());
    }

    /** Whether any known ground counts, as it does unless a drawn area leaves it all out. */
    public boolean countsAny() {
        return radials.stream()
                .anyMatch(radial -> IntStream.range(0, radial.knownCount()).anyMatch(radial::counts));
    }

    public BearingRequest request() {
        return request;
    }

    public Terminals terminals() {
        return terminals;
    }

    /** Losses by bearing, in their order from north. */
    public List<RadialLosses> radials() {
        return radials;
    }

    /** Samples whose paths are asked for warnings: the nearest, and one every eighth of the known way. */
    private static int[] looked(int known) {
        int[] looked = new int[Math.min(LOOKED + 1, known)];
        for (int i = 0; i < looked.length; i++) looked[i] = known > LOOKED ? i * (known - 1) / LOOKED : i;
        return looked;
    }

    /** One thread's share. */
    private static final class BearingWorker {
        private final BearingRequest request;
        private final List<Terminals> heights;
        private final AreaSetting setting;
        private final Progress progress;
        private final RaySampler sampler;
        private final Filling filling;
        private final boolean isMarched;
        private final Radial radial = new Radial();

        BearingWorker(BearingRequest request, List<Terminals> heights, AreaSetting setting, Progress progress) {
            this.request = request;
            this.heights = heights;
            this.setting = setting;
            this.progress = progress;
            this.sampler = setting.sampler();
            this.filling = new Filling(request, heights);
            this.isMarched = request.model().equals(LossModels.FULL_WAVE);
        }

        void bearing(int number, RadialLosses[][] found) {
            double azimuth = Math.toRadians(request.bearingDeg(number));
            setting.cut(sampler, azimuth, request.radiusM(), radial);
            boolean endsAtSteepGround = isMarched && RadialMarch.endAtSteepGround(radial, request.conditions());
            List<CoveredMarch> marches = isMarched && Filling.reaches(radial)
                    ? RadialMarch.along(radial, heights, request.conditions(), share -> !progress.isCancelled())
                    : List.of();
            filling.fill(number, radial, endsAtSteepGround, marches, found);
        }
    }

    /** Reads the losses of a rose off radials, whoever cut and marched them. One per thread. */
    static final class Filling {
        private final BearingRequest request;
        private final List<Terminals> heights;
        private final ModelNote.Kinds kinds = new ModelNote.Kinds();
        /** By pair of heights, used again from bearing to bearing; made when first wanted. */
        private final RadialWalker[] walkers;

        Filling(BearingRequest request, List<Terminals> heights) {
            this.request = request;
            this.heights = heights;
            this.walkers = new RadialWalker[heights.size()];
        }

        /** Whether any sample is known to which a loss is computed. */
        static boolean reaches(Radial radial) {
            return radial.known() > first(radial);
        }

        private static int first(Radial radial) {
            int first = 1;
            while (first < radial.count() - 1 && radial.distancesKm()[first] * 1000 < CellsByRadial.NEAREST_M) first++;
            return first;
        }

        /**
         * Puts the losses of a bearing for each pair of heights.
         *
         * @param marches along the radial for each pair, of a march; none where nothing was marched
         */
        void fill(
                int number,
                Radial radial,
                boolean endsAtSteepGround,
                List<CoveredMarch> marches,
                RadialLosses[][] found) {
            int first = first(radial);
            int known = Math.max(0, radial.known() - first);
            double[] distanceM = new double[radial.count() - first];
            for (int i = 0; i < distanceM.length; i++) distanceM[i] = 1000 * radial.distancesKm()[first + i];
            double[] ringM2 = RadialReach.rings(distanceM);
            for (int k = 0; k < found.length; k++) {
                RadialLosses losses =
                        new RadialLosses(request.bearingDeg(number), distanceM, ringM2, known, endsAtSteepGround);
                fill(losses, radial, heights.get(k), walker(k, marches), first, known);
                found[k][number] = losses;
            }
        }

        private RadialWalker walker(int pair, List<CoveredMarch> marches) {
            if (!marches.isEmpty())
                return new MarchedWalker(heights.get(pair), request.conditions())
                        .over(marches.get(pair).under(request.conditions()));
            if (walkers[pair] == null)
                walkers[pair] = RadialWalker.of(request.model(), heights.get(pair), request.conditions());
            return walkers[pair];
        }

        private void fill(RadialLosses losses, Radial radial, Terminals pair, RadialWalker walk, int first, int known) {
            if (known == 0) return;
            walk.start(radial);
            if (walk instanceof MarchedWalker marched)
                losses.warn(0, Double.POSITIVE_INFINITY, marched.warningsOfMarch(), kinds);
            int[] looked = looked(known);
            int next = 0;
            for (int i = 0; i < known; i++) {
                int sample = first + i;
                walk.advanceTo(radial.distancesKm()[sample]);
                walk.stand(radial.distancesKm()[sample], radial.groundM()[sample], radial.cover()[sample]);
                losses.put(i, walk.lossDb(), walk, radial.cover()[sample]);
                if (next < looked.length && looked[next] == i) {
                    double fromM = next == 0 ? 0 : losses.distanceM(i);
                    double toM = ++next == looked.length ? Double.POSITIVE_INFINITY : losses.distanceM(i);
                    losses.warn(fromM, toM, warnings(radial, walk, pair, sample), kinds);
                }
            }
        }

        /** Of a walker that does not know what is doubtful about its path the single path to the sample is asked. */
        private List<String> warnings(Radial radial, RadialWalker walk, Terminals pair, int sample) {
            return walk.warnings()
                    .orElseGet(() -> request.model()
                            .loss(radial.profile(sample + 1), pair, request.conditions())
                            .warnings());
        }
    }
}
