package handreach.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.geodesy.Position;
import handreach.relay.Demand;
import handreach.relay.DirectLink;
import handreach.relay.DirectVerdict;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayMode;
import handreach.relay.RelayQuestion;
import handreach.relay.SiteCheck;
import handreach.relay.Standing;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.TextTable;
import handreach.study.RelayAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Whether a relay is needed and where, as text. JSON: {@link RelayJson}. */
public final class RelayText {
    private final RelayAnswer answer;
    private final RelayQuestion question;
    private final Lengths lengths;

    private RelayText(RelayAnswer answer) {
        this.answer = answer;
        this.question = answer.question();
        this.lengths = answer.scene().plan().heading().lengths();
    }

    public static ObjectNode json(RelayAnswer answer) {
        return RelayJson.of(answer);
    }

    /** The answer for people: verdict, straight talks, sites, the weakest hop, what to check there, cautions. */
    public static String text(RelayAnswer answer) {
        return new RelayText(answer).text();
    }

    private String text() {
        StringBuilder out = new StringBuilder();
        out.append(answer.scene().plan().heading().title()).append("\n\n");
        for (String sentence : answer.words().verdict()) out.append(sentence).append('\n');
        answer.scene()
                .calibration()
                .ifPresent(learned -> out.append(learned.words()).append(" Every hop below holds it.\n"));
        out.append("\nWithout a relay\n").append(direct());
        if (!answer.direct().everybody().isEmpty())
            out.append("\nIf everybody carried\n").append(everybody());
        answer.found().ifPresent(found -> append(out, found));
        out.append('\n').append(Cautions.brief(Caution.RELIANCE)).append('\n');
        return out.toString();
    }

    private String direct() {
        TextTable table = TextTable.of("who", "with", ">there", ">back", ">pessimistic", "distance");
        for (DirectLink link : answer.direct().links())
            table.row(
                    name(link.talk().a()),
                    name(link.talk().b()),
                    link.path().map(p -> Shares.odds(p.odds().there())).orElse("unknown"),
                    link.path().map(p -> Shares.odds(p.odds().back())).orElse("unknown"),
                    link.path().map(p -> Shares.odds(p.odds().pessimistic())).orElse("ground"),
                    link.path().map(p -> lengths.text(p.line().lengthM())).orElse(""));
        return table.text();
    }

    private String everybody() {
        TextTable table = TextTable.of("loadout", "antenna cm", ">g", ">talks served", ">worst talk");
        for (DirectVerdict.IfCarried one : answer.direct().everybody())
            table.row(
                    one.loadout().name(),
                    String.format(
                            Locale.ROOT,
                            "%.0f",
                            one.loadout().antenna().burden().lengthCm()),
                    AntennaCost.side(one.loadout().antenna().burden().massG()),
                    Shares.share(one.standing().share()),
                    Shares.odds(one.standing().worstOdds()));
        return table.text();
    }

    private void append(StringBuilder out, RelayAnswer.Found found) {
        if (found.sites().isEmpty()) return;
        out.append("\nSites for one relay, best first\n").append(sites(found));
        out.append(String.format(
                Locale.ROOT,
                "Every one of %d cells of %.0f m in which a relay may stand was tried by sweep; the sites above are reckoned again,"
                        + " one profile a hop.%n",
                found.search().allowed(),
                found.search().cellM()));
        found.together().ifPresent(together -> out.append("\nSeveral relays\n").append(together(together)));
        SiteCheck best = answer.recommended().orElseThrow();
        out.append("\nHops of the recommended ")
                .append(best.sites().size() == 1 ? "site" : "sites")
                .append('\n');
        out.append(hops(best));
        best.weakest()
                .ifPresent(hop -> out.append("Weakest hop: ")
                        .append(name(hop.demand()))
                        .append(", margin ")
                        .append(Decibels.text(hop.path().odds().marginDb()))
                        .append(" at the median place")
                        .append(".\n"));
        out.append("\nHow it relays\n");
        for (String line : equipment(answer)) out.append(line).append('\n');
        out.append("\nCheck at the site\n");
        for (String line : siteCheck(answer)) out.append("- ").append(line).append('\n');
    }

    private String sites(RelayAnswer.Found found) {
        TextTable table = TextTable.of(
                "no.",
                "place",
                ">height m",
                ">slope",
                ">walk",
                ">talks served",
                ">pessimistic",
                ">worst talk",
                "other mode");
        int number = 0;
        for (RelayAnswer.Site site : found.sites())
            table.row(
                    String.valueOf(++number),
                    place(site.at()),
                    height(site.access()),
                    String.format(Locale.ROOT, "%.0f\u00b0", site.access().slopeDeg()),
                    walk(site.access()),
                    Shares.share(site.check().standing().share()),
                    Shares.share(site.check().standing().pessimisticShare()),
                    Shares.odds(site.check().standing().worstOdds()),
                    Shares.odds(site.otherMode().worstOdds()));
        return table.text();
    }

