"""The helical rack with one pinion, in the order of docs/method.md section 3."""

import numpy as np

import cost
import demand
import gearbox
import motor
import position
import sides
import stopping
import tooth_load
from sheet import NAN, over, ripple_in_cut, rss, series, total
from teeth import Mesh

TURN = 2.0 * np.pi
STEEL = 11.5e-6
E = 2.06e11
AXES = ["rack", "rack-grade", "pinion", "gearbox", "servo-motor", "feedback", "mapping"]
SLIP_LAYER = {"case-hardened": 3e-6, "induction-hardened": 3e-6, "through-hardened": 11.1e-6, "soft": 61e-6}
STATIC_CYCLES = {"case-hardened": 1e3, "induction-hardened": 1e3, "through-hardened": 1e4, "soft": 1e4}


def work_out(y, parts, kinds, machine):
    """Enters all lines of a helical rack; the sheet holds the demand already."""
    _rack(y, parts["rack"], kinds)
    mesh = _pinion(y, parts["pinion"])
    _grade(y, parts["rack-grade"], mesh, kinds)
    gearbox.enter(y, parts["gearbox"], mesh)
    _motor(y, parts["servo-motor"], mesh)
    _mounted(y, mesh)
    gearbox.loads(y, mesh)
    _exchange(y, kinds)
    _last(y, parts)
    cost.whole(y)


def _rack(y, rack, kinds):
    y["pinions"], y["drive-units"] = 1.0, y["drives"]
    for name, key in {
        "module": "module", "face-width": "face-width", "rack-mass-per-length": "mass-per-length", "mesh-play": "play",
        "fastener-pitch": "fastener-pitch", "fastener-diameter": "fastener-diameter",
        "fastener-thread-pitch": "fastener-thread-pitch", "fastener-strength": "fastener-strength",
        "fastener-stiffness": "fastener-stiffness", "pins-per-segment": "pins-per-segment", "pin-diameter": "pin-diameter",
        "pin-strength": "pin-strength", "rack-metre-price": "price-per-metre", "fastener-price": "fastener-price",
        "joint-price": "joint-price", "gauge-price": "counter-gauge-price",
    }.items():
        y[name] = rack[key]
    # the section below the teeth, 2.25 modules high
    y["section-area"] = (rack["section-height"] - 2.25 * rack["module"]) * rack["section-width"]
    y["helix-angle"] = np.where(rack["helical"] > 0.5, np.arccos(0.3 * np.pi), 0.0)
    y["thread-friction"], y["seat-friction"], y["tightening-factor"], y["embedding-loss"] = 0.12, 0.15, 1.6, 0.075
    y["sharing-fasteners"], y["mesh-friction"], y["reversal-factor"] = 3.0, 0.09, 0.7
    d, p = y["fastener-diameter"], y["fastener-thread-pitch"]
    d2, d3 = d - 0.64952 * p, d - 1.22687 * p
    ds = (d2 + d3) / 2.0
    angle = np.arctan(p / (np.pi * d2)) + np.arctan(y["thread-friction"] / np.cos(np.pi / 6.0))
    twist = 1.5 * d2 / ds * np.tan(angle)
    y["fastener-preload"] = 0.9 * y["fastener-strength"] * np.pi / 4.0 * ds**2 / np.sqrt(1.0 + 3.0 * twist**2)
    y["fastener-torque"] = y["fastener-preload"] * (
        0.16 * p + 0.58 * d2 * y["thread-friction"] + 0.65 * d * y["thread-friction"])
    least = y["seat-friction"] * y["fastener-preload"] * np.maximum(
        1.0 / y["tightening-factor"] - y["embedding-loss"], 0.0)
    y["least hold"] = least
    y["slip-force"] = y["sharing-fasteners"] * least
    y["mount-stiffness"] = np.sqrt(E * y["section-area"] * y["fastener-stiffness"] / y["fastener-pitch"])
    grease = next(part for part in kinds["lubrication"] if part["of"] == "rack")
    y["grease-per-distance"], y["grease-width"] = grease["grease-per-distance"], grease["grease-width"]
    years = y["service-years"] / (365.25 * 86400.0)
    y["grease-per-year"] = y["grease-per-distance"] * y["face-width"] / y["grease-width"] * y["service-distance"] / years
    y["grease-need"] = y["grease-per-year"] / y["surroundings-share"]
    y["lubricator-speed-limit"] = grease["lubricator-speed-limit"]
    cost.basis(y, kinds["price-basis"][0], "rack")
    prices = kinds["price-basis"][0]
    y["pinion-base-price"] = prices["pinion-base"]
    y["rack-expansion"] = STEEL
    y["bed-growth"] = np.abs(y["bed-expansion"] - STEEL) * y["temperature-swing"] * y["travel"]
    y["face-width-modules"] = y["face-width"] / y["module"]
    pitch = np.pi * y["module"] / np.cos(y["helix-angle"])
    y["tooth-frequency-cutting"], y["tooth-frequency-top"] = y["cutting-speed"] / pitch, y["speed"] / pitch
    n = y["moves-per-hour"]
    y["shock-factor"] = np.select([n <= 1000.0, n <= 2000.0, n <= 3000.0, n <= 6000.0], [1.0, 1.2, 1.4, 1.8], 2.0)


