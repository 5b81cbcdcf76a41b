package handreach.propagation.p1812;

import handreach.input.Range;
import handreach.profile.Profile;
import handreach.profile.Zone;
import handreach.propagation.Climate;
import handreach.propagation.InverseNormal;
import handreach.propagation.LossBuilder;
import handreach.propagation.LossModel;
import handreach.propagation.PathConditions;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import handreach.propagation.Variability;

/**
 * Rec. ITU-R P.1812-6: basic transmission loss not exceeded for p % of the time and pL % of the places, outdoors. Clutter heights
 * of the profile stand on the ground between the ends; there is no further term for the terminals.
 */
public final class P1812Model implements LossModel {
    /** Side of the square within which the places differ, m: the document's default. */
    private static final double SQUARE_M = 500;

    private static final String DOCUMENT = "Rec. ITU-R P.1812-6";

    @Override
    public String name() {
        return "p1812";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        Climate climate = conditions.climate();
        refuse(climate);
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        P1812Path path = P1812Path.of(profile, terminals, conditions);
        double p = climate.timePercent();
        P1812Diffraction diffraction = P1812Diffraction.of(path, conditions.frequency(), conditions.polarization(), p);
        P1812Ducting ducting = P1812Ducting.of(path, climate);
        P1812Blend blend = new P1812Blend(
                path, diffraction, ducting, p, conditions.atmosphere().surfaceRefractivity());
        double spread = locationSpread(profile, terminals, conditions);
        double places =
                Math.max(blend.clearDb(), blend.lossDb() - InverseNormal.of(climate.locationPercent() / 100) * spread);
        // At 50 % of the places the document's inverse normal is 1e-9, not 0: no line of its own for that.
        double location = Math.abs(places - blend.lossDb()) < 1e-6 ? 0 : places - blend.lossDb();
        account.part(
                "diffraction, ducting and scatter",
                places - location - account.freeSpaceDb(),
                DOCUMENT + " section 4.6");
        account.part("location", location, DOCUMENT + " section 4.7");
        path.tell(account);
        diffraction.tell(account);
        ducting.tell(account);
        blend.tell(account);
        account.step("σ_loc", spread, "dB")
                .step("L_b", places, "dB")
                .step("E", 199.36 + 20 * Math.log10(path.fGhz) - places, "dB(µV/m)");
        warn(account, profile, terminals, conditions);
        return account.close();
    }

    private static double locationSpread(Profile profile, Terminals terminals, PathConditions conditions) {
        int last = profile.count() - 1;
        if (profile.zone(last) == Zone.SEA) return 0;
        return Variability.locationSpreadDb(conditions.frequency(), SQUARE_M)
                * Variability.heightShare(terminals.rxHeightM(), profile.clutterM(last));
    }

    private static void refuse(Climate climate) {
        refuseOutside("time percentage", climate.timePercent(), Climate.TIME);
        refuseOutside("location percentage", climate.locationPercent(), Climate.LOCATION);
        refuseOutside("latitude", climate.latitudeDeg(), Climate.LATITUDE);
        refuseOutside("distance of the first end to the coast", climate.coastTxKm(), Climate.COAST);
        refuseOutside("distance of the last end to the coast", climate.coastRxKm(), Climate.COAST);
    }

    private static void refuseOutside(String what, double value, Range range) {
        if (!range.accepts(value))
            throw new IllegalArgumentException(
                    "the " + what + " is " + value + "; " + DOCUMENT + " takes " + range.words() + ".");
    }

    private static void warn(LossBuilder account, Profile profile, Terminals terminals, PathConditions conditions) {
        account.within("The frequency", conditions.frequency().mhz(), 30, 6000, "MHz", DOCUMENT);
        account.within("The path length", profile.lengthKm(), 0.25, 3000, "km", DOCUMENT);
        account.within("The height of the first antenna", terminals.txHeightM(), 1, 3000, "m", DOCUMENT);
        account.within("The height of the last antenna", terminals.rxHeightM(), 1, 3000, "m", DOCUMENT);
    }
}
