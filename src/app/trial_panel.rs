//! The Monte Carlo trial of the stack: off the frame, seeded, called off at will, shown as a histogram.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use egui::{ComboBox, Context, ProgressBar, RichText, Ui};
use egui_plot::{Axis, Bar, BarChart, Legend, LineStyle, Plot, Span, VLine};

use super::job::{Job, Progress};
use super::plot_grid::{mark_words, marks};
use super::view::View;
use crate::mount::{Unit, show_number};
use crate::tolerance::{Cancelled, Outcome, Stack, Trial, simulate};

/// The seed of every trial: the same design gives the same digits.
const SEED: u64 = 1;
/// Share that the interval holds.
const COVERAGE: f64 = 0.95;
/// Bars of the histogram.
const BARS: usize = 60;
/// A trial that takes longer shows how far it is.
const QUIET: Duration = Duration::from_millis(100);
/// How often its progress is painted.
const TICK: Duration = Duration::from_millis(80);
/// How many rings may be drawn.
const SAMPLES: [u32; 3] = [100_000, 1_000_000, 10_000_000];

/// A trial going on.
struct Running {
    job: Job<Result<Outcome, Cancelled>>,
    cancel: Arc<AtomicBool>,
    /// The share done, as the bits of a number.
    share: Arc<AtomicU64>,
    begun: Instant,
    revision: u64,
    limit_mm: Option<f64>,
}

/// A trial that is done.
struct Tried {
    outcome: Outcome,
    revision: u64,
    limit_mm: Option<f64>,
    took: Duration,
}

/// The panel.
pub struct TrialPanel {
    samples: u32,
    running: Option<Running>,
    tried: Option<Tried>,
    said: Option<String>,
}

impl Default for TrialPanel {
    fn default() -> Self {
        Self {
            samples: 1_000_000,
            running: None,
            tried: None,
            said: None,
        }
    }
}

impl Drop for TrialPanel {
    fn drop(&mut self) {
        if let Some(running) = &self.running {
            running.cancel.store(true, Ordering::Relaxed);
        }
    }
}

impl TrialPanel {
    /// The panel; `limit_mm` is the half depth of focus, where it is known.
    pub fn trial_ui(
        &mut self,
        ui: &mut Ui,
        view: &View<'_>,
        stack: &Stack,
        limit_mm: Option<f64>,
        revision: u64,
    ) {
        self.take_result();
        ui.label(RichText::new("Monte Carlo trial").heading());
        ui.label(
            RichText::new(format!(
                "random rings drawn from the same spreads (JCGM 101), seed {SEED}: the same design gives the same digits"
            ))
            .small(),
        );
        ui.horizontal(|ui| self.begin_ui(ui, stack, limit_mm, revision));
        if let Some(said) = &self.said {
            ui.label(said);
        }
        self.progress_ui(ui);
        let Some(tried) = &self.tried else {
            return;
        };
        if tried.revision != revision {
            ui.label(
                RichText::new("The design has changed since: run it again for the present one.")
                    .color(view.palette.caution),
            );
        }
        outcome_ui(ui, view, tried);
    }

    fn begin_ui(&mut self, ui: &mut Ui, stack: &Stack, limit_mm: Option<f64>, revision: u64) {
        let label = ui.label("Rings");
        let shown = ComboBox::from_id_salt("rings of the trial")
            .selected_text(thousands(self.samples))
            .show_ui(ui, |ui| {
                for count in SAMPLES {
                    ui.selectable_value(&mut self.samples, count, thousands(count));
                }
            });
        shown.response.labelled_by(label.id);
        let idle = self.running.is_none();
        let run = ui.add_enabled(idle, egui::Button::new("Run the trial"));
        if run.clicked() {
            self.begin(ui.ctx(), stack.clone(), limit_mm, revision);
        }
    }

    fn begin(&mut self, context: &Context, stack: Stack, limit_mm: Option<f64>, revision: u64) {
        let trial = Trial {
            samples: self.samples,
            seed: SEED,
            low_mm: f64::NEG_INFINITY,
            high_mm: limit_mm.unwrap_or(f64::INFINITY),
            coverage: COVERAGE,
        };
        let (cancel, share) = (
            Arc::new(AtomicBool::new(false)),
            Arc::new(AtomicU64::new(0)),
        );
        let (called_off, done) = (Arc::clone(&cancel), Arc::clone(&share));
        let work = move || {
            simulate(&stack, &trial, &called_off, |share| {
                done.store(share.to_bits(), Ordering::Relaxed);
            })
        };
        match Job::begin("monte carlo", context, work) {
            Ok(job) => {
                self.said = None;
                self.running = Some(Running {
                    job,
                    cancel,
                    share,
                    begun: Instant::now(),
                    revision,
                    limit_mm,
                });
            }
            Err(error) => self.said = Some(format!("The system gives no thread: {error}.")),
        }
    }

