package dev.slowpoint.texture;

import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.RateLaw;
import dev.slowpoint.heat.TemperatureHistory;

/** Where in a piece a process is judged. Means are volume means of the doses of the nodes. */
public enum Place {
    /** At the slowest-heating point. */
    CORE,
    /** At the surface. */
    SURFACE,
    /** Over the whole volume. */
    MEAN,
    /** Over the yolk of an egg. */
    YOLK_MEAN,
    /** Over the white of an egg. */
    WHITE_MEAN;

    /**
     * Share of the radius of an egg that the yolk fills: 31 mm of 45 mm across, the egg for which the thresholds of the
     * egg levels were fitted.
     */
    public static final double YOLK_SHARE_OF_RADIUS = 31.0 / 45.0;

    /** The dose under a law at this place. */
    public Dose dose(RateLaw law, TemperatureHistory history) {
        return switch (this) {
            case CORE -> Dose.of(law, history.core());
            case SURFACE -> Dose.of(law, history.surface());
            case MEAN -> history.meanDose(law);
            case YOLK_MEAN -> history.meanDose(law, 0.0, YOLK_SHARE_OF_RADIUS);
            case WHITE_MEAN -> history.meanDose(law, YOLK_SHARE_OF_RADIUS, 1.0);
        };
    }

    /** The first sample time [s] at which a node that counts here is hotter than {@code limitC}; infinity if never. */
    double firstAbove(TemperatureHistory history, double limitC) {
        int last = history.nodes() - 1;
        return switch (this) {
            case CORE -> firstAbove(history, limitC, history.coreNode(), history.coreNode());
            case SURFACE -> firstAbove(history, limitC, last, last);
            case MEAN, WHITE_MEAN -> firstAbove(history, limitC, 0, last);
            case YOLK_MEAN -> firstAbove(history, limitC, 0, outermostOfYolk(history));
        };
    }

    private static int outermostOfYolk(TemperatureHistory history) {
        int node = 0;
        while (history.position(node) < YOLK_SHARE_OF_RADIUS) {
            node++;
        }
        return node;
    }

    private static double firstAbove(TemperatureHistory history, double limitC, int from, int to) {
        for (int sample = 0; sample < history.samples(); sample++) {
            for (int node = from; node <= to; node++) {
                if (history.temperatureC(sample, node) > limitC) {
                    return history.time(sample);
                }
            }
        }
        return Double.POSITIVE_INFINITY;
    }
}
