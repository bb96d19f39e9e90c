//! How far a long command is, on stderr while it works.
//!
//! Method: a thread of its own looks five times a second at a counter and writes one line over itself, from the first
//! second on; at the end the line is wiped. It writes only to a terminal and never when quiet, so nothing of it reaches
//! a file. Limits: what has no count shows the seconds alone.

use super::Console;
use std::io::{self, IsTerminal, Write};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc::{self, RecvTimeoutError, Sender};
use std::thread::{self, JoinHandle};
use std::time::{Duration, Instant};

/// Nothing is shown before.
const PATIENCE: Duration = Duration::from_secs(1);
/// Time between two looks.
const BEAT: Duration = Duration::from_millis(200);
/// Clears the line and goes to its beginning.
const WIPE: &str = "\r\u{1b}[K";

/// A line on stderr that tells how far a command is; it goes when this is dropped.
#[derive(Debug)]
pub struct Progress {
    count: Arc<Count>,
    /// Dropping the sender ends the thread.
    writer: Option<(Sender<()>, JoinHandle<()>)>,
}

#[derive(Debug, Default)]
struct Count {
    done: AtomicUsize,
    all: AtomicUsize,
}

impl Progress {
    /// Begins to tell; the words say what is being done: "searching".
    pub fn begin(console: &Console, words: &'static str) -> Progress {
        let count = Arc::new(Count::default());
        let writer = (!console.is_quiet() && io::stderr().is_terminal())
            .then(|| {
                let (stop, stopped) = mpsc::channel();
                let seen = Arc::clone(&count);
                let work = move || {
                    let began = Instant::now();
                    let mut shown = false;
                    while stopped.recv_timeout(BEAT) == Err(RecvTimeoutError::Timeout) {
                        if began.elapsed() >= PATIENCE {
                            shown = true;
                            let (done, all) = (seen.done.load(Ordering::Relaxed), seen.all.load(Ordering::Relaxed));
                            write(&format!("{WIPE}{}", line(words, done, all, began.elapsed().as_secs())));
                        }
                    }
                    if shown {
                        write(WIPE);
                    }
                };
                // without a thread there is no line, and nothing else is lost
                thread::Builder::new().spawn(work).ok().map(|thread| (stop, thread))
            })
            .flatten();
        Progress { count, writer }
    }

    /// Notes how many parts of how many are done; the largest count stays.
    pub fn set(&self, done: usize, all: usize) {
        self.count.all.store(all, Ordering::Relaxed);
        self.count.done.fetch_max(done, Ordering::Relaxed);
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some((stop, thread)) = self.writer.take() {
            drop(stop);
            let _ = thread.join();
        }
    }
}

/// Wipes the line of a program that is stopped, where there may be one.
pub fn wipe_at_the_end() {
    if io::stderr().is_terminal() {
        write(WIPE);
    }
}

fn line(words: &str, done: usize, all: usize, seconds: u64) -> String {
    if all > 0 { format!("{words}: {done} of {all}, {seconds} s") } else { format!("{words}: {seconds} s") }
}

/// Writes to stderr; there is nobody left to tell if that fails.
fn write(text: &str) {
    let mut stream = io::stderr().lock();
    let _ = stream.write_all(text.as_bytes()).and_then(|()| stream.flush());
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_line_tells_parts_where_they_are_counted() {
        assert_eq!(line("searching", 3, 12, 4), "searching: 3 of 12, 4 s");
        assert_eq!(line("searching", 0, 0, 4), "searching: 4 s");
    }

    #[test]
    fn away_from_a_terminal_nothing_is_written_and_the_end_does_not_wait() {
        let progress = Progress::begin(&Console::new(true), "searching");
        progress.set(2, 3);
        progress.set(1, 3);
        assert!(progress.writer.is_none(), "a quiet console has no line");
        assert_eq!(progress.count.done.load(Ordering::Relaxed), 2, "parts may be noted out of order");
    }
}
