//! Long work that belongs to a state of things: begun when that state has been still for a moment, called off when it
//! changes, and the last result kept to be shown meanwhile.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use egui::{Context, ProgressBar, Ui};

use super::job::{Job, Progress};
use crate::settle::Cancelled;

/// Work takes the sign that calls it off, and tells how far it is, 0 to 1.
pub type Work<T> =
    Box<dyn FnOnce(&AtomicBool, &(dyn Fn(f64) + Sync)) -> Result<T, Cancelled> + Send>;

/// Work that takes longer shows how far it is.
const QUIET: Duration = Duration::from_millis(250);
/// How often its progress is painted.
const TICK: Duration = Duration::from_millis(100);

struct Running<K, T> {
    job: Job<Result<T, Cancelled>>,
    key: K,
    cancel: Arc<AtomicBool>,
    /// The share done, as the bits of a number.
    share: Arc<AtomicU64>,
    begun: Instant,
}

/// Work on states of things told apart by `K`.
pub struct LongWork<K, T> {
    /// The name of its thread.
    name: &'static str,
    running: Option<Running<K, T>>,
    result: Option<(K, T)>,
    /// What is wanted next, and since when.
    awaited: Option<(K, Instant)>,
    called_off: Option<K>,
    fault: Option<String>,
}

impl<K, T> Drop for LongWork<K, T> {
    fn drop(&mut self) {
        if let Some(running) = &self.running {
            running.cancel.store(true, Ordering::Relaxed);
        }
    }
}

impl<K: Clone + PartialEq, T: Send + 'static> LongWork<K, T> {
    /// Nothing begun yet; `name` is that of the thread.
    pub const fn new(name: &'static str) -> Self {
        Self {
            name,
            running: None,
            result: None,
            awaited: None,
            called_off: None,
            fault: None,
        }
    }

    /// Sees to it that the result for `key` comes: at once if it is there, else after `key` has been wanted for as long
    /// as `still`. Work on any other state is called off.
    pub fn want(
        &mut self,
        context: &Context,
        key: &K,
        still: Duration,
        work: impl FnOnce() -> Work<T>,
    ) {
        self.poll();
        if self.running.as_ref().is_some_and(|one| one.key != *key) {
            self.stop();
        }
        if self.is_known(key) || self.is_running() || self.called_off.as_ref() == Some(key) {
            return;
        }
        let since = match &self.awaited {
            Some((awaited, since)) if awaited == key => *since,
            Some(_) | None => {
                let now = Instant::now();
                self.awaited = Some((key.clone(), now));
                now
            }
        };
        match still.checked_sub(since.elapsed()) {
            Some(left) if !left.is_zero() => context.request_repaint_after(left),
            Some(_) | None => self.begin(context, key.clone(), work()),
        }
    }

    /// Begins work now, whatever is going on.
    pub fn begin(&mut self, context: &Context, key: K, work: Work<T>) {
        self.stop();
        self.awaited = None;
        self.called_off = None;
        let cancel = Arc::new(AtomicBool::new(false));
        let share = Arc::new(AtomicU64::new(0));
        let (sign, done) = (Arc::clone(&cancel), Arc::clone(&share));
        let job = Job::begin(self.name, context, move || {
            // Parts that are finished out of order must not make the bar go back.
            work(&sign, &|share| {
                done.fetch_max(share.clamp(0.0, 1.0).to_bits(), Ordering::Relaxed);
            })
        });
        match job {
            Ok(job) => {
                self.fault = None;
                self.running = Some(Running {
                    job,
                    key,
                    cancel,
                    share,
                    begun: Instant::now(),
                });
            }
            Err(error) => self.fault = Some(format!("The system gives no thread: {error}.")),
        }
    }

    /// Takes the result, if there is one.
    pub fn poll(&mut self) {
        let Some(running) = &self.running else { return };
        match running.job.poll() {
            Progress::Working => return,
            Progress::Done(Ok(result)) => self.result = Some((running.key.clone(), result)),
            Progress::Done(Err(Cancelled)) => self.called_off = Some(running.key.clone()),
            Progress::BrokenOff => {
                self.called_off = Some(running.key.clone());
                self.fault = Some("The work broke off; begin it again.".to_owned());
            }
        }
        self.running = None;
    }

    /// Lets go of work that nobody waits for any more.
    fn stop(&mut self) {
        if let Some(running) = self.running.take() {
            running.cancel.store(true, Ordering::Relaxed);
        }
    }

    /// The last result with the state it belongs to.
    pub fn result(&self) -> Option<(&K, &T)> {
        self.result.as_ref().map(|(key, result)| (key, result))
    }

    /// Whether the last result belongs to this state.
    pub fn is_known(&self, key: &K) -> bool {
        self.result.as_ref().is_some_and(|(known, _)| known == key)
    }

    /// Whether work is going on.
    pub const fn is_running(&self) -> bool {
        self.running.is_some()
    }

    /// Whether work on this state was called off.
    pub fn is_called_off(&self, key: &K) -> bool {
        self.called_off.as_ref() == Some(key)
    }

    /// Forgets the last result.
    pub fn forget(&mut self) {
        self.stop();
        self.result = None;
        self.called_off = None;
    }

    /// Whether work has gone on for long enough to be told of; then it is told of again soon.
    pub fn is_long(&self, context: &Context) -> bool {
        let Some(running) = &self.running else {
            return false;
        };
        // Wakes only while work goes on.
        context.request_repaint_after(TICK);
        running.begun.elapsed() >= QUIET
    }

    /// How far it is and the way to call it off, once it takes long; what went wrong.
    pub fn progress_ui(&self, ui: &mut Ui, what: &str) {
        if let Some(fault) = &self.fault {
            ui.label(fault);
        }
        if !self.is_long(ui.ctx()) {
            return;
        }
        let Some(running) = &self.running else { return };
        let share = f64::from_bits(running.share.load(Ordering::Relaxed));
        ui.horizontal(|ui| {
            let stop = ui
                .small_button("Call it off")
                .accessible_name(format!("Call off {what}"));
            if stop.clicked() {
                running.cancel.store(true, Ordering::Relaxed);
            }
            let width = ui.available_width().min(140.0);
            ui.add(
                ProgressBar::new(single(share))
                    .desired_width(width)
                    .show_percentage(),
            );
        });
    }
}

