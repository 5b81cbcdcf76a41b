package handreach.report.page;

import java.util.List;

/** Short facts, each with its name. */
public record Facts(List<Fact> facts) implements Block {
    /** A name and what holds for it. */
    public record Fact(String name, String value) {}

    public Facts {
        facts = List.copyOf(facts);
    }

    @Override
    public void appendTo(Html html) {
        if (facts.isEmpty()) return;
        html.open("dl");
        for (Fact fact : facts)
            html.open("div")
                    .element("dt", fact.name())
                    .element("dd", fact.value())
                    .close("div");
        html.close("dl");
    }
}
