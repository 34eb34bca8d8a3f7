package dev.slowpoint.ops;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Tells why the service does not start in the words of {@link StartRefused}. */
final class StartRefusedAnalyzer extends AbstractFailureAnalyzer<StartRefused> {

    @Override
    protected FailureAnalysis analyze(Throwable failure, StartRefused cause) {
        return new FailureAnalysis(cause.getMessage(), cause.remedy(), cause);
    }
}
