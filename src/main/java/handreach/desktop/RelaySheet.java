package handreach.desktop;

import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.relay.Demand;
import handreach.relay.HopPath;
import handreach.relay.SiteCheck;
import handreach.report.RelayPages;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.study.RelayAnswer;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.HPos;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One relay answer as lists: sites, people, the weakest hop, cautions. */
final class RelaySheet {
    private final Session session;
    private final RelayAnswer answer;
    private final Consumer<Position> look;
    private final Lengths lengths;

    RelaySheet(Session session, RelayAnswer answer, Consumer<Position> look) {
        this.session = session;
        this.answer = answer;
        this.look = look;
        this.lengths = answer.scene().plan().heading().lengths();
    }

    /** Sites, people, and whom nothing serves. */
    List<Node> parts() {
        List<Node> parts = new ArrayList<>();
        List<RelaySite> sites = RelaySite.of(answer);
        if (sites.isEmpty()) return parts;
        parts.add(Words.line("Where it would stand", "panel-head"));
        for (RelaySite site : sites) parts.add(site(site));
        parts.add(Words.line("Odds over the relay", "panel-head"));
        parts.add(people(answer.recommended().orElseThrow()));
        List<RelayAnswer.Unserved> unserved = answer.found().orElseThrow().unserved();
        if (!unserved.isEmpty()) {
            parts.add(Words.line("Not served", "panel-head"));
            for (RelayAnswer.Unserved one : unserved) parts.add(Words.line(one.reason(), "plain"));
        }
        return parts;
    }

    private Node site(RelaySite site) {
        Label name = Words.cell(site.name(), site.isAdvised() ? "strong" : "plain");
        name.setMinWidth(62);
        Button at =
                Words.link(answer.scene().plan().heading().placeForm().format(site.at()), () -> look.accept(site.at()));
        at.setAccessibleText("Show " + site.name() + " on the map");
        at.setMinWidth(Region.USE_COMPUTED_SIZE);
        HBox head = new HBox(6, name, at);
        head.setAlignment(Pos.CENTER_LEFT);
        StringBuilder words = new StringBuilder();
        site.access().heightM().ifPresent(m -> words.append(height(m)).append(", "));
        words.append(
                String.format(Locale.ROOT, "slope %.0f\u00b0", site.access().slopeDeg()));
        site.access().minutes().ifPresent(m -> words.append(String.format(Locale.ROOT, ", %.0f min on foot", m)));
        words.append("; ")
                .append(Shares.share(site.served()))
                .append(" of the talks, the worst ")
                .append(Shares.odds(site.worst()));
        VBox row = new VBox(1, head, Words.line(words.toString(), "quiet"));
        row.getStyleClass().add("relay-site");
        return row;
    }

    private String height(double metres) {
        return lengths.heightText(metres);
    }

    private Node people(SiteCheck check) {
        GridPane grid = new GridPane();
        grid.getStyleClass().add("figures");
        grid.setHgap(9);
        grid.setVgap(3);
        for (int i = 0; i < 4; i++) {
            ColumnConstraints column = new ColumnConstraints();
            if (i == 0) column.setHgrow(Priority.ALWAYS);
            if (i == 1 || i == 2) column.setHalignment(HPos.RIGHT);
            grid.getColumnConstraints().add(column);
        }
        grid.addRow(
                0,
                Words.cell("who", "quiet"),
                Words.cell("hop", "quiet"),
                Words.cell("worst talk", "quiet"),
                Words.cell("", "quiet"));
        double wanted = answer.scene().plan().channel().wish().odds();
        int most = 40;
        int row = 1;
        for (int d = 0; d < answer.question().demands().size() && row <= most; d++) {
            Demand demand = answer.question().demands().get(d);
            Optional<SiteCheck.Hop> hop = check.hops().get(d);
            double talk = check.demandOdds(answer.question(), d);
            Label name = Words.line(demand.name(), talk < wanted ? "strong" : "plain");
            String odds =
                    hop.map(one -> Shares.odds(one.path().odds().weaker())).orElse("unknown");
            Node show = hop.<Node>map(one -> {
                        Button link = Words.link("path", () -> pull(one));
                        link.setAccessibleText("Show the path from " + demand.name() + " to the relay");
                        return link;
                    })
                    .orElse(new Region());
            grid.addRow(
                    row++,
                    name,
                    Words.cell(odds, "plain"),
                    Words.cell(Shares.odds(talk) + (talk < wanted ? " !" : ""), talk < wanted ? "strong" : "plain"),
                    show);
        }
        int left = answer.question().demands().size() - most;
        return left <= 0
                ? grid
                : new VBox(3, grid, Words.line("and " + left + " more; the relay files list all of them.", "quiet"));
    }

    /** The hop that fails first, and the way to look at it as a path. */
    Node weakest(SiteCheck.Hop hop) {
        HopPath path = hop.path();
        Demand demand = answer.question().demands().get(hop.demand());
        String words = String.format(
                Locale.ROOT,
                "%s, %s from the relay: %s there, %s back, margin %s at the median place.",
                demand.name(),
                lengths.text(path.line().lengthM()),
                Shares.odds(path.odds().there()),
                Shares.odds(path.odds().back()),
                Decibels.text(path.odds().marginDb()));
        Button show = new Button("Show this path");
        show.setId("relay-weakest");
        show.setOnAction(pressed -> pull(hop));
        return new VBox(
                6,
                Words.line("The weakest hop", "panel-head"),
                Words.line(words, "plain"),
                show,
                Words.line(
                        "Desense of the relay and what walks have taught stand in these odds, not in the ledger of the path.",
                        "quiet"));
    }

    /** Lays the hop on the map as the path that is looked at. */
    private void pull(SiteCheck.Hop hop) {
        Demand demand = answer.question().demands().get(hop.demand());
        Position site = answer.recommended().orElseThrow().sites().get(hop.site());
        Optional<Places.PositionEntry> entry = answer.scene().plan().places().positions().stream()
                .filter(each -> each.at().equals(demand.at()))
                .findFirst();
        PulledPath.End from = entry.isPresent()
                ? PulledPath.End.of(demand.at(), entry)
                : new PulledPath.End(
                        demand.at(),
                        Optional.empty(),
                        Optional.of(demand.end().loadout().name()));
        session.pulled()
                .set(Optional.of(new PulledPath(
                        from,
                        new PulledPath.End(site, Optional.empty(), Optional.empty()),
                        true,
                        Optional.of(new PulledPath.Given(
                                answer.scene(),
                                RelayPages.path(answer, hop),
                                demand.end().loadout(),
                                answer.equipment().end().loadout())))));
    }

    /** What was doubtful, and what keeps people from harm. */
    List<Node> foot() {
        List<Node> foot = new ArrayList<>();
        VBox doubts = new VBox(4);
        for (String warning : answer.words().warnings()) doubts.getChildren().add(Words.line(warning, "quiet"));
        if (!doubts.getChildren().isEmpty()) {
            TitledPane pane = new TitledPane("Doubtful (" + doubts.getChildren().size() + ")", doubts);
            pane.setExpanded(false);
            pane.setAnimated(false);
            foot.add(pane);
        }
        for (Caution caution : answer.found().isEmpty() ? List.of(Caution.RELIANCE) : Cautions.RAISING)
            foot.add(Words.line(Cautions.title(caution) + ". " + Cautions.brief(caution), "caution"));
        return foot;
    }
}
