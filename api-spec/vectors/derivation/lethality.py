#!/usr/bin/env python3
"""Kill along a log of straight lines, in closed form, and growth by quadrature. Prints what the vectors expect.

D(T) = Dref 10^((Tref - T)/z); L = integral of dt / D. Over a straight piece of slope r:
L = z / (r ln 10 Dref) (10^((T2 - Tref)/z) - 10^((T1 - Tref)/z)), the part above the floor alone.
"""

import json
import math

# Seconds, Celsius, kelvin; floor: no kill counts below it.
SALMONELLA_MEAT = (60.0 * 112.0 / 6.5, 54.0 + 4.0 / 9.0, 50.0 / 9.0, 54.0 + 4.0 / 9.0)
LISTERIA_UK = (20.0, 70.0, 7.5, 60.0)
E_COLI_UK = (20.0, 70.0, 6.0, 60.0)
SPORES_UK = (100.0, 90.0, 9.0, 80.0)
SPORES_UK_ABOVE_90 = (100.0, 90.0, 10.0, 90.0)


def kill(log, line):
    """Decimal reductions over a log [(s, C), ...] that never falls."""
    d, reference, z, floor = line
    total = 0.0
    for (t1, c1), (t2, c2) in zip(log, log[1:]):
        if c2 < floor:
            continue
        if c2 == c1:
            total += (t2 - t1) / (d * 10.0 ** ((reference - c1) / z))
            continue
        slope = (c2 - c1) / (t2 - t1)
        begin = max(c1, floor)
        total += z / (slope * math.log(10.0) * d) * (10.0 ** ((c2 - reference) / z) - 10.0 ** ((begin - reference) / z))
    return total


def grown_perfringens(log, h0):
    """Growth of C. perfringens in cooked beef [log10]: Juneja, Marks, Huang & Thippareddi 2011.

    mu = 0.0025 (T - 10.15)^2 (1 - exp(0.238 (T - 53.0))) per hour, in ln units; growth begins when its integral has
    reached h0 (2.728 for spores after a cook, 0 for an upper bound without lag). Midpoint rule, 0.5 s.
    """
    dose, grown = 0.0, 0.0
    for (t1, c1), (t2, c2) in zip(log, log[1:]):
        n = int(math.ceil((t2 - t1) / 0.5))
        dt = (t2 - t1) / n
        for i in range(n):
            t = c1 + (c2 - c1) * (i + 0.5) / n
            if 10.15 < t < 53.0:
                mu = 0.0025 * (t - 10.15) ** 2 * (1.0 - math.exp(0.238 * (t - 53.0))) / 3600.0
                dose += mu * dt
                if dose > h0:
                    grown += mu * dt / math.log(10.0)
    return grown


def minutes(*corners):
    return [(60.0 * corners[i], corners[i + 1]) for i in range(0, len(corners), 2)]


RAMP = minutes(0, 20, 20, 30, 40, 40, 60, 50, 80, 60)
RAMP_AND_HOLD = RAMP + minutes(90, 60)
SLOPE_TO_LISTERIA = minutes(0, 55, 15, 62.5, 20, 65)
STAIRS = minutes(0, 61, 10, 61, 12, 63, 17, 63, 19, 65, 22, 65)
COOLING = minutes(0, 54.444, 90, 26.667, 390, 4.444)


def expected():
    yield "log-review-ramp-at-half-a-kelvin-a-minute", "/limits/0/measuredLog10", kill(RAMP, SALMONELLA_MEAT)
    yield "log-review-ramp-and-ten-minutes-at-sixty", "/limits/0/measuredLog10", kill(RAMP_AND_HOLD, SALMONELLA_MEAT)
    yield "log-review-listeria-70-c-2-min-is-6-log", "/limits/0/measuredLog10", kill(minutes(0, 70, 2, 70), LISTERIA_UK)
    yield "log-review-listeria-60-c-45-min-is-6-3-log", "/limits/0/measuredLog10", kill(minutes(0, 60, 45, 60), LISTERIA_UK)
    yield "log-review-listeria-65-c-10-min-is-6-5-log", "/limits/0/measuredLog10", kill(minutes(0, 65, 10, 65), LISTERIA_UK)
    yield "log-review-listeria-75-c-half-a-minute-is-7-log", "/limits/0/measuredLog10", kill(minutes(0, 75, 0.5, 75), LISTERIA_UK)
    yield "log-review-listeria-along-a-slope", "/limits/0/measuredLog10", kill(SLOPE_TO_LISTERIA, LISTERIA_UK)
    yield "log-review-listeria-up-the-stairs", "/limits/0/measuredLog10", kill(STAIRS, LISTERIA_UK)
    yield "log-review-e-coli-65-c-14-min-burger", "/limits/1/measuredLog10", kill(minutes(0, 65, 14, 65), E_COLI_UK)
    yield "log-review-spores-85-c-36-min", "/limits/1/measuredLog10", kill(minutes(0, 85, 36, 85), SPORES_UK)
    yield "log-review-spores-95-c-3-2-min", "/limits/1/measuredLog10", kill(minutes(0, 95, 3.2, 95), SPORES_UK_ABOVE_90)
    yield "log-review-probe-error-of-one-kelvin-is-taken-off", "/limits/0/measuredLog10", kill(minutes(0, 60, 45, 60), LISTERIA_UK)
    yield "log-review-perfringens-in-the-cooling-option-of-fsis", "/growth/0/growthLog10", grown_perfringens(COOLING, 2.728)


if __name__ == "__main__":
    for vector, pointer, value in expected():
        print(json.dumps({"id": vector, "pointer": pointer, "value": round(value, 6)}))
