//! The sentences and figures of a crossover.

use crate::record::*;
use crate::report::markup::resolve;
use crate::report::picture::mark;
use crate::report::{figure, sizes, words};
use crate::units::UnitSystem;
use serde::Serialize;

/// A record and the units it is shown in.
#[derive(Clone, Copy)]
pub struct Words<'a> {
    /// The record.
    pub record: &'a CrossoverRecord,
    /// The units of the reader.
    pub units: UnitSystem,
}

/// All that the template needs.
#[derive(Serialize)]
pub struct Page {
    axis: String,
    machine: String,
    answer: String,
    present: String,
    sentences: Vec<String>,
    picture: Option<String>,
    caption: String,
    map: Vec<String>,
    over: String,
    and: String,
    shares: Vec<Share>,
    runs: Vec<Run>,
    rows: Vec<RowLine>,
    resolution: String,
    decided: String,
    assumptions: Vec<String>,
    objective: String,
    inputs: Vec<Input>,
    tool: String,
}

#[derive(Serialize)]
struct Share {
    family: String,
    share: String,
    across: String,
    up: String,
}

#[derive(Serialize)]
struct Run {
    at: String,
    family: String,
    sizes: String,
    purchase: String,
    whole_life: String,
}

#[derive(Serialize)]
struct RowLine {
    at: String,
    runs: String,
}

#[derive(Serialize)]
struct Input {
    role: String,
    name: String,
    sha256: String,
}

/// A family in plain words; none where no drive is admissible.
pub fn family(family: Option<&str>) -> String {
    family.map_or_else(|| "no drive".into(), |id| resolve(&words::family(id), |_| false))
}

fn with_article(id: Option<&str>) -> String {
    id.map_or_else(|| "no drive is admissible".into(), |id| format!("a {}", family(Some(id))))
}

