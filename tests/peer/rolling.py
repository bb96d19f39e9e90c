"""Rolling contacts: pairs preloaded against each other, their life over the duty, reliability (ISO 3408-5 and ISO 281)."""

import numpy as np

from sheet import over, total

LIFT = 2.0**1.5
SHARES = [0.90, 0.95, 0.96, 0.97, 0.98, 0.99]
NUT = [1.0, 0.62, 0.53, 0.44, 0.33, 0.21]
BEARING = [1.0, 0.64, 0.55, 0.47, 0.37, 0.25]
MOST_TURNS, MOST_HOURS, MOST_SAFETY = 1e12, 1e9 * 3600.0, 1e6


def reliability_factor(table, share):
    return np.interp(share, SHARES, table)


def loaded_half(force, preload):
    f = np.abs(force)
    lift = LIFT * preload
    inside = preload * (1.0 + f / np.where(lift > 0.0, lift, 1.0)) ** 1.5
    return np.where(f < lift, inside, f)


def pair_life(rating, preload, forces, weights, factor, racking):
    """Turns; each half has its own cubic mean, a force loads the half on its side, and racking counts against both."""
    way = total(weights)
    wear = 0.0
    for sign in (1.0, -1.0):
        pushed = forces + sign * racking
        high = loaded_half(pushed, preload)
        low = np.maximum(high - np.abs(pushed), 0.0)
        half = np.where(pushed * sign >= 0.0, high, low)
        mean = np.cbrt(over(total(half**3 * weights), way))
        wear = wear + ((mean / rating) ** 3) ** (10.0 / 9.0)
    turns = 1e6 * np.where(wear > 0.0, wear, 1.0) ** -0.9
    turns = np.where(wear > 0.0, turns, np.inf)
    return np.minimum(factor * turns, MOST_TURNS)


def set_life(rating, lesser, preload, standing, share, forces, weights, factor, racking):
    """Turns of an axial bearing set: worse end of the screw, better way to mount; racking counts against both sides."""
    way = total(weights)

    def end(sign):
        means = []
        for side in (1.0, -1.0):
            pushed = standing + share * (sign * forces + side * racking)
            high = loaded_half(pushed, preload)
            row = np.where(pushed * side >= 0.0, high, np.maximum(high - np.abs(pushed), 0.0))
            means.append(np.cbrt(over(total(row**3 * weights), way)))

        def turns(a, b):
            wear = (means[0] / a) ** (10.0 / 3.0) + (means[1] / b) ** (10.0 / 3.0)
            return np.minimum(np.where(wear > 0.0, factor * 1e6 * np.where(wear > 0.0, wear, 1.0) ** -0.9, np.inf), MOST_TURNS)

        return np.maximum(turns(rating, lesser), turns(lesser, rating))

    return np.minimum(end(1.0), end(-1.0))


def hours(turns, travel_per_turn, mean_speed):
    """Seconds of work."""
    life = turns * travel_per_turn / np.where(mean_speed > 0.0, mean_speed, 1.0)
    return np.minimum(np.where(mean_speed > 0.0, life, MOST_HOURS), MOST_HOURS)


def static_safety(rating, force):
    return np.minimum(over(rating, force), MOST_SAFETY)
