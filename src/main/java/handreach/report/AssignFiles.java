package handreach.report;

import handreach.reach.Progress;
import handreach.report.file.FileBatch;
import handreach.report.file.FolderResult;
import handreach.report.file.Json;
import handreach.report.page.HtmlPage;
import handreach.report.page.Page;
import handreach.report.page.PlainText;
import handreach.study.AssignAnswer;
import java.nio.file.Path;

/** Everything that {@code assign} writes into a folder: report, text and JSON. */
public final class AssignFiles {
    private AssignFiles() {}

    /** Writes all files, each whole or not at all. */
    public static FolderResult write(AssignAnswer answer, Path folder) {
        Page page = new AssignComposer(answer).page();
        FileBatch batch = new FileBatch(folder, "assign", answer.scene().file().sources());
        batch.add("assign.html", () -> HtmlPage.text(page));
        batch.add("assign.txt", () -> PlainText.of(page, PlainText.USUAL_WIDTH));
        batch.add("assign.json", () -> Json.text(AssignJson.of(answer)));
        return batch.write(Progress.SILENT);
    }
}