def _pinion(y, pinion):
    y["teeth"], y["profile-shift"] = pinion["teeth"], pinion["profile-shift"]
    mesh = Mesh(y["module"], y["teeth"], np.where(y["helix-angle"] > 0.0, 1.0, 0.0), y["profile-shift"], y["face-width"])
    y["overlap-ratio"] = mesh.e_beta
    y["overlap-excess"] = np.abs(mesh.e_beta - np.maximum(1.0, np.round(mesh.e_beta)))
    y["pinion-diameter"] = mesh.d
    y["travel-per-turn"] = np.pi * mesh.d
    y["pinion-speed"] = y["speed"] / y["travel-per-turn"]
    y["least-teeth"] = mesh.least_teeth()
    y["transverse-contact-ratio"], y["total-contact-ratio"] = mesh.e_alpha, mesh.e_gamma
    y["tip-thickness"] = mesh.tip_thickness()
    d, b = mesh.d, y["face-width"]
    y["pinion-mass"] = 7850.0 * np.pi / 4.0 * d**2 * b
    y["pinion-inertia"] = 7850.0 * b * np.pi / 32.0 * d**4
    y["face-width-ratio"] = b / d
    y["speed-number"] = y["speed"] * y["teeth"] / 100.0
    y["least-contact-line"] = mesh.contact_lines()[0]
    y["rack-length"] = y["travel"] + 2.0 * y["overtravel"] + d
    y["rack-mass"] = y["rack-mass-per-length"] * y["rack-length"]
    y["mesh-stiffness"] = mesh.stiffness()[0]
    y["mesh-efficiency"] = mesh.efficiency(y["mesh-friction"])
    return mesh


def _steel(kinds, names):
    """Numbers of the steel of each grade, as arrays like the names."""
    steels = {part["designation"]: part for part in kinds["steel"]}
    read = lambda value: np.vectorize(lambda name: value(steels[name]), otypes=[float])(names)
    return {
        "contact": read(lambda s: s["contact-limit"]), "bending": read(lambda s: s["bending-limit"]),
        "layer": read(lambda s: SLIP_LAYER[s["kind"]]), "cycles": read(lambda s: STATIC_CYCLES[s["kind"]]),
        "hard": read(lambda s: 1.0 if s["kind"] in ("case-hardened", "induction-hardened") else 0.0),
        "normal": read(lambda s: 1.0 if s["kind"] == "soft" else 0.0),
    }


