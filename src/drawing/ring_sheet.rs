//! The sheet of one ring: half-section, lug pattern, main sizes, lug table, notes, title block.

use thiserror::Error;

use crate::checks::count_assumed;
use crate::document::{Design, Paper, RingKey};
use crate::drawing::cell::CellError;
use crate::drawing::dimension::{Label, Leader, Style, Terminator, leader, view_title};
use crate::drawing::dimension_side::{Edge, SideDimension, side};
use crate::drawing::extent::Extent;
use crate::drawing::lettering::{LINE_PITCH, Text};
use crate::drawing::lug_table::lug_table;
use crate::drawing::number::{DecimalMark, plain};
use crate::drawing::plan_view::{PlanOptions, plan_view};
use crate::drawing::ring_dimensions::section_dimensions;
use crate::drawing::scales::{Scale, largest_scale};
use crate::drawing::section_view::{SectionOptions, section_view};
use crate::drawing::sheet::{Sheet, SheetFormat, sheet};
use crate::drawing::title_block::TitleBlock;
use crate::drawing::{Annotation, LineType, Role, Scene, Shape};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side, plan_point, seen_from};
use crate::mount::Unit;
use crate::ring::ResolvedRing;

/// Why a drawing cannot be made.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SheetError {
    /// The ring is not whole.
    #[error("there is no whole ring to draw: {0}")]
    NoRing(String),
    /// A text of the title block is too long.
    #[error("title block: {0}")]
    TitleBlock(#[from] CellError),
    /// The views do not fit.
    #[error("the views do not fit on {0} at any standard scale; take a larger sheet")]
    TooLarge(&'static str),
}

/// Share of the width that the half-section gets beside the lug pattern.
const SECTION_SHARE: f64 = 0.58;
/// Width kept for the lug table and notes where they stand beside the lug pattern, mm.
const NOTES_WIDTH: f64 = 64.0;
/// Height kept for them where they stand under it, mm.
const NOTES_HEIGHT: f64 = 56.0;
/// Room for a view's title, in lettering heights.
const TITLE_ROOM: f64 = 3.0;
/// Distance of the section letter from the rim, in lettering heights.
const CUT_LETTER: f64 = 3.5;
/// Distance between views, mm.
const BETWEEN: f64 = 6.0;

/// The drawing of a design as it prints.
///
/// # Errors
/// [`SheetError`] when the ring is not whole, a title text is too long, or nothing fits.
pub fn ring_sheet(design: &Design, evaluation: &Evaluation) -> Result<Scene, SheetError> {
    let (Some(ring), Some(_)) = (&evaluation.derivation.ring, &evaluation.parts) else {
        return Err(SheetError::NoRing(why_no_ring(evaluation)));
    };
    let format = format_of(design);
    let style = style_of(design, format);
    let maker = Maker {
        design,
        evaluation,
        ring,
        style,
    };
    // The title block names the scale, so the views come first, on the field of an unsigned sheet.
    let blank = sheet(format, &TitleBlock::default())?;
    let too_large = SheetError::TooLarge(format.words());
    let drawn = ways(&blank).into_iter().filter_map(|areas| {
        let (section, section_scale) = maker.section(&areas.section)?;
        let (plan, _) = maker.plan(&areas.plan)?;
        Some((section, section_scale, plan, areas.notes))
    });
    // The first of equals: the full-height column leaves the notes more room.
    let best = drawn.reduce(|best, next| {
        if next.1.factor() > best.1.factor() {
            next
        } else {
            best
        }
    });
    let (section, section_scale, plan, notes) = best.ok_or(too_large)?;
    let mut whole = sheet(format, &maker.title_block(section_scale))?.scene;
    whole.extend(section);
    whole.extend(plan);
    whole.extend(maker.notes(&notes));
    Ok(whole)
}

/// The sheet format of a design.
#[must_use]
pub const fn format_of(design: &Design) -> SheetFormat {
    match design.sheet.paper {
        Paper::A4Landscape => SheetFormat::A4Landscape,
        Paper::A3Landscape => SheetFormat::A3Landscape,
    }
}

fn style_of(design: &Design, format: SheetFormat) -> Style {
    let height_mm = match format {
        SheetFormat::A4Landscape | SheetFormat::A4Portrait => 2.5,
        SheetFormat::A3Landscape => 3.5,
    };
    let mark = if design.sheet.decimal_comma {
        DecimalMark::Comma
    } else {
        DecimalMark::Point
    };
    Style {
        height_mm,
        mark,
        role: Role::Dimension,
    }
}

/// Why an evaluation has no whole ring, in a line.
pub(super) fn why_no_ring(evaluation: &Evaluation) -> String {
    if let Some(refusal) = &evaluation.derivation.refusal {
        return refusal.reason.clone();
    }
    if let Some(fault) = &evaluation.shape_fault {
        return fault.clone();
    }
    let missing: Vec<String> = evaluation
        .derivation
        .missing
        .iter()
        .map(|field| field.long_label())
        .collect();
    format!("measure {}", missing.join(", "))
}

/// Where the views go.
struct Areas {
    section: Extent,
    plan: Extent,
    notes: Extent,
}

/// Two ways to use a sheet: the half-section in the column left of the title block, full height, for thin rings;
/// or beside the lug pattern above the title block, with the notes left of it, for tall ones.
fn ways(blank: &Sheet) -> Vec<Areas> {
    let field = blank.field;
    let right = Extent {
        left: blank.title_block.left,
        ..field
    };
    let (plan, notes) = if right.height() > right.width() {
        let split = right.bottom + NOTES_HEIGHT;
        (
            Extent {
                bottom: split,
                ..right
            },
            Extent {
                top: split - BETWEEN,
                ..right
            },
        )
    } else {
        let split = right.right - NOTES_WIDTH;
        (
            Extent {
                right: split - BETWEEN,
                ..right
            },
            Extent {
                left: split,
                ..right
            },
        )
    };
    let mut ways = Vec::new();
    if let Some(beside) = blank.beside {
        let section = Extent {
            right: blank.title_block.left - BETWEEN,
            bottom: beside.bottom,
            ..field
        };
        ways.push(Areas {
            section,
            plan,
            notes,
        });
        let split = field.left + SECTION_SHARE * field.width();
        let section = Extent {
            right: split - BETWEEN / 2.0,
            ..field
        };
        ways.push(Areas {
            section,
            plan: Extent {
                left: split + BETWEEN / 2.0,
                ..field
            },
            notes: beside,
        });
    }
    ways
}

struct Maker<'a> {
    design: &'a Design,
    evaluation: &'a Evaluation,
    ring: &'a ResolvedRing,
    style: Style,
}

