package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The unit of a number on the wire, as a UCUM code: {@code mm}, {@code Cel}, {@code K}, {@code s}, {@code %}. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface Unit {

    /** The UCUM code; {@code 1} for a pure number. */
    String value();
}
