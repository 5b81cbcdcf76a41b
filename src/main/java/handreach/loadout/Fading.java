package handreach.loadout;

import handreach.input.Keyword;
import java.util.List;

/** How the people at the ends move, which decides what a given quality needs. */
public enum Fading {
    /** Walking: the carrier fades all the time. The default. */
    WALKING("walking"),
    /** Both stand still, in the clear, and would step aside out of a fade; only on the user's word. */
    STANDING("standing");

    /** How files and options name them. */
    public static final Keyword<Fading> KEYWORD = Keyword.of(List.of(values()), Fading::word);

    private final String word;

    Fading(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
