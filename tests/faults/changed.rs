//! A brief that changes while the program runs.

use crate::room::{BRIEF, IN_PEACE, RECOMMEND, Room, folder, other};
use std::fs;
use std::process::Command;
use std::sync::atomic::{AtomicBool, Ordering};

#[test]
fn the_brief_is_read_once() {
    // a pipe gives its text once; who reads it a second time waits for ever or reads nothing
    let room = Room::new();
    let pipe = room.path("brief.yaml");
    fs::remove_file(&pipe).expect("it goes");
    assert!(Command::new("mkfifo").arg(&pipe).status().is_ok_and(|status| status.success()), "a pipe is made");
    let writer = std::thread::spawn(move || fs::write(pipe, BRIEF).expect("the program reads it"));
    let run = room.run(RECOMMEND);
    writer.join().expect("the writer ends");
    assert_eq!(run.status, Some(0), "{}", run.err);
    assert!(folder(&room.path("out")) == IN_PEACE.0);
}

#[test]
fn a_brief_that_changes_while_the_program_runs_gives_the_decision_of_one_of_its_texts() {
    let room = Room::new();
    let over = AtomicBool::new(false);
    std::thread::scope(|threads| {
        threads.spawn(|| {
            for turn in 0_u64.. {
                if over.load(Ordering::Relaxed) {
                    break;
                }
                let text = if turn.is_multiple_of(2) { other() } else { BRIEF.to_string() };
                fs::write(room.path("out-next"), text).expect("a text");
                fs::rename(room.path("out-next"), room.path("brief.yaml")).expect("it takes its place");
            }
        });
        let runs: Vec<_> = (0..4).map(|_| (room.run(RECOMMEND), folder(&room.path("out")))).collect();
        over.store(true, Ordering::Relaxed);
        for (run, found) in runs {
            assert_eq!(run.status, Some(0), "{}", run.err);
            // record with its hash, copy of the brief, report and pictures are those of one text
            assert!(found == IN_PEACE.0 || found == IN_PEACE.1, "a mixture of both");
        }
    });
}
