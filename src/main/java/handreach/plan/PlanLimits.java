package handreach.plan;

import handreach.geodesy.Compass;
import handreach.input.Range;
import java.util.List;

/** The limits of numbers, and the words, that only a plan has, for whoever asks for them outside the plan's own text. */
public final class PlanLimits {
    public static final Range FORMAT = PlanReader.FORMAT;
    public static final Range LENGTH = EquipmentReader.LENGTH;
    public static final Range MASS = EquipmentReader.MASS;
    public static final Range PRICE = EquipmentReader.PRICE;
    public static final Range STIFFNESS = EquipmentReader.STIFFNESS;
    public static final Range BURDEN_RANK = EquipmentReader.BURDEN_RANK;
    public static final Range DELTA = EquipmentReader.DELTA;
    public static final Range DELTA_UNCERTAINTY = EquipmentReader.DELTA_UNCERTAINTY;
    public static final Range SWR = EquipmentReader.SWR;
    public static final Range GAIN_DBI = EquipmentReader.GAIN_DBI;
    public static final Range GAIN_DBD = EquipmentReader.GAIN_DBD;
    public static final Range GAIN_UNCERTAINTY = EquipmentReader.GAIN_UNCERTAINTY;
    public static final Range ANCHOR_GAIN = EquipmentReader.ANCHOR_GAIN;
    public static final Range CARRY_GAIN = EquipmentReader.CARRY_GAIN;
    public static final Range UNCERTAINTY = EquipmentReader.UNCERTAINTY;
    public static final Range SPREAD = EquipmentReader.SPREAD;
    public static final Range NOISE_FLOOR = NoiseChoice.FLOOR;
    public static final Range NOISE_FLOOR_MICROVOLTS = NoiseChoice.FLOOR_MICROVOLTS;
    public static final Range NOISE_BANDWIDTH = NoiseChoice.BANDWIDTH;
    public static final Range WEIGHT = PlacesReader.WEIGHT;
    public static final Range HEADING = Compass.HEADING;
    public static final Range PACE = PlacesReader.PACE;
    public static final Range SPACING = PlacesReader.SPACING;
    public static final Range RECEIVE = StationReader.RECEIVE;
    public static final Range TRANSMIT = StationReader.TRANSMIT;
    public static final Range FELT_PLACES = QuestionsReader.FELT_PLACES;
    public static final Range FELT_GROUND = QuestionsReader.FELT_GROUND;
    public static final Range FELT_REACH = QuestionsReader.FELT_REACH;
    public static final Range RELAY_GAIN = QuestionsReader.RELAY_GAIN;
    public static final Range RELAY_COUNT = QuestionsReader.COUNT;
    public static final Range MAST = QuestionsReader.MAST;
    public static final Range FEED_LOSS = QuestionsReader.FEED_LOSS;
    public static final Range MAX_SLOPE = QuestionsReader.MAX_SLOPE;
    public static final Range MAX_TRACK_DISTANCE = QuestionsReader.MAX_TRACK_DISTANCE;
    public static final Range MIN_SEPARATION = QuestionsReader.MIN_SEPARATION;
    public static final Range MAX_WALK_MINUTES = QuestionsReader.MAX_WALK_MINUTES;
    public static final Range CLOCK_OFFSET = QuestionsReader.CLOCK_OFFSET;
    public static final Range MODEL_COMMON = QuestionsReader.MODEL_COMMON;
    public static final Range PLACE_SPREAD = QuestionsReader.PLACE_SPREAD;
    /** How lengths are written. */
    public static final List<String> UNITS = PlanReader.LENGTHS.words();
    /** What the antenna of a station stands on. */
    public static final List<String> SUPPORTS = StationReader.Support.KEYWORD.words();

    private PlanLimits() {}
}