def _grade(y, grade, mesh, kinds):
    y["quality"] = grade["quality"]
    for name, key in {
        "film-factor": "film-factor", "root-roughness": "root-roughness", "grade-face-load-factor": "face-load-factor",
        "misalignment-share": "misalignment-share", "pinion-squareness": "pinion-squareness",
        "seat-straightness": "seat-straightness", "rack-speed-limit": "speed-limit-helical",
        "segment-length": "segment-length", "pitch-error-per-metre": "pitch-error-per-metre", "joint-step": "joint-step",
        "height-waviness": "height-waviness", "rack-price-factor": "price-factor",
    }.items():
        y[name] = grade[key]
    y["mounting-slope"] = y["misalignment-share"] * rss(y["pinion-squareness"] / 0.1, y["seat-straightness"])
    line = (y["quality"], y["speed"])
    y["tooth-load-slope"], y["tooth-load-offset"], y["light-load-factor"] = tooth_load.load_line(mesh, *line)
    y["pinion-cycles"] = y["service-distance"] / (np.pi * y["pinion-diameter"])
    y["rack-cycles"] = y["moves-per-hour"] * y["service-hours"] / 3600.0
    y["flank-static-cycles"] = 1e5
    m, rough = y["module"] * 1e3, y["root-roughness"] * 1e6
    for side, names, pinion in (("rack", grade["steel"], False), ("pinion", grade["pinion-steel"], True)):
        steel = _steel(kinds, names)
        y[f"{side}-contact-limit"], y[f"{side}-bending-limit"] = steel["contact"], steel["bending"]
        y[f"{side}-slip-layer"], y[f"{side}-root-static-cycles"] = steel["layer"], steel["cycles"]
        y[f"{side}-flank-strength"] = y[f"{side}-contact-limit"] * y["film-factor"]
        hard = np.where(m <= 5.0, 1.0, np.maximum(1.05 - 0.01 * m, 0.80))
        tough = np.where(m <= 5.0, 1.0, np.maximum(1.03 - 0.006 * m, 0.85))
        y[f"{side}-size-factor"] = np.where(steel["hard"] > 0.5, hard, tough)
        plain = np.where(rough < 1.0, 1.12, 1.674 - 0.529 * (rough + 1.0) ** 0.1)
        normal = np.where(rough < 1.0, 1.07, 5.306 - 4.203 * (rough + 1.0) ** 0.01)
        y[f"{side}-surface-factor"] = np.where(steel["normal"] > 0.5, normal, plain)
        y[f"{side}-root-strength"] = (
            2.0 * y[f"{side}-bending-limit"] * y[f"{side}-size-factor"] * y[f"{side}-surface-factor"]
            * y["reversal-factor"])
        y[f"{side}-flank-endurance"] = mesh.flank_endurance(y[f"{side}-flank-strength"], pinion)
        y[f"{side}-root-endurance"] = mesh.root_endurance(
            y[f"{side}-root-strength"], y[f"{side}-slip-layer"], pinion)
        line = tooth_load.root_line(y[f"{side}-root-static-cycles"])
        y[f"{side}-root-life-factor"] = line.force_factor(y[f"{side}-cycles"])
    first = y["pinion-root-static-cycles"]
    y["root-static-life-factor"] = tooth_load.root_line(first).force_factor(first)
    prices = kinds["price-basis"][0]
    hardened = _steel(kinds, grade["pinion-steel"])["hard"] > 0.5
    y["pinion-size-price"] = np.where(hardened, prices["pinion-factor"], prices["pinion-soft-factor"])
    felt = _felt(y)
    least = np.minimum.reduce(np.broadcast_arrays(*(y[f"{s}-{w}-endurance"] for s in ("pinion", "rack")
                                                    for w in ("flank", "root"))))
    y["alignment-force"] = felt.back(least) / 3.0
    _line(y)
    _accuracy(y, mesh)


def _felt(y):
    return tooth_load.Felt(y["tooth-load-slope"], y["tooth-load-offset"], y["light-load-factor"], y["face-width"])


