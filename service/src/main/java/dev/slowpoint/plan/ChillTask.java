package dev.slowpoint.plan;

import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.safety.Eater;
import java.util.Optional;

/**
 * A question about cooling a piece that was cooked elsewhere, wherever the cook was planned.
 *
 * @param food what it is
 * @param form what was done to it
 * @param body shape and size
 * @param arrangement how it lies in the medium
 * @param start its temperatures, at most 100 C
 * @param chill in what, and for how long
 * @param store where it is kept afterwards, if it is
 * @param rule id of the cooling rule; the default of the parameter set if empty
 * @param fitToKeep whether its cook is known to have given six decimal reductions of Listeria; unknown is no
 * @param eater who will eat it
 * @param tolerances how far the real values may lie from the stated ones
 */
public record ChillTask(
        Food food,
        Form form,
        Body body,
        Arrangement arrangement,
        StartField start,
        Step.Chill chill,
        Optional<Step.Store> store,
        Optional<String> rule,
        boolean fitToKeep,
        Eater eater,
        CookTask.Tolerances tolerances) {}
