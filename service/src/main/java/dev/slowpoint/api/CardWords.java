package dev.slowpoint.api;

import dev.slowpoint.food.Food;
import dev.slowpoint.plan.DisplayUnits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** What cards say, in one language and in the units that people read. */
final class CardWords {

    private static final double MM_PER_M = 1000.0;
    private static final double MM_PER_INCH = 25.4;
    private static final int PARTS_OF_INCH = 16;

    private final Sentences sentences;
    private final DisplayUnits units;

    CardWords(Sentences sentences, DisplayUnits units) {
        this.sentences = sentences;
        this.units = units;
    }

    /** A sentence with its values. */
    String say(String key, Object... values) {
        return sentences.say(key, List.of(values));
    }

    /** What a food is called. */
    String food(Food food) {
        return food.id().equals(Food.DESCRIBED) ? say("CARD_OWN_FOOD") : sentences.food(food.id());
    }

    /** A temperature to set or to read; whole degrees Fahrenheit or at most one decimal Celsius. */
    String temperature(double celsius) {
        return units == DisplayUnits.US
                ? plain(DisplayUnits.fahrenheit(celsius), 0, RoundingMode.HALF_UP) + " °F"
                : plain(celsius, 1, RoundingMode.HALF_UP) + " °C";
    }

    /** A temperature that a thermometer must show, one decimal, rounded up. */
    String atLeast(double celsius) {
        return units == DisplayUnits.US
                ? plain(DisplayUnits.fahrenheit(celsius), 1, RoundingMode.CEILING) + " °F"
                : plain(celsius, 1, RoundingMode.CEILING) + " °C";
    }

    /** A temperature not to be exceeded, rounded down. */
    String atMost(double celsius) {
        return units == DisplayUnits.US
                ? plain(DisplayUnits.fahrenheit(celsius), 0, RoundingMode.FLOOR) + " °F"
                : plain(celsius, 1, RoundingMode.FLOOR) + " °C";
    }

    /** A size, without its unit. */
    private String bare(double metres) {
        double mm = MM_PER_M * metres;
        return units == DisplayUnits.US ? inches(mm / MM_PER_INCH) : plain(mm, 2, RoundingMode.HALF_UP);
    }

    private String unit() {
        return units == DisplayUnits.US ? "in" : "mm";
    }

    /** A size. */
    String size(double metres) {
        return bare(metres) + " " + unit();
    }

    /** Sizes from above one to another. */
    String sizes(double from, double to) {
        return say("CARD_SIZES", bare(Math.max(from, 0.0)), bare(to), unit());
    }

    /** A length of time, rounded up to whole minutes. */
    String time(double seconds) {
        return sentences.time((int) Math.ceil(seconds));
    }

    /** Whole inches and sixteenths, as rulers have them: {@code 1 3/16}. */
    private static String inches(double inches) {
        long parts = Math.round(inches * PARTS_OF_INCH);
        long whole = parts / PARTS_OF_INCH;
        long rest = parts % PARTS_OF_INCH;
        if (rest == 0) {
            return Long.toString(whole);
        }
        long below = PARTS_OF_INCH;
        while (rest % 2 == 0) {
            rest /= 2;
            below /= 2;
        }
        return (whole == 0 ? "" : whole + " ") + rest + "/" + below;
    }

    private String plain(double value, int decimals, RoundingMode mode) {
        // Twelve digits first: what binary fractions leave is no reason to round away.
        BigDecimal rounded =
                new BigDecimal(value).setScale(9, RoundingMode.HALF_EVEN).setScale(decimals, mode);
        return sentences.notation().number(rounded);
    }
}
