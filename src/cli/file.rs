//! Writing one file whole or not at all.
//!
//! Method: the text goes into a temporary file beside the target, is synced, and one rename puts it in place. A file that
//! is there stays unless the caller was told to replace it. A link stays a link, and what is no file, such as a device or a
//! pipe, is written to as it is.
//! Limits: where a file appears between look and rename on a system without a rename that refuses, the later one wins.

use super::{Failure, stop};
use std::fs::File;
use std::io::Write;
use std::path::Path;

/// Writes a file; one that is there is replaced only if that is wanted.
pub fn write(target: &Path, content: &[u8], replace: bool) -> Result<(), Failure> {
    let refused = |cause: std::io::Error| Failure::Input(format!("`{}` cannot be written: {cause}", target.display()));
    let place = match std::fs::metadata(target) {
        Ok(found) if replace && !found.is_file() && !found.is_dir() => {
            return File::options()
                .write(true)
                .open(target)
                .and_then(|mut file| file.write_all(content))
                .map_err(refused);
        }
        Ok(_) if replace => target.canonicalize().map_err(refused)?,
        _ => target.to_path_buf(),
    };
    let parent = match place.parent() {
        Some(parent) if parent.as_os_str().is_empty() => Path::new("."),
        Some(parent) => parent,
        None => Path::new("."),
    };
    let held = stop::writing();
    std::fs::create_dir_all(parent).map_err(refused)?;
    let mut file = tempfile::Builder::new().prefix(".axiswright-").tempfile_in(parent).map_err(refused)?;
    file.write_all(content).and_then(|()| file.as_file().sync_all()).map_err(refused)?;
    readable(file.as_file()).map_err(refused)?;
    let done = match replace {
        true => file.persist(&place),
        false => file.persist_noclobber(&place),
    };
    drop(held);
    match done {
        Ok(_) => Ok(()),
        Err(error) if error.error.kind() == std::io::ErrorKind::AlreadyExists => Err(is_there(target)),
        Err(error) => Err(refused(error.error)),
    }
}

/// The refusal to write over a file.
pub fn is_there(target: &Path) -> Failure {
    let name = target.display();
    Failure::Input(format!("`{name}` is there already and stays as it is; name another file, or say --replace"))
}

/// A temporary file is private; a result is as readable as any new file.
#[cfg(unix)]
fn readable(file: &std::fs::File) -> std::io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    file.set_permissions(std::fs::Permissions::from_mode(0o644))
}

#[cfg(not(unix))]
fn readable(_: &std::fs::File) -> std::io::Result<()> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_is_there_stays_unless_replacing_is_wanted() {
        let room = tempfile::tempdir().expect("a folder");
        let target = room.path().join("below/one.yaml");
        write(&target, b"first", false).expect("written");
        let refused = write(&target, b"second", false);
        let told = |message: &str| message.contains("is there already") && message.contains("--replace");
        assert!(matches!(&refused, Err(Failure::Input(message)) if told(message)), "{refused:?}");
        assert_eq!(std::fs::read(&target).expect("text"), b"first");
        write(&target, b"second", true).expect("replaced");
        assert_eq!(std::fs::read(&target).expect("text"), b"second");
        let left = std::fs::read_dir(room.path().join("below")).expect("a folder").count();
        assert_eq!(left, 1, "no temporary file is left");
    }
}
