/**
 * What food is made of and how that decides its thermal properties and freezing; the catalogue of foods.
 *
 * <p>Plain Java. Mass fractions are between 0 and 1; temperatures are degrees Celsius with the suffix {@code C}.
 */
@NullMarked
package dev.slowpoint.food;

import org.jspecify.annotations.NullMarked;
