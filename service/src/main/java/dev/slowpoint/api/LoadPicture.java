package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.BathCourse;
import dev.slowpoint.api.CookPlanAnswer.TakeOut;
import dev.slowpoint.api.Drawing.Anchor;
import dev.slowpoint.api.LoadPlanAnswer.Item;
import dev.slowpoint.api.LoadPlanAnswer.Phase;
import dev.slowpoint.api.LoadPlanAnswer.WaterCurve;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;

/**
 * A load as a picture: above, the water over time with its setpoints; below, on the same scale of time, one lane for each food
 * from when it goes in to when it comes out, with the window in which it may. Foods that do not go together have no common
 * water; then their lanes stand alone, each in a bath of its own, under the reason.
 */
final class LoadPicture {

    private static final double WIDTH = 480;
    private static final double LEFT = 40;
    private static final double RIGHT = 466;
    private static final double TOP = 64;
    private static final double PLOT = 140;
    private static final double LANE = 52;
    private static final double LINE = 14;

    /** Width of a letter, and how many go on a line. */
    private static final double LETTER = 5.6;

    private static final int ON_A_LINE = 80;

    /** How far the picture goes on after the last food is out, as a share of the time before. */
    private static final double BEYOND = 1.12;

    private static final String STYLE = TemperatureChart.STYLE
            + ".water{fill:none;stroke:var(--outer);stroke-width:2.2;stroke-linejoin:round}"
            + ".name{font-weight:600}.no{fill:var(--core);font-weight:600}";

    private final LoadPlanAnswer load;
    private final PictureWords words;
    private final Axis time;

    private LoadPicture(LoadPlanAnswer load, PictureWords words) {
        this.load = load;
        this.words = words;
        int last = 60;
        for (Item item : load.items()) {
            TakeOut takeOut = item.takeOut();
            last = Math.max(last, takeOut == null ? item.entersAtS() : takeOut.bestS());
        }
        this.time = new Axis(0.0, BEYOND * last, LEFT, RIGHT);
    }

    /**
     * Draws a load that carries its curve, where it has one.
     *
     * @param load the answer
     * @param words of the picture
     */
    static byte[] of(LoadPlanAnswer load, PictureWords words) {
        return new LoadPicture(load, words).draw();
    }

    private byte[] draw() {
        List<String> reasons = new ArrayList<>();
        if (load.conflicts() != null) {
            load.conflicts().forEach(conflict -> reasons.addAll(lines(conflict.text())));
        }
        boolean apart = load.curve() == null;
        double plotTop = TOP + LINE * reasons.size();
        double lanesTop = apart ? plotTop + 8 : plotTop + PLOT + 40;
        double height = lanesTop + LANE * load.items().size() + (apart ? 44 : 22);
        String title =
                words.say("PICTURE_LOAD_TITLE_" + load.schedule(), load.items().size());
        Drawing drawing = new Drawing(WIDTH, height, words.language(), title, description(title), STYLE);
        drawing.box("paper", 0, 0, WIDTH, height);
        drawing.text("title", 12, 22, Anchor.START, title);
        List<String> why = lines(load.reason().text());
        for (int i = 0; i < why.size(); i++) {
            drawing.text("soft", 12, 38 + LINE * i, Anchor.START, why.get(i));
        }
        for (int i = 0; i < reasons.size(); i++) {
            drawing.text("no", 12, TOP + LINE * (i + 0.5), Anchor.START, reasons.get(i));
        }
        if (load.curve() != null) {
            water(drawing, load.curve(), plotTop);
            moments(drawing, plotTop + PLOT);
        }
        double y = lanesTop;
        for (Item item : load.items()) {
            lane(drawing, item, y);
            y += LANE;
        }
        if (apart) {
            moments(drawing, y + 2);
        }
        drawing.text("tick", 12, height - 7, Anchor.START, words.say("PICTURE_LOAD_NOTE"));
        return drawing.bytes();
    }

    /** What the picture says, for those who cannot see it. */
    private String description(String title) {
        StringBuilder said =
                new StringBuilder(title).append(". ").append(load.reason().text());
        for (Item item : load.items()) {
            said.append(' ')
                    .append(item.id())
                    .append(": ")
                    .append(moments(item))
                    .append('.');
        }
        return said.toString();
    }

