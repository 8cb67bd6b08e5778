//! One target being tried for a while: what to change is drawn from a pool, what came to something new goes into it.

use std::collections::{BTreeMap, HashSet};
use std::env;
use std::panic::{self, AssertUnwindSafe, catch_unwind};
use std::sync::Mutex;
use std::time::{Duration, Instant};

use crate::dice::Dice;
use crate::outcome::Outcome;

/// The most inputs that a pool holds: beyond it new ones take the places of older ones.
const POOL: usize = 4096;
/// One input may not take longer, ten thousand times what a design takes: a hang, not a busy machine.
const LONGEST: Duration = Duration::from_secs(20);
/// So many faults are gathered before a campaign ends by itself.
const FAULTS: usize = 20;

/// How long, and from where.
fn seconds() -> f64 {
    let asked = env::var("FLANGEWRIGHT_FUZZ_SECONDS").ok();
    asked.and_then(|words| words.parse().ok()).unwrap_or(2.0)
}

fn seed() -> u64 {
    let asked = env::var("FLANGEWRIGHT_FUZZ_SEED").ok();
    asked.and_then(|words| words.parse().ok()).unwrap_or(1)
}

/// Where the last panic of this thread stood, told by the hook below.
static PLACES: Mutex<BTreeMap<String, String>> = Mutex::new(BTreeMap::new());

fn thread_name() -> String {
    format!("{:?}", std::thread::current().id())
}

fn note_panics() {
    static ONCE: std::sync::Once = std::sync::Once::new();
    ONCE.call_once(|| {
        let before = panic::take_hook();
        panic::set_hook(Box::new(move |facts| {
            let place = facts.location().map(ToString::to_string);
            let mut places = PLACES.lock().unwrap();
            if let Some(said) = places.get_mut(&thread_name()) {
                *said = format!("{}\n{facts}", place.unwrap_or_default());
            } else {
                drop(places);
                before(facts);
            }
        }));
    });
}

/// Runs `try_one` and gives what it came to, or where it panicked.
fn guarded<T>(try_one: impl FnOnce() -> T) -> Result<T, String> {
    PLACES.lock().unwrap().insert(thread_name(), String::new());
    let done = catch_unwind(AssertUnwindSafe(try_one));
    let said = PLACES.lock().unwrap().remove(&thread_name());
    done.map_err(|_| said.unwrap_or_default())
}

/// Tries a target until its time is up, then tells how often and what was found.
///
/// `change` makes an input out of the pool; `try_one` panics where the target does what it must not, and gives the
/// outcome else; `show` writes an input down so that it can be tried again.
pub fn campaign<T: Clone>(
    name: &str,
    mut pool: Vec<T>,
    mut change: impl FnMut(&mut Dice, &[T]) -> T,
    mut try_one: impl FnMut(&T) -> Outcome,
    show: impl Fn(&T) -> String,
) {
    note_panics();
    let mut dice = Dice::new(seed());
    let (begun, patience) = (Instant::now(), Duration::from_secs_f64(seconds()));
    let mut outcomes = HashSet::new();
    let mut faults: BTreeMap<String, String> = BTreeMap::new();
    let (mut tried, mut slowest) = (0_u64, Duration::ZERO);
    let mut corpus = pool.clone().into_iter();
    while (begun.elapsed() < patience || corpus.len() > 0) && faults.len() < FAULTS {
        // The corpus itself comes first: what once was a fault stays tried.
        let input = corpus.next().unwrap_or_else(|| change(&mut dice, &pool));
        let start = Instant::now();
        let done = guarded(|| try_one(&input));
        let took = start.elapsed();
        tried += 1;
        slowest = slowest.max(took);
        if took > LONGEST {
            faults.insert(format!("took {took:?}"), show(&input));
        }
        match done {
            Ok(outcome) if outcomes.insert(outcome) => {
                if pool.len() < POOL {
                    pool.push(input);
                } else {
                    let place = dice.below(pool.len());
                    pool[place] = input;
                }
            }
            Ok(_) => {}
            Err(place) => {
                // The first input of a place is enough.
                let line = place.lines().next().unwrap_or_default().to_owned();
                faults
                    .entry(line)
                    .or_insert_with(|| format!("{place}\n{}", show(&input)));
            }
        }
    }
    println!(
        "{name}: {tried} tried in {:.0} s, {} outcomes, slowest {slowest:.0?}, {} faults",
        begun.elapsed().as_secs_f64(),
        outcomes.len(),
        faults.len()
    );
    let told: Vec<String> = faults
        .iter()
        .map(|(place, input)| format!("{place}\n{input}"))
        .collect();
    assert!(faults.is_empty(), "{name}:\n{}", told.join("\n\n"));
}
