//! Mutants are tried with the tests that come by them.
//!
//! Method: first the tests that have caught most for their time; quick ones share a process. What compares whole pages comes last, so that the
//! table can tell what is caught by nothing else. The lines of `results.tsv` are added one by one: a run that is cut off goes on
//! where it was.

use crate::ROOMS;
use crate::table::equivalent;
use crate::tests::{End, HANDS, Test, known, run as run_tests};
use std::collections::{BTreeMap, BTreeSet};
use std::io::Write;
use std::path::Path;
use std::sync::Mutex;
use std::time::Duration;

pub struct Options {
    /// How many mutants of each room are tried.
    sample: usize,
    seed: u64,
    /// Only those that survived are tried again.
    survivors: bool,
    /// The longest that the tests of one mutant take, s.
    seconds: u64,
    /// The one room that is tried; all where none is named.
    room: Option<String>,
    /// Tests with this in their ids come first.
    first: Option<String>,
}

impl Options {
    pub fn read(words: &[&str]) -> Options {
        let after = |name: &str| words.iter().position(|word| *word == name).and_then(|at| words.get(at + 1));
        let number = |name: &str, usual: u64| after(name).map_or(usual, |word| word.parse().expect("a number"));
        Options {
            sample: number("--sample", u64::MAX) as usize,
            seed: number("--seed", 1),
            survivors: words.contains(&"--survivors"),
            seconds: number("--seconds", 40),
            room: after("--room").map(|room| room.to_string()),
            first: after("--first").map(|first| first.to_string()),
        }
    }
}

/// A line of `mutants.tsv`.
#[derive(Debug, Clone)]
pub struct Listed {
    pub id: u32,
    pub room: String,
    pub place: String,
    pub change: String,
    pub planted: bool,
}

pub fn listed(work: &Path) -> Vec<Listed> {
    let text = std::fs::read_to_string(work.join("mutants.tsv")).expect("mutants.tsv: plant first");
    let read = |line: &str| {
        let cells: Vec<&str> = line.split('\t').collect();
        let [id, room, place, change, state] = cells.as_slice() else { return None };
        let id = id.parse().ok()?;
        let (room, place, change) = ((*room).into(), (*place).into(), (*change).into());
        Some(Listed { id, room, place, change, planted: *state == "planted" })
    };
    text.lines().filter_map(read).collect()
}

/// Whether a test compares whole pages with what was read once.
pub fn compares_pages(target: &str) -> bool {
    target == "reports" || target.starts_with("docs_")
}

/// The mutants of each room in an order of chance (splitmix64, Fisher and Yates).
fn shuffled(mut ids: Vec<u32>, seed: u64) -> Vec<u32> {
    let mut state = seed;
    let mut next = move || {
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    };
    for place in (1..ids.len()).rev() {
        ids.swap(place, (next() % (place as u64 + 1)) as usize);
    }
    ids
}

/// The last outcome of each mutant that was tried: `caught`, `survived`, `not reached`, or `too long` where all tests that come by it
/// are, and by which test. What was tried of other sources under the same number does not count.
pub fn outcomes(work: &Path) -> BTreeMap<u32, (String, String)> {
    let text = std::fs::read_to_string(work.join("results.tsv")).unwrap_or_default();
    let now: BTreeMap<u32, (String, String)> =
        listed(work).into_iter().map(|one| (one.id, (one.place, one.change))).collect();
    let read = |line: &str| {
        let cells: Vec<&str> = line.split('\t').collect();
        let (id, outcome, by) = (cells.first()?.parse().ok()?, cells.get(4)?, cells.get(5)?);
        let (place, change) = now.get(&id)?;
        let same = cells.get(2) == Some(&place.as_str()) && cells.get(3) == Some(&change.as_str());
        same.then(|| (id, ((*outcome).to_string(), (*by).to_string())))
    };
    text.lines().filter_map(read).collect()
}

