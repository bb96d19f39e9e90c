"""The motor: torque of every phase, peak, heat, site, match, supply (docs/method.md section 4)."""

import numpy as np

import sides
from sheet import NAN, largest, over, total

TURN = 2.0 * np.pi


def listed(y, part, weakened):
    """Values of the motor at its site."""
    names = {
        "rated-voltage": "rated-voltage", "voltage-limit": "voltage-limit", "winding-temperature": "winding-temperature",
        "winding-time": "winding-time", "frame-time": "frame-time", "listed-rated-torque": "rated-torque",
        "listed-standstill-torque": "standstill-torque", "rated-speed": "rated-speed", "motor-peak-torque": "peak-torque",
        "listed-knee-speed": "knee-speed", "listed-speed-limit": "speed-limit", "field-weakening": "field-weakening",
        "rotor-inertia": "inertia", "motor-radial-limit": "radial-limit", "motor-mass": "mass",
        "encoder-counts": "encoder-counts", "bus-energy": "bus-energy", "resistor-energy": "resistor-energy",
        "resistor-power": "resistor-power",
    }
    for name, key in names.items():
        y[name] = part[key]
    braked = ~np.isnan(part["brake-torque"])
    y["brake-torque"] = np.where(braked, part["brake-torque"], 0.0)
    y["motor-price"] = part["price"] + part["drive-price"]
    least = y["supply-voltage"] * (1.0 - y["supply-tolerance"])
    y["voltage-factor"] = np.minimum(1.0, least / y["rated-voltage"])
    y["knee-speed"] = y["voltage-factor"] * y["listed-knee-speed"]
    # the highest speed of a motor with field weakening is not one of voltage
    slowed = y["voltage-factor"] * y["listed-speed-limit"]
    y["motor-speed-limit"] = np.where(weakened, y["listed-speed-limit"], slowed)
    air = 1.0 - 0.01 * np.maximum(0.0, y["altitude"] - 1000.0) / 100.0
    rise = (y["winding-temperature"] - y["ambient-temperature"]) / (y["winding-temperature"] - 40.0)
    y["site-factor"] = air * np.minimum(1.0, np.sqrt(np.maximum(rise, 0.0)))
    y["rated-torque"] = y["site-factor"] * y["listed-rated-torque"]
    y["standstill-torque"] = y["site-factor"] * y["listed-standstill-torque"]
    return braked


