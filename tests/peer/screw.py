"""The ball screw that turns, from size to last stage, in the order of docs/method.md section 2.

`parts` gives each kind of part as a dictionary of arrays: those of one configuration, or of a whole catalogue along its own axis.
"""

import numpy as np

import cost
import demand
import held_beam
import lead_table
import motor
import position
import rating
import reduction
import rolling
import sides
import stopping
from sheet import NAN, largest, over, ripple_in_cut, rss, series, total

E, RHO, G = 2.06e11, 7850.0, 9.80665
SHEAR = E / 2.6
TURN = 2.0 * np.pi
STEEL = 11.5e-6
AXES = ["ball-screw", "screw-support", "screw-grade", "preload-class", "screw-bearing", "end-arrangement",
        "screw-reduction", "servo-motor", "feedback", "mapping"]


def work_out(y, parts, kinds, machine):
    """Enters all lines of a ball screw; the sheet holds the demand already."""
    _size(y, parts["ball-screw"], kinds)
    _supports(y, parts["screw-support"], parts["ball-screw"])
    _grade(y, parts["screw-grade"], parts["ball-screw"])
    _preload(y, parts["preload-class"])
    _ends(y, parts["screw-bearing"], parts["end-arrangement"])
    reduction.enter(y, parts["screw-reduction"])
    sides.racking(y, [y["mean-travel-deviation"], y["travel-variation"], y["turn-variation"]])
    _nut(y)
    _warming(y)
    _strength(y)
    reduction.belt(y, parts["screw-reduction"], kinds)
    _motor(y, parts["servo-motor"])
    _exchange(y, kinds)
    _last(y, parts)
    cost.whole(y)


def _size(y, size, kinds):
    for name, key in {
        "nominal-diameter": "nominal-diameter", "lead": "lead", "ball-circle-diameter": "ball-circle-diameter",
        "ball-diameter": "ball-diameter", "root-diameter": "root-diameter", "screw-bore": "bore", "nut-length": "nut-length",
        "nut-mass": "nut-mass", "nut-acceleration-limit": "acceleration-limit", "loaded-turns": "turns",
        "rated-nut-stiffness": "nut-stiffness", "size-price-factor": "price-factor", "travel-per-turn": "lead",
    }.items():
        y[name] = size[key]
    y["conformity"] = rating.CONFORMITY
    geometry = (y["ball-circle-diameter"], y["ball-diameter"], y["lead"], y["loaded-turns"])
    stated, still = size["dynamic-rating"], size["static-rating"]
    y["size-dynamic-rating"] = np.where(np.isnan(stated), rating.dynamic(*geometry), stated)
    y["size-static-rating"] = np.where(np.isnan(still), rating.static(*geometry), still)
    y["rating-estimated"] = np.where(np.isnan(stated) | np.isnan(still), 1.0, 0.0)
    y["screw-yield-strength"], y["screw-expansion"] = 350e6, STEEL
    y["journal-length"] = 4.0 * y["nominal-diameter"]
    y["screw-speed"] = y["speed"] / y["lead"]
    y["circulation-speed"] = y["nominal-diameter"] * y["screw-speed"]
    y["core-diameter"] = y["ball-circle-diameter"] - y["ball-diameter"] * np.cos(np.pi / 4.0)
    y["lead-angle"] = np.arctan(y["lead"] / (np.pi * y["ball-circle-diameter"]))
    y["nut-life-factor"] = rolling.reliability_factor(rolling.NUT, y["reliability"])
    y["bearing-life-factor"] = rolling.reliability_factor(rolling.BEARING, y["reliability"])
    prices = kinds["price-basis"][0]
    y["screw-base-price"], y["screw-metre-price"] = prices["screw-base"], prices["screw-per-metre"]
    y["support-price-share"], y["ends-price"] = prices["support-price-share"], prices["screw-ends"]
    cost.basis(y, prices, "screw")
    grease = next(part for part in kinds["lubrication"] if part["of"] == "screw")
    y["relubrication-distance"] = grease["relubrication-distance"]
    y["relubrication-hours"] = y["relubrication-distance"] / y["mean-speed"]
    y["lubrication-interval"] = y["surroundings-share"] * y["relubrication-hours"]
    y["grease-per-diameter"] = grease["grease-per-diameter"]
    y["grease-dose"] = y["grease-per-diameter"] * y["nominal-diameter"]
    y["grease-need"] = y["grease-dose"] * y["hours-per-year"] / y["lubrication-interval"]
    y["mean-screw-speed"] = y["mean-speed"] / y["lead"]
    d = y["nominal-diameter"]
    reynolds = TURN * y["mean-screw-speed"] * d**2 / 15.89e-6
    nusselt = 0.133 * reynolds ** (2.0 / 3.0) * 0.707 ** (1.0 / 3.0)
    y["screw-heat-transfer"] = np.maximum(nusselt * 0.0263 / d, 10.0)
    section = (d**2 - y["screw-bore"] ** 2) / (4.0 * d * y["screw-heat-transfer"])
    y["fin-length"] = np.sqrt(45.0 * section)
    y["warming-time"] = RHO * 460.0 * section
    y["cutting-screw-speed"] = y["cutting-speed"] / y["lead"]
    y["turn-frequency-cutting"] = y["cutting-speed"] / y["lead"]


