package dev.slowpoint.api;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

/**
 * The yardstick of the load runner: reads the same request by the same reader and writes one stored answer by the same writer,
 * so that what is left is what planning costs. Not part of the service.
 */
@TestComponent
@RestController
public class StoredAnswers {

    /** Where it listens. */
    public static final String PATH = "/bench/stored-answers";

    private final CookPlanning planning;
    private final Sentences sentences;
    private volatile @Nullable CookPlanAnswer stored;

    StoredAnswers(PlannedCooks planning, Languages languages) {
        this.planning = planning;
        this.sentences = languages.english();
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
