package dev.slowpoint.api;

import dev.slowpoint.plan.Step;
import java.util.List;

/** What a picture says, in one language and one system of units. */
final class PictureWords {

    private static final int DAY = 86_400;

    private final Sentences sentences;

    PictureWords(Sentences sentences) {
        this.sentences = sentences;
    }

    /** The language (BCP 47). */
    String language() {
        return sentences.language();
    }

    /** A sentence with its values. */
    String say(String key, Object... values) {
        return sentences.say(key, List.of(values));
    }

    /** A piece of food and the size that heat has to cross. */
    String piece(FoodChoice food, Geometry geometry) {
        // Up to the comma: a picture is narrow, and details stand behind it.
        String name = food.id() == null
                ? say("PICTURE_OWN_FOOD")
                : sentences.food(food.id()).split(",", 2)[0];
        Double across = geometry.thicknessMm() == null ? geometry.diameterMm() : geometry.thicknessMm();
        return across == null ? name : name + ", " + sentences.notation().quantity(Quantity.LENGTH, across);
    }

    /** What a piece is chilled in. */
    String medium(Step.ChillMedium medium) {
        return say("PICTURE_MEDIUM_" + Words.of(medium));
    }

    /** A number, to a tenth. */
    String number(double value) {
        return sentences.notation().number(Math.rint(10.0 * value) / 10.0);
    }

    /** A temperature with its unit. */
    String temperature(double celsius) {
        return sentences.notation().quantity(Quantity.TEMPERATURE, celsius);
    }

    /** The scale of temperatures that is shown beside one in Celsius, at the same places. */
    Axis shown(Axis celsius) {
        Notation notation = sentences.notation();
        return new Axis(
                notation.degrees(celsius.from()), notation.degrees(celsius.to()), celsius.start(), celsius.end());
    }

    /** A temperature on the scale that is shown. */
    String degrees(int shown) {
        return shown + "°";
    }

    /** A length of time, rounded up to whole minutes. */
    String time(int seconds) {
        boolean days = seconds >= 2 * DAY && seconds % DAY == 0;
        return days ? say("PICTURE_DAYS", seconds / DAY) : sentences.time(seconds);
    }
}
