package handreach.report;

import handreach.cartography.LoadoutMark;
import handreach.geodesy.Compass;
import handreach.loadout.Loadout;
import handreach.plan.CalibrationFile;
import handreach.plan.Kit;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.reach.LoadoutReach;
import handreach.reach.RadialReach;
import handreach.reach.ReachEstimate;
import handreach.report.figure.MapPlace;
import handreach.report.figure.RoseFigure;
import handreach.report.figure.RosePoint;
import handreach.report.figure.RoseTrace;
import handreach.report.page.Cautions;
import handreach.report.page.Drawing;
import handreach.report.page.Facts;
import handreach.report.page.Opening;
import handreach.report.page.Page;
import handreach.report.page.Section;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.study.ReachAnswer;
import handreach.study.Scene;
import handreach.units.Lengths;
import handreach.units.Shares;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Puts a reach answer on paper: the report page, and the pieces that the field card shares with it. */
final class ReachPages {
    /** Loadouts whose outline or line is drawn; more would be a tangle. */
    private static final int MOST_DRAWN = 4;

    private final ReachAnswer answer;
    private final Scene scene;
    private final Plan plan;
    private final Lengths style;
    private final Optional<ReachMaps> sheets;

    ReachPages(ReachAnswer answer) {
        this(answer, Optional.empty());
    }

    /** With maps that were begun for other files already. */
    ReachPages(ReachAnswer answer, Optional<ReachMaps> sheets) {
        this.answer = answer;
        this.sheets = sheets;
        this.scene = answer.scene();
        this.plan = scene.plan();
        this.style = plan.heading().lengths();
    }

    Lengths style() {
        return style;
    }

    /** The whole report with the plan's bench beside it and further evidence behind. */
    Page page(List<Section> more, String imprint) {
        List<Section> evidence = new ArrayList<>();
        scene.bench()
                .ifPresent(bench -> evidence.addAll(BenchReport.sections(
                        benchView(imprint), plan.kit().bench().map(Kit.Bench::mount))));
        evidence.addAll(more);
        ReachView view = new ReachView(
                opening(imprint),
                new ReachView.Reach(lines(), style),
                new ReachDrawings(maps(), Optional.of(rose(drawn())), profiles()),
                links(),
                evidence,
                grounds());
        return ReachReport.page(view);
    }

    private BenchView benchView(String imprint) {
        List<AntennaCost> costs = AntennaCost.of(plan);
        return new BenchView(plan.heading().title(), scene.bench().orElseThrow(), List.of(), List.of(), costs, imprint);
    }

    private Opening opening(String imprint) {
        String question = "How far does each loadout reach from "
                + plan.questions().reach().from().orElse("the centre of the area")
                + ", and is the bigger antenna worth carrying?";
        List<String> words = new ArrayList<>();
        words.add(headline());
        for (int i = 0; i < answer.loadouts().size(); i++)
            words.add(capital(answer.loadouts().get(i).link().name()) + ": "
                    + answer.verdicts().get(i));
        scene.calibration().map(CalibrationFile::words).ifPresent(words::add);
        return new Opening(plan.heading().title(), question, words, facts(), imprint);
    }

    private String headline() {
        LoadoutReach best = answer.loadouts().get(0);
        for (LoadoutReach reach : answer.loadouts())
            if (reach.medianM().value() > best.medianM().value()) best = reach;
        return "The farthest is \"" + best.link().name() + "\": "
                + span(best.medianM(), isCut(best)).text(style)
                + " in the median direction, "
                + plan.heading().lengths().text(best.worstM().value()) + " towards the "
                + Compass.word(best.worstBearingDeg()) + ", its worst.";
    }

