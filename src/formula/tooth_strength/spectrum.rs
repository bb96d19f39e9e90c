//! Load spectrum of teeth: the one force that, met at every pass, does the damage of the whole duty.
//!
//! Method: Palmgren's and Miner's sum after ISO 6336-6 on the two straight log-log lines of the life factors. Each
//! force of the duty is turned into what the teeth feel of it, with the dynamic and sharing factor of that force, and
//! the sum back into a force. From 100 N/mm on, all forces of a stretch are felt alike, so that what is felt names no force
//! there; the largest force of the duty does (`Felt::stands_for`). One force alone gives itself, and no sum gives more than
//! the largest force, since no pass meets more. The last line of life does not end but goes on, so
//! that more force is never less damage. A flank sees only the forces of one sign, a root sees both. A pinion tooth meets the
//! forces as the way goes; a place of the rack meets one force a pass, by zone: near the lower end that of phases
//! that accelerate upward or forward, near the upper end of those that accelerate the other way, between them those
//! of the cruise. Every move is taken to pass the worst place.
//! Limits: the order of loads does not count; all at the top speed of the axis; a root that is loaded both ways has
//! its reversal factor in what it bears; a seldom force above 100 N/mm lifts what stands for lighter ones (safe).

use super::endurance::Felt;
use super::factors::{FLANK_CYCLES, FLANK_FACTORS, ROOT_CYCLES, ROOT_FACTORS};
use crate::formula::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Acceleration, Force, Length, Measure, Ratio, Velocity};

type PinionFn = fn(Series<Force>, Series<Ratio>, Series<Velocity>, Force, Ratio, Force, Ratio, Length) -> Force;
type PinionRootFn =
    fn(Series<Force>, Series<Ratio>, Series<Velocity>, Force, Ratio, Ratio, Force, Ratio, Length) -> Force;
type RackFn =
    fn(Series<Force>, Series<Acceleration>, Series<Ratio>, Ratio, Force, Ratio, Force, Ratio, Length) -> Force;
type RackRootFn =
    fn(Series<Force>, Series<Acceleration>, Series<Ratio>, Ratio, Force, Ratio, Ratio, Force, Ratio, Length) -> Force;

const PINION_INPUTS: &[(&str, &str)] = &[
    ("F_k", "phase-force"),
    ("q_k", "phase-share"),
    ("v_k", "phase-speed"),
    ("E", "endurance"),
    ("κ", "tooth-load-slope"),
    ("F_o", "tooth-load-offset"),
    ("K_l", "light-load-factor"),
    ("b", "face-width"),
];
const PINION_ROOT_INPUTS: &[(&str, &str)] = &[
    ("F_k", "phase-force"),
    ("q_k", "phase-share"),
    ("v_k", "phase-speed"),
    ("E", "endurance"),
    ("N_F0", "root-static-cycles"),
    ("κ", "tooth-load-slope"),
    ("F_o", "tooth-load-offset"),
    ("K_l", "light-load-factor"),
    ("b", "face-width"),
];
const RACK_INPUTS: &[(&str, &str)] = &[
    ("F_k", "phase-force"),
    ("a_k", "phase-acceleration"),
    ("m_k", "phase-moves"),
    ("N_h", "moves-per-hour"),
    ("E", "endurance"),
    ("κ", "tooth-load-slope"),
    ("F_o", "tooth-load-offset"),
    ("K_l", "light-load-factor"),
    ("b", "face-width"),
];
const RACK_ROOT_INPUTS: &[(&str, &str)] = &[
    ("F_k", "phase-force"),
    ("a_k", "phase-acceleration"),
    ("m_k", "phase-moves"),
    ("N_h", "moves-per-hour"),
    ("E", "endurance"),
    ("N_F0", "root-static-cycles"),
    ("κ", "tooth-load-slope"),
    ("F_o", "tooth-load-offset"),
    ("K_l", "light-load-factor"),
    ("b", "face-width"),
];
const SOURCES: &[Source] = &[
    Source::memory("ISO 6336-6, linear sum of damage"),
    Source::derived(
        "one force of equal damage, on the level at 100 N/mm by the largest; the last line goes on below the last point",
    ),
];
const RACK_SOURCES: &[Source] = &[
    Source::memory("ISO 6336-6, linear sum of damage"),
    Source::derived(
        "zones of the stroke; one force of equal damage, on the level at 100 N/mm by the largest; the last line goes on below the last point",
    ),
];
const PINION_VALIDITY: &str = "The order of loads does not count. Below the last point the line goes on (safe). A force above the first point stands for itself. A rare largest force above 100 N/mm lifts what stands for lighter ones, by (f_l − F_o)/κ over b·100 N/mm at most (safe). A safety that is put on the result is exact where all forces lie on one side of knee and level, else good to 2 % at the knee; across the level it leaves up to 10 % of what is felt unseen, more than 2 % in one of a hundred random duties.";
const RACK_VALIDITY: &str = "Every move is taken to pass the worst place, and each phase of a ramp to act there, up to the largest force (safe; at most 4 % in force). Else as for the pinion.";

