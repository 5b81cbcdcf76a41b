package handreach.report.page;

import java.util.List;

/**
 * How a report begins and ends.
 *
 * @param title what the plan is called
 * @param question what was asked, one sentence
 * @param answer the answer in plain words; the first sentence stands out
 * @param facts channel, target, area and the like
 * @param imprint who made it and when
 */
public record Opening(String title, String question, List<String> answer, List<Facts.Fact> facts, String imprint) {
    public Opening {
        answer = List.copyOf(answer);
        facts = List.copyOf(facts);
        if (answer.isEmpty()) throw new IllegalArgumentException("a report that answers nothing");
    }

    public List<Block> blocks() {
        List<Block> blocks = new java.util.ArrayList<>();
        blocks.add(Paragraph.answer(answer.get(0)));
        answer.stream().skip(1).map(Paragraph::of).forEach(blocks::add);
        blocks.add(new Facts(facts));
        return blocks;
    }
}
