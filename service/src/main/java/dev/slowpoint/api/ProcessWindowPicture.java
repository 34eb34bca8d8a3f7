package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.Drawing.Anchor;
import dev.slowpoint.api.ProcessWindowAnswer.AtSetpoint;
import dev.slowpoint.api.ProcessWindowAnswer.Interval;
import dev.slowpoint.api.ProcessWindowAnswer.ProcessPoint;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A process window as a picture: setpoints from left to right, times from food in upwards on a logarithmic scale, the lines
 * of a cook plan, the region between them and the points in it.
 *
 * <p>Lines differ in their dashes and carry their names, so that no colour has to be told from another.
 */
final class ProcessWindowPicture {

    private static final double WIDTH = 480;
    private static final double LEFT = 54;
    private static final double RIGHT = 352;

    /** Letters from which on a line is set smaller. */
    private static final int LONG_LINE = 78;

    private static final double TOP = 70;
    private static final double PLOT = 290;
    private static final double LETTER = 5.6;
    private static final int LETTERS = 82;
    private static final double LINE = 14;

    /** Least distance between two names beside the plot. */
    private static final double APART = 13;

    /** Marks of the scale of time that a clock face knows [s]. */
    private static final int[] MOMENTS = {
        60, 120, 300, 600, 1200, 1800, 3600, 7200, 14_400, 28_800, 43_200, 86_400, 172_800, 345_600
    };

    private static final double[] DEGREES = {0.2, 0.5, 1, 2, 5, 10, 20};

    private static final String STYLE = TemperatureChart.STYLE
            + ".hot{fill:none;stroke:var(--outer);stroke-width:1.8;stroke-dasharray:7 4}.hotname{fill:var(--outer)}"
            + ".safe{fill:none;stroke:var(--core);stroke-width:2.6;stroke-linejoin:round}.safename{fill:var(--core);font-weight:600}"
            + ".tender{fill:none;stroke:var(--good);stroke-width:1.8;stroke-dasharray:2 3}.tendername{fill:var(--good)}"
            + ".until{fill:none;stroke:var(--grow);stroke-width:1.8;stroke-dasharray:12 3 3 3}.untilname{fill:var(--grow)}"
            + ".warm{fill:none;stroke:var(--ink);stroke-width:1.4;stroke-dasharray:1 4}.warmname{fill:var(--ink)}"
            + ".partly{fill:var(--soft);fill-opacity:.12}.slack{fill:none;stroke:var(--ink);stroke-width:1.2}"
            + ".own{fill:var(--paper);stroke:var(--ink);stroke-width:1.8}.pointname{font-weight:600}"
            + ".pointname,.warmname{paint-order:stroke;stroke:var(--paper);stroke-width:3;stroke-linejoin:round}"
            + ".leader{stroke:var(--soft);stroke-width:.7}";

    private final ProcessWindowAnswer window;
    private final PictureWords words;
    private final Axis setpoint;
    private final Axis logTime;
    private final double availableS;
    private final List<Name> names = new ArrayList<>();

    /** A name beside the plot and the height of the line it belongs to. */
    private record Name(String kind, String text, double y) {}

    /** A place on the picture. */
    private record Place(double x, double y) {}

    private ProcessWindowPicture(ProcessWindowAnswer window, @Nullable Integer availableS, PictureWords words) {
        this.window = window;
        this.words = words;
        this.availableS = availableS == null ? Double.POSITIVE_INFINITY : availableS;
        List<AtSetpoint> setpoints = window.setpoints();
        double fromC = setpoints.get(0).setpointC();
        double toC = setpoints.get(setpoints.size() - 1).setpointC();
        double lone = fromC == toC ? 0.5 : 0.0;
        this.setpoint = new Axis(fromC - lone, toC + lone, LEFT, RIGHT);
        double soonest = Double.POSITIVE_INFINITY;
        double latest = 60.0;
        for (AtSetpoint at : setpoints) {
            for (Integer moment : moments(at)) {
                soonest = Math.min(soonest, Math.max(moment, 60));
                latest = Math.max(latest, moment);
            }
        }
        soonest = Double.isInfinite(soonest) ? latest : soonest;
        this.logTime = new Axis(Math.log(0.8 * soonest), Math.log(1.3 * latest), TOP + PLOT, TOP);
    }

