package dev.slowpoint.plan;

import dev.slowpoint.plan.Outcome.Exposure;
import dev.slowpoint.plan.Outcome.Growth;
import dev.slowpoint.plan.Outcome.Keeping;
import dev.slowpoint.plan.Outcome.KeepingBasis;
import dev.slowpoint.safety.ColdStorage;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Hazard;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How long a piece may stay in cold stores, one after the other. Seven days are only for a cook that gave six decimal
 * reductions of Listeria and was then cooled in time. A cook that met its rule for serving gets one day, and nothing for
 * vulnerable eaters (our own caution); all else is to be eaten at once.
 */
final class ColdLife {

    private final ColdStorage storage;
    private final Eater eater;
    private double usedShare;

    ColdLife(ColdStorage storage, Eater eater) {
        this.storage = storage;
        this.eater = eater;
    }

    /**
     * What may be stored.
     *
     * @param unfit id of the rule that was broken, if one was
     * @param listeriaKilled whether six decimal reductions of Listeria are known
     */
    record Fitness(Optional<String> unfit, boolean listeriaKilled) {}

    /**
     * Puts the piece into one more store.
     *
     * @param growth predicted meanwhile; told, and no reason to store longer or shorter
     */
    Keeping store(Step.Store step, Fitness fitness, List<Growth> growth) {
        KeepingBasis basis;
        ColdStorage.Limit limit;
        if (fitness.unfit().isPresent()) {
            return new Keeping(
                    0.0,
                    step.duration(),
                    fitness.unfit().get(),
                    Optional.empty(),
                    KeepingBasis.NOT_FIT_TO_KEEP,
                    false,
                    growth,
                    exposures(step, fitness));
        }
        if (fitness.listeriaKilled()) {
            basis = KeepingBasis.COLD_HOLDS_SPORES;
            limit = storage.limit(step.temperatureC());
        } else {
            basis = KeepingBasis.LISTERIA_NOT_KILLED;
            limit = storage.unproven(step.temperatureC());
        }
        boolean never =
                limit.longestS() <= 0.0 || (basis == KeepingBasis.LISTERIA_NOT_KILLED && eater == Eater.VULNERABLE);
        double longest = never ? 0.0 : limit.longestS() * Math.max(0.0, 1.0 - usedShare);
        usedShare = never ? 1.0 : usedShare + step.duration() / limit.longestS();
        return new Keeping(
                longest,
                step.duration(),
                limit.id(),
                limit.hazard(),
                basis,
                step.duration() <= longest,
                growth,
                exposures(step, fitness));
    }

    /** Limits of exposure for the spores that a cook leaves alive, and for Listeria where it may have. */
    private List<Exposure> exposures(Step.Store step, Fitness fitness) {
        List<Exposure> found = new ArrayList<>();
        for (Hazard hazard : Hazard.values()) {
            boolean alive = hazard.kind() == Hazard.Kind.SPORES
                    || (hazard == Hazard.LISTERIA_MONOCYTOGENES && !fitness.listeriaKilled());
            if (alive) {
                storage.exposure()
                        .at(hazard, step.temperatureC())
                        .ifPresent(row ->
                                found.add(new Exposure(hazard, row.id(), row.longestS(), row.keptBy(step.duration()))));
            }
        }
        return found;
    }
}
