package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Says that the members of a record stand in the query of an operation. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@interface Queried {

    /** The record. */
    Class<? extends Record> value();
}
