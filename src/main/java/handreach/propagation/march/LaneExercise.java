package handreach.propagation.march;

/**
 * Runs the inner loops of a bundle on an empty column until the virtual machine has compiled them: until then it boxes every vector, and all
 * threads of a cold march wait for one loop after the other.
 */
final class LaneExercise {
    private static final int NODES = 400;
    /** So often that a loop is compiled both from within and from its start (usual thresholds of the virtual machine, from memory). */
    private static final int ROUNDS = 700;

    private final LaneMath math;
    private final LaneField of = LaneField.of(NODES);
    private final LaneField base = LaneField.of(NODES);
    private final LaneField out = LaneField.of(NODES);
    private final LaneWork work = new LaneWork(NODES);
    private final LanePole[] poles = {new LanePole(), new LanePole()};
    private final LaneTerm a = new LaneTerm(1, 2, NODES, 1, 1, 1, 0);
    private final LaneTerm b = new LaneTerm(2, 2, NODES, 1, 1, 1, 0);
    private final float[] one = new float[NODES];

    LaneExercise(LaneMath math) {
        this.math = math;
    }

    void run() {
        for (int round = 0; round < ROUNDS; round++) {
            math.down(NODES, 1, poles, 0, of, base, out, work);
            math.up(NODES, 1, poles, 0, of, out, work);
            math.phase(NODES, one, one, of.re(), of.im());
            math.pivots(NODES, a, b);
            math.turn(NODES, a, 1, of.re(), of.im(), work);
            math.firstTurn(NODES, b, 1, of.re(), of.im(), work);
            math.fade(0, NODES, one, of.re(), of.im());
        }
    }
}
