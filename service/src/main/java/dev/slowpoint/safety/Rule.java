package dev.slowpoint.safety;

import dev.slowpoint.food.Provenance;

/**
 * A published rule that a plan can be judged by.
 *
 * @param id plain name, unique in a parameter set
 * @param name readable name
 * @param jurisdiction where it holds
 * @param edition which text of it
 * @param provenance how it is known, and what it was read in
 * @param note what it leaves out
 */
public record Rule(String id, String name, String jurisdiction, String edition, Provenance provenance, String note) {}
