package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.FollowingStep.StepKind;
import dev.slowpoint.plan.Outcome;
import dev.slowpoint.plan.Range;
import dev.slowpoint.plan.Span;
import dev.slowpoint.plan.Step;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Turns what steps do into answers. Times to wait for, and times that do harm, are rounded up. */
final class StepTranslation {

    private static final double MM_PER_M = 1000.0;
    private static final double L_PER_M3 = 1000.0;
    private static final double S_PER_DAY = 86_400.0;

    private StepTranslation() {}

    /** One step. */
    static StepOutcome outcome(Outcome outcome) {
        return new StepOutcome(
                Words.of(kind(outcome.step())),
                moment(outcome.begins()),
                moment(outcome.ends()),
                outcome.coreC().nominal(),
                outcome.coreC().low(),
                outcome.coreC().high(),
                outcome.surfaceC(),
                outcome.holding().map(StepTranslation::holding).orElse(null),
                outcome.swap()
                        .map(s -> new StepOutcome.SwapWater(s.volume() * L_PER_M3, s.tapC()))
                        .orElse(null),
                outcome.interruption().map(StepTranslation::interruption).orElse(null),
                outcome.sear().map(StepTranslation::sear).orElse(null),
                outcome.cooling().map(StepTranslation::cooling).orElse(null),
                outcome.keeping().map(StepTranslation::keeping).orElse(null),
                outcome.reheating().map(StepTranslation::reheating).orElse(null));
    }

    /** What asked for it. */
    private static StepKind kind(Step step) {
        if (step instanceof Step.Bath) {
            return StepKind.BATH;
        }
        if (step instanceof Step.Unheated) {
            return StepKind.UNHEATED;
        }
        if (step instanceof Step.Sear) {
            return StepKind.SEAR;
        }
        if (step instanceof Step.Rest) {
            return StepKind.REST;
        }
        if (step instanceof Step.Chill) {
            return StepKind.CHILL;
        }
        return step instanceof Step.Store ? StepKind.STORE : StepKind.REHEAT;
    }

    private static StepOutcome.Holding holding(Outcome.Holding holding) {
        return new StepOutcome.Holding(
                Words.of(holding.verdict()),
                holding.deliveredLog10().isPresent() ? holding.deliveredLog10().getAsDouble() : null,
                PlanTranslation.up(holding.belowGrowthLimit()),
                holding.belowHotHolding(),
                holding.hotHoldingC(),
                growth(holding.growth()));
    }

    private static StepOutcome.Interruption interruption(Outcome.Interruption cut) {
        return new StepOutcome.Interruption(
                Words.of(cut.verdict()),
                taken(cut.off()),
                cut.inferred(),
                cut.waterC().nominal(),
                cut.growthLimitC(),
                longest(cut.waterBelow()),
                longest(cut.coldestBelow()),
                longest(cut.warmestBelow()),
                cut.rule(),
                cut.withinRule(),
                growth(cut.growth()));
    }

    private static StepOutcome.SearEffect sear(Outcome.SearEffect sear) {
        Range depth = sear.depth();
        return new StepOutcome.SearEffect(
                sear.riseK().nominal(),
                sear.riseK().high(),
                PlanTranslation.whole(Math.ceil(sear.peaksAfter())),
                sear.peakC().nominal(),
                sear.peakC().high(),
                sear.wantedC(),
                depth.nominal() * MM_PER_M,
                depth.high() * MM_PER_M,
                sear.doneC(),
                sear.chillFirst()
                        .map(c -> new StepOutcome.PreChill(
                                PlanTranslation.up(c.seconds()), c.mediumC(), c.coreC(), c.peakC()))
                        .orElse(null),
                sear.lowerSetpointC().isPresent() ? sear.lowerSetpointC().getAsDouble() : null);
    }

    /** How a piece cools. */
    static StepOutcome.Cooling cooling(Outcome.Cooling cooling) {
        return new StepOutcome.Cooling(
                cooling.kept(),
                cooling.rule(),
                cooling.limits().stream()
                        .map(limit -> new StepOutcome.CoolingLimit(
                                limit.stage().fromC(),
                                limit.stage().toC(),
                                (int) limit.stage().longestS(),
                                taken(limit.seconds()),
                                PlanTranslation.whole(Math.floor(limit.stage().longestS()
                                        - limit.seconds().late())),
                                limit.kept()))
                        .toList(),
                cooling.levels().stream()
                        .map(level -> new StepOutcome.LevelTime(level.levelC(), taken(level.after())))
                        .toList(),
                growth(cooling.growth()));
    }

    /** Whether it may be kept. */
    static StepOutcome.Keeping keeping(Outcome.Keeping keeping) {
        return new StepOutcome.Keeping(
                keeping.kept(),
                Double.isFinite(keeping.longest()) ? keeping.longest() / S_PER_DAY : null,
                keeping.asked() / S_PER_DAY,
                Words.of(keeping.basis()),
                keeping.limit(),
                keeping.hazard().map(Words::of).orElse(null),
                growth(keeping.growth()),
                keeping.exposures().stream()
                        .map(e -> new StepOutcome.Exposure(
                                Words.of(e.hazard()), e.limit(), e.longest() / S_PER_DAY, e.kept()))
                        .toList());
    }

    private static StepOutcome.Reheating reheating(Outcome.Reheating reheating) {
        return new StepOutcome.Reheating(
                taken(reheating.hotThroughAfter()),
                taken(reheating.warmUp()),
                growth(reheating.growth()),
                reheating.checks().stream()
                        .map(check -> new StepOutcome.ReheatCheck(
                                Words.of(check.rule().use()), check.rule().id(), check.met()))
                        .toList(),
                reheating.killLog10(),
                reheating.killStep());
    }

    /** Predicted growth; no number where the model was tested at none of the temperatures. */
    static List<StepOutcome.Growth> growth(List<Outcome.Growth> growth) {
        return growth.stream()
                .map(g -> new StepOutcome.Growth(
                        Words.of(g.hazard()),
                        g.model(),
                        g.predicted() ? g.log10() : null,
                        g.predicted() ? g.nominalLog10() : null,
                        g.lagCounted(),
                        g.predicted() ? null : g.testedFromC(),
                        g.predicted() ? null : g.testedToC(),
                        g.untestedS() > 0.0 ? PlanTranslation.up(g.untestedS()) : null))
                .toList();
    }

    /** A moment of a step, the same number where it is the same in all corners. */
    private static @Nullable Milestone moment(Span span) {
        return PlanTranslation.milestone(
                PlanTranslation.whole(Math.ceil(span.nominal())),
                PlanTranslation.whole(Math.ceil(span.early())),
                PlanTranslation.whole(Math.ceil(span.late())));
    }

    /** A time that passes: like one that is waited for. */
    static @Nullable Milestone taken(Span span) {
        return PlanTranslation.awaited(Optional.of(span));
    }

    private static int longest(Span span) {
        return PlanTranslation.up(Math.max(span.nominal(), Math.max(span.early(), span.late())));
    }
}
