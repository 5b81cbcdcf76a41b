package handreach.report;

import handreach.cartography.LoadoutMark;
import handreach.geodesy.Compass;
import handreach.plan.CalibrationFile;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.reach.LoadoutReach;
import handreach.study.ReachAnswer;
import handreach.study.Scene;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The field card of a plan: one page for the pocket. */
public final class CardFiles {
    private static final int MOST_LINES = 4;
    private final ReachAnswer answer;
    private final Scene scene;
    private final Plan plan;
    private final ReachPages pages;

    private CardFiles(ReachAnswer answer) {
        this.answer = answer;
        this.scene = answer.scene();
        this.plan = scene.plan();
        this.pages = new ReachPages(answer);
    }

    /** Writes the card as PDF; a fold is four small pages on one sheet of A4. Relay lines come from a relay study, or are empty. */
    public static void write(
            ReachAnswer answer, List<CardLine> relay, Instant made, CardSize paper, boolean fold, Path file) {
        CardView view = new CardFiles(answer).view(relay, made);
        WholeFile.write(file, fold ? FieldCard.fold(view, paper) : FieldCard.sheet(view, paper));
    }

    private CardView view(List<CardLine> relay, Instant made) {
        CardView.Heading heading = new CardView.Heading(
                plan.heading().title(),
                plan.channel().name()
                        + String.format(
                                Locale.ROOT,
                                " %.4f MHz",
                                plan.channel().frequency().mhz()),
                String.format(
                        Locale.ROOT,
                        "%s at %s of places, from %s",
                        plan.channel().wish().quality().word().toUpperCase(Locale.ROOT),
                        Shares.wanted(plan.channel().wish().odds()),
                        plan.questions().reach().from().orElse("the centre") + " "
                                + plan.heading().placeForm().format(answer.middle())
                                + (scene.calibration().isPresent() ? ", calibrated" : "")),
                made);
        RoseFigure rose = pages.rose(drawn()).over(scene.tiles(), answer.middle(), pages.places());
        return new CardView(
                heading,
                loadouts(),
                rose,
                new CardView.Words(deadGround(), relay, fallback(), List.of(), doubts()),
                Cautions.CARRYING);
    }

    /** What people carry and the control; where nobody has a loadout yet, what the report draws. */
    private List<Integer> drawn() {
        List<Integer> carried = plan.places().positions().stream()
                .flatMap(entry -> entry.loadout().stream())
                .map(this::indexOf)
                .distinct()
                .limit(MOST_LINES)
                .sorted()
                .toList();
        return carried.isEmpty() ? pages.drawn() : carried;
    }

    /** People with their loadouts first, then the loadouts that nobody carries yet. */
    private List<CardLoadout> loadouts() {
        List<CardLoadout> lines = new ArrayList<>();
        for (Places.PositionEntry entry : plan.places().positions())
            entry.loadout().ifPresent(name -> lines.add(line(entry.name(), name)));
        for (int i : drawn()) {
            String name = answer.loadouts().get(i).link().name();
            if (lines.stream().noneMatch(line -> line.loadout().equals(name))) lines.add(line("", name));
        }
        return lines;
    }

    private CardLoadout line(String who, String loadout) {
        int index = indexOf(loadout);
        LoadoutReach reach = answer.loadouts().get(index);
        Lengths lengths = plan.heading().lengths();
        String words = lengths.text(reach.medianM().value()) + ", worst "
                + lengths.text(reach.worstM().value()) + " " + Compass.word(reach.worstBearingDeg());
        return new CardLoadout(LoadoutMark.of(index), who, loadout, words);
    }

    private int indexOf(String loadout) {
        for (int i = 0; i < answer.loadouts().size(); i++)
            if (answer.loadouts().get(i).link().name().equals(loadout)) return i;
        throw new IllegalArgumentException("no reach for " + loadout);
    }

    private List<CardLine> deadGround() {
        int control = indexOf(scene.controlLoadout().name());
        List<CardLine> lines = new ArrayList<>(
                DeadGround.lines(pages.trace(control, false), scene.tiles(), answer.middle(), pages.style()));
        if (lines.isEmpty()) lines.add(CardLine.of("None in a whole sector within the radius; single hollows remain."));
        else lines.add(CardLine.of("Reckoned for " + scene.controlLoadout().name() + "."));
        scene.calibration().map(CalibrationFile::words).map(CardLine::of).ifPresent(lines::add);
        return lines;
    }

    private List<CardLine> doubts() {
        return answer.warnings().stream().map(CardLine::of).toList();
    }

    private static List<CardLine> fallback() {
        return List.of(
                CardLine.of(
                        "No answer: stand still, lift the radio to face height, antenna upright, turn until the radio side faces them."),
                CardLine.of("Move half a wavelength, then uphill or to the edge of the shadow; call again."),
                CardLine.of("Still none at the next check time: use the second means, go to the agreed place."));
    }
}
