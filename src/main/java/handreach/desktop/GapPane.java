package handreach.desktop;

import handreach.report.GapComposer;
import handreach.study.GapAnswer;
import handreach.study.GapStudy;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.layout.VBox;

/** What would close the gap of the path that is shown, each a click: the path as it would be then. */
final class GapPane extends VBox {
    /** So many leave the ledger in view. */
    private static final int MOST = 3;

    private final Session session;
    private final Worker.LatestOnly trying;
    private Runnable relay = () -> {};

    GapPane(Session session) {
        super(1);
        this.session = session;
        this.trying = session.worker().latestOnly();
        setId("path-gap");
    }

    /** What asking for a relay does. */
    void onRelay(Runnable step) {
        relay = step;
    }

    void show(PathView view) {
        PathEnds ends = view.ends();
        trying.ask(
                progress -> GapStudy.run(
                        ends.scene(),
                        ends.from().at(),
                        ends.from().loadout(),
                        ends.to().at(),
                        ends.to().loadout(),
                        view.answer(),
                        progress),
                found -> fill(ends, found),
                session::tell);
    }

    void clear() {
        trying.drop();
        getChildren().clear();
    }

    private void fill(PathEnds ends, GapAnswer found) {
        getChildren().clear();
        GapComposer words =
                new GapComposer(found, ends.from().words(), ends.to().words());
        getChildren().add(Labels.line(words.headline(), "strong"));
        for (GapAnswer.Option option :
                found.options().subList(0, Math.min(MOST, found.options().size())))
            getChildren().add(link(words.words(option), () -> look(ends, option)));
        if (found.lackingDb() > 0) getChildren().add(link("Ask for a relay", relay));
    }

    private Button link(String words, Runnable verb) {
        Button link = Labels.link(words, verb);
        link.setId("path-gap-" + getChildren().size());
        link.setMinWidth(0);
        link.setWrapText(true);
        return link;
    }

    private void look(PathEnds ends, GapAnswer.Option option) {
        PulledPath.Given given = new PulledPath.Given(ends.scene(), option.answer(), option.near(), option.far());
        boolean hasMoved = option.remedy() == GapAnswer.Remedy.ASIDE;
        Optional<PulledPath> now = session.pulled().get();
        if (now.isEmpty()) return;
        PulledPath.End from = hasMoved && option.isNear()
                ? new PulledPath.End(option.from(), Optional.empty(), Optional.empty())
                : now.get().from();
        PulledPath.End to = hasMoved && !option.isNear()
                ? new PulledPath.End(option.to(), Optional.empty(), Optional.empty())
                : now.get().to();
        session.pulled().set(Optional.of(new PulledPath(from, to, true, Optional.of(given))));
    }
}