    /** All moments that have to be seen. */
    private static List<Integer> moments(AtSetpoint at) {
        List<Integer> moments = new ArrayList<>();
        for (Integer moment : new Integer[] {
            nominal(at.hotThrough()), late(at.safe()), nominal(at.tender()), early(at.goodUntil()), at.slowWarmUpS()
        }) {
            if (moment != null) {
                moments.add(moment);
            }
        }
        if (at.takeOut() != null) {
            moments.add(at.takeOut().bestS());
        }
        return moments;
    }

    private static @Nullable Integer nominal(@Nullable Milestone moment) {
        return moment == null ? null : moment.nominalS();
    }

    private static @Nullable Integer early(@Nullable Milestone moment) {
        return moment == null ? null : moment.earlyS();
    }

    private static @Nullable Integer late(@Nullable Milestone moment) {
        return moment == null ? null : moment.lateS();
    }

    /**
     * Draws a window.
     *
     * @param window the answer
     * @param availableS time that was said to be available, if any
     * @param what the piece in words, such as food and size
     * @param words of the picture
     */
    static byte[] of(ProcessWindowAnswer window, @Nullable Integer availableS, String what, PictureWords words) {
        return new ProcessWindowPicture(window, availableS, words).draw(what);
    }

    private double y(double seconds) {
        return logTime.at(Math.log(Math.max(seconds, 1.0)));
    }

    private byte[] draw(String what) {
        List<String> notes = notes();
        double height = TOP + PLOT + 44 + LINE * notes.size();
        String title = words.say("PICTURE_WINDOW_TITLE", what);
        String verdict = verdict();
        Drawing drawing =
                new Drawing(WIDTH, height, words.language(), title, verdict + " " + String.join(" ", notes), STYLE);
        drawing.box("paper", 0, 0, WIDTH, height);
        drawing.text("title", 12, 22, Anchor.START, title);
        drawing.text(verdict.length() > LONG_LINE ? "soft small" : "soft", 12, 39, Anchor.START, verdict);
        grid(drawing);
        region(drawing);
        available(drawing);
        line(drawing, "hot", "PICTURE_HOT_THROUGH", at -> nominal(at.hotThrough()));
        line(drawing, "tender", "PICTURE_TENDER", at -> nominal(at.tender()));
        line(drawing, "safe", "PICTURE_SAFE", at -> late(at.safe()));
        line(drawing, "until", "PICTURE_GOOD_UNTIL", at -> early(at.goodUntil()));
        line(drawing, "warm", "PICTURE_WINDOW_WARM_UP", AtSetpoint::slowWarmUpS);
        names(drawing);
        points(drawing);
        double y = TOP + PLOT + 50;
        for (String note : notes) {
            drawing.text("tick", 12, y, Anchor.START, note);
            y += LINE;
        }
        return drawing.bytes();
    }

    private String verdict() {
        ProcessPoint point = window.recommended();
        if (point == null) {
            return words.say("PICTURE_WINDOW_CLOSED", window.rule());
        }
        return words.say(
                "PICTURE_WINDOW_POINT",
                words.temperature(point.setpointC()),
                words.time(point.atS()),
                spare(point),
                window.rule());
    }

    /** Rounded down: what is there at least. */
    private String spare(ProcessPoint point) {
        Double spare = point.spareTolerances();
        return words.number(spare == null ? 0.0 : Math.floor(10.0 * spare) / 10.0);
    }

