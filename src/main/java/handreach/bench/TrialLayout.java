package handreach.bench;

import handreach.bench.Declarations.TrialOrder;
import handreach.uncertainty.LinearTrend;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Antennas of a session read in turns, as a layout of two ways without interaction: a level is what its antenna is worth, plus
 * what its trial has in common, plus scatter that is the same for all. Trials that miss an antenna do no harm.
 *
 * <p>Least squares with the trials taken out first, Scheffé, The Analysis of Variance (Wiley 1959), chapters 4 and 5.
 */
final class TrialLayout {
    /** Pivots below this share of the largest mean antennas that no trial links. */
    private static final double UNLINKED = 1e-9;

    private record Cell(int antenna, int trial, double level, double place) {}

    /**
     * Effects of antennas and trials that follow a column of values best.
     *
     * @param antennas effect of each antenna
     * @param trials effect of each trial
     */
    private record Effects(double[] antennas, double[] trials) {}

    private final int antennas;
    private final int trials;
    private final List<Cell> cells;
    private final double[][] inverse;
    private final Effects levels;
    private final Effects places;

    private TrialLayout(int antennas, int trials, List<Cell> cells, double[][] inverse) {
        this.antennas = antennas;
        this.trials = trials;
        this.cells = cells;
        this.inverse = inverse;
        this.levels = effects(false);
        this.places = effects(true);
    }

    /** The layout, if the antennas were read in turns, and trials link every antenna to every other. */
    static Optional<TrialLayout> of(List<AntennaReadings> antennas, Optional<TrialOrder> declared) {
        if (declared.equals(Optional.of(TrialOrder.BLOCKS)) || antennas.size() < 2) return Optional.empty();
        if (!antennas.stream().allMatch(AntennaReadings::isNumbered)) return Optional.empty();
        Map<Integer, List<Cell>> byTrial = new TreeMap<>();
        for (int a = 0; a < antennas.size(); a++) {
            AntennaReadings one = antennas.get(a);
            int antenna = a;
            one.indexOfTrial()
                    .forEach((trial, i) -> byTrial.computeIfAbsent(trial, key -> new ArrayList<>())
                            .add(new Cell(
                                    antenna,
                                    trial,
                                    one.levels().get(i),
                                    one.places().get(i))));
        }
        List<List<Cell>> turns =
                byTrial.values().stream().filter(turn -> turn.size() > 1).toList();
        if (turns.size() < 2 || (declared.isEmpty() && !areInTurns(turns))) return Optional.empty();
        List<Cell> cells = new ArrayList<>();
        for (int t = 0; t < turns.size(); t++)
            for (Cell cell : turns.get(t)) cells.add(new Cell(cell.antenna(), t, cell.level(), cell.place()));
        return inverse(antennas.size(), turns)
                .map(inverse -> new TrialLayout(antennas.size(), turns.size(), cells, inverse));
    }

    private static boolean areInTurns(List<List<Cell>> turns) {
        List<double[]> spans = new ArrayList<>();
        for (List<Cell> turn : turns)
            spans.add(new double[] {
                turn.stream().mapToDouble(Cell::place).min().orElseThrow(),
                turn.stream().mapToDouble(Cell::place).max().orElseThrow()
            });
        spans.sort(Comparator.comparingDouble(span -> span[0]));
        for (int i = 1; i < spans.size(); i++) if (spans.get(i)[0] < spans.get(i - 1)[1]) return false;
        return true;
    }

    /** Inverse of the equations of the antennas, trials eliminated, their sum pinned to zero; none where trials do not link all. */
    private static Optional<double[][]> inverse(int antennas, List<List<Cell>> turns) {
        double[][] sums = new double[antennas][antennas];
        for (double[] row : sums) java.util.Arrays.fill(row, 1.0 / antennas);
        for (List<Cell> turn : turns)
            for (Cell one : turn) {
                sums[one.antenna()][one.antenna()] += 1;
                for (Cell other : turn) sums[one.antenna()][other.antenna()] -= 1.0 / turn.size();
            }
        return inverted(sums);
    }

    /** By Gauss and Jordan; the equations are symmetric and positive, so no row need be exchanged. */
    private static Optional<double[][]> inverted(double[][] matrix) {
        int n = matrix.length;
        double largest = 0;
        for (int i = 0; i < n; i++) largest = Math.max(largest, matrix[i][i]);
        double[][] result = new double[n][n];
        for (int i = 0; i < n; i++) result[i][i] = 1;
        for (int i = 0; i < n; i++) {
            double pivot = matrix[i][i];
            if (!(pivot > UNLINKED * largest)) return Optional.empty();
            for (int k = 0; k < n; k++) {
                matrix[i][k] /= pivot;
                result[i][k] /= pivot;
            }
            for (int j = 0; j < n; j++) {
                double factor = matrix[j][i];
                if (j == i || factor == 0) continue;
                for (int k = 0; k < n; k++) {
                    matrix[j][k] -= factor * matrix[i][k];
                    result[j][k] -= factor * result[i][k];
                }
            }
        }
        return Optional.of(result);
    }

    private Effects effects(boolean ofPlaces) {
        double[] trialMean = new double[trials];
        int[] size = new int[trials];
        for (Cell cell : cells) {
            trialMean[cell.trial()] += value(cell, ofPlaces);
            size[cell.trial()]++;
        }
        for (int t = 0; t < trials; t++) trialMean[t] /= size[t];
        double[] right = new double[antennas];
        for (Cell cell : cells) right[cell.antenna()] += value(cell, ofPlaces) - trialMean[cell.trial()];
        double[] effect = new double[antennas];
        for (int i = 0; i < antennas; i++) for (int k = 0; k < antennas; k++) effect[i] += inverse[i][k] * right[k];
        double[] trial = trialMean.clone();
        for (Cell cell : cells) trial[cell.trial()] -= effect[cell.antenna()] / size[cell.trial()];
        return new Effects(effect, trial);
    }

    private static double value(Cell cell, boolean ofPlaces) {
        return ofPlaces ? cell.place() : cell.level();
    }

    int trials() {
        return trials;
    }

    /** What trials have in common, over their place in the order of readings; from three trials. */
    LinearTrend trend() {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int t = 0; t < trials; t++) {
            x.add(places.trials()[t]);
            y.add(levels.trials()[t]);
        }
        return LinearTrend.of(x, y);
    }

    /** The first antenna less the second, a drift of so many decibels a reading taken out. */
    double difference(int first, int second, double driftDb) {
        return levels.antennas()[first] - levels.antennas()[second] - driftDb * apart(first, second);
    }

    /** How many readings later, all in all, the first antenna was read than the second. */
    double apart(int first, int second) {
        return places.antennas()[first] - places.antennas()[second];
    }

    /** Standard error of a difference in units of the common scatter. */
    double errorOf(int first, int second) {
        return Math.sqrt(Math.max(0, inverse[first][first] + inverse[second][second] - 2 * inverse[first][second]));
    }

    int degreesOfFreedom() {
        return cells.size() - antennas - trials + 1;
    }

    /** Scatter of single readings about antenna and trial, pooled over all; at least one degree of freedom. */
    double scatterDb(double driftDb) {
        double squares = 0;
        for (Cell cell : cells) {
            double off = cell.level()
                    - levels.antennas()[cell.antenna()]
                    - levels.trials()[cell.trial()]
                    - driftDb * (cell.place() - places.antennas()[cell.antenna()] - places.trials()[cell.trial()]);
            squares += off * off;
        }
        return Math.sqrt(squares / degreesOfFreedom());
    }
}
