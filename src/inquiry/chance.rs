//! Chance: factors that any two drives share, and what a share of cases says of all.
//!
//! Method: the key stream of ChaCha20 (Bernstein; RFC 8439, from memory) under a seed, one stream a sample, so that a sample is
//! the same whatever thread works it out and whatever came before it. Two uniform numbers give a normal one (Box and Muller
//! 1958, from memory), drawn anew beyond three standard deviations. A factor is the exponential of a normal number, so it
//! never turns a quantity negative; its median is 1 and its standard deviation over its mean is the spread.
//! Limits: the cut takes away 0.27 % of the cases and some 1.5 % of the spread.

use chacha20::ChaCha20Rng;
use chacha20::rand_core::{Rng, SeedableRng};

/// A normal number beyond so many standard deviations is drawn anew.
pub const CUT: f64 = 3.0;
/// Half the width of an interval that holds 95 % of a normal distribution.
const NORMAL_95: f64 = 1.959_963_984_540_054;

/// The source of one sample.
pub struct Chance {
    stream: ChaCha20Rng,
}

impl Chance {
    /// The source of this sample under this seed.
    pub fn of(seed: u64, sample: u64) -> Chance {
        let mut key = [0_u8; 32];
        key[..8].copy_from_slice(&seed.to_le_bytes());
        let mut stream = ChaCha20Rng::from_seed(key);
        stream.set_stream(sample);
        Chance { stream }
    }

    /// A number between 0 and 1, never either.
    fn uniform(&mut self) -> f64 {
        ((self.stream.next_u64() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// A normal number, cut.
    pub fn normal(&mut self) -> f64 {
        loop {
            let (radius, turn) = (self.uniform(), self.uniform());
            let drawn = (-2.0 * radius.ln()).sqrt() * (std::f64::consts::TAU * turn).cos();
            if drawn.abs() <= CUT {
                return drawn;
            }
        }
    }
}

/// The factor that a normal number makes of a spread: 0.05 for 5 %.
pub fn factor(normal: f64, spread: f64) -> f64 {
    (normal * (1.0 + spread * spread).ln().sqrt()).exp()
}

/// The interval that holds the share of all cases with 95 %, from so many of so many (Wilson 1927).
///
/// 48 of 50 give 0.865 to 0.989.
pub fn wilson(passed: usize, samples: usize) -> (f64, f64) {
    let (count, share) = (samples as f64, passed as f64 / samples as f64);
    let squared = NORMAL_95 * NORMAL_95 / count;
    let middle = (share + squared / 2.0) / (1.0 + squared);
    let half = NORMAL_95 / (1.0 + squared) * (share * (1.0 - share) / count + squared / (4.0 * count)).sqrt();
    // an end that is 0 or 1 but for rounding
    let (low, high) = (middle - half, middle + half);
    (if passed == 0 { 0.0 } else { low }, if passed == samples { 1.0 } else { high })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 8439, A.1, test vector 1: key, nonce and counter zero; the first bytes are 76 b8 e0 ad a0 f1 3d 90 (from memory).
    #[test]
    fn the_stream_is_that_of_chacha20() {
        let mut chance = Chance::of(0, 0);
        assert_eq!(chance.stream.next_u64().to_le_bytes(), [0x76, 0xb8, 0xe0, 0xad, 0xa0, 0xf1, 0x3d, 0x90]);
    }

    /// Wilson 1927; 48 of 50 is the case of the engineering notes, 0.865. By hand: 0.96 + 3.8415/100 over 1 + 3.8415/50 …
    #[test]
    fn the_interval_is_that_of_wilson() {
        let (low, high) = wilson(48, 50);
        assert!((low - 0.865).abs() < 5e-4, "{low}");
        // symmetric to 2 of 50
        let (other_low, other_high) = wilson(2, 50);
        assert!((low + other_high - 1.0).abs() < 1e-12 && (high + other_low - 1.0).abs() < 1e-12);
        assert_eq!((wilson(0, 10).0, wilson(10, 10).1), (0.0, 1.0));
    }

    /// The interval holds exactly the shares that are not refused by the normal test at 5 % (its definition).
    #[test]
    fn at_its_ends_the_count_lies_on_the_edge_of_the_normal_test() {
        for (passed, samples) in [(1, 20), (48, 50), (970, 1000)] {
            let (low, high) = wilson(passed, samples);
            for end in [low, high] {
                let (count, share) = (samples as f64, passed as f64 / samples as f64);
                let away = (share - end) / (end * (1.0 - end) / count).sqrt();
                assert!((away.abs() - 1.959_964).abs() < 1e-5, "{passed} of {samples}: {away}");
            }
        }
    }

    /// Mean and variance of a normal distribution cut at three: 0 and 0.9733 (Johnson, Kotz and Balakrishnan 1994, from memory:
    /// 1 − 2·3·φ(3)/(2Φ(3) − 1)).
    #[test]
    fn normal_numbers_have_the_moments_of_a_cut_normal_distribution() {
        let all: Vec<f64> = (0..20_000).map(|sample| Chance::of(7, sample).normal()).collect();
        let count = all.len() as f64;
        let mean = all.iter().sum::<f64>() / count;
        let variance = all.iter().map(|drawn| (drawn - mean) * (drawn - mean)).sum::<f64>() / count;
        assert!(mean.abs() < 4.0 / count.sqrt(), "{mean}");
        assert!((variance - 0.9733).abs() < 4.0 * (2.0 / count).sqrt(), "{variance}");
        assert!(all.iter().all(|drawn| drawn.abs() <= CUT));
    }

    #[test]
    fn a_factor_is_positive_and_its_median_is_one() {
        assert_eq!(factor(0.0, 0.3), 1.0);
        assert_eq!(factor(2.0, 0.0), 1.0);
        assert!(factor(-CUT, 1.0) > 0.0);
    }
}
