package dev.slowpoint.api;

import dev.slowpoint.api.CookPlanAnswer.Reason;
import dev.slowpoint.api.CookPlanAnswer.Warning;
import dev.slowpoint.api.PortionSheetAnswer.SheetBand;
import dev.slowpoint.api.PortionSheetAnswer.SheetCard;
import dev.slowpoint.api.PortionSheetAnswer.SheetPiece;
import dev.slowpoint.api.PortionSheetAnswer.SheetSafety;
import dev.slowpoint.food.Condition;
import dev.slowpoint.food.Food;
import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Egg;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.ShortCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.plan.Band;
import dev.slowpoint.plan.Card;
import dev.slowpoint.plan.CookTask;
import dev.slowpoint.plan.DisplayUnits;
import dev.slowpoint.plan.Knowledge;
import dev.slowpoint.plan.Notice;
import dev.slowpoint.plan.NoticeCode;
import dev.slowpoint.plan.Refusal;
import dev.slowpoint.safety.Finding;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Turns bands into cards: metres made millimetres, numbers made sentences. */
final class SheetTranslation {

    private static final double MM_PER_M = 1000.0;
    private static final double S_PER_DAY = 86_400.0;

    private final Knowledge knowledge;
    private final Sentences sentences;
    private final CardWords words;

    SheetTranslation(Knowledge knowledge, Sentences sentences, DisplayUnits units) {
        this.knowledge = knowledge;
        this.sentences = sentences;
        this.words = new CardWords(this.sentences, units);
    }

    /** What is wrong with a portion. */
    List<FaultEntry> faults(List<Fault> faults) {
        return faults.stream().map(fault -> FaultEntry.of(fault, sentences)).toList();
    }

    /** Why a portion cannot be planned. */
    FaultEntry fault(Refusal.Fault fault) {
        return FaultEntry.of(fault, sentences);
    }

    /** What always holds, for all cards. */
    List<Reason> cautions() {
        return new NoticeTranslation(
                        List.of(
                                new Notice(NoticeCode.KEEP_UNDER_WATER, List.of()),
                                new Notice(NoticeCode.ESTIMATE_NOT_GUARANTEE, List.of())),
                        knowledge.notices(),
                        sentences)
                .cautions();
    }

    /** A band under its number. */
    SheetBand band(int number, Band band) {
        Food food = band.place().slowest().food();
        Body body = band.place().slowest().body();
        String name = words.food(food) + ", "
                + words.sizes(band.place().from(), band.place().to());
        List<SheetCard> cards = new ArrayList<>();
        for (Band.Heating cook : band.cooks()) {
            cards.add(heating(name, band, cook));
        }
        band.cold().ifPresent(cold -> cards.add(cold(name, cold)));
        band.reheat().ifPresent(reheat -> cards.add(heating(name, band, reheat)));
        return new SheetBand(
                number,
                food.id().equals(Food.DESCRIBED) ? null : food.id(),
                Words.of(band.place().slowest().form()),
                Words.of(band.place().slowest().condition()),
                shape(body),
                MM_PER_M * Math.max(band.place().from(), 0.0),
                MM_PER_M * band.place().to(),
                body instanceof Brick brick ? Figures.bandMm(MM_PER_M * brick.width()) : null,
                length(body),
                band.setpointC(),
                cards);
    }

    private static String shape(Body body) {
        if (body instanceof Slab) {
            return Words.of(Geometry.Shape.SLAB);
        }
        if (body instanceof Brick) {
            return Words.of(Geometry.Shape.BRICK);
        }
        if (body instanceof LongCylinder || body instanceof ShortCylinder) {
            return Words.of(Geometry.Shape.CYLINDER);
        }
        return Words.of(body instanceof Sphere ? Geometry.Shape.SPHERE : Geometry.Shape.EGG);
    }

    private static @Nullable Double length(Body body) {
        if (body instanceof Brick brick) {
            return Figures.bandMm(MM_PER_M * brick.length());
        }
        if (body instanceof ShortCylinder cylinder) {
            return Figures.bandMm(MM_PER_M * Math.max(cylinder.length(), cylinder.diameter()));
        }
        return body instanceof Egg egg ? Figures.bandMm(MM_PER_M * egg.length()) : null;
    }

    private SheetCard heating(String name, Band band, Band.Heating heating) {
        Integer timeS = heating.time().isPresent()
                ? PlanTranslation.whole(Math.rint(heating.time().getAsDouble()))
                : null;
        return new SheetCard(
                Words.of(heating.card()),
                heating.startC(),
                timeS,
                heating.obstacle()
                        .map(o -> new Reason(o.name(), sentences.of(o)))
                        .orElse(null),
                heating.safe()
                        .map(s -> PlanTranslation.whole(Math.ceil(s.late())))
                        .orElse(null),
                PlanTranslation.whole(Math.ceil(heating.hotThrough().late())),
                PlanTranslation.whole(Math.floor(heating.latest())),
                heating.pastBest() > 0.0 ? PlanTranslation.up(heating.pastBest()) : null,
                safety(heating.safety()),
                piece(heating.worst()),
                heating.thinnest().map(SheetTranslation::piece).orElse(null),
                null,
                null,
                null,
                null,
                warnings(heating.notices()),
                words.say("CARD_TITLE_" + doing(band, heating.card()), name),
                steps(band, heating));
    }