    private List<Facts.Fact> facts() {
        List<Facts.Fact> facts = new ArrayList<>();
        facts.add(new Facts.Fact(
                "Channel",
                plan.channel().name()
                        + String.format(
                                Locale.ROOT,
                                ", %.4f MHz, ",
                                plan.channel().frequency().mhz())
                        + plan.channel().modulation().word()));
        facts.add(new Facts.Fact(
                "Counts as copy",
                plan.channel().wish().quality().word().toUpperCase(Locale.ROOT)
                        + String.format(
                                Locale.ROOT,
                                ", %s, at %s of places",
                                plan.channel().wish().fading().word(),
                                Shares.wanted(plan.channel().wish().odds()))));
        facts.add(new Facts.Fact("From", plan.heading().placeForm().format(answer.middle())));
        facts.add(new Facts.Fact(
                "Within",
                plan.heading().lengths().text(1000 * plan.places().area().radiusKm())));
        facts.add(new Facts.Fact("At that end", answer.otherEnd()));
        facts.add(new Facts.Fact("Model", plan.questions().reach().model().name()));
        return facts;
    }

    private List<ReachLine> lines() {
        List<ReachLine> lines = new ArrayList<>();
        for (int i = 0; i < answer.loadouts().size(); i++) {
            LoadoutReach reach = answer.loadouts().get(i);
            ReachEstimate share = answer.share(i);
            lines.add(new ReachLine(
                    LoadoutMark.of(i),
                    reach.link().name(),
                    span(reach.medianM(), isCut(reach)),
                    new ReachLine.Worst(span(reach.worstM(), false), reach.worstBearingDeg()),
                    Shares.share(
                            share.value(),
                            share.interval95().low(),
                            share.interval95().high()),
                    answer.verdicts().get(i)));
        }
        return lines;
    }

    private static boolean isCut(LoadoutReach reach) {
        return 2 * reach.openEnded() > reach.bearings();
    }

    private static ReachSpan span(ReachEstimate metres, boolean isAtLeast) {
        double value = metres.value() / 1000;
        double low = Math.min(value, Math.max(0, metres.interval95().low() / 1000));
        double high = Math.max(value, metres.interval95().high() / 1000);
        return new ReachSpan(value, low, high, isAtLeast);
    }

    /** Indices of the loadouts that are drawn: the control, the farthest, then the plan's order. */
    List<Integer> drawn() {
        List<Integer> order = new ArrayList<>();
        order.add(answer.control());
        IntStream.range(0, answer.loadouts().size())
                .boxed()
                .sorted((a, b) -> Double.compare(
                        answer.loadouts().get(b).medianM().value(),
                        answer.loadouts().get(a).medianM().value()))
                .filter(i -> !order.contains(i))
                .forEach(order::add);
        return order.stream().limit(MOST_DRAWN).sorted().toList();
    }

    RoseFigure rose(List<Integer> which) {
        int control = answer.control();
        List<RoseTrace> traces = which.stream().map(i -> trace(i, i == control)).toList();
        return RoseFigure.of("Continuous reach by bearing", traces, style);
    }

    RoseTrace trace(int loadout, boolean showsInterval) {
        LoadoutReach reach = answer.loadouts().get(loadout);
        List<RosePoint> points = new ArrayList<>();
        for (int i = 0; i < reach.bearings(); i++) {
            ReachEstimate metres = reach.continuousM(i);
            double value = metres.value() / 1000;
            RadialReach radial = reach.radial(i);
            boolean isKnown = radial.unknownBeyondM().isEmpty() || !radial.openEnded();
            points.add(new RosePoint(
                    reach.bearingDeg(i),
                    value,
                    Math.min(value, metres.interval95().low() / 1000),
                    Math.max(value, metres.interval95().high() / 1000),
                    isKnown,
                    kilometres(radial.unknownBeyondM())));
        }
        return new RoseTrace(LoadoutMark.of(loadout), reach.link().name(), points, showsInterval);
    }

    private static OptionalDouble kilometres(OptionalDouble metres) {
        return metres.isPresent() ? OptionalDouble.of(metres.getAsDouble() / 1000) : metres;
    }

    private List<Drawing> maps() {
        if (answer.area().isEmpty()) return List.of();
        ReachMaps drawn = sheets.orElseGet(() -> new ReachMaps(answer));
        int control = answer.control();
        int best = bestLoadout();
        List<Drawing> maps = new ArrayList<>();
        maps.add(drawn.odds(best));
        if (answer.loadouts().size() > 1) maps.add(drawn.least());
        if (best != control) maps.add(drawn.bought(control, best));
        return maps;
    }

