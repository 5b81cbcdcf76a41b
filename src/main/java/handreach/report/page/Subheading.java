package handreach.report.page;

/** A heading inside a section. */
public record Subheading(String words) implements Block {
    @Override
    public void appendTo(Html html) {
        html.element("h3", words);
    }
}
