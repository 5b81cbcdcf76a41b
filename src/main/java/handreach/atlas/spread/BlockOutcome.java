package handreach.atlas.spread;

import java.io.Serializable;

/**
 * What came back of one block.
 *
 * @param block its number
 * @param rows as {@link BlockWork} gave them; empty where there is a fault
 * @param fault in words; empty where there is none
 * @param cpuNanos processor time of the thread that reckoned it, ns
 */
public record BlockOutcome(int block, byte[] rows, String fault, long cpuNanos) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Whether there are no rows. */
    public boolean isFaulty() {
        return !fault.isEmpty();
    }
}
