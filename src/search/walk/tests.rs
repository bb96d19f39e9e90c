//! What is kept of drives that are offered one by one, against sorting and comparing all of them.
#![cfg(test)]

use super::{KEPT, Partial};
use crate::search::tests::{BRIEFS, Handful};
use crate::search::{Attributes, MOST_STAGES, Path};

/// A made-up drive; few merits and errors, so that many tie.
fn drive(number: u16) -> (Attributes, Path) {
    let scattered = u32::from(number).wrapping_mul(2_654_435_761) >> 8;
    let mut path = [0; MOST_STAGES];
    path[0] = (scattered % 7) as u16;
    path[1] = number;
    let attributes = Attributes {
        merit: f64::from(scattered / 7 % 9),
        error: f64::from(scattered / 63 % 11),
        mass: 1.0,
        purchase: 1.0,
        power: 1.0,
        whole_life: 1.0,
        lead_time: 1.0,
        motor: 0,
        gearbox: 0,
    };
    (attributes, path)
}

fn by_merit(one: &(Attributes, Path), other: &(Attributes, Path)) -> std::cmp::Ordering {
    one.0.merit.total_cmp(&other.0.merit).then_with(|| one.1.cmp(&other.1))
}

/// The drives that no other is as good as in merit and error; of equals the smaller path.
fn undominated(all: &[(Attributes, Path)]) -> Vec<(Attributes, Path)> {
    let covers = |a: &Attributes, b: &Attributes| a.merit <= b.merit && a.error <= b.error;
    let beaten = |(attributes, path): &(Attributes, Path)| {
        all.iter()
            .any(|(other, other_path)| covers(other, attributes) && (!covers(attributes, other) || other_path < path))
    };
    all.iter().filter(|drive| !beaten(drive)).copied().collect()
}

#[test]
fn what_may_not_be_taken_is_neither_among_the_best_nor_undominated() {
    let handful = Handful::of(BRIEFS[0]);
    let setting = handful.setting();
    let mut declined = 0;
    for many in [1, KEPT - 1, KEPT, KEPT + 1, 40, 400] {
        let drives: Vec<(Attributes, Path)> = (0..many as u16).map(drive).collect();
        // on one thread, and on two of which each has every other drive
        for threads in [1, 2] {
            let mut parts: Vec<Partial> = (0..threads).map(|_| Partial::new(0, &setting)).collect();
            for (number, (attributes, path)) in drives.iter().enumerate() {
                let part = &mut parts[number % threads];
                if part.may_take(attributes, path) {
                    part.offer(*attributes, *path);
                } else {
                    declined += 1;
                }
            }
            let found = parts.into_iter().reduce(Partial::merge).expect("a part");
            let mut sorted = drives.clone();
            sorted.sort_by(by_merit);
            let best: Vec<(Attributes, Path)> = sorted.iter().take(KEPT).copied().collect();
            assert_eq!(found.best, best, "{many} on {threads}");
            let mut front: Vec<(Attributes, Path)> = found.front.into_members().collect();
            front.sort_by(by_merit);
            assert_eq!(front, undominated(&sorted), "{many} on {threads}");
        }
    }
    assert!(declined > 300, "{declined}");
}
