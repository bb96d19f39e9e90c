//! What surrounds a command: version, completions, manual, being stopped, an empty home.

use crate::recommend::{BRIEF, Room};
use crate::{axiswright, run};
use std::fs;

const COMMANDS: [&str; 11] =
    ["recommend", "check", "accept", "audit", "crossover", "calc", "explain", "catalog", "new", "completions", "man"];

#[test]
fn the_version_names_the_catalogue_and_the_rules_that_are_built_in() {
    let short = run(&["-V"]);
    assert_eq!((short.status, short.out.as_str()), (0, concat!("axiswright ", env!("CARGO_PKG_VERSION"), "\n")));
    let long = run(&["--version"]);
    assert_eq!((long.status, long.err.as_str()), (0, ""));
    let lines: Vec<&str> = long.out.lines().collect();
    assert_eq!(lines.len(), 4, "{}", long.out);
    assert_eq!(lines[1], "record axiswright/1");
    for (line, head, folder) in [(lines[2], "catalogue ", "catalog"), (lines[3], "rules ", "rules")] {
        let digits = line.strip_prefix(head).and_then(|rest| rest.split(' ').next()).expect("a hash");
        assert!(digits.len() == 12 && digits.bytes().all(|digit| digit.is_ascii_hexdigit()), "{line}");
        let files = count_yaml(folder.as_ref());
        assert!(line.contains(&format!("{files} files")), "{line}: {files} files lie in {folder}/");
    }
    assert!(lines[2].contains("generic and invented"));
}

fn count_yaml(folder: &std::path::Path) -> usize {
    let entries = fs::read_dir(folder).expect("a folder").map(|entry| entry.expect("an entry").path());
    entries
        .map(|path| match path.is_dir() {
            true => count_yaml(&path),
            false => usize::from(path.extension().is_some_and(|ending| ending == "yaml")),
        })
        .sum()
}

#[test]
fn completions_of_every_shell_know_every_command() {
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let given = run(&["completions", shell]);
        assert_eq!((given.status, given.err.as_str()), (0, ""), "{shell}");
        for command in COMMANDS {
            assert!(given.out.contains(command), "{shell}: {command}");
        }
    }
    let wrong = run(&["completions", "bsh"]);
    assert!(wrong.status == 2 && wrong.err.contains("bash"), "{}", wrong.err);
}

#[test]
fn the_manual_has_a_page_for_every_command_and_no_date() {
    let room = tempfile::tempdir().expect("a folder");
    let folder = room.path().join("man");
    let written = run(&["man", "--out", &folder.display().to_string()]);
    assert_eq!(written.status, 0, "{}", written.err);
    for command in COMMANDS {
        let page = fs::read_to_string(folder.join(format!("axiswright-{command}.1"))).expect(command);
        assert!(page.contains(".TH") && page.contains(&format!("axiswright {command}")), "{command}:\n{page}");
    }
    let whole = fs::read_to_string(folder.join("axiswright.1")).expect("the page of the whole");
    assert_eq!(run(&["man"]).out, whole);
    let head = whole.lines().find(|line| line.starts_with(".TH")).expect("a heading");
    assert!(!head.contains("20"), "a date would make the page differ from day to day: {head}");
}

#[test]
fn it_works_from_an_empty_folder_without_a_home_or_any_variable() {
    let room = tempfile::tempdir().expect("a folder");
    let there = |arguments: &[&str]| {
        let output = axiswright().args(arguments).env_clear().current_dir(room.path()).output().expect("it runs");
        (output.status.code(), String::from_utf8(output.stdout).expect("text"))
    };
    let (status, starter) = there(&["new"]);
    assert_eq!(status, Some(0));
    assert!(starter.starts_with('#'));
    let (status, parts) = there(&["catalog", "list", "servo-motor"]);
    assert!(status == Some(0) && parts.contains("servo-3.0kw"), "{parts}");
    let (status, rule) = there(&["explain", "screw-whip"]);
    assert!(status == Some(0) && rule.contains("whip-speed"), "{rule}");
    assert_eq!(fs::read_dir(room.path()).expect("a folder").count(), 0, "nothing is left beside it");
}

