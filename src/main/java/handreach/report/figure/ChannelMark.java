package handreach.report.figure;

/** A channel to be marked on an axis of frequency: its name and its frequency, MHz. */
public record ChannelMark(String name, double mhz) {}
