//! The table as users write it: what is read, and every fault with its place.

use axiswright::acceptance::{Measurement, Stretch, parse};
use axiswright::units::{Length, Measure};
use axiswright::yaml::Faults;
use proptest::prelude::*;

/// Two targets, two directions, one run.
const SOUND: &str = "target [mm],direction,run,deviation [µm]\n0,up,1,1\n100,up,1,2\n0,down,1,3\n100,down,1,4\n";

fn read(text: &str) -> Measurement {
    parse("measured.csv", text, None).unwrap_or_else(|faults| panic!("{faults}"))
}

fn faults(text: &str) -> Faults {
    let stretch = Stretch { axis: "ram", start: Length::of_si(0.0), travel: Length::of_si(0.7) };
    parse("measured.csv", text, Some(stretch)).expect_err("a fault")
}

/// Line, column and message of every fault.
fn told(text: &str) -> Vec<(usize, usize, String)> {
    faults(text).iter().map(|fault| (fault.line, fault.column, fault.message.clone())).collect()
}

/// The one fault of a text.
fn one(text: &str, line: usize, column: usize, message: &str) {
    let told = told(text);
    assert_eq!(told.len(), 1, "{told:?}");
    let (at_line, at_column, words) = &told[0];
    assert_eq!((*at_line, *at_column), (line, column), "{words}");
    assert!(words.contains(message), "{words}");
}

#[test]
fn separators_decimal_commas_marks_comments_and_line_ends_say_the_same() {
    let plain = read(SOUND).targets;
    let crlf = SOUND.replace('\n', "\r\n");
    let texts = [
        SOUND.replace(',', ";"),
        SOUND.replace(',', "\t"),
        format!("\u{feff}{SOUND}"),
        crlf.clone(),
        format!("\u{feff}# made up\r\n\r\n{}", crlf.replace("100,down", "# a note\r\n100,down")),
        SOUND.replace(',', ";").replace("100;up;1;2", "100,0;up;1;2,0"),
        SOUND.replace(',', " , "),
        SOUND.replace("target [mm]", "\"target [mm]\"").replace("100,up,1,2", "\"100\",\"up\",\"1\",\"2\""),
        SOUND.replace("0,down,1,3\n", "0,down,1,3\n,,,\n\n"),
        SOUND.replace("target [mm]", "Target (mm)").replace("deviation [µm]", "DEVIATION / um"),
        SOUND.replace("up", "+").replace("down", "−"),
        SOUND.replace("up", "Forward").replace("down", "back"),
        SOUND.replace("up", "↑").replace("down", "↓"),
        SOUND.replace("0,up,1,1\n100,up,1,2\n", "").replace("100,down,1,4\n", "100,down,1,4\n100,up,1,2\n0,up,1,1\n"),
        "run,deviation [nm],target [m],direction\n1,1000,0,up\n1,2000,0.1,up\n1,3000,0,down\n1,4000,0.1,down\n".into(),
        "target,direction,run,deviation\n0 mm,up,1,1 µm\n10 cm,up,1,0.002 mm\n0 m,down,1,3um\n100 mm,down,1,4 µm\n"
            .into(),
        SOUND.replace("100,up,1,2", "100 mm,up,1,2 µm"),
    ];
    for text in texts {
        let targets = read(&text).targets;
        assert_eq!(targets.len(), 2, "{text}");
        for (target, expected) in targets.iter().zip(&plain) {
            let near = |a: Length, b: Length| (a.si() - b.si()).abs() < 1e-15;
            assert!(near(target.position, expected.position), "{text}");
            assert!(near(target.up[0], expected.up[0]) && near(target.down[0], expected.down[0]), "{text}");
        }
    }
}

#[test]
fn inches_are_lengths_too() {
    let read = read("target [in],direction,run,deviation [mil]\n0,up,1,1\n1,up,1,-1\n0,down,1,0\n1,down,1,0\n");
    assert!((read.targets[1].position.si() - 0.0254).abs() < 1e-15);
    assert!((read.targets[1].up[0].si() + 25.4e-6).abs() < 1e-15);
}

#[test]
fn the_start_of_the_travel_moves_the_targets() {
    let text = SOUND.replace("100,", "-250,");
    let stretch = Stretch { axis: "ram", start: Length::of_si(-0.35), travel: Length::of_si(0.7) };
    let read = parse("measured.csv", &text, Some(stretch)).expect("inside the travel");
    let at: Vec<f64> = read.targets.iter().map(|target| (target.position.si() * 1e3).round()).collect();
    assert_eq!(at, [100.0, 350.0]);
}

#[test]
fn headers_at_fault_are_told_with_the_nearest_spelling() {
    let text = SOUND.replace("deviation", "devation");
    one(&text.replace("devation [µm]", "deviation [mm/s]"), 1, 27, "a unit of speed, but a length is needed");
    let two = faults(&text).to_string();
    assert!(two.contains("unknown column `devation [µm]`") && two.contains("did you mean `deviation`?"), "{two}");
    assert!(two.contains("measured.csv:1:27"), "{two}");
    assert!(two.contains("names no column `deviation`"), "{two}");
    one(&SOUND.replace("run,", "run,run,"), 1, 27, "stands twice");
    one(&SOUND.replace("run,", "run [mm],"), 1, 23, "takes no unit");
    one(&SOUND.replace("run,", "run,operator,"), 1, 27, "unknown column `operator`");
    one("", 1, 1, "empty");
    one("# nothing\n", 1, 1, "empty");
    one("target [mm],direction,run,deviation [µm]\n", 1, 1, "no measured value");
}

