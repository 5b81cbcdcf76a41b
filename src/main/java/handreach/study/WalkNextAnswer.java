package handreach.study;

import handreach.geodesy.Position;
import handreach.terrain.Cover;
import handreach.walk.NextWalk;
import java.util.ArrayList;
import java.util.List;

/**
 * Which walk next.
 *
 * @param scene the plan
 * @param base who is called
 * @param asked what was asked for
 * @param route what could be walked, and what is predicted there
 * @param proposal where to stop, and what for
 * @param warnings everything that was doubtful
 */
public record WalkNextAnswer(
        Scene scene, WalkBase base, Asked asked, Route route, Proposal proposal, List<String> warnings) {
    /** Chance of another answer, below which it counts as settled; our suggestion. */
    static final double SETTLED_CHANCE = 0.01;
    /** What certain knowledge is worth at most where it is worth nothing that anybody feels, dB of margin; our suggestion. */
    private static final double SETTLED_DB = 0.05;

    public WalkNextAnswer {
        warnings = List.copyOf(warnings);
    }

    /** Whether there is anything to walk for. */
    public enum Outlook {
        /** Reports may well change an answer. */
        OPEN,
        /** No report is likely to change an answer, and knowing the site for certain would not either. */
        SETTLED,
        /** Answers are open, but no report along these tracks is likely to change one. */
        SILENT
    }

    /** Whether there is anything to walk for. */
    public Outlook outlook() {
        NextWalk next = proposal.next();
        if (next.answers().stream().anyMatch(each -> each.chanceOfChange() >= SETTLED_CHANCE)) return Outlook.OPEN;
        return next.perfectDb() < SETTLED_DB ? Outlook.SETTLED : Outlook.SILENT;
    }

    /**
     * A report of the best set that was found.
     *
     * @param number its place in the order of the tracks, from 1
     * @param rank its place in the order of choice, from 1
     * @param report what would be tried
     * @param spot where
     * @param addsDb what it adds to those chosen before it, dB of margin
     */
    public record Stop(int number, int rank, Report report, Spot spot, double addsDb) {}

    /** The best set that was found, in the order of the tracks. */
    public List<Stop> bestSet() {
        List<NextWalk.Pick> picks = proposal.next().picks();
        List<Stop> stops = new ArrayList<>();
        for (int candidate : proposal.stops()) {
            int rank = 0;
            while (picks.get(rank).candidate() != candidate) rank++;
            Report report = route.reports().get(candidate);
            stops.add(new Stop(
                    stops.size() + 1,
                    rank + 1,
                    report,
                    route.spots().get(report.spot()),
                    picks.get(rank).addsDb()));
        }
        return stops;
    }

    /** The stops that are proposed, in the order of the tracks: none where there is nothing to walk for. */
    public List<Stop> stops() {
        return outlook() == Outlook.OPEN ? bestSet() : List.of();
    }

    /** What is at stake. */
    public enum Decision {
        /** Which loadout suffices at the places of the plan. */
        LOADOUT("loadout", "which loadout suffices"),
        /** Whether the people of the plan need a relay as they are loaded. */
        RELAY("relay", "whether a relay is needed");

        private final String word;
        private final String meaning;

        Decision(String word, String meaning) {
            this.word = word;
            this.meaning = meaning;
        }

        public String word() {
            return word;
        }

        public String meaning() {
            return meaning;
        }
    }

    /**
     * What was asked for.
     *
     * @param decision what is at stake
     * @param instrument what a report says
     * @param reports how many reports at most
     * @param decorrelationM distance over which shadowing stays alike, m
     */
    public record Asked(Decision decision, NextWalk.Instrument instrument, int reports, double decorrelationM) {}

    /**
     * A place along what could be walked.
     *
     * @param track name of the track
     * @param alongM way from its start, m
     * @param at where
     * @param bearingDeg bearing from the base
     * @param distanceM distance from the base
     * @param cover what stands there
     */
    public record Spot(String track, double alongM, Position at, double bearingDeg, double distanceM, Cover cover) {}

    /**
     * A report that could be made.
     *
     * @param spot number of its place
     * @param loadout what the walker would carry
     * @param marginDb margin at the median place with what is known, dB
     * @param odds of copy
     */
    public record Report(int spot, String loadout, double marginDb, double odds) {}

    /**
     * What could be walked.
     *
     * @param spots places in the order of the tracks
     * @param reports for each place, one a loadout
     * @param tracksGiven whether tracks were given, or straight lines stand in for them
     */
    public record Route(List<Spot> spots, List<Report> reports, boolean tracksGiven) {
        public Route {
            spots = List.copyOf(spots);
            reports = List.copyOf(reports);
        }
    }

    /**
     * A question at stake.
     *
     * @param where place or talk
     * @param loadout what would be carried there
     * @param marginDb margin beyond the wanted odds as believed now, dB
     */
    public record Stake(String where, String loadout, double marginDb) {}

    /**
     * The proposal.
     *
     * @param next what the reports are worth
     * @param stops numbers of the proposed reports in the order of the tracks
     * @param stakes the questions, in the order of the answers of {@code next}
     * @param isForGroundAround whether the plan's own places are settled, so that the questions are of the ground around the base
     */
    public record Proposal(NextWalk next, List<Integer> stops, List<Stake> stakes, boolean isForGroundAround) {
        public Proposal {
            stops = List.copyOf(stops);
            stakes = List.copyOf(stakes);
        }
    }
}
