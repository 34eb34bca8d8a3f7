/**
 * The contract kit: tests that anyone can run against any server that says it keeps the contract. It knows the contract,
 * its requirements and its vectors, and no code of the service.
 */
@NullMarked
package dev.slowpoint.kit;

import org.jspecify.annotations.NullMarked;
