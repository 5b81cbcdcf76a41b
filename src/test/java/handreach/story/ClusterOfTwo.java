package handreach.story;

import java.io.File;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A master and two workers of one core each on this machine, as an agency would start them, with nothing but the engine's jars. */
final class ClusterOfTwo implements AutoCloseable {
    private static final String LOOPBACK = "127.0.0.1";
    /** Jars that the program brings along, or its tests; the engine's release has geometry (JTS) itself, for its Parquet. */
    private static final Pattern PROGRAMS =
            Pattern.compile("GeographicLib|geotools|commons-csv|tomlj|antlr|checker-qual|picocli|jpx-"
                    + "|mgrs-|grid-|sf-|color-|proj4j|sqlite|pdfbox|fontbox|progressbar|jline|javafx|slf4j-nop|junit|opentest4j|apiguardian|json-schema"
                    + "|itu-|archunit|testfx|hamcrest|assertj|openjfx");

    /** For a process that lives for seconds: the second compiler costs it more than it gives. */
    static final List<String> QUICK_START = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

    private final Path home;
    private final int port;
    private final List<Process> processes = new ArrayList<>();

    private ClusterOfTwo(Path home, int port) {
        this.home = home;
        this.port = port;
    }

    /** Starts it in a folder, in which the logs stay. */
    static ClusterOfTwo start(Path home) throws IOException, InterruptedException {
        layOutEngine(home.resolve("jars"));
        ClusterOfTwo cluster = new ClusterOfTwo(home, freePort());
        cluster.start("org.apache.spark.deploy.master.Master", "--port", String.valueOf(cluster.port));
        cluster.awaitMaster();
        for (int i = 0; i < 2; i++)
            cluster.start(
                    "org.apache.spark.deploy.worker.Worker",
                    "--cores",
                    "1",
                    "--memory",
                    "1g",
                    "--work-dir",
                    home.resolve("work-" + i).toString(),
                    cluster.address());
        return cluster;
    }

    /** The engine's own jars, as its release has them in one folder; nothing of the program and of what it brings. */
    private static void layOutEngine(Path jars) throws IOException {
        Files.createDirectories(jars);
        for (String entry : classPath().split(File.pathSeparator)) {
            Path jar = Path.of(entry);
            Path link = jars.resolve(jar.getFileName());
            if (!Files.isRegularFile(jar)
                    || PROGRAMS.matcher(jar.getFileName().toString()).lookingAt()) continue;
            Files.deleteIfExists(link);
            Files.createSymbolicLink(link, jar);
        }
    }

    /** The class path of whoever has nothing but the engine. */
    String engine() {
        return home.resolve("jars") + File.separator + "*";
    }

    /** Starts a program as one that hands a job to the cluster: by the engine's own launcher, with the packed job. */
    ProcessBuilder submit(Path job, List<String> settings, List<String> words) {
        List<String> command = new ArrayList<>(List.of(java(), "-Xmx700m"));
        command.addAll(QUICK_START);
        command.addAll(List.of("-cp", engine(), "org.apache.spark.deploy.SparkSubmit"));
        for (String setting : settings) command.addAll(List.of("--conf", setting));
        command.addAll(List.of("--class", "handreach.Handreach", job.toString()));
        command.addAll(words);
        ProcessBuilder builder = new ProcessBuilder(command);
        surroundings(builder);
        return builder;
    }

    private static String java() {
        return Path.of(System.getProperty("java.home"), "bin", "java").toString();
    }

    private void surroundings(ProcessBuilder builder) {
        builder.environment().put("SPARK_HOME", home.toString());
        builder.environment().put("SPARK_SCALA_VERSION", "2.13");
        builder.environment().put("SPARK_LOCAL_IP", LOOPBACK);
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            return free.getLocalPort();
        }
    }

    private void start(String role, String... words) throws IOException {
        List<String> command = new ArrayList<>(List.of(java(), "-Xmx256m"));
        command.addAll(QUICK_START);
        command.addAll(List.of(
                "-Dspark.master.rest.enabled=false",
                "-Dspark.worker.cleanup.enabled=true",
                "-cp",
                engine(),
                role,
                "--host",
                LOOPBACK,
                "--webui-port",
                "0"));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(home.resolve("log-" + processes.size()).toFile());
        surroundings(builder);
        processes.add(builder.start());
    }

    private void awaitMaster() throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(300);
        while (System.nanoTime() < end && processes.get(0).isAlive()) {
            try (Socket socket = new Socket()) {
                socket.connect(new InetSocketAddress(LOOPBACK, port), 1000);
                return;
            } catch (IOException notYet) {
                Thread.sleep(100);
            }
        }
        throw new IllegalStateException("no master on port " + port + ", see " + home.resolve("log-0"));
    }

    /** The class path of this test as processes in other folders need it. */
    static String classPath() {
        return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                .collect(Collectors.joining(File.pathSeparator));
    }

    String address() {
        return "spark://" + LOOPBACK + ":" + port;
    }

    /** Ends the first worker and what it runs at once, as a machine that goes down; says whether an executor went with it. */
    boolean killOneWorker() {
        Process worker = processes.get(1);
        List<ProcessHandle> below = worker.descendants().toList();
        worker.destroyForcibly();
        below.forEach(ProcessHandle::destroyForcibly);
        return !below.isEmpty();
    }

    @Override
    public void close() throws InterruptedException {
        for (int i = processes.size() - 1; i >= 0; i--) {
            List<ProcessHandle> below = processes.get(i).descendants().toList();
            processes.get(i).destroyForcibly();
            below.forEach(ProcessHandle::destroyForcibly);
            processes.get(i).waitFor(30, TimeUnit.SECONDS);
        }
    }
}
