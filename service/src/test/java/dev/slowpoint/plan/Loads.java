package dev.slowpoint.plan;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Asks for load plans. A question is changed by its methods and then planned. */
record Loads(List<Dish> dishes, OptionalDouble setpointC, Optional<Tub> tub, OptionalDouble serveAfter)
        implements Asked {

    /** One item; masses in kilograms. */
    record Dish(String id, String food, Body body, double startC, double mass, OptionalDouble coreC) {

        static Dish of(String id, String food, Body body, double mass) {
            return new Dish(id, food, body, 4.0, mass, OptionalDouble.empty());
        }

        Dish core(double changedC) {
            return new Dish(id, food, body, startC, mass, OptionalDouble.of(changedC));
        }

        Dish from(double changedC) {
            return new Dish(id, food, body, changedC, mass, coreC);
        }

        Dish weighing(double kilograms) {
            return new Dish(id, food, body, startC, kilograms, coreC);
        }
    }

    /** Water and heater. */
    record Tub(double litres, double watts, OptionalDouble startC) {}

    static Loads of(Dish... dishes) {
        return new Loads(List.of(dishes), OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());
    }

    Loads at(double changedC) {
        return new Loads(dishes, OptionalDouble.of(changedC), tub, serveAfter);
    }

    Loads in(double litres, double watts) {
        return new Loads(dishes, setpointC, Optional.of(new Tub(litres, watts, OptionalDouble.empty())), serveAfter);
    }

    Loads from(double waterC) {
        Tub told = tub.orElseThrow();
        return new Loads(
                dishes,
                setpointC,
                Optional.of(new Tub(told.litres(), told.watts(), OptionalDouble.of(waterC))),
                serveAfter);
    }

    Loads servedAfter(double seconds) {
        return new Loads(dishes, setpointC, tub, OptionalDouble.of(seconds));
    }

    Loads with(List<Dish> changed) {
        return new Loads(changed, setpointC, tub, serveAfter);
    }

    Loads and(Dish more) {
        List<Dish> all = new ArrayList<>(dishes);
        all.add(more);
        return with(all);
    }

    /** The question of one dish as a cook plan, in the bath of all. */
    CookTask task(Dish dish) {
        return new CookTask(
                Kitchen.PLANNER.knowledge().catalogue().find(dish.food()).orElseThrow(),
                Form.INTACT,
                Condition.RAW,
                OptionalDouble.empty(),
                false,
                dish.body(),
                Arrangement.FREE,
                StartField.uniform(dish.startC()),
                Optional.empty(),
                new CookTask.Bath(
                        setpointC,
                        Stirring.PUMPED,
                        tub.map(t -> new CookTask.Vessel(
                                t.litres() / 1000.0,
                                t.watts(),
                                t.startC(),
                                dish.mass(),
                                true,
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty()))),
                0.0,
                new CookTask.Target(Purpose.SERVE, dish.coreC(), OptionalDouble.empty(), OptionalDouble.empty()),
                Eater.GENERAL,
                Optional.empty(),
                new CookTask.Tolerances(
                        OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
                Kitchen.NOTHING_ELSE,
                List.of());
    }

    LoadPlan plan() {
        List<LoadTask.Item> items =
                dishes.stream().map(d -> new LoadTask.Item(d.id(), task(d))).toList();
        return Kitchen.PLANNER.load(new LoadTask(items, serveAfter), EnumSet.of(Detail.CURVE));
    }

    @Override
    public List<NoticeCode> notices() {
        return plan().notices().stream().map(Notice::code).toList();
    }
}
