/** Benchmarks, run on demand: see DEVELOPERS.md. Never a test of time. */
@NullMarked
package dev.slowpoint.bench;

import org.jspecify.annotations.NullMarked;
