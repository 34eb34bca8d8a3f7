package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Form;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.safety.Purpose;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Usual cooks, invented for this test, and the most notices each may show. Two stand always. Who is warned of everything
 * reads nothing: a notice that would push one of these over its bound must be worth it, or be folded into another.
 */
class OrdinaryPlansTest {

    static Stream<Arguments> plans() {
        return Stream.of(
                Arguments.of("chicken breast", 2, "nothing to say", slab("chicken-breast", 30, 63)),
                Arguments.of("pork loin", 2, "nothing to say", slab("pork-loin", 30, 60)),
                Arguments.of("steak, medium-rare", 2, "nothing to say", slab("beef-sirloin", 30, 57)),
                Arguments.of(
                        "steak, rare",
                        5,
                        "three things to know: too cool for the table, so the outside alone is made safe, by a sear",
                        slab("beef-sirloin", 30, 52)),
                Arguments.of("lamb leg steak", 2, "nothing to say", slab("lamb-leg", 40, 57)),
                Arguments.of("turkey breast", 2, "nothing to say", slab("turkey-breast", 60, 63)),
                Arguments.of("duck breast", 2, "nothing to say", slab("duck-breast", 25, 60)),
                Arguments.of(
                        "farmed salmon",
                        4,
                        "a doneness and no safe cook: rule and advice",
                        slab("salmon-farmed", 25, 52).servedAfter(3300)),
                Arguments.of(
                        "wild salmon",
                        5,
                        "the same, and its parasites",
                        slab("salmon-wild", 25, 52).servedAfter(3300)),
                Arguments.of(
                        "wild salmon, frozen before",
                        4,
                        "the same, without them",
                        slab("salmon-wild", 25, 52).servedAfter(3300).frozenBefore()),
                Arguments.of("shrimp", 4, "below every table at 59.5 C", slab("shrimp", 15, 60)),
                Arguments.of(
                        "carrots", 3, "the bag may float", Kitchen.of("carrot", new LongCylinder(0.025), 10.0, 85.0)),
                Arguments.of("potatoes", 3, "the bag may float", slab("potato", 20, 88)),
                Arguments.of("egg", 2, "nothing to say", Kitchen.of("egg-in-shell", new Sphere(0.044), 5.0, 64.0)),
                Arguments.of(
                        "custard",
                        3,
                        "the bag may float",
                        slab("egg-custard", 30, 82).servedAfter(4500)),
                Arguments.of(
                        "chuck for a day",
                        2,
                        "nothing to say",
                        Kitchen.of("beef-chuck", new Brick(0.06, 0.12, 0.18), 4.0, 60.0)
                                .servedAfter(86_400)),
                Arguments.of(
                        "pork shoulder for a day",
                        3,
                        "softer than it is best by then",
                        Kitchen.of("pork-shoulder", new Brick(0.06, 0.12, 0.18), 4.0, 68.0)
                                .servedAfter(86_400)),
                Arguments.of(
                        "burger",
                        4,
                        "minced: inside like outside, and two rules differ",
                        slab("beef-minced", 25, 60).with(Form.MINCED)),
                Arguments.of(
                        "chop from the freezer",
                        3,
                        "frozen",
                        slab("pork-loin", 25, 60).from(-18.0)),
                Arguments.of(
                        "leftovers",
                        2,
                        "nothing to say",
                        slab("pork-shoulder-cooked", 30, 62)
                                .with(Condition.COOKED)
                                .with(Purpose.REHEAT)),
                Arguments.of(
                        "chicken to keep",
                        5,
                        "chill, keep cold and spores are three things to do later",
                        slab("chicken-breast", 30, 65).with(Purpose.KEEP)));
    }

    private static Kitchen slab(String food, double thicknessMm, double bathC) {
        return Kitchen.of(food, new Slab(thicknessMm / 1000.0), 4.0, bathC);
    }

    @ParameterizedTest(name = "{0}: at most {1} ({2})")
    @MethodSource("plans")
    void a_usual_cook_shows_few_notices(String name, int most, String why, Kitchen kitchen) {
        assertThat(kitchen.notices()).as("%s: %s", name, why).hasSizeLessThanOrEqualTo(most);
    }
}
