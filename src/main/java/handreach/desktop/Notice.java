package handreach.desktop;

import handreach.input.InputFault;
import handreach.propagation.NoAnswer;

/**
 * Something the person should read, shown in place until it is put away.
 *
 * @param isFault whether something did not work; else a remark
 * @param text what it is and what to do
 */
record Notice(boolean isFault, String text) {
    static Notice remark(String text) {
        return new Notice(false, text);
    }

    /** What went wrong, in words for the person who can mend it; a defect of the program says that it is one. */
    static Notice of(Throwable wrong) {
        if (wrong instanceof InputFault fault) return new Notice(true, fault.getMessage());
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
