//! The long run: many mutations of every target on all cores, with what they took.

use crate::bombs::bombs;
use crate::chance::Chance;
use crate::entries::{ENTRIES, Entry};
use crate::{keep, mutate, seeds, small};
use std::ops::Range;
use std::panic::catch_unwind;
use std::sync::atomic::{AtomicU64, AtomicUsize, Ordering};
use std::sync::{LazyLock, Mutex};
use std::thread;
use std::time::{Duration, Instant};

/// A run that takes longer is told and kept: a second, or so many milliseconds as `AXISWRIGHT_SLOW` says.
static SLOW: LazyLock<Duration> = LazyLock::new(|| Duration::from_millis(number("AXISWRIGHT_SLOW", 1000)));
/// A run that takes longer hangs: it is kept, and the whole ends.
const HANGS: Duration = Duration::from_secs(60);

/// A run that takes longer, and longer than all before it, is timed again.
const AGAIN: Duration = Duration::from_millis(20);

/// What a thread reads, and since when.
type AtWork = Mutex<Option<(Instant, Vec<u8>)>>;

/// What the runs of a target came to.
#[derive(Default)]
struct Found {
    slowest: Duration,
    failed: Vec<String>,
}

impl Found {
    fn join(&mut self, other: Found) {
        self.slowest = self.slowest.max(other.slowest);
        self.failed.extend(other.failed);
    }
}

fn number(name: &str, otherwise: u64) -> u64 {
    std::env::var(name).ok().map_or(otherwise, |text| text.parse().unwrap_or_else(|_| panic!("{name} is no number")))
}

#[test]
#[ignore = "takes minutes to hours: AXISWRIGHT_RUNS for each target, 2000 a second of the smoke if left out, from AXISWRIGHT_SEED and AXISWRIGHT_FROM"]
fn campaign() {
    let only = std::env::var("AXISWRIGHT_TARGET").unwrap_or_default();
    let (seed, from) = (number("AXISWRIGHT_SEED", 1), number("AXISWRIGHT_FROM", 0));
    let mut failed = Vec::new();
    println!("target        from       runs    runs/s   slowest   peak memory   failed");
    for entry in ENTRIES.iter().filter(|entry| only.is_empty() || only == entry.name) {
        let runs = number("AXISWRIGHT_RUNS", 2000 * entry.a_second as u64);
        forget_peak();
        let began = Instant::now();
        let found = run(entry, from..from + runs, seed << 32);
        let rate = runs as f64 / began.elapsed().as_secs_f64();
        let slowest = found.slowest.as_secs_f64() * 1e3;
        println!(
            "{:9} {from:8} {runs:10} {rate:9.0} {slowest:6.0} ms {:>13}   {}",
            entry.name,
            peak(),
            found.failed.len()
        );
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

/// Reads the texts of these numbers; seed and number alone make a text, so a run may be taken up at any number.
fn run(entry: &Entry, numbers: Range<u64>, seed: u64) -> Found {
    let whole = seeds::seeds(entry.name);
    let small = Some(small::small(entry.name)).filter(|small| !small.is_empty()).unwrap_or_else(|| whole.clone());
    (entry.read)(&small[0]);
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let (next, found, left) = (AtomicU64::new(numbers.start), Mutex::new(Found::default()), AtomicUsize::new(cores));
    let at_work: Vec<AtWork> = (0..cores).map(|_| Mutex::new(None)).collect();
    thread::scope(|threads| {
        for mine in &at_work {
            let (whole, small, next, found, left) = (&whole, &small, &next, &found, &left);
            threads.spawn(move || {
                // what the library does on several cores it does here on this one, the others have runs of their own
                let alone = rayon::ThreadPoolBuilder::new().num_threads(1).use_current_thread().build();
                let mut own = Found::default();
                loop {
                    let number = next.fetch_add(1, Ordering::Relaxed);
                    if number >= numbers.end {
                        break;
                    }
                    one(entry, mutate::drawn(whole, small, &mut Chance(seed + number)), mine, &mut own);
                }
                drop(alone);
                found.lock().expect("a lock").join(own);
                left.fetch_sub(1, Ordering::Relaxed);
            });
        }
        threads.spawn(|| {
            while left.load(Ordering::Relaxed) > 0 {
                thread::sleep(Duration::from_millis(100));
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

fn one(entry: &Entry, bytes: Vec<u8>, mine: &AtWork, found: &mut Found) {
    let read = entry.read;
    let sound_in = |clock: fn() -> Duration| {
        let began = clock();
        *mine.lock().expect("a lock") = Some((Instant::now(), bytes.clone()));
        let sound = catch_unwind(|| read(&bytes)).is_ok();
        *mine.lock().expect("a lock") = None;
        (sound, clock().saturating_sub(began))
    };
    let (mut sound, mut took) = sound_in(by_the_wall);
    // other work may have had the core: what would be the slowest so far is read again, by the time that this thread is on a core
    if sound && took > AGAIN && took > found.slowest {
        let (again, on_core) = sound_in(on_a_core);
        (sound, took) = (again, took.min(on_core));
    }
    found.slowest = found.slowest.max(took);
    if !sound {
        found.failed.push(format!("{} fails: {}", entry.name, keep(entry.name, &bytes).display()));
    } else if took > *SLOW {
        found.failed.push(format!("{} takes {took:?}: {}", entry.name, keep(entry.name, &bytes).display()));
    }
}

/// The time since this was first asked.
fn by_the_wall() -> Duration {
    static BEGAN: LazyLock<Instant> = LazyLock::new(Instant::now);
    BEGAN.elapsed()
}

/// How long this thread was on a core, as Linux tells it; elsewhere the time that has passed.
fn on_a_core() -> Duration {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap_or_default();
    let nanoseconds = told.split(' ').next().and_then(|text| text.parse().ok());
    nanoseconds.map_or_else(by_the_wall, Duration::from_nanos)
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
