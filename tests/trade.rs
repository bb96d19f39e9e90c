//! What the trade knows of racks, held against the whole generic series.
//!
//! Every statement here is common practice, no source.

use axiswright::catalog::{self, Catalog, Pinion, Rack};
use axiswright::formula::gear_geometry::*;
use axiswright::formula::rack::{FASTENERS, SEGMENTS};
use axiswright::units::{Angle, Length, Measure, Ratio};

fn catalog() -> Catalog {
    catalog::load(&[]).expect("the built-in catalogue loads")
}

fn helix(helical: bool) -> Angle {
    if helical { metric_helix() } else { Angle::of_si(0.0) }
}

/// Transverse and total contact ratio of a rack with a pinion of the same kind of teeth.
fn contact(rack: &Rack, pinion: &Pinion) -> (f64, f64) {
    let (helix, teeth) = (helix(rack.helical), Ratio::of_si(f64::from(pinion.teeth)));
    let transverse = (TRANSVERSE_CONTACT_RATIO.apply)(rack.module, teeth, helix, pinion.profile_shift);
    let overlap = (OVERLAP_RATIO.apply)(rack.module, helix, rack.face_width);
    (transverse.si(), (TOTAL_CONTACT_RATIO.apply)(transverse, overlap).si())
}

/// A rack and a pinion that fit.
type Pair<'a> = (&'a Rack, &'a Pinion);

/// Every helical pair of the series with the straight pair of the same module and teeth.
fn pairs(catalog: &Catalog) -> Vec<(Pair<'_>, Pair<'_>)> {
    let mut pairs = Vec::new();
    for rack in catalog.racks.iter().filter(|rack| rack.helical) {
        let plain = catalog.racks.iter().find(|other| !other.helical && other.module == rack.module);
        let plain = plain.expect("a straight rack of the same module");
        for pinion in catalog.pinions.iter().filter(|pinion| pinion.helical) {
            let other = catalog.pinions.iter().find(|other| !other.helical && other.teeth == pinion.teeth);
            pairs.push(((rack, pinion), (plain, other.expect("a straight pinion of as many teeth"))));
        }
    }
    assert!(pairs.len() >= 7 * 12, "only {} pairs", pairs.len());
    pairs
}

/// Common practice, no source: a helical pair has more teeth in mesh than a straight one, and never too few.
#[test]
fn helical_pairs_keep_more_teeth_engaged_than_straight_ones() {
    let catalog = catalog();
    for ((rack, pinion), (plain, other)) in pairs(&catalog) {
        let (transverse, total) = contact(rack, pinion);
        let (_, straight_total) = contact(plain, other);
        let what = format!("{} with {} teeth", rack.designation, pinion.teeth);
        assert!(transverse > 1.2, "{what}: transverse contact ratio {transverse}");
        assert!(total > 2.0, "{what}: total contact ratio {total}");
        assert!(total > straight_total, "{what}: {total}, straight {straight_total}");
    }
}

/// Common practice, no source: straight pairs lie between 1.2 and 1.8; large pinions on a rack reach a little more.
#[test]
fn straight_pairs_lie_in_the_usual_band() {
    let catalog = catalog();
    for (_, (rack, pinion)) in pairs(&catalog) {
        let (ratio, total) = contact(rack, pinion);
        let what = format!("{} with {} teeth: {ratio}", rack.designation, pinion.teeth);
        assert_eq!(ratio, total, "{what}");
        // the ceiling of standard teeth on a rack is 4/(π·sin 40°) = 1.981
        let most = if pinion.teeth < 28 { 1.8 } else { 1.981 };
        assert!(ratio > 1.2 && ratio < most, "{what}");
    }
}

/// Common practice, no source: nobody offers undercut or pointed pinions.
#[test]
fn pinions_of_the_series_are_neither_undercut_nor_pointed() {
    for pinion in &catalog().pinions {
        let (teeth, helix) = (Ratio::of_si(f64::from(pinion.teeth)), helix(pinion.helical));
        let least = (LEAST_PROFILE_SHIFT.apply)(teeth, helix).si();
        assert!(pinion.profile_shift.si() >= least, "{}: x_min {least}", pinion.designation);
        let tip = (TIP_THICKNESS.apply)(teeth, helix, pinion.profile_shift).si();
        assert!(tip >= 0.4, "{}: tip {tip} modules", pinion.designation);
    }
}

/// Common practice, no source: a rack of 8 m on 62.5 mm takes more than 90 fasteners.
#[test]
fn eight_metres_of_rack_take_more_than_ninety_fasteners() {
    let count = |length: f64, segment: f64| {
        let segment = Length::of_si(segment);
        let segments = (SEGMENTS.apply)(Length::of_si(length), segment);
        (segments.si(), (FASTENERS.apply)(segments, segment, Length::of_si(0.0625)).si())
    };
    for segment in [0.5, 1.0, 2.0] {
        let (segments, fasteners) = count(8.0, segment);
        assert_eq!((segments, fasteners), (8.0 / segment, 128.0));
        assert!(fasteners > 90.0);
    }
    assert_eq!(count(12.0, 1.0), (12.0, 192.0));
    assert_eq!(count(8.001, 1.0).0, 9.0);
}
