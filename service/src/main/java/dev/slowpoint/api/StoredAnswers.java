package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.Hidden;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.Profile;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

/**
 * The yardstick of measurements under load: reads the same request by the same reader and writes one stored answer by the same
 * writer, so that what is left is what planning costs. There only in a service that was started for measuring, with the profile
 * {@code benchmark}; never part of the contract.
 */
@Hidden
@Profile(StoredAnswers.PROFILE)
@RestController
class StoredAnswers {

    /** The profile to start the service with. */
    static final String PROFILE = "benchmark";

    /** Where it listens. */
    static final String PATH = "/bench/stored-answers";

    private static final Logger LOG = LoggerFactory.getLogger(StoredAnswers.class);

    private final CookPlanning planning;
    private final Sentences sentences;
    private volatile @Nullable CookPlanAnswer stored;

    StoredAnswers(PlannedCooks planning, Languages languages) {
        this.planning = planning;
        this.sentences = languages.english();
        LOG.warn("started for measuring: {} answers with stored answers that are true for no request", PATH);
    }

    @PostMapping(path = PATH, consumes = "application/json", produces = "application/json")
    ResponseEntity<CookPlanAnswer> answer(@RequestBody CookPlanRequest request) {
        CookPlanAnswer answer = stored;
        if (answer == null) {
            answer = planning.plan(request, Set.of(), sentences);
            stored = answer;
        }
        return ResponseEntity.ok(answer);
    }
}
