"""Every line of a worksheet against the number that was worked out anew."""

import re

import numpy as np

from quantities import unit_in_si

TOLERANCE = 1e-9
INDEX = re.compile(r"^(.*)\.(\d+)$")


def in_words(line):
    return f"{line['id']} = {line['value']} {line['unit']} ({line['formula'] or line['origin']})"


def unit_of(line):
    return unit_in_si(line["unit"])


def own_value(y, name):
    """The number of one line, out of a sheet of one configuration; None where the sheet does not have it."""
    found = INDEX.match(name)
    key = found[1] if found else name
    if key not in y:
        return None
    value = np.asarray(y[key], float)
    if found:
        flat = value.reshape(-1)
        place = int(found[2]) - 1
        if flat.size == 1:
            return float(flat[0])
        return float(flat[place]) if place < flat.size else np.nan
    return float(value.reshape(-1)[0]) if value.size == 1 else np.nan


def agrees(theirs, ours):
    if theirs is None or (isinstance(theirs, float) and np.isnan(theirs)):
        # a way without end has no number in a record either
        return not np.isfinite(ours)
    if theirs == ours:
        return True
    return abs(theirs - ours) <= TOLERANCE * max(abs(theirs), abs(ours))


def lines(worksheet, y):
    """Yields each line with our value, and whether it agrees; None for a line that is not covered."""
    for line in worksheet:
        ours = own_value(y, line["id"])
        if ours is None:
            yield line, None, None
            continue
        theirs = line["value"]
        theirs = None if theirs is None else float(theirs) * unit_of(line)
        yield line, ours, agrees(theirs, ours)
