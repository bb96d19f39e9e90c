"""The census by rule: each configuration is counted once, at the first binding rule that it breaks.

Rules come in the order of stages, then of their names (docs/method.md section 8). A rule belongs to the first stage that knows all
it names; which choices a quantity hangs on is read off the shape of its array in a trial of two parts a kind. Within the stages of
motor and quality the documents tell no order: the steps below were found by counting, and hold for all briefs of one drive. With two
drives the racking moves quantities to later stages; there only the sum is compared.
"""

import collections

import numpy as np

import demand
import grid
from sheet import Sheet

# place of each choice in the order of the search: of racks, the quality comes after the motor
ORDER = {"ball-screw": list(range(10)), "helical-rack": [0, 4, 1, 2, 3, 5, 6]}
TEETH = dict.fromkeys(("pinion-pitting", "rack-pitting", "pinion-root", "rack-root", "pinion-root-people", "rack-root-people"), 0.1)
SELDOM = dict.fromkeys(("pinion-flank-peak", "rack-flank-peak", "pinion-root-peak", "rack-root-peak", "pinion-root-peak-people",
                        "rack-root-peak-people", "stop-pinion-root", "stop-rack-root"), 0.05)
# a table of corrections has no time of delivery
DELIVERY = {"delivery-time": -1.0}
REST = dict.fromkeys(("motor-winding", "motor-standing", "brake-energy", "belt-shaft-load", "gearbox-warming"), 0.3)
LATER = {
    "ball-screw": {"motor-peak": 0.1, "coupling-stop": 0.1, "motor-heating": 0.2, **REST, **DELIVERY},
    "helical-rack": {
        "motor-top-speed": -0.02, "gearbox-peak": 0.05, "pinion-seat": 0.05, "gearbox-axial-load": 0.05, "motor-peak": 0.1,
        "gearbox-stop": 0.1, "rack-holds-stop": 0.1, "gearbox-mean": 0.2, "gearbox-output-bearing": 0.2, "motor-heating": 0.2,
        "rack-fastening": 0.01, "play-in-cut": 0.5, **SELDOM, **TEETH, **REST, **DELIVERY,
    },
}


def stages(family, kinds, brief):
    """The last choice that each quantity hangs on."""
    main = {key: value for key, value in brief["axes"]["main"].items() if key not in ("feedback", "mapping", "drives")}
    main["direction"] = "30 deg"
    brief = {**brief, "axes": {"main": main}}
    lists = {kind: (parts * 2)[:2] for kind, parts in grid.choices(family, kinds, main).items()}
    y = Sheet()
    demand.enter(y, brief, main, kinds)
    with np.errstate(all="ignore"):
        grid.FAMILIES[family].work_out(y, grid.arrays(lists, kinds), kinds, brief)
    order = ORDER[family]
    return {name: max([order[i] for i, size in enumerate(value.shape[:-1]) if size > 1], default=0)
            for name, value in y.items()}


def fallen(family, rules, known, y, shape):
    """How many configurations fall at each binding rule."""
    def place(rule):
        when = rule.when.get("stated") or (rule.when.get("above") or {}).get("characteristic")
        last = max(known.get(name, 0) for name in rule.names() + [when])
        return last + LATER[family].get(rule.name, 0.0), rule.name

    left, counts = np.ones(shape, bool), collections.Counter()
    for rule in sorted((rule for rule in rules if rule.shall), key=place):
        applies = rule.applies(y)
        if not np.any(applies):
            continue
        broken = np.broadcast_to(applies & ~rule.kept(y), shape) & left
        if broken.any():
            counts[rule.name] = int(broken.sum())
            left &= ~broken
    return counts
