//! A key that is not known is told with the one that was meant.

use super::{faults, told};

#[test]
fn an_unknown_key_is_told_with_the_nearest_spelling() {
    let found = faults("axes:\n  long:\n    travle: 3 m\n", |root, faults| {
        let long = root.get("axes").unwrap().get("long").unwrap();
        long.only_keys(&["travel", "speed"], faults);
    });
    assert_eq!(found.len(), 1);
    told(&found[0], 3, 5, "axes.long.travle", "unknown key `travle`");
    assert_eq!(found[0].help.as_deref(), Some("did you mean `travel`?"));
}

#[test]
fn an_unknown_key_unlike_any_other_is_told_with_the_known_ones() {
    let found = faults("colour: red\n", |root, faults| root.only_keys(&["travel", "speed"], faults));
    told(&found[0], 1, 1, "colour", "unknown key `colour`");
    assert_eq!(found[0].help.as_deref(), Some("known here: travel, speed"));
}

#[test]
fn an_unknown_key_is_told_with_those_that_share_a_word() {
    let help = |key: &str| {
        let known = ["mass-offset", "moved-mass", "guide-base", "guide-friction", "guide-spacing", "guide-tilt"];
        faults(&format!("{key}: 3\n"), |root, faults| root.only_keys(&known, faults))[0].help.clone().unwrap()
    };
    assert_eq!(help("mass"), "did you mean `moved-mass` or `mass-offset`?");
    assert_eq!(help("offset_of_slide"), "did you mean `mass-offset`?");
    // four share it: no guess
    assert!(help("guide").starts_with("known here: mass-offset, "), "{}", help("guide"));
}

#[test]
fn underscores_and_capitals_are_near_enough() {
    let found = faults("Moved_Mass: 3 kg\n", |root, faults| root.only_keys(&["moved-mass"], faults));
    assert_eq!(found[0].help.as_deref(), Some("did you mean `moved-mass`?"));
}
