package handreach.report;

import handreach.budget.Exposure;
import handreach.loadout.AntennaGain;
import handreach.loadout.Loadout;
import handreach.study.RelayAnswer;
import handreach.units.Dbi;

/** How far people keep from the relay's antenna. */
final class RelayExposure {
    private static final double DUTY = 0.5;

    private RelayExposure() {}

    static double keepAwayM(RelayAnswer answer) {
        Loadout relay = answer.equipment().end().loadout();
        Dbi gain = ((AntennaGain.Absolute) relay.gain()).gain();
        double watts = Math.pow(10, (relay.radio().power().dbm() - 30) / 10);
        double away = 0;
        for (Exposure.Rule rule : Exposure.Rule.values())
            away = Math.max(
                    away,
                    Exposure.keepAwayM(
                            rule,
                            watts,
                            gain,
                            DUTY,
                            answer.scene().plan().channel().frequency()));
        return away;
    }
}
