package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Curve;
import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.CookPlanAnswer.Times;
import dev.slowpoint.api.Drawing.Anchor;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;

/**
 * A cook as a picture, planned or under way: above, temperatures over time; below, on the same scale of time, one lane for
 * each milestone from its early to its late side, and the window to take the piece out.
 */
final class CookPicture {

    static final String SVG_VALUE = "image/svg+xml";
    static final MediaType SVG = MediaType.parseMediaType(SVG_VALUE);

    private static final double LEFT = TemperatureChart.LEFT;
    private static final double RIGHT = TemperatureChart.RIGHT;
    private static final double TOP = TemperatureChart.TOP;
    private static final double LANES = TemperatureChart.BOTTOM + 34;
    private static final double LANE = 27;

    private final Scene scene;
    private final PictureWords words;
    private final List<Lane> lanes = new ArrayList<>();
    private final TemperatureChart chart;
    private final Axis time;

    /**
     * What is drawn.
     *
     * @param title what it shows
     * @param verdict what is to be known of it at once
     * @param moment when to take it out, or why there is no time
     * @param setpointC of the bath [C]
     * @param curve temperatures
     * @param times milestones
     * @param takeOut when to take it out, if there is a time
     * @param steps after the bath
     * @param now how long the cook is under way [s]; empty for one that is planned
     */
    private record Scene(
            String title,
            String verdict,
            String moment,
            double setpointC,
            Curve curve,
            Times times,
            @Nullable TakeOut takeOut,
            List<StepOutcome> steps,
            OptionalInt now) {}

    /** One milestone under the curves. */
    private record Lane(String name, Milestone moment) {}

    private CookPicture(Scene scene, PictureWords words) {
        this.scene = scene;
        this.words = words;
        this.chart = new TemperatureChart(scene.curve(), scene.setpointC(), words);
        this.time = chart.time();
        lane("PICTURE_HOT_THROUGH", scene.times().hotThrough());
        lane("PICTURE_SAFE", scene.times().safe());
        lane("PICTURE_TENDER", scene.times().tender());
        lane("PICTURE_GOOD_UNTIL", scene.times().goodUntil());
    }

    /**
     * Draws a plan that carries its curve.
     *
     * @param plan the answer
     * @param what the piece in words, such as food, shape and size
     * @param words of the picture
     */
    static byte[] of(CookPlanAnswer plan, String what, PictureWords words) {
        String verdict = words.say(
                "PICTURE_VERDICT_" + plan.safety().verdict(), plan.safety().rule());
        TakeOut takeOut = plan.takeOut();
        return new CookPicture(
                        new Scene(
                                words.say("PICTURE_TITLE", what, words.temperature(plan.setpointC())),
                                verdict,
                                takeOut == null
                                        ? text(plan.noTakeOutReason())
                                        : words.say("PICTURE_BEST", words.time(takeOut.bestS())),
                                plan.setpointC(),
                                Objects.requireNonNull(plan.curve()),
                                plan.times(),
                                takeOut,
                                plan.then() == null ? List.of() : plan.then(),
                                OptionalInt.empty()),
                        words)
                .draw();
    }

    /**
     * Draws a replan that carries its curve.
     *
     * @param plan the answer
     * @param what the piece in words, such as food, shape and size
     * @param words of the picture
     */
    static byte[] of(ReplanAnswer plan, String what, PictureWords words) {
        ReplanAnswer.Left left = plan.left();
        return new CookPicture(
                        new Scene(
                                words.say("PICTURE_TITLE_UNDER_WAY", what, words.temperature(plan.setpointC())),
                                words.say("PICTURE_DECISION_" + plan.decision()),
                                left == null
                                        ? text(plan.reason() == null ? plan.noTakeOutReason() : plan.reason())
                                        : words.say("PICTURE_BEST_IN", words.time(left.bestS())),
                                plan.setpointC(),
                                Objects.requireNonNull(plan.curve()),
                                // Of food that is not to be eaten, what it would have become is of no use.
                                plan.takeOut() == null && plan.noTakeOutReason() == null
                                        ? new Times(null, null, null, null, null)
                                        : plan.times(),
                                plan.takeOut(),
                                List.of(),
                                OptionalInt.of(plan.state().atS())),
                        words)
                .draw();
    }

    private static String text(@Nullable Reason reason) {
        return reason == null ? "" : reason.text();
    }

    private void lane(String key, @Nullable Milestone moment) {
        if (moment != null && moment.nominalS() != null) {
            lanes.add(new Lane(words.say(key), moment));
        }
    }

