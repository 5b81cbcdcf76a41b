package handreach.terrain;

import handreach.input.InputFault;
import handreach.input.Memory;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/** Keeps the posts that were used last within a bound of memory. A tile that cannot be read becomes void and is reported. */
final class TileCache {
    private final long limitBytes;
    private final AtomicLong clock = new AtomicLong(1);
    private final AtomicInteger asked = new AtomicInteger();
    private final List<Tile> held = new ArrayList<>();
    private final Set<String> warnings = new LinkedHashSet<>();
    private final Set<String> refused = new HashSet<>();
    private long heldBytes;

    TileCache(long limitBytes) {
        this.limitBytes = limitBytes;
    }

    /** The share of the memory that tiles have, at most 1 GiB. */
    static long defaultLimitBytes() {
        return Math.min(1L << 30, Memory.tileBytes());
    }

    Posts posts(Tile tile) {
        Posts posts = tile.held();
        if (tile.isFirstAsked()) asked.incrementAndGet();
        tile.use(clock.get());
        return posts != null ? posts : load(tile);
    }

    /** How many tiles somebody wanted heights of. */
    int askedCount() {
        return asked.get();
    }

    /** The posts of a tile whose heights nobody asked for. */
    Posts glance(Tile tile) {
        Posts posts = tile.held();
        return posts != null ? posts : load(tile);
    }

    private Posts load(Tile tile) {
        synchronized (tile) {
            Posts posts = tile.held();
            if (posts != null) return posts;
            makeRoom(2L * tile.rows * tile.columns);
            posts = read(tile);
            tile.hold(posts);
            tile.use(clock.incrementAndGet());
            keep(tile, posts);
            return posts;
        }
    }

    private Posts read(Tile tile) {
        try {
            Posts posts = tile.source().read();
            Optional<String> against = tile.source().against(posts);
            if (against.isEmpty()) {
                tile.source().missing().ifPresent(this::warn);
                return posts;
            }
            warn(tile.summary.name() + ": " + against.get());
            refuse(tile.summary.name());
        } catch (InputFault fault) {
            warn(fault.getMessage() + " Its ground is unknown.");
        } catch (OutOfMemoryError e) {
            warn(tile.summary.name()
                    + ": does not fit into memory. Give the program more memory. Its ground is unknown.");
        }
        return new UnreadablePosts(tile.rows, tile.columns);
    }

    /** Before a tile is read: it takes at least two bytes a post. */
    private synchronized void makeRoom(long bytes) {
        while (heldBytes + bytes > limitBytes && !held.isEmpty()) drop(null);
    }

    private synchronized void keep(Tile tile, Posts posts) {
        held.add(tile);
        heldBytes += posts.bytes();
        while (heldBytes > limitBytes && held.size() > 1) drop(tile);
    }

    /** Lets the tile go that was used longest ago, but not this one. */
    private void drop(Tile kept) {
        Tile oldest = null;
        for (Tile other : held)
            if (other != kept && (oldest == null || other.lastUsed() < oldest.lastUsed())) oldest = other;
        held.remove(oldest);
        heldBytes -= oldest.held().bytes();
        oldest.hold(null);
    }

    private synchronized void refuse(String name) {
        refused.add(name);
    }

    /** Whether the posts of a file have shown that it is no ground. */
    synchronized boolean isRefused(String name) {
        return refused.contains(name);
    }

    synchronized void warn(String warning) {
        warnings.add(warning);
    }

    synchronized List<String> warnings() {
        return List.copyOf(warnings);
    }

    synchronized long heldBytes() {
        return heldBytes;
    }
}
