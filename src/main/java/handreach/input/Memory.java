package handreach.input;

/** What the memory given to the program has room for, asked before anything is begun. */
public final class Memory {
    /** Taken by the program itself and the libraries it has opened, bytes; measured, docs/performance.md. */
    private static final long PROGRAM_BYTES = 96L << 20;

    private Memory() {}

    /** Most things for which there is room where each takes so many bytes, and none beyond the usual number. */
    public static long most(long usual, double bytesEach) {
        return (long) Math.max(1, Math.min(usual, freeBytes(Runtime.getRuntime().maxMemory()) / bytesEach));
    }

    /** What to say behind a number that is below the usual one for want of memory; nothing where it is not. */
    public static String advice(long most, long usual, double bytesEach) {
        if (most >= usual) return "";
        return " The memory given to the program, " + (Runtime.getRuntime().maxMemory() >> 20)
                + " MiB, sets this bound; java -Xmx" + megabytesFor(usual * bytesEach)
                + "m -jar handreach.jar lifts it.";
    }

    /** What tiles may fill, bytes: a third of what the program does not take itself. */
    public static long tileBytes() {
        return Math.max(0, (Runtime.getRuntime().maxMemory() - PROGRAM_BYTES) / 3);
    }

    /** The other two thirds. */
    private static double freeBytes(long givenBytes) {
        return Math.max(0, 2 * (givenBytes - PROGRAM_BYTES) / 3.0);
    }

    private static long megabytesFor(double bytes) {
        return (long) Math.ceil((1.5 * bytes + PROGRAM_BYTES) / (1 << 20) / 128) * 128;
    }
}
