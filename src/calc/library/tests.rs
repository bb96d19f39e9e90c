//! What holds for every formula of the library: its note, and that a missing value stays missing.

use super::formulas;

/// Arguments that the equation does not read in every case, by id and name.
const NOT_ALWAYS_READ: &[(&str, &str)] = &[
    // one drive shares with nobody
    ("cutting-share", "drives"),
    ("cutting-share", "carriage-reach"),
    // the grade speaks for positioning screws, the variation within 300 mm for transport screws
    ("mean-travel-deviation", "grade-number"),
    ("mean-travel-deviation", "variation-300"),
    ("travel-variation", "grade-number"),
    ("travel-variation", "variation-300"),
    // only where the load drives
    ("phase-torque", "back-efficiency"),
    // a motor beyond its speed limit gives nothing, whatever its torque
    ("peak-torque-use", "peak-torque"),
    ("peak-torque-use", "knee-speed"),
    // one segment has no joint
    ("cumulative-pitch-error", "joint-step"),
    // one thrust end
    ("screw-stiffness", "length"),
    // a phase below the continuous torque does not heat the winding beyond its mean, however long it lasts
    ("winding-heat", "speeds"),
    ("winding-heat", "accelerations"),
    // where the cut in the middle of the line does the most damage
    ("rack-flank-equivalent-force", "acceleration"),
    ("rack-root-equivalent-force", "acceleration"),
    // one thrust end holds the screw alone, and lets it grow
    ("held-force", "core-diameter"),
    ("held-force", "bore"),
    ("held-force", "free-length"),
    ("held-force", "end-stiffness"),
    ("held-force", "expansion"),
    ("held-force", "temperature"),
    ("end-share", "core-diameter"),
    ("end-share", "bore"),
    ("end-share", "free-length"),
    ("end-share", "travel"),
    ("end-share", "end-stiffness"),
    ("mean-end-share", "end-share"),
];

#[test]
fn the_note_of_a_formula_names_each_of_its_arguments_once() {
    for formula in formulas() {
        let inputs = formula.note().inputs;
        assert_eq!(inputs.len(), formula.arguments().len(), "{}", formula.note().id);
        for (place, (_, name)) in inputs.iter().enumerate() {
            assert!(inputs[..place].iter().all(|(_, other)| other != name), "{}: {name} twice", formula.note().id);
        }
    }
}

#[test]
fn a_missing_value_never_becomes_a_number() {
    let mut hidden = Vec::new();
    for formula in formulas() {
        let note = formula.note();
        let count = formula.arguments().len();
        for missing in 0..count {
            for base in [0.3, 1.0, 3.0, 20.0] {
                let values: Vec<[f64; 1]> = (0..count).map(|index| [base * (1.0 + 0.01 * index as f64)]).collect();
                let mut slices: Vec<&[f64]> = values.iter().map(|value| &value[..]).collect();
                slices[missing] = &[f64::NAN];
                if !formula.apply(&slices).is_nan() {
                    hidden.push((note.id, note.inputs[missing].1));
                    break;
                }
            }
        }
    }
    hidden.retain(|pair| !NOT_ALWAYS_READ.contains(pair));
    assert!(hidden.is_empty(), "a missing value is hidden: {hidden:#?}");
}
