package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Curve;
import dev.slowpoint.api.Drawing.Anchor;
import java.util.Collections;
import java.util.List;

/**
 * Temperatures of a piece over time, the range where bacteria grow behind them. Lines differ in their dashes and carry
 * their names, so that no colour has to be told from another.
 */
final class TemperatureChart {

    static final double WIDTH = 480;
    static final double LEFT = 40;
    static final double RIGHT = 466;
    static final double TOP = 68;
    static final double BOTTOM = TOP + 236;

    /** Width that a letter of the usual size takes at most, in units. */
    static final double LETTER = 5.6;

    /** The range where bacteria grow (FDA Food Code 2022, 3-501.16; FSIS-GD-2021-14 table 2, lowest row) [C]. */
    static final double GROWTH_FROM_C = 5.0;

    static final double GROWTH_TO_C = 54.444;

    /** Temperatures are shown up to here: a pan or a grill is hotter than any food may be [C]. */
    private static final double HOTTEST_C = 105.0;

    /** Left free above the hottest line, and below a cold medium [K]. */
    private static final double ROOM_K = 6.0;

    static final String STYLE = """
            :root{--ink:#1d2733;--soft:#5b6775;--rule:#d5dbe1;--paper:#fdfdfb;--core:#a3341f;--band:#a3341f;--outer:#1f6283;--grow:#7d5c08;--good:#2c7a53}
            @media (prefers-color-scheme:dark){:root{--ink:#e9edf1;--soft:#a7b1bc;--rule:#3a444f;--paper:#161b21;--core:#f0937d;--band:#f0937d;--outer:#7cc0df;--grow:#d9b34e;--good:#74c79c}}
            @media print{:root{--ink:#000;--soft:#333;--rule:#bbb;--paper:#fff;--core:#7a1f0e;--band:#7a1f0e;--outer:#0f4560;--grow:#8a6710;--good:#1c5a3b}}
            text{font-family:system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans",sans-serif;font-size:11px;fill:var(--ink)}
            .paper{fill:var(--paper)}.title{font-size:14px;font-weight:600}.long{font-size:11.5px}.small{font-size:9.5px}.moment{font-weight:600}.soft{fill:var(--soft)}.tick{fill:var(--soft);font-size:10px}
            .rule{stroke:var(--rule);stroke-width:1}.axis{stroke:var(--soft);stroke-width:1}
            .core{fill:none;stroke:var(--core);stroke-width:2.4;stroke-linejoin:round}.corename{fill:var(--core);font-weight:600}
            .band{fill:var(--band);fill-opacity:.18}.outer{fill:none;stroke:var(--outer);stroke-width:1.6;stroke-dasharray:6 3}.outername{fill:var(--outer)}
            .water{fill:none;stroke:var(--soft);stroke-width:1.6;stroke-dasharray:1.5 3}.past{fill:var(--soft);fill-opacity:.1}.now{stroke:var(--ink);stroke-width:1.2}.track{fill:none;stroke:var(--soft);stroke-width:1}.bath{stroke:var(--soft);stroke-width:1.4;stroke-dasharray:1.5 3}.grow{fill:var(--grow);fill-opacity:.09}.growname{fill:var(--grow);font-size:10px}
            .window{fill:var(--good);fill-opacity:.14}.best{stroke:var(--good);stroke-width:1.6}.good{fill:var(--good)}.over{fill:var(--core)}.goodname{fill:var(--good);font-weight:600}
            .span{fill:var(--soft);fill-opacity:.38}.mark{fill:var(--ink)}.step{stroke:var(--soft);stroke-width:1;stroke-dasharray:2 4}
            """.replace("\n", "");

    /** A gap between two lines in which a word can stand [units]. */
    private static final double ROOMY = 60;

    /** Letters from which on a line is broken in two. */
    private static final int LONG_LINE = 82;

    private static final int LONGEST_WORD = 12;

    /** Letters from which on a title is set smaller. */
    private static final int LONG_TITLE = 52;

    private final Curve curve;
    private final PictureWords words;
    private final Axis time;
    private final Axis temperature;

    /**
     * A chart of a curve.
     *
     * @param curve with at least two moments
     * @param mediumC a temperature that has to be seen as well [C]
     * @param words of the picture
     */
    TemperatureChart(Curve curve, double mediumC, PictureWords words) {
        this.curve = curve;
        this.words = words;
        this.time = new Axis(0.0, Math.max(60, curve.timesS().get(curve.timesS().size() - 1)), LEFT, RIGHT);
        double coldest = Math.min(Math.min(0.0, mediumC - ROOM_K), Collections.min(curve.coreLateC()));
        double hottest = Math.max(mediumC, Collections.max(curve.surfaceC()));
        hottest = Math.max(hottest, Collections.max(curve.coreEarlyC()));
        this.temperature = new Axis(coldest, Math.min(HOTTEST_C, hottest + ROOM_K), BOTTOM, TOP);
    }

