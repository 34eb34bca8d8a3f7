package dev.slowpoint.ops.access;

import dev.slowpoint.ops.StartRefused;
import java.net.InetAddress;
import java.net.UnknownHostException;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Stops the start where anybody on the network could ask without showing who they are. Looks before a port is opened. */
@Component
@Order(0)
class AddressRule implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {

    private final Environment environment;

    AddressRule(Environment environment) {
        this.environment = environment;
    }

    @Override
    public void customize(ConfigurableTomcatWebServerFactory factory) {
        if (AccessMode.of(environment) == AccessMode.OPEN) {
            loopback(LoopbackByDefault.ADDRESS);
            loopback(LoopbackByDefault.MANAGEMENT_ADDRESS);
        }
    }

    private void loopback(String property) {
        String address = environment.getProperty(property);
        if (address != null && !isLoopback(address)) {
            throw new StartRefused(
                    property + " is " + address + ", which others can reach, but " + AccessMode.PROPERTY
                            + " is open: nobody would have to show who they are.",
                    "Set " + AccessMode.PROPERTY + " to keys or jwt (see the guide to access), or take " + property
                            + " away, so that only this machine can ask.");
        }
    }

    private static boolean isLoopback(String address) {
        try {
            return InetAddress.getByName(address).isLoopbackAddress();
        } catch (UnknownHostException nowhere) {
            return false;
        }
    }
}
