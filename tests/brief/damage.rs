//! No text, however damaged, brings the loader down.

use super::texts::FULL;
use axiswright::brief::load;
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn random_bytes_never_bring_the_loader_down(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        let _ = load("random.yaml", &String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn a_damaged_brief_is_read_or_told(
        cuts in proptest::collection::vec((0.0..1.0_f64, 0..12_usize, r"[-0-9a-z :,{}\[\]#%&*\n\t'.²µ]{0,6}"), 1..5),
    ) {
        let mut text: Vec<char> = FULL.chars().collect();
        for (at, length, put) in cuts {
            let start = (at * text.len() as f64) as usize;
            let end = (start + length).min(text.len());
            text.splice(start..end, put.chars());
        }
        let text: String = text.into_iter().collect();
        if let Err(faults) = load("damaged.yaml", &text) {
            prop_assert!(!faults.is_empty());
            prop_assert!(faults.to_string().contains("damaged.yaml"));
        }
    }
}
