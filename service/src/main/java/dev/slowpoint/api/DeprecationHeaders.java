package dev.slowpoint.api;

import dev.slowpoint.parameters.Deprecation;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/**
 * Tells a client that what it uses is deprecated: {@code Deprecation} (RFC 9745), {@code Sunset} (RFC 8594) and a link to
 * what to do. An answer that has two reasons for it names the earlier days, and links to both.
 */
final class DeprecationHeaders {

    /** A structured field: a date in seconds. */
    static final String DEPRECATION = "Deprecation";

    /** A date as HTTP writes it. */
    static final String SUNSET = "Sunset";

    // Always two digits for the day, unlike the formatter of RFC 1123 that the platform brings.
    private static final DateTimeFormatter HTTP_DATE =
            DateTimeFormatter.ofPattern("EEE, dd MMM uuuu HH:mm:ss 'GMT'", Locale.ROOT);

    private static final String TOLD = DeprecationHeaders.class.getName();

    private DeprecationHeaders() {}

    /** Tells it with the answer that this thread is working on; where there is none, nobody needs to know. */
    static void announce(Deprecation deprecation, String see) {
        if (RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes current
                && current.getResponse() != null) {
            announce(current.getRequest(), current.getResponse(), deprecation, see);
        }
    }

    /** Tells it with an answer that has not been written yet. */
    static void announce(
            HttpServletRequest request, HttpServletResponse response, Deprecation deprecation, String see) {
        Deprecation told =
                request.getAttribute(TOLD) instanceof Deprecation before ? earlier(before, deprecation) : deprecation;
        request.setAttribute(TOLD, told);
        response.setHeader(
                DEPRECATION, "@" + told.since().atStartOfDay(ZoneOffset.UTC).toEpochSecond());
        told.sunset().ifPresent(day -> response.setHeader(SUNSET, httpDate(day)));
        String link = "<" + see + ">; rel=\"deprecation\"";
        if (!response.getHeaders(HttpHeaders.LINK).contains(link)) {
            response.addHeader(HttpHeaders.LINK, link);
        }
    }

    /** The first moment of a day, as HTTP writes it. */
    static String httpDate(LocalDate day) {
        return HTTP_DATE.format(day.atStartOfDay(ZoneOffset.UTC));
    }

    private static Deprecation earlier(Deprecation one, Deprecation other) {
        return new Deprecation(
                one.since().isBefore(other.since()) ? one.since() : other.since(),
                earlier(one.sunset(), other.sunset()));
    }

    private static Optional<LocalDate> earlier(Optional<LocalDate> one, Optional<LocalDate> other) {
        boolean takeOther = one.isEmpty() || (other.isPresent() && other.get().isBefore(one.get()));
        return takeOther ? other : one;
    }
}
