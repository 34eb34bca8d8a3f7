package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.SoFar.CoreReading;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.plan.SoFar.Place;
import dev.slowpoint.safety.Plausibility;
import dev.slowpoint.safety.Recording;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Each notice of a cook under way, given where its trigger is true and silent where it is not. */
class ReplanNoticesTest {

    private static final Kitchen PORK = Kitchen.of("pork-loin", new Slab(0.045), 4.0, 60.0);
    private static final Plausibility WATER =
            new Plausibility(900.0, -1.0, 105.0, 200.0, 200.0, Double.POSITIVE_INFINITY, 200.0);
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static Asked asked(
            double elapsed, Optional<Recording> log, List<Event> events, List<CoreReading> read, OptionalDouble size) {
        SoFar soFar = new SoFar(elapsed, log, events, read, size);
        return () ->
                Kitchen.PLANNER
                        .replan(new ReplanTask(PORK.task(), soFar), EnumSet.noneOf(Detail.class))
                        .plan()
                        .notices()
                        .stream()
                        .map(Notice::code)
                        .toList();
    }

    private static Asked after(double elapsed, Event... events) {
        return asked(elapsed, Optional.empty(), List.of(events), List.of(), NONE);
    }

    private static Asked read(double... timesAndCores) {
        CoreReading[] readings = new CoreReading[timesAndCores.length / 2];
        for (int i = 0; i < readings.length; i++) {
            readings[i] = new CoreReading(timesAndCores[2 * i], timesAndCores[2 * i + 1], OptionalDouble.of(0.5));
        }
        return asked(readings[readings.length - 1].at(), Optional.empty(), List.of(), Arrays.asList(readings), NONE);
    }

    private static Asked logged(Optional<Event> event, double stepS) {
        double[] times = new double[10];
        double[] temperaturesC = new double[10];
        for (int i = 0; i < 10; i++) {
            times[i] = stepS * i;
            temperaturesC[i] = 60.0;
        }
        Recording log = Recording.of(times, temperaturesC, WATER);
        return asked(9.0 * stepS, Optional.of(log), event.stream().toList(), List.of(), NONE);
    }

    private static SoFar.HeaterOff off(double from, double until, double foundC) {
        return new SoFar.HeaterOff(OptionalDouble.of(from), until, OptionalDouble.of(foundC));
    }

    static Stream<Arguments> triggers() {
        Asked quiet = after(3600.0);
        Asked brief = after(3600.0, off(2400.0, 3600.0, 57.0));
        Asked night =
                after(50_000.0, new SoFar.HeaterOff(OptionalDouble.of(14_000.0), 50_000.0, OptionalDouble.empty()));
        Event added = new SoFar.FoodAdded(900.0, 1.0, NONE);
        return Stream.of(
                Arguments.of(NoticeCode.HEATER_WAS_OFF, brief, quiet),
                Arguments.of(NoticeCode.OFF_TIME_DOUBTED, after(9000.0, off(7200.0, 9000.0, 35.0)), brief),
                Arguments.of(NoticeCode.LOG_HAS_GAP, logged(Optional.empty(), 1000.0), logged(Optional.empty(), 800.0)),
                Arguments.of(
                        NoticeCode.COLD_FOOD_ADDED, logged(Optional.of(added), 800.0), logged(Optional.empty(), 800.0)),
                Arguments.of(NoticeCode.FLOATED, after(3600.0, new SoFar.Floated(600.0, 900.0, NONE)), quiet),
                Arguments.of(
                        NoticeCode.WAS_OUT_OF_BATH,
                        after(3600.0, new SoFar.OutOfBath(600.0, 900.0, Place.FRIDGE, NONE)),
                        quiet),
                Arguments.of(
                        NoticeCode.MEASURED_THICKER,
                        asked(3600.0, Optional.empty(), List.of(), List.of(), OptionalDouble.of(0.055)),
                        asked(3600.0, Optional.empty(), List.of(), List.of(), OptionalDouble.of(0.0455))),
                Arguments.of(NoticeCode.READINGS_MEAN_THICKER, read(3600.0, 30.0), read(3600.0, 55.0)),
                Arguments.of(NoticeCode.READINGS_MEAN_THINNER, read(3600.0, 54.0), read(3600.0, 50.0)),
                Arguments.of(
                        NoticeCode.OFF_TIME_WORKED_OUT,
                        after(20_000.0, new SoFar.HeaterOff(OptionalDouble.empty(), 20_000.0, OptionalDouble.of(56.0))),
                        after(20_000.0, off(17_000.0, 20_000.0, 56.0))),
                Arguments.of(
                        NoticeCode.BATH_IN_GROWTH_RANGE,
                        after(14_000.0, new SoFar.SetpointChanged(8000.0, 48.0)),
                        after(14_000.0, new SoFar.SetpointChanged(8000.0, 57.0))),
                Arguments.of(NoticeCode.READINGS_DISAGREE, read(3600.0, 50.0, 7200.0, 40.0), read(3600.0, 30.0)),
                Arguments.of(NoticeCode.FELL_BACK, night, brief),
                Arguments.of(NoticeCode.TOXIN_NOT_UNDONE, night, brief));
    }

    @ParameterizedTest
    @MethodSource("triggers")
    void a_notice_is_given_where_its_trigger_is_true_and_only_there(NoticeCode code, Asked fires, Asked silent) {
        assertThat(fires.notices()).contains(code);
        assertThat(silent.notices()).doesNotContain(code);
    }
}
