"""The duty of an axis as phases of constant force and speed: seven-segment moves cut into what docs/method.md section 1 says.

In the two ramps of a speeding up every acceleration occurs at the mean speed v_p/2, so two points of Gauss and Legendre stand for
them. Each phase is a dictionary; `columns` turns the list into arrays.
"""

import math

import numpy as np

from quantities import in_si

GAUSS = (0.5 * (1.0 + 1.0 / math.sqrt(3.0)), 0.5 * (1.0 - 1.0 / math.sqrt(3.0)))
KEYS = ["share", "direction", "speed", "rms-speed", "top-speed", "acceleration", "moves", "stroke", "process-force", "balance"]


class Move:
    """Rest to rest over a stroke, with limits of speed, acceleration and jerk."""

    def __init__(self, stroke, speed, acceleration, jerk):
        s, v, a, j = stroke, speed, acceleration, jerk
        reaches_a = v * j >= a * a
        ramp = v / a + a / j if reaches_a else 2.0 * math.sqrt(v / j)
        if s >= v * ramp:
            self.top, self.peak = v, (a if reaches_a else math.sqrt(v * j))
            self.short = False
        elif s >= 2.0 * a**3 / j**2:
            half = a * a / (2.0 * j)
            self.top, self.peak = math.sqrt(half * half + a * s) - half, a
            self.short = True
        else:
            self.peak = j * (s / (2.0 * j)) ** (1.0 / 3.0)
            self.top = j * (s / (2.0 * j)) ** (2.0 / 3.0)
            self.short = True
        self.jerk_time = self.peak / j
        self.speeding = self.top / self.peak + self.peak / j
        self.cruise = 0.0 if self.short else max(s / self.top - self.speeding, 0.0)
        # no constant part where the acceleration is not reached, or just reached
        self.constant = max(self.top / self.peak - self.jerk_time, 0.0) if self.peak == a else 0.0
        self.time = 2.0 * self.speeding + self.cruise
        self.stroke = s

    def rms_speed(self):
        """Of the speeding up: by parts, each ramp a parabola over time, between them a straight line."""
        u, t, a, v = self.peak * self.jerk_time, self.jerk_time, self.speeding, self.top
        squares = (
            u * u * t / 20.0
            + (a - 2.0 * t) * (v * v - v * u / 2.0 + u * u / 4.0) / 3.0
            + t * (v * v - v * u / 3.0 + u * u / 20.0)
        )
        # the straight line runs from u/2 to v − u/2
        return math.sqrt(squares / a)


def _phase(**values):
    return {**{key: 0.0 for key in KEYS}, **values}


def _way(move, direction, share, count, force, balance):
    """The seven phases of one way; `share` is the part of working time that the whole way takes."""
    part = lambda time: share * time / move.time
    ramp = dict(direction=direction, speed=direction * move.top / 2.0, moves=count, stroke=move.stroke, balance=balance)
    ramp.update({"rms-speed": move.rms_speed(), "top-speed": move.top, "process-force": force if move.short else 0.0})
    phases = []
    for sign in (1.0, -1.0):
        phases.append(_phase(**{**ramp, "share": part(move.constant), "acceleration": sign * direction * move.peak}))
        for point in GAUSS:
            phases.append(_phase(**{**ramp, "share": part(move.jerk_time), "acceleration": sign * direction * move.peak * point}))
        if sign > 0.0:
            phases.append(_phase(**{**ramp, "share": part(move.cruise), "speed": direction * move.top,
                                    "rms-speed": move.top, "process-force": force}))
    return [phase for phase in phases if phase["share"] > 0.0]


