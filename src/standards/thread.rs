//! A screw thread as a designation names it, and the doors to its sizes.

use std::fmt;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::designation_error::DesignationError;
use super::iso_thread;
use super::limits::{Side, ThreadLimits};
use super::nominal::{MM_PER_INCH, Nominal};
use super::thread_class::{ClassError, MetricClass, ThreadClass, UnifiedClass};
use super::{unified_thread, whitworth_thread};

/// Least and greatest nominal diameter taken, mm (the reach of ISO 965-1).
pub(super) const NOMINAL_MM: (f64, f64) = (1.0, 355.0);
/// Least and greatest pitch taken, mm (the reach of ISO 965-1).
pub(super) const PITCH_MM: (f64, f64) = (0.2, 8.0);
/// Least and greatest threads per inch taken.
pub(super) const TPI: (f64, f64) = (3.5, 80.0);
/// Greatest pitch as a share of the diameter, so that a core is left.
const PITCH_SHARE: f64 = 0.4;

/// Series of a unified thread; it decides the length of engagement behind the tolerance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnifiedSeries {
    /// Coarse.
    Unc,
    /// Fine.
    Unf,
    /// Extra fine.
    Unef,
    /// Constant pitch.
    Un,
    /// Special.
    Uns,
}

impl fmt::Display for UnifiedSeries {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Unc => "UNC",
            Self::Unf => "UNF",
            Self::Unef => "UNEF",
            Self::Un => "UN",
            Self::Uns => "UNS",
        })
    }
}

/// Form of a thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThreadForm {
    /// ISO metric, 60 degrees (ISO 68-1).
    Metric,
    /// Unified inch, 60 degrees (ASME B1.1).
    Unified {
        /// Series it belongs to.
        series: UnifiedSeries,
    },
    /// Whitworth, 55 degrees.
    Whitworth,
}

/// A thread: form, nominal diameter, pitch, class if one is given, hand.
///
/// Written to files as its designation, such as `"M42x1-6H"`, and read back through the same parser.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Thread {
    form: ThreadForm,
    nominal: Nominal,
    pitch_mm: f64,
    tpi: Option<f64>,
    class: Option<ThreadClass>,
    left_hand: bool,
}

/// Why a thread has no such limits.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ThreadError {
    /// The designation's class is that of the mating part.
    #[error(
        "{designation} names an {named} thread, so it has no {asked} limits; leave its class away or give that of the {asked} thread"
    )]
    OtherSide {
        /// The thread as written.
        designation: String,
        /// The side its class belongs to.
        named: Side,
        /// The side that was asked for.
        asked: Side,
    },
}

impl Thread {
    /// ISO metric thread of nominal diameter and pitch in mm, without class.
    ///
    /// # Errors
    /// [`DesignationError::OutOfRange`] where a value is not finite or outside what a thread can be.
    pub fn metric(nominal_mm: f64, pitch_mm: f64) -> Result<Self, DesignationError> {
        within("pitch", pitch_mm, PITCH_MM, "mm")?;
        Self::checked(
            ThreadForm::Metric,
            Nominal::Millimetres(nominal_mm),
            pitch_mm,
            None,
        )
    }

    /// Unified thread of nominal diameter and threads per inch, without class.
    ///
    /// # Errors
    /// [`DesignationError::OutOfRange`] where a value is not finite or outside what a thread can be.
    pub fn unified(
        nominal: Nominal,
        tpi: f64,
        series: UnifiedSeries,
    ) -> Result<Self, DesignationError> {
        Self::by_inch(ThreadForm::Unified { series }, nominal, tpi)
    }

    /// Thread of Whitworth form of nominal diameter and threads per inch.
    ///
    /// # Errors
    /// [`DesignationError::OutOfRange`] where a value is not finite or outside what a thread can be.
    pub fn whitworth(nominal: Nominal, tpi: f64) -> Result<Self, DesignationError> {
        Self::by_inch(ThreadForm::Whitworth, nominal, tpi)
    }

    fn by_inch(form: ThreadForm, nominal: Nominal, tpi: f64) -> Result<Self, DesignationError> {
        within("threads per inch", tpi, TPI, "per inch")?;
        Self::checked(
            form,
            nominal.in_inches_if_whole(),
            MM_PER_INCH / tpi,
            Some(tpi),
        )
    }

    fn checked(
        form: ThreadForm,
        nominal: Nominal,
        pitch_mm: f64,
        tpi: Option<f64>,
    ) -> Result<Self, DesignationError> {
        within("nominal diameter", nominal.mm(), NOMINAL_MM, "mm")?;
        if pitch_mm > PITCH_SHARE * nominal.mm() {
            return Err(DesignationError::PitchTooCoarse {
                pitch_mm,
                nominal_mm: nominal.mm(),
                allowed_mm: PITCH_SHARE * nominal.mm(),
            });
        }
        Ok(Self {
            form,
            nominal,
            pitch_mm,
            tpi,
            class: None,
            left_hand: false,
        })
    }

