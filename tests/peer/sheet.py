"""A sheet of named quantities in SI units, one array each; the last axis counts the phases of the duty.

A configuration alone has arrays of one number; a whole cut-down catalogue has one axis for each choice, and NumPy broadcasts.
NaN stands for what does not exist or is not known; no limit lets it pass.
"""

import numpy as np

NAN = np.nan


class Sheet(dict):
    """Quantities by the name of the characteristic; one of them may be spoilt to prove that a comparison can fail."""

    def __init__(self, spoilt=()):
        super().__init__()
        self.spoilt = frozenset(spoilt)

    def __setitem__(self, name, value):
        value = np.asarray(value, dtype=float)
        if name in self.spoilt:
            value = value * (1.0 + 1e-6)
        super().__setitem__(name, value)

    def take(self, part, **names):
        """Enters values of a part: characteristic=key of the catalogue, both with underscores for hyphens."""
        for name, key in names.items():
            self[name.replace("_", "-")] = part[key.replace("_", "-")]


def series(*stiffnesses):
    return 1.0 / sum(1.0 / k for k in stiffnesses)


def rss(*errors):
    return np.sqrt(sum(e * e for e in errors))


def shift_in_cut(y):
    """Half of the way by which a cutting force moves the slide: the give, and half of the play where the force turns the slide over.

    It turns it over where it may act either way and is larger than the weight that no counterbalance carries.
    """
    balance = np.where(np.isnan(y["greatest-balance"]), y["counterbalance-share"], y["greatest-balance"])
    weight = y["gravity-force"] * np.abs(1.0 - balance)
    turned = np.where(y["drive-cutting-force"] <= weight, 0.0, y["cutting-both-ways"])
    return y["cutting-deflection"] + turned * y["play"] / 2.0


def ripple_in_cut(y, rhythm):
    """The ripple as the slide shows it at this rhythm: one mass on a spring, fading left out."""
    y["drive-damping"] = 0.05
    r = y[rhythm] / y["first-mode"]
    gain = 1.0 / np.sqrt((1.0 - r**2) ** 2 + (2.0 * y["drive-damping"] * r) ** 2)
    y["ripple-in-cut"] = y["ripple"] * np.maximum(gain, 1.0)


def over(a, b):
    """a/b where b is not zero, NaN elsewhere."""
    a, b = np.broadcast_arrays(np.asarray(a, float), np.asarray(b, float))
    return np.divide(a, b, out=np.full(a.shape, NAN), where=b != 0.0)


def total(values):
    return np.sum(values, axis=-1, keepdims=True)


def largest(values):
    return np.max(values, axis=-1, keepdims=True)
