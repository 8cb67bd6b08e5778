//! A stepped body of revolution that moves along its axis, and the space it sweeps.

use thiserror::Error;

use super::{Outline, OutlineBuilder, OutlineError, Point};

/// One cylinder of a stepped body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Where it begins along z, mm.
    pub from_z: f64,
    /// Where it ends, mm.
    pub to_z: f64,
    /// Its radius, mm.
    pub radius: f64,
}

/// Why steps make no body.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum StepError {
    /// No step with a length and a radius.
    #[error("the body has no step with a length and a diameter; give at least one")]
    Empty,
    /// A size that is no number.
    #[error("step {step} of the body has a size that is not a number; give every size")]
    NotFinite {
        /// Which step, counted from 0.
        step: usize,
    },
    /// A stretch without any step.
    #[error("the body has nothing between z = {from_z:.3} and z = {to_z:.3}; its steps must join")]
    Gap {
        /// Where the gap begins, mm.
        from_z: f64,
        /// Where it ends, mm.
        to_z: f64,
    },
    /// The steps make no outline.
    #[error(transparent)]
    Outline(#[from] OutlineError),
}

/// A solid stepped body: cylinders that join, the largest counting where several overlap.
#[derive(Clone, Debug, PartialEq)]
pub struct StepProfile {
    /// In order of z, each beginning where the one before ends, radii of neighbours different.
    steps: Vec<Step>,
}

impl StepProfile {
    /// A body from its steps, in any order; they may overlap.
    ///
    /// # Errors
    /// [`StepError`] when nothing is left or the steps do not join.
    pub fn new(steps: &[Step]) -> Result<Self, StepError> {
        for (index, step) in steps.iter().enumerate() {
            if ![step.from_z, step.to_z, step.radius]
                .iter()
                .all(|size| size.is_finite())
            {
                return Err(StepError::NotFinite { step: index });
            }
        }
        let solid: Vec<Step> = steps
            .iter()
            .filter(|step| step.to_z > step.from_z && step.radius > 0.0)
            .copied()
            .collect();
        let merged = merged(&solid)?;
        if merged.is_empty() {
            Err(StepError::Empty)
        } else {
            Ok(Self { steps: merged })
        }
    }

    /// The steps, in order of z.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// Where the body begins and ends along z, mm.
    #[must_use]
    pub fn reach(&self) -> (f64, f64) {
        let from = self.steps.first().map_or(0.0, |step| step.from_z);
        let to = self.steps.last().map_or(0.0, |step| step.to_z);
        (from, to)
    }

    /// The radius at a z, mm, the larger at a shoulder; `None` off the body.
    #[must_use]
    pub fn radius_at(&self, z: f64) -> Option<f64> {
        self.steps
            .iter()
            .filter(|step| step.from_z <= z && z <= step.to_z)
            .map(|step| step.radius)
            .reduce(f64::max)
    }

    /// What the body has passed over once it came in from the left to its seat, from its own left end on: every step
    /// reaches back to there. Farther left its largest radius has passed.
    #[must_use]
    pub fn swept_from_left(&self) -> Self {
        let (left, _) = self.reach();
        self.widened(|step| (left, step.to_z))
    }

    /// What the body passes over while it moves from `from_dz` to `to_dz` along z, in either order.
    #[must_use]
    pub fn swept_between(&self, from_dz: f64, to_dz: f64) -> Self {
        let (back, ahead) = (from_dz.min(to_dz), from_dz.max(to_dz));
        self.widened(|step| (step.from_z + back, step.to_z + ahead))
    }

    /// Steps that joined still join when each reaches farther; sizes that are not numbers leave the body as it was.
    fn widened(&self, ends: impl Fn(&Step) -> (f64, f64)) -> Self {
        let steps: Vec<Step> = self
            .steps
            .iter()
            .map(|step| {
                let (from_z, to_z) = ends(step);
                Step {
                    from_z,
                    to_z,
                    radius: step.radius,
                }
            })
            .collect();
        Self::new(&steps).unwrap_or_else(|_| self.clone())
    }

    /// The half of the body above its axis, x = z and y = radius.
    ///
    /// # Errors
    /// [`OutlineError`] when the body is thinner than any outline, or reaches too far.
    pub fn outline<T: Copy + PartialEq>(&self, tag: T) -> Result<Outline<T>, OutlineError> {
        let (from, to) = self.reach();
        let mut builder =
            OutlineBuilder::start(Point::new(from, 0.0)).line_to(Point::new(to, 0.0), tag);
        for step in self.steps.iter().rev() {
            builder = builder
                .line_to(Point::new(step.to_z, step.radius), tag)
                .line_to(Point::new(step.from_z, step.radius), tag);
        }
        builder.close(tag)
    }
}

