package dev.slowpoint.plan;

import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * What a piece went through in the three corners.
 *
 * @param nominal as stated
 * @param early on the fast side
 * @param late on the slow side
 */
record Passages(Passage nominal, Passage early, Passage late) {

    /** A moment in each corner. */
    Span span(ToDoubleFunction<Passage> time) {
        return new Span(time.applyAsDouble(nominal), time.applyAsDouble(early), time.applyAsDouble(late));
    }

    /** A length of time, the least of the corners as early and the most as late. */
    Span length(ToDoubleFunction<Passage> seconds) {
        return Span.between(seconds.applyAsDouble(nominal), seconds.applyAsDouble(early), seconds.applyAsDouble(late));
    }

    /** A number with its range. */
    Range range(ToDoubleFunction<Passage> number) {
        return Range.of(number.applyAsDouble(nominal), number.applyAsDouble(early), number.applyAsDouble(late));
    }

    /** Whether something holds in all corners. */
    boolean all(Predicate<Passage> holds) {
        return List.of(nominal, early, late).stream().allMatch(holds);
    }

    /** Temperatures through all steps, of which the first bath ends at a time [s]. */
    CookPlan.Curve curve(double bathEnds) {
        double[] ends = DoubleStream.concat(DoubleStream.of(bathEnds), Arrays.stream(nominal.ends()))
                .toArray();
        return CookPlan.Curve.of(nominal.history(), early.history(), late.history(), ends);
    }
}
