package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Curve;
import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.Drawing.Anchor;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;

/**
 * A plan as a picture: above, temperatures over time with the range where bacteria grow; below, on the same scale of time,
 * one lane for each milestone from its early to its late side, and the window to take the piece out.
 *
 * <p>Lines differ in their dashes and lanes carry their names, so that no colour has to be told from another.
 */
final class CookPicture {

    static final String SVG_VALUE = "image/svg+xml";
    static final MediaType SVG = MediaType.parseMediaType(SVG_VALUE);

    private static final double WIDTH = 480;
    private static final double LEFT = 40;
    private static final double RIGHT = 466;
    private static final double TOP = 52;
    private static final double PLOT = 236;
    private static final double LANE = 27;

    /** Width that a name of eight-point letters may take, in units for each letter. */
    private static final double LETTER = 5.6;

    /** The range where bacteria grow (FDA Food Code 2022, 3-501.16; FSIS-GD-2021-14 table 2, lowest row) [C]. */
    private static final double GROWTH_FROM_C = 5.0;

    private static final double GROWTH_TO_C = 54.444;

    /** Temperatures are shown up to here: a pan or a grill is hotter than any food may be [C]. */
    private static final double HOTTEST_C = 105.0;

    static final String STYLE = """
            :root{--ink:#1d2733;--soft:#5b6775;--rule:#d5dbe1;--paper:#fdfdfb;--core:#a3341f;--band:#a3341f;--outer:#1f6283;--grow:#7d5c08;--good:#2c7a53}
            @media (prefers-color-scheme:dark){:root{--ink:#e9edf1;--soft:#a7b1bc;--rule:#3a444f;--paper:#161b21;--core:#f0937d;--band:#f0937d;--outer:#7cc0df;--grow:#d9b34e;--good:#74c79c}}
            @media print{:root{--ink:#000;--soft:#333;--rule:#bbb;--paper:#fff;--core:#7a1f0e;--band:#7a1f0e;--outer:#0f4560;--grow:#8a6710;--good:#1c5a3b}}
            text{font-family:system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans",sans-serif;font-size:11px;fill:var(--ink)}
            .paper{fill:var(--paper)}.title{font-size:14px;font-weight:600}.soft{fill:var(--soft)}.tick{fill:var(--soft);font-size:10px}
            .rule{stroke:var(--rule);stroke-width:1}.axis{stroke:var(--soft);stroke-width:1}
            .core{fill:none;stroke:var(--core);stroke-width:2.4;stroke-linejoin:round}.corename{fill:var(--core);font-weight:600}
            .band{fill:var(--band);fill-opacity:.18}.outer{fill:none;stroke:var(--outer);stroke-width:1.6;stroke-dasharray:6 3}.outername{fill:var(--outer)}
            .bath{stroke:var(--soft);stroke-width:1.4;stroke-dasharray:1.5 3}.grow{fill:var(--grow);fill-opacity:.09}.growname{fill:var(--grow);font-size:10px}
            .window{fill:var(--good);fill-opacity:.14}.best{stroke:var(--good);stroke-width:1.6}.good{fill:var(--good)}.goodname{fill:var(--good);font-weight:600}
            .span{fill:var(--soft);fill-opacity:.38}.mark{fill:var(--ink)}.step{stroke:var(--soft);stroke-width:1;stroke-dasharray:2 4}
            """.replace("\n", "");

    private final CookPlanAnswer plan;
    private final Curve curve;
    private final PictureWords words;
    private final List<Lane> lanes = new ArrayList<>();
    private final Axis time;
    private final Axis temperature;

    /** One milestone under the curves. */
    private record Lane(String name, Milestone moment) {}

    private CookPicture(CookPlanAnswer plan, PictureWords words) {
        this.plan = plan;
        this.curve = Objects.requireNonNull(plan.curve());
        this.words = words;
        this.time = new Axis(0.0, Math.max(60, curve.timesS().get(curve.timesS().size() - 1)), LEFT, RIGHT);
        double coldest = Math.min(0.0, Collections.min(curve.coreLateC()));
        double hottest = Math.min(HOTTEST_C, Math.max(plan.setpointC(), Collections.max(curve.surfaceC())) + 6.0);
        this.temperature = new Axis(coldest, hottest, TOP + PLOT, TOP);
        lane("PICTURE_HOT_THROUGH", plan.times().hotThrough());
        lane("PICTURE_SAFE", plan.times().safe());
        lane("PICTURE_TENDER", plan.times().tender());
        lane("PICTURE_GOOD_UNTIL", plan.times().goodUntil());
    }

