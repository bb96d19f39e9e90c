"""The gearbox of a rack drive: stiffness, drag, torques, heat, life, output bearing, and how its give tilts the pinion."""

import numpy as np

import sides
from sheet import NAN, over, series, total

TURN = 2.0 * np.pi
E = 2.06e11
SHEAR = E / 2.6


def enter(y, part, mesh):
    """All that hangs on rack, pinion and gearbox alone."""
    for name, key in {
        "reduction": "ratio", "reduction-efficiency": "efficiency", "reduction-inertia": "inertia",
        "reduction-stiffness": "torsional-stiffness", "gearbox-acceleration-torque": "acceleration-torque",
        "gearbox-continuous-torque": "continuous-torque", "gearbox-stop-torque": "stop-torque",
        "gearbox-nominal-speed": "nominal-speed", "gearbox-speed-limit": "speed-limit",
        "gearbox-radial-limit": "radial-limit", "gearbox-mass": "mass", "no-load-torque": "no-load-torque",
        "frame-size": "frame-size", "gearbox-stages": "stages", "bearing-span": "bearing-span",
        "gearbox-axial-limit": "axial-limit", "overhang": "overhang", "output-shaft-diameter": "shaft-diameter",
        "tilt-stiffness": "tilt-stiffness", "gearbox-play": "play", "reduction-price": "price",
    }.items():
        y[name] = part[key]
    d, i, b = y["pinion-diameter"], y["reduction"], y["face-width"]
    y["bearing-gap"] = 8e-3
    y["motor-speed"] = i * y["pinion-speed"]
    y["drag-torque"] = y["no-load-torque"] * i * np.sqrt(y["motor-speed"] / y["gearbox-nominal-speed"])
    y["stage-ratio"] = i ** (1.0 / y["gearbox-stages"])
    y["pinion-frame-ratio"] = d / y["frame-size"]
    y["pinion-overhang"] = np.maximum(y["overhang"], y["bearing-gap"] + b / 2.0)
    y["mean-pinion-speed"] = y["mean-speed"] / y["travel-per-turn"]
    y["mean-input-speed"] = i * y["mean-pinion-speed"]
    y["gearbox-linear-stiffness"] = 4.0 * y["reduction-stiffness"] / d**2
    shaft = SHEAR * y["gearbox-acceleration-torque"] / (i * 5.0 * 30e6)
    y["motor-side-stiffness"] = shaft * i**2 * 4.0 / d**2
    y["torsion-stiffness"] = series(y["gearbox-linear-stiffness"], y["motor-side-stiffness"])
    length, bend = y["pinion-overhang"], E * np.pi * y["output-shaft-diameter"] ** 4 / 64.0
    lean = 1.0 + mesh.tan_t**2
    y["output-shaft-stiffness"] = 1.0 / ((length**3 / (3.0 * bend) + length**2 / y["tilt-stiffness"]) * lean)
    rim = d - 2.0 * y["module"] * (1.25 - y["profile-shift"]) - 5.0 * y["module"]
    y["seat-diameter"] = np.minimum(y["output-shaft-diameter"], rim)
    y["seat-stiffness"] = 3.0 * E * np.pi * y["seat-diameter"] ** 4 / 64.0 / ((b / 2.0) ** 3 * lean)
    y["pinion-shaft-stiffness"] = series(y["output-shaft-stiffness"], y["seat-stiffness"])
    y["total-stiffness"] = series(
        y["mesh-stiffness"], y["torsion-stiffness"], y["pinion-shaft-stiffness"], y["mount-stiffness"],
        y["bracket-stiffness"])
    y["cutting-deflection"] = y["drive-cutting-force"] / y["total-stiffness"]
    span = y["bearing-span"]
    y["radial-limit-at-pinion"] = y["gearbox-radial-limit"] * (y["overhang"] + span) / (length + span)
    turns = y["service-distance"] / (np.pi * d)
    y["radial-capacity"] = y["radial-limit-at-pinion"] * np.minimum(1.6, (1.2e8 / turns) ** 0.3)
    y["total-efficiency"] = y["mesh-efficiency"] * y["reduction-efficiency"]
    y["total-back-efficiency"] = y["total-efficiency"]
    y["backlash-at-rack"] = y["gearbox-play"] * d / 2.0
    y["play"] = y["worst-mesh-play"] + y["backlash-at-rack"]
    y["reduction-cost"] = y["drives"] * y["reduction-price"]
    _alignment(y, mesh, bend)


