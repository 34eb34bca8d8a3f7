package dev.slowpoint.api;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One line of a sheet: pieces of one kind. */
@Schema(
        name = "Portion",
        description =
                "Pieces of one kind, as in a cook plan. `geometry` is the piece as stated. How its thickness (or diameter)"
                        + " spreads is told by `thicknessSpreadMm`, or by sizes that were measured.")
public record SheetPortion(
        @Schema(
                description = "What the portion is called. Echoed, nothing more.",
                example = "KIT-0417/a",
                pattern = ID,
                maxLength = 64)
        String id,

        @Schema(description = "What is cooked.") FoodChoice food,

        @Schema(
                description =
                        "Shape and size of the piece as stated, and how its pack lies. The time goes by the thickest point,"
                                + " not by the weight: `massG` only stands for a size that was not measured.")
        Geometry geometry,

        @Schema(
                description = "By how much thickness or diameter may differ from the stated one, to either side. The"
                        + " thickest piece decides the time, the thinnest the texture.",
                example = "3",
                minimum = "0",
                maximum = "50")
        @Unit("mm")
        @Nullable
        Double thicknessSpreadMm,

        @Schema(
                description =
                        "Thickness or diameter of pieces that were measured. The worst piece is the largest of: the stated"
                                + " size, the largest measured, and the limit above which, with a confidence of 95 %, no more"
                                + " than one piece in twenty lies (mean plus a factor for so many pieces times the standard"
                                + " deviation). The thinnest likewise.",
                example = "26.5",
                minimum = "3",
                maximum = "250")
        @Unit("mm")
        @Items(min = 5, max = 200)
        @Nullable
        List<Double> measuredMm,

        @Schema(description = "Temperature of the piece when it goes in.")
        CookPlanRequest.Start start,

        @Schema(description = "What else is in the bag.", defaultValue = "{}")
        CookPlanRequest.Pack pack)
        implements Checked {

    /** Plain names; none begins like a formula of a spreadsheet. */
    static final String ID = "[A-Za-z0-9][A-Za-z0-9 ._/#-]*";

    /** Copies the sizes. */
    public SheetPortion {
        measuredMm = measuredMm == null ? null : List.copyOf(measuredMm);
    }

    @Override
    public void check(String at, Faults faults) {
        if (thicknessSpreadMm != null) {
            Exclusion.of("thicknessSpreadMm", at, faults).excludes("measuredMm", measuredMm);
        }
    }
}
