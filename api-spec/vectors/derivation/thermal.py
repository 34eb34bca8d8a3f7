"""Heat in food: published properties, exact series, and a plain explicit finite-volume solver.

Nothing here knows the service. SI units; temperatures in degrees Celsius.

Properties: Choi & Okos 1986, component polynomials c0 + c1 T + c2 T^2 as printed in the ASHRAE Refrigeration Handbook
(water: specific heat 4176.2 above and 4081.7 J/(kg K) below 0 C, Ibarz & Barbosa-Canovas 2003). Ice: Miles, ideal
solution, bound water 0.4 kg per kg of protein (ASHRAE Refrigeration Handbook 2010). Latent heat 333.6 kJ/kg (Chen 1985).
Conductivity: volume-weighted mean when thawed; ice dispersed in the rest (Levy 1981, from memory) when frozen.
Freezing point of flesh: Chang & Tao 1981, 271.18 + 1.47 xw kelvin.
"""

import math

import numpy as np

# c0, c1, c2 of conductivity, density, specific heat (Choi & Okos 1986).
CONDUCTIVITY = {
    "water": (0.57109, 1.7625e-3, -6.7036e-6),
    "ice": (2.2196, -6.2489e-3, 1.0154e-4),
    "protein": (0.17881, 1.1958e-3, -2.7178e-6),
    "fat": (0.18071, -2.7604e-4, -1.7749e-7),
    "carbohydrate": (0.20141, 1.3874e-3, -4.3312e-6),
    "fibre": (0.18331, 1.2497e-3, -3.1683e-6),
    "ash": (0.32962, 1.4011e-3, -2.9069e-6),
}
DENSITY = {
    "water": (997.18, 3.1439e-3, -3.7574e-3),
    "ice": (916.89, -0.13071, 0.0),
    "protein": (1329.9, -0.5184, 0.0),
    "fat": (925.59, -0.41757, 0.0),
    "carbohydrate": (1599.1, -0.31046, 0.0),
    "fibre": (1311.5, -0.36589, 0.0),
    "ash": (2423.8, -0.28063, 0.0),
}
SPECIFIC_HEAT = {
    "water": (4176.2, -9.0864e-2, 5.4731e-3),
    "cold water": (4081.7, -5.3062, 0.99516),
    "ice": (2062.3, 6.0769, 0.0),
    "protein": (2008.2, 1.2089, -1.3129e-3),
    "fat": (1984.2, 1.4733, -4.8008e-3),
    "carbohydrate": (1548.8, 1.9625, -5.9399e-3),
    "fibre": (1845.9, 1.8306, -4.6509e-3),
    "ash": (1092.6, 1.8896, -3.6817e-3),
}
LATENT = 333600.0
# Model over measured diffusivity of meat and fish, mean of seven: 1.07 (Dickerson & Read 1975, secondary copy).
CONDUCTIVITY_FACTOR = 0.93


def poly(c, t):
    return c[0] + c[1] * t + c[2] * t * t


