"""Stops: emergency stop at the set torque limit, end stops, brakes and falls, what a stop gives back (docs/method.md section 4)."""

import numpy as np

import sides
from sheet import NAN, over

TURN = 2.0 * np.pi
G = 9.80665


def _positive(value):
    return np.where(value > 0.0, value, NAN)


def enter(y, braked):
    arm = y["travel-per-turn"] / (TURN * y["reduction"])
    v, weight = y["speed"], y["gravity-force"]
    mass = y["accelerated-mass"] + y["reduced-mass"]
    falling = y["driven-mass"] + y["reduced-mass"]
    y["drive-push"] = y["set-torque"] / arm
    y["stop-deceleration"] = (y["drive-push"] - weight) / mass
    y["greatest-stop-deceleration"] = (y["drive-push"] + weight - y["counterweight-mass"] * G) / mass
    y["stop-reaction"] = 0.040
    a = y["stop-deceleration"]
    way = v * y["stop-reaction"] + v**2 / (2.0 * np.where(a > 0.0, a, 1.0))
    y["emergency-stop-distance"] = np.where(a > 0.0, way, np.inf)
    y["end-stop-energy"] = 0.5 * mass * v**2
    y["whole-end-stop-energy"] = 0.5 * (
        y["moving-mass"] * y["accelerated-mass"] / y["driven-mass"] + y["drives"] * y["reduced-mass"]) * v**2
    y["buffer-share"], y["buffer-efficiency"] = 3.0, 0.8
    y["buffer-force"] = y["buffer-share"] * y["drive-push"]
    net = y["buffer-efficiency"] * y["buffer-force"] - y["drive-push"] - weight
    y["end-stop-stroke"] = y["end-stop-energy"] / _positive(net)
    push = y["drive-push"]
    y["crash-force"] = push + np.sqrt(push**2 + y["total-stiffness"] * y["reduced-mass"] * v**2)

    level = y["inclination"] == 0.0
    y["coasting-deceleration"] = np.where(level, y["friction-force"] / falling, NAN)
    slow = y["coasting-deceleration"]
    y["coasting-distance"] = v * y["stop-reaction"] + v**2 / (2.0 * _positive(slow))

    # a brake has to stop a load that falls on an inclined axis
    y["brakes"] = np.where(level, 0.0, np.where(braked, 1.0, 0.0))
    hangs = np.where(y["brakes"] > 0.5, 1.0, NAN)
    leans = np.where(level, NAN, 1.0)
    y["fall-acceleration"] = weight / falling * hangs
    y["brake-deceleration"] = (y["brake-share"] * y["brake-torque"] / arm - weight) / falling * hangs
    t, fall = y["brake-delay"], y["fall-acceleration"]
    stop = 2.0 * _positive(y["brake-deceleration"])
    reached = v + fall * t
    y["stopping-distance"] = v * t + fall * t**2 / 2.0 + reached**2 / stop
    y["brake-work"] = falling * reached**2 / 2.0 + weight * reached**2 / stop
    y["fall-before-brake"] = (v * t + fall * t**2 / 2.0) * hangs
    y["drop-from-rest"] = fall * t**2 / 2.0 + (fall * t) ** 2 / stop
    y["brake-stops"] = over(y["brake-life-energy"], y["brake-work"])
    y["power-losses"] = np.where(y["brakes"] > 0.5, 12.0, NAN)
    y["expected-stops"] = y["power-losses"] * y["service-years"] / (365.25 * 86400.0)
    y["brake-test-factor"] = 1.3 * leans
    y["brake-test-load"] = y["brake-test-factor"] * weight
    y["brake-test-torque"] = y["brake-test-factor"] * y["holding-torque"]
    hung = np.where(y["counterweight-share"] > 0.0, 1.0, NAN)
    grip = np.maximum(y["set-torque"], y["brake-torque"]) / arm
    y["stop-rope-slackening"] = hung * (grip - weight + y["counterweight-mass"] * G) / (mass * G)
    _energy(y, arm)
    sides.lost(y)


def _energy(y, arm):
    v, way = y["speed"], y["slowing-distance"]
    balanced = (1.0 - y["counterbalance-share"]) * y["gravity-force"]
    load = y["accelerated-mass"] * v**2 / 2.0 + (balanced - y["friction-force"]) * way
    turning = y["rotating-inertia"] * (v / arm) ** 2 / 2.0
    drag = y["drag-torque"] * TURN * way / y["travel-per-turn"]
    back = np.maximum(y["total-back-efficiency"] * load + turning - drag, 0.0)
    y["stop-energy"] = y["drives"] * y["supply-efficiency"] * back
    y["stop-energy-limit"] = y["drives"] * (y["bus-energy"] + y["resistor-energy"])
    y["regeneration-limit"] = y["drives"] * y["resistor-power"]
    y["jerk-periods"] = y["first-mode"] * y["acceleration"] / y["jerk"]
    y["added-mass"] = (
        y["drive-mass"] + y["drives"] * y["counterweight-mass"] + y["cable-chain-mass-per-metre"] * y["travel"] / 2.0
    )
