//! Tools of the system that put faults where they are wanted, as far as they are there.

use crate::room::Room;
use assert_cmd::cargo::cargo_bin;
use std::process::{Command, Stdio};

fn works(name: &str, words: &[&str]) -> bool {
    let run = Command::new(name).args(words).stdout(Stdio::null()).stderr(Stdio::null()).status();
    let works = run.is_ok_and(|status| status.success());
    if !works {
        println!("left out: `{name} {}` does not work here", words.join(" "));
    }
    works
}

/// A script in which disks may be mounted that are gone when it ends; `$P` is the program, `$1` … the words.
pub fn in_namespace(room: &Room, script: &str, words: &[&str]) -> Option<Command> {
    let ways: [&[&str]; 2] = [&["--mount"], &["--mount", "--map-root-user"]];
    let disk = "mount -t tmpfs none /mnt && mount -t tmpfs -o ro none /mnt";
    let way = ways.into_iter().find(|way| works("unshare", &[way, &["sh", "-c", disk][..]].concat()))?;
    let mut command = Command::new("unshare");
    command.args(way).args(["sh", "-c", script, "sh"]).args(words);
    command.current_dir(room.path("")).env("P", cargo_bin("axiswright")).env_remove("RUST_BACKTRACE");
    Some(command)
}

/// The program with a fault at certain calls of the system, as `strace` words it: `/^rename:error=ENOSPC:when=2`.
pub fn with_fault(room: &Room, faults: &[&str], words: &[&str]) -> Option<Command> {
    if !works("strace", &["-qq", "-o", "/dev/null", "true"]) {
        return None;
    }
    let mut command = Command::new("strace");
    command.args(["-qq", "-o", "/dev/null"]);
    let calls: Vec<&str> = faults.iter().map(|fault| fault.split(':').next().unwrap_or(fault)).collect();
    command.args(["-e", &format!("trace={}", calls.join(","))]);
    for fault in faults {
        command.args(["-e", &format!("inject={fault}")]);
    }
    command.arg(cargo_bin("axiswright")).args(words).current_dir(room.path("")).env_remove("RUST_BACKTRACE");
    Some(command)
}
