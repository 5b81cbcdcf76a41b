package handreach.desktop;

import java.util.function.Consumer;
import javafx.scene.control.Menu;
import javafx.scene.control.SeparatorMenuItem;

/** The way to keys, guide, cautions and what the program is. */
final class HelpMenu extends Menu {
    HelpMenu(Consumer<HelpPane.Topic> show, Runnable firstSteps) {
        super("_Help");
        getItems()
                .addAll(
                        MenuStrip.item("Mouse and keys", "F1", () -> show.accept(HelpPane.Topic.KEYS)),
                        MenuStrip.item("First steps", null, firstSteps),
                        MenuStrip.item("The guide", null, () -> show.accept(HelpPane.Topic.GUIDE)),
                        MenuStrip.item("Cautions", null, () -> show.accept(HelpPane.Topic.CAUTIONS)),
                        new SeparatorMenuItem(),
                        MenuStrip.item("About Handreach", null, () -> show.accept(HelpPane.Topic.ABOUT)),
                        MenuStrip.item("Licences of what is in it", null, () -> show.accept(HelpPane.Topic.NOTICES)));
    }
}
