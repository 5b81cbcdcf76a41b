package handreach.desktop;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.Node;
import javafx.scene.SnapshotParameters;
import javafx.scene.paint.Color;

/** Takes a picture of the map as it is shown, with its key in the corner. On the screen thread. */
final class MapPicture {
    private static final int EDGE_PX = 14;

    private final MapView map;
    private final KeyPane key;

    MapPicture(MapView map, KeyPane key) {
        this.map = map;
        this.key = key;
    }

    BufferedImage take() {
        BufferedImage ground = taken(map);
        BufferedImage picture = new BufferedImage(ground.getWidth(), ground.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = picture.createGraphics();
        canvas.drawImage(ground, 0, 0, null);
        if (key.isVisible()) {
            BufferedImage words = taken(key);
            canvas.drawImage(
                    words,
                    ground.getWidth() - words.getWidth() - EDGE_PX,
                    ground.getHeight() - words.getHeight() - EDGE_PX,
                    null);
        }
        canvas.dispose();
        return picture;
    }

    private static BufferedImage taken(Node node) {
        SnapshotParameters clear = new SnapshotParameters();
        clear.setFill(Color.TRANSPARENT);
        return SwingFXUtils.fromFXImage(node.snapshot(clear, null), null);
    }
}
