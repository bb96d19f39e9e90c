//! Questions answered by a script: the brief that comes out reads without a fault, whatever was typed.
//!
//! Method: the brief is read by the loader, and what it holds is compared with what was answered.

use super::*;
use std::io::Cursor;

fn asked(answers: &str) -> Result<String, Failure> {
    ask(&mut Cursor::new(answers.to_string()), &mut Console::new(true))
}

const TWO_AXES: &str = "Test router\nEUR\n\n3000\nchips, coolant\n20000\n\
    \nlong way\nhorizontal\n1.5 m\n320 kg\n30 m/min\n3 m/s²\n400 N\n6 m/min\n0.06 mm\n\nyes\n\
    head\n\nvertical\n350 mm\n85 kg\n15 m/min\n3 m/s²\n\n\n\ntrue\nx\nno\n";

#[test]
fn answers_make_a_brief_that_reads_without_a_fault() {
    let text = asked(TWO_AXES).expect("a brief");
    let brief = brief::load("mine.yaml", &text).expect("no fault");
    assert_eq!(brief.machine, "Test router");
    assert!(!brief.years_in_service.stated, "an empty answer leaves the default");
    assert_eq!(brief.hours_per_year.value, 3000.0);
    assert_eq!(brief.environment, ["chips", "coolant"]);
    let names: Vec<&str> = brief.axes.iter().map(|axis| axis.name.as_str()).collect();
    assert_eq!(names, ["x", "head"]);
    assert_eq!(brief.axes[0].carries, [1]);
    assert!(!text.contains("repeatability:"), "what was left empty is not written:\n{text}");
}

#[test]
fn a_wrong_answer_is_told_in_the_words_of_the_loader_and_asked_again() {
    let wrong = TWO_AXES.replace("\n1.5 m\n", "\n1,5 m\n1.5\n1.5 kg\n-2 m\n?\n1.5 m\n");
    assert_eq!(asked(&wrong).expect("a brief"), asked(TWO_AXES).expect("a brief"));
}

#[test]
fn answers_are_checked_whatever_the_axis_is_called() {
    for name in ["x axis", "a.b", "x[0]", "Größe: 1"] {
        let right = TWO_AXES.replace("\nhead\n", &format!("\n{name}\n"));
        let wrong = right.replace("\n350 mm\n", "\nfoo\n350\n350 mm\n").replace("\ntrue\n", "\nyes\n");
        assert_eq!(asked(&wrong).expect(name), asked(&right).expect(name), "{name}");
    }
}

#[test]
fn names_that_yaml_would_read_otherwise_stay_text() {
    for name in [
        "no",
        "12",
        "a: b",
        "x # y",
        "- z",
        "\"q\"",
        "'",
        "&a",
        "*a",
        "{",
        "Größe 3",
        "[1, 2]",
        "x axis",
        "a.b",
        "x[0]",
    ] {
        let text =
            asked(&TWO_AXES.replace("Test router", name).replace("\nhead\n", &format!("\n{name}\n"))).expect(name);
        let brief =
            brief::load("mine.yaml", &text).map_err(|faults| format!("{name}: {faults}\n{text}")).expect("a brief");
        assert_eq!((brief.machine.as_str(), brief.axes[1].name.as_str()), (name, name));
    }
}

#[test]
fn answers_that_end_early_give_no_brief_and_say_where() {
    let ended = asked("Test router\nEUR\n").expect_err("not whole");
    let at = "ended at the question “Years in service, a bare number [10]”";
    assert!(matches!(&ended, Failure::Input(message) if message.contains(at)), "{ended:?}");
}

#[test]
fn every_question_fills_a_key_that_the_guide_explains() {
    let known = keys();
    for question in OF_MACHINE.iter().chain(OF_AXIS).filter(|question| question.kind != Kind::Name) {
        assert!(known.iter().any(|key| key.name == question.key), "{}", question.key);
    }
}
