package handreach.relay;

import handreach.budget.LinkEnd;
import handreach.budget.SiteNoise;
import handreach.budget.UsualLinks;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.loadout.Antenna;
import handreach.loadout.Band;
import handreach.loadout.Burden;
import handreach.loadout.Carry;
import handreach.loadout.CopyQuality;
import handreach.loadout.Loadout;
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.loadout.UsualLoadouts;
import handreach.propagation.LossModels;
import handreach.propagation.UsualConditions;
import handreach.reach.AreaGround;
import handreach.reach.Areas;
import handreach.reach.CellGrid;
import handreach.reach.Progress;
import handreach.terrain.Elevation;
import handreach.units.Dbd;
import handreach.units.Dbm;
import handreach.units.Frequency;
import java.util.List;
import java.util.Optional;

/** A world laid out on paper: heights by east and north in metres from a middle, two kinds of radios, one relay. */
final class PaperWorld implements Elevation {
    static final Position MIDDLE = new Position(45, -29);
    static final Frequency FREQUENCY = new Frequency(155);
    private static final double METRES_PER_DEGREE = 111_132;

    /** Height by metres east and north of the middle; NaN is a void. */
    interface Shape {
        double heightM(double eastM, double northM);
    }

    private final Shape shape;

    PaperWorld(Shape shape) {
        this.shape = shape;
    }

    @Override
    public void heights(double[] latitudeDeg, double[] longitudeDeg, int count, double[] heightM, boolean[] isVoid) {
        for (int i = 0; i < count; i++) {
            double north = (latitudeDeg[i] - MIDDLE.latitudeDeg()) * METRES_PER_DEGREE;
            double east = (longitudeDeg[i] - MIDDLE.longitudeDeg()) * METRES_PER_DEGREE * Math.cos(Math.toRadians(45));
            double height = shape.heightM(east, north);
            isVoid[i] = Double.isNaN(height);
            heightM[i] = isVoid[i] ? 0 : height;
        }
    }

    @Override
    public double postSpacingM(double latitudeDeg, double longitudeDeg, double defaultM) {
        return 30;
    }

    static Position at(double eastM, double northM) {
        Position north = GeodesicLine.destination(MIDDLE, northM >= 0 ? 0 : 180, Math.abs(northM));
        return GeodesicLine.destination(north, eastM >= 0 ? 90 : 270, Math.abs(eastM));
    }

    static LinkEnd person(double watts, Carry carry) {
        Band band = Band.of(FREQUENCY);
        Radio radio = new Radio("handheld", Dbm.ofWatts(watts), new Dbm(-119), Modulation.FM_12_5);
        Antenna antenna = new Antenna(
                "helical " + watts,
                Radiator.SHORT_HELICAL,
                0.15,
                false,
                new Burden(15 + watts, 20, 0, 2),
                Optional.empty());
        Loadout loadout =
                UsualLoadouts.of(carry.word() + " " + watts, radio, antenna, carry, band, UsualLoadouts.control(band));
        return UsualLinks.end(loadout, SiteNoise.NONE);
    }

    static RelayEquipment relay(RelayMode mode, boolean chained) {
        Radio radio = new Radio("relay", Dbm.ofWatts(5), new Dbm(-119), Modulation.FM_12_5);
        return RelayEquipment.onMast(
                radio,
                new Dbd(0),
                "invented",
                new RelayEquipment.Mast(4, 1, "invented"),
                SiteNoise.NONE,
                FREQUENCY,
                mode,
                chained);
    }

    RelayRequest.Setting setting(String model) {
        return new RelayRequest.Setting(
                UsualLinks.terms(FREQUENCY, CopyQuality.DAQ_3, 0.8),
                UsualConditions.at(FREQUENCY),
                LossModels.KEYWORD.find(model).orElseThrow(),
                new AreaGround(this));
    }

    RelayRequest question(String model, List<Party> demands) {
        return new RelayRequest(demands, Conversation.allToAll(demands), setting(model));
    }

    /** Everything reckoned with one exact path a cell. */
    record Run(
            RelayRequest question, DirectVerdict direct, HopSurvey survey, AllowedGround ground, RelaySearch search) {
        CellGrid grid() {
            return survey.grid();
        }

        Position position(int cell) {
            return grid().positionOf(cell);
        }

        /** How one relay in this cell would do. */
        ServiceLevel at(int cell) {
            TalkTable talks = new TalkTable(survey, direct);
            return RelaySet.none(talks).with(cell, new double[talks.demands()]);
        }
    }

    Run run(RelayRequest question, RelayEquipment relay, double radiusM, double cellM, RelayConstraints constraints) {
        CellGrid grid = CellGrid.around(MIDDLE, radiusM, cellM);
        DirectVerdict direct = DirectVerdict.of(question, List.of(), Progress.SILENT);
        HopSurvey survey = HopSurvey.of(question, relay, grid, Areas.exact(2), Progress.SILENT);
        AllowedGround ground = AllowedGround.of(grid, MIDDLE, 2 * radiusM, this, constraints);
        RelaySearch search = RelaySearch.of(survey, ground, direct, Progress.SILENT);
        return new Run(question, direct, survey, ground, search);
    }
}
