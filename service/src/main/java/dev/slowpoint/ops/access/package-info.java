/** Who may ask, and how much. */
@NullMarked
package dev.slowpoint.ops.access;

import org.jspecify.annotations.NullMarked;
