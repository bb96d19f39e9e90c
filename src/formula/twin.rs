//! Two pinions on one rack, each with gearbox and motor, pressed against each other by a bias.
//!
//! Method: one speed loop, the torque shared by halves and a constant torque added to one motor and taken off the other:
//! F_1 = F/2 + F_v, F_2 = F/2 − F_v. As long as |F| < 2·F_v each pinion keeps to its own flank, so no play is crossed and the
//! springs of both drives act side by side. Beyond that the second pinion leaves its flank: one spring, and play.
//! Limits: both drives alike; a second motor that only pulls with a constant torque is another thing: it doubles nothing.

use super::duty::cubic_mean;
use super::extremes::larger;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;

const SHARING: &[Source] =
    &[Source::derived("torque shared by halves with an opposite bias; balance of forces on the slide")];
const HALF: &[Source] = &[Source::derived("two equal drives side by side")];

/// Bias force of each pinion. 20 % of 300 N·m on 63.662 mm: 1885 N.
pub static BIAS_FORCE: Formula<fn(Ratio, Torque, Length) -> Force> = Formula {
    note: Note {
        id: "bias-force",
        title: "force by which each of two pinions presses against the other",
        equation: "F_v = x_bi·2·T_acc/d",
        inputs: &[("x_bi", "bias-share"), ("T_acc", "gearbox-acceleration-torque"), ("d", "pinion-diameter")],
        validity: "bias as a share of what the gearbox bears while speeding up; losses neglected",
        sources: &[Source::derived("torque over radius"), Source::practice("10 to 30 % of the rated force")],
    },
    apply: |share, torque, diameter| Force::of_si(2.0 * share.si() * torque.si() / diameter.si()),
};

/// Units of motor, gearbox and pinion on an axis. 2 drives with 2 pinions each: 4.
pub static DRIVE_UNITS: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "drive-units",
        title: "units of motor, gearbox and pinion on the axis",
        equation: "n_U = n_d·n_P",
        inputs: &[("n_d", "drives"), ("n_P", "pinions")],
        validity: "every pinion has a gearbox and a motor",
        sources: &[Source::derived("count")],
    },
    apply: |drives, pinions| Ratio::of_si(drives.si() * pinions.si()),
};

/// Length of a rack that two pinions run on. 8 m, 2·60 mm, 64 mm, 300 mm: 8.484 m.
pub static TWIN_RACK_LENGTH: Formula<fn(Length, Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "twin-rack-length",
        title: "length of the rack line under two pinions",
        equation: "L_r = s + 2·s_o + d + a_P",
        inputs: &[("s", "travel"), ("s_o", "overtravel"), ("d", "pinion-diameter"), ("a_P", "pinion-spacing")],
        validity: "One pinion diameter covers the length of contact and rounding at both ends; both pinions stay on the rack.",
        sources: &[Source::derived("way of both pinions"), Source::practice("one pinion diameter of allowance")],
    },
    apply: |travel, overtravel, diameter, spacing| {
        Length::of_si(super::rack::rack_length(travel, overtravel, diameter).si() + spacing.si())
    },
};

/// Load cycles of a rack tooth under all pinions. 1e7 by one, 2 pinions: 2e7.
pub static RACK_PASSES: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "rack-passes",
        title: "load cycles of the most used rack tooth under all pinions",
        equation: "N_2 = n_P·N_2,1",
        inputs: &[("N_2,1", "pinion-passes"), ("n_P", "pinions")],
        validity: "every pinion passes over the most used tooth",
        sources: &[Source::derived("count")],
    },
    apply: |passes, pinions| Ratio::of_si(passes.si() * pinions.si()),
};

/// Share of one pinion in what a drive shares by halves. 0.58, 2 pinions: 0.29.
pub static PINION_SHARE: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "pinion-share",
        title: "share of one pinion in the moving mass",
        equation: "x_d = x_sd/n_P",
        inputs: &[("x_sd", "side-share"), ("n_P", "pinions")],
        validity: "torque shared by halves",
        sources: SHARING,
    },
    apply: |share, pinions| Ratio::of_si(share.si() / pinions.si()),
};

/// Stiffness that is left for one pinion of a spring that all share. 1200 N/µm, 2 pinions: 600 N/µm.
pub static PINION_STIFFNESS: Formula<fn(Stiffness, Ratio) -> Stiffness> = Formula {
    note: Note {
        id: "pinion-stiffness",
        title: "stiffness of a common seat, as one of the pinions feels it",
        equation: "k_1 = k/n_P",
        inputs: &[("k", "stiffness"), ("n_P", "pinions")],
        validity: "both pinions bear on the same place, which gives under both",
        sources: HALF,
    },
    apply: |stiffness, pinions| Stiffness::of_si(stiffness.si() / pinions.si()),
};

