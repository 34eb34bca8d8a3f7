package dev.slowpoint.texture;

import dev.slowpoint.food.Provenance;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.TemperatureHistory;

/**
 * The juice a piece loses: {@code dL/dt = k(T) max(0, Leq(T) - L)} at every node, in percent of the raw mass, with the
 * equilibrium loss {@code Leq = Lmax / (1 + exp(-(T - Tmid)/s))} and an Arrhenius rate. Loss is never given back.
 */
public final class MoistureModel {

    private static final double TABLE_FROM_C = 0.0;
    private static final double TABLE_TO_C = 110.0;
    private static final double TABLE_STEP_K = 0.5;

    private final String id;
    private final double largestPercent;
    private final double midpointC;
    private final double widthK;
    private final ArrheniusLaw rate;
    private final double dryPercent;
    private final Provenance provenance;
    private final Confidence confidence;
    private final String note;
    private final CubicTable rates;
    private final CubicTable gains;

    /**
     * A curve from its constants.
     *
     * @param id of the curve in the parameter set
     * @param largestPercent Lmax [% of the raw mass], above 0, at most 100
     * @param midpointC Tmid [C], where half of it is lost in the end
     * @param widthK s [K], greater than zero
     * @param rate k [1/s]
     * @param dryPercent mean loss [% of the raw mass] above which the piece eats dry
     * @param provenance where the curve comes from
     * @param confidence how far to trust it
     * @param note remark for readers, may be empty
     */
    public MoistureModel(
            String id,
            double largestPercent,
            double midpointC,
            double widthK,
            ArrheniusLaw rate,
            double dryPercent,
            Provenance provenance,
            Confidence confidence,
            String note) {
        if (!(largestPercent > 0.0 && largestPercent <= 100.0)) {
            throw new IllegalArgumentException(
                    "largestPercent = " + largestPercent + " of curve " + id + " must lie above 0 and at most at 100");
        }
        if (!(widthK > 0.0)) {
            throw new IllegalArgumentException("widthK = " + widthK + " of curve " + id + " must be greater than zero");
        }
        if (!(dryPercent > 0.0 && dryPercent <= 100.0)) {
            throw new IllegalArgumentException(
                    "dryPercent = " + dryPercent + " of curve " + id + " must lie above 0 and at most at 100");
        }
        this.id = id;
        this.largestPercent = largestPercent;
        this.midpointC = midpointC;
        this.widthK = widthK;
        this.rate = rate;
        this.dryPercent = dryPercent;
        this.provenance = provenance;
        this.confidence = confidence;
        this.note = note;
        this.rates = CubicTable.of(rate::perSecond, TABLE_FROM_C, TABLE_TO_C, TABLE_STEP_K);
        this.gains =
                CubicTable.of(t -> rate.perSecond(t) * equilibriumPercent(t), TABLE_FROM_C, TABLE_TO_C, TABLE_STEP_K);
    }

    /** The loss [% of the raw mass] that a piece held at a temperature [C] comes to in the end. */
    public double equilibriumPercent(double temperatureC) {
        return largestPercent / (1.0 + Exp.exp(-(temperatureC - midpointC) / widthK));
    }

    /**
     * Follows the loss through a history.
     *
     * <p>Each node takes one exponential step from sample to sample: exact at constant temperature, of second order in
     * the step where the temperature changes.
     *
     * @param history of the piece
     * @param earlierPercent what was lost before [% of the raw mass], taken as even over the piece
     * @return the volume mean of the loss over time
     */
    public MoistureLoss over(TemperatureHistory history, double earlierPercent) {
        int nodes = history.nodes();
        int samples = history.samples();
        double[] shares = new double[nodes];
        double[] loss = new double[nodes];
        double[] ratesBefore = new double[nodes];
        double[] gainsBefore = new double[nodes];
        for (int node = 0; node < nodes; node++) {
            shares[node] = history.volumeShare(node);
            loss[node] = earlierPercent;
            double temperatureC = history.temperatureC(0, node);
            ratesBefore[node] = rates.at(temperatureC);
            gainsBefore[node] = gains.at(temperatureC);
        }
        double[] times = new double[samples];
        double[] means = new double[samples];
        double[] slopes = new double[samples];
        for (int sample = 0; sample < samples; sample++) {
            times[sample] = history.time(sample);
            double halfStep = sample == 0 ? 0.0 : 0.5 * (times[sample] - times[sample - 1]);
            double mean = 0.0;
            double slope = 0.0;
            for (int node = 0; node < nodes; node++) {
                double temperatureC = history.temperatureC(sample, node);
                double rateHere = rates.at(temperatureC);
                double gainHere = gains.at(temperatureC);
                double decay = halfStep * (ratesBefore[node] + rateHere);
                double growth = halfStep * (gainsBefore[node] + gainHere) - decay * loss[node];
                if (growth > 0.0) {
                    loss[node] += growth * meanOfDecay(decay);
                }
                ratesBefore[node] = rateHere;
                gainsBefore[node] = gainHere;
                mean += shares[node] * loss[node];
                slope += shares[node] * Math.max(0.0, gainHere - rateHere * loss[node]);
            }
            // Rounding of the weighted sum must not give back a last bit of loss.
            means[sample] = sample == 0 ? mean : Math.max(mean, means[sample - 1]);
            slopes[sample] = slope;
        }
        return new MoistureLoss(times, means, slopes);
    }

    /** {@code (1 - exp(-x)) / x}, the mean of {@code exp(-x)} from 0 to x. */
    private static double meanOfDecay(double x) {
        if (x < 0.05) {
            return 1.0 - x * (1.0 / 2.0 - x * (1.0 / 6.0 - x * (1.0 / 24.0 - x * (1.0 / 120.0))));
        }
        return (1.0 - Exp.exp(-x)) / x;
    }

    /** Id of the curve in the parameter set. */
    public String id() {
        return id;
    }

    /** Rate of the loss [1/s]. */
    public ArrheniusLaw rate() {
        return rate;
    }

    /** Mean loss [% of the raw mass] above which the piece eats dry. */
    public double dryPercent() {
        return dryPercent;
    }

    /** Where the curve comes from. */
    public Provenance provenance() {
        return provenance;
    }

    /** How far to trust it. */
    public Confidence confidence() {
        return confidence;
    }

    /** Remark for readers, may be empty. */
    public String note() {
        return note;
    }
}
