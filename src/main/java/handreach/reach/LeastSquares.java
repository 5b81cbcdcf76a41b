package handreach.reach;

/** Least squares over one set of nodes for any number of values: Householder reflections, made once. */
final class LeastSquares {
    /** By column: below and on the diagonal the reflections, above it what is left of the matrix. */
    private final double[][] columns;

    private final double[] diagonal;

    /** Takes over the columns, which hold at least as many rows as there are of them. */
    LeastSquares(double[][] columns) {
        this.columns = columns;
        this.diagonal = new double[columns.length];
        for (int k = 0; k < columns.length; k++) reflect(k);
    }

    private void reflect(int k) {
        double[] mirror = columns[k];
        double square = 0;
        for (int row = k; row < mirror.length; row++) square += mirror[row] * mirror[row];
        double length = mirror[k] > 0 ? -Math.sqrt(square) : Math.sqrt(square);
        if (length == 0) throw new IllegalArgumentException("the nodes do not tell column " + k + " from those before");
        diagonal[k] = length;
        mirror[k] -= length;
        for (int other = k + 1; other < columns.length; other++) {
            double[] column = columns[other];
            double share = 0;
            for (int row = k; row < column.length; row++) share -= column[row] * mirror[row];
            share /= length * mirror[k];
            for (int row = k; row < column.length; row++) column[row] -= share * mirror[row];
        }
    }

    /**
     * Factors of the columns that come nearest to the values.
     *
     * @shape  one value a row in, one factor a column out; O(rows × columns), pure
     * @unit   as the values
     * @valid  as many values as rows
     * @error  bit for bit that of the library's QR decomposition (test), which sums in the same order
     * @source Householder reflections, as in any text on numerical linear algebra
     */
    double[] factors(double[] values) {
        double[] y = values.clone();
        for (int k = 0; k < columns.length; k++) {
            double[] mirror = columns[k];
            double share = 0;
            for (int row = k; row < y.length; row++) share += y[row] * mirror[row];
            share /= diagonal[k] * mirror[k];
            for (int row = k; row < y.length; row++) y[row] += share * mirror[row];
        }
        double[] factors = new double[columns.length];
        for (int k = columns.length - 1; k >= 0; k--) {
            factors[k] = y[k] / diagonal[k];
            for (int row = 0; row < k; row++) y[row] -= factors[k] * columns[k][row];
        }
        return factors;
    }
}
