package handreach.report;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import handreach.atlas.AtlasQuestion;
import handreach.atlas.PositionFigures;
import handreach.atlas.RelayCover;
import handreach.geodesy.Position;
import handreach.loadout.Loadout;
import handreach.reach.CellGrid;
import handreach.study.AtlasAnswer;
import handreach.study.AtlasLayer;
import handreach.study.AtlasStudy;
import handreach.study.BlockFault;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** An atlas as one JSON object; component names are its keys, see docs/schema. */
record AtlasJson(
        String title,
        String question,
        String program,
        double gridM,
        double targetsM,
        double radiusKm,
        double servesM,
        double odds,
        String model,
        Box box,
        List<String> byBurden,
        List<String> layers,
        int positions,
        int blocks,
        int blocksDone,
        List<Faulty> faulty,
        Optional<String> digest,
        OptionalDouble knownKm2,
        List<Carried> loadouts,
        List<Dark> darkest) {
    private record Box(double south, double west, double north, double east) {
        static Box of(AtlasQuestion.Box box) {
            return new Box(box.southDeg(), box.westDeg(), box.northDeg(), box.eastDeg());
        }
    }

    private record Faulty(int block, String fault) {}

    private record Carried(
            String loadout,
            double medianM,
            double servesKm2,
            double servesShare,
            OptionalDouble unheardKm2,
            OptionalInt talkParts,
            OptionalDouble largestPartShare,
            OptionalInt bridges,
            Optional<Relays> relays) {}

    private record Relays(double share, double bestShareBound, List<Site> sites) {}

    private record Site(double latitude, double longitude, double shareGained) {}

    private record Dark(double areaKm2, double latitude, double longitude, double depthM) {}

    /** Before anything is reckoned. */
    static AtlasJson begun(AtlasStudy study, String question) {
        return of(study, question, 0, List.of(), Optional.empty(), OptionalDouble.empty(), List.of(), List.of());
    }

    static AtlasJson of(AtlasAnswer answer, String question, int done, String digest) {
        AtlasStudy study = answer.study();
        double knownKm2 = answer.knownKm2();
        return of(
                study,
                question,
                done,
                answer.faults(),
                Optional.of(digest),
                OptionalDouble.of(knownKm2),
                IntStream.range(0, study.scene().loadouts().size())
                        .mapToObj(loadout -> carried(answer, loadout, knownKm2))
                        .toList(),
                dark(answer));
    }

    private static AtlasJson of(
            AtlasStudy study,
            String question,
            int done,
            List<BlockFault> faults,
            Optional<String> digest,
            OptionalDouble knownKm2,
            List<Carried> loadouts,
            List<Dark> darkest) {
        var asked = study.question();
        return new AtlasJson(
                study.scene().plan().header().title(),
                question,
                Program.name(),
                asked.gridM(),
                asked.targetsM(),
                asked.reach().radiusM() / 1000,
                asked.reach().servesM(),
                asked.reach().odds(),
                study.scene().model().name(),
                Box.of(asked.box()),
                study.byBurden().stream()
                        .map(loadout -> study.scene().loadouts().get(loadout).name())
                        .toList(),
                study.wish().layers().stream().sorted().map(AtlasLayer::word).toList(),
                study.positions().count(),
                study.positions().blocks().size(),
                done,
                faults.stream().map(one -> new Faulty(one.block(), one.words())).toList(),
                digest,
                knownKm2,
                loadouts,
                darkest);
    }

    private static Carried carried(AtlasAnswer answer, int loadout, double knownKm2) {
        Loadout carried = answer.study().scene().loadouts().get(loadout);
        boolean talks = answer.has(AtlasLayer.TALK);
        double serves = answer.servesKm2(loadout);
        long known =
                answer.positions().stream().filter(PositionFigures::isKnown).count();
        return new Carried(
                carried.name(),
                answer.medianM(loadout),
                serves,
                knownKm2 > 0 ? Math.min(1, serves / knownKm2) : 0,
                answer.has(AtlasLayer.SHADOW) ? OptionalDouble.of(answer.unheardKm2(loadout)) : OptionalDouble.empty(),
                talks ? OptionalInt.of(answer.talk(loadout).sizes().size()) : OptionalInt.empty(),
                talks && known > 0
                        ? OptionalDouble.of(answer.talk(loadout).sizes().get(0) / (double) known)
                        : OptionalDouble.empty(),
                talks ? OptionalInt.of(answer.talk(loadout).bridges().size()) : OptionalInt.empty(),
                answer.study().wish().relays() > 0 ? Optional.of(relays(answer, loadout)) : Optional.empty());
    }

    private static Relays relays(AtlasAnswer answer, int loadout) {
        RelayCover cover = answer.cover(loadout);
        double all = answer.study().targets().count();
        List<Site> sites = new ArrayList<>();
        for (RelayCover.Pick pick : cover.picks()) {
            Position at = answer.positions().get(pick.position()).at();
            sites.add(new Site(at.latitudeDeg(), at.longitudeDeg(), pick.gained() / all));
        }
        int covered = cover.picks().isEmpty()
                ? 0
                : cover.picks().get(cover.picks().size() - 1).covered();
        return new Relays(covered / all, Math.min(1, cover.most() / all), sites);
    }

    private static List<Dark> dark(AtlasAnswer answer) {
        if (!answer.has(AtlasLayer.SHADOW)) return List.of();
        return answer.shadows().stream()
                .limit(AtlasComposer.MOST_PLACES)
                .map(one -> {
                    Position at = answer.study().targets().cells().positionOf(one.deepest());
                    double depthM = one.depth() * answer.study().question().targetsM();
                    return new Dark(one.areaKm2(), at.latitudeDeg(), at.longitudeDeg(), depthM);
                })
                .toList();
    }

    /** What a summary says of itself, so that its blocks can be read without the plan. */
    record Read(String title, String question, AtlasQuestion asked, List<String> byBurden, int blocks) {
        /** Nothing where the text is no summary of ours. */
        static Optional<Read> of(String text) {
            try {
                JsonNode json = new JsonMapper().readTree(text);
                JsonNode box = json.path("box");
                List<String> byBurden = new ArrayList<>();
                json.path("by_burden").forEach(name -> byBurden.add(name.asText()));
                AtlasQuestion asked = new AtlasQuestion(
                        new AtlasQuestion.Box(
                                finite(box.path("south")),
                                finite(box.path("west")),
                                finite(box.path("north")),
                                finite(box.path("east"))),
                        finite(json.path("grid_m")),
                        finite(json.path("targets_m")),
                        new AtlasQuestion.Reach(
                                1000 * finite(json.path("radius_km")),
                                0,
                                finite(json.path("odds")),
                                finite(json.path("serves_m"))));
                String question = json.path("question").asText();
                boolean isGrid = !isRefused(asked, asked.gridM()) && !isRefused(asked, asked.targetsM());
                if (question.isEmpty() || byBurden.isEmpty() || !isGrid) return Optional.empty();
                return Optional.of(new Read(
                        json.path("title").asText(),
                        question,
                        asked,
                        byBurden,
                        json.path("blocks").asInt()));
            } catch (JacksonException | IllegalArgumentException none) {
                return Optional.empty();
            }
        }

        private static boolean isRefused(AtlasQuestion asked, double cellM) {
            AtlasQuestion.Box box = asked.box();
            return CellGrid.refusal(box.southDeg(), box.westDeg(), box.northDeg(), box.eastDeg(), cellM)
                    .isPresent();
        }

        private static double finite(JsonNode number) {
            double value = number.isNumber() ? number.asDouble() : Double.NaN;
            if (!Double.isFinite(value)) throw new IllegalArgumentException("no number");
            return value;
        }
    }

    /** The question that a summary in a folder answers; nothing where it is none of ours. */
    static Optional<String> questionIn(String text) {
        try {
            return Optional.of(new JsonMapper().readTree(text).path("question").asText())
                    .filter(word -> !word.isEmpty());
        } catch (JacksonException e) {
            return Optional.empty();
        }
    }
}
