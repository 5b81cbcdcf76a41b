package handreach.propagation;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;

/** Where woods and towns count in the field march; every other model has its own one way and does not heed it. */
public enum Standing {
    /** As terms at the two ends, over bare ground. */
    AT_ENDS,
    /** On the way too: woods as an absorbing layer, towns as ground as high as the roofs. */
    ON_THE_WAY;

    /** How files and options name them. */
    public static final Keyword<Standing> KEYWORD = Keyword.of(List.of(values()), Standing::word);

    /** Name as written in plans and options, such as {@code on-the-way}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
