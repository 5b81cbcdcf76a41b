package handreach.report.page;

/** A piece of a section. Words in it are plain text; whoever renders it escapes them. */
public interface Block {
    /** Adds itself to a page of HTML. */
    void appendTo(Html html);
}
