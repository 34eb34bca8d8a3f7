package dev.slowpoint.plan;

import dev.slowpoint.safety.Recording;
import java.util.ArrayList;
import java.util.List;

/**
 * The readings of a log that straight lines join within a tolerance of all others; so many that the cost of a plan stays
 * bounded.
 *
 * @param times of the readings kept [s]
 * @param temperaturesC of them [C]
 * @param unread whether the stretch before each has no readings
 * @param errorK how far the lines lie from a reading left out, at most [K]
 */
record LogPath(double[] times, double[] temperaturesC, boolean[] unread, double errorK) {

    /** The most readings kept where tolerance allows it (our own choice: it bounds the cost). */
    static final int MOST = 200;

    /** Keeps what it must to stay within a tolerance [K]; the tolerance is doubled until no more than {@link #MOST} are left. */
    static LogPath of(Recording log, double toleranceK) {
        double allowedK = toleranceK;
        LogPath path = within(log, allowedK);
        while (path.times.length > MOST + 2 * log.unread().size()) {
            allowedK *= 2.0;
            path = within(log, allowedK);
        }
        return path;
    }

    /** From each reading kept, on to the farthest that one line reaches with all between within the tolerance. */
    private static LogPath within(Recording log, double toleranceK) {
        List<Integer> kept = new ArrayList<>(List.of(0));
        List<Boolean> unread = new ArrayList<>(List.of(false));
        double errorK = 0.0;
        int from = 0;
        while (from < log.used() - 1) {
            int to = from + 1;
            boolean gap = gapBefore(log, to);
            if (!gap) {
                double steepest = Double.POSITIVE_INFINITY;
                double flattest = Double.NEGATIVE_INFINITY;
                int reach = to;
                for (int i = to; i < log.used() && !gapBefore(log, i); i++) {
                    double seconds = log.timeS(i) - log.timeS(from);
                    double slope = (log.temperatureC(i) - log.temperatureC(from)) / seconds;
                    if (slope >= flattest && slope <= steepest) {
                        reach = i;
                    }
                    steepest = Math.min(steepest, slope + toleranceK / seconds);
                    flattest = Math.max(flattest, slope - toleranceK / seconds);
                    if (flattest > steepest) {
                        break;
                    }
                }
                to = reach;
                errorK = Math.max(errorK, errorBetween(log, from, to));
            }
            kept.add(to);
            unread.add(gap);
            from = to;
        }
        double[] times = kept.stream().mapToDouble(log::timeS).toArray();
        double[] temperaturesC = kept.stream().mapToDouble(log::temperatureC).toArray();
        boolean[] gaps = new boolean[kept.size()];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = unread.get(i);
        }
        return new LogPath(times, temperaturesC, gaps, errorK);
    }

    private static boolean gapBefore(Recording log, int reading) {
        double from = log.timeS(reading - 1);
        return log.unread().stream()
                .anyMatch(u ->
                        u.fromS() == from && u.untilS() > from && u.afterC().isPresent());
    }

    private static double errorBetween(Recording log, int from, int to) {
        double worst = 0.0;
        double slope = (log.temperatureC(to) - log.temperatureC(from)) / (log.timeS(to) - log.timeS(from));
        for (int i = from + 1; i < to; i++) {
            double lineC = log.temperatureC(from) + slope * (log.timeS(i) - log.timeS(from));
            worst = Math.max(worst, Math.abs(lineC - log.temperatureC(i)));
        }
        return worst;
    }
}