/// Stiffness against yaw that is left for one pinion. 2e8 N·m/rad, 2 pinions: 1e8 N·m/rad.
pub static PINION_YAW_STIFFNESS: Formula<fn(TorsionalStiffness, Ratio) -> TorsionalStiffness> = Formula {
    note: Note {
        id: "pinion-yaw-stiffness",
        title: "stiffness of the guides against yaw, as one of the pinions of a side feels it",
        equation: "k_ψ1 = k_ψ/n_P",
        inputs: &[("k_ψ", "yaw-stiffness"), ("n_P", "pinions")],
        validity: "both pinions of a side push alike",
        sources: HALF,
    },
    apply: |stiffness, pinions| TorsionalStiffness::of_si(stiffness.si() / pinions.si()),
};

/// Stiffness of both pinions together within the range of the bias. 54 N/µm each: 108 N/µm.
pub static BOTH_STIFFNESS: Formula<fn(Stiffness, Ratio) -> Stiffness> = Formula {
    note: Note {
        id: "both-pinions-stiffness",
        title: "stiffness of all pinions of one drive together",
        equation: "k_bp = n_P·k",
        inputs: &[("k", "total-stiffness"), ("n_P", "pinions")],
        validity: "while both flanks touch, |F| < 2·F_v, and both motors hold their place; beyond that one pinion alone",
        sources: HALF,
    },
    apply: |stiffness, pinions| Stiffness::of_si(stiffness.si() * pinions.si()),
};

/// Largest force up to which no play is crossed. 1885 N: 3770 N.
pub static PLAY_FREE_FORCE: Formula<fn(Force) -> Force> = Formula {
    note: Note {
        id: "play-free-force",
        title: "largest force on the slide up to which no play is crossed",
        equation: "F_v0 = 2·F_v",
        inputs: &[("F_v", "bias-force")],
        validity: "load sharing with bias; half of it with a second motor of constant torque, and one way only",
        sources: SHARING,
    },
    apply: |bias| Force::of_si(2.0 * bias.si()),
};

/// Force of one side of an axis of two, racking included. 900 N of cutting, 2·60 N of friction and 2·500 N of racking: 2020 N.
pub static RACKED_PLAY_FREE_DEMAND: Formula<fn(Force, Force, Ratio, Force) -> Force> = Formula {
    note: Note {
        id: "racked-play-free-demand",
        title: "force of cutting, friction and racking together on one side",
        equation: "F_qr = F_c + n_P·(F_f + F_r)",
        inputs: &[
            ("F_c", "drive-cutting-force"),
            ("F_f", "friction-force"),
            ("n_P", "pinions"),
            ("F_r", "racking-force"),
        ],
        validity: "Speeding up may cross it; F_f and F_r are those of one pinion. Racking presses both pinions of a side the same way; at the end of the travel it is whole.",
        sources: &[Source::derived("all at once and the same way")],
    },
    apply: |cutting, friction, pinions, racking| {
        Force::of_si(cutting.si() + pinions.si() * (friction.si() + racking.si()))
    },
};

/// Force that must cross no play. 900 N of cutting and 2·60 N of friction: 1020 N.
pub static PLAY_FREE_DEMAND: Formula<fn(Force, Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "play-free-demand",
        title: "force of cutting and friction that must cross no play",
        equation: "F_q = F_c + n_P·F_f",
        inputs: &[("F_c", "drive-cutting-force"), ("F_f", "friction-force"), ("n_P", "pinions")],
        validity: "speeding up may cross it; F_f is that of one pinion",
        sources: &[Source::derived("both at once and the same way")],
    },
    apply: |cutting, friction, pinions| Force::of_si(cutting.si() + pinions.si() * friction.si()),
};

