/**
 * Conduction of heat: bodies, materials, surroundings, the solver and the temperature history it leaves.
 *
 * <p>SI units throughout, except that temperatures are degrees Celsius and say so by the suffix {@code C} (differences
 * in kelvin by {@code K}). This package knows no food and no microbe.
 */
@NullMarked
package dev.slowpoint.heat;

import org.jspecify.annotations.NullMarked;
