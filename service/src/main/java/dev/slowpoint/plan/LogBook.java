package dev.slowpoint.plan;

import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.Programme;
import dev.slowpoint.heat.Stage;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.plan.LogReview.ComputedCore;
import dev.slowpoint.plan.LogReview.LogVerdict;
import dev.slowpoint.plan.LogReview.Readings;
import dev.slowpoint.plan.LogTask.SensorPlace;
import dev.slowpoint.safety.Eater;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.Plausibility;
import dev.slowpoint.safety.Purpose;
import dev.slowpoint.safety.Recording;
import dev.slowpoint.safety.Recording.Unread;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/** Reads a log, computes a core where only the bath was recorded, and puts the review together. */
final class LogBook {

    /** How far the bath may vary within one stage of constant temperature, to begin with [K]. */
    private static final double STAGE_K = 0.2;

    /** More stages are not run; the bath is then taken coarser, on the safe side all the same. */
    private static final int MOST_STAGES = 240;

    /** How closely a computed core is sampled [s]; between samples it bends by less than 0.01 K. */
    private static final double SAMPLED_S = 10.0;

    private static final int MOST_SAMPLES = 20_000;

    /** Points of the curve: the lowest and the highest of each part. */
    private static final int CURVE_PARTS = 100;

    /** A margin below it is thin [log10], as in plans. */
    private static final double THIN_LOG10 = 1.0;

    private static final double THIN_BELOW_C = 60.0;

    private final LogTask task;
    private final Knowledge knowledge;
    private final Materials materials;
    private final SolverRuns solver = new SolverRuns();
    private final double errorK;
    private final double longestGapS;
    private final Recording recording;

    LogBook(LogTask task, Knowledge knowledge, Materials materials) {
        this.task = task;
        this.knowledge = knowledge;
        this.materials = materials;
        LogDefaults logs = knowledge.logs();
        this.errorK = task.sensor().errorK().orElse(logs.errorK());
        this.longestGapS = task.log()
                .longestGapS()
                .orElse(Math.max(
                        logs.plausible().longestGapS(),
                        2.0 * task.sensor().intervalS().orElse(0.0)));
        Plausibility plausible = logs.plausible().withLongestGapS(longestGapS);
        this.recording = Recording.of(
                task.log().timesS(),
                task.log().temperaturesC(),
                task.sensor().place() == SensorPlace.CORE ? plausible : plausible.neverStuck());
        if (recording.used() < 2) {
            throw new Refusal(Refusal.Fault.of("#/temperaturesC", "NO_USABLE_READINGS", "FAULT_NO_USABLE_READINGS")
                    .withHint("HINT_CHECK_SENSOR_AND_UNIT"));
        }
    }

    LogReview review() {
        Optional<Computed> computed =
                task.sensor().place() == SensorPlace.BATH ? task.piece().map(this::computed) : Optional.empty();
        LogReviewing reviewing = new LogReviewing(task, knowledge, recording, computed.map(Computed::seen), errorK);
        return new LogReview(
                knowledge.version(),
                knowledge.digest(),
                reviewing.verdict(),
                reviewing.rule(),
                reviewing.coolingRule(),
                reviewing.limits(),
                reviewing.deviations(),
                reviewing.deviationCount(),
                new Readings(
                        recording.received(),
                        recording.used(),
                        recording.firstS(),
                        recording.lastS(),
                        recording.lowestC(),
                        recording.highestC(),
                        errorK,
                        longestGapS,
                        sha256()),
                reviewing.growth(),
                computed.map(Computed::core),
                notices(reviewing, computed.isPresent()),
                curve(),
                reviewing.sources(),
                solver.effort());
    }

    // ---- a core computed from the bath ----

    private record Computed(LogReviewing.Seen seen, ComputedCore core) {}

    /**
     * The core between two bounds: in stages of constant temperature, each at the lowest the bath may have been, with
     * everything turned to the slow side; and each at the highest, with everything turned to the fast side. Heat only ever
     * flows downhill, so that a bath that is nowhere colder leaves a core that is nowhere colder. Where the bath is unread,
     * it may have stood without heater: then it was no colder than the room.
     */
    private Computed computed(LogTask.Piece piece) {
        double roomC = knowledge.after().roomC();
        double hottestC = recording.highestC();
        List<Part> parts = parts(STAGE_K);
        double widest = parts.stream()
                .filter(p -> p.unread().isEmpty())
                .mapToDouble(p -> p.highC() - p.lowC())
                .max()
                .orElse(0.0);
        double startsC = recording.temperatureC(0);
        Recording least = sampled(run(
                piece,
                Corner.LATE,
                parts,
                p -> p.unread().isEmpty() ? p.lowC() - errorK : Math.min(roomC, p.lowC()) - errorK));
        Recording most = sampled(run(
                piece,
                Corner.EARLY,
                parts,
                p -> (p.unread().isEmpty() ? p.highC() : Math.max(hottestC, startsC)) + errorK));
        return new Computed(
                new LogReviewing.Seen(least, most, knowledge.defaults().readingK()),
                new ComputedCore(least.highestC(), least.temperatureC(least.used() - 1), widest + 2.0 * errorK));
    }

