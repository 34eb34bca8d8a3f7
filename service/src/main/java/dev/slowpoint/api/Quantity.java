package dev.slowpoint.api;

import dev.slowpoint.plan.DisplayUnits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A quantity in a sentence of a bundle, as it is written there between angle brackets: a number or the place of a value, a
 * unit, and marks.
 *
 * <ul>
 *   <li>{@code <54.4 C>} a temperature, {@code <0.5 K>} a difference, {@code <3 mm>} a length, {@code <200 m>} a height,
 *       {@code <200 g>} a mass
 *   <li>{@code #} the number alone, where a range names its unit at the other end
 *   <li>{@code +} or {@code -} which way to round to whole degrees Fahrenheit, so that a limit never becomes less safe
 *   <li>{@code ~} something measured or computed: converted to a tenth, and never replaced by a published figure
 * </ul>
 *
 * @param amount the number; absent if it is filled in
 * @param place of the value that is filled in; 0 if none is
 * @param unit of the number
 * @param rounding of a converted number
 * @param measured whether it is no limit but was measured or computed
 * @param bare whether the unit is left out
 */
record Quantity(
        @Nullable BigDecimal amount, int place, Unit unit, RoundingMode rounding, boolean measured, boolean bare) {

    private static final Pattern WRITTEN =
            Pattern.compile("(?:(-?\\d+(?:\\.\\d+)?)|\\{(\\d)}) (C|K|mm|m|g)(~?)([+-]?)(#?)");

    /** A converted limit this close to a whole degree Fahrenheit is that degree: limits in C are printed to a tenth. */
    private static final BigDecimal PRINTED = new BigDecimal("0.1");

    /** mm in an inch, m in a foot and g in an ounce (exact; international yard and pound agreement, 1959). */
    private static final BigDecimal INCH = new BigDecimal("25.4");

    private static final BigDecimal FOOT = new BigDecimal("0.3048");

    private static final BigDecimal OUNCE = new BigDecimal("28.349523125");

    /**
     * Limits whose two published figures are not each other's conversion, C to F: FDA Food Code 2022 prints 21 C (70 F) and
     * 57 C (135 F) in 3-501.14, 63 C (145 F), 68 C (155 F) and 74 C (165 F) in 3-401.11. READ. All others that are named
     * convert to within a tenth: 5 C (41 F), 60 C (140 F), 54.4 C (130 F), 26.7 C (80 F), 4.4 C (40 F).
     */
    private static final Map<BigDecimal, BigDecimal> PUBLISHED = Map.of(
            new BigDecimal("21"), new BigDecimal("70"),
            new BigDecimal("57"), new BigDecimal("135"),
            new BigDecimal("63"), new BigDecimal("145"),
            new BigDecimal("68"), new BigDecimal("155"),
            new BigDecimal("74"), new BigDecimal("165"));

    /** What quantities are of. */
    enum Unit {
        /** Temperature. */
        C("°C", "°F"),
        /** Difference of temperatures. */
        K("K", "°F"),
        /** Length. */
        MM("mm", "in"),
        /** Height. */
        M("m", "ft"),
        /** Mass. */
        G("g", "oz");

        private final String metric;
        private final String us;

        Unit(String metric, String us) {
            this.metric = metric;
            this.us = us;
        }

        String symbol(DisplayUnits units) {
            return units == DisplayUnits.US ? us : metric;
        }
    }

    /** A temperature that was measured or computed. */
    static final Quantity TEMPERATURE = new Quantity(null, 0, Unit.C, RoundingMode.HALF_EVEN, true, false);

    /** A length that was measured or computed. */
    static final Quantity LENGTH = new Quantity(null, 0, Unit.MM, RoundingMode.HALF_EVEN, true, false);

    /**
     * Reads what stands between angle brackets.
     *
     * @throws IllegalArgumentException if it is none of the above, or a limit that does not say which way to round
     */
    static Quantity of(String written) {
        Matcher matcher = WRITTEN.matcher(written);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("<" + written + "> is no quantity");
        }
        String number = matcher.group(1);
        Quantity quantity = new Quantity(
                number == null ? null : new BigDecimal(number),
                number == null ? Integer.parseInt(matcher.group(2)) : 0,
                switch (matcher.group(3)) {
                    case "C" -> Unit.C;
                    case "K" -> Unit.K;
                    case "mm" -> Unit.MM;
                    case "m" -> Unit.M;
                    default -> Unit.G;
                },
                switch (matcher.group(5)) {
                    case "+" -> RoundingMode.CEILING;
                    case "-" -> RoundingMode.FLOOR;
                    default -> RoundingMode.UNNECESSARY;
                },
                !matcher.group(4).isEmpty(),
                !matcher.group(6).isEmpty());
        if (quantity.rounding() != RoundingMode.UNNECESSARY) {
            return quantity;
        }
        if (quantity.amount() == null && !quantity.measured() && quantity.unit() == Unit.C) {
            throw new IllegalArgumentException("<" + written + "> does not say which way to round");
        }
        Quantity nearest = quantity.rounded(RoundingMode.HALF_EVEN);
        if (quantity.amount() != null && quantity.unit() == Unit.C && !quantity.measured()) {
            BigDecimal up = quantity.rounded(RoundingMode.CEILING).us(quantity.amount());
            BigDecimal down = quantity.rounded(RoundingMode.FLOOR).us(quantity.amount());
            if (up.compareTo(down) != 0) {
                throw new IllegalArgumentException("<" + written + "> does not say which way to round");
            }
        }
        return nearest;
    }

    private Quantity rounded(RoundingMode mode) {
        return new Quantity(amount, place, unit, mode, measured, bare);
    }

    /** An amount of it in US units. */
    BigDecimal us(BigDecimal metric) {
        return switch (unit) {
            case C -> fahrenheit(metric);
            case K -> metric.multiply(new BigDecimal("1.8")).setScale(1, rounding);
            case MM -> metric.divide(INCH, 2, rounding);
            case M -> metric.divide(FOOT, 0, rounding);
            case G -> metric.divide(OUNCE, 1, rounding);
        };
    }

    private BigDecimal fahrenheit(BigDecimal celsius) {
        BigDecimal exact = celsius.multiply(new BigDecimal("1.8")).add(new BigDecimal("32"));
        if (measured) {
            return exact.setScale(1, rounding);
        }
        BigDecimal published = PUBLISHED.get(celsius.stripTrailingZeros());
        if (published != null) {
            return published;
        }
        BigDecimal whole = exact.setScale(0, RoundingMode.HALF_EVEN);
        return exact.subtract(whole).abs().compareTo(PRINTED) < 0 ? whole : exact.setScale(0, rounding);
    }
}
