package handreach.desktop;

import handreach.input.AtomicFile;
import handreach.plan.PlanFile;
import handreach.plan.PlanText;
import handreach.study.Scene;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.util.Duration;

/**
 * Keeps edits that are not saved yet in a file beside the plan, so that a crash loses none; where that folder cannot be written, in the
 * window's own. Gone once the plan is saved or left on purpose.
 */
final class Autosave {
    private static final String ENDING = ".unsaved";

    private final Session session;
    private final Worker.Debounce rest;
    /** What this window has kept, by the plan it belongs to. */
    private final Map<Path, Path> kept = new HashMap<>();

    /**
     * Edits that the last window left behind.
     *
     * @param kept where they were kept
     * @param text the plan with them
     */
    record Left(Path kept, String text) {
        /** Asks the person what to do with them. */
        void offer(Session session) {
            session.tell(Notice.remark(
                            "The window ended before the last edits of this plan were saved. They were kept.")
                    .with(
                            new Notice.Verb(
                                    "Take them back",
                                    () -> {
                                        session.edit("the edits of before", plan -> text);
                                        remove(session);
                                    },
                                    true),
                            new Notice.Verb("Throw them away", () -> remove(session), true)));
        }

        /** The same of a plan that was never saved. */
        void offerPlan(Session session) {
            session.tell(Notice.remark("The window ended before a new plan was saved. It was kept.")
                    .with(
                            new Notice.Verb(
                                    "Take it back",
                                    () -> {
                                        session.begin(() -> PlanFile.fresh(besideTiles(text), text), session::tell);
                                        remove(session);
                                    },
                                    true),
                            new Notice.Verb("Throw it away", () -> remove(session), true)));
        }

        private void remove(Session session) {
            session.worker().inOrder(() -> Files.deleteIfExists(kept), gone -> {}, session::tell);
        }
    }

    Autosave(Session session) {
        this.session = session;
        this.rest = session.worker().debounce(Duration.millis(300), this::keep);
        session.scene().addListener((scene, before, now) -> {
            if (before != null && !before.file().file().equals(now.file().file()))
                drop(before.file().file());
            if (now.file().isEdited()) rest.begin();
            else drop(now.file().file());
        });
    }

    private static Path besideTiles(String text) {
        String tiles = PlanText.value(text, "ground", "tiles").orElse("\"\"");
        Path folder = Path.of(tiles.substring(1, tiles.length() - 1).replace("\\\\", "\\"))
                .toAbsolutePath();
        return folder.resolveSibling(PlanFile.USUAL_NAME);
    }

    private void keep() {
        Scene scene = session.scene().get();
        if (scene == null || !scene.file().isEdited()) return;
        PlanFile plan = scene.file();
        Optional<Path> before = Optional.ofNullable(kept.get(plan.file()));
        session.worker()
                .inOrder(
                        () -> write(plan, before),
                        where -> {
                            kept.put(plan.file(), where);
                            if (!session.scene().get().file().isEdited()) drop(plan.file());
                        },
                        session::tell);
    }

    private static Path write(PlanFile plan, Optional<Path> before) throws IOException {
        if (before.isEmpty() && !plan.isFresh()) {
            Path beside = free(plan.folder().resolve(plan.file().getFileName() + ENDING));
            try {
                return written(beside, plan.text());
            } catch (IOException cannotBeWritten) {
                return written(free(own(plan.file())), plan.text());
            }
        }
        return written(before.orElse(plan.isFresh() ? free(fresh()) : own(plan.file())), plan.text());
    }

    private static Path written(Path file, String text) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        AtomicFile.write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
        return file;
    }

    /** What somebody has not decided about yet is not written over. */
    private static Path free(Path wanted) {
        Path free = wanted;
        for (int number = 2; Files.exists(free); number++)
            free = wanted.resolveSibling(wanted.getFileName() + "-" + number);
        return free;
    }

    private static Path own(Path plan) {
        String name =
                Integer.toHexString(plan.toAbsolutePath().normalize().toString().hashCode());
        return RecentPlans.folder().resolve(plan.getFileName() + "-" + name + ENDING);
    }

    private static Path fresh() {
        return RecentPlans.folder().resolve("new-plan" + ENDING);
    }

    private void drop(Path plan) {
        Path gone = kept.get(plan);
        if (gone != null)
            session.worker().inOrder(() -> Files.deleteIfExists(gone), done -> kept.remove(plan), session::tell);
    }

    /** The person has said that the edits are not wanted, and the window goes: done at once. */
    void forget() {
        for (Path file : List.copyOf(kept.values())) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException e) {
                // It is offered at the next start, and can be thrown away there.
                continue;
            }
        }
        kept.clear();
    }

    /** Edits of this plan that were kept and are not in its file. */
    static Optional<Left> left(PlanFile plan) {
        Path beside = plan.folder().resolve(plan.file().getFileName() + ENDING);
        return left(beside)
                .or(() -> left(beside.resolveSibling(beside.getFileName() + "-2")))
                .or(() -> left(own(plan.file())))
                .filter(left -> !left.text().stripTrailing().equals(plan.text().stripTrailing()));
    }

    /** A plan that was never saved. */
    static Optional<Left> leftPlan() {
        return left(fresh());
    }

    private static Optional<Left> left(Path file) {
        try {
            return Files.isRegularFile(file)
                    ? Optional.of(new Left(file, Files.readString(file, StandardCharsets.UTF_8)))
                    : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
