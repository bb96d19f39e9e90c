"""The rules of rules/*.yaml, judged on a sheet: one configuration or a whole catalogue at once."""

import pathlib

import numpy as np
import yaml

from quantities import in_si


ROUNDING = 1e-12


class Rule:
    def __init__(self, name, body):
        self.name, self.shall = name, body["obligation"] == "shall"
        self.weight = in_si(body.get("weighs", 0.0))
        self.families = body.get("applies-to")
        limit = body["limit"]
        self.demand = limit["characteristic"]
        self.floor = "at-least" in limit
        bound = limit["at-least" if self.floor else "at-most"]
        self.factor = float(bound.get("factor", 1.0))
        self.of = bound.get("of")
        self.value = in_si(bound["value"]) if "value" in bound else None
        self.when = body.get("when") or {}

    def applies(self, y):
        """Where the rule is judged at all."""
        if "stated" in self.when:
            name = self.when["stated"]
            return ~np.isnan(y[name]) if name in y else np.array(False)
        if "above" in self.when:
            above = self.when["above"]
            return y[above["characteristic"]] > in_si(above["value"])
        return np.array(True)

    def names(self):
        return [name for name in (self.demand, self.of) if name]

    def limit(self, y):
        return self.factor * y[self.of] if self.of else np.asarray(self.value, float)

    def utilisation(self, y):
        """Demand over limit, or limit over demand where the limit is a floor; NaN where it cannot be told."""
        demand, limit = y[self.demand], self.limit(y)
        above, below = (limit, demand) if self.floor else (demand, limit)
        above, below = np.broadcast_arrays(above, below)
        with np.errstate(all="ignore"):
            plain = above / below
        return np.where((above == 0.0) & (below == 0.0), 0.0, plain)

    def kept(self, y):
        """NaN is never kept; what differs from its limit by rounding alone is just allowed."""
        demand, limit = y[self.demand], self.limit(y)
        return demand >= limit * (1.0 - ROUNDING) if self.floor else demand <= limit * (1.0 + ROUNDING)


def load(folder, family):
    found = []
    for path in sorted(pathlib.Path(folder).glob("*.yaml")):
        rule = Rule(path.stem, yaml.safe_load(path.read_text()))
        if rule.families is None or family in rule.families:
            found.append(rule)
    return found


# what a binding rule that cannot be told adds to the miss of a drive (docs/method.md section 8)
NOT_TOLD = 1e6


def judge(rules, y):
    """Whether all binding rules are kept, the weights of advice not followed, and the misses summed."""
    admissible, advice, miss = np.array(True), 0.0, 0.0
    for rule in rules:
        applies = rule.applies(y)
        if not np.any(applies):
            continue
        broken = applies & ~rule.kept(y)
        if not rule.shall:
            advice = advice + np.where(broken, rule.weight, 0.0)
            continue
        admissible = admissible & ~broken
        use = rule.utilisation(y)
        told = np.isfinite(use)
        miss = miss + np.where(broken, np.where(told, use - 1.0, NOT_TOLD), 0.0)
    return admissible, advice, miss


def hopeless(rules, y, shape):
    """Binding rules that no configuration keeps, each with the least utilisation that any of them reaches."""
    found = {}
    for rule in rules:
        if not rule.shall or not np.all(rule.applies(y)):
            continue
        if np.any(np.broadcast_to(rule.kept(y), shape)):
            continue
        use = rule.utilisation(y)
        told = use[np.isfinite(use)]
        found[rule.name] = float(told.min()) if told.size else np.nan
    return found
