package dev.slowpoint.ops;

import io.micrometer.core.instrument.config.MeterFilter;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Keeps the number of time series bounded, whatever happens. */
@Configuration(proxyBeanMethods = false)
class MetricsConfiguration {

    /** More parameter sets than will ever be installed at once. */
    private static final int MOST_PARAMETER_SETS = 32;

    @Bean
    MeterFilter boundedParameterSets() {
        return MeterFilter.maximumAllowableTags(
                PlanMetrics.PLANS, "parameter.set", MOST_PARAMETER_SETS, MeterFilter.deny());
    }

    @Bean
    MeterFilter boundedParameterSetsOfChills() {
        return MeterFilter.maximumAllowableTags(
                PlanMetrics.CHILLS, "parameter.set", MOST_PARAMETER_SETS, MeterFilter.deny());
    }
}
