package handreach.report.card;

import handreach.report.figure.RoseFigure;
import handreach.report.page.Caution;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Everything a field card shows.
 *
 * @param header title, channel, target, and when it was made
 * @param loadouts what is carried, and the key to the lines of the rose
 * @param people who is where
 * @param rose reach by bearing, over relief
 * @param notes dead ground, relay, fallback, check times
 * @param cautions which cautions concern the carrier
 */
public record CardView(
        Header header, Loadouts loadouts, CardPeople people, RoseFigure rose, Notes notes, List<Caution> cautions) {
    /**
     * Loadouts with their reach.
     *
     * @param far what stands at the other end, in words
     * @param lines one each
     */
    public record Loadouts(String far, List<CardLoadout> lines) {
        public Loadouts {
            lines = List.copyOf(lines);
        }

        /** Only the first so many, and the names of the others. */
        Loadouts first(int count, String where) {
            if (count >= lines.size()) return this;
            String others = lines.stream().skip(count).map(CardLoadout::loadout).collect(Collectors.joining(", "));
            return new Loadouts(far + " No room for " + others + " (" + where + ").", lines.subList(0, count));
        }
    }

    /**
     * The top of the card.
     *
     * @param title what the plan is called
     * @param channel name and frequency
     * @param target what counts as copy, and from where the rose is drawn
     * @param made when the card was made
     */
    public record Header(String title, String channel, String target, Instant made) {}

    /**
     * What stands in words; an empty list leaves lines to be filled in by hand.
     *
     * @param deadGround where copy is not to be expected
     * @param relay where it stands, how to get there
     * @param fallback what to do when contact is lost, in order
     * @param checkTimes when to call
     * @param doubts what the model warns of; an empty list leaves nothing
     */
    public record Notes(
            List<CardLine> deadGround,
            List<CardLine> relay,
            List<CardLine> fallback,
            List<CardLine> checkTimes,
            List<CardLine> doubts) {
        public Notes {
            doubts = List.copyOf(doubts);
            deadGround = List.copyOf(deadGround);
            relay = List.copyOf(relay);
            fallback = List.copyOf(fallback);
            checkTimes = List.copyOf(checkTimes);
        }

        /** With one empty line in place of several. */
        Notes tight() {
            return new Notes(deadGround, tight(relay), fallback, tight(checkTimes), doubts);
        }

        private static List<CardLine> tight(List<CardLine> lines) {
            return lines.isEmpty() ? List.of(CardLine.BLANK) : lines;
        }
    }

    public CardView {
        cautions = List.copyOf(cautions);
    }

    CardView with(CardPeople others) {
        return new CardView(header, loadouts, others, rose, notes, cautions);
    }

    CardView with(Notes others) {
        return new CardView(header, loadouts, people, rose, others, cautions);
    }
}
