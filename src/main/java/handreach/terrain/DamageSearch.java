package handreach.terrain;

import handreach.input.InputFault;
import java.awt.Rectangle;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Halves a part of an image that cannot be read until the damaged blocks stand alone. */
final class DamageSearch {
    /** So many damaged blocks are looked for, which bounds the work. */
    private static final int MOST_LOST = 64;

    private final TiffImage image;
    private final TiffBlocks blocks;
    private final Rectangle part;
    private final InputFault damaged;
    private final List<Rectangle> lost = new ArrayList<>();
    private final List<Integer> numbers = new ArrayList<>();
    private WritableRaster values;

    private DamageSearch(TiffImage image, TiffBlocks blocks, Rectangle part, InputFault damaged) {
        this.image = image;
        this.blocks = blocks;
        this.part = part;
        this.damaged = damaged;
    }

    /**
     * What is sound of the part.
     *
     * @param damaged what was wrong with the whole, thrown again where no block or too few are sound
     */
    static SoundPart sound(TiffImage image, TiffBlocks blocks, Rectangle part, InputFault damaged) {
        DamageSearch search = new DamageSearch(image, blocks, part, damaged);
        search.halve(blocks.under(part));
        if (search.values == null) throw damaged;
        return new SoundPart(search.values, search.lost, Optional.of(image.lost(search.numbers)));
    }

    private void halve(Rectangle some) {
        if (some.width == 1 && some.height == 1) {
            lose(some);
            return;
        }
        boolean isTall = some.height >= some.width;
        int half = (isTall ? some.height : some.width) / 2;
        if (isTall) {
            look(new Rectangle(some.x, some.y, some.width, half));
            look(new Rectangle(some.x, some.y + half, some.width, some.height - half));
        } else {
            look(new Rectangle(some.x, some.y, half, some.height));
            look(new Rectangle(some.x + half, some.y, some.width - half, some.height));
        }
    }

    private void lose(Rectangle block) {
        if (lost.size() == MOST_LOST) throw damaged;
        Rectangle pixels = blocks.pixels(block).intersection(part);
        pixels.translate(-part.x, -part.y);
        lost.add(pixels);
        numbers.add(blocks.number(block.x, block.y));
    }

    private void look(Rectangle some) {
        Rectangle pixels = blocks.pixels(some).intersection(part);
        Raster read;
        try {
            read = image.read(pixels.x, pixels.y, pixels.width, pixels.height);
        } catch (InputFault inside) {
            halve(some);
            return;
        }
        if (values == null) values = read.createCompatibleWritableRaster(part.width, part.height);
        values.setRect(pixels.x - part.x - read.getMinX(), pixels.y - part.y - read.getMinY(), read);
    }
}
