package dev.slowpoint.plan;

import dev.slowpoint.heat.Body;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.MarginBand;
import dev.slowpoint.safety.Rule;
import dev.slowpoint.safety.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Portions that one card serves: planned for the slowest piece among them, and held against the fastest. Times in seconds
 * from food in.
 *
 * @param place which band
 * @param setpointC of the bath [C], as people can set it
 * @param cooks one card for each start asked for
 * @param cold cooling and keeping, if asked for
 * @param reheat warming up, if asked for
 * @param effort what the solver spent
 */
public record Band(
        Place place,
        double setpointC,
        List<Heating> cooks,
        Optional<Cold> cold,
        Optional<Heating> reheat,
        CookPlan.Effort effort) {

    /** Copies the list. */
    public Band {
        cooks = List.copyOf(cooks);
    }

    /**
     * What tells a band from all others on its sheet.
     *
     * @param slowest the question for its slowest piece
     * @param fastest its fastest piece
     * @param from sizes across above this one [m]
     * @param to up to this one [m]
     */
    public record Place(CookTask slowest, Body fastest, double from, double to) {}

    /** Whether the thinnest piece is past its best by the time of a card. */
    boolean overcooks() {
        return cooks.stream().anyMatch(c -> c.pastBest() > 0.0)
                || reheat.filter(r -> r.pastBest() > 0.0).isPresent();
    }

    /**
     * A card that cooks or warms up.
     *
     * @param card which
     * @param startC temperature it goes in at [C]
     * @param time on the card; empty where no time does
     * @param obstacle why no time does
     * @param earliest from when on the worst piece is ready and safe, late side for what is safe; without meaning if there
     *     is no time
     * @param latest until when the thinnest piece is at its best, early side; infinity when nothing known closes it
     * @param hotThrough of the worst piece
     * @param safe of the worst piece; empty when the rule asks for nothing
     * @param safety of the worst piece at the time of the card
     * @param worst the worst piece at the time of the card
     * @param thinnest the thinnest piece at that time; empty if there is no time
     * @param notices about the worst piece, the most severe first
     */
    public record Heating(
            Card card,
            double startC,
            OptionalDouble time,
            Optional<CookPlan.Obstacle> obstacle,
            double earliest,
            double latest,
            Span hotThrough,
            Optional<Span> safe,
            Safety safety,
            Piece worst,
            Optional<Piece> thinnest,
            List<Notice> notices) {

        /** Copies the list. */
        public Heating {
            notices = List.copyOf(notices);
        }

        /** How long the thinnest piece, on its early side, is past its best at the time of the card [s]; zero if it is not. */
        public double pastBest() {
            return time.isPresent() ? Math.max(0.0, time.getAsDouble() - latest) : 0.0;
        }
    }

    /**
     * Safety of the worst piece.
     *
     * @param verdict by the rule, worst case
     * @param rule judged by
     * @param governing the hazard with the least margin; empty when nothing is asked
     * @param band the margin in words; empty when nothing is asked
     * @param marginS time in hand [s]; empty when never met or nothing is asked
     */
    public record Safety(
            Verdict verdict,
            Rule rule,
            Optional<Finding> governing,
            Optional<MarginBand> band,
            OptionalDouble marginS) {}

    /**
     * One piece at the time of a card, nominal.
     *
     * @param across its size [m]
     * @param coreC [C]
     * @param texture where the time lies in its window; empty if not modelled
     * @param lossPercent loss of juice [% of raw mass]
     */
    public record Piece(
            double across, double coreC, Optional<dev.slowpoint.texture.Verdict> texture, OptionalDouble lossPercent) {}

    /**
     * Cooling after the cook, and keeping.
     *
     * @param medium what it is cooled in
     * @param time on the card; empty where it never gets cold enough
     * @param cooling judged by the rule
     * @param storeC temperature of the store [C]
     * @param longest how long it may be kept [s]; zero: eat at once; infinity while frozen
     * @param notices about it, the most severe first
     */
    public record Cold(
            Step.ChillMedium medium,
            OptionalDouble time,
            Outcome.Cooling cooling,
            double storeC,
            double longest,
            List<Notice> notices) {

        /** Copies the list. */
        public Cold {
            notices = List.copyOf(notices);
        }
    }
}
