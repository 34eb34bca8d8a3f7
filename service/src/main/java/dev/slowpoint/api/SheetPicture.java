package dev.slowpoint.api;

import dev.slowpoint.api.Drawing.Anchor;
import dev.slowpoint.api.PortionSheetAnswer.SheetBand;
import dev.slowpoint.api.PortionSheetAnswer.SheetCard;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * The cards of a sheet on one scale of time: one lane for each card that heats, with when its worst piece is safe and hot
 * through, and the window from the time on the card to when its thinnest piece is past its best.
 */
final class SheetPicture {

    private static final double WIDTH = 480;
    private static final double LEFT = 16;
    private static final double RIGHT = 464;
    private static final double TOP = 66;
    private static final double LANE = 48;

    /** Width of a letter of the usual size, in units. */
    private static final double LETTER = 5.6;

    /** More lanes cannot be taken in. */
    private static final int MOST_LANES = 40;

    /** How far the scale goes beyond the last time on a card, as a share of it. */
    private static final double BEYOND = 1.35;

    private static final String STYLE = ".outerdot{fill:var(--outer)}";

    private final List<SheetCard> lanes;
    private final int left;
    private final PictureWords words;
    private final Axis time;

    private SheetPicture(PortionSheetAnswer sheet, PictureWords words) {
        this.words = words;
        List<SheetCard> all = new ArrayList<>();
        for (SheetBand band : sheet.bands()) {
            band.cards().stream().filter(card -> card.worst() != null).forEach(all::add);
        }
        this.lanes = all.subList(0, Math.min(all.size(), MOST_LANES));
        this.left = all.size() - lanes.size();
        double last = lanes.stream().mapToDouble(SheetPicture::last).max().orElse(3600);
        this.time = new Axis(0.0, Math.max(600, BEYOND * last), LEFT, RIGHT);
    }

    /** Draws a sheet. */
    static byte[] of(PortionSheetAnswer sheet, PictureWords words) {
        return new SheetPicture(sheet, words).draw(sheet.totals().portions());
    }

    private static double last(SheetCard card) {
        return card.timeS() != null ? card.timeS() : Objects.requireNonNullElse(card.hotThroughLateS(), 0);
    }

    private byte[] draw(int portions) {
        double bottom = TOP + LANE * lanes.size();
        double height = bottom + 40;
        String title = words.say("SHEET_PICTURE_TITLE", portions);
        StringBuilder said = new StringBuilder();
        lanes.forEach(card -> said.append(card.title())
                .append(card.timeS() == null ? "" : ": " + words.time(card.timeS()))
                .append(". "));
        Drawing drawing = new Drawing(
                WIDTH, height, words.language(), title, said.toString().strip(), TemperatureChart.STYLE + STYLE);
        drawing.box("paper", 0, 0, WIDTH, height);
        drawing.text("title", 12, 22, Anchor.START, title);
        key(drawing);
        for (int mark : time.moments(7)) {
            double x = time.at(mark);
            drawing.line("rule", x, TOP - 6, x, bottom);
            drawing.text("tick", x, bottom + 13, mark == 0 ? Anchor.START : Anchor.MIDDLE, words.time(mark));
        }
        double y = TOP;
        for (SheetCard card : lanes) {
            lane(drawing, card, y);
            y += LANE;
        }
        String note = words.say("SHEET_PICTURE_NOTE");
        drawing.text(
                "tick",
                12,
                height - 8,
                Anchor.START,
                left == 0 ? note : words.say("SHEET_PICTURE_MORE", left) + " " + note);
        return drawing.bytes();
    }

    private void key(Drawing drawing) {
        double x = key(drawing, "SHEET_PICTURE_SAFE", LEFT, 9, at -> drawing.dot("mark", at + 4, 39, 4));
        x = key(drawing, "PICTURE_HOT_THROUGH", x, 9, at -> drawing.dot("outerdot", at + 4, 39, 4));
        key(drawing, "SHEET_PICTURE_WINDOW", x, 19, at -> drawing.bar("good", at, 35, 16, 8));
    }

    /** A sign and what it means; where the next one goes. */
    private double key(Drawing drawing, String key, double at, double signWide, DoubleConsumer sign) {
        String means = words.say(key);
        sign.accept(at);
        drawing.text("soft", at + signWide + 3, 43, Anchor.START, means);
        return at + signWide + LETTER * means.length() + 10;
    }

    private void lane(Drawing drawing, SheetCard card, double y) {
        drawing.text("text", LEFT, y + 9, Anchor.START, card.title());
        double middle = y + 21;
        drawing.line("axis", LEFT, middle, RIGHT, middle);
        Integer timeS = card.timeS();
        if (timeS == null) {
            String why = card.noTimeReason() == null ? "" : card.noTimeReason().text();
            drawing.text("corename", LEFT, middle + 13, Anchor.START, why);
        } else {
            double from = time.at(timeS);
            double to = card.latestS() == null ? RIGHT : Math.max(time.at(card.latestS()), from + 2);
            drawing.bar("good", from, middle - 5, to - from, 10);
            boolean early = from < 0.75 * RIGHT;
            drawing.text(
                    "goodname",
                    early ? from + 2 : from - 4,
                    middle + 15,
                    early ? Anchor.START : Anchor.END,
                    words.time(timeS));
        }
        dot(drawing, "outerdot", card.hotThroughLateS(), middle);
        dot(drawing, "mark", card.safeLateS(), middle);
    }

    private void dot(Drawing drawing, String kind, @Nullable Integer seconds, double y) {
        if (seconds != null && seconds <= time.to()) {
            drawing.dot(kind, time.at(seconds), y, 4);
        }
    }
}
