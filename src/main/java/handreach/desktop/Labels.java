package handreach.desktop;

import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;

/** Lines of words and the links between them, as the panels write them. */
final class Labels {
    private Labels() {}

    /** A line that wraps, in one of the style classes {@code plain}, {@code quiet}, {@code strong}, {@code caution}. */
    static Label line(String text, String styleClass) {
        Label label = new LineLabel(text);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        label.getStyleClass().add(styleClass);
        return label;
    }

    /** A few words that never wrap. */
    static Label cell(String text, String styleClass) {
        Label label = new Label(text);
        label.setMinWidth(Region.USE_PREF_SIZE);
        label.getStyleClass().add(styleClass);
        return label;
    }

    /** Tells the whole of what is chosen, where a narrow place cuts it. */
    static <T> void told(ComboBox<T> box) {
        Tooltip whole = new Tooltip();
        whole.textProperty()
                .bind(box.valueProperty().map(value -> box.getConverter().toString(value)));
        box.setTooltip(whole);
    }

    /** Takes no more room than the bar has, and lets that be as narrow as its place is. */
    static void fitInto(Region part, Region bar) {
        bar.setMinWidth(0);
        part.maxWidthProperty()
                .bind(Bindings.createDoubleBinding(
                        () -> Math.max(
                                0,
                                bar.getWidth()
                                        - bar.getInsets().getLeft()
                                        - bar.getInsets().getRight()),
                        bar.widthProperty(),
                        bar.insetsProperty()));
    }

    /** Words that do something when pressed. */
    static Button link(String text, Runnable verb) {
        Button link = new Button(text);
        link.setMnemonicParsing(false);
        link.setMinWidth(Region.USE_PREF_SIZE);
        link.getStyleClass().add("link");
        link.setOnAction(pressed -> verb.run());
        return link;
    }

    /** Whether a node, which may be none, is that one or stands in it. */
    static boolean isWithin(Node node, Node that) {
        for (Node each = node; each != null; each = each.getParent()) if (each == that) return true;
        return false;
    }
}
