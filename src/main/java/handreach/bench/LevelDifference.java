package handreach.bench;

import handreach.uncertainty.Estimate;
import handreach.uncertainty.UncertaintyPart;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One antenna less another.
 *
 * @param method how they were compared
 * @param db the difference
 * @param estimate the same with its doubt, where there is any knowledge of scatter
 * @param parts where the doubt comes from
 * @param detection what could have been shown
 * @param odds odds of such a difference by chance, where there is any knowledge of scatter
 * @param judged whether trials or declared doubts are enough for a verdict
 * @param remarks what should be known about this comparison, in plain words
 */
record LevelDifference(
        ComparisonMethod method,
        double db,
        Optional<Estimate> estimate,
        List<UncertaintyPart> parts,
        Optional<DetectionLimit> detection,
        OptionalDouble odds,
        boolean judged,
        List<String> remarks) {}
