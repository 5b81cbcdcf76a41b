package handreach.loadout;

/**
 * What a body does to the control in one position and band, as the default takes it.
 *
 * @param lossDb loss of the mean in decibels against the control on its box, the control on a smaller case held with it
 * @param commonDb standard uncertainty of the loss, without that of the control on its box
 * @param personsDb spread between persons, places on the body and arms
 * @param headingsDb spread over headings
 * @param shadow what a known heading adds and leaves
 * @param origin where the figure comes from, to be printed
 */
record BodyRow(double lossDb, double commonDb, double personsDb, double headingsDb, BodyShadow shadow, String origin) {
    static final String COMPUTED = "computed for this project, 3-D body, no measurement";
    static final String BETWEEN = "between our computation (3-D body) and our earlier bracketing, no measurement";
    static final String BRACKETED = "bracketing of ours, not a published table";

    double spreadDb() {
        return Math.hypot(personsDb, headingsDb);
    }
}
