//! How faults of a YAML file are worded: errors of the parser in plain words, missing keys of a group together.
//!
//! The places are counted by hand in the texts below; no outside source is needed.

use crate::{faults, told};
use axiswright::units::Length;

#[test]
fn errors_of_the_parser_are_told_where_they_can_be_mended() {
    let texts = [
        ("a: 'text\nb: 1\n", 1, 4, "a text in quotes begins here and does not end"),
        ("a: 1\nb 2\nc: 3\n", 2, 1, "this line has no colon behind its key"),
        ("a: b: 1\n", 1, 5, "there is a colon where no key can stand"),
        ("x:\n  a: 1\n b: 2\n", 3, 2, "this does not fit the group of keys that begins in line 1, column 1"),
        ("x:\n  - 1\n  b: 2\n", 3, 3, "this is no item of the list that begins in line 2"),
        ("a: @b\n", 1, 4, "no value can begin with this character"),
    ];
    for (text, line, column, message) in texts {
        let found = faults(text, |_, _| unreachable!("the text is no YAML"));
        assert_eq!(found.len(), 1, "{text}");
        told(&found[0], line, column, "", message);
        assert!(found[0].help.is_some(), "{text}");
    }
    // one that nobody told in other words keeps the words of the parser, without its places
    let found = faults("a: !<x 1\n", |_, _| unreachable!("the text is no YAML"));
    assert!(found[0].message.starts_with("this is not YAML: "), "{}", found[0].message);
    assert!(!found[0].message.contains(" at line "), "{}", found[0].message);
}

#[test]
fn all_keys_that_a_group_lacks_are_one_fault_with_what_belongs_there() {
    let found = faults("a:\n  name: x\n", |root, faults| {
        let group = root.get("a").unwrap();
        group.need_quantity::<Length>("travel", faults);
        group.need_count("teeth", faults);
        group.need_count("teeth", faults);
    });
    assert_eq!(found.len(), 1, "{found:?}");
    told(&found[0], 1, 1, "a", "the keys `travel` and `teeth` are missing");
    assert_eq!(found[0].help.as_deref(), Some("add `travel: … mm`, `teeth: a whole number`"));
    let found = faults("a: { name: x }\n", |root, faults| {
        for key in ["k1", "k2", "k3", "k4", "k5"] {
            root.get("a").unwrap().need(key, faults);
        }
    });
    told(&found[0], 1, 1, "a", "5 keys are missing");
    assert_eq!(found[0].help.as_deref(), Some("add `k1: …`, `k2: …`, `k3: …`, `k4: …`, `k5: …`"));
}

#[test]
fn a_misspelt_key_is_not_told_as_missing_too() {
    let read = |text: &str| {
        faults(text, |root, faults| {
            root.only_keys(&["travel", "speed"], faults);
            root.need("travel", faults);
            root.need("speed", faults);
        })
    };
    let found = read("travle: 1 m\nspeed: 1 m/s\n");
    assert_eq!(found.len(), 1, "{found:?}");
    told(&found[0], 1, 1, "travle", "unknown key `travle`");
    // a key unlike the missing one hides nothing
    let found = read("colour: red\nspeed: 1 m/s\n");
    assert_eq!(found.len(), 2, "{found:?}");
}
