package dev.slowpoint.food;

/**
 * {@code c0 + c1 x + c2 x^2}; the unit of the value and of {@code x} is said where it is used.
 *
 * @param c0 value at zero
 * @param c1 slope at zero
 * @param c2 half the second derivative
 */
public record Polynomial(double c0, double c1, double c2) {

    /** Zero everywhere. */
    public static final Polynomial ZERO = new Polynomial(0.0, 0.0, 0.0);

    /** The value at {@code x}. */
    public double at(double x) {
        return c0 + (c1 + c2 * x) * x;
    }

    /** The integral from zero to {@code x}. */
    public double integral(double x) {
        return (c0 + (c1 / 2.0 + c2 / 3.0 * x) * x) * x;
    }

    /** This plus {@code factor} times the other. */
    public Polynomial plus(double factor, Polynomial other) {
        return new Polynomial(c0 + factor * other.c0, c1 + factor * other.c1, c2 + factor * other.c2);
    }
}
