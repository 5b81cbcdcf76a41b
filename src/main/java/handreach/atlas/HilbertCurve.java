package handreach.atlas;

/** Hilbert's curve through a square: squares next to one another along it lie next to one another. */
final class HilbertCurve {
    private HilbertCurve() {}

    /** Where a square lies along the curve; {@code side} is a power of two, {@code x} and {@code y} from 0 to side − 1. */
    static long index(int side, int x, int y) {
        long at = 0;
        for (int half = side / 2; half > 0; half /= 2) {
            boolean right = (x & half) > 0;
            boolean up = (y & half) > 0;
            at += (long) half * half * (right ? (up ? 2 : 3) : (up ? 1 : 0));
            if (!up) {
                if (right) {
                    x = half - 1 - (x & (half - 1));
                    y = half - 1 - (y & (half - 1));
                }
                int turned = x;
                x = y;
                y = turned;
            }
            x &= half - 1;
            y &= half - 1;
        }
        return at;
    }
}
