/** What changed between two contracts, and whether a client of the older one can live with the newer one. */
@NullMarked
package dev.slowpoint.kit.changes;

import org.jspecify.annotations.NullMarked;
