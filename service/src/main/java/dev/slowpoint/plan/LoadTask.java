package dev.slowpoint.plan;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A question for a load plan: several foods and one bath. All tasks name the same bath, eater and rule; the mass of a load in
 * the vessel of each is that of its own pieces.
 *
 * @param items two or more, of different ids
 * @param serveAfter when all is wanted ready [s from the start of the load], if that is fixed
 */
public record LoadTask(List<Item> items, OptionalDouble serveAfter) {

    /** Copies the list. */
    public LoadTask {
        items = List.copyOf(items);
    }

    /**
     * Pieces of one food that are alike.
     *
     * @param id what the asker calls them
     * @param task the question of one of them, without steps after the bath and without a time to serve
     */
    public record Item(String id, CookTask task) {

        /**
         * The same of several packs.
         *
         * @param id what the asker calls them
         * @param count how many packs
         * @param task the question of one of them, whose load in the vessel is its own
         */
        public static Item of(String id, int count, CookTask task) {
            return new Item(id, task.asOneOf(count));
        }
    }

    /** A fault of the question of one item, at its place in the question of the load. */
    public static Refusal.Fault placed(Refusal.Fault fault, int item) {
        boolean shared = fault.pointer().startsWith("#/surroundings")
                || fault.pointer().startsWith("#/rule")
                || fault.pointer().startsWith("#/eater");
        return shared ? fault : fault.at("#/items/" + item + fault.pointer().substring(1));
    }
}
