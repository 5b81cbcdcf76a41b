package handreach.desktop;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;

/**
 * Parts of a panel that are off the screen for a while and come back one by one: the looks of all of it, worked out at once, would hold
 * up a picture. An empty place of the same size keeps the room of each; a part whose place is gone meanwhile is no longer wanted.
 */
final class Aside {
    /** A control or two: the first of a kind takes ten times as long as the next. */
    private static final int MOST_NODES = 8;

    private Aside() {}

    /** A pane that does not count on what stands in it at which place. */
    interface Divided {}

    private static final class Place extends Region {}

    /** Takes out what is in the panel; {@code before} is what was taken out of it the last time. */
    static List<Part> of(Node panel, List<Part> before) {
        List<Part> away = new ArrayList<>();
        take(panel, away);
        // What was taken out before and never came back comes last.
        before.stream().filter(part -> !part.isBack).forEach(away::add);
        return away;
    }

    private static void take(Node node, List<Part> back) {
        if (node instanceof ScrollPane scroll && scroll.getContent() != null) take(scroll.getContent(), back);
        if (!(node instanceof Pane pane)) return;
        for (Node child : List.copyOf(pane.getChildren())) {
            boolean isLarge = count(child) > MOST_NODES;
            if (isLarge && isOpen(child) || pane instanceof BorderPane) take(child, back);
            else if (!(child instanceof Place)) back.add(new Part(pane, child));
        }
    }

    /** Whether nobody but the toolkit counts on what stands in it. */
    private static boolean isOpen(Node node) {
        return node instanceof ScrollPane
                || node instanceof Divided
                || node instanceof Pane && node.getClass().getName().startsWith("javafx.");
    }

    /** A part off the screen; run, it comes back with its looks worked out, and run again it stays. */
    static final class Part implements Runnable {
        private final Pane pane;
        private final Node node;
        private final Place place = new Place();
        private boolean isBack;

        private Part(Pane pane, Node node) {
            this.pane = pane;
            this.node = node;
            double widthPx = node.getLayoutBounds().getWidth();
            double heightPx = node.getLayoutBounds().getHeight();
            place.setMinSize(0, heightPx);
            place.setPrefSize(widthPx, heightPx);
            place.setVisible(false);
            place.setManaged(node.isManaged());
            // How the pane lays it out stands there.
            place.getProperties().putAll(node.getProperties());
            pane.getChildren().set(pane.getChildren().indexOf(node), place);
        }

        @Override
        public void run() {
            int at = isBack ? -1 : pane.getChildren().indexOf(place);
            isBack = true;
            if (at < 0) return;
            if (node.getParent() == null) pane.getChildren().set(at, node);
            else pane.getChildren().remove(at);
            node.applyCss();
        }
    }

    private static int count(Node node) {
        int count = 1;
        if (node instanceof ScrollPane scroll && scroll.getContent() != null) count += count(scroll.getContent());
        else if (node instanceof Parent parent)
            for (Node child : parent.getChildrenUnmodifiable()) count += count(child);
        return count;
    }
}