/// Cylinders end to end, the largest counting where several overlap.
fn merged(solid: &[Step]) -> Result<Vec<Step>, StepError> {
    let mut ends: Vec<f64> = solid
        .iter()
        .flat_map(|step| [step.from_z, step.to_z])
        .collect();
    ends.sort_by(f64::total_cmp);
    ends.dedup();
    let mut merged: Vec<Step> = Vec::with_capacity(ends.len());
    for pair in ends.windows(2) {
        let [from_z, to_z] = *pair else { continue };
        let radius = solid
            .iter()
            .filter(|step| step.from_z <= from_z && step.to_z >= to_z)
            .map(|step| step.radius)
            .reduce(f64::max)
            .ok_or(StepError::Gap { from_z, to_z })?;
        match merged.last_mut() {
            Some(last) if (last.radius - radius).abs() <= 0.0 => last.to_z = to_z,
            Some(_) | None => merged.push(Step {
                from_z,
                to_z,
                radius,
            }),
        }
    }
    Ok(merged)
}

#[cfg(test)]
mod tests {
    use super::super::clearance;
    use super::*;

    fn barrel() -> StepProfile {
        let step = |from_z, to_z, radius| Step {
            from_z,
            to_z,
            radius,
        };
        StepProfile::new(&[
            step(0.0, 3.0, 20.0),
            step(3.0, 5.0, 15.0),
            step(5.0, 6.0, 18.0),
        ])
        .unwrap()
    }

    #[test]
    fn radii_of_the_body_itself() {
        let barrel = barrel();
        assert_eq!(barrel.radius_at(4.0), Some(15.0));
        assert_eq!(barrel.radius_at(3.0), Some(20.0));
        assert_eq!(barrel.radius_at(6.1), None);
        assert!((barrel.outline(()).unwrap().area() - (60.0 + 30.0 + 18.0)).abs() < 1e-12);
    }

    #[test]
    fn a_wide_end_widens_what_it_passed_through() {
        let swept = barrel().swept_from_left();
        assert_eq!(swept.radius_at(4.0), Some(18.0));
        assert_eq!(swept.radius_at(1.0), Some(20.0));
        assert_eq!(swept.reach(), (0.0, 6.0));
    }

    #[test]
    fn focusing_moves_the_shoulders_both_ways() {
        let swept = barrel().swept_between(0.5, -1.5);
        assert_eq!(swept.reach(), (-1.5, 6.5));
        assert_eq!(swept.radius_at(3.4), Some(20.0));
        assert_eq!(swept.radius_at(3.49999), Some(20.0));
        // The groove of 2 mm between the collars is passed over from both sides, and closes.
        assert_eq!(swept.radius_at(3.6), Some(18.0));
        assert_eq!(swept.steps().len(), 2);
    }

    #[test]
    fn agrees_with_moving_the_body_step_by_step() {
        let (body, ahead) = (barrel(), 0.8);
        let swept = body.swept_between(0.0, ahead);
        for place in 0..700_u32 {
            let z = f64::from(place) / 100.0 + 0.003;
            let largest = (0..=800_u32)
                .filter_map(|step| body.radius_at(z - ahead * f64::from(step) / 800.0))
                .reduce(f64::max);
            assert_eq!(swept.radius_at(z), largest, "{z}");
        }
    }

    #[test]
    fn a_clash_only_in_mid_travel() {
        // A ledge inside the groove of the barrel: free at both ends of the travel, hit between them.
        let ledge = OutlineBuilder::start(Point::new(3.2, 16.0))
            .line_to(Point::new(3.6, 16.0), ())
            .line_to(Point::new(3.6, 19.0), ())
            .line_to(Point::new(3.2, 19.0), ())
            .close(())
            .unwrap();
        let body = barrel();
        let at = |dz: f64| {
            let moved = body.outline(()).unwrap().translated(Point::new(dz, 0.0));
            clearance(&moved, &ledge).is_free()
        };
        assert!(at(0.0) && at(3.7) && !at(1.0));
        assert!(!clearance(&body.swept_between(0.0, 3.7).outline(()).unwrap(), &ledge).is_free());
    }

    #[test]
    fn steps_that_do_not_join_are_refused() {
        let step = |from_z, to_z, radius| Step {
            from_z,
            to_z,
            radius,
        };
        assert_eq!(StepProfile::new(&[]), Err(StepError::Empty));
        assert_eq!(
            StepProfile::new(&[step(0.0, 0.0, 2.0)]),
            Err(StepError::Empty)
        );
        assert_eq!(
            StepProfile::new(&[step(0.0, 1.0, 2.0), step(2.0, 3.0, 2.0)]),
            Err(StepError::Gap {
                from_z: 1.0,
                to_z: 2.0
            })
        );
        assert_eq!(
            StepProfile::new(&[step(0.0, 1.0, f64::NAN)]),
            Err(StepError::NotFinite { step: 0 })
        );
    }
}
