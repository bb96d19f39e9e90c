//! How much of each limit a drive uses, the worst first.
//!
//! Method: a bar is demand over limit, cut at twice the limit; its value stands beside it. A rule that is not kept differs by
//! words and frame as well as by colour. Limits: the worst only; how many more there are is told. Sizes and classes that just
//! fit say nothing about reserve and are left out.

use super::super::canvas::{line, text, told, width};
use super::super::picture::INK;
use super::super::view::{View, only_fits, worst_first};
use super::super::{figure, words};
use super::{Drawn, drawn};
use crate::record::{CandidateRecord, FindingRecord};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

/// Most bars.
const BARS: usize = 18;
/// Height of one.
const STEP: i32 = 24;
/// Where the bars begin, and how wide one of 100 % is.
const LEFT: i32 = 430;
const WHOLE: f64 = 165.0;
/// Beyond this a bar is cut.
const CUT: f64 = 2.0;
const TOP: i32 = 52;
const LETTERS: usize = 60;

const KEPT: RGBColor = RGBColor(0, 114, 178);
const ADVICE: RGBColor = RGBColor(230, 159, 0);
const FAILED: RGBColor = RGBColor(213, 94, 0);

/// Draws them; none where the drive was judged by nothing.
pub fn draw(view: &View, drive: &CandidateRecord) -> Option<Drawn> {
    let findings = worst_first(drive);
    let judged: Vec<&FindingRecord> =
        findings.into_iter().filter(|one| one.utilisation.is_none_or(|of| of > 0.0) && !only_fits(one)).collect();
    let shown: Vec<&FindingRecord> = judged.iter().take(BARS).copied().collect();
    let first = shown.first()?;
    let title = "how much of each limit the drive uses, worst first".to_string();
    let description = format!(
        "Bars of demand over limit for the {} tightest of {} rules. Worst: {}, {}.",
        shown.len(),
        judged.len(),
        view.rule_title(&first.rule),
        figure::utilisation(first.utilisation)
    );
    let bottom = TOP + STEP * shown.len() as i32;
    drawn((title, description), (bottom + 40) as u32, |area| {
        text(area, "limit", (LEFT + WHOLE as i32, TOP - 12), 14, (HPos::Center, VPos::Bottom))?;
        for (index, finding) in shown.iter().enumerate() {
            bar(area, view, finding, TOP + STEP * index as i32)?;
        }
        let at = LEFT + WHOLE as i32;
        line(area, (at, TOP - 8), (at, bottom + 2), INK.stroke_width(2))?;
        line(area, (LEFT, TOP - 4), (LEFT, bottom + 2), INK.stroke_width(1))?;
        let rest = judged.len() - shown.len();
        let last = shown.last().and_then(|finding| finding.utilisation);
        let more = match rest {
            0 => "every rule that says how much of a limit is used".to_string(),
            _ => format!("{rest} more rules, each below {}", figure::utilisation(last)),
        };
        text(area, &more, (LEFT, bottom + 12), 14, (HPos::Left, VPos::Top))
    })
}

fn bar(area: &super::Area<'_>, view: &View, finding: &FindingRecord, top: i32) -> Result<(), String> {
    let title: String = view.rule_title(&finding.rule);
    let short: String = title.chars().take(LETTERS).collect();
    let short = if short == title { short } else { short.trim_end().to_string() + " …" };
    let middle = top + STEP / 2;
    text(area, &short, (LEFT - 10, middle), 14, (HPos::Right, VPos::Center))?;
    let verdict = words::verdict(&finding.verdict, &finding.obligation);
    let kept = finding.verdict == "pass";
    let colour = match (kept, finding.obligation.as_str()) {
        (true, _) => KEPT,
        (false, "should") => ADVICE,
        (false, _) => FAILED,
    };
    let share = finding.utilisation.filter(|value| value.is_finite()).unwrap_or(CUT);
    let cut = share > CUT;
    let end = LEFT + (WHOLE * if cut { CUT } else { share }).round() as i32;
    let ends = [(LEFT, top + 5), (end.max(LEFT + 1), top + STEP - 5)];
    area.draw(&Rectangle::new(ends, colour.filled())).map_err(told)?;
    if !kept {
        area.draw(&Rectangle::new(ends, INK.stroke_width(1))).map_err(told)?;
    }
    if cut {
        let jag = vec![(end - 4, top + 3), (end + 2, middle), (end - 6, middle), (end, top + STEP - 3)];
        area.draw(&PathElement::new(jag, WHITE.stroke_width(3))).map_err(told)?;
    }
    let value = figure::utilisation(finding.utilisation);
    let value = if kept { value } else { format!("{value}  {verdict}") };
    // the mark of the limit stays free
    let limit = LEFT + WHOLE as i32;
    let across = (end - 4..=end + 12 + width(&value, 14)).contains(&limit);
    let beside = if across { limit.max(end) + 10 } else { end + 8 };
    text(area, &value, (beside, middle), 14, (HPos::Left, VPos::Center))
}
