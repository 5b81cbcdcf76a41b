package handreach.propagation;

import handreach.profile.Profile;
import handreach.terrain.Cover;
import java.util.List;

/**
 * Delta-Bullington over bare ground to the height of the roofs or trees at each end, and the terminal clutter loss of Rec. ITU-R
 * P.2108 from there down to the antenna. Ends in the open keep their own height and add nothing. Belts of trees between the ends,
 * apart from the woods around them, are crossed by the easier way.
 */
final class ClutterAtEndsModel implements LossModel {
    private final DeltaBullingtonModel overGround = new DeltaBullingtonModel();

    @Override
    public String name() {
        return "clutter-at-ends";
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name(), profile, terminals, conditions);
        int last = profile.count() - 1;
        double txClutterM = clutterM(profile, 0);
        double rxClutterM = clutterM(profile, last);
        Terminals raised =
                new Terminals(Math.max(terminals.txHeightM(), txClutterM), Math.max(terminals.rxHeightM(), rxClutterM));
        PathLoss above = overGround.loss(profile.bare(), raised, conditions);
        account.part("diffraction", above.lossDb() - account.freeSpaceDb(), "Rec. ITU-R P.526-15 section 4.5");
        end(account, "clutter at the first end", profile.cover(0), terminals.txHeightM(), txClutterM, conditions);
        end(account, "clutter at the last end", profile.cover(last), terminals.rxHeightM(), rxClutterM, conditions);
        List<TreeBelts.Belt> belts = TreeBelts.across(profile, raised, conditions);
        account.part("belts of trees", TreeBelts.lossDb(belts, conditions), "Rec. ITU-R P.833-9 section 3");
        for (TreeBelts.Belt belt : belts)
            account.step("belt from", belt.fromKm(), "km")
                    .step("thickness", belt.thicknessM(), "m")
                    .step("loss", belt.lossDb(), "dB");
        account.step("R_t", txClutterM, "m").step("R_r", rxClutterM, "m");
        TerminalClutter.warnings(conditions.frequency()).forEach(account::warn);
        above.warnings().forEach(account::warn);
        return account.close();
    }

    private static void end(
            LossBuilder account, String name, Cover cover, double heightM, double clutterM, PathConditions conditions) {
        double loss = clutterM == 0
                ? 0
                : TerminalClutter.lossDb(
                        conditions.frequency(), cover, heightM, clutterM, TerminalClutter.STREET_WIDTH_M);
        account.part(name, loss, "Rec. ITU-R P.2108-1 section 3.1");
    }

    /** Height of what stands around an end: the profile's own if it gives one, else the representative one; 0 in the open. */
    private static double clutterM(Profile profile, int end) {
        Cover cover = profile.cover(end);
        if (cover == Cover.OPEN || cover == Cover.WATER) return 0;
        return profile.clutterM(end) > 0 ? profile.clutterM(end) : TerminalClutter.representativeHeightM(cover);
    }
}
