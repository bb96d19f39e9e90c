"""A round bar held by springs against tilting at its ends: bending frequency, buckling, sag (Euler and Bernoulli)."""

import numpy as np
from scipy.optimize import brentq

YOUNG, DENSITY, GRAVITY = 2.06e11, 7850.0, 9.80665
_MEMORY = {}


def _root(name, function, low, high):
    if name not in _MEMORY:
        _MEMORY[name] = brentq(function, low, high, xtol=1e-15, rtol=8.9e-16, maxiter=500)
    return _MEMORY[name]


def _held_bending(k1, k2):
    def value(b):
        # all over cosh b, so that nothing grows
        t, s = np.tanh(b), 1.0 / np.cosh(b)
        return (
            k1 * k2 * (s - np.cos(b))
            + (k1 + k2) * b * (np.sin(b) - np.cos(b) * t)
            + 2.0 * b * b * np.sin(b) * t
        )

    return _root(("bend", k1, k2), value, np.pi - 1e-9, 4.7301) if k1 + k2 > 0.0 else np.pi


def _held_buckling(k1, k2):
    def value(u):
        return (
            k1 * k2 * (2.0 - 2.0 * np.cos(u) - u * np.sin(u))
            + (k1 + k2) * u * (np.sin(u) - u * np.cos(u))
            + u**3 * np.sin(u)
        )

    return _root(("buckle", k1, k2), value, np.pi, 2.0 * np.pi) if k1 + k2 > 0.0 else np.pi


def _rooted_bending(k):
    def value(b):
        return k * (1.0 + np.cos(b) * np.cosh(b)) - b * (np.sin(b) * np.cosh(b) - np.cos(b) * np.sinh(b))

    return _root(("free bend", k), value, 1e-9, 1.8752) if k > 0.0 else 0.0


def _rooted_buckling(k):
    return _root(("free buckle", k), lambda u: k * np.cos(u) - u * np.sin(u), 0.0, np.pi / 2) if k > 0.0 else 0.0


def _each(function, *values):
    return np.vectorize(function, otypes=[float])(*np.broadcast_arrays(*values))


def eigenvalue_squared(k1, k2, spans, free):
    """λ² of the whole length; `free` tells that the second end has no bearing."""
    held = spans**2 * _each(_held_bending, k1, k2) ** 2
    return np.where(free, _each(_rooted_bending, k1) ** 2, held)


def buckling_factor(k1, k2, spans, free):
    held = spans**2 * (_each(_held_buckling, k1, k2) / np.pi) ** 2
    return np.where(free, (_each(_rooted_buckling, k1) / np.pi) ** 2, held)


def second_moment(root, bore):
    return np.pi / 64.0 * (root**4 - bore**4)


def sag(root, bore, length, k1, k2, spans, tension, euler, cos_inclination):
    """Of a bar held at both ends, the worst place found by closing in on it."""
    span = length / spans
    weight = DENSITY * np.pi / 4.0 * (root**2 - bore**2) * GRAVITY * cos_inclination
    # end moments over w·l²: M_i/κ_i + M_i/3 + M_j/6 = 1/24, none where κ is 0
    def moments(a, b):
        if a == 0.0 and b == 0.0:
            return 0.0, 0.0
        if b == 0.0:
            return (1.0 / 24.0) / (1.0 / a + 1.0 / 3.0), 0.0
        if a == 0.0:
            return 0.0, (1.0 / 24.0) / (1.0 / b + 1.0 / 3.0)
        matrix = np.array([[1.0 / a + 1.0 / 3.0, 1.0 / 6.0], [1.0 / 6.0, 1.0 / b + 1.0 / 3.0]])
        return tuple(np.linalg.solve(matrix, np.array([1.0, 1.0]) / 24.0))

    def shape(a, b):
        key = ("sag", a, b)
        if key not in _MEMORY:
            m1, m2 = moments(a, b)
            low, high = 0.0, 1.0
            for _ in range(6):
                x = np.linspace(low, high, 2001)
                y = x * (1 - 2 * x**2 + x**3) / 24 - m1 * x * (1 - x) * (2 - x) / 6 - m2 * x * (1 - x**2) / 6
                best = int(np.argmax(y))
                low, high = x[max(best - 2, 0)], x[min(best + 2, 2000)]
            _MEMORY[key] = y[best]
        return _MEMORY[key]

    bend = YOUNG * second_moment(root, bore)
    left = 1.0 + tension / np.where(euler > 0.0, euler, np.nan)
    # pressed by more than Euler's load it has no shape to stay in
    factor = np.where(left > 0.0, 1.0 / left, np.nan)
    return _each(shape, k1, k2) * weight * span**4 / bend * factor


def rooted_sag(root, bore, length, k, cos_inclination):
    weight = DENSITY * np.pi / 4.0 * (root**2 - bore**2) * GRAVITY * cos_inclination
    return (0.125 + 0.5 / k) * weight * length**4 / (YOUNG * second_moment(root, bore))
