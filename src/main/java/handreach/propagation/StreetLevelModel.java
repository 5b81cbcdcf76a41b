package handreach.propagation;

import handreach.profile.Profile;
import handreach.terrain.Cover;
import java.util.Locale;

/**
 * Street level to street level in town, Rec. ITU-R P.1411 section 4.3.1; where that document does not hold, below 300 MHz, the
 * terminal clutter model stands in and says so. Terrain is ignored by the document.
 */
final class StreetLevelModel implements LossModel {
    private static final String DOCUMENT = "Rec. ITU-R P.1411-11 section 4.3.1";
    private static final double LOWEST_MHZ = 300;

    private final ClutterAtEndsModel fallback = new ClutterAtEndsModel();

    @Override
    public String name() {
        return "street-level";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        Cover town = town(profile);
        if (conditions.frequency().mhz() < LOWEST_MHZ) {
            PathLoss instead = fallback.loss(profile, terminals, conditions);
            instead.parts().stream().skip(1).forEach(part -> account.part(part.name(), part.db(), part.source()));
            instead.warnings().forEach(account::warn);
            return account.warn(String.format(
                            Locale.ROOT,
                            "%.4g MHz is below the 300 to 3000 MHz of %s; the loss is that of clutter-at-ends instead.",
                            conditions.frequency().mhz(),
                            DOCUMENT))
                    .close();
        }
        double percent = conditions.climate().locationPercent();
        double distanceM = profile.lengthKm() * 1000;
        double loss = StreetLevel.lossDb(conditions.frequency(), distanceM, town, percent);
        account.part("streets", loss - account.freeSpaceDb(), DOCUMENT);
        account.step("d_LoS", StreetLevel.sightRangeM(percent), "m");
        account.within("The frequency", conditions.frequency().mhz(), LOWEST_MHZ, 3000, "MHz", DOCUMENT)
                .within("The path length", profile.lengthKm(), 0, 3, "km", DOCUMENT)
                .within("The height of the first antenna", terminals.txHeightM(), 1.9, 3, "m", DOCUMENT)
                .within("The height of the last antenna", terminals.rxHeightM(), 1.9, 3, "m", DOCUMENT);
        if (!town.isTown())
            account.warn("Neither end of the profile stands in town; " + DOCUMENT
                    + " is meant for streets, taken here as suburban.");
        return account.close();
    }

    /** The kind of town at the ends: the one with the greater loss when they differ. */
    private static Cover town(Profile profile) {
        Cover first = profile.cover(0);
        Cover last = profile.cover(profile.count() - 1);
        for (Cover cover : new Cover[] {Cover.URBAN, Cover.DENSE_URBAN, Cover.SUBURBAN})
            if (first == cover || last == cover) return cover;
        return Cover.OPEN;
    }
}