/// What the tests say of one mutant.
fn trial(work: &Path, id: u32, tests: &[&Test], most: u64) -> (&'static str, String) {
    let mut spent = 0;
    let mut rest = tests;
    let mut together_ms = 100;
    while !rest.is_empty() && spent < most {
        // quick ones together, at first few, then up to a second of usual time
        let mut sum = 0;
        let mut count = 0;
        for test in rest {
            let pages = compares_pages(&test.target) != compares_pages(&rest[0].target);
            if count > 0 && (sum + test.time > together_ms || pages) {
                break;
            }
            sum += test.time;
            count += 1;
        }
        let (now, later) = rest.split_at(count);
        rest = later;
        together_ms = 1000;
        let mut programs: BTreeMap<&Path, Vec<&Test>> = BTreeMap::new();
        for test in now {
            programs.entry(&test.program).or_default().push(test);
        }
        for (program, together) in programs {
            let usual: u64 = together.iter().map(|test| test.time).sum();
            let limit = Duration::from_millis(10 * usual + 10_000);
            let names: Vec<&str> = together.iter().map(|test| test.name.as_str()).collect();
            let (end, time) = run_tests(work, program, &names, &[("AXISWRIGHT_MUTANT", id.to_string())], limit);
            spent += time;
            match end {
                End::Passed => {}
                End::TooLong => return ("caught", format!("{} (time)", together[0].target)),
                End::Failed(printed) => {
                    let failed =
                        printed.lines().find_map(|line| line.strip_prefix("test ")?.strip_suffix(" ... FAILED"));
                    let name = failed.unwrap_or("the process ended");
                    return ("caught", format!("{}::{name}", together[0].target));
                }
            }
        }
    }
    let (passed, of) = (tests.len() - rest.len(), tests.len());
    if of == 0 { ("not reached", String::new()) } else { ("survived", format!("{passed} of {of} tests")) }
}

/// Tries the mutants.
pub fn run(work: &Path, options: &Options) {
    let tests: Vec<Test> = known(work).into_values().filter(|test| test.passes).collect();
    let mut coming_by: BTreeMap<u32, Vec<&Test>> = BTreeMap::new();
    for test in &tests {
        let text = std::fs::read_to_string(test.reach_file(work)).unwrap_or_default();
        let ids: BTreeSet<u32> = text.lines().filter_map(|line| line.parse().ok()).collect();
        ids.into_iter().for_each(|id| coming_by.entry(id).or_default().push(test));
    }
    let listed = listed(work);
    let done = outcomes(work);
    let mut catches: BTreeMap<String, u64> = BTreeMap::new();
    done.values()
        .filter(|(outcome, _)| outcome == "caught")
        .for_each(|(_, by)| *catches.entry(by.clone()).or_default() += 1);
    let catches = Mutex::new(catches);
    let mut queue = Vec::new();
    let columns = ROOMS.map(|room| {
        let wanted = options.room.as_deref().is_none_or(|wanted| wanted == room);
        let ids = listed.iter().filter(|one| wanted && one.planted && one.room == room).map(|one| one.id).collect();
        let mut ids = shuffled(ids, options.seed);
        ids.truncate(options.sample);
        ids
    });
    // the rooms in turn, so that a run that is cut off has tried some of each
    for place in 0..columns.iter().map(Vec::len).max().unwrap_or(0) {
        queue.extend(columns.iter().filter_map(|ids| ids.get(place)));
    }
    let equivalent = equivalent();
    let told = |id: u32| listed.iter().find(|one| one.id == id).map(|one| (one.place.as_str(), one.change.as_str()));
    queue.retain(|id| match done.get(id) {
        None => !options.survivors,
        // of those that can change no answer nothing more is asked
        Some((outcome, _)) => {
            options.survivors && outcome != "caught" && !told(*id).is_some_and(|told| equivalent.contains(&told))
        }
    });
    println!("{} tests, {} mutants to try", tests.len(), queue.len());
    queue.reverse();
    let queue = Mutex::new(queue);
    let file = std::fs::OpenOptions::new().append(true).create(true).open(work.join("results.tsv")).expect("a file");
    let file = Mutex::new(file);
    let hand = || {
        loop {
            let Some(id) = queue.lock().expect("a queue").pop() else { break };
            let Some(mutant) = listed.iter().find(|one| one.id == id) else { continue };
            let mut tests = coming_by.get(&id).cloned().unwrap_or_default();
            // what would take half of the time by itself is left out
            let reached = !tests.is_empty();
            tests.retain(|test| test.time <= 500 * options.seconds);
            let counts = catches.lock().expect("counts").clone();
            let cost = |test: &&Test| 1000 * (test.time + 5) / (1 + counts.get(&test.id()).copied().unwrap_or(0));
            let later = |test: &Test| options.first.as_ref().is_none_or(|first| !test.id().contains(first.as_str()));
            tests.sort_by_key(|test| (compares_pages(&test.target), later(test), cost(test), test.id()));
            let (mut outcome, by) = trial(work, id, &tests, 1000 * options.seconds);
            if reached && tests.is_empty() {
                outcome = "too long";
            }
            *catches.lock().expect("counts").entry(by.clone()).or_default() += 1;
            let line = format!("{id}\t{}\t{}\t{}\t{outcome}\t{by}\n", mutant.room, mutant.place, mutant.change);
            file.lock().expect("a file").write_all(line.as_bytes()).expect("a line");
        }
    };
    std::thread::scope(|scope| (0..HANDS).for_each(|_| drop(scope.spawn(hand))));
}
