package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import dev.slowpoint.plan.Step.ChillMedium;
import dev.slowpoint.plan.Step.SearMethod;
import io.swagger.v3.oas.annotations.media.Schema;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One thing that happens to the piece after its bath. One flat record for all kinds, so that every client can build it. */
@Schema(
        description =
                "One thing that happens to the piece after its bath. `bath` takes `setpointC` and `durationS`; `unheated`"
                        + " takes `durationS`, `foundC` or both; `sear` takes `method` and `secondsPerSide`, and may take"
                        + " `bothSidesAtOnce` and `heatC`; `rest` takes `durationS`; `chill` takes `medium`, and may take"
                        + " `mediumC` and `durationS`; `store` takes `temperatureC` and `days`; `reheat` takes `setpointC`,"
                        + " and may take `durationS`.")
public record FollowingStep(
        @Schema(description = "What happens.", example = "chill")
        StepKind step,

        @Schema(
                description = "Setpoint of a further bath, or of the bath for a reheat.",
                example = "60",
                minimum = "20",
                maximum = "100")
        @Unit("Cel")
        @Nullable
        Double setpointC,

        @Schema(
                description =
                        "How long the step takes. If absent, a chill lasts until the core is cold enough to store, a"
                                + " reheat until the piece is hot through, and an unheated bath as long as it takes to fall to"
                                + " `foundC`.",
                example = "3600",
                minimum = "1",
                maximum = CookPlanRequest.LONGEST)
        @Unit("s")
        @Nullable
        Integer durationS,

        @Schema(
                description = "Temperature at which an unheated bath was found at its end.",
                example = "51",
                minimum = "0",
                maximum = "100")
        @Unit("Cel")
        @Nullable
        Double foundC,

        @Schema(description = "How the piece is seared.", example = "pan") @Nullable
        SearMethod method,

        @Schema(description = "Time on each side of a sear.", example = "45", minimum = "1", maximum = "1800")
        @Unit("s")
        @Nullable
        Integer secondsPerSide,

        @Schema(
                description = "Whether both sides are seared at once. One after the other if absent.",
                example = "false")
        @Nullable
        Boolean bothSidesAtOnce,

        @Schema(
                description = "Temperature of pan or oil. The usual one if absent.",
                example = "220",
                minimum = "100",
                maximum = "400")
        @Unit("Cel")
        @Nullable
        Double heatC,

        @Schema(description = "What the piece is chilled in.", example = "iceWater") @Nullable
        ChillMedium medium,

        @Schema(
                description = "Temperature of that medium. The usual one if absent.",
                example = "0.5",
                minimum = "-40",
                maximum = "25")
        @Unit("Cel")
        @Nullable
        Double mediumC,

        @Schema(description = "Temperature of the store.", example = "3", minimum = "-40", maximum = "25")
        @Unit("Cel")
        @Nullable
        Double temperatureC,

        @Schema(description = "Days in the store.", example = "5", minimum = "0.01", maximum = "60")
        @Unit("d")
        @Nullable
        Double days)
        implements Checked {

    private static final List<String> MEMBERS = Arrays.stream(FollowingStep.class.getRecordComponents())
            .map(RecordComponent::getName)
            .filter(name -> !name.equals("step"))
            .toList();

    @Override
    public void check(String at, Faults faults) {
        step.members.check(step.called(), MEMBERS, name -> member(name) != null, at, faults);
        if (step == StepKind.UNHEATED && durationS == null && foundC == null) {
            faults.add(Fault.of(at, ProblemCode.ONE_OF_REQUIRED, "FAULT_UNHEATED_NEEDS"));
        }
        if (heatC != null && (method == SearMethod.COALS || method == SearMethod.TORCH)) {
            faults.add(
                    Fault.of(Pointer.child(at, "heatC"), ProblemCode.FIELDS_EXCLUDE_EACH_OTHER, "FAULT_HEAT_OF_COALS"));
        }
    }

    private @Nullable Object member(String name) {
        return switch (name) {
            case "setpointC" -> setpointC;
            case "durationS" -> durationS;
            case "foundC" -> foundC;
            case "method" -> method;
            case "secondsPerSide" -> secondsPerSide;
            case "bothSidesAtOnce" -> bothSidesAtOnce;
            case "heatC" -> heatC;
            case "medium" -> medium;
            case "mediumC" -> mediumC;
            case "temperatureC" -> temperatureC;
            case "days" -> days;
            default -> throw new IllegalArgumentException(name + " is no member of a step");
        };
    }

    /** What can happen, with the members that each takes. */
    public enum StepKind {
        /** On in a bath at another setpoint. */
        BATH(List.of("setpointC", "durationS"), List.of()),
        /** On in a bath whose heater is off. */
        UNHEATED(List.of(), List.of("durationS", "foundC")),
        /** A hot finish. */
        SEAR(List.of("method", "secondsPerSide"), List.of("bothSidesAtOnce", "heatC")),
        /** At room temperature. */
        REST(List.of("durationS"), List.of()),
        /** Cooled down. */
        CHILL(List.of("medium"), List.of("mediumC", "durationS")),
        /** Kept cold. */
        STORE(List.of("temperatureC", "days"), List.of()),
        /** Warmed up again in a bath. */
        REHEAT(List.of("setpointC"), List.of("durationS"));

        private final Members members;

        StepKind(List<String> needs, List<String> mayTake) {
            this.members = new Members(needs, mayTake);
        }

        private Phrase called() {
            return Phrase.of("WORD_STEP_" + name());
        }
    }
}
