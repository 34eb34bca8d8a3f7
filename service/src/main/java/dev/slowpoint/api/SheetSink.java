package dev.slowpoint.api;

import dev.slowpoint.api.PortionSheetAnswer.PortionPlace;
import dev.slowpoint.api.PortionSheetAnswer.SheetBand;
import dev.slowpoint.api.PortionSheetAnswer.SheetTotals;
import java.io.IOException;

/** Takes a sheet piece by piece, in the order of its portions. */
interface SheetSink {

    /** A band, before the first portion that needs it. */
    void band(SheetBand band) throws IOException;

    /** A portion. */
    void portion(PortionPlace portion) throws IOException;

    /** How many so far, each time after a round number of portions. */
    void progress(SheetTotals soFar) throws IOException;

    /** Sends on what was taken. */
    void flush() throws IOException;
}
