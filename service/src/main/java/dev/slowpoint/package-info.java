/** The entry point; everything else lives in the packages below. */
@NullMarked
package dev.slowpoint;

import org.jspecify.annotations.NullMarked;
