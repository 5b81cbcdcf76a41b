package handreach.relay;

import java.util.ArrayList;
import java.util.List;

/**
 * Two demands that must understand one another, by their numbers.
 *
 * @param a the lower number
 * @param b the higher number
 */
public record Conversation(int a, int b) {
    public Conversation {
        if (a < 0 || b <= a) throw new IllegalArgumentException("talk of " + a + " and " + b);
    }

    public static Conversation of(int one, int other) {
        return new Conversation(Math.min(one, other), Math.max(one, other));
    }

    /** Everybody with everybody, but points of one route or sector not with each other. */
    public static List<Conversation> allToAll(List<Party> demands) {
        List<Conversation> talks = new ArrayList<>();
        for (int a = 0; a < demands.size(); a++)
            for (int b = a + 1; b < demands.size(); b++)
                if (!isOneGroup(demands.get(a), demands.get(b))) talks.add(new Conversation(a, b));
        return talks;
    }

    /** Everybody with the base. */
    public static List<Conversation> allToBase(List<Party> demands, int base) {
        List<Conversation> talks = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) if (i != base) talks.add(of(base, i));
        return talks;
    }

    private static boolean isOneGroup(Party a, Party b) {
        return a.group().isPresent() && a.group().equals(b.group());
    }

    /**
     * How much the talk counts: the product of the two weights.
     *
     * @shape  all parties in, scalar out; pure
     * @unit   none
     * @valid  the parties that the talk names
     * @error  none
     * @source our suggestion
     */
    public double weight(List<Party> demands) {
        return demands.get(a).weight() * demands.get(b).weight();
    }
}