    /** Its scale of time [s]. */
    Axis time() {
        return time;
    }

    /** Its scale of temperature [C]. */
    Axis temperature() {
        return temperature;
    }

    /** The range where bacteria grow, named at its warm end or else at its cold end, where no curve comes. */
    void growth(Drawing drawing, boolean namedAtWarmEnd) {
        double top = temperature.at(GROWTH_TO_C);
        double bottom = temperature.at(GROWTH_FROM_C);
        drawing.box("grow", LEFT, top, RIGHT - LEFT, bottom - top);
        drawing.text(
                "growname", RIGHT - 4, namedAtWarmEnd ? top + 13 : bottom - 5, Anchor.END, words.say("PICTURE_GROWTH"));
    }

    /** What is to be known at once, above the chart. */
    static void heading(Drawing drawing, String title, String verdict, String moment) {
        drawing.text(title.length() > LONG_TITLE ? "title long" : "title", 12, 22, Anchor.START, title);
        drawing.text("soft", 12, 39, Anchor.START, verdict);
        if (moment.length() <= LONG_LINE) {
            drawing.text("moment", 12, 56, Anchor.START, moment);
            return;
        }
        int end = moment.lastIndexOf(' ', (moment.length() + LONGEST_WORD) / 2);
        drawing.text("moment small", 12, 51, Anchor.START, moment.substring(0, end));
        drawing.text("moment small", 12, 63, Anchor.START, moment.substring(end + 1));
    }

    /** Marks of both scales. */
    void grid(Drawing drawing) {
        Axis shown = words.shown(temperature);
        for (int mark : shown.temperatures(8)) {
            double y = shown.at(mark);
            drawing.line("rule", LEFT, y, RIGHT, y);
            drawing.text("tick", LEFT - 5, y + 3.5, Anchor.END, words.degrees(mark));
        }
        drawing.line("axis", LEFT, BOTTOM, RIGHT, BOTTOM);
        for (int mark : time.moments(7)) {
            double x = time.at(mark);
            drawing.line("axis", x, BOTTOM, x, BOTTOM + 4);
            drawing.text("tick", x, BOTTOM + 15, Anchor.MIDDLE, words.time(mark));
        }
    }

    /** The medium as a level line until a place, with its name at that end. */
    void medium(Drawing drawing, double mediumC, double end, String name) {
        double y = temperature.at(mediumC);
        drawing.line("bath", LEFT, y, end, y);
        boolean cold = y > 0.5 * (TOP + BOTTOM);
        drawing.text("soft", end - 4, cold ? y + 12 : y - 5, Anchor.END, name);
    }

    /** The medium as it moves, with its name at its end. */
    void medium(Drawing drawing, List<Double> mediumC, String name) {
        double[] y = temperature.at(mediumC);
        drawing.path("water", time.at(curve.timesS()), y);
        drawing.text("soft", RIGHT - 4, y[y.length - 1] - 5, Anchor.END, name);
    }

    /** Core with its band, and surface, each named where they lie farthest apart before a place. */
    void curves(Drawing drawing, double end) {
        double[] x = time.at(curve.timesS());
        drawing.between("band", x, temperature.at(curve.coreEarlyC()), temperature.at(curve.coreLateC()));
        drawing.path("outer", x, temperature.at(curve.surfaceC()));
        drawing.path("core", x, temperature.at(curve.coreC()));
        int apart = 0;
        for (int i = 1; i < x.length && x[i] < end; i++) {
            if (Math.abs(gap(i)) > Math.abs(gap(apart))) {
                apart = i;
            }
        }
        boolean heating = gap(apart) > 0.0;
        double midway = 0.5 * (curve.surfaceC().get(apart) + curve.coreC().get(apart));
        int later = apart;
        while (later + 1 < x.length && curve.coreC().get(later) < midway == heating) {
            later++;
        }
        double surfaceY = temperature.at(curve.surfaceC().get(apart));
        double coreY = temperature.at(curve.coreC().get(later));
        String surface = words.say("PICTURE_SURFACE");
        if (heating) {
            drawing.text("outername", x[apart] + 6, surfaceY + 14, Anchor.START, surface);
        } else if (surfaceY - temperature.at(curve.coreC().get(apart)) > ROOMY) {
            drawing.text("outername", x[apart] + 6, surfaceY - 7, Anchor.START, surface);
        } else {
            drawing.text(
                    "outername",
                    Math.max(x[later] - 4, LEFT + 60),
                    temperature.at(curve.surfaceC().get(later)) + 16,
                    Anchor.END,
                    surface);
        }
        drawing.text(
                "corename", x[later] + 8, heating ? coreY + 10 : coreY - 3, Anchor.START, words.say("PICTURE_CORE"));
    }

    private double gap(int i) {
        return curve.surfaceC().get(i) - curve.coreC().get(i);
    }
}
