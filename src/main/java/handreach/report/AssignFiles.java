package handreach.report;

import handreach.report.file.FileBatch;
import handreach.report.file.Json;
import handreach.report.file.WholeFile;
import handreach.report.page.HtmlPage;
import handreach.report.page.Page;
import handreach.report.page.PlainText;
import handreach.reach.Progress;
import handreach.study.AssignAnswer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** Everything that {@code assign} writes into a folder: report, text and JSON. */
public final class AssignFiles {
    private AssignFiles() {}

    /** Writes all files, each whole or not at all; returns them. */
    public static List<Path> write(AssignAnswer answer, Path folder) {
        Page page = new AssignComposer(answer).page();
        FileBatch batch = new FileBatch(folder);
        batch.add("assign.html", text(HtmlPage.text(page)));
        batch.add("assign.txt", text(PlainText.of(page, PlainText.USUAL_WIDTH)));
        batch.add("assign.json", text(Json.text(AssignJson.of(answer))));
        return batch.write(Progress.SILENT);
    }

    private static WholeFile.Content text(String body) {
        return out -> out.write(body.getBytes(StandardCharsets.UTF_8));
    }
}