/// A share as the screen takes it.
#[expect(clippy::cast_possible_truncation, reason = "a share on the screen")]
fn single(share: f64) -> f32 {
    share.clamp(0.0, 1.0) as f32
}

#[cfg(test)]
mod tests {
    use super::*;

    const AT_ONCE: Duration = Duration::ZERO;

    fn waits_for_the_sign() -> Work<u32> {
        Box::new(|cancel, told| {
            told(0.5);
            while !cancel.load(Ordering::Relaxed) {
                std::thread::yield_now();
            }
            Err(Cancelled)
        })
    }

    fn until(work: &mut LongWork<u32, u32>, is_so: impl Fn(&LongWork<u32, u32>) -> bool) {
        let begun = Instant::now();
        while !is_so(work) {
            assert!(begun.elapsed() < Duration::from_secs(20));
            work.poll();
            std::thread::yield_now();
        }
    }

    #[test]
    fn a_new_state_calls_the_work_on_the_old_one_off() {
        let (mut work, context) = (LongWork::new("test"), Context::default());
        work.want(&context, &1, AT_ONCE, waits_for_the_sign);
        let old = Arc::clone(&work.running.as_ref().unwrap().cancel);
        work.want(&context, &2, AT_ONCE, || Box::new(|_, _| Ok(22)));
        assert!(old.load(Ordering::Relaxed));
        until(&mut work, |work| work.is_known(&2));
        assert_eq!(work.result(), Some((&2, &22)));
        // The old result stays in sight while the next one is worked.
        work.want(&context, &3, AT_ONCE, waits_for_the_sign);
        assert_eq!(work.result(), Some((&2, &22)));
        assert!(!work.is_known(&3) && work.is_running());
    }

    #[test]
    fn what_was_called_off_is_not_begun_again_by_itself() {
        let (mut work, context) = (LongWork::<u32, u32>::new("test"), Context::default());
        work.want(&context, &1, AT_ONCE, waits_for_the_sign);
        work.running
            .as_ref()
            .unwrap()
            .cancel
            .store(true, Ordering::Relaxed);
        until(&mut work, |work| work.is_called_off(&1));
        work.want(&context, &1, AT_ONCE, || unreachable!());
        assert!(!work.is_running());
        work.begin(&context, 1, Box::new(|_, _| Ok(11)));
        until(&mut work, |work| work.is_known(&1));
    }

    #[test]
    fn a_state_that_does_not_keep_still_is_not_worked_on() {
        let (mut work, context) = (LongWork::<u32, u32>::new("test"), Context::default());
        let long = Duration::from_hours(1);
        for state in 0..5 {
            work.want(&context, &state, long, || unreachable!());
        }
        assert!(!work.is_running());
    }
}
