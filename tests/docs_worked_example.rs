//! docs/worked-example.md and docs/by-hand.md: every line that can be run gives what stands after it.
//!
//! Method: a line `calc FORMULA name=value …` is run through the register, and the number on the next line must come
//! out within half of its last printed digit, in its unit. Limits: what the example says was chosen is not run here.

use axiswright::calc::calculate;

const PAGES: [&str; 2] = [include_str!("../docs/worked-example.md"), include_str!("../docs/by-hand.md")];

/// Half of the last printed digit: "3103.5" gives 0.05.
fn half_of_the_last_digit(printed: &str) -> f64 {
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    0.5 * 10_f64.powi(-(decimals as i32))
}

#[test]
fn every_line_of_the_worked_examples_comes_out_as_printed() {
    PAGES.iter().for_each(|page| comes_out(page));
}

fn comes_out(page: &str) {
    let lines: Vec<&str> = page.lines().collect();
    let mut run = 0;
    for (index, line) in lines.iter().enumerate() {
        let Some(call) = line.strip_prefix("    calc ") else { continue };
        let mut words = call.split_whitespace();
        let formula = words.next().expect("a formula");
        let arguments: Vec<(String, String)> = words
            .map(|word| word.split_once('=').expect("name=value"))
            .map(|(name, value)| (name.into(), value.into()))
            .collect();
        let answer = calculate(formula, &arguments).unwrap_or_else(|error| panic!("{call}: {error}"));
        let result = lines.get(index + 1).and_then(|line| line.strip_prefix("    = ")).expect("a line with the result");
        let (printed, unit) = result.split_once(' ').expect("value and unit");
        let expected: f64 = printed.parse().expect("a number");
        assert_eq!(answer.unit, unit, "{call}");
        let miss = (answer.value - expected).abs();
        assert!(miss <= half_of_the_last_digit(printed) * (1.0 + 1e-9), "{call}: {} against {printed}", answer.value);
        run += 1;
    }
    assert!(run >= 12, "only {run} lines were run");
}
