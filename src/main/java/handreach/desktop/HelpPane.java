package handreach.desktop;

import handreach.report.Program;
import handreach.report.page.Block;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.report.page.Paragraph;
import handreach.report.page.Subheading;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Insets;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;

/** Keys, cautions, the guide and what the program is made of, without a network. */
final class HelpPane extends BorderPane {
    private static final double WORDS_PX = 900;

    private final Session session;
    private final ListView<Topic> topics = new ListView<>();
    private final ScrollPane sheet = new ScrollPane();
    private final BlockView page;
    private final Worker.InPieces laying;

    /** What help there is, in the order of the list. */
    enum Topic {
        KEYS("Mouse and keys", "window"),
        CAUTIONS("Cautions", ""),
        GUIDE("The guide", "guide"),
        WINDOW("The window", "window"),
        PLAN("The plan file", "plan-file"),
        TILES("Elevation tiles", "tiles"),
        BENCH("The bench", "bench"),
        ANTENNAS("Antennas and bodies", "antennas"),
        PROPAGATION("Loss models", "propagation"),
        RELAY("Relays", "relay"),
        WALK("Walks", "walk"),
        NUMBERS("What each number means", "definitions"),
        LIMITS("Limits", "limits"),
        TROUBLE("Troubleshooting", "troubleshooting"),
        ABOUT("About Handreach", ""),
        NOTICES("Licences of what is in it", "third-party-notices");

        private final String words;
        private final String file;

        Topic(String words, String file) {
            this.words = words;
            this.file = file;
        }

        String words() {
            return words;
        }
    }

    HelpPane(Session session) {
        this.session = session;
        this.page = new BlockView(session, WORDS_PX);
        this.laying = session.worker().inPieces();
        setId("help");
        topics.getItems().setAll(Topic.values());
        topics.setId("help-topics");
        topics.setAccessibleText("Topics of help");
        topics.setPrefWidth(210);
        topics.setCellFactory(list -> new ListCell<>() {
            @Override
            protected void updateItem(Topic topic, boolean isEmpty) {
                super.updateItem(topic, isEmpty);
                setText(isEmpty ? "" : topic.words());
            }
        });
        topics.getSelectionModel().selectedItemProperty().addListener((chosen, before, now) -> {
            if (now != null) fill(now);
        });
        page.setId("help-page");
        page.setPadding(new Insets(8, 20, 18, 18));
        sheet.setContent(page);
        sheet.setFitToWidth(true);
        sheet.getStyleClass().add("drawer-scroll");
        setLeft(topics);
        setCenter(sheet);
    }

    void show(Topic topic) {
        topics.getSelectionModel().select(topic);
        topics.scrollTo(topic);
        topics.requestFocus();
    }

    private void fill(Topic topic) {
        laying.drop();
        page.getChildren().clear();
        session.worker().inOrder(() -> blocks(topic), this::take, session::tell);
    }

    private void take(List<Block> blocks) {
        sheet.setVvalue(0);
        laying.begin(page.stepsOf(blocks));
    }

    private static List<Block> blocks(Topic topic) {
        return switch (topic) {
            case CAUTIONS -> cautions();
            case ABOUT -> about();
            case KEYS -> GuidePage.section(topic.file, topic.words()).orElseGet(HelpPane::missing);
            default -> GuidePage.of(topic.file).orElseGet(HelpPane::missing);
        };
    }

    private static List<Block> missing() {
        return List.of(Paragraph.of("This page does not travel with this build: it stands in the folder docs."));
    }

    private static List<Block> cautions() {
        List<Block> blocks = new ArrayList<>();
        for (Caution caution : Cautions.RAISING) {
            blocks.add(new Subheading(Cautions.title(caution)));
            blocks.add(Paragraph.of(Cautions.full(caution)));
        }
        return blocks;
    }

    private static List<Block> about() {
        return List.of(
                new Subheading("Handreach " + Program.version().orElse("(not built as a jar)")),
                Paragraph.of("From the bench to the walk: what handheld antennas are worth on your own ground."),
                Paragraph.of("Java " + System.getProperty("java.version") + " by " + System.getProperty("java.vendor")
                        + ", JavaFX " + System.getProperty("javafx.runtime.version") + ", "
                        + System.getProperty("os.name") + " " + System.getProperty("os.arch") + "."),
                Paragraph.of(
                        "Licence: Apache License 2.0, without warranty of any kind; its text lies beside the program"
                                + " as LICENSE. What else is in it has licences of its own: the next page of this list."),
                Paragraph.of("Nothing is sent or fetched: plans, tiles and answers stay on this computer."));
    }
}
