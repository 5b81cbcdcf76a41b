package handreach.study;

import handreach.geodesy.GeodesicLine;
import handreach.propagation.PathConditions;
import handreach.propagation.Terminals;
import java.util.Optional;

/** The two ends of a path and what lies in the air between them; the line over ground where the places are known. */
public record PathLink(Terminals terminals, PathConditions conditions, Optional<GeodesicLine> line) {}
