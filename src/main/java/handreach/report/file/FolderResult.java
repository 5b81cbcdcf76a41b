package handreach.report.file;

import java.nio.file.Path;
import java.util.List;

/**
 * What became of a folder.
 *
 * @param files the files written, in the order a reader would open them, the list of them last
 * @param removed files of an earlier run of the same command that the answer no longer has
 */
public record FolderResult(List<Path> files, List<Path> removed) {
    public FolderResult {
        files = List.copyOf(files);
        removed = List.copyOf(removed);
    }
}
