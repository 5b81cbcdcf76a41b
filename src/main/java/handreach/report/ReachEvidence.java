package handreach.report;

import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.plan.Places;
import handreach.plan.Plan;
import handreach.plan.Questions;
import handreach.propagation.LossModels;
import handreach.propagation.Standing;
import handreach.report.page.Block;
import handreach.report.page.Bullets;
import handreach.report.page.CautionBlock;
import handreach.report.page.Cautions;
import handreach.report.page.Column;
import handreach.report.page.Drawing;
import handreach.report.page.Paragraph;
import handreach.report.page.Section;
import handreach.report.page.Table;
import handreach.study.PathAnswer;
import handreach.study.PathStudy;
import handreach.study.ReachAnswer;
import handreach.study.Scene;
import handreach.uncertainty.Doubt;
import handreach.units.Decibels;
import handreach.units.Lengths;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What a reach answer rests on and where it ends, for those who want to look behind it: one link in full, assumptions, limits. */
final class ReachEvidence {
    private static final List<String> LIMITS = List.of(
            "Elevation tiles cut off ridge tops and do not know what was built or felled since; heights wrong by a few metres move the loss by several decibels.",
            "Odds are for a place picked at random among places like it, not for one spot: half a wavelength to the side may be better or worse.",
            "Bands show what is uncertain everywhere at once; a walk with reports narrows them.");

    private final ReachAnswer answer;
    private final Scene scene;
    private final Plan plan;

    /** Something taken as given: its name, what was taken with its unit, and document, measurement or whose choice. */
    private record Assumption(String what, String value, String source) {}

    /** A path between two named ends. */
    private record Named(String from, String to, PathAnswer answer) {}

    ReachEvidence(ReachAnswer answer) {
        this.answer = answer;
        this.scene = answer.scene();
        this.plan = scene.plan();
    }

    /** Ground and ledger from the middle to the first other position on known ground. */
    List<Section> link() {
        Optional<Named> first = plan.places().positions().stream()
                .filter(entry -> !entry.name().equals(from()))
                .flatMap(entry -> path(entry).stream())
                .findFirst();
        if (first.isEmpty()) return List.of();
        Named path = first.get();
        return List.of(
                Section.of(
                                "Ground along a path",
                                new Drawing(
                                        PathComposer.profile(
                                                path.answer(),
                                                path.from(),
                                                path.to(),
                                                plan.header().lengths()),
                                        "From " + path.from() + " to " + path.to() + ": "
                                                + PathComposer.groundSentence(
                                                        path.answer(),
                                                        plan.header().lengths())))
                        .answering("What stands in the way to " + path.to() + "?")
                        .asDetail(),
                new Section("Where the decibels go", decibels(path.answer()))
                        .answering("Where do the decibels go on the way to " + path.to() + "?")
                        .asDetail());
    }

    private static List<Block> decibels(PathAnswer path) {
        List<Block> blocks = new ArrayList<>(LedgerComposer.blocks(path.ledger().orElseThrow()));
        PathComposer.spread(path).ifPresent(blocks::add);
        return blocks;
    }

    private String from() {
        return scene.middlePosition().map(Places.PositionEntry::name).orElse("the middle");
    }

    /** As people are loaded, as in the table of who reaches whom; where nobody is named in the middle, with what stands there. */
    private Optional<Named> path(Places.PositionEntry entry) {
        Loadout far = entry.loadout().map(scene::loadout).orElse(scene.controlLoadout());
        Loadout near = scene.middlePosition()
                .flatMap(Places.PositionEntry::loadout)
                .map(scene::loadout)
                .orElseGet(() -> scene.middleLoadout(far));
        try {
            return Optional.of(new Named(
                    from(),
                    entry.name(),
                    PathStudy.compared(
                            PathStudy.between(scene, answer.middle(), near, entry.at(), far, List.of(scene.model())))));
        } catch (InputFault unknownGround) {
            return Optional.empty();
        }
    }

