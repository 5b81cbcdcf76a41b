package handreach.reach;

/**
 * A part of a longer work that reports into one progress, under one name whatever its steps are called.
 *
 * @param whole whom to tell
 * @param what what is being done
 * @param from share of the whole at which this part starts
 * @param to share at which it ends
 */
public record SubProgress(Progress whole, String what, double from, double to) implements Progress {
    /** This part is done to this share, 0 to 1. */
    public void done(double share) {
        whole.done(what, from + (to - from) * share);
    }

    @Override
    public void done(String step, double share) {
        done(share);
    }

    @Override
    public boolean isCancelled() {
        return whole.isCancelled();
    }

    /** The part of this part between two of its shares, under the same name. */
    public SubProgress part(double start, double end) {
        return new SubProgress(this, what, start, end);
    }
}
