//! Readings of the numbers of a list, row by row: where an ear begins, how deep a step of the barrel ends.

use serde::{Deserialize, Serialize};

use super::{BarrelStep, Body, Interface, Lens, Unit};

/// A list of lens or body whose rows hold numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RowList {
    /// The lens's rear barrel, focused at infinity.
    BarrelAtInfinity,
    /// The same at the closest focus.
    BarrelAtCloseFocus,
    /// The body's ears.
    Ears,
    /// Depth free behind the body's flange.
    FreeDepth,
    /// Things fixed to the body near the mount.
    Obstacles,
}

/// A number of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RowColumn {
    /// Depth of a step's end, or free depth.
    Depth,
    /// Diameter of a step.
    Diameter,
    /// Where a sector begins.
    Start,
    /// How far it reaches.
    Extent,
    /// Distance from the axis.
    Radius,
    /// Inner radius.
    InnerRadius,
    /// Outer radius.
    OuterRadius,
    /// End toward the lens.
    FromZ,
    /// End toward the sensor.
    ToZ,
}

impl RowList {
    /// What one row is called.
    #[must_use]
    pub const fn one(self) -> &'static str {
        match self {
            Self::BarrelAtInfinity | Self::BarrelAtCloseFocus => "step",
            Self::Ears => "ear",
            Self::FreeDepth => "point",
            Self::Obstacles => "obstacle",
        }
    }

    /// Whether the lens has it, not the body.
    #[must_use]
    pub const fn is_of_the_lens(self) -> bool {
        match self {
            Self::BarrelAtInfinity | Self::BarrelAtCloseFocus => true,
            Self::Ears | Self::FreeDepth | Self::Obstacles => false,
        }
    }
}

impl RowColumn {
    /// Its name on screen.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Depth => "depth",
            Self::Diameter => "diameter",
            Self::Start => "start",
            Self::Extent => "extent",
            Self::Radius => "at radius",
            Self::InnerRadius => "inner radius",
            Self::OuterRadius => "outer radius",
            Self::FromZ => "from z",
            Self::ToZ => "to z",
        }
    }

    /// The unit of its readings.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Start | Self::Extent => Unit::Deg,
            Self::Depth
            | Self::Diameter
            | Self::Radius
            | Self::InnerRadius
            | Self::OuterRadius
            | Self::FromZ
            | Self::ToZ => Unit::Mm,
        }
    }

    /// Least and greatest reading that is not absurd.
    #[must_use]
    pub const fn range(self) -> (f64, f64) {
        match self {
            Self::Depth => (0.0, 400.0),
            Self::Diameter => (0.5, 300.0),
            Self::Start => (-720.0, 720.0),
            Self::Extent => (0.1, 360.0),
            Self::Radius | Self::InnerRadius | Self::OuterRadius => (0.0, 500.0),
            Self::FromZ | Self::ToZ => (-400.0, 400.0),
        }
    }
}

/// One number of one row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct RowNumber {
    /// The list.
    pub list: RowList,
    /// The row, from 1.
    pub row: usize,
    /// The number in it.
    pub column: RowColumn,
}

impl RowNumber {
    /// Its name on screen.
    #[must_use]
    pub fn label(self) -> String {
        format!("{} {}, {}", self.list.one(), self.row, self.column.label())
    }
}

/// Readings of one number of one row; their mean stands in the row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RowReadings {
    /// The list.
    pub list: RowList,
    /// The row, from 1.
    pub row: usize,
    /// The number in it.
    pub column: RowColumn,
    /// The readings, mm or degrees.
    pub values: Vec<f64>,
    /// The instrument, by its name in the workshop file.
    pub instrument: String,
}

impl RowReadings {
    /// What they are of.
    #[must_use]
    pub const fn number(&self) -> RowNumber {
        RowNumber {
            list: self.list,
            row: self.row,
            column: self.column,
        }
    }

    /// The mean; none without a reading.
    #[must_use]
    pub fn mean(&self) -> Option<f64> {
        // One by one: a sum of ones is exact.
        let count = self.values.iter().map(|_| 1.0).sum::<f64>();
        (count > 0.0).then(|| self.values.iter().sum::<f64>() / count)
    }
}

