//! The last stage, the same for every family: a table of corrections in the control or none, and the error budget.
//!
//! Method: an error that builds up over the travel is measured and taken out but for what is left between the points,
//! the uncertainty of the measurement and the drift; errors that repeat within one turn stay. Ranges of independent
//! errors add by squares; accuracy, repeatability and systematic deviation follow by ISO 230-2.
//! Limits: errors within one turn are never mapped (safe); play, temperature and scatter are none of the table's.

use super::demand::Demand;
use super::price;
use crate::brief::{Mapping, Tilt};
use crate::catalog::{Catalog, ErrorTable};
use crate::characteristic as ch;
use crate::formula::{budget, layout};
use crate::ledger::{Aside, Characteristic, Ledger, Origin};
use crate::units::*;

/// The tables that this axis may have: none (`None`), or one of the catalogue.
pub fn options<'a>(demand: &Demand<'_>, catalog: &'a Catalog) -> Vec<Option<&'a ErrorTable>> {
    let tables = catalog.error_tables.iter().map(Some);
    match demand.axis.mapping {
        Mapping::None => vec![None],
        Mapping::Table => tables.collect(),
        Mapping::Any => std::iter::once(None).chain(tables).collect(),
    }
}

/// The word for a table among the main sizes.
pub fn word(table: Option<&ErrorTable>) -> &str {
    table.map_or("none", |table| &table.designation)
}

/// Errors of the drive itself that repeat within one turn.
pub type WithinTurn = [Option<Characteristic<Length>>; 2];

/// Enters the tilt of the slide, which hangs on nothing but the brief.
pub fn enter_tilt<L: Ledger>(tilt: &Tilt, sheet: &mut L) {
    let brief = Origin::Brief;
    let level = Angle::of_si(0.0);
    sheet.given(ch::STATED_TILT, tilt.angle.unwrap_or(level), brief);
    match tilt.waviness {
        None => {
            sheet.given(ch::WAVINESS_TILT, level, brief);
        }
        Some((height, length)) => {
            sheet.given(ch::WAVINESS_HEIGHT, height, brief);
            sheet.given(ch::WAVINESS_LENGTH, length, brief);
            let wave = (ch::WAVINESS_HEIGHT, ch::WAVINESS_LENGTH, ch::GUIDE_BASE);
            sheet.computed(ch::WAVINESS_TILT, &budget::WAVINESS_TILT, wave);
        }
    }
    sheet.computed(ch::SLIDE_TILT, &budget::TILT_SUM, (ch::STATED_TILT, ch::WAVINESS_TILT));
}

/// Enters what the tilt makes at the tool; the arm reaches from what measures.
#[inline(always)]
pub fn tilted<L: Ledger>(demand: &Demand<'_>, by_scale: bool, sheet: &mut L) {
    if let Some(tilt) = &demand.axis.tilt {
        let (arm, stated) = match by_scale {
            true => (tilt.tool_to_scale.value, tilt.tool_to_scale.stated),
            false => (tilt.tool_to_drive, true),
        };
        sheet.given(ch::TOOL_ARM, arm, if stated { Origin::Brief } else { Origin::Assumed });
        sheet.computed(ch::TILT_ERROR, &budget::TILT_ERROR, (ch::TOOL_ARM, ch::SLIDE_TILT));
    }
}

/// Enters the stage; what repeats within one turn counts where no scale measures, tilt where the brief states any.
#[inline(always)]
pub fn enter<L: Ledger>(demand: &Demand<'_>, table: Option<&ErrorTable>, within_turn: WithinTurn, sheet: &mut L) {
    if let Some(table) = table {
        let catalog = Origin::Catalog;
        sheet.given(ch::TABLE_RESIDUAL, table.residual_share, catalog);
        sheet.given(ch::TABLE_UNCERTAINTY, table.uncertainty, catalog);
        sheet.given(ch::TABLE_UNCERTAINTY_RATE, table.uncertainty_per_metre, catalog);
        sheet.given(ch::TABLE_DRIFT, table.drift, catalog);
    }
    let travel = (ch::LONG_ERROR, ch::LONG_ERROR_LEFT, ch::TRAVEL, ch::POSITION_ERROR);
    left_over(demand, table, within_turn, travel, sheet);
    sheet.aside(Aside::Section, |sheet| {
        let section =
            (ch::SECTION_LONG_ERROR, ch::SECTION_LONG_ERROR_LEFT, ch::SECTION_LENGTH, ch::SECTION_POSITION_ERROR);
        left_over(demand, table, within_turn, section, sheet);
    });
    sum_up(sheet);
    price::enter_whole(table, sheet);
}

/// An error that builds up, what is left of it, the length it builds up over, and the position error there.
type Over = (Characteristic<Length>, Characteristic<Length>, Characteristic<Length>, Characteristic<Length>);

/// Works out what the table leaves over a length, and the position error with what repeats within one turn.
#[inline(always)]
fn left_over<L: Ledger>(
    demand: &Demand<'_>,
    table: Option<&ErrorTable>,
    within_turn: WithinTurn,
    (error, left, length, whole): Over,
    sheet: &mut L,
) {
    match table {
        None => {
            sheet.computed(left, &layout::SAME_LENGTH, (error,));
        }
        Some(_) => {
            let (share, drift) = (ch::TABLE_RESIDUAL, ch::TABLE_DRIFT);
            let measured = (error, length, share, ch::TABLE_UNCERTAINTY, ch::TABLE_UNCERTAINTY_RATE, drift);
            sheet.computed(left, &budget::MAPPED_ERROR, measured);
        }
    }
    let tilted = demand.axis.tilt.is_some().then_some(ch::TILT_ERROR);
    let mut others = within_turn.into_iter().flatten().chain(tilted);
    match (others.next(), others.next(), others.next()) {
        (Some(a), Some(b), Some(c)) => {
            sheet.computed(whole, &budget::ROOT_SUM_SQUARE_4, (left, a, b, c));
        }
        (Some(a), Some(b), None) => {
            sheet.computed(whole, &budget::ROOT_SUM_SQUARE_3, (left, a, b));
        }
        (Some(a), None, _) => {
            sheet.computed(whole, &budget::ROOT_SUM_SQUARE_2, (left, a));
        }
        (None, ..) => {
            sheet.computed(whole, &layout::SAME_LENGTH, (left,));
        }
    }
}

/// Works out what ISO 230-2 states, once the position errors are in the sheet.
#[inline(always)]
fn sum_up<L: Ledger>(sheet: &mut L) {
    let whole = (ch::POSITION_ERROR, ch::REVERSAL_ERROR, ch::SCATTER);
    if sheet.read(ch::TRAVEL) <= sheet.read(ch::SECTION_LIMIT) {
        sheet.computed(ch::ACCURACY, &budget::BIDIRECTIONAL_ACCURACY, whole);
    } else {
        sheet.computed(ch::ACCURACY, &budget::SYSTEMATIC_DEVIATION, (ch::POSITION_ERROR, ch::REVERSAL_ERROR));
    }
    sheet.aside(Aside::Section, |sheet| {
        let section = (ch::SECTION_POSITION_ERROR, ch::REVERSAL_ERROR, ch::SCATTER);
        sheet.computed(ch::SECTION_ACCURACY, &budget::BIDIRECTIONAL_ACCURACY, section);
    });
    sheet.computed(ch::TOOL_ERROR, &budget::TOOL_ERROR, whole);
}
