package handreach.propagation.march;

import handreach.profile.Intervals;
import handreach.profile.Profile;
import handreach.propagation.FreeSpace;
import handreach.propagation.NoAnswer;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * The field of one antenna, marched along the ground of a profile: the wave equation itself in place of edges and mirrors.
 *
 * <p>A wide-angle parabolic equation over an impedance ground. The column of unknowns stands on the facet of the ground and turns
 * with it at every corner, so no staircase is needed; the earth's curvature bends the profile. One march gives the loss at the far
 * antenna's height at every distance. Outward waves only: no scatter back, none from the sides; trees and houses as {@link FieldMarchCover}
 * has them, where they are asked for.
 */
public final class FieldMarch {
    /** More than this is refused: nobody waits so long for one profile. */
    private static final double LONGEST_S = 600;

    private static final long MOST_BYTES = 512_000_000;

    /** Behind ground steeper than this there is no answer: no independent solution was at hand to hold one against. */
    private static final double STEEPEST_DEG = 45;
    /** Up to here the march was held against an independent solution; from here on only against itself on a finer grid. */
    private static final double CHECKED_DEG = 40;

    /** Losses are read no closer, m: half the usual cell. */
    private static final double CLOSEST_READING_M = 15;

    /** Steepest direct or mirrored ray of the march, as distance over the sum of the heights. */
    private static final double NEAR_RATIO = 2.2;
    /** Power below which rounding of the march, not the ground, decides. */
    private static final double LEAST_POWER = 1e-25;

    private final FieldMarchGround ground;
    private final FieldMarchGrid grid;
    private final FieldMarchWave wave;
    private final FieldMarchCover cover;
    /** Of the near antenna over the ground that is marched over, roofs with it; of the far ones over the bare ground. */
    private final double txHeightM;

    private final double[] rxHeightM;
    private final FieldMarchTrack[] track;
    private DoublePredicate goOn = share -> true;
    private FieldMarchSketch sketch;

    FieldMarch(
            FieldMarchGround ground, FieldMarchGrid grid, FieldMarchWave wave, double txHeightM, double... rxHeightM) {
        this(ground, grid, wave, FieldMarchCover.NONE, txHeightM, rxHeightM);
    }

    FieldMarch(
            FieldMarchGround ground,
            FieldMarchGrid grid,
            FieldMarchWave wave,
            FieldMarchCover cover,
            double txHeightM,
            double... rxHeightM) {
        this.ground = ground;
        this.grid = grid;
        this.wave = wave;
        this.cover = cover;
        this.txHeightM = cover.overGroundM(0, txHeightM);
        this.rxHeightM = rxHeightM.clone();
        this.track = new FieldMarchTrack[rxHeightM.length];
        for (int i = 0; i < track.length; i++) track[i] = new FieldMarchTrack();
    }

    /**
     * Loss to every sample of a radial.
     *
     * @shape  profile of n samples in, n − 1 losses out; one march, cost as {@link #cost}; pure, one thread
     * @unit   heights m above ground, losses dB, positive weakens
     * @valid  30 to 1000 MHz, bare ground; behind slopes above 45° there is no answer ({@link FullWaveRadial#answered}); what lies
     *         nearer than 2.2 times the sum of the heights is reckoned over the plane through both feet; a march of more than 10 min
     *         or 512 MB is refused
     * @error  level ground within 0.35 dB of Norton's field; smooth earth within 0.3 dB of the residue series; over relief 0.1 dB
     *         (146 MHz) to 1 dB (446 MHz) from a finer grid while the excess is below 60 dB; slopes of 25 to 37°: 0.3 dB deviation, 1.3 dB
     *         largest from a boundary integral while it is below 45 dB; to 40° 0.5 and 2.9 dB from a finer grid,
     *         to 45° 0.9 dB and single places in deep shadow 15 dB; not reciprocal to
     *         better than that
     * @source Collins, J. Acoust. Soc. Am. 93 (1993) 1736 (range step); Beilis and Tappert, J. Acoust. Soc. Am. 66 (1979) 811 and
     *         Outing et al., ibid. 120 (2006) 3534 (axes turned with the ground; from memory); impedance ground by Leontovich
     */
    static FullWaveRadial along(Profile profile, double txHeightM, double rxHeightM, PathConditions conditions) {
        return along(profile, txHeightM, rxHeightM, conditions, share -> true);
    }

