package handreach.study;

/**
 * A block that could not be reckoned.
 *
 * @param block its number
 * @param words why, a sentence
 */
public record BlockFault(int block, String words) {}
