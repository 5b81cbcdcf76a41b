package handreach.desktop;

import handreach.loadout.CopyQuality;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.PlanText;
import handreach.reach.ReachEstimate;
import handreach.report.ChannelsComposer;
import handreach.report.ModelsComposer;
import handreach.report.OneWayComposer;
import handreach.report.PlacesComposer;
import handreach.report.ReachComposer;
import handreach.report.RoutesComposer;
import handreach.report.StationsComposer;
import handreach.report.page.Block;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.Scene;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import javafx.util.StringConverter;

/**
 * How far: where the reach starts, what counts as copy, and reach by loadout and bearing on exact paths. Figures of the ground come
 * twice: at once off the map under the hand, then as a report counts them.
 */
final class ReachPanel extends VBox implements Aside.Divided {
    private static final double FIGURE_PX = 328;
    private static final double ROSE_RADIUS_PX = 138;

    private final Session session;
    private final LiveReach live;
    private final Worker.LatestOnly studying;
    private final Worker.LatestOnly composing;
    private final Worker.InPieces laying;
    private final ComboBox<String> from = new ComboBox<>();
    private final ComboBox<CopyQuality> quality = new ComboBox<>();
    private final Slider odds = new Slider(0.5, 0.99, 0.8);
    private final Label oddsWords = new Label();
    private final BlockView lines;
    private final FigurePane rose;
    private final ReadOnlyStringWrapper answer = new ReadOnlyStringWrapper("");
    private final ReadOnlyStringWrapper advice = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<ReachAnswer> found = new ReadOnlyObjectWrapper<>();
    private final Worker.Debounce settle;
    private ReachComposer composed;
    private boolean isFilling;

    /** What is known, with shares of the cells on the map where they are the plan's own, so that key and table agree. */
    private static ReachComposer composed(ReachAnswer answer, LiveReach.Losses cells) {
        List<ReachEstimate> shares = new ArrayList<>();
        for (int i = 0; i < answer.loadouts().size(); i++) shares.add(share(answer, i, cells));
        return ReachComposer.of(answer, shares);
    }

    private static ReachEstimate share(ReachAnswer answer, int loadout, LiveReach.Losses cells) {
        ReachEstimate bearings = answer.share(loadout);
        Scene scene = answer.scene();
        if (cells == null
                || cells.isCoarse()
                || !cells.stand().equals(answer.middle())
                || !cells.model().equals(scene.model())) return bearings;
        return cells.odds(answer.loadouts().get(loadout).link())
                .map(odds -> odds.shareEstimate(scene.plan().channel().wish().odds()))
                .orElse(bearings);
    }

    ReachPanel(Session session, LiveReach live) {
        super(10);
        this.session = session;
        this.live = live;
        this.settle = session.worker().debounce(Duration.millis(200), this::study);
        this.studying = session.worker().latestOnly();
        this.composing = session.worker().latestOnly();
        this.laying = session.worker().inPieces();
        this.rose = new FigurePane(session);
        this.lines = new BlockView(session, FIGURE_PX);
        from.setId("reach-from");
        quality.setId("copy-quality");
        odds.setId("target-odds");
        lines.setId("reach-lines");
        Label caution = Labels.line(Cautions.brief(Caution.RELIANCE), "caution");
        getChildren().addAll(lines, rose, settings(), caution);
        session.scene().addListener((scene, before, now) -> {
            boolean isOther =
                    before == null || !before.file().file().equals(now.file().file());
            if (isOther) forget();
            show(now);
        });
        // The map comes first; figures follow when it is there.
        live.isUnderway().addListener((underway, was, is) -> {
            if (!is) settle.begin();
        });
        // What a report would count, cell by cell, waits until the hand rests again.
        session.moving().addListener((moving, before, now) -> {
            studying.drop();
            // Put back where it was: no new picture comes that would ask.
            if (now.isEmpty()) settle.begin();
        });
        session.carried().addListener((which, before, now) -> fill());
        session.compared().addListener((which, before, now) -> drawRose());
    }

    ObservableValue<String> answer() {
        return answer.getReadOnlyProperty();
    }

    /** What to carry and why. */
    ObservableValue<String> advice() {
        return advice.getReadOnlyProperty();
    }

    /** The study last answered; null before the first. */
    ReadOnlyObjectProperty<ReachAnswer> found() {
        return found.getReadOnlyProperty();
    }

    private Node settings() {
        from.setMaxWidth(Double.MAX_VALUE);
        from.setOnAction(chosen -> {
            if (!isFilling && from.getValue() != null) new PlaceVerbs(session).standAt(from.getValue());
        });
        quality.setMaxWidth(Double.MAX_VALUE);
        Labels.told(quality);
        Labels.told(from);
        quality.setItems(FXCollections.observableArrayList(CopyQuality.values()));
        quality.setConverter(new StringConverter<>() {
            @Override
            public String toString(CopyQuality chosen) {
                return chosen == null ? "" : chosen.word() + ": " + chosen.meaning();
            }

            @Override
            public CopyQuality fromString(String words) {
                return quality.getValue();
            }
        });
        quality.setOnAction(
                chosen -> set("quality", PlanText.quoted(quality.getValue().word())));
        odds.setBlockIncrement(0.05);
        odds.setMajorTickUnit(0.1);
        odds.valueProperty()
                .addListener((value, before, now) ->
                        oddsWords.setText(Shares.wanted(Math.round(100 * now.doubleValue()) / 100.0)));
        odds.valueChangingProperty().addListener((changing, was, is) -> {
            if (!is) setOdds();
        });
        odds.setOnKeyReleased(key -> setOdds());
        odds.setOnMouseReleased(mouse -> setOdds());
        oddsWords.setMinWidth(46);
        HBox oddsLine = new HBox(8, odds, oddsWords);
        oddsLine.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(odds, Priority.ALWAYS);
        return new FormGrid().with("from", from).over("copy is", quality).with("wanted odds", oddsLine);
    }

