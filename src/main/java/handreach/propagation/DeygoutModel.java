package handreach.propagation;

import handreach.profile.Profile;
import java.util.List;

/** Several edges by the main-edge method. */
final class DeygoutModel implements LossModel {
    private final String name;
    private final Deygout.Rule rule;

    DeygoutModel(String name, Deygout.Rule rule) {
        this.name = name;
        this.rule = rule;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public PathLoss loss(Profile profile, Terminals terminals, PathConditions conditions) {
        LossBuilder account = new LossBuilder(name, profile, terminals, conditions);
        PathArrays path = PathArrays.of(profile, terminals);
        double[] y = path.outline(conditions.atmosphere().effectiveRadiusKm());
        int levels = Deygout.levelsFor(profile.count());
        List<Deygout.Edge> edges =
                Deygout.edges(path.dKm(), y, conditions.frequency().wavelengthM(), rule, levels);
        double sum = edges.stream().mapToDouble(Deygout.Edge::lossDb).sum();
        account.part("diffraction", sum, source());
        for (Deygout.Edge edge : edges)
            account.step("edge at", path.dKm()[edge.sample()], "km")
                    .step("ν", edge.nu(), "")
                    .step("J", edge.lossDb(), "dB");
        if (edges.size() >= 3)
            account.warn("Three or more edges: the main-edge method adds too much where edges stand close together.");
        return account.warnOfClutter(profile).close();
    }

    private String source() {
        return switch (rule) {
            case PLAIN -> "Deygout (1966), J of Rec. ITU-R P.526-15";
            case CORRECTED -> "Deygout (1966) with the two-edge correction of Rec. ITU-R P.526-15 section 4.3";
            case GIOVANELI -> "Giovaneli (1984), J of Rec. ITU-R P.526-15";
        };
    }
}
