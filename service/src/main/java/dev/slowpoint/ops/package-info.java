/** What operators see and set: metrics, health, limits. */
@NullMarked
package dev.slowpoint.ops;

import org.jspecify.annotations.NullMarked;