    int bestLoadout() {
        int best = 0;
        for (int i = 1; i < answer.loadouts().size(); i++)
            if (answer.share(i).value() > answer.share(best).value()) best = i;
        return best;
    }

    List<MapPlace> places() {
        return ReachMaps.places(plan);
    }

    private List<Drawing> profiles() {
        return paths().stream()
                .map(path -> new Drawing(
                        PathText.figure(path.answer(), path.from(), path.to()),
                        "From " + path.from() + " to " + path.to() + ": " + PathText.groundSentence(path.answer())))
                .limit(1)
                .toList();
    }

    private List<ReachView.Link> links() {
        return paths().stream()
                .map(path -> new ReachView.Link(
                        path.from() + " and " + path.to(),
                        path.answer().ledger().orElseThrow()))
                .limit(1)
                .toList();
    }

    /** A path between two named ends. */
    private record Named(String from, String to, PathAnswer answer) {}

    /** From the middle to every other position that lies within the radius and on known ground. */
    private List<Named> paths() {
        String from = plan.questions().reach().from().orElse("the middle");
        List<Named> paths = new ArrayList<>();
        for (Places.PositionEntry entry : plan.places().positions()) {
            if (entry.name().equals(from)) continue;
            Loadout far = entry.loadout().map(scene::loadout).orElse(scene.controlLoadout());
            Loadout near = plan.places().positions().stream()
                    .filter(other -> other.name().equals(from))
                    .flatMap(other -> other.loadout().stream())
                    .map(scene::loadout)
                    .findFirst()
                    .orElse(far);
            try {
                paths.add(new Named(
                        from,
                        entry.name(),
                        PathStudy.between(scene, answer.middle(), near, entry.at(), far, List.of(scene.model()))));
            } catch (handreach.input.InputFault unknownGround) {
                continue;
            }
        }
        return paths;
    }

    private Grounds grounds() {
        List<Grounds.Assumption> assumptions = new ArrayList<>();
        handreach.uncertainty.Doubt model = scene.terms().model();
        assumptions.add(new Grounds.Assumption(
                "Doubt of the model",
                String.format(
                        Locale.ROOT,
                        "%.1f dB common to the area, %.1f dB between places",
                        model.commonDb(),
                        model.spreadDb()),
                "our suggestion, see docs/definitions.md"));
        scene.calibration()
                .ifPresent(learned -> assumptions.add(
                        new Grounds.Assumption("Site calibration", learned.words(), "walks; accepted in the plan")));
        assumptions.add(new Grounds.Assumption(
                "Ground",
                String.format(
                        Locale.ROOT,
                        "permittivity %.0f, conductivity %.4f S/m",
                        plan.ground().ground().permittivity(),
                        plan.ground().ground().conductivity()),
                "plan; Rec. ITU-R P.527"));
        assumptions.add(new Grounds.Assumption(
                "Refraction",
                String.format(
                        Locale.ROOT,
                        "effective earth radius factor %.3f",
                        plan.ground().atmosphere().effectiveRadiusFactor()),
                "plan; Rec. ITU-R P.453"));
        assumptions.add(new Grounds.Assumption(
                "Cover", plan.ground().cover().everywhere().word() + " where nothing else is stated", "plan"));
        assumptions.add(new Grounds.Assumption(
                "Noise",
                String.format(
                        Locale.ROOT,
                        "%s, %.1f dB over kT",
                        scene.noise().label(),
                        scene.noise().medianDb()),
                scene.noise().source()));
        for (Loadout loadout : scene.loadouts())
            assumptions.add(new Grounds.Assumption(
                    "Carry: " + loadout.name(),
                    String.format(
                            Locale.ROOT,
                            "control at %.1f dBd, antenna %.2f m above ground",
                            loadout.carry().mean().dbd(),
                            loadout.heightM()),
                    loadout.carry().origin()));
        List<String> limits = List.of(
                "Elevation tiles cut off ridge tops and do not know what was built or felled since; heights wrong by a few metres move the loss by several decibels.",
                "Odds are for a place picked at random among places like it, not for one spot: half a wavelength to the side may be better or worse.",
                "Bands show what is uncertain everywhere at once; a walk with reports narrows them.");
        return new Grounds(assumptions, limits, answer.warnings(), Cautions.CARRYING);
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
