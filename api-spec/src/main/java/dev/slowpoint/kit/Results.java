package dev.slowpoint.kit;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.TestTag;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;

/** What came of each test, collected while they run. */
final class Results implements TestExecutionListener {

    /** How a test ended. */
    enum Outcome {
        PASSED,
        FAILED,
        SKIPPED
    }

    /**
     * One test.
     *
     * @param requirement whose test it is
     * @param name which of the tests of the requirement
     * @param reason why it failed or was skipped; empty where it passed
     */
    record Result(Requirement requirement, String name, Outcome outcome, String reason, long millis) {}

    private final PrintWriter out;
    private final List<Result> results = new ArrayList<>();
    private final Map<String, Long> begun = new ConcurrentHashMap<>();
    private final TestPlan plan;

    Results(PrintWriter out, TestPlan plan) {
        this.out = out;
        this.plan = plan;
    }

    @Override
    public void executionStarted(TestIdentifier test) {
        begun.put(test.getUniqueId(), System.nanoTime());
    }

    @Override
    public void executionSkipped(TestIdentifier test, String reason) {
        requirement(test).ifPresent(requirement -> add(test, requirement, Outcome.SKIPPED, reason));
    }

    @Override
    public void executionFinished(TestIdentifier test, TestExecutionResult result) {
        Optional<Requirement> requirement = requirement(test);
        if (requirement.isEmpty()
                || (test.isContainer() && result.getStatus() == TestExecutionResult.Status.SUCCESSFUL)) {
            // A layer that fails as a whole is told of each of its requirements.
            if (requirement.isEmpty() && result.getStatus() != TestExecutionResult.Status.SUCCESSFUL) {
                plan.getDescendants(test)
                        .forEach(child -> requirement(child)
                                .ifPresent(missed -> add(child, missed, Outcome.FAILED, reason(result))));
            }
            return;
        }
        add(
                test,
                requirement.get(),
                switch (result.getStatus()) {
                    case SUCCESSFUL -> Outcome.PASSED;
                    case ABORTED -> Outcome.SKIPPED;
                    case FAILED -> Outcome.FAILED;
                },
                reason(result));
    }

    /** The requirements that no test can show, which a report must not leave out. */
    void untestable(Set<String> asked) {
        Requirement.ALL.values().stream()
                .filter(requirement -> asked.contains(requirement.id()))
                .forEach(requirement -> requirement
                        .untestable()
                        .ifPresent(reason -> results.add(new Result(
                                requirement, requirement.text(), Outcome.SKIPPED, "Not testable: " + reason, 0))));
    }

    List<Result> all() {
        return results.stream()
                .sorted(Comparator.comparing(result -> result.requirement().id()))
                .toList();
    }

    long count(Outcome outcome) {
        return results.stream().filter(result -> result.outcome() == outcome).count();
    }

    private synchronized void add(TestIdentifier test, Requirement requirement, Outcome outcome, String reason) {
        long begin = begun.getOrDefault(test.getUniqueId(), System.nanoTime());
        results.add(new Result(
                requirement, test.getDisplayName(), outcome, reason, (System.nanoTime() - begin) / 1_000_000));
        if (outcome == Outcome.FAILED) {
            out.println("FAILED " + requirement.id() + " " + requirement.text());
            if (!test.getDisplayName().startsWith(requirement.id())) {
                out.println("       with " + test.getDisplayName());
            }
            out.println("       " + reason.replace("\n", "\n       "));
            out.flush();
        }
    }

    private static String reason(TestExecutionResult result) {
        return result.getThrowable()
                .map(thrown -> thrown.getMessage() == null ? thrown.toString() : thrown.getMessage())
                .orElse("");
    }

    private static Optional<Requirement> requirement(TestIdentifier test) {
        return test.getTags().stream()
                .map(TestTag::getName)
                .filter(Requirement.ALL::containsKey)
                .map(Requirement.ALL::get)
                .findFirst();
    }
}
