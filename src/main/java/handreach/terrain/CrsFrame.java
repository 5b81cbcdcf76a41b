package handreach.terrain;

import handreach.geodesy.Position;
import handreach.input.InputFault;
import java.io.IOException;
import java.nio.file.Path;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.geotools.api.metadata.extent.Extent;
import org.geotools.api.metadata.extent.GeographicBoundingBox;
import org.geotools.api.metadata.extent.GeographicExtent;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.operation.CoordinateOperation;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.operation.AbstractCoordinateOperation;
import org.geotools.referencing.operation.BufferedCoordinateOperationFactory;

/**
 * Any other coordinate reference system, by the projection library. Loaded only when a tile needs it: its start is slow.
 *
 * <p>Where the system rests on an older datum, the library would take one shift for the whole of its realm; here the most accurate
 * published one that is meant for the tile's own region is taken. Shifts that need a grid file are not at hand, so positions on such
 * datums are good to about 5 to 10 m.
 */
final class CrsFrame implements Frame {
    /** Held, or its level would be forgotten: the library logs what it does not understand, whole stacks of it; here that is a fault. */
    private static final Logger LIBRARY = Logger.getLogger("org.geotools");

    static {
        LIBRARY.setLevel(Level.OFF);
        Logger.getGlobal().setLevel(Level.OFF);
    }

    private final String key;
    /** From WGS 84 to the older datum, latitude first; null where the plane does not need it. */
    private final MathTransform shift;

    private final MathTransform unshift;
    private final MathTransform toPlane;
    private final MathTransform toDegrees;

    private CrsFrame(String key, MathTransform shift, MathTransform toPlane) throws TransformException {
        this.key = key;
        this.shift = shift;
        this.unshift = shift == null ? null : shift.inverse();
        this.toPlane = toPlane;
        this.toDegrees = toPlane.inverse();
    }

    /** By its EPSG code, or by the parameters that the file spells out where the code is 0; near a point of the plane. */
    static CrsFrame of(Path file, int epsgCode, double x, double y) {
        String name = String.valueOf(file.getFileName());
        EpsgList.unpack(name);
        try {
            if (epsgCode > 0) return of(CRS.decode("EPSG:" + epsgCode, true), "EPSG:" + epsgCode, x, y);
            GeoTiffReader reader = new GeoTiffReader(file.toFile());
            try {
                CoordinateReferenceSystem crs = reader.getCoordinateReferenceSystem();
                return of(crs, String.valueOf(crs.getName().getCode()), x, y);
            } finally {
                reader.dispose();
            }
        } catch (FactoryException | TransformException | IOException | RuntimeException e) {
            throw notUnderstood(name, e);
        }
    }

    /** By the text that lies beside a grid. */
    static CrsFrame ofText(String name, String wkt, double x, double y) {
        for (String none : new String[] {"Infinity", "NaN"})
            if (wkt.contains(none))
                throw new InputFault(name, 0, "holds '" + none + "', where a number is expected. Fetch it again.");
        EpsgList.unpack(name);
        try {
            CoordinateReferenceSystem crs = CRS.parseWKT(wkt);
            return of(crs, String.valueOf(crs.getName().getCode()), x, y);
        } catch (FactoryException | TransformException | RuntimeException e) {
            throw notUnderstood(name, e);
        }
    }

    private static InputFault notUnderstood(String name, Exception e) {
        return new InputFault(
                name,
                0,
                "has a coordinate reference system that is not understood (" + TileFiles.reason(e)
                        + "). Warp it to EPSG:4326 with a GIS tool.");
    }

