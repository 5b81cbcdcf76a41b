package handreach.terrain;

/** A tile as its header describes it, before it is seated among the others. */
record TileDraft(TileSummary summary, GridFit fit, PostSource source) {}