#[test]
fn a_unit_is_never_guessed() {
    one(&SOUND.replace(" [µm]", ""), 1, 27, "the column `deviation` has no unit");
    one(&SOUND.replace(" [mm]", ""), 1, 1, "the column `target` has no unit");
    let mixed = SOUND.replace(" [µm]", "").replace("0,up,1,1\n100", "0,up,1,1 µm\n100");
    let told = told(&mixed);
    assert_eq!(told.iter().map(|(line, ..)| *line).collect::<Vec<_>>(), [3, 4, 5], "{told:?}");
    one(&SOUND.replace("100,up,1,2", "100,up,1,2 mm"), 3, 10, "has a unit of its own");
}

#[test]
fn cells_at_fault_are_all_told_at_once() {
    let text = "target [mm];direction;run;deviation [µm]\n\
                0;up;1;eins\n\
                0;upp;2;1\n\
                0;up;0;1\n\
                0;up;1.5;1\n\
                0;up;;1\n\
                0;up;5\n\
                0;up;6;NaN\n\
                0;up;7;-inf\n\
                0;up;8;1.234,5\n\
                0;up;9;1;2\n";
    let expected = [
        (2, 8, "`eins` is not a length"),
        (3, 3, "no direction"),
        (4, 6, "no number of a run"),
        (5, 6, "no number of a run"),
        (6, 6, "`run` is missing"),
        (7, 6, "ends before the column `deviation`"),
        (8, 8, "not a finite number"),
        (9, 8, "not a finite number"),
        (10, 8, "without grouping"),
        (11, 10, "5 cells, the header has 4"),
    ];
    let told = told(text);
    assert_eq!(told.len(), expected.len(), "{told:#?}");
    for ((line, column, message), (at_line, at_column, words)) in told.iter().zip(expected) {
        assert_eq!((*line, *column), (at_line, at_column), "{message}");
        assert!(message.contains(words), "{message} / {words}");
    }
}

#[test]
fn a_decimal_comma_beside_commas_is_one_cell_too_many() {
    let text = SOUND.replace("100,up,1,2", "100,up,1,2,5");
    let faults = faults(&text).to_string();
    assert!(faults.contains("has 5 cells") && faults.contains("semicolons"), "{faults}");
    assert!(faults.contains("measured.csv:3:12"), "{faults}");
}

#[test]
fn places_are_right_behind_comments_empty_lines_and_letters_of_more_bytes() {
    let text = SOUND.replace("100,up,1,2\n", "# µµµ\n\n#\n\"100\",↑ ,1, zwölf\n").replace('\n', "\r\n");
    one(&text, 6, 13, "`zwölf` is not a length");
}

#[test]
fn rows_that_do_not_make_a_test_are_told_at_their_target() {
    one(&format!("{SOUND}100.0,up,1,9\n"), 6, 1, "run 1 upward at target 100 mm stands twice, first in line 3");
    one(&SOUND.replace("100,down,1,4\n", ""), 3, 1, "the target 100 mm was measured upward only");
    let runs = format!("{SOUND}0,up,2,1\n0,down,2,1\n100,up,2,1\n");
    one(&runs, 5, 1, "the target 100 mm has 1 run downward, others have 2");
    one(&SOUND.replace("100,", "900,"), 3, 1, "beyond the travel of axis `ram`, which is 0 mm to 700 mm");
    one(&SOUND.replace("100,", "-1,"), 3, 1, "beyond the travel");
    one("target [mm],direction,run,deviation [µm]\n0,up,1,1\n0,down,1,1\n", 2, 1, "at least 2 are needed");
    // positions that were reached in place of those that were commanded: one fault, not one a row
    let reached = |target: f64, sign: f64| target + 0.01 * sign * (1.0 + target / 100.0);
    let mut text = String::from("target [mm],direction,run,deviation [µm]\n");
    for target in [100.0, 200.0, 300.0, 400.0] {
        text.push_str(&format!("{},up,1,1\n{},down,1,1\n", reached(target, 1.0), reached(target, -1.0)));
    }
    one(&text, 3, 1, "8 of 8 targets were measured in one direction only");
    let mut many = String::from("target [mm],direction,run,deviation [µm]\n");
    for run in 1..=65 {
        many.push_str(&format!("0,up,{run},1\n0,down,{run},1\n9,up,{run},1\n9,down,{run},1\n"));
    }
    one(&many, 259, 1, "at most 64");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_gives_a_measurement_or_faults(text in "[\\PC\n\r\t\";,#]{0,120}", header in any::<bool>()) {
        let text = if header { format!("target [mm];direction;run;deviation [µm]\n{text}") } else { text };
        match parse("measured.csv", &text, None) {
            Ok(measured) => prop_assert!(measured.targets.len() > 1 && measured.runs > 0),
            Err(faults) => prop_assert!(!faults.is_empty() && !faults.to_string().is_empty()),
        }
    }
}

#[test]
fn no_text_makes_the_reader_give_up() {
    for text in ["\"", "a\"b,\"c", "\u{0}", ",,,\n,,,", "#", "\r\r\r", "target [mm]\n1", "\"target [mm],direction\n\n"]
    {
        assert!(parse("measured.csv", text, None).is_err(), "{text:?}");
    }
    // cut and doubled letters anywhere
    for at in 0..SOUND.len() {
        if let Some(rest) = SOUND.get(at..) {
            let cut = format!("{}{}", &SOUND[..at], &rest[rest.chars().next().map_or(0, char::len_utf8)..]);
            let doubled = format!("{}\"{rest}", &SOUND[..at]);
            for text in [cut, doubled] {
                if let Err(faults) = parse("measured.csv", &text, None) {
                    assert!(!faults.to_string().is_empty());
                }
            }
        }
    }
}
