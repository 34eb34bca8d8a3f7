package dev.slowpoint.api;

import dev.slowpoint.api.LogReviewAnswer.CriticalLimit;
import dev.slowpoint.api.LogReviewAnswer.Deviation;
import dev.slowpoint.api.LogReviewAnswer.LogCurve;
import dev.slowpoint.api.LogReviewAnswer.NamedRule;
import dev.slowpoint.safety.Hazard;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;

/**
 * The review of a log as one page to print and sign: no script, nothing from elsewhere. Every text goes through
 * {@link #escaped}; whoever sends a log decides some of them.
 */
final class LogPage {

    static final MediaType MEDIA_TYPE = new MediaType(MediaType.TEXT_HTML, StandardCharsets.UTF_8);

    private static final String STYLE = """
            body{font:14px/1.45 system-ui,sans-serif;color:#111;background:#fff;max-width:60em;margin:2em auto;padding:0 1em}
            h1{font-size:1.5em;margin:0 0 .2em}h2{font-size:1.1em;margin:1.6em 0 .4em}
            .verdict{font-size:1.3em;font-weight:700;border:2px solid #111;padding:.4em .7em;margin:.8em 0;display:inline-block}
            table{border-collapse:collapse;width:100%}th,td{border:1px solid #888;padding:.25em .5em;text-align:left;vertical-align:top}
            th{background:#eee}td.number{text-align:right;white-space:nowrap}
            dl{display:grid;grid-template-columns:max-content 1fr;gap:.1em 1em;margin:.5em 0}dt{color:#444}dd{margin:0;overflow-wrap:anywhere}
            svg{width:100%;height:auto}svg text{font:12px system-ui,sans-serif;fill:#111}
            .grid{stroke:#ccc;stroke-width:1}.axis{stroke:#111;stroke-width:1.2}.read{fill:none;stroke:#111;stroke-width:1.6}
            .limit{stroke:#555;stroke-width:1;stroke-dasharray:6 4}.unread{fill:#bbb}
            .sign{display:grid;grid-template-columns:1fr 1fr 1fr;gap:2em;margin:3em 0 1em}.sign div{border-top:1px solid #111;padding-top:.3em}
            @media print{body{margin:0;max-width:none;font-size:10.5pt}h2{break-after:avoid}tr,svg,.sign,.verdict{break-inside:avoid}}
            @page{margin:15mm}
            """;

    /** Nothing but the style of this page may be used by it. */
    static final String POLICY = "default-src 'none'; style-src 'sha256-" + hash(STYLE)
            + "'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private static final int WIDTH = 760;
    private static final int HEIGHT = 330;
    private static final int LEFT = 48;
    private static final int RIGHT = 92;
    private static final int TOP = 12;
    private static final int BOTTOM = 40;

    /** Height of a line of text. */
    private static final double LETTER = 13.0;

    /** Steps between ticks that people read easily, of temperature [C or F] and of time [s]. */
    private static final int[] DEGREES = {1, 2, 5, 10, 20, 50, 100};

    private static final int[] SECONDS = {
        10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 21_600, 43_200, 86_400, 172_800, 345_600
    };

    private static final int MOST_TICKS = 8;

    private static final Set<String> UNREAD = Set.of("GAP", "NO_READING", "FAULT_VALUE", "JUMP", "STUCK");

    private final LogReviewAnswer review;
    private final Sentences sentences;
    private final StringBuilder page = new StringBuilder(16_384);

    LogPage(LogReviewAnswer review, Sentences sentences) {
        this.review = review;
        this.sentences = sentences;
    }

