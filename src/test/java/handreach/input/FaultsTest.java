package handreach.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class FaultsTest {
    private final Faults faults = new Faults();

    private List<String> told() {
        return faults.list().stream().map(Fault::message).toList();
    }

    @Test
    void everyFaultIsToldInTheOrderFound() {
        faults.add("a.csv", 3, "is wrong.");
        faults.add("a.csv", 3, "is wrong.");
        faults.add("--option", 0, "is missing.");
        assertEquals(List.of("a.csv line 3: is wrong.", "a.csv line 3: is wrong.", "--option: is missing."), told());
        assertEquals(
                String.join("\n", told()),
                assertThrows(InputFault.class, faults::throwIfAny).getMessage());
    }

    @Test
    void faultsThatDifferOnlyInWhatWasFoundAreCountedBehindTheFirst() {
        faults.addLike("a.csv", 3, "depth is \"x\", a number is expected.");
        faults.addLike("a.csv", 5, "depth is \"y\", a number is expected.");
        faults.addLike("a.csv", 6, "width is \"y\", a number is expected.");
        assertEquals(
                List.of(
                        "a.csv line 3: depth is \"x\", a number is expected. And 1 more like it: line 5.",
                        "a.csv line 6: width is \"y\", a number is expected."),
                told());
    }

    @Test
    void ofManyLinesTheFirstFewAreNamed() {
        for (int line = 2; line <= 6; line++) faults.addLike("a.csv", line, "is wrong.");
        assertEquals(List.of("a.csv line 2: is wrong. And 4 more like it: lines 3, 4, 5, 6."), told());
        faults.addLike("a.csv", 7, "is wrong.");
        assertEquals(List.of("a.csv line 2: is wrong. And 5 more like it: lines 3, 4, 5, 6 and so on."), told());
    }

    @Test
    void theSameFaultOfTwoFilesIsToldOfBoth() {
        faults.addLike("a.csv", 2, "is wrong.");
        faults.addLike("b.csv", 2, "is wrong.");
        assertEquals(2, told().size());
    }

    @Test
    void withoutAFaultNothingIsThrown() {
        assertTrue(faults.isEmpty());
        faults.throwIfAny();
    }
}