    /** Food that was cooked before is only warmed up, from wherever it comes. */
    private static String doing(Band band, Card card) {
        return band.place().slowest().condition() == Condition.COOKED ? "warm_" + Words.of(card) : Words.of(card);
    }

    private List<String> steps(Band band, Band.Heating heating) {
        List<String> steps = new ArrayList<>();
        if (heating.time().isEmpty()) {
            steps.add(words.say("CARD_NO_TIME"));
            heating.obstacle().ifPresent(o -> steps.add(sentences.of(o)));
            return steps;
        }
        double time = heating.time().getAsDouble();
        steps.add(words.say("CARD_BATH", words.temperature(band.setpointC())));
        steps.add(words.say(heating.card() == Card.FROZEN ? "CARD_IN_FROZEN" : "CARD_IN"));
        steps.add(words.say("CARD_TIME", words.time(time)));
        if (heating.hotThrough().late() <= time) {
            steps.add(words.say("CARD_CHECK", words.atLeast(coreC(band))));
        }
        if (heating.pastBest() > 0.0) {
            steps.add(words.say("CARD_THIN_PAST_BEST"));
        }
        if (heating.safety().verdict() == Verdict.SURFACE_ONLY) {
            steps.add(words.say("CARD_SEAR"));
        }
        steps.add(words.say("CARD_NOT_THICKER", words.size(band.place().to())));
        if (heating.card() == Card.REHEAT) {
            steps.add(words.say("CARD_EAT_AT_ONCE"));
        }
        return steps;
    }

    /** What a core that is hot through has reached [C]. */
    private double coreC(Band band) {
        CookTask.Target target = band.place().slowest().target();
        return target.coreC().orElse(band.setpointC())
                - target.withinK().orElse(knowledge.defaults().withinK());
    }

    private SheetCard cold(String name, Band.Cold cold) {
        Integer timeS = cold.time().isPresent()
                ? PlanTranslation.whole(Math.rint(cold.time().getAsDouble()))
                : null;
        Double days = Double.isFinite(cold.longest()) ? cold.longest() / S_PER_DAY : null;
        return new SheetCard(
                Words.of(Card.CHILL_AND_KEEP),
                null,
                timeS,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                cold.storeC(),
                days,
                cold.cooling().rule(),
                cold.cooling().kept(),
                warnings(cold.notices().stream()
                        // The card itself says how cold and for how many days, which may be fewer than seven.
                        .filter(notice -> notice.code() != NoticeCode.KEEP_COLD_7_DAYS)
                        .toList()),
                words.say("CARD_TITLE_chillAndKeep", name),
                coldSteps(cold));
    }

    private List<String> coldSteps(Band.Cold cold) {
        List<String> steps = new ArrayList<>();
        boolean keeps = cold.longest() >= S_PER_DAY;
        if (cold.time().isEmpty() || !cold.cooling().kept() || !keeps) {
            steps.add(words.say("CARD_DO_NOT_KEEP"));
            return steps;
        }
        steps.add(words.say(
                "CARD_CHILL_" + Words.of(cold.medium()), words.time(cold.time().getAsDouble())));
        if (Double.isInfinite(cold.longest())) {
            steps.add(words.say("CARD_KEEP_FROZEN", words.atMost(cold.storeC())));
        } else {
            int days = (int) Math.floor(cold.longest() / S_PER_DAY);
            steps.add(words.say(days == 1 ? "CARD_KEEP_A_DAY" : "CARD_KEEP_DAYS", words.atMost(cold.storeC()), days));
        }
        return steps;
    }

    /** What is told of a plan, less what the sheet tells once for all. */
    private List<Warning> warnings(List<Notice> notices) {
        return new NoticeTranslation(notices, knowledge.notices(), sentences).warnings();
    }

    private static SheetSafety safety(Band.Safety safety) {
        Optional<Finding> governing = safety.governing();
        return new SheetSafety(
                Words.of(safety.verdict()),
                safety.rule().id(),
                governing.map(f -> Words.of(f.requirement().hazard())).orElse(null),
                governing.map(f -> f.requirement().target()).orElse(null),
                governing.map(Finding::deliveredLog10).orElse(null),
                governing.map(Finding::marginLog10).orElse(null),
                safety.band().map(Words::of).orElse(null),
                safety.marginS().isPresent()
                        ? PlanTranslation.whole(Math.floor(safety.marginS().getAsDouble()))
                        : null);
    }

    private static SheetPiece piece(Band.Piece piece) {
        OptionalDouble loss = piece.lossPercent();
        return new SheetPiece(
                MM_PER_M * piece.across(),
                piece.coreC(),
                piece.texture().map(Words::of).orElse("none"),
                loss.isPresent() ? loss.getAsDouble() : null);
    }
}
