#!/usr/bin/env python3
"""Times while food cools, by an own solver and by exact series. Prints what the vectors expect.

Film coefficients are inputs of the parameter set 2026.1: ice water stirred by hand 300, still cold water 150, a
refrigerator with still air 7, a blast chiller 30 W/(m2 K).
"""

import json

import thermal
from heating import CHICKEN, LEAN_BEEF
from thermal import Food, passes, refined

ICE_WATER, COLD_WATER, FRIDGE, BLAST = 300.0, 150.0, 7.0, 30.0


def fallen(food, shape, size_mm, start_c, medium_c, film, level_c, seconds, cells=24):
    return refined(
        lambda n: thermal.run(food, shape, size_mm / 1000.0, start_c, medium_c, film, seconds, n),
        cells,
        lambda t, x: passes(t, x, level_c),
    )


def expected():
    beef, chicken = Food(LEAN_BEEF), Food(CHICKEN)
    first, second = "/cooling/levels/0/after/nominalS", "/cooling/levels/1/after/nominalS"
    for name, food, shape, size, start, medium, film, seconds in [
        ("chill-plan-slab-in-ice-water", beef, "slab", 40, 63, 1.0, ICE_WATER, 9000),
        ("chill-plan-slab-in-the-fridge", beef, "slab", 40, 63, 4.0, FRIDGE, 90000),
        ("chill-plan-slab-in-a-blast-chiller", chicken, "slab", 25, 65, 2.0, BLAST, 30000),
        ("chill-plan-slab-in-cold-water", chicken, "slab", 30, 65, 3.0, COLD_WATER, 20000),
        ("chill-plan-cylinder-in-ice-water", beef, "cylinder", 60, 60, 1.0, ICE_WATER, 15000),
        ("chill-plan-sphere-in-ice-water", beef, "sphere", 60, 60, 1.0, ICE_WATER, 12000),
    ]:
        cells = 40 if film < 10.0 else 24
        value, apart = fallen(food, shape, size, start, medium, film, 21.0, seconds, cells)
        yield name, first, {"value": value}, apart
        value, apart = fallen(food, shape, size, start, medium, film, 5.0, seconds, cells)
        yield name, second, {"value": value}, apart
    value, apart = fallen(beef, "slab", 40, 63, 1.0, ICE_WATER, 57.0, 9000)
    begin = value
    value, apart = fallen(beef, "slab", 40, 63, 1.0, ICE_WATER, 21.0, 9000)
    yield "chill-plan-slab-in-ice-water", "/cooling/limits/0/taken/nominalS", {"value": value - begin}, apart
    def chilled(cells):
        return thermal.run_box(beef, [0.05, 0.08, 0.12], 62.0, 1.0, ICE_WATER, 8000.0, cells)

    value, apart = refined(chilled, 8, lambda t, x: passes(t, x, 21.0))
    yield "chill-plan-brick-in-ice-water", first, {"value": value}, apart
    yield "chill-plan-brick-late-side-covers-the-truth", "/cooling/levels/0/after/lateS", {"min": value}, apart
    value, apart = refined(chilled, 8, lambda t, x: passes(t, x, 5.0))
    yield "chill-plan-brick-late-side-covers-the-truth", "/cooling/levels/1/after/lateS", {"min": value}, apart
    yield "chill-plan-brick-late-side-covers-the-truth", second, {"value": value}, apart


if __name__ == "__main__":
    for vector, pointer, bounds, apart in expected():
        rounded = {key: round(number, 2) for key, number in bounds.items()}
        print(json.dumps({"id": vector, "pointer": pointer, **rounded, "meshesApart": round(apart, 3)}), flush=True)
