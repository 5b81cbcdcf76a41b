package handreach.report.page;

import java.util.List;
import java.util.Locale;

/**
 * The cautions, written once for every face: long for the report and the guide, short for the field card and {@code --help}.
 *
 * <p>They inform; local rules and licensed practice decide.
 */
public final class Cautions {
    /** What concerns everybody who carries a handheld. */
    public static final List<Caution> CARRYING =
            List.of(Caution.RELIANCE, Caution.EXPOSURE, Caution.LIGHTNING, Caution.LICENCE);

    /** What concerns those who put up a relay or any raised antenna as well. */
    public static final List<Caution> RAISING = List.of(
            Caution.RELIANCE,
            Caution.EXPOSURE,
            Caution.RELAY_EXPOSURE,
            Caution.LIGHTNING,
            Caution.POWER_LINES,
            Caution.LICENCE);

    private Cautions() {}

    public static String title(Caution caution) {
        return switch (caution) {
            case RELIANCE -> "Odds, not a promise";
            case EXPOSURE -> "Radio energy near the body";
            case RELAY_EXPOSURE -> "Keeping clear of a relay antenna";
            case LIGHTNING -> "Lightning";
            case POWER_LINES -> "Power lines";
            case LICENCE -> "Licence and law";
        };
    }

    /** One or two sentences. */
    public static String brief(Caution caution) {
        return switch (caution) {
            case RELIANCE ->
                "These are odds, not a promise. Carry a second way to call for help, spare power, and an agreed time to turn back"
                        + " when contact is lost.";
            case EXPOSURE ->
                "Transmit with the antenna a hand's width from face and eyes. Do not touch antenna or counterpoise wire while"
                        + " transmitting.";
            case RELAY_EXPOSURE ->
                "Keep people away from a relay antenna by the distance its licence, power and gain call for; local exposure rules"
                        + " decide.";
            case LIGHTNING ->
                "Thunder heard: no mast, no raised antenna, no visit to the relay until 30 minutes after the last. Leave it, do"
                        + " not unplug it in the storm.";
            case POWER_LINES ->
                "Look up first. Stay off any power line by at least twice the height of what could fall; never throw a wire near"
                        + " one.";
            case LICENCE ->
                "Band, power, antenna, relay use and who may talk follow your licence and local rules. The licensee decides, not"
                        + " this sheet.";
        };
    }

    /** How a caution begins where it is told in brief: its title, or its first sentence where that says the title already. */
    public static String opening(Caution caution) {
        return saysItsTitle(caution) ? brief(caution).substring(0, firstEnd(caution)) : title(caution) + ".";
    }

    /** What follows the opening. */
    public static String rest(Caution caution) {
        return saysItsTitle(caution) ? brief(caution).substring(firstEnd(caution) + 1) : brief(caution);
    }

    private static int firstEnd(Caution caution) {
        return brief(caution).indexOf(". ") + 1;
    }

    private static boolean saysItsTitle(Caution caution) {
        return brief(caution)
                .substring(0, firstEnd(caution))
                .toLowerCase(Locale.ROOT)
                .contains(title(caution).toLowerCase(Locale.ROOT));
    }

    /** A paragraph. */
    public static String full(Caution caution) {
        return switch (caution) {
            case RELIANCE ->
                "What is shown here are odds from a model, bench readings and coarse maps of the ground. A place marked as reached"
                        + " can be silent when you stand in it: leaves, season, snow, the way a radio is held and a tired battery all"
                        + " move dead spots, and the inside of a vehicle or a metal-coated shelter can mute a handheld altogether."
                        + " Never let a life hang on one radio. Carry a second means (a satellite messenger or beacon, a runner, a"
                        + " place and time to meet), carry spare power, and agree before you start what each party does when contact"
                        + " is lost.";
            case EXPOSURE ->
                "A handheld meets its exposure limits through the tests it was certified with, body distance and antenna included;"
                        + " no distance formula replaces them this near to the body, and another antenna may void the certificate."
                        + " Keep the antenna a hand's width from face and eyes and its tip away from anybody's eyes. Do not touch the"
                        + " antenna or the counterpoise wire while transmitting: the wire is part of the radiator, so let it hang"
                        + " free of skin and never wrap it around the body. The limits of your country apply (for example 47 CFR"
                        + " 1.1310 in the United States, the ICNIRP guidelines of 2020 elsewhere).";
            case RELAY_EXPOSURE ->
                "Around the raised antenna of a relay, the distance at which the power density falls to the limit grows with power,"
                        + " gain and time on the air. Work it out for your station, take the limit for the general public, allow for"
                        + " reflection from the ground, and mark off that distance. Local exposure rules decide.";
            case LIGHTNING ->
                "When thunder can be heard, nobody raises, holds or visits a mast, a wire or a relay. Wait 30 minutes after the last"
                        + " thunder. A relay that is already up is abandoned, not unplugged during the storm. Whatever stands longer"
                        + " than an outing needs earthing and bonding by licensed practice.";
            case POWER_LINES ->
                "Before a mast, a pole or a thrown wire goes up, look up. Keep at least twice the height of anything that can fall"
                        + " between it and any power line, and never throw a line near one. The distances your law sets for work near"
                        + " lines come on top. If something touches a line, stay away from it, keep others away and call the owner of"
                        + " the line.";
            case LICENCE ->
                "Which band, power, bandwidth and antenna you may use, whether a relay or cross-band use is allowed, how you"
                        + " identify and whom you may talk to is set by your licence and by the law of the place; many services tie a"
                        + " certified radio to its own antenna or limit effective radiated power. Emergency exceptions are narrower"
                        + " than most people believe. This program informs; the licensee decides. Ask the regulator or a licensed"
                        + " radio engineer.";
        };
    }
}
