package handreach.bench;

import handreach.uncertainty.MeanDifference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Levels of one antenna in one session, each with its place in the order of readings and its trial number. */
final class AntennaReadings {
    private final String antenna;
    private final List<Double> levels = new ArrayList<>();
    private final List<Double> places = new ArrayList<>();
    private final Map<Integer, Integer> indexOfTrial = new TreeMap<>();
    private double step = 0;
    private boolean numbered = true;

    AntennaReadings(String antenna) {
        this.antenna = antenna;
    }

    void add(double levelDb, int place, OptionalInt trial, double writtenStep) {
        if (trial.isEmpty() || indexOfTrial.putIfAbsent(trial.getAsInt(), levels.size()) != null) numbered = false;
        levels.add(levelDb);
        places.add((double) place);
        step = Math.max(step, writtenStep);
    }

    String antenna() {
        return antenna;
    }

    int n() {
        return levels.size();
    }

    List<Double> levels() {
        return levels;
    }

    /** Levels less a drift of so many decibels a reading. */
    List<Double> levels(double driftDb) {
        if (driftDb == 0) return levels;
        List<Double> without = new ArrayList<>();
        for (int i = 0; i < n(); i++) without.add(levels.get(i) - driftDb * places.get(i));
        return without;
    }

    List<Double> places() {
        return places;
    }

    /** Coarsest step in which the readings were written. */
    double step() {
        return step;
    }

    /** Whether every reading has a trial number of its own. */
    boolean isNumbered() {
        return numbered;
    }

    Map<Integer, Integer> indexOfTrial() {
        return indexOfTrial;
    }

    double mean() {
        return MeanDifference.mean(levels);
    }

    double meanPlace() {
        return MeanDifference.mean(places);
    }

    LevelSummary summary() {
        OptionalDouble scatter =
                n() < 2 ? OptionalDouble.empty() : OptionalDouble.of(MeanDifference.standardDeviation(levels));
        return new LevelSummary(n(), mean(), scatter);
    }
}
