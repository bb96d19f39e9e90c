"""Feedback, table of corrections, accuracy and the position loop (docs/method.md section 5)."""

import numpy as np

from sheet import NAN, rss, shift_in_cut

# gain over √(k/m_M) against the mass ratio, from a sweep of the frequency response (docs/method.md section 5)
MOTOR = np.array([(0.1, 0.245), (0.15, 0.263), (0.25, 0.274), (0.35, 0.273), (0.5, 0.265), (1.0, 0.233), (2.0, 0.185),
                  (4.0, 0.121), (8.0, 0.072)])
SCALE = np.array([(0.1, 0.138), (0.25, 0.164), (0.5, 0.174), (0.7, 0.176), (1.0, 0.175), (2.0, 0.161), (4.0, 0.119),
                  (8.0, 0.073)])


def _gain(table, ratio):
    """Lower envelope of the curve, straight over the logarithm between its points, falling with 1/λ beyond them."""
    inside = np.interp(np.log(ratio), np.log(table[:, 0]), table[:, 1])
    beyond = table[-1, 1] * table[-1, 0] / ratio
    return np.minimum(table[0, 1], np.where(ratio > table[-1, 0], beyond, inside))


def enter(y, scale, by_scale, table, by_table, growth, within_turn, least, measured_by_drive):
    """`growth` is the temperature of screw or rack, `within_turn` what repeats within a turn, `least` the least scatter."""
    y["feedback-kind"] = np.where(by_scale, 1.0, 0.0)
    y["least-scatter"] = np.where(by_scale, 0.6e-6, least)
    y["expansion"] = np.where(by_scale, scale["expansion"], 11.5e-6)
    y["measuring-step"] = np.where(
        by_scale, scale["resolution"], y["travel-per-turn"] / (y["encoder-counts"] * y["reduction"]))
    give = np.where(by_scale, y["scale-mount-stiffness"], y["total-stiffness"])
    y["lost-motion"] = 2.0 * y["friction-force"] / give
    y["scale-error-rate"] = np.where(by_scale, scale["error-per-metre"], NAN)
    y["scale-least-error"] = np.where(by_scale, scale["least-error"], NAN)
    y["scale-length-limit"] = np.where(by_scale, scale["length-limit"], NAN)
    y["scale-speed-limit"] = np.where(by_scale, scale["speed-limit"], NAN)
    for name, length, own in (("", y["travel"], measured_by_drive[0]), ("section-", y["section-length"], measured_by_drive[1])):
        band = np.maximum(scale["error-per-metre"] * length, scale["least-error"])
        y[name + "long-error"] = np.where(by_scale, band, own)
    y["temperature-rise"] = np.where(by_scale, y["temperature-swing"], growth)
    y["thermal-growth"] = y["expansion"] * y["travel"] * y["temperature-rise"]
    own = y["play"] * (1.0 - y["compensated-play"]) + y["lost-motion"]
    y["reversal-error"] = np.where(by_scale, y["lost-motion"], own)
    y["loop-play"] = np.where(by_scale, y["play"], NAN)
    y["loop-play-share"] = y["loop-play"] / y["required-accuracy"]
    y["cutting-shift"] = shift_in_cut(y)
    y["drive-scatter"] = rss(y["measuring-step"] / np.sqrt(12.0), y["friction-scatter"] * y["friction-force"] / give)
    y["scatter"] = rss(y["drive-scatter"], y["least-scatter"])
    y["repeatability"] = y["reversal-error"] + 4.0 * y["scatter"]
    y["scale-fixed-price"] = np.where(by_scale, scale["price-fixed"], 0.0)
    y["scale-metre-price"] = np.where(by_scale, scale["price-per-metre"], 0.0)
    y["feedback-price"] = y["scale-fixed-price"] + y["scale-metre-price"] * y["travel"]
    y["feedback-cost"] = y["drives"] * y["feedback-price"]
    _loop(y, by_scale)
    _mapping(y, by_scale, table, by_table, within_turn)