    /** Assumptions, limits with what was doubtful in this run, cautions. */
    List<Section> grounds() {
        List<Block> limits = new ArrayList<>();
        for (String warning : answer.warnings()) limits.add(Paragraph.warning(warning));
        limits.add(new Bullets(LIMITS));
        return List.of(
                Section.of(
                                "What this assumes",
                                Table.of(
                                        "",
                                        assumptions(),
                                        List.of(
                                                Column.words("what", Assumption::what),
                                                Column.words("taken as", Assumption::value),
                                                Column.words("source", Assumption::source))))
                        .answering("What was taken as given, and from where?")
                        .asDetail(),
                new Section("Limits of this result", limits).answering("What is doubtful, and where does it end?"),
                Section.of("Cautions", new CautionBlock(Cautions.CARRYING))
                        .answering("What must be heeded before going out?"));
    }

    private boolean doubtIsOwn() {
        Questions.Doubts own = scene.plan().questions().doubts();
        return own.modelCommonDb().isPresent() && own.placeSpreadDb().isPresent();
    }

    private static String source(boolean isStated) {
        return isStated ? "plan" : "our default, not in the plan";
    }

    private List<Assumption> assumptions() {
        List<Assumption> assumptions = new ArrayList<>();
        Doubt model = scene.terms().model();
        assumptions.add(new Assumption(
                "Doubt of the model",
                words("%.1f dB common to the area, %.1f dB between places", model.commonDb(), model.spreadDb()),
                doubtIsOwn() ? "plan" : "by ground, cover and model, see docs/plan-file.md"));
        scene.calibration()
                .ifPresent(learned -> assumptions.add(
                        new Assumption("Site calibration", learned.words(), "walks; accepted in the plan")));
        assumptions.add(new Assumption(
                "Ground",
                words(
                        "permittivity %.0f, conductivity %.4f S/m",
                        plan.ground().ground().permittivity(),
                        plan.ground().ground().conductivity()),
                source(plan.ground().stated().constants()) + "; Rec. ITU-R P.527"));
        assumptions.add(new Assumption(
                "Refraction",
                words(
                        "effective earth radius factor %.3f",
                        plan.ground().atmosphere().effectiveRadiusFactor()),
                source(plan.ground().stated().refraction()) + "; Rec. ITU-R P.453"));
        assumptions.add(new Assumption(
                "Cover",
                plan.ground().cover().everywhere().word() + " where nothing else is stated",
                source(plan.ground().stated().cover())));
        assumptions.add(new Assumption(
                "Trees", FoliageComposer.assumption(scene), scene.foliage().source()));
        if (scene.conditions().standing() == Standing.ON_THE_WAY)
            assumptions.add(new Assumption(
                    "Woods and towns",
                    scene.model().equals(LossModels.FULL_WAVE)
                            ? "counted by the march on the way"
                            : "on the way, not heeded by " + scene.model().name(),
                    "plan"));
        for (NoiseComposer.At noise : NoiseComposer.all(scene))
            assumptions.add(new Assumption("Noise at " + noise.at(), noise.words(), noise.sourceWords()));
        assumptions.addAll(carries());
        return assumptions;
    }

    /** How everything is carried; loadouts that are carried alike share a row. */
    private List<Assumption> carries() {
        Map<Assumption, List<String>> alike = new LinkedHashMap<>();
        for (Loadout loadout : scene.loadouts())
            alike.computeIfAbsent(
                            new Assumption(
                                    "Carry",
                                    words(
                                            "control at %s dBd, antenna %s above ground",
                                            Decibels.number(
                                                    loadout.carry().mean().dbd(), 1),
                                            antennaHeight(loadout.heightM())),
                                    loadout.carry().origin()),
                            same -> new ArrayList<>())
                    .add(loadout.name());
        return alike.entrySet().stream()
                .map(one -> new Assumption(
                        one.getKey().what() + ": " + String.join(", ", one.getValue()),
                        one.getKey().value(),
                        one.getKey().source()))
                .toList();
    }

    /** To a hundredth, as the heights of a path are. */
    private String antennaHeight(double metres) {
        Lengths lengths = scene.plan().header().lengths();
        return Decibels.number(metres / lengths.shortUnitM(), 2) + " " + lengths.shortUnit();
    }

    private static String words(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
