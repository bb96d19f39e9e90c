"""Random briefs and cut-down catalogues under a seed; every brief is a text that the program reads like any other."""

import math

import yaml

FAMILIES = ["ball-screw", "helical-rack"]
# kinds of which a catalogue keeps only some parts, and how many
KEPT = {
    "ball-screw": 4, "screw-grade": 2, "preload-class": 2, "end-arrangement": 2, "screw-bearing": 2, "screw-reduction": 3,
    "servo-motor": 3, "linear-scale": 1, "rack": 3, "rack-grade": 2, "pinion": 3, "gearbox": 2,
}


def number(chance, low, high, digits=3):
    """Even on a logarithmic scale, as an engineer would round it."""
    value = low * (high / low) ** chance.random()
    return float(f"{value:.{digits}g}")


def sometimes(chance, share, into, key, value):
    if chance.random() < share:
        into[key] = value() if callable(value) else value


def axis(chance):
    direction = chance.choice(["horizontal"] * 5 + ["vertical"] * 3 + ["30 deg", "60 deg"])
    inclined = direction != "horizontal"
    travel = number(chance, 0.3, 6.0 if not inclined else 2.5)
    speed = number(chance, 8, 80)
    acceleration = number(chance, 0.5, 8)
    a = {
        "direction": direction,
        "travel": f"{travel} m",
        "moved-mass": f"{number(chance, 30, 1500 if not inclined else 500)} kg",
        "speed": f"{speed} m/min",
        "acceleration": f"{acceleration} m/s²",
        "families": FAMILIES,
    }
    some = lambda share, key, value: sometimes(chance, share, a, key, value)
    some(0.4, "overtravel", lambda: f"{chance.choice([30, 40, 60, 100])} mm")
    some(0.6, "jerk", lambda: f"{number(chance, acceleration * 4, acceleration * 60)} m/s³")
    some(0.4, "guide-friction", lambda: chance.choice([0.003, 0.01, 0.02, 0.1]))
    some(0.5, "wiper-force", lambda: f"{number(chance, 10, 300)} N")
    some(0.3, "bed", lambda: chance.choice(["cast-iron", "aluminium", "granite", "mineral-casting", "steel"]))
    some(0.2, "cable-chain", lambda: {"mass-per-metre": f"{number(chance, 0.5, 8)} kg/m"})
    if inclined:
        some(0.35, "counterbalance", lambda: balance(chance))
        some(0.25, "people-below", True)
    force = number(chance, 100, 5000) if chance.random() < 0.65 else 0.0
    if force:
        a["cutting-force"] = f"{force} N"
        some(0.5, "cutting-force-direction", lambda: chance.choice(
            ["both", "up", "down"] if inclined else ["both", "forward", "back"]))
        cut = float(f"{speed * chance.uniform(0.05, 0.6):.3g}")
        some(0.7, "cutting-speed", f"{cut} m/min")
        some(0.25, "ripple", lambda: f"{number(chance, 3, 40)} µm")
        some(0.3, "cutting-deflection", lambda: f"{number(chance, 20, 400)} µm")
    kind = chance.random()
    if kind < 0.45:
        a["duty"] = duty(chance, travel, speed, force)
    elif kind < 0.75:
        a["moves"] = moves(chance, travel, speed, acceleration, force, inclined)
    some(0.35, "accuracy", lambda: f"{number(chance, 20, 300)} µm")
    if travel > 2.0:
        some(0.4, "section-accuracy", lambda: f"{number(chance, 20, 300)} µm")
    some(0.25, "repeatability", lambda: f"{number(chance, 8, 100)} µm")
    some(0.2, "reversal", lambda: f"{number(chance, 4, 80)} µm")
    some(0.25, "first-mode", lambda: f"{number(chance, 8, 40)} Hz")
    some(0.25, "feedback", lambda: chance.choice(["motor", "scale"]))
    some(0.2, "mapping", lambda: chance.choice(["none", "table"]))
    some(0.15, "contour", lambda: {
        "speed": f"{float(f'{speed * chance.uniform(0.05, 0.5):.3g}')} m/min", "radius": f"{number(chance, 20, 400)} mm",
        "error": f"{number(chance, 5, 200)} µm", "feed-forward": f"{chance.choice([0, 50, 90])} %"})
    some(0.15, "settling", lambda: {"time": f"{number(chance, 30, 600)} ms", "window": f"{number(chance, 2, 50)} µm"})
    if chance.random() < 0.2:
        a["tool-to-drive"] = f"{chance.choice([80, 150, 300])} mm"
        a["guide-tilt"] = f"{number(chance, 2, 40)} arcsec"
        some(0.5, "tool-to-scale", lambda: f"{chance.choice([20, 60])} mm")
        if chance.random() < 0.5:
            a["guide-base"] = f"{chance.choice([0.2, 0.5, 0.9])} m"
            a["guide-waviness"] = {"height": f"{chance.choice([3, 8])} µm", "length": f"{chance.choice([0.7, 1.6])} m"}
    if chance.random() < 0.2:
        a["drives"], a["drive-spacing"] = 2, f"{number(chance, 0.5, 3)} m"
        some(0.4, "mass-offset", lambda: f"{chance.choice([20, 100])} mm")
        some(0.5, "yaw-stiffness", lambda: f"{number(chance, 1e4, 1e6)} kN·m/rad")
        some(0.5, "side-temperature-difference", lambda: f"{chance.choice([0, 0.3, 2])} K")
        some(0.5, "side-correction", lambda: f"{chance.choice([50, 90])} %")
    if "guide-base" not in a and chance.random() < 0.15:
        a["guide-base"] = "0.4 m"
    if "guide-base" in a and "drives" not in a:
        some(0.6, "guide-spacing", lambda: f"{chance.choice([0.3, 0.8])} m")
    return a


