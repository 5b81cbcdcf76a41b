package handreach.propagation;

import handreach.units.Db;
import handreach.units.Dbm;
import java.util.Locale;

/**
 * What a receiver adds of its own.
 *
 * @param noiseFigureDb noise figure, dB, 0 to 60
 * @param bandwidthHz noise bandwidth, Hz
 */
public record ReceiverNoise(double noiseFigureDb, double bandwidthHz) {
    public ReceiverNoise {
        if (!(noiseFigureDb >= 0 && noiseFigureDb <= 60) || !(bandwidthHz > 0) || !Double.isFinite(bandwidthHz))
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "noise figure %.4g dB in %.6g Hz; a noise figure is 0 to 60 dB, a bandwidth above 0.",
                    noiseFigureDb,
                    bandwidthHz));
    }

    /**
     * Receiver whose sensitivity and carrier-to-noise ratio at that criterion are known, such as 12 dB SINAD.
     *
     * @shape  scalars in, record out; pure
     * @unit   sensitivity dBm, ratio dB, bandwidth Hz
     * @valid  sensitivity at or above the thermal noise; a better one is refused with the limit
     * @error  as the sensitivity, ±1 dB at best
     * @source NF = S − C/N − kT0b, textbooks
     */
    public static ReceiverNoise ofSensitivity(Dbm sensitivity, Db carrierToNoise, double bandwidthHz) {
        double thermal = ExternalNoise.THERMAL_DBM_PER_HZ + 10 * Math.log10(bandwidthHz);
        double figure = sensitivity.dbm() - carrierToNoise.db() - thermal;
        if (figure < 0)
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "a sensitivity of %.1f dBm is better than heat noise allows: at %.1f dB carrier to noise in %.0f Hz no receiver is"
                            + " below %.1f dBm. Check criterion and bandwidth.",
                    sensitivity.dbm(),
                    carrierToNoise.db(),
                    bandwidthHz,
                    thermal + carrierToNoise.db()));
        return new ReceiverNoise(figure, bandwidthHz);
    }

    /**
     * Noise of the receiver alone, kT0b and noise figure.
     *
     * @shape  scalar out; pure
     * @unit   dBm
     * @valid  source at 290 K
     * @error  exact
     * @source definition of the noise figure
     */
    public Dbm floor() {
        return new Dbm(ExternalNoise.THERMAL_DBM_PER_HZ + 10 * Math.log10(bandwidthHz) + noiseFigureDb);
    }

    /**
     * Level needed on a quiet bench for a carrier-to-noise ratio.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   ratio dB; result dBm
     * @valid  no external noise
     * @error  exact
     * @source C = C/N + N
     */
    public Dbm sensitivity(Db carrierToNoise) {
        return floor().plus(carrierToNoise);
    }

    /**
     * Level needed at a place with external noise, behind an antenna with losses.
     *
     * @shape  scalars in, scalar out; pure
     * @unit   ratio dB, external noise dB above kT0b, loss of antenna and body dB; result dBm at the receiver input
     * @valid  lossy parts at 290 K
     * @error  as the noise at the place, 6 to 8 dB (standard deviation)
     * @source Rec. ITU-R P.372-16, section 2
     */
    public Dbm sensitivityAt(Db carrierToNoise, double externalDb, double antennaLossDb) {
        return ExternalNoise.powerDbm(externalDb, antennaLossDb, noiseFigureDb, bandwidthHz)
                .plus(carrierToNoise);
    }
}