    /** The page, in UTF-8. */
    byte[] bytes() {
        page.append("<!DOCTYPE html>\n<html lang=\"")
                .append(sentences.language())
                .append("\"><head><meta charset=\"utf-8\"><title>")
                .append(escaped(review.label() == null ? say("PAGE_UNNAMED") : review.label()))
                .append("</title><meta name=\"viewport\" content=\"width=device-width\"><style>")
                .append(STYLE)
                .append("</style></head><body>\n<h1>")
                .append(escaped(say("PAGE_TITLE")))
                .append("</h1>\n");
        subject();
        page.append("<p class=\"verdict\">").append(said(review.verdict())).append("</p>\n<p>");
        page.append(escaped(say("PAGE_MEANS_" + review.verdict()))).append("</p>\n");
        rule("PAGE_RULE", review.rule());
        rule("PAGE_COOLING_RULE", review.coolingRule());
        chart();
        limits();
        deviations();
        readings();
        notes();
        page.append("<div class=\"sign\">");
        for (String line : List.of("PAGE_NAME", "PAGE_SIGNATURE", "PAGE_DATE")) {
            page.append("<div>").append(escaped(say(line))).append("</div>");
        }
        page.append("</div>\n</body></html>\n");
        return page.toString().getBytes(StandardCharsets.UTF_8);
    }

    private String said(String verdict) {
        return say("PAGE_SAID_" + verdict);
    }

    private void subject() {
        LogReviewAnswer.Subject subject = review.subject();
        page.append("<dl>");
        term("PAGE_RECORD", review.label());
        term("PAGE_BATCH", review.batch());
        term("PAGE_FOOD", subject.food() == null ? say("PAGE_OWN_FOOD") : sentences.food(subject.food()));
        term("PAGE_FORM", word(subject.form()) + ", " + word(subject.condition()));
        term("PAGE_PURPOSE", say("PAGE_FOR_EATERS", word(subject.purpose()), word(subject.eater())));
        term("PAGE_PLACE", word(subject.place()));
        page.append("</dl>\n");
    }

    private void rule(String key, @Nullable NamedRule rule) {
        if (rule != null) {
            page.append("<dl>");
            term(key, rule.id() + ": " + rule.name());
            term("PAGE_EDITION", rule.edition());
            term("PAGE_SOURCE", rule.source());
            page.append("</dl>\n");
        }
    }

    private void term(String key, @Nullable String text) {
        if (text != null) {
            page.append("<dt>")
                    .append(escaped(say(key)))
                    .append("</dt><dd>")
                    .append(escaped(text))
                    .append("</dd>");
        }
    }

    private void limits() {
        heading("PAGE_LIMITS");
        if (review.limits().isEmpty()) {
            paragraph(say("PAGE_NO_LIMIT"));
            return;
        }
        table("PAGE_LIMIT", "PAGE_WHAT", "PAGE_REQUIRED", "PAGE_MEASURED", "PAGE_MET");
        for (CriticalLimit limit : review.limits()) {
            page.append("<tr>");
            cell(limit.id());
            cell(what(limit));
            number(required(limit));
            number(measured(limit));
            cell(limit.advisory() ? say("PAGE_ADVISORY", said(limit.met())) : said(limit.met()));
            page.append("</tr>\n");
        }
        page.append("</tbody></table>\n");
        paragraph(say("PAGE_ERROR_ADDED", review.readings().errorK()));
    }

    private String what(CriticalLimit limit) {
        List<Object> values = new ArrayList<>();
        if (limit.organism() != null) {
            values.add(organism(limit.organism()));
        }
        Stream.of(limit.fromC(), limit.toC()).filter(Objects::nonNull).forEach(values::add);
        return sentences.say("PAGE_WHAT_" + limit.what(), values);
    }

    /** The name of an organism by its word in the answer. */
    private String organism(String word) {
        Object hazard = Words.constants(Hazard.class).get(word);
        return hazard == null ? word : say(((Hazard) hazard).name());
    }

    private String required(CriticalLimit limit) {
        if (limit.requiredLog10() != null) {
            return "≥ " + plain(limit.requiredLog10()) + " log";
        }
        if (limit.requiredC() != null) {
            return say("PAGE_AT_LEAST", limit.requiredC());
        }
        return (limit.what().equals("tableTime") ? "≥ " : "≤ ") + time(Objects.requireNonNull(limit.requiredS()));
    }

