//! Several runs that write the same folder at a time.

use crate::room::{BRIEF, FOLDERS, IN_PEACE, RECOMMEND, Room, Run, folder, other};
use crate::tools::with_fault;
use std::fs;
use std::process::Stdio;

/// A room with a second brief.
fn room() -> Room {
    let room = Room::new();
    fs::create_dir(room.path("out-other")).expect("a folder");
    fs::write(room.path("out-other/brief.yaml"), other()).expect("a brief");
    room
}

/// `recommend` of the second brief into the same folder.
fn of_other() -> Vec<&'static str> {
    RECOMMEND.iter().map(|word| if *word == "brief.yaml" { "out-other/brief.yaml" } else { word }).collect()
}

#[test]
fn of_runs_at_a_time_each_ends_and_the_folder_is_whole() {
    for earlier in [false, true] {
        let room = room();
        if earlier {
            room.put("out", &IN_PEACE.1);
        }
        let start = |turn: u32| {
            let words = if turn.is_multiple_of(2) { RECOMMEND.to_vec() } else { of_other() };
            room.program(&words).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("it starts")
        };
        let running: Vec<_> = (0..4).map(start).collect();
        for child in running {
            let run = Run::of(child.wait_with_output().expect("it ends"));
            assert_eq!(run.status, Some(0), "{}", run.err);
        }
        let found = folder(&room.path("out"));
        assert!(found == IN_PEACE.0 || found == IN_PEACE.1, "{} files", found.len());
        assert_eq!(room.strays(), ["out-other"], "no temporary folder is left");
    }
}

#[test]
fn a_run_that_another_one_overtakes_between_its_two_renames_still_ends_well() {
    let room = room();
    room.put("out", &IN_PEACE.1);
    let slow = ["/^rename:delay_enter=5000000:when=2"];
    let Some(mut first) = with_fault(&room, &slow, RECOMMEND) else { return };
    let first = first.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("it starts");
    let mut tries = 0;
    while room.path("out").exists() && tries < 60_000 {
        std::thread::sleep(std::time::Duration::from_millis(1));
        tries += 1;
    }
    let second = room.run(&of_other());
    assert_eq!(second.status, Some(0), "{}", second.err);
    let first = Run::of(first.wait_with_output().expect("it ends"));
    assert_eq!(first.status, Some(0), "{}", first.err);
    assert!(folder(&room.path("out")) == IN_PEACE.0, "the last one stays");
    assert_eq!(room.strays(), ["out-other"]);
}

#[test]
fn a_folder_that_somebody_fills_meanwhile_is_left_alone() {
    let room = Room::new();
    fs::create_dir(room.path("out")).expect("a folder");
    fs::write(room.path("out/notes.txt"), "mine").expect("a file");
    for words in FOLDERS {
        room.run(&[words, &["out"][..]].concat()).tells(2, "it holds `notes.txt`; name another folder for --out");
    }
    assert_eq!(fs::read_to_string(room.path("out/notes.txt")).expect("the file"), "mine");
    assert_eq!(fs::read_to_string(room.path("brief.yaml")).expect("the brief"), BRIEF);
}
