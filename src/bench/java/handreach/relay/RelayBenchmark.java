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
import handreach.loadout.Modulation;
import handreach.loadout.Radiator;
import handreach.loadout.Radio;
import handreach.loadout.UsualLoadouts;
import handreach.propagation.LossModels;
import handreach.propagation.UsualConditions;
import handreach.reach.AreaGround;
import handreach.reach.CellGrid;
import handreach.reach.Progress;
import handreach.reach.SweepArea;
import handreach.terrain.InventedValley;
import handreach.units.Dbd;
import handreach.units.Dbm;
import handreach.units.Frequency;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Twelve people within 10 km, cells of 30 m, everybody to everybody, one relay. Aim: 15 s on two cores. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(1)
public class RelayBenchmark {
    private static final Frequency FREQUENCY = new Frequency(155);
    private static final Position MIDDLE = new Position(44.5, -29.5);

    private InventedValley valley;
    private RelayRequest question;
    private RelayEquipment relay;

    @Setup
    public void spreadThePeople() {
        valley = InventedValley.build();
        Modulation modulation = Modulation.FM_12_5;
        Radio radio = new Radio("handheld", Dbm.ofWatts(5), new Dbm(-119), modulation);
        Antenna antenna = new Antenna(
                "helical", Radiator.SHORT_HELICAL, 0.15, false, new Burden(15, 20, 0, 2), Optional.empty());
        Band band = Band.of(FREQUENCY);
        LinkEnd end = UsualLinks.end(
                UsualLoadouts.of("chest", radio, antenna, Carry.CHEST, band, UsualLoadouts.control(band)), SiteNoise.NONE);
        Random random = new Random(1);
        List<Party> demands = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            double bearing = 360 * random.nextDouble();
            double distanceM = 9500 * Math.sqrt(random.nextDouble());
            demands.add(new Party("d" + i, GeodesicLine.destination(MIDDLE, bearing, distanceM), end));
        }
        RelayRequest.Setting setting = new RelayRequest.Setting(
                UsualLinks.terms(FREQUENCY, CopyQuality.DAQ_3, 0.8),
                UsualConditions.at(FREQUENCY),
                LossModels.HANDHELD,
                new AreaGround(valley));
        question = new RelayRequest(demands, Conversation.allToAll(demands), setting);
        relay = RelayEquipment.onMast(
                radio,
                new Dbd(0),
                "invented",
                new RelayEquipment.Mast(4, 1, "invented"),
                SiteNoise.NONE,
                FREQUENCY,
                RelayMode.TWO_FREQUENCY,
                false);
    }

    @Benchmark
    public List<SiteScore> oneRelay() {
        CellGrid grid = CellGrid.around(MIDDLE, 10_000, 30);
        DirectVerdict direct = DirectVerdict.of(question, List.of(), Progress.SILENT);
        HopSurvey survey =
                HopSurvey.of(question, relay, grid, new SweepArea(2).withoutMeasuring(), Progress.SILENT);
        AllowedGround ground = AllowedGround.of(grid, MIDDLE, 10_000, valley, RelayConstraints.NONE);
        return RelaySearch.of(survey, ground, direct, Progress.SILENT).ranked(ServiceLevel.BY_SERVED, 1000, 5);
    }
}
