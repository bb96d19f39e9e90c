//! Many visitors at once: every post is answered and memory stays where it was.
//!
//! It takes 20 s, so it is asked for by name: `cargo test --test page -- --ignored`; `.ci/run` does.

use crate::answers::{slide, with};
use crate::program::Program;
use crate::request::post;
use crate::small;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::time::{Duration, Instant};

const VISITORS: usize = 64;
const LONG: Duration = Duration::from_secs(20);
/// By how much memory may grow after the first quarter, bytes.
const GROWTH: u64 = 64 * 1024 * 1024;

/// What a process holds in memory, bytes; Linux tells it.
fn resident(process: u32) -> u64 {
    let status = std::fs::read_to_string(format!("/proc/{process}/status")).expect("Linux");
    let line = status.lines().find(|line| line.starts_with("VmRSS:")).expect("a line on memory");
    line.split_whitespace().nth(1).and_then(|number| number.parse::<u64>().ok()).expect("a number") * 1024
}

#[test]
#[ignore = "takes 20 s and the whole machine; .ci/run asks for it"]
fn sixty_four_visitors_at_a_time_are_all_answered() {
    let folder = tempfile::tempdir().expect("a folder");
    small::write(&folder.path().join("catalog"));
    let catalog = folder.path().join("catalog").display().to_string();
    let named = std::env::var("AXISWRIGHT_PAGE_PROGRAM").unwrap_or(env!("CARGO_BIN_EXE_axiswright").into());
    let program = Program::start(&named, &["--catalog", &catalog]);
    let (over, answered) = (AtomicBool::new(false), AtomicUsize::new(0));
    let early = std::thread::scope(|scope| {
        for visitor in 0..VISITORS {
            let (over, answered, address) = (&over, &answered, &program.address);
            scope.spawn(move || {
                for round in 0.. {
                    if over.load(Ordering::Relaxed) {
                        return;
                    }
                    // every tenth brief is at fault, the others differ
                    let mass = if round % 10 == 9 {
                        "heavy".into()
                    } else {
                        format!("{} kg", 80 + (visitor * 7 + round) % 50)
                    };
                    let fields = with(slide(), "axes.0.moved-mass", &mass);
                    let got = post(address, "/answer?how=sketch", &fields);
                    assert_eq!(got.status, 200, "visitor {visitor}, round {round}: {}", got.text());
                    answered.fetch_add(1, Ordering::Relaxed);
                }
            });
        }
        let begin = Instant::now();
        std::thread::sleep(LONG / 4);
        let early = resident(program.child.id());
        std::thread::sleep(LONG.saturating_sub(begin.elapsed()));
        over.store(true, Ordering::Relaxed);
        early
    });
    let late = resident(program.child.id());
    assert!(answered.load(Ordering::Relaxed) >= VISITORS, "every visitor was answered");
    assert!(late < early + GROWTH, "memory grew from {early} to {late} bytes");
    println!("{} posts answered; memory {early} then {late} bytes", answered.load(Ordering::Relaxed));
}
