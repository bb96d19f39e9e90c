//! The computations in hand: bounded in number and time, and ended when nobody waits for them any more.
//!
//! Method: each computation runs on a thread of its own and holds a permit until it has really ended. Whoever waits holds a guard;
//! when the connection is closed or the time is over the guard is dropped, which sets the mark that the search looks at. A few whole
//! records are kept, so that one answer can be taken away in several forms.
//! Limits: what waits for a permit waits in the order in which it came.

use crate::pipeline::Memory;
use crate::record::DecisionRecord;
use crate::search::Stop;
use std::collections::VecDeque;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;
use tokio::sync::Semaphore;

/// Computations at a time; each uses every core.
const AT_A_TIME: usize = 2;
/// Computations that may wait.
const MOST_WAITING: usize = 256;
/// Records that are kept.
const KEPT: usize = 3;

/// Why a computation gave nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refused {
    /// Too many wait already.
    Busy,
    /// It took too long.
    TooLong,
    /// It broke; a fault of ours.
    Broken,
}

impl Refused {
    /// What a visitor is told.
    pub fn words(self) -> &'static str {
        match self {
            Refused::Busy => "too many answers are being worked out at the moment; try again in a few seconds",
            Refused::TooLong => "this took longer than the page waits; the command line has no such limit",
            Refused::Broken => "this is a fault of axiswright, not of your input; the terminal says more",
        }
    }
}

/// A record that is kept, by what it was made of.
struct Kept {
    text: String,
    asked: bool,
    record: Arc<DecisionRecord>,
}

/// The computations in hand.
pub struct Work {
    permits: Arc<Semaphore>,
    waiting: AtomicUsize,
    kept: Mutex<VecDeque<Kept>>,
    /// What sketches came to.
    pub memory: Memory,
}

impl std::fmt::Debug for Work {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.debug_struct("Work").field("waiting", &self.waiting).finish_non_exhaustive()
    }
}

impl Default for Work {
    fn default() -> Work {
        Work {
            permits: Arc::new(Semaphore::new(AT_A_TIME)),
            waiting: AtomicUsize::new(0),
            kept: Mutex::default(),
            memory: Memory::default(),
        }
    }
}

/// Sets the mark when nobody waits any more.
struct Waits(Arc<Stop>);

impl Drop for Waits {
    fn drop(&mut self) {
        self.0.now();
    }
}

/// Counts one that waits.
struct Counted<'w>(&'w AtomicUsize);

impl Drop for Counted<'_> {
    fn drop(&mut self) {
        self.0.fetch_sub(1, Ordering::Relaxed);
    }
}

impl Work {
    /// Runs a computation as soon as there is room; what it gives, unless it was stopped or took too long.
    pub async fn run<T: Send + 'static>(
        &self,
        most: Duration,
        work: impl FnOnce(&Stop) -> Option<T> + Send + 'static,
    ) -> Result<T, Refused> {
        let waiting = self.waiting.fetch_add(1, Ordering::Relaxed);
        let counted = Counted(&self.waiting);
        if waiting >= MOST_WAITING {
            return Err(Refused::Busy);
        }
        let permits = self.permits.clone();
        let permit = tokio::time::timeout(most, permits.acquire_owned()).await;
        let permit = permit.map_err(|_| Refused::Busy)?.map_err(|_| Refused::Broken)?;
        drop(counted);
        let waits = Waits(Arc::new(Stop::default()));
        let stop = waits.0.clone();
        let running = tokio::task::spawn_blocking(move || {
            let found = work(&stop);
            drop(permit);
            found
        });
        match tokio::time::timeout(most, running).await {
            Ok(Ok(Some(found))) => Ok(found),
            Ok(Ok(None)) | Err(_) => Err(Refused::TooLong),
            Ok(Err(_)) => Err(Refused::Broken),
        }
    }

    /// The record of this brief, if it is kept.
    pub fn kept(&self, text: &str, asked: bool) -> Option<Arc<DecisionRecord>> {
        let kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let fits = |kept: &&Kept| kept.asked == asked && kept.text == text;
        kept.iter().find(fits).map(|kept| kept.record.clone())
    }

    /// Keeps a record in place of the oldest.
    pub fn keep(&self, text: &str, asked: bool, record: Arc<DecisionRecord>) {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.retain(|kept| kept.asked != asked || kept.text != text);
        kept.push_back(Kept { text: text.into(), asked, record });
        while kept.len() > KEPT {
            kept.pop_front();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn what_nobody_waits_for_is_stopped_and_gives_its_permit_back() {
        let work = Arc::new(Work::default());
        let until_stopped = |stop: &Stop| {
            while !stop.asked() {
                std::thread::sleep(Duration::from_millis(1));
            }
            None::<()>
        };
        let visit = |work: Arc<Work>| async move { work.run(Duration::from_secs(600), until_stopped).await };
        let visits: Vec<_> = (0..AT_A_TIME).map(|_| tokio::spawn(visit(work.clone()))).collect();
        while work.permits.available_permits() > 0 {
            tokio::task::yield_now().await;
        }
        for visit in visits {
            visit.abort();
            assert!(visit.await.is_err_and(|ended| ended.is_cancelled()));
        }
        assert_eq!(work.run(Duration::from_secs(60), |_| Some(7)).await, Ok(7), "Busy: a permit is still held");
        assert_eq!(work.waiting.load(Ordering::Relaxed), 0);
    }

    #[tokio::test]
    async fn what_breaks_is_told_and_the_next_one_runs() {
        let work = Work::default();
        let broken = work.run(Duration::from_secs(600), |_| -> Option<()> { std::panic::resume_unwind(Box::new(())) });
        assert_eq!(broken.await, Err(Refused::Broken));
        for _ in 0..AT_A_TIME {
            assert_eq!(work.run(Duration::from_secs(600), |_| Some(7)).await, Ok(7));
        }
    }
}
