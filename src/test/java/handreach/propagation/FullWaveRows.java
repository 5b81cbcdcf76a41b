package handreach.propagation;

import handreach.profile.Profile;
import handreach.profile.Profiles;
import handreach.units.Frequency;
import handreach.units.Polarization;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reference rows of the field march, and the grounds it is tried on. */
public final class FullWaveRows {
    private FullWaveRows() {}

    /** Rows of a resource as maps from column to word; lines with # are notes. */
    public static List<Map<String, String>> read(String name) {
        try (InputStream in = FullWaveRows.class.getResourceAsStream(name)) {
            List<Map<String, String>> rows = new ArrayList<>();
            String[] columns = null;
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (line.isBlank() || line.startsWith("#")) continue;
                String[] words = line.trim().split(",");
                if (columns == null) {
                    columns = words;
                    continue;
                }
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < columns.length; i++) row.put(columns[i], words[i]);
                rows.add(row);
            }
            return rows;
        } catch (IOException e) {
            throw new IllegalStateException(name, e);
        }
    }

    public static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    public static PathConditions conditions(
            double mhz, Polarization polarization, double permittivity, double conductivity, double k) {
        return new PathConditions(
                new Frequency(mhz),
                polarization,
                new Ground(permittivity, conductivity),
                Atmosphere.ofFactor(k, 325),
                Climate.MEDIAN);
    }

    public static Polarization polarization(Map<String, String> row) {
        return row.get("polarization").equals("V") ? Polarization.VERTICAL : Polarization.HORIZONTAL;
    }

    /** Level ground at a height, evenly sampled. */
    public static Profile level(double lengthM, double stepM, double heightM) {
        int n = (int) Math.round(lengthM / stepM) + 1;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            d[i] = i * stepM / 1000;
            h[i] = heightM;
        }
        return Profiles.of(d, h);
    }

    /**
     * Ground that is level but for one valley (depth below 0) or ridge with even faces, 30 m between samples as nearly as the length
     * allows.
     */
    public static Profile faces(double slopeDeg, double heightM, double levelM) {
        double faceM = Math.abs(heightM) / Math.tan(Math.toRadians(slopeDeg));
        double lengthM = 2 * levelM + 2 * faceM;
        int n = (int) Math.round(lengthM / 30) + 1;
        double[] d = new double[n];
        double[] h = new double[n];
        for (int i = 0; i < n; i++) {
            double x = lengthM * i / (n - 1);
            d[i] = x / 1000;
            h[i] = heightM * Math.max(0, 1 - Math.abs(x - lengthM / 2) / faceM);
        }
        return Profiles.of(d, h);
    }

    /** One of the profiles of the yardstick, the 24 by their id and those of {@code steep/}. */
    public static Profile profile(String id) {
        List<Map<String, String>> rows = read("fullwave/" + id + ".csv");
        double[] d = new double[rows.size()];
        double[] h = new double[rows.size()];
        for (int i = 0; i < d.length; i++) {
            d[i] = number(rows.get(i), "distance_km");
            h[i] = number(rows.get(i), "height_m");
        }
        return Profiles.of(d, h);
    }
}
