package dev.slowpoint.api;

import dev.slowpoint.parameters.ParameterSets;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Loads what the service knows; a fault in a file stops the start and names the place. */
@Configuration(proxyBeanMethods = false)
class PlannerConfiguration {

    @Bean
    ParameterSets parameterSets() {
        return ParameterSets.released();
    }
}