def _supports(y, support, size):
    y["support-pairs"], y["support-speed-limit"] = support["pairs"], support["speed-limit"]
    y["support-size-mass"], y["support-room-share"] = support["mass"], support["room"]
    y["support-pair-size-price"] = support["price"]
    d = y["nominal-diameter"]
    y["support-mass"] = y["support-size-mass"] * d / 0.032
    y["support-room"] = y["support-room-share"] * d
    y["support-pair-price"] = y["support-pair-size-price"] * (d / 0.032) ** 0.8
    y["free-length"] = (
        y["travel"] + 2.0 * y["overtravel"] + 2.0 * y["end-gap"] + y["nut-length"] + y["support-room"])
    y["screw-slenderness"] = y["free-length"] / d
    y["screw-length"] = y["free-length"] + y["journal-length"]
    area = d**2 - y["screw-bore"] ** 2
    y["screw-mass"] = RHO * np.pi / 4.0 * area * y["screw-length"]
    y["riding-mass"] = y["drives"] * (y["nut-mass"] + y["support-mass"])
    demand.forces(y)
    y["screw-inertia"] = RHO * y["screw-length"] * np.pi / 32.0 * (d**4 - y["screw-bore"] ** 4)
    y["turn-held-ends"] = 1.0
    polar = np.pi / 32.0 * (y["root-diameter"] ** 4 - y["screw-bore"] ** 4)
    y["screw-torsional-stiffness-linear"] = SHEAR * polar / y["free-length"] * (TURN / y["lead"]) ** 2


def _grade(y, grade, size):
    for name, key in {
        "grade-number": "grade", "positioning-grade": "positioning", "variation-300": "variation-300",
        "turn-variation": "turn-variation", "rating-factor": "rating-factor", "surface-hardness": "surface-hardness",
        "melt-factor": "melt-factor", "temperature-factor": "temperature-factor",
        "length-per-diameter": "length-per-diameter", "blank-length": "length-limit", "diameter-limit": "diameter-limit",
        "grade-price-factor": "price-factor", "screw-friction": "friction",
    }.items():
        y[name] = grade[key]
    returns = size["recirculation"]
    limit = NAN
    for way in ("tube", "deflector", "end-cap", "high-speed"):
        limit = np.where(returns == way, grade[f"circulation-{way}"], limit)
    y["circulation-limit"] = limit
    y["screw-length-limit"] = np.minimum(y["length-per-diameter"] * y["nominal-diameter"], y["blank-length"])
    hard = y["surface-hardness"] / 654.0
    y["hardness-factor"], y["static-hardness-factor"] = np.minimum(1.0, hard**2), np.minimum(1.0, hard**3)
    y["dynamic-rating"] = (
        y["size-dynamic-rating"] * y["rating-factor"] * y["hardness-factor"] * y["melt-factor"] * y["temperature-factor"])
    y["static-rating"] = y["size-static-rating"] * y["rating-factor"] * y["static-hardness-factor"]
    beta, rho = y["lead-angle"], np.arctan(y["screw-friction"])
    y["screw-efficiency"] = np.tan(beta) / np.tan(beta + rho)
    y["back-driving-efficiency"] = np.maximum(np.tan(beta - rho) / np.tan(beta), 0.0)
    lead = (y["grade-number"], y["positioning-grade"], y["variation-300"])
    y["mean-travel-deviation"] = lead_table.mean_deviation(*lead, float(y["travel"]))
    y["travel-variation"] = lead_table.variation(*lead, float(y["travel"]))
    y["section-travel-deviation"] = lead_table.mean_deviation(*lead, float(y["section-length"]))
    y["section-travel-variation"] = lead_table.variation(*lead, float(y["section-length"]))
    y["ripple"] = y["turn-variation"]