    /**
     * A part of the bath log.
     *
     * @param fromS when it begins [s]
     * @param untilS when it ends [s]
     * @param lowC lowest reading [C]
     * @param highC highest reading [C]
     * @param unread where nothing was read
     */
    private record Part(double fromS, double untilS, double lowC, double highC, Optional<Unread> unread) {}

    private List<Part> parts(double withinK) {
        List<Part> parts = new ArrayList<>();
        List<Unread> unread = recording.unread();
        int next = 0;
        if (!unread.isEmpty() && unread.get(0).beforeC().isEmpty()) {
            parts.add(unreadPart(unread.get(next++)));
        }
        int i = 0;
        while (i + 1 < recording.used()) {
            if (next < unread.size() && unread.get(next).fromS() == recording.timeS(i)) {
                parts.add(unreadPart(unread.get(next++)));
                i++;
                continue;
            }
            double low = recording.temperatureC(i);
            double high = low;
            int end = i;
            while (end + 1 < recording.used()
                    && !(end > i && next < unread.size() && unread.get(next).fromS() == recording.timeS(end))) {
                double wouldBeLow = Math.min(low, recording.temperatureC(end + 1));
                double wouldBeHigh = Math.max(high, recording.temperatureC(end + 1));
                if (end > i && wouldBeHigh - wouldBeLow > withinK) {
                    break;
                }
                low = wouldBeLow;
                high = wouldBeHigh;
                end++;
            }
            parts.add(new Part(recording.timeS(i), recording.timeS(end), low, high, Optional.empty()));
            i = end;
        }
        if (next < unread.size()) {
            parts.add(unreadPart(unread.get(next)));
        }
        return parts.size() > MOST_STAGES && withinK < 200.0 ? parts(2.0 * withinK) : merged(parts);
    }

    /** Where even so there are too many, as in a log with a gap after each reading, the whole is one unread part. */
    private List<Part> merged(List<Part> parts) {
        if (parts.size() <= MOST_STAGES) {
            return parts;
        }
        Unread all = new Unread(
                recording.firstS(),
                recording.lastS(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Recording.Cause.GAP,
                0);
        return List.of(new Part(
                recording.firstS(), recording.lastS(), recording.lowestC(), recording.highestC(), Optional.of(all)));
    }

    private static Part unreadPart(Unread u) {
        double before = u.beforeC().orElseGet(() -> u.afterC().orElseThrow());
        double after = u.afterC().orElse(before);
        return new Part(u.fromS(), u.untilS(), Math.min(before, after), Math.max(before, after), Optional.of(u));
    }

    private PointHistory run(LogTask.Piece piece, Corner corner, List<Part> parts, ToDoubleFunction<Part> bathC) {
        double hottestC = parts.stream().mapToDouble(bathC).max().orElseThrow();
        Setting setting = Setting.of(piece, task.food(), hottestC, corner, knowledge, materials);
        List<Stage> stages = new ArrayList<>();
        for (Part part : parts) {
            stages.add(setting.inBathAt(bathC.applyAsDouble(part)).cooking(part.untilS() - part.fromS()));
        }
        double whole = recording.lastS() - recording.firstS();
        TemperatureHistory history =
                solver.through(new Programme(stages), Programme.of(setting.cooking(whole)), setting);
        return corner == Corner.LATE ? history.coldest() : history.slowest();
    }

    /** A computed core as if it had been read, unread where the bath was. */
    private Recording sampled(PointHistory core) {
        double whole = recording.lastS() - recording.firstS();
        int samples = (int) Math.min(MOST_SAMPLES, Math.max(2.0, Math.ceil(whole / SAMPLED_S)));
        double step = whole / samples;
        int most = samples + 1 + 3 * recording.unread().size();
        double[] times = new double[most];
        double[] temperatures = new double[most];
        int n = 0;
        int next = 0;
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= samples; i++) {
            double at = i == samples ? recording.lastS() : recording.firstS() + i * step;
            while (next < recording.unread().size()
                    && recording.unread().get(next).fromS() <= at) {
                Unread u = recording.unread().get(next++);
                double middle = 0.5 * (u.fromS() + u.untilS());
                for (double time : new double[] {u.fromS(), middle, u.untilS()}) {
                    if (time > last) {
                        times[n] = time;
                        temperatures[n++] = time == middle ? Double.NaN : core.atC(time - recording.firstS());
                        last = time;
                    }
                }
            }
            if (at > last) {
                times[n] = at;
                temperatures[n++] = core.atC(at - recording.firstS());
                last = at;
            }
        }
        Plausibility all = new Plausibility(
                Double.MAX_VALUE, -200.0, 400.0, Double.MAX_VALUE, Double.MAX_VALUE, Double.POSITIVE_INFINITY, 1.0);
        return Recording.of(Arrays.copyOf(times, n), Arrays.copyOf(temperatures, n), all);
    }

