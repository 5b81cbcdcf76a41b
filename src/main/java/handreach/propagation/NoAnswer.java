package handreach.propagation;

/**
 * A model has no answer for what it was asked: the path is not one that it can be laid over. Not a defect, and not always a fault of
 * the user's: another model may answer. The message is a sentence fit for the user.
 */
public final class NoAnswer extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NoAnswer(String sentence) {
        super(sentence);
    }
}