/// A number of a row and how it is taken out of it.
type Column<T> = (RowColumn, fn(&T) -> f64);

/// The numbers of some rows, each with its place.
fn numbered<T, const COUNT: usize>(
    list: RowList,
    held: &Interface<Vec<T>>,
    columns: [Column<T>; COUNT],
) -> Vec<(RowNumber, f64)> {
    let rows = held.value().into_iter().flatten();
    rows.zip(1..)
        .flat_map(|(one, row)| {
            columns.map(|(column, get)| (RowNumber { list, row, column }, get(one)))
        })
        .collect()
}

/// The row of this number, from 1, to change.
fn row_mut<T>(held: &mut Interface<Vec<T>>, row: usize) -> Option<&mut T> {
    match held {
        Interface::Unknown => None,
        Interface::Known(known) => known.value.get_mut(row.checked_sub(1)?),
    }
}

impl Lens {
    /// The numbers of a list of the lens, row by row; none of a list of the body.
    #[must_use]
    pub fn row_numbers(&self, list: RowList) -> Vec<(RowNumber, f64)> {
        let columns: [Column<BarrelStep>; 2] = [
            (RowColumn::Depth, |step| step.depth_mm),
            (RowColumn::Diameter, |step| step.diameter_mm),
        ];
        match list {
            RowList::BarrelAtInfinity => numbered(list, &self.barrel_at_infinity, columns),
            RowList::BarrelAtCloseFocus => numbered(list, &self.barrel_at_close_focus, columns),
            RowList::Ears | RowList::FreeDepth | RowList::Obstacles => Vec::new(),
        }
    }

    /// A number of a list of the lens, to change.
    pub fn row_number_mut(&mut self, at: RowNumber) -> Option<&mut f64> {
        let held = match at.list {
            RowList::BarrelAtInfinity => &mut self.barrel_at_infinity,
            RowList::BarrelAtCloseFocus => &mut self.barrel_at_close_focus,
            RowList::Ears | RowList::FreeDepth | RowList::Obstacles => return None,
        };
        let step = row_mut(held, at.row)?;
        match at.column {
            RowColumn::Depth => Some(&mut step.depth_mm),
            RowColumn::Diameter => Some(&mut step.diameter_mm),
            RowColumn::Start
            | RowColumn::Extent
            | RowColumn::Radius
            | RowColumn::InnerRadius
            | RowColumn::OuterRadius
            | RowColumn::FromZ
            | RowColumn::ToZ => None,
        }
    }
}

impl Body {
    /// The numbers of a list of the body, row by row; none of a list of the lens.
    #[must_use]
    pub fn row_numbers(&self, list: RowList) -> Vec<(RowNumber, f64)> {
        match list {
            RowList::BarrelAtInfinity | RowList::BarrelAtCloseFocus => Vec::new(),
            RowList::Ears => numbered(
                list,
                &self.ears,
                [
                    (RowColumn::Start, |ear| ear.start_deg),
                    (RowColumn::Extent, |ear| ear.extent_deg),
                ],
            ),
            RowList::FreeDepth => numbered(
                list,
                &self.free_depth,
                [
                    (RowColumn::Radius, |point| point.radius_mm),
                    (RowColumn::Depth, |point| point.depth_mm),
                ],
            ),
            RowList::Obstacles => numbered(
                list,
                &self.obstacles,
                [
                    (RowColumn::Start, |one| one.sector.start_deg),
                    (RowColumn::Extent, |one| one.sector.extent_deg),
                    (RowColumn::InnerRadius, |one| one.inner_radius_mm),
                    (RowColumn::OuterRadius, |one| one.outer_radius_mm),
                    (RowColumn::FromZ, |one| one.from_z_mm),
                    (RowColumn::ToZ, |one| one.to_z_mm),
                ],
            ),
        }
    }

