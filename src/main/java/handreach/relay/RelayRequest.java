package handreach.relay;

import handreach.budget.LinkTerms;
import handreach.budget.Ways;
import handreach.geodesy.Position;
import handreach.loadout.NeededWays;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.reach.AreaGround;
import handreach.reach.LearnedSite;
import handreach.terrain.Cover;
import java.util.List;
import java.util.Optional;

/**
 * Who must talk to whom, over what ground.
 *
 * @param demands the people
 * @param talks the pairs, by number
 * @param setting ground, air, model, what counts as copy
 */
public record RelayRequest(List<Party> demands, List<Conversation> talks, Setting setting) {
    /** Most demands: a set of them is kept in one word of 64 bits. */
    public static final int MOST_DEMANDS = 60;

    public RelayRequest {
        demands = List.copyOf(demands);
        talks = List.copyOf(talks);
        if (demands.size() > MOST_DEMANDS) throw new IllegalArgumentException(demands.size() + " demands");
        for (Conversation talk : talks)
            if (talk.b() >= demands.size()) throw new IllegalArgumentException("no demand for " + talk);
    }

    /**
     * What all paths have in common.
     *
     * @param terms what counts as copy, odds, doubt of the model
     * @param conditions frequency, ground, air
     * @param model loss model
     * @param ground heights and cover
     * @param learned what walks have taught about it
     * @param needed which ways of a talk with the base must work
     */
    public record Setting(
            LinkTerms terms,
            PathConditions conditions,
            LossModel model,
            AreaGround ground,
            Optional<LearnedSite> learned,
            NeededWays needed) {
        /** Where talks must work both ways. */
        public Setting(
                LinkTerms terms,
                PathConditions conditions,
                LossModel model,
                AreaGround ground,
                Optional<LearnedSite> learned) {
            this(terms, conditions, model, ground, learned, NeededWays.BOTH);
        }

        /** A ground on which nobody has walked yet. */
        public Setting(LinkTerms terms, PathConditions conditions, LossModel model, AreaGround ground) {
            this(terms, conditions, model, ground, Optional.empty());
        }

        /** Which ways of a straight talk must work. */
        Ways straight(Party a, Party b) {
            return Ways.between(needed, a.isBase(), b.isBase());
        }

        /** Which ways of a hop to a relay must work, for talks with the base: the others call it, it calls the base. */
        Ways toRelay(Party demand) {
            return Ways.between(needed, demand.isBase(), !demand.isBase());
        }

        Cover coverAt(Position at) {
            return ground.landCover().coverAt(at.latitudeDeg(), at.longitudeDeg());
        }
    }

    /** The setting of the hops to a relay: one way is enough for them only where it is for every talk. */
    Setting hops() {
        if (setting.needed() == NeededWays.BOTH) return setting;
        boolean isOneWay = talks.stream()
                .allMatch(talk -> setting.straight(demands.get(talk.a()), demands.get(talk.b())) != Ways.BOTH);
        return isOneWay
                ? setting
                : new Setting(
                        setting.terms(), setting.conditions(), setting.model(), setting.ground(), setting.learned());
    }
}
