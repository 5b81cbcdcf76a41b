package handreach.plan;

import handreach.input.Keyword;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import java.util.List;
import java.util.stream.Stream;

/**
 * The loss model that a plan or an option asks for, or that the program is to choose by the ground.
 *
 * @param model the model; where it is to be chosen, the closed form until the ground has been looked at
 * @param isChosen whether the program chooses
 * @param isStated whether a plan or an option says so; else it is what a plan means that says nothing
 */
public record ModelWish(LossModel model, boolean isChosen, boolean isStated) {
    /** The program chooses. */
    private static final ModelWish AUTO = new ModelWish(LossModels.HANDHELD, true, true);
    /** Where a plan says nothing, the program chooses too. */
    static final ModelWish USUAL = new ModelWish(LossModels.HANDHELD, true, false);

    /** How plans and options name them. */
    public static final Keyword<ModelWish> KEYWORD = Keyword.of(all(), ModelWish::word);

    private static List<ModelWish> all() {
        return Stream.concat(LossModels.all().stream().map(ModelWish::named), Stream.of(AUTO))
                .toList();
    }

    /** This very model. */
    public static ModelWish named(LossModel model) {
        return new ModelWish(model, false, true);
    }

    /** The same with what was chosen, where the program chooses. */
    public ModelWish choosing(LossModel chosen) {
        return isChosen ? new ModelWish(chosen, true, isStated) : this;
    }

    /** As people write it. */
    public String word() {
        return isChosen ? "auto" : model.name();
    }
}
