package handreach.study;

import handreach.walk.SilentCalls;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether calls without an answer stand in the logs of the walks: what the plan says, and what the prediction would lead to expect.
 *
 * @param said what the plan says
 * @param calls how many were expected and found
 */
public record SilentLogging(Said said, SilentCalls calls) {
    /** What the plan says of its logs together: one of which nothing is known leaves all in doubt, one without them spoils all. */
    public enum Said {
        LOGGED,
        LEFT_OUT,
        UNKNOWN;

        static Said of(List<Optional<Boolean>> walks) {
            if (walks.contains(Optional.of(false))) return LEFT_OUT;
            return walks.contains(Optional.<Boolean>empty()) ? UNKNOWN : LOGGED;
        }
    }

    /** Why nothing may be learned from these logs; empty where it may. */
    public Optional<String> refusal() {
        return switch (said) {
            case LOGGED -> Optional.empty();
            case LEFT_OUT ->
                Optional.of(
                        "The plan says that calls without an answer were not logged (silent_calls_logged = false): such a log"
                                + " looks like a better site, so nothing is learned from it.");
            case UNKNOWN ->
                calls.isTooFew()
                        ? Optional.of(
                                counted()
                                        + ", fewer than chance leaves. Were calls without an answer logged? If they were, set"
                                        + " silent_calls_logged = true under [[walk]]; until then nothing is learned from this.")
                        : Optional.empty();
        };
    }

    /** What is doubtful though the logs are learned from; empty where nothing is. */
    public Optional<String> doubt() {
        if (refusal().isPresent()) return Optional.empty();
        if (said == Said.UNKNOWN)
            return Optional.of(
                    "Were calls without an answer logged? The plan does not say. The doubt of what is learned covers seven"
                            + " of ten missing; set silent_calls_logged = true or false under [[walk]].");
        return calls.isTooFew()
                ? Optional.of(counted()
                        + ", fewer than chance leaves. Either the site is better than predicted, or calls without an"
                        + " answer are missing though the plan says that they were logged.")
                : Optional.empty();
    }

    private String counted() {
        return String.format(
                Locale.ROOT,
                "The log holds %.0f calls without an answer where %.0f were predicted, counted as independent reports",
                calls.found(),
                calls.expected());
    }
}
