package handreach;

/** The doorway. */
public final class Handreach {
    private Handreach() {}

    public static void main(String[] args) {
        System.out.println("Handreach");
    }
}
