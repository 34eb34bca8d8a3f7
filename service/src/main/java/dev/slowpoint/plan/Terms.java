package dev.slowpoint.plan;

import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.Rule;
import java.util.List;
import java.util.Optional;

/**
 * What stays the same for all baths that one task is tried in.
 *
 * @param knowledge of the parameter set
 * @param materials thermal tables
 * @param rule judged by
 * @param requirements of the rule for this food
 * @param errorK reading error and accuracy of the bath together [K]
 * @param softening texture class and what an earlier cook did; empty when texture is not modelled
 */
record Terms(
        Knowledge knowledge,
        Materials materials,
        Rule rule,
        List<Requirement> requirements,
        double errorK,
        Optional<Softening> softening) {}
