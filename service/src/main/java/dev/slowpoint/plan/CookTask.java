package dev.slowpoint.plan;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Requirement;
import dev.slowpoint.safety.RuleBook;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A question for a cook plan: one piece of one food in one bath.
 *
 * @param food what it is
 * @param form what was done to it
 * @param condition raw, or cooked before
 * @param fatPercent fat of this piece in percent of mass, where it differs from the catalogue
 * @param previouslyFrozen whether a fish was frozen against parasites
 * @param body shape and size
 * @param arrangement how it lies in the bath
 * @param start temperatures when it goes in
 * @param earlierCook an earlier cook of the same piece, whose softening counts
 * @param bath the water
 * @param altitude above the sea [m]
 * @param target what is wanted
 * @param eater who will eat it
 * @param rule id of the published rule; the default of the parameter set if empty
 * @param tolerances how far the real values may lie from the stated ones
 * @param pack what else is in the bag
 * @param then what follows the bath, in order
 */
public record CookTask(
        Food food,
        Form form,
        Condition condition,
        OptionalDouble fatPercent,
        boolean previouslyFrozen,
        Body body,
        Arrangement arrangement,
        StartField start,
        Optional<EarlierCook> earlierCook,
        Bath bath,
        double altitude,
        Target target,
        Eater eater,
        Optional<String> rule,
        Tolerances tolerances,
        Pack pack,
        List<Step> then) {

    /** Copies the list. */
    public CookTask {
        then = List.copyOf(then);
    }

    private CookTask with(
            Body otherBody,
            StartField otherStart,
            Optional<EarlierCook> otherEarlierCook,
            Bath otherBath,
            Target otherTarget) {
        return new CookTask(
                food,
                form,
                condition,
                fatPercent,
                previouslyFrozen,
                otherBody,
                arrangement,
                otherStart,
                otherEarlierCook,
                otherBath,
                altitude,
                otherTarget,
                eater,
                rule,
                tolerances,
                pack,
                then);
    }

    /** The same piece at another start temperature [C]. */
    CookTask from(double startC) {
        return with(body, StartField.uniform(startC), Optional.empty(), bath, target);
    }

    /** The same question of another body. */
    CookTask with(Body changed) {
        return with(changed, start, earlierCook, bath, target);
    }

    /** The same piece, out of the bath a time [s] after it went in. */
    CookTask servedAfter(double seconds) {
        return with(
                body,
                start,
                earlierCook,
                bath,
                new Target(target.purpose(), target.coreC(), target.withinK(), OptionalDouble.of(seconds)));
    }

    /** The same piece as one of so many alike in the bath. */
    CookTask asOneOf(int count) {
        return with(
                body,
                start,
                earlierCook,
                new Bath(
                        bath.setpointC(),
                        bath.stirring(),
                        bath.vessel()
                                .map(v -> new Vessel(
                                        v.volume(),
                                        v.heaterPower(),
                                        v.startC(),
                                        v.loadMass() * count,
                                        v.covered(),
                                        v.openSurface(),
                                        v.lossCoefficient(),
                                        v.roomC()))),
                target);
    }

    /** The same question without a fixed core or a fixed time to serve. */
    CookTask free() {
        return with(
                body,
                start,
                earlierCook,
                bath,
                new Target(target.purpose(), OptionalDouble.empty(), target.withinK(), OptionalDouble.empty()));
    }

    /** The same question with a fixed time to serve [s from food in], or with none. */
    CookTask served(OptionalDouble after) {
        return with(
                body, start, earlierCook, bath, new Target(target.purpose(), target.coreC(), target.withinK(), after));
    }

    /** The same question at whatever setpoint and moment. */
    CookTask anywhere() {
        return with(
                body,
                start,
                earlierCook,
                new Bath(OptionalDouble.empty(), bath.stirring(), bath.vessel()),
                new Target(target.purpose(), target.coreC(), target.withinK(), OptionalDouble.empty()));
    }

    /** The same question for another purpose. */
    CookTask toBe(Purpose purpose) {
        return with(
                body,
                start,
                earlierCook,
                bath,
                new Target(purpose, target.coreC(), target.withinK(), target.serveAfter()));
    }

    /** The same question of a body of another size [m] and a start that is warmer by so much [K]. */
    CookTask with(double across, double warmerK) {
        return with(body.withAcross(across), start.warmerBy(warmerK), earlierCook, bath, target);
    }

    /** The piece after this cook, cold [C] and to be warmed up. */
    CookTask reheatedFrom(double coldC) {
        return new CookTask(
                food,
                form,
                Condition.COOKED,
                fatPercent,
                previouslyFrozen,
                body,
                arrangement,
                StartField.uniform(coldC),
                Optional.empty(),
                bath,
                altitude,
                new Target(Purpose.REHEAT, target.coreC(), target.withinK(), OptionalDouble.empty()),
                eater,
                rule,
                tolerances,
                pack,
                List.of());
    }

    /** What a rule asks of it. */
    List<Requirement> requirements(RuleBook book, String ruleId) {
        return book.requirements(ruleId, food.group(), form, condition, target.purpose(), eater, knownFatPercent());
    }

    /** The same in a bath at another setpoint [C]. */
    CookTask at(double setpointC) {
        return with(
                body,
                start,
                earlierCook,
                new Bath(OptionalDouble.of(setpointC), bath.stirring(), bath.vessel()),
                target);
    }

    /** Whether the piece goes in raw. */
    boolean raw() {
        return condition == Condition.RAW;
    }

    /**
     * Fat in percent of mass for tables that go by it: of this piece where it was told, else of the catalogue. Empty for
     * a bird that was minced, formed or stuffed, whose fat only the recipe knows.
     */
    OptionalDouble knownFatPercent() {
        boolean recipe = form == Form.MINCED || form == Form.FORMED || form == Form.STUFFED;
        boolean catalogue = !food.id().equals(Food.DESCRIBED);
        if (fatPercent.isPresent() || (food.group().poultry() && recipe && catalogue)) {
            return fatPercent;
        }
        return OptionalDouble.of(100.0 * food.composition().fat());
    }

    /** Whether its core starts frozen. */
    boolean frozen() {
        return start.lowestC() < food.freezingPointC();
    }

    /**
     * The water.
     *
     * @param setpointC temperature [C] it is held at; empty to be advised
     * @param stirring how it moves
     * @param vessel its water and heater, where they are told; else it stands at its setpoint whatever goes in
     */
    public record Bath(OptionalDouble setpointC, Stirring stirring, Optional<Vessel> vessel) {}

    /**
     * A bath with a heater of limited power.
     *
     * @param volume of water [m3]
     * @param heaterPower the most the heater gives [W]
     * @param startC temperature of the water when the food goes in [C]; at its setpoint if empty
     * @param loadMass all food in the bath, this piece included [kg], taken to be in pieces like this one
     * @param covered whether a lid or floating balls keep vapour in
     * @param openSurface of the water where it is not covered [m2]; the usual one for the volume if empty
     * @param lossCoefficient through walls and lid [W/K]; the usual one for the volume if empty
     * @param roomC temperature of the room [C]; the usual one if empty
     */
    public record Vessel(
            double volume,
            double heaterPower,
            OptionalDouble startC,
            double loadMass,
            boolean covered,
            OptionalDouble openSurface,
            OptionalDouble lossCoefficient,
            OptionalDouble roomC) {}

    /**
     * What is wanted.
     *
     * @param purpose why it is cooked
     * @param coreC core temperature [C] wanted; the setpoint if empty
     * @param withinK how near to it counts as hot through [K]; the default of the parameter set if empty
     * @param serveAfter when it leaves the bath [s from food in], if that is fixed
     */
    public record Target(Purpose purpose, OptionalDouble coreC, OptionalDouble withinK, OptionalDouble serveAfter) {}

    /**
     * How far real values may lie from stated ones; each is the default of the parameter set if empty.
     *
     * @param across of the size across the slowest-heating point [m]
     * @param startK of the start temperature [K]
     * @param bathK of the bath [K]
     * @param readingK of the core model and a probe [K]
     */
    public record Tolerances(
            OptionalDouble across, OptionalDouble startK, OptionalDouble bathK, OptionalDouble readingK) {}

    /**
     * What else is in the bag.
     *
     * @param rawGarlicOrHerbs raw garlic or fresh herbs
     * @param salted salted or cured before the cook
     * @param saltPercent salt in the food [% of mass], where it is known
     * @param waterActivity of the food's surface [-], where it is known
     * @param soldOrSupplied whether the cooked bag leaves the business that cooked it
     * @param sealedWhileChilled whether the raw food lay chilled, not frozen, in the sealed bag before the cook
     */
    public record Pack(
            boolean rawGarlicOrHerbs,
            boolean salted,
            OptionalDouble saltPercent,
            OptionalDouble waterActivity,
            boolean soldOrSupplied,
            boolean sealedWhileChilled) {}

    /**
     * An earlier cook of the same piece, from the fridge.
     *
     * @param setpointC of its bath [C]
     * @param held time in that bath [s]
     */
    public record EarlierCook(double setpointC, double held) {}
}
