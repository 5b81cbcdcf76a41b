package handreach.reach;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Somebody who says stop to the question of this number, or at the first word of a step, and counts what is asked and told. */
public final class StoppedAfter implements Progress {
    private final int question;
    private final String step;
    private final Map<String, Double> steps = new LinkedHashMap<>();
    private final List<String> afterwards = new ArrayList<>();
    private int asked;
    private double most;
    private boolean isStopped;

    private StoppedAfter(int question, String step) {
        this.question = question;
        this.step = step;
    }

    /** Stops at the question of this number, counted from 1. */
    public static StoppedAfter questions(int number) {
        return new StoppedAfter(number, "");
    }

    /** Stops when it first hears of a step. */
    public static StoppedAfter hearing(String step) {
        return new StoppedAfter(Integer.MAX_VALUE, step);
    }

    /** Stops nothing and counts. */
    public static StoppedAfter never() {
        return new StoppedAfter(Integer.MAX_VALUE, "");
    }

    @Override
    public synchronized void done(String what, double share) {
        if (isStopped) afterwards.add(what + " " + share);
        steps.putIfAbsent(what, share);
        most = Math.max(most, share);
        if (what.equals(step)) isStopped = true;
    }

    @Override
    public synchronized boolean isCancelled() {
        asked++;
        if (asked >= question) isStopped = true;
        return isStopped;
    }

    /** Number of times it was asked. */
    public synchronized int asked() {
        return asked;
    }

    /** The steps it was told of with the first share of each, in their order. */
    public synchronized Map<String, Double> steps() {
        return new LinkedHashMap<>(steps);
    }

    /** The largest share it was told. */
    public synchronized double most() {
        return most;
    }

    /** What it was told after it had said stop. */
    public synchronized List<String> afterwards() {
        return List.copyOf(afterwards);
    }
}
