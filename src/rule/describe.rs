//! The rulebook in words, for people: the document `docs/rules.md` and `explain` are made of it.

use super::{Case, Caution, Example, Level, Limit, Rule, Rulebook, Sense, Verdict, When};
use crate::characteristic;
use crate::units::{print_rounded, significant};
use std::fmt::Write;

/// The whole rulebook as Markdown.
pub fn describe(book: &Rulebook) -> String {
    let mut out = String::from(
        "# Rules\n\n\
         Every limit that a drive is judged by, made from the files in `rules/`. Utilisation is demand over limit, or \
         limit over demand where the demand has a floor: 1 is just allowed. A drive that fails a *shall* is not \
         admissible; one that fails a *should* is, and the report says so. What cannot be worked out is not passed.\n\n\
         | rule | obligation | families | limit |\n|---|---|---|---|\n",
    );
    for rule in &book.rules {
        let _ = writeln!(
            out,
            "| [`{id}`](#{id}) | {} | {} | {} |",
            rule.obligation.word(),
            families(rule),
            condition_and_limit(rule),
            id = rule.id
        );
    }
    for rule in &book.rules {
        out.push('\n');
        out.push_str(&describe_rule(rule));
    }
    out.push_str(
        "\n# Cautions\n\n\
         What a reader is warned of, made from the files in `rules/cautions/`. A caution holds where one of its cases does; \
         without a case it holds always. It is information and no safety concept: it claims no conformity with the standards \
         that it names, which are there to be read.\n\n\
         | caution | for | holds |\n|---|---|---|\n",
    );
    for caution in &book.cautions {
        let _ = writeln!(out, "| `{}` | {} | {} |", caution.id, readers(caution), cases(caution));
    }
    for caution in &book.cautions {
        out.push('\n');
        out.push_str(&describe_caution(caution));
    }
    out
}

/// One caution as Markdown. Its heading tells it from a rule of the same id.
pub fn describe_caution(caution: &Caution) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "## Caution {}\n\n**{}.** (for {})\n", caution.id, caution.title, readers(caution));
    let _ = writeln!(out, "- Holds: {}", cases(caution));
    let _ = writeln!(out, "- Says: {}", one_line(&caution.text));
    for standard in &caution.standards {
        let _ = writeln!(out, "- To be read: {}, {}", standard.number, one_line(&standard.about));
    }
    out
}

fn readers(caution: &Caution) -> String {
    caution.readers.iter().map(|reader| reader.word()).collect::<Vec<_>>().join(", ")
}

/// The cases of a caution in words.
fn cases(caution: &Caution) -> String {
    if caution.cases.is_empty() {
        return "always".into();
    }
    caution.cases.iter().map(case).collect::<Vec<_>>().join("; or ")
}

fn case(case: &Case) -> String {
    let mut parts = Vec::new();
    if !case.families.is_empty() {
        parts.push(format!("family {}", case.families.join(" or ")));
    }
    if !case.environment.is_empty() {
        parts.push(format!("surroundings that name {}", case.environment.join(" or ")));
    }
    parts.extend(case.present.iter().map(|&slot| format!("`{}` is there", characteristic::id(slot))));
    for above in &case.above {
        let level = match above.level {
            Level::Value(value) => print_rounded(value, characteristic::about(above.slot).0.display_unit(), 12),
            Level::Of(1.0, slot) => format!("`{}`", characteristic::id(slot)),
            Level::Of(factor, slot) => format!("{factor} · `{}`", characteristic::id(slot)),
        };
        parts.push(format!("`{}` above {level}", characteristic::id(above.slot)));
    }
    parts.join(" and ")
}

