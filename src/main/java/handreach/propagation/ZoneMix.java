package handreach.propagation;

import handreach.profile.Profile;
import handreach.profile.Zone;

/**
 * Share of sea and longest runs of land along a path. Borders between zones lie half-way between samples.
 *
 * @param seaShare ω, 0 to 1
 * @param longestLandKm d_tm, longest unbroken run over inland and coastal land
 * @param longestInlandKm d_lm, longest unbroken run over inland
 */
public record ZoneMix(double seaShare, double longestLandKm, double longestInlandKm) {
    /** Rec. ITU-R P.1812-6 sections 3.2 and 4.1. */
    public static ZoneMix of(Profile profile) {
        double sea = 0;
        double land = 0;
        double inland = 0;
        double longestLand = 0;
        double longestInland = 0;
        int last = profile.count() - 1;
        for (int i = 0; i <= last; i++) {
            double before = i == 0 ? 0 : (profile.distanceKm(i) - profile.distanceKm(i - 1)) / 2;
            double after = i == last ? 0 : (profile.distanceKm(i + 1) - profile.distanceKm(i)) / 2;
            Zone zone = profile.zone(i);
            if (zone == Zone.SEA) sea += before + after;
            land = zone == Zone.SEA ? 0 : land + before + after;
            inland = zone == Zone.INLAND ? inland + before + after : 0;
            longestLand = Math.max(longestLand, land);
            longestInland = Math.max(longestInland, inland);
        }
        return new ZoneMix(sea / profile.lengthKm(), longestLand, longestInland);
    }
}
