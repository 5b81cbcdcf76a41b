package handreach.propagation;

import java.util.List;

/**
 * Loss of one path by one model.
 *
 * @param model name of the model as in {@code --model}
 * @param lossDb basic transmission loss between isotropic antennas, dB
 * @param freeSpaceDb free-space basic transmission loss, dB
 * @param parts parts that add up to the loss, free space first
 * @param steps intermediate values, in the order of the document
 * @param warnings what was outside its validity, one sentence each with range and document
 */
public record PathLoss(
        String model,
        double lossDb,
        double freeSpaceDb,
        List<LossPart> parts,
        List<Step> steps,
        List<String> warnings) {
    public PathLoss {
        if (!Double.isFinite(lossDb) || !Double.isFinite(freeSpaceDb))
            throw new IllegalArgumentException(model + " gave a loss that is not a finite number");
        parts = List.copyOf(parts);
        steps = List.copyOf(steps);
        warnings = List.copyOf(warnings);
    }

    /** Loss over free space, dB. */
    public double excessDb() {
        return lossDb - freeSpaceDb;
    }
}
