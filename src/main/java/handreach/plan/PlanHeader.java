package handreach.plan;

import handreach.geodesy.PlaceForm;
import handreach.input.Range;
import handreach.units.Bearings;
import handreach.units.Lengths;

/** What the plan is called and how its answers are written: title, note, form of places, lengths, bearings. */
public record PlanHeader(String title, String note, PlaceForm placeForm, Lengths lengths, Bearings bearings) {
    /** Where no plan says it. */
    public static final PlanHeader NONE = new PlanHeader("", "", PlaceForm.DECIMAL, Lengths.METRIC, Bearings.TRUE);

    /** From true to magnetic north, positive east. */
    public static final Range DECLINATION = new Range(
            "declination_deg",
            -90,
            90,
            "degrees",
            "East is positive. Take it from a current map or chart of the place.");
}
