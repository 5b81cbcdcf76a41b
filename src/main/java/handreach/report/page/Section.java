package handreach.report.page;

import java.util.List;

/**
 * A part of a page under a heading.
 *
 * @param heading a few words
 * @param question what a reader asks who should look here; empty where the heading says it
 * @param isDetail whether it is for those who want to look behind the answer: folded on a screen, in the appendix on paper
 * @param blocks what stands under it, in order
 */
public record Section(String heading, String question, boolean isDetail, List<Block> blocks) {
    public Section {
        blocks = List.copyOf(blocks);
    }

    public Section(String heading, List<Block> blocks) {
        this(heading, "", false, blocks);
    }

    public static Section of(String heading, Block... blocks) {
        return new Section(heading, List.of(blocks));
    }

    /** The same, found in the index by a question. */
    public Section answering(String asked) {
        return new Section(heading, asked, isDetail, blocks);
    }

    /** The same for those who want to look behind the answer. */
    public Section asDetail() {
        return new Section(heading, question, true, blocks);
    }
}
