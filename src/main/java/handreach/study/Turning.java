package handreach.study;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.CarryLoss;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.reach.LoadoutReach;
import handreach.units.Bearings;
import handreach.units.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Somebody of whom it is known which way they face, and what it would buy to turn towards another.
 *
 * @param who name of the position
 * @param other whom the path leads to, in words
 * @param headingDeg way they face, clockwise from true north
 * @param fromFrontDeg the path from their front, clockwise, 0 to 360
 * @param bestHeadingDeg way to face for that path, clockwise from true north, 0 to 360
 * @param gainDb what facing that way gains, dB
 * @param bearings how they are written
 */
public record Turning(
        String who,
        String other,
        double headingDeg,
        double fromFrontDeg,
        double bestHeadingDeg,
        double gainDb,
        Bearings bearings) {
    /** From so much on it is said that turning pays, dB; our suggestion. */
    public static final double WORTH_SAYING_DB = 0.5;

    /** Of somebody with this loadout towards a place; nothing where the plan does not say which way they face, or on a mast. */
    static Optional<Turning> of(
            Scene scene, Places.PositionEntry who, Loadout carried, String other, Position towards) {
        OptionalDouble heading = scene.headingDeg(who);
        CarryLoss carry = carried.carry();
        if (heading.isEmpty() || !carry.carry().isAtBody() || isSamePlace(who.at(), towards)) return Optional.empty();
        double pathDeg = GeodesicLine.between(who.at(), towards).azimuthDeg();
        double fromFrontDeg = pathDeg - heading.getAsDouble();
        double gainDb = carry.headingDb(carry.bestHeadingDeg()) - carry.headingDb(fromFrontDeg);
        return Optional.of(new Turning(
                who.name(),
                other,
                heading.getAsDouble(),
                full(fromFrontDeg),
                full(pathDeg - carry.bestHeadingDeg()),
                gainDb,
                scene.plan().header().bearings()));
    }

    /**
     * Of everybody in the plan with a known heading, towards the middle of a rose, and of whoever stands in the middle towards its worst
     * bearing.
     */
    public static List<Turning> all(ReachAnswer answer) {
        Scene scene = answer.scene();
        String from = scene.placeWords(answer.middle(), "the middle");
        List<Turning> found = new ArrayList<>();
        for (Places.PositionEntry entry : scene.plan().places().positions()) {
            if (isSamePlace(entry.at(), answer.middle())) continue;
            Loadout carried = entry.loadout().map(scene::loadout).orElseGet(scene::controlLoadout);
            of(scene, entry, carried, from, answer.middle()).ifPresent(found::add);
        }
        scene.facingAt(answer.middle()).ifPresent(entry -> {
            LoadoutReach reach = answer.loadouts().get(answer.control());
            Loadout carried = scene.middleLoadout(scene.controlLoadout());
            Position there = GeodesicLine.destination(entry.at(), reach.worstBearingDeg(), 1000);
            String worst = scene.plan().header().bearings().text(reach.worstBearingDeg()) + ", the worst bearing,";
            of(scene, entry, carried, worst, there).ifPresent(found::add);
        });
        return found;
    }

    private static boolean isSamePlace(Position one, Position other) {
        return Scene.isSamePlace(one, other);
    }

    private static double full(double deg) {
        return ((deg % 360) + 360) % 360;
    }

    /** Who should turn, whereto, and what it buys, in a sentence. */
    public String words() {
        String now = String.format(
                Locale.ROOT,
                "%s faces %s, with the way to %s %.0f° right of the front",
                who,
                bearings.text(headingDeg),
                other,
                Math.floor(fromFrontDeg + 0.5) % 360);
        if (gainDb < WORTH_SAYING_DB)
            return now + ": no other heading is better by " + Decibels.text(WORTH_SAYING_DB) + ".";
        return now
                + String.format(
                        Locale.ROOT,
                        ": turning to %s gains %s (radio on the right, mean of many persons).",
                        bearings.text(Math.floor(bestHeadingDeg + 0.5) % 360),
                        Decibels.text(gainDb));
    }
}
