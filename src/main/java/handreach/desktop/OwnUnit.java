package handreach.desktop;

import handreach.input.NumberText;
import handreach.plan.PlanText;

/** Numbers typed in the user's unit and written by the plan in its own, and back. */
final class OwnUnit {
    private OwnUnit() {}

    /** As the plan writes a number that was typed in a unit so many of the plan's long. */
    static String planned(String typed, double unit) {
        return unit == 1
                ? typed
                : PlanText.number(Math.rint(NumberText.parse(typed).orElseThrow() * unit * 1e4) / 1e4);
    }

    /** To the third figure behind the point, so that what was typed comes back as it was typed. */
    static double shown(double planned, double unit) {
        return unit == 1 ? planned : Math.rint(planned / unit * 1000) / 1000;
    }
}