    /** What stands under the plot: why the region ends, what would open it, how to read the lines. */
    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        for (Interval interval : window.region()) {
            ended(notes, "PICTURE_WINDOW_BELOW", interval.fromC(), interval.belowBarredBy());
            ended(notes, "PICTURE_WINDOW_ABOVE", interval.toC(), interval.aboveBarredBy());
        }
        if (window.closed() != null) {
            wrap(notes, sentence(window.closed().barredBy()));
            window.closed()
                    .openings()
                    .forEach(opening -> wrap(notes, words.say("PICTURE_WINDOW_OPENS", opening.text())));
        }
        if (window.region().stream().anyMatch(interval -> interval.verdict().equals("surfaceOnly"))) {
            wrap(notes, words.say("PICTURE_WINDOW_OUTSIDE_NOTE"));
        }
        wrap(notes, words.say("PICTURE_WINDOW_NOTE"));
        return notes;
    }

    private void ended(List<String> notes, String key, double celsius, @Nullable String barredBy) {
        if (barredBy != null) {
            wrap(notes, words.say(key, words.temperature(celsius), sentence(barredBy)));
        }
    }

    private String sentence(String code) {
        return window.reasons().stream()
                .filter(reason -> reason.code().equals(code))
                .map(Reason::text)
                .findFirst()
                .orElse(code);
    }

    private static void wrap(List<String> notes, String text) {
        StringBuilder row = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (!row.isEmpty() && row.length() + 1 + word.length() > LETTERS) {
                notes.add(row.toString());
                row.setLength(0);
            }
            row.append(row.isEmpty() ? "" : " ").append(word);
        }
        notes.add(row.toString());
    }

    private void grid(Drawing drawing) {
        double bottom = TOP + PLOT;
        double free = bottom + 14;
        for (int mark : MOMENTS) {
            double at = Math.log(mark);
            double y = logTime.at(at);
            if (at >= logTime.from() && at <= logTime.to() && free - y >= 14) {
                drawing.line("rule", LEFT, y, RIGHT, y);
                drawing.text("tick", LEFT - 5, y + 3.5, Anchor.END, words.time(mark));
                free = y;
            }
        }
        drawing.text("tick", 12, TOP - 10, Anchor.START, words.say("PICTURE_WINDOW_TIME"));
        drawing.line("axis", LEFT, bottom, RIGHT, bottom);
        Axis shown = words.shown(setpoint);
        double step = DEGREES[DEGREES.length - 1];
        for (int i = DEGREES.length - 1; i >= 0 && (shown.to() - shown.from()) / DEGREES[i] <= 10; i--) {
            step = DEGREES[i];
        }
        for (int i = (int) Math.ceil(shown.from() / step - 1e-9); i * step <= shown.to() + 1e-9; i++) {
            double x = shown.at(i * step);
            drawing.line("axis", x, bottom, x, bottom + 4);
            drawing.text("tick", x, bottom + 15, Anchor.MIDDLE, words.number(i * step));
        }
        drawing.text("tick", RIGHT, bottom + 29, Anchor.END, words.say("PICTURE_WINDOW_SETPOINT"));
    }

    private void region(Drawing drawing) {
        for (Interval interval : window.region()) {
            List<Double> x = new ArrayList<>();
            List<Double> low = new ArrayList<>();
            List<Double> high = new ArrayList<>();
            corner(interval.fromC(), interval.takeOutAtFrom(), x, low, high);
            for (AtSetpoint at : window.setpoints()) {
                if (at.setpointC() > interval.fromC() && at.setpointC() < interval.toC() && at.takeOut() != null) {
                    corner(at.setpointC(), at.takeOut(), x, low, high);
                }
            }
            corner(interval.toC(), interval.takeOutAtTo(), x, low, high);
            boolean surface = interval.verdict().equals("surfaceOnly");
            drawing.between(surface ? "partly" : "window", array(x), array(low), array(high));
            if (surface) {
                double middle = 0.5 * (x.get(0) + x.get(x.size() - 1));
                String name = words.say("PICTURE_WINDOW_OUTSIDE");
                if (x.get(x.size() - 1) - x.get(0) > LETTER * name.length()) {
                    drawing.text("soft", middle, 0.5 * (low.get(0) + high.get(0)) + 4, Anchor.MIDDLE, name);
                }
            }
        }
    }

    private void corner(double celsius, TakeOut takeOut, List<Double> x, List<Double> low, List<Double> high) {
        Integer latest = takeOut.latestS();
        x.add(setpoint.at(celsius));
        low.add(y(takeOut.earliestS()));
        high.add(y(Math.min(latest == null ? Double.MAX_VALUE : latest, availableS)));
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private void available(Drawing drawing) {
        if (Double.isFinite(availableS) && Math.log(availableS) < logTime.to()) {
            double y = y(availableS);
            drawing.line("step", LEFT, y, RIGHT, y);
            names.add(new Name("soft", words.say("PICTURE_WINDOW_AVAILABLE"), y));
        }
    }

    /** A line over the setpoints, interrupted where it is never reached. */
    private void line(Drawing drawing, String kind, String key, Function<AtSetpoint, @Nullable Integer> moment) {
        List<Place> run = new ArrayList<>();
        Place end = null;
        for (AtSetpoint at : window.setpoints()) {
            Integer seconds = moment.apply(at);
            if (seconds == null) {
                run(drawing, kind, run);
                run = new ArrayList<>();
            } else {
                run.add(new Place(setpoint.at(at.setpointC()), y(seconds)));
                end = run.get(run.size() - 1);
            }
        }
        run(drawing, kind, run);
        if (end == null) {
            return;
        }
        String name = words.say(key);
        if (end.x() > RIGHT - 1) {
            names.add(new Name(kind + "name", name, end.y()));
        } else {
            double reach = LETTER * name.length();
            boolean fits = end.x() + 5 + reach < RIGHT;
            drawing.text(
                    kind + "name",
                    fits ? end.x() + 5 : end.x(),
                    fits ? end.y() + 4 : end.y() - 6,
                    fits ? Anchor.START : Anchor.END,
                    name);
        }
    }

    private static void run(Drawing drawing, String kind, List<Place> run) {
        if (run.size() == 1) {
            Place lone = run.get(0);
            drawing.line(kind, lone.x() - 3, lone.y(), lone.x() + 3, lone.y());
        } else if (!run.isEmpty()) {
            drawing.path(
                    kind,
                    run.stream().mapToDouble(Place::x).toArray(),
                    run.stream().mapToDouble(Place::y).toArray());
        }
    }

    /** Names beside the ends of their lines, moved apart where they would lie upon each other. */
    private void names(Drawing drawing) {
        names.sort(Comparator.comparingDouble(Name::y).reversed());
        double[] at = names.stream().mapToDouble(Name::y).toArray();
        double lowest = TOP + PLOT;
        for (int i = 0; i < at.length; i++) {
            at[i] = Math.min(at[i], lowest);
            lowest = at[i] - APART;
        }
        // Where they have run out of the top, they are pushed down again.
        double highest = TOP + 4;
        for (int i = at.length - 1; i >= 0; i--) {
            at[i] = Math.max(at[i], highest);
            highest = at[i] + APART;
        }
        for (int i = 0; i < at.length; i++) {
            Name name = names.get(i);
            drawing.line("leader", RIGHT + 1, name.y(), RIGHT + 9, at[i]);
            drawing.text(name.kind(), RIGHT + 12, at[i] + 4, Anchor.START, name.text());
        }
    }

    private void points(Drawing drawing) {
        ProcessPoint own = window.own();
        if (own != null) {
            point(drawing, own, "own", words.say("PICTURE_WINDOW_OWN"));
        }
        ProcessPoint recommended = window.recommended();
        if (recommended != null) {
            slack(drawing, recommended);
            point(
                    drawing,
                    recommended,
                    "mark",
                    words.temperature(recommended.setpointC()) + ", " + words.time(recommended.atS()));
        }
    }

    private void point(Drawing drawing, ProcessPoint point, String kind, String name) {
        double x = setpoint.at(point.setpointC());
        double y = y(point.atS());
        drawing.dot(kind, x, y, 4.6);
        double reach = LETTER * name.length() + 10;
        boolean right = x + reach < RIGHT;
        drawing.text("pointname", right ? x + 9 : x - 9, y - 8, right ? Anchor.START : Anchor.END, name);
    }

    /** How far bath and moment may be off at once. */
    private void slack(Drawing drawing, ProcessPoint point) {
        Double spare = point.spareTolerances();
        if (spare == null) {
            return;
        }
        double byK = spare * window.once().bathK();
        double by = spare * window.once().momentS();
        double left = setpoint.at(point.setpointC() - byK);
        double right = setpoint.at(point.setpointC() + byK);
        double top = y(point.atS() + by);
        double bottom = y(point.atS() - by);
        drawing.box("slack", left, top, Math.max(right - left, 1.0), Math.max(bottom - top, 1.0));
    }
}
