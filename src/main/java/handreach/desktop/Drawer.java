package handreach.desktop;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.Pos;
import javafx.scene.Cursor;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;

/** A sheet drawn out below the map for what needs width: a path, the bench, the plan as text. One thing at a time. */
final class Drawer extends BorderPane {
    private static final double USUAL_SHARE = 0.5;
    /** What the ground keeps at least. */
    private static final double GROUND_PX = 236;

    private static final double LEAST_PX = 150;

    private final Label title = new Label();
    private final Button taller = new Button();
    private final StackPane contents = new StackPane();
    private final Set<Node> kept = new HashSet<>();
    /** What is aside of what is in or was in; what is back already stays as it is. */
    private final Map<Node, List<Aside.Part>> parts = new HashMap<>();

    private Optional<Node> shown = Optional.empty();
    /** Has the keys once the drawer is away; the toolkit would give them to whatever stands next. */
    private Optional<Node> heir = Optional.empty();

    private Runnable farewell = () -> {};
    private double share = USUAL_SHARE;
    private double roomPx = 800;

    Drawer() {
        getStyleClass().add("drawer");
        setId("drawer");
        title.getStyleClass().add("drawer-title");
        Button away = new Button("Put away");
        away.setId("drawer-away");
        away.getStyleClass().add("link");
        away.setOnAction(pressed -> putAway());
        taller.setId("drawer-taller");
        taller.getStyleClass().add("link");
        taller.setOnAction(pressed -> stretch(share < tallest() ? tallest() : USUAL_SHARE));
        Region between = new Region();
        HBox.setHgrow(between, Priority.ALWAYS);
        HBox head = new HBox(12, title, between, taller, away);
        head.setAlignment(Pos.CENTER_LEFT);
        head.getStyleClass().add("drawer-head");
        head.setCursor(Cursor.V_RESIZE);
        head.setOnMouseDragged(drag -> stretch((localToScene(0, getHeight()).getY() - drag.getSceneY()) / roomPx));
        setTop(head);
        setCenter(contents);
        stretch(USUAL_SHARE);
        putAway();
    }

    /** How much height there is for map and drawer together. */
    void fitInto(double heightPx) {
        roomPx = Math.max(2 * LEAST_PX, heightPx);
        stretch(share);
    }

    private void stretch(double wanted) {
        share = Math.max(LEAST_PX / roomPx, wanted);
        taller.setText(share < tallest() ? "Taller" : "Lower");
        double heightPx = Math.min(share, tallest()) * roomPx;
        setPrefHeight(heightPx);
        setMinHeight(heightPx);
    }

    private double tallest() {
        return Math.max(LEAST_PX, roomPx - GROUND_PX) / roomPx;
    }

    void show(String words, Node content) {
        show(words, content, () -> {});
    }

    /** Draws out something that wants to know when it is put away or makes room for something else. */
    void show(String words, Node content, Runnable whenGone) {
        if (!shows(content)) {
            takeLeave();
            putBack(content);
        }
        farewell = whenGone;
        title.setText(words);
        shown.filter(before -> before != content).ifPresent(this::takeOut);
        if (!contents.getChildren().contains(content)) contents.getChildren().add(content);
        shown = Optional.of(content);
        content.setVisible(true);
        content.setManaged(true);
        setVisible(true);
        setManaged(true);
    }

    /**
     * Puts something in to stay, out of sight until it is shown, so that looks and layout are worked out before a hand waits for them:
     * what is left of that to do, piece by piece; nothing when it is in already.
     */
    Optional<List<Runnable>> keep(Region content) {
        if (!kept.add(content)) return Optional.empty();
        if (shows(content)) return Optional.of(List.of());
        content.setVisible(false);
        content.setManaged(false);
        List<Runnable> steps = new ArrayList<>(takeOutOf(content));
        contents.getChildren().add(content);
        steps.add(() -> layOutUnseen(content));
        return Optional.of(steps);
    }

    private void layOutUnseen(Region content) {
        if (shows(content) || content.getScene() == null) return;
        content.resize(Math.max(LEAST_PX, getParent().getLayoutBounds().getWidth()), getPrefHeight());
        content.layout();
    }

    /**
     * Takes what is kept out of sight off the screen, which {@link #keep} puts back, and what stands in what is shown, unless a hand is
     * at work in it. Answers with what puts that back.
     */
    List<Runnable> setAside() {
        kept.removeIf(content -> !shows(content) && contents.getChildren().remove(content));
        if (shown.isEmpty() || getScene() == null || Labels.isWithin(getScene().getFocusOwner(), contents))
            return List.of();
        return List.copyOf(takeOutOf(shown.get()));
    }

    private List<Aside.Part> takeOutOf(Node content) {
        List<Aside.Part> away = Aside.of(content, parts.getOrDefault(content, List.of()));
        parts.put(content, away);
        return away;
    }

    /** Puts back what is still aside of it. */
    private void putBack(Node content) {
        Optional.ofNullable(parts.remove(content)).ifPresent(steps -> steps.forEach(Runnable::run));
    }

    private void takeOut(Node content) {
        content.setVisible(false);
        content.setManaged(false);
        if (!kept.contains(content)) contents.getChildren().remove(content);
    }

    /** Whether this very content is drawn out. */
    boolean shows(Node content) {
        return isVisible() && shown.filter(content::equals).isPresent();
    }

    void putAway() {
        boolean hadKeys = getScene() != null && Labels.isWithin(getScene().getFocusOwner(), this);
        shown.ifPresent(this::takeOut);
        shown = Optional.empty();
        setVisible(false);
        setManaged(false);
        takeLeave();
        if (hadKeys) heir.ifPresent(Node::requestFocus);
    }

    /** Who has the keys after a hand that was at work in it. */
    void leaveKeysTo(Node next) {
        heir = Optional.of(next);
    }

    private void takeLeave() {
        Runnable leaving = farewell;
        farewell = () -> {};
        leaving.run();
    }
}
