//! The group `uncertainty`: what is refused, with its place.

use super::texts::{LEAST, refused};

#[test]
fn a_spread_beyond_all_or_below_none_or_misspelt_is_told() {
    let told = |group: &str| -> Vec<String> {
        let text = format!("uncertainty: {group}\n{LEAST}");
        refused(&text).iter().map(|fault| format!("{}: {} | {}", fault.line, fault.path, fault.message)).collect()
    };
    let faults = told("{ moved-mass: 120 %, cutting-force: -1 %, stifness: 5 % }");
    assert_eq!(faults.len(), 3, "{faults:?}");
    for wanted in [
        "1: uncertainty.moved-mass | must be at least 0 % and at most 100 %, but is 120 %",
        "uncertainty.cutting-force",
        "stifness",
    ] {
        assert!(faults.iter().any(|fault| fault.contains(wanted)), "{wanted}: {faults:?}");
    }
    assert_eq!(told("5 %").len(), 1, "a group is needed");
    assert_eq!(told("{ moved-mass: 5 kg }").len(), 1, "a share is needed");
}
