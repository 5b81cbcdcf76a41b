package handreach.plan;

import handreach.geodesy.PlaceForm;
import handreach.units.Lengths;

/** What the plan is called and how its answers are written: title, note, form of places, metric or imperial lengths. */
public record Heading(String title, String note, PlaceForm placeForm, Lengths lengths) {}
