package handreach.terrain;

/** A tile as its header describes it, before it is seated among the others. */
record TileHeader(TileSummary summary, GridFit fit, PostSource source) {}
