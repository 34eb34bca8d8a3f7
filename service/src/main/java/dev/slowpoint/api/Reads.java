package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Tells the contract which record an operation reads, where it reads the body itself. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@interface Reads {

    /** The record. */
    Class<? extends Record> value();
}