    /// The same thread with a tolerance class.
    ///
    /// # Errors
    /// [`ClassError::WrongForm`] where the class is not one of this form's.
    pub fn with_class(self, class: ThreadClass) -> Result<Self, ClassError> {
        let (form, remedy) = match (self.form, class) {
            (ThreadForm::Metric, ThreadClass::Metric(_))
            | (ThreadForm::Unified { .. }, ThreadClass::Unified(_)) => {
                return Ok(Self {
                    class: Some(class),
                    ..self
                });
            }
            (ThreadForm::Metric, ThreadClass::Unified(_)) => {
                ("an ISO metric thread", "write 6H or 6g")
            }
            (ThreadForm::Unified { .. }, ThreadClass::Metric(_)) => {
                ("a unified thread", "write 2B or 2A")
            }
            (ThreadForm::Whitworth, ThreadClass::Metric(_) | ThreadClass::Unified(_)) => (
                "a thread of Whitworth form",
                "leave the class away: no tolerances are given here",
            ),
        };
        Err(ClassError::WrongForm {
            class: class.to_string(),
            form,
            remedy,
        })
    }

    /// The same thread without class, for which both sides have limits.
    #[must_use]
    pub fn without_class(self) -> Self {
        Self {
            class: None,
            ..self
        }
    }

    /// The same thread, left-hand or right-hand.
    #[must_use]
    pub fn with_left_hand(self, left_hand: bool) -> Self {
        Self { left_hand, ..self }
    }

    /// Form of the thread.
    #[must_use]
    pub fn form(&self) -> ThreadForm {
        self.form
    }

    /// Nominal diameter in the unit the thread is named by.
    #[must_use]
    pub fn nominal(&self) -> Nominal {
        self.nominal
    }

    /// Nominal diameter, mm.
    #[must_use]
    pub fn nominal_mm(&self) -> f64 {
        self.nominal.mm()
    }

    /// Pitch, mm.
    #[must_use]
    pub fn pitch_mm(&self) -> f64 {
        self.pitch_mm
    }

    /// Threads per inch, for a thread that is named by them.
    #[must_use]
    pub fn tpi(&self) -> Option<f64> {
        self.tpi
    }

    /// Tolerance class, if the designation gives one.
    #[must_use]
    pub fn class(&self) -> Option<ThreadClass> {
        self.class
    }

    /// True for a left-hand thread.
    #[must_use]
    pub fn is_left_hand(&self) -> bool {
        self.left_hand
    }

    /// Half the flank angle, degrees: 30, or 27.5 of the Whitworth form.
    #[must_use]
    pub fn half_angle_deg(&self) -> f64 {
        match self.form {
            ThreadForm::Metric | ThreadForm::Unified { .. } => iso_thread::HALF_ANGLE_DEG,
            ThreadForm::Whitworth => whitworth_thread::HALF_ANGLE_DEG,
        }
    }

    /// Limits of the internal thread, mm; class 6H or 2B where the designation gives none.
    ///
    /// # Errors
    /// [`ThreadError::OtherSide`] where the designation's class is that of an external thread.
    pub fn internal(&self) -> Result<ThreadLimits, ThreadError> {
        self.limits(Side::Internal)
    }

    /// Limits of the external thread, mm; class 6g or 2A where the designation gives none.
    ///
    /// # Errors
    /// [`ThreadError::OtherSide`] where the designation's class is that of an internal thread.
    pub fn external(&self) -> Result<ThreadLimits, ThreadError> {
        self.limits(Side::External)
    }

    /// Limits of either side, mm, as [`internal`](Self::internal) and [`external`](Self::external) give them.
    ///
    /// # Errors
    /// [`ThreadError::OtherSide`] where the designation's class is that of the other side.
    pub fn limits(&self, side: Side) -> Result<ThreadLimits, ThreadError> {
        if let Some(class) = self.class
            && class.side() != side
        {
            return Err(ThreadError::OtherSide {
                designation: self.to_string(),
                named: class.side(),
                asked: side,
            });
        }
        Ok(match self.form {
            ThreadForm::Metric => {
                iso_thread::limits(self.nominal_mm(), self.pitch_mm, self.metric_class(side))
            }
            ThreadForm::Unified { series } => unified_thread::limits(
                self.nominal.inch(),
                self.tpi.unwrap_or(MM_PER_INCH / self.pitch_mm),
                series,
                self.unified_class(side),
            ),
            ThreadForm::Whitworth => {
                whitworth_thread::limits(self.nominal_mm(), self.pitch_mm, side)
            }
        })
    }

    fn metric_class(&self, side: Side) -> MetricClass {
        match (self.class, side) {
            (Some(ThreadClass::Metric(class)), Side::Internal | Side::External) => class,
            (Some(ThreadClass::Unified(_)) | None, Side::Internal) => MetricClass::INTERNAL_6H,
            (Some(ThreadClass::Unified(_)) | None, Side::External) => MetricClass::EXTERNAL_6G,
        }
    }

    fn unified_class(&self, side: Side) -> UnifiedClass {
        match (self.class, side) {
            (Some(ThreadClass::Unified(class)), Side::Internal | Side::External) => class,
            (Some(ThreadClass::Metric(_)) | None, Side::Internal) => UnifiedClass::INTERNAL_2B,
            (Some(ThreadClass::Metric(_)) | None, Side::External) => UnifiedClass::EXTERNAL_2A,
        }
    }
}

fn within(
    what: &'static str,
    value: f64,
    (least, greatest): (f64, f64),
    unit: &'static str,
) -> Result<(), DesignationError> {
    if (least..=greatest).contains(&value) {
        Ok(())
    } else {
        Err(DesignationError::out_of_range(
            what,
            value,
            (least, greatest),
            unit,
        ))
    }
}