def _line(y):
    """Segments, fasteners, prices of the rack line."""
    y["segment-fasteners"] = np.round(y["segment-length"] / y["fastener-pitch"])
    pins = y["pins-per-segment"] * np.pi / 4.0 * y["pin-diameter"] ** 2 * y["pin-strength"]
    y["segment-holding-force"] = y["segment-fasteners"] * y["least hold"] + pins
    reach = np.sqrt(E * y["section-area"] * y["fastener-pitch"] / y["fastener-stiffness"])
    strain = np.abs(y["bed-expansion"] - y["rack-expansion"]) * y["temperature-swing"]
    y["end-fastener-force"] = y["fastener-stiffness"] * strain * reach * np.tanh(y["segment-length"] / (2.0 * reach))
    y["slip-reserve"] = np.maximum(y["slip-force"] - y["sharing-fasteners"] * y["end-fastener-force"], 0.0)
    y["segments"] = np.ceil(y["rack-length"] / y["segment-length"])
    y["joints"], y["pins"] = y["segments"] - 1.0, y["segments"] * y["pins-per-segment"]
    y["fasteners"] = y["segments"] * y["segment-fasteners"]
    y["rack-line-price"] = y["rack-metre-price"] * y["rack-length"] * y["rack-price-factor"]


def _accuracy(y, mesh):
    y["segment-pitch-error"] = y["pitch-error-per-metre"] * np.sqrt(y["segment-length"])

    def line_error(length):
        es, ej, ls = y["segment-pitch-error"], y["joint-step"], y["segment-length"]
        n = np.ceil(length / ls)
        walk = 2.44 * np.sqrt((n * es**2 + (n - 1.0) * ej**2) / 12.0)
        return np.where(length <= ls, es * np.sqrt(length / ls), np.maximum(es, walk))

    y["cumulative-pitch-error"] = line_error(y["travel"])
    y["section-pitch-error"] = line_error(y["section-length"])
    d, m = y["pinion-diameter"] * 1e3, y["module"] * 1e3
    grade = np.sqrt(2.0) ** (y["quality"] - 5.0)
    y["pinion-total-pitch-deviation"] = (0.002 * d + 0.55 * np.sqrt(d) + 0.7 * m + 12.0) * grade * 1e-6
    y["single-pitch-deviation"] = (0.001 * d + 0.4 * m + 5.0) * grade * 1e-6
    y["seat-run-out"] = 10e-6
    y["pinion-run-out"] = 0.9 * y["pinion-total-pitch-deviation"] + y["seat-run-out"]
    y["run-out-error"] = y["pinion-run-out"] / mesh.cos_t
    y["play-variation"] = 2.0 * mesh.tan_t * (y["pinion-run-out"] + y["height-waviness"])
    y["worst-mesh-play"] = y["mesh-play"] + y["play-variation"]
    y["pitch-step"] = np.sqrt(2.0) * y["single-pitch-deviation"]
    least, most = mesh.contact_lines()
    loaded = y["drive-cutting-force"] / mesh.stiffness()[1] * (1.0 / least - 1.0 / most)
    step = np.where(mesh.e_beta > 0.0, y["pitch-step"] / np.sqrt(mesh.e_gamma), y["pitch-step"])
    y["ripple"] = rss(loaded, step)


def _motor(y, part, mesh):
    braked = motor.listed(y, part, part["field-weakening"] > 0.5)
    y["riding-mass"] = y["drives"] * (y["motor-mass"] + y["gearbox-mass"] + y["pinion-mass"])
    demand.forces(y)
    sides.racking(y, [y["cumulative-pitch-error"], y["run-out-error"], y["pitch-step"]])
    y["first-mode"] = np.sqrt(y["total-stiffness"] / y["driven-mass"]) / TURN
    motor.drive(y, y["pinion-inertia"])
    y["motor-cost"] = y["drives"] * y["motor-price"]
    y["brake-energy"], y["brake-life-energy"] = part["brake-energy"], part["brake-life-energy"]
    y["drive-mass"] = y["drives"] * y["rack-mass"] + y["riding-mass"]
    stopping.enter(y, braked)
    y["marking-speed"] = y["first-mode"] * mesh.pitch
    ripple_in_cut(y, "tooth-frequency-cutting")
    y["cutting-rhythm-distance"] = np.abs(y["tooth-frequency-cutting"] / y["first-mode"] - 1.0)
    y["top-rhythm-distance"] = np.abs(y["tooth-frequency-top"] / y["first-mode"] - 1.0)


