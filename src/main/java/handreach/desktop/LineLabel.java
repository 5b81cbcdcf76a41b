package handreach.desktop;

import javafx.scene.control.Label;

/**
 * Words that remember how high they are at a width until something of them changes. A page that grows line by line asks all its lines
 * anew with each, and the toolkit would break every one of them into rows again.
 */
class LineLabel extends Label {
    private double width = Double.NaN;
    private double height;
    private double widthBefore = Double.NaN;
    private double heightBefore;

    LineLabel(String words) {
        super(words);
    }

    @Override
    protected double computePrefHeight(double asked) {
        if (getSkin() == null) return super.computePrefHeight(asked);
        if (asked == width) return height;
        if (asked == widthBefore) return heightBefore;
        widthBefore = width;
        heightBefore = height;
        height = super.computePrefHeight(asked);
        width = asked;
        return height;
    }

    /** Called by the toolkit whenever a size may have become another; it forgets its own then, too. */
    @Override
    public void requestLayout() {
        width = Double.NaN;
        widthBefore = Double.NaN;
        super.requestLayout();
    }
}
