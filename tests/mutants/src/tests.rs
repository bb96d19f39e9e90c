//! The tests of the planted tree: built, listed, and run alone to learn how long each takes and which mutants it comes by.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Mutex;
use std::time::{Duration, Instant};

/// Tests that read the source text, or build the project anew: a mutant is no concern of theirs.
const NOT_RUN: &[&str] = &["house", "supply"];

/// How many tests or mutants run at a time.
pub const HANDS: usize = 2;

/// The longest that a test may take when it is run alone without a mutant.
const LONGEST: Duration = Duration::from_secs(240);

#[derive(Debug, Clone)]
pub struct Test {
    /// The file or folder below tests, or `lib`.
    pub target: String,
    pub name: String,
    pub program: PathBuf,
    /// When the program was built.
    pub built: u64,
    /// Whether it passes without a mutant, and how long that takes, ms.
    pub passes: bool,
    pub time: u64,
}

impl Test {
    pub fn id(&self) -> String {
        format!("{}::{}", self.target, self.name)
    }
    pub fn reach_file(&self, work: &Path) -> PathBuf {
        work.join("reach").join(self.id().replace("::", "."))
    }
    fn line(&self) -> String {
        let Test { target, name, program, built, passes, time } = self;
        format!("{target}\t{name}\t{}\t{built}\t{passes}\t{time}\n", program.display())
    }
    fn read(line: &str) -> Option<Test> {
        let cells: Vec<&str> = line.split('\t').collect();
        let [target, name, program, built, passes, time] = cells.as_slice() else { return None };
        Some(Test {
            target: (*target).into(),
            name: (*name).into(),
            program: program.into(),
            built: built.parse().ok()?,
            passes: *passes == "true",
            time: time.parse().ok()?,
        })
    }
}

/// The tests that are known, by their ids.
pub fn known(work: &Path) -> BTreeMap<String, Test> {
    let text = std::fs::read_to_string(work.join("tests.tsv")).unwrap_or_default();
    text.lines().filter_map(Test::read).map(|test| (test.id(), test)).collect()
}

/// How a process of tests ended.
pub enum End {
    Passed,
    /// With what it printed.
    Failed(String),
    TooLong,
}

/// Runs tests of one program in one process, in a folder of their own for temporary files.
pub fn run(work: &Path, program: &Path, names: &[&str], environment: &[(&str, String)], limit: Duration) -> (End, u64) {
    use std::os::unix::process::CommandExt;
    let scratch = work.join("scratch").join(format!("{}-{:?}", std::process::id(), std::thread::current().id()));
    std::fs::create_dir_all(&scratch).expect("a folder");
    let printed = scratch.join("printed");
    let file = std::fs::File::create(&printed).expect("a file");
    let tree = work.join("tree");
    let mut command = Command::new(program);
    command.args(["--exact", "--test-threads", "1"]).args(names).current_dir(&tree);
    command.env("CARGO_MANIFEST_DIR", &tree).env("TMPDIR", &scratch).env("RAYON_NUM_THREADS", "2");
    command.envs(environment.iter().map(|(name, value)| (name, value)));
    command.stdin(Stdio::null()).stdout(file).stderr(Stdio::null()).process_group(0);
    let begin = Instant::now();
    let mut child = command.spawn().expect("a program of tests");
    let end = loop {
        if let Some(status) = child.try_wait().expect("a status") {
            break if status.success() { End::Passed } else { End::Failed(String::new()) };
        }
        if begin.elapsed() > limit {
            // the whole group, with what the test has started
            let group = format!("-{}", child.id());
            let _ = Command::new("kill").args(["-KILL", "--", &group]).stderr(Stdio::null()).status();
            let _ = child.wait();
            break End::TooLong;
        }
        std::thread::sleep(Duration::from_millis(if begin.elapsed().as_millis() < 200 { 1 } else { 10 }));
    };
    let time = begin.elapsed().as_millis() as u64;
    let end = match end {
        End::Failed(_) => {
            End::Failed(String::from_utf8_lossy(&std::fs::read(&printed).unwrap_or_default()).into_owned())
        }
        end => end,
    };
    let _ = std::fs::remove_dir_all(&scratch);
    (end, time)
}

