package handreach.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.geodesy.Position;
import handreach.plan.CalibrationFile;
import handreach.plan.PlanHeader;
import handreach.reach.SiteCalibration;
import java.util.Optional;

/** What walks have taught, as every answer's JSON says it. */
record CalibrationJson(
        String sentence,
        String source,
        String day,
        int independentReports,
        double biasDb,
        double biasUncertaintyDb,
        double spreadDb,
        double latitude,
        double longitude,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) Optional<String> place,
        double radiusM) {
    private static final String KEY = "calibration";

    /** The calibration of a plan that names one; its place written as the plan writes places, where the plan is known. */
    static Optional<CalibrationJson> of(Optional<CalibrationFile> learned, Optional<PlanHeader> header) {
        return learned.map(file -> of(file, header));
    }

    private static CalibrationJson of(CalibrationFile file, Optional<PlanHeader> header) {
        SiteCalibration site = file.site();
        Position middle = site.area().middle();
        return new CalibrationJson(
                file.words(),
                site.origin().source(),
                site.origin().date().toString(),
                site.origin().observations(),
                site.bias().lossDb(),
                site.bias().standardUncertaintyDb(),
                site.spreadDb(),
                middle.latitudeDeg(),
                middle.longitudeDeg(),
                header.map(how -> how.placeForm().format(middle)),
                site.area().radiusM());
    }

    /** Puts it under {@code calibration}: null where the plan names none. */
    static void put(ObjectNode node, Optional<CalibrationFile> learned, Optional<PlanHeader> header) {
        node.set(KEY, tree(learned, header));
    }

    /** The value itself; null where the plan names none. */
    static JsonNode tree(Optional<CalibrationFile> learned, Optional<PlanHeader> header) {
        return JsonNodeFactory.instance.pojoNode(of(learned, header));
    }
}
