"""Two drives side by side: how the load is shared, what both sides press against each other, what is lost with one side.

Method: docs/method.md section 1, a rigid beam on two drives and the yaw spring of the guides. With one drive there is no racking,
and the lines of this page do not exist.
"""

import math

import numpy as np

from quantities import in_si
from sheet import NAN, largest, total

STEEL = 11.5e-6
G = 9.80665
TURN = 2.0 * np.pi


def stated(y, axis):
    """What the brief says of the sides."""
    read = lambda key, default: in_si(axis[key]) if key in axis else default
    y["drives"] = float(axis.get("drives", 1))
    two = axis.get("drives", 1) == 2
    y["base of guides"] = read("guide-base", 1.0 if two else NAN)
    # one drive between guides that stand farther apart than they are long tends to tilt the slide
    y["centred-guide-spacing"] = NAN if two or "guide-base" not in axis else read("guide-spacing", NAN)
    y["guide-base"] = read("guide-base", NAN)
    y["drive-spacing"] = read("drive-spacing", NAN)
    y["mass-offset"] = read("mass-offset", 0.0) if two else NAN
    y["yaw-stiffness"] = read("yaw-stiffness", 200e6 * y["base of guides"] ** 2) if two else NAN
    y["side-temperature-difference"] = read("side-temperature-difference", 1.0) if two else NAN
    y["side-correction"] = read("side-correction", 0.0) if two else NAN
    y["drive-expansion"] = STEEL if two else NAN
    y["yaw-accuracy"] = read("accuracy", NAN) if two else NAN
    y["load-share"] = 0.5 + abs(y["mass-offset"]) / y["drive-spacing"] if two else 1.0
    y["cutting-share"] = 0.5 if two else 1.0


def two(y):
    return bool(y["drives"] > 1.5)


def racking(y, errors):
    """Once stiffness and forces of the motion are known; `errors` are those of the screw or rack of one side."""
    y["racking on both"] = np.array(0.0)
    if not two(y):
        y["peak-force"] = y["motion peak"]
        return
    y["motion-peak-force"] = y["motion peak"]
    y["drive-error"] = np.sqrt(sum(e * e for e in errors))
    apart = math.sqrt(2.0) * y["drive-error"] * (1.0 - y["side-correction"])
    y["side-difference"] = apart + y["drive-expansion"] * y["side-temperature-difference"] * y["travel"]
    guides = y["drive-spacing"] ** 2 / y["yaw-stiffness"]
    y["racking-force"] = y["side-difference"] / (2.0 / y["total-stiffness"] + guides)
    y["racking on both"] = y["racking-force"]
    y["peak-force"] = y["motion-peak-force"] + y["racking-force"]
    y["yaw-angle"] = y["racking-force"] * y["drive-spacing"] / y["yaw-stiffness"]
    y["yaw-at-tool"] = y["yaw-angle"] * y["drive-spacing"] / 2.0
    y["far-mass"] = y["moving-mass"] - y["driven-mass"]
    for name, mass in (("near-force", y["driven-mass"]), ("far-force", y["far-mass"])):
        lift = G * np.sin(y["inclination"]) * (1.0 - y["counterbalance-share"])
        drag = y["guide-friction"] * G * y["level part"]
        y[name] = mass * (y["acceleration"] + lift + drag) + y["drive-wiper-force"]


def torques(y):
    """Racking on top of every phase of the motor."""
    y["largest torques"] = np.abs(y["phase-torque"])
    y["racking torque"] = np.array(0.0)
    if two(y):
        p, i = y["travel-per-turn"], y["reduction"]
        y["racking-torque"] = y["racking-force"] * p / (TURN * i * y["total-efficiency"])
        y["phase-largest-torque"] = np.abs(y["phase-torque"]) + y["racking-torque"]
        y["largest torques"], y["racking torque"] = y["phase-largest-torque"], y["racking-torque"]


def rms_torque(y):
    q, t, extra = y["phase-share"], y["phase-torque"], y["racking torque"]
    return np.sqrt(total(t**2 * q) / total(q) + extra**2 / 3.0 + np.abs(total(t * q) / total(q)) * extra)


def lost(y):
    """One side alone brakes the whole at its torque limit, or holds it."""
    if not two(y):
        return
    arm = y["travel-per-turn"] / (TURN * y["reduction"])
    m = y["moving-mass"]
    y["lost-side-force"] = y["set-torque"] / arm * m / (m + y["rotating-inertia"] / arm**2)
    y["lost-side-moment"] = y["lost-side-force"] * y["drive-spacing"] / 2.0
    half = y["drive-spacing"] / 2.0
    y["lost-side-lead"] = 2.0 * y["lost-side-moment"] * half / y["yaw-stiffness"]
    y["lost-side-yaw"] = 2.0 * y["lost-side-lead"] / y["drive-spacing"]
    lifting = np.where(y["inclination"] > 0.0, 1.0, NAN)
    y["whole-gravity-force"] = m * G * np.sin(y["inclination"]) * lifting
    y["lone-holding-torque"] = y["whole-gravity-force"] * arm
