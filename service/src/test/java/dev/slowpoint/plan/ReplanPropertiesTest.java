package dev.slowpoint.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.Replan.Decision;
import dev.slowpoint.plan.SoFar.CoreReading;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.plan.SoFar.Place;
import dev.slowpoint.safety.Verdict;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What must hold for any cook under way: decision, verdict, take-out and warnings tell one story; random, with a fixed seed. */
class ReplanPropertiesTest {

    private static final int CASES = 600;
    private static final List<String> FOODS =
            List.of("pork-loin", "chicken-breast", "beef-sirloin", "salmon-farmed", "lamb-leg", "duck-breast");

    private final SplittableRandom random = new SplittableRandom(20260907);

    private double between(double low, double high) {
        return Math.rint(10.0 * random.nextDouble(low, high)) / 10.0;
    }

    private Kitchen kitchen() {
        Kitchen kitchen = Kitchen.of(
                FOODS.get(random.nextInt(FOODS.size())),
                new Slab(between(15.0, 80.0) / 1000.0),
                between(1.0, 10.0),
                between(55.0, 70.0));
        return random.nextInt(8) == 0 ? kitchen.servedAfter(between(1800.0, 30_000.0)) : kitchen;
    }

    private SoFar soFar(double bathC) {
        double elapsed = between(600.0, random.nextBoolean() ? 12_000.0 : 60_000.0);
        List<Event> events = new ArrayList<>();
        List<CoreReading> readings = new ArrayList<>();
        double from = between(0.0, elapsed);
        OptionalDouble began = random.nextInt(3) == 0 ? OptionalDouble.empty() : OptionalDouble.of(from);
        OptionalDouble found = began.isEmpty() || random.nextBoolean()
                ? OptionalDouble.of(between(bathC - 18.0, bathC - 0.5))
                : OptionalDouble.empty();
        switch (random.nextInt(7)) {
            case 0, 1 ->
                events.add(new SoFar.HeaterOff(began, random.nextBoolean() ? elapsed : between(from, elapsed), found));
            case 2 -> events.add(new SoFar.SetpointChanged(from, between(40.0, 72.0)));
            case 3 ->
                events.add(new SoFar.OutOfBath(
                        from,
                        between(from, elapsed),
                        random.nextBoolean() ? Place.ROOM : Place.FRIDGE,
                        OptionalDouble.empty()));
            default -> {
                int count = 1 + random.nextInt(3);
                double coreC = between(10.0, bathC);
                for (int i = 1; i <= count; i++) {
                    readings.add(new CoreReading(
                            elapsed * i / count,
                            bathC - (bathC - coreC) / i,
                            random.nextBoolean() ? OptionalDouble.of(0.5) : OptionalDouble.empty()));
                }
            }
        }
        return new SoFar(elapsed, Optional.empty(), events, readings, OptionalDouble.empty());
    }

    private static Replan replan(CookTask task, SoFar soFar) {
        return Kitchen.PLANNER.replan(new ReplanTask(task, soFar), EnumSet.noneOf(Detail.class));
    }

    private static boolean danger(Replan replan) {
        return replan.plan().notices().stream()
                .map(n -> Objects.requireNonNull(
                        Kitchen.PLANNER.knowledge().notices().get(n.code())))
                .anyMatch(rule -> rule.severity() == NoticeRule.Severity.DANGER);
    }

    @Test
    void decision_verdict_take_out_and_warnings_tell_one_story() {
        Map<Decision, Integer> seen = new EnumMap<>(Decision.class);
        int held = 0;
        int unmetBesideTakeOut = 0;
        int comingOnly = 0;
        for (int i = 0; i < CASES; i++) {
            CookTask task = kitchen().task();
            SoFar soFar = soFar(task.bath().setpointC().orElseThrow());
            Replan replan;
            try {
                replan = replan(task, soFar);
            } catch (Refusal refusal) {
                continue;
            }
            String what = "case " + i + " " + task.food().id() + " " + task.body() + " " + task.bath() + " " + soFar
                    + " gives " + replan.decision() + " " + replan.reason() + " "
                    + replan.plan().takeOut() + " "
                    + replan.plan().safety().verdict();
            seen.merge(replan.decision(), 1, Integer::sum);
            Verdict verdict = replan.plan().safety().verdict();
            boolean lost = replan.decision() == Decision.DISCARD || replan.decision() == Decision.GET_DECISION;
            boolean told = !lost && replan.plan().takeOut().obstacle().isEmpty();
            if (verdict == Verdict.NOT_MET) {
                assertThat(replan.reason()).as(what).isPresent();
                assertThat(danger(replan)).as(what).isTrue();
                assertThat(replan.plan().notices())
                        .as(what)
                        .extracting(Notice::code)
                        .doesNotContain(NoticeCode.SURFACE_ONLY);
                unmetBesideTakeOut += told ? 1 : 0;
            }
            if (lost) {
                assertThat(verdict).as(what).isIn(Verdict.NOT_MET, Verdict.NOT_APPLICABLE);
                assertThat(replan.reason()).as(what).isPresent();
                comingOnly += replan.plan()
                                .takeOut()
                                .obstacle()
                                .filter(o -> o == CookPlan.Obstacle.SPORES_GROW_FIRST)
                                .isPresent()
                        ? 1
                        : 0;
            } else if (replan.decision() == Decision.CHANGE_PLAN) {
                assertThat(replan.reason()).as(what).isPresent();
            } else {
                assertThat(told).as(what).isTrue();
                CookPlan.TakeOut takeOut = replan.plan().takeOut();
                assertThat(takeOut.earliest()).as(what).isLessThanOrEqualTo(takeOut.best());
                assertThat(takeOut.best()).as(what).isLessThanOrEqualTo(takeOut.latest());
                assertThat(replan.decision() == Decision.READY)
                        .as(what)
                        .isEqualTo(takeOut.earliest() <= soFar.elapsed());
            }
            if (!soFar.readings().isEmpty()) {
                Replan unread = replan(
                        task,
                        new SoFar(soFar.elapsed(), Optional.empty(), List.of(), List.of(), OptionalDouble.empty()));
                if (unread.plan().times().safe().isPresent()) {
                    assertThat(replan.plan().times().safe().orElseThrow().late())
                            .as(what)
                            .isGreaterThanOrEqualTo(
                                    unread.plan().times().safe().orElseThrow().late());
                }
                if (told && unread.plan().takeOut().obstacle().isEmpty()) {
                    assertThat(replan.plan().takeOut().best())
                            .as(what)
                            .isGreaterThanOrEqualTo(unread.plan().takeOut().best());
                    held++;
                }
            }
        }
        System.out.printf(
                "replans: %s, readings held against the plan as told %d, not met beside a moment %d, spores first %d%n",
                seen, held, unmetBesideTakeOut, comingOnly);
        // What is asserted above must have been there to fail.
        assertThat(seen).containsOnlyKeys(Decision.values());
        assertThat(seen.values().stream().mapToInt(Integer::intValue).sum()).isGreaterThan(CASES / 2);
        assertThat(held).isGreaterThan(20);
        assertThat(unmetBesideTakeOut).isPositive();
        assertThat(comingOnly).isPositive();
    }
}
