package handreach.report.page;

import java.util.List;

/**
 * A part of a page under a heading.
 *
 * @param heading a few words
 * @param blocks what stands under it, in order
 */
public record Section(String heading, List<Block> blocks) {
    public Section {
        blocks = List.copyOf(blocks);
    }

    public static Section of(String heading, Block... blocks) {
        return new Section(heading, List.of(blocks));
    }
}
