package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** How long the body of a request may be where it is not the usual {@link WireConverter#LONGEST_BODY}. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
@interface LongestBody {

    /** Bytes. */
    int value();
}
