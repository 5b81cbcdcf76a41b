package handreach.reach;

import handreach.geodesy.Position;
import handreach.profile.CutSettings;
import handreach.propagation.LossModel;
import handreach.propagation.LossModels;
import handreach.propagation.PathConditions;
import handreach.propagation.radial.Radial;
import java.util.List;

/** What all engines derive from a request before they start: the plane round the source, the effective earth, the sampling. */
final class AreaSetting {
    private static final int FEWEST_INTERVALS = 2;

    private final double radiusM;
    private final PathConditions conditions;
    private final AreaGround ground;
    private final AzimuthalFrame frame;
    private final double postM;
    /** Equal parts into which every interval is divided for the model. */
    private final int parts;

    AreaSetting(Position source, double radiusM, PathConditions conditions, LossModel model, AreaGround ground) {
        this.parts = model.equals(LossModels.FULL_WAVE) ? CutSettings.PARTS : 1;
        this.radiusM = radiusM;
        this.conditions = conditions;
        this.ground = ground.near(source, radiusM);
        this.frame = AzimuthalFrame.of(source, Math.max(radiusM, 2 * CellsByRadial.NEAREST_M));
        this.postM =
                ground.elevation().postSpacingM(source.latitudeDeg(), source.longitudeDeg(), CutSettings.USUAL_POST_M);
    }

    /** For an engine that asks the model anew for every cell; a march would take hours so. */
    static AreaSetting ofCells(AreaRequest request, AreaGround ground) {
        if (request.model().equals(LossModels.FULL_WAVE))
            throw new IllegalArgumentException("full-wave goes along whole radials: take the march");
        return of(request, ground);
    }

    static AreaSetting of(AreaRequest request, AreaGround ground) {
        return new AreaSetting(request.source(), request.radiusM(), request.conditions(), request.model(), ground);
    }

    PathConditions conditions() {
        return conditions;
    }

    AzimuthalFrame frame() {
        return frame;
    }

    double radiusM() {
        return radiusM;
    }

    /** Intervals into which a path of this length is cut: none longer than half the finest posts along it. */
    private int exactIntervals(double lengthM, double finestPostM) {
        double stepM = Math.max(finestPostM / 2, lengthM / CutSettings.MOST_SAMPLES);
        return (int) Math.max(FEWEST_INTERVALS, Math.ceil(lengthM / stepM));
    }

    /** Sample spacing of a sweep, m: half a post, as paths are cut; a coarser or finer one sees other tops, and differs by a decibel. */
    double sweepStepM() {
        return Math.max(postM / 2, radiusM / CutSettings.MOST_SAMPLES);
    }

    /** Fills a radial along an azimuth as a single path of that length is cut. */
    void cut(RaySampler sampler, double azimuthRad, double lengthM, Radial radial) {
        sampler.aim(Math.sin(azimuthRad), Math.cos(azimuthRad));
        cut(sampler, lengthM, radial);
    }

    /** The same where the sampler aims. */
    void cut(RaySampler sampler, double lengthM, Radial radial) {
        fill(sampler, exactIntervals(lengthM, sampler.finestPostM(lengthM)), lengthM, radial);
    }

    private void fill(RaySampler sampler, int intervals, double lengthM, Radial radial) {
        if (parts == 1) sampler.fill(intervals + 1, lengthM / intervals, radial);
        else sampler.fillDivided(intervals + 1, lengthM / intervals, parts, radial);
    }

    /** Fills radials along azimuths with samples at the same distances, as close as the closest of them asks for. */
    void cutAlike(RaySampler sampler, double[] azimuthRad, double lengthM, List<Radial> radials) {
        int intervals = 0;
        for (double azimuth : azimuthRad) {
            sampler.aim(Math.sin(azimuth), Math.cos(azimuth));
            intervals = Math.max(intervals, exactIntervals(lengthM, sampler.finestPostM(lengthM)));
        }
        for (int i = 0; i < azimuthRad.length; i++) {
            sampler.aim(Math.sin(azimuthRad[i]), Math.cos(azimuthRad[i]));
            fill(sampler, intervals, lengthM, radials.get(i));
        }
    }

    RaySampler sampler() {
        return new RaySampler(frame, ground);
    }
}
