"""Teeth of a pinion on a rack: geometry (ISO 21771), what flanks and roots bear (ISO 6336-2 and -3:2006), stiffness of the mesh.

From the published equations as docs/method.md names them, the rack as the limit of infinitely many teeth. Lengths of the root
form are in modules. All arguments are NumPy arrays that broadcast; `helical` is 1 or 0.
"""

import numpy as np

ALPHA_N = np.deg2rad(20.0)
TAN_N, SIN_N, COS_N = np.tan(ALPHA_N), np.sin(ALPHA_N), np.cos(ALPHA_N)
TIP, ROOT, FILLET = 1.0, 1.25, 0.38  # profile A of ISO 53
YOUNG, POISSON = 2.06e11, 0.3


def involute(angle):
    return np.tan(angle) - angle


class Mesh:
    """A pinion of z teeth with profile shift x on a rack, both of face width b."""

    def __init__(self, module, teeth, helical, shift, width):
        self.m, self.z, self.x, self.b = module, teeth, shift, width
        # the metric helix has a transverse pitch of exactly 10/3 modules
        self.cos = np.where(helical > 0.5, 0.3 * np.pi, 1.0)
        self.beta = np.arccos(self.cos)
        self.sin = np.sqrt(1.0 - self.cos**2)
        self.tan = self.sin / self.cos
        self.tan_t = TAN_N / self.cos
        self.alpha_t = np.arctan(self.tan_t)
        self.cos_t, self.sin_t = np.cos(self.alpha_t), np.sin(self.alpha_t)
        self.cos_b = np.sqrt(1.0 - (self.sin * COS_N) ** 2)
        self.d = self.z * self.m / self.cos
        self.db = self.d * self.cos_t
        self.da = self.d + 2.0 * self.m * (TIP + self.x)
        self.pitch = np.pi * self.m / self.cos
        self.pbt = self.pitch * self.cos_t
        tip = 0.5 * (np.sqrt(self.da**2 - self.db**2) - self.db * self.tan_t)
        rack = np.minimum((TIP - self.x) * self.m / self.sin_t, 0.5 * self.db * self.tan_t)
        self.e1, self.e2 = tip / self.pbt, rack / self.pbt
        self.e_alpha = self.e1 + self.e2
        self.e_beta = self.b * self.sin / (np.pi * self.m)
        self.e_gamma = self.e_alpha + self.e_beta
        self.zn = self.z / (self.cos_b**2 * self.cos)
        self.e_alpha_n = self.e_alpha / self.cos_b**2

    def least_teeth(self):
        return 2.0 * (1.0 - self.x) * self.cos / self.sin_t**2

    def tip_thickness(self):
        """In modules, across the tooth."""
        at = np.arccos(self.db / self.da)
        beta_a = np.arctan(self.tan * self.da / self.d)
        half = (np.pi / 2.0 + 2.0 * self.x * TAN_N) / self.z + involute(self.alpha_t) - involute(at)
        return np.cos(beta_a) * self.da / self.m * half

    def efficiency(self, friction):
        loss = 1.0 - self.e_alpha + self.e1**2 + self.e2**2
        return 1.0 - friction * np.pi / (self.z * self.cos_b) * loss

    def stiffness(self):
        """Mesh and single tooth pair, along the travel."""
        q = 0.04723 + 0.15551 / self.zn - 0.00635 * self.x - 0.11654 * self.x / self.zn + 0.00529 * self.x**2
        blank = (1.0 + 0.5 * (1.2 - ROOT)) * 1.0
        single = 0.8 * blank * self.cos / q * 1e9  # N/(mm·µm) in N/m²
        pair = single * self.b * self.cos_t**2
        return pair * (0.75 * self.e_alpha + 0.25), pair

    def contact_lines(self):
        """Least and most of the sum of the lines of contact, as shares of the width."""
        a, c = self.e_alpha % 1.0, self.e_beta % 1.0
        over = np.where(self.e_beta > 0.0, self.e_beta, 1.0)
        least = self.e_alpha - (a * c - np.maximum(0.0, a + c - 1.0)) / over
        most = self.e_alpha + (np.minimum(a, c) - a * c) / over
        straight = self.e_beta <= 0.0
        return np.where(straight, np.floor(self.e_alpha), least), np.where(straight, np.ceil(self.e_alpha), most)

    # what flanks bear
    def flank_endurance(self, strength, pinion):
        zh2 = 2.0 * self.cos_b / (self.cos_t * self.sin_t)
        ze2 = YOUNG / (2.0 * np.pi * (1.0 - POISSON**2))
        part = np.minimum(self.e_beta, 1.0)
        ze_eps2 = (4.0 - self.e_alpha) / 3.0 * (1.0 - part) + part / self.e_alpha
        zbeta2 = 1.0 / self.cos
        if pinion:
            tan_at = np.sqrt((self.da / self.db) ** 2 - 1.0)
            m1 = np.sqrt(self.tan_t / (tan_at - 2.0 * np.pi / self.z))
            zb = np.maximum(1.0, m1 - part * (m1 - 1.0))
        else:
            zb = 1.0
        return strength**2 * self.d * self.b / (zb**2 * zh2 * ze2 * ze_eps2 * zbeta2)

    # what roots bear
    def _factors(self, section, arm, fillet, angle):
        form = 6.0 * arm * np.cos(angle) / (section**2 * COS_N)
        notch = section / (2.0 * fillet)
        reach = section / arm
        concentration = (1.2 + 0.13 * reach) * notch ** (1.0 / (1.21 + 2.3 / reach))
        return form, concentration, notch

    def pinion_form(self):
        e = np.pi / 4.0 - ROOT * TAN_N - (1.0 - SIN_N) * FILLET / COS_N
        g = FILLET - ROOT + self.x
        h = 2.0 / self.zn * (np.pi / 2.0 - e) - np.pi / 3.0
        theta = np.full(np.shape(self.zn), np.pi / 6.0)
        for _ in range(60):
            # Newton on θ − (2G/z_n)·tan θ + H = 0
            value = theta - 2.0 * g / self.zn * np.tan(theta) + h
            theta = theta - value / (1.0 - 2.0 * g / self.zn / np.cos(theta) ** 2)
        section = self.zn * np.sin(np.pi / 3.0 - theta) + np.sqrt(3.0) * (g / np.cos(theta) - FILLET)
        fillet = FILLET + 2.0 * g**2 / (np.cos(theta) * (self.zn * np.cos(theta) ** 2 - 2.0 * g))
        dbn = self.zn * COS_N
        dan = self.zn + (self.da - self.d) / self.m
        way = np.sqrt((dan / 2.0) ** 2 - (dbn / 2.0) ** 2) - np.pi * COS_N * (self.e_alpha_n - 1.0)
        den = 2.0 * np.sqrt(way**2 + (dbn / 2.0) ** 2)
        a_en = np.arccos(dbn / den)
        gamma = (np.pi / 2.0 + 2.0 * self.x * TAN_N) / self.zn + involute(ALPHA_N) - involute(a_en)
        angle = a_en - gamma
        arm = 0.5 * (
            (np.cos(gamma) - np.sin(gamma) * np.tan(angle)) * den
            - self.zn * np.cos(np.pi / 3.0 - theta)
            - (g / np.cos(theta) - FILLET)
        )
        return self._factors(section, arm, fillet, angle)

    def rack_form(self):
        section = 2.0 * (np.pi / 4.0 + (ROOT - FILLET) * TAN_N + FILLET / COS_N - FILLET * np.cos(np.pi / 6.0))
        height = TIP - (self.e_alpha_n - 1.0) * np.pi * SIN_N * COS_N
        arm = ROOT - FILLET / 2.0 + height - (np.pi / 4.0 - height * TAN_N) * TAN_N
        return self._factors(section, arm, FILLET, ALPHA_N)

    def root_endurance(self, strength, slip_layer, pinion):
        """The slip layer is in metres."""
        form, concentration, notch = self.pinion_form() if pinion else self.rack_form()
        layer = slip_layer * 1e3
        delta = (1.0 + np.sqrt(layer * (1.0 + 2.0 * notch) / 5.0)) / (1.0 + np.sqrt(1.2 * layer))
        y_beta = 1.0 - np.minimum(self.e_beta, 1.0) * np.rad2deg(self.beta) / 120.0
        return strength * delta * self.b * self.m / (form * concentration * y_beta)
