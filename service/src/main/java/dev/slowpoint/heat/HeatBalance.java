package dev.slowpoint.heat;

/**
 * The heat account of a history, each per volume of the body [J/m3].
 *
 * @param atStart mean enthalpy at the start
 * @param atEnd mean enthalpy at the end
 * @param taken heat that entered through the surface in between, negative when it left
 */
public record HeatBalance(double atStart, double atEnd, double taken) {

    /** What is missing or too much, relative to the larger of the heat taken and the change of content. */
    public double relativeError() {
        double scale = Math.max(Math.abs(taken), Math.abs(atEnd - atStart));
        return scale == 0.0 ? 0.0 : Math.abs(atEnd - atStart - taken) / scale;
    }
}
