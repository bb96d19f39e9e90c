"""Ratings of a nut worked out from its geometry where the catalogue states none (ISO 3408-5, conformity 0.54, contact angle 45°)."""

import numpy as np

COS = np.cos(np.pi / 4.0)
SIN, TAN = COS, 1.0
CONFORMITY = 0.54


def _balls(circle, ball, lead):
    """Balls of one turn, and the cosine of the lead angle."""
    cos = np.cos(np.arctan(lead / (np.pi * circle)))
    return np.floor(np.pi * circle / (ball * cos)), cos


def dynamic(circle, ball, lead, turns):
    """N, from millimetres within."""
    balls, cos = _balls(circle, ball, lead)
    d, g = ball * 1e3, ball * COS / circle
    factor = 93.2 * (1.0 - SIN / 3.0) * g**0.3 * (1.0 - g) ** 1.39 / (1.0 + g) ** (1.0 / 3.0)
    factor = factor * (1.0 - 1.0 / (2.0 * CONFORMITY)) ** -0.41
    screw = factor * COS**0.86 * balls ** (2.0 / 3.0) * d**1.8 * TAN * cos**1.3
    ratio = ((1.0 - g) / (1.0 + g)) ** 1.723
    return screw * (1.0 + ratio ** (10.0 / 3.0)) ** -0.3 * turns**0.86


def static(circle, ball, lead, turns):
    balls, cos = _balls(circle, ball, lead)
    d, dpw = ball * 1e3, circle * 1e3
    one = 2.0 / d - 1.0 / (CONFORMITY * d)
    two = 2.0 / d + COS / (dpw / 2.0 - d * COS / 2.0)
    return 27.74 / (d * np.sqrt(one * two)) * balls * turns * d**2 * SIN * cos