def _mapping(y, by_scale, table, by_table, within_turn):
    y["table-residual"] = np.where(by_table, table["residual-share"], NAN)
    y["table-uncertainty"] = np.where(by_table, table["uncertainty"], NAN)
    y["table-uncertainty-rate"] = np.where(by_table, table["uncertainty-per-metre"], NAN)
    y["table-drift"] = np.where(by_table, table["drift"], NAN)
    arm = np.where(by_scale, y["arm to scale"], y["arm to drive"])
    y["tool-arm"] = np.where(np.isnan(y["slide-tilt"]), NAN, arm)
    y["tilt-error"] = y["tool-arm"] * y["slide-tilt"]
    tilt = np.where(np.isnan(y["tilt-error"]), 0.0, y["tilt-error"])
    turn = np.where(by_scale, 0.0, rss(*within_turn))
    for name, length in (("", y["travel"]), ("section-", y["section-length"])):
        raw = y[name + "long-error"]
        measured = table["uncertainty"] + table["uncertainty-per-metre"] * length
        left = rss(table["residual-share"] * raw, measured, table["drift"])
        y[name + "long-error-left"] = np.where(by_table, left, raw)
        y[name + "position-error"] = rss(y[name + "long-error-left"], turn, tilt)
    m, b, s = y["position-error"], y["reversal-error"], y["scatter"]
    y["accuracy"] = np.where(y["travel"] <= y["section-limit"], m + b + 4.0 * s, m + b)
    y["section-accuracy"] = y["section-position-error"] + b + 4.0 * s
    y["tool-error"] = (m + b + 4.0 * s) / 2.0
    y["table-fixed-price"] = np.where(by_table, table["price-fixed"], 0.0)
    y["table-metre-price"] = np.where(by_table, table["price-per-metre"], 0.0)
    y["table-price"] = y["table-fixed-price"] + y["table-metre-price"] * y["travel"]
    y["table-cost"] = y["drives"] * y["table-price"]


def _loop(y, by_scale):
    k, ratio = y["total-stiffness"], y["driven-mass"] / y["reduced-mass"]
    y["mass-ratio"] = ratio
    y["free-mode"] = y["first-mode"] * np.sqrt(1.0 + ratio)
    y["gain-margin"] = 0.7
    turning = y["driven-mass"] / ratio
    kappa = np.where(by_scale, _gain(SCALE, ratio), _gain(MOTOR, ratio))
    y["loop-gain"] = y["gain-margin"] * np.sqrt(k / turning) * kappa
    gain = y["loop-gain"]
    y["top-following-error"] = (1.0 - y["feed-forward"]) * y["speed"] / gain
    y["cutting-following-error"] = (1.0 - y["feed-forward"]) * y["cutting-speed"] / gain
    w1 = np.sqrt(k / (ratio * y["reduced-mass"]))
    damping = np.minimum(0.7, np.sqrt(ratio) / 2.0)
    kp = 2.0 * damping * w1 * y["reduced-mass"] * np.sqrt(4.0 + ratio - 4.0 * damping**2)
    y["reversal-spike"] = 2.0 * y["friction-force"] * (1.0 / (kp * gain) + 1.0 / k)
    acceleration = y["acceleration"]
    a, j, f1 = acceleration, y["jerk"], y["first-mode"]
    turns = np.pi * f1 * a / j
    swing = a / (2.0 * np.pi * f1) ** 2
    y["jerk-residue"] = swing * np.abs(np.sin(turns) / turns)
    y["mode-damping"] = 0.03
    y["jerk-envelope"] = np.where(np.isnan(y["settling-window"]), NAN, 4.0 * swing * np.minimum(1.0, 1.0 / turns))
    window = y["settling-window"]
    lag = np.maximum(0.0, np.log(a / (gain**2 * window)) / gain)
    swung = np.maximum(0.0, np.log(y["jerk-envelope"] / window) / (y["mode-damping"] * 2.0 * np.pi * f1))
    y["settling-time"] = lag + swung
    v, r, feed = y["contour-speed"], y["contour-radius"], y["feed-forward"]
    w = v / r
    # 1 − √a/√b as (b − a)/(√b·(√b + √a)), which keeps its digits where both are near 1
    a, b = 1.0 + (feed * w / gain) ** 2, 1.0 + (w / gain) ** 2
    y["plain-circle-error"] = r * (1.0 - feed**2) * (w / gain) ** 2 / (np.sqrt(b) * (np.sqrt(b) + np.sqrt(a)))
    grown = (1.0 - y["feedback-kind"]) * v**2 / (r * (2.0 * np.pi * f1) ** 2)
    y["fed-circle-error"] = y["plain-circle-error"] - grown
    y["contour-error"] = np.maximum(np.abs(y["plain-circle-error"]), np.abs(y["fed-circle-error"]))
