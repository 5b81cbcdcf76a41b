package handreach.story;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Damage done to valid files, by a seeded chance: bits, pieces, words, lines, and nests without bottom. */
final class Damage {
    private static final List<String> WORDS = List.of(
            "",
            "-1",
            "0",
            "1e308",
            "-1e308",
            "1e-320",
            "NaN",
            "Infinity",
            "99999999999999999999",
            "2147483648",
            "-2147483649",
            "3,5",
            "\u0663",
            "\u22125",
            "0x10",
            "true",
            "null",
            "\"",
            "'",
            "\u0000",
            "\uFEFF",
            "\u202E",
            "\uD83D",
            "a".repeat(5000),
            "9".repeat(500),
            "1979-05-27T07:32:00Z",
            "9999999999-12-31T23:59:59Z",
            "<",
            "&lol;",
            "<!DOCTYPE gpx [<!ENTITY a \"b\">]>",
            "]]>",
            "../../etc/passwd",
            "\n",
            ",",
            ";",
            "\t",
            "=");
    private static final List<String> NESTS = List.of("[", "{\"a\":", "[[", "<a>", "a.", "\"\"\"", "(", "<!--", "{a=");
    private final Random random;
    private final List<byte[]> seeds;

    Damage(Random random, List<byte[]> seeds) {
        this.random = random;
        this.seeds = seeds;
    }

    /** The next damaged file. */
    byte[] next() {
        if (random.nextInt(40) == 0) return noise();
        byte[] data = seeds.get(random.nextInt(seeds.size()));
        int rounds = random.nextInt(3) > 0 ? 1 : 2 + random.nextInt(3);
        for (int i = 0; i < rounds; i++) data = once(data);
        return data;
    }

    private byte[] noise() {
        byte[] data = new byte[random.nextInt(400)];
        random.nextBytes(data);
        return data;
    }

    private byte[] once(byte[] data) {
        if (data.length == 0) return noise();
        return switch (random.nextInt(10)) {
            case 0, 1 -> bytes(data);
            case 2 -> Arrays.copyOf(data, random.nextInt(data.length));
            case 3 -> doubled(data);
            case 4 -> without(data);
            case 5, 6 -> word(data);
            case 7 -> lines(data);
            case 8 -> random.nextInt(20) == 0 ? nest(data) : word(data);
            default -> spliced(data);
        };
    }

    private byte[] bytes(byte[] data) {
        byte[] changed = data.clone();
        for (int k = random.nextInt(5); k >= 0; k--) {
            int at = random.nextInt(data.length);
            changed[at] = (byte) (random.nextBoolean() ? random.nextInt() : changed[at] ^ 1 << random.nextInt(8));
        }
        return changed;
    }

    private byte[] doubled(byte[] data) {
        int at = random.nextInt(data.length);
        int length = random.nextInt(Math.min(200, data.length - at) + 1);
        return joined(data, at + length, data, at);
    }

    private byte[] without(byte[] data) {
        int at = random.nextInt(data.length);
        int length = random.nextInt(Math.min(100, data.length - at) + 1);
        return joined(data, at, data, at + length);
    }

    private byte[] spliced(byte[] data) {
        byte[] other = seeds.get(random.nextInt(seeds.size()));
        return joined(data, random.nextInt(data.length), other, random.nextInt(other.length));
    }

    private static byte[] joined(byte[] head, int headLength, byte[] tail, int tailFrom) {
        byte[] all = Arrays.copyOf(head, headLength + tail.length - tailFrom);
        System.arraycopy(tail, tailFrom, all, headLength, tail.length - tailFrom);
        return all;
    }

    private static byte[] inserted(byte[] data, int from, int to, String text) {
        byte[] middle = text.getBytes(StandardCharsets.UTF_8);
        byte[] all = Arrays.copyOf(data, from + middle.length + data.length - to);
        System.arraycopy(middle, 0, all, from, middle.length);
        System.arraycopy(data, to, all, from + middle.length, data.length - to);
        return all;
    }

    /** A word, as far as letters, digits, signs and points reach, becomes one of those that programs stumble over. */
    private byte[] word(byte[] data) {
        int from = random.nextInt(data.length);
        while (from > 0 && isWord(data[from - 1])) from--;
        int to = from;
        while (to < data.length && isWord(data[to])) to++;
        return inserted(data, from, to, WORDS.get(random.nextInt(WORDS.size())));
    }

    private static boolean isWord(byte b) {
        return b >= '0' && b <= '9' || b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b == '.' || b == '-' || b == '_';
    }

    private byte[] lines(byte[] data) {
        List<String> lines =
                new ArrayList<>(Arrays.asList(new String(data, StandardCharsets.ISO_8859_1).split("\n", -1)));
        int at = random.nextInt(lines.size());
        switch (random.nextInt(4)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(random.nextInt(lines.size())));
            case 2 -> Collections.swap(lines, at, random.nextInt(lines.size()));
            default -> lines.addAll(at, Collections.nCopies(30, lines.get(at)));
        }
        return String.join("\n", lines).getBytes(StandardCharsets.ISO_8859_1);
    }

    private byte[] nest(byte[] data) {
        int at = random.nextInt(data.length);
        return inserted(data, at, at, NESTS.get(random.nextInt(NESTS.size())).repeat(20_000));
    }
}
