"""An independent second opinion on ball screws and helical racks: random briefs, worked out and chosen anew in NumPy.

    python3 tests/peer/second_opinion.py --program target/debug/axiswright --briefs 200 --seed 1

Every line of every worksheet of the two families is worked out from brief and catalogue alone, within 1e-9 of its value; the rules
are judged from rules/*.yaml; every configuration of a cut-down catalogue is tried, and census, best drive and choice must be the
same. It is written from docs/method.md and the printed equations, not from the program. A line that it does not know fails the
run, unless it stands in `one_brief.UNCOVERED` with its reason. `--spoil FORMULA` changes the numbers of one formula by 1e-6, and
the run must fail.
"""

import argparse
import collections
import concurrent.futures
import sys

from one_brief import UNCOVERED, Bench

MOST_TOLD = 40


def asked():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", required=True, help="the program to be judged")
    parser.add_argument("--briefs", type=int, default=200, help="how many random briefs")
    parser.add_argument("--first", type=int, default=0, help="number of the first brief")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=1, help="briefs worked out at once")
    parser.add_argument("--spoil", metavar="FORMULA", help="change the numbers of this formula or line by 1e-6")
    parser.add_argument("--lines", action="store_true", help="list every line that was compared, and how often")
    return parser.parse_args()


BENCH = None


def _start(options):
    global BENCH
    BENCH = Bench(options.program, options.seed, options.spoil)


def _one(index):
    return BENCH.run(index)


def outcomes(options):
    numbers = range(options.first, options.first + options.briefs)
    if options.jobs < 2:
        _start(options)
        return [_one(number) for number in numbers]
    with concurrent.futures.ProcessPoolExecutor(options.jobs, initializer=_start, initargs=(options,)) as pool:
        return list(pool.map(_one, numbers))


def main():
    options = asked()
    counts, lines, uncovered, silent = (collections.Counter() for _ in range(4))
    differences = []
    for outcome in outcomes(options):
        counts.update(outcome.counts)
        lines.update(outcome.lines)
        uncovered.update(outcome.uncovered)
        silent.update(outcome.silent)
        differences += outcome.differences
    print(f"{options.briefs} briefs from number {options.first}, seed {options.seed}")
    for name, count in sorted(counts.items()):
        print(f"  {name}: {count}")
    for family in sorted({family for family, _, _ in lines}):
        mine = {(name, formula): n for (of, name, formula), n in lines.items() if of == family}
        print(f"  {family}: {sum(mine.values())} lines compared, {len({name for name, _ in mine})} quantities, "
              f"{len({formula for _, formula in mine})} formulas and origins")
    if options.lines:
        for (family, name, formula), count in sorted(lines.items()):
            print(f"    {family} {name} by {formula}: {count}")
    for name, count in sorted(silent.items()):
        print(f"  only told here: {name}, {count} times")
    listed = {name for name in uncovered if name in UNCOVERED}
    for name, count in sorted(uncovered.items()):
        print(f"  not covered: {name}, {count} times: {UNCOVERED.get(name, 'NOT ON THE LIST')}")
    for text in differences[:MOST_TOLD]:
        print(f"  DIFFERS {text}")
    if len(differences) > MOST_TOLD:
        print(f"  and {len(differences) - MOST_TOLD} more")
    if options.spoil and not counts["spoilt"]:
        print(f"nothing is spoilt: no line is called or worked out by {options.spoil}")
        return 2
    failed = bool(differences) or set(uncovered) != listed
    print("the opinions differ" if failed else "both agree")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
