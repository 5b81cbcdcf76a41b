package handreach.desktop;

import handreach.bench.BenchAnalysis;
import handreach.input.InputFault;
import handreach.plan.Places;
import handreach.reach.Progress;
import handreach.report.BenchFiles;
import handreach.report.BenchView;
import handreach.report.CardFiles;
import handreach.report.ReachFiles;
import handreach.report.ReachPart;
import handreach.report.RelayComposer;
import handreach.report.RelayFiles;
import handreach.report.RelaySite;
import handreach.report.WalkComposer;
import handreach.report.card.CardSize;
import handreach.report.figure.MapPlace;
import handreach.report.file.AnswerFile;
import handreach.report.file.Gpx;
import handreach.report.page.Section;
import handreach.study.ReachAnswer;
import handreach.study.ReachStudy;
import handreach.study.RelayAnswer;
import handreach.study.RelayStudy;
import handreach.study.Scene;
import handreach.study.WalkStudy;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import javax.imageio.ImageIO;

/** What the plan becomes for paper and for other tools; each whole or not at all, as work that is watched and can be stopped. */
final class ExportVerbs {
    private static final Set<ReachPart> MAP_FILES =
            EnumSet.of(ReachPart.OUTLINES, ReachPart.MAPS, ReachPart.RASTERS, ReachPart.OVERLAY);

    private final Session session;

    ExportVerbs(Session session) {
        this.session = session;
    }

    /** The field card; what was found out about a relay stands on it while it fits the plan. */
    void card(CardSize paper, boolean isFold, Path file) {
        Optional<RelayAnswer> relay = fitting();
        run("Field card", (scene, progress) -> {
            ReachAnswer reach = ReachStudy.run(scene, false, progress);
            progress.goOn();
            CardFiles.write(reach, relay, Instant.now(), paper, isFold, file);
            return List.of(file);
        });
    }

    /** The report, with the relay answer while it fits the plan, and with the walks that the plan names. */
    void report(Path file) {
        Optional<RelayAnswer> relay = fitting();
        run("Report", (scene, progress) -> {
            List<Section> more = new ArrayList<>();
            relay.map(found -> new RelayComposer(found).sectionsBesideReach(Instant.now()))
                    .ifPresent(more::addAll);
            if (!scene.plan().questions().walks().isEmpty())
                more.addAll(WalkComposer.sections(WalkStudy.run(scene, progress), Instant.now()));
            progress.goOn();
            ReachAnswer reach = ReachStudy.run(scene, true, progress);
            progress.goOn();
            ReachFiles.writeReport(reach, more, file);
            return List.of(file);
        });
    }

    void benchReport(Path file) {
        run("Bench report", (scene, progress) -> {
            BenchAnalysis read = scene.bench()
                    .orElseThrow(() -> new InputFault(
                            String.valueOf(scene.file().file().getFileName()),
                            0,
                            "names no bench readings. Drop their CSV on the window and take them into the plan."));
            BenchFiles.write(
                    BenchFiles.composer(read, BenchView.Question.USUAL_SETTLE_DB, List.of(), Optional.of(scene.file())),
                    file,
                    scene.file().sources());
            return List.of(file);
        });
    }

    /** Rasters, outlines, an overlay for globe viewers and pictures of the reach, into a folder. */
    void mapFiles(Path folder) {
        run("Map files of the reach", (scene, progress) -> {
            ReachAnswer reach = ReachStudy.run(scene, true, progress);
            progress.goOn();
            return ReachFiles.write(reach, MAP_FILES, Instant.now(), folder, progress)
                    .files();
        });
    }

    /** Report, text, JSON, waypoints and features of the relay answer; found out first, where it does not fit the plan. */
    void relayFiles(Path folder) {
        Optional<RelayAnswer> relay = fitting();
        run("Relay files", (scene, progress) -> {
            RelayAnswer answer = relay.orElseGet(() -> RelayStudy.run(scene, progress));
            progress.goOn();
            return RelayFiles.write(answer, Instant.now(), folder).files();
        });
    }

    /** Positions, and relay sites where they are known, as waypoints. */
    void places(Path file) {
        List<RelaySite> sites = fitting().map(RelaySite::of).orElse(List.of());
        run("Places", (scene, progress) -> {
            List<MapPlace> places = new ArrayList<>();
            for (Places.PositionEntry entry : scene.plan().places().positions())
                places.add(new MapPlace(
                        entry.at(), entry.base() ? MapPlace.Kind.BASE : MapPlace.Kind.PERSON, entry.name()));
            for (RelaySite site : sites) places.add(new MapPlace(site.at(), MapPlace.Kind.RELAY, site.name()));
            if (places.isEmpty())
                throw new InputFault(
                        String.valueOf(scene.file().file().getFileName()),
                        0,
                        "has no position to hand over. Put one on the map first.");
            AnswerFile.write(
                    file,
                    Gpx.text(places, scene.plan().header().title(), List.of()),
                    scene.file().sources());
            return List.of(file);
        });
    }

    /** A picture that was taken of the map. */
    void picture(BufferedImage picture, Path file) {
        run("Picture of the map", (scene, progress) -> {
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            try {
                ImageIO.write(picture, "png", png);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            AnswerFile.write(file, png.toByteArray(), scene.file().sources());
            return List.of(file);
        });
    }

    /** A sheet of paper with the map on it, as it was taken. */
    void mapSheet(AnswerFile.Content sheet, Path file) {
        run("Map sheet", (scene, progress) -> {
            AnswerFile.write(file, sheet, scene.file().sources());
            return List.of(file);
        });
    }

    private Optional<RelayAnswer> fitting() {
        return session.relay().get().filter(answer -> session.fits(answer.scene()));
    }

    private void run(String what, BiFunction<Scene, Progress, List<Path>> work) {
        Scene scene = session.scene().get();
        if (scene == null) return;
        session.worker()
                .watched(
                        what,
                        progress -> work.apply(scene, progress),
                        written -> session.tell(Notice.done(what + " written: " + named(written), verbs(written))),
                        session::tell);
    }

    private Notice.Verb[] verbs(List<Path> written) {
        Path first = written.get(0).toAbsolutePath();
        Notice.Verb folder = new Notice.Verb("Show in folder", () -> session.show(first.getParent()), false);
        return written.size() == 1
                ? new Notice.Verb[] {new Notice.Verb("Open", () -> session.show(first), false), folder}
                : new Notice.Verb[] {folder};
    }

    /** One file by its path; several by their folder. */
    private static String named(List<Path> written) {
        Path first = written.get(0).toAbsolutePath();
        return written.size() == 1 ? first + "." : written.size() + " files in " + first.getParent() + ".";
    }
}
