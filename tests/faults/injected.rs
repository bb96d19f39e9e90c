//! A fault at one certain call of the system while a folder or a file is put in its place.

use crate::room::{FILES, IN_PEACE, RECOMMEND, Room, Run, folder};
use crate::tools::with_fault;
use std::path::Path;

fn run(room: &Room, faults: &[&str], words: &[&str]) -> Option<Run> {
    Some(Run::of(with_fault(room, faults, words)?.output().expect("it runs")))
}

#[test]
fn whatever_call_fails_the_earlier_folder_stays_and_nothing_beside_it() {
    // the temporary folder and that of the result are the first two; then the folders in it
    let faults = [
        ("/^mkdir:error=EACCES:when=1", "Permission denied"),
        ("/^mkdir:error=ENOSPC:when=2", "No space left on device"),
        ("/^mkdir:error=EDQUOT:when=5", "quota"),
        ("fsync:error=EIO:when=1", "Input/output error"),
        ("fsync:error=EIO:when=40", "Input/output error"),
        ("/^rename:error=EACCES:when=1", "Permission denied"),
        ("/^rename:error=EIO:when=2", "Input/output error"),
    ];
    for (fault, words) in faults {
        let room = Room::new();
        room.put("out", &IN_PEACE.1);
        let Some(run) = run(&room, &[fault], RECOMMEND) else { return };
        run.tells(2, "`out` cannot be written: ");
        assert!(run.err.to_lowercase().contains(&words.to_lowercase()), "{fault}: {}", run.err);
        assert!(folder(&room.path("out")) == IN_PEACE.1, "{fault}: the earlier folder is whole");
        assert_eq!(room.strays(), Vec::<String>::new(), "{fault}");
    }
}

#[test]
fn an_earlier_folder_that_cannot_be_moved_back_is_kept_and_named() {
    let room = Room::new();
    room.put("out", &IN_PEACE.1);
    let Some(run) = run(&room, &["/^rename:error=EIO:when=2+"], RECOMMEND) else { return };
    run.tells(3, "the earlier folder is kept at `");
    let kept = run.err.split("is kept at `").nth(1).and_then(|rest| rest.split('`').next()).expect("a place");
    assert!(folder(&room.path(kept)) == IN_PEACE.1, "{kept} holds it");
    assert!(Path::new(kept).components().any(|part| part.as_os_str().to_string_lossy().starts_with(".axiswright-")));
}

#[test]
fn a_file_is_whole_or_as_it_was() {
    let words = [FILES[0], &["out", "--replace"]].concat();
    for fault in ["fsync:error=EIO:when=1", "/^rename:error=EIO:when=1", "/^fchmod:error=EPERM:when=1"] {
        let room = Room::new();
        std::fs::write(room.path("out"), "mine").expect("a file");
        let Some(run) = run(&room, &[fault], &words) else { return };
        run.tells(2, "`out` cannot be written: ");
        assert_eq!(std::fs::read_to_string(room.path("out")).expect("the file"), "mine", "{fault}");
        assert_eq!(room.strays(), Vec::<String>::new(), "{fault}");
    }
}
