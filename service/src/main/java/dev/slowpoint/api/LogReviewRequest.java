package dev.slowpoint.api;

import dev.slowpoint.plan.LogTask;
import dev.slowpoint.plan.Stirring;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Purpose;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The question about a recorded log: what one sensor recorded, and by which rule to judge it. */
@Schema(
        description =
                "What one sensor recorded of one piece or one bath, and by which rule to judge it. Times are those of the"
                        + " log.")
@LongestBody(LogReviewRequest.LONGEST_BODY)
public record LogReviewRequest(
        @Schema(
                description = "Version of the parameter set to use. The current one if absent.",
                example = "2026.1",
                pattern = CookPlanRequest.VERSION,
                maxLength = 64)
        @Nullable
        String parameterSet,

        @Schema(
                description = "What was cooked, as in a cook plan. `textureClass` and `previouslyFrozen` change nothing"
                        + " here.")
        FoodChoice food,

        @Schema(
                description =
                        "Id of the rule to judge the cook by; see `/v1/rules`. The default of the parameter set if"
                                + " absent.",
                example = "us-fsis-2021",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String rule,

        @Schema(
                description =
                        "Id of the rule to judge a cooling by; see `/v1/rules`. The default of the parameter set if"
                                + " absent.",
                example = "FC-COOL",
                pattern = CookPlanRequest.NAME,
                maxLength = 64)
        @Nullable
        String coolingRule,

        @Schema(
                description =
                        "Why it was cooked; decides what the rule asks for. `serve` if absent, or `reheat` for food"
                                + " that was cooked before.",
                example = "serve")
        @Nullable
        Purpose purpose,

        @Schema(description = "Who will eat it.", example = "general", defaultValue = "general")
        Eater eater,

        @Schema(
                description =
                        "What to judge. If empty, what the log shows: the cook, waiting hot and cooling. What is named"
                                + " here decides the verdict, and must be shown in full.",
                example = "cooking",
                defaultValue = "[]")
        @Items(max = 4)
        List<LogTask.Aspect> aspects,

        @Schema(description = "What recorded.") Sensor sensor,

        @Schema(
                description = "Times of the readings, strictly ascending.",
                example = "60",
                minimum = "0",
                maximum = CookPlanRequest.LONGEST)
        @Unit("s")
        @Items(min = 2, max = MOST_READINGS)
        double[] timesS,

        @Schema(
                description = "The readings, one for each time. Values that sensors give when they are faulty, such as"
                        + " -127, may stand among them: they earn nothing and are named.",
                example = "58.4",
                minimum = "-200",
                maximum = "400")
        @Unit("Cel")
        @Items(min = 2, max = MOST_READINGS)
        double[] temperaturesC,

        @Schema(
                description = "The longest time between two readings over which a straight line is taken for known. The"
                        + " default of the parameter set if absent, or twice `sensor.intervalS` if that is longer.",
                example = "120",
                minimum = "1",
                maximum = "1800")
        @Unit("s")
        @Nullable
        Double longestGapS,

        @Schema(
                description = "Shape and size of the piece in the bath; only with a log of the bath, together with"
                        + " `start`. The core is then computed.")
        @Nullable
        Geometry geometry,

        @Schema(description = "Temperature of the piece at the first reading; only with `geometry`.") @Nullable
        Start start,

        @Schema(
                description = "How the water moved; only with `geometry`. Still if absent, which is the slow side.",
                example = "pumped")
        @Nullable
        Stirring stirring,

        @Schema(
                description = "What the record is called, as the kitchen names it. Echoed, nothing more.",
                example = "Cook log 17",
                pattern = TEXT,
                maxLength = 120)
        @Nullable
        String label,

        @Schema(
                description = "What the record belongs to, as the kitchen names it. Echoed, nothing more.",
                example = "Batch 4, tray 2",
                pattern = TEXT,
                maxLength = 120)
        @Nullable
        String batch)
        implements Checked {

    /** Most readings of a log. */
    static final int MOST_READINGS = 100_000;

    /** Longest body with a log [bytes]: so many readings, written with white space. */
    static final int LONGEST_BODY = 4 * 1024 * 1024;

    /** Text of one line, without what turns the direction of writing and could show a record as another than it is. */
    static final String TEXT = "[^\\u0000-\\u001f\\u007f-\\u009f\\u2028-\\u202e\\u2066-\\u2069\\ud800-\\udfff]*";

    /** Copies the list. */
    public LogReviewRequest {
        aspects = List.copyOf(aspects);
    }

    @Override
    public void check(String at, Faults faults) {
        if (timesS.length != temperaturesC.length) {
            faults.add(Fault.of(
                    Pointer.child(at, "temperaturesC"),
                    ProblemCode.LENGTHS_DIFFER,
                    "FAULT_LENGTHS_DIFFER",
                    Integer.toString(temperaturesC.length),
                    Integer.toString(timesS.length)));
        }
        for (int i = 1; i < timesS.length; i++) {
            if (timesS[i] <= timesS[i - 1]) {
                faults.add(descending(Pointer.child(Pointer.child(at, "timesS"), Integer.toString(i)), timesS, i));
            }
        }
        boolean piece = geometry != null;
        if (piece && sensor.place() != LogTask.SensorPlace.BATH) {
            faults.add(Fault.of(
                    Pointer.child(at, "geometry"), ProblemCode.FIELDS_EXCLUDE_EACH_OTHER, "FAULT_GEOMETRY_OF_BATH"));
        }
        if (piece != (start != null)) {
            String missing = piece ? "start" : "geometry";
            faults.add(Fault.of(
                    Pointer.child(at, missing), ProblemCode.COMPANION_MISSING, "FAULT_GEOMETRY_AND_START", missing));
        }
        if (!piece && stirring != null) {
            faults.add(Fault.of(Pointer.child(at, "geometry"), ProblemCode.COMPANION_MISSING, "FAULT_STIRRING_ALONE"));
        }
    }

    /** A time that does not follow the one before. */
    static Fault descending(String pointer, double[] times, int i) {
        boolean twice = times[i] == times[i - 1];
        Fault fault = twice
                ? Fault.of(pointer, ProblemCode.TIMES_NOT_ASCENDING, "FAULT_TIME_TWICE", Suspicion.shown(times[i]))
                : Fault.of(
                        pointer,
                        ProblemCode.TIMES_NOT_ASCENDING,
                        "FAULT_TIME_AFTER",
                        Suspicion.shown(times[i]),
                        Suspicion.shown(times[i - 1]));
        return fault.value(Suspicion.shown(times[i]));
    }

    /** What recorded. */
    @Schema(name = "LogSensor", description = "What recorded.")
    public record Sensor(
            @Schema(
                    description =
                            "Where it sat: at the slowest-heating point of the food, in the water, or on the surface"
                                    + " of the food.",
                    example = "core")
            LogTask.SensorPlace place,

            @Schema(
                    description = "How far its reading may lie from the truth; added to every limit. The default of the"
                            + " parameter set if absent.",
                    example = "0.5",
                    minimum = "0",
                    maximum = "5")
            @Unit("K")
            @Nullable
            Double errorK,

            @Schema(description = "How often it reads.", example = "30", minimum = "0.1", maximum = "900")
            @Unit("s")
            @Nullable
            Double intervalS) {}

    /** Temperature of the piece when it went in. */
    @Schema(
            name = "LogStart",
            description =
                    "Temperature of the piece at the first reading: `temperatureC`, or `surfaceC` and `coreC` of a piece"
                            + " that is not even.")
    public record Start(
            @Schema(description = "Even temperature.", example = "4", minimum = "-40", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double temperatureC,

            @Schema(description = "Temperature of the surface.", example = "8", minimum = "-40", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double surfaceC,

            @Schema(description = "Temperature of the core.", example = "4", minimum = "-40", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double coreC)
            implements Checked {

        @Override
        public void check(String at, Faults faults) {
            CookPlanRequest.Start.checkField(temperatureC, surfaceC, coreC, at, faults);
        }
    }
}
