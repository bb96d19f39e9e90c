"""Text with a unit becomes a number in SI units; units are products and quotients of the symbols below, with powers.

Speeds of rotation count turns a second, temperatures degrees Celsius, money and plain ratios are what they are.
"""

import math
import re

SYMBOLS = {
    "1": 1.0, "%": 1e-2, "m": 1.0, "mm": 1e-3, "µm": 1e-6, "nm": 1e-9, "cm": 1e-2, "km": 1e3, "in": 0.0254, "ft": 0.3048,
    "mil": 25.4e-6, "rad": 1.0, "mrad": 1e-3, "deg": math.pi / 180.0, "arcmin": math.pi / 10800.0,
    "arcsec": math.pi / 648000.0, "s": 1.0, "ms": 1e-3, "min": 60.0, "h": 3600.0, "days": 86400.0, "weeks": 604800.0,
    "years": 365.25 * 86400.0, "kg": 1.0, "t": 1e3, "lb": 0.45359237, "N": 1.0, "kN": 1e3, "J": 1.0, "kJ": 1e3,
    "W": 1.0, "kW": 1e3, "Wh": 3600.0, "kWh": 3.6e6, "Pa": 1.0, "MPa": 1e6, "V": 1.0, "kV": 1e3, "Hz": 1.0, "kHz": 1e3,
    "K": 1.0, "°C": 1.0, "Mrev": 1e6,
}
POWERS = {"²": 2, "³": 3}
NUMBER = re.compile(r"^\s*([+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)\s*(.*?)\s*$")
GRAVITY = 9.80665


def _symbol(text, grams):
    power = 1
    if text and text[-1] in POWERS:
        power = POWERS[text[-1]]
        text = text[:-1]
    if text == "g":
        return (1e-3 if grams else GRAVITY) ** power
    return SYMBOLS[text] ** power


def unit_in_si(unit):
    """How many SI units one of these is."""
    if not unit:
        return 1.0
    above, _, below = unit.replace("(", "").replace(")", "").partition("/")
    grams = bool(below)
    factor = 1.0
    for part in above.split("·"):
        factor *= _symbol(part.strip(), grams)
    for part in filter(None, below.split("·")):
        factor /= _symbol(part.strip(), grams)
    return factor


def in_si(value):
    """A number, flag or text of a brief or catalogue; a text that is no quantity stays as it is."""
    if isinstance(value, bool):
        return 1.0 if value else 0.0
    if isinstance(value, (int, float)):
        return float(value)
    found = NUMBER.match(value)
    if not found:
        return value
    try:
        return float(found[1]) * unit_in_si(found[2])
    except KeyError:
        return value