    private void water(Drawing drawing, WaterCurve curve, double top) {
        List<Phase> phases = Objects.requireNonNull(load.phases());
        double hottest = Collections.max(curve.waterC());
        double coldest = Collections.min(curve.waterC());
        for (Phase phase : phases) {
            hottest = Math.max(hottest, phase.setpointC());
        }
        double room = Math.max(1.0, 0.12 * (hottest - coldest));
        Axis temperature = new Axis(coldest - room, hottest + 1.5 * room, top + PLOT, top);
        Axis shown = words.shown(temperature);
        for (int mark : shown.temperatures(6)) {
            double y = shown.at(mark);
            drawing.line("rule", LEFT, y, RIGHT, y);
            drawing.text("tick", LEFT - 5, y + 3.5, Anchor.END, words.degrees(mark));
        }
        int ready = Objects.requireNonNull(load.readyAtS());
        for (int i = 0; i < phases.size(); i++) {
            Phase phase = phases.get(i);
            double from = time.at(phase.fromS());
            double to = time.at(i + 1 < phases.size() ? phases.get(i + 1).fromS() : ready);
            double y = temperature.at(phase.setpointC());
            drawing.line("bath", from, y, to, y);
            String said = words.say("PICTURE_LOAD_SETPOINT", words.temperature(phase.setpointC()));
            if (i > 0) {
                drawing.line("step", from, top, from, top + PLOT);
            }
            if (to - from > LETTER * said.length()) {
                drawing.text("soft", 0.5 * (from + to), y - 6, Anchor.MIDDLE, said);
            } else {
                drawing.text("soft", Math.min(from + 4, RIGHT - LETTER * said.length()), y - 6, Anchor.START, said);
            }
            sag(drawing, phase, temperature);
        }
        drawing.path("water", time.at(curve.timesS()), temperature.at(curve.waterC()));
    }

    /** How far the water falls, where that can be seen. */
    private void sag(Drawing drawing, Phase phase, Axis temperature) {
        BathCourse course = phase.water();
        if (course == null || temperature.at(course.lowestC()) - temperature.at(phase.setpointC()) < LINE) {
            return;
        }
        String said = words.say("PICTURE_LOAD_LOWEST", words.temperature(course.lowestC()));
        double x = time.at(course.lowestAtS()) + 8;
        drawing.text(
                "outername",
                Math.min(x, RIGHT - LETTER * said.length()),
                temperature.at(course.lowestC()) + 11,
                Anchor.START,
                said);
    }

    private void moments(Drawing drawing, double bottom) {
        drawing.line("axis", LEFT, bottom, RIGHT, bottom);
        for (int mark : time.moments(6)) {
            double x = time.at(mark);
            drawing.line("axis", x, bottom, x, bottom + 4);
            drawing.text("tick", x, bottom + 15, Anchor.MIDDLE, words.time(mark));
        }
    }

    private void lane(Drawing drawing, Item item, double y) {
        TakeOut takeOut = item.takeOut();
        boolean kept = !item.safety().verdict().equals("notMet");
        drawing.text("name", 12, y + 8, Anchor.START, item.id());
        drawing.text(
                kept ? "soft" : "no",
                RIGHT,
                y + 8,
                Anchor.END,
                words.say("PICTURE_LOAD_VERDICT_" + item.safety().verdict()));
        drawing.line("rule", LEFT, y + 20, RIGHT, y + 20);
        double enters = time.at(item.entersAtS());
        double leaves = takeOut == null ? RIGHT : time.at(takeOut.bestS());
        drawing.bar("span", enters - 3, y + 17, leaves - enters + 6, 6);
        if (takeOut != null) {
            double from = time.at(takeOut.earliestS());
            double to = takeOut.latestS() == null ? RIGHT : time.at(takeOut.latestS());
            drawing.bar("good", from - 3, y + 16, Math.max(to - from, 0.0) + 6, 8);
            drawing.dot("mark", leaves, y + 20, 4.6);
        }
        drawing.text("tick", 12, y + 37, Anchor.START, moments(item));
    }

    private String moments(Item item) {
        TakeOut takeOut = item.takeOut();
        String own = load.curve() == null ? words.temperature(item.setpointC()) + ": " : "";
        String in = own
                + words.say(
                        item.entersAtS() == 0 ? "PICTURE_LOAD_IN_AT_ONCE" : "PICTURE_LOAD_IN",
                        words.time(item.entersAtS()));
        if (takeOut == null) {
            return item.noTakeOutReason() == null ? in : item.noTakeOutReason().text();
        }
        String out = words.say("PICTURE_LOAD_OUT", words.time(takeOut.bestS()));
        String from = words.time(takeOut.earliestS());
        String when = takeOut.latestS() == null
                ? words.say("PICTURE_LOAD_FROM", from)
                : words.say("PICTURE_LOAD_BETWEEN", from, words.time(takeOut.latestS() / 60 * 60));
        return in + ", " + out + " " + when;
    }

    /** Text cut into lines between its words. */
    private static List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > ON_A_LINE) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