def balance(chance):
    kind = chance.choice(["gas", "weight"])
    group = {"kind": kind, "share": f"{chance.choice([40, 70, 90, 100])} %"}
    if kind == "gas" and chance.random() < 0.5:
        group["ripple"] = f"{chance.choice([5, 18])} %"
    return group


def duty(chance, travel, speed, force):
    """Shares in whole per cent that make up the hundred."""
    count = chance.randint(1, 4)
    cuts = sorted(chance.sample(range(5, 96), count))
    shares = [b - a for a, b in zip([0] + cuts, cuts + [100])]
    lines = []
    for index, share in enumerate(shares):
        if index == count and chance.random() < 0.8:
            lines.append({"share": f"{share} %", "stand": True})
            if force and chance.random() < 0.2:
                lines[-1]["force"] = f"{float(f'{force * 0.5:.3g}')} N"
            continue
        line = {"share": f"{share} %", "speed": f"{float(f'{speed * chance.choice([1, 1, 0.3, 0.08]):.3g}')} m/min"}
        if force and chance.random() < 0.5:
            line["force"] = f"{float(f'{force * chance.choice([1, 0.4]):.3g}')} N"
        if chance.random() < 0.5:
            line["stroke"] = f"{float(f'{travel * chance.uniform(0.02, 1):.3g}')} m"
        lines.append(line)
    return lines


