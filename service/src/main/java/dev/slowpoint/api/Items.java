package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** How many elements a list on the wire may hold. Every list of a request says so. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface Items {

    /** The fewest. */
    int min() default 0;

    /** The most. */
    int max();
}