    // ---- what goes with it ----

    private List<Notice> notices(LogReviewing reviewing, boolean computed) {
        List<Notice> found = new ArrayList<>();
        Optional<Finding> governing = reviewing.governing();
        LogVerdict verdict = reviewing.verdict();
        if (verdict == LogVerdict.NOT_MET) {
            governing
                    .filter(f -> !f.met())
                    .ifPresent(f -> found.add(Notice.of(
                            NoticeCode.NOT_MET,
                            Figures.log10Down(f.deliveredLog10()),
                            Figures.log10(f.requirement().target()),
                            f.requirement().hazard().name())));
        }
        if (verdict == LogVerdict.MET && recording.highestC() < THIN_BELOW_C) {
            governing
                    .filter(f -> f.marginLog10() < THIN_LOG10)
                    .ifPresent(f -> found.add(Notice.of(NoticeCode.THIN_MARGIN_54_60)));
        }
        if (verdict == LogVerdict.MET
                && reviewing.heatAdaptationPossible()
                && governing.filter(f -> f.requirement().heatAdapts()).isPresent()) {
            found.add(Notice.of(NoticeCode.SLOW_WARM_UP_ADAPTS));
        }
        reviewing
                .coolingRule()
                .filter(rule -> reviewing.limits().stream()
                        .anyMatch(l -> l.what() == LogReview.What.COOLING && l.met() == LogVerdict.NOT_MET))
                .ifPresent(rule -> found.add(Notice.of(NoticeCode.COOLING_NOT_KEPT, rule.id())));
        boolean unmet = verdict != LogVerdict.MET && reviewing.rule().isPresent();
        if (unmet && task.eater() == Eater.VULNERABLE) {
            found.add(Notice.of(NoticeCode.VULNERABLE_EATERS));
        }
        if (task.purpose() == Purpose.KEEP) {
            found.add(Notice.of(NoticeCode.SPORES_SURVIVE));
        }
        if (task.sensor().place() != SensorPlace.CORE && !computed) {
            found.add(Notice.of(NoticeCode.LOG_SHOWS_NO_CORE));
        }
        if (computed) {
            found.add(Notice.of(NoticeCode.KEEP_UNDER_WATER));
            found.add(Notice.of(NoticeCode.ESTIMATE_NOT_GUARANTEE));
        }
        found.add(Notice.of(NoticeCode.LOG_SHOWS_ONE_PLACE));
        return Notices.mostSevereFirst(found, knowledge);
    }

    private LogReview.Curve curve() {
        int n = recording.used();
        double[] times = new double[2 * CURVE_PARTS];
        double[] temperatures = new double[2 * CURVE_PARTS];
        int count = 0;
        int parts = Math.min(CURVE_PARTS, n);
        for (int part = 0; part < parts; part++) {
            int from = (int) ((long) part * n / parts);
            int to = (int) ((long) (part + 1) * n / parts);
            int low = from;
            int high = from;
            for (int i = from; i < to; i++) {
                low = recording.temperatureC(i) < recording.temperatureC(low) ? i : low;
                high = recording.temperatureC(i) > recording.temperatureC(high) ? i : high;
            }
            for (int i : low == high ? new int[] {low} : new int[] {Math.min(low, high), Math.max(low, high)}) {
                times[count] = recording.timeS(i);
                temperatures[count++] = recording.temperatureC(i);
            }
        }
        return new LogReview.Curve(Arrays.copyOf(times, count), Arrays.copyOf(temperatures, count));
    }

    private String sha256() {
        double[] times = task.log().timesS();
        double[] temperatures = task.log().temperaturesC();
        ByteBuffer bytes = ByteBuffer.allocate(2 * Double.BYTES * times.length);
        for (int i = 0; i < times.length; i++) {
            bytes.putLong(Double.doubleToLongBits(times[i]));
            bytes.putLong(Double.doubleToLongBits(temperatures[i]));
        }
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes.array()));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JVM has SHA-256", e);
        }
    }
}