def drive(y, shaft_inertia):
    """Torques of all phases; `shaft_inertia` is that of screw or pinion."""
    p, i = y["travel-per-turn"], y["reduction"]
    y["rotating-inertia"] = y["rotor-inertia"] + y["reduction-inertia"] + shaft_inertia / i**2
    y["mass-inertia"] = y["accelerated-mass"] * (p / (TURN * i)) ** 2
    y["load-inertia"] = y["mass-inertia"] + y["reduction-inertia"] + shaft_inertia / i**2
    y["inertia-ratio"] = y["load-inertia"] / y["rotor-inertia"]
    f, v = y["phase-force"], y["phase-speed"]
    arm = p / (TURN * i)
    power = f * v
    load = np.where(power > 0.0, f * arm / y["total-efficiency"],
                    np.where(power < 0.0, f * arm * y["total-back-efficiency"], f * arm))
    turning = y["rotating-inertia"] * y["phase-acceleration"] / arm
    y["phase-torque"] = load + np.sign(v) * y["drag-torque"] / i + turning
    sides.torques(y)
    t = y["largest torques"]
    y["peak-torque"] = largest(t)
    y["holding-torque"] = np.abs(y["gravity-force"]) * arm
    wanted = y["torque-margin"] * np.maximum(y["peak-torque"], y["holding-torque"])
    y["set-torque"] = np.minimum(y["motor-peak-torque"], wanted)
    weakened = y["field-weakening"] > 0.5
    n = i * y["phase-top-speed"] / p
    knee, top, peak = y["knee-speed"], y["motor-speed-limit"], y["motor-peak-torque"]
    line = peak * (top - n) / (top - knee)
    power_line = peak * over(knee, np.where(n > 0.0, n, 1.0))
    given = np.where(n <= knee, peak, np.where(n >= top, 0.0, np.where(weakened, power_line, line)))
    # a motor with field weakening gives its power at the speed limit too
    given = np.where(weakened & (n == top) & (n > knee), power_line, given)
    use = np.where(given > 0.0, t / np.where(given > 0.0, given, 1.0), np.where(t > 0.0, 1e6, 0.0))
    y["peak-torque-use"] = largest(use)
    q = y["phase-share"]
    y["rms-torque"] = sides.rms_torque(y)
    y["rms-speed"] = i / p * np.sqrt(total(y["phase-rms-speed"] ** 2 * q) / total(q))
    n, rated = y["rms-speed"], y["rated-speed"]
    square = y["standstill-torque"] ** 2 - (y["standstill-torque"] ** 2 - y["rated-torque"] ** 2) * (n / rated) ** 2
    balance = np.sqrt(np.maximum(square, 0.0))
    beyond = y["rated-torque"] * rated / np.where(n > 0.0, n, 1.0)
    y["continuous-torque"] = np.where(weakened & (n > rated), beyond, balance)
    _heat(y)
    _match(y, shaft_inertia)
    way = TURN * i / p
    y["peak-power"] = y["drives"] * largest(np.abs(y["phase-torque"]) * way * y["phase-top-speed"])
    y["supply-power"] = y["peak-power"] / y["supply-efficiency"]
    work = y["phase-torque"] * way * y["phase-speed"]
    y["mean-power"] = y["drives"] / y["supply-efficiency"] * total(q * np.maximum(work, 0.0))
    y["regenerated-power"] = y["drives"] * y["supply-efficiency"] * total(q * np.maximum(-work, 0.0))
    y["energy-per-hour"] = y["mean-power"] * 3600.0
    y["energy-cost"] = y["mean-power"] * y["hours-per-year"] / 3.6e6 * y["energy-price"]
    y["reduced-mass"] = y["rotating-inertia"] / arm**2


def _heat(y):
    r = y["largest torques"] / y["standstill-torque"]
    before = np.where(y["continuous-torque"] > 0.0, over(y["rms-torque"], y["continuous-torque"]), NAN)
    v = np.abs(y["phase-speed"])
    time = np.where(y["phase-acceleration"] != 0.0, y["longest-ramp-time"],
                    np.where(v > 0.0, y["travel"] / np.where(v > 0.0, v, 1.0), np.inf))
    # what holds at rest is left out: rule motor-standing asks more of it
    time = np.where((v == 0.0) & (y["phase-acceleration"] == 0.0), 0.0, time)
    end = r**2 - (r**2 - before**2) * np.exp(-time / y["winding-time"])
    y["winding-heat"] = np.maximum(before**2, largest(end))
    standing = y["phase-speed"] == 0.0
    y["standing-torque"] = largest(np.where(standing, y["largest torques"], 0.0))
    y["short-time"] = 600.0
    y["short-time-factor"] = np.sqrt(1.0 / (1.0 - np.exp(-y["short-time"] / y["frame-time"])))


def _match(y, shaft_inertia):
    p, q = y["travel-per-turn"], y["phase-share"]
    torque = y["phase-force"] * p / TURN + shaft_inertia * y["phase-acceleration"] * TURN / p
    y["load-rms-torque"] = np.sqrt(total(q * torque**2) / total(q))
    y["load-rms-acceleration"] = TURN / p * np.sqrt(total(q * y["phase-acceleration"] ** 2) / total(q))
    ratio = over(y["load-rms-torque"], y["rotor-inertia"] * y["load-rms-acceleration"])
    y["optimum-ratio"] = np.sqrt(ratio)
    a = y["acceleration"]
    y["inertia-ratio-target"] = np.where(a >= 5.0, 3.0, np.where(a < 1.0, 10.0, 5.0))
    m = y["moving-mass"]
    small = np.where(m < 300.0, 60.0, np.where(m <= 2000.0, 40.0, 25.0))
    y["first-mode-target"] = np.where(y["travel"] >= 6.0, 25.0, small)