def moves(chance, travel, speed, acceleration, force, inclined):
    lines, left = [], 3000.0
    signed = inclined or chance.random() < 0.3
    for _ in range(chance.randint(1, 4)):
        distance = float(f"{travel * chance.uniform(0.03, 0.9):.3g}")
        count = chance.choice([10, 30, 60, 120])
        line = {"distance": f"{distance} m", "count-per-hour": count}
        v = speed / 60.0
        if chance.random() < 0.4:
            own = float(f"{speed * chance.uniform(0.1, 0.9):.3g}")
            line["speed"], v = f"{own} m/min", own / 60.0
        a = acceleration
        if chance.random() < 0.3:
            a = float(f"{acceleration * chance.uniform(0.2, 0.95):.3g}")
            line["acceleration"] = f"{a} m/s²"
        if force and chance.random() < 0.4:
            line["force"] = f"{float(f'{force * chance.choice([1, 0.5]):.3g}')} N"
        dwell = chance.choice([0, 0, 0.5, 2])
        if dwell:
            line["dwell"] = f"{dwell} s"
        ways = [line, {**line, "distance": f"{-distance} m"}] if signed else [line]
        needed = len(ways) * count * (distance / v + 4.0 * v / a + dwell + 1.0)
        if needed < left:
            left -= needed
            lines += ways
    return lines or [{"distance": f"{travel * 0.5:.3g} m", "count-per-hour": 1}]


def brief(chance):
    machine = {"machine": "Random axis"}
    some = lambda share, key, value: sometimes(chance, share, machine, key, value)
    some(0.4, "years-in-service", lambda: chance.choice([5, 8, 15]))
    some(0.5, "hours-per-year", lambda: chance.choice([800, 2000, 6000]))
    some(0.3, "discount-rate", lambda: f"{chance.choice([0, 3, 9])} %")
    some(0.3, "energy-price", lambda: chance.choice([0.1, 0.4]))
    some(0.3, "downtime-cost", lambda: chance.choice([0, 400]))
    some(0.3, "environment", lambda: chance.choice([["wood dust"], ["steel chips", "coolant"], ["freezer"], ["office"]]))
    some(0.4, "temperature-swing", lambda: f"{chance.choice([1, 3, 10])} K")
    some(0.2, "supply-voltage", lambda: f"{chance.choice([380, 415, 480])} V")
    some(0.2, "supply-tolerance", lambda: f"{chance.choice([0, 5, 15])} %")
    some(0.2, "altitude", lambda: f"{chance.choice([200, 1800, 2500])} m")
    some(0.2, "ambient-temperature", lambda: f"{chance.choice([25, 50])} °C")
    some(0.3, "reliability", lambda: f"{chance.choice([95, 97.5, 99])} %")
    some(0.1, "limits", lambda: {"lead-time": f"{chance.choice([4, 8, 12])} weeks"})
    some(0.3, "prefer", lambda: {"whole-life-cost": chance.choice([1, 3]), "accuracy": chance.choice([0, 1, 2]),
                                 "stiffness": chance.choice([0, 1]), "upkeep": chance.choice([0, 1])})
    machine["axes"] = {"main": axis(chance)}
    return machine


def _number(text):
    return float(str(text).split()[0])


def _near(chance, entries, wanted, size, count):
    """Mostly those whose size lies near what is wanted on a logarithmic scale, the rest by chance."""
    ranked = sorted(entries, key=lambda e: abs(math.log(size(e) / wanted)))
    pool = ranked[: count + 1] if chance.random() < 0.8 else entries
    taken = [id(e) for e in chance.sample(pool, min(count, len(pool)))]
    return [e for e in entries if id(e) in taken]


class Need:
    """What an axis roughly asks, by which parts are picked that may fit."""

    def __init__(self, main):
        value = lambda key, unit: float(str(main[key]).replace(unit, ""))
        level = main["direction"] == "horizontal"
        self.speed = value("speed", "m/min") / 60.0
        self.travel = value("travel", "m")
        cut = float(main.get("cutting-force", "0 N")[:-1])
        weight = value("moved-mass", "kg") * (0.0 if level else 9.81)
        self.force = max(value("moved-mass", "kg") * value("acceleration", "m/s²") + weight + 60.0, cut + weight)
        self.power = max(self.force * self.speed, 30.0)


