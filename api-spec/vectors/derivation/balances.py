#!/usr/bin/env python3
"""Balances of heat, gas and pressure in closed form. Prints what the vectors expect."""

import json
import math

import thermal
from heating import CHICKEN


def boiling_point_c(altitude_m):
    """Boiling point of water: ICAO standard atmosphere, 1976, and the equation of Antoine (constants from memory)."""
    mm_mercury = 760.0 * (1.0 - 2.25577e-5 * altitude_m) ** 5.25588
    return 1730.63 / (8.07131 - math.log10(mm_mercury)) - 233.426


def mixed_c(litres, water_c, kilograms, heat, food_c):
    """Water and food brought to one temperature without a heater; water 0.99 kg/l and 4180 J/(kg K)."""
    water = litres * 0.99 * 4180.0
    return (water * water_c + kilograms * heat * food_c) / (water + kilograms * heat)


def expected():
    yield "cook-plan-above-the-boiling-point-at-2500-m", "/errors/0/maximum", {"max": boiling_point_c(2500.0) + 0.1}
    food = thermal.Food(CHICKEN)
    heat = food.sensible(30.0)
    yield "load-plan-two-packs-sag-the-water", "/phases/0/water/lowestC", {"min": mixed_c(8.0, 62.0, 1.0, heat, 5.0)}
    # 15 l from 57.2 to 53.9 C with tap water of 15 C: poured in on top, and some taken out first.
    yield "load-plan-hotter-first-then-cool-the-water", "/lowering/pourL", {"value": 15.0 * (57.2 - 53.9) / (53.9 - 15.0)}
    yield (
        "load-plan-hotter-first-then-cool-the-water",
        "/lowering/exchangeL",
        {"value": 15.0 * (57.2 - 53.9) / (57.2 - 15.0)},
    )


if __name__ == "__main__":
    for vector, pointer, bounds in expected():
        print(json.dumps({"id": vector, "pointer": pointer, **{k: round(v, 4) for k, v in bounds.items()}}))