    private String measured(CriticalLimit limit) {
        if (limit.measuredLog10() != null) {
            return plain(limit.measuredLog10()) + " log";
        }
        return limit.measuredC() != null
                ? temperature(limit.measuredC())
                : time(Objects.requireNonNull(limit.measuredS()));
    }

    private void deviations() {
        heading("PAGE_DEVIATIONS");
        if (review.deviations().isEmpty()) {
            paragraph(say("PAGE_NO_DEVIATION"));
            return;
        }
        table("PAGE_FROM", "PAGE_UNTIL", "PAGE_CODE", "PAGE_WHAT");
        for (Deviation deviation : review.deviations()) {
            page.append("<tr>");
            number(time(deviation.fromS()));
            number(time(deviation.untilS()));
            cell(deviation.code());
            cell(deviation.text());
            page.append("</tr>\n");
        }
        page.append("</tbody></table>\n");
        int more = review.deviationCount() - review.deviations().size();
        if (more > 0) {
            paragraph(say("PAGE_MORE", more));
        }
    }

    private void readings() {
        LogReviewAnswer.Readings readings = review.readings();
        heading("PAGE_READINGS");
        page.append("<dl>");
        term("PAGE_READINGS", say("PAGE_COUNTED", readings.received(), readings.used(), readings.excluded()));
        term("PAGE_TIME", say("PAGE_TIME_TO", time(readings.fromS()), time(readings.untilS())));
        term("PAGE_EXTREMES", say("PAGE_EXTREMES_ARE", readings.lowestC(), readings.highestC()));
        term("PAGE_ERROR", say("PAGE_ERROR_IS", readings.errorK()));
        term("PAGE_LONGEST_GAP", plain(readings.longestGapS()) + " s");
        LogReviewAnswer.ComputedCore core = review.computedCore();
        if (core != null) {
            term("PAGE_COMPUTED_CORE", say("PAGE_COMPUTED_CORE_IS", core.highestC(), core.endsC(), core.bathWithinK()));
        }
        term("PAGE_DIGEST", readings.sha256());
        term("PAGE_PARAMETER_SET", review.parameterSet() + ", " + review.digest());
        page.append("</dl>\n");
    }

    private void notes() {
        heading("PAGE_NOTES");
        page.append("<ul>\n");
        review.warnings().forEach(warning -> item(warning.text()));
        review.cautions().forEach(caution -> item(caution.text()));
        List<LogReviewAnswer.Growth> growth = review.growth();
        if (growth != null) {
            growth.forEach(g -> item(say(
                    g.lagCounted() ? "PAGE_GROWTH" : "PAGE_GROWTH_WITHOUT_LAG",
                    organism(g.organism()),
                    g.model(),
                    g.growthLog10())));
        }
        page.append("</ul>\n");
        List<CookPlanAnswer.Source> sources = review.sources();
        if (sources != null && !sources.isEmpty()) {
            heading("PAGE_SOURCES");
            page.append("<ul>\n");
            sources.forEach(source -> item(source.what() + ": " + source.source() + " (" + source.mark() + ")"));
            page.append("</ul>\n");
        }
    }

    private void item(String text) {
        page.append("<li>").append(escaped(text)).append("</li>\n");
    }

    private void cell(String text) {
        page.append("<td>").append(escaped(text)).append("</td>");
    }

    private void number(String text) {
        page.append("<td class=\"number\">").append(escaped(text)).append("</td>");
    }

    // ---- the chart ----

