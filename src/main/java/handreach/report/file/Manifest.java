package handreach.report.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import handreach.input.CappedFile;
import handreach.input.InputFault;
import handreach.input.SourceText;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Which files of a folder belong together. It is written first, as not complete, and again when all files are there; so a folder whose
 * manifest is complete, and whose files have the digests named in it, is one result.
 *
 * @param what the command
 * @param complete whether all of the run was written
 * @param run what all files of the run have in common: the start of the digest over their names and digests
 * @param note what else the run says of all its files
 * @param files what is there, those of earlier runs too
 */
record Manifest(String what, boolean complete, Optional<String> run, Optional<String> note, List<Entry> files) {
    private static final CappedFile.Cap CAP = new CappedFile.Cap(1L << 20, 30, "It is no list of ours: remove it.");
    /** As this program writes them; a manifest that leads out of its folder is somebody else's. */
    private static final Pattern PLAIN_NAME = Pattern.compile("[a-z0-9][a-z0-9-]*(\\.[a-z0-9]+)*");

    /**
     * One file.
     *
     * @param name its name in the folder
     * @param bytes its size, 0 while it is being written
     * @param sha256 its digest, empty while it is being written
     * @param run the run that wrote it, empty while that is not complete
     */
    record Entry(String name, long bytes, Optional<String> sha256, Optional<String> run) {}

    Manifest {
        files = List.copyOf(files);
    }

    static String name(String what) {
        return what + "-files.json";
    }

    /** That of the last run; one without files where there is none, or what is there cannot be read as one. */
    static Manifest read(Path folder, String what) {
        Manifest none = new Manifest(what, true, Optional.empty(), Optional.empty(), List.of());
        Path file = folder.resolve(name(what));
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) return none;
        try {
            JsonNode tree = Json.parsed(SourceText.read(file, CAP).text());
            List<Entry> files = new ArrayList<>();
            for (JsonNode one : tree.path("files")) {
                String name = one.path("name").asText();
                if (PLAIN_NAME.matcher(name).matches())
                    files.add(new Entry(
                            name, one.path("bytes").asLong(), words(one.path("sha_256")), words(one.path("run"))));
            }
            return new Manifest(
                    what, tree.path("complete").asBoolean(), words(tree.path("run")), words(tree.path("note")), files);
        } catch (InputFault | IllegalArgumentException unreadable) {
            return none;
        }
    }

    private static Optional<String> words(JsonNode node) {
        return node.isTextual() ? Optional.of(node.asText()) : Optional.empty();
    }

    /**
     * As {@link Json} writes it, without its mapper: no other file of many a run needs that, and the mapper takes a cold start a tenth of
     * a second and 500 classes.
     */
    String text() {
        StringWriter text = new StringWriter();
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            out.setPrettyPrinter(new DefaultPrettyPrinter());
            out.writeStartObject();
            out.writeStringField("what", what);
            out.writeBooleanField("complete", complete);
            words(out, "run", run);
            if (note.isPresent()) words(out, "note", note);
            out.writeArrayFieldStart("files");
            for (Entry file : files) {
                out.writeStartObject();
                out.writeStringField("name", file.name());
                out.writeNumberField("bytes", file.bytes());
                words(out, "sha_256", file.sha256());
                words(out, "run", file.run());
                out.writeEndObject();
            }
            out.writeEndArray();
            out.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private static void words(JsonGenerator out, String key, Optional<String> words) throws IOException {
        out.writeStringField(key, words.orElse(null));
    }

    /** The same with what the next run says of its files, or nothing. */
    Manifest noting(Optional<String> said) {
        return new Manifest(what, complete, run, said, files);
    }

    /** While these are being written, beside what is there; those that are done have their digests. */
    Manifest during(Collection<String> names, Map<String, Entry> done) {
        Map<String, Entry> all = new LinkedHashMap<>();
        for (String name : names) all.put(name, new Entry(name, 0, Optional.empty(), Optional.empty()));
        all.putAll(done);
        for (Entry before : files) all.putIfAbsent(before.name(), before);
        return new Manifest(what, false, Optional.empty(), note, List.copyOf(all.values()));
    }

    /** After all were written; what is left of earlier runs comes last. */
    Manifest after(List<Entry> written, Predicate<String> isThere, String run) {
        Map<String, Entry> all = new LinkedHashMap<>();
        for (Entry one : written)
            all.put(one.name(), new Entry(one.name(), one.bytes(), one.sha256(), Optional.of(run)));
        for (Entry before : files) if (isThere.test(before.name())) all.putIfAbsent(before.name(), before);
        return new Manifest(what, true, Optional.of(run), note, List.copyOf(all.values()));
    }
}
