package dev.slowpoint.ops.access;

import java.util.Map;
import org.springframework.boot.EnvironmentPostProcessor;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.core.Ordered;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;

/**
 * Where nobody has to show who they are and no address is given, both ports are opened to the same machine only. Runs
 * after the configuration is read, and comes last: whatever is given counts.
 */
final class LoopbackByDefault implements EnvironmentPostProcessor, Ordered {

    static final String ADDRESS = "server.address";
    static final String MANAGEMENT_ADDRESS = "management.server.address";
    static final String LOOPBACK = "127.0.0.1";

    private static final String NAME = "loopback-by-default";

    @Override
    public int getOrder() {
        return ConfigDataEnvironmentPostProcessor.ORDER + 1;
    }

    @Override
    public void postProcessEnvironment(ConfigurableEnvironment environment, SpringApplication application) {
        if (!"open".equals(environment.getProperty(AccessMode.PROPERTY, "open"))) {
            return;
        }
        // The framework takes an address of the management only where that has a port of its own.
        environment
                .getPropertySources()
                .addLast(new MapPropertySource(
                        NAME,
                        managedApart(environment)
                                ? Map.of(ADDRESS, LOOPBACK, MANAGEMENT_ADDRESS, LOOPBACK)
                                : Map.of(ADDRESS, LOOPBACK)));
    }

    private static boolean managedApart(ConfigurableEnvironment environment) {
        String management = environment.getProperty("management.server.port");
        return management != null
                && (management.equals("0") || !management.equals(environment.getProperty("server.port", "8080")));
    }
}
