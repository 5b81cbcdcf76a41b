package handreach.terrain;

/** Posts of a tile that could not be read. */
record UnreadablePosts(int rows, int columns) implements Posts {
    @Override
    public double at(int row, int column) {
        return Double.NaN;
    }

    @Override
    public boolean isFilled(int row, int column) {
        return false;
    }

    @Override
    public long voidCount() {
        return (long) rows * columns;
    }

    @Override
    public long filledCount() {
        return 0;
    }

    @Override
    public double lowestM() {
        return Double.NaN;
    }

    @Override
    public double highestM() {
        return Double.NaN;
    }

    @Override
    public long bytes() {
        return 0;
    }

    @Override
    public int run(
            Lattice lattice,
            int row0,
            int column0,
            double[] latitudeDeg,
            double[] longitudeDeg,
            int from,
            int to,
            double[] heightM,
            boolean[] isVoid) {
        return from;
    }
}
