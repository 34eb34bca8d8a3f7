package dev.slowpoint.heat;

/**
 * What a surface of a body exchanges heat with.
 *
 * @param temperatureC temperature of the medium [C], finite
 * @param filmCoefficient surface heat transfer coefficient [W/m2K], zero (insulated) or more; infinity holds the surface
 *     at the temperature of the medium
 * @param heatFlux what falls on the surface besides, whatever its temperature, such as radiation from coals [W/m2], zero
 *     or more, finite
 * @param wetLimitC temperature [C] above which a wet surface does not rise: what comes in beyond goes into steam;
 *     infinity for a dry or bagged surface
 */
public record Surroundings(double temperatureC, double filmCoefficient, double heatFlux, double wetLimitC) {

    /** Refuses a temperature or a flux that is not finite, a negative coefficient or flux, and a limit that is no number. */
    public Surroundings {
        if (!Double.isFinite(temperatureC)) {
            throw new IllegalArgumentException("temperatureC = " + temperatureC + " must be finite");
        }
        if (!(filmCoefficient >= 0.0)) {
            throw new IllegalArgumentException(
                    "filmCoefficient = " + filmCoefficient + " W/m2K must be zero or more. Maybe the sign is wrong?");
        }
        if (!(heatFlux >= 0.0) || Double.isInfinite(heatFlux)) {
            throw new IllegalArgumentException("heatFlux = " + heatFlux + " W/m2 must be finite, zero or more");
        }
        if (Double.isNaN(wetLimitC)) {
            throw new IllegalArgumentException("wetLimitC is no number");
        }
    }

    /** A medium alone: water, air, ice water, steam. */
    public Surroundings(double temperatureC, double filmCoefficient) {
        this(temperatureC, filmCoefficient, 0.0, Double.POSITIVE_INFINITY);
    }

    /** Nothing gets in or out: a face on a tray or against another piece in the same state. */
    public static Surroundings insulated() {
        return new Surroundings(0.0, 0.0);
    }

    /** The same with heat that falls on the surface besides [W/m2]. */
    public Surroundings radiating(double flux) {
        return new Surroundings(temperatureC, filmCoefficient, flux, wetLimitC);
    }

    /** The same against a surface that stays wet, and so does not rise above a limit [C]. */
    public Surroundings wetUpTo(double limitC) {
        return new Surroundings(temperatureC, filmCoefficient, heatFlux, limitC);
    }

    /** The same medium at another temperature [C]. */
    public Surroundings at(double mediumC) {
        return new Surroundings(mediumC, filmCoefficient, heatFlux, wetLimitC);
    }

    /** The same with another film coefficient [W/m2K]. */
    public Surroundings withFilm(double film) {
        return new Surroundings(temperatureC, film, heatFlux, wetLimitC);
    }
}
