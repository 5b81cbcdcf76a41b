package handreach.report.page;

import java.util.List;

/** Cautions in full. */
public record CautionBlock(List<Caution> cautions) implements Block {
    public CautionBlock {
        cautions = List.copyOf(cautions);
    }

    @Override
    public void appendTo(Html html) {
        html.open("div", "class", "cautions");
        for (Caution caution : cautions)
            html.open("div", "class", "caution")
                    .element("h3", Cautions.title(caution))
                    .element("p", Cautions.full(caution))
                    .close("div");
        html.close("div");
    }
}
