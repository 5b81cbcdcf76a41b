package handreach.relay;

import java.util.List;

/**
 * Some relays chosen together.
 *
 * @param cells where, in the order they were taken
 * @param service of all talks with all of them
 * @param boundShare no choice of as many relays serves a larger share; true under the swept losses, at the median
 * @param ifOneFails how the talks do without each of them, in the same order
 */
public record RelayChoice(List<Integer> cells, ServiceLevel service, double boundShare, List<ServiceLevel> ifOneFails) {
    public RelayChoice {
        cells = List.copyOf(cells);
        ifOneFails = List.copyOf(ifOneFails);
    }
}
