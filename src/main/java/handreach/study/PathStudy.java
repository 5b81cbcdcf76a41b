package handreach.study;

import handreach.budget.LinkBudget;
import handreach.budget.TwoWayLedger;
import handreach.geodesy.Position;
import handreach.input.InputFault;
import handreach.loadout.Loadout;
import handreach.profile.CutSettings;
import handreach.profile.PathCut;
import handreach.profile.Profile;
import handreach.profile.VoidGap;
import handreach.propagation.LossBuilder;
import handreach.propagation.LossModel;
import handreach.propagation.NoAnswer;
import handreach.propagation.PathConditions;
import handreach.propagation.PathGeometry;
import handreach.propagation.PathLoss;
import handreach.propagation.Terminals;
import handreach.terrain.Elevation;
import handreach.terrain.LandCover;
import handreach.terrain.TileFolder;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** One path at a time: over a given profile, between two places, or between two people of a plan. */
public final class PathStudy {
    private PathStudy() {}

    /** Ground for paths between places. */
    public record CutGround(Elevation elevation, LandCover cover, CutSettings cut) {}

    /** Over a profile that is already there. */
    public static PathAnswer over(
            Profile profile, Terminals terminals, PathConditions conditions, List<LossModel> models) {
        PathLink link = new PathLink(terminals, conditions, Optional.empty());
        return answer(link, profile, models, List.of());
    }

    /** Between two places on a ground. */
    public static PathAnswer between(
            CutGround ground,
            Position from,
            Position to,
            Terminals terminals,
            PathConditions conditions,
            List<LossModel> models) {
        PathAnswer answer = cut(ground, from, to, terminals, conditions, models);
        return ground.elevation() instanceof TileFolder tiles ? told(answer, tiles) : answer;
    }

    /** With what is doubtful about the tiles, which a run of many paths tells once for all of them. */
    private static PathAnswer told(PathAnswer path, TileFolder tiles) {
        Set<String> all = new LinkedHashSet<>(tiles.warnings());
        all.addAll(path.warnings());
        return path.withWarnings(List.copyOf(all));
    }

    private static PathAnswer cut(
            CutGround ground,
            Position from,
            Position to,
            Terminals terminals,
            PathConditions conditions,
            List<LossModel> models) {
        PathCut cut = PathCut.between(ground.elevation(), ground.cover(), from, to, ground.cut());
        Profile profile = cut.profile().orElseThrow(() -> unknownGround(cut));
        PathLink link = new PathLink(terminals, conditions, Optional.of(cut.line()));
        return answer(link, profile, models, cut.warnings());
    }

    /**
     * Between two places of a plan with loadouts at both ends: the loss and both ledgers by the first of the models, with what walks
     * have taught where the plan names it.
     */
    public static PathAnswer between(
            Scene scene, Position from, Loadout near, Position to, Loadout far, List<LossModel> models) {
        LinkBudget budget = scene.facingAt(from).isEmpty() && scene.facingAt(to).isEmpty()
                ? scene.budget(near, far)
                : LinkBudget.between(scene.end(near, from, to), scene.end(far, to, from), scene.terms());
        Carried carried = new Carried(near, far, budget.asking(scene.ways(from, to)));
        PathAnswer path = between(scene, from, to, carried, models);
        PathAnswer taught = new PathAnswer(
                path.link(),
                path.profile(),
                path.losses(),
                path.geometry(),
                path.ledger().map(ledger -> scene.taught(ledger, carried, from, to)),
                scene.calibration(),
                turnings(scene, from, near, to, far),
                Optional.empty(),
                path.warnings());
        return told(taught, scene.tiles());
    }

    private static List<Turning> turnings(Scene scene, Position from, Loadout near, Position to, Loadout far) {
        List<Turning> turnings = new ArrayList<>();
        scene.facingAt(from)
                .flatMap(entry -> Turning.of(scene, entry, near, scene.placeWords(to, "the other end"), to))
                .ifPresent(turnings::add);
        scene.facingAt(to)
                .flatMap(entry -> Turning.of(scene, entry, far, scene.placeWords(from, "the first end"), from))
                .ifPresent(turnings::add);
        return turnings;
    }

    /** The same answer with how far the models that apply to this very path are apart; some hundredths of a second more. */
    public static PathAnswer compared(PathAnswer path) {
        return path.withSpread(ModelSpread.of(path));
    }

    /** What is carried at both ends, with the budget of the link, which is the same between all places. */
    record Carried(Loadout near, Loadout far, LinkBudget budget) {
        static Carried of(Scene scene, Loadout near, Loadout far) {
            return new Carried(near, far, scene.budget(near, far));
        }
    }

    /** The same as before any walk, for a link whose budget is at hand: to compute it takes longer than most paths. */
    static PathAnswer between(Scene scene, Position from, Position to, Carried carried, List<LossModel> models) {
        PathAnswer path = cut(
                new CutGround(scene.tiles(), scene.cover(), scene.cut()),
                from,
                to,
                Scene.terminals(carried.near(), carried.far()),
                scene.conditions(from),
                models);
        if (!path.loss().model().equals(models.get(0).name())) return path;
        TwoWayLedger ledger = carried.budget()
                .ledger(
                        path.loss(),
                        path.geometry().departureDeg(),
                        path.geometry().arrivalDeg());
        return new PathAnswer(
                path.link(), path.profile(), path.losses(), path.geometry(), Optional.of(ledger), path.warnings());
    }

    private static PathAnswer answer(
            PathLink link, Profile profile, List<LossModel> models, List<String> groundWarnings) {
        if (profile.lengthKm() < LossBuilder.SHORTEST_KM)
            throw new InputFault(
                    "path",
                    0,
                    String.format(
                            java.util.Locale.ROOT,
                            "the ends are %.0f m apart, at least %.0f m are needed: nearer, antennas are not far from each other in the"
                                    + " sense of the models. Take a longer path.",
                            1000 * profile.lengthKm(),
                            1000 * LossBuilder.SHORTEST_KM));
        Set<String> warnings = new LinkedHashSet<>(groundWarnings);
        List<PathLoss> losses = new ArrayList<>();
        for (LossModel model : models) {
            try {
                PathLoss loss = model.loss(profile, link.terminals(), link.conditions());
                losses.add(loss);
                warnings.addAll(loss.warnings());
            } catch (NoAnswer refused) {
                if (models.size() == 1) throw new InputFault("path", 0, model.name() + ": " + refused.getMessage());
                warnings.add(model.name() + " does not apply: " + refused.getMessage());
            }
        }
        if (losses.isEmpty())
            throw new InputFault("path", 0, "no model applies to this path. " + String.join(" ", warnings));
        PathGeometry geometry = PathGeometry.of(
                profile,
                link.terminals(),
                link.conditions().atmosphere(),
                link.conditions().frequency());
        return new PathAnswer(link, profile, losses, geometry, Optional.empty(), List.copyOf(warnings));
    }

    private static InputFault unknownGround(PathCut cut) {
        List<String> gaps = cut.gaps().stream().map(VoidGap::words).toList();
        return new InputFault(
                "path",
                0,
                "the ground is unknown at " + String.join(", ", gaps)
                        + " from the first end: no tile covers it, or its heights are void. Add the missing tile, or choose other ends.");
    }
}
