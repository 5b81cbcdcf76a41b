package handreach.propagation;

/** An intermediate value of a model, for those who want to check it against the page: symbol, value, unit. */
public record Step(String symbol, double value, String unit) {}
