//! The local page in a real browser: Chromium without a window, driven by WebDriver as a user would.
//!
//! Every test here needs `chromium` and `chromedriver`, so it is asked for by name: `cargo test --test browser -- --ignored`.
//! `.ci/run` installs both and does. `AXISWRIGHT_PAGE_PROGRAM` names the program to serve the page, an optimised one above all;
//! `AXISWRIGHT_AXE` the file `axe.min.js` of the npm package axe-core; with `AXISWRIGHT_REWRITE=1` the pictures of the docs are made anew.

mod access;
#[path = "../page_program.rs"]
mod program;
mod session;
mod user;
mod without_script;
