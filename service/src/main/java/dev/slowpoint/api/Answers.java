package dev.slowpoint.api;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Tells the contract which record an operation answers with, where it answers with stored bytes. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@interface Answers {

    /** The record. */
    Class<? extends Record> value();
}