def _preload(y, preload):
    y["preload-share"], y["nut-clearance"] = preload["share"], preload["clearance"]
    y["nut-price-factor"] = preload["nut-price-factor"]
    y["preload"] = y["preload-share"] * y["dynamic-rating"]
    y["preload-drag-torque"] = 0.05 / np.sqrt(np.tan(y["lead-angle"])) * y["preload"] * y["lead"] / TURN
    y["nut-stiffness"] = y["rated-nut-stiffness"] * np.cbrt(np.maximum(y["preload-share"], 0.01) / 0.05)
    y["play"] = y["nut-clearance"]
    blank = np.where(y["screw-length"] > 0.6 * y["screw-length-limit"], 1.4, 1.0)
    body = y["screw-base-price"] * y["nut-price-factor"] + y["screw-metre-price"] * y["screw-length"] * blank
    size = (y["nominal-diameter"] / 0.032) ** 1.5
    y["element-price"] = y["grade-price-factor"] * y["size-price-factor"] * body * size
    y["element-cost"] = y["drives"] * y["element-price"]


def _nut(y):
    weights = y["phase-share"] * np.abs(y["phase-speed"])
    y["screw-life"] = rolling.pair_life(
        y["dynamic-rating"], y["preload"], y["phase-force"], weights, y["nut-life-factor"], y["racking on both"])
    y["screw-life-hours"] = rolling.hours(y["screw-life"], y["travel-per-turn"], y["mean-speed"])
    y["loaded-half-peak"] = rolling.loaded_half(y["peak-force"], y["preload"])
    y["static-safety"] = rolling.static_safety(y["static-rating"], y["loaded-half-peak"])


