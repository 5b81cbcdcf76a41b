package handreach.report.card;

import java.util.List;
import java.util.function.Function;

/** A section of a card that is made of lines: its heading, and its lines in the notes. Front and back write the same. */
enum NoteSection {
    DEAD_GROUND("Dead ground", CardView.Notes::deadGround),
    RELAY("Relay", CardView.Notes::relay),
    FALLBACK("If contact is lost", CardView.Notes::fallback),
    CHECK_TIMES("Check times", CardView.Notes::checkTimes),
    DOUBTS("Doubtful", CardView.Notes::doubts);

    private final String heading;
    private final Function<CardView.Notes, List<CardLine>> lines;

    NoteSection(String heading, Function<CardView.Notes, List<CardLine>> lines) {
        this.heading = heading;
        this.lines = lines;
    }

    String heading() {
        return heading;
    }

    List<CardLine> of(CardView.Notes notes) {
        return lines.apply(notes);
    }
}
