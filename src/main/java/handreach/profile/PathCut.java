package handreach.profile;

import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.terrain.Cover;
import handreach.terrain.Elevation;
import handreach.terrain.LandCover;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The ground between two positions as a value, with all that is doubtful about it. A path with a gap has no profile. */
public final class PathCut {
    private final GeodesicLine line;
    private final Profile profile;
    private final List<VoidGap> gaps;
    private final List<String> warnings;

    private PathCut(GeodesicLine line, Profile profile, List<VoidGap> gaps, List<String> warnings) {
        this.line = line;
        this.profile = profile;
        this.gaps = List.copyOf(gaps);
        this.warnings = List.copyOf(warnings);
    }

    /**
     * Cuts the ground along the geodesic.
     *
     * @shape ground and two positions in, one cut out; O(length over spacing), pure
     * @unit profile in km and m
     * @valid ends 1 m to 1000 km apart, else {@link InputFault}; where any sample is void there is no profile, never a height of 0
     * @error heights as the tiles' posts, bilinear; sample positions within 0.2 mm
     * @source spacing of half a cell: common practice, no source
     */
    public static PathCut between(
            Elevation elevation, LandCover landCover, Position from, Position to, CutSettings settings) {
        GeodesicLine line = GeodesicLine.between(from, to);
        if (line.lengthM() < 1)
            throw new InputFault("path", 0, "both ends are the same place. Give two places at least 1 m apart.");
        if (line.lengthM() > 1_000_000)
            throw new InputFault(
                    "path",
                    0,
                    String.format(
                            Locale.ROOT,
                            "the ends are %.0f km apart, at most 1000 km are cut. Check the signs and order of the coordinates.",
                            line.lengthM() / 1000));
        PathSampler sampler = new PathSampler(elevation, landCover, settings);
        int count = sampler.cut(line);
        int bridged = elevation.countFilled(sampler.latitudeDeg(), sampler.longitudeDeg(), count);
        List<VoidGap> gaps = gaps(sampler);
        List<String> warnings = new ArrayList<>();
        for (VoidGap gap : gaps)
            warnings.add("the ground is unknown from " + gap.words() + ": no tile covers it, or its posts are void");
        if (bridged > 0)
            warnings.add(bridged + " of " + count
                    + " samples lean on posts that were void in the tile and were filled from" + " their neighbours");
        heldWarning(sampler, settings).ifPresent(warnings::add);
        return new PathCut(line, gaps.isEmpty() ? profile(sampler, elevation, line, settings) : null, gaps, warnings);
    }

    private static Profile profile(PathSampler sampler, Elevation elevation, GeodesicLine line, CutSettings settings) {
        int n = sampler.count();
        Zone[] zone = new Zone[n];
        Arrays.fill(zone, Zone.INLAND);
        double[] heightM = Arrays.copyOf(sampler.heightM(), n);
        double[] heldM = new double[n];
        for (int i = 0; i < n; i++) heldM[i] = settings.heldM(sampler.cover()[i]);
        return Profile.of(
                        Arrays.copyOf(sampler.distanceKm(), n),
                        heightM,
                        Arrays.copyOf(sampler.clutterM(), n),
                        Arrays.copyOf(sampler.cover(), n),
                        zone)
                .divided(CutSettings.PARTS, new DividedGround(elevation, line, heightM, heldM, CutSettings.PARTS));
    }

    private static List<VoidGap> gaps(PathSampler sampler) {
        List<VoidGap> gaps = new ArrayList<>();
        double[] d = sampler.distanceKm();
        boolean[] isVoid = sampler.isVoid();
        int n = sampler.count();
        for (int i = 0; i < n; i++) {
            if (!isVoid[i]) continue;
            int first = i;
            while (i < n && isVoid[i]) i++;
            gaps.add(new VoidGap(d[Math.max(0, first - 1)], d[Math.min(n - 1, i)]));
        }
        return gaps;
    }

    private static Optional<String> heldWarning(PathSampler sampler, CutSettings settings) {
        int lowered = 0;
        double most = 0;
        for (int i = 0; i < sampler.count(); i++) {
            Cover cover = sampler.cover()[i];
            double held = settings.heldM(cover);
            if (sampler.isVoid()[i] || !(held > 0)) continue;
            lowered++;
            most = Math.max(most, held);
        }
        return lowered == 0
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "The tiles hold part of the trees and roofs: at %d of %d samples the ground was taken up to %.1f m lower.",
                        lowered,
                        sampler.count(),
                        most));
    }

    public GeodesicLine line() {
        return line;
    }

    /** The profile; empty if there is a gap. */
    public Optional<Profile> profile() {
        return Optional.ofNullable(profile);
    }

    /** Stretches without known ground, in order. */
    public List<VoidGap> gaps() {
        return gaps;
    }

    /** One sentence each. */
    public List<String> warnings() {
        return warnings;
    }
}
