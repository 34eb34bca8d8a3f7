/** The tests of the kit: each layer looks at the subject in one way, each test at one requirement. */
@NullMarked
package dev.slowpoint.kit.layers;

import org.jspecify.annotations.NullMarked;