    private byte[] draw() {
        double height = LANES + LANE * (lanes.size() + 1) + 20;
        double width = TemperatureChart.WIDTH;
        Drawing drawing =
                new Drawing(width, height, words.language(), scene.title(), description(), TemperatureChart.STYLE);
        drawing.box("paper", 0, 0, width, height);
        TemperatureChart.heading(drawing, scene.title(), scene.verdict(), scene.moment());
        chart.growth(drawing, false);
        now(drawing, height - 20);
        takeOut(drawing, height - 20);
        chart.grid(drawing);
        water(drawing);
        chart.curves(drawing, time.at(leavesBathS()));
        steps(drawing);
        double y = LANES;
        for (Lane lane : lanes) {
            lane(drawing, lane, y);
            y += LANE;
        }
        takeOutLane(drawing, y);
        drawing.text("tick", 12, height - 7, Anchor.START, words.say("PICTURE_NOTE"));
        return drawing.bytes();
    }

    /** What the picture says, for those who cannot see it. */
    private String description() {
        StringBuilder said = new StringBuilder(scene.verdict()).append(". ").append(scene.moment());
        lanes.forEach(lane -> said.append(". ")
                .append(lane.name())
                .append(": ")
                .append(words.time(Objects.requireNonNull(lane.moment().nominalS()))));
        return said.append('.').toString();
    }

    private void water(Drawing drawing) {
        List<Double> waterC = scene.curve().waterC();
        if (waterC == null) {
            chart.medium(drawing, scene.setpointC(), time.at(leavesBathS()), words.say("PICTURE_BATH"));
        } else {
            chart.medium(drawing, waterC, words.say("PICTURE_BATH"));
        }
    }

    /** When the piece leaves the bath for another step; the end of the picture where there is none. */
    private double leavesBathS() {
        if (scene.steps().isEmpty()) {
            return time.to();
        }
        Milestone begins = scene.steps().get(0).begins();
        return begins == null || begins.nominalS() == null ? time.to() : begins.nominalS();
    }

    /** What has passed, where something has. */
    private void now(Drawing drawing, double bottom) {
        if (scene.now().isPresent()) {
            double x = time.at(scene.now().getAsInt());
            drawing.box("past", LEFT, TOP, x - LEFT, bottom - TOP);
            drawing.line("now", x, TOP, x, bottom);
            String name = words.say("PICTURE_NOW");
            boolean room = x + TemperatureChart.LETTER * name.length() < RIGHT;
            drawing.text("tick", room ? x + 3 : x - 3, TOP + 9, room ? Anchor.START : Anchor.END, name);
        }
    }

    /** Where the steps after the bath begin. */
    private void steps(Drawing drawing) {
        double free = LEFT;
        for (StepOutcome step : scene.steps()) {
            if (step.begins() != null && step.begins().nominalS() != null) {
                double x = time.at(step.begins().nominalS());
                drawing.line("step", x, TOP, x, TemperatureChart.BOTTOM);
                String name = words.say("PICTURE_STEP_" + step.step());
                double length = TemperatureChart.LETTER * name.length();
                if (x >= free && x + length < TemperatureChart.WIDTH) {
                    drawing.text("tick", x + 3, TOP + 9, Anchor.START, name);
                    free = x + length + 6;
                }
            }
        }
    }

    private void takeOut(Drawing drawing, double bottom) {
        TakeOut takeOut = scene.takeOut();
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
            drawing.beyond("mark", RIGHT, y + 8);
        } else {
            drawing.dot("mark", x, y + 8, 4.2);
        }
        String label = lane.name() + " " + words.time(nominalS);
        beside(drawing, "soft", label, x, y + 1);
    }

    private void takeOutLane(Drawing drawing, double y) {
        TakeOut takeOut = scene.takeOut();
        if (takeOut == null) {
            return;
        }
        double from = time.at(takeOut.earliestS());
        double to = takeOut.latestS() == null ? RIGHT : time.at(takeOut.latestS());
        drawing.bar("good", from - 3, y + 4, Math.max(to - from, 0.0) + 6, 8);
        beside(drawing, "goodname", words.say("PICTURE_TAKE_OUT"), time.at(takeOut.bestS()), y);
    }

    /** Text centred over a place, or moved as far as it must be to stay in the picture. */
    private static void beside(Drawing drawing, String kind, String text, double x, double y) {
        double half = TemperatureChart.LETTER * text.length() / 2.0;
        double centre = Math.min(Math.max(x, LEFT + half), RIGHT - half);
        drawing.text(kind, centre, y, Anchor.MIDDLE, text);
    }
}
