package dev.slowpoint.ops.access;

import dev.slowpoint.ops.PlanMetrics;
import dev.slowpoint.ops.StartRefused;
import io.github.bucket4j.TimeMeter;
import io.micrometer.core.instrument.MeterRegistry;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.core.io.ResourceLoader;

/** The guard of the mode that is set. In the open mode there is none. */
@Configuration(proxyBeanMethods = false)
class AccessConfiguration {

    /** As scopes are written (RFC 6749, section 3.3), so that one may stand in a header. */
    private static final String SCOPE = "[\\x21\\x23-\\x5B\\x5D-\\x7E]+";

    @Configuration(proxyBeanMethods = false)
    @ConditionalOnProperty(name = AccessMode.PROPERTY, havingValue = "keys")
    static class Keys {

        @Bean
        KeyCredentials keyCredentials(
                @Value("${" + KeyCredentials.PROPERTY + ":}") String file,
                @Value("${slowpoint.access.keys-read-every}") Duration every,
                MeterRegistry registry) {
            if (file.isBlank()) {
                throw new StartRefused(
                        AccessMode.PROPERTY + " is keys, but " + KeyCredentials.PROPERTY + " is not set.",
                        "Set it to the path of the file with the hashes of the keys.");
            }
            return new KeyCredentials(
                    Path.of(file), every, InstantSource.system(), TimeMeter.SYSTEM_NANOTIME, registry);
        }

        @Bean
        FilterRegistrationBean<AccessGuard> accessGuard(KeyCredentials credentials, PlanMetrics metrics) {
            return registration(credentials, metrics);
        }
    }

    @Configuration(proxyBeanMethods = false)
    @ConditionalOnProperty(name = AccessMode.PROPERTY, havingValue = "jwt")
    static class Tokens {

        @Bean
        TokenCredentials tokenCredentials(
                Environment environment,
                ResourceLoader resources,
                @Value("${slowpoint.access.tokens.scope}") String scope,
                @Value("${slowpoint.access.tokens.per-second}") double perSecond,
                @Value("${slowpoint.access.tokens.burst}") int burst,
                @Value("${slowpoint.access.tokens.at-once}") int atOnce) {
            if (!scope.matches(SCOPE)) {
                throw new StartRefused(
                        "slowpoint.access.tokens.scope is no scope.", "Set it to one word, such as slowpoint:plan.");
            }
            try {
                return new TokenCredentials(
                        new TokenSettings(environment, resources).processor(),
                        scope,
                        new Allowance(perSecond, burst, atOnce),
                        TimeMeter.SYSTEM_NANOTIME);
            } catch (IllegalArgumentException e) {
                throw new StartRefused(
                        "slowpoint.access.tokens: " + e.getMessage() + ".", "Set it to a number within these bounds.");
            }
        }

        @Bean
        FilterRegistrationBean<AccessGuard> accessGuard(TokenCredentials credentials, PlanMetrics metrics) {
            return registration(credentials, metrics);
        }
    }

    private static FilterRegistrationBean<AccessGuard> registration(Credentials credentials, PlanMetrics metrics) {
        FilterRegistrationBean<AccessGuard> registration =
                new FilterRegistrationBean<>(new AccessGuard(credentials, metrics));
        registration.setOrder(AccessGuard.ORDER);
        return registration;
    }
}