/// Play that is left with a bias: none within its range. 60 µm, 1020 N of 3770 N: 0; 4 kN of 3770 N: 60 µm.
pub static BIASED_PLAY: Formula<fn(Length, Force, Force) -> Length> = Formula {
    note: Note {
        id: "biased-play",
        title: "play that a bias leaves",
        equation: "F_q ≤ F_v0: j = 0; else j = j_1",
        inputs: &[("j_1", "pinion-play"), ("F_q", "play-free-demand"), ("F_v0", "play-free-force")],
        validity: "play of mesh and gearbox; both pinions on their flanks within the range",
        sources: SHARING,
    },
    apply: |play, demand, range| {
        Length::of_si(if demand.si() <= range.si() {
            0.0 * (play.si() + demand.si())
        } else {
            play.si() + 0.0 * (range.si() + demand.si())
        })
    },
};

/// Force of the first pinion in a phase. 500 N and 1885 N: 2385 N.
pub static FIRST_PINION_FORCE: Formula<fn(Force, Force) -> Force> = Formula {
    note: Note {
        id: "first-pinion-force",
        title: "force of the first of two pinions",
        equation: "F_1 = F_k + F_v",
        inputs: &[("F_k", "phase-force"), ("F_v", "bias-force")],
        validity: "F_k is half the force of the drive",
        sources: SHARING,
    },
    apply: |half, bias| Force::of_si(half.si() + bias.si()),
};

/// Force of the second pinion in a phase. 500 N and 1885 N: −1385 N.
pub static SECOND_PINION_FORCE: Formula<fn(Force, Force) -> Force> = Formula {
    note: Note {
        id: "second-pinion-force",
        title: "force of the second of two pinions",
        equation: "F_2 = F_k − F_v",
        inputs: &[("F_k", "phase-force"), ("F_v", "bias-force")],
        validity: "F_k is half the force of the drive",
        sources: SHARING,
    },
    apply: |half, bias| Force::of_si(half.si() - bias.si()),
};

/// Larger of two torques without their signs. 3 and −5 N·m: 5 N·m.
pub static LARGER_TORQUE: Formula<fn(Torque, Torque) -> Torque> = Formula {
    note: Note {
        id: "larger-torque",
        title: "larger torque of two motors in one phase",
        equation: "T = max(|T_1|, |T_2|)",
        inputs: &[("T_1", "first-torque"), ("T_2", "second-torque")],
        validity: "everywhere",
        sources: &[Source::derived("definition")],
    },
    apply: |first, second| Torque::of_si(larger(first.si().abs(), second.si().abs())),
};

/// Torque by which each of two motors counts in the power of their drive, N·m.
///
/// Where one drives and the other brakes, what it gives back has passed both drive electronics, and only η_e² of it drives.
/// Pass both torques, the speed (all signed), and the efficiency of motor and electronics.
/// Check: 5 and 3 N·m → 4 N·m; 5 and −3 N·m, 1 m/s, 0.85 → 1.416 N·m.
pub static PAIR_TORQUE: Formula<fn(Torque, Torque, Velocity, Ratio) -> Torque> = Formula {
    note: Note {
        id: "pair-torque",
        title: "torque by which each of the two motors of a drive counts in its power, in one phase",
        equation: "T_d and T_b what drives and what brakes, max(±T·sgn v, 0) of both together; T_d ≥ η_e²·T_b: \
                   T = sgn v·(T_d − η_e²·T_b)/2; else T = sgn v·(T_d/η_e² − T_b)/2; v = 0: (T_1 + T_2)/2",
        inputs: &[("T_1", "first-torque"), ("T_2", "second-torque"), ("v", "speed"), ("η_e", "efficiency")],
        validity: "both motors on one supply, so that what one gives back the other takes; the power that this torque makes is taken \
                   from the supply over η_e, or given back by η_e",
        sources: &[Source::derived("sum of electrical powers at the same speed")],
    },
    apply: |first, second, speed, efficiency| {
        let (one, two) = (first.si(), second.si());
        if speed.si() == 0.0 {
            return Torque::of_si(0.5 * (one + two) + 0.0 * efficiency.si());
        }
        let way = speed.si().signum();
        let drives = larger(way * one, 0.0) + larger(way * two, 0.0);
        let brakes = larger(-way * one, 0.0) + larger(-way * two, 0.0);
        let passed = efficiency.si() * efficiency.si();
        let left = drives - passed * brakes;
        Torque::of_si(0.5 * way * if left < 0.0 { left / passed } else { left })
    },
};