class Food:
    """Thermal properties of one composition (mass fractions, scaled to one)."""

    def __init__(self, composition, freezing_c=None, factor=CONDUCTIVITY_FACTOR):
        total = sum(composition.values())
        self.x = {name: share / total for name, share in composition.items()}
        self.factor = factor
        water = self.x["water"]
        self.freezing_c = 271.18 + 1.47 * water - 273.15 if freezing_c is None else freezing_c
        self.freezable = max(0.0, water - 0.4 * self.x.get("protein", 0.0))
        # One density for heat per volume, that of thawed food at 20 C: a body that does not swell keeps its energy.
        self.rho = 1.0 / sum(share / poly(DENSITY[name], 20.0) for name, share in self.x.items())
        fine = np.concatenate([np.arange(-40.0, -3.0, 0.02), np.arange(-3.0, 0.0, 0.0005), np.arange(0.0, 110.01, 0.05)])
        self.t = np.unique(np.concatenate([fine, [self.freezing_c]]))
        mid = 0.5 * (self.t[1:] + self.t[:-1])
        latent = np.diff(np.array([-LATENT * self.ice(t) for t in self.t]))
        sensible = np.array([self.sensible(t) for t in mid]) * np.diff(self.t)
        self.h = self.rho * np.concatenate([[0.0], np.cumsum(sensible + latent)])
        self.k = self.factor * np.array([self.bare_conductivity(t) for t in self.t])

    def ice(self, t):
        """Mass fraction of ice: Miles."""
        return self.freezable * (1.0 - self.freezing_c / t) if t < self.freezing_c else 0.0

    def parts(self, t):
        ice = self.ice(t)
        parts = dict(self.x)
        parts["water"] -= ice
        if ice > 0.0:
            parts["ice"] = ice
        return parts

    def sensible(self, t):
        heat = 0.0
        for name, share in self.parts(t).items():
            key = "cold water" if name == "water" and t < 0.0 else name
            heat += share * poly(SPECIFIC_HEAT[key], t)
        return heat

    def bare_conductivity(self, t):
        volume = {name: share / poly(DENSITY[name], t) for name, share in self.parts(t).items()}
        ice = volume.pop("ice", 0.0)
        rest = sum(volume.values())
        k2 = sum(v * poly(CONDUCTIVITY[name], t) for name, v in volume.items()) / rest
        if ice == 0.0:
            return k2
        share = ice / (ice + rest)
        lam = poly(CONDUCTIVITY["ice"], t) / k2
        sigma = (lam - 1.0) ** 2 / ((lam + 1.0) ** 2 + lam / 2.0)
        a = 2.0 / sigma - 1.0 + 2.0 * share
        f = 0.5 * (a - math.sqrt(a * a - 8.0 * share / sigma))
        return k2 * ((2.0 + lam) + 2.0 * (lam - 1.0) * f) / ((2.0 + lam) - (lam - 1.0) * f)

    def conductivity_at(self, t):
        return float(np.interp(t, self.t, self.k))

    def heat_per_volume(self, t):
        """Apparent heat capacity per volume, without freezing [J/(m3 K)]."""
        return self.rho * self.sensible(t)

    def diffusivity_at(self, t):
        return self.conductivity_at(t) / self.heat_per_volume(t)

    def fastest(self, low_c, high_c):
        """The largest diffusivity between two temperatures, which bounds the explicit step."""
        inside = (self.t >= low_c - 0.5) & (self.t <= high_c + 0.5)
        k, h, t = self.k[inside], self.h[inside], self.t[inside]
        return float(np.max(np.maximum(k[1:], k[:-1]) * np.diff(t) / np.diff(h)))


class Constant:
    """A material of constant properties."""

    def __init__(self, k, alpha):
        self.t = np.array([-60.0, 150.0])
        self.h = np.array([0.0, 210.0 * k / alpha])
        self.k = np.array([k, k])
        self.alpha = alpha

    def fastest(self, low_c, high_c):
        return self.alpha


def run(food, shape, size, start_c, bath, film, seconds, cells):
    """Core temperature over time of a slab, long cylinder or sphere; size is thickness or diameter [m].

    Explicit finite volumes of the enthalpy, second order in space; bath is a temperature or a function of time.
    Returns times [s] and core temperatures [C].
    """
    power = {"slab": 0, "cylinder": 1, "sphere": 2}[shape]
    half = 0.5 * size
    dx = half / cells
    faces = np.linspace(0.0, half, cells + 1)
    area = faces**power if power else np.ones(cells + 1)
    volume = np.diff(faces ** (power + 1)) / (power + 1)
    water = bath if callable(bath) else (lambda _t: bath)
    low, high = min(start_c, water(0.0), water(seconds)), max(start_c, water(0.0), water(seconds))
    dt = 0.30 * dx * dx / food.fastest(low, high)
    steps = int(math.ceil(seconds / dt))
    dt = seconds / steps
    h = np.full(cells, float(np.interp(start_c, food.t, food.h)))
    times, cores = [0.0], [start_c]
    every = max(1, int(2.0 / dt))
    inner = area[1:-1] / dx
    for n in range(steps):
        t = np.interp(h, food.h, food.t)
        k = np.interp(t, food.t, food.k)
        flow = np.empty(cells + 1)
        flow[0] = 0.0
        flow[1:-1] = inner * (2.0 * k[1:] * k[:-1] / (k[1:] + k[:-1])) * (t[1:] - t[:-1])
        flow[-1] = area[-1] * (water((n + 0.5) * dt) - t[-1]) / (1.0 / film + 0.5 * dx / k[-1])
        h = h + dt * np.diff(flow) / volume
        if n % every == 0 or n == steps - 1:
            t = np.interp(h[:2], food.h, food.t)
            times.append((n + 1) * dt)
            cores.append((9.0 * t[0] - t[1]) / 8.0)
    return np.array(times), np.array(cores)


