package dev.slowpoint.ops;

import io.micrometer.common.KeyValue;
import io.micrometer.observation.ObservationFilter;
import io.opentelemetry.sdk.trace.export.SpanExporter;
import io.opentelemetry.sdk.trace.samplers.Sampler;
import java.util.Locale;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.server.observation.ServerRequestObservationContext;

/** What is traced, and what a trace never tells. */
@Configuration(proxyBeanMethods = false)
class TracingConfiguration {

    /** The address as it was called: what callers write there is nobody's business. The route is kept. */
    private static final String ADDRESS = "http.url";

    /**
     * Nothing, where spans are sent nowhere; else what the caller's own trace says, and a share of the requests that come
     * without one.
     */
    @Bean
    Sampler sampler(
            ObjectProvider<SpanExporter> exporters, @Value("${management.tracing.sampling.probability}") double share) {
        return exporters.stream().findAny().isEmpty()
                ? Sampler.alwaysOff()
                : Sampler.parentBased(Sampler.traceIdRatioBased(share));
    }

    /** A span tells the route and the method if it is one, never what a caller wrote in their places. */
    @Bean
    ObservationFilter inKnownWords() {
        return context -> {
            if (context instanceof ServerRequestObservationContext request) {
                KeyValue method = request.getLowCardinalityKeyValue("method");
                String route = request.getPathPattern();
                request.setContextualName("http "
                        + (method == null ? "unknown" : method.getValue().toLowerCase(Locale.ROOT))
                        + (route == null ? "" : " " + route));
                request.removeHighCardinalityKeyValue(ADDRESS);
            }
            return context;
        };
    }
}
