/** Versioned parameter sets: files are read, checked, given a digest and handed on as plain knowledge. */
@NullMarked
package dev.slowpoint.parameters;

import org.jspecify.annotations.NullMarked;