    private String together(RelayAnswer.Together together) {
        TextTable table = TextTable.of("relay", "place", ">height m", ">walk", "if it fails");
        for (int i = 0; i < together.check().sites().size(); i++) {
            Standing left = together.choice().ifOneFails().get(i);
            table.row(
                    String.valueOf(i + 1),
                    place(together.check().sites().get(i)),
                    height(together.access().get(i)),
                    walk(together.access().get(i)),
                    Shares.share(left.share()) + " of the talks are left");
        }
        return table.text()
                + String.format(
                        Locale.ROOT,
                        "Together %s of the talks; no choice of as many relays serves more than %s (by sweep, at the median).%n",
                        Shares.share(together.check().standing().share()),
                        Shares.share(together.choice().boundShare()));
    }

    private String hops(SiteCheck check) {
        TextTable table =
                TextTable.of("who", ">relay", "distance", ">to relay", ">from relay", ">pessimistic", "in the way");
        for (Optional<SiteCheck.Hop> hop : check.hops()) {
            if (hop.isEmpty()) continue;
            var path = hop.get().path();
            table.row(
                    name(hop.get().demand()),
                    String.valueOf(hop.get().site() + 1),
                    lengths.text(path.line().lengthM()),
                    Shares.odds(path.odds().there()),
                    Shares.odds(path.odds().back()),
                    Shares.odds(path.odds().pessimistic()),
                    path.worstEdge()
                            .filter(edge -> edge.aboveLineM() > 0)
                            .map(edge -> String.format(
                                    Locale.ROOT,
                                    "%.0f m at %s",
                                    edge.heightM(),
                                    lengths.text(1000 * edge.distanceKm())))
                            .orElse("nothing"));
        }
        return table.text();
    }

    /** What the relay is, and what keeps its transmitter out of its receiver. */
    static List<String> equipment(RelayAnswer answer) {
        RelayEquipment relay = answer.equipment();
        RelayEquipment.IsolationMargin isolation =
                relay.isolation(answer.scene().plan().channel().frequency());
        String counted = relay.mode() == RelayMode.TWO_FREQUENCY
                ? "Counted: two frequencies, 1 dB of desense on the way in."
                : "Counted: store and forward on one channel, no desense; every relay on the way adds the length of the call.";
        String needed = String.format(
                Locale.ROOT,
                "Two frequencies at once need %.0f dB between its transmitter and its receiver; one antenna above the other on this"
                        + " mast gives %.0f dB at most, margin %+.0f dB%s",
                isolation.neededDb(),
                isolation.onThisMastDb(),
                isolation.marginDb(),
                isolation.marginDb() < 0
                        ? ": filters must make it up, or use store and forward, or two bands (mind the third harmonic)."
                        : ".");
        return List.of(
                counted,
                needed,
                "A relay transmits far more than a handheld: derate its power, plan its battery for the hours; no line power is assumed.");
    }

    /** A short list for whoever walks up. */
    static List<String> siteCheck(RelayAnswer answer) {
        return List.of(
                "Land: whose ground is it, and may you put it there?",
                "Licence: does it allow a relay here, on these frequencies, with this antenna and power?",
                "Thunder: if you can hear it, stay off; raise nothing; wait 30 minutes after the last.",
                "Power lines: none within twice the height of mast and antenna.",
                String.format(
                        Locale.ROOT,
                        "People: keep %.1f m from the antenna while it transmits (public, half the time on the air; local rules decide).",
                        RelayExposure.keepAwayM(answer)),
                String.format(
                        Locale.ROOT,
                        "Antenna: upright, %.1f m above ground, clear of leaves and metal.",
                        answer.equipment().mastM()),
                "Call every party from the site before you leave, both ways; note level or copy.");
    }

    private String name(int demand) {
        Demand one = question.demands().get(demand);
        return one.name();
    }

    private String place(Position at) {
        return answer.scene().plan().heading().placeForm().format(at);
    }

    static String height(RelayAnswer.Access access) {
        return access.heightM().isPresent()
                ? String.format(Locale.ROOT, "%.0f", access.heightM().getAsDouble())
                : "unknown";
    }

    static String walk(RelayAnswer.Access access) {
        return access.minutes().isPresent()
                ? String.format(Locale.ROOT, "%.0f min", access.minutes().getAsDouble())
                : "";
    }
}
