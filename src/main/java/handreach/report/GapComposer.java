package handreach.report;

import handreach.geodesy.Compass;
import handreach.study.GapAnswer;
import handreach.study.GapStudy;
import handreach.units.Decibels;
import handreach.units.Lengths;
import handreach.units.Shares;

/** What would close the gap of a path, in words. */
public final class GapComposer {
    private final GapAnswer answer;
    private final Lengths lengths;
    private final String near;
    private final String far;

    /** The ends are called by these words. */
    public GapComposer(GapAnswer answer, String near, String far) {
        this.answer = answer;
        this.lengths = answer.scene().plan().header().lengths();
        this.near = near;
        this.far = far;
    }

    /** {@code 21.8 dB are lacking for the wanted 80 %. What would help:}. */
    public String headline() {
        String wanted = Shares.wanted(answer.scene().plan().channel().wish().odds());
        if (answer.lackingDb() <= 0)
            return "Reaches the wanted " + wanted + " with " + Decibels.text(-answer.lackingDb()) + " to spare.";
        return Decibels.text(answer.lackingDb()) + " are lacking for the wanted " + wanted + ". "
                + (answer.options().isEmpty()
                        ? "No other loadout of the plan, no antenna " + lengths.heightText(GapStudy.UP_M)
                                + " higher and no " + lengths.text(GapStudy.ASIDE_M) + " aside would help."
                        : "What would help:");
    }

    /** {@code antenna of creek crew 3 m higher: 9.0 dB still lacking}. */
    public String words(GapAnswer.Option option) {
        String end = option.isNear() ? near : far;
        String left = option.lackingDb() <= 0
                ? "closes it, " + Decibels.text(-option.lackingDb()) + " to spare"
                : Decibels.text(option.lackingDb()) + " still lacking";
        return what(option, end) + ": " + left;
    }

    private String what(GapAnswer.Option option, String end) {
        return switch (option.remedy()) {
            case LOADOUT -> "\"" + (option.isNear() ? option.near() : option.far()).name() + "\" at " + end;
            case UP -> "antenna of " + end + " " + lengths.heightText(GapStudy.UP_M) + " higher";
            case ASIDE -> end + " " + lengths.text(GapStudy.ASIDE_M) + " to the " + Compass.word(option.asideDeg());
        };
    }
}
