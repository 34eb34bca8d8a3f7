package dev.slowpoint.ops;

import java.util.concurrent.Executor;
import java.util.concurrent.ThreadPoolExecutor;
import org.apache.coyote.AbstractProtocol;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * How many requests are worked on at once. The work is arithmetic, so threads beyond the cores only wait for each other;
 * a few more keep slow connections from idling a core.
 */
@Component
@Order(20)
class Capacity implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {

    private final int threads;
    private volatile @Nullable AbstractProtocol<?> protocol;

    Capacity(@Value("${slowpoint.limits.threads-per-core}") int threadsPerCore, SlowLane slow) {
        // Those that wait for slow clients come on top, so that they are never all of them.
        this.threads = threadsPerCore * Runtime.getRuntime().availableProcessors() + slow.size();
    }

    @Override
    public void customize(ConfigurableTomcatWebServerFactory factory) {
        // On the connector, as the framework does with its own default, so that ours comes later and counts.
        factory.addConnectorCustomizers(connector -> {
            if (connector.getProtocolHandler() instanceof AbstractProtocol<?> tomcat) {
                tomcat.setMaxThreads(threads);
                tomcat.setMinSpareThreads(threads);
                protocol = tomcat;
            }
        });
    }

    /** Requests that have arrived and wait for a thread. */
    int waiting() {
        AbstractProtocol<?> tomcat = protocol;
        Executor executor = tomcat == null ? null : tomcat.getExecutor();
        if (executor instanceof ThreadPoolExecutor pool) {
            return pool.getQueue().size();
        }
        return executor instanceof org.apache.tomcat.util.threads.ThreadPoolExecutor pool
                ? pool.getQueue().size()
                : 0;
    }
}