    /**
     * As {@link #along(Profile, double, double, PathConditions)}, telling how far it is.
     *
     * @shape  as above; {@code goOn} is asked at most some two hundred times
     * @unit   the share done, 0 to 1
     * @valid  when {@code goOn} answers no, CancellationException
     * @error  as above
     * @source as above
     */
    public static FullWaveRadial along(
            Profile profile, double txHeightM, double rxHeightM, PathConditions conditions, DoublePredicate goOn) {
        return along(profile, txHeightM, new double[] {rxHeightM}, conditions, goOn)
                .get(0);
    }

    /**
     * One march read at several heights of the far antenna.
     *
     * @shape  one radial for each height, in their order; a height more costs next to nothing
     * @unit   as above
     * @valid  at least one height; else as above
     * @error  as above
     * @source as above
     */
    public static List<FullWaveRadial> along(
            Profile profile, double txHeightM, double[] rxHeightsM, PathConditions conditions, DoublePredicate goOn) {
        return along(profile, FieldMarchCover.NONE, txHeightM, rxHeightsM, conditions, goOn);
    }

    /** The same through and over what stands along the radial; heights are those over the bare ground. */
    static List<FullWaveRadial> along(
            Profile bare,
            FieldMarchCover cover,
            double txHeightM,
            double[] rxHeightsM,
            PathConditions conditions,
            DoublePredicate goOn) {
        Profile profile = cover.raised(bare);
        FieldMarchWave wave = FieldMarchWave.of(conditions);
        double highestM = highest(txHeightM, rxHeightsM);
        int answered = answered(profile, conditions);
        Profile held = held(profile, answered);
        FieldMarchGround ground = ground(held, highestM, conditions);
        FieldMarchGrid grid = FieldMarchGrid.fast(ground, wave.wavelengthM(), txHeightM + highestM);
        FieldMarch march = new FieldMarch(ground, grid, wave, cover, txHeightM, rxHeightsM);
        if (answered > 1) {
            checkCost(FieldMarchCost.of(ground, grid, wave, cover), held);
            march.goOn = goOn;
            march.run();
        }
        List<FullWaveRadial> radials = new ArrayList<>();
        for (int i = 0; i < rxHeightsM.length; i++) radials.add(march.radial(i, profile, answered, conditions));
        return radials;
    }

    /**
     * Up to {@link LaneMath#LANES} neighbouring radials in lockstep: for each profile what
     * {@link #along(Profile, double, double[], PathConditions, DoublePredicate)} gives, on the finest steps and nodes that any of them
     * asks for, in numbers of 32 bits. Profiles may end at different samples of one and the same row of distances.
     */
    static List<List<FullWaveRadial>> bundle(
            List<Profile> profiles,
            double txHeightM,
            double[] rxHeightsM,
            PathConditions conditions,
            DoublePredicate goOn) {
        return bundle(profiles, none(profiles), txHeightM, rxHeightsM, conditions, goOn);
    }

    /** The same through and over what stands along each radial; heights are those over the bare ground. */
    static List<List<FullWaveRadial>> bundle(
            List<Profile> bare,
            List<FieldMarchCover> covers,
            double txHeightM,
            double[] rxHeightsM,
            PathConditions conditions,
            DoublePredicate goOn) {
        return bundle(bare, covers, txHeightM, rxHeightsM, conditions, goOn, LaneChoice.best());
    }

    private static List<FieldMarchCover> none(List<Profile> profiles) {
        return Collections.nCopies(profiles.size(), FieldMarchCover.NONE);
    }

