package handreach.reach;

import handreach.profile.Profiles;
import handreach.propagation.LossBuilder;
import handreach.propagation.LossModel;
import handreach.propagation.Terminals;
import handreach.propagation.UsualConditions;
import handreach.units.Frequency;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The median loss that was measured from a gateway to one place with the node at one height. */
record LowNode(String site, double heightM, double nodeGroundM, Gateway gateway, double distanceKm, double medianDb) {
    private static final double STEP_KM = 0.03;
    private static final double LEAST_HEIGHT_M = 0.1;

    /** Where the other end stands. */
    record Gateway(double groundM, double heightM, double mhz) {}

    /** Which of them count. */
    enum Kept {
        ALL("all"),
        NOT_UNDER_THE_GATEWAY("without those nearer than 0.2 km and seen more than 10\u00b0 down");

        final String words;

        Kept(String words) {
            this.words = words;
        }

        boolean holds(LowNode node) {
            return switch (this) {
                case ALL -> true;
                case NOT_UNDER_THE_GATEWAY -> node.distanceKm >= 0.2 || node.downDeg() <= 10;
            };
        }
    }

    static List<LowNode> read(Path file) throws IOException {
        Map<String, List<String[]>> places = new LinkedHashMap<>();
        for (String line : Files.readAllLines(file).stream().skip(1).toList()) {
            String[] cells = line.split(",");
            places.computeIfAbsent(cells[0] + "/" + cells[1] + "/" + cells[5], key -> new ArrayList<>())
                    .add(cells);
        }
        return places.values().stream()
                .map(LowNode::of)
                .filter(node -> node.distanceKm >= LossBuilder.SHORTEST_KM)
                .toList();
    }

    private static LowNode of(List<String[]> packets) {
        String[] first = packets.get(0);
        double[] loss = packets.stream()
                .mapToDouble(cells -> number(cells, 12))
                .sorted()
                .toArray();
        return new LowNode(
                first[0],
                number(first, 5),
                number(first, 4),
                new Gateway(number(first, 8), number(first, 9), number(first, 10)),
                number(first, 11),
                (loss[(loss.length - 1) / 2] + loss[loss.length / 2]) / 2);
    }

    private static double number(String[] cells, int column) {
        return Double.parseDouble(cells[column]);
    }

    private double downDeg() {
        double downM = gateway.groundM + gateway.heightM - nodeGroundM - heightM;
        return Math.toDegrees(Math.atan2(downM, 1000 * distanceKm));
    }

    double predictedDb(LossModel model) {
        int n = Math.max(2, (int) Math.round(distanceKm / STEP_KM) + 1);
        double[] km = new double[n];
        double[] ground = new double[n];
        for (int i = 0; i < n; i++) {
            double share = (double) i / (n - 1);
            km[i] = distanceKm * share;
            ground[i] = gateway.groundM + (nodeGroundM - gateway.groundM) * share;
        }
        return model.loss(
                        Profiles.of(km, ground),
                        new Terminals(gateway.heightM, Math.max(LEAST_HEIGHT_M, heightM)),
                        UsualConditions.at(new Frequency(gateway.mhz)))
                .lossDb();
    }
}
