package handreach.study;

import handreach.budget.Ledger;
import handreach.budget.LineKey;
import handreach.budget.TwoWayLedger;
import handreach.geodesy.GeodesicLine;
import handreach.geodesy.Position;
import handreach.input.Faults;
import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.input.SourceText;
import handreach.loadout.Loadout;
import handreach.plan.CalibrationFile;
import handreach.plan.Questions;
import handreach.profile.Profile;
import handreach.propagation.LossBuilder;
import handreach.reach.Progress;
import handreach.reach.SubProgress;
import handreach.reach.Workers;
import handreach.walk.BlockedCheck;
import handreach.walk.Calibration;
import handreach.walk.Comparison;
import handreach.walk.Direction;
import handreach.walk.GpxTrack;
import handreach.walk.Lesson;
import handreach.walk.LocalMean;
import handreach.walk.Priors;
import handreach.walk.Reception;
import handreach.walk.ReportFile;
import handreach.walk.TrackJoin;
import handreach.walk.WalkPair;
import handreach.walk.WalkReport;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The walks of a plan: reports put in their places, predicted, compared, and learned from. */
public final class WalkStudy {
    /** Between two walks, so that no stretch spans them, m. */
    private static final double BETWEEN_WALKS_M = 100_000;
    /** Shares of a walk's part after which its reports are read, and are in their places. */
    private static final double READ = 0.1;

    private static final double PLACED = 0.2;

    /** Shares of the whole at which its parts end, as seen on a walk of six hours with a report each second. */
    private static final double PREDICTED = 0.5;

    private static final double LEARNED = 0.7;
    private static final double CHECKED = 0.99;

    private final Scene scene;
    private final Progress progress;
    private final Set<String> warnings = new LinkedHashSet<>();
    private final Faults faults = new Faults();
    private final List<WalkPair> pairs = new ArrayList<>();
    private final List<WalkBase> bases = new ArrayList<>();
    private final List<Asked> asked = new ArrayList<>();
    private final Set<List<String>> links = new LinkedHashSet<>();
    private LocalDate lastDay = LocalDate.MIN;
    private double startM;

    private WalkStudy(Scene scene, Progress progress) {
        this.scene = scene;
        this.progress = progress;
        this.warnings.addAll(scene.warnings());
    }

    /** Runs the study over every walk of the plan. */
    public static WalkAnswer run(Scene scene, Progress progress) {
        return new WalkStudy(scene, progress).answer();
    }

    private WalkAnswer answer() {
        List<Questions.WalkEntry> walks = scene.plan().questions().walks();
        if (walks.isEmpty())
            throw new InputFault(
                    String.valueOf(scene.file().file().getFileName()),
                    0,
                    "names no walk. Add [[walk]] with name, reports and track; docs/walk.md tells how.");
        if (scene.calibration().isPresent())
            warnings.add(
                    "The comparison leaves the plan's calibration out: it shows the prediction as it was before any walk.");
        for (int w = 0; w < walks.size(); w++)
            add(walks.get(w), PREDICTED * w / walks.size(), PREDICTED * (w + 1) / walks.size());
        faults.throwIfAny();
        SilentLogging.Said silentCalls = SilentLogging.Said.of(
                walks.stream().map(Questions.WalkEntry::silentCallsLogged).toList());
        if (pairs.isEmpty())
            throw new InputFault("walk", 0, "no report could be placed and predicted. " + String.join(" ", warnings));
        List<String> carries = scene.loadouts().stream()
                .map(l -> l.carry().carry().word())
                .distinct()
                .toList();
        Lesson lesson = Lesson.of(
                pairs,
                Priors.USUAL,
                carries,
                silentCalls == SilentLogging.Said.UNKNOWN,
                new SubProgress(progress, "learning", PREDICTED, LEARNED));
        Calibration calibration = lesson.calibration();
        SilentLogging logging = new SilentLogging(silentCalls, lesson.silentCalls());
        String names =
                String.join(", ", walks.stream().map(Questions.WalkEntry::name).toList());
        CalibrationFile file = new CalibrationFile(calibration.site(names, lastDay), List.copyOf(links), scene.model());
        Optional<BlockedCheck> check = BlockedCheck.of(
                pairs,
                lesson.decorrelationM(),
                Priors.USUAL,
                new SubProgress(progress, "checking what was learned", LEARNED, CHECKED));
        WalkAnswer.Learned learned = new WalkAnswer.Learned(
                calibration, file, lesson.decorrelationM(), lesson.isEstimated(), check, logging, lesson.trend());
        Comparison comparison = Comparison.of(pairs);
        progress.goOn();
        List<WalkAnswer.Seen> worst =
                comparison.worst().stream().map(this::seen).toList();
        progress.done("the worst places", 1);
        warnings.addAll(scene.warnings());
        logging.refusal().or(logging::doubt).ifPresent(warnings::add);
        return new WalkAnswer(scene, pairs, comparison, worst, learned, List.copyOf(warnings));
    }