    private void set(String key, String value) {
        if (!isFilling) session.edit("copy wanted", plan -> PlanText.withValue(plan, "target", key, value));
    }

    /** Another plan: nothing of the one before may stand under its title. */
    private void forget() {
        studying.drop();
        composed = null;
        found.set(null);
        advice.set("reckoning\u2026");
        composing.drop();
        laying.drop();
        lines.showBlocks(List.of());
        rose.clear();
    }

    private void setOdds() {
        if (isFilling || session.scene().get() == null) return;
        double wanted = Math.round(odds.getValue() * 100) / 100.0;
        if (Math.abs(wanted - session.scene().get().plan().channel().wish().odds()) < 1e-9) return;
        set("odds", PlanText.number(wanted));
    }

    private void show(Scene scene) {
        isFilling = true;
        List<String> names = scene.plan().places().positions().stream()
                .map(Places.PositionEntry::name)
                .toList();
        if (!from.getItems().equals(names)) from.setItems(FXCollections.observableArrayList(names));
        from.setValue(standName(scene).orElse(null));
        from.setPromptText("the middle of the area");
        quality.setValue(scene.plan().channel().wish().quality());
        odds.setValue(scene.plan().channel().wish().odds());
        oddsWords.setText(Shares.wanted(scene.plan().channel().wish().odds()));
        isFilling = false;
        answer.set("reckoning\u2026");
        if (!live.isUnderway().get()) settle.begin();
    }

    private static Optional<String> standName(Scene scene) {
        return scene.plan()
                .questions()
                .reach()
                .from()
                .or(() -> scene.plan().places().positions().stream()
                        .filter(entry -> entry.at().equals(scene.middle()))
                        .map(Places.PositionEntry::name)
                        .findFirst());
    }

    private void study() {
        Scene scene = session.scene().get();
        boolean isFollowed = live.followsTo(scene);
        ReachAnswer known = found.get();
        if (scene == null
                || known != null && known.scene() == scene && (known.area().isPresent() || !isFollowed)) return;
        LiveReach.Losses cells = live.losses().get();
        studying.ask(
                progress -> {
                    ReachComposer first = composed(ReachStudy.run(scene, false, progress), cells);
                    if (!isFollowed) return first;
                    studying.partial(progress, first, this::take);
                    return ReachComposer.of(ReachStudy.run(scene, true, progress));
                },
                this::take,
                wrong -> {
                    answer.set("no answer");
                    session.tell(wrong);
                });
    }

    private void take(ReachComposer fresh) {
        composed = fresh;
        found.set(fresh.answer());
        fresh.answer().area().ifPresent(area -> live.takeOver(fresh.answer().scene(), area.losses()));
        fill();
    }

    private void fill() {
        Loadout carried = session.carried().get();
        if (composed == null || carried == null) return;
        advice.set(composed.advice());
        drawRose();
        for (ReachComposer.Row row : composed.rows())
            if (row.name().equals(carried.name())) answer.set(row.name() + ": " + composed.line(row));
        ReachComposer shown = composed;
        composing.ask(
                progress -> blocks(shown, carried.name()),
                blocks -> laying.begin(lines.stepsOf(blocks)),
                session::tell);
    }

    /** All that is told of a loadout, put into words away from the screen thread. */
    private static List<Block> blocks(ReachComposer composed, String carried) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(composed.brief().marking(row -> row.name().equals(carried)));
        for (ReachComposer.Row row : composed.rows()) if (row.name().equals(carried)) blocks.add(composed.verdict(row));
        ReachAnswer answer = composed.answer();
        blocks.addAll(PlacesComposer.of(answer).brief());
        blocks.addAll(new OneWayComposer(answer).brief());
        blocks.addAll(ModelsComposer.brief(answer));
        blocks.addAll(
                StationsComposer.of(answer.stations(), answer.scene().plan()).brief());
        blocks.addAll(RoutesComposer.of(answer).brief());
        blocks.addAll(ChannelsComposer.of(answer).brief());
        return blocks;
    }

    /** The loadout looked at and the one it is held against; more would be a tangle at this size. */
    private void drawRose() {
        if (composed == null
                || session.carried().get() == null
                || session.compared().get() == null) return;
        List<String> names =
                composed.rows().stream().map(ReachComposer.Row::name).toList();
        List<Integer> which = Stream.of(
                        session.compared().get(), session.carried().get())
                .map(loadout -> names.indexOf(loadout.name()))
                .filter(number -> number >= 0)
                .distinct()
                .toList();
        ReachComposer shown = composed;
        if (!which.isEmpty())
            rose.show(() -> shown.rose(which).sized(ROSE_RADIUS_PX).beside(), FIGURE_PX);
    }
}
