package dev.slowpoint.api;

import java.util.List;
import java.util.Locale;

/** What a picture says, in one language. */
final class PictureWords {

    private static final int MINUTE = 60;
    private static final int HOUR = 3600;
    private static final int DAY = 24 * HOUR;

    private final Sentences sentences;

    PictureWords(Sentences sentences) {
        this.sentences = sentences;
    }

    /** The language (BCP 47). */
    String language() {
        return "en";
    }

    /** A sentence with its values. */
    String say(String key, Object... values) {
        return sentences.say(key, List.of(values));
    }

    /** A piece of food by its id and the size that heat has to cross. */
    String piece(FoodChoice food, Geometry geometry) {
        String name = food.id() == null ? say("PICTURE_OWN_FOOD") : food.id().replace('-', ' ');
        Double across = geometry.thicknessMm() == null ? geometry.diameterMm() : geometry.thicknessMm();
        String what = Character.toUpperCase(name.charAt(0)) + name.substring(1);
        return across == null
                ? what
                : what + String.format(Locale.ROOT, across == Math.rint(across) ? ", %.0f mm" : ", %.1f mm", across);
    }

    /** A temperature with its unit. */
    String temperature(double celsius) {
        return String.format(Locale.ROOT, celsius == Math.rint(celsius) ? "%.0f °C" : "%.1f °C", celsius);
    }

    /** A temperature on a scale. */
    String degrees(int celsius) {
        return celsius + "°";
    }

    /** A length of time, rounded up to whole minutes. */
    String time(int seconds) {
        int minutes = (seconds + MINUTE - 1) / MINUTE;
        int hours = minutes / 60;
        if (seconds >= 2 * DAY && hours % 24 == 0 && minutes % 60 == 0) {
            return hours / 24 + " d";
        }
        if (hours == 0) {
            return minutes + " min";
        }
        return minutes % 60 == 0 ? hours + " h" : hours + " h " + minutes % 60 + " min";
    }
}
