package handreach.study;

import handreach.geodesy.Position;
import handreach.loadout.Burden;
import handreach.loadout.Loadout;
import handreach.propagation.PathGeometry;
import handreach.relay.DirectLink;
import handreach.relay.DirectVerdict;
import handreach.relay.HopPath;
import handreach.relay.Party;
import handreach.relay.RelayRequest;
import handreach.relay.ServiceLevel;
import handreach.relay.SiteCheck;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The relay answer in sentences. */
final class RelaySentences {
    /** More of them would bury the answer. */
    private static final int MOST_TURNINGS = 4;

    private final Scene scene;
    private final RelayRequest question;
    private final DirectVerdict direct;
    private final Lengths lengths;

    RelaySentences(Scene scene, RelayRequest question, DirectVerdict direct) {
        this.scene = scene;
        this.question = question;
        this.direct = direct;
        this.lengths = scene.plan().header().lengths();
    }

    List<String> verdict(RelayAnswer.Already already, Optional<RelayAnswer.Found> found) {
        List<String> words = new ArrayList<>(answer(already, found));
        scene.plan().channel().wish().ways().sentence().ifPresent(words::add);
        return words;
    }

    private List<String> answer(RelayAnswer.Already already, Optional<RelayAnswer.Found> found) {
        List<String> words = new ArrayList<>();
        if (direct.isEnough()) {
            words.add("No relay is needed: all " + talks() + " reach the wanted " + wanted() + " as people are loaded"
                    + weakest().map(link -> "; the weakest is " + pair(link)).orElse("") + ".");
            if (!isSure(direct.service().pessimisticShare()))
                words.add("Should everything that is uncertain everywhere at once turn out badly, only "
                        + Shares.part(direct.service().pessimisticShare()) + " of them would: carry a second means.");
            words.addAll(turnings());
            return words;
        }
        List<String> relays = already.stations().relays().stream()
                .map(one -> one.entry().name())
                .toList();
        if (!relays.isEmpty()) words.add(already(already, relays));
        if (already.verdict().isEnough()) {
            if (!isSure(already.verdict().service().pessimisticShare()))
                words.add("Should everything that is uncertain everywhere at once turn out badly, only "
                        + Shares.part(already.verdict().service().pessimisticShare())
                        + " of them would: carry a second means.");
            words.addAll(turnings());
            return words;
        }
        Optional<DirectVerdict.IfCarried> enough = direct.enoughIfCarried();
        if (enough.isPresent())
            words.add("No relay is needed if everybody carries \""
                    + enough.get().loadout().name() + "\" ("
                    + burden(enough.get().loadout()) + "): the weakest pair then has "
                    + odds(enough.get().service().worstOdds()) + ".");
        else if (!relays.isEmpty())
            words.add("For the rest another relay is needed; no loadout of the plan lifts them all.");
        else
            words.add("A relay is needed: without one "
                    + Shares.part(direct.service().share())
                    + " of the talks " + (isNone(direct.service().share()) ? "reaches" : "reach") + " the wanted "
                    + wanted()
                    + weakest().map(link -> "; the weakest is " + pair(link)).orElse("")
                    + "; no loadout of the plan lifts them all.");
        words.addAll(turnings());
        String relay = relays.isEmpty() ? "relay" : "more relay";
        found.ifPresent(answer -> sites(words, answer, relay, already.verdict().service()));
        return words;
    }

    /** What the relays that stand already do for the talks. */
    private String already(RelayAnswer.Already already, List<String> relays) {
        double wanted = question.setting().terms().odds();
        long carried = already.carried(direct, wanted);
        long straight = direct.links().stream()
                .filter(link -> DirectVerdict.odds(link) >= wanted)
                .count();
        long left = question.talks().size() - carried - straight;
        String share = "of " + talks() + " " + straight + " work straight and " + carried
                + " more by way of what stands already (" + String.join(", ", relays) + ")";
        return already.verdict().isEnough()
                ? "No new relay is needed: " + share + "; the worst of all has "
                        + odds(already.verdict().service().worstOdds()) + "."
                : "O" + share.substring(1) + "; " + left + (left == 1 ? " is" : " are") + " left below the wanted "
                        + wanted() + ".";
    }

    /** Who should turn round for a straight talk that is short of the wanted odds, or of them at the pessimistic end. */
    private List<String> turnings() {
        double wanted = question.setting().terms().odds();
        Set<String> words = new LinkedHashSet<>();
        for (DirectLink link : direct.links()) {
            boolean isGood = link.path()
                    .filter(path -> path.odds().pessimistic() >= wanted)
                    .isPresent();
            if (isGood) continue;
            Party a = question.demands().get(link.talk().a());
            Party b = question.demands().get(link.talk().b());
            turning(a, b).ifPresent(words::add);
            turning(b, a).ifPresent(words::add);
        }
        return words.stream().limit(MOST_TURNINGS).toList();
    }

    private Optional<String> turning(Party who, Party other) {
        return scene.facingAt(who.at())
                .flatMap(entry -> Turning.of(scene, entry, who.end().loadout(), other.name(), other.at()))
                .filter(turning -> turning.gainDb() >= Turning.WORTH_SAYING_DB)
                .map(Turning::words);
    }

