package handreach.plan;

import handreach.input.Range;

/** The limits of numbers that only a plan has, for whoever asks for them outside the plan's own text. */
public final class PlanLimits {
    public static final Range LENGTH = EquipmentReader.LENGTH;
    public static final Range MASS = EquipmentReader.MASS;
    public static final Range PRICE = EquipmentReader.PRICE;
    public static final Range STIFFNESS = EquipmentReader.STIFFNESS;
    public static final Range DELTA = EquipmentReader.DELTA;
    public static final Range DELTA_UNCERTAINTY = EquipmentReader.DELTA_UNCERTAINTY;
    public static final Range NOISE_FLOOR = NoiseChoice.FLOOR;
    public static final Range NOISE_BANDWIDTH = NoiseChoice.BANDWIDTH;
    public static final Range RELAY_GAIN = QuestionsReader.RELAY_GAIN;
    public static final Range MAST = QuestionsReader.MAST;
    public static final Range FEED_LOSS = QuestionsReader.FEED_LOSS;
    public static final Range MAX_SLOPE = QuestionsReader.MAX_SLOPE;
    public static final Range MIN_SEPARATION = QuestionsReader.MIN_SEPARATION;
    public static final Range MAX_WALK_MINUTES = QuestionsReader.MAX_WALK_MINUTES;

    private PlanLimits() {}
}
