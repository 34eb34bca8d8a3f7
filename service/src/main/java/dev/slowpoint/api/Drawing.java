package dev.slowpoint.api;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;

/**
 * Writes a picture as SVG 1.1, element by element. Text is escaped and places are rounded to a tenth of a unit, so that the
 * same picture has the same bytes everywhere. It needs no script and fetches nothing.
 */
final class Drawing {

    private final StringBuilder out = new StringBuilder(8192);

    /**
     * A picture with a name and a description for those who cannot see it.
     *
     * @param width in units of the picture
     * @param height in units of the picture
     * @param language of its texts (BCP 47)
     * @param title what it shows
     * @param description what can be read off it
     * @param style rules of CSS for its classes; trusted
     */
    Drawing(double width, double height, String language, String title, String description, String style) {
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
                .append(number(width))
                .append(' ')
                .append(number(height))
                .append("\" role=\"img\" aria-labelledby=\"title description\" xml:lang=\"")
                .append(escaped(language))
                .append("\">");
        out.append("<title id=\"title\">").append(escaped(title)).append("</title>");
        out.append("<desc id=\"description\">").append(escaped(description)).append("</desc>");
        out.append("<style>").append(style).append("</style>");
    }

    /** A rectangle. */
    Drawing box(String kind, double x, double y, double width, double height) {
        out.append("<rect class=\"").append(kind).append('"');
        at("x", x).at("y", y).at("width", width).at("height", height);
        out.append("/>");
        return this;
    }

    /** A rectangle with round ends. */
    Drawing bar(String kind, double x, double y, double width, double height) {
        out.append("<rect class=\"").append(kind).append('"');
        at("x", x).at("y", y).at("width", width).at("height", height).at("rx", height / 2.0);
        out.append("/>");
        return this;
    }

    /** A straight line. */
    Drawing line(String kind, double x1, double y1, double x2, double y2) {
        out.append("<line class=\"").append(kind).append('"');
        at("x1", x1).at("y1", y1).at("x2", x2).at("y2", y2);
        out.append("/>");
        return this;
    }

    /** A line through points. */
    Drawing path(String kind, double[] x, double[] y) {
        out.append("<path class=\"").append(kind).append("\" d=\"");
        points(x, y);
        out.append("\"/>");
        return this;
    }

    /** The area between two lines over the same places. */
    Drawing between(String kind, double[] x, double[] y, double[] otherY) {
        out.append("<path class=\"").append(kind).append("\" d=\"");
        points(x, y);
        for (int i = x.length - 1; i >= 0; i--) {
            out.append('L').append(number(x[i])).append(' ').append(number(otherY[i]));
        }
        out.append("Z\"/>");
        return this;
    }

    /** A filled dot. */
    Drawing dot(String kind, double x, double y, double radius) {
        out.append("<circle class=\"").append(kind).append('"');
        at("cx", x).at("cy", y).at("r", radius);
        out.append("/>");
        return this;
    }

    /** An arrow at the end of a scale: what it stands for lies beyond, and the edge must not be taken for it. */
    Drawing beyond(String kind, double x, double y) {
        return between(kind, new double[] {x - 7, x + 2}, new double[] {y - 5, y}, new double[] {y + 5, y});
    }

    /** Text that begins, ends or is centred at a place. */
    Drawing text(String kind, double x, double y, Anchor anchor, String text) {
        out.append("<text class=\"").append(kind).append('"');
        at("x", x).at("y", y);
        if (anchor != Anchor.START) {
            out.append(" text-anchor=\"")
                    .append(anchor == Anchor.END ? "end" : "middle")
                    .append('"');
        }
        out.append('>').append(escaped(text)).append("</text>");
        return this;
    }

    /** The whole picture in UTF-8. */
    byte[] bytes() {
        return (out + "</svg>\n").getBytes(StandardCharsets.UTF_8);
    }

    private void points(double[] x, double[] y) {
        for (int i = 0; i < x.length; i++) {
            out.append(i == 0 ? 'M' : 'L').append(number(x[i])).append(' ').append(number(y[i]));
        }
    }

    private Drawing at(String name, double value) {
        out.append(' ').append(name).append("=\"").append(number(value)).append('"');
        return this;
    }

    private static String number(double value) {
        BigDecimal rounded = new BigDecimal(value).setScale(1, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    static String escaped(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(c);
            }
        });
        return safe.toString();
    }

    /** Which end of a text lies at its place. */
    enum Anchor {
        /** Its beginning. */
        START,
        /** Its middle. */
        MIDDLE,
        /** Its end. */
        END
    }
}
