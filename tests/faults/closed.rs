//! A reader that has gone, and a stdout that takes nothing.

use crate::room::{FOLDERS, IN_PEACE, PRINTING, Room, Run};
use std::fs::File;
use std::path::Path;
use std::process::Stdio;

fn room() -> Room {
    let room = Room::new();
    room.put("out", &IN_PEACE.0);
    room
}

#[test]
fn a_pipe_that_is_closed_early_ends_a_command_in_peace() {
    let room = room();
    for words in PRINTING {
        let in_peace = room.run(words);
        assert!(in_peace.out.len() > 20, "{words:?} prints: {}", in_peace.err);
        let mut child = room.program(words).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("it starts");
        drop(child.stdout.take());
        let run = Run::of(child.wait_with_output().expect("it ends"));
        assert_eq!((run.status, &run.err), (in_peace.status, &in_peace.err), "{words:?}");
    }
}

#[test]
fn nobody_who_reads_messages_changes_nothing() {
    let room = room();
    let cases: &[&[&str]] = &[
        &[FOLDERS[0], &["out"]].concat(),
        &["recommend", "none.yaml"],
        &["catalog", "show", "none"],
        &["--wrong"],
        &["new", "--ask"],
    ];
    for words in cases {
        let in_peace = room.program(words).stdin(Stdio::null()).output().expect("it runs").status.code();
        let mut child = room.program(words);
        child.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = child.spawn().expect("it starts");
        drop((child.stdout.take(), child.stderr.take()));
        assert_eq!(child.wait().expect("it ends").code(), in_peace, "{words:?}");
    }
}

#[test]
fn a_result_that_cannot_be_printed_is_a_failure() {
    if !Path::new("/dev/full").exists() {
        println!("left out: there is no /dev/full here");
        return;
    }
    let room = room();
    for words in PRINTING {
        let full = File::options().write(true).open("/dev/full").expect("the full device");
        let run = Run::of(room.program(words).stdout(full).output().expect("it runs"));
        run.tells(3, "cannot be written: No space left on device");
    }
    // the fault is told by the status alone
    let full = || File::options().write(true).open("/dev/full").expect("the full device");
    let run = room.program(&["recommend", "none.yaml"]).stdout(full()).stderr(full()).output().expect("it runs");
    assert_eq!(run.status.code(), Some(2));
}
