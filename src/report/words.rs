//! Plain words for the ids that the record carries: families, roles, verdicts, obligations, brief keys.
//!
//! An id without a word of its own is shown with blanks for its hyphens, so nothing is hidden.

use super::markup::term;

/// An id as plain words.
pub fn spaced(id: &str) -> String {
    id.replace('-', " ")
}

/// A family in words, marked for the glossary.
pub fn family(id: &str) -> String {
    match id {
        "ball-screw" => term("ball-screw", "ball screw"),
        "driven-nut" => term("ball-screw-with-driven-nut", "ball screw with driven nut"),
        "straight-rack" => term("straight-rack", "straight rack"),
        "helical-rack" => term("helical-rack", "helical rack"),
        "twin-pinion" => term("rack-with-two-pinions", "rack with two pinions"),
        other => spaced(other),
    }
}

/// Whether a family is driven by a rack; its main sizes are named differently.
pub fn is_rack(family: &str) -> bool {
    matches!(family, "straight-rack" | "helical-rack" | "twin-pinion")
}

/// A component's role in words.
pub fn role(id: &str) -> String {
    match id {
        "ball-screw" => "screw with nut".into(),
        "screw-grade" => format!("{} of the screw", term("grade", "grade")),
        "preload-class" => format!("{} of the nut", term("preload", "preload")),
        "end-arrangement" => "arrangement of the screw's ends".into(),
        "nut-unit" => "bearing unit of the driven nut".into(),
        "screw-support" => "pair of supports that travels with the nut".into(),
        "screw-reduction" => "coupling or belt".into(),
        "rack-grade" => "quality of the rack".into(),
        "servo-motor" => "motor".into(),
        "linear-scale" => term("linear-scale", "linear scale"),
        "error-table" => {
            format!("{} of the axis, measured and entered", term("table-of-corrections", "table of corrections"))
        }
        "pinion" => term("pinion", "pinion"),
        "pinion-bias" => format!("{} of the two pinions", term("bias", "bias")),
        other => spaced(other),
    }
}

/// A verdict with its mark; a missed advice is no failure.
pub fn verdict(verdict: &str, obligation: &str) -> &'static str {
    match (verdict, obligation) {
        ("pass", _) => "✔ pass",
        ("waived", _) => "◇ waived",
        ("not-evaluated", _) => "? not evaluated",
        ("fail", "should") => "△ advice not met",
        ("fail", _) => "✘ fail",
        _ => "? unknown verdict",
    }
}

/// An obligation in words.
pub fn obligation(word: &str) -> &'static str {
    match word {
        "shall" => "must",
        "should" => "advice",
        _ => "unknown",
    }
}

/// How a limit holds: "at most" or "at least".
pub fn sense(word: &str) -> &'static str {
    match word {
        "at-least" => "at least",
        _ => "at most",
    }
}

/// The sign of a limit.
pub fn sign(word: &str) -> &'static str {
    match word {
        "at-least" => "≥",
        _ => "≤",
    }
}

/// The standing of a source in words.
pub fn standing(key: &str) -> String {
    match key {
        "derived" => "derived here".into(),
        "practice" => "common practice, no source".into(),
        "memory" => "from memory, text not at hand".into(),
        "invented" => "invented, realistic size".into(),
        other => spaced(other),
    }
}

/// Where a value comes from, in words.
pub fn origin(word: &str) -> &'static str {
    match word {
        "brief" => "brief",
        "catalog" => "catalogue",
        "assumed" => "assumed",
        "formula" => "worked out",
        _ => "unknown",
    }
}

/// What a file was read as, in words.
pub fn input_role(role: &str) -> String {
    match role {
        "catalog" => "catalogue".into(),
        other => spaced(other),
    }
}

/// What the status of the machine program means.
pub fn solver_status(status: &str) -> &'static str {
    match status {
        "optimal" => {
            "optimal: no other machine of the drives offered does better at the loads at which drives are weighed"
        }
        "infeasible" => "infeasible: no set of drives keeps every limit of the machine",
        "not-proven" => "not proven: the search ended before it could rule out a better machine",
        "not-run" => "not run, because an axis has no admissible drive",
        _ => "unknown",
    }
}

/// A limit of the machine in words.
pub fn machine_limit(key: &str) -> String {
    match key {
        "purchase" => "price to buy".into(),
        "tool-point-error" => "error at the tool".into(),
        "supply-power" => "power of the supply".into(),
        "motor-models" => "different motor models".into(),
        "gearbox-models" => "different gearbox models".into(),
        "lead-time" => "delivery time".into(),
        other => spaced(other),
    }
}

/// The words for one or several of something: "1 motor", "2 motors".
pub fn several(count: u64, one: &str, many: &str) -> String {
    format!("{} {}", super::figure::count(count), if count == 1 { one } else { many })
}

/// The same text with its first letter large; marks of the glossary stay outside.
pub fn sentence(text: &str) -> String {
    let at = text.find('\u{e001}').filter(|_| text.starts_with('\u{e000}')).map_or(0, |at| at + '\u{e001}'.len_utf8());
    let (mark, rest) = text.split_at(at);
    let mut characters = rest.chars();
    match characters.next() {
        Some(first) => format!("{mark}{}{}", first.to_uppercase(), characters.as_str()),
        None => text.into(),
    }
}

/// A list in a sentence: "a, b and c".
pub fn list(items: &[String]) -> String {
    match items.split_last() {
        None => String::new(),
        Some((only, [])) => only.clone(),
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
    }
}

/// Where the data of a part come from.
pub fn data(generic: bool) -> &'static str {
    if generic { "generic, replace by supplier data" } else { "supplier data" }
}
