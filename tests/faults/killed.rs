//! A program that is killed outright, at any moment.
//!
//! What is left may be a temporary folder `.axiswright-…` and, between two renames, no folder at the target; then both results
//! stand whole in the temporary one. The next run goes on as if nothing had been.

use crate::room::{Folder, IN_PEACE, RECOMMEND, Room, folder};
use crate::tools::with_fault;
use std::fs;
use std::process::Stdio;
use std::thread::sleep;
use std::time::{Duration, Instant};

/// What stands at the target after a kill.
#[derive(Debug, PartialEq, Eq)]
enum Left {
    Nothing,
    Old,
    New,
}

/// What is left, which has to be whole; and the temporary folders.
fn left(room: &Room) -> (Left, Vec<String>) {
    let strays = room.strays();
    assert!(strays.iter().all(|name| name.starts_with(".axiswright-")), "{strays:?}");
    let found = folder(&room.path("out"));
    let left = match found {
        _ if !room.path("out").exists() => Left::Nothing,
        _ if found == IN_PEACE.1 => Left::Old,
        _ if found == IN_PEACE.0 => Left::New,
        _ => panic!("half a folder of {} files", found.len()),
    };
    (left, strays)
}

fn room() -> Room {
    let room = Room::new();
    room.put("out", &IN_PEACE.1);
    room
}

/// The old folder out of the temporary one, where no folder stands at the target.
fn kept(room: &Room, stray: &str) -> Folder {
    folder(&room.path(stray).join("earlier-0"))
}

#[test]
fn killed_at_any_call_that_writes_leaves_one_whole_folder() {
    let mut seen = Vec::new();
    let calls = [
        "/^mkdir:signal=KILL:when=1",
        "/^mkdir:signal=KILL:when=2",
        "fsync:signal=KILL:when=60",
        "/^rename:signal=KILL:when=1",
        "/^rename:signal=KILL:when=2",
        "/^(unlink|unlinkat|rmdir):signal=KILL:when=1",
        "/^(unlink|unlinkat|rmdir):signal=KILL:when=40",
    ];
    for call in calls {
        let room = room();
        let Some(mut command) = with_fault(&room, &[call], RECOMMEND) else { return };
        let status = command.stderr(Stdio::null()).status().expect("it runs");
        assert!(!status.success(), "{call}: it is killed");
        let (what, strays) = left(&room);
        if what == Left::Nothing {
            assert!(kept(&room, &strays[0]) == IN_PEACE.1, "{call}: the old folder is in the temporary one");
        }
        seen.push(what);
        if !call.starts_with("/^rename") {
            continue;
        }
        let again = room.run(RECOMMEND);
        assert_eq!(again.status, Some(0), "{call}: {}", again.err);
        assert_eq!(left(&room), (Left::New, strays), "{call}: the next run is not hindered");
    }
    use Left::{New, Nothing, Old};
    assert_eq!(seen, [Old, Old, Old, Old, Nothing, New, New]);
}

#[test]
fn killed_at_any_time_leaves_one_whole_folder() {
    let began = Instant::now();
    assert_eq!(room().run(RECOMMEND).status, Some(0));
    let whole = began.elapsed();
    let room = room();
    for part in 0..6 {
        let mut child = room.program(RECOMMEND).stderr(Stdio::null()).spawn().expect("it starts");
        sleep(whole * part / 6);
        child.kill().expect("it is killed or has ended");
        child.wait().expect("it ends");
        // what earlier kills left is there when the next one comes
        left(&room);
    }
    let (_, strays) = left(&room);
    let again = room.run(RECOMMEND);
    assert_eq!(again.status, Some(0), "{}", again.err);
    assert_eq!(left(&room), (Left::New, strays), "the next run is not hindered");
}

#[test]
fn killed_while_it_writes_leaves_one_whole_folder() {
    let mut in_the_middle = 0;
    for delay in [0, 2, 8, 24, 64] {
        let room = room();
        let mut child = room.program(RECOMMEND).stderr(Stdio::null()).spawn().expect("it starts");
        while room.strays().is_empty() && child.try_wait().expect("it can be asked").is_none() {
            sleep(Duration::from_micros(200));
        }
        sleep(Duration::from_millis(delay));
        child.kill().expect("it is killed or has ended");
        child.wait().expect("it ends");
        let (what, strays) = left(&room);
        in_the_middle += usize::from(!strays.is_empty());
        if what == Left::Nothing {
            assert!(kept(&room, &strays[0]) == IN_PEACE.1, "the old folder is in the temporary one");
        }
    }
    assert!(in_the_middle > 0, "none of the kills met the program while it wrote");
    // an audit agrees that the new folder is whole
    let room = room();
    fs::remove_dir_all(room.path("out")).expect("it goes");
    let run = room.run(RECOMMEND);
    assert_eq!(run.status, Some(0), "{}", run.err);
    let audit = room.run(&["audit", "out"]);
    assert_eq!(audit.status, Some(0), "{}{}", audit.out, audit.err);
}
