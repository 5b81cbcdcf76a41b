package handreach.story;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Files that are well formed and wrong: a number, a text or a time of a valid file in place of which stands another that the format
 * allows, lines and entries doubled, moved or gone. What {@link Damage} does to bytes, this does to words.
 */
final class Grammar {
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])[-+]?\\d+(\\.\\d+)?([eE][-+]?\\d+)?(?![\\w.])");
    private static final Pattern TIME = Pattern.compile("\\d{4}-\\d{2}-\\d{2}T[\\d:.]+(Z|[+-]\\d\\d:\\d\\d)?");
    private static final Pattern TEXT = Pattern.compile("\"[^\"\\n]*\"");
    private static final Pattern WORD = Pattern.compile("[A-Za-z_][A-Za-z_-]{2,}");
    private static final List<String> EXTREMES = List.of(
            "0",
            "-0.0",
            "1",
            "-1",
            "0.5",
            "1e-9",
            "4.9e-324",
            "1e-30",
            "89.9999",
            "90",
            "180",
            "-180",
            "360",
            "1e6",
            "1e15",
            "1.7976931348623157e308",
            "-1e308",
            "9223372036854775807",
            "2147483648",
            "0.30000000000000004",
            "150",
            "300",
            "6000");
    private static final List<String> TOML = List.of(
            "inf",
            "-inf",
            "+inf",
            "nan",
            "-nan",
            "+nan",
            "1_000",
            "0x10",
            "0o7",
            "0b1",
            "1979-05-27",
            "07:32:00",
            "1979-05-27T07:32:00Z",
            "true",
            "[]",
            "[1, 2]",
            "{}",
            "{a = 1}",
            "\"\"",
            "'5'",
            "\"\"\"5\"\"\"",
            "1e400",
            "9223372036854775808");
    private static final List<String> CELLS = List.of(
            "",
            "NaN",
            "nan",
            "inf",
            "-Infinity",
            "1e999",
            "1e-999",
            "3,5",
            "\u2212 5",
            "5 m",
            "-9999",
            "32767",
            "#REF!",
            "=1+1",
            "<-120");
    private static final List<String> JSON =
            List.of("null", "true", "1e999", "-1e999", "[]", "{}", "[[]]", "\"5\"", "-0");
    private static final List<String> TEXTS = List.of(
            "",
            " ",
            "camp ",
            "x",
            "..",
            "../../etc/passwd",
            "/dev/null",
            "/",
            "con",
            "a\\tb",
            "\\u0000",
            "\\u001b[2J",
            "\\u202e",
            "\u00e4\u00f6\u00fc",
            "\u0627\u0644",
            "\uD83D\uDE00",
            "open",
            "woodland",
            "full-wave",
            "march",
            "p1812",
            "listed",
            "all-to-base",
            "spike camp",
            "32T 430000 5150000",
            "89.99, 0",
            "0, 180",
            "-90, -180",
            "46.5, 8.1",
            "n".repeat(300),
            "w".repeat(3000));
    private static final List<String> TIMES = List.of(
            "-999999999-01-01T00:00:00Z",
            "+999999999-12-31T23:59:59Z",
            "0000-01-01T00:00:00Z",
            "9999-12-31T23:59:60Z",
            "2026-02-30T00:00:00Z",
            "2026-05-04T24:00:00Z",
            "2026-05-04T08:30:00+18:00",
            "2026-05-04T08:30:00.999999999Z",
            "2026-05-04T08:30",
            "1970-01-01T00:00:00Z",
            "");

    /** Which words a format has for a number. */
    enum Form {
        TOML(Grammar.TOML),
        TABLE(CELLS),
        JSON(Grammar.JSON),
        XML(CELLS);

        private final List<String> words;

        Form(List<String> words) {
            this.words = words;
        }
    }

    private final Random random;
    private final Form form;

    Grammar(Random random, Form form) {
        this.random = random;
        this.form = form;
    }

    /** One to four words or lines of a text changed. */
    byte[] next(byte[] seed) {
        String text = new String(seed, StandardCharsets.UTF_8);
        for (int i = 1 + random.nextInt(4) * random.nextInt(2); i > 0; i--) text = once(text);
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private String once(String text) {
        return switch (random.nextInt(12)) {
            case 0, 1, 2 -> replaced(text, NUMBER, one(EXTREMES));
            case 3, 4 -> replaced(text, NUMBER, one(form.words));
            case 5 -> replaced(text, TEXT, '"' + one(TEXTS) + '"');
            case 6 -> replaced(text, TIME, one(TIMES));
            case 7 -> replaced(text, NUMBER, number());
            case 8 -> exchanged(text, WORD);
            case 9 -> exchanged(text, TEXT);
            default -> lines(text);
        };
    }

    private String number() {
        double scale = Math.pow(10, random.nextInt(12) - 6);
        return java.math.BigDecimal.valueOf(random.nextGaussian() * scale).toPlainString();
    }

    private String one(List<String> words) {
        return words.get(random.nextInt(words.size()));
    }

    private String replaced(String text, Pattern what, String by) {
        List<MatchResult> found = what.matcher(text).results().toList();
        if (found.isEmpty()) return text;
        MatchResult at = found.get(random.nextInt(found.size()));
        return text.substring(0, at.start()) + by + text.substring(at.end());
    }

    /** A word in the place of another of the same file: a key of one section in the next, a name where a file is meant. */
    private String exchanged(String text, Pattern what) {
        List<String> found = new ArrayList<>();
        for (Matcher word = what.matcher(text); word.find(); ) found.add(word.group());
        return found.isEmpty() ? text : replaced(text, what, one(found));
    }

    private String lines(String text) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        int at = random.nextInt(lines.size());
        switch (random.nextInt(4)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(random.nextInt(lines.size()), lines.get(at));
            case 2 -> Collections.swap(lines, at, random.nextInt(lines.size()));
            default -> {
                int to = Math.min(lines.size(), at + 1 + random.nextInt(12));
                lines.addAll(random.nextInt(lines.size()), List.copyOf(lines.subList(at, to)));
            }
        }
        return String.join("\n", lines);
    }

    /** A TIFF file whose directory is laid out anew: usual tags, each here and there of another type, count or value. */
    byte[] tiff() {
        boolean isLittle = random.nextBoolean();
        int[][] usual = {
            {256, 3, 1, 20},
            {257, 3, 1, 20},
            {258, 3, 1, 16},
            {259, 3, 1, 1},
            {262, 3, 1, 1},
            {273, 4, 1, 800},
            {277, 3, 1, 1},
            {278, 3, 1, 20},
            {279, 4, 1, 800},
            {339, 3, 1, 2},
            {33550, 12, 3, 400},
            {33922, 12, 6, 424},
            {34735, 3, 16, 472},
            {42113, 2, 6, 504}
        };
        int[] tags = {254, 266, 284, 305, 317, 320, 322, 323, 324, 325, 34264, 34736, 34737, 42112, 50000};
        int[] values = {
            0,
            1,
            2,
            3,
            5,
            7,
            8,
            16,
            32,
            64,
            255,
            256,
            32767,
            32773,
            34887,
            50000,
            65535,
            1 << 20,
            1 << 28,
            -1,
            Integer.MAX_VALUE
        };
        List<int[]> entries = new ArrayList<>();
        for (int[] field : usual) entries.add(field.clone());
        for (int i = random.nextInt(5); i > 0; i--) {
            int[] field = entries.get(random.nextInt(entries.size()));
            switch (random.nextInt(6)) {
                case 0 -> field[1] = random.nextInt(20);
                case 1 -> field[2] = values[random.nextInt(values.length)];
                case 2, 3 -> field[3] = values[random.nextInt(values.length)];
                case 4 ->
                    entries.add(random.nextInt(entries.size()), new int[] {
                        tags[random.nextInt(tags.length)],
                        1 + random.nextInt(13),
                        1,
                        values[random.nextInt(values.length)]
                    });
                default -> entries.remove(field);
            }
            if (entries.isEmpty()) break;
        }
        ByteBuffer out = ByteBuffer.allocate(1700).order(isLittle ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        out.putShort((short) (isLittle ? 0x4949 : 0x4D4D))
                .putShort((short) 42)
                .putInt(8)
                .putShort((short) entries.size());
        for (int[] field : entries) {
            out.putShort((short) field[0]).putShort((short) field[1]).putInt(field[2]);
            if (field[1] == 3 && field[2] == 1) out.putShort((short) field[3]).putShort((short) 0);
            else out.putInt(field[3]);
        }
        out.putInt(random.nextInt(8) == 0 ? 8 : 0);
        out.position(400);
        boolean isOdd = random.nextInt(4) == 0;
        double scale = isOdd ? wild() : 0.01;
        for (double value : new double[] {scale, scale, 0, 0, 0, 0, isOdd ? wild() : 8, 46.6, 0}) out.putDouble(value);
        int[] codes = {4326, 32632, 32760, 2056, 3035, 4937, 0, 32767, 65535};
        boolean isPlane = random.nextBoolean();
        int code = codes[random.nextInt(codes.length)];
        for (int key : new int[] {
            1,
            1,
            0,
            3,
            1024,
            0,
            1,
            isPlane ? 1 : 2,
            1025,
            0,
            1,
            1 + random.nextInt(2),
            isPlane ? 3072 : 2048,
            0,
            1,
            code
        }) out.putShort((short) key);
        out.put("-9999\0".getBytes(StandardCharsets.US_ASCII));
        out.position(800);
        while (out.remaining() > 1)
            out.putShort((short) (random.nextInt(20) == 0 ? random.nextInt() : 400 + random.nextInt(300)));
        return out.array();
    }

    private double wild() {
        double[] some = {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 1e-300, 1e300, 90, 180, 360, 32_430_941, 1e9};
        return some[random.nextInt(some.length)];
    }
}
