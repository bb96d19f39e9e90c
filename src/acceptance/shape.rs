//! The form of the mean deviation along the travel: which terms stand out of it.
//!
//! Method: slope, bow, waves of the periods that the drive has, and jumps between neighbouring targets are tried, and the
//! surest joins until none stands out. Then a wave of any other period is looked for, once, its chance counted as often
//! as periods were tried. Limits: a wave counts by its sine alone; terms that look alike share what they explain in the
//! order in which they were found.

use super::causes::{CHANCE, Period, Term, Unresolvable};
use super::fit::{directions, fit, gain, likeness, log_chance, own_part};
use std::f64::consts::TAU;

/// A wave must keep at least this part of what an evenly sampled one has (judgement, no source).
const OWN_PART: f64 = 0.1;
/// Waves more alike than this on the targets are not told apart (judgement, no source).
const ALIKE: f64 = 0.9;
/// Fewest targets for a wave: constant, slope and two coefficients, and two more.
const TARGETS_FOR_WAVE: usize = 6;
/// A jump must stand out so many times above the usual step between neighbours (judgement, no source).
const STANDS_OUT: f64 = 3.0;
/// Most terms of the form that are looked for.
const MOST_TERMS: usize = 8;
/// Fewest targets for a search of any period (judgement, no source).
pub(super) const TARGETS_FOR_SEARCH: usize = 12;
/// Most periods that are tried.
const MOST_PERIODS: usize = 2000;

/// The mean deviation along the travel.
pub(super) struct Shape<'a> {
    pub at: &'a [f64],
    pub means: &'a [f64],
    pub periods: &'a [Period],
    /// Whether the targets stand at even distances.
    pub even: bool,
    /// Sums of squares below this are rounding.
    pub rounding: f64,
}