    private void chart() {
        LogCurve curve = Objects.requireNonNull(review.curve());
        double from = review.readings().fromS();
        double until = Math.max(review.readings().untilS(), from + 1.0);
        double lowest = review.readings().lowestC();
        double highest = review.readings().highestC();
        List<CriticalLimit> drawn = review.limits().stream()
                .filter(limit -> !limit.advisory() || limit.what().equals("hotHolding"))
                .toList();
        for (CriticalLimit limit : drawn) {
            Double level = level(limit);
            lowest = level == null ? lowest : Math.min(lowest, level);
            highest = level == null ? highest : Math.max(highest, level);
        }
        Notation notation = sentences.notation();
        int step = step(DEGREES, notation.degrees(highest) - notation.degrees(lowest) + 2.0);
        double bottom = step * Math.floor((notation.degrees(lowest) - 1.0) / step);
        double top = step * Math.ceil((notation.degrees(highest) + 1.0) / step);
        Scale scale = new Scale(from, until, notation.celsius(bottom), notation.celsius(top));
        heading("PAGE_CHART");
        page.append("<svg viewBox=\"0 0 ")
                .append(WIDTH)
                .append(' ')
                .append(HEIGHT)
                .append("\" role=\"img\" aria-label=\"")
                .append(escaped(say("PAGE_CHART")))
                .append("\">\n");
        for (Deviation deviation : review.deviations()) {
            if (UNREAD.contains(deviation.code())) {
                double x = scale.x(deviation.fromS());
                page.append("<rect class=\"unread\" x=\"")
                        .append(tenth(x))
                        .append("\" y=\"")
                        .append(TOP)
                        .append("\" width=\"")
                        .append(tenth(Math.max(scale.x(deviation.untilS()) - x, 0.5)))
                        .append("\" height=\"")
                        .append(HEIGHT - TOP - BOTTOM)
                        .append("\"/>\n");
            }
        }
        for (double t = bottom; t <= top; t += step) {
            double y = scale.y(notation.celsius(t));
            line("grid", LEFT, y, WIDTH - RIGHT, y);
            text(LEFT - 6, y + 4.0, "end", plain(t));
        }
        int seconds = step(SECONDS, until - from);
        for (double t = seconds * Math.ceil(from / seconds); t <= until; t += seconds) {
            line("grid", scale.x(t), TOP, scale.x(t), HEIGHT - BOTTOM);
            text(scale.x(t), HEIGHT - BOTTOM + 16.0, "middle", time((int) t));
        }
        line("axis", LEFT, TOP, LEFT, HEIGHT - BOTTOM);
        line("axis", LEFT, HEIGHT - BOTTOM, WIDTH - RIGHT, HEIGHT - BOTTOM);
        text(LEFT, HEIGHT - 6.0, "start", say("PAGE_TIME_AXIS"));
        text(
                WIDTH - RIGHT,
                HEIGHT - 6.0,
                "end",
                say("PAGE_TEMPERATURE_AXIS", Quantity.Unit.C.symbol(notation.units())));
        levels(drawn, scale);
        readings(curve, scale);
        page.append("</svg>\n");
        if (review.deviations().stream().anyMatch(d -> UNREAD.contains(d.code()))) {
            paragraph(say("PAGE_GREY_AND_DASHED"));
        } else {
            paragraph(say("PAGE_DASHED"));
        }
    }

    /** The limits from the hottest down, their names moved apart where the lines lie close. */
    private void levels(List<CriticalLimit> drawn, Scale scale) {
        double free = TOP;
        for (double level : drawn.stream()
                .map(LogPage::level)
                .filter(Objects::nonNull)
                .distinct()
                .sorted(Comparator.reverseOrder())
                .toList()) {
            double y = scale.y(level);
            line("limit", LEFT, y, WIDTH - RIGHT, y);
            double named = Math.max(y + 4.0, free);
            text(WIDTH - RIGHT + 4, named, "start", temperature(level));
            free = named + LETTER;
        }
    }

    /** The temperature at which a limit is drawn. */
    private static @Nullable Double level(CriticalLimit limit) {
        return switch (limit.what()) {
            case "hotHolding" -> limit.requiredC();
            case "lethality" -> limit.fromC();
            case "cooling", "reheating", "warmUp" -> limit.toC();
            default -> null;
        };
    }

