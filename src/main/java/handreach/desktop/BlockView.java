package handreach.desktop;

import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.Caution;
import handreach.report.page.CautionBlock;
import handreach.report.page.Cautions;
import handreach.report.page.Drawing;
import handreach.report.page.Facts;
import handreach.report.page.Page;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Subheading;
import handreach.report.page.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The blocks of a composed answer in the window: the same words, tables and figures as on paper. A row may carry a verb. */
final class BlockView extends VBox {
    private final Session session;
    private final double figurePx;
    private final List<RowVerb<?>> verbs;

    /**
     * What pressing a row does.
     *
     * @param <T> what the row is about
     * @param row rows of this kind carry the verb
     * @param words what it does, for those who cannot see it
     * @param verb is handed the row
     */
    record RowVerb<T>(Class<T> row, String words, Consumer<T> verb) {
        boolean fits(Object about) {
            return row.isInstance(about);
        }

        void run(Object about) {
            verb.accept(row.cast(about));
        }

        /** The first cell of a row as a link, if one of the verbs is for such rows. */
        static Optional<Button> link(Table<?> table, int row, List<RowVerb<?>> verbs) {
            Object about = table.row(row);
            return verbs.stream().filter(each -> each.fits(about)).findFirst().map(verb -> {
                Button link = Labels.link(table.cell(row, 0), () -> verb.run(about));
                String words = verb.words() + ": " + table.cell(row, 0);
                link.setAccessibleText(words);
                link.setTooltip(new Tooltip(words));
                return link;
            });
        }
    }

    /** Figures are drawn at most {@code figurePx} wide; a table that needs more is shown row under row. */
    BlockView(Session session, double figurePx, RowVerb<?>... verbs) {
        super(8);
        this.session = session;
        this.figurePx = figurePx;
        this.verbs = List.of(verbs);
    }

    /** Steps that show sections, looks worked out: all at once they would hold up a picture ({@link Worker.InPieces}). */
    List<Runnable> steps(List<Section> sections) {
        List<Runnable> steps = new ArrayList<>(List.of(getChildren()::clear));
        sections.forEach(section -> steps.addAll(steps(section)));
        return steps;
    }

    /** Steps that show the answer, then the sections. */
    List<Runnable> steps(Page page) {
        List<Runnable> steps = stepsOf(page.answer());
        page.sections().forEach(section -> steps.addAll(steps(section)));
        return steps;
    }

    private List<Runnable> steps(Section section) {
        List<Runnable> steps = new ArrayList<>();
        steps.add(() -> getChildren().add(Labels.line(section.heading(), "panel-head")));
        section.blocks().forEach(block -> steps.addAll(steps(block)));
        return steps;
    }

    /** Steps that show blocks. */
    List<Runnable> stepsOf(List<? extends Block> blocks) {
        List<Runnable> steps = new ArrayList<>(List.of(getChildren()::clear));
        blocks.forEach(block -> steps.addAll(steps(block)));
        return steps;
    }

    private List<Runnable> steps(Block block) {
        if (!(block instanceof Table<?> table) || !fits(table)) return List.of(() -> addDressed(block));
        TableGrid grid = TableGrid.ofHeads(table, verbs);
        List<Runnable> steps = new ArrayList<>(List.of(() -> {
            getChildren().add(new TableFrame(table, grid));
            grid.applyCss();
        }));
        steps.addAll(grid.rows());
        return steps;
    }

    private void addDressed(Block block) {
        int before = getChildren().size();
        add(block);
        List.copyOf(getChildren().subList(before, getChildren().size())).forEach(Node::applyCss);
    }

    /** Shows a few blocks at once. */
    void showBlocks(List<? extends Block> blocks) {
        getChildren().clear();
        blocks.forEach(this::add);
    }

    private void add(Block block) {
        if (block instanceof Paragraph paragraph)
            getChildren().add(Labels.line(paragraph.words(), hand(paragraph.weight())));
        else if (block instanceof Bullets bullets)
            bullets.points().forEach(point -> getChildren().add(Labels.line("\u2022 " + point, "plain")));
        else if (block instanceof Subheading heading) getChildren().add(Labels.line(heading.words(), "strong"));
        else if (block instanceof Facts facts)
            facts.facts().forEach(fact -> getChildren().add(Labels.line(fact.name() + ": " + fact.value(), "plain")));
        else if (block instanceof Table<?> table) getChildren().add(new TableFrame(table, shown(table)));
        else if (block instanceof CautionBlock cautions)
            cautions.cautions().forEach(caution -> getChildren().add(caution(caution)));
        else if (block instanceof Drawing drawing) add(drawing);
        else throw new IllegalArgumentException("no node for a block of kind " + block.getClass());
    }

    private boolean fits(Table<?> table) {
        return TableGrid.fits(
                table, figurePx * MapFonts.USUAL_PX / session.fonts().get().sizePx());
    }

    private Node shown(Table<?> table) {
        return fits(table) ? new TableGrid(table, verbs) : new TableList(table, verbs);
    }

    /** Shows a table in columns or row under row, as words of their present size have room. */
    private final class TableFrame extends StackPane {
        private final Table<?> table;
        /** Held weakly by the session: tables come and go with the answers. */
        private final ChangeListener<MapFonts> resize = (fonts, before, now) -> choose();

        TableFrame(Table<?> table, Node first) {
            super(first);
            this.table = table;
            session.fonts().addListener(new WeakChangeListener<>(resize));
        }

        private void choose() {
            boolean isGrid = getChildren().get(0) instanceof TableGrid;
            if (isGrid != fits(table)) getChildren().setAll(shown(table));
        }
    }

    private void add(Drawing drawing) {
        FigurePane pane = new FigurePane(session);
        pane.show(drawing::figure, figurePx);
        getChildren().add(pane);
        if (!drawing.caption().isBlank()) getChildren().add(Labels.line(drawing.caption(), "quiet"));
    }

    private static Node caution(Caution caution) {
        String title = Cautions.title(caution);
        String brief = Cautions.brief(caution);
        boolean isSaid = brief.toLowerCase(Locale.ROOT).contains(title.toLowerCase(Locale.ROOT));
        return Labels.line(isSaid ? brief : title + ". " + brief, "caution");
    }

    private static String hand(Paragraph.Weight weight) {
        return switch (weight) {
            case ANSWER -> "strong";
            case PLAIN -> "plain";
            case QUIET -> "quiet";
            case WARNING -> "caution";
        };
    }
}
