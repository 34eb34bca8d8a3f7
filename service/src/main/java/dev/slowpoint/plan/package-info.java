/** The use cases: questions asked of the solver until it answers in times and margins. */
@NullMarked
package dev.slowpoint.plan;

import org.jspecify.annotations.NullMarked;
