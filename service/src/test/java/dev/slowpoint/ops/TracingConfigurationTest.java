package dev.slowpoint.ops;

import static org.assertj.core.api.Assertions.assertThat;

import io.opentelemetry.sdk.common.CompletableResultCode;
import io.opentelemetry.sdk.trace.data.SpanData;
import io.opentelemetry.sdk.trace.export.SpanExporter;
import io.opentelemetry.sdk.trace.samplers.Sampler;
import java.util.Collection;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.support.StaticListableBeanFactory;

class TracingConfigurationTest {

    @Test
    void nothing_is_traced_where_spans_are_sent_nowhere() {
        assertThat(sampler(new StaticListableBeanFactory())).isSameAs(Sampler.alwaysOff());
    }

    @Test
    void where_they_are_sent_somewhere_a_caller_decides_and_else_a_share() {
        StaticListableBeanFactory beans = new StaticListableBeanFactory();
        beans.addBean("exporter", new Nowhere());
        assertThat(sampler(beans).getDescription()).startsWith("ParentBased{root:TraceIdRatioBased{0.25");
    }

    private static Sampler sampler(StaticListableBeanFactory beans) {
        return new TracingConfiguration().sampler(beans.getBeanProvider(SpanExporter.class), 0.25);
    }

    private static final class Nowhere implements SpanExporter {

        @Override
        public CompletableResultCode export(Collection<SpanData> spans) {
            return CompletableResultCode.ofSuccess();
        }

        @Override
        public CompletableResultCode flush() {
            return CompletableResultCode.ofSuccess();
        }

        @Override
        public CompletableResultCode shutdown() {
            return CompletableResultCode.ofSuccess();
        }
    }
}