    /** Only the ground of the worst is kept, and is cut again for that. */
    private WalkAnswer.Seen seen(WalkPair pair) {
        int at = pairs.indexOf(pair);
        PathAnswer path = path(bases.get(at), asked.get(at));
        return new WalkAnswer.Seen(pair, bases.get(at), path);
    }

    /** Adds a walk, whose part of the whole lies between two shares. */
    private void add(Questions.WalkEntry walk, double from, double to) {
        double read = from + READ * (to - from);
        double placed = from + PLACED * (to - from);
        progress.done("reading the track of " + walk.name(), from);
        Position area = scene.plan().places().area().centre();
        Optional<GpxTrack> track = walk.track().map(file -> GpxTrack.read(file, progress));
        track.ifPresent(t -> {
            warnings.addAll(t.notes());
            t.swapHint(area).ifPresent(words -> faults.add(t.name(), 0, words));
        });
        List<WalkReport> reports =
                reports(walk.reports(), new SubProgress(progress, "reading the reports of " + walk.name(), from, read));
        String source = String.valueOf(walk.reports().getFileName());
        for (WalkReport report : reports)
            if (report.origin().at().filter(at -> GpxTrack.exchanged(at, area)).isPresent())
                faults.add(source, report.origin().line(), GpxTrack.SWAPPED);
        TrackJoin join = TrackJoin.of(
                track, reports, walk.clockOffsetS(), new SubProgress(progress, "placing " + walk.name(), read, placed));
        for (String note : join.notes()) warnings.add(walk.name() + ": " + note);
        join.clockFault().ifPresent(words -> faults.add(source, 0, words));
        day(walk.reports(), reports);
        WalkBase base = WalkBase.of(scene, walk.base());
        predict(
                walk,
                base,
                averaged(walk, join.placed()),
                new SubProgress(progress, "predicting " + walk.name(), placed, to));
        startM += BETWEEN_WALKS_M
                + (join.placed().isEmpty()
                        ? 0
                        : join.placed().get(join.placed().size() - 1).alongM());
    }

    private List<WalkReport> reports(Path file, Progress progress) {
        boolean isGpx =
                String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(".gpx");
        return isGpx
                ? ReportFile.ofWaypoints(GpxTrack.read(file, progress), warnings::add)
                : ReportFile.read(SourceText.readTable(file), progress);
    }

    private void day(Path file, List<WalkReport> reports) {
        Instant last = reports.stream()
                .flatMap(report -> report.origin().time().stream())
                .max(Instant::compareTo)
                .orElseGet(() -> changed(file));
        LocalDate day = last.atZone(ZoneOffset.UTC).toLocalDate();
        if (day.isAfter(lastDay)) lastDay = day;
    }

