//! What is said of texts with very many faults, or very long lines: bounded, and still with a place.

use axiswright::{acceptance, brief, catalog, units};

#[test]
fn a_key_that_is_given_thousands_of_times_is_one_fault() {
    let faults = brief::load("brief.yaml", &"machine: x\n".repeat(5000)).expect_err("faults");
    let told = faults.to_string();
    assert!(told.contains("`machine`: this key is given 5000 times, first in line 1"), "{told}");
    assert!(faults.len() < 10 && told.len() < 2000, "{} faults, {} bytes", faults.len(), told.len());
}

#[test]
fn of_thousands_of_faults_a_thousand_are_told() {
    let table = "target [mm];direction;run;deviation [µm]\n".to_string() + &"x;y;z;w\n".repeat(2000);
    let faults = acceptance::parse("measured.csv", &table, None).expect_err("faults");
    let told = faults.to_string();
    assert_eq!((faults.len(), faults.iter().count()), (1000, 1000));
    assert!(told.contains("`x` is not a length") && told.ends_with("… what else is wrong is not told"));
    let text: String = (0..1500).map(|key| format!("k{key}: 1\nk{key}: 1\n")).collect();
    let faults = brief::load("brief.yaml", &text).expect_err("faults");
    assert!(faults.len() > 1000 && faults.iter().count() == 1000, "{}", faults.len());
    assert!(faults.to_string().ends_with("… what else is wrong is not told"));
}

#[test]
fn a_line_that_is_too_long_to_be_shown_is_told_by_its_place() {
    let text = format!("{{ machine: {}, travel: 3 }}\n", "x".repeat(9000));
    let told = brief::load("brief.yaml", &text).expect_err("faults").to_string();
    assert!(told.contains("brief.yaml:1:9014") && told.len() < 2000, "{told}");
    let short = brief::load("brief.yaml", &text.replace(&"x".repeat(9000), "x")).expect_err("faults").to_string();
    assert!(short.contains("{ machine: x, travel: 3 }"), "a short line is shown: {short}");
}

#[test]
fn a_word_that_is_too_long_for_a_slip_is_compared_with_nothing() {
    let unit =
        |unit: &str| units::parse_as(units::Dimension::Length, &format!("1 {unit}")).expect_err("no unit").to_string();
    assert!(unit("mmm").contains("did you mean `mm`?"), "{}", unit("mmm"));
    assert!(!unit(&"m".repeat(60_000)).contains("did you mean"));
}

#[test]
fn entries_and_variants_that_multiply_are_refused() {
    let lines = |word: &str, name: &str, count: usize| -> String {
        (0..count).map(|at| format!("  - {{ {word}: {name}{at} }}\n")).collect()
    };
    let text = format!(
        "kind: gearbox\nbasis: price list\nvariants:\n{}entries:\n{}",
        lines("suffix", "-v", 300),
        lines("designation", "g", 300)
    );
    let told = catalog::load_texts(vec![("parts.yaml".into(), text)]).expect_err("faults").to_string();
    assert!(told.contains("300 entries in 300 variants are 90000 parts"), "{}", &told[..300]);
}

#[test]
fn what_an_entry_lacks_is_told_once_for_all_its_variants() {
    let told = |variants: &str| {
        let text =
            format!("kind: gearbox\nbasis: price list\n{variants}entries:\n  - {{ designation: g, ratio: 5 }}\n");
        catalog::load_texts(vec![("parts.yaml".into(), text)]).expect_err("faults")
    };
    let many: String = (0..100).map(|at| format!("  - {{ suffix: -v{at} }}\n")).collect();
    let (one, many) = (told(""), told(&format!("variants:\n{many}")));
    let said = |faults: &axiswright::yaml::Faults| faults.iter().map(|fault| fault.message.clone()).collect::<Vec<_>>();
    assert_eq!((one.len(), said(&one)), (many.len(), said(&many)));
    assert!(one.len() == 1 && one.to_string().contains("keys are missing"), "{one}");
}
