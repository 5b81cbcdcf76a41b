package handreach.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.geodesy.Position;
import handreach.relay.Demand;
import handreach.relay.DirectLink;
import handreach.relay.DirectVerdict;
import handreach.relay.HopPath;
import handreach.relay.RelayEquipment;
import handreach.relay.RelayQuestion;
import handreach.relay.SiteCheck;
import handreach.relay.Standing;
import handreach.relay.Talk;
import handreach.report.file.Json;
import handreach.study.RelayAnswer;
import java.util.Optional;
import java.util.OptionalDouble;

/** The relay answer as one JSON object; keys are described in docs/relay.md. */
public final class RelayJson {
    private final RelayAnswer answer;
    private final RelayQuestion question;

    private RelayJson(RelayAnswer answer) {
        this.answer = answer;
        this.question = answer.question();
    }

    public static ObjectNode of(RelayAnswer answer) {
        return new RelayJson(answer).node();
    }

    private ObjectNode node() {
        ObjectNode node = object();
        node.put("title", answer.scene().plan().heading().title());
        node.put("relay_needed", !answer.direct().isEnough());
        answer.direct()
                .enoughIfCarried()
                .ifPresentOrElse(
                        one -> node.put("not_needed_with", one.loadout().name()),
                        () -> node.putNull("not_needed_with"));
        node.put("odds", question.setting().terms().odds());
        node.put("model", question.setting().model().name());
        CalibrationJson.put(
                node,
                answer.scene().calibration(),
                Optional.of(answer.scene().plan().heading()));
        node.set("verdict", Json.tree(answer.words().verdict()));
        demands(node.putArray("demands"));
        ObjectNode direct = node.putObject("direct");
        standing(direct, answer.direct().standing());
        ArrayNode talks = direct.putArray("talks");
        answer.direct().links().forEach(link -> talks.add(link(link)));
        ArrayNode everybody = node.putArray("if_everybody_carried");
        for (DirectVerdict.IfCarried one : answer.direct().everybody()) {
            ObjectNode entry = everybody.addObject();
            entry.put("loadout", one.loadout().name());
            entry.set("burden", Json.tree(one.loadout().antenna().burden()));
            standing(entry, one.standing());
        }
        relay(node.putObject("relay"));
        found(node);
        node.set("warnings", Json.tree(answer.words().warnings()));
        return node;
    }

    private void demands(ArrayNode demands) {
        for (Demand demand : question.demands()) {
            ObjectNode entry = demands.addObject();
            entry.put("name", demand.name());
            if (demand.group().isPresent()) entry.put("group", demand.group().get());
            else entry.putNull("group");
            place(entry, demand.at());
            entry.put("loadout", demand.end().loadout().name());
            entry.put("weight", demand.weight());
        }
    }

    private ObjectNode link(DirectLink link) {
        ObjectNode entry = object();
        pair(entry, link.talk());
        entry.put("known", link.path().isPresent());
        entry.put("odds", DirectVerdict.odds(link));
        link.path().ifPresent(path -> path(entry, path));
        return entry;
    }

    private void pair(ObjectNode entry, Talk talk) {
        entry.put("a", question.demands().get(talk.a()).name());
        entry.put("b", question.demands().get(talk.b()).name());
    }

    private static void path(ObjectNode entry, HopPath path) {
        entry.put("distance_km", path.line().lengthM() / 1000);
        entry.put("loss_db", path.loss().lossDb());
        entry.put("odds_there", path.odds().there());
        entry.put("odds_back", path.odds().back());
        entry.put("odds_pessimistic", path.odds().pessimistic());
        entry.put("margin_db", path.odds().marginDb());
        entry.put("site_shift_db", path.odds().siteShiftDb());
        path.worstEdge()
                .filter(edge -> edge.aboveLineM() > 0)
                .ifPresentOrElse(
                        edge -> {
                            ObjectNode ridge = entry.putObject("ridge");
                            ridge.put("distance_km", edge.distanceKm());
                            ridge.put("height_m", edge.heightM());
                            ridge.put("above_line_m", edge.aboveLineM());
                        },
                        () -> entry.putNull("ridge"));
    }