impl Words<'_> {
    /// A value of a range, three digits.
    pub fn value(&self, span: &SpanRecord, value: f64) -> String {
        figure::quantity(Some(value), &span.unit, self.units, 3)
    }

    fn name(&self, span: &SpanRecord) -> String {
        words::spaced(&span.requirement)
    }

    fn rule(&self, id: Option<&String>) -> String {
        let found = id.and_then(|id| self.record.rules.iter().find(|rule| rule.id == *id));
        let title = found.map(|rule| rule.title.trim_end_matches('.').to_string());
        title.or_else(|| id.map(|id| words::spaced(id))).unwrap_or_default()
    }

    /// What the picture is called.
    pub fn title(&self) -> String {
        format!("Which drive where: axis {} of {}", self.record.axis, self.record.machine_name)
    }

    /// What the lines of a graph show.
    pub fn measure(&self) -> String {
        match self.record.cost_alone {
            true => format!("price over its life, more for advice not followed, {}", self.record.currency),
            false => "weighed measure of the brief's preferences, less is better".into(),
        }
    }

    /// The page.
    pub fn page(&self, picture: Option<&str>) -> Page {
        let record = self.record;
        let two = record.and.as_ref();
        Page {
            axis: record.axis.clone(),
            machine: record.machine_name.clone(),
            answer: self.answer(),
            present: self.present(),
            sentences: if two.is_some() { self.borders() } else { self.boundaries() },
            picture: picture.map(String::from),
            caption: format!("{}; the numbers stand below and in the CSV file", self.title()),
            map: two.map_or(Vec::new(), |and| self.letters(and)),
            over: self.name(&record.over),
            and: two.map(|and| self.name(and)).unwrap_or_default(),
            shares: two.map_or(Vec::new(), |and| self.shares(and)),
            runs: if two.is_some() { Vec::new() } else { self.runs() },
            rows: two.map_or(Vec::new(), |and| self.rows(and)),
            resolution: self.resolution(),
            decided: super::decided::sentence(record),
            assumptions: record.assumptions.clone(),
            objective: record.objective.replace("currency", &record.currency),
            inputs: record
                .inputs
                .iter()
                .filter(|file| file.role == "brief")
                .map(|file| Input {
                    role: words::input_role(&file.role),
                    name: file.name.clone(),
                    sha256: file.sha256.clone(),
                })
                .collect(),
            tool: record.tool.clone(),
        }
    }

    fn span_words(&self, span: &SpanRecord) -> String {
        format!("{} from {} to {}", self.name(span), self.value(span, span.from), self.value(span, span.to))
    }

    fn answer(&self) -> String {
        let record = self.record;
        let over = self.span_words(&record.over);
        let range = record.and.as_ref().map_or(over.clone(), |and| format!("{over} and {}", self.span_words(and)));
        let mut seen: Vec<Option<&str>> = Vec::new();
        for node in &record.nodes {
            if !seen.contains(&node.family.as_deref()) {
                seen.push(node.family.as_deref());
            }
        }
        let families: Vec<String> = seen.iter().flatten().map(|id| family(Some(id))).collect();
        match (families.len(), seen.contains(&None)) {
            (0, _) => format!("No drive of the catalogue is admissible anywhere: {range}."),
            (1, false) => format!("The {} is best everywhere: {range}.", families[0]),
            (1, true) => format!("Where a drive is admissible, the {} is best: {range}.", families[0]),
            _ => format!("{} are best, each in its place: {range}.", words::sentence(&words::list(&families))),
        }
    }

    fn present(&self) -> String {
        let record = self.record;
        let asks: Vec<String> = std::iter::once(&record.over)
            .chain(record.and.as_ref())
            .map(|span| match span.now {
                Some(now) => format!("{} {}", self.name(span), self.value(span, now)),
                None => format!("no {}", self.name(span)),
            })
            .collect();
        let best = record.present.family.as_deref();
        let here = match best {
            Some(_) => format!("the best drive of this axis alone is a {}", family(best)),
            None => "no drive of this axis is admissible".into(),
        };
        let machine = match (&record.recommended, best) {
            (Some(chosen), Some(best)) if chosen != best => {
                format!(" The limits of the whole machine make it a {}.", family(Some(chosen)))
            }
            _ => String::new(),
        };
        format!("The brief asks {}; {here}.{machine}", words::list(&asks))
    }

    fn why(&self, boundary: &BoundaryRecord) -> String {
        let rule = self.rule(boundary.rule.as_ref());
        let (from, to) = (family(boundary.from.as_deref()), family(boundary.to.as_deref()));
        match (boundary.cause.as_str(), self.record.cost_alone) {
            ("leaves", _) => format!("Above it no {from} keeps all rules; the best one breaks “{rule}”."),
            ("enters", _) => format!("Below it no {to} keeps all rules; the best one breaks “{rule}”."),
            ("breaks", _) => format!("Above it the {from} that was best breaks “{rule}”."),
            (_, true) => format!(
                "From there the {to} is the better choice: less cost over its life, with what advice not followed adds."
            ),
            (_, false) => format!("From there the {to} weighs better."),
        }
    }

    /// One range: a sentence a boundary.
    pub fn boundaries(&self) -> Vec<String> {
        let over = &self.record.over;
        let name = words::sentence(&self.name(over));
        let sentence = |boundary: &BoundaryRecord| {
            let at = self.value(over, boundary.at);
            let (from, to) = (boundary.from.as_deref(), boundary.to.as_deref());
            format!("{name} up to {at}: {}; above: {}. {}", with_article(from), with_article(to), self.why(boundary))
        };
        let all: Vec<String> = self.record.boundaries.iter().map(sentence).collect();
        if all.is_empty() { vec!["Nothing changes over the range.".into()] } else { all }
    }

    /// Two ranges: a sentence for each pair of neighbours along the rows.
    fn borders(&self) -> Vec<String> {
        let record = self.record;
        let Some(and) = &record.and else { return Vec::new() };
        let mut pairs: Vec<(Option<&str>, Option<&str>, Vec<&BoundaryRecord>)> = Vec::new();
        for boundary in &record.boundaries {
            let (from, to) = (boundary.from.as_deref(), boundary.to.as_deref());
            match pairs.iter_mut().find(|pair| (pair.0, pair.1) == (from, to)) {
                Some(pair) => pair.2.push(boundary),
                None => pairs.push((from, to, vec![boundary])),
            }
        }
        let sentence = |(from, to, places): &(Option<&str>, Option<&str>, Vec<&BoundaryRecord>)| {
            let (name, other) = (self.name(&record.over), self.name(and));
            let at = |place: &BoundaryRecord| {
                let y = self.value(and, place.y.unwrap_or(f64::NAN));
                format!("{name} {} at {other} {y}", self.value(&record.over, place.at))
            };
            let (place, which) = match places.as_slice() {
                [] => return String::new(),
                [one] => (at(one), String::new()),
                [first, .., last] => {
                    (format!("{} to {}", at(first), at(last)), "At the first of these places: ".to_string())
                }
            };
            let why = places.first().map(|place| self.why(place)).unwrap_or_default();
            let why = if which.is_empty() { why } else { lower_first(&why) };
            let (from, to) = (words::sentence(&family(*from)), family(*to));
            format!("{from} below, {to} above: {place}. {which}{why}")
        };
        let all: Vec<String> = pairs.iter().map(sentence).collect();
        if all.is_empty() { vec![format!("Nothing changes along the {}.", self.name(&record.over))] } else { all }
    }

    /// One range: nodes with the same drive in one line.
    fn runs(&self) -> Vec<Run> {
        let record = self.record;
        let mut runs: Vec<(&NodeRecord, &NodeRecord, Vec<&NodeRecord>)> = Vec::new();
        for node in &record.nodes {
            match runs.last_mut() {
                Some((first, last, all)) if first.family == node.family && first.parameters == node.parameters => {
                    *last = node;
                    all.push(node);
                }
                _ => runs.push((node, node, vec![node])),
            }
        }
        let value = |node: &NodeRecord| self.value(&record.over, node.x.unwrap_or(f64::NAN));
        let run = |(first, last, all): &(&NodeRecord, &NodeRecord, Vec<&NodeRecord>)| {
            let money = |amount: fn(&NodeRecord) -> f64| {
                if first.family.is_none() {
                    return String::from("–");
                }
                let known = || all.iter().map(|node| amount(node)).filter(|amount| amount.is_finite());
                let least = known().fold(f64::INFINITY, |least, amount| if amount < least { amount } else { least });
                let most = known().fold(f64::NEG_INFINITY, |most, amount| if amount > most { amount } else { most });
                let (low, high) = (figure::money(Some(least), ""), figure::money(Some(most), &record.currency));
                if least == most { high } else { format!("{low} to {high}") }
            };
            let sizes = sizes::sizes_of(first.family.as_deref().unwrap_or_default(), &first.parameters, self.units);
            Run {
                at: if first.x == last.x { value(first) } else { format!("{} to {}", value(first), value(last)) },
                family: family(first.family.as_deref()),
                sizes: if first.family.is_none() { "–".into() } else { sizes },
                purchase: money(|node| node.purchase),
                whole_life: money(|node| node.whole_life_cost),
            }
        };
        runs.iter().map(run).collect()
    }

    /// Two ranges: the nodes of a row.
    pub fn row_nodes(&self, row: usize) -> &[NodeRecord] {
        let width = self.record.over.values.len();
        self.record.nodes.get(row * width..(row + 1) * width).unwrap_or_default()
    }

    /// Two ranges: the boundaries of a row, in their order.
    pub fn row_boundaries(&self, and: &SpanRecord, row: usize) -> Vec<&BoundaryRecord> {
        let y = and.values.get(row).copied();
        self.record.boundaries.iter().filter(|boundary| boundary.y == y).collect()
    }

    fn rows(&self, and: &SpanRecord) -> Vec<RowLine> {
        let over = &self.record.over;
        let row = |(index, &y): (usize, &f64)| {
            let first = self.row_nodes(index).first().and_then(|node| node.family.as_deref());
            let mut runs = family(first);
            for boundary in self.row_boundaries(and, index) {
                runs.push_str(&format!(" up to {}, {}", self.value(over, boundary.at), family(boundary.to.as_deref())));
            }
            RowLine { at: self.value(and, y), runs }
        };
        and.values.iter().enumerate().map(row).collect()
    }

    fn shares(&self, and: &SpanRecord) -> Vec<Share> {
        let record = self.record;
        let mut families: Vec<Option<&str>> = record.families.iter().map(|id| Some(id.as_str())).collect();
        families.push(None);
        let share = |id: Option<&str>| {
            let nodes: Vec<&NodeRecord> = record.nodes.iter().filter(|node| node.family.as_deref() == id).collect();
            let range = |span: &SpanRecord, value: fn(&NodeRecord) -> Option<f64>| {
                let mut values: Vec<f64> = nodes.iter().filter_map(|node| value(node)).collect();
                values.sort_by(f64::total_cmp);
                match (values.first(), values.last()) {
                    (Some(least), Some(most)) => format!("{} to {}", self.value(span, *least), self.value(span, *most)),
                    _ => String::new(),
                }
            };
            (!nodes.is_empty()).then(|| Share {
                family: format!("{} ({})", family(id), mark(id).0),
                share: format!("{} %", figure::figure(100.0 * nodes.len() as f64 / record.nodes.len() as f64, 3)),
                across: range(&record.over, |node| node.x),
                up: range(and, |node| node.y),
            })
        };
        families.into_iter().filter_map(share).collect()
    }

    /// The map in letters, the largest value of the second requirement on top.
    fn letters(&self, and: &SpanRecord) -> Vec<String> {
        let over = &self.record.over;
        let labels: Vec<String> = and.values.iter().map(|&y| self.value(and, y)).collect();
        let width = labels.iter().map(|label| label.chars().count()).max().unwrap_or(0);
        let mut lines = Vec::new();
        for (row, label) in labels.iter().enumerate().rev() {
            let letters: Vec<&str> = self.row_nodes(row).iter().map(|node| mark(node.family.as_deref()).0).collect();
            lines.push(format!("{label:>width$} {}", letters.join(" ")));
        }
        let ends = (self.value(over, over.from), self.value(over, over.to));
        lines.push(format!("{:>width$} {} from {} to {}", "", self.name(over), ends.0, ends.1));
        lines
    }

    fn resolution(&self) -> String {
        let record = self.record;
        let resolution = &record.resolution;
        let step = |span: &SpanRecord| {
            let pair = span.values.first().zip(span.values.get(1));
            match (span.spacing.as_str(), pair) {
                ("geometric", Some((first, second))) => {
                    format!("{} by {} % each", self.name(span), figure::figure(100.0 * (second / first - 1.0), 2))
                }
                (_, Some((first, second))) => {
                    format!("{} by {} each", self.name(span), self.value(span, second - first))
                }
                _ => self.name(span),
            }
        };
        let steps: Vec<String> = std::iter::once(&record.over).chain(record.and.as_ref()).map(step).collect();
        let narrow = figure::figure(100.0 * resolution.boundary, 2);
        let along = record.and.as_ref().map_or(String::new(), |and| {
            format!(
                " along {}; across it they are as coarse as the steps of {}",
                self.name(&record.over),
                self.name(and)
            )
        });
        format!(
            "{} steps of {}; boundaries are narrowed to {narrow} % of the value{along}. Two changes within one step are not seen.",
            resolution.steps,
            words::list(&steps)
        )
    }
}

fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| format!("{}{}", first.to_lowercase(), letters.as_str()))
}