    /**
     * Draws a plan that carries its curve.
     *
     * @param plan the answer
     * @param what the piece in words, such as food, shape and size
     * @param words of the picture
     */
    static byte[] of(CookPlanAnswer plan, String what, PictureWords words) {
        return new CookPicture(plan, words).draw(what);
    }

    private void lane(String key, @Nullable Milestone moment) {
        if (moment != null && moment.nominalS() != null) {
            lanes.add(new Lane(words.say(key), moment));
        }
    }

    private byte[] draw(String what) {
        double lanesTop = TOP + PLOT + 34;
        double height = lanesTop + LANE * (lanes.size() + 1) + 20;
        String title = words.say("PICTURE_TITLE", what, words.temperature(plan.setpointC()));
        Drawing drawing = new Drawing(WIDTH, height, words.language(), title, description(), STYLE);
        drawing.box("paper", 0, 0, WIDTH, height);
        drawing.text("title", 12, 22, Anchor.START, title);
        drawing.text("soft", 12, 39, Anchor.START, verdict());
        growth(drawing);
        takeOut(drawing, height - 20);
        grid(drawing);
        curves(drawing);
        steps(drawing);
        double y = lanesTop;
        for (Lane lane : lanes) {
            lane(drawing, lane, y);
            y += LANE;
        }
        takeOutLane(drawing, y);
        drawing.text("tick", 12, height - 7, Anchor.START, words.say("PICTURE_NOTE"));
        return drawing.bytes();
    }

    private String verdict() {
        String said = words.say(
                "PICTURE_VERDICT_" + plan.safety().verdict(), plan.safety().rule());
        TakeOut takeOut = plan.takeOut();
        return takeOut == null ? said : said + " · " + words.say("PICTURE_BEST", words.time(takeOut.bestS()));
    }

    /** What the picture says, for those who cannot see it. */
    private String description() {
        StringBuilder said = new StringBuilder(verdict());
        lanes.forEach(lane -> said.append(". ")
                .append(lane.name())
                .append(": ")
                .append(words.time(Objects.requireNonNull(lane.moment().nominalS()))));
        return said.append('.').toString();
    }

    private void growth(Drawing drawing) {
        double top = temperature.at(GROWTH_TO_C);
        double bottom = temperature.at(GROWTH_FROM_C);
        drawing.box("grow", LEFT, top, RIGHT - LEFT, bottom - top);
        drawing.text("growname", RIGHT - 4, bottom - 5, Anchor.END, words.say("PICTURE_GROWTH"));
    }

    private void grid(Drawing drawing) {
        double bottom = TOP + PLOT;
        for (int mark : temperature.temperatures(8)) {
            double y = temperature.at(mark);
            drawing.line("rule", LEFT, y, RIGHT, y);
            drawing.text("tick", LEFT - 5, y + 3.5, Anchor.END, words.degrees(mark));
        }
        drawing.line("axis", LEFT, bottom, RIGHT, bottom);
        for (int mark : time.moments(7)) {
            double x = time.at(mark);
            drawing.line("axis", x, bottom, x, bottom + 4);
            drawing.text("tick", x, bottom + 15, Anchor.MIDDLE, words.time(mark));
        }
    }

    private void curves(Drawing drawing) {
        double[] x = time.at(curve.timesS());
        double bathY = temperature.at(plan.setpointC());
        double bathEnds = time.at(leavesBathS());
        drawing.line("bath", LEFT, bathY, bathEnds, bathY);
        drawing.text("soft", bathEnds - 4, bathY - 5, Anchor.END, words.say("PICTURE_BATH"));
        drawing.between("band", x, temperature.at(curve.coreEarlyC()), temperature.at(curve.coreLateC()));
        drawing.path("outer", x, temperature.at(curve.surfaceC()));
        drawing.path("core", x, temperature.at(curve.coreC()));
        // Named where the two lie farthest apart in the bath, each on its own side.
        int apart = 0;
        for (int i = 1; i < x.length && x[i] < bathEnds; i++) {
            if (gap(i) > gap(apart)) {
                apart = i;
            }
        }
        int core = apart;
        while (core + 1 < x.length && curve.coreC().get(core) < midway(apart)) {
            core++;
        }
        drawing.text(
                "outername",
                x[apart] + 6,
                temperature.at(curve.surfaceC().get(apart)) + 14,
                Anchor.START,
                words.say("PICTURE_SURFACE"));
        drawing.text(
                "corename",
                x[core] + 8,
                temperature.at(curve.coreC().get(core)) + 10,
                Anchor.START,
                words.say("PICTURE_CORE"));
    }

