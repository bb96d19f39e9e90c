"""One random brief, judged twice: by the program, and anew from brief, catalogue and rules alone."""

import collections
import json
import pathlib
import random
import subprocess
import tempfile

import numpy as np
import yaml

import census
import compare
import cost
import demand
import generator
import grid
import parts
import rules
from sheet import Sheet

ROOT = pathlib.Path(__file__).resolve().parents[2]

# Lines of the two families that are not worked out anew, each with the reason. Nothing else may be left out.
UNCOVERED = {}


class Outcome:
    """What one brief came to: counts, and every difference in words."""

    def __init__(self):
        self.counts = collections.Counter()
        self.lines = collections.Counter()
        self.uncovered = collections.Counter()
        self.silent = collections.Counter()
        self.differences = []

    def differ(self, text):
        self.counts["differences"] += 1
        self.differences.append(text)


class Bench:
    """What all briefs share."""

    def __init__(self, program, seed, spoil):
        self.program, self.seed, self.spoil = program, seed, spoil
        self.documents = parts.files(ROOT / "catalog")
        self.kinds = parts.by_kind(self.documents)
        self.rules = {family: rules.load(ROOT / "rules", family) for family in grid.FAMILIES}
        trial, _ = self.written(0)
        self.stages = {family: census.stages(family, self.kinds, trial) for family in grid.FAMILIES}

    def written(self, index):
        """The brief and its catalogue, as YAML documents."""
        chance = random.Random(f"{self.seed}/{index}")
        brief = generator.brief(chance)
        return brief, generator.cut_down(chance, self.documents, brief)

    def run(self, index):
        outcome = Outcome()
        brief, catalogue = self.written(index)
        with tempfile.TemporaryDirectory() as folder:
            folder = pathlib.Path(folder)
            (folder / "catalog").mkdir()
            generator.written(catalogue, folder / "catalog")
            (folder / "brief.yaml").write_text(yaml.safe_dump(brief, allow_unicode=True, sort_keys=False))
            record = self._asked(folder, outcome, index)
        if record is None:
            return outcome
        # both sides read the same text, so that no digit is lost on the way
        brief = yaml.safe_load(yaml.safe_dump(brief, allow_unicode=True))
        kinds = {**self.kinds, **parts.by_kind(catalogue)}
        axis = record["axes"][0]
        outcome.counts[f"outcome {record['outcome']}"] += 1
        spoilt = self._spoilt(axis)
        outcome.counts["spoilt"] += len(spoilt)
        with np.errstate(all="ignore"):
            offers = [self._family(index, brief, kinds, found, outcome, spoilt) for found in axis["families"]]
            for candidate in axis["runners-up"] + [c for c in [axis["chosen"]] if c]:
                self._candidate(index, brief, kinds, candidate["family"], candidate, outcome, spoilt)
        self._choice(index, axis, [offer for offer in offers if offer], outcome)
        return outcome

    def _asked(self, folder, outcome, index):
        command = [self.program, "recommend", str(folder / "brief.yaml"), "--catalog", str(folder / "catalog"),
                   "--no-turning-points", "--json", "--threads", "1"]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        if done.returncode > 1:
            outcome.differ(f"brief {index}: the program refuses it: {done.stderr.strip()[:400]}")
            return None
        return json.loads(done.stdout)

    def _spoilt(self, axis):
        """Characteristics that the formula to be spoilt gives."""
        if not self.spoil:
            return ()
        names = set()
        for found in axis["families"]:
            for candidate in filter(None, (found["best"], found["nearest"])):
                names |= {compare.INDEX.sub(r"\1", line["id"]) for line in candidate["worksheet"]
                          if self.spoil in (line["formula"], line["id"])}
        return names

    def _sheet(self, family, brief, kinds, lists, spoilt):
        y = Sheet(spoilt)
        demand.enter(y, brief, brief["axes"]["main"], kinds)
        grid.FAMILIES[family].work_out(y, grid.arrays(lists, kinds), kinds, brief)
        return y

    def _family(self, index, brief, kinds, found, outcome, spoilt):
        """Every configuration of one family; gives the merit of the best."""
        family = found["family"]
        lists = grid.choices(family, kinds, brief["axes"]["main"])
        y = self._sheet(family, brief, kinds, lists, spoilt)
        shape = [len(group) for group in lists.values()] + [1]
        admissible, advice, miss = rules.judge(self.rules[family], y)
        merit = np.broadcast_to(cost.merit(y, brief.get("prefer"), advice), shape)
        admissible, miss = np.broadcast_to(admissible, shape), np.broadcast_to(miss, shape)
        count, fit = int(np.prod(shape)), int(admissible.sum())
        outcome.counts[f"{family} configurations"] += count
        outcome.counts[f"{family} admissible"] += fit
        outcome.counts[f"{family} with an admissible drive"] += fit > 0
        where = f"brief {index}, {family}"
        if (count, fit) != (found["configurations"], found["admissible"]):
            outcome.differ(f"{where}: {fit} of {count} are admissible, the program says {found['admissible']} of "
                           f"{found['configurations']}")
        self._census(where, family, found, y, shape, outcome)
        for candidate in filter(None, (found["best"], found["nearest"])):
            self._candidate(index, brief, kinds, family, candidate, outcome, spoilt)
        if not fit:
            self._nearest(where, found, miss, outcome)
            self._hopeless(where, found, rules.hopeless(self.rules[family], y, shape), outcome)
            return None
        ranked = np.where(admissible, merit, np.inf)
        place = np.unravel_index(int(np.argmin(ranked)), ranked.shape)
        ours = [group[i]["designation"] for group, i in zip(lists.values(), place)]
        best = float(ranked[place])
        theirs = {part["designation"] for part in found["best"]["components"]} if found["best"] else set()
        same = theirs and compare.agrees(found["best"]["merit"], best)
        if not same:
            outcome.differ(f"{where}: the best is {ours} at {best}, the program says {sorted(theirs)} at "
                           f"{found['best'] and found['best']['merit']}")
        outcome.counts["bests of a family that agree"] += bool(same)
        outcome.counts["bests with the same parts"] += theirs <= set(ours)
        return family, best

    def _census(self, where, family, found, y, shape, outcome):
        """At which rule each configuration falls."""
        theirs = {entry["rule"]: entry["configurations"] for entry in found["excluded-by"]}
        if sum(theirs.values()) + found["admissible"] != found["configurations"]:
            outcome.differ(f"{where}: configurations that fall and that are left do not make up all of them")
        if y["drives"] > 1.5:
            return
        ours = census.fallen(family, self.rules[family], self.stages[family], y, shape)
        outcome.counts["censuses by rule compared"] += 1
        if ours != theirs:
            unlike = {rule: (ours.get(rule), theirs.get(rule)) for rule in {*ours, *theirs} if ours.get(rule) != theirs.get(rule)}
            outcome.differ(f"{where}: so many fall at each rule here and there: {unlike}")

    def _nearest(self, where, found, miss, outcome):
        """Where nothing is admissible the drive that misses by least is told; the least sum must be the same."""
        near = found["nearest"]
        if near is None:
            return
        misses = [f["utilisation"] for f in near["findings"] if f["obligation"] == "shall" and f["verdict"] != "pass"]
        theirs = sum(rules.NOT_TOLD if use is None else use - 1.0 for use in misses)
        ours = float(np.min(miss))
        # all digits count of what is told, too, beside a rule that cannot be told
        if abs(theirs - ours) > 1e-9 * max(1.0, ours % rules.NOT_TOLD) + 1e-15 * ours:
            outcome.differ(f"{where}: the nearest misses by {ours}, the program says {theirs}")
        outcome.counts["nearest misses compared"] += 1

    def _hopeless(self, where, found, ours, outcome):
        """The rules that no configuration of the family keeps, with the best that any reaches."""
        theirs = {finding["rule"]: finding["utilisation"] for finding in found["ruled-out-by"]}
        outcome.counts["rules that a whole family breaks"] += len(ours)
        if set(theirs) != set(ours) or not all(compare.agrees(theirs[name], ours[name]) for name in ours):
            outcome.differ(f"{where}: no configuration keeps {ours}, the program says {theirs}")

    def _choice(self, index, axis, offers, outcome):
        chosen = axis["chosen"]
        if not offers or chosen is None:
            if bool(offers) != bool(chosen):
                outcome.differ(f"brief {index}: only one side chooses a drive")
            return
        family, merit = min(offers, key=lambda offer: offer[1])
        if not compare.agrees(chosen["merit"], merit):
            outcome.differ(f"brief {index}: {family} at {merit} is chosen, the program chooses {chosen['family']} at "
                           f"{chosen['merit']}")
        outcome.counts["choices compared"] += 1

    def _candidate(self, index, brief, kinds, family, candidate, outcome, spoilt):
        """One configuration: every line of its worksheet, every finding, its cost and merit."""
        lists = grid.choices(family, kinds, brief["axes"]["main"])
        y = self._sheet(family, brief, kinds, grid.only(lists, candidate["components"]), spoilt)
        where = f"brief {index}, {family}"
        outcome.counts["worksheets"] += 1
        told = set()
        for line, ours, same in compare.lines(candidate["worksheet"], y):
            name = compare.INDEX.sub(r"\1", line["id"])
            told.add(name)
            if same is None:
                outcome.uncovered[name] += 1
                continue
            outcome.lines[family, name, line["formula"] or line["origin"]] += 1
            if not same:
                outcome.differ(f"{where}: {compare.in_words(line)}, worked out anew {ours / compare.unit_of(line)}")
        self._silent(where, y, told, outcome)
        advice = self._findings(where, y, family, candidate, outcome)
        self._money(where, y, brief, candidate, advice, outcome)

    def _findings(self, where, y, family, candidate, outcome):
        judged = {rule.name: rule for rule in self.rules[family] if np.all(rule.applies(y))}
        theirs = {finding["rule"]: finding for finding in candidate["findings"]}
        if set(judged) != set(theirs):
            outcome.differ(f"{where}: rules judged by one side alone: {sorted(set(judged) ^ set(theirs))}")
        advice = 0.0
        for name, rule in judged.items():
            kept, use = bool(np.all(rule.kept(y))), float(np.squeeze(rule.utilisation(y)))
            advice += 0.0 if rule.shall or kept else rule.weight
            finding = theirs.get(name)
            if finding is None:
                continue
            outcome.counts["findings"] += 1
            # a limit of zero that is not kept has no utilisation that could be told
            use = use if np.isfinite(use) else np.nan
            if (finding["verdict"] == "pass") != kept or not compare.agrees(finding["utilisation"], use):
                outcome.differ(f"{where}: rule {name} is used to {use}, kept: {kept}; the program says "
                               f"{finding['utilisation']}, {finding['verdict']}")
        return advice

    def _money(self, where, y, brief, candidate, advice, outcome):
        ours = {"purchase": y["purchase-cost"], "whole-life": y["whole-life-cost"],
                "merit": cost.merit(y, brief.get("prefer"), advice), "unmet-advice": advice}
        theirs = {**candidate["cost"], **{key: candidate[key] for key in ("merit", "unmet-advice")}}
        for word, value in ours.items():
            value = float(np.squeeze(value))
            outcome.counts["costs and merits"] += 1
            if not compare.agrees(theirs[word], value):
                outcome.differ(f"{where}: {word} is {value}, the program says {theirs[word]}")

    def _silent(self, where, y, told, outcome):
        """A number that we have and the worksheet does not tell: absent there, so it should be for us."""
        for name, value in y.items():
            if name in told or " " in name or np.all(np.isnan(value)):
                continue
            outcome.silent[name] += 1
            outcome.differ(f"{where}: {name} is {np.squeeze(value)}, the program does not tell it")