/// Force on a pinion flank that does at every turn the damage of the duty; an axis that never moves gives zero.
pub static PINION_FLANK_EQUIVALENT_FORCE: Formula<PinionFn> = Formula {
    note: Note {
        id: "pinion-flank-equivalent-force",
        title: "force on a pinion flank that does at every turn the damage of the duty",
        equation: "N(f_eq)⁻¹ = Σ w_k·N(f_k)⁻¹ over the forces of one sign, the worse sign; w_k = q_k·|v_k|/Σ q·|v|; N = 5·10⁷·(E/f)^p, p = 6.611 above and 16.30 below E; f = κ·F + F_o, at least f_l = K_l·b·100 N/mm (K_l·F below 100 N/mm); f_eq > f_l: F_eq = (f_eq − F_o)/κ; else F_eq = F_t·f_eq/f(F_t), F_t = min(F_max, (f_l − F_o)/κ); F_eq ≤ F_max = max F_k",
        inputs: PINION_INPUTS,
        validity: PINION_VALIDITY,
        sources: SOURCES,
    },
    apply: |forces, shares, speeds, endurance, slope, offset, light, face_width| {
        let teeth = Teeth::of(*FLANK, endurance, Felt::of(slope, offset, light, face_width));
        let passes = Passes::Pinion { forces: forces.si(), shares: shares.si(), speeds: speeds.si() };
        Force::of_si(teeth.either_flank(&passes, Zone::Whole))
    },
};

/// Force on a pinion root that does at every turn the damage of the duty; an axis that never moves gives zero.
pub static PINION_ROOT_EQUIVALENT_FORCE: Formula<PinionRootFn> = Formula {
    note: Note {
        id: "pinion-root-equivalent-force",
        title: "force on a pinion root that does at every turn the damage of the duty",
        equation: "N(f_eq)⁻¹ = Σ w_k·N(f_k)⁻¹ over |F_k|; w_k = q_k·|v_k|/Σ q·|v|; N = 3·10⁶·(E/f)^p, p = ln(3·10⁶/N_F0)/ln 2.5 above (8.738 from 10³, 6.225 from 10⁴) and 49.91 below E; f and F_eq of f_eq as for the pinion flank",
        inputs: PINION_ROOT_INPUTS,
        validity: PINION_VALIDITY,
        sources: SOURCES,
    },
    apply: |forces, shares, speeds, endurance, first, slope, offset, light, face_width| {
        let teeth = Teeth::of(LifeLine::of_roots(first.si()), endurance, Felt::of(slope, offset, light, face_width));
        let passes = Passes::Pinion { forces: forces.si(), shares: shares.si(), speeds: speeds.si() };
        Force::of_si(teeth.equivalent(&passes, Zone::Whole, None))
    },
};

