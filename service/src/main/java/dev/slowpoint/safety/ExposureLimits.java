package dev.slowpoint.safety;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Exposure limits of all hazards (FDA fish guide, 4th edition, Appendix 4, Table A-2). */
public final class ExposureLimits {

    private final List<ExposureLimit> coldestFirst;

    /** Limits in any order. */
    public ExposureLimits(List<ExposureLimit> limits) {
        this.coldestFirst = limits.stream()
                .sorted(Comparator.comparingDouble(ExposureLimit::fromC))
                .toList();
    }

    /** All limits, coldest range first. */
    public List<ExposureLimit> all() {
        return coldestFirst;
    }

    /**
     * The limit of a hazard at a temperature [C]. The table is not to be interpolated: between two ranges the warmer one
     * counts. Empty below the coldest range, where the hazard does not grow, and for a hazard without a table.
     */
    public Optional<ExposureLimit> at(Hazard hazard, double temperatureC) {
        List<ExposureLimit> own =
                coldestFirst.stream().filter(l -> l.hazard() == hazard).toList();
        if (own.isEmpty() || temperatureC < own.get(0).fromC()) {
            return Optional.empty();
        }
        return own.stream()
                .filter(l -> temperatureC <= l.toC().orElse(Double.POSITIVE_INFINITY))
                .findFirst();
    }
}
