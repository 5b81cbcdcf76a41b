package handreach.propagation;

import handreach.profile.Profile;

/** A way to compute the basic transmission loss over a profile. Pure: same input, same answer, any thread. */
public interface LossModel {
    /** Name as in {@code --model}. */
    String name();

    /** Loss from the antenna over the first sample to the one over the last. */
    PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions);
}
