package handreach.loadout;

import handreach.input.Range;

/**
 * What a radio's battery holds, and how the radio draws on it.
 *
 * @param capacityMah as printed on it
 * @param receiveMa drawn while somebody is heard
 * @param waitMa drawn while it waits
 * @param sendShare share of the time that it sends
 * @param receiveShare share of the time that it receives
 */
public record Battery(double capacityMah, double receiveMa, double waitMa, double sendShare, double receiveShare) {
    public static final Range CAPACITY = new Range("battery_mah", 50, 100_000, "mAh");
    public static final Range SEND = new Range("send_ma", 1, 50_000, "mA");
    public static final Range RECEIVE = new Range("receive_ma", 1, 5000, "mA");
    public static final Range WAIT = new Range("wait_ma", 1, 5000, "mA");
    public static final Range SEND_PERCENT = new Range("send_percent", 0, 50, "%");
    public static final Range RECEIVE_PERCENT = new Range("receive_percent", 0, 50, "%");
    /** Of the time, sending as well as receiving, the rest waiting: common practice, no source. */
    public static final double USUAL_PERCENT = 5;

    public Battery {
        if (!(sendShare >= 0 && receiveShare >= 0 && sendShare + receiveShare <= 1))
            throw new IllegalArgumentException("sends " + sendShare + ", receives " + receiveShare);
    }

    /**
     * How long it lasts.
     *
     * @shape  scalar in, scalar out; pure
     * @unit   current while sending mA; result h
     * @valid  a new battery near 20 °C; cold and age take a third and more (common practice, no source)
     * @error  that of the shares of time, which differ from crew to crew by more than all else
     * @source capacity over mean current
     */
    public double hours(double sendMa) {
        double mean = sendShare * sendMa + receiveShare * receiveMa + (1 - sendShare - receiveShare) * waitMa;
        return capacityMah / mean;
    }
}
