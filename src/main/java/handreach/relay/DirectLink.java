package handreach.relay;

import java.util.Optional;

/**
 * A talk without a relay.
 *
 * @param talk who with whom
 * @param path the path between them; empty where the ground is unknown
 * @param standing margin of the weaker direction over the spread; minus infinity where unknown
 * @param pessimisticStanding the same at the pessimistic end of the common doubt
 */
public record DirectLink(Conversation talk, Optional<HopPath> path, double standing, double pessimisticStanding) {}
