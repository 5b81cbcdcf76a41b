package handreach.report.card;

/** Paper of a field card. */
public enum CardSize {
    /** 210 by 297 mm. */
    A4(210, 297),
    /** 8.5 by 11 inches. */
    LETTER(215.9, 279.4);

    private static final double PX_PER_MM = 96 / 25.4;

    private final double widthMm;
    private final double heightMm;

    CardSize(double widthMm, double heightMm) {
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    double widthPx() {
        return widthMm * PX_PER_MM;
    }

    double heightPx() {
        return heightMm * PX_PER_MM;
    }
}
