package handreach.report.card;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import handreach.cartography.LoadoutMark;
import handreach.report.SampleFigures;
import handreach.report.draw.Svg;
import handreach.report.draw.Typeface;
import handreach.report.figure.RoseFigure;
import handreach.report.file.AnswerFile;
import handreach.report.page.Caution;
import handreach.report.page.Cautions;
import handreach.units.Lengths;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;

class FieldCardTest {
    private static final Instant MADE = Instant.parse("2026-05-02T06:30:00Z");
    private static final RoseFigure ROSE = RoseFigure.of(
                    "reach", List.of(SampleFigures.trace(0, true), SampleFigures.trace(1, false)), Lengths.METRIC)
            .sized(60)
            .over(SampleFigures.HILLS, SampleFigures.MIDDLE, List.of(), List.of());

    private static CardView view(String name, int lines) {
        List<CardLine> many =
                Collections.nCopies(lines, new CardLine("NE to E:", "nothing sure beyond 0.8 km, " + name));
        List<CardLoadout> loadouts = new ArrayList<>();
        List<CardPerson> people = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            loadouts.add(new CardLoadout(Optional.of(LoadoutMark.of(i)), name, "median 2.9 km (2.1 to 3.8)"));
            people.add(new CardPerson(
                    String.valueOf(i + 1),
                    "Party " + i,
                    name,
                    "16S 750626 4017508",
                    "045\u00b0, 2.9 km",
                    new CardPerson.Odds(
                            new CardPerson.Share("23 %", true),
                            new CardPerson.Share("45 %", true),
                            new CardPerson.Share(">99 %", false))));
        }
        return new CardView(
                new CardView.Header(name, "Ops 1, 155.100 MHz", "copy at 90 % of places", MADE),
                new CardView.Loadouts("Reach with the same at both ends.", loadouts),
                new CardPeople("camp", "Calls: odds that camp copies them.", people, List.of()),
                ROSE,
                new CardView.Notes(many, many, many, many, many),
                Cautions.RAISING);
    }

    private static byte[] bytes(AnswerFile.Content content) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        content.writeTo(out);
        return out.toByteArray();
    }

    /** Text of a page and the places of its letters. */
    private static final class Letters extends PDFTextStripper {
        private final List<TextPosition> all = new ArrayList<>();

        Letters() throws IOException {
            setSuppressDuplicateOverlappingText(true);
        }

        @Override
        protected void processTextPosition(TextPosition text) {
            super.processTextPosition(text);
            all.add(text);
        }
    }

    @Test
    void everythingStandsOnOneSheetOfTheRightSize() throws IOException {
        for (CardSize paper : CardSize.values())
            try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(view("whip", 3), paper)))) {
                assertEquals(1, card.getNumberOfPages());
                PDPage page = card.getPage(0);
                assertEquals(
                        paper == CardSize.A4 ? 595.28 : 612, page.getMediaBox().getWidth(), 0.1);
                assertEquals(
                        paper == CardSize.A4 ? 841.89 : 792, page.getMediaBox().getHeight(), 0.1);
                Letters letters = new Letters();
                String text = letters.getText(card).replaceAll("\\s+", " ");
                for (String word : List.of(
                        "Loadouts",
                        "Who is where",
                        "16S 750626 4017508",
                        "045\u00b0, 2.9 km",
                        "Party 3",
                        "Dead ground",
                        "Relay",
                        "If contact is lost",
                        "Check times",
                        "155.100 MHz")) assertTrue(text.contains(word), word);
                assertEquals(1, text.split("(?i)odds, not a promise", -1).length - 1, text);
                for (Caution caution : Cautions.RAISING)
                    assertTrue(text.contains(Cautions.title(caution).substring(1)), Cautions.title(caution));
                for (TextPosition letter : letters.all) {
                    assertTrue(letter.getX() > 20
                            && letter.getX() < page.getMediaBox().getWidth() - 20);
                    assertTrue(letter.getY() > 20
                            && letter.getY() < page.getMediaBox().getHeight() - 20);
                    assertTrue(letter.getFontSizeInPt() >= 8.99, letter + " is " + letter.getFontSizeInPt() + " pt");
                }
            }
    }

    @Test
    void tooMuchIsCutAndSaidSoAndCautionsAreNever() throws IOException {
        for (AnswerFile.Content card : List.of(
                FieldCard.sheet(view("a loadout with a rather long name", 30), CardSize.A4),
                FieldCard.fold(view("a loadout with a rather long name", 30), CardSize.LETTER)))
            try (PDDocument document = Loader.loadPDF(bytes(card))) {
                Letters letters = new Letters();
                String text = letters.getText(document).replaceAll("\\s+", " ");
                assertTrue(text.contains("more overleaf"), text);
                assertFalse(text.contains("in the report"), text);
                assertTrue(document.getNumberOfPages() > 1);
                PDFTextStripper back = new PDFTextStripper();
                back.setStartPage(2);
                String overleaf = back.getText(document).replaceAll("\\s+", " ");
                for (String heading : List.of("Dead ground", "Relay", "Check times", "Doubtful"))
                    assertTrue(overleaf.contains(heading), heading + " in " + overleaf);
                assertTrue(overleaf.split("NE to E: nothing sure", -1).length > 4 * 30, overleaf);
                for (TextPosition letter : letters.all)
                    assertTrue(letter.getY() > 10
                            && letter.getY() < document.getPage(0).getMediaBox().getHeight() - 10);
            }
    }

    @Test
    void doubtsArePrintedAndGiveWayToWhatToDo() throws IOException {
        CardLine[] steps = new CardLine[6];
        for (int i = 0; i < steps.length; i++) steps[i] = CardLine.of("Step " + i + " of what to do.");
        for (int doubts : new int[] {2, 60}) {
            List<CardLine> many = Collections.nCopies(doubts, CardLine.of("Lost beyond 65 dB on 44 of 72 bearings."));
            CardView.Notes notes = new CardView.Notes(List.of(), List.of(), List.of(steps), List.of(), many);
            CardView view = bare(notes);
            for (AnswerFile.Content card :
                    List.of(FieldCard.sheet(view, CardSize.A4), FieldCard.fold(view, CardSize.A4)))
                try (PDDocument document = Loader.loadPDF(bytes(card))) {
                    String text = new PDFTextStripper().getText(document).replaceAll("\\s+", "");
                    assertTrue(
                            text.contains("Doubtful")
                                    && text.contains(doubts == 2 ? "44of72bearings" : "moreinthereport"),
                            text);
                    for (CardLine step : steps)
                        assertTrue(text.contains(step.words().replace(" ", "")), text);
                    assertEquals(doubts == 60, text.contains("moreinthereport"));
                    assertEquals(1, document.getNumberOfPages(), "no back for doubts alone");
                }
        }
    }

    /** Where check times have no room in full, all are told in brief before one is left out; the back has their places. */
    @Test
    void checkTimesGoIntoBriefBeforeOneIsLeftOut() throws IOException {
        List<CardLine> checks = IntStream.range(0, 5)
                .mapToObj(i -> new CardLine(
                        "patrol " + i + ":",
                        "silence 08:18 UTC to 08:50 UTC (32 min, 1.9 km); ".repeat(9),
                        "call 08:1" + i + ", silence 08:20 to 08:50 UTC"))
                .toList();
        CardLine[] steps = new CardLine[6];
        for (int i = 0; i < steps.length; i++) steps[i] = CardLine.of("Step " + i + " of what to do.");
        CardView view = bare(new CardView.Notes(List.of(), List.of(), List.of(steps), checks, List.of()));
        for (AnswerFile.Content card : List.of(FieldCard.sheet(view, CardSize.A4), FieldCard.fold(view, CardSize.A4)))
            try (PDDocument document = Loader.loadPDF(bytes(card))) {
                PDFTextStripper pages = new PDFTextStripper();
                pages.setEndPage(1);
                String front = pages.getText(document).replaceAll("\\s+", "");
                for (int i = 0; i < 5; i++) assertTrue(front.contains("call08:1" + i), i + " in " + front);
                assertTrue(front.contains("Places:overleaf"), front);
                pages.setStartPage(2);
                pages.setEndPage(2);
                String back = pages.getText(document).replaceAll("\\s+", "");
                assertEquals(5 * 9, back.split("\\(32min", -1).length - 1, back);
            }
    }

    /** A doubt that has no room in full is named, not only counted. */
    @Test
    void doubtsWithoutRoomKeepTheirNames() throws IOException {
        List<CardLine> doubts = List.of(
                new CardLine("", "Heights end early. ".repeat(90), "Heights end early"),
                new CardLine("", "The range has a slope. ".repeat(90), "The range has a slope"));
        CardView view = view("whip", 8);
        CardView.Notes notes = new CardView.Notes(
                view.notes().deadGround(),
                view.notes().relay(),
                view.notes().fallback(),
                view.notes().checkTimes(),
                doubts);
        try (PDDocument document = Loader.loadPDF(bytes(FieldCard.sheet(view.with(notes), CardSize.A4)))) {
            PDFTextStripper pages = new PDFTextStripper();
            pages.setEndPage(1);
            String front = pages.getText(document).replaceAll("\\s+", " ");
            assertTrue(front.contains("Doubtful: Heights end early; The range has a slope (overleaf)"), front);
        }
    }

    /** A loadout that has no room on the front is named there. */
    @Test
    void loadoutsWithoutRoomAreNamed() throws IOException {
        List<CardLoadout> many = IntStream.range(0, 40)
                .mapToObj(i -> new CardLoadout(Optional.empty(), "loadout-" + i, "median 2.9 km, some copy to 5 km"))
                .toList();
        CardView some = view("whip", 3);
        CardView view = new CardView(
                some.header(),
                new CardView.Loadouts("Far end.", many),
                some.people(),
                some.rose(),
                some.notes(),
                some.cautions());
        try (PDDocument document = Loader.loadPDF(bytes(FieldCard.sheet(view, CardSize.A4)))) {
            PDFTextStripper pages = new PDFTextStripper();
            pages.setEndPage(1);
            String front = pages.getText(document).replaceAll("\\s+", " ");
            for (int i = 0; i < 40; i++) assertTrue(front.contains("loadout-" + i), i + " in " + front);
        }
    }

    private static CardView bare(CardView.Notes notes) {
        return new CardView(
                view("whip", 1).header(),
                new CardView.Loadouts("", List.of()),
                new CardPeople("", "", List.of(), List.of()),
                ROSE,
                notes,
                Cautions.CARRYING);
    }

    @Test
    void anEmptyListLeavesLinesForThePencil() throws IOException {
        CardView.Notes none = new CardView.Notes(List.of(), List.of(), List.of(), List.of(), List.of());
        CardView view = bare(none);
        try (PDDocument document = Loader.loadPDF(bytes(FieldCard.sheet(view, CardSize.A4)))) {
            assertTrue(new PDFTextStripper().getText(document).contains("Check times"));
        }
        String svg = Svg.text(CardPage.of(view, CardSize.A4), "c");
        assertTrue(svg.split("#8a949a", -1).length > 4 * 3, "ruled lines");
    }

    @Test
    void hostileAndForeignWordsArePrintedAsWords() throws IOException {
        CardView view = view(SampleFigures.HOSTILE, 2);
        for (AnswerFile.Content card :
                List.of(FieldCard.sheet(view, CardSize.LETTER), FieldCard.fold(view, CardSize.A4)))
            try (PDDocument document = Loader.loadPDF(bytes(card))) {
                String text = new PDFTextStripper().getText(document).replaceAll("\\s+", "");
                assertTrue(text.contains("<script>alert(\"x\")</script>&'Tom'"), text);
            }
    }

    @Test
    void theTypefaceTravelsInTheFile() throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes(FieldCard.sheet(view("whip", 2), CardSize.A4)))) {
            int fonts = 0;
            for (COSName name : document.getPage(0).getResources().getFontNames()) {
                PDFont font = document.getPage(0).getResources().getFont(name);
                assertTrue(font.isEmbedded(), font.getName());
                fonts++;
            }
            assertEquals(2, fonts);
        }
    }

    @Test
    void theSameCardIsTheSameFile() throws IOException {
        assertArrayEquals(
                bytes(FieldCard.sheet(view("whip", 2), CardSize.A4)),
                bytes(FieldCard.sheet(view("whip", 2), CardSize.A4)));
    }

    @Test
    void onAFoldTheInnerPagesStandUpsideDown() throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes(FieldCard.fold(view("whip", 2), CardSize.A4)))) {
            Letters letters = new Letters();
            letters.getText(document);
            float half = document.getPage(0).getMediaBox().getHeight() / 2;
            for (TextPosition letter : letters.all) {
                boolean isUpper = letter.getTextMatrix().getTranslateY() > half;
                assertEquals(isUpper, letter.getTextMatrix().getScaleX() < 0, letter.toString());
            }
        }
    }

    /** The longest name of the table stood as "Weissenstad t", with an empty hand's width beside it. */
    @Test
    void aNameIsNotPartedInACellMadeForIt() throws IOException {
        CardView few = view("whip", 3);
        CardPerson one = few.people().rows().get(0);
        List<CardPerson> people =
                List.of(new CardPerson("", "Weissenstadt", "whip", one.place(), one.way(), one.odds()));
        CardView view = few.with(new CardPeople("camp", "", people, List.of()));
        try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(view, CardSize.LETTER)))) {
            String text = new PDFTextStripper().getText(card);
            assertTrue(text.contains("Weissenstadt"), text);
        }
    }

    private static PDFTextStripper front() throws IOException {
        PDFTextStripper front = new PDFTextStripper();
        front.setEndPage(1);
        return front;
    }

    private static CardView crowd(int count) {
        CardView few = view("whip", 3);
        List<CardPerson> people = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            CardPerson one = few.people().rows().get(i % 4);
            people.add(new CardPerson(
                    String.valueOf(i + 1), "Team " + (i + 1), one.carries(), one.place(), one.way(), one.odds()));
        }
        return new CardView(
                few.header(),
                few.loadouts(),
                new CardPeople("camp", few.people().note(), people, List.of()),
                few.rose(),
                few.notes(),
                few.cautions());
    }

    /** Of 24 people the lines of the rose lost their key, and two of three steps of what to do were gone. */
    @Test
    void manyPeopleLeaveRoomForTheKeyAndForWhatToDo() throws IOException {
        try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(crowd(12), CardSize.A4)))) {
            String text = front().getText(card).replaceAll("\\s+", " ");
            assertEquals(
                    4, text.split("median 2.9 km", -1).length - 1, "every line of the rose keeps its key: " + text);
            assertTrue(text.contains("3. NE to E: nothing sure"), "every step of what to do: " + text);
            for (int i = 1; i <= 12; i++) assertTrue(text.contains(i + " Team " + i + " "), text);
        }
    }

    /** Of seven people one stood in a table and six ran on in one paragraph below it. */
    @Test
    void manyPeopleStandInANumberedListOnePersonALine() throws IOException {
        for (int count : new int[] {12, 24}) {
            try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(crowd(count), CardSize.A4)))) {
                Letters letters = new Letters();
                letters.setEndPage(1);
                letters.setSortByPosition(true);
                String text = letters.getText(card);
                assertFalse(text.contains("; 2 Team 2"), "no run-on paragraph: " + text);
                for (int i = 1; i <= count; i++) {
                    int number = i;
                    assertTrue(
                            text.lines()
                                    .anyMatch(line -> line.matches("(.* )?" + number + " Team " + number
                                            + " .*045\u00b0, 2.9 km 23 % 45 % >99 %.*")),
                            text);
                }
                String flat = front().getText(card).replaceAll("\\s+", " ");
                assertEquals(4, flat.split("median 2.9 km", -1).length - 1, flat);
                assertTrue(flat.contains("3. NE to E: nothing sure"), flat);
            }
        }
    }

    /** Of 21 people and two relays the card named who is not served, and left the places of the relays to the report. */
    @Test
    void whereRelaysStandIsKeptWhereManyPeopleShareThePage() throws IOException {
        CardView crowd = crowd(24);
        List<CardLine> relay = List.of(
                new CardLine("Relay 1", "16S 751111 4018888, 928 m"),
                new CardLine("Relay 2", "16S 752222 4019999, 937 m"),
                new CardLine("Not served:", "Team 3, Team 7"),
                CardLine.of("43 % of the talks."));
        CardView.Notes notes = crowd.notes();
        CardView view = crowd.with(
                new CardView.Notes(notes.deadGround(), relay, notes.fallback(), notes.checkTimes(), notes.doubts()));
        try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(view, CardSize.LETTER)))) {
            String text = front().getText(card).replaceAll("\\s+", " ");
            for (CardLine line : relay) assertTrue(text.contains((line.strong() + " " + line.words()).strip()), text);
        }
    }

    /** So many that not even a list has room: the front says how many are left, the back has everybody with place and loadout. */
    @Test
    void aHundredPeopleAreCutAndCounted() throws IOException {
        try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(crowd(100), CardSize.A4)))) {
            Letters letters = new Letters();
            letters.setEndPage(1);
            String text = letters.getText(card).replaceAll("\\s+", " ");
            Matcher more = Pattern.compile("(\\d+) more overleaf\\. Places").matcher(text);
            assertTrue(more.find(), text);
            int kept = 100 - Integer.parseInt(more.group(1));
            assertTrue(kept >= 20, text);
            assertTrue(text.contains(kept + " Team " + kept + " "), text);
            assertFalse(text.contains(" Team " + (kept + 1) + " "), text);
            double cautions = letters.all.stream()
                    .filter(letter -> letter.getY() > 0)
                    .mapToDouble(TextPosition::getY)
                    .max()
                    .orElseThrow();
            assertTrue(cautions < card.getPage(0).getMediaBox().getHeight(), "nothing below the page");
            PDFTextStripper back = new PDFTextStripper();
            back.setStartPage(2);
            String overleaf = back.getText(card).replaceAll("\\s+", " ");
            for (int i = 1; i <= 100; i++) assertTrue(overleaf.contains(i + " Team " + i + " "), i + " in " + overleaf);
            assertEquals(100, overleaf.split("16S 750626 4017508", -1).length - 1, overleaf);
        }
    }

    /** Of 22 people the places of 14, and four of five check times, stood nowhere, though there was room. */
    @Test
    void whatTheFrontLeavesOutStandsOnTheBack() throws IOException {
        CardView crowd = crowd(22);
        List<CardLine> checks = IntStream.range(0, 5)
                .mapToObj(i -> CardLine.of("Patrol " + i + ": silence 08:1" + i + "; call before it."))
                .toList();
        CardView.Notes notes = crowd.notes();
        CardView view = crowd.with(
                new CardView.Notes(notes.deadGround(), notes.relay(), notes.fallback(), checks, notes.doubts()));
        for (AnswerFile.Content card :
                List.of(FieldCard.sheet(view, CardSize.LETTER), FieldCard.fold(view, CardSize.LETTER)))
            try (PDDocument document = Loader.loadPDF(bytes(card))) {
                assertEquals(2, document.getNumberOfPages());
                PDFTextStripper all = new PDFTextStripper();
                String text = all.getText(document).replaceAll("\\s+", " ");
                assertTrue(text.split("16S 750626 4017508", -1).length > 22, text);
                // what is turned upside down is read back without its blanks
                String tight = text.replace(" ", "");
                for (CardLine check : checks)
                    assertTrue(tight.contains(check.words().replace(" ", "")), check + " in " + text);
            }
    }

    /** Ten people with magnetic bearings and spans of odds stood on the back as "Divisio n A" and "Quarte r". */
    @Test
    void noWordIsCutOnTheBack() throws IOException {
        CardView crowd = crowd(10);
        CardPerson.Share span = new CardPerson.Share("under 1 % to over 99 %", true);
        List<CardPerson> people = crowd.people().rows().stream()
                .map(one -> new CardPerson(
                        one.number(),
                        "Helispot " + one.number(),
                        "Quarter with wire face",
                        "12T 435047 4516896",
                        "036\u00b0 (025\u00b0 M), 1.4 km",
                        new CardPerson.Odds(span, span, span)))
                .toList();
        CardView view = crowd.with(new CardPeople("camp", crowd.people().note(), people, List.of()));
        try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(view, CardSize.A4)))) {
            PDFTextStripper back = new PDFTextStripper();
            back.setStartPage(2);
            String text = back.getText(card).replaceAll("\\s+", " ");
            assertEquals(10, text.split("Helispot", -1).length - 1, text);
            assertEquals(10, text.split("Quarter", -1).length - 1, text);
        }
    }

    /** ISO 32000-1, 14.8: marked, with a title shown, a language, a type for every part, and text for what is drawn in pieces. */
    @Test
    void theCardIsTaggedForThoseWhoHaveItReadToThem() throws IOException {
        try (PDDocument card = Loader.loadPDF(bytes(FieldCard.sheet(view("whip", 3), CardSize.A4)))) {
            var catalog = card.getDocumentCatalog();
            assertTrue(catalog.getMarkInfo().isMarked());
            assertTrue(catalog.getViewerPreferences().displayDocTitle());
            assertEquals("en", catalog.getLanguage());
            assertEquals("Field card: whip", card.getDocumentInformation().getTitle());
            PDStructureElement whole = (PDStructureElement)
                    catalog.getStructureTreeRoot().getKids().get(0);
            List<PDStructureElement> parts =
                    whole.getKids().stream().map(PDStructureElement.class::cast).toList();
            List<String> read = parts.stream()
                    .map(part -> part.getStructureType() + " "
                            + (part.getStructureType().equals("Figure")
                                    ? part.getAlternateDescription()
                                    : part.getActualText()))
                    .toList();
            assertTrue(read.contains("H1 whip"), read.toString());
            assertTrue(read.contains("P Reach with the same at both ends."), read.toString());
            assertTrue(read.contains("P A: whip, median 2.9 km (2.1 to 3.8)"), read.toString());
            assertTrue(
                    read.contains(
                            "P 1, Party 0, carries whip, place 16S 750626 4017508, true bearing 045\u00b0, 2.9 km,"
                                    + " calls 23 %, hears 45 %, by relay >99 %"),
                    read.toString());
            assertTrue(read.contains("H2 If contact is lost"), read.toString());
            assertTrue(read.contains("Figure " + Typeface.clean(ROSE.sized(192).description())), read.toString());
            assertTrue(read.indexOf("H2 Loadouts") < read.indexOf("H2 Cautions"), read.toString());
            var inTree =
                    catalog.getStructureTreeRoot().getParentTree().getNumbers().get(0);
            assertEquals(parts.size(), ((COSArray) inTree.getCOSObject()).size(), "every part has its content");
        }
    }
}