impl Shape<'_> {
    fn one(&self) -> Vec<f64> {
        vec![1.0; self.at.len()]
    }

    /// Positions from −1 at the first to 1 at the last target.
    fn reduced(&self) -> Vec<f64> {
        let (first, last) = (self.at[0], self.at[self.at.len() - 1]);
        self.at.iter().map(|at| (2.0 * at - first - last) / (last - first)).collect()
    }

    fn wave(&self, which: usize) -> [Vec<f64>; 2] {
        self.wave_of(self.periods[which].length)
    }

    fn wave_of(&self, length: f64) -> [Vec<f64>; 2] {
        [f64::cos, f64::sin].map(|part| self.at.iter().map(|at| part(TAU * at / length)).collect())
    }

    fn jump(&self, after: usize) -> Vec<f64> {
        (0..self.at.len()).map(|index| if index > after { 1.0 } else { 0.0 }).collect()
    }

    fn columns(&self, term: &Term) -> Vec<Vec<f64>> {
        match term {
            Term::Slope { .. } => vec![self.reduced()],
            Term::Bow { .. } => vec![self.reduced().iter().map(|at| at * at).collect()],
            Term::Wave { period, .. } => self.wave(*period).into(),
            Term::OtherWave { length, .. } => self.wave_of(*length).into(),
            Term::Jump { after, .. } => vec![self.jump(*after)],
        }
    }

    /// Why the targets cannot tell a wave, if they cannot.
    pub fn unresolvable(&self, which: usize) -> Option<Unresolvable> {
        let line = [self.one(), self.reduced()];
        let span = self.span();
        if self.at.len() < TARGETS_FOR_WAVE {
            Some(Unresolvable::FewTargets)
        } else if self.periods[which].length > span {
            Some(Unresolvable::TooShort)
        } else if own_part(&line, &self.wave(which)) < OWN_PART {
            Some(Unresolvable::SamePhase)
        } else {
            let alike = |other: &usize| {
                *other != which
                    && self.periods[*other].length <= span
                    && likeness(&line, &self.wave(which), &self.wave(*other)) > ALIKE
            };
            (0..self.periods.len()).find(alike).map(Unresolvable::LooksLike)
        }
    }

    /// The terms that stand out, surest first, with what each explains; and what is left at each target.
    pub fn terms(&self, unresolvable: &[Option<Unresolvable>]) -> (Vec<(Term, f64)>, Vec<f64>) {
        let count = self.at.len();
        let mut open = vec![Term::Slope { slope: 0.0 }, Term::Bow { height: 0.0 }];
        let resolvable = |period: &usize| unresolvable[*period].is_none();
        open.extend((0..self.periods.len()).filter(resolvable).map(|period| Term::Wave { period, range: 0.0 }));
        open.extend((0..count - 1).map(|after| Term::Jump { after, height: 0.0 }));
        let mut columns = vec![self.one()];
        let mut now = fit(&columns, self.means);
        let mut found: Vec<(Term, f64, std::ops::Range<usize>)> = Vec::new();
        while found.len() < MOST_TERMS && now.rest > self.rounding {
            let fitted = directions(&columns);
            let chance = |term: &Term| {
                let more = self.columns(term);
                let (gain, own) = gain(&fitted, &now.residuals, &more);
                let trials = if matches!(term, Term::Jump { .. }) { count - 1 } else { 1 };
                let left = count.saturating_sub(fitted.len() + own);
                if own == more.len() { log_chance(now.rest, now.rest - gain, left, trials) } else { 0.0 }
            };
            let best = open.iter().map(chance).enumerate();
            let best = best.reduce(|best, next| if next.1 < best.1 { next } else { best });
            let term = match best.filter(|(_, chance)| *chance < CHANCE.ln()) {
                Some((index, _)) => open.remove(index),
                None if found.iter().any(|(term, ..)| matches!(term, Term::OtherWave { .. })) => break,
                None => match self.other_wave(&fitted, &now.residuals, now.rest) {
                    Some(other) => other,
                    None => break,
                },
            };
            if let Term::Jump { after, .. } = term
                && !stands_out(&now.residuals, after)
            {
                continue;
            }
            let range = columns.len()..columns.len() + self.columns(&term).len();
            columns.extend(self.columns(&term));
            let next = fit(&columns, self.means);
            found.push((term, now.rest - next.rest, range));
            now = next;
        }
        let sized = |(term, part, range): (Term, f64, std::ops::Range<usize>)| {
            (self.sized(term, &now.coefficients[range]), part)
        };
        (found.into_iter().map(sized).collect(), now.residuals.clone())
    }

    /// The wave of whatever period that takes most off what is left, if it stands out of all that were tried.
    ///
    /// At least two periods in the measured length; on even targets no shorter than two distances, on uneven ones down to a
    /// quarter of the mean distance. The periods are a quarter of a wave over the length apart.
    fn other_wave(&self, fitted: &[Vec<f64>], residuals: &[f64], rest: f64) -> Option<Term> {
        let count = self.at.len();
        if count < TARGETS_FOR_SEARCH {
            return None;
        }
        let most = if self.even { (count - 1) / 2 } else { 4 * (count - 1) };
        let steps = (8..4 * most).take(MOST_PERIODS);
        let trials = steps.len();
        let tried = steps.map(|quarters| {
            let length = 4.0 * self.span() / quarters as f64;
            (length, gain(fitted, residuals, &self.wave_of(length)))
        });
        let own = tried.filter(|(_, (_, own))| *own == 2);
        let (length, (gain, _)) = own.reduce(|best, next| if next.1.0 > best.1.0 { next } else { best })?;
        let left = count.saturating_sub(fitted.len() + 2);
        let chance = log_chance(rest, rest - gain, left, trials);
        (chance < CHANCE.ln()).then_some(Term::OtherWave { length, range: 0.0 })
    }

    fn span(&self) -> f64 {
        self.at[self.at.len() - 1] - self.at[0]
    }

    /// A term with its size, from its coefficients.
    fn sized(&self, term: Term, coefficients: &[f64]) -> Term {
        let span = self.span();
        match (term, coefficients) {
            (Term::Slope { .. }, [half]) => Term::Slope { slope: 2.0 * half / span },
            (Term::Bow { .. }, [height]) => Term::Bow { height: *height },
            (Term::Wave { period, .. }, [cosine, sine]) => Term::Wave { period, range: 2.0 * cosine.hypot(*sine) },
            (Term::OtherWave { length, .. }, [cosine, sine]) => {
                Term::OtherWave { length, range: 2.0 * cosine.hypot(*sine) }
            }
            (Term::Jump { after, .. }, [height]) => Term::Jump { after, height: *height },
            (term, _) => term,
        }
    }
}

/// Whether the step behind this target is well above the usual step between neighbours.
fn stands_out(residuals: &[f64], after: usize) -> bool {
    let step = |index: usize| (residuals[index + 1] - residuals[index]).abs();
    let mut others: Vec<f64> = (0..residuals.len() - 1).filter(|index| *index != after).map(step).collect();
    others.sort_by(f64::total_cmp);
    let usual = others.get(others.len() / 2).copied().unwrap_or(0.0);
    step(after) > STANDS_OUT * usual
}
