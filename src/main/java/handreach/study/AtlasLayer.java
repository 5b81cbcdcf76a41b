package handreach.study;

import handreach.input.Keyword;
import java.util.List;
import java.util.Locale;

/** What an atlas tells of the region beside the figures of each position. */
public enum AtlasLayer {
    /** Median and worst reach, share, least loadout that serves. */
    REACH,
    /** Into which parts the region falls, and which positions hold it together. */
    TALK,
    /** By how many each place is heard, and where nobody is. */
    SHADOW;

    /** How options name them. */
    public static final Keyword<AtlasLayer> KEYWORD = Keyword.of(List.of(values()), AtlasLayer::word);

    /** As people write it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
