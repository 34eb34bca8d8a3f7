package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;
import java.util.Optional;

/**
 * How long a sealed bag may be kept in the cold after a cook that killed cells but no spores.
 *
 * @param exposure limits by hazard
 * @param cap the most that is ever claimed, in a store no warmer than it says
 * @param unproven the most for a cook that is not known to have killed Listeria, in a store no warmer than it says
 * @param frozen from which temperature down a store has no limit of time
 */
public record ColdStorage(ExposureLimits exposure, Cap cap, Cap unproven, Cap frozen) {

    /**
     * A longest time.
     *
     * @param id as in the limits file
     * @param toC warmest store it is for [C]
     * @param longestS [s]; infinity for no limit
     * @param provenance where it comes from
     */
    public record Cap(String id, double toC, double longestS, Provenance provenance) {

        /** Refuses a cap that was only recalled: it would let a plan pass. */
        public Cap {
            provenance.refuseIfRecalled("limit " + id);
        }
    }

    /**
     * What limits a store.
     *
     * @param id as in the limits file
     * @param hazard it is about, where it names one
     * @param longestS [s]
     * @param provenance where it comes from
     */
    public record Limit(String id, Optional<Hazard> hazard, double longestS, Provenance provenance) {}

    /** The longest time [s] at a temperature of the store [C]. */
    public double longestS(double storeC) {
        return limit(storeC).longestS();
    }

    /**
     * What limits a store at a temperature [C]. Up to the warmest store of the cap the limit of non-proteolytic C. botulinum
     * and the cap count, as in the rule the cap is from; in a warmer one, for which there is no such rule, every spore
     * former that a cook leaves alive.
     */
    public Limit limit(double storeC) {
        if (storeC <= frozen.toC()) {
            return whileFrozen();
        }
        Limit shortest = new Limit(cap.id(), Optional.empty(), cap.longestS(), cap.provenance());
        for (Hazard hazard : Hazard.values()) {
            boolean counts = storeC > cap.toC()
                    ? hazard.kind() == Hazard.Kind.SPORES
                    : hazard == Hazard.C_BOTULINUM_NON_PROTEOLYTIC;
            Optional<ExposureLimit> own = counts ? exposure.at(hazard, storeC) : Optional.empty();
            if (own.isPresent() && own.get().longestS() < shortest.longestS()) {
                ExposureLimit row = own.get();
                shortest = new Limit(row.id(), Optional.of(hazard), row.longestS(), row.provenance());
            }
        }
        return shortest;
    }

    /** What limits a store at a temperature [C] after a cook that is not known to have killed Listeria. */
    public Limit unproven(double storeC) {
        if (storeC <= frozen.toC()) {
            return whileFrozen();
        }
        double longestS = storeC > unproven.toC() ? 0.0 : unproven.longestS();
        return new Limit(unproven.id(), Optional.of(Hazard.LISTERIA_MONOCYTOGENES), longestS, unproven.provenance());
    }

    private Limit whileFrozen() {
        return new Limit(frozen.id(), Optional.empty(), frozen.longestS(), frozen.provenance());
    }
}
