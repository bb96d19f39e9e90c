//! The picture: deviation against position, both directions with their bands, and the allowed width.
//!
//! Method: `plotters` draws into SVG; range of both axes is taken from the data, so that nothing lies outside the frame.
//! The ground is white, so that print and dark viewers show the same; directions differ by shape of mark and line, not
//! by colour alone (colours: Okabe and Ito, from memory). Title and description for readers of the screen are put in
//! afterwards. Limits: an allowed width far beyond the data is named, not drawn.

use super::result::{Acceptance, CheckRecord, TargetRecord};
use crate::report;
use crate::units::{Dimension, UnitSystem};
use plotters::prelude::*;

const SIZE: (u32, u32) = (960, 560);
const UP: RGBColor = RGBColor(0, 114, 178);
const DOWN: RGBColor = RGBColor(213, 94, 0);
const LIMIT: RGBColor = RGBColor(60, 60, 60);
const INK: RGBColor = RGBColor(30, 30, 30);
/// An allowed width beyond so many widths of the data is not drawn.
const TOO_WIDE: f64 = 4.0;
/// Most letters of the title in one line.
const LONGEST_TITLE: usize = 84;
/// Room about the data, as a part of its width.
const ROOM: f64 = 0.06;

type Fault = String;
type Point = (f64, f64);

/// The chart as SVG, in the units of the reader.
pub fn chart(acceptance: &Acceptance, units: UnitSystem) -> Result<String, String> {
    let picture = Picture::of(acceptance, units);
    let mut svg = String::new();
    picture.draw(&mut svg).map_err(|error| format!("the chart cannot be drawn: {error}"))?;
    let (title, description) = (picture.title(), picture.description());
    report::picture::named(&svg, &title, &description)
}

/// One direction: mean, and the edges of its band where there is scatter.
struct Direction {
    mean: Vec<Point>,
    upper: Vec<Point>,
    lower: Vec<Point>,
}

struct Picture<'a> {
    acceptance: &'a Acceptance,
    units: UnitSystem,
    up: Direction,
    down: Direction,
    /// Lower and upper line of the allowed width, and whether they are drawn.
    limit: Option<(f64, f64)>,
    across: (f64, f64),
    height: (f64, f64),
}

/// The unit of positions and that of deviations, as the reader sees them.
fn units_of(units: UnitSystem) -> [&'static str; 2] {
    match units {
        UnitSystem::Metric => ["mm", "µm"],
        UnitSystem::Inch => ["in", "mil"],
    }
}

/// A length in another unit.
fn converted(value: f64, from: &str, to: &str) -> f64 {
    let size = |name: &str| Dimension::Length.units().find(|unit| unit.name == name).map_or(f64::NAN, |unit| unit.si);
    value * (size(from) / size(to))
}