def run_box(food, sizes, start_c, medium_c, film, seconds, cells):
    """Core temperature of a brick, one octant of it, by the same scheme in three dimensions. Sizes in metres."""
    half = [0.5 * s for s in sizes]
    n = [max(cells, int(round(cells * min(2.0, x / min(half))))) for x in half]
    d = [x / c for x, c in zip(half, n)]
    dt = 0.9 / (2.0 * food.fastest(min(start_c, medium_c), max(start_c, medium_c)) * sum(1.0 / x**2 for x in d))
    steps = int(math.ceil(seconds / dt))
    dt = seconds / steps
    h = np.full(n, float(np.interp(start_c, food.t, food.h)))
    times, cores = [0.0], [start_c]
    every = max(1, int(2.0 / dt))
    for step in range(steps):
        t = np.interp(h, food.h, food.t)
        k = np.interp(t, food.t, food.k)
        rate = np.zeros_like(h)
        for axis in range(3):
            a = [slice(None)] * 3
            b = [slice(None)] * 3
            a[axis], b[axis] = slice(1, None), slice(None, -1)
            a, b = tuple(a), tuple(b)
            flow = 2.0 * k[a] * k[b] / (k[a] + k[b]) * (t[a] - t[b]) / d[axis] ** 2
            rate[b] += flow
            rate[a] -= flow
            edge = [slice(None)] * 3
            edge[axis] = -1
            edge = tuple(edge)
            rate[edge] += (medium_c - t[edge]) / (1.0 / film + 0.5 * d[axis] / k[edge]) / d[axis]
        h = h + dt * rate
        if step % every == 0 or step == steps - 1:
            corner = np.interp(h[:2, :2, :2], food.h, food.t)
            w = np.array([9.0 / 8.0, -1.0 / 8.0])
            times.append((step + 1) * dt)
            cores.append(float(np.einsum("i,j,k,ijk", w, w, w, corner)))
    return np.array(times), np.array(cores)


def run_can(food, diameter, length, start_c, medium_c, film, seconds, cells):
    """Core temperature of a cylinder with two ends, by the same scheme in radius and height."""
    radius, half = 0.5 * diameter, 0.5 * length
    nr, nz = cells, max(cells, int(round(cells * min(2.0, half / radius))))
    dr, dz = radius / nr, half / nz
    rf = np.linspace(0.0, radius, nr + 1)
    ring = np.diff(rf**2) / 2.0
    dt = 0.9 / (2.0 * food.fastest(min(start_c, medium_c), max(start_c, medium_c)) * (2.0 / dr**2 + 1.0 / dz**2))
    steps = int(math.ceil(seconds / dt))
    dt = seconds / steps
    h = np.full((nr, nz), float(np.interp(start_c, food.t, food.h)))
    times, cores = [0.0], [start_c]
    every = max(1, int(2.0 / dt))
    for step in range(steps):
        t = np.interp(h, food.h, food.t)
        k = np.interp(t, food.t, food.k)
        fr = np.zeros((nr + 1, nz))
        fr[1:-1] = rf[1:-1, None] * (2.0 * k[1:] * k[:-1] / (k[1:] + k[:-1])) * (t[1:] - t[:-1]) / dr
        fr[-1] = radius * (medium_c - t[-1]) / (1.0 / film + 0.5 * dr / k[-1])
        fz = np.zeros((nr, nz + 1))
        fz[:, 1:-1] = (2.0 * k[:, 1:] * k[:, :-1] / (k[:, 1:] + k[:, :-1])) * (t[:, 1:] - t[:, :-1]) / dz
        fz[:, -1] = (medium_c - t[:, -1]) / (1.0 / film + 0.5 * dz / k[:, -1])
        h = h + dt * (np.diff(fr, axis=0) / ring[:, None] + np.diff(fz, axis=1) / dz)
        if step % every == 0 or step == steps - 1:
            corner = np.interp(h[:2, :2], food.h, food.t)
            w = np.array([9.0 / 8.0, -1.0 / 8.0])
            times.append((step + 1) * dt)
            cores.append(float(w @ corner @ w))
    return np.array(times), np.array(cores)


