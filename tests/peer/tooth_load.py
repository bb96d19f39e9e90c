"""What teeth feel of a force (ISO 6336-1:2006), what life lines allow, and the one force that does the damage of a duty (6336-6).

The force that is felt, f(F), is κ·F + F_o above a line load of 100 N/mm and K_l·F below it, and never falls when F grows: from
100 N/mm on it stays level until the line reaches it.
"""

import numpy as np

K1_HELICAL = np.array([6.7, 13.3, 23.9, 34.8, 47.0, 68.2])
K1_STRAIGHT = np.array([7.5, 14.9, 26.8, 39.1, 52.8, 76.6])
SHARING_HELICAL = np.array([1.0, 1.1, 1.2, 1.4])
SHARING_STRAIGHT = np.array([1.0, 1.0, 1.1, 1.2])
LIGHT = 100e3  # N/m


class Felt:
    """The straight line of a mesh: slope κ, offset F_o, factor K_l below 100 N/mm."""

    def __init__(self, slope, offset, light, width):
        self.slope, self.offset, self.light, self.knee = slope, offset, light, LIGHT * width

    def of(self, force):
        heavy = np.maximum(self.slope * force + self.offset, self.light * self.knee)
        return np.where(force < self.knee, self.light * force, heavy)

    def back(self, felt):
        """The least force of which so much is felt."""
        return np.where(felt <= self.light * self.knee, felt / self.light, (felt - self.offset) / self.slope)

    def stands_for(self, felt, most):
        """The force that stands for forces up to `most`, of which so much is felt as one; see docs/method.md section 3."""
        level = self.light * self.knee
        above = lambda felt: (felt - self.offset) / self.slope
        end = np.minimum(most, above(level))
        on_level = np.where(end > 0.0, end, 0.0) * felt / np.where(end > 0.0, np.minimum(self.light * end, level), 1.0)
        return np.minimum(np.where(felt > level, above(felt), on_level), most)


def load_line(mesh, quality, speed):
    """Slope, offset and light factor of a mesh at a pitch line speed."""
    grade = np.clip(quality, 5, 10).astype(int) - 5
    part = np.minimum(mesh.e_beta, 1.0)
    k1 = (K1_STRAIGHT[grade] * (1.0 - part) + K1_HELICAL[grade] * part) * 1e3  # N/m
    k2 = 0.0193 * (1.0 - part) + 0.0087 * part
    number = speed * mesh.z / 100.0
    k3 = np.where(number <= 0.2, 2.0, 2.071 - 0.357 * number)
    helical = mesh.e_beta > 0.0
    worst = np.where(helical, np.maximum(1.4, mesh.e_alpha_n), np.maximum(1.2, 3.0 / (4.0 - mesh.e_alpha)))
    table = np.minimum(grade, 3)
    fine = np.where(helical, SHARING_HELICAL[table], SHARING_STRAIGHT[table])
    sharing = np.where(grade > 3, worst, fine)
    slope = (1.0 + k2 * number * k3) * sharing
    offset = k1 * mesh.b * number * k3 * sharing
    light = (1.0 + (k1 / LIGHT + k2) * number * k3) * worst
    return slope, offset, light


class LifeLine:
    """Cycles over felt force: through (N_static, s_static·E), (N_knee, E) and (10¹⁰, 0.85·E), all factors on the force."""

    def __init__(self, static_cycles, static_force, knee_cycles, last_force):
        self.static_cycles, self.static_force, self.knee = static_cycles, static_force, knee_cycles
        self.above = np.log(knee_cycles / static_cycles) / np.log(static_force)
        self.below = np.log(1e10 / knee_cycles) / -np.log(last_force)
        self.last_force = last_force

    def force_factor(self, cycles):
        """Held beyond both ends."""
        early = (self.knee / np.maximum(cycles, self.static_cycles)) ** (1.0 / self.above)
        late = (self.knee / np.minimum(cycles, 1e10)) ** (1.0 / self.below)
        return np.where(cycles < self.knee, early, late)

    def damage(self, ratio):
        """Damage of one pass at f/E; the last line goes on."""
        power = np.where(ratio > 1.0, self.above, self.below)
        return np.where(ratio > 0.0, np.abs(ratio), 0.0) ** power / self.knee

    def ratio(self, damage):
        passes = damage * self.knee
        power = np.where(passes > 1.0, self.above, self.below)
        return passes ** (1.0 / power)


def flank_line():
    return LifeLine(1e5, 1.6**2, 5e7, 0.85**2)


def root_line(static_cycles):
    return LifeLine(static_cycles, 2.5, 3e6, 0.85)


def equivalent(forces, weights, endurance, felt, line, one_sign, axis=-1):
    """The force that does the same damage at every pass; flanks feel the forces of one sign, the worse one.

    Above the first point of the line no number of passes is known: such a force of the duty stands for itself.
    """
    found = []
    for seen in ([forces, -forces] if one_sign else [np.abs(forces)]):
        hits = np.where(seen > 0.0, seen, 0.0)
        ratio = felt.of(hits) / endurance
        total = np.sum(weights * line.damage(ratio), axis=axis, keepdims=True)
        beyond = np.where((weights > 0.0) & (ratio > line.static_force), hits, 0.0)
        most = np.max(np.where(weights > 0.0, hits, 0.0), axis=axis, keepdims=True)
        equal = felt.stands_for(line.ratio(total) * endurance, most)
        found.append(np.maximum(equal, np.max(beyond, axis=axis, keepdims=True)))
    return np.maximum.reduce(found)
