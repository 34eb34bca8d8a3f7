package dev.slowpoint.api;

import dev.slowpoint.plan.DisplayUnits;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/**
 * How numbers and quantities are written for someone: at most three decimals, and no superfluous ones.
 *
 * @param decimal mark between whole and fraction
 * @param thousands mark between groups of three digits
 * @param units that quantities are told in
 */
record Notation(char decimal, char thousands, DisplayUnits units) {

    private static final int DECIMALS = 3;

    /** Binds what stands on both sides; known to more displays than thinner ones. */
    private static final char FIXED_SPACE = '\u00a0';

    /**
     * The notation of a language. Thousands are set apart by a space where its decimal mark is a comma (ISO 80000-1, 7.3.1):
     * a point could be taken for a decimal one, and countries of one language differ in that.
     */
    static Notation of(Locale locale, DisplayUnits units) {
        char decimal = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
        return new Notation(decimal, decimal == '.' ? ',' : FIXED_SPACE, units);
    }

    /** A number. */
    String number(Number number) {
        if (number instanceof Double value && value.isInfinite()) {
            return value > 0.0 ? "∞" : "-∞";
        }
        BigDecimal rounded =
                exact(number).setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros();
        String digits = rounded.abs().toPlainString();
        int point = digits.indexOf('.');
        int whole = point < 0 ? digits.length() : point;
        StringBuilder written = new StringBuilder(digits.length() + 4);
        if (rounded.signum() < 0) {
            written.append('-');
        }
        for (int i = 0; i < whole; i++) {
            if (i > 0 && (whole - i) % 3 == 0) {
                written.append(thousands);
            }
            written.append(digits.charAt(i));
        }
        if (point >= 0) {
            written.append(decimal).append(digits, point + 1, digits.length());
        }
        return written.toString();
    }

    /** An amount of a quantity, with its unit where it is not left out. */
    String quantity(Quantity quantity, Number amount) {
        if (amount instanceof Double value && value.isInfinite()) {
            return unit(quantity, number(amount));
        }
        BigDecimal metric = exact(amount);
        return unit(quantity, number(units == DisplayUnits.US ? quantity.us(metric) : metric));
    }

    /** A temperature on the scale that is shown [C or F]. */
    double degrees(double celsius) {
        return units == DisplayUnits.US ? DisplayUnits.fahrenheit(celsius) : celsius;
    }

    /** What a temperature on the scale that is shown is in Celsius. */
    double celsius(double degrees) {
        return units == DisplayUnits.US ? (degrees - 32.0) / 1.8 : degrees;
    }

    /** An amount that is written already. */
    String unit(Quantity quantity, String amount) {
        return quantity.bare() ? amount : amount + " " + quantity.unit().symbol(units);
    }

    private static BigDecimal exact(Number number) {
        return number instanceof BigDecimal exact ? exact : new BigDecimal(number.toString());
    }
}
