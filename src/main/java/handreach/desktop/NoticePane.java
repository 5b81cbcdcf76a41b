package handreach.desktop;

import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Notices on a sheet at the upper edge of the map, the newest on top; each is put away by hand. */
final class NoticePane extends VBox {
    private static final int MOST_SHOWN = 2;

    private final Session session;

    NoticePane(Session session) {
        this.session = session;
        getStyleClass().add("notices");
        setPickOnBounds(false);
        setMaxHeight(Region.USE_PREF_SIZE);
        session.notices().addListener((ListChangeListener<Notice>) change -> show());
        // What was told before there was a place to show it.
        show();
    }

    private void show() {
        getChildren().clear();
        int shown = Math.min(MOST_SHOWN, session.notices().size());
        for (int i = 0; i < shown; i++)
            getChildren().add(sheet(session.notices().get(i)));
        int more = session.notices().size() - shown;
        if (more > 0) {
            Button rest = new Button(more + " more, put all away");
            rest.getStyleClass().add("link");
            rest.setOnAction(pressed -> session.notices().clear());
            getChildren().add(rest);
        }
    }

    private HBox sheet(Notice notice) {
        Label words = new Label(notice.text());
        words.setWrapText(true);
        words.setMinHeight(Region.USE_PREF_SIZE);
        HBox.setHgrow(words, Priority.ALWAYS);
        Button away = new Button("Put away");
        away.setMinWidth(Region.USE_PREF_SIZE);
        away.getStyleClass().add("link");
        away.setOnAction(pressed -> session.notices().remove(notice));
        HBox sheet = new HBox(12, words);
        for (Notice.Verb verb : notice.verbs()) {
            Button button = new Button(verb.words());
            button.setMinWidth(Region.USE_PREF_SIZE);
            button.getStyleClass().add("notice-verb");
            button.setOnAction(pressed -> {
                if (verb.isAnswer()) session.notices().remove(notice);
                verb.step().run();
            });
            sheet.getChildren().add(button);
        }
        sheet.getChildren().add(away);
        sheet.setAlignment(Pos.CENTER_LEFT);
        sheet.getStyleClass().addAll("notice", notice.isFault() ? "fault" : "remark");
        return sheet;
    }
}