    /**
     * How many radials are best marched together here: several where the virtual machine has vectors, else one.
     *
     * @shape  pure
     * @unit   radials
     * @valid  always
     * @error  none
     * @source ours: docs/full-wave.md
     */
    public static int together() {
        return LaneChoice.best() instanceof PlainLanes ? 1 : LaneMath.LANES;
    }

    static List<List<FullWaveRadial>> bundle(
            List<Profile> profiles,
            double txHeightM,
            double[] rxHeightsM,
            PathConditions conditions,
            DoublePredicate goOn,
            LaneMath math) {
        return bundle(profiles, none(profiles), txHeightM, rxHeightsM, conditions, goOn, math);
    }

    static List<List<FullWaveRadial>> bundle(
            List<Profile> bare,
            List<FieldMarchCover> covers,
            double txHeightM,
            double[] rxHeightsM,
            PathConditions conditions,
            DoublePredicate goOn,
            LaneMath math) {
        if (bare.isEmpty() || bare.size() > LaneMath.LANES)
            throw new IllegalArgumentException(bare.size() + " radials in a bundle");
        List<Profile> profiles = new ArrayList<>();
        for (int i = 0; i < bare.size(); i++) profiles.add(covers.get(i).raised(bare.get(i)));
        FieldMarchWave wave = FieldMarchWave.of(conditions);
        double highestM = highest(txHeightM, rxHeightsM);
        Profile longest = null;
        int[] answered = new int[profiles.size()];
        Profile[] held = new Profile[profiles.size()];
        for (int i = 0; i < held.length; i++) {
            answered[i] = answered(profiles.get(i), conditions);
            held[i] = held(profiles.get(i), answered[i]);
            if (longest == null || held[i].count() > longest.count()) longest = held[i];
        }
        double[] longestM = FieldMarchGround.distancesM(longest);
        double[][] heightsM = carriedOn(held, longestM.length);
        FieldMarch[] marches = new FieldMarch[held.length];
        for (int i = 0; i < held.length; i++) {
            FieldMarchGround ground = FieldMarchGround.together(
                    longestM,
                    heightsM[i],
                    1000 * conditions.atmosphere().effectiveRadiusKm(),
                    wave.wavelengthM(),
                    2 + highestM);
            FieldMarchGrid grid = FieldMarchGrid.together(ground, wave.wavelengthM(), txHeightM + highestM);
            checkCost(FieldMarchCost.of(ground, grid, wave, covers.get(i)), held[i]);
            marches[i] = new FieldMarch(ground, grid, wave, covers.get(i), txHeightM, rxHeightsM);
        }
        new FieldMarchBundle(marches, wave, math).run(goOn);
        List<List<FullWaveRadial>> bundle = new ArrayList<>();
        for (int i = 0; i < marches.length; i++) {
            List<FullWaveRadial> radials = new ArrayList<>();
            for (int k = 0; k < rxHeightsM.length; k++)
                radials.add(marches[i].radial(k, profiles.get(i), answered[i], conditions));
            bundle.add(radials);
        }
        return bundle;
    }

    /**
     * Heights of neighbouring radials up to the end of the longest. Behind its own end a radial goes up and down as the nearest does that
     * goes on: nothing comes back from there, and a corner of its own would ask all of them for its many steps of a turn.
     */
    private static double[][] carriedOn(Profile[] held, int heights) {
        double[][] heightsM = new double[held.length][];
        Integer[] longestFirst = IntStream.range(0, held.length).boxed().toArray(Integer[]::new);
        Arrays.sort(longestFirst, Comparator.comparing(i -> -held[i].count()));
        for (int i : longestFirst) {
            double[] own = held[i].dividedHeightsM();
            heightsM[i] = Arrays.copyOf(own, heights);
            if (own.length == heights) continue;
            double[] beside = heightsM[nearestLonger(held, i)];
            for (int k = own.length; k < heights; k++) heightsM[i][k] = heightsM[i][k - 1] + beside[k] - beside[k - 1];
        }
        return heightsM;
    }

