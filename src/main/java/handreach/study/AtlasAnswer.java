package handreach.study;

import handreach.atlas.AtlasGrid;
import handreach.atlas.HeardBy;
import handreach.atlas.LoadoutFigures;
import handreach.atlas.PositionFigures;
import handreach.atlas.RelayCover;
import handreach.atlas.Shadow;
import handreach.atlas.TalkGraph;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What follows from the positions of a region. Immutable; blocks that failed are left out and named. */
public final class AtlasAnswer {
    /** No loadout is heard there. */
    public static final int NOBODY = -1;
    /** The ground under the target is not known. */
    public static final int UNKNOWN = -2;

    private final AtlasStudy study;
    private final List<PositionFigures> positions;
    private final List<BlockFault> faults;
    private final PositionFigures[] byCell;
    private final List<HeardBy> heardBy;
    private final List<TalkGraph> talk;
    private final List<RelayCover> covers;
    private final int[] leastHeard;

    private AtlasAnswer(AtlasStudy study, List<PositionFigures> positions, List<BlockFault> faults) {
        this.study = study;
        this.positions = List.copyOf(positions);
        this.faults = List.copyOf(faults);
        this.byCell = new PositionFigures[study.positions().cells().count()];
        for (PositionFigures one : positions) byCell[one.cell()] = one;
        int loadouts = study.scene().loadouts().size();
        AtlasGrid targets = study.targets();
        this.heardBy = has(AtlasLayer.SHADOW)
                ? IntStream.range(0, loadouts)
                        .mapToObj(l -> HeardBy.of(targets.cells(), this.positions, l))
                        .toList()
                : List.of();
        this.talk = has(AtlasLayer.TALK)
                ? IntStream.range(0, loadouts)
                        .mapToObj(l -> TalkGraph.of(study.positions().cells(), this.positions, l))
                        .toList()
                : List.of();
        int relays = study.wish().relays();
        this.covers = relays == 0
                ? List.of()
                : IntStream.range(0, loadouts)
                        .mapToObj(l -> RelayCover.greedy(targets, this.positions, l, relays))
                        .toList();
        this.leastHeard = has(AtlasLayer.SHADOW) ? leastHeard() : new int[0];
    }

    /** Lays the positions over one another, all of them whole. */
    public static AtlasAnswer of(AtlasStudy study, List<PositionFigures> positions, List<BlockFault> faults) {
        if (positions.stream().anyMatch(PositionFigures::isOfLater))
            throw new IllegalArgumentException("positions of which pairs are still to be completed");
        return new AtlasAnswer(study, positions, faults);
    }

    private int[] leastHeard() {
        int[] least = new int[study.targets().cells().count()];
        Arrays.fill(least, UNKNOWN);
        for (int target = 0; target < least.length; target++) {
            if (!study.targets().isAsked(target) || isVoid(target)) continue;
            least[target] = NOBODY;
            for (int loadout : study.byBurden())
                if (heardBy.get(loadout).at(target) > 0) {
                    least[target] = loadout;
                    break;
                }
        }
        return least;
    }

    private boolean isVoid(int target) {
        return study.scene()
                .tiles()
                .at(study.targets().cells().positionOf(target))
                .isVoid();
    }

    public AtlasStudy study() {
        return study;
    }

    /** Whether a layer was asked for. */
    public boolean has(AtlasLayer layer) {
        return study.wish().layers().contains(layer);
    }

    public List<PositionFigures> positions() {
        return positions;
    }

    public List<BlockFault> faults() {
        return faults;
    }

    /** Figures of one loadout at a cell of the positions' grid, where they are known. */
    public Optional<LoadoutFigures> at(int cell, int loadout) {
        PositionFigures one = byCell[cell];
        return one == null || !one.isKnown()
                ? Optional.empty()
                : Optional.of(one.loadouts().get(loadout));
    }

    /** The least loadout that serves at a cell; {@link #NOBODY} or {@link #UNKNOWN}. */
    public int leastServing(int cell) {
        PositionFigures one = byCell[cell];
        if (one == null || !one.isKnown()) return UNKNOWN;
        int least = one.least(study.byBurden(), study.question().reach().servesM());
        return least == PositionFigures.NONE ? NOBODY : least;
    }

    /** The least loadout with which a target is heard by anybody; {@link #NOBODY} or {@link #UNKNOWN}. */
    public int leastHeard(int target) {
        return leastHeard[target];
    }

    /** By how many positions a target is heard. */
    public int heardBy(int target, int loadout) {
        return heardBy.get(loadout).at(target);
    }

    public TalkGraph talk(int loadout) {
        return talk.get(loadout);
    }

    public RelayCover cover(int loadout) {
        return covers.get(loadout);
    }

    /** Ground under known positions, km². */
    public double knownKm2() {
        return positions.stream()
                .filter(PositionFigures::isKnown)
                .mapToDouble(one -> study.positions().areaKm2(one.cell()))
                .sum();
    }

    /** Ground on which a loadout serves, km². */
    public double servesKm2(int loadout) {
        double servesM = study.question().reach().servesM();
        return positions.stream()
                .filter(PositionFigures::isKnown)
                .filter(one -> one.loadouts().get(loadout).medianM().value() >= servesM)
                .mapToDouble(one -> study.positions().areaKm2(one.cell()))
                .sum();
    }

    /** Median over the known positions of the median reach of a loadout, m; 0 where none is known. */
    public double medianM(int loadout) {
        double[] all = positions.stream()
                .filter(PositionFigures::isKnown)
                .mapToDouble(one -> one.loadouts().get(loadout).medianM().value())
                .sorted()
                .toArray();
        return all.length == 0 ? 0 : (all[(all.length - 1) / 2] + all[all.length / 2]) / 2;
    }

    /** Known targets of the region, and how much ground they stand for is not heard with a loadout by anybody, km². */
    public double unheardKm2(int loadout) {
        return IntStream.range(0, leastHeard.length)
                .filter(target -> leastHeard[target] != UNKNOWN && heardBy(target, loadout) == 0)
                .mapToDouble(study.targets()::areaKm2)
                .sum();
    }

    /** Pieces of the region that nobody hears with any loadout, the largest first. */
    public List<Shadow> shadows() {
        return Shadow.pieces(study.targets(), target -> leastHeard[target] == NOBODY);
    }

    /** Known positions, those first that reach the most targets with a loadout, then by median reach. */
    public List<PositionFigures> best(int loadout) {
        return positions.stream()
                .filter(PositionFigures::isKnown)
                .sorted(Comparator.comparingInt((PositionFigures one) ->
                                -one.loadouts().get(loadout).heard().count())
                        .thenComparingDouble(
                                one -> -one.loadouts().get(loadout).medianM().value())
                        .thenComparingInt(PositionFigures::cell))
                .toList();
    }
}