def _ends(y, bearing, ends):
    for name, key in {
        "bearing-bore": "bore", "bearing-rating": "rating", "bearing-lesser-rating": "lesser-rating",
        "bearing-static-rating": "static-rating",
        "bearing-preload": "preload", "bearing-stiffness": "stiffness", "bearing-tilt-stiffness": "tilt-stiffness",
        "bearing-speed-limit": "speed-limit", "bearing-set-drag": "drag", "bearing-mass": "mass", "bearing-price": "price",
    }.items():
        y[name] = bearing[key]
    y["thrust-ends"], y["support-ends"], y["stretch"] = ends["thrust-ends"], ends["supports"], ends["stretch"]
    both = y["thrust-ends"] > 1.5
    free = ~both & (y["support-ends"] < 0.5)
    y["bearing-drag-torque"] = y["thrust-ends"] * y["bearing-set-drag"]
    y["drag-torque"] = y["preload-drag-torque"] + y["bearing-drag-torque"]
    # where one end is free no supports are credited
    y["spans"] = np.where(free, 1.0, 1.0 + y["support-pairs"])
    root, bore, length, spans = y["root-diameter"], y["screw-bore"], y["free-length"], y["spans"]
    bend = E * held_beam.second_moment(root, bore)
    held = y["bearing-tilt-stiffness"] * length / (spans * bend)
    # with supports that travel along the weaker outer span counts: its support gives way, and so does an end that only carries
    alone = spans < 1.5
    y["first-end-fixity"] = np.where(alone | both, held, 0.0)
    y["second-end-fixity"] = np.where(free, NAN, np.where(alone & both, held, 0.0))
    second = np.where(free, 0.0, y["second-end-fixity"])
    weight = RHO * np.pi / 4.0 * (y["root-diameter"] ** 2 - y["screw-bore"] ** 2) * G * y["level part"]
    y["screw-weight-on-nut"] = 0.625 * weight * y["free-length"] / y["spans"]
    y["eigenvalue-squared"] = held_beam.eigenvalue_squared(y["first-end-fixity"], second, spans, free)
    y["span-buckling-factor"] = held_beam.buckling_factor(y["first-end-fixity"], second, spans, free)
    y["euler-load"] = y["span-buckling-factor"] * np.pi**2 * bend / length**2
    radius = (root**2 + bore**2) / 16.0
    y["bare-whip-speed"] = y["eigenvalue-squared"] / (TURN * length**2) * np.sqrt(E / RHO * radius)
    y["pressed-length"] = np.where(both, 2.0 / 3.0 * length, length - y["end-gap"] - y["nut-length"] / 2.0)
    pressed = y["bearing-tilt-stiffness"] * y["pressed-length"] / (spans * bend)
    y["pressed-fixity"] = np.where(alone, pressed, 0.0)
    y["nut-fixity"] = 0.0
    y["buckling-factor"] = held_beam.buckling_factor(y["pressed-fixity"], y["nut-fixity"], spans, False)
    y["column-load"] = _column(y, y["pressed-length"])
    area = np.pi / 4.0 * (y["core-diameter"] ** 2 - bore**2)
    give = length / (E * area)
    y["bed-shift"] = np.abs(STEEL - y["bed-expansion"]) / STEEL * y["temperature-swing"]
    y["cold-stretch"] = y["stretch"] + y["bed-shift"]
    strain = np.where(both, STEEL * length / (give + 2.0 / y["bearing-stiffness"]), 0.0)
    y["per kelvin"] = strain
    y["stretch-force"], y["cold-axial-force"] = strain * y["stretch"], strain * y["cold-stretch"]
    y["lead-compensation"] = -STEEL * y["stretch"] * y["travel"]
    near = 1.0 / y["bearing-stiffness"] + (length + y["travel"]) / (2.0 * E * area)
    y["end-share"] = np.where(both, near / (2.0 / y["bearing-stiffness"] + give), 1.0)
    x = y["end-share"]
    y["bearing-share"] = np.where(both, np.cbrt((x**2 + (1.0 - x) ** 2) / 4.0), 1.0)
    one = 1.0 / (1.0 / y["bearing-stiffness"] + give)
    two = 2.0 / (1.0 / y["bearing-stiffness"] + give / 2.0)
    y["screw-stiffness"] = np.where(both, two, one)
    y["bearings-price"] = y["thrust-ends"] * y["bearing-price"]
    held_price = y["bearing-price"] * (y["thrust-ends"] + y["support-price-share"] * y["support-ends"])
    y["held-ends-price"] = held_price + y["ends-price"] * (y["nominal-diameter"] / 0.032) ** 0.8
    y["support-price"] = y["held-ends-price"] + y["support-pair-price"]
    y["support-cost"] = y["drives"] * y["support-price"]


def _column(y, length):
    """Euler's load, below its slenderness limit Johnson's parabola."""
    root, bore, factor, strength = y["root-diameter"], y["screw-bore"], y["buckling-factor"], y["screw-yield-strength"]
    euler = factor * np.pi**2 * E * held_beam.second_moment(root, bore) / length**2
    slender = 4.0 * length / np.sqrt(factor * (root**2 + bore**2))
    area = np.pi / 4.0 * (root**2 - bore**2)
    johnson = area * (strength - (strength * slender / TURN) ** 2 / E)
    return np.where(slender < np.sqrt(2.0 * np.pi**2 * E / strength), johnson, euler)


