package handreach.cli;

import handreach.input.Faults;
import handreach.plan.Channel;
import handreach.propagation.Atmosphere;
import handreach.propagation.Climate;
import handreach.propagation.Ground;
import handreach.propagation.GroundType;
import handreach.propagation.PathConditions;
import handreach.units.Frequency;
import picocli.CommandLine.Option;

/** Options of a path that are neither its ground profile nor its antennas. */
final class ConditionOptions {
    @Option(names = "--frequency-mhz", paramLabel = "MHZ", description = "Frequency, 1 to 6000 MHz.")
    Double frequencyMhz;

    @Option(names = "--polarization", paramLabel = "WORD", description = "vertical (default) or horizontal.")
    String polarization = "vertical";

    @Option(
            names = "--ground",
            paramLabel = "WORD",
            description = "Ground constants: average (default), wet, dry, sea, fresh-water, poor, good.")
    String ground = "average";

    @Option(names = "--permittivity", paramLabel = "EPS", description = "Own relative permittivity, 1 to 200.")
    Double permittivity;

    @Option(names = "--conductivity", paramLabel = "S/M", description = "Own conductivity, 0 to 100 S/m.")
    Double conductivity;

    @Option(
            names = "--refractivity-gradient",
            paramLabel = "N/KM",
            description = "Decrease of refractivity over the lowest km, -400 to 156.9 N-units/km. Default: 45.")
    Double refractivityGradient;

    @Option(
            names = "--k-factor",
            paramLabel = "K",
            description = "Effective earth radius factor, 0.25 to 1000000, in place of the gradient.")
    Double kFactor;

    @Option(
            names = "--n0",
            paramLabel = "N",
            description = "Surface refractivity at sea level, 200 to 450 N-units. Default: 325.")
    double n0 = 325;

    @Option(
            names = "--latitude",
            paramLabel = "DEG",
            description =
                    "Latitude of the path centre, -90 to 90 degrees, for p1812. Default: that of the places, 45 over a profile.")
    Double latitude;

    @Option(
            names = "--coast-km",
            paramLabel = "TX[,RX]",
            split = ",",
            description = "Distance of each end to the sea along the path, 0 to 20000 km, for p1812. Default: 500.")
    double[] coastKm = {500};

    @Option(names = "--time-percent", paramLabel = "P", description = "Share of the time, 1 to 50 %%. Default: 50.")
    double timePercent = 50;

    @Option(
            names = "--location-percent",
            paramLabel = "P",
            description = "Share of the places, 1 to 99 %%. Default: 50.")
    double locationPercent = 50;

    /** The conditions, or every fault of the options at once. */
    PathConditions conditions(double latitudeIfUnknown) {
        Faults faults = new Faults();
        if (frequencyMhz == null)
            faults.add("--frequency-mhz", 0, "is missing. Give the channel in MHz, such as --frequency-mhz 155.");
        else PathConditions.FREQUENCY.check(faults, "--frequency-mhz", frequencyMhz);
        Channel.POLARIZATION.read(polarization, refused -> faults.add("--polarization", 0, refused));
        GroundType.KEYWORD.read(ground, refused -> faults.add("--ground", 0, refused));
        if (permittivity != null) Ground.PERMITTIVITY.check(faults, "--permittivity", permittivity);
        if (conductivity != null) Ground.CONDUCTIVITY.check(faults, "--conductivity", conductivity);
        if (refractivityGradient != null)
            Atmosphere.GRADIENT.check(faults, "--refractivity-gradient", refractivityGradient);
        if (kFactor != null) Atmosphere.FACTOR.check(faults, "--k-factor", kFactor);
        if (kFactor != null && refractivityGradient != null)
            faults.add("--k-factor", 0, "and --refractivity-gradient say the same. Give one of them.");
        Atmosphere.SURFACE_REFRACTIVITY.check(faults, "--n0", n0);
        if (latitude != null) Climate.LATITUDE.check(faults, "--latitude", latitude);
        Climate.TIME.check(faults, "--time-percent", timePercent);
        Climate.LOCATION.check(faults, "--location-percent", locationPercent);
        for (double km : coastKm) Climate.COAST.check(faults, "--coast-km", km);
        if (coastKm.length > 2)
            faults.add("--coast-km", 0, "has " + coastKm.length + " values, allowed is one or two.");
        faults.throwIfAny();
        return built(latitudeIfUnknown);
    }

    private PathConditions built(double latitudeIfUnknown) {
        Ground named = GroundType.KEYWORD.find(ground).orElseThrow().ground();
        Ground chosen = new Ground(
                permittivity == null ? named.permittivity() : permittivity,
                conductivity == null ? named.conductivity() : conductivity);
        Atmosphere air = kFactor != null
                ? Atmosphere.ofFactor(kFactor, n0)
                : Atmosphere.ofGradient(refractivityGradient == null ? 45 : refractivityGradient, n0);
        Climate climate = new Climate(
                timePercent,
                locationPercent,
                latitude == null ? latitudeIfUnknown : latitude,
                coastKm[0],
                coastKm[coastKm.length - 1]);
        return new PathConditions(
                new Frequency(frequencyMhz),
                Channel.POLARIZATION.find(polarization).orElseThrow(),
                chosen,
                air,
                climate);
    }
}