    /// A number of a list of the body, to change.
    pub fn row_number_mut(&mut self, at: RowNumber) -> Option<&mut f64> {
        match at.list {
            RowList::BarrelAtInfinity | RowList::BarrelAtCloseFocus => None,
            RowList::Ears => {
                let ear = row_mut(&mut self.ears, at.row)?;
                match at.column {
                    RowColumn::Start => Some(&mut ear.start_deg),
                    RowColumn::Extent => Some(&mut ear.extent_deg),
                    RowColumn::Depth
                    | RowColumn::Diameter
                    | RowColumn::Radius
                    | RowColumn::InnerRadius
                    | RowColumn::OuterRadius
                    | RowColumn::FromZ
                    | RowColumn::ToZ => None,
                }
            }
            RowList::FreeDepth => {
                let point = row_mut(&mut self.free_depth, at.row)?;
                match at.column {
                    RowColumn::Radius => Some(&mut point.radius_mm),
                    RowColumn::Depth => Some(&mut point.depth_mm),
                    RowColumn::Diameter
                    | RowColumn::Start
                    | RowColumn::Extent
                    | RowColumn::InnerRadius
                    | RowColumn::OuterRadius
                    | RowColumn::FromZ
                    | RowColumn::ToZ => None,
                }
            }
            RowList::Obstacles => {
                let one = row_mut(&mut self.obstacles, at.row)?;
                match at.column {
                    RowColumn::Start => Some(&mut one.sector.start_deg),
                    RowColumn::Extent => Some(&mut one.sector.extent_deg),
                    RowColumn::InnerRadius => Some(&mut one.inner_radius_mm),
                    RowColumn::OuterRadius => Some(&mut one.outer_radius_mm),
                    RowColumn::FromZ => Some(&mut one.from_z_mm),
                    RowColumn::ToZ => Some(&mut one.to_z_mm),
                    RowColumn::Depth | RowColumn::Diameter | RowColumn::Radius => None,
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::{FreeDepth, Obstacle, Sector};

    fn mounts() -> (Lens, Body) {
        let sector = Sector {
            start_deg: 10.0,
            extent_deg: 60.0,
        };
        let lens = Lens {
            barrel_at_infinity: Interface::assumed(
                vec![BarrelStep {
                    depth_mm: 4.0,
                    diameter_mm: 36.0,
                }],
                "test",
            ),
            ..Lens::default()
        };
        let body = Body {
            ears: Interface::assumed(vec![sector, sector], "test"),
            free_depth: Interface::assumed(
                vec![FreeDepth {
                    radius_mm: 5.0,
                    depth_mm: 9.0,
                }],
                "test",
            ),
            obstacles: Interface::assumed(
                vec![Obstacle {
                    name: "block".to_owned(),
                    sector,
                    inner_radius_mm: 20.0,
                    outer_radius_mm: 25.0,
                    from_z_mm: 1.0,
                    to_z_mm: 3.0,
                }],
                "test",
            ),
            ..Body::default()
        };
        (lens, body)
    }

    /// What is listed is what is changed, for every number of every list.
    #[test]
    fn every_number_is_listed_and_changed_in_its_place() {
        let (mut lens, mut body) = mounts();
        let lists = [
            RowList::BarrelAtInfinity,
            RowList::BarrelAtCloseFocus,
            RowList::Ears,
            RowList::FreeDepth,
            RowList::Obstacles,
        ];
        let mut seen = 0;
        for list in lists {
            let all = [lens.row_numbers(list), body.row_numbers(list)].concat();
            for (at, value) in all {
                let of_the_lens = lens.row_number_mut(at);
                assert_eq!(of_the_lens.is_some(), list.is_of_the_lens());
                let place = of_the_lens.or_else(|| body.row_number_mut(at)).unwrap();
                assert!((*place - value).abs() < 1e-15, "{}", at.label());
                *place = value + 0.5;
                let again = [lens.row_numbers(list), body.row_numbers(list)].concat();
                assert!(again.contains(&(at, value + 0.5)), "{}", at.label());
                seen += 1;
            }
        }
        assert_eq!(seen, 2 + 4 + 2 + 6);
    }

    #[test]
    fn a_row_that_is_not_there_has_no_number() {
        let (_, mut body) = mounts();
        for row in [0, 3] {
            let at = RowNumber {
                list: RowList::Ears,
                row,
                column: RowColumn::Start,
            };
            assert!(body.row_number_mut(at).is_none());
        }
    }
}
