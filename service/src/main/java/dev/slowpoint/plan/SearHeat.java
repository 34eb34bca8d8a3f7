package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.food.Provenance;
import java.util.List;
import java.util.Optional;

/**
 * How hot one way of searing is.
 *
 * @param mediumC pan or oil [C]; empty where heat falls on the surface through air
 * @param film between pan or oil and surface
 * @param flux what falls on the surface [W/m2]; zero for pan and oil
 * @param origins where the values come from
 */
public record SearHeat(Optional<Range> mediumC, Optional<Film> film, Range flux, List<Provenance> origins) {

    /** Copies the list and refuses a medium without a film. */
    public SearHeat {
        origins = List.copyOf(origins);
        if (mediumC.isPresent() != film.isPresent()) {
            throw new IllegalArgumentException("a hot medium and its film go together");
        }
    }
}