    private void relay(ObjectNode node) {
        RelayEquipment relay = answer.equipment();
        RelayEquipment.IsolationMargin isolation =
                relay.isolation(answer.scene().plan().channel().frequency());
        node.put("mode", relay.mode().word());
        node.put("desense_db", relay.mode().desenseDb());
        node.put("mast_m", relay.mastM());
        node.put("chained", relay.chained());
        node.put("isolation_needed_db", isolation.neededDb());
        node.put("isolation_on_mast_db", isolation.onThisMastDb());
        node.put("isolation_margin_db", isolation.marginDb());
        node.put("keep_away_m", RelayExposure.keepAwayM(answer));
    }

    private void found(ObjectNode node) {
        ArrayNode sites = node.putArray("sites");
        ArrayNode front = node.putArray("trade_off");
        ArrayNode unserved = node.putArray("unserved");
        node.putNull("together");
        if (answer.found().isEmpty()) return;
        RelayAnswer.Found found = answer.found().get();
        for (RelayAnswer.Site site : found.sites()) {
            ObjectNode entry = sites.addObject();
            place(entry, site.at());
            access(entry, site.access());
            standing(entry, site.check().standing());
            entry.put("worst_odds_other_mode", site.otherMode().worstOdds());
            check(entry, site.check(), sites.size() == 1);
        }
        found.together().ifPresent(together -> node.set("together", together(together)));
        for (RelayAnswer.Trade trade : found.front()) {
            ObjectNode entry = front.addObject();
            place(entry, trade.at());
            standing(entry, trade.standing());
        }
        for (RelayAnswer.Unserved one : found.unserved()) {
            ObjectNode entry = unserved.addObject();
            entry.put("name", question.demands().get(one.demand()).name());
            entry.put("best_odds_anywhere", one.bestOdds());
            entry.put("reason", one.reason());
        }
        ObjectNode search = node.putObject("search");
        search.put("cell_m", found.search().cellM());
        search.put("allowed_cells", found.search().allowed());
        search.put("known_cells", found.search().cells());
    }

    private ObjectNode together(RelayAnswer.Together together) {
        ObjectNode entry = object();
        standing(entry, together.check().standing());
        entry.put("bound_share", together.choice().boundShare());
        ArrayNode relays = entry.putArray("relays");
        for (int i = 0; i < together.check().sites().size(); i++) {
            ObjectNode relay = relays.addObject();
            place(relay, together.check().sites().get(i));
            access(relay, together.access().get(i));
            relay.put("share_if_it_fails", together.choice().ifOneFails().get(i).share());
        }
        check(entry, together.check(), true);
        return entry;
    }

    /** Hops and talks; the ledgers only of what is recommended, or a large question makes a file of megabytes. */
    private void check(ObjectNode entry, SiteCheck check, boolean withLedgers) {
        ArrayNode hops = entry.putArray("hops");
        for (Optional<SiteCheck.Hop> hop : check.hops()) {
            if (hop.isEmpty()) continue;
            ObjectNode one = hops.addObject();
            one.put("name", question.demands().get(hop.get().demand()).name());
            one.put("relay", hop.get().site() + 1);
            path(one, hop.get().path());
            if (withLedgers)
                one.set("ledger", Json.tree(LedgerJson.of(hop.get().path().ledger())));
        }
        ArrayNode talks = entry.putArray("talks");
        for (int t = 0; t < check.talks().size(); t++) {
            ObjectNode one = talks.addObject();
            pair(one, question.talks().get(t));
            one.put("odds", check.talks().get(t).weaker());
            one.put("odds_product", check.talks().get(t).product());
            one.put("odds_pessimistic", check.talks().get(t).pessimistic());
            one.put("direct", check.talks().get(t).isDirect());
        }
    }

    private static void standing(ObjectNode entry, Standing standing) {
        entry.put("share", standing.share());
        entry.put("share_pessimistic", standing.pessimisticShare());
        entry.put("worst_odds", standing.worstOdds());
    }

    private static void access(ObjectNode entry, RelayAnswer.Access access) {
        put(entry, "height_m", access.heightM());
        entry.put("slope_deg", access.slopeDeg());
        put(entry, "walk_minutes", access.minutes());
    }

    private void place(ObjectNode entry, Position at) {
        entry.put("latitude", at.latitudeDeg());
        entry.put("longitude", at.longitudeDeg());
        entry.put("place", answer.scene().plan().heading().placeForm().format(at));
    }

    private static void put(ObjectNode entry, String key, OptionalDouble value) {
        if (value.isPresent()) entry.put(key, value.getAsDouble());
        else entry.putNull(key);
    }

    private static ObjectNode object() {
        return (ObjectNode) Json.tree(new Object() {});
    }
}