class Duty:
    """All phases of an axis, those of the duty first, then those of the requirement."""

    def __init__(self, axis, signed, balance, ripple):
        self.axis, self.signed, self.balance, self.ripple = axis, signed, balance, ripple
        self.phases, self.ramps, self.cuts, self.strokes, self.forced = [], [], [], [], []
        lines = axis.get("moves")
        if lines:
            self._moves(lines)
        else:
            self._shares(axis.get("duty") or self._default())
        if ripple:
            self._stroke_ends()
        self._requirement()
        self.usual_stroke = min(self.strokes + [axis["travel"]])

    def _default(self):
        speed, cut = self.axis["speed"], self.axis["cutting-force"]
        middle = self.axis["cutting-speed"] if cut > 0.0 else 0.5 * speed
        return [{"share": 0.2, "speed": speed}, {"share": 0.5, "speed": middle, "force": cut}, {"share": 0.3, "stand": True}]

    def _line(self, move, force, directions):
        self.ramps.append(move.speeding)
        if force > 0.0:
            self.forced.append((move, force, directions))
            self.cuts.append(move.time if move.short else move.cruise)
        self.strokes.append(move.stroke)

    def _shares(self, lines):
        for line in lines:
            share, force = in_si(line["share"]), in_si(line.get("force", 0.0))
            if line.get("stand"):
                self.phases.append(_phase(share=share, balance=self.balance, **{"process-force": self.signed * force}))
                continue
            stroke = in_si(line["stroke"]) if "stroke" in line else 0.5 * self.axis["travel"]
            move = Move(stroke, in_si(line["speed"]), self.axis["acceleration"], self.axis["jerk"])
            self._line(move, force, (1.0, -1.0))
            count = 3600.0 * 0.5 * share / move.time
            for direction in (1.0, -1.0):
                self.phases += _way(move, direction, 0.5 * share, count, self.signed * force, self.balance)

    def _moves(self, lines):
        signed = any(in_si(line["distance"]) < 0.0 for line in lines)
        standing = 1.0
        for line in lines:
            limit = lambda key: min(in_si(line[key]), self.axis[key]) if key in line else self.axis[key]
            distance, force = in_si(line["distance"]), in_si(line.get("force", 0.0))
            count = in_si(line["count-per-hour"])
            move = Move(abs(distance), limit("speed"), limit("acceleration"), limit("jerk"))
            self._line(move, force, (math.copysign(1.0, distance),) if signed else (1.0, -1.0))
            share = count * move.time / 3600.0
            standing -= share
            if signed:
                ways = [(math.copysign(1.0, distance), share, count)]
            else:
                ways = [(1.0, 0.5 * share, 0.5 * count), (-1.0, 0.5 * share, 0.5 * count)]
            for direction, part, number in ways:
                self.phases += _way(move, direction, part, number, self.signed * force, self.balance)
        self.phases.append(_phase(share=max(standing, 0.0), balance=self.balance))

    def _stroke_ends(self):
        """A gas spring varies over the stroke: standing, and each line with a force, at both ends of it."""
        weak, strong = self.balance * (1.0 - self.ripple), self.balance * (1.0 + self.ripple)
        for phase in [phase for phase in self.phases if phase["direction"] == 0.0]:
            for end in (weak, strong):
                self._demand([end], **{"process-force": phase["process-force"]})
        for move, force, directions in self.forced:
            for direction in directions:
                for end, sign in ((weak, 1.0), (strong, -1.0)):
                    self._demand([end], direction=direction, speed=direction * move.top,
                                 acceleration=sign * move.peak if move.short else 0.0,
                                 **{"rms-speed": move.top, "top-speed": move.top, "process-force": self.signed * force})

    def _requirement(self):
        axis = self.axis
        for direction in (1.0, -1.0):
            for acceleration in (axis["acceleration"], -axis["acceleration"]):
                # a gas spring is weaker where the drive pushes upward, stronger where it pushes downward
                end = self.balance * (1.0 - math.copysign(self.ripple, acceleration))
                self._demand([end], direction=direction, speed=direction * axis["speed"] / 2.0,
                             acceleration=acceleration, **{"rms-speed": axis["speed"] / 2.0, "top-speed": axis["speed"]})
            ends = [self.balance * (1.0 - self.ripple), self.balance * (1.0 + self.ripple)] if self.ripple else [self.balance]
            speed = axis["cutting-speed"]
            self._demand(ends, direction=direction, speed=direction * speed,
                         **{"rms-speed": speed, "top-speed": speed, "process-force": self.signed * axis["cutting-force"]})

    def _demand(self, balances, **values):
        """A phase without a share of time, left out where one like it is held already."""
        for balance in balances:
            phase = _phase(balance=balance, **values)
            same = ("direction", "top-speed", "acceleration", "process-force", "balance")
            if not any(all(abs(other[key] - phase[key]) <= 1e-12 * abs(phase[key]) for key in same) for other in self.phases):
                self.phases.append(phase)

    def columns(self):
        return {f"phase-{key}": np.array([phase[key] for phase in self.phases]) for key in KEYS}
