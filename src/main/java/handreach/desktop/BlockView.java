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
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The blocks of a composed answer in the window: the same words, tables and figures as on paper. A row may carry a verb. */
final class BlockView extends VBox implements Aside.Divided {
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

    /** The same where the first sentence of the answer stands above already. */
    List<Runnable> stepsUnderHeadline(Page page) {
        List<Runnable> steps = stepsOf(page.answer().subList(1, page.answer().size()));
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
        if (block instanceof Table<?> table) return stepsOf(table);
        return nodes(block).stream()
                .<Runnable>map(node -> () -> {
                    Node made = node.get();
                    getChildren().add(made);
                    if (made.getScene() != null) made.applyCss();
                })
                .toList();
    }

    private List<Runnable> stepsOf(Table<?> table) {
        if (!fits(table)) {
            TableList list = TableList.ofCaption(table, verbs);
            return steps(table, list, list.rows());
        }
        TableGrid grid = TableGrid.ofHeads(table, verbs);
        return steps(table, grid, grid.rows());
    }

    private List<Runnable> steps(Table<?> table, Node begun, List<Runnable> rows) {
        List<Runnable> steps = new ArrayList<>(List.of(() -> {
            getChildren().add(new TableFrame(table, begun));
            begun.applyCss();
        }));
        steps.addAll(rows);
        return steps;
    }

    /** Shows a few blocks at once. */
    void showBlocks(List<? extends Block> blocks) {
        getChildren().clear();
        blocks.forEach(this::add);
    }

    private void add(Block block) {
        nodes(block).forEach(node -> getChildren().add(node.get()));
    }

    /** What shows a block, each line of it on its own. */
    private List<Supplier<Node>> nodes(Block block) {
        List<Supplier<Node>> nodes = new ArrayList<>();
        if (block instanceof Paragraph paragraph)
            nodes.add(() -> Labels.line(paragraph.words(), hand(paragraph.weight())));
        else if (block instanceof Bullets bullets)
            bullets.points().forEach(point -> nodes.add(() -> Labels.line("\u2022 " + point, "plain")));
        else if (block instanceof Subheading heading) nodes.add(() -> Labels.line(heading.words(), "strong"));
        else if (block instanceof Facts facts)
            facts.facts().forEach(fact -> nodes.add(() -> Labels.line(fact.name() + ": " + fact.value(), "plain")));
        else if (block instanceof Table<?> table) nodes.add(() -> new TableFrame(table, shown(table)));
        else if (block instanceof CautionBlock cautions)
            cautions.cautions().forEach(caution -> nodes.add(() -> caution(caution)));
        else if (block instanceof Drawing drawing) {
            nodes.add(() -> figure(drawing));
            if (!drawing.caption().isBlank()) nodes.add(() -> Labels.line(drawing.caption(), "quiet"));
        } else throw new IllegalArgumentException("no node for a block of kind " + block.getClass());
        return nodes;
    }

    private boolean fits(Table<?> table) {
        return TableGrid.fits(
                table, figurePx * MapFonts.USUAL_PX / session.fonts().get().sizePx());
    }

    private Node shown(Table<?> table) {
        return fits(table) ? new TableGrid(table, verbs) : TableList.whole(table, verbs);
    }

    /** Shows a table in columns or row under row, as words of their present size have room. */
    private final class TableFrame extends StackPane implements Aside.Divided {
        private final Table<?> table;
        /** Held weakly by the session: tables come and go with the answers. */
        private final ChangeListener<MapFonts> resize = (fonts, before, now) -> choose();

        private boolean isGrid;

        TableFrame(Table<?> table, Node first) {
            super(first);
            this.table = table;
            this.isGrid = first instanceof TableGrid;
            session.fonts().addListener(new WeakChangeListener<>(resize));
        }

        private void choose() {
            if (isGrid == fits(table)) return;
            isGrid = !isGrid;
            getChildren().setAll(shown(table));
        }
    }

    private Node figure(Drawing drawing) {
        FigurePane pane = new FigurePane(session);
        pane.show(drawing::figure, figurePx);
        return pane;
    }

    private static Node caution(Caution caution) {
        return Labels.line(Cautions.opening(caution) + " " + Cautions.rest(caution), "caution");
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
