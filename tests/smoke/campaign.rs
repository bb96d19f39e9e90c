//! The long run: many mutations of every target on all cores, with what they took.

use crate::bombs::bombs;
use crate::chance::Chance;
use crate::entries::{ENTRIES, Entry};
use crate::{keep, mutate, seeds};
use std::panic::catch_unwind;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// A run that takes longer is told and kept.
const SLOW: Duration = Duration::from_secs(1);
/// A run that takes longer hangs: it is kept, and the whole ends.
const HANGS: Duration = Duration::from_secs(60);

/// What a thread reads, and since when.
type AtWork = Mutex<Option<(Instant, Vec<u8>)>>;

/// What the runs of a target came to.
#[derive(Default)]
struct Found {
    slowest: Duration,
    failed: Vec<String>,
}

fn number(name: &str, otherwise: u64) -> u64 {
    std::env::var(name).ok().map_or(otherwise, |text| text.parse().unwrap_or_else(|_| panic!("{name} is no number")))
}

#[test]
#[ignore = "takes minutes: AXISWRIGHT_RUNS for each target, 2000 a second of the smoke if left out, from AXISWRIGHT_SEED"]
fn campaign() {
    let only = std::env::var("AXISWRIGHT_TARGET").unwrap_or_default();
    let seed = number("AXISWRIGHT_SEED", 1);
    let mut failed = Vec::new();
    println!("target        runs    runs/s   slowest   peak memory   failed");
    for entry in ENTRIES.iter().filter(|entry| only.is_empty() || only == entry.name) {
        let runs = number("AXISWRIGHT_RUNS", 2000 * entry.a_second as u64);
        forget_peak();
        let began = Instant::now();
        let found = run(entry, runs, seed << 32);
        let rate = runs as f64 / began.elapsed().as_secs_f64();
        let slowest = found.slowest.as_secs_f64() * 1e3;
        println!("{:9} {runs:8} {rate:9.0} {slowest:6.0} ms {:>13}   {}", entry.name, peak(), found.failed.len());
        failed.extend(found.failed);
    }
    assert!(failed.is_empty(), "\n{}", failed.join("\n"));
}

#[test]
#[ignore = "tells how long each text that asks for much takes; AXISWRIGHT_TARGET names one target"]
fn bombs_one_by_one() {
    let only = std::env::var("AXISWRIGHT_TARGET").unwrap_or_default();
    for entry in ENTRIES.iter().filter(|entry| only.is_empty() || only == entry.name) {
        let seeds = seeds::seeds(entry.name);
        (entry.read)(&seeds[0]);
        for (name, bytes) in bombs() {
            let began = Instant::now();
            let read = entry.read;
            let sound = catch_unwind(|| read(&bytes)).is_ok();
            let took = began.elapsed().as_millis();
            if took > 100 || !sound {
                println!("{:9} {took:7} ms  {name}{}", entry.name, if sound { "" } else { ", which fails" });
            }
        }
    }
}

fn run(entry: &Entry, runs: u64, seed: u64) -> Found {
    let seeds = seeds::seeds(entry.name);
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let (next, found) = (AtomicU64::new(0), Mutex::new(Found::default()));
    let at_work: Vec<AtWork> = (0..cores).map(|_| Mutex::new(None)).collect();
    thread::scope(|threads| {
        for mine in &at_work {
            let (seeds, next, found) = (&seeds, &next, &found);
            threads.spawn(move || {
                loop {
                    let number = next.fetch_add(1, Ordering::Relaxed);
                    if number >= runs {
                        break;
                    }
                    one(entry, mutate::mutated(seeds, &mut Chance(seed + number)), mine, found);
                }
            });
        }
        threads.spawn(|| {
            while next.load(Ordering::Relaxed) < runs + cores as u64 {
                thread::sleep(Duration::from_millis(200));
                for mine in &at_work {
                    if let Some((began, bytes)) = &*mine.lock().expect("a lock")
                        && began.elapsed() > HANGS
                    {
                        println!("{} hangs: {}", entry.name, keep(entry.name, bytes).display());
                        std::process::exit(1);
                    }
                }
            }
        });
    });
    found.into_inner().expect("a lock")
}

fn one(entry: &Entry, bytes: Vec<u8>, mine: &AtWork, found: &Mutex<Found>) {
    let began = Instant::now();
    *mine.lock().expect("a lock") = Some((began, bytes.clone()));
    let read = entry.read;
    let sound = catch_unwind(|| read(&bytes)).is_ok();
    let took = began.elapsed();
    *mine.lock().expect("a lock") = None;
    let mut found = found.lock().expect("a lock");
    found.slowest = found.slowest.max(took);
    if !sound {
        found.failed.push(format!("{} fails: {}", entry.name, keep(entry.name, &bytes).display()));
    } else if took > SLOW {
        found.failed.push(format!("{} takes {took:?}: {}", entry.name, keep(entry.name, &bytes).display()));
    }
}

/// Lets the system count the peak of memory anew, where it can.
fn forget_peak() {
    let _ = std::fs::write("/proc/self/clear_refs", "5");
}

/// The most memory that the process had, as Linux tells it.
fn peak() -> String {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let peak =
        status.lines().find_map(|line| line.strip_prefix("VmHWM:")?.trim().strip_suffix(" kB")?.parse::<u64>().ok());
    peak.map_or("not known".into(), |peak| format!("{} MB", peak / 1024))
}
