package handreach.desktop;

import handreach.geodesy.Position;
import handreach.plan.Places;
import handreach.plan.PlanLimits;
import handreach.plan.PlanText;
import handreach.plan.Questions;
import handreach.relay.Party;
import handreach.relay.RelayMode;
import handreach.relay.SiteCheck;
import handreach.report.RelayComposer;
import handreach.report.RelaySite;
import handreach.report.page.Block;
import handreach.report.page.Section;
import handreach.study.RelayAnswer;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Is a relay needed: who must talk to whom, the answer in words, and where the relays would stand. */
final class RelayPanel extends VBox implements Aside.Divided {
    private static final String SECTION = "relay";
    /** As wide as the panel is at its usual width. */
    private static final double FIGURE_PX = 328;

    private static final Map<String, String> COUNTS =
            Map.of("1", "one relay", "2", "two relays", "3", "three relays", "4", "four relays");

    private static final double USUAL_MAST_M = 3;

    private final Session session;
    private final Label usualWords = Labels.line("", "quiet");
    private final Consumer<Position> look;
    private final WordChoice talk;
    private final WordChoice count;
    private final WordChoice mode;
    private final CheckBox chained = new CheckBox("they pass to one another");
    private final NumberField mast;
    private final VBox unasked = new VBox(6);
    private final Button find = new Button("Find out");
    private final Label stale = Labels.line("The plan has been edited since this answer: find out again.", "caution");
    private final VBox sheet = new VBox(9);
    private final Worker.LatestOnly composing;
    private final Worker.InPieces laying;
    private final ReadOnlyStringWrapper answer = new ReadOnlyStringWrapper("");
    private WatchedWork work;

    /** {@code look} brings a place into view. */
    RelayPanel(Session session, Consumer<Position> look) {
        super(10);
        this.session = session;
        this.look = look;
        this.composing = session.worker().latestOnly();
        this.laying = session.worker().inPieces();
        this.talk = new WordChoice("relay-talk", talks(), word -> set("who talks", "talk", PlanText.quoted(word)));
        this.count = new WordChoice("relay-count", inOrder(COUNTS), number -> set("number of relays", "count", number));
        this.mode =
                new WordChoice("relay-mode", modes(), word -> set("way of relaying", "mode", PlanText.quoted(word)));
        this.mast = new NumberField(
                "relay-mast", "The mast", PlanLimits.MAST, typed -> set("height of the mast", "mast_m", typed));
        chained.setId("relay-chained");
        chained.setWrapText(true);
        chained.setOnAction(chosen -> set("relays in a chain", "chained", Boolean.toString(chained.isSelected())));
        find.setId("relay-find");
        find.setOnAction(pressed -> findOut());
        stale.setId("relay-stale");
        sheet.setId("relay-answer");
        Button usual = new Button("Write the usual question into the plan");
        usual.setId("relay-usual");
        unasked.setId("relay-unasked");
        usual.setOnAction(pressed -> askTheUsual());
        unasked.getChildren().addAll(usualWords, usual);
        getChildren().addAll(find, stale, sheet, unasked, settings());
        session.scene().addListener((scene, before, now) -> show(now));
        // A choice that the plan refused goes back to what the plan says.
        session.notices().addListener((ListChangeListener<Notice>) change -> {
            if (session.scene().get() != null) fillChoices(session.scene().get());
        });
        session.relay().addListener((found, before, now) -> fill(now));
        session.worker().watched().addListener((ListChangeListener<WatchedWork>)
                change -> find.setDisable(session.worker().watched().contains(work)));
        fill(Optional.empty());
    }

    ObservableValue<String> answer() {
        return answer.getReadOnlyProperty();
    }

