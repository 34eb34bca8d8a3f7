package dev.slowpoint.food;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** The foods of a parameter set, by id. */
public final class Catalogue {

    private final SortedMap<String, Food> foods = new TreeMap<>();

    /** Refuses two foods of one id. */
    public Catalogue(List<Food> foods) {
        for (Food food : foods) {
            if (this.foods.put(food.id(), food) != null) {
                throw new IllegalArgumentException("food '" + food.id() + "' stands twice in the catalogue");
            }
        }
    }

    /** The food of an id, if there is one. */
    public Optional<Food> find(String id) {
        return Optional.ofNullable(foods.get(id));
    }

    /** All foods, in the order of their ids. */
    public List<Food> foods() {
        return List.copyOf(foods.values());
    }
}
