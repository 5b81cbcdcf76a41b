package handreach.cartography;

import java.util.List;

/**
 * How one loadout is told from the others, in colour and without: letter, colour, line pattern, area pattern.
 *
 * <p>Colours are dark enough for thin lines on white and kept apart for colour-blind eyes: six of the eight of Okabe and Ito,
 * Color Universal Design (2008), values from memory, the light ones darkened by us; violet, wine, slate and brown are ours, chosen
 * so that any two of the ten lie at least 0.11 apart in Oklab.
 *
 * @param letter A, B, C …
 * @param rgb colour, 0xRRGGBB
 * @param dashPx lengths of dash, gap, dash, gap …, px; empty is a full line
 * @param hatch area pattern
 */
public record LoadoutMark(String letter, int rgb, List<Double> dashPx, Hatch hatch) {
    private static final int[] COLOURS = {
        0x1B1B1B, 0x0072B2, 0xC24A00, 0x007A5A, 0xA8518A, 0x9A7300, 0x5A2FD0, 0x7D0A28, 0x6B7780, 0x56381C
    };
    private static final List<List<Double>> DASHES = List.of(
            List.of(),
            List.of(9.0, 4.0),
            List.of(2.0, 3.5),
            List.of(12.0, 4.0, 2.0, 4.0),
            List.of(5.0, 3.0),
            List.of(14.0, 3.0, 2.0, 3.0, 2.0, 3.0),
            List.of(18.0, 6.0),
            List.of(2.0, 2.0, 2.0, 7.0),
            List.of(20.0, 4.0, 8.0, 4.0),
            List.of(4.0, 9.0));
    private static final Hatch[] HATCHES = {
        Hatch.NONE,
        Hatch.RISING,
        Hatch.DOTS,
        Hatch.FALLING,
        Hatch.LEVEL,
        Hatch.CROSSED,
        Hatch.UPRIGHT,
        Hatch.GRID,
        Hatch.ZIGZAG,
        Hatch.DASHED
    };

    public LoadoutMark {
        dashPx = List.copyOf(dashPx);
    }

    /** Mark of the n-th loadout from 0; ten have colours and patterns of their own, then the colours come with the next pattern. */
    public static LoadoutMark of(int index) {
        if (index < 0) throw new IllegalArgumentException("loadout " + index);
        int pattern = index + index / COLOURS.length;
        return new LoadoutMark(
                letters(index),
                COLOURS[index % COLOURS.length],
                DASHES.get(pattern % DASHES.size()),
                HATCHES[pattern % HATCHES.length]);
    }

    private static String letters(int index) {
        String last = String.valueOf((char) ('A' + index % 26));
        return index < 26 ? last : letters(index / 26 - 1) + last;
    }
}
