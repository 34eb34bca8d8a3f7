package dev.slowpoint.ops;

import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.ServletRequest;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.apache.coyote.ActionCode;
import org.apache.tomcat.util.net.ApplicationBufferHandler;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.stereotype.Component;

/**
 * Ends requests that were answered before their body was read. The container would read the rest without bound in time,
 * and a client that sends a byte now and then would keep a thread. Here the rest is waited for in the {@link SlowLane}
 * and not for long; a client that is still sending then loses its connection.
 */
@Component
final class UnreadBodies implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {

    /** Long enough for a client that is sending as fast as it can to have its answer and no reset. */
    private static final Duration LONGEST = Duration.ofSeconds(1);

    /** As the container's own limit on what it reads for nothing [bytes]. */
    private static final int MOST = 2 * 1024 * 1024;

    private static final String ARRIVING = UnreadBodies.class.getName() + ".arriving";

    private final SlowLane lane;

    UnreadBodies(SlowLane lane) {
        this.lane = lane;
    }

    @Override
    public void customize(ConfigurableTomcatWebServerFactory factory) {
        // Outermost, so that problems written by the container itself are on their way before.
        factory.addEngineValves(new End(lane));
        // Bodies are read in one place, with patience; never by the container for the sake of a parameter.
        factory.addConnectorCustomizers(connector -> connector.setParseBodyMethods(""));
    }

    /** Whether a part of a body is there, or has come since it was looked for last. */
    static boolean arrived(ServletRequest request, ServletInputStream in) throws IOException {
        if (request.getAttribute(ARRIVING) instanceof org.apache.coyote.Request coyote) {
            coyote.action(ActionCode.AVAILABLE, Boolean.TRUE);
        }
        return in.isFinished() || in.available() > 0;
    }

    /** Of a body that there is; one that cannot be read was refused, and its connection is closed. */
    private static final Pattern LENGTH = Pattern.compile("0*[1-9][0-9]{0,17}");

    private static final class End extends ValveBase {
        private final SlowLane lane;

        End(SlowLane lane) {
            super(true);
            this.lane = lane;
        }

        @Override
        public void invoke(Request request, Response response) throws IOException, ServletException {
            org.apache.coyote.Request coyote = request.getCoyoteRequest();
            request.setAttribute(ARRIVING, coyote);
            getNext().invoke(request, response);
            boolean none = !LENGTH.matcher(Objects.requireNonNullElse(request.getHeader("Content-Length"), ""))
                            .matches()
                    && request.getHeader("Transfer-Encoding") == null;
            if (none || request.isAsync() || coyote.isFinished()) {
                return;
            }
            try {
                response.finishResponse();
                if (read(coyote)) {
                    return;
                }
            } catch (IOException gone) {
                container.getLogger().debug("a client left while its body was read to the end", gone);
            }
            coyote.action(ActionCode.DISABLE_SWALLOW_INPUT, null);
        }

        /** Whether all of it came in time. Below the stream of the request, which whoever refused it may have closed. */
        private boolean read(org.apache.coyote.Request coyote) throws IOException {
            int left = drop(coyote, MOST);
            if (coyote.isFinished() || left <= 0 || !lane.enter()) {
                return coyote.isFinished();
            }
            try {
                long began = System.nanoTime();
                while (!coyote.isFinished() && left > 0 && System.nanoTime() - began < LONGEST.toNanos()) {
                    // The container tells of no arrival to a thread that does not block on it.
                    TimeUnit.MILLISECONDS.sleep(2);
                    left = drop(coyote, left);
                }
                return coyote.isFinished();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            } finally {
                lane.leave();
            }
        }

        private static int drop(org.apache.coyote.Request coyote, int most) throws IOException {
            Dropped dropped = new Dropped();
            int left = most;
            while (left > 0 && !coyote.isFinished()) {
                coyote.action(ActionCode.AVAILABLE, Boolean.TRUE);
                if (coyote.getAvailable() <= 0 && !coyote.isFinished()) {
                    return left;
                }
                int read = coyote.doRead(dropped);
                if (read < 0) {
                    return left;
                }
                left -= read;
            }
            return left;
        }
    }

    /** Takes what comes and does nothing with it. */
    private static final class Dropped implements ApplicationBufferHandler {
        private ByteBuffer held = ByteBuffer.allocate(0);

        @Override
        public void setByteBuffer(ByteBuffer buffer) {
            held = buffer;
        }

        @Override
        public ByteBuffer getByteBuffer() {
            return held;
        }

        @Override
        public void expand(int size) {
            // What comes is not kept.
        }
    }
}
