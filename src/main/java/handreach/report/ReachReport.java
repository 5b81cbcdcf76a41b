package handreach.report;

import handreach.report.page.Block;
import handreach.report.page.Drawing;
import handreach.report.page.Opening;
import handreach.report.page.Page;
import handreach.report.page.Section;
import handreach.report.page.Sheet;
import handreach.report.page.Subheading;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The report on reach: answer first, then table, map, rose, profile, ledger, evidence, and what it all rests on. */
public final class ReachReport {
    private ReachReport() {}

    public static Page page(ReachView view) {
        List<Section> sections = new ArrayList<>();
        sections.add(Section.of("Reach by loadout", table(view.reach())));
        List<Block> maps = new ArrayList<>(view.drawings().maps());
        if (!maps.isEmpty()) sections.add(new Section(maps.size() == 1 ? "Map" : "Maps", maps));
        view.drawings()
                .rose()
                .ifPresent(
                        rose -> sections.add(
                                Section.of(
                                        "Reach by bearing",
                                        new Drawing(
                                                rose,
                                                "Distance to which copy is kept from the middle outwards. A band is the interval from doubt that"
                                                        + " all places share: the true line may lie anywhere in it, but as a whole."))));
        List<Block> profiles = new ArrayList<>(view.drawings().profiles());
        if (!profiles.isEmpty()) sections.add(new Section("Ground along a path", profiles));
        if (!view.links().isEmpty()) sections.add(new Section("Where the decibels go", ledgers(view.links())));
        sections.addAll(view.evidence());
        sections.addAll(view.grounds().sections());
        Opening opening = view.opening();
        return new Page(
                "Reach report", opening.title(), opening.question(), opening.blocks(), sections, opening.imprint());
    }

    private static Sheet table(ReachView.Reach reach) {
        Lengths style = reach.style();
        List<Sheet.Row> rows = new ArrayList<>();
        for (ReachLine line : reach.lines())
            rows.add(Sheet.Row.of(
                    line.mark().letter(),
                    line.name(),
                    twoLines(line.median().text(style)),
                    twoLines(line.worst().span().text(style))
                            + String.format(
                                    Locale.ROOT, " at %03.0f°", line.worst().bearingDeg()),
                    twoLines(line.share()),
                    line.verdict()));
        return new Sheet(
                "Continuous reach ends before the first stretch longer than 200 m below the wanted odds. In brackets: 95 % interval"
                        + " from doubt common to all places.",
                List.of(
                        Sheet.Column.words(""),
                        Sheet.Column.words("loadout"),
                        Sheet.Column.number("median over bearings"),
                        Sheet.Column.number("worst bearing"),
                        Sheet.Column.number("share of the ground"),
                        Sheet.Column.words("verdict")),
                rows);
    }

    /** The interval under its value, so that the words beside have room. */
    private static String twoLines(String text) {
        return text.replace(" (", "\n(");
    }

    private static List<Block> ledgers(List<ReachView.Link> links) {
        List<Block> blocks = new ArrayList<>();
        for (ReachView.Link link : links) {
            if (links.size() > 1) blocks.add(new Subheading(link.name()));
            blocks.add(LedgerSheet.of(link.ledger()));
        }
        return blocks;
    }
}