    fn take_result(&mut self) {
        let Some(running) = &self.running else { return };
        match running.job.poll() {
            Progress::Working => return,
            Progress::Done(Ok(outcome)) => {
                self.tried = Some(Tried {
                    outcome,
                    revision: running.revision,
                    limit_mm: running.limit_mm,
                    took: running.begun.elapsed(),
                });
            }
            Progress::Done(Err(cancelled)) => self.said = Some(cancelled.to_string()),
            Progress::BrokenOff => {
                self.said = Some("The trial broke off; run it again.".to_owned());
            }
        }
        self.running = None;
    }

    fn progress_ui(&self, ui: &mut Ui) {
        let Some(running) = &self.running else { return };
        // Wakes only while a trial runs.
        ui.ctx().request_repaint_after(TICK);
        if running.begun.elapsed() < QUIET {
            return;
        }
        ui.horizontal(|ui| {
            if ui.button("Call it off").clicked() {
                running.cancel.store(true, Ordering::Relaxed);
            }
            let share = f64::from_bits(running.share.load(Ordering::Relaxed));
            ui.add(ProgressBar::new(single(share)).show_percentage());
        });
    }
}

#[expect(clippy::cast_possible_truncation, reason = "a share on the screen")]
fn single(share: f64) -> f32 {
    share.clamp(0.0, 1.0) as f32
}

/// A count with thin gaps between its thousands.
fn thousands(count: u32) -> String {
    let digits = count.to_string();
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            text.push(' ');
        }
        text.push(digit);
    }
    text
}

fn outcome_ui(ui: &mut Ui, view: &View<'_>, tried: &Tried) {
    for words in told(tried) {
        ui.label(RichText::new(words).small());
    }
    let outcome = &tried.outcome;
    let total = outcome.histogram.total();
    let bars: Vec<Bar> = outcome
        .histogram
        .bins(BARS)
        .into_iter()
        .map(|bin| {
            let middle = f64::midpoint(bin.from_mm, bin.to_mm);
            let share = 100.0 * f64::from(bin.count) / total;
            Bar::new(middle, share).width(bin.to_mm - bin.from_mm)
        })
        .collect();
    let height = (ui.ctx().content_rect().height() * 0.4).clamp(220.0, 460.0);
    let plot = Plot::new("histogram of the trial")
        .height(height)
        .legend(Legend::default().follow_insertion_order(true))
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .x_grid_spacer(marks)
        .y_grid_spacer(marks)
        .x_axis_formatter(mark_words)
        .y_axis_formatter(mark_words)
        .x_axis_label("focus error, mm: ring too thin (-) or too thick (+)")
        .y_axis_label("rings, % in each bar");
    let palette = view.palette;
    let (from, to) = outcome.shortest_mm;
    plot.show(ui, |plot| {
        let interval = Span::new("95 % of the rings", from..=to)
            .axis(Axis::X)
            .fill(palette.fine.gamma_multiply(0.15))
            .border_color(palette.fine);
        plot.span(interval);
        let chart = BarChart::new("rings", bars)
            .color(palette.accent)
            .element_formatter(Box::new(|bar: &Bar, _: &BarChart| {
                format!(
                    "{} mm: {} % of the rings",
                    show_number(bar.argument, 3),
                    show_number(bar.value, 2)
                )
            }));
        plot.bar_chart(chart);
        if let Some(limit) = tried.limit_mm {
            let line = VLine::new("infinity is lost beyond", limit)
                .color(palette.clash)
                .style(LineStyle::dashed_loose())
                .width(2.0);
            plot.vline(line);
        }
    });
}

/// What the trial came to.
fn told(tried: &Tried) -> Vec<String> {
    let outcome = &tried.outcome;
    let (from, to) = outcome.shortest_mm;
    let mut lines = vec![
        format!(
            "{} rings in {} ms: mean {}, standard deviation {}",
            thousands(outcome.samples),
            tried.took.as_millis(),
            Unit::Mm.show(outcome.mean_mm),
            Unit::Mm.show(outcome.deviation_mm)
        ),
        format!(
            "95 % of them lie from {} to {}, the shortest such interval (JCGM 101 7.7)",
            Unit::Mm.show(from),
            Unit::Mm.show(to)
        ),
    ];
    lines.push(match tried.limit_mm {
        Some(limit) => format!(
            "{:.1} % reach infinity: focus error at most {}",
            outcome.share_inside * 100.0,
            Unit::Mm.show(limit)
        ),
        None => "how many reach infinity is not known without the depth of focus".to_owned(),
    });
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_are_read_by_their_thousands() {
        assert_eq!(thousands(1_000_000), "1 000 000");
        assert_eq!(thousands(100_000), "100 000");
        assert_eq!(thousands(12), "12");
    }
}