/// The programs of tests, with their targets.
fn build(work: &Path, named: &[&str]) -> Vec<(String, PathBuf)> {
    let mut command = Command::new("cargo");
    command.args(["test", "--no-run", "--locked", "-j", "2", "--message-format=json"]).current_dir(work.join("tree"));
    for name in named {
        if *name == "lib" {
            command.arg("--lib")
        } else {
            command.args(["--test", name])
        };
    }
    if named.is_empty() {
        command.arg("--tests");
    }
    let output = command.stderr(Stdio::inherit()).output().expect("cargo");
    assert!(output.status.success(), "the tests do not build");
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let messages = text.lines().filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok());
    let mut found = Vec::new();
    for message in messages.filter(|message| message["profile"]["test"] == true) {
        let Some(program) = message["executable"].as_str() else { continue };
        let kind = message["target"]["kind"][0].as_str().unwrap_or_default();
        let name = message["target"]["name"].as_str().unwrap_or_default();
        match kind {
            "lib" => found.push(("lib".to_string(), program.into())),
            "test" if !NOT_RUN.contains(&name) => found.push((name.to_string(), program.into())),
            _ => {}
        }
    }
    found
}

fn names(program: &Path, tree: &Path, ignored: bool) -> BTreeSet<String> {
    let mut command = Command::new(program);
    command.arg("--list").current_dir(tree);
    if ignored {
        command.arg("--ignored");
    }
    let output = command.output().expect("a program of tests");
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    text.lines().filter_map(|line| line.strip_suffix(": test")).map(String::from).collect()
}

/// Builds tests, and runs alone those that are new or were built anew.
pub fn reach(work: &Path, named: &[&str]) {
    std::fs::create_dir_all(work.join("reach")).expect("a folder");
    let tree = work.join("tree");
    let mut all = known(work);
    let mut wanted = Vec::new();
    for (target, program) in build(work, named) {
        let changed = std::fs::metadata(&program).and_then(|data| data.modified()).expect("a time");
        let built = changed.duration_since(std::time::UNIX_EPOCH).expect("a time").as_millis() as u64;
        let there = names(&program, &tree, false);
        let ignored = names(&program, &tree, true);
        all.retain(|_, test| test.target != target || there.contains(&test.name));
        for name in there.difference(&ignored) {
            let (target, name, program) = (target.clone(), name.clone(), program.clone());
            let test = Test { target, name, program, built, passes: false, time: 0 };
            if all.get(&test.id()).is_none_or(|old| old.built != built) {
                wanted.push(test);
            }
        }
    }
    // in the order in which they are named, since the queue is taken from its end
    let place = |test: &Test| named.iter().position(|name| *name == test.target).unwrap_or(named.len());
    wanted.sort_by_key(|test| (std::cmp::Reverse(place(test)), test.id()));
    println!("{} tests are known, {} are run", all.len(), wanted.len());
    let (queue, all) = (Mutex::new(wanted), Mutex::new(all));
    let hand = || {
        loop {
            let Some(mut test) = queue.lock().expect("a queue").pop() else { break };
            let file = test.reach_file(work);
            let _ = std::fs::remove_file(&file);
            let reached = ("AXISWRIGHT_REACH", file.display().to_string());
            let environment = [("AXISWRIGHT_MUTANT", "reach".to_string()), reached];
            let (end, _) = run(work, &test.program, &[&test.name], &environment, LONGEST);
            if matches!(end, End::Passed) {
                // once more as it will be run: the time without writing
                let (end, time) = run(work, &test.program, &[&test.name], &[], LONGEST);
                (test.passes, test.time) = (matches!(end, End::Passed), time);
            }
            if !test.passes {
                println!("left out, it does not pass without a mutant: {}", test.id());
            }
            let mut all = all.lock().expect("tests");
            all.insert(test.id(), test);
            let lines: String = all.values().map(Test::line).collect();
            std::fs::write(work.join("tests.tsv"), lines).expect("a file");
        }
    };
    std::thread::scope(|scope| (0..HANDS).for_each(|_| drop(scope.spawn(hand))));
}
