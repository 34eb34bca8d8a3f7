package dev.slowpoint.heat;

/**
 * The heat account of a history.
 *
 * @param atStart mean enthalpy of the body at the start [J/m3]
 * @param atEnd mean enthalpy at the end [J/m3]
 * @param taken heat that entered through the faces in between, per volume of the body [J/m3], negative when it left
 * @param heated heat that the heater of the bath gave [J]
 * @param lost heat that the bath lost to the room [J]
 */
public record HeatBalance(double atStart, double atEnd, double taken, double heated, double lost) {

    /** What is missing or too much in the body, relative to the larger of the heat taken and the change of content. */
    public double relativeError() {
        double scale = Math.max(Math.abs(taken), Math.abs(atEnd - atStart));
        return scale == 0.0 ? 0.0 : Math.abs(atEnd - atStart - taken) / scale;
    }
}