def _warming(y):
    weights = y["phase-share"]
    loss = total(weights * np.abs(y["phase-force"] * y["phase-speed"])) * (1.0 / y["screw-efficiency"] - 1.0)
    drag = (y["preload-drag-torque"] + y["bearing-drag-torque"] / 2.0) * TURN * y["mean-speed"] / y["travel-per-turn"]
    y["nut-heat"] = drag + loss
    if sides.two(y):
        y["motion-nut-heat"] = drag + loss
        grown = y["racking-force"] / 2.0 * y["mean-speed"] * (1.0 / y["screw-efficiency"] - 1.0)
        y["nut-heat"] = y["motion-nut-heat"] + grown
    shell = y["screw-heat-transfer"] * np.pi * y["nominal-diameter"]
    y["length-warming"] = y["nut-heat"] / (shell * y["free-length"])
    s, fin = y["mean-stroke"], y["fin-length"]
    zone = y["nut-heat"] / (shell * s) * (1.0 - fin / s * (1.0 - np.exp(-s / fin)))
    y["screw-warming"] = np.maximum(y["length-warming"], zone)
    y["stretch-left"] = y["stretch"] - y["length-warming"] - y["bed-shift"]
    y["rise-left"] = y["screw-warming"] - np.minimum(y["length-warming"], y["stretch"])
    y["warm-axial-force"] = y["per kelvin"] * y["stretch-left"]
    y["thermal-compression"] = np.maximum(0.0, -y["warm-axial-force"])
    y["standing-force"] = np.maximum(y["cold-axial-force"], y["thermal-compression"])
    both = y["thrust-ends"] > 1.5
    free = ~both & (y["support-ends"] < 0.5)
    load = y["warm-axial-force"] / np.where(y["euler-load"] > 0.0, y["euler-load"], NAN)
    factor = np.sqrt(np.maximum(1.0 + load, 0.0))
    y["whip-factor"] = np.where(free, factor * (1.0 - 0.0355 * load + 0.0036 * load**2), factor)
    y["whip-speed"] = y["bare-whip-speed"] * y["whip-factor"]
    cos = y["level part"]
    ends = (y["root-diameter"], y["screw-bore"], y["free-length"])
    lying = held_beam.sag(*ends, y["first-end-fixity"], np.where(free, 0.0, y["second-end-fixity"]), y["spans"],
                          y["warm-axial-force"], y["euler-load"], cos)
    y["screw-sag"] = np.where(free, held_beam.rooted_sag(*ends, y["first-end-fixity"], cos), lying)


def _strength(y):
    y["bearing-standing-force"] = y["standing-force"]
    y["bearing-life"] = rolling.set_life(
        y["bearing-rating"], y["bearing-lesser-rating"], y["bearing-preload"], y["bearing-standing-force"],
        y["bearing-share"], y["phase-force"], y["phase-share"] * np.abs(y["phase-speed"]), y["bearing-life-factor"],
        y["racking on both"])
    y["bearing-life-hours"] = rolling.hours(y["bearing-life"], y["travel-per-turn"], y["mean-speed"])
    y["shaft-torque"] = (
        y["peak-force"] * y["lead"] / (TURN * y["screw-efficiency"]) + y["drag-torque"]
        + y["screw-inertia"] * TURN * y["acceleration"] / y["lead"])
    y["end-force"] = y["standing-force"] + y["end-share"] * y["peak-force"]

    def stress(outer, inner):
        pull = 4.0 * y["end-force"] / (np.pi * (outer**2 - inner**2))
        twist = 16.0 * y["shaft-torque"] * outer / (np.pi * (outer**4 - inner**4))
        return np.where(outer > inner, np.sqrt(pull**2 + 3.0 * twist**2), NAN)

    y["screw-stress"] = stress(y["root-diameter"], y["screw-bore"])
    y["journal-stress"] = stress(y["bearing-bore"], y["screw-bore"])
    y["bearing-peak"] = rolling.loaded_half(y["end-force"], y["bearing-preload"])
    y["bearing-static-safety"] = rolling.static_safety(y["bearing-static-rating"], y["bearing-peak"])
    both = y["thrust-ends"] > 1.5
    plain = (y["accelerated-mass"] * y["phase-acceleration"] + y["gravity-force"] * (1.0 - y["phase-balance"])
             + y["phase-direction"] * y["friction-force"])
    cut = y["phase-drive-process-force"]
    level, worst = y["inclination"] == 0.0, 0.0
    for force in (plain, plain + cut, plain - y["cutting-both-ways"] * cut):
        pressing = np.where(level, np.abs(force), -force)
        worst = np.maximum(worst, largest(np.maximum(pressing, 0.0)))
    if sides.two(y):
        y["motion-pressing-force"] = np.where(both, NAN, worst)
    y["pressing-force"] = np.where(both, NAN, worst + y["racking on both"])
    y["column-use"] = np.where(both, _held_column(y), y["pressing-force"] / y["column-load"])


