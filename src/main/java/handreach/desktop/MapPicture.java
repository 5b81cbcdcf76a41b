package handreach.desktop;

import handreach.geodesy.PlaceForm;
import handreach.report.ReachComposer;
import handreach.report.card.CardSize;
import handreach.report.card.MapPage;
import handreach.report.draw.Picture;
import handreach.report.file.AnswerFile;
import handreach.study.Scene;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.time.Instant;
import java.time.LocalDate;
import javafx.embed.swing.SwingFXUtils;
import javafx.print.PageLayout;
import javafx.print.PrinterJob;
import javafx.scene.Node;
import javafx.scene.SnapshotParameters;
import javafx.scene.image.ImageView;
import javafx.scene.text.Text;
import javafx.stage.Window;

/** Takes a picture of the map as it is shown: title, channel and date above, key and scale on it, cautions below. On the screen thread. */
final class MapPicture {
    private static final int EDGE_PX = 14;
    private static final double TITLE = 1.5;

    private final Session session;
    private final MapView map;
    private final KeyPane key;

    MapPicture(Session session, MapView map, KeyPane key) {
        this.session = session;
        this.map = map;
        this.key = key;
    }

    BufferedImage take() {
        Scene scene = session.scene().get();
        BufferedImage ground = ground();
        BufferedImage title = words(scene.plan().header().title(), TITLE, ground.getWidth());
        BufferedImage what = words(what(scene), 1, ground.getWidth());
        BufferedImage cautions = words(MapPage.cautions(), 1, ground.getWidth());
        int head = title.getHeight() + what.getHeight() + 2 * EDGE_PX;
        int foot = cautions.getHeight() + 2 * EDGE_PX;
        BufferedImage picture =
                new BufferedImage(ground.getWidth(), head + ground.getHeight() + foot, BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = picture.createGraphics();
        canvas.setColor(new Color(Palette.rgb(map.palette().get().halo())));
        canvas.fillRect(0, 0, picture.getWidth(), picture.getHeight());
        canvas.drawImage(title, EDGE_PX, EDGE_PX, null);
        canvas.drawImage(what, EDGE_PX, EDGE_PX + title.getHeight(), null);
        canvas.drawImage(ground, 0, head, null);
        canvas.drawImage(cautions, EDGE_PX, head + ground.getHeight() + EDGE_PX, null);
        canvas.dispose();
        return picture;
    }

    /** The map with its key, as a sheet of paper. */
    AnswerFile.Content sheet(CardSize paper) {
        Scene scene = session.scene().get();
        BufferedImage ground = ground();
        int[] rgb = ground.getRGB(0, 0, ground.getWidth(), ground.getHeight(), null, 0, ground.getWidth());
        return MapPage.pdf(
                scene.plan().header().title(),
                what(scene),
                Picture.of(ground.getWidth(), ground.getHeight(), rgb),
                paper,
                Instant.now());
    }

    /** Without the edge that tells where the keys go. */
    private BufferedImage ground() {
        BufferedImage ground = map.withoutFocusRing(() -> taken(map));
        BufferedImage whole = new BufferedImage(ground.getWidth(), ground.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = whole.createGraphics();
        canvas.drawImage(ground, 0, 0, null);
        if (key.isVisible())
            canvas.drawImage(
                    taken(key),
                    (int) Math.round(key.getLayoutX() + key.getTranslateX()),
                    (int) Math.round(key.getLayoutY() + key.getTranslateY()),
                    null);
        canvas.dispose();
        return whole;
    }

    private String what(Scene scene) {
        PlaceForm form = scene.plan().header().placeForm();
        return ReachComposer.channel(scene, session.carried().get()) + "; with "
                + session.carried().get().name() + ", from " + form.format(session.stand()) + "; drawn "
                + LocalDate.now() + " by Handreach";
    }

    private BufferedImage words(String words, double size, int widthPx) {
        Text text = new Text(words);
        MapFonts fonts = new MapFonts(size * MapFonts.USUAL_PX);
        text.setFont(fonts.font(size > 1));
        text.setFill(map.palette().get().ink());
        text.setWrappingWidth(widthPx - 2.0 * EDGE_PX);
        return taken(text);
    }

    private static BufferedImage taken(Node node) {
        SnapshotParameters clear = new SnapshotParameters();
        clear.setFill(javafx.scene.paint.Color.TRANSPARENT);
        return SwingFXUtils.fromFXImage(node.snapshot(clear, null), null);
    }

    /** Prints it on one page, as large as that allows; where there is no printer, says what to do instead. */
    void print(Window owner) {
        if (session.scene().get() == null) return;
        PrinterJob job = PrinterJob.createPrinterJob();
        if (job == null) {
            session.tell(Notice.remark(
                    "No printer is set up on this computer. Hand over the picture of the map (PNG) and print"
                            + " that elsewhere."));
            return;
        }
        if (!job.showPrintDialog(owner)) return;
        PageLayout paper = job.getJobSettings().getPageLayout();
        Node page = onPaper(paper.getPrintableWidth(), paper.getPrintableHeight());
        if (job.printPage(page)) job.endJob();
        else session.tell(Notice.remark("The printer did not take the page."));
    }

    /** The picture as it comes on paper of this size, points: as large as it goes in whole, its sides in proportion. */
    Node onPaper(double widePt, double highPt) {
        ImageView page = new ImageView(SwingFXUtils.toFXImage(take(), null));
        page.setPreserveRatio(true);
        page.setFitWidth(widePt);
        page.setFitHeight(highPt);
        return page;
    }
}
