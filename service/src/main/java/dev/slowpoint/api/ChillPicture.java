package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Milestone;
import dev.slowpoint.api.Drawing.Anchor;
import dev.slowpoint.api.StepOutcome.CoolingLimit;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A chill as a picture: above, temperatures over time; below, one lane for each clock of the cooling rule, as long as it may
 * run and filled as far as it does, and the end of the chill.
 */
final class ChillPicture {

    private static final double LEFT = TemperatureChart.LEFT;
    private static final double RIGHT = TemperatureChart.RIGHT;
    private static final double LANES = TemperatureChart.BOTTOM + 34;
    private static final double LANE = 27;

    private final ChillPlanAnswer plan;
    private final PictureWords words;
    private final TemperatureChart chart;
    private final Axis time;

    private ChillPicture(ChillPlanAnswer plan, PictureWords words) {
        this.plan = plan;
        this.words = words;
        this.chart = new TemperatureChart(Objects.requireNonNull(plan.curve()), plan.mediumC(), words);
        this.time = chart.time();
    }

    /**
     * Draws a plan that carries its curve.
     *
     * @param plan the answer
     * @param what the piece in words, such as food, shape and size
     * @param medium what it is chilled in, in words
     * @param words of the picture
     */
    static byte[] of(ChillPlanAnswer plan, String what, String medium, PictureWords words) {
        return new ChillPicture(plan, words).draw(what, medium);
    }

    private byte[] draw(String what, String medium) {
        List<CoolingLimit> limits = plan.cooling().limits();
        double width = TemperatureChart.WIDTH;
        double height = LANES + LANE * (limits.size() + 1) + 20;
        String title = words.say("PICTURE_TITLE_CHILL", what, medium, words.temperature(plan.mediumC()));
        Drawing drawing = new Drawing(width, height, words.language(), title, description(), TemperatureChart.STYLE);
        drawing.box("paper", 0, 0, width, height);
        TemperatureChart.heading(drawing, title, kept(), coldAfter());
        chart.growth(drawing, true);
        ends(drawing, height - 20);
        chart.grid(drawing);
        chart.medium(drawing, plan.mediumC(), RIGHT, medium);
        chart.curves(drawing, RIGHT);
        double y = LANES;
        for (CoolingLimit limit : limits) {
            lane(drawing, limit, y);
            y += LANE;
        }
        endLane(drawing, y);
        drawing.text("tick", 12, height - 7, Anchor.START, words.say("PICTURE_NOTE"));
        return drawing.bytes();
    }

    private String kept() {
        return words.say(
                plan.cooling().kept() ? "PICTURE_COOLING_KEPT" : "PICTURE_COOLING_NOT_KEPT",
                plan.cooling().rule());
    }

    private String coldAfter() {
        Integer late = lateS(plan.ends());
        return late == null ? words.say("PICTURE_NEVER_COLD") : words.say("PICTURE_COLD_AFTER", words.time(late));
    }

    /** What the picture says, for those who cannot see it. */
    private String description() {
        StringBuilder said = new StringBuilder(kept()).append(". ").append(coldAfter());
        plan.cooling().limits().forEach(limit -> said.append(". ").append(clock(limit)));
        return said.append('.').toString();
    }

    private String clock(CoolingLimit limit) {
        String from = words.temperature(limit.fromC());
        String to = words.temperature(limit.toC());
        String longest = words.time(limit.longestS());
        Integer late = lateS(limit.taken());
        return late == null
                ? words.say("PICTURE_CLOCK_OPEN", from, to, longest)
                : words.say("PICTURE_CLOCK", from, to, words.time(late), longest);
    }

    /** One clock. It counts from its own start, and is drawn from the left edge. */
    private void lane(Drawing drawing, CoolingLimit limit, double y) {
        double allowed = time.at(limit.longestS());
        drawing.box("track", LEFT, y + 4, allowed - LEFT, 8);
        if (limit.longestS() > time.to()) {
            drawing.beyond("mark", RIGHT, y + 8);
        }
        Integer late = lateS(limit.taken());
        double taken = late == null ? RIGHT : time.at(late);
        drawing.box(limit.kept() ? "good" : "over", LEFT, y + 4, taken - LEFT, 8);
        drawing.text(limit.kept() ? "soft" : "corename", LEFT, y, Anchor.START, clock(limit));
    }

    private void ends(Drawing drawing, double bottom) {
        Integer late = lateS(plan.ends());
        if (late != null) {
            drawing.line("best", time.at(late), TemperatureChart.TOP, time.at(late), bottom);
        }
    }

    private void endLane(Drawing drawing, double y) {
        Milestone ends = plan.ends();
        Integer late = lateS(ends);
        if (ends == null || late == null) {
            return;
        }
        double early = time.at(Objects.requireNonNullElse(ends.earlyS(), late));
        drawing.line("rule", LEFT, y + 8, RIGHT, y + 8);
        drawing.bar("span", early - 3, y + 5, time.at(late) - early + 6, 6);
        if (ends.nominalS() != null) {
            drawing.dot("mark", time.at(ends.nominalS()), y + 8, 4.2);
        }
        drawing.text("goodname", RIGHT, y, Anchor.END, words.say("PICTURE_CHILL_ENDS", words.time(late)));
    }

    private static @Nullable Integer lateS(@Nullable Milestone moment) {
        return moment == null ? null : moment.lateS();
    }
}
