"""Tolerances of travel of ball screws: the tables of ISO 3408-3 for positioning grades, the rule for transport grades."""

import numpy as np

ENDS = np.array([315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300]) * 1e-3
MEAN = {
    1: [6, 7, 8, 9, 10, 11, 13, 15, 18, 22, 26, 32, 39, 48],
    3: [12, 13, 15, 16, 18, 21, 24, 29, 35, 41, 50, 62, 76, 92],
    5: [23, 25, 27, 32, 36, 40, 47, 55, 65, 78, 96, 115, 140, 170],
}
VARIATION = {
    1: [6, 6, 7, 7, 8, 9, 10, 11, 13, 15, 17, 21, 25, 30],
    3: [12, 12, 13, 14, 16, 17, 19, 22, 25, 29, 34, 41, 49, 60],
    5: [23, 25, 26, 29, 31, 35, 39, 44, 51, 59, 69, 82, 99, 119],
}


def _read(table, grade, travel):
    row = int(np.searchsorted(ENDS, travel * (1.0 - 1e-12)))
    if row >= len(ENDS) or grade not in table:
        raise ValueError(f"no row for grade {grade} at {travel} m")
    return table[grade][row] * 1e-6


def mean_deviation(grade, positioning, v300, travel):
    def one(g, p, v):
        return _read(MEAN, int(g), travel) if p > 0.5 else 2.0 * travel / 0.3 * v

    return np.vectorize(one, otypes=[float])(grade, positioning, v300)


def variation(grade, positioning, v300, travel):
    def one(g, p, v):
        if p > 0.5:
            return _read(VARIATION, int(g), travel)
        return max(v, v * np.sqrt(travel / 0.3))

    return np.vectorize(one, otypes=[float])(grade, positioning, v300)