    private static Instant changed(Path file) {
        try {
            return Files.getLastModifiedTime(file).toInstant();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Levels of one loadout and direction within 40 wavelengths become their local mean; everything else stays. */
    private List<TrackJoin.Placed> averaged(Questions.WalkEntry walk, List<TrackJoin.Placed> placed) {
        Map<List<Object>, List<TrackJoin.Placed>> runs = new LinkedHashMap<>();
        List<TrackJoin.Placed> out = new ArrayList<>();
        for (TrackJoin.Placed one : placed) {
            if (!one.report().heard().isLevel()) out.add(one);
            else
                runs.computeIfAbsent(
                                List.of(one.report().loadout(), one.report().way()), key -> new ArrayList<>())
                        .add(one);
        }
        double wavelengthM = scene.plan().channel().frequency().wavelengthM();
        int single = 0;
        int windows = 0;
        for (List<TrackJoin.Placed> run : runs.values()) {
            double[] alongM = run.stream().mapToDouble(TrackJoin.Placed::alongM).toArray();
            for (List<Integer> window : LocalMean.windows(alongM, wavelengthM)) {
                double[] along = window.stream().mapToDouble(i -> alongM[i]).toArray();
                List<Reception> heard =
                        window.stream().map(i -> run.get(i).report().heard()).toList();
                LocalMean mean = LocalMean.of(along, heard, wavelengthM);
                windows++;
                if (!mean.isAveraged()) single++;
                out.add(standIn(run.get(window.get(window.size() / 2)), mean.heard()));
            }
        }
        if (single > 0)
            warnings.add(walk.name() + ": " + single + " of " + windows
                    + " local means of the level rest on fewer than 36 independent readings over 40 wavelengths; they still"
                    + " fade, and a single reading lies 2.5 dB low on average where there is no line of sight.");
        return out;
    }

    private static TrackJoin.Placed standIn(TrackJoin.Placed placed, Reception mean) {
        WalkReport r = placed.report();
        WalkReport averaged = new WalkReport(r.origin(), mean, r.way(), r.loadout(), r.headingDeg(), r.note());
        return new TrackJoin.Placed(averaged, placed.at(), placed.alongM());
    }

    /** A report with the link it was made over. */
    private record Asked(TrackJoin.Placed placed, PathStudy.Carried carried) {}

    /** What came of predicting one report: a pair, or why there is none. */
    private record Predicted(Optional<WalkPair> pair, String why) {}

    private void predict(
            Questions.WalkEntry walk, WalkBase base, List<TrackJoin.Placed> placed, SubProgress predicting) {
        List<Asked> here = new ArrayList<>();
        Map<String, PathStudy.Carried> carried = new HashMap<>();
        for (TrackJoin.Placed one : placed)
            loadout(walk, one.report())
                    .map(found -> carried.computeIfAbsent(
                            found.name(), name -> PathStudy.Carried.of(scene, base.loadout(), found)))
                    .ifPresent(link -> here.add(new Asked(one, link)));
        // Paths do not depend on one another; the order of the reports is kept.
        Predicted[] predicted = new Predicted[here.size()];
        new Workers(Scene.threads())
                .run(here.size(), number -> predicted[number] = predicted(base, here.get(number)), predicting);
        int refused = 0;
        String why = "";
        List<String> atBase = new ArrayList<>();
        for (int i = 0; i < predicted.length; i++) {
            TrackJoin.Placed one = here.get(i).placed();
            if (GeodesicLine.distanceM(base.at(), one.at()) < 1000 * LossBuilder.SHORTEST_KM) {
                atBase.add(String.valueOf(one.report().origin().line()));
                continue;
            }
            if (predicted[i].pair().isEmpty()) {
                refused++;
                why = predicted[i].why();
                continue;
            }
            pairs.add(predicted[i].pair().get());
            bases.add(base);
            asked.add(here.get(i));
            links.add(List.of(base.loadout().name(), here.get(i).carried().far().name()));
        }
        if (!atBase.isEmpty())
            warnings.add(walk.name() + ": "
                    + (atBase.size() == 1
                            ? "the report of line " + atBase.get(0) + " was"
                            : atBase.size() + " reports were")
                    + " made at the base or within " + Math.round(1000 * LossBuilder.SHORTEST_KM)
                    + " m of it, nearer than any path is reckoned, and "
                    + (atBase.size() == 1 ? "is" : "are") + " left out.");
        if (refused > 0)
            warnings.add(walk.name() + ": " + refused
                    + (refused == 1
                            ? " report has a place but no prediction: "
                            : " reports have a place but no prediction; the last is ")
                    + why);
    }

    /** Keeps the pair alone: the ground of every report would fill the memory on a long walk. */
    private Predicted predicted(WalkBase base, Asked one) {
        try {
            return new Predicted(Optional.of(pair(base, one.carried().far(), one.placed(), path(base, one))), "");
        } catch (InputFault noPath) {
            String why = "line " + one.placed().report().origin().line() + ": "
                    + noPath.faults().get(0).text();
            return new Predicted(Optional.empty(), why);
        }
    }

    private PathAnswer path(WalkBase base, Asked one) {
        return PathStudy.between(scene, base.at(), one.placed().at(), one.carried(), List.of(scene.model()));
    }

    private Optional<Loadout> loadout(Questions.WalkEntry walk, WalkReport report) {
        String source = String.valueOf(walk.reports().getFileName());
        Optional<String> name = report.loadout().or(walk::loadout);
        List<String> known = scene.loadouts().stream().map(Loadout::name).toList();
        if (name.isEmpty())
            faults.add(
                    source,
                    report.origin().line(),
                    "names no loadout, and neither does the walk in the plan. Fill the column, or add loadout = to [[walk]].");
        else if (!known.contains(name.get()))
            faults.add(
                    source,
                    report.origin().line(),
                    "loadout is \"" + name.get() + "\", which is not in the plan." + NearestWord.hint(name.get(), known)
                            + " It has: " + String.join(", ", known) + ".");
        return name.filter(known::contains).map(scene::loadout);
    }

    private WalkPair pair(WalkBase base, Loadout walker, TrackJoin.Placed placed, PathAnswer path) {
        WalkReport report = placed.report();
        Ledger ledger = heard(path.ledger().orElseThrow(), report.way());
        double neededDbm = 0.0
                - ledger.valueDb(LineKey.SENSITIVITY)
                - ledger.valueDb(LineKey.NOISE)
                - ledger.valueDb(LineKey.QUALITY);
        GeodesicLine line = path.link().line().orElseThrow();
        Profile profile = path.profile();
        WalkPair.Spot spot = new WalkPair.Spot(
                report.origin().line(),
                placed.at(),
                startM + placed.alongM(),
                line.azimuthDeg(),
                line.lengthM(),
                profile.cover(profile.count() - 1));
        WalkPair.Link link = new WalkPair.Link(
                walker.name(),
                report.way(),
                base.loadout().carry().carry().word(),
                walker.carry().carry().word(),
                neededDbm,
                ledger.doubt().spreadDb());
        boolean copied =
                report.heard().isCopy(neededDbm, scene.terms().quality().sinadDb());
        return new WalkPair(spot, link, ledger.marginDb(), report.heard(), copied);
    }

    private static Ledger heard(TwoWayLedger ledger, Direction way) {
        return switch (way) {
            case TO_WALKER -> ledger.there();
            case TO_BASE -> ledger.back();
            case BOTH -> ledger.lessLikely();
        };
    }
}
