/** Reflection over frequency: one-port sweeps in, standing-wave ratio, resonance, bandwidth and trimming out. */
package handreach.bench.match;
