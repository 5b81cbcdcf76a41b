package handreach.plan;

import handreach.input.Keyword;
import handreach.propagation.LossModel;
import handreach.propagation.Standing;
import handreach.relay.RelayMode;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** What is asked: reach and by what it is decided, relay, who carries what, walks, and the site calibration to use. */
public record Questions(
        ReachQuestion reach,
        DecideQuestion decide,
        RelayQuestion relay,
        AssignQuestion assign,
        List<WalkEntry> walks,
        Site site) {

    /** What is known of the ground before and after walks. */
    public record Site(Optional<Path> calibration, Doubts doubts) {}

    public Optional<Path> calibration() {
        return site.calibration();
    }

    public Doubts doubts() {
        return site.doubts();
    }

    /** What a loadout is worth carrying for. */
    public enum Measure {
        /** Who of the plan is reached, both ways. */
        PLACES,
        /** How much of the ground is reached. */
        GROUND,
        /** How far copy is kept in the median direction. */
        REACH;

        /** How the plan names them. */
        public static final Keyword<Measure> KEYWORD = Keyword.of(List.of(values()), Measure::word);

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * By what a loadout is held worth carrying.
     *
     * @param by the measure
     * @param feltPlaces least gain that counts, in places
     * @param feltGround the same as a share of the ground that the control reaches
     * @param feltReachM the same in metres of median reach
     */
    public record DecideQuestion(Measure by, double feltPlaces, double feltGround, double feltReachM) {}

    /**
     * Who carries what.
     *
     * @param keep names of those who keep what the plan gives them
     * @param loadouts names of what may be handed out; empty for everything carried on the body
     */
    public record AssignQuestion(List<String> keep, List<String> loadouts) {
        public AssignQuestion {
            keep = List.copyOf(keep);
            loadouts = List.copyOf(loadouts);
        }
    }

    /**
     * Reach.
     *
     * @param from name of the position at the centre of the rose, or empty for the centre of the area
     * @param with loadout at the centre; empty for what the position there carries
     * @param alike whether both ends carry the loadout in question, whatever the position in the middle has
     * @param bearingStepDeg step of the bearings
     * @param cellM side of the cells of the area maps
     * @param wish the loss model, or that the program chooses it
     * @param standing where the field march counts woods and towns
     * @param oneWay whether the ground is told on which one way alone works
     */
    public record ReachQuestion(
            Optional<String> from,
            Optional<String> with,
            boolean alike,
            double bearingStepDeg,
            double cellM,
            ModelWish wish,
            Standing standing,
            boolean oneWay) {
        /** The loss model: that of the wish. */
        public LossModel model() {
            return wish.model();
        }

        /** The same with another cell, model and place for woods and towns. */
        public ReachQuestion with(double otherCellM, ModelWish otherModel, Standing otherStanding) {
            return new ReachQuestion(from, with, alike, bearingStepDeg, otherCellM, otherModel, otherStanding, oneWay);
        }

        /** The same from any place of many: nothing sets what stands there but {@code with}, also where a position of the plan does. */
        public ReachQuestion fromAnywhere() {
            return new ReachQuestion(
                    Optional.empty(), with, with.isEmpty(), bearingStepDeg, cellM, wish, standing, oneWay);
        }
    }

    /** Who must talk to whom. */
    public enum WhoTalks {
        ALL_TO_BASE,
        ALL_TO_ALL,
        /** The pairs that the plan lists. */
        LISTED;

        /** How the plan names them. */
        public static final Keyword<WhoTalks> KEYWORD = Keyword.of(List.of(values()), WhoTalks::word);

        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * Relay.
     *
     * @param talk who must talk to whom
     * @param pairs listed pairs of names
     * @param equipment the relay's radio and mast
     * @param constraints where it may stand
     * @param count 1 to 4 relays
     * @param mode how it passes speech on
     */
    public record RelayQuestion(
            WhoTalks talk,
            List<List<String>> pairs,
            RelayRadio equipment,
            SiteLimits constraints,
            int count,
            RelayMode mode) {}

    /**
     * The relay's own radio, gain, mast and feed.
     *
     * @param stated keys of those that the plan states itself; the rest are our defaults
     */
    public record RelayRadio(
            double powerW,
            double sensitivityDbm,
            double gainDbd,
            double mastM,
            double feedLossDb,
            boolean chained,
            Set<String> stated) {
        public RelayRadio {
            stated = Set.copyOf(stated);
        }
    }

    /** Where a relay may stand and how it is reached on foot. */
    public record SiteLimits(
            Optional<Path> inside,
            Optional<Path> outside,
            OptionalDouble maxSlopeDeg,
            Optional<TrackLimit> nearTrack,
            Optional<WalkLimit> walk,
            OptionalDouble minSeparationKm) {}

    /** At most so far from one of these tracks. */
    public record TrackLimit(Path tracks, double maxDistanceM) {}

    /** At most so many minutes on foot from the start. */
    public record WalkLimit(String start, double maxMinutes) {}

    /** A walked track with its reports; and whether calls without an answer stand in them, where the plan says so. */
    public record WalkEntry(
            String name,
            Optional<Path> track,
            Path reports,
            Optional<String> base,
            Optional<String> loadout,
            OptionalDouble clockOffsetS,
            Optional<Boolean> silentCallsLogged) {}

    /** Model doubt common to the area and spread between places, where the person has better figures than the defaults. */
    public record Doubts(OptionalDouble modelCommonDb, OptionalDouble placeSpreadDb) {}
}
