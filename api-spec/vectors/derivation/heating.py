#!/usr/bin/env python3
"""Times and temperatures while food heats, by an own solver and by exact series. Prints what the vectors expect.

The film coefficients are inputs of the parameter set 2026.1: packed food in circulated water 200, in still water 100,
pouches that touch or lie in a pile 150 W/(m2 K). Conductivity of the composition times 0.93 (see thermal.py).
"""

import json

import numpy as np

import thermal
from lethality import LISTERIA_UK, SALMONELLA_MEAT
from thermal import Food, bracket, passes, refined

PUMPED, STILL = 200.0, 100.0
LEAN_BEEF = {"water": 72.0, "protein": 21.0, "fat": 6.0, "ash": 1.0}
LEAN_FISH = {"water": 79.0, "protein": 18.0, "fat": 1.5, "ash": 1.5}
FAT_PORK = {"water": 60.0, "protein": 18.0, "fat": 21.0, "ash": 1.0}
CHICKEN = {"water": 74.0, "protein": 22.5, "fat": 2.5, "ash": 1.0}
ROOT = {"water": 88.0, "protein": 1.0, "fat": 0.0, "carbohydrate": 7.0, "fibre": 3.0, "ash": 1.0}
# USDA National Nutrient Database SR28, no. 10066, top loin of pork, lean, raw.
PORK_LOIN = {"water": 72.93, "protein": 22.41, "fat": 3.42, "ash": 1.01}

FAT_CHICKEN = {"water": 66.0, "protein": 20.0, "fat": 13.0, "ash": 1.0}

# FSIS-GD-2021-14 Table 3, chicken of 12 % fat: minutes at 136 to 151 F.
CHICKEN_12 = [81.4, 65.5, 52.9, 43.0, 35.0, 28.7, 23.5, 19.3, 15.9, 13.0, 10.6, 8.6, 6.8, 5.4, 4.2, 3.1]


def hot(food, shape, size_mm, start_c, bath_c, film, level_c, seconds, cells=24):
    """Seconds until the core has passed a level, and by how much two meshes differ."""
    return refined(
        lambda n: thermal.run(food, shape, size_mm / 1000.0, start_c, bath_c, film, seconds, n),
        cells,
        lambda t, x: passes(t, x, level_c),
    )


def killed_at(times, cores, line, log10):
    """When a line of D and z has delivered so many reductions, from its floor up, trapezoids [s]."""
    d, reference, z, floor = line
    rate = np.where(cores >= floor, 10.0 ** ((cores - reference) / z) / d, 0.0)
    total = np.concatenate([[0.0], np.cumsum(0.5 * (rate[1:] + rate[:-1]) * np.diff(times))])
    return float(np.interp(log10, total, times)) if total[-1] >= log10 else float("inf")


def core_at(food, shape, size_mm, start_c, bath_c, film, seconds, cells=24):
    return refined(
        lambda n: thermal.run(food, shape, size_mm / 1000.0, start_c, bath_c, film, seconds, n),
        cells,
        lambda t, x: float(x[-1]),
    )