impl Picture<'_> {
    fn of(acceptance: &Acceptance, units: UnitSystem) -> Picture<'_> {
        let [far, near] = units_of(units);
        let direction = |mean: fn(&TargetRecord) -> f64, scatter: fn(&TargetRecord) -> Option<f64>| {
            let at = |shift: f64| -> Vec<Point> {
                let point = |target: &TargetRecord| {
                    let width = if shift == 0.0 { 0.0 } else { shift * scatter(target)? };
                    Some((converted(target.position, "mm", far), converted(mean(target) + width, "µm", near)))
                };
                acceptance.targets.iter().filter_map(point).collect()
            };
            Direction { mean: at(0.0), upper: at(2.0), lower: at(-2.0) }
        };
        let up = direction(|target| target.mean_up, |target| target.scatter_up);
        let down = direction(|target| target.mean_down, |target| target.scatter_down);
        let points = || [&up, &down].into_iter().flat_map(|way| way.mean.iter().chain(&way.upper).chain(&way.lower));
        let (least, most) = extremes(points().map(|point| point.1));
        let allowed = acceptance.checks.iter().find(|check| check.requirement == "accuracy");
        let allowed = allowed.and_then(|check| check.limit).map(|limit| converted(limit, "µm", near));
        let middle = (least + most) / 2.0;
        let drawn = allowed.filter(|limit| *limit <= TOO_WIDE * (most - least));
        let limit = drawn.map(|limit| (middle - limit / 2.0, middle + limit / 2.0));
        let lines = limit.iter().flat_map(|(low, high)| [*low, *high]);
        let height = roomy(extremes(points().map(|point| point.1).chain(lines)));
        let across = roomy(extremes(points().map(|point| point.0)));
        Picture { acceptance, units, up, down, limit, across, height }
    }

    fn title(&self) -> String {
        format!("Deviation of axis {}, {}", self.acceptance.axis, self.acceptance.machine_name)
    }

    fn accuracy(&self) -> Option<&CheckRecord> {
        self.acceptance.checks.iter().find(|check| check.requirement == "accuracy" && check.limit.is_some())
    }

    fn limit_words(&self) -> Option<String> {
        let check = self.accuracy()?;
        let limit = report::quantity(check.limit, &check.unit, self.units, 3);
        let drawn = if self.limit.is_some() { "" } else { " (beyond the picture)" };
        Some(format!("allowed width of {}: {limit}{drawn}", check.quantity))
    }

    fn description(&self) -> String {
        let show = |value: f64, unit: &str| report::quantity(Some(value), unit, self.units, 4);
        let targets = &self.acceptance.targets;
        let means = || targets.iter().flat_map(|target| [target.mean_up, target.mean_down]);
        let (least, most) = extremes(means());
        let (first, last) = extremes(targets.iter().map(|target| target.position));
        let limit = self.limit_words().map(|words| format!(" Dotted lines: {words}.")).unwrap_or_default();
        format!(
            "Mean deviation at {} targets from {} to {}, upward (triangles, full line) and downward (circles, broken line), \
             between {} and {}, each with a band of two standard deviations to both sides.{limit}",
            targets.len(),
            show(first, "mm"),
            show(last, "mm"),
            show(least, "µm"),
            show(most, "µm"),
        )
    }

    fn draw(&self, svg: &mut String) -> Result<(), Fault> {
        let root = SVGBackend::with_string(svg, SIZE).into_drawing_area();
        root.fill(&WHITE).map_err(told)?;
        let (legend, below) = root.split_vertically(64);
        self.legend(&legend)?;
        let [far, near] = units_of(self.units);
        let (across, height) = (format!("position from the start of the travel, {far}"), format!("deviation, {near}"));
        let mut chart = ChartBuilder::on(&below)
            .margin(12)
            .margin_right(28)
            .x_label_area_size(56)
            .y_label_area_size(76)
            .build_cartesian_2d(self.across.0..self.across.1, self.height.0..self.height.1)
            .map_err(told)?;
        let label = |value: &f64| report::quantity(Some(clean(*value)), "1", UnitSystem::Metric, 6);
        chart
            .configure_mesh()
            .light_line_style(WHITE)
            .bold_line_style(RGBColor(222, 222, 222))
            .axis_style(INK)
            .label_style(("sans-serif", 16, &INK))
            .axis_desc_style(("sans-serif", 18, &INK))
            .x_labels(8)
            .y_labels(8)
            .x_desc(across)
            .y_desc(height)
            .x_label_formatter(&label)
            .y_label_formatter(&label)
            .draw()
            .map_err(told)?;
        for (way, colour) in [(&self.up, UP), (&self.down, DOWN)] {
            if way.upper.len() == way.mean.len() && way.lower.len() == way.mean.len() {
                let edge: Vec<Point> = way.upper.iter().chain(way.lower.iter().rev()).copied().collect();
                chart.draw_series([Polygon::new(edge, colour.mix(0.14))]).map_err(told)?;
            }
        }
        // edges in the manner of their line, so that overlapping bands are told apart without colour
        for edge in [&self.up.upper, &self.up.lower] {
            chart.draw_series(LineSeries::new(edge.iter().copied(), UP.mix(0.6))).map_err(told)?;
        }
        for edge in [&self.down.upper, &self.down.lower] {
            let style = ShapeStyle::from(DOWN.mix(0.6)).stroke_width(1);
            chart.draw_series(DashedLineSeries::new(edge.iter().copied(), 5, 5, style)).map_err(told)?;
        }
        for (line, name) in self.limit.iter().flat_map(|(low, high)| [(*low, "lower"), (*high, "upper")]) {
            debug_assert!(line.is_finite(), "{name}");
            let ends = [(self.across.0, line), (self.across.1, line)];
            chart.draw_series(DashedLineSeries::new(ends, 2, 4, LIMIT.stroke_width(2))).map_err(told)?;
        }
        chart.draw_series(LineSeries::new(self.up.mean.iter().copied(), UP.stroke_width(2))).map_err(told)?;
        let down = self.down.mean.iter().copied();
        chart.draw_series(DashedLineSeries::new(down, 9, 5, DOWN.stroke_width(2))).map_err(told)?;
        chart.draw_series(self.up.mean.iter().map(|at| TriangleMarker::new(*at, 7, UP.filled()))).map_err(told)?;
        chart.draw_series(self.down.mean.iter().map(|at| Circle::new(*at, 5, DOWN.stroke_width(2)))).map_err(told)?;
        root.present().map_err(told)
    }

    fn legend(&self, area: &DrawingArea<SVGBackend<'_>, plotters::coord::Shift>) -> Result<(), Fault> {
        let text = |words: &str, at: (i32, i32), size: u32| {
            let style = TextStyle::from(("sans-serif", size)).color(&INK);
            area.draw(&Text::new(words.to_string(), at, style)).map_err(told)
        };
        let title = self.title();
        // a line of the picture holds so many letters; the whole title is in the words for a screen reader
        let shown: String = title.chars().take(LONGEST_TITLE).collect();
        text(&if shown == title { shown } else { shown + " …" }, (24, 8), 20)?;
        let row = 48;
        area.draw(&PathElement::new([(24, row), (64, row)], UP.stroke_width(2))).map_err(told)?;
        area.draw(&TriangleMarker::new((44, row), 7, UP.filled())).map_err(told)?;
        text("upward, ±2s", (72, row - 8), 16)?;
        for from in [200, 214, 228] {
            area.draw(&PathElement::new([(from, row), (from + 9, row)], DOWN.stroke_width(2))).map_err(told)?;
        }
        area.draw(&Circle::new((218, row), 5, DOWN.stroke_width(2))).map_err(told)?;
        text("downward, ±2s", (248, row - 8), 16)?;
        if let Some(words) = self.limit_words() {
            for from in (400..436).step_by(6) {
                area.draw(&PathElement::new([(from, row), (from + 2, row)], LIMIT.stroke_width(2))).map_err(told)?;
            }
            text(&words, (446, row - 8), 16)?;
        }
        Ok(())
    }
}

fn told<E: std::error::Error + Send + Sync>(error: DrawingAreaErrorKind<E>) -> Fault {
    error.to_string()
}

/// A tick that is 0 but for rounding reads 0.
fn clean(value: f64) -> f64 {
    if value.abs() < 1e-9 { 0.0 } else { value }
}

fn extremes(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), value| (least.min(value), most.max(value)))
}

/// The range with some room about it; a range without width gets one.
fn roomy((least, most): (f64, f64)) -> (f64, f64) {
    let width = if most > least { most - least } else { 1.0 };
    (least - ROOM * width, most + ROOM * width)
}
