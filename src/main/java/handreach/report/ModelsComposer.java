package handreach.report;

import handreach.cartography.DifferenceMarks;
import handreach.propagation.LossModel;
import handreach.reach.ModelDifference;
import handreach.report.draw.LegendEntry;
import handreach.report.draw.Picture;
import handreach.report.page.Block;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.study.ReachAnswer;
import handreach.study.Scene;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where the march of a map and the closed form tell two stories of the same ground. */
public final class ModelsComposer {
    private final ModelDifference difference;
    private final Lengths lengths;

    private ModelsComposer(ModelDifference difference, Lengths lengths) {
        this.difference = difference;
        this.lengths = lengths;
    }

    /** Nothing where the map is no march. */
    static Optional<ModelsComposer> of(ReachAnswer answer) {
        Lengths lengths = answer.scene().plan().header().lengths();
        return answer.area()
                .flatMap(ReachAnswer.AreaAnswer::models)
                .map(difference -> new ModelsComposer(difference, lengths));
    }

    ModelDifference difference() {
        return difference;
    }

    String title() {
        return "Where full-wave and " + difference.other() + " differ";
    }

    Section section() {
        return Section.of(title(), Paragraph.of(sentence()))
                .answering("Where would the closed form have said something else?");
    }

    /** The same in short, for a narrow place; nothing where the map is no march. */
    public static List<Block> brief(ReachAnswer answer) {
        List<Block> blocks = new ArrayList<>();
        of(answer).ifPresent(words -> blocks.add(Paragraph.of(words.sentence())));
        return blocks;
    }

    /**
     * By which model a map is that goes with a hand, behind what else is told of it; nothing where there is no doubt.
     *
     * @param isFollowed whether a map by the march takes its place once the hand rests, if the program chose that
     */
    public static String seen(Scene scene, LossModel seen, boolean isFollowed) {
        if (seen.equals(scene.model())) return scene.isShortMarch() ? " By " + seen.name() + "." : "";
        String live = " Live by " + seen.name() + "; ";
        return scene.isShortMarch() && isFollowed
                ? live + scene.model().name() + " follows once the hand rests."
                : live + "the report uses " + scene.model().name() + ".";
    }

    /** How much ground, in one sentence for every face. */
    String sentence() {
        return "By more than " + felt() + " the two models differ on "
                + Shares.share(share(ModelDifference.Kind.MORE) + share(ModelDifference.Kind.LESS))
                + " of the known ground: on " + ground(ModelDifference.Kind.MORE) + " full-wave loses more than "
                + difference.other() + ", on " + ground(ModelDifference.Kind.LESS) + " less. "
                + Shares.share(share(ModelDifference.Kind.LOST)) + " is lost by both and not compared. "
                + "The antenna heights are those of the control; " + difference.other() + " is taken from a sweep.";
    }

    private String ground(ModelDifference.Kind kind) {
        return Shares.share(share(kind)) + " (" + lengths.area(difference.areaM2(kind)) + ")";
    }

    private double share(ModelDifference.Kind kind) {
        return difference.share(kind);
    }

    private static String felt() {
        return Decibels.number(ModelDifference.FELT_DB, 0) + " dB";
    }

    List<LegendEntry> key() {
        return List.of(
                Picture.leastLoadoutEntry(DifferenceMarks.LOST, "full-wave loses more by over " + felt()),
                Picture.leastLoadoutEntry(DifferenceMarks.BOUGHT, "full-wave loses less by over " + felt()),
                Picture.leastLoadoutEntry(DifferenceMarks.BOTH, "lost by both"));
    }

    /** What the raster of differences holds. */
    String layer() {
        return "loss by full-wave less loss by " + difference.other();
    }
}
