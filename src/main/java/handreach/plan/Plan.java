package handreach.plan;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A plan, checked: every name it refers to exists in it, every number is inside its limits, every file is there.
 *
 * @param channel the one that is asked about: the first, unless another was chosen
 * @param channels all of them, in order
 */
public record Plan(
        PlanHeader header,
        Channel channel,
        List<Channel> channels,
        GroundChoice ground,
        Equipment equipment,
        Places places,
        Questions questions) {
    public Plan {
        channels = List.copyOf(channels);
    }

    /** The same plan on another channel. */
    public Plan on(Channel other) {
        return new Plan(header, other, channels, ground, equipment, places, questions);
    }

    /** The same plan with another question of reach. */
    public Plan asking(Questions.ReachQuestion reach) {
        Questions other = new Questions(
                reach, questions.decide(), questions.relay(), questions.assign(), questions.walks(), questions.site());
        return new Plan(header, channel, channels, ground, equipment, places, other);
    }

    /** Every file that the plan names. */
    List<Path> files() {
        List<Path> files = new ArrayList<>();
        ground.cover().raster().ifPresent(files::add);
        ground.cover().polygons().ifPresent(files::add);
        equipment.bench().map(Equipment.Bench::file).ifPresent(files::add);
        for (Equipment.AntennaEntry antenna : equipment.antennas())
            antenna.known().pattern().ifPresent(files::add);
        places.area().polygon().ifPresent(files::add);
        for (Places.RouteEntry route : places.routes()) files.add(route.file());
        for (Places.SectorEntry sector : places.sectors()) files.add(sector.polygon());
        Questions.SiteLimits constraints = questions.relay().constraints();
        constraints.inside().ifPresent(files::add);
        constraints.outside().ifPresent(files::add);
        constraints.nearTrack().map(Questions.TrackLimit::tracks).ifPresent(files::add);
        for (Questions.WalkEntry walk : questions.walks()) {
            walk.track().ifPresent(files::add);
            files.add(walk.reports());
        }
        questions.calibration().ifPresent(files::add);
        return files;
    }
}
