package handreach.desktop;

import handreach.input.Fault;
import handreach.input.InputFault;
import handreach.propagation.NoAnswer;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Something the person should read, shown in place until it is put away.
 *
 * @param kind what it is about, and with that how long it stays
 * @param text what it is and what to do
 * @param verbs what can be done about it at once
 */
record Notice(Kind kind, String text, List<Verb> verbs) {
    private static final int MOST_FAULTS = 2;

    enum Kind {
        /** Something did not work. */
        FAULT,
        /** An edit that the plan could not bear; gone once another one is taken. */
        REFUSED,
        REMARK,
        /** Something was done; only the last of these is shown. */
        DONE
    }

    /**
     * Something to do about it.
     *
     * @param words on its button
     * @param step what the button does; the notice is put away first where it is answered by that
     * @param isAnswer whether nothing is left to say then
     */
    record Verb(String words, Runnable step, boolean isAnswer) {}

    Notice(boolean isFault, String text) {
        this(isFault ? Kind.FAULT : Kind.REMARK, text, List.of());
    }

    static Notice done(String text, Verb... verbs) {
        return new Notice(Kind.DONE, text, List.of(verbs));
    }

    Notice with(Verb... more) {
        return new Notice(kind, text, List.of(more));
    }

    Notice as(Kind other) {
        return new Notice(other, text, verbs);
    }

    boolean isFault() {
        return kind == Kind.FAULT || kind == Kind.REFUSED;
    }

    /** Whether it says the same, whatever can be done about it. */
    boolean says(Notice other) {
        return isFault() == other.isFault() && text.equals(other.text);
    }

    static Notice remark(String text) {
        return new Notice(false, text);
    }

    /** The first of many faults: all the lines of a log that are wrong would leave no map to look at. */
    private static String first(List<Fault> faults) {
        String words = faults.stream().limit(MOST_FAULTS).map(Fault::message).collect(Collectors.joining("\n"));
        return faults.size() <= MOST_FAULTS ? words : words + "\nThere are more; mend these first.";
    }

    /** What went wrong, in words for the person who can mend it; a defect of the program says that it is one. */
    static Notice of(Throwable wrong) {
        if (wrong instanceof InputFault fault) return new Notice(true, first(fault.faults()));
        if (wrong instanceof NoAnswer) return new Notice(true, "The model has no answer: " + wrong.getMessage());
        if (wrong instanceof OutOfMemoryError)
            return new Notice(
                    true, "The memory given to the program was not enough. Your plan is as it was; take larger cells.");
        Throwable cause = wrong instanceof java.io.UncheckedIOException ? wrong.getCause() : wrong;
        if (cause instanceof java.nio.file.FileSystemException file) {
            String reason = file.getReason() == null ? file.getClass().getSimpleName() : file.getReason();
            return new Notice(
                    true,
                    file.getFile() + " could not be read or written (" + reason
                            + "). Check the name, the rights and free space.");
        }
        return new Notice(
                true,
                "A defect of the program, not of your plan: " + wrong.getClass().getSimpleName() + " ("
                        + wrong.getMessage() + "). Your plan is as it was; please report what you did.");
    }
}
