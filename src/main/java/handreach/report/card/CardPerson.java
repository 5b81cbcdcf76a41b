package handreach.report.card;

/**
 * Somebody on a field card.
 *
 * @param number by which the rose knows the place; empty where it has the name
 * @param name of the position, route or sector
 * @param carries the loadout, in words
 * @param place coordinates, or what is spread over a route or sector
 * @param way bearing and distance from the base
 * @param odds of calling the base, of hearing it, and of the talk by relay
 */
public record CardPerson(String number, String name, String carries, String place, String way, Odds odds) {
    /**
     * Odds of talking with the base.
     *
     * @param calls that the base copies them
     * @param hears that they copy the base
     * @param byRelay that the talk works with the relays that stand on the card
     */
    public record Odds(Share calls, Share hears, Share byRelay) {
        public static final Odds NONE = new Odds(Share.NONE, Share.NONE, Share.NONE);
    }

    /**
     * One of these odds, or their span over a route or sector.
     *
     * @param words empty where there is nothing to say
     * @param isWeak whether some of it is below what the plan wants
     */
    public record Share(String words, boolean isWeak) {
        public static final Share NONE = new Share("", false);
        public static final Share UNKNOWN = new Share("unknown", true);
    }
}
