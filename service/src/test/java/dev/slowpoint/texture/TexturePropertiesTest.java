package dev.slowpoint.texture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.ConstantPropertyReference;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.heat.TemperatureHistory;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/** What must hold for every class, size and bath, on seeded random pieces. */
class TexturePropertiesTest {

    private static final double HORIZON = 24.0 * 3600.0;
    /** Slack for the resolution of the edges [s]. */
    private static final double SLACK = 0.5;

    /**
     * One random case.
     *
     * @param textureClass any class
     * @param piece any body
     * @param bathC bath within 15 K above the floor of the softening clock
     */
    private record Case(TextureClass textureClass, ConstantPropertyReference piece, double bathC) {

        static Case draw(RepetitionInfo repetition) {
            Random random = new Random(20_260_101L + repetition.getCurrentRepetition());
            List<TextureClass> classes = List.copyOf(Released.MODEL.classes());
            TextureClass textureClass = classes.get(random.nextInt(classes.size()));
            double across = 0.01 + 0.05 * random.nextDouble();
            ConstantPropertyReference piece = new ConstantPropertyReference(
                    switch (random.nextInt(3)) {
                        case 0 -> new Slab(across);
                        case 1 -> new LongCylinder(across);
                        default -> new Sphere(across);
                    },
                    1.2e-7 + 0.3e-7 * random.nextDouble(),
                    0.5,
                    100.0 + 500.0 * random.nextDouble());
            double floorC = textureClass.processes().stream()
                    .filter(process -> process.kind() == ProcessKind.OVERSOFTEN)
                    .findFirst()
                    .orElseThrow()
                    .law()
                    .breaksC()[0];
            return new Case(textureClass, piece, floorC + 15.0 * random.nextDouble());
        }

        TextureReading read(double toC, double openC) {
            return TextureReading.of(textureClass, piece.bath(5.0, toC, HORIZON), openC);
        }
    }

    @RepeatedTest(30)
    void a_hotter_bath_never_closes_later_where_the_process_does_not_stop(RepetitionInfo repetition) {
        Case drawn = Case.draw(repetition);
        TextureWindow mild = drawn.read(drawn.bathC(), drawn.bathC() - 1.0).window();
        TextureWindow hot = drawn.read(drawn.bathC() + 2.0, drawn.bathC() + 1.0).window();
        assertThat(hot.dries()).isLessThanOrEqualTo(mild.dries() + SLACK);
        boolean stops = drawn.textureClass().processes().stream()
                .anyMatch(process -> process.law().stops());
        if (!stops) {
            assertThat(hot.softens()).isLessThanOrEqualTo(mild.softens() + SLACK);
            assertThat(hot.softFrom()).isLessThanOrEqualTo(mild.softFrom() + SLACK);
        }
    }

    @RepeatedTest(30)
    void a_hotter_bath_never_opens_later_at_the_same_core(RepetitionInfo repetition) {
        Case drawn = Case.draw(repetition);
        double openC = drawn.bathC() - 1.0;
        assertThat(drawn.read(drawn.bathC() + 2.0, openC).window().opens())
                .isLessThanOrEqualTo(drawn.read(drawn.bathC(), openC).window().opens() + SLACK);
    }

    @RepeatedTest(30)
    void an_earlier_cook_never_opens_or_closes_later(RepetitionInfo repetition) {
        Case drawn = Case.draw(repetition);
        TemperatureHistory cook = drawn.piece().bath(5.0, drawn.bathC(), HORIZON);
        double openC = drawn.bathC() - 1.0;
        TextureWindow fresh =
                TextureReading.of(drawn.textureClass(), cook, openC).window();
        EarlierDoses earlier = EarlierDoses.none(drawn.textureClass());
        for (double until : new double[] {600.0, 7200.0}) {
            earlier = earlier.then(drawn.textureClass(), cook, until);
            TextureWindow again = TextureReading.of(drawn.textureClass(), cook, openC, earlier)
                    .window();
            assertThat(again.opens()).isLessThanOrEqualTo(fresh.opens() + SLACK);
            assertThat(again.softens()).isLessThanOrEqualTo(fresh.softens() + SLACK);
            assertThat(again.dries()).isLessThanOrEqualTo(fresh.dries() + SLACK);
        }
    }

    @RepeatedTest(30)
    void a_longer_history_moves_no_edge_that_was_reached(RepetitionInfo repetition) {
        Case drawn = Case.draw(repetition);
        TextureWindow whole = drawn.read(drawn.bathC(), drawn.bathC() - 1.0).window();
        TextureWindow part = TextureReading.of(
                        drawn.textureClass(),
                        drawn.piece().bath(5.0, drawn.bathC(), HORIZON / 5.0),
                        drawn.bathC() - 1.0)
                .window();
        assertSameOrUnreached(part.opens(), whole.opens());
        assertSameOrUnreached(part.softens(), whole.softens());
        assertSameOrUnreached(part.dries(), whole.dries());
    }

    @RepeatedTest(30)
    void levels_are_reached_in_their_order_and_juice_never_comes_back(RepetitionInfo repetition) {
        Case drawn = Case.draw(repetition);
        TextureReading reading = TextureReading.of(
                drawn.textureClass(),
                drawn.piece()
                        .baths(
                                5.0,
                                new double[] {0.0, 7200.0, 20_000.0, 30_000.0},
                                new double[] {drawn.bathC(), 2.0, drawn.bathC() + 3.0, 40.0},
                                HORIZON),
                drawn.bathC() - 1.0);
        TextureWindow window = reading.window();
        assertThat(window.bestLevel() <= window.softens() || Double.isInfinite(window.bestLevel()))
                .isTrue();
        assertThat(window.softens()).isLessThanOrEqualTo(window.softFrom());
        if (window.ruinedFrom() < Double.POSITIVE_INFINITY) {
            assertThat(window.softFrom()).isLessThanOrEqualTo(window.ruinedFrom());
        }
        if (reading.moisture().isPresent()) {
            double before = 0.0;
            for (double time = 0.0; time <= HORIZON; time += 97.0) {
                double loss = reading.lossPercentAt(time).orElseThrow();
                assertThat(loss).isGreaterThanOrEqualTo(before);
                before = loss;
            }
        }
    }

    private static void assertSameOrUnreached(double part, double whole) {
        if (part < Double.POSITIVE_INFINITY) {
            assertThat(Math.abs(part - whole)).isLessThan(SLACK);
        } else {
            assertThat(whole).isGreaterThan(HORIZON / 5.0 - SLACK);
        }
    }
}
