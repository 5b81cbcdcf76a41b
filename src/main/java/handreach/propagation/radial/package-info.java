/**
 * Loss models walked outwards along radials: the ground behind a receiver is carried along, so a path to every sample costs little
 * more than one to the last.
 *
 * <p>What it is not: no cutting of ground and no cells (that is reach). Every formula is the one that the single path uses; here is
 * only how its horizons, fits and runs of trees are found without looking back.
 *
 * <p>Terms: a <em>radial</em> is ground sampled from the source outwards; a <em>walker</em> takes its samples in and stands a
 * receiver behind them. Oracle of all walkers: the single path over the same samples (RadialModelTest).
 */
package handreach.propagation.radial;
