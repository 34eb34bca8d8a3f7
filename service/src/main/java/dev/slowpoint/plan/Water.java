package dev.slowpoint.plan;

import dev.slowpoint.heat.WaterBath;

/** The water of a bath over part of a cook under way. Times in seconds from food in. */
sealed interface Water {

    /** From when. */
    double from();

    /** Until when. */
    double until();

    /** Temperature at a time within [C]; of a bath that lives its own life its setpoint. */
    double atC(double time);

    /** The part between two times within. */
    Water part(double start, double end);

    /**
     * Held at a setpoint, as well as the vessel of the task can.
     *
     * @param setpointC [C]
     * @param entersAtC temperature of the water at its begin, where a vessel is told [C]
     * @param goesOn whether it is a later part, so that a vessel goes on where it was
     */
    record Held(double from, double until, double setpointC, double entersAtC, boolean goesOn) implements Water {

        @Override
        public double atC(double time) {
            return setpointC;
        }

        @Override
        public Held part(double start, double end) {
            return new Held(start, end, setpointC, entersAtC, goesOn || start > from);
        }
    }

    /** On a straight line from one temperature to another [C]. */
    record Ramp(double from, double until, double startC, double endC) implements Water {

        @Override
        public double atC(double time) {
            return startC + (endC - startC) * (time - from) / (until - from);
        }

        @Override
        public Ramp part(double start, double end) {
            return new Ramp(start, end, atC(start), atC(end));
        }
    }

    /** Cooling towards a room by Newton's law: start and room [C], time constant [s]. */
    record Cooling(double from, double until, double startC, double roomC, double timeConstant) implements Water {

        @Override
        public double atC(double time) {
            return roomC + (startC - roomC) * StrictMath.exp(-(time - from) / timeConstant);
        }

        @Override
        public Cooling part(double start, double end) {
            return new Cooling(start, end, atC(start), roomC, timeConstant);
        }

        /** As a bath without heater. */
        WaterBath bath() {
            return WaterBath.cooling(startC, roomC, timeConstant);
        }
    }
}
