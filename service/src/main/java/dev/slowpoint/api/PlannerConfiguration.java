package dev.slowpoint.api;

import dev.slowpoint.ops.StartRefused;
import dev.slowpoint.parameters.Overlay;
import dev.slowpoint.parameters.ParameterSet;
import dev.slowpoint.parameters.ParameterSets;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Loads what the service knows; a fault in a file stops the start and names the place. */
@Configuration(proxyBeanMethods = false)
class PlannerConfiguration {

    private static final Logger LOG = LoggerFactory.getLogger(PlannerConfiguration.class);

    /**
     * All sets.
     *
     * @param overlay folder of own foods and rules; empty where there are none
     */
    @Bean
    ParameterSets parameterSets(@Value("${slowpoint.overlay.directory}") String overlay) {
        ParameterSets released = ParameterSets.released();
        if (overlay.isBlank()) {
            return released;
        }
        try {
            ParameterSets sets = released.with(Overlay.read(Path.of(overlay)));
            ParameterSet current = sets.current();
            LOG.info("answers from parameter set {}, digest {}", current.version(), current.digest());
            return sets;
        } catch (IllegalArgumentException fault) {
            throw new StartRefused(
                    "The overlay in " + overlay + " cannot be used: " + fault.getMessage(),
                    "Mend the file, or start without slowpoint.overlay.directory. The service never answers from half an"
                            + " overlay.");
        }
    }
}
