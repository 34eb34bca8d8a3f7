package dev.slowpoint.ops;

import java.io.IOException;

/** Too many other clients are being waited for. Nothing of the answer has been sent; the client may come again. */
public final class NoRoom extends IOException {

    private static final long serialVersionUID = 1L;

    NoRoom() {
        super("too many clients are waited for");
    }
}