def _held_column(y):
    """The worst place of the nut: the part of length x is pressed by its share of the force and by warming."""
    length, force, warm = y["free-length"], y["peak-force"], y["thermal-compression"]
    root, bore, factor, strength = y["root-diameter"], y["screw-bore"], y["buckling-factor"], y["screw-yield-strength"]
    limit = np.sqrt(2.0 * np.pi**2 * E / strength) * np.sqrt(factor * (root**2 + bore**2)) / 4.0
    best = 0.0
    inner = np.minimum(2.0 / 3.0 * length * (1.0 + over(warm, force)), length)
    for place in (length, np.minimum(limit, length), inner):
        best = np.maximum(best, (force * (1.0 - place / length) + warm) / _column(y, place))
    # those are the three places that docs name; a walk over all others, the very end included, finds what they would miss
    for share in np.linspace(0.0, 1.0, 201):
        place = share * length
        best = np.maximum(best, (force * (1.0 - share) + warm) / _column(y, place))
    return best


def _motor(y, part):
    braked = motor.listed(y, part, part["field-weakening"] > 0.5)
    motor.drive(y, y["screw-inertia"])
    y["brake-energy"], y["brake-life-energy"] = part["brake-energy"], part["brake-life-energy"]
    j_l, j_m = y["load-inertia"], y["rotor-inertia"]
    y["reduction-stop-torque"] = (
        y["reduction"] * (y["set-torque"] * j_l + y["holding-torque"] * j_m) / (j_l + j_m))
    y["motor-cost"] = y["drives"] * y["motor-price"]
    y["drive-mass"] = y["drives"] * (
        y["screw-mass"] + y["nut-mass"] + y["support-mass"] + y["thrust-ends"] * y["bearing-mass"] + y["reduction-mass"]
        + y["motor-mass"])
    y["optimum-lead"] = TURN * y["reduction"] * np.sqrt(y["rotating-inertia"] / y["accelerated-mass"])
    stopping.enter(y, braked)
    y["turn-marking-speed"] = y["first-mode"] * y["lead"]
    ripple_in_cut(y, "turn-frequency-cutting")
    y["turn-rhythm-distance"] = np.abs(y["turn-frequency-cutting"] / y["first-mode"] - 1.0)
    y["screw-damping"] = 0.02
    r = y["cutting-screw-speed"] / y["whip-speed"]
    y["bow-in-cut"] = r**2 / np.sqrt((1.0 - r**2) ** 2 + (2.0 * y["screw-damping"] * r) ** 2)
    twist = y["reduction-stiffness"] * (1.0 / y["rotor-inertia"] + 1.0 / y["load-inertia"])
    y["coupling-resonance"] = np.sqrt(twist) / (TURN * y["reduction"])
    loop = 0.7 * 0.245 * np.sqrt(y["total-stiffness"] / y["reduced-mass"])
    y["coupling-floor"] = 3.0 * 4.0 * loop / TURN


def _exchange(y, kinds):
    hours = {part["of"]: part for part in kinds["exchange"]}
    cost.exchange(y, "screw", y["element-price"], hours["screw"], y["screw-life-hours"])
    cost.exchange(y, "bearing", y["bearings-price"], hours["screw-bearing"], y["bearing-life-hours"])
    belt = y["belts"] > 0.5
    cost.exchange(y, "reduction", y["reduction-price"], hours["belt"], y["belt-life"])
    for name in ("work", "standstill"):
        y[f"reduction-exchange-{name}"] = np.where(belt, y[f"reduction-exchange-{name}"], NAN)
    y["reduction-exchange-price"] = np.where(belt, y["reduction-exchange-price"], NAN)
    y["replacement-cost"] = (
        y["screw-replacement"] + y["bearing-replacement"] + np.where(belt, y["reduction-replacement"], 0.0))


def _last(y, parts):
    growth = y["temperature-swing"] + y["rise-left"]
    own = rss(y["mean-travel-deviation"], y["travel-variation"])
    section = rss(y["section-travel-deviation"], y["section-travel-variation"])
    scale, table = parts["feedback"], parts["mapping"]
    position.enter(y, scale, scale["is scale"] > 0.5, table, table["is table"] > 0.5, growth, [y["turn-variation"]],
                   0.6e-6, (own, section))
    y["lead-time"] = np.maximum.reduce(np.broadcast_arrays(*(parts[kind]["lead-time"] for kind in parts)))
    y["scale-lead-time"] = scale["lead-time"]
    without = [parts[kind]["lead-time"] for kind in parts if kind not in ("feedback", "mapping")]
    y["parts-lead-time"] = np.maximum.reduce(np.broadcast_arrays(*without))
