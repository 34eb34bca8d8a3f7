/** Whether a food is safe, by how much and by which rule: inactivation, warm-up, published rules, requirements, margin. */
@NullMarked
package dev.slowpoint.safety;

import org.jspecify.annotations.NullMarked;
