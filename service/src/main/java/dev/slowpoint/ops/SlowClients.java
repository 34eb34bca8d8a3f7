package dev.slowpoint.ops;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpServletResponseWrapper;
import java.io.IOException;
import java.net.SocketTimeoutException;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Keeps clients that send or take slowly from keeping threads. A thread waits for a client only with a place in the
 * {@link SlowLane}, and only as long as there is {@link Patience}: then reading fails with {@link SocketTimeoutException},
 * and writing breaks the connection off.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE)
public final class SlowClients extends OncePerRequestFilter {

    /** An answer of this length goes out without anyone waiting for its client [bytes]. */
    static final int NEVER_WAITS = 32 * 1024;

    /** Written at a time, so that a slow client is noticed on the way [bytes]. */
    private static final int PIECE = 8 * 1024;

    /** How long a body is awaited where there is no place to wait in [ns]. */
    private static final long MOMENT_NANOS = 50_000_000L;

    private static final String APART = SlowClients.class.getName() + ".apart";

    private final SlowLane lane;

    SlowClients(SlowLane lane) {
        this.lane = lane;
    }

    /** Lets a request wait for its client outside of the lane, because it has taken one of few places of its own. */
    public static void setApart(HttpServletRequest request) {
        request.setAttribute(APART, Boolean.TRUE);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try (Place place = new Place(request)) {
            chain.doFilter(new Heard(request, place), new Told(response, place));
        }
    }

    /** The place of one request in the lane, once it needs one. */
    private final class Place implements AutoCloseable {
        private final HttpServletRequest request;
        private boolean taken;

        Place(HttpServletRequest request) {
            this.request = request;
        }

        /** Whether the client may be waited for. */
        boolean take() {
            if (!taken && request.getAttribute(APART) == null) {
                taken = lane.enter();
                return taken;
            }
            return true;
        }

        /** Whether something comes within a moment. For a client that is sending its body right now. */
        boolean arrives(ServletInputStream in) throws IOException {
            long began = System.nanoTime();
            try {
                while (!UnreadBodies.arrived(request, in)) {
                    if (System.nanoTime() - began > MOMENT_NANOS) {
                        return false;
                    }
                    // The container tells of no arrival to a thread that does not block on it.
                    TimeUnit.MICROSECONDS.sleep(200);
                }
                return true;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
        }

        @Override
        public void close() {
            if (taken) {
                lane.leave();
                taken = false;
            }
        }
    }

    private final class Heard extends HttpServletRequestWrapper {
        private final Place place;
        private @Nullable ServletInputStream in;

        Heard(HttpServletRequest request, Place place) {
            super(request);
            this.place = place;
        }

        @Override
        public ServletInputStream getInputStream() throws IOException {
            ServletInputStream stream = in;
            if (stream == null) {
                stream = new Arriving(super.getInputStream(), place, lane.patience());
                in = stream;
            }
            return stream;
        }
    }

    /** A body that is waited for with patience. */
    private static final class Arriving extends ServletInputStream {
        private final ServletInputStream in;
        private final Place place;
        private final Patience patience;

        Arriving(ServletInputStream in, Place place, Patience patience) {
            this.in = in;
            this.place = place;
            this.patience = patience;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int from, int most) throws IOException {
            if (in.isFinished() || in.available() > 0) {
                return in.read(into, from, most);
            }
            if (!place.take()) {
                if (place.arrives(in)) {
                    return in.read(into, from, most);
                }
                throw new NoRoom();
            }
            try {
                long began = System.nanoTime();
                int read = in.read(into, from, most);
                if (patience.exhausted(System.nanoTime() - began, read)) {
                    throw new SocketTimeoutException("the body comes too slowly");
                }
                return read;
            } finally {
                // What has come is worked on; the next wait needs a place anew.
                place.close();
            }
        }

        @Override
        public int available() throws IOException {
            return in.available();
        }

        @Override
        public boolean isFinished() {
            return in.isFinished();
        }

        @Override
        public boolean isReady() {
            return in.isReady();
        }

        @Override
        public void setReadListener(ReadListener listener) {
            in.setReadListener(listener);
        }
    }

    private final class Told extends HttpServletResponseWrapper {
        private final Place place;
        private @Nullable ServletOutputStream out;

        Told(HttpServletResponse response, Place place) {
            super(response);
            this.place = place;
        }

        @Override
        public ServletOutputStream getOutputStream() throws IOException {
            ServletOutputStream stream = out;
            if (stream == null) {
                stream = new Leaving(super.getOutputStream(), place, lane.patience());
                out = stream;
            }
            return stream;
        }
    }

    /** An answer whose client is waited for with patience. */
    private static final class Leaving extends ServletOutputStream {
        private final ServletOutputStream out;
        private final Place place;
        private final Patience patience;
        private long written;

        Leaving(ServletOutputStream out, Place place, Patience patience) {
            this.out = out;
            this.place = place;
            this.patience = patience;
        }

        @Override
        public void write(int one) throws IOException {
            write(new byte[] {(byte) one}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            if (written + length > NEVER_WAITS && !place.take()) {
                throw new NoRoom();
            }
            for (int at = 0; at < length; at += PIECE) {
                int piece = Math.min(PIECE, length - at);
                long began = System.nanoTime();
                out.write(bytes, from + at, piece);
                written += piece;
                waited(began, piece);
            }
        }

        @Override
        public void flush() throws IOException {
            long began = System.nanoTime();
            out.flush();
            waited(began, 0);
        }

        private void waited(long began, int moved) throws IOException {
            if (patience.exhausted(System.nanoTime() - began, moved)) {
                throw new IOException("the answer is taken too slowly");
            }
        }

        @Override
        public boolean isReady() {
            return out.isReady();
        }

        @Override
        public void setWriteListener(WriteListener listener) {
            out.setWriteListener(listener);
        }
    }
}
