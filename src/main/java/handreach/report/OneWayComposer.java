package handreach.report;

import com.fasterxml.jackson.databind.JsonNode;
import handreach.plan.Plan;
import handreach.reach.OneWayGround;
import handreach.report.file.Json;
import handreach.report.page.Block;
import handreach.report.page.Column;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.ReachAnswer;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Where people hear the middle and it does not hear them, and the other way round, where the plan asks for it. */
public final class OneWayComposer {
    private final ReachAnswer answer;
    private final Plan plan;

    public OneWayComposer(ReachAnswer answer) {
        this.answer = answer;
        this.plan = answer.scene().plan();
    }

    private record Row(String loadout, OneWayGround ground) {
        double oneWay() {
            return ground.hearsOnly() + ground.heardOnly();
        }
    }

    /** Nothing where the plan does not ask for it. */
    Optional<Section> section() {
        List<Row> rows = rows();
        if (rows.isEmpty()) return Optional.empty();
        return Optional.of(Section.of("Where one way alone works", Paragraph.of(sentence(rows)), table(rows))
                .answering("Where do people hear " + middle() + " without being heard?"));
    }

    /** The same in short, for a narrow place. */
    public List<Block> brief() {
        List<Row> rows = rows();
        return rows.isEmpty() ? List.of() : List.of(Paragraph.of(sentence(rows)));
    }

    private List<Row> rows() {
        return IntStream.range(0, answer.oneWay().size())
                .mapToObj(i -> new Row(
                        answer.loadouts().get(i).link().name(), answer.oneWay().get(i)))
                .toList();
    }

    private String sentence(List<Row> rows) {
        Row most = rows.stream().max(Comparator.comparingDouble(Row::oneWay)).orElseThrow();
        if (most.oneWay() == 0)
            return "Nowhere does one way alone have the wanted " + wanted() + ": who hears " + middle()
                    + " is heard there, with every loadout.";
        boolean isHears = most.ground().hearsOnly() >= most.ground().heardOnly();
        double share = isHears ? most.ground().hearsOnly() : most.ground().heardOnly();
        return "With " + most.loadout() + " "
                + (isHears
                        ? "people hear " + middle() + ", which does not hear them,"
                        : middle() + " hears people, who do not hear it,")
                + " on " + text(most.ground(), share) + ", each at the wanted " + wanted()
                + (rows.size() > 1 ? "; no loadout has more ground on which one way alone works." : ".");
    }

    private Table<Row> table(List<Row> rows) {
        return Table.of(
                "Share of the known ground, and how much that is, with the wanted " + wanted() + " of that way alone. "
                        + ReachComposer.groundCounted(answer),
                rows,
                List.of(
                        Column.words("loadout", Row::loadout),
                        Column.number(
                                "both ways",
                                row -> text(row.ground(), row.ground().both())),
                        Column.number(
                                "hears " + middle() + " only",
                                row -> text(row.ground(), row.ground().hearsOnly())),
                        Column.number(
                                "heard at " + middle() + " only",
                                row -> text(row.ground(), row.ground().heardOnly()))));
    }

    private String text(OneWayGround ground, double share) {
        return Shares.share(share) + " (" + lengths().area(share * ground.knownM2()) + ")";
    }

    private Lengths lengths() {
        return plan.header().lengths();
    }

    /** Who stands in the middle. */
    static String middle(ReachAnswer answer) {
        return answer.scene().middlePosition().map(one -> one.name()).orElse("the middle");
    }

    private String middle() {
        return middle(answer);
    }

    private String wanted() {
        return Shares.wanted(plan.channel().wish().odds());
    }

    /** One loadout in JSON. */
    private record Numbers(
            String loadout,
            double bothShare,
            double hearsOnlyShare,
            double hearsOnlyKm2,
            double heardOnlyShare,
            double heardOnlyKm2) {}

    /** The same figures in JSON; nothing where they are not asked for. */
    Optional<JsonNode> json() {
        List<Numbers> all = new ArrayList<>();
        for (Row row : rows()) {
            OneWayGround ground = row.ground();
            double knownKm2 = ground.knownM2() / 1e6;
            all.add(new Numbers(
                    row.loadout(),
                    ground.both(),
                    ground.hearsOnly(),
                    ground.hearsOnly() * knownKm2,
                    ground.heardOnly(),
                    ground.heardOnly() * knownKm2));
        }
        return all.isEmpty() ? Optional.empty() : Optional.of(Json.tree(all));
    }
}
