package dev.slowpoint.heat;

import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Lets whoever waits for a computation end it. The solver asks between its steps, in the thread that computes; a
 * computation that is halted leaves nothing behind.
 *
 * <p>What is asked belongs to a thread. Work that is handed to other threads is given {@link #ofThread} along.
 */
public final class Halt implements AutoCloseable {

    private static final BooleanSupplier NEVER = () -> false;
    private static final ThreadLocal<@Nullable BooleanSupplier> OF_THREAD = new ThreadLocal<>();

    private final @Nullable BooleanSupplier before;

    private Halt(@Nullable BooleanSupplier before) {
        this.before = before;
    }

    /** What this thread asks: whether to halt. Never, unless {@link #on} said otherwise. */
    public static BooleanSupplier ofThread() {
        BooleanSupplier wanted = OF_THREAD.get();
        return wanted == null ? NEVER : wanted;
    }

    /**
     * From now on this thread asks whether to halt, until the result is closed in the same thread.
     *
     * @param wanted asked often, so it must be quick
     */
    public static Halt on(BooleanSupplier wanted) {
        Halt halt = new Halt(OF_THREAD.get());
        OF_THREAD.set(wanted);
        return halt;
    }

    @Override
    public void close() {
        if (before == null) {
            OF_THREAD.remove();
        } else {
            OF_THREAD.set(before);
        }
    }

    /** A computation was ended because its result is no longer wanted. */
    public static final class Halted extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Halted() {
            // Without a stack: it was not the work that went wrong.
            super("the computation was halted", null, false, false);
        }
    }
}
