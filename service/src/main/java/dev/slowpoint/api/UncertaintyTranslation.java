package dev.slowpoint.api;

import dev.slowpoint.plan.UncertainInput;
import dev.slowpoint.plan.Uncertainty;
import dev.slowpoint.plan.Uncertainty.Missed;
import dev.slowpoint.plan.Uncertainty.Percentiles;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Turns a sample into an answer: what never happens left out, seconds rounded outwards or to the early side. */
final class UncertaintyTranslation {

    private static final double PERCENT = 100.0;

    private UncertaintyTranslation() {}

    static UncertaintyAnswer answer(Uncertainty uncertainty) {
        return new UncertaintyAnswer(
                uncertainty.points(),
                Uncertainty.SEQUENCE,
                Uncertainty.SEED,
                awaited(uncertainty.hotThrough()),
                uncertainty.safe().map(UncertaintyTranslation::awaited).orElse(null),
                uncertainty.tender().map(UncertaintyTranslation::awaited).orElse(null),
                uncertainty.goodUntil().map(UncertaintyTranslation::until).orElse(null),
                uncertainty.softFrom().map(UncertaintyTranslation::until).orElse(null),
                new UncertaintyAnswer.SampledTemperature(
                        uncertainty.coreC().p5(),
                        uncertainty.coreC().p50(),
                        uncertainty.coreC().p95()),
                uncertainty
                        .achievedLog10()
                        .map(p -> new UncertaintyAnswer.SampledLog10(p.p5(), p.p50(), p.p95()))
                        .orElse(null),
                uncertainty.missed().map(Missed::points).orElse(null),
                uncertainty
                        .missed()
                        .filter(m -> m.share().isPresent())
                        .map(m -> PERCENT * m.share().getAsDouble())
                        .orElse(null),
                uncertainty.missed().map(m -> PERCENT * m.shareAtMost()).orElse(null),
                words(uncertainty.sampled()),
                words(uncertainty.notSampled()));
    }

    private static UncertaintyAnswer.SampledTime awaited(Percentiles p) {
        return new UncertaintyAnswer.SampledTime(
                PlanTranslation.whole(Math.floor(p.p5())),
                PlanTranslation.whole(Math.rint(p.p50())),
                PlanTranslation.whole(Math.ceil(p.p95())),
                never(p));
    }

    private static UncertaintyAnswer.SampledTime until(Percentiles p) {
        return new UncertaintyAnswer.SampledTime(
                PlanTranslation.whole(Math.floor(p.p5())),
                PlanTranslation.whole(Math.floor(p.p50())),
                PlanTranslation.whole(Math.floor(p.p95())),
                never(p));
    }

    private static @Nullable Double never(Percentiles p) {
        return p.neverShare() > 0.0 ? PERCENT * p.neverShare() : null;
    }

    private static List<String> words(List<UncertainInput> inputs) {
        return inputs.stream().map(Words::of).toList();
    }
}
