package handreach.desktop;

/** A mark of the map, drawn also as a sample beside its meaning. */
@FunctionalInterface
interface MapMark {
    void draw(MapPen pen, double x, double y);
}