    /** The readings as lines, with nothing drawn over what was not read. */
    private void readings(LogCurve curve, Scale scale) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < curve.timesS().size(); i++) {
            if (i > 0 && unreadBetween(curve.timesS().get(i - 1), curve.timesS().get(i))) {
                polyline(points);
                points.setLength(0);
            }
            points.append(tenth(scale.x(curve.timesS().get(i))))
                    .append(',')
                    .append(tenth(scale.y(curve.temperaturesC().get(i))))
                    .append(' ');
        }
        polyline(points);
    }

    private boolean unreadBetween(int from, int until) {
        return review.deviations().stream()
                .anyMatch(d -> UNREAD.contains(d.code()) && d.fromS() < until && d.untilS() > from);
    }

    private void polyline(CharSequence points) {
        page.append("<polyline class=\"read\" points=\"").append(points).append("\"/>\n");
    }

    private void line(String kind, double fromX, double fromY, double toX, double toY) {
        page.append("<line class=\"")
                .append(kind)
                .append("\" x1=\"")
                .append(tenth(fromX))
                .append("\" y1=\"")
                .append(tenth(fromY))
                .append("\" x2=\"")
                .append(tenth(toX))
                .append("\" y2=\"")
                .append(tenth(toY))
                .append("\"/>\n");
    }

    private void text(double x, double y, String anchor, String text) {
        page.append("<text x=\"")
                .append(tenth(x))
                .append("\" y=\"")
                .append(tenth(y))
                .append("\" text-anchor=\"")
                .append(anchor)
                .append("\">")
                .append(escaped(text))
                .append("</text>\n");
    }

    private static int step(int[] steps, double span) {
        for (int step : steps) {
            if (span / step <= MOST_TICKS) {
                return step;
            }
        }
        return steps[steps.length - 1];
    }

    private record Scale(double from, double until, double bottom, double top) {

        double x(double time) {
            return LEFT + (time - from) / (until - from) * (WIDTH - LEFT - RIGHT);
        }

        double y(double celsius) {
            return HEIGHT - BOTTOM - (celsius - bottom) / (top - bottom) * (HEIGHT - TOP - BOTTOM);
        }
    }

    // ---- text ----

    /** Text as it may stand between tags and in quoted attributes. */
    static String escaped(String text) {
        StringBuilder safe = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            switch (letter) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.append(letter);
            }
        }
        return safe.toString();
    }

    /** A number without superfluous decimals, from digits that do not depend on the age of the JVM. */
    private String plain(double value) {
        return sentences.notation().number(BigDecimal.valueOf(Math.round(value * 100.0), 2));
    }

    private String temperature(double celsius) {
        return sentences.notation().quantity(Quantity.TEMPERATURE, celsius);
    }

    private String say(String key, Object... values) {
        return sentences.say(key, List.of(values));
    }

    /** What a word of the answer means. */
    private String word(String word) {
        return say("PAGE_WORD_" + word);
    }

    private void heading(String key) {
        page.append("<h2>").append(escaped(say(key))).append("</h2>\n");
    }

    private void paragraph(String text) {
        page.append("<p>").append(escaped(text)).append("</p>\n");
    }

    /** The head of a table. */
    private void table(String... keys) {
        page.append("<table><thead><tr>");
        for (String key : keys) {
            page.append("<th>").append(escaped(say(key))).append("</th>");
        }
        page.append("</tr></thead><tbody>\n");
    }

    /** A coordinate to a tenth. */
    private static String tenth(double value) {
        long tenths = Math.round(10.0 * value);
        return (tenths < 0 ? "-" : "") + Math.abs(tenths) / 10 + "." + Math.abs(tenths) % 10;
    }

    private static String time(int seconds) {
        int s = seconds % 60;
        int min = seconds / 60 % 60;
        return seconds / 3600 + ":" + (min < 10 ? "0" : "") + min + ":" + (s < 10 ? "0" : "") + s;
    }

    static String hash(String text) {
        try {
            return Base64.getEncoder()
                    .encodeToString(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JVM has SHA-256", e);
        }
    }
}
