//! Two pinions pressed against each other, each a spring behind a gap, against a balance of forces that is solved step by step.

use crate::close;
use axiswright::formula::Series;
use axiswright::formula::twin::*;
use axiswright::units::*;

/// One pinion: a spring whose end the motor holds, with play between two flanks. Force on the slide at its place.
fn pinion(stiffness: f64, end: f64, play: f64, place: f64) -> f64 {
    let gap = end - place;
    if gap > 0.0 {
        stiffness * gap
    } else if gap < -play {
        stiffness * (gap + play)
    } else {
        0.0
    }
}

/// Two drives whose ends are held where the bias puts them while nothing else acts: place and forces of a loaded slide.
struct Pair {
    stiffness: f64,
    play: f64,
    bias: f64,
}

impl Pair {
    fn forces(&self, place: f64) -> (f64, f64) {
        let wind = self.bias / self.stiffness;
        // the first pushes on its forward flank, the second on its backward flank
        let first = pinion(self.stiffness, wind, self.play, place);
        let second = pinion(self.stiffness, -wind - self.play, self.play, place);
        (first, second)
    }

    /// The place where the drives balance this load, by halving.
    fn place(&self, load: f64) -> f64 {
        let (mut low, mut high) = (-1e-2, 1e-2);
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            let (first, second) = self.forces(middle);
            if first + second > load { low = middle } else { high = middle }
        }
        0.5 * (low + high)
    }

    fn slope(&self, load: f64) -> f64 {
        let step = 1.0;
        2.0 * step / (self.place(load - step) - self.place(load + step))
    }
}

fn force(value: f64) -> Force {
    Force::of_si(value)
}

#[test]
fn both_springs_act_within_the_range_and_one_beyond() {
    for (stiffness, play, bias) in [(54e6, 60e-6, 1885.0), (90e6, 20e-6, 600.0), (30e6, 120e-6, 4000.0)] {
        let pair = Pair { stiffness, play, bias };
        let range = (PLAY_FREE_FORCE.apply)(force(bias)).si();
        let both = (BOTH_STIFFNESS.apply)(Stiffness::of_si(stiffness), Ratio::of_si(2.0)).si();
        for share in [-0.95, -0.5, 0.0, 0.3, 0.9] {
            close("inside", pair.slope(share * range), both, 1e-6);
            let load = share * range;
            let (first, second) = pair.forces(pair.place(load));
            let half = force(load / 2.0);
            close("first", (FIRST_PINION_FORCE.apply)(half, force(bias)).si(), first, 1e-6);
            close("second", (SECOND_PINION_FORCE.apply)(half, force(bias)).si(), second, 1e-6);
        }
        for share in [-1.1, 1.1] {
            close("beyond", pair.slope(share * range), stiffness, 1e-6);
        }
    }
}

/// Within its range a bias leaves no play: the slide goes through zero load without a jump.
#[test]
fn no_play_is_crossed_within_the_range() {
    let pair = Pair { stiffness: 54e6, play: 60e-6, bias: 1885.0 };
    let range = (PLAY_FREE_FORCE.apply)(force(pair.bias)).si();
    let steps = 400;
    for step in 0..steps {
        let at = |step: usize| -0.99 * range + 1.98 * range * step as f64 / steps as f64;
        let way = pair.place(at(step)) - pair.place(at(step + 1));
        close("way of one step", way, 1.98 * range / steps as f64 / (2.0 * pair.stiffness), 1e-6);
    }
    let play = |demand: f64| (BIASED_PLAY.apply)(Length::of_si(pair.play), force(demand), force(range)).si();
    assert_eq!(play(0.99 * range), 0.0);
    assert_eq!(play(1.01 * range), pair.play);
    assert!(play(f64::NAN).is_nan(), "what is not known leaves the play unknown");
}

