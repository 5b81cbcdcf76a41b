package handreach.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import handreach.plan.CalibrationFile;
import handreach.plan.Heading;
import handreach.reach.SiteCalibration;
import java.util.Optional;

/** What walks have taught, as every answer's JSON says it. */
public final class CalibrationJson {
    private static final String KEY = "calibration";

    private CalibrationJson() {}

    /** Puts it under {@code calibration}: null where the plan names none. */
    static void put(ObjectNode node, Optional<CalibrationFile> learned, Optional<Heading> heading) {
        node.set(KEY, tree(learned, heading));
    }

    /** The value itself. */
    static JsonNode tree(Optional<CalibrationFile> learned, Optional<Heading> heading) {
        if (learned.isEmpty()) return NullNode.getInstance();
        SiteCalibration site = learned.get().site();
        ObjectNode entry = JsonNodeFactory.instance.objectNode();
        entry.put("sentence", learned.get().words());
        entry.put("source", site.origin().source());
        entry.put("day", site.origin().date().toString());
        entry.put("independent_reports", site.origin().observations());
        entry.put("bias_db", site.bias().lossDb());
        entry.put("bias_uncertainty_db", site.bias().standardUncertaintyDb());
        entry.put("spread_db", site.spreadDb());
        entry.put("latitude", site.area().middle().latitudeDeg());
        entry.put("longitude", site.area().middle().longitudeDeg());
        heading.ifPresent(
                how -> entry.put("place", how.placeForm().format(site.area().middle())));
        entry.put("radius_m", site.area().radiusM());
        return entry;
    }
}
