package handreach.report.card;

import handreach.report.draw.Figure;
import handreach.report.draw.Fitted;
import handreach.report.draw.Pen;
import handreach.report.draw.TextStyle;
import handreach.report.draw.Typeface;
import handreach.report.figure.RoseFigure;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** What both forms of the field card have: their paper, the rose, words that fit, and the sections they are made of. */
abstract class CardLayout implements Figure {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    final CardSize paper;
    final RoseFigure rose;
    final CardFit fit;

    CardLayout(CardView view, CardSize paper, RoseFigure rose) {
        this.paper = paper;
        this.rose = rose;
        this.fit = CardFit.of(view, this::fits);
    }

    /** Whether everything has room at this size of letters. Asked while the card is made: paper and rose are there. */
    abstract boolean fits(CardView view, double size);

    @Override
    public String description() {
        return rose.description();
    }

    @Override
    public double widthPx() {
        return paper.widthPx();
    }

    @Override
    public double heightPx() {
        return paper.heightPx();
    }

    /** When it was made, and the title, in the largest letters from the larger size down that have room. */
    static void head(Pen pen, CardView.Header header, double left, double width, Lines at) {
        String day = DAY.format(header.made());
        pen.part(Pen.Part.PARAGRAPH, "Field card, " + day, () -> {
            pen.write(left, at.dayY, "Field card", TextStyle.quiet(at.dayPx).bold());
            pen.write(left + width, at.dayY, day, TextStyle.quiet(at.dayPx).end());
        });
        TextStyle large = TextStyle.plain(fitting(header.title(), true, width, at.largestPx, at.leastPx))
                .bold();
        pen.part(
                Pen.Part.TITLE,
                header.title(),
                () -> pen.write(left, at.titleY, Fitted.words(header.title(), large, width), large));
    }

    /** Where the lines of the head stand, and how large they are, px. */
    record Lines(double dayY, double dayPx, double titleY, double largestPx, double leastPx) {}

    /** The largest size of letters, in steps of half a pixel, at which words have room; the least where none does. */
    static double fitting(String words, boolean isBold, double width, double largestPx, double leastPx) {
        double size = largestPx;
        while (size > leastPx && Typeface.of(isBold).widthPx(words, size) > width) size -= 0.5;
        return size;
    }

    static void carriers(CardText text, CardView view) {
        text.heading(CardText.LOADOUTS);
        text.paragraph(view.loadouts().far());
        for (CardLoadout loadout : view.loadouts().lines()) text.loadout(loadout);
    }

    static void deadGround(CardText text, CardView view) {
        text.heading(NoteSection.DEAD_GROUND.heading());
        text.lines(view.notes().deadGround());
    }

    static void relay(CardText text, CardView view) {
        text.heading(NoteSection.RELAY.heading() + toFillIn(view.notes().relay()));
        text.lines(view.notes().relay());
    }

    static void fallback(CardText text, CardView view) {
        text.heading(NoteSection.FALLBACK.heading());
        text.numbered(view.notes().fallback());
    }

    static void checkTimes(CardText text, CardView view) {
        text.heading(NoteSection.CHECK_TIMES.heading() + toFillIn(view.notes().checkTimes()));
        text.lines(view.notes().checkTimes());
    }

    /** Lines that are left empty are for the pencil, and say so. */
    private static String toFillIn(List<CardLine> lines) {
        return lines.isEmpty() || lines.equals(List.of(CardLine.BLANK)) ? ": write in by hand" : "";
    }

    /** What is doubtful about the figures; nothing where nothing is. */
    static void doubts(CardText text, CardView view) {
        if (view.notes().doubts().isEmpty()) return;
        text.gap();
        if (!CardFit.areNamedOnly(view.notes().doubts())) text.heading(NoteSection.DOUBTS.heading());
        text.lines(view.notes().doubts());
    }
}
