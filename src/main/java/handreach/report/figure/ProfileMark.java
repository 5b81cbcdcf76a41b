package handreach.report.figure;

/**
 * A place on a profile worth pointing out.
 *
 * @param sample index of the sample
 * @param label what it is, short
 * @param carriesString whether the stretched string from end to end rests on it
 */
public record ProfileMark(int sample, String label, boolean carriesString) {}