    private static int nearestLonger(Profile[] held, int lane) {
        int nearest = -1;
        for (int i = 0; i < held.length; i++)
            if (held[i].count() > held[lane].count() && (nearest < 0 || Math.abs(i - lane) < Math.abs(nearest - lane)))
                nearest = i;
        return nearest;
    }

    /**
     * How far along a profile the march answers: not behind ground steeper than it holds.
     *
     * @shape  profile in, number of samples out, 1 (the antenna's own place) to all; O(samples), pure
     * @unit   samples from the start
     * @valid  any profile; slopes are those of the facets a march by itself goes along
     * @error  none
     * @source the limit is ours: docs/full-wave.md
     */
    public static int answered(Profile profile, PathConditions conditions) {
        int answered = profile.count();
        // no face between samples is steeper than what lies between neighbours, and the earth bends them by no more
        // than at the end
        double bentRad = profile.lengthKm() / conditions.atmosphere().effectiveRadiusKm();
        if (FieldMarchGround.steepestRad(profile) + bentRad < Math.toRadians(STEEPEST_DEG)) return answered;
        while (answered > 1) {
            FieldMarchGround ground = ground(held(profile, answered), 0, conditions);
            int steep = ground.firstSteeper(Math.toRadians(STEEPEST_DEG));
            if (steep == ground.facets()) return answered;
            int before = 1;
            while (before < answered && 1000 * profile.distanceKm(before) <= ground.startM(steep) + 1e-6) before++;
            answered = Math.min(answered - 1, before);
        }
        return answered;
    }

    /** The samples answered for; at least two, since a profile has no fewer. */
    private static Profile held(Profile profile, int answered) {
        return answered == profile.count() ? profile : profile.upTo(Math.max(1, answered - 1));
    }

    private static double highest(double txHeightM, double[] rxHeightsM) {
        if (rxHeightsM.length == 0) throw new IllegalArgumentException("no height of the far antenna");
        double highest = 0;
        for (double h : rxHeightsM) highest = Math.max(highest, new Terminals(txHeightM, h).rxHeightM());
        return highest;
    }

