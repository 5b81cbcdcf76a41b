package handreach.propagation;

/**
 * What the models know of woods and towns beyond the profile.
 *
 * @param foliage state of the trees
 * @param standing where the field march counts them
 */
public record CoverState(Foliage foliage, Standing standing) {
    /** As the published curves mean it, at the ends. */
    public static final CoverState USUAL = new CoverState(Foliage.IN_LEAF, Standing.AT_ENDS);
}
