package dev.slowpoint.plan;

import dev.slowpoint.safety.Recording;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What really happened to a piece since it went in.
 *
 * @param elapsed time since food in [s], zero or more
 * @param bathLog what a sensor in the water recorded, seconds from food in
 * @param events what else is known, in order of time
 * @param readings of a probe in the core, in order of time
 * @param across the size across the slowest-heating point as measured now [m]; as told in the task if empty
 */
public record SoFar(
        double elapsed,
        Optional<Recording> bathLog,
        List<Event> events,
        List<CoreReading> readings,
        OptionalDouble across) {

    /** Copies the lists. */
    public SoFar {
        events = List.copyOf(events);
        readings = List.copyOf(readings);
    }

    /** Whether nothing but time passed. */
    boolean undisturbed() {
        return bathLog.isEmpty() && events.isEmpty() && readings.isEmpty() && across.isEmpty();
    }

    /**
     * A probe in the core.
     *
     * @param at [s from food in]
     * @param coreC what it read [C]
     * @param errorK how far it may be off [K]; the default of the parameter set if empty
     */
    public record CoreReading(double at, double coreC, OptionalDouble errorK) {}

    /** Something that happened to the water or to the pack. Times in seconds from food in. */
    public sealed interface Event {

        /** When it began, or when it was over where that is all that is known. */
        double at();

        /** When it was over. */
        double over();
    }

    /**
     * The heater was off.
     *
     * @param from when it went off; inferred from {@code foundC} if empty
     * @param over when it was on again; now if it is switched on now
     * @param foundC temperature of the water then [C]
     */
    public record HeaterOff(OptionalDouble from, double over, OptionalDouble foundC) implements Event {

        @Override
        public double at() {
            return from.orElse(over);
        }
    }

    /**
     * The setpoint was changed.
     *
     * @param at when
     * @param setpointC to what [C]
     */
    public record SetpointChanged(double at, double setpointC) implements Event {

        @Override
        public double over() {
            return at;
        }
    }

    /**
     * Cold food was put into the same bath.
     *
     * @param at when
     * @param mass of it [kg]
     * @param temperatureC of it [C]; that of a refrigerator if empty
     */
    public record FoodAdded(double at, double mass, OptionalDouble temperatureC) implements Event {

        @Override
        public double over() {
            return at;
        }
    }

    /**
     * The pack floated with one flat face in air.
     *
     * @param at from when
     * @param over when it was pushed under again
     * @param airC temperature of the air [C]; that of the room if empty
     */
    public record Floated(double at, double over, OptionalDouble airC) implements Event {}

    /**
     * The pack was out of the bath.
     *
     * @param at from when
     * @param over when it was put back
     * @param place where it lay
     * @param temperatureC of that place [C]; the usual one if empty
     */
    public record OutOfBath(double at, double over, Place place, OptionalDouble temperatureC) implements Event {}

    /** Where a pack lies out of its bath. */
    public enum Place {
        /** In the air of the room. */
        ROOM,
        /** In a refrigerator. */
        FRIDGE
    }
}
