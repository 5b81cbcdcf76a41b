package handreach.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class UnbrokenTest {
    @Test
    void aShareStaysWithItsBoundAndItsSign() {
        assertEquals("calls under\u00a01\u00a0%, or 5\u00a0%", Unbroken.words("calls under 1 %, or 5 %"));
        assertEquals("over\u00a099\u00a0%", Unbroken.words("over 99 %"));
        assertEquals("flyover 9 m", Unbroken.words("flyover 9 m"));
        assertEquals("1\u00a0%", Unbroken.words("1 %"));
    }
}
