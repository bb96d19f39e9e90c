"""What joins motor and screw, a coupling or a toothed belt, and how stiff the whole drive is."""

import numpy as np

from sheet import NAN, series

TURN = 2.0 * np.pi


def enter(y, part):
    for name, key in {
        "reduction": "ratio", "reduction-efficiency": "efficiency", "reduction-inertia": "inertia",
        "reduction-speed-limit": "speed-limit", "reduction-mass": "mass", "reduction-price": "price",
    }.items():
        y[name] = part[key]
    by_belt = part["kind"] == "belt"
    y["belts"], y["couplings"] = np.where(by_belt, 1.0, 0.0), np.where(by_belt, 0.0, 1.0)
    y["reduction-cost"] = y["drives"] * y["reduction-price"]
    y["motor-speed"] = y["reduction"] * y["screw-speed"]
    for name in ("belt-pitch", "belt-width", "driving-teeth", "centre-distance", "specific-stiffness", "pull-per-width",
                 "belt-mass", "belt-speed-limit"):
        y[name] = part[name]
    y["driving-pulley"] = y["belt-pitch"] * y["driving-teeth"] / np.pi
    y["pulley-diameter"] = y["reduction"] * y["driving-pulley"]
    d1, d2, a = y["driving-pulley"], y["pulley-diameter"], y["centre-distance"]
    y["belt-span"] = np.sqrt(a**2 - ((d2 - d1) / 2.0) ** 2)
    small = y["driving-teeth"] * np.minimum(1.0, d2 / d1)
    y["teeth-in-mesh"] = small * (np.pi - 2.0 * np.arcsin(np.abs(d2 - d1) / (2.0 * a))) / TURN
    y["belt-pull-limit"] = y["pull-per-width"] * y["belt-width"]
    y["belt-speed"] = np.pi * y["motor-speed"] * d1
    twist = 2.0 * y["specific-stiffness"] * y["belt-width"] / y["belt-span"] * (d2 / 2.0) ** 2
    y["reduction-stiffness"] = np.where(by_belt, twist, part["torsional-stiffness"])
    y["reduction-torque-limit"] = np.where(by_belt, y["belt-pull-limit"] * d2 / 2.0, part["rated-torque"])
    y["coupling-linear-stiffness"] = y["reduction-stiffness"] * (TURN / y["travel-per-turn"]) ** 2
    y["total-efficiency"] = y["screw-efficiency"] * y["reduction-efficiency"]
    y["total-back-efficiency"] = y["back-driving-efficiency"] * y["reduction-efficiency"]
    y["total-stiffness"] = series(
        y["screw-stiffness"], y["nut-stiffness"], y["screw-torsional-stiffness-linear"], y["coupling-linear-stiffness"],
        y["bracket-stiffness"])
    y["first-mode"] = np.sqrt(y["total-stiffness"] / y["driven-mass"]) / TURN
    y["cutting-deflection"] = y["drive-cutting-force"] / y["total-stiffness"]


def belt(y, part, kinds):
    """What hangs on the largest torque of the shaft."""
    by_belt, a, d2 = part["kind"] == "belt", y["centre-distance"], y["pulley-diameter"]
    y["belt-pull"] = 2.0 * y["shaft-torque"] / d2
    y["pretension-share"] = np.where(by_belt, 0.8, NAN)
    y["belt-pretension"] = y["pretension-share"] * y["belt-pull"]
    y["belt-shaft-load"] = 2.0 * y["belt-pretension"] * y["belt-span"] / a
    y["span-frequency"] = np.sqrt(y["belt-pretension"] / y["belt-mass"]) / (2.0 * y["belt-span"])
    life = next(part for part in kinds["exchange"] if part["of"] == "belt")
    y["belt-life"] = np.where(by_belt, life["life"], NAN)
