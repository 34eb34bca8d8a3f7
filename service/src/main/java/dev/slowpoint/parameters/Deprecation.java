package dev.slowpoint.parameters;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Says from when on something should no longer be used by those who write something new, and from when on it may be gone.
 * Both are days in UTC. Nothing changes by itself on either of them: this program reads no calendar.
 *
 * @param since the day from which it is deprecated
 * @param sunset the day from which it may be gone, if that is known
 */
public record Deprecation(LocalDate since, Optional<LocalDate> sunset) {

    /** Refuses a sunset before the deprecation (RFC 9745, section 4). */
    public Deprecation {
        sunset.filter(day -> day.isBefore(since)).ifPresent(day -> {
            throw new IllegalArgumentException(
                    "the sunset on " + day + " must not lie before the deprecation on " + since);
        });
    }
}
