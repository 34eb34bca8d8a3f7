package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Tells the contract which record an operation answers with, where its return type does not say so. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@interface Answers {

    /** The record. */
    Class<? extends Record> value();

    /** Whether it answers with a picture as well. */
    boolean pictured() default false;

    /** What it answers with as rows of text, if it does. */
    String rows() default "";
}
