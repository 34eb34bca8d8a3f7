/** The HTTP face: request and answer records, controllers, problems, representations. It translates and never computes. */
@NullMarked
package dev.slowpoint.api;

import org.jspecify.annotations.NullMarked;