    /**
     * @param relay what one of them is called beside those that stand
     * @param without how the talks do without it
     */
    private void sites(List<String> words, RelayAnswer.Found found, String relay, ServiceLevel without) {
        if (found.sites().isEmpty()) {
            words.add("There is no ground on which a relay may stand within the limits of the plan.");
            return;
        }
        RelayAnswer.Site best = found.sites().get(0);
        ServiceLevel most = found.together()
                .map(several -> several.check().service())
                .orElse(best.check().service());
        if (!RelayAnswer.helps(most, without))
            words.add("No such relay helps: even from the best place that was found no talk comes to the wanted "
                    + wanted()
                    + " that does not without it. Look for a stronger one, a higher mast, or another place for people to call"
                    + " from.");
        else if (best.check().service().servesAll())
            words.add("One " + relay + " at " + place(best.at()) + height(best.access())
                    + " serves everybody: the worst talk has "
                    + odds(best.check().service().worstOdds()) + sure(best.check()) + ".");
        else if (found.together().isPresent())
            words.add("One " + relay + " serves "
                    + Shares.part(best.check().service().share()) + " of the talks at best; "
                    + several(found.together().get()));
        else
            words.add("No single relay serves everybody: the best, at " + place(best.at()) + height(best.access())
                    + ", serves " + Shares.part(best.check().service().share()) + " of the talks" + sure(best.check())
                    + ".");
        for (RelayAnswer.Unserved one : found.unserved()) words.add(one.reason());
    }

    private String several(RelayAnswer.Together together) {
        String where = together.check().sites().stream().map(this::place).collect(Collectors.joining(" and "));
        String bound = together.check().service().servesAll()
                ? ""
                : "; no choice of as many serves more than "
                        + Shares.part(together.choice().boundShare()) + " of them";
        return together.check().sites().size() + " relays at " + where + " serve "
                + Shares.part(together.check().service().share()) + " of the talks" + sure(together.check()) + bound
                + ".";
    }

    private static String sure(SiteCheck check) {
        return isSure(check.service().pessimisticShare())
                ? "; it does so even if all that is uncertain everywhere at once turns out badly"
                : "; should all that is uncertain everywhere at once turn out badly, "
                        + (isNone(check.service().pessimisticShare())
                                ? "none of the talks works any more"
                                : Shares.part(check.service().pessimisticShare()) + " of the talks still work");
    }

    private static boolean isNone(double share) {
        return share < 1e-9;
    }

    private static boolean isSure(double share) {
        return share > 1 - 1e-9;
    }

    private Optional<DirectLink> weakest() {
        return direct.weakest();
    }

    private String pair(DirectLink link) {
        return question.demands().get(link.talk().a()).name() + " with "
                + question.demands().get(link.talk().b()).name() + ", " + odds(DirectVerdict.odds(link));
    }

    private String talks() {
        int count = question.talks().size();
        return count == 1 ? "talks (one)" : count + " talks";
    }

    private String wanted() {
        return Shares.wanted(question.setting().terms().odds());
    }

    private String odds(double odds) {
        return Shares.odds(odds, question.setting().terms().odds());
    }

    /** Why somebody is not served: the ground on the way to the best relay anywhere, or to the chosen one. */
    String reason(Party demand, boolean isHopeless, Optional<HopPath> path) {
        String what = isHopeless
                ? "No place within the area gives " + demand.name() + " the wanted odds to a relay"
                : demand.name() + " is not served by the relay chosen";
        if (path.isEmpty()) return what + ": the ground on the way is unknown.";
        double odds = path.get().odds().weaker();
        String best = (isHopeless ? ": at the best one it is " : ": its hop has ") + odds(odds);
        String ridge = path.get()
                .worstEdge()
                .filter(edge -> edge.aboveLineM() > -1)
                .map(edge -> ". In the way stands " + ground(edge))
                .orElse(". No ground stands in the way: distance, woods and what is carried decide");
        return what + best + ridge + ".";
    }

    private String ground(PathGeometry.Obstacle edge) {
        String above = edge.aboveLineM() < 0.5
                ? "level with the straight line"
                : lengths.heightText(edge.aboveLineM()) + " above the straight line";
        return "the ground at " + lengths.text(1000 * edge.distanceKm()) + " from there, "
                + lengths.heightText(edge.heightM()) + " above sea level, " + above;
    }

    private String burden(Loadout loadout) {
        Burden more = loadout.antenna().burden();
        Burden base = scene.controlLoadout().antenna().burden();
        String mass = more.massG().isPresent() && base.massG().isPresent()
                ? " and " + mass(more.massG().getAsDouble() - base.massG().getAsDouble())
                : "";
        double cm = more.lengthCm() - base.lengthCm();
        return String.format(
                Locale.ROOT,
                "%s%s%s against %s%s",
                cm < 0 ? "" : "+",
                lengths.antenna(cm),
                mass,
                scene.controlLoadout().name(),
                (mass.isEmpty() ? ", " + Burden.NO_MASS : "")
                        + (more.lengthIsUsual() || base.lengthIsUsual() ? ", " + Burden.USUAL_LENGTH : ""));
    }

    private String mass(double grams) {
        return (grams < 0 ? "\u2212" : "+") + lengths.mass(Math.abs(grams));
    }

    private String place(Position at) {
        return scene.plan().header().placeForm().format(at);
    }

    private String height(RelayAnswer.Access access) {
        return access.heightM().isPresent()
                ? ", " + lengths.heightText(access.heightM().getAsDouble())
                : "";
    }
}
