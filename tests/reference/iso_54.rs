//! Modules of the generic rack series against the standard series.
//!
//! ISO 54:1996, *Cylindrical gears for general engineering and for heavy engineering — Modules*, series I, from
//! memory.

use axiswright::catalog;
use axiswright::units::Measure;

/// Series I, mm.
const SERIES_1: [f64; 18] =
    [1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 32.0, 40.0, 50.0];

#[test]
fn every_rack_of_the_generic_catalogue_has_a_module_of_series_1() {
    let catalog = catalog::load(&[]).expect("the built-in catalogue loads");
    assert!(catalog.racks.len() >= 14, "only {} racks", catalog.racks.len());
    for rack in &catalog.racks {
        let module = rack.module.si() * 1e3;
        assert!(
            SERIES_1.iter().any(|series| (series - module).abs() < 1e-9),
            "{}: module {module} mm",
            rack.designation
        );
    }
}
