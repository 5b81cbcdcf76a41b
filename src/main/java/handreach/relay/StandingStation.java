package handreach.relay;

import handreach.budget.LinkEnd;
import handreach.budget.Ways;
import handreach.geodesy.Position;
import handreach.loadout.NeededWays;
import java.util.Optional;

/**
 * A station that stands already, and the hops to it. It may hear on one frequency and send on another: then each way is computed on its
 * own. For one thread.
 */
public final class StandingStation {
    private final Position at;
    private final Tuned in;
    private final Tuned out;
    private final boolean isRelay;

    /**
     * A station on one frequency.
     *
     * @param book talks on it
     * @param end radio and antenna there; of a relay with what its own transmitter takes from it
     */
    private record Tuned(TalkBook book, LinkEnd end) {}

    private StandingStation(Position at, Tuned in, Tuned out, boolean isRelay) {
        this.at = at;
        this.in = in;
        this.out = out;
        this.isRelay = isRelay;
    }

    /** A base or a vehicle: what it hears on, and what it sends on, which may be the same book and end. */
    public static StandingStation base(Position at, TalkBook in, LinkEnd inEnd, TalkBook out, LinkEnd outEnd) {
        return new StandingStation(at, new Tuned(in, inEnd), new Tuned(out, outEnd), false);
    }

    /** A relay, in the same way. */
    public static StandingStation relay(
            Position at, TalkBook in, RelayEquipment inEnd, TalkBook out, RelayEquipment outEnd) {
        LinkEnd heard = inEnd.atWork();
        LinkEnd sent = out == in ? heard : outEnd.atWork();
        return new StandingStation(at, new Tuned(in, heard), new Tuned(out, sent), true);
    }

    /**
     * Odds of the hop of somebody, there to the station.
     *
     * @shape  the same person on both frequencies in, one hop out; O(samples of the path) the first time, then O(1)
     * @unit   odds 0 to 1
     * @valid  any person; empty where the ground between is unknown, or the model has no answer for it
     * @error  that of the model and of the ledgers
     * @source {@link HopPath#toRelay} for a relay, {@link HopPath#direct} for a base; of two frequencies each way by its own
     */
    public Optional<HopPath.HopOdds> hop(Party heard, Party sent, NeededWays needed) {
        Optional<TalkBook.Hop> up = in.book().hop(heard, at, in.end(), ways(heard, needed), isRelay);
        if (in.book() == out.book()) return up.map(TalkBook.Hop::odds);
        Optional<TalkBook.Hop> down = out.book().hop(sent, at, out.end(), ways(sent, needed), isRelay);
        return up.flatMap(there -> down.map(back -> TalkBook.Hop.split(there, back)));
    }

    /** Towards a base as towards any; towards a relay the others call, and it calls the base. */
    private Ways ways(Party demand, NeededWays needed) {
        return Ways.between(needed, demand.isBase(), !isRelay || !demand.isBase());
    }

    /**
     * A talk by way of the station: each way by its weaker hop.
     *
     * @shape  two hops in, one talk out; pure
     * @unit   odds 0 to 1
     * @valid  hops to the same relay, of which the same ways of the talk are asked
     * @error  that of the hops
     * @source as {@link SiteCheck} computes talks: the hops are taken to fail together
     */
    public static HopPath.HopOdds talk(HopPath.HopOdds a, HopPath.HopOdds b) {
        return new HopPath.HopOdds(
                // a way that is not asked of a hop is told all the same
                Math.min(a.there(), b.back()),
                Math.min(b.there(), a.back()),
                Math.min(a.marginDb(), b.marginDb()),
                Math.min(a.standing(), b.standing()),
                Math.min(a.pessimistic(), b.pessimistic()),
                Math.max(a.siteShiftDb(), b.siteShiftDb()),
                a.needed());
    }
}
