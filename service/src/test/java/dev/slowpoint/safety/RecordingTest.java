package dev.slowpoint.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.safety.Recording.Cause;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class RecordingTest {

    private static final Plausibility PLAUSIBLE = new Plausibility(300.0, -60.0, 125.0, 1.0, 1.0, 900.0, 1.0);

    private static final double COLD = -50.0;

    @Test
    void whatIsCompleteIsReadAsStraightLines() {
        Recording recording = Recording.of(new double[] {0, 60, 120}, new double[] {10.0, 20.0, 20.0}, PLAUSIBLE);

        assertThat(recording.unread()).isEmpty();
        assertThat(recording.used()).isEqualTo(3);
        PointHistory history = recording.filled(u -> COLD);
        assertThat(history.atC(30.0)).isEqualTo(15.0);
        assertThat(history.atC(90.0)).isEqualTo(20.0);
        assertThat(history.end()).isEqualTo(120.0);
    }

    @Test
    void aRunOfTheSameReadingEndsWhereItEnds() {
        Recording recording =
                Recording.of(new double[] {0, 60, 120, 180, 240}, new double[] {60, 60, 60, 61, 61}, PLAUSIBLE);

        PointHistory history = recording.filled(u -> COLD);

        assertThat(history.atC(110.0)).isEqualTo(60.0);
        assertThat(history.atC(150.0)).isEqualTo(60.5);
        assertThat(history.secondsAtOrAbove(60.5, 240.0)).isEqualTo(90.0);
    }

    @Test
    void aGapIsNamedAndFilledAsAsked() {
        Recording recording =
                Recording.of(new double[] {0, 300, 601, 700}, new double[] {60.0, 60.0, 61.0, 61.0}, PLAUSIBLE);

        assertThat(recording.unread()).singleElement().satisfies(gap -> {
            assertThat(gap.cause()).isEqualTo(Cause.GAP);
            assertThat(gap.fromS()).isEqualTo(300.0);
            assertThat(gap.untilS()).isEqualTo(601.0);
            assertThat(gap.beforeC()).hasValue(60.0);
            assertThat(gap.afterC()).hasValue(61.0);
            assertThat(gap.excluded()).isZero();
        });
        assertThat(recording.gaps()).isEqualTo(1);
        PointHistory history = recording.filled(u -> COLD);
        assertThat(history.atC(450.0)).isEqualTo(COLD);
        assertThat(history.secondsAtOrAbove(60.0, 700.0)).isEqualTo(300.0 + 99.0);
    }

    @Test
    void theSmallestGapIsJustLongerThanAllowed() {
        assertThat(Recording.of(new double[] {0, 300}, new double[] {60, 60}, PLAUSIBLE)
                        .unread())
                .isEmpty();
    }

    @Test
    void aSensorWithoutReadingOrWithAFaultIsNotBelieved() {
        double[] times = {0, 10, 20, 30, 40, 50, 60};
        double[] readings = {60.0, Double.NaN, 60.0, -127.0, 60.0, 130.0, 60.0};

        Recording recording = Recording.of(times, readings, PLAUSIBLE);

        assertThat(recording.unread().stream().map(Recording.Unread::cause))
                .containsExactly(Cause.NO_READING, Cause.FAULT_VALUE, Cause.FAULT_VALUE);
        assertThat(recording.used()).isEqualTo(4);
        assertThat(recording.received()).isEqualTo(7);
        assertThat(recording.highestC()).isEqualTo(60.0);
        assertThat(recording.lowestC()).isEqualTo(60.0);
    }

    @Test
    void exactlyEightyFiveIsAFaultWhereItJumpsAndATemperatureWhereItDoesNot() {
        double[] times = {0, 10, 20, 30};

        assertThat(Recording.of(times, new double[] {60.0, 85.0, 60.1, 60.2}, PLAUSIBLE)
                        .unread())
                .singleElement()
                .satisfies(u -> assertThat(u.cause()).isEqualTo(Cause.FAULT_VALUE));
        assertThat(Recording.of(times, new double[] {85.0, 85.0, 20.0, 20.2}, PLAUSIBLE)
                        .unread())
                .singleElement()
                .satisfies(u -> {
                    assertThat(u.beforeC()).isEmpty();
                    assertThat(u.excluded()).isEqualTo(2);
                });
        assertThat(Recording.of(times, new double[] {84.0, 85.0, 85.0, 85.5}, PLAUSIBLE)
                        .unread())
                .isEmpty();
    }

    @Test
    void aStepThatNoCoreCanMakeIsNotBelievedUntilTheReadingIsBackInReach() {
        double[] times = {0, 1, 2, 3, 4, 5};

        Recording recording = Recording.of(times, new double[] {60, 60, 75, 75, 60, 60}, PLAUSIBLE);

        assertThat(recording.unread()).singleElement().satisfies(u -> {
            assertThat(u.cause()).isEqualTo(Cause.JUMP);
            assertThat(u.fromS()).isEqualTo(1.0);
            assertThat(u.untilS()).isEqualTo(4.0);
            assertThat(u.excluded()).isEqualTo(2);
        });
    }

    @Test
    void aReadingThatStopsDeadAfterAFastRiseIsStuckAndAHoldIsNot() {
        double[] times = new double[120];
        double[] stuck = new double[120];
        double[] hold = new double[120];
        for (int i = 0; i < 120; i++) {
            times[i] = 30.0 * i;
            stuck[i] = i < 20 ? 20.0 + i : i < 90 ? 40.0 : 60.0 - 0.01 * i;
            // A first-order rise with a time constant of five minutes, to a tenth of a kelvin.
            hold[i] = Math.rint(10.0 * (60.0 - 40.0 * Math.exp(-times[i] / 300.0))) / 10.0;
        }

        assertThat(Recording.of(times, stuck, PLAUSIBLE).unread())
                .singleElement()
                .satisfies(u -> {
                    assertThat(u.cause()).isEqualTo(Cause.STUCK);
                    assertThat(u.excluded()).isEqualTo(70);
                });
        assertThat(Recording.of(times, hold, PLAUSIBLE).unread()).isEmpty();
        assertThat(Recording.of(times, stuck, PLAUSIBLE.neverStuck()).unread()).isEmpty();
    }

    @Test
    void aFaultAtTheEndLeavesNothingBehindIt() {
        Recording recording = Recording.of(new double[] {0, 10, 20}, new double[] {60, 60, Double.NaN}, PLAUSIBLE);

        assertThat(recording.unread()).singleElement().satisfies(u -> {
            assertThat(u.untilS()).isEqualTo(20.0);
            assertThat(u.afterC()).isEmpty();
        });
        assertThat(recording.filled(u -> COLD).atC(20.0)).isEqualTo(COLD);
        assertThat(recording.lastS()).isEqualTo(20.0);
    }

    @Test
    void anUnreadStretchMayLieInARangeThatItsEndsTouchOrEnclose() {
        double[] times = {0, 1000};
        assertThat(gap(times, 4.0, 60.0).mayLieBetween(10.0, 54.4)).isTrue();
        assertThat(gap(times, 4.0, 30.0).mayLieBetween(10.0, 54.4)).isTrue();
        assertThat(gap(times, 60.0, 61.0).mayLieBetween(10.0, 54.4)).isFalse();
        assertThat(gap(times, 4.0, 5.0).mayLieBetween(10.0, 54.4)).isFalse();
    }

    @Test
    void timesThatDoNotAscendAreRefused() {
        double[] readings = {60, 60, 60};
        for (double[] times : Arrays.asList(
                new double[] {0, 10, 10}, new double[] {0, 10, 9}, new double[] {0, Double.NaN, 20}, new double[2])) {
            assertThatThrownBy(() -> Recording.of(times, readings, PLAUSIBLE))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    private static Recording.Unread gap(double[] times, double before, double after) {
        return Recording.of(times, new double[] {before, after}, PLAUSIBLE)
                .unread()
                .get(0);
    }
}
