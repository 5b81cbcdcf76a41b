import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Enumeration;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * Puts a release together in target/release: the jar, the bill of materials, the licences that the libraries carry, an app image
 * for this platform, and the checksums. Fails when docs/third-party-notices.md does not name every library with its version.
 * Run by the build as a single source file: MakeRelease BASEDIR VERSION.
 */
public final class MakeRelease {
    private static final Pattern COMPONENT =
            Pattern.compile("\"group\"\\s*:\\s*\"([^\"]+)\"\\s*,\\s*\"name\"\\s*:\\s*\"([^\"]+)\"\\s*,\\s*\"version\"\\s*:\\s*\"([^\"]+)\"");
    private static final String MODULES = "java.se,jdk.unsupported,jdk.zipfs,jdk.localedata,jdk.accessibility,jdk.incubator.vector";

    private final Path base;
    private final Path target;
    private final Path release;
    private final String version;

    private MakeRelease(Path base, String version) {
        this.base = base;
        this.target = base.resolve("target");
        this.release = target.resolve("release");
        this.version = version;
    }

    public static void main(String[] args) throws Exception {
        new MakeRelease(Path.of(args[0]).toAbsolutePath(), args[1]).make();
    }

    private void make() throws Exception {
        deleteTree(release);
        Files.createDirectories(release);
        Path bill = target.resolve("handreach-sbom.json");
        int libraries = checkNotices(Files.readString(bill));
        Path jar = release.resolve("handreach-" + version + ".jar");
        Files.copy(target.resolve("handreach.jar"), jar);
        Files.copy(bill, release.resolve(bill.getFileName()));
        Path xml = target.resolve("handreach-sbom.xml");
        if (Files.exists(xml)) Files.copy(xml, release.resolve(xml.getFileName()));
        for (String name : List.of("LICENSE", "docs/third-party-notices.md", "docs/changelog.md"))
            Files.copy(base.resolve(name), release.resolve(Path.of(name).getFileName()));
        collectLicences(release.resolve("licences"));
        Path image = appImage(jar);
        checksums();
        System.out.printf(
                Locale.ROOT,
                "Release %s: %s, %s, %d libraries in the bill of materials, all of them in the notices.%n",
                version,
                base.relativize(jar),
                base.relativize(image),
                libraries);
    }

    /** Every library of the bill of materials stands in the notices as `group:name` with its version in the same row. */
    private int checkNotices(String bill) throws IOException {
        List<String> rows = Files.readAllLines(base.resolve("docs/third-party-notices.md"));
        TreeSet<String> missing = new TreeSet<>();
        TreeSet<String> seen = new TreeSet<>();
        Matcher found = COMPONENT.matcher(bill.substring(bill.indexOf("\n  \"components\"")));
        while (found.find()) {
            String name = found.group(1) + ":" + found.group(2);
            if (!seen.add(name)) continue;
            if (rows.stream().noneMatch(row -> row.contains("`" + name + "`") && row.contains("| " + found.group(3) + " ")))
                missing.add(name + " " + found.group(3));
        }
        if (seen.isEmpty()) throw new IllegalStateException("the bill of materials names no library");
        if (!missing.isEmpty()) throw new IllegalStateException("docs/third-party-notices.md lacks " + missing);
        return seen.size();
    }

    /** Licence and notice texts as the libraries carry them, one folder a library. */
    private void collectLicences(Path folder) throws IOException {
        List<String> without = new ArrayList<>();
        for (String entry : Files.readString(target.resolve("release-classpath.txt")).strip().split(java.io.File.pathSeparator)) {
            Path library = Path.of(entry);
            String name = library.getFileName().toString().replaceAll("\\.jar$", "");
            int texts = 0;
            try (ZipFile zip = new ZipFile(library.toFile())) {
                for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
                    ZipEntry one = all.nextElement();
                    String word = one.getName().toUpperCase(Locale.ROOT);
                    if (one.isDirectory() || !word.matches("(META-INF/)?([^/]*LICEN[CS]E[^/]*|[^/]*NOTICE[^/]*|COPYING[^/]*)")
                            || word.endsWith(".CLASS")) continue;
                    Path text = folder.resolve(name).resolve(Path.of(one.getName()).getFileName().toString());
                    Files.createDirectories(text.getParent());
                    try (InputStream in = zip.getInputStream(one)) {
                        Files.copy(in, text, StandardCopyOption.REPLACE_EXISTING);
                    }
                    texts++;
                }
            }
            if (texts == 0) without.add(name);
        }
        Files.writeString(
                folder.resolve("README.txt"),
                "Licence and notice texts as each library carries them in its own jar.\n"
                        + "These carry none; third-party-notices.md names their licence: " + String.join(", ", without) + ".\n");
    }

    /** The program with a Java runtime of its own: opens the window; with arguments it is the command line. */
    private Path appImage(Path jar) throws Exception {
        Path input = target.resolve("release-input");
        deleteTree(input);
        Files.createDirectories(input);
        Files.copy(jar, input.resolve("handreach.jar"));
        Path tool = Path.of(System.getProperty("java.home"), "bin", "jpackage");
        // The packager of one platform accepts no version below 1.
        boolean takesVersion = !System.getProperty("os.name").startsWith("Mac") || !version.startsWith("0.");
        List<String> command = new ArrayList<>(List.of(
                tool.toString(),
                "--type", "app-image",
                "--name", "Handreach",
                "--description", "How far a handheld radio reaches with each antenna",
                "--vendor", "the Handreach contributors",
                "--input", input.toString(),
                "--main-jar", "handreach.jar",
                "--main-class", "handreach.Handreach",
                "--arguments", "desk",
                "--add-modules", MODULES,
                "--java-options", "--add-modules=jdk.incubator.vector",
                "--jlink-options", "--strip-debug --no-header-files --no-man-pages",
                "--dest", release.toString()));
        if (takesVersion) command.addAll(List.of("--app-version", version));
        run(command);
        deleteTree(input);
        try (Stream<Path> made = Files.list(release)) {
            Path image = made.filter(one -> one.getFileName().toString().startsWith("Handreach")).findFirst().orElseThrow();
            shareClasses(image);
            return image;
        }
    }

    /** The archive of shared classes that every JDK has and a linked runtime lacks: start-up is a quarter second shorter. */
    private static void shareClasses(Path image) throws Exception {
        try (Stream<Path> all = Files.walk(image)) {
            for (Path java : all.filter(one -> one.endsWith("bin/java") || one.endsWith("bin/java.exe")).toList())
                run(List.of(java.toString(), "-Xshare:dump"));
        }
    }

    private static void run(List<String> command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes());
        if (process.waitFor() != 0) throw new IllegalStateException(String.join(" ", command) + "\n" + said);
    }

    private void checksums() throws Exception {
        TreeMap<String, String> sums = new TreeMap<>();
        try (Stream<Path> files = Files.list(release)) {
            for (Path file : files.filter(Files::isRegularFile).toList())
                sums.put(file.getFileName().toString(), HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file))));
        }
        StringBuilder text = new StringBuilder();
        sums.forEach((name, sum) -> text.append(sum).append("  ").append(name).append('\n'));
        Files.writeString(release.resolve("SHA256SUMS"), text);
    }

    private static void deleteTree(Path folder) throws IOException {
        if (!Files.exists(folder)) return;
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path one : all.sorted(Comparator.reverseOrder()).toList()) Files.delete(one);
        }
    }
}
