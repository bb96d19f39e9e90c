"""Parts as arrays: one configuration alone, or every choice of a catalogue along an axis of its own."""

import numpy as np

import rack
import screw

FAMILIES = {"ball-screw": screw, "helical-rack": rack}
TEXTS = {"kind", "recirculation", "steel", "pinion-steel", "designation"}


def _feedback(kinds, main):
    wanted = main.get("feedback", "any")
    scales = [{**part, "is scale": 1.0} for part in kinds["linear-scale"]]
    motor = {"designation": "motor", "is scale": 0.0, "lead-time": 0.0}
    return {"any": [motor] + scales, "motor": [motor], "scale": scales}[wanted]


def _mapping(kinds, main):
    wanted = main.get("mapping", "any")
    tables = [{**part, "is table": 1.0} for part in kinds["error-table"]]
    none = {"designation": "none", "is table": 0.0, "lead-time": 0.0}
    return {"any": [none] + tables, "none": [none], "table": tables}[wanted]


def choices(family, kinds, main):
    """All parts that each stage of a family chooses from, in the order of its axes."""
    level = main["direction"] == "horizontal"
    lists = {}
    for kind in FAMILIES[family].AXES:
        if kind == "feedback":
            lists[kind] = _feedback(kinds, main)
        elif kind == "mapping":
            lists[kind] = _mapping(kinds, main)
        elif kind in ("rack", "pinion"):
            lists[kind] = [part for part in kinds[kind] if part["helical"] > 0.5]
        elif kind == "servo-motor":
            # no motor with a brake is offered on a level axis
            lists[kind] = [part for part in kinds[kind] if not (level and "brake-torque" in part)]
        else:
            lists[kind] = kinds[kind]
    return lists


def _column(parts, key, shape):
    if key in TEXTS:
        return np.array([part.get(key, "") for part in parts], dtype=object).reshape(shape)
    return np.array([part.get(key, np.nan) for part in parts], dtype=float).reshape(shape)


class _Column(dict):
    """Keys that no part of a kind has are unknown in all of them."""

    def __missing__(self, key):
        return np.nan


def arrays(lists, all_kinds):
    """Each kind of part as columns along its own axis; the last axis is that of the phases."""
    columns = {}
    for place, (kind, parts) in enumerate(lists.items()):
        shape = [1] * (len(lists) + 1)
        shape[place] = len(parts)
        keys = {key for part in all_kinds.get(kind, parts) + parts for key, value in part.items()
                if not isinstance(value, str) or key in TEXTS}
        columns[kind] = _Column({key: _column(parts, key, shape) for key in keys})
    return columns


def only(lists, components):
    """The one configuration that a record names; no scale or table means that of the motor and none."""
    named = {part["designation"] for part in components}
    chosen = {}
    for kind, parts in lists.items():
        found = [part for part in parts if part["designation"] in named]
        if kind in ("feedback", "mapping") and not found:
            found = [part for part in parts if part["designation"] in ("motor", "none")]
        if kind == "screw-support" and not found:
            found = [part for part in parts if part["pairs"] == 0.0]
        chosen[kind] = found
        if len(found) != 1:
            raise LookupError(f"{kind}: {len(found)} parts of the record are known")
    return chosen
