package handreach.report;

import handreach.plan.Plan;
import java.util.Map;

/** What an answer that is handed on is about: the plan and its channel. */
record PlanSubject(String title, String channel, double frequencyMhz) {
    static PlanSubject of(Plan plan) {
        return new PlanSubject(
                plan.header().title(),
                plan.channel().name(),
                plan.channel().frequency().mhz());
    }

    /** As properties of what a map program shows. */
    void putInto(Map<String, Object> properties) {
        properties.put("plan", title);
        properties.put("channel", channel);
        properties.put("frequency_mhz", frequencyMhz);
    }
}
