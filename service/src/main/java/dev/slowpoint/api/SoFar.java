package dev.slowpoint.api;

import dev.slowpoint.plan.Phrase;
import dev.slowpoint.plan.SoFar.Place;
import io.swagger.v3.oas.annotations.media.Schema;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What really happened since the food went in. */
@Schema(
        name = "SoFar",
        description =
                "What really happened since the food went in. Times are seconds from food in, none later than now."
                        + " Where there is a log of the bath it is the truth, and events of the water are only told of.")
public record SoFar(
        @Schema(
                description =
                        "Now: how long ago the food went in. Hours in the bath that did not happen count as cooking: if"
                                + " this is a guess, guess short.",
                example = "3600",
                minimum = "0",
                maximum = "345600")
        @Unit("s")
        int elapsedS,

        @Schema(
                description =
                        "Temperatures of the water as a sensor recorded them, in order of time. A hole longer than"
                                + " the parameter set takes as known is counted by its worst case.",
                defaultValue = "[]")
        @Items(max = 2000)
        List<WaterReading> bathLog,

        @Schema(description = "What else happened, in order of time.", defaultValue = "[]") @Items(max = 40)
        List<Event> events,

        @Schema(
                description =
                        "Readings of a probe in the middle of the piece, in order of time. They may make a plan longer at"
                                + " any time. While a piece heats, a tip off the middle reads too high: so they bring"
                                + " `times.safe.lateS` and `takeOut.bestS` no further forward than those of the piece as"
                                + " told; or, where `tolerances.thicknessMm` is stated and they pin well or fairly, of"
                                + " the thinnest piece that it allows. The times as given and the early ones follow the"
                                + " readings.",
                defaultValue = "[]")
        @Items(max = 20)
        List<CoreReading> coreReadings,

        @Schema(
                description = "Thickness or diameter as measured now, where the one told was wrong.",
                example = "48",
                minimum = "3",
                maximum = "250")
        @Unit("mm")
        @Nullable
        Double thicknessMm)
        implements Checked {

    @Override
    public void check(String at, Faults faults) {
        for (int i = 1; i < bathLog.size(); i++) {
            if (bathLog.get(i).atS() <= bathLog.get(i - 1).atS()) {
                faults.add(Fault.of(
                                Pointer.child(Pointer.child(Pointer.child(at, "bathLog"), Integer.toString(i)), "atS"),
                                ProblemCode.TIMES_NOT_RISING,
                                "FAULT_READINGS_RISE")
                        .value(Integer.toString(bathLog.get(i).atS())));
                return;
            }
        }
    }

    /** A temperature of the water. */
    @Schema(name = "WaterReading", description = "A temperature of the water.")
    public record WaterReading(
            @Schema(description = "When.", example = "600", minimum = "0", maximum = "345600") @Unit("s")
            int atS,

            @Schema(
                    description = "What the sensor said. A fault value, such as -127, counts as no reading.",
                    example = "59.8",
                    minimum = "-127",
                    maximum = "125")
            @Unit("Cel")
            double waterC) {}

    /** A temperature of the core. */
    @Schema(name = "CoreReading", description = "A temperature of the core.")
    public record CoreReading(
            @Schema(description = "When.", example = "3600", minimum = "0", maximum = "345600") @Unit("s")
            int atS,

            @Schema(description = "What the probe said.", example = "54", minimum = "-40", maximum = "100") @Unit("Cel")
            double coreC,

            @Schema(
                    description = "How far the probe may be off. Default of the parameter set if absent.",
                    example = "0.5",
                    minimum = "0.05",
                    maximum = "5")
            @Unit("K")
            @Nullable
            Double errorK) {}

    /** Something that happened. One flat record for all kinds, so that every client can build it. */
    @Schema(
            name = "CookEvent",
            description = "Something that happened. `heaterOff` takes `untilS`, and `fromS`, `foundC` or both; without"
                    + " `fromS` the time before counts as cooking in hot water, so that `elapsedS` must not be guessed"
                    + " too long;"
                    + " `setpointChanged` takes `fromS` and `setpointC`; `foodAdded` takes `fromS` and `addedG`, and may"
                    + " take `temperatureC`; `floated` takes `fromS` and `untilS`, and may take `temperatureC` (of the"
                    + " air); `outOfBath` takes `fromS`, `untilS` and `place`, and may take `temperatureC`.")
    public record Event(
            @Schema(description = "What happened.", example = "heaterOff")
            Kind event,

            @Schema(
                    description =
                            "When it happened or began. Where the heater was off it is worked out from `foundC` if"
                                    + " absent, in the worst case as early as covered baths allow; that cannot tell"
                                    + " whether the food was in for as long as `elapsedS` says.",
                    example = "7200",
                    minimum = "0",
                    maximum = "345600")
            @Unit("s")
            @Nullable
            Integer fromS,

            @Schema(
                    description = "When it was over; now if it is ended now.",
                    example = "9000",
                    minimum = "0",
                    maximum = "345600")
            @Unit("s")
            @Nullable
            Integer untilS,

            @Schema(
                    description = "Temperature of the water when the heater was on again.",
                    example = "48",
                    minimum = "0",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double foundC,

            @Schema(description = "The new setpoint.", example = "57", minimum = "20", maximum = "100")
            @Unit("Cel")
            @Nullable
            Double setpointC,

            @Schema(description = "Mass of the food added.", example = "600", minimum = "1", maximum = "100000")
            @Unit("g")
            @Nullable
            Double addedG,

            @Schema(
                    description = "Temperature of the food added, of the air over the pack, or of the place it lay in."
                            + " The usual one if absent.",
                    example = "4",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double temperatureC,

            @Schema(description = "Where the pack lay.", example = "room") @Nullable
            Place place)
            implements Checked {

        private static final List<String> MEMBERS = Arrays.stream(Event.class.getRecordComponents())
                .map(RecordComponent::getName)
                .filter(name -> !name.equals("event"))
                .toList();

        @Override
        public void check(String at, Faults faults) {
            event.members.check(
                    Phrase.of("WORD_EVENT", Words.of(event)), MEMBERS, name -> member(name) != null, at, faults);
            if (event == Kind.HEATER_OFF && fromS == null && foundC == null) {
                faults.add(Fault.of(at, ProblemCode.ONE_OF_REQUIRED, "FAULT_HEATER_OFF_NEEDS"));
            }
        }

        private @Nullable Object member(String name) {
            return switch (name) {
                case "fromS" -> fromS;
                case "untilS" -> untilS;
                case "foundC" -> foundC;
                case "setpointC" -> setpointC;
                case "addedG" -> addedG;
                case "temperatureC" -> temperatureC;
                case "place" -> place;
                default -> throw new IllegalArgumentException(name + " is no member of an event");
            };
        }
    }

    /** What can happen, with the members that each takes. */
    public enum Kind {
        /** The heater was off. */
        HEATER_OFF(List.of("untilS"), List.of("fromS", "foundC")),
        /** The setpoint was changed. */
        SETPOINT_CHANGED(List.of("fromS", "setpointC"), List.of()),
        /** Cold food was put into the same bath. */
        FOOD_ADDED(List.of("fromS", "addedG"), List.of("temperatureC")),
        /** The pack floated with one flat face in air. */
        FLOATED(List.of("fromS", "untilS"), List.of("temperatureC")),
        /** The pack was out of the bath. */
        OUT_OF_BATH(List.of("fromS", "untilS", "place"), List.of("temperatureC"));

        private final Members members;

        Kind(List<String> needs, List<String> mayTake) {
            this.members = new Members(needs, mayTake);
        }
    }
}