/// The view reaching down to the lowest lettering drawn so far.
fn lowered(view: Extent, drawn: &Annotation) -> Extent {
    let lowest = drawn
        .boxes
        .iter()
        .map(|text| text.extent().bottom)
        .fold(view.bottom, f64::min);
    Extent {
        bottom: lowest,
        ..view
    }
}

/// Moves a finished view into the middle of an area; its title stands above it.
fn centred(view: Annotation, title: &str, area: &Extent, style: &Style) -> Option<Scene> {
    let mut scene = Scene::default();
    scene.extend(view.items);
    let bounds = scene.bounds()?;
    let top = area.top - TITLE_ROOM * style.height_mm;
    if bounds.width() > area.width() || bounds.height() > top - area.bottom {
        return None;
    }
    let free = Extent { top, ..*area };
    let (from, to) = (bounds.centre(), free.centre());
    let mut placed = Scene::default();
    placed.place(
        &scene,
        1.0,
        Point {
            x: to.x - from.x,
            y: to.y - from.y,
        },
    );
    let middle = Point {
        x: to.x,
        y: area.top - 2.0 * style.height_mm,
    };
    placed.extend(view_title(title, middle, style).items);
    Some(placed)
}

impl Maker<'_> {
    /// The dimensioned half-section at the largest standard scale that fits.
    fn section(&self, area: &Extent) -> Option<(Vec<crate::drawing::Item>, Scale)> {
        let mut best = None;
        largest_scale(|scale| {
            let title = format!("A-A ({scale})");
            best = centred(self.section_at(scale), &title, area, &self.style)
                .map(|scene| (scene.items, scale));
            best.is_some()
        })?;
        best
    }

    fn section_at(&self, scale: Scale) -> Annotation {
        let factor = scale.factor();
        let group = format_of(self.design).line_group();
        let options = SectionOptions {
            angle_deg: self.design.sheet.section_angle_deg,
            partners: false,
            edges_behind: true,
            least_thread_gap_mm: 0.7_f64.max(2.0 * LineType::ContinuousWide.width_mm(group))
                / factor,
            hatch_spacing_mm: 1.8,
        };
        let view = section_view(self.design, self.evaluation, &options);
        let mut placed = Scene::default();
        placed.place(&view, factor, Point { x: 0.0, y: 0.0 });
        let mut drawn = Annotation {
            items: placed.items,
            boxes: Vec::new(),
        };
        let Some(extent) = self.part_extent(factor) else {
            return drawn;
        };
        let on_paper = |point: Point| Point {
            x: point.x * factor,
            y: point.y * factor,
        };
        for part in section_dimensions(
            self.design,
            self.evaluation,
            self.ring,
            self.style.mark,
            factor,
        ) {
            let wanted: Vec<SideDimension> = part
                .dimensions
                .into_iter()
                .map(|one| SideDimension {
                    from: on_paper(one.from),
                    to: on_paper(one.to),
                    ..one
                })
                .collect();
            let view = if part.edge == Edge::Bottom {
                lowered(extent, &drawn)
            } else {
                extent
            };
            for done in side(&wanted, part.edge, &view, &self.style) {
                drawn.join(done.drawn);
            }
        }
        drawn
    }

    /// What the ring itself covers on paper, axis included.
    fn part_extent(&self, factor: f64) -> Option<Extent> {
        let parts = self.evaluation.parts.as_ref()?;
        let bounds = parts.through_lug.bounding_box();
        let (low, high) = (bounds.min, bounds.max);
        Some(Extent {
            left: low.x * factor,
            bottom: 0.0,
            right: high.x * factor,
            top: high.y * factor,
        })
    }

    /// The lug pattern from the body side, where the lugs are milled.
    fn plan(&self, area: &Extent) -> Option<(Vec<crate::drawing::Item>, Scale)> {
        let mut best = None;
        largest_scale(|scale| {
            let title = format!("from the body side ({scale})");
            best = centred(self.plan_at(scale), &title, area, &self.style)
                .map(|scene| (scene.items, scale));
            best.is_some()
        })?;
        best
    }

    fn plan_at(&self, scale: Scale) -> Annotation {
        let factor = scale.factor();
        let options = PlanOptions {
            side: Side::Body,
            body: false,
            entry: false,
            cut_deg: Some(self.design.sheet.section_angle_deg),
        };
        let view = plan_view(self.design, self.evaluation, &options);
        let mut placed = Scene::default();
        placed.place(&view, factor, Point { x: 0.0, y: 0.0 });
        let mut drawn = Annotation {
            items: placed.items,
            boxes: Vec::new(),
        };
        let sizes = &self.ring.sizes;
        let height = self.style.height_mm;
        for (index, lug) in self.ring.lugs.iter().enumerate() {
            let radius = (sizes.nose_diameter + sizes.rear_bore.max(sizes.lip_bore)) / 4.0 * factor;
            let at = plan_point(radius, seen_from(Side::Body, lug.middle_deg().to_radians()));
            let number = Label::plain((index + 1).to_string());
            drawn.join(number.centred(
                Point {
                    x: at.x,
                    y: at.y - height / 2.0,
                },
                0.0,
                &self.style,
            ));
        }
        let cut = self.design.sheet.section_angle_deg.to_radians();
        let letter_at = plan_point(
            sizes.flange_diameter / 2.0 * factor + CUT_LETTER * height,
            seen_from(Side::Body, cut),
        );
        let letter = Label::plain("A");
        drawn.join(letter.centred(
            Point {
                x: letter_at.x,
                y: letter_at.y - height / 2.0,
            },
            0.0,
            &self.style,
        ));
        self.lock_hole_note(factor, &mut drawn);
        drawn
    }

    fn lock_hole_note(&self, factor: f64, drawn: &mut Annotation) {
        let sizes = &self.ring.sizes;
        if sizes.lock_hole_diameter <= 0.0 {
            return;
        }
        let radius = sizes.lock_hole_circle / 2.0;
        let at = plan_point(
            radius * factor,
            seen_from(Side::Body, sizes.lock_hole_angle.to_radians()),
        );
        let reach = sizes.flange_diameter / 2.0 * factor;
        let side = if at.x < 0.0 { -1.0 } else { 1.0 };
        let elbow = Point {
            x: side * (reach + 2.0),
            y: at.y.signum() * (reach + 3.0),
        };
        let number = |value: f64| plain(value, 3, self.style.mark);
        let tolerance = self
            .evaluation
            .derivation
            .dimension(RingKey::LockHoleDiameter)
            .map_or_else(String::new, |state| state.tolerance_text.clone());
        let through = if sizes.lock_hole_depth + 1e-6 >= sizes.plate_thickness {
            "through".to_owned()
        } else {
            format!("{} deep", number(sizes.lock_hole_depth))
        };
        let lines = vec![
            Label::plain(format!("Ø{} {tolerance}", number(sizes.lock_hole_diameter))),
            Label::plain(format!("{through}, on Ø{}", number(sizes.lock_hole_circle))),
        ];
        let wanted = Leader {
            tip: at,
            elbow,
            lines,
            terminator: Terminator::Arrow,
        };
        drawn.join(leader(&wanted, &self.style));
    }

    fn title_block(&self, scale: Scale) -> TitleBlock {
        let sheet = &self.design.sheet;
        let mass = self
            .evaluation
            .solid
            .map_or_else(String::new, |solid| Unit::G.show(solid.mass_g));
        TitleBlock {
            owner: sheet.owner.clone(),
            identification: sheet.number.clone(),
            issued: sheet.date.clone(),
            sheet: "1/1".to_owned(),
            title: self.design.name.clone(),
            approved_by: sheet.approved.clone(),
            created_by: sheet.creator.clone(),
            document_type: "Part drawing".to_owned(),
            material: self.design.ring.material.clone(),
            finish: self.finish(),
            supplement: format!("{} on {}", self.design.lens.name, self.design.body.name),
            mass,
            scale: scale.to_string(),
            general_tolerances: "ISO 2768-m".to_owned(),
            surface: "Ra 3.2".to_owned(),
            outside_edges: "−0.2".to_owned(),
            inside_edges: "+0.2".to_owned(),
            ..TitleBlock::default()
        }
    }

    /// What each fit is in numbers: its lettering on the view stays short.
    fn fit_lines(&self) -> Vec<String> {
        let keys = [RingKey::NoseDiameter, RingKey::LugDiameter];
        let number = |value: f64| plain(value, 3, self.style.mark);
        keys.into_iter()
            .filter_map(|key| self.evaluation.derivation.dimension(key))
            .filter(|state| state.tolerance_text.starts_with('h'))
            .map(|state| {
                let (lower, upper) = state.deviations;
                let size = number(self.ring.sizes.get(state.key));
                format!(
                    "Ø{size} {}: {} / {}",
                    state.tolerance_text,
                    number(upper),
                    number(lower)
                )
            })
            .collect()
    }

    fn finish(&self) -> String {
        let finish = &self.design.ring.finish;
        let mut words = Vec::new();
        if finish.build_up_mm > 0.0 {
            words.push(format!(
                "coating {} a face",
                Unit::Mm.show(finish.build_up_mm)
            ));
            words.push(
                if finish.faces_masked {
                    "seat and flange masked"
                } else {
                    "seat and flange coated"
                }
                .to_owned(),
            );
        }
        if finish.inside_blackened {
            words.push("inside blackened".to_owned());
        }
        if words.is_empty() {
            "bare".to_owned()
        } else {
            words.join(", ")
        }
    }

    /// Lug table and notes.
    fn notes(&self, area: &Extent) -> Vec<crate::drawing::Item> {
        let height = self.style.height_mm.min(2.5);
        let number = |value: f64| plain(value, 2, self.style.mark);
        let mut lines = lug_table(self.ring, self.style.mark);
        lines.push("Drawn in the locked position.".to_owned());
        lines.extend(self.fit_lines());
        lines.push(format!(
            "Edges broken {}",
            number(self.ring.sizes.edge_break)
        ));
        let assumed = count_assumed(self.design, &self.evaluation.derivation);
        lines.push(match assumed {
            0 => "No assumed values.".to_owned(),
            1 => "1 ASSUMED VALUE: MEASURE BEFORE CUTTING".to_owned(),
            several => format!("{several} ASSUMED VALUES: MEASURE BEFORE CUTTING"),
        });
        note_block(&lines, area, height)
    }
}

/// Lines from the top of an area down, at the largest lettering that leaves none out.
fn note_block(lines: &[String], area: &Extent, height: f64) -> Vec<crate::drawing::Item> {
    let heights = [height, 1.8, 1.4];
    let needed = |height: f64| {
        let rows = lines.iter().map(|_| height * LINE_PITCH).sum::<f64>();
        let widest = lines
            .iter()
            .map(|line| crate::drawing::lettering::width_mm(line, height))
            .fold(0.0, f64::max);
        rows <= area.height() && widest <= area.width()
    };
    let height = heights
        .into_iter()
        .find(|height| needed(*height))
        .unwrap_or(1.4);
    let mut scene = Scene::default();
    let mut y = area.top - height;
    for line in lines {
        let text = Text::level(Point { x: area.left, y }, height, line.clone());
        scene.draw(
            Shape::Text(text),
            LineType::ContinuousNarrow,
            Role::Annotation,
        );
        y -= height * LINE_PITCH;
    }
    scene.items
}
