package dev.slowpoint.plan;

import java.util.List;

/** A question whose notices can be read. */
interface Asked {

    /** Codes of the notices of its answer. */
    List<NoticeCode> notices();
}
