package handreach.relay;

/**
 * A cell and how one relay in it would do.
 *
 * @param cell index in the grid
 * @param service of all talks
 */
public record SiteScore(int cell, ServiceLevel service) {}