def passes(times, cores, level_c):
    """The first time the core passes a level, either way, between two samples on a straight line [s]."""
    above = cores >= level_c
    changed = np.nonzero(above != above[0])[0]
    if changed.size == 0:
        return math.inf
    i = changed[0]
    share = (level_c - cores[i - 1]) / (cores[i] - cores[i - 1])
    return float(times[i - 1] + share * (times[i] - times[i - 1]))


def refined(solve, cells, read):
    """A figure from a mesh and one twice as fine, extrapolated (second order), and how far the two lie apart."""
    coarse, fine = read(*solve(cells)), read(*solve(2 * cells))
    return fine + (fine - coarse) / 3.0, abs(fine - coarse)


# ---- exact series for constant properties (Carslaw & Jaeger 1959; Heisler 1947). The books were not at hand: the equations
# are the usual ones, and the finite volumes above, at constant properties, agree with them to 1 part in 100 000 ----


def bessel(order, x):
    """J0 or J1 by its integral, Simpson's rule: ample for arguments below 100."""
    theta = np.linspace(0.0, math.pi, 2001)
    f = np.cos(order * theta - x * np.sin(theta))
    w = np.ones(2001)
    w[1:-1:2], w[2:-1:2] = 4.0, 2.0
    return float(np.sum(w * f) * (theta[1] - theta[0]) / 3.0 / math.pi)


def roots(f, count, gap):
    """The first roots of f, one in each interval of the length gap, poles skipped by bisection on a sign change."""
    found = []
    x = 1e-9
    while len(found) < count:
        a, b = x, x + gap
        fa, fb = f(a), f(b)
        if fa * fb < 0.0:
            for _ in range(80):
                m = 0.5 * (a + b)
                if f(a) * f(m) <= 0.0:
                    b = m
                else:
                    a = m
            found.append(0.5 * (a + b))
        x += gap
    return found


def centre_left(shape, biot, fo, terms=12):
    """What is left of a temperature step at the centre."""
    if shape == "slab":
        z = roots(lambda s: s * math.sin(s) - biot * math.cos(s), terms, 0.05)
        c = [4.0 * math.sin(s) / (2.0 * s + math.sin(2.0 * s)) for s in z]
    elif shape == "cylinder":
        z = roots(lambda s: s * bessel(1, s) - biot * bessel(0, s), terms, 0.1)
        c = [2.0 * bessel(1, s) / (s * (bessel(0, s) ** 2 + bessel(1, s) ** 2)) for s in z]
    else:
        z = roots(lambda s: math.sin(s) * (1.0 - biot) - s * math.cos(s), terms, 0.05)
        c = [4.0 * (math.sin(s) - s * math.cos(s)) / (2.0 * s - math.sin(2.0 * s)) for s in z]
    return sum(a * math.exp(-s * s * fo) for a, s in zip(c, z))