def _alignment(y, mesh, bend):
    """Face load factor from the gap that tilt and mounting open, against what the teeth give."""
    force, length = y["alignment-force"], y["pinion-overhang"]
    radial = force * np.sqrt(1.0 + mesh.tan_t**2)
    tilt = length**2 / (2.0 * bend) + length / y["tilt-stiffness"]
    gap = y["face-width"] * (radial * tilt + y["mounting-slope"])
    left = gap - np.minimum(0.15 * gap, 6e-6)
    q = left * 0.85 * y["mesh-stiffness"] / (2.0 * force * mesh.cos_t**2)
    y["alignment-face-load-factor"] = np.where(q <= 1.0, 1.0 + q, 2.0 * np.sqrt(q))


def loads(y, mesh):
    """All that hangs on the forces, once motor and moving mass are known."""
    d, b, i, force = y["pinion-diameter"], y["face-width"], y["reduction"], y["peak-force"]
    moment = force * np.sqrt(1.0 + mesh.tan_t**2) * b / 2.0
    twist = force * d / 2.0
    seat = 32.0 / (np.pi * y["seat-diameter"] ** 3) * np.sqrt(moment**2 + 0.75 * twist**2)
    y["seat-stress"] = np.where(y["seat-diameter"] > 0.0, seat, NAN)
    y["output-torque"] = force * d / (2.0 * y["mesh-efficiency"])
    y["shock-torque"] = y["shock-factor"] * y["output-torque"]
    y["axial-load"] = force * mesh.tan
    rot, mass = y["rotating-inertia"], y["mass-inertia"]
    y["stop-torque"] = i * (y["set-torque"] * mass + y["holding-torque"] * rot) / (rot + mass)
    y["stop-force"] = 2.0 * y["stop-torque"] / d
    y["stop-seat-force"] = y["stop-force"] / mesh.cos
    mean = y["mean-force"] + y["racking on both"]
    if sides.two(y):
        y["tooth-mean-force"] = mean
    y["mean-output-torque"] = mean * y["travel-per-turn"] / (TURN * y["mesh-efficiency"])
    couple = mesh.tan_t + mesh.tan * d / (2.0 * (y["pinion-overhang"] + y["bearing-span"]))
    y["radial-load"] = mean * np.sqrt(1.0 + couple**2)
    t = y["mean-output-torque"]
    y["gearbox-efficiency-at-load"] = np.where(t > 0.0, over(t, t / y["reduction-efficiency"] + y["drag-torque"]), 0.0)
    work = np.maximum(*(
        total(y["phase-share"] * np.abs((y["phase-force"] + sign * y["racking on both"]) * y["phase-speed"])) for sign in (1.0, -1.0)))
    drag = y["drag-torque"] * TURN * y["mean-speed"] / y["travel-per-turn"]
    y["gearbox-heat"] = work * (1.0 / y["reduction-efficiency"] - 1.0) + drag
    y["gearbox-surface"] = y["frame-size"] ** 2 * (8.0 + 3.0 * (y["gearbox-stages"] - 1.0))
    y["gearbox-warming"] = y["gearbox-heat"] / (20.0 * y["gearbox-surface"])
    turns = over(y["gearbox-nominal-speed"], y["mean-input-speed"])
    life = 20000.0 * 3600.0 * over(y["gearbox-continuous-torque"], t) ** (10.0 / 3.0) * turns
    y["gearbox-life"] = np.minimum(np.where(np.isnan(life), np.inf, life), 200000.0 * 3600.0)
    y["reference-core"], y["reference-rest"] = 44e-3, 500e6
    rest = 1.0 / y["total-stiffness"] - 1.0 / y["reference-rest"]
    area = np.pi / 4.0 * y["reference-core"] ** 2
    y["equal-stiffness-travel"] = np.maximum(4.0 * E * area * rest, 0.0)
