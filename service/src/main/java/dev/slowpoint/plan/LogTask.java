package dev.slowpoint.plan;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.StartField;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A question about a recorded log: whether what was recorded meets a published rule.
 *
 * @param food what it is
 * @param form what was done to it
 * @param condition raw, or cooked before
 * @param fatPercent fat of this piece in percent of mass, where it differs from the catalogue
 * @param purpose why it was cooked
 * @param eater who will eat it
 * @param rule id of the published rule; the default of the parameter set if empty
 * @param coolingRule id of the cooling rule; the default of the parameter set if empty
 * @param aspects what to judge; what the log shows if empty
 * @param sensor that recorded
 * @param log what it recorded
 * @param piece in the bath that was recorded; empty for a log of the core or the surface, and where only the water is known
 */
public record LogTask(
        Food food,
        Form form,
        Condition condition,
        OptionalDouble fatPercent,
        Purpose purpose,
        Eater eater,
        Optional<String> rule,
        Optional<String> coolingRule,
        Set<Aspect> aspects,
        Sensor sensor,
        Log log,
        Optional<Piece> piece) {

    /** Copies the set. */
    public LogTask {
        EnumSet<Aspect> copy = EnumSet.noneOf(Aspect.class);
        copy.addAll(aspects);
        aspects = copy;
    }

    /** Part of what a log may show. */
    public enum Aspect {
        /** The kill that the rule asks for, and the warm-up before it. */
        COOKING,
        /** Waiting hot after the cook. */
        HOT_HOLDING,
        /** Cooling after the cook. */
        COOLING,
        /** Warming up again to wait hot. */
        REHEATING
    }

    /** Where a sensor sits. */
    public enum SensorPlace {
        /** At the slowest-heating point of the food. */
        CORE,
        /** In the water. */
        BATH,
        /** On the surface of the food. */
        SURFACE
    }

    /**
     * A sensor.
     *
     * @param place where it sits
     * @param errorK how far its reading may lie from the truth [K]; the default of the parameter set if empty
     * @param intervalS how often it reads [s], where that is known
     */
    public record Sensor(SensorPlace place, OptionalDouble errorK, OptionalDouble intervalS) {}

    /** What a sensor recorded; at least two readings at strictly ascending times. */
    public static final class Log {

        private final double[] timesS;
        private final double[] temperaturesC;
        private final OptionalDouble longestGapS;

        /**
         * A log.
         *
         * @param timesS [s]; kept as it is
         * @param temperaturesC [C] at those times, NaN where the sensor had no reading; kept as it is
         * @param longestGapS the longest time without reading that counts as read [s]; the default of the parameter set
         *     if empty
         */
        public Log(double[] timesS, double[] temperaturesC, OptionalDouble longestGapS) {
            this.timesS = timesS;
            this.temperaturesC = temperaturesC;
            this.longestGapS = longestGapS;
        }

        double[] timesS() {
            return timesS;
        }

        double[] temperaturesC() {
            return temperaturesC;
        }

        OptionalDouble longestGapS() {
            return longestGapS;
        }
    }

    /**
     * The piece in a bath that was recorded. It went in at the first reading.
     *
     * @param body shape and size
     * @param arrangement how it lay in the bath
     * @param start its temperatures when it went in
     * @param stirring how the water moved
     * @param tolerances how far the real values may lie from the stated ones
     */
    public record Piece(
            Body body, Arrangement arrangement, StartField start, Stirring stirring, CookTask.Tolerances tolerances) {}

    /** Whether the piece went in raw. */
    boolean raw() {
        return condition == Condition.RAW;
    }
}
