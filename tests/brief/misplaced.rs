//! Keys that a brief knows elsewhere are told where they belong.

use super::texts::{LEAST, one_fault, refused, with_axis_lines};

#[test]
fn a_key_in_the_wrong_group_is_told_where_it_belongs() {
    let in_an_axis = with_axis_lines("hours-per-year: 4000");
    one_fault(&in_an_axis, 9, "axes.x.hours-per-year", "a key of the whole machine: write it at the top of the file");
    let at_the_top = format!("accuracy: 0.05 mm\n{LEAST}");
    one_fault(&at_the_top, 1, "accuracy", "a key of an axis: write it below the name of its axis in `axes`");
    let of_limits = format!("purchase: 40000\n{LEAST}");
    one_fault(&of_limits, 1, "purchase", "is a key of the group `limits`");
}

#[test]
fn a_direction_that_is_no_word_of_the_brief_is_told_with_both() {
    let up = LEAST.replace("horizontal", "up");
    one_fault(&up, 4, "axes.x.direction", "an axis that goes up and down is `vertical`, a level one `horizontal`");
    one_fault(&LEAST.replace("horizontal", "vertcal"), 4, "axes.x.direction", "did you mean `vertical`?");
}

#[test]
fn a_number_with_words_behind_it_is_told_to_stand_alone() {
    one_fault(&format!("hours-per-year: 16 h/day\n{LEAST}"), 1, "hours-per-year", "write the number alone");
}

#[test]
fn words_that_people_write_first_are_told_with_the_key_that_is_meant() {
    for (word, told) in [("motors", "`drives`"), ("stiffness", "`cutting-deflection`"), ("weight", "`moved-mass`")] {
        one_fault(&with_axis_lines(&format!("{word}: 2")), 9, &format!("axes.x.{word}"), told);
    }
    one_fault(&format!("budget: 40000\n{LEAST}"), 1, "budget", "`purchase` in the group `limits`");
    let limits = format!("limits: {{ accuracy: 0.1 mm }}\n{LEAST}");
    one_fault(&limits, 1, "limits.accuracy", "`tool-point-error`");
}

#[test]
fn every_family_that_is_not_known_is_told() {
    let faults = refused(&with_axis_lines("families: [rack, helical-rack, ballscrew]"));
    let paths: Vec<&str> = faults.iter().map(|fault| fault.path.as_str()).collect();
    assert_eq!(paths, ["axes.x.families[0]", "axes.x.families[2]"]);
}

#[test]
fn a_currency_behind_a_price_is_told_to_stand_elsewhere() {
    one_fault(&format!("energy-price: 0.28 EUR\n{LEAST}"), 1, "energy-price", "write the number alone");
}

#[test]
fn a_number_without_a_unit_is_told_with_several() {
    one_fault(&with_axis_lines("repeatability: 20"), 9, "axes.x.repeatability", "`20 mm`");
    one_fault(&with_axis_lines("repeatability: 20"), 9, "axes.x.repeatability", "`20 µm`");
}