def centre_fo(shape, biot, left):
    """The Fourier number at which so much of a step is left at the centre."""
    if shape == "slab":
        z = roots(lambda s: s * math.sin(s) - biot * math.cos(s), 12, 0.05)
        c = [4.0 * math.sin(s) / (2.0 * s + math.sin(2.0 * s)) for s in z]
    elif shape == "cylinder":
        z = roots(lambda s: s * bessel(1, s) - biot * bessel(0, s), 12, 0.1)
        c = [2.0 * bessel(1, s) / (s * (bessel(0, s) ** 2 + bessel(1, s) ** 2)) for s in z]
    else:
        z = roots(lambda s: math.sin(s) * (1.0 - biot) - s * math.cos(s), 12, 0.05)
        c = [4.0 * (math.sin(s) - s * math.cos(s)) / (2.0 * s - math.sin(2.0 * s)) for s in z]
    low, high = 0.0, 100.0
    for _ in range(100):
        fo = 0.5 * (low + high)
        if sum(a * math.exp(-s * s * fo) for a, s in zip(c, z)) > left:
            low = fo
        else:
            high = fo
    return 0.5 * (low + high)


def bracket(food, shape, size, start_c, bath_c, film, target_c):
    """Two times between which the centre of a body must pass a level, whatever lies between the properties' ends.

    Kirchhoff's transform theta = integral of k dT turns the balance into theta_t = alpha(theta) lap(theta). Heating from
    an even start, theta rises everywhere, so lap(theta) >= 0, and by the comparison principle a constant alpha at either
    end of its range is faster or slower than the truth. The film sees h (Tb - T) = h (theta_b - theta) / k_between, and
    k_between lies between the ends of k. Exact for both ends: series of constant properties.
    """
    ts = np.linspace(start_c, bath_c, 400)
    ks = np.array([food.conductivity_at(t) for t in ts])
    alphas = np.array([food.diffusivity_at(t) for t in ts])
    theta = np.concatenate([[0.0], np.cumsum(0.5 * (ks[1:] + ks[:-1]) * np.diff(ts))])
    left = 1.0 - float(np.interp(target_c, ts, theta)) / theta[-1]
    half = 0.5 * size
    fast = centre_fo(shape, film * half / ks.min(), left) * half**2 / alphas.max()
    slow = centre_fo(shape, film * half / ks.max(), left) * half**2 / alphas.min()
    return fast, slow


def run_with_water(food, thickness, start_c, film, seconds, cells, mass, litres, watts, water_c, setpoint_c, loss, room_c):
    """A slab and the water around it, stirred, with a heater of limited power and a thermostat that never overshoots.

    Both faces of the slab take heat; their area follows from mass, density and thickness. Walls lose `loss` W per kelvin
    to the room; no open water. Water: 4180 J/(kg K) and 0.99 kg/l. Returns times, cores and temperatures of the water.
    """
    half = 0.5 * thickness
    dx = half / cells
    area = mass / food.rho / half
    capacity = litres * 0.99 * 4180.0
    dt = 0.30 * dx * dx / food.fastest(min(start_c, water_c), max(setpoint_c, water_c))
    steps = int(math.ceil(seconds / dt))
    dt = seconds / steps
    h = np.full(cells, float(np.interp(start_c, food.t, food.h)))
    water = water_c
    times, cores, waters = [0.0], [start_c], [water_c]
    every = max(1, int(2.0 / dt))
    for n in range(steps):
        t = np.interp(h, food.h, food.t)
        k = np.interp(t, food.t, food.k)
        flow = np.empty(cells + 1)
        flow[0] = 0.0
        flow[1:-1] = (2.0 * k[1:] * k[:-1] / (k[1:] + k[:-1])) * (t[1:] - t[:-1]) / dx
        flow[-1] = (water - t[-1]) / (1.0 / film + 0.5 * dx / k[-1])
        h = h + dt * np.diff(flow) / dx
        needed = capacity * (setpoint_c - water) / dt + area * flow[-1] + loss * (water - room_c)
        heater = min(watts, max(0.0, needed))
        water += dt * (heater - area * flow[-1] - loss * (water - room_c)) / capacity
        if n % every == 0 or n == steps - 1:
            t = np.interp(h[:2], food.h, food.t)
            times.append((n + 1) * dt)
            cores.append((9.0 * t[0] - t[1]) / 8.0)
            waters.append(water)
    return np.array(times), np.array(cores), np.array(waters)
