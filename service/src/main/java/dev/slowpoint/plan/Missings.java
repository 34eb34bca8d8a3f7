package dev.slowpoint.plan;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.plan.CookPlan.Missing;
import dev.slowpoint.plan.CookPlan.Unknown;
import dev.slowpoint.safety.CentralKinetics;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.ProbabilityMargin;
import dev.slowpoint.safety.ReadingError;
import dev.slowpoint.safety.SafetyKnowledge;
import java.util.Optional;
import java.util.OptionalDouble;

/** Tells how likely a target is missed because cells differ. */
final class Missings {

    private Missings() {}

    /**
     * For the governing requirement of a trial at the time judged, in the slow corner.
     *
     * @param error taken off the temperature, as in the margin
     */
    static Missing of(FoodGroup food, Trial trial, ReadingError error, SafetyKnowledge safety) {
        Optional<Finding> governing = trial.worst().governing();
        if (governing.isEmpty()) {
            return Missing.unknown(Unknown.NOTHING_ASKED);
        }
        Finding worst = governing.get();
        if (worst.requirement().wholeTreatment()) {
            return Missing.unknown(Unknown.WHOLE_TREATMENT);
        }
        return safety.central(worst.requirement().hazard(), food)
                .map(kinetics -> by(kinetics, worst, trial, error))
                .orElseGet(() -> Missing.unknown(Unknown.NO_CENTRAL_KINETICS));
    }

    private static Missing by(CentralKinetics kinetics, Finding worst, Trial trial, ReadingError error) {
        double floorC = Math.max(worst.requirement().floorC(), kinetics.line().lowestTestedC());
        double delivered = Dose.of(
                        error.judged(kinetics.line().killFrom(floorC)),
                        trial.late().slowest())
                .at(trial.judgedAt());
        double needed = worst.requirement().target() + worst.growthLog10();
        return new Missing(
                OptionalDouble.of(ProbabilityMargin.ofMissing(delivered, needed, kinetics.spreadLog10D())),
                Optional.of(kinetics),
                Optional.empty());
    }
}
