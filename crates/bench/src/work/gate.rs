//! How many jobs go on at once.

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::Duration;

/// So many: a search and a pack, of whatever style.
pub(crate) const AT_ONCE: usize = 2;

/// How often somebody who waits looks whether the job is still wanted.
const LOOK_EVERY: Duration = Duration::from_millis(100);

/// Lets so many in at once.
#[derive(Default)]
pub(crate) struct Gate {
    inside: Mutex<usize>,
    freed: Condvar,
}

/// A place inside, until it is dropped.
pub(crate) struct Permit(Arc<Gate>);

impl Gate {
    /// Waits for a place; `None` when the job is no longer wanted before there is one.
    pub(crate) fn enter(self: &Arc<Self>, cancel: &AtomicBool) -> Option<Permit> {
        let mut inside = self.inside.lock().unwrap_or_else(PoisonError::into_inner);
        loop {
            if cancel.load(Ordering::Relaxed) {
                return None;
            }
            if *inside < AT_ONCE {
                *inside += 1;
                return Some(Permit(Arc::clone(self)));
            }
            let waited = self.freed.wait_timeout(inside, LOOK_EVERY);
            inside = waited.unwrap_or_else(PoisonError::into_inner).0;
        }
    }
}

impl Drop for Permit {
    fn drop(&mut self) {
        let mut inside = self.0.inside.lock().unwrap_or_else(PoisonError::into_inner);
        *inside = inside.saturating_sub(1);
        self.0.freed.notify_one();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_more_waits_until_a_place_is_free_or_it_is_cancelled() {
        let gate = Arc::new(Gate::default());
        let (wanted, cancelled) = (AtomicBool::new(false), AtomicBool::new(true));
        let mut places: Vec<Permit> = (0..AT_ONCE).filter_map(|_| gate.enter(&wanted)).collect();
        assert_eq!(places.len(), AT_ONCE);
        assert!(gate.enter(&cancelled).is_none());
        let (other, told) = (Arc::clone(&gate), std::sync::mpsc::channel());
        let waiting = std::thread::spawn(move || {
            let permit = other.enter(&AtomicBool::new(false));
            told.0.send(permit.is_some()).is_ok()
        });
        assert!(told.1.recv_timeout(LOOK_EVERY * 3).is_err());
        places.pop();
        assert_eq!(told.1.recv(), Ok(true));
        assert!(matches!(waiting.join(), Ok(true)));
    }
}
