package handreach.desktop;

import handreach.geodesy.Position;
import handreach.report.AtlasPlaceComposer;
import handreach.report.AtlasSight;
import java.util.Optional;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;

/** The figures of a place that was clicked while an atlas lies on the map, and the way to stand there. */
final class AtlasPane extends ScrollPane {
    private final Session session;
    private final BlockView view;
    private final Worker.InPieces laying;
    private final Button stand = new Button("Stand here");
    private Optional<Position> shown = Optional.empty();

    AtlasPane(Session session) {
        this.session = session;
        this.view = new BlockView(session, 900);
        this.laying = session.worker().inPieces();
        stand.setId("atlas-stand");
        PlaceVerbs places = new PlaceVerbs(session);
        stand.setOnAction(pressed -> shown.ifPresent(places::standHere));
        VBox all = new VBox(10, view, stand);
        all.setPadding(new Insets(10, 14, 12, 14));
        setId("atlas-place");
        setContent(all);
        setFitToWidth(true);
    }

    /** Shows what the atlas says of a place. */
    void show(AtlasSight atlas, Position place) {
        AtlasPlaceComposer words =
                new AtlasPlaceComposer(atlas, session.scene().get().plan().header());
        shown = words.position(place);
        stand.setVisible(shown.isPresent());
        laying.begin(view.steps(words.sections(place)));
    }

    /** The position whose figures are shown. */
    Optional<Position> shown() {
        return shown;
    }
}
