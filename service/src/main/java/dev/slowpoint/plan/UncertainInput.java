package dev.slowpoint.plan;

/** What makes a plan uncertain. */
public enum UncertainInput {
    /** Size across the slowest-heating point. */
    THICKNESS,
    /** Temperature when it goes in. */
    START_TEMPERATURE,
    /** Temperature of the bath, all through the cook. */
    BATH_TEMPERATURE,
    /** How well heat crosses the surface. */
    FILM_COEFFICIENT,
    /** How well a face in air takes or gives heat. */
    AIR_FILM_COEFFICIENT,
    /** How well the food conducts. */
    CONDUCTIVITY,
    /** What running a body with ends without them may err. */
    SHAPE_ERROR,
    /** Error of the core model and a probe, where safety is judged. */
    CORE_READING,
    /** Kill kinetics: the lines and tables of a rule hold an allowance of unknown size already. */
    INACTIVATION_KINETICS,
    /** Kinetics of softening and setting: no spread is published for most of them. */
    TEXTURE_KINETICS,
    /** Water, fat and protein of the piece, and the melting of its fat. */
    COMPOSITION,
    /** Folds, pouches that come to touch, air that gathers. */
    ARRANGEMENT,
    /** Water, heater and losses of the vessel. */
    VESSEL,
    /** All that follows the bath. */
    STEPS_AFTER_BATH
}
