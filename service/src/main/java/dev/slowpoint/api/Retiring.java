package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Deprecates an operation: every answer of it says so, and the contract. Nothing changes by itself on the days named; who
 * takes the operation away does so on the sunset or later, in a release of its own.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@interface Retiring {

    /** The day in UTC from which it should not be used anew, as 2027-01-31. */
    String since();

    /** The day in UTC from which it may be gone, as 2028-01-31; not before {@link #since}, or empty if nobody knows yet. */
    String sunset() default "";

    /** Where to read what to do instead: a path of this service. */
    String see();
}
