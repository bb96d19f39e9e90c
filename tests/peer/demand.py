"""From the brief to the demand: defaults of docs/brief.md, masses and forces that no choice of parts changes, and the duty."""

import math

import numpy as np

import sides
from duty import Duty, Move
from quantities import in_si
from sheet import NAN, largest, over, total

CARRIAGE = 200e6
DIRECTIONS = {"both": (1.0, 1.0), "up": (-1.0, 0.0), "forward": (-1.0, 0.0), "down": (1.0, 0.0), "back": (1.0, 0.0)}


def _si(group, key, default=NAN):
    return in_si(group[key]) if key in group else default


def enter(y, machine, axis, kinds):
    """Enters all lines that come from the brief alone."""
    g = lambda key, default=NAN: _si(axis, key, default)
    angle = {"horizontal": 0.0, "vertical": math.pi / 2}.get(axis["direction"])
    y["inclination"] = in_si(axis["direction"]) if angle is None else angle
    y["travel"], y["overtravel"] = g("travel"), g("overtravel", 0.05)
    y["speed"], y["acceleration"] = g("speed"), g("acceleration")
    y["jerk"] = g("jerk", g("acceleration") / 0.05)
    y["moved-mass"], y["carried-mass"] = g("moved-mass"), 0.0
    y["carriage-reach"] = 0.0
    sides.stated(y, axis)
    y["guide-friction"], y["wiper-force"] = g("guide-friction", 0.005), g("wiper-force", 40.0)
    hangs = axis.get("counterbalance") or {}
    gas, weight = hangs.get("kind") == "gas", hangs.get("kind") == "weight"
    share = _si(hangs, "share", 0.0)
    y["counterbalance-share"] = share
    y["counterweight-share"] = share if weight else 0.0
    y["counterbalance-ripple"] = _si(hangs, "ripple", 0.1) if gas else (0.0 if weight else NAN)
    y["greatest-balance"] = y["counterbalance-share"] * (1.0 + y["counterbalance-ripple"])
    y["rope-slackening"] = y["acceleration"] / 9.80665 if weight else NAN
    y["people-below"] = 1.0 if axis.get("people-below") else 0.0

    forces = [in_si(line["force"]) for line in (axis.get("duty") or axis.get("moves") or []) if "force" in line]
    y["cutting-force"] = g("cutting-force", max(forces, default=0.0))
    sign, both = DIRECTIONS[axis.get("cutting-force-direction", "both")]
    y["cutting-both-ways"] = both
    y["cutting-speed"] = g("cutting-speed", 0.25 * g("speed"))
    y["temperature-swing"] = _si(machine, "temperature-swing", 5.0)
    y["reliability"] = _si(machine, "reliability", 0.9)
    year = 365.25 * 86400.0
    y["service-years"] = _si(machine, "years-in-service", 10.0) * year
    y["hours-per-year"] = _si(machine, "hours-per-year", 4000.0) * 3600.0
    y["service-hours"] = y["service-years"] / year * y["hours-per-year"]
    y["energy-price"] = _si(machine, "energy-price", 0.25)
    y["downtime-price"] = _si(machine, "downtime-cost", 100.0)
    y["discount-rate"] = _si(machine, "discount-rate", 0.06)
    r, n = y["discount-rate"], y["service-years"] / year
    y["annuity"] = n if r == 0.0 else (1.0 - (1.0 + r) ** -n) / r
    y["supply-voltage"] = _si(machine, "supply-voltage", 400.0)
    y["supply-tolerance"] = _si(machine, "supply-tolerance", 0.1)
    y["altitude"] = _si(machine, "altitude", 1000.0)
    y["ambient-temperature"] = _si(machine, "ambient-temperature", 40.0)
    y["lead-time-limit"] = _si(machine.get("limits") or {}, "lead-time")
    _required(y, axis)

    # values that nobody states, as docs/method.md names them
    y["bracket-stiffness"], y["scale-mount-stiffness"], y["end-gap"] = 800e6, 400e6, 0.040
    y["friction-scatter"], y["compensated-play"], y["torque-margin"] = 0.1, 0.0, 1.5
    y["brake-delay"], y["brake-share"] = 0.05, 0.8
    y["section-limit"] = 2.0
    y["section-length"] = np.minimum(y["travel"], y["section-limit"])
    chain = axis.get("cable-chain") or {}
    y["cable-chain-mass-per-metre"] = _si(chain, "mass-per-metre", 0.0)
    y["cable-chain-friction"] = _si(chain, "friction", 0.05) if chain else 0.0
    y["cable-chain-mass"] = y["cable-chain-mass-per-metre"] * y["travel"] / 4.0
    y["level part"] = 0.0 if angle == math.pi / 2 else math.cos(y["inclination"])
    cos = y["level part"]
    y["cable-chain-force"] = (
        y["cable-chain-friction"] * y["cable-chain-mass-per-metre"] * y["travel"] / 2.0 * 9.80665 * cos
    )
    y["drag-force"] = y["wiper-force"] + y["cable-chain-force"]
    y["drive-wiper-force"] = y["drag-force"] / y["drives"]
    y["drive-cutting-force"] = y["cutting-force"] * y["cutting-share"]
    _duty(y, axis, sign, gas)
    _tilt(y, axis)
    _surroundings(y, machine, kinds)
    bed = "bed-" + axis.get("bed", "steel")
    y["bed-expansion"] = next(part["expansion"] for part in kinds["bed-material"] if part["designation"] == bed)


