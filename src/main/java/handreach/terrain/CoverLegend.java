package handreach.terrain;

import handreach.input.Keyword;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the class codes of a published land-cover map mean for a radio path.
 *
 * <p>Which cover a class becomes is our suggestion. In short: one built-up class counts as suburban, since most built-up land is;
 * scrub and crops count as open, since they hardly rise above a person.
 */
public enum CoverLegend {
    /** ESA WorldCover, 10 m, versions v100 and v200; codes as published in its product manual. */
    WORLD_COVER {
        @Override
        Cover known(int code) {
            return switch (code) {
                case 10, 95 -> Cover.WOODLAND;
                case 50 -> Cover.SUBURBAN;
                case 80 -> Cover.WATER;
                case 20, 30, 40, 60, 70, 90, 100 -> Cover.OPEN;
                default -> null;
            };
        }
    },

    /** United States NLCD, 30 m; codes as published in the legend of the MRLC consortium. */
    NLCD {
        @Override
        Cover known(int code) {
            return switch (code) {
                case 11 -> Cover.WATER;
                case 22, 23 -> Cover.SUBURBAN;
                case 24 -> Cover.URBAN;
                case 41, 42, 43, 90 -> Cover.WOODLAND;
                case 12, 21, 31, 51, 52, 71, 72, 73, 74, 81, 82, 95 -> Cover.OPEN;
                default -> null;
            };
        }
    },

    /** CORINE Land Cover, three-digit codes or grid codes 1 to 44; codes <em>from memory</em>. */
    CORINE {
        @Override
        Cover known(int code) {
            int index = Arrays.binarySearch(CORINE_CODES, code);
            if (index < 0 && code >= 1 && code <= CORINE_CODES.length) index = code - 1;
            if (index < 0) return null;
            return switch (CORINE_CODES[index]) {
                case 111 -> Cover.DENSE_URBAN;
                case 112 -> Cover.SUBURBAN;
                case 121, 122, 123 -> Cover.URBAN;
                case 311, 312, 313 -> Cover.WOODLAND;
                case 511, 512, 521, 522, 523 -> Cover.WATER;
                default -> Cover.OPEN;
            };
        }
    };

    /** How files and options name them. */
    public static final Keyword<CoverLegend> KEYWORD =
            Keyword.of(List.of(values()), CoverLegend::word).also("worldcover", WORLD_COVER);

    private static final int[] CORINE_CODES = {
        111, 112, 121, 122, 123, 124, 131, 132, 133, 141, 142, 211, 212, 213, 221, 222, 223, 231, 241, 242, 243, 244,
        311, 312, 313, 321, 322, 323, 324, 331, 332, 333, 334, 335, 411, 412, 421, 422, 423, 511, 512, 521, 522, 523
    };

    abstract Cover known(int code);

    /** The cover of a class; nothing for "no data" and for codes the legend does not have. */
    public Optional<Cover> of(int code) {
        return Optional.ofNullable(known(code));
    }

    /** Name as written in plans, such as {@code world-cover}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
