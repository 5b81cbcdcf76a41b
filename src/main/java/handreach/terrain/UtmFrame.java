package handreach.terrain;

import handreach.geodesy.Position;
import handreach.geodesy.UtmZone;

/** UTM on WGS 84 or a datum that lies within two metres of it; needs no projection library. */
record UtmFrame(UtmZone zone) implements Frame {
    @Override
    public void toPlane(double latitudeDeg, double longitudeDeg, double[] xy) {
        zone.project(latitudeDeg, longitudeDeg, xy);
    }

    @Override
    public Position toPosition(double x, double y) {
        return zone.position(x, y);
    }

    @Override
    public String key() {
        return "utm " + zone.number() + (zone.isSouth() ? "S" : "N");
    }
}
