//! Folders that cannot be written at all.

use crate::room::{FILES, FOLDERS, IN_PEACE, Room, Run};
use crate::tools::in_namespace;

fn target<'a>(words: &[&'a str], folder: &'a str, file: &'a str) -> Vec<&'a str> {
    let target = if words[0] == "man" { folder } else { file };
    [words, &[target]].concat()
}

#[test]
fn a_place_below_a_file_is_refused() {
    let room = Room::new();
    for words in FOLDERS.iter().chain(FILES) {
        let run = room.run(&target(words, "brief.yaml/a", "brief.yaml/a/b"));
        run.tells(2, "cannot be written: Not a directory");
        assert!(run.out.is_empty() && room.strays().is_empty(), "{words:?}");
    }
}

#[test]
fn a_disk_that_is_read_only_is_told() {
    let script = r#"mkdir disk && mount -t tmpfs -o ro none disk || exit 99; "$P" "$@"; echo "status $?""#;
    for words in FOLDERS.iter().chain(FILES) {
        let room = Room::new();
        let words = target(words, "disk", "disk/one");
        let Some(mut command) = in_namespace(&room, script, &words) else { return };
        let run = Run::of(command.output().expect("the script runs"));
        assert_eq!(run.out, "status 2\n", "{words:?}: {}", run.err);
        assert!(run.err.contains("cannot be written: Read-only file system"), "{words:?}: {}", run.err);
    }
}

#[test]
fn an_earlier_folder_on_a_disk_that_is_read_only_stays() {
    let room = Room::new();
    room.put("out", &IN_PEACE.1);
    let script = r#"
mkdir disk && mount -t tmpfs none disk && cp -r out disk/out && mount -o remount,ro disk || exit 99
"$P" "$@"; echo "status $?"; diff -rq out disk/out && echo whole; ls -A disk"#;
    let Some(mut command) = in_namespace(&room, script, &[FOLDERS[0], &["disk/out"]].concat()) else { return };
    let run = Run::of(command.output().expect("the script runs"));
    assert_eq!(run.out, "status 2\nwhole\nout\n", "{}", run.err);
    assert!(run.err.contains("`disk/out` cannot be written: Read-only file system"), "{}", run.err);
}

#[test]
fn names_that_no_disk_takes_are_refused() {
    let room = Room::new();
    let long = "n".repeat(300);
    for words in FOLDERS.iter().chain(FILES) {
        let run = room.run(&[words, &[long.as_str()][..]].concat());
        run.tells(2, "cannot be written: File name too long");
        assert!(room.strays().is_empty(), "{words:?}");
    }
}