/// Force on a rack flank that does at every pass the damage of the duty, at the worst place.
pub static RACK_FLANK_EQUIVALENT_FORCE: Formula<RackFn> = Formula {
    note: Note {
        id: "rack-flank-equivalent-force",
        title: "force on a rack flank that does at every pass the damage of the duty, at the worst place",
        equation: "N(f_eq)⁻¹ = Σ w_k·N(f_k)⁻¹ over the forces of one sign, the worst sign and zone; a_k > 0 lower end, a_k < 0 upper end, a_k = 0 between; w_k = m_k/N_h; N, f and F_eq of f_eq as for the pinion flank, F_max of that sign and zone",
        inputs: RACK_INPUTS,
        validity: RACK_VALIDITY,
        sources: RACK_SOURCES,
    },
    apply: |forces, accelerations, moves, all, endurance, slope, offset, light, face_width| {
        let teeth = Teeth::of(*FLANK, endurance, Felt::of(slope, offset, light, face_width));
        let passes =
            Passes::Rack { forces: forces.si(), accelerations: accelerations.si(), moves: moves.si(), all: all.si() };
        Force::of_si(worst_zone(|zone| teeth.either_flank(&passes, zone)))
    },
};

/// Force on a rack root that does at every pass the damage of the duty, at the worst place.
pub static RACK_ROOT_EQUIVALENT_FORCE: Formula<RackRootFn> = Formula {
    note: Note {
        id: "rack-root-equivalent-force",
        title: "force on a rack root that does at every pass the damage of the duty, at the worst place",
        equation: "N(f_eq)⁻¹ = Σ w_k·N(f_k)⁻¹ over |F_k|, the worst zone; a_k > 0 lower end, a_k < 0 upper end, a_k = 0 between; w_k = m_k/N_h; N as for the pinion root, f and F_eq of f_eq as for the pinion flank, F_max of that zone",
        inputs: RACK_ROOT_INPUTS,
        validity: RACK_VALIDITY,
        sources: RACK_SOURCES,
    },
    apply: |forces, accelerations, moves, all, endurance, first, slope, offset, light, face_width| {
        let teeth = Teeth::of(LifeLine::of_roots(first.si()), endurance, Felt::of(slope, offset, light, face_width));
        let passes =
            Passes::Rack { forces: forces.si(), accelerations: accelerations.si(), moves: moves.si(), all: all.si() };
        Force::of_si(worst_zone(|zone| teeth.equivalent(&passes, zone, None)))
    },
};

/// A life line of two straight parts in log-log, in the force that teeth feel.
#[derive(Clone, Copy)]
struct LifeLine {
    knee_cycles: f64,
    /// Exponents of the cycles over the force above and below the knee.
    exponents: [f64; 2],
    /// Force over that at the knee, at the first point.
    first: f64,
}

/// The exponent to which a force is raised when its stress, that to the power `n`, follows the life factor.
fn exponent(few: f64, many: f64, more: f64, less: f64, stress_power: f64) -> f64 {
    (many / few).ln() / (more / less).ln() / stress_power
}

/// Contact stress goes with the root of the force.
static FLANK: std::sync::LazyLock<LifeLine> = std::sync::LazyLock::new(|| life_line(FLANK_CYCLES, FLANK_FACTORS, 2.0));

impl LifeLine {
    /// Root stress goes with the force; the line begins where the steel says.
    fn of_roots(first: f64) -> LifeLine {
        life_line([first, ROOT_CYCLES[0], ROOT_CYCLES[1]], ROOT_FACTORS, 1.0)
    }
}

fn life_line(cycles: [f64; 3], factors: [f64; 3], power: f64) -> LifeLine {
    LifeLine {
        // a first point that is not known makes the line unknown
        knee_cycles: cycles[1] + 0.0 * cycles[0],
        exponents: [
            exponent(cycles[0], cycles[1], factors[0], factors[1], power),
            exponent(cycles[1], cycles[2], factors[1], factors[2], power),
        ],
        first: (factors[0] / factors[1]).powf(power),
    }
}

/// Part of the stroke that is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Zone {
    Whole,
    LowerEnd,
    UpperEnd,
    Middle,
}

