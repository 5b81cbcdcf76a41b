package handreach.cartography;

import java.util.List;

/** How places are marked that one of two loadouts reaches, or both: the same on every map. Our suggestion. */
public final class DifferenceMarks {
    public static final LoadoutMark BOUGHT = new LoadoutMark("+", 0x0072B2, List.of(), Hatch.RISING);
    public static final LoadoutMark LOST = new LoadoutMark("\u2212", 0xC24A00, List.of(), Hatch.FALLING);
    public static final LoadoutMark BOTH = new LoadoutMark("", 0x8A949A, List.of(), Hatch.NONE);

    private DifferenceMarks() {}
}