/// Worse of the root mean square torques of two motors. 5 and 3 N·m against −1 and −3 N·m, half of the time each: 4.123 N·m.
pub static WORSE_RMS_TORQUE: Formula<fn(Series<Torque>, Series<Torque>, Series<Ratio>) -> Torque> = Formula {
    note: Note {
        id: "worse-rms-torque",
        title: "root mean square torque of the warmer of two motors",
        equation: "T_rms = max(√(Σ T_1k²·q_k/Σ q_k), √(Σ T_2k²·q_k/Σ q_k))",
        inputs: &[("T_1k", "first-torques"), ("T_2k", "second-torques"), ("q_k", "shares")],
        validity: "the bias is held at standstill too",
        sources: &[Source::derived("copper loss grows with the square of torque")],
    },
    apply: |first, second, shares| {
        let one = super::motor::rms_torque(first, shares.clone()).si();
        let other = super::motor::rms_torque(second, shares).si();
        Torque::of_si(larger(one, other))
    },
};

/// The same with a racking torque that grows along the travel. 3 N·m against −3 N·m all the time, and 3 N·m: 4.583 N·m.
pub static WORSE_RACKED_RMS_TORQUE: Formula<fn(Series<Torque>, Series<Torque>, Series<Ratio>, Torque) -> Torque> =
    Formula {
        note: Note {
            id: "worse-racked-rms-torque",
            title: "root mean square torque of the warmer of two motors, with a racking torque that grows along the travel",
            equation: "T_rms = max over both of √(T̄² + T_r²/3 + |Σ T_k·q_k/Σ q_k|·T_r)",
            inputs: &[
                ("T_1k", "first-torques"),
                ("T_2k", "second-torques"),
                ("q_k", "shares"),
                ("T_r", "racking-torque"),
            ],
            validity: "as with one motor; the worse of both signs and of both motors",
            sources: &[Source::derived("mean of the square of a sum; a ramp has the mean 1/2 and the mean square 1/3")],
        },
        apply: |first, second, shares, racking| {
            let one = (super::gantry::RACKED_RMS_TORQUE.apply)(first, shares.clone(), racking).si();
            let other = (super::gantry::RACKED_RMS_TORQUE.apply)(second, shares, racking).si();
            Torque::of_si(larger(one, other))
        },
    };

/// Worse cubic mean force of two pinions, weighted by travel. ±500 N half of the way each, bias 1885 N: 2009 N.
pub static BIASED_MEAN_FORCE: Formula<fn(Series<Force>, Series<Ratio>, Series<Velocity>, Force) -> Force> = Formula {
    note: Note {
        id: "biased-mean-force",
        title: "cubic mean force of the more loaded of two pinions, weighted by travel",
        equation: "F_m = max over ± of ∛(Σ |F_k ± F_v|³·q_k·|v_k| / Σ q_k·|v_k|)",
        inputs: &[("F_k", "forces"), ("q_k", "shares"), ("v_k", "speeds"), ("F_v", "bias-force")],
        validity: "F_k is half the force of the drive; an axis that never moves gives zero",
        sources: SHARING,
    },
    apply: |forces, shares, speeds, bias| {
        let mean = |bias: f64| {
            let with_bias = forces.si().iter().map(|force| force + bias);
            cubic_mean(with_bias.zip(super::duty::travel_weights(shares.si(), speeds.si())))
        };
        Force::of_si(larger(mean(bias.si()), mean(-bias.si())))
    },
};

/// Force of both pinions together. 5 kN each: 10 kN.
pub static BOTH_FORCE: Formula<fn(Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "both-pinions-force",
        title: "force of all pinions of one drive together",
        equation: "F = n_P·F_1",
        inputs: &[("F_1", "pinion-force"), ("n_P", "pinions")],
        validity: "all push alike",
        sources: HALF,
    },
    apply: |force, pinions| Force::of_si(force.si() * pinions.si()),
};

/// Force that is one pinion's half of a drive's. 900 N, 2: 450 N.
pub static PINION_FORCE: Formula<fn(Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "pinion-force",
        title: "share of one pinion in a force of its drive",
        equation: "F_1 = F/n_P",
        inputs: &[("F", "force"), ("n_P", "pinions")],
        validity: "torque shared by halves",
        sources: SHARING,
    },
    apply: |force, pinions| Force::of_si(force.si() / pinions.si()),
};

/// Mass that is one pinion's half. 1600 kg, 2: 800 kg.
pub static PINION_LOAD: Formula<fn(Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "pinion-load",
        title: "share of one pinion in a mass",
        equation: "m_1 = m/n_P",
        inputs: &[("m", "mass"), ("n_P", "pinions")],
        validity: "torque shared by halves",
        sources: SHARING,
    },
    apply: |mass, pinions| Mass::of_si(mass.si() / pinions.si()),
};
