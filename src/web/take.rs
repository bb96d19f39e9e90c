//! What can be taken away: the documents of the decision folder, one by one or all together, and the brief.
//!
//! Method: the record is the one that `recommend` makes of the same brief, and the documents are made of it by the same
//! functions, so each file is byte for byte the one of the command line.
//! Limits: nothing is written on the computer that serves the page.

use super::answer::whole;
use super::guard::as_report;
use super::post::Post;
use super::print;
use super::site::{BRIEF, Site};
use crate::record::{DecisionRecord, input_files};
use crate::report;
use axum::extract::{Path, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use std::io::{Cursor, Write};
use std::sync::Arc;
use zip::write::SimpleFileOptions;

/// The names under which things are taken away, with their types.
const TAKEN: [(&str, &str); 8] = [
    (BRIEF, "text/yaml; charset=utf-8"),
    ("recommendation.html", "text/html; charset=utf-8"),
    ("recommendation.md", "text/markdown; charset=utf-8"),
    ("record.json", "application/json"),
    ("candidates.csv", "text/csv; charset=utf-8"),
    ("parts.csv", "text/csv; charset=utf-8"),
    ("machine.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
    (FOLDER, "application/zip"),
];
/// The whole decision folder as one file.
const FOLDER: &str = "decision.zip";

/// One thing to take away.
pub async fn take(State(site): State<Arc<Site>>, Path(name): Path<String>, post: Post) -> Response {
    let Some((name, kind)) = TAKEN.into_iter().find(|(known, _)| *known == name) else {
        return (StatusCode::NOT_FOUND, "there is nothing of that name to take\n").into_response();
    };
    if name == BRIEF {
        return attached(name, kind, post.draft.text().into_bytes());
    }
    let record = match record(&site, &post).await {
        Ok(record) => record,
        Err(answer) => return *answer,
    };
    let made = {
        let (site, text) = (site.clone(), post.draft.text());
        let units = post.units;
        site.clone().work.run(super::answer::MOST, move |_| Some(document(&site, &record, &text, name, units))).await
    };
    match made {
        Ok(Ok(content)) => attached(name, kind, content),
        Ok(Err(told)) => (StatusCode::INTERNAL_SERVER_ERROR, told).into_response(),
        Err(refused) => print::refused(refused),
    }
}

/// The report to read and to print.
pub async fn print(State(site): State<Arc<Site>>, post: Post) -> Response {
    match record(&site, &post).await {
        Ok(record) => as_report(report::html(&record, post.units)),
        Err(answer) => *answer,
    }
}

/// The record with what would change the answer; the page with its faults where the brief has some.
async fn record(site: &Arc<Site>, post: &Post) -> Result<Arc<DecisionRecord>, Box<Response>> {
    let inputs = site.inputs(&post.draft).map_err(|faults| Box::new(print::page_with_faults(post, &faults)))?;
    whole(site, inputs, true).await.map_err(|refused| Box::new(print::refused(refused)))
}

fn attached(name: &str, kind: &'static str, content: Vec<u8>) -> Response {
    let headers = [
        (header::CONTENT_TYPE, kind.to_string()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    (headers, content).into_response()
}

/// The bytes of one document, or what cannot be made.
fn document(
    site: &Site,
    record: &DecisionRecord,
    brief: &str,
    name: &str,
    units: crate::units::UnitSystem,
) -> Result<Vec<u8>, String> {
    let json =
        || serde_json::to_string_pretty(record).map(|text| (text + "\n").into_bytes()).map_err(|e| e.to_string());
    match name {
        "record.json" => json(),
        "candidates.csv" => report::candidates(record).map(String::into_bytes),
        "parts.csv" => report::bill_of_materials(record).map(String::into_bytes),
        "machine.xlsx" => report::workbook(record),
        "recommendation.html" => Ok(report::html(record, units).into_bytes()),
        "recommendation.md" => Ok(report::report(record, units).markdown.into_bytes()),
        _ => {
            let mut files = report::documents(record, units)?;
            files.push(("record.json".into(), json()?));
            let inputs = site.inputs_of(brief).map_err(|faults| faults.to_string())?;
            let went_in = input_files(&inputs.brief, &inputs.catalog, &inputs.rulebook);
            files.extend(
                went_in.into_iter().filter_map(|(input, text)| Some((input.file?, text.to_string().into_bytes()))),
            );
            packed(&files).map_err(|error| format!("the folder cannot be packed: {error}"))
        }
    }
}

/// Files as one archive, the same bytes for the same files.
fn packed(files: &[(String, Vec<u8>)]) -> zip::result::ZipResult<Vec<u8>> {
    let mut archive = zip::ZipWriter::new(Cursor::new(Vec::new()));
    // no clock: every file has the first time that the format knows
    let options = SimpleFileOptions::default().last_modified_time(zip::DateTime::default());
    for (name, content) in files {
        archive.start_file(format!("decision/{name}"), options)?;
        archive.write_all(content)?;
    }
    archive.finish().map(Cursor::into_inner)
}
