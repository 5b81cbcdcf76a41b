package handreach.report.figure;

/**
 * How two antennas compare.
 *
 * @param first index of the antenna of the row
 * @param second index of the antenna of the column
 * @param differenceDb row minus column, dB
 * @param isToldApart whether the session could tell them apart
 */
public record PairCell(int first, int second, double differenceDb, boolean isToldApart) {}
