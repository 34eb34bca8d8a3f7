/** When a food becomes tender and when it stops being good: rate laws, windows, moisture. */
@NullMarked
package dev.slowpoint.texture;

import org.jspecify.annotations.NullMarked;
