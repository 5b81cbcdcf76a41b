package handreach.atlas.spread;

import handreach.input.InputFault;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where the engine runs: in this process, or on a cluster whose master listens at an address.
 *
 * @param master as the engine names it
 * @param host of the master; empty in this process
 * @param port of the master; 0 in this process
 */
public record ClusterAddress(String master, String host, int port) {
    private static final String OPTION = "--cluster";
    private static final Pattern LOCAL = Pattern.compile("local(?:\\[([1-9][0-9]{0,2})])?");
    private static final Pattern CLUSTER = Pattern.compile("spark://(\\[[0-9a-fA-F:]+]|[^:/,\\s]+):([0-9]{1,5})");
    private static final int PATIENCE_MS = 5000;
    private static final int MOST_PORT = 65_535;
    /** How often a task that was lost with its worker is tried before the run ends. */
    private static final int TRIES = 8;

    /** As typed: {@code spark://HOST:PORT}, {@code local} or {@code local[N]}. */
    public static ClusterAddress of(String typed, int cores) {
        Matcher local = LOCAL.matcher(typed.strip());
        if (local.matches())
            return new ClusterAddress(
                    "local[" + (local.group(1) == null ? String.valueOf(cores) : local.group(1)) + "," + TRIES + "]",
                    "",
                    0);
        Matcher cluster = CLUSTER.matcher(typed.strip());
        if (cluster.matches()) {
            int port = Integer.parseInt(cluster.group(2));
            if (port > 0 && port <= MOST_PORT) return new ClusterAddress(typed.strip(), cluster.group(1), port);
        }
        throw new InputFault(
                OPTION,
                0,
                "is \"" + typed
                        + "\", expected is spark://HOST:PORT as the master prints it, or local[N] for this machine alone.");
    }

    /** Whether it is this process alone. */
    public boolean isLocal() {
        return host.isEmpty();
    }

    /** The address of this machine by which the master is reached, or loopback; a fault where nobody answers. */
    public String ownAddress() {
        if (isLocal()) return InetAddress.getLoopbackAddress().getHostAddress();
        try (Socket socket = new Socket()) {
            InetSocketAddress there = new InetSocketAddress(host, port);
            if (there.isUnresolved()) throw new IOException("the host is not known");
            socket.connect(there, PATIENCE_MS);
            return socket.getLocalAddress().getHostAddress();
        } catch (IOException e) {
            throw new InputFault(
                    OPTION,
                    0,
                    master + " does not answer (" + e.getMessage()
                            + "). Nothing was changed. Start its master, or leave --cluster out to work on this machine.");
        }
    }
}