def expected():
    hot_through, safe_late, warm_up = "/times/hotThrough/nominalS", "/times/safe/lateS", "/safety/warmUpS"
    beef, fish, pork = Food(LEAN_BEEF), Food(LEAN_FISH), Food(FAT_PORK)
    chicken, root, loin = Food(CHICKEN), Food(ROOT, freezing_c=-1.0), Food(PORK_LOIN)

    def times(name, value, apart):
        yield name, hot_through, {"value": value}, apart

    yield from times("cook-plan-slab-of-lean-beef-30-mm", *hot(beef, "slab", 30, 5, 60, PUMPED, 59.5, 9000))
    yield from times("cook-plan-slab-of-pork-loin-45-mm", *hot(loin, "slab", 45, 4, 60, PUMPED, 59.5, 16000))
    yield from times("cook-plan-thin-fillet-of-fish-12-mm", *hot(fish, "slab", 12, 3, 50, PUMPED, 49.5, 3600))
    yield from times("cook-plan-thick-slab-of-fat-pork-80-mm", *hot(pork, "slab", 80, 4, 65, PUMPED, 64.5, 40000))
    yield from times("cook-plan-slab-in-still-water", *hot(beef, "slab", 30, 5, 60, STILL, 59.5, 9000))
    yield from times("cook-plan-core-wanted-cooler-than-the-bath", *hot(beef, "slab", 40, 5, 65, PUMPED, 53.5, 12000))
    yield from times("cook-plan-within-two-kelvin", *hot(beef, "slab", 40, 5, 60, PUMPED, 58.0, 12000))
    yield from times("cook-plan-long-cylinder-40-mm", *hot(pork, "cylinder", 40, 4, 65, PUMPED, 64.5, 9000))
    yield from times("cook-plan-sphere-of-root-44-mm", *hot(root, "sphere", 44, 10, 88, PUMPED, 87.5, 9000))
    yield from times("cook-plan-at-2500-m-as-at-the-sea", *hot(chicken, "slab", 35, 4, 64, PUMPED, 63.5, 12000))
    yield from times("cook-plan-frozen-slab-25-mm", *hot(beef, "slab", 25, -18, 55, PUMPED, 54.5, 9000))
    yield from times("cook-plan-frozen-slab-50-mm", *hot(beef, "slab", 50, -18, 56, PUMPED, 55.5, 30000))
    yield from times("cook-plan-frozen-fish-20-mm", *hot(fish, "slab", 20, -20, 52, PUMPED, 51.5, 7000))

    for name, food, shape, size, start, bath in [
        ("cook-plan-series-bracket-slab-20-mm", beef, "slab", 20, 5, 62),
        ("cook-plan-series-bracket-slab-60-mm", chicken, "slab", 60, 5, 62),
        ("cook-plan-series-bracket-cylinder-60-mm", beef, "cylinder", 60, 5, 62),
        ("cook-plan-series-bracket-sphere-60-mm", root, "sphere", 60, 10, 90),
    ]:
        fast, slow = bracket(food, shape, size / 1000.0, start, bath, PUMPED, bath - 0.5)
        yield name, hot_through, {"min": fast, "max": slow}, 0.0
        yield name, "/times/hotThrough/lateS", {"min": fast}, 0.0

    box = [0.05, 0.08, 0.12]
    for name, level in [("cook-plan-brick-50-80-120-mm", 61.5), ("cook-plan-brick-to-within-three-kelvin", 59.0)]:
        value, apart = refined(
            lambda n: thermal.run_box(pork, box, 4.0, 62.0, PUMPED, 10000.0, n), 8, lambda t, x: passes(t, x, level)
        )
        yield name, hot_through, {"value": value}, apart
    value, apart = refined(
        lambda n: thermal.run_can(beef, 0.08, 0.10, 4.0, 60.0, PUMPED, 14000.0, n), 12, lambda t, x: passes(t, x, 59.5)
    )
    yield "cook-plan-short-cylinder-80-100-mm", hot_through, {"value": value}, apart

    # The kill of the published line or table along the own core: no safe time may come before it.
    t, x = thermal.run(beef, "slab", 0.025, 5.0, 57.0, PUMPED, 14000.0, 48)
    at = killed_at(t, x, SALMONELLA_MEAT, 6.5)
    yield "cook-plan-burger-at-57-is-not-safe-before", safe_late, {"min": at}, 0.0
    yield "cook-plan-burger-at-57-is-not-safe-before", "/times/safe/nominalS", {"min": at}, 0.0
    yield "cook-plan-burger-at-57-is-not-safe-before", warm_up, {"min": passes(t, x, 54.444) - passes(t, x, 10.0)}, 0.0
    t, x = thermal.run(Food(FAT_CHICKEN), "slab", 0.025, 5.0, 65.0, PUMPED, 9000.0, 48)
    kelvin = (np.array(range(136, 152)) - 32.0) / 1.8
    log_minutes = np.log(np.array(CHICKEN_12))
    rate = np.where(x < kelvin[0], 0.0, 7.0 / (60.0 * np.exp(np.interp(x, kelvin, log_minutes))))
    total = np.concatenate([[0.0], np.cumsum(0.5 * (rate[1:] + rate[:-1]) * np.diff(t))])
    yield "cook-plan-chicken-at-65-is-not-safe-before", safe_late, {"min": float(np.interp(7.0, total, t))}, 0.0
    t, x = thermal.run(chicken, "slab", 0.038, 5.0, 62.5, PUMPED, 20000.0, 48)
    at = killed_at(t, x, LISTERIA_UK, 6.0)
    yield "cook-plan-listeria-at-62-5-is-not-dead-before", safe_late, {"min": at}, 0.0
    t, x = thermal.run(beef, "cylinder", 0.15, 5.0, 55.0, PUMPED, 60000.0, 30)
    yield "cook-plan-rolled-roast-150-mm-warms-up-too-slowly", warm_up, {"min": passes(t, x, 54.444) - passes(t, x, 10.0)}, 0.0

    # Food put into cold water that the heater warms together with it.
    t, x, w = thermal.run_with_water(
        chicken, 0.030, 5.0, PUMPED, 12000.0, 24, 1.0, 12.0, 1000.0, 15.0, 60.0, 3.0, 21.0
    )
    yield "cook-plan-from-cold-water-12-litres", hot_through, {"value": passes(t, x, 59.5)}, 0.0
    yield "cook-plan-from-cold-water-12-litres", "/bath/backAtS", {"value": passes(t, w, 59.9)}, 0.0

    # Two packs of half a kilogram in 8 litres that are hot already: how far the water sags.
    t, x, w = thermal.run_with_water(
        chicken, 0.030, 5.0, PUMPED, 12000.0, 24, 1.0, 8.0, 400.0, 62.0, 62.0, 3.0, 21.0
    )
    yield "load-plan-two-packs-sag-the-water", "/phases/0/water/lowestC", {"max": float(w.min())}, 0.0
    yield "load-plan-two-packs-sag-the-water", "/items/0/times/hotThrough/nominalS", {"value": passes(t, x, 61.5)}, 0.0

    # State of a cook under way.
    core, apart = core_at(beef, "slab", 40, 5, 60, PUMPED, 3600.0)
    yield "replan-undisturbed-core-after-an-hour", "/state/coreC", {"value": core}, apart
    value, apart = hot(beef, "slab", 40, 5, 60, PUMPED, 59.5, 16000)
    yield "replan-undisturbed-core-after-an-hour", hot_through, {"value": value}, apart
    steps = lambda s: 60.0 if s < 1800.0 else 56.0
    core, apart = refined(
        lambda n: thermal.run(beef, "slab", 0.04, 5.0, steps, PUMPED, 3600.0, n), 24, lambda t, x: float(x[-1])
    )
    yield "replan-setpoint-lowered-after-half-an-hour", "/state/coreC", {"value": core}, apart
    core, apart = core_at(beef, "slab", 25, -18, 58, PUMPED, 1800.0)
    yield "replan-frozen-core-after-half-an-hour", "/state/coreC", {"value": core}, apart

    # Points of a window, a sheet and a table.
    for name, pointer, setpoint in [
        ("process-window-hot-through-of-own-solver", "/setpoints/0/hotThrough/nominalS", 58),
        ("process-window-hot-through-of-own-solver", "/setpoints/2/hotThrough/nominalS", 62),
    ]:
        value, apart = hot(beef, "slab", 40, 5, setpoint, PUMPED, setpoint - 0.5, 16000)
        yield name, pointer, {"value": value}, apart
    fast, _ = bracket(loin, "slab", 0.032, 4.0, 62.0, PUMPED, 61.5)
    yield "portion-sheet-card-is-no-quicker-than-the-series", "/bands/0/cards/0/hotThroughLateS", {"min": fast}, 0.0
    t, x = thermal.run(loin, "slab", 0.032, 4.0, 62.0, PUMPED, 9000.0, 48)
    at = killed_at(t, x, SALMONELLA_MEAT, 6.5)
    yield "portion-sheet-card-is-no-quicker-than-the-series", "/bands/0/cards/0/safeLateS", {"min": at}, 0.0
    yield "portion-sheet-card-is-no-quicker-than-the-series", "/bands/0/cards/0/timeS", {"min": at}, 0.0
    t, x = thermal.run(beef, "slab", 0.040, 5.0, 58.0, PUMPED, 16000.0, 48)
    at = killed_at(t, x, SALMONELLA_MEAT, 6.5)
    yield "process-window-hot-through-of-own-solver", "/setpoints/0/safe/lateS", {"min": at}, 0.0
    yield "process-window-hot-through-of-own-solver", "/setpoints/0/takeOut/earliestS", {"min": at}, 0.0
    for i, (mm, c) in enumerate([(20, 60), (20, 64), (30, 60), (30, 64)]):
        fast, _ = bracket(chicken, "slab", mm / 1000.0, 4.0, c, PUMPED, c - 0.5)
        yield "lookup-table-no-time-before-the-series", f"/columns/0/timesS/{i}", {"min": fast}, 0.0
    for i, mm in enumerate([20, 30]):
        t, x = thermal.run(beef, "slab", mm / 1000.0, 4.0, 60.0, PUMPED, 12000.0, 48)
        at = killed_at(t, x, SALMONELLA_MEAT, 6.5)
        yield "lookup-table-no-safe-time-before-the-kill", f"/columns/0/timesS/{i}", {"min": at}, 0.0
    fast, _ = bracket(beef, "cylinder", 0.040, 4.0, 60.0, PUMPED, 59.5)
    yield "lookup-table-of-cylinders", "/columns/0/timesS/0", {"min": fast}, 0.0
    fast, _ = bracket(beef, "cylinder", 0.050, 4.0, 60.0, PUMPED, 59.5)
    yield "lookup-table-of-cylinders", "/columns/0/timesS/1", {"min": fast}, 0.0


if __name__ == "__main__":
    for vector, pointer, bounds, apart in expected():
        rounded = {key: round(number, 2) for key, number in bounds.items()}
        print(json.dumps({"id": vector, "pointer": pointer, **rounded, "meshesApart": round(apart, 3)}), flush=True)
