package handreach.desktop;

import handreach.cartography.MapFrame;

/** Something drawn as lines and words over the map. */
interface MapOverlay {
    void draw(MapPen pen, MapFrame frame);
}