    private static CrsFrame of(CoordinateReferenceSystem crs, String key, double x, double y)
            throws FactoryException, TransformException {
        if (crs.getCoordinateSystem().getDimension() == 3)
            throw new FactoryException(
                    "it has three axes, so the heights count from the ellipsoid and not from the sea");
        if (CRS.getAxisOrder(crs) == CRS.AxisOrder.NORTH_EAST)
            throw new FactoryException("its first axis points north");
        CrsFrame usual = new CrsFrame(key, null, CRS.findMathTransform(DefaultGeographicCRS.WGS84, crs, true));
        CoordinateReferenceSystem base = crs instanceof ProjectedCRS projected ? projected.getBaseCRS() : crs;
        Integer code = base instanceof GeographicCRS ? CRS.lookupEpsgCode(base, false) : null;
        if (code == null || code == 4326) return usual;
        MathTransform regional = regionalShift(code, usual.toPosition(x, y));
        if (regional == null) return usual;
        return new CrsFrame(key, regional, CRS.findMathTransform(CRS.decode("EPSG:" + code, true), crs, true));
    }

    /** The most accurate shift whose region holds the place; of equally accurate ones that with the smallest region. */
    private static MathTransform regionalShift(int code, Position place) throws FactoryException {
        CoordinateOperation best = null;
        for (CoordinateOperation operation : new BufferedCoordinateOperationFactory()
                .findOperations(CRS.decode("EPSG:4326"), CRS.decode("EPSG:" + code))) {
            double regionDeg2 = regionDeg2(operation, place);
            if (Double.isNaN(regionDeg2) || operation.getMathTransform() == null) continue;
            if (best == null || isBetter(operation, best, place)) best = operation;
        }
        return best == null ? null : best.getMathTransform();
    }

    private static boolean isBetter(CoordinateOperation one, CoordinateOperation other, Position place) {
        int byAccuracy = Double.compare(accuracyM(one), accuracyM(other));
        return byAccuracy < 0 || (byAccuracy == 0 && regionDeg2(one, place) < regionDeg2(other, place));
    }

    private static double accuracyM(CoordinateOperation operation) {
        double accuracyM = operation instanceof AbstractCoordinateOperation known ? known.getAccuracy() : Double.NaN;
        return Double.isNaN(accuracyM) ? Double.MAX_VALUE : accuracyM;
    }

    /** Size of the operation's region; NaN if the place lies outside. */
    private static double regionDeg2(CoordinateOperation operation, Position place) {
        Extent extent = operation.getDomainOfValidity();
        if (extent == null) return Double.NaN;
        for (GeographicExtent part : extent.getGeographicElements())
            if (part instanceof GeographicBoundingBox box
                    && place.latitudeDeg() >= box.getSouthBoundLatitude()
                    && place.latitudeDeg() <= box.getNorthBoundLatitude()
                    && place.longitudeDeg() >= box.getWestBoundLongitude()
                    && place.longitudeDeg() <= box.getEastBoundLongitude())
                return (box.getNorthBoundLatitude() - box.getSouthBoundLatitude())
                        * (box.getEastBoundLongitude() - box.getWestBoundLongitude());
        return Double.NaN;
    }

    @Override
    public void toPlane(double latitudeDeg, double longitudeDeg, double[] xy) {
        if (shift == null) {
            xy[0] = longitudeDeg;
            xy[1] = latitudeDeg;
        } else {
            xy[0] = latitudeDeg;
            xy[1] = longitudeDeg;
            transform(shift, xy);
            swap(xy);
        }
        transform(toPlane, xy);
    }

    @Override
    public Position toPosition(double x, double y) {
        double[] xy = {x, y};
        transform(toDegrees, xy);
        if (shift != null) {
            swap(xy);
            transform(unshift, xy);
            swap(xy);
        }
        if (!(Math.abs(xy[0]) <= 360) || !(Math.abs(xy[1]) <= 90)) return NOWHERE;
        return new Position(xy[1], xy[0]);
    }

    private static void swap(double[] xy) {
        double first = xy[0];
        xy[0] = xy[1];
        xy[1] = first;
    }

    private static void transform(MathTransform how, double[] xy) {
        try {
            how.transform(xy, 0, xy, 0, 1);
        } catch (TransformException | RuntimeException e) {
            // the library also dies of telling how far off a place is; either way the place is not in the plane
            xy[0] = Double.NaN;
            xy[1] = Double.NaN;
        }
    }

    @Override
    public String key() {
        return key;
    }
}
