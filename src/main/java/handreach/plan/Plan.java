package handreach.plan;

/** A plan, checked: every name it refers to exists in it, every number is inside its limits, every file is there. */
public record Plan(
        Heading heading, Channel channel, GroundChoice ground, Kit kit, Places places, Questions questions) {}
