package handreach.report;

import handreach.atlas.LoadoutFigures;
import handreach.atlas.PositionFigures;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.plan.PlanHeader;
import handreach.report.page.Block;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.units.Bearings;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.List;
import java.util.Optional;

/** What an atlas says of one place; the columns are those of the twenty best places of {@link AtlasComposer}. */
public final class AtlasPlaceComposer {
    private final AtlasSight atlas;
    private final PlanHeader header;

    public AtlasPlaceComposer(AtlasSight atlas, PlanHeader header) {
        this.atlas = atlas;
        this.header = header;
    }

    /** The position of the atlas in whose cell a place lies; empty outside the region or on unknown ground. */
    public Optional<Position> position(Position place) {
        return atlas.row(atlas.positions().indexOf(place)).map(PositionFigures::at);
    }

    /** The figures of the position in whose cell a place lies. */
    public List<Section> sections(Position place) {
        return atlas.row(atlas.positions().indexOf(place))
                .map(row -> List.of(section(place, row)))
                .orElseGet(() -> List.of(Section.of(
                        header.placeForm().format(place),
                        Paragraph.of(
                                "No position of the atlas stands here: the place lies outside its region, or no tile knows the"
                                        + " ground."))));
    }

    private Section section(Position place, PositionFigures row) {
        Lengths lengths = header.lengths();
        List<Block> blocks = List.of(
                Paragraph.answer(least(row)),
                Table.of(
                        "From the least burdensome up; \"" + atlas.title() + "\".",
                        atlas.byBurden(),
                        List.of(
                                Column.words("loadout", atlas.loadouts()::get),
                                Column.number("median reach", l -> median(lengths, with(row, l))),
                                Column.number("worst", l -> worst(lengths, header.bearings(), with(row, l))),
                                Column.number(
                                        "share of the ground",
                                        l -> Shares.share(with(row, l).share().value())),
                                Column.number(
                                        "reaches of the region", l -> ground(lengths, with(row, l), atlas.targetsM())),
                                Column.number("heard by positions", l -> heardBy(place, l)))),
                Paragraph.of("These are the figures of the position in the middle of this cell of the atlas, "
                        + lengths.closeText(GeodesicLine.distanceM(place, row.at())) + " from the place."));
        return new Section(header.placeForm().format(row.at()), blocks);
    }

    private static LoadoutFigures with(PositionFigures row, int loadout) {
        return row.loadouts().get(loadout);
    }

    private String least(PositionFigures row) {
        int least = row.least(atlas.byBurden(), atlas.servesM());
        String serve = "a median reach of " + header.lengths().text(atlas.servesM()) + " or more";
        return least == PositionFigures.NONE
                ? "No loadout has " + serve + " here."
                : "The least loadout with " + serve + " here: "
                        + atlas.loadouts().get(least) + ".";
    }

    private String heardBy(Position place, int loadout) {
        int target = atlas.targets().indexOf(place);
        int count = target < 0 ? AtlasSight.UNKNOWN : atlas.heardBy(target, loadout);
        return count < 0 ? "" : Integer.toString(count);
    }

    /** Median reach with its interval. */
    static String median(Lengths lengths, LoadoutFigures with) {
        return lengths.text(with.medianM().value()) + " ("
                + lengths.range(
                        with.medianM().interval95().low(),
                        with.medianM().interval95().high())
                + ")";
    }

    /** Worst reach and where. */
    static String worst(Lengths lengths, Bearings bearings, LoadoutFigures with) {
        return lengths.text(with.worst().reachM().value()) + " at "
                + bearings.brief(with.worst().bearingDeg());
    }

    /** Ground of the region that is reached. */
    static String ground(Lengths lengths, LoadoutFigures with, double targetsM) {
        return lengths.area(with.heard().count() * targetsM * targetsM);
    }
}