    /**
     * The field over the ground as a picture.
     *
     * @shape  profile in, raster of columns × rows out; one march
     * @unit   rows from the lowest ground to {@code aboveM} over the highest; dB re free space
     * @valid  as {@link #along(Profile, double, double, PathConditions)}; 2 to 4000 columns, 2 to 2000 rows
     * @error  cells between two steps of the march are interpolated
     * @source as {@link #along(Profile, double, double, PathConditions)}
     */
    public static FieldPicture picture(
            Profile bare, double txHeightM, PathConditions conditions, int columns, int rows, double aboveM) {
        FieldMarchCover cover = FieldMarchCover.of(bare, conditions);
        Profile profile = cover.raised(bare);
        double overM = Math.max(1, new Terminals(txHeightM, aboveM).rxHeightM());
        FieldMarchWave wave = FieldMarchWave.of(conditions);
        int answered = answered(profile, conditions);
        FieldMarchGround ground = ground(held(profile, answered), 1, conditions);
        FieldMarchGrid grid = FieldMarchGrid.fast(ground, wave.wavelengthM(), txHeightM + overM);
        checkCost(FieldMarchCost.of(ground, grid, wave, cover), profile);
        FieldMarch march = new FieldMarch(ground, grid, wave, cover, txHeightM);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < profile.count(); i++) {
            low = Math.min(low, profile.heightM(i));
            high = Math.max(high, profile.heightM(i));
        }
        FieldPicture picture = new FieldPicture(columns, rows, profile.lengthKm(), low, high + aboveM);
        march.sketch = new FieldMarchSketch(
                picture, 1000 * conditions.atmosphere().effectiveRadiusKm(), ground.startHeightM(0) + march.txHeightM);
        if (answered > 1) march.run();
        return picture;
    }

    /**
     * What a march will cost.
     *
     * @shape  profile in, counts out; O(samples), pure
     * @unit   steps, nodes, seconds, bytes
     * @valid  any profile
     * @error  seconds: standard deviation 11 %, at most 32 %, of warm processor time over the 500 paths of the fit, 0.3 to 18 km; other
     *         paths on a busy machine 0.51 to 1.05 of what they took (nine in ten of 300); another machine by a common factor
     * @source counts of the grid; times per node and step fitted to 500 measured paths, docs/full-wave.md
     */
    public static FieldMarchCost cost(Profile profile, double txHeightM, double rxHeightM, PathConditions conditions) {
        return cost(profile, FieldMarchCover.NONE, txHeightM, rxHeightM, conditions);
    }

    /** The same through and over what stands along the profile. */
    static FieldMarchCost cost(
            Profile bare, FieldMarchCover cover, double txHeightM, double rxHeightM, PathConditions conditions) {
        Profile profile = cover.raised(bare);
        double highestM = highest(txHeightM, new double[] {rxHeightM});
        FieldMarchGround ground = ground(held(profile, answered(profile, conditions)), highestM, conditions);
        FieldMarchWave wave = FieldMarchWave.of(conditions);
        FieldMarchGrid grid = FieldMarchGrid.fast(ground, wave.wavelengthM(), txHeightM + highestM);
        return FieldMarchCost.of(ground, grid, wave, cover);
    }

    static FieldMarchGround ground(Profile profile, double rxHeightM, PathConditions conditions) {
        return FieldMarchGround.of(
                profile,
                1000 * conditions.atmosphere().effectiveRadiusKm(),
                conditions.frequency().wavelengthM(),
                2 + rxHeightM);
    }

    private static void checkCost(FieldMarchCost cost, Profile profile) {
        if (cost.seconds() > LONGEST_S || cost.bytes() > MOST_BYTES)
            throw new NoAnswer(String.format(
                    Locale.ROOT,
                    "a field march over %.0f km would take some %.0f s and %d MB; %.0f s and %d MB are allowed. Shorten the path,"
                            + " or take the handheld model.",
                    profile.lengthKm(),
                    cost.seconds(),
                    cost.bytes() / 1_000_000,
                    LONGEST_S,
                    MOST_BYTES / 1_000_000));
    }

    void run() {
        run(FieldMarchPace.of(ground, grid, wave.wavelengthM(), cover));
    }

    void run(FieldMarchPace pace) {
        FieldMarchColumn[] columns = new FieldMarchColumn[FieldMarchPace.MOST_HALVINGS + 1];
        FieldMarchColumn column = columnOf(pace.halvings(0), columns);
        double[] topM = grid.tops(ground);
        double slope = ground.slopeRad(0);
        double startM = startM();
        // a picture shows what is high up too
        if (sketch == null) column.end(topM[0]);
        column.start(
                wave,
                startM - txHeightM * Math.sin(slope),
                txHeightM * Math.cos(slope),
                ground.raysRad(0),
                firstLayer(startM));
        double quantumM = wave.quantumM();
        double carriedM = 0;
        double told = 0;
        for (int f = 0; f < ground.facets(); f++) {
            double lengthM = ground.facetM(f);
            double from = f == 0 ? startM : 0;
            if (f > 0) {
                column = handedOn(column, pace.halvings(f - 1), pace.halvings(f), columns);
                if (sketch == null) column.end(Math.max(topM[f - 1], topM[f]));
                column.turn(ground.slopeRad(f) - ground.slopeRad(f - 1), pace.turnSteps(f));
            }
            if (sketch == null) column.end(topM[f]);
            look(column, f, from);
            double restM = lengthM - from + carriedM;
            FieldMarchPace.Steps steps = pace.steps(f, lengthM - from);
            int m = steps.number();
            long quanta = FieldMarchGrid.quanta(restM / m, quantumM);
            FieldMarchLayer layer = layer(f);
            double halfM = 0.5 * quanta * quantumM;
            for (int i = 1; i <= m; i++) {
                if (layer.isThere()) column.pass(layer, halfM);
                column.advance(quanta, quantumM, steps.order());
                if (layer.isThere()) column.pass(layer, halfM);
                look(column, f, from + (lengthM - from) * i / m);
            }
            carriedM = restM - m * quanta * quantumM;
            double share = (f + 1.0) / ground.facets();
            if (share - told >= 0.005 || share == 1) {
                told = share;
                if (!goOn.test(share)) throw new CancellationException("the march was stopped");
            }
        }
    }

    /** How far along the first facet the column starts. */
    private double startM() {
        return Math.min(Math.max(10 * wave.wavelengthM(), NEAR_RATIO * txHeightM), 0.75 * ground.facetM(0));
    }

    /** What stands on a facet. */
    FieldMarchLayer layer(int facet) {
        return cover.layer(ground, facet);
    }

    /** What stands on the first so many metres along the first facet. */
    private FieldMarchLayer firstLayer(double alongM) {
        double slope = ground.slopeRad(0);
        return cover.layer(0, alongM * Math.cos(slope), slope);
    }

    /** Puts the starting field on a lane; how far along the first facet it stands. */
    double begin(LaneColumn column, int lane) {
        double slope = ground.slopeRad(0);
        double startM = startM();
        column.start(
                lane,
                wave,
                startM - txHeightM * Math.sin(slope),
                txHeightM * Math.cos(slope),
                ground.raysRad(0),
                firstLayer(startM));
        return startM;
    }

    FieldMarchGround ground() {
        return ground;
    }

    FieldMarchCover cover() {
        return cover;
    }

    FieldMarchGrid grid() {
        return grid;
    }

    private FieldMarchColumn columnOf(int halvings, FieldMarchColumn[] columns) {
        if (columns[halvings] == null) columns[halvings] = new FieldMarchColumn(grid.halved(halvings), wave);
        return columns[halvings];
    }

    /** The field on nodes of another spacing, halved or doubled as often as need be. */
    private FieldMarchColumn handedOn(FieldMarchColumn from, int halved, int halvings, FieldMarchColumn[] columns) {
        FieldMarchColumn column = from;
        for (int h = halved; h < halvings; h++) {
            FieldMarchColumn finer = columnOf(h + 1, columns);
            finer.takeBetween(column);
            column = finer;
        }
        for (int h = halved; h > halvings; h--) {
            FieldMarchColumn coarser = columnOf(h - 1, columns);
            coarser.takeEverySecond(column);
            column = coarser;
        }
        return column;
    }

    /** Notes the power at the far antenna's height above the ground under it. */
    private void look(FieldMarchColumn column, int facet, double alongM) {
        look(column::power, facet, alongM);
        if (sketch != null) {
            double slope = ground.slopeRad(facet);
            double footM = ground.startM(facet) + alongM * Math.cos(slope);
            sketch.look(column, footM, ground.startHeightM(facet) + alongM * Math.sin(slope), slope);
        }
    }

    /** The same from the power over a facet by height. */
    void look(DoubleUnaryOperator power, int facet, double alongM) {
        double slope = ground.slopeRad(facet);
        double c = Math.cos(slope);
        double s = Math.sin(slope);
        double footM = ground.startM(facet) + alongM * c;
        double footHeightM = ground.startHeightM(facet) + alongM * s;
        for (int i = 0; i < track.length; i++) {
            double h = cover.overGroundAtM(footM, rxHeightM[i]);
            double x = footM - h * c * s;
            double z = footHeightM + h * c * c;
            double rise = z - ground.startHeightM(0) - txHeightM;
            double r = Math.sqrt(x * x + rise * rise);
            track[i].add(x, Math.max(LEAST_POWER, power.applyAsDouble(h * c) * r));
        }
    }

    /** Power re free space at the far antenna, as noted on the way. */
    FieldMarchTrack track(int height) {
        return track[height];
    }

    FullWaveRadial radial(int height, Profile profile, PathConditions conditions) {
        return radial(height, profile, profile.count(), conditions);
    }

    private FullWaveRadial radial(int height, Profile profile, int answered, PathConditions conditions) {
        int readings = readings(profile);
        double[] atKm = Intervals.divided(profile.distancesKm(), readings);
        double[] heightM = profile.dividedHeightsM();
        int apart = profile.parts() / readings;
        double[] free = new double[atKm.length];
        double[] point = new double[profile.count()];
        double[] mean = new double[atKm.length];
        int end = (answered - 1) * readings + 1;
        for (int i = 1; i < end; i++) {
            double x = 1000 * atKm[i];
            double rx = i % readings == 0
                    ? cover.overGroundM(i / readings, rxHeightM[height])
                    : cover.overGroundAtM(x, rxHeightM[height]);
            double nearM = Math.max(track[height].firstM(), NEAR_RATIO * (txHeightM + rx));
            double riseM = heightM[i * apart] - heightM[0];
            double slantM = Math.hypot(x, riseM + rx - txHeightM);
            free[i] = FreeSpace.lossDb(conditions.frequency(), slantM / 1000);
            boolean isNear = x <= nearM;
            double around = isNear ? nearPower(x, riseM, rx) : track[height].meanBefore(x, nearM);
            mean[i] = free[i] - 10 * Math.log10(around);
            if (i % readings == 0)
                point[i / readings] = free[i] - 10 * Math.log10(isNear ? around : track[height].at(x));
        }
        String refusal = answered < profile.count() ? refusal(profile, answered, conditions) : "";
        return new FullWaveRadial(
                profile.distancesKm(),
                readings,
                new double[][] {free, point, mean},
                answered,
                refusal,
                warnings(profile, refusal, conditions));
    }

    /** Readings from sample to sample: at heights the profile has. */
    private static int readings(Profile profile) {
        double intervalM = 1000 * profile.lengthKm() / (profile.count() - 1);
        int readings = 1;
        for (int r = 2; r <= profile.parts(); r++)
            if (profile.parts() % r == 0 && intervalM / r >= CLOSEST_READING_M) readings = r;
        return readings;
    }

    /** Over the plane through both feet. */
    private double nearPower(double xM, double riseM, double rx) {
        double slope = Math.atan2(riseM, xM);
        double c = Math.cos(slope);
        double along = Math.hypot(xM, riseM) + (rx - txHeightM) * Math.sin(slope);
        double factor = wave.levelGroundFactor(Math.max(1e-3, along), txHeightM * c, rx * c, cover.layer(0, xM, slope))
                .abs();
        return Math.max(LEAST_POWER, factor * factor);
    }

    private static String refusal(Profile profile, int answered, PathConditions conditions) {
        FieldMarchGround all = ground(profile, 0, conditions);
        return String.format(
                Locale.ROOT,
                "from %.2f km the ground slopes by more than %.0f°, up to %.0f°: behind that the field march gives no answer"
                        + " (docs/full-wave.md). Take the handheld model.",
                profile.distanceKm(answered - 1),
                STEEPEST_DEG,
                Math.ceil(Math.toDegrees(all.steepestRad())));
    }

    private List<String> warnings(Profile profile, String refusal, PathConditions conditions) {
        List<String> warnings = new ArrayList<>();
        if (!refusal.isEmpty()) warnings.add("No answer for the whole path: " + refusal);
        double mhz = conditions.frequency().mhz();
        if (mhz < 30 || mhz > 1000)
            warnings.add(String.format(
                    Locale.ROOT,
                    "The field march was checked from 30 to 1000 MHz, not at %.6g MHz (docs/full-wave.md).",
                    mhz));
        double steepest = Math.toDegrees(ground.steepestRad());
        if (steepest > CHECKED_DEG)
            warnings.add(String.format(
                    Locale.ROOT,
                    "The field march was checked by an independent solution on slopes up to %.0f°, and beyond only against a finer"
                            + " grid of its own; this ground reaches %.0f° (docs/full-wave.md).",
                    CHECKED_DEG,
                    steepest));
        if (profile.lengthKm() > 100)
            warnings.add(String.format(
                    Locale.ROOT,
                    "Beyond 100 km scatter and ducts of the air, which the field march leaves out, decide; this path has %.0f km (docs/full-wave.md).",
                    profile.lengthKm()));
        return warnings;
    }
}
