//! Disks that are full, in bytes or in names, and limits on the size of a file.

use crate::room::{FILES, FOLDERS, IN_PEACE, RECOMMEND, Room, Run, folder};
use crate::tools::in_namespace;
use std::fs;
use std::os::unix::fs::FileTypeExt;
use std::os::unix::process::ExitStatusExt;
use std::process::Command;

/// Runs the words on a small disk, then tells the status, what stands on the disk, and whether the earlier folder is whole.
const ON_SMALL_DISK: &str = r#"
options=$1; shift
mkdir -p disk && mount -t tmpfs -o "$options" none disk || exit 99
test -d out && cp -r out disk/out
"$P" "$@"; echo "status $?"
echo "holds $(ls -A disk | tr '\n' ' ')"
test -d out && diff -rq out disk/out && echo whole
exit 0
"#;

fn on_small_disk(room: &Room, options: &str, words: &[&str]) -> Option<Run> {
    let mut command = in_namespace(room, ON_SMALL_DISK, &[&[options], words].concat())?;
    Some(Run::of(command.output().expect("the script runs")))
}

#[test]
fn a_full_disk_leaves_nothing_of_a_new_folder() {
    for options in ["size=8k", "size=64k,nr_inodes=3", "size=2m", "nr_inodes=60"] {
        let words = [FOLDERS[0], &["disk/out"]].concat();
        let Some(run) = on_small_disk(&Room::new(), options, &words) else { return };
        assert_eq!(run.out.trim_end(), "status 2\nholds", "{options}: {}", run.err);
        run_tells(&run, "`disk/out` cannot be written: No space left on device");
    }
}

fn run_tells(run: &Run, words: &str) {
    assert!(run.err.starts_with("error: ") && run.err.contains(words), "{}", run.err);
}

#[test]
fn a_full_disk_leaves_an_earlier_folder_as_it_is() {
    let room = Room::new();
    room.put("out", &IN_PEACE.1);
    // the disk has room for the earlier folder and a fifth of another one
    let pages: usize = IN_PEACE.1.values().map(|content| content.len().div_ceil(4096)).sum();
    let (bytes, files) = (pages * 4096 * 6 / 5, IN_PEACE.1.len() * 6 / 5);
    for options in [format!("size={bytes}"), format!("nr_inodes={files}")] {
        let words = [FOLDERS[0], &["disk/out"]].concat();
        let Some(run) = on_small_disk(&room, &options, &words) else { return };
        assert_eq!(run.out.trim_end(), "status 2\nholds out \nwhole", "{options}: {}", run.err);
    }
}

#[test]
fn every_command_that_writes_tells_of_a_full_disk_and_leaves_nothing() {
    for words in FOLDERS.iter().chain(FILES) {
        let target = if words[0] == "man" { "disk" } else { "disk/one" };
        let words = [words, &[target][..]].concat();
        let Some(run) = on_small_disk(&Room::new(), "nr_inodes=1", &words) else { return };
        assert_eq!(run.out.trim_end(), "status 2\nholds", "{words:?}: {}", run.err);
        run_tells(&run, "cannot be written: No space left on device");
    }
}

#[test]
fn a_device_is_written_to_and_stays_a_device() {
    let room = Room::new();
    let script = r#"touch full && mount --bind /dev/full full || exit 99; "$P" "$@"; echo "status $?"; test -c full && echo device"#;
    for words in &FILES[..2] {
        let words = [words, &["full", "--replace"][..]].concat();
        let Some(mut command) = in_namespace(&room, script, &words) else { return };
        let run = Run::of(command.output().expect("the script runs"));
        assert_eq!(run.out, "status 2\ndevice\n", "{}", run.err);
        run_tells(&run, "`full` cannot be written: No space left on device");
    }
}

#[test]
fn a_pipe_is_written_to_and_a_link_stays_a_link() {
    let room = Room::new();
    let pipe = room.path("out");
    assert!(Command::new("mkfifo").arg(&pipe).status().is_ok_and(|status| status.success()), "a pipe is made");
    let reader = std::thread::spawn({
        let pipe = pipe.clone();
        move || fs::read_to_string(pipe).expect("what comes through the pipe")
    });
    let run = room.run(&["new", "--out", "out", "--replace"]);
    assert_eq!(run.status, Some(0), "{}", run.err);
    assert!(fs::symlink_metadata(&pipe).expect("the pipe").file_type().is_fifo(), "it is a pipe still");
    let through = reader.join().expect("the reader ends");

    let room = Room::new();
    fs::write(room.path("out"), "mine").expect("a file");
    std::os::unix::fs::symlink("../out", room.path("parts/link")).expect("a link");
    let run = room.run(&["new", "--out", "parts/link", "--replace"]);
    assert_eq!(run.status, Some(0), "{}", run.err);
    assert!(room.path("parts/link").is_symlink(), "the link is there still");
    assert_eq!(fs::read_to_string(room.path("out")).expect("the file"), through);
}

#[test]
fn a_limit_on_the_size_of_files_is_told_and_leaves_all_as_it_was() {
    let room = Room::new();
    room.put("out", &IN_PEACE.1);
    let script = |how: &str| format!("{how} ulimit -f 100; exec \"$0\" \"$@\"");
    let limited = |how: &str| {
        let mut command = Command::new("sh");
        command.args(["-c", &script(how)]).arg(assert_cmd::cargo::cargo_bin("axiswright")).args(RECOMMEND);
        command.current_dir(room.path("")).output().expect("it runs")
    };
    let run = Run::of(limited("trap '' XFSZ;"));
    run.tells(2, "`out` cannot be written: File too large");
    assert_eq!(room.strays(), Vec::<String>::new());
    assert!(folder(&room.path("out")) == IN_PEACE.1, "the earlier folder is whole");
    // the usual answer of the system to a file that is too large ends the program at once
    let killed = limited("");
    assert!(killed.status.signal().is_some(), "{:?}", killed.status);
    assert!(folder(&room.path("out")) == IN_PEACE.1, "the earlier folder is whole");
    let again = room.run(RECOMMEND);
    assert_eq!(again.status, Some(0), "what a killed run leaves hinders nobody: {}", again.err);
    assert!(folder(&room.path("out")) == IN_PEACE.0);
}