    private static Map<String, String> talks() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put(Questions.WhoTalks.ALL_TO_BASE.word(), "everybody with the base");
        words.put(Questions.WhoTalks.ALL_TO_ALL.word(), "everybody with everybody");
        words.put(Questions.WhoTalks.LISTED.word(), "the pairs listed in the plan");
        return words;
    }

    private static Map<String, String> modes() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put(RelayMode.TWO_FREQUENCY.word(), "two frequencies at once");
        words.put(RelayMode.STORE_AND_FORWARD.word(), "store and forward on one channel");
        return words;
    }

    private static Map<String, String> inOrder(Map<String, String> words) {
        return new java.util.TreeMap<>(words);
    }

    private Node settings() {
        return new FormGrid()
                .with("who talks", talk)
                .with("at most", count)
                .with("", chained)
                .over("works by", mode)
                .with("on a mast", mast);
    }

    private Lengths lengths() {
        Scene scene = session.scene().get();
        return scene == null ? Lengths.METRIC : scene.plan().header().lengths();
    }

    private void set(String what, String key, String value) {
        session.edit(what, plan -> PlanText.withValue(plan, SECTION, key, value));
    }

    private void askTheUsual() {
        session.edit("ask about a relay", plan -> {
            String asked =
                    PlanText.withValue(plan, SECTION, "talk", PlanText.quoted(Questions.WhoTalks.ALL_TO_ALL.word()));
            asked = PlanText.withValue(asked, SECTION, "count", "1");
            asked = PlanText.withValue(asked, SECTION, "mode", PlanText.quoted(RelayMode.TWO_FREQUENCY.word()));
            return PlanText.withValue(asked, SECTION, "mast_m", "3");
        });
    }

    private void show(Scene scene) {
        Questions.RelayQuestion asked = scene.plan().questions().relay();
        boolean isAsked = PlanText.hasSection(scene.file().text(), SECTION);
        unasked.setVisible(!isAsked);
        unasked.setManaged(!isAsked);
        fillChoices(scene);
        mast.fill(asked.equipment().mastM(), lengths());
        usualWords.setText(
                "The plan asks nothing about a relay yet. The usual question: everybody with everybody, one relay on two"
                        + " frequencies, 5 W on a mast of " + lengths().heightText(USUAL_MAST_M) + ".");
        chained.setSelected(asked.equipment().chained());
        chained.setDisable(asked.count() == 1);
        age();
    }

    private void fillChoices(Scene scene) {
        Questions.RelayQuestion asked = scene.plan().questions().relay();
        talk.fill(asked.talk().word());
        count.fill(Integer.toString(asked.count()));
        mode.fill(asked.mode().word());
    }

    /** Asks, unless it is being found out already. */
    void askNow() {
        if (!find.isDisabled()) findOut();
    }

    private void findOut() {
        Scene scene = session.scene().get();
        if (scene == null) return;
        work = session.worker()
                .watched(
                        "Is a relay needed?",
                        progress -> RelayStudy.run(scene, progress),
                        found -> {
                            session.relay().set(Optional.of(found));
                            session.layer().set(Layer.RELAY);
                        },
                        session::tell);
        find.setDisable(session.worker().watched().contains(work));
    }

    private void age() {
        Optional<RelayAnswer> found = session.relay().get();
        boolean isOld = found.isPresent() && !session.fits(found.get().scene());
        stale.setVisible(isOld);
        stale.setManaged(isOld);
        String first = found.map(one -> new RelayComposer(one).headline()).orElse("Not found out yet.");
        answer.set(isOld ? "Before the last edits: " + first : first);
    }

    private void fill(Optional<RelayAnswer> found) {
        age();
        composing.drop();
        laying.drop();
        sheet.getChildren().clear();
        if (found.isEmpty()) return;
        BlockView verdict = new BlockView(session, FIGURE_PX);
        BlockView more = new BlockView(
                session,
                FIGURE_PX,
                new BlockView.RowVerb<>(RelaySite.class, "Show on the map", site -> look.accept(site.at())),
                new BlockView.RowVerb<>(SiteCheck.Hop.class, "Show this path", hop -> pull(found.get(), hop)));
        sheet.getChildren().addAll(verdict, keeping(found.get()), more);
        composing.ask(
                progress -> Composed.of(found.get()),
                composed -> {
                    List<Runnable> steps = new ArrayList<>(verdict.stepsOf(composed.verdict));
                    steps.addAll(more.steps(composed.more));
                    laying.begin(steps);
                },
                session::tell);
    }

    /** The answer in words, made away from the screen thread. */
    private record Composed(List<Block> verdict, List<Section> more) {
        static Composed of(RelayAnswer found) {
            RelayComposer composer = new RelayComposer(found);
            return new Composed(composer.underHeadline(), composer.underVerdict());
        }
    }

    /** What makes a site that was found one that stands. */
    private Node keeping(RelayAnswer found) {
        FlowPane verbs = new FlowPane(8, 4);
        for (RelaySite site : RelaySite.of(found)) {
            if (!site.isAdvised()) continue;
            Button put = Labels.link("Put " + site.name() + " into the plan", () -> put(found, site));
            put.setId("relay-put-" + verbs.getChildren().size());
            put.setTooltip(
                    new Tooltip("As a station that stands and passes speech on; then the answer is found out anew"));
            verbs.getChildren().add(put);
        }
        return verbs;
    }

    private void put(RelayAnswer found, RelaySite site) {
        Questions.RelayQuestion asked = found.scene().plan().questions().relay();
        Questions.RelayRadio own = asked.equipment();
        session.edit("put " + site.name() + " into the plan", plan -> {
            List<String> taken = EntryKind.STATION.names(plan);
            String name = site.name();
            for (int number = 2; taken.contains(name); number++) name = site.name() + ", " + number;
            return PlanText.withEntry(
                    plan,
                    EntryKind.STATION.section(),
                    List.of(
                            "name = " + PlanText.quoted(name),
                            "at = " + PlanText.place(site.at()),
                            "power_w = " + PlanText.number(own.powerW()),
                            "sensitivity_dbm = " + PlanText.number(own.sensitivityDbm()),
                            "gain_dbd = " + PlanText.number(own.gainDbd()),
                            "height_m = " + PlanText.number(own.mastM()),
                            "feed_loss_db = " + PlanText.number(own.feedLossDb()),
                            "relay = true",
                            "mode = " + PlanText.quoted(asked.mode().word())));
        });
    }

    /** Lays a hop on the map as the path that is looked at. */
    private void pull(RelayAnswer found, SiteCheck.Hop hop) {
        Party demand = found.question().demands().get(hop.demand());
        Position site = found.recommended().orElseThrow().sites().get(hop.site());
        Optional<Places.PositionEntry> entry = found.scene().plan().places().positions().stream()
                .filter(each -> each.at().equals(demand.at()))
                .findFirst();
        PulledPath.End from = entry.isPresent()
                ? PulledPath.End.of(demand.at(), entry)
                : new PulledPath.End(
                        demand.at(),
                        Optional.empty(),
                        Optional.of(demand.end().loadout().name()));
        PulledPath.Given given = new PulledPath.Given(
                found.scene(),
                new RelayComposer(found).path(hop),
                demand.end().loadout(),
                found.equipment().end().loadout());
        session.pulled()
                .set(Optional.of(new PulledPath(
                        from, new PulledPath.End(site, Optional.empty(), Optional.empty()), true, Optional.of(given))));
    }
}
