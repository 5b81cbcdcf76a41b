package handreach.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NotesTest {
    @Test
    void whatIsSaidOfManyIsToldOnceWithTheirNumber() {
        List<String> notes = new ArrayList<>(List.of("the whole session."));
        for (int i = 1; i <= 123; i++) notes.add("antenna " + i + ", in hand: one trial.");
        notes.add("antenna 1, in hand: it drifts.");
        assertEquals(
                List.of(
                        "the whole session.",
                        "antenna 1, in hand; antenna 2, in hand; antenna 3, in hand and 120 more: one trial.",
                        "antenna 1, in hand: it drifts."),
                Notes.once(notes));
    }

    @Test
    void fewAreAllNamedAndTheSameOneOnce() {
        assertEquals(
                List.of("a; b: read again.", "Mind it."),
                Notes.once(List.of("a: read again.", "b: read again.", "Mind it.", "a: read again.", "Mind it.")));
    }
}