    /** When the piece leaves the bath for another step; the end of the picture where there is none. */
    private double leavesBathS() {
        if (plan.then() == null || plan.then().isEmpty()) {
            return time.to();
        }
        Milestone begins = plan.then().get(0).begins();
        return begins == null || begins.nominalS() == null ? time.to() : begins.nominalS();
    }

    private double gap(int i) {
        return curve.surfaceC().get(i) - curve.coreC().get(i);
    }

    private double midway(int i) {
        return 0.5 * (curve.surfaceC().get(i) + curve.coreC().get(i));
    }

    /** Where the steps after the bath begin. */
    private void steps(Drawing drawing) {
        if (plan.then() == null) {
            return;
        }
        double free = LEFT;
        for (StepOutcome step : plan.then()) {
            if (step.begins() != null && step.begins().nominalS() != null) {
                double x = time.at(step.begins().nominalS());
                drawing.line("step", x, TOP, x, TOP + PLOT);
                String name = words.say("PICTURE_STEP_" + step.step());
                if (x >= free && x + LETTER * name.length() < WIDTH) {
                    drawing.text("tick", x + 3, TOP + 9, Anchor.START, name);
                    free = x + LETTER * name.length() + 6;
                }
            }
        }
    }

    private void takeOut(Drawing drawing, double bottom) {
        TakeOut takeOut = plan.takeOut();
        if (takeOut == null) {
            return;
        }
        double from = time.at(takeOut.earliestS());
        double to = takeOut.latestS() == null ? RIGHT : time.at(takeOut.latestS());
        drawing.box("window", from, TOP, Math.max(to - from, 1.0), bottom - TOP);
        drawing.line("best", time.at(takeOut.bestS()), TOP, time.at(takeOut.bestS()), bottom);
    }

    private void lane(Drawing drawing, Lane lane, double y) {
        Milestone moment = lane.moment();
        int nominalS = Objects.requireNonNull(moment.nominalS());
        double early = time.at(Objects.requireNonNullElse(moment.earlyS(), nominalS));
        double late = moment.lateS() == null ? RIGHT : time.at(moment.lateS());
        double x = time.at(nominalS);
        drawing.line("rule", LEFT, y + 8, RIGHT, y + 8);
        drawing.bar("span", early - 3, y + 5, Math.max(late - early, 0.0) + 6, 6);
        if (nominalS > time.to()) {
            // Beyond the picture: an arrow, so that its edge is not taken for the moment.
            drawing.between("mark", new double[] {RIGHT - 7, RIGHT + 2}, new double[] {y + 3, y + 8}, new double[] {
                y + 13, y + 8
            });
        } else {
            drawing.dot("mark", x, y + 8, 4.2);
        }
        String label = lane.name() + " " + words.time(nominalS);
        beside(drawing, "soft", label, x, y + 1);
    }

    private void takeOutLane(Drawing drawing, double y) {
        TakeOut takeOut = plan.takeOut();
        if (takeOut == null) {
            String why =
                    plan.noTakeOutReason() == null ? "" : plan.noTakeOutReason().text();
            drawing.text("corename", LEFT, y + 12, Anchor.START, why);
            return;
        }
        double from = time.at(takeOut.earliestS());
        double to = takeOut.latestS() == null ? RIGHT : time.at(takeOut.latestS());
        drawing.bar("good", from - 3, y + 4, Math.max(to - from, 0.0) + 6, 8);
        beside(drawing, "goodname", words.say("PICTURE_TAKE_OUT"), time.at(takeOut.bestS()), y);
    }

    /** Text centred over a place, or moved as far as it must be to stay in the picture. */
    private static void beside(Drawing drawing, String kind, String text, double x, double y) {
        double half = LETTER * text.length() / 2.0;
        double centre = Math.min(Math.max(x, LEFT + half), RIGHT - half);
        drawing.text(kind, centre, y, Anchor.MIDDLE, text);
    }
}