/// The forces of the duty and how often a tooth meets them.
enum Passes<'a> {
    Pinion { forces: &'a [f64], shares: &'a [f64], speeds: &'a [f64] },
    Rack { forces: &'a [f64], accelerations: &'a [f64], moves: &'a [f64], all: f64 },
}

impl Passes<'_> {
    fn forces(&self) -> &[f64] {
        match self {
            Passes::Pinion { forces, .. } | Passes::Rack { forces, .. } => forces,
        }
    }

    /// What all phases count together: the way, or the moves.
    fn all(&self) -> f64 {
        match self {
            Passes::Pinion { shares, speeds, .. } => {
                shares.iter().zip(*speeds).map(|(share, speed)| share * speed.abs()).sum()
            }
            Passes::Rack { all, .. } => *all,
        }
    }

    /// How much a phase counts in a zone. What is not known counts everywhere, and makes the sum unknown.
    fn weight(&self, index: usize, zone: Zone) -> f64 {
        match self {
            Passes::Pinion { shares, speeds, .. } => shares[index] * speeds[index].abs(),
            Passes::Rack { accelerations, moves, .. } => {
                let acceleration = accelerations[index];
                let elsewhere = match zone {
                    Zone::LowerEnd => acceleration <= 0.0,
                    Zone::UpperEnd => acceleration >= 0.0,
                    Zone::Middle | Zone::Whole => acceleration != 0.0,
                };
                if elsewhere { 0.0 * acceleration } else { moves[index] + 0.0 * acceleration }
            }
        }
    }
}

/// How many different forces are remembered.
const MET: usize = 12;

struct Teeth {
    line: LifeLine,
    endurance: f64,
    felt: Felt,
}

impl Teeth {
    fn of(line: LifeLine, endurance: Force, felt: Felt) -> Teeth {
        Teeth { line, endurance: endurance.si(), felt }
    }

    /// One over the cycles that the teeth bear of what they feel.
    #[inline]
    fn damage(&self, felt: f64) -> f64 {
        let over = felt / self.endurance;
        let exponent = if over > 1.0 { self.line.exponents[0] } else { self.line.exponents[1] };
        over.powf(exponent) / self.line.knee_cycles
    }

    /// What the teeth feel at this damage a cycle.
    fn of_damage(&self, damage: f64) -> f64 {
        let share = damage * self.line.knee_cycles;
        let exponent = if share > 1.0 { self.line.exponents[0] } else { self.line.exponents[1] };
        self.endurance * share.powf(1.0 / exponent)
    }

    /// The force of equal damage of all forces of a zone, or of those of one sign; zero where none moves.
    fn equivalent(&self, passes: &Passes<'_>, zone: Zone, sign: Option<f64>) -> f64 {
        let (mut damage, mut above, mut largest) = (0.0, 0.0, 0.0);
        // moves of like ramps meet the same forces again; each is worked out once
        let mut met = [(f64::NAN, 0.0, 0.0); MET];
        let mut last = 0;
        for (index, force) in passes.forces().iter().enumerate() {
            let weight = passes.weight(index, zone);
            if weight == 0.0 {
                continue;
            }
            let counted = sign.map_or(force.abs(), |sign| sign * force);
            if counted < 0.0 {
                continue;
            }
            let (felt, once) = match met[..last].iter().find(|(force, _, _)| *force == counted) {
                Some(&(_, felt, once)) => (felt, once),
                None => {
                    let felt = self.felt.effective(counted);
                    let once = self.damage(felt);
                    if last < MET {
                        met[last] = (counted, felt, once);
                        last += 1;
                    }
                    (felt, once)
                }
            };
            damage += weight * once;
            if counted > largest {
                largest = counted;
            }
            if felt > self.endurance * self.line.first && counted > above {
                above = counted;
            }
        }
        if damage == 0.0 {
            // nothing moves here, or no force has this sign; what the teeth bear must be known all the same
            return 0.0 * (self.felt.effective(self.endurance) + self.felt.effective(0.0) + passes.all());
        }
        let equal = self.felt.stands_for(self.of_damage(damage / passes.all()), largest);
        if above > equal { above } else { equal }
    }

    /// The worse of the two flanks.
    fn either_flank(&self, passes: &Passes<'_>, zone: Zone) -> f64 {
        worse(self.equivalent(passes, zone, Some(1.0)), self.equivalent(passes, zone, Some(-1.0)))
    }
}

/// The greater; NaN if one is.
fn worse(a: f64, b: f64) -> f64 {
    if a > b || a.is_nan() { a } else { b }
}

fn worst_zone(of_zone: impl Fn(Zone) -> f64) -> f64 {
    worse(of_zone(Zone::Middle), worse(of_zone(Zone::LowerEnd), of_zone(Zone::UpperEnd)))
}