/// What another side presses on this one all the time takes its part of the range: cutting to and fro on top of it keeps
/// both springs as long as the sum stays within, and lets the second pinion go where it does not.
#[test]
fn racking_takes_part_of_the_range() {
    let pair = Pair { stiffness: 54e6, play: 60e-6, bias: 1885.0 };
    let range = (PLAY_FREE_FORCE.apply)(force(pair.bias)).si();
    let (cutting, friction) = (900.0, 60.0);
    for racking in [0.0, 400.0, 1300.0, 1500.0, 2500.0] {
        let two = Ratio::of_si(2.0);
        let demand = (RACKED_PLAY_FREE_DEMAND.apply)(force(cutting), force(friction), two, force(racking)).si();
        // the side feels twice what one pinion does of friction and racking
        let load = 2.0 * racking + cutting + 2.0 * friction;
        let slope = pair.slope(load);
        if demand < range {
            close("both springs", slope, 2.0 * pair.stiffness, 1e-6);
        } else {
            close("one spring", slope, pair.stiffness, 1e-6);
        }
        let play = (BIASED_PLAY.apply)(Length::of_si(pair.play), force(demand), force(range)).si();
        assert_eq!(play == 0.0, pair.forces(pair.place(load)).1 < 0.0, "racking {racking} N");
    }
}

/// The largest force that two pinions with a bias can push is what both bear, less the bias twice.
#[test]
fn a_bias_costs_twice_itself_of_what_both_bear() {
    let (bears, bias) = (33_000.0, 9_900.0);
    let (mut low, mut high) = (0.0, 2.0 * bears);
    for _ in 0..100 {
        let middle = 0.5 * (low + high);
        let first = (FIRST_PINION_FORCE.apply)(force(middle / 2.0), force(bias)).si();
        if first <= bears { low = middle } else { high = middle }
    }
    close("46.2 kN", low, 46_200.0, 1e-9);
}

/// Two motors, each with its own series of torques, heated one by one.
#[test]
fn the_warmer_motor_counts() {
    let (first, second, shares) = ([5.0, 3.0, 2.0], [-1.0, -3.0, -4.0], [0.3, 0.5, 0.2]);
    let heat =
        |torques: [f64; 3]| torques.iter().zip(shares).map(|(torque, share)| torque * torque * share).sum::<f64>();
    let worse = if heat(first) > heat(second) { heat(first) } else { heat(second) };
    let series = |torques: &[f64]| Series::of_si(torques);
    let formula = (WORSE_RMS_TORQUE.apply)(series(&first), series(&second), Series::of_si(&shares)).si();
    close("root mean square", formula, worse.sqrt(), 1e-12);
}

/// Two motors on one supply: each takes its power over its electronics or gives it back through them, and what both together
/// take or give is what one torque makes in both.
#[test]
fn two_motors_take_and_give_what_their_torque_of_power_makes() {
    let efficiency: f64 = 0.85;
    let drawn = |power: f64| if power > 0.0 { power / efficiency } else { power * efficiency };
    for speed in [0.7, -0.7] {
        for (first, second) in
            [(5.0, 3.0), (5.0, -3.0), (3.0, -5.0), (-4.0, 4.0), (-2.0, -6.0), (0.0, -1.0), (2.0, -1.445)]
        {
            let torques = (Torque::of_si(first), Torque::of_si(second));
            let both = (PAIR_TORQUE.apply)(torques.0, torques.1, Velocity::of_si(speed), Ratio::of_si(efficiency)).si();
            let power = drawn(first * speed) + drawn(second * speed);
            let told = 2.0 * drawn(both * speed);
            assert!((told - power).abs() < 1e-12, "{first} and {second} N·m at {speed}: {told} for {power}");
        }
    }
    let unknown =
        (PAIR_TORQUE.apply)(Torque::of_si(1.0), Torque::of_si(f64::NAN), Velocity::of_si(1.0), Ratio::of_si(0.85));
    assert!(unknown.si().is_nan(), "what is not known stays so");
}