#[test]
fn a_script_that_answers_the_questions_gets_a_brief_that_recommend_takes() {
    let room = tempfile::tempdir().expect("a folder");
    crate::small::write(&room.path().join("small"));
    let there = |arguments: &[&str], answers: &str| {
        axiswright().args(arguments).current_dir(room.path()).write_stdin(answers).output().expect("it runs")
    };
    // with two answers that are refused and asked for again, and line ends of another system
    let answers = "Door router\r\nEUR\r\n\r\n\r\nwood dust\r\n\r\nslide\r\n\r\nhorizontal\r\n0,6 m\r\n600\r\n600 mm\r\n120 kg\r\n15 m/min\r\n\
                   2 m/s²\r\n200 N\r\n3 m/min\r\n0.1 mm\r\n\r\nno\r\n";
    let asked = there(&["new", "--ask", "--out", "mine.yaml"], answers);
    let told = String::from_utf8_lossy(&asked.stderr).into_owned();
    assert_eq!((asked.status.code(), asked.stdout.len()), (Some(0), 0), "{told}");
    for said in ["Travel, such as 1.2 m:", "has a decimal comma", "has no unit", "next: axiswright recommend mine.yaml"]
    {
        assert!(told.contains(said), "{said}\n{told}");
    }
    let again = there(&["new", "--ask", "--out", "mine.yaml"], answers);
    assert_eq!(again.status.code(), Some(2), "what is there stays");
    let said = String::from_utf8_lossy(&again.stderr).into_owned();
    assert!(
        said.contains("is there already") && !said.contains("Name of the machine"),
        "before anything is asked: {said}"
    );
    let short = there(&["new", "--ask", "--out", "other.yaml"], "Door router\n");
    assert!(short.status.code() == Some(2) && !room.path().join("other.yaml").exists());
    let chosen = there(&["recommend", "mine.yaml", "--catalog", "small", "--no-turning-points"], "");
    let report = String::from_utf8(chosen.stdout).expect("text");
    assert_eq!(chosen.status.code(), Some(0), "{}", String::from_utf8_lossy(&chosen.stderr));
    assert!(
        report.starts_with("# Linear drives: Door router\n") && report.contains("A drive was chosen for every axis.")
    );
}

/// Whether the process has a handler for this signal, as Linux tells it.
#[cfg(target_os = "linux")]
fn handles(process: u32, signal: u32) -> bool {
    let status = fs::read_to_string(format!("/proc/{process}/status")).unwrap_or_default();
    let caught = status.lines().find_map(|line| line.strip_prefix("SigCgt:")).unwrap_or("0").trim();
    u64::from_str_radix(caught, 16).is_ok_and(|bits| bits >> (signal - 1) & 1 == 1)
}

#[cfg(target_os = "linux")]
#[test]
fn a_run_that_is_stopped_ends_with_status_130_and_leaves_nothing_behind() {
    use std::process::{Command, Stdio};
    let room = Room::with(BRIEF);
    // two axes and all families: long enough to be stopped in any build
    let brief = BRIEF.replace("    families: [ball-screw]\n", "");
    fs::write(room.path("brief.yaml"), brief).expect("a brief");
    for (name, number) in [("INT", 2), ("TERM", 15)] {
        let mut child = Command::new(assert_cmd::cargo::cargo_bin("axiswright"))
            .args(["recommend", "brief.yaml", "--out", "decision", "--threads", "1"])
            .current_dir(room.path("."))
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .expect("it starts");
        while !handles(child.id(), number) {
            assert!(child.try_wait().expect("a child").is_none(), "it ended before it could be stopped");
            std::thread::yield_now();
        }
        let sent = Command::new("kill").args([format!("-{name}"), child.id().to_string()]).status().expect("a signal");
        assert!(sent.success());
        let output = child.wait_with_output().expect("it ends");
        assert_eq!(output.status.code(), Some(130), "{name}");
        assert_eq!(String::from_utf8_lossy(&output.stderr), "", "no words, no panic");
        let mut left: Vec<_> = fs::read_dir(room.path("."))
            .expect("a folder")
            .map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned())
            .collect();
        left.sort();
        assert_eq!(left, ["brief.yaml", "rules"], "{name}");
    }
}

#[test]
fn numbers_and_words_of_options_are_refused_with_what_was_expected() {
    for threads in ["zero", "0", "-1", "1025", "2.5"] {
        let run = run(&["calc", "--list", &format!("--threads={threads}")]);
        assert_eq!(run.status, 2, "{threads}");
        assert!(run.err.contains("a whole number from 1 to 1024 was expected"), "{threads}: {}", run.err);
    }
    let inch = run(&["calc", "deflection", "force=900N", "stiffness=100N/µm", "--units", "imperial"]);
    assert_eq!((inch.status, inch.err.as_str()), (0, ""));
    assert!(inch.out.contains("In inches"), "{}", inch.out);
}