/// One rule as Markdown.
pub fn describe_rule(rule: &Rule) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "## {}\n\n**{}.** ({}; {})\n", rule.id, rule.title, rule.obligation.word(), families(rule));
    let _ = writeln!(out, "- Limit: {}", condition_and_limit(rule));
    let mut named = Vec::new();
    for slot in rule.slots() {
        let (about, _) = characteristic::about(slot);
        if !named.contains(&slot) {
            let _ = writeln!(out, "- `{}`: {}", about.id, about.words);
            named.push(slot);
        }
    }
    let _ = writeln!(out, "- Reason: {}", one_line(&rule.reason));
    if rule.weighs > 0.0 {
        let percent = crate::units::significant(rule.weighs * 100.0, 3);
        let _ = writeln!(
            out,
            "- Weighs: a drive that does not follow it counts as {percent} % worse when drives are compared"
        );
    }
    let _ = writeln!(out, "- Remedy: {}", one_line(&rule.remedy));
    if let Some(by) = &rule.by {
        let _ = writeln!(out, "- Answers for it: {}", one_line(by));
    }
    for source in &rule.sources {
        let _ = writeln!(out, "- Source: {} ({})", one_line(&source.note), source.standing.words());
    }
    for example in &rule.examples {
        let _ = writeln!(out, "- Example: {}", describe_example(example));
        let _ = writeln!(out, "  - worked: {}", worked(rule, example));
    }
    out
}

fn describe_example(example: &Example) -> String {
    let given: Vec<String> = example.written.iter().map(|(id, value)| format!("{id} {value}")).collect();
    format!("{}: utilisation {}, {}", given.join(", "), significant(example.utilisation, 6), example.verdict.word())
}

/// The example line by line of a pocket calculator: demand, limit, and what is divided by what.
fn worked(rule: &Rule, example: &Example) -> String {
    let given = |slot: usize| example.given.iter().find(|(id, _)| *id == slot).map_or(f64::NAN, |(_, value)| *value);
    let unit = characteristic::about(rule.demand).0.display_unit();
    let shown = |value: f64| if value.is_nan() { "not known".into() } else { print_rounded(value, unit, 6) };
    let demand = given(rule.demand);
    let (limit, how) = match rule.limit {
        Limit::Value(value) => (value, String::new()),
        Limit::Of(slot) if rule.factor == 1.0 => (given(slot), String::new()),
        Limit::Of(slot) => {
            let limit = rule.factor * given(slot);
            (limit, format!("{} · {} = ", rule.factor, shown(given(slot))))
        }
    };
    let held = format!("{} against {} {how}{}", shown(demand), rule.sense.word().replace('-', " "), shown(limit));
    let (over, under) = match rule.sense {
        Sense::AtMost => (demand, limit),
        Sense::AtLeast => (limit, demand),
    };
    match example.verdict {
        Verdict::NotEvaluated => format!("{held}; not worked out, and so not passed"),
        verdict => format!(
            "{held}; {} / {} = {}, {} 1: {}",
            significant(over / unit.si, 6),
            significant(under / unit.si, 6),
            significant(example.utilisation, 6),
            if verdict == Verdict::Pass { "not above" } else { "above" },
            verdict.word()
        ),
    }
}

pub(super) fn families(rule: &Rule) -> String {
    if rule.applies_to.is_empty() { "all families".into() } else { rule.applies_to.join(", ") }
}

pub(super) fn condition_and_limit(rule: &Rule) -> String {
    let (demand, _) = characteristic::about(rule.demand);
    let limit = match rule.limit {
        Limit::Value(value) => print_rounded(value, demand.display_unit(), 12),
        Limit::Of(slot) if rule.factor == 1.0 => format!("`{}`", characteristic::id(slot)),
        Limit::Of(slot) => format!("{} · `{}`", rule.factor, characteristic::id(slot)),
    };
    let condition = match rule.when {
        None => String::new(),
        Some(When::Stated(slot)) => format!(" (judged when `{}` is stated)", characteristic::id(slot)),
        Some(When::Above(slot, value)) => {
            let unit = characteristic::about(slot).0.display_unit();
            format!(" (judged when `{}` is above {})", characteristic::id(slot), print_rounded(value, unit, 12))
        }
    };
    format!("`{}` {} {limit}{condition}", demand.id, rule.sense.sign())
}

fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
