package dev.slowpoint.api;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A sentence of a bundle: text, places for values such as <code>{0}</code>, and quantities such as {@code <54.4 C>}. Every
 * other sign stands for itself, an apostrophe too.
 *
 * @param parts in order: texts, places and quantities
 */
record Wording(List<Object> parts) {

    private static final Pattern PART = Pattern.compile("<([^>]*)>|\\{(\\d)}");

    /** A place for the value of that number. */
    private record Place(int number) {}

    /** Copies the parts. */
    Wording {
        parts = List.copyOf(parts);
    }

    /** Reads a sentence as it stands in a bundle. */
    static Wording of(String written) {
        List<Object> parts = new ArrayList<>();
        Matcher matcher = PART.matcher(written);
        int at = 0;
        while (matcher.find()) {
            if (matcher.start() > at) {
                parts.add(written.substring(at, matcher.start()));
            }
            parts.add(
                    matcher.group(1) != null
                            ? Quantity.of(matcher.group(1))
                            : new Place(Integer.parseInt(matcher.group(2))));
            at = matcher.end();
        }
        if (at < written.length()) {
            parts.add(written.substring(at));
        }
        return new Wording(parts);
    }

    /** The sentence with its values. */
    String said(List<?> values, Notation notation) {
        return said(
                notation,
                place -> values.get(place) instanceof Number number
                        ? notation.number(number)
                        : values.get(place).toString(),
                quantity -> notation.quantity(quantity, (Number) values.get(quantity.place())));
    }

    /** The sentence with its places left open. */
    String open(Notation notation) {
        return said(notation, Wording::left, quantity -> notation.unit(quantity, left(quantity.place())));
    }

    private static String left(int place) {
        return "{" + place + "}";
    }

    private String said(Notation notation, IntFunction<String> value, Function<Quantity, String> filled) {
        StringBuilder said = new StringBuilder();
        for (Object part : parts) {
            if (part instanceof Quantity quantity) {
                said.append(
                        quantity.amount() == null
                                ? filled.apply(quantity)
                                : notation.quantity(quantity, quantity.amount()));
            } else if (part instanceof Place place) {
                said.append(value.apply(place.number()));
            } else {
                said.append(part);
            }
        }
        return said.toString();
    }
}