def _required(y, axis):
    names = {"accuracy": "accuracy", "section-accuracy": "section-accuracy", "repeatability": "repeatability",
             "reversal": "reversal", "cutting-deflection": "deflection", "first-mode": "first-mode"}
    for key, name in names.items():
        y[f"required-{name}"] = _si(axis, key)
    y["required-ripple"] = _si(axis, "ripple", 10e-6 if y["cutting-force"] > 0.0 else NAN)
    contour, settling = axis.get("contour") or {}, axis.get("settling") or {}
    y["contour-speed"], y["contour-radius"] = _si(contour, "speed"), _si(contour, "radius")
    y["required-contour"] = _si(contour, "error")
    y["feed-forward"] = _si(contour, "feed-forward", 0.0)
    y["required-settling"], y["settling-window"] = _si(settling, "time"), _si(settling, "window")


def _duty(y, axis, sign, gas):
    plain = {key: float(y[key]) for key in
             ("travel", "speed", "acceleration", "jerk", "cutting-force", "cutting-speed")}
    balance = float(y["counterbalance-share"])
    duty = Duty({**axis, **plain}, sign, balance, float(y["counterbalance-ripple"]) if gas else 0.0)
    for name, column in duty.columns().items():
        y[name] = column
    y["usual-stroke"] = duty.usual_stroke
    full = Move(1e9, plain["speed"], plain["acceleration"], plain["jerk"])
    # the longest is that of a move over the whole travel, or of a slower line of the duty
    whole = Move(plain["travel"], plain["speed"], plain["acceleration"], plain["jerk"])
    y["longest-ramp-time"] = max(duty.ramps + [whole.speeding])
    y["longest-cut-time"] = max(duty.cuts, default=0.0)
    y["phase-drive-process-force"] = y["phase-process-force"] * y["cutting-share"]
    share, speed, stroke = y["phase-share"], np.abs(y["phase-speed"]), y["phase-stroke"]
    way = total(share * speed)
    moving = stroke > 0.0
    y["moves-per-hour"] = 3600.0 * total(np.where(moving, share * speed / np.where(moving, stroke, 1.0), 0.0))
    y["mean-stroke"] = np.where(way > 0.0, over(total(share * speed * stroke), way), y["usual-stroke"])
    y["mean-speed"] = way
    y["service-distance"] = y["mean-speed"] * y["service-hours"]
    y["slowing-distance"] = full.top * full.speeding / 2.0
    y["move-time"] = Move(duty.usual_stroke, plain["speed"], plain["acceleration"], plain["jerk"]).time


def _tilt(y, axis):
    wave = axis.get("guide-waviness") or {}
    y["guide-waviness-height"], y["guide-waviness-length"] = _si(wave, "height"), _si(wave, "length")
    waves = (
        2.0 * y["guide-waviness-height"] / y["base of guides"]
        * np.abs(np.sin(np.pi * y["base of guides"] / y["guide-waviness-length"]))
    )
    # of tilt and waves the one that the brief leaves out counts as none
    stated = "guide-tilt" in axis or bool(wave)
    none = 0.0 if stated else NAN
    y["guide-tilt"] = _si(axis, "guide-tilt", none)
    y["waviness-tilt"] = waves if wave else none
    y["slide-tilt"] = math.hypot(y["guide-tilt"], y["waviness-tilt"])
    y["arm to drive"] = _si(axis, "tool-to-drive")
    y["arm to scale"] = _si(axis, "tool-to-scale", y["arm to drive"])


def _surroundings(y, machine, kinds):
    """The dearest cover and the shortest interval of all surroundings that the brief names."""
    words = " ".join(machine.get("environment") or []).lower().split()
    names = lambda s: {word.strip() + end for word in s["words"].split(",") for end in ("", "s")}
    named = [s for s in kinds["surroundings"] if names(s).intersection(words)]
    plain = kinds["price-basis"][0]["cover-per-metre"]
    y["cover-metre-price"] = max((s["cover-per-metre"] for s in named), default=plain)
    y["surroundings-share"] = min((s["interval-share"] for s in named), default=1.0)
    y["cover-price"] = y["travel"] * y["cover-metre-price"]
    y["cover-cost"] = y["drives"] * y["cover-price"]


def forces(y):
    """Once all that rides on the slide is known."""
    gravity = 9.80665
    sin, cos = np.sin(y["inclination"]), y["level part"]
    level = y["inclination"] == 0.0
    y["moving-mass"] = y["moved-mass"] + y["carried-mass"] + y["riding-mass"] + y["cable-chain-mass"]
    y["driven-mass"] = y["load-share"] * y["moving-mass"]
    y["friction-force"] = y["guide-friction"] * y["driven-mass"] * gravity * cos + y["drive-wiper-force"]
    y["gravity-force"] = np.where(level, 0.0, y["driven-mass"] * gravity * sin)
    y["counterweight-mass"] = y["counterweight-share"] * y["driven-mass"] * sin
    y["accelerated-mass"] = y["driven-mass"] + y["counterweight-mass"]
    # a hanging weight takes its share of the weight off too, by its own weight on the rope
    plain = (
        y["accelerated-mass"] * y["phase-acceleration"]
        + y["gravity-force"] * (1.0 - y["phase-balance"])
        + y["phase-direction"] * y["friction-force"]
    )
    one = plain + y["phase-drive-process-force"]
    other = plain - y["cutting-both-ways"] * y["phase-drive-process-force"]
    y["phase-force"] = np.where(np.abs(other) > np.abs(one), other, one)
    y["motion peak"] = np.maximum(largest(np.abs(y["phase-force"])), y["gravity-force"])
    weights = y["phase-share"] * np.abs(y["phase-speed"])
    way = total(weights)
    cubes = total(np.abs(y["phase-force"]) ** 3 * weights)
    y["mean-force"] = np.where(way > 0.0, np.cbrt(over(cubes, way)), 0.0)