def cut_down(chance, documents, machine):
    """Some parts of each kind, for the most part near what the axis asks."""
    need = Need(machine["axes"]["main"])
    kept, chosen = [], {}
    for document in sorted(documents, key=lambda d: list(KEPT).index(d["kind"]) if d["kind"] in KEPT else 99):
        kind = document["kind"]
        if kind not in KEPT:
            continue
        entries, count = document["entries"], KEPT[kind]
        if kind in ("rack", "pinion"):
            entries = [e for e in entries if e.get("helical", True)]
        entries = _picked(chance, kind, entries, count, need, chosen)
        if kind == "ball-screw":
            # some suppliers state no rating, or one of both
            silent = [(), (), (), ("static-rating",), ("dynamic-rating", "static-rating")]
            missing = [chance.choice(silent) for _ in entries]
            entries = [{k: v for k, v in e.items() if k not in gone} for e, gone in zip(entries, missing)]
        chosen.setdefault(kind, []).extend(entries)
        copy = {**document, "entries": entries}
        if "variants" in document:
            copy["variants"] = _variants(chance, kind, document["variants"], need, chosen)
        kept.append(copy)
    return kept


def _picked(chance, kind, entries, count, need, chosen):
    if kind == "ball-screw":
        # long ones thick, fast ones with a long lead
        thick = max(0.012 * need.travel + 0.02, 0.016) * 1e3
        lead = max(need.speed / 35.0 * 1e3, 5.0)
        return _near(chance, entries, 1.0, lambda e: (
            math.exp(abs(math.log(_number(e["nominal-diameter"]) / thick)) + abs(math.log(_number(e["lead"]) / lead)))), count)
    if kind == "screw-bearing":
        middle = sorted(_number(e["nominal-diameter"]) for e in chosen["ball-screw"])[1]
        return _near(chance, entries, 0.68 * middle, lambda e: _number(e["bore"]), count)
    if kind == "screw-reduction":
        return [entries[i] for i in sorted(chance.sample(range(len(entries)), min(count, len(entries))))]
    if kind == "servo-motor":
        sizes = {e["size"]: _number(e["rated-power"]) for e in entries}
        fit = [size for size, power in sorted(sizes.items(), key=lambda item: item[1]) if power * 1e3 > 0.8 * need.power]
        pool = fit[: count + 1] if len(fit) >= count and chance.random() < 0.8 else list(sizes)
        taken = chance.sample(pool, count)
        return [e for e in entries if e["size"] in taken]
    if kind == "rack":
        module = min(max(1.5, (need.force / 1500.0) ** 0.5), 8.0)
        return _near(chance, entries, module, lambda e: _number(e["module"]), count)
    if kind == "gearbox":
        torque = need.force * _pitch_radius(chosen) * 1.3
        return _near(chance, entries, torque * 1.5, lambda e: _number(e["acceleration-torque"]), count)
    return [entries[i] for i in sorted(chance.sample(range(len(entries)), min(count, len(entries))))]


def _pitch_radius(chosen):
    module = sum(_number(e["module"]) for e in chosen["rack"]) / len(chosen["rack"])
    teeth = sum(e["teeth"] for e in chosen["pinion"]) / len(chosen["pinion"])
    return module * 1e-3 * teeth / 0.942 / 2.0


def _variants(chance, kind, variants, need, chosen):
    if kind == "rack":
        return [v for v in variants if v["set"]["helical"]]
    if kind == "gearbox":
        wanted = 40.0 * 2.0 * math.pi * _pitch_radius(chosen) / need.speed
        return _near(chance, variants, min(max(wanted, 3.0), 100.0), lambda v: v["set"]["ratio"], 3)
    taken = chance.sample(range(len(variants)), min(2, len(variants)))
    return [variants[i] for i in sorted(taken)]


def written(documents, folder):
    """Writes the cut-down catalogue so that it drops all other parts of its kinds."""
    seen = set()
    for index, document in enumerate(documents):
        first = document["kind"] not in seen
        seen.add(document["kind"])
        body = {**document, **({"replaces-kind": True} if first else {})}
        (folder / f"{index:02d}-{document['kind']}.yaml").write_text(yaml.safe_dump(body, allow_unicode=True, sort_keys=False))
