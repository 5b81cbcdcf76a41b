package handreach.terrain;

/**
 * Where the posts of one grid stand.
 *
 * @param frame the plane
 * @param westX x of the first column of posts
 * @param northY y of the first row of posts
 * @param postsPerX columns for one unit of x
 * @param postsPerY rows for one unit of y
 */
record GridFit(Frame frame, double westX, double northY, double postsPerX, double postsPerY) {
    GridFit {
        if (!Double.isFinite(westX) || !Double.isFinite(northY) || !(postsPerX > 0) || !(postsPerY > 0))
            throw new IllegalArgumentException("grid at " + westX + ", " + northY);
        if (Double.isInfinite(postsPerX) || Double.isInfinite(postsPerY))
            throw new IllegalArgumentException("posts " + postsPerX + " and " + postsPerY + " to the unit");
    }
}