def _mounted(y, mesh):
    """What teeth bear as mounted, and the forces that stand for the duty."""
    y["face-load-factor"] = np.maximum(y["grade-face-load-factor"], y["alignment-face-load-factor"])
    q = y["face-width"] / (2.25 * y["module"])
    y["root-face-load-factor"] = y["face-load-factor"] ** (q**2 / (1.0 + q + q**2))
    felt, flanks = _felt(y), tooth_load.flank_line()
    weights = y["phase-share"] * np.abs(y["phase-speed"])
    weights = over(weights, total(weights))
    a, passes = y["phase-acceleration"], over(y["phase-moves"], y["moves-per-hour"])
    zones = [np.where(zone, passes, 0.0) for zone in (a > 0.0, a < 0.0, a == 0.0)]
    forces = y["phase-force"]
    for side in ("pinion", "rack"):
        bears = y[f"{side}-flank-mounted-endurance"] = y[f"{side}-flank-endurance"] / y["face-load-factor"]
        y[f"{side}-flank-mounted-endurance"] = bears
        y[f"{side}-pitting-force"] = felt.back(bears * flanks.force_factor(y[f"{side}-cycles"]))
        y[f"{side}-flank-static-force"] = felt.back(bears * flanks.force_factor(y["flank-static-cycles"]))
        roots = tooth_load.root_line(y[f"{side}-root-static-cycles"])
        y[f"{side}-root-mounted-endurance"] = y[f"{side}-root-endurance"] / y["root-face-load-factor"]
        root = y[f"{side}-root-mounted-endurance"]
        y[f"{side}-root-force"] = felt.back(root * y[f"{side}-root-life-factor"])
        y[f"{side}-root-static-force"] = felt.back(root * y["root-static-life-factor"])
        places = [weights] if side == "pinion" else zones
        bears = y[f"{side}-flank-mounted-endurance"]
        for tooth, endurance, line, one_sign in (("flank", bears, flanks, True), ("root", root, roots, False)):
            duty = np.maximum.reduce(np.broadcast_arrays(
                *(tooth_load.equivalent(forces, w, endurance, felt, line, one_sign) for w in places)))
            if sides.two(y):
                y[f"{side}-{tooth}-duty-force"] = duty
            y[f"{side}-{tooth}-equivalent-force"] = duty + y["racking on both"]
    y["permissible-tooth-force"] = np.minimum.reduce(np.broadcast_arrays(
        *(y[f"{s}-{w}-force"] for s in ("pinion", "rack") for w in ("pitting", "root"))))


def _exchange(y, kinds):
    m, z = y["module"] * 1e3, y["teeth"]
    y["pinion-price"] = y["pinion-base-price"] + y["pinion-size-price"] * m**1.5 * (z / 20.0) ** 1.2
    y["element-price"] = y["rack-line-price"] + y["pinion-price"]
    y["support-price"] = y["fastener-price"] * y["fasteners"] + y["joint-price"] * (y["segments"] - 1.0) + y["gauge-price"]
    y["element-cost"], y["support-cost"] = y["drives"] * y["element-price"], y["drives"] * y["support-price"]
    hours = next(part for part in kinds["exchange"] if part["of"] == "gearbox")
    cost.exchange(y, "reduction", y["reduction-price"], hours, y["gearbox-life"])
    y["replacement-cost"] = y["reduction-replacement"]


def _last(y, parts):
    scale, table = parts["feedback"], parts["mapping"]
    own = (y["cumulative-pitch-error"], y["section-pitch-error"])
    position.enter(y, scale, scale["is scale"] > 0.5, table, table["is table"] > 0.5, y["temperature-swing"],
                   [y["run-out-error"], y["pitch-step"]], 1.5e-6, own)
    y["lead-time"] = np.maximum.reduce(np.broadcast_arrays(*(parts[kind]["lead-time"] for kind in parts)))
    y["scale-lead-time"] = scale["lead-time"]
    without = [parts[kind]["lead-time"] for kind in parts if kind not in ("feedback", "mapping")]
    y["parts-lead-time"] = np.maximum.reduce(np.broadcast_arrays(*without))
