package handreach.plan;

import handreach.input.AtomicFile;
import handreach.input.InputFault;
import handreach.input.SourceText;
import handreach.input.Sources;
import handreach.input.Target;
import handreach.terrain.TileFolder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;

/**
 * A plan with the text it was read from, so that saving keeps comments and order. Immutable: every edit makes a new one.
 *
 * <p>Saving never leaves half a plan: the text goes to a new file beside the plan, is forced to disk, and takes the plan's name
 * in one step; the former text stays as {@code plan.toml.bak}. A plan that somebody else changed meanwhile is not overwritten.
 */
public final class PlanFile {
    public static final String USUAL_NAME = "plan.toml";
    private final Path file;
    private final String text;
    private final String savedText;
    private final Plan plan;

    private PlanFile(Path file, String text, String savedText, Plan plan) {
        this.file = file;
        this.text = text;
        this.savedText = savedText;
        this.plan = plan;
    }

    /** Opens a plan file, or the {@code plan.toml} of a folder. */
    public static PlanFile open(Path planOrFolder) {
        SourceText source = source(planOrFolder);
        Path file = fileOf(planOrFolder);
        return new PlanFile(file, source.text(), source.text(), PlanReader.read(source, folderOf(file)));
    }

    /** Opens a plan as if its text had been edited; nothing where the edit changes nothing, and never to be saved. */
    public static Optional<PlanFile> openAs(Path planOrFolder, UnaryOperator<String> edit) {
        String text = source(planOrFolder).text();
        String edited = edit.apply(text);
        if (edited.equals(text)) return Optional.empty();
        Path file = fileOf(planOrFolder);
        SourceText source = SourceText.of(String.valueOf(file.getFileName()), edited);
        return Optional.of(new PlanFile(file, edited, text, PlanReader.read(source, folderOf(file))));
    }

    static SourceText source(Path planOrFolder) {
        return SourceText.read(fileOf(planOrFolder), PlanReader.CAP);
    }

    private static Path fileOf(Path planOrFolder) {
        Path file = planOrFolder;
        if (Files.isDirectory(file)) {
            file = file.resolve(USUAL_NAME);
            if (!Files.exists(file))
                throw new InputFault(
                        planOrFolder.toString(),
                        0,
                        "the folder has no plan.toml. Name a plan file, or write a blank one: handreach plan "
                                + planOrFolder + ".");
        }
        return file;
    }

    private static Path folderOf(Path file) {
        return file.toAbsolutePath().getParent();
    }

    public Path file() {
        return file;
    }

    public Path folder() {
        return folderOf(file);
    }

    public Plan plan() {
        return plan;
    }

    /** The plan, what it names, and its tiles: what no answer is written over. */
    public Sources sources() {
        return Sources.NONE
                .and(List.of(file))
                .and(plan.files())
                .andFolder(plan.ground().tiles(), TileFolder::isRead);
    }

    public String text() {
        return text;
    }

    /** Whether the text differs from what was last read or saved. */
    public boolean isEdited() {
        return !text.equals(savedText);
    }

    /** A fault that shows only when the plan is worked on, told as one of its reader: with the line of the key, or of its section. */
    public InputFault fault(String section, String key, String text) {
        return fault(PlanText.lineOf(this.text, section, key), text);
    }

    /** The same of a key in the entry with this name. */
    public InputFault entryFault(String section, String name, String key, String text) {
        return fault(PlanText.lineOfEntry(this.text, section, name, key), text);
    }

    private InputFault fault(int line, String text) {
        return new InputFault(String.valueOf(file.getFileName()), line, text);
    }

    /** The same file with another text; the text is checked as on opening. */
    public PlanFile withText(String newText) {
        SourceText source = SourceText.of(String.valueOf(file.getFileName()), newText);
        return new PlanFile(file, newText, savedText, PlanReader.read(source, folderOf(file)));
    }

    /** Writes the text in place of the file and keeps the former file as a backup beside it; where the plan is a link, beside what it leads to. */
    public PlanFile save() {
        Path real = Target.real(file);
        try (SaveLock lock = SaveLock.of(real)) {
            if (Files.exists(file)) {
                String onDisk = SourceText.read(file, PlanReader.CAP).text();
                if (!onDisk.equals(SourceText.of("", savedText).text()))
                    throw new InputFault(
                            file.toString(),
                            0,
                            "was changed by another program since it was opened. Save under another name, or reopen it.");
                write(real.resolveSibling(real.getFileName() + ".bak"), savedText);
            }
            write(file, text);
        } catch (IOException e) {
            throw notWritten(file, e);
        }
        return new PlanFile(file, text, text, plan);
    }

    /** What becomes of the files that a plan names when it is saved into another folder. */
    public enum Named {
        /** They stay, and the plan names them from its new place. */
        WHERE_THEY_ARE,
        /** They are copied beside the plan. */
        TAKEN_ALONG
    }

    /** Writes the text under another name; in another folder the names of files follow. {@code goesOn} is asked between two copies. */
    public PlanFile saveAs(Path other, Named named, BooleanSupplier goesOn) {
        Target.look(other, sources().without(file));
        Removal removal = new Removal(folder(), folderOf(other), named == Named.TAKEN_ALONG);
        // A plan that was never saved names its files whole, and is to name them from where it stands.
        String moved = isFresh() || !folder().equals(folderOf(other)) ? removal.of(text) : text;
        removal.copy(goesOn);
        SourceText source = SourceText.of(String.valueOf(other.getFileName()), moved);
        Plan checked = PlanReader.read(source, folderOf(other));
        try {
            write(other, moved);
        } catch (IOException e) {
            throw notWritten(other, e);
        }
        return new PlanFile(other, moved, moved, checked);
    }

    /** A plan that was never saved, as if it stood at this place. */
    public static PlanFile fresh(Path file, String text) {
        return mended(file, "", text);
    }

    /** A plan from the text of a file that could not be read as one; {@code onDisk} is what the file says. */
    public static PlanFile mended(Path file, String onDisk, String text) {
        SourceText source = SourceText.of(String.valueOf(file.getFileName()), text);
        return new PlanFile(file, text, onDisk, PlanReader.read(source, folderOf(file)));
    }

    /** The file that opening this would read. */
    public static Path named(Path planOrFolder) {
        return fileOf(planOrFolder);
    }

    /** The text of a plan file, whatever is wrong with it. */
    public static String textOf(Path planOrFolder) {
        return source(planOrFolder).text();
    }

    /** Whether it was never saved. */
    public boolean isFresh() {
        return savedText.isBlank();
    }

    private static InputFault notWritten(Path file, IOException e) {
        String why = SourceText.reason(e);
        return new InputFault(
                file.toString(),
                0,
                "could not be written (" + why
                        + "). Nothing was changed. Check rights and free space, or save under another name.");
    }

    private static void write(Path target, String body) throws IOException {
        String ending = body.isEmpty() || body.endsWith("\n") ? "" : "\n";
        AtomicFile.write(target, out -> out.write((body + ending).getBytes(StandardCharsets.UTF_8)));
    }
}
