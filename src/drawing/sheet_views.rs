//! Which views a sheet has, at which scales, and where: the largest half-section that fits with all that is asked for,
//! then of the rest as much as there is room for.

use crate::document::{Design, Projection, ViewChoice};
use crate::drawing::dimension::{Style, view_letters, view_title};
use crate::drawing::lettering::width_mm;
use crate::drawing::placed_dimension::SheetView;
use crate::drawing::ring_detail::{Detail, RingDetail};
use crate::drawing::ring_notes::{SaidOnViews, note_block, note_lines};
use crate::drawing::ring_plan::RingPlan;
use crate::drawing::ring_section::RingSection;
use crate::drawing::ring_signs::Signs;
use crate::drawing::scales::{SCALES, Scale};
use crate::drawing::sheet_layout::Room;
use crate::drawing::{Annotation, Extent, Item};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side};
use crate::ring::ResolvedRing;

/// Room for a view's title, in lettering heights.
const TITLE_ROOM: f64 = 3.0;
/// A detail is at least so many times larger than the half-section.
const DETAIL_STEP: f64 = 2.0;
/// Least and largest radius of a detail on paper, in lettering heights.
const DETAIL_RADIUS: std::ops::RangeInclusive<f64> = 2.0..=9.0;

/// The views of one ring.
pub struct Views<'a> {
    /// The design.
    pub design: &'a Design,
    /// What it came to.
    pub evaluation: &'a Evaluation,
    /// Its ring.
    pub ring: &'a ResolvedRing,
    /// The lettering.
    pub style: Style,
}

/// Everything in its place.
#[derive(Clone, Debug)]
pub struct Arrangement {
    /// The views.
    pub views: Vec<PlacedView>,
    /// The notes.
    pub notes: Vec<Item>,
    /// Scale of the half-section.
    pub scale: Scale,
    /// What was wanted where there is room, and had none.
    pub left_out: Vec<&'static str>,
}

/// A view in its place.
#[derive(Clone, Debug)]
pub struct PlacedView {
    /// The view.
    pub view: SheetView,
    /// How far it is moved to its place, mm: right, up.
    pub moved_mm: (f64, f64),
    /// Its title, in its place.
    pub title: Annotation,
}

/// The views that may be left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Extra {
    BodySide,
    LensSide,
    Relief,
    Lug,
}

impl Extra {
    /// Every one; the first is the last to be given up.
    const ALL: [Self; 4] = [Self::BodySide, Self::Relief, Self::Lug, Self::LensSide];

    const fn words(self) -> &'static str {
        match self {
            Self::BodySide => "plan from the body side",
            Self::LensSide => "plan from the lens side",
            Self::Relief => "detail of the relief",
            Self::Lug => "detail of a lug",
        }
    }

    const fn is_detail(self) -> bool {
        match self {
            Self::Relief | Self::Lug => true,
            Self::BodySide | Self::LensSide => false,
        }
    }

    const fn choice(self, design: &Design) -> ViewChoice {
        let views = &design.sheet.views;
        match self {
            Self::BodySide => views.body_side,
            Self::LensSide => views.lens_side,
            Self::Relief => views.relief_detail,
            Self::Lug => views.lug_detail,
        }
    }
}

/// A view with its title, not yet in its place.
struct Block {
    view: SheetView,
    title: String,
    bounds: Extent,
    width_mm: f64,
    height_mm: f64,
}

impl Block {
    /// Width and height, mm.
    const fn size_mm(&self) -> (f64, f64) {
        (self.width_mm, self.height_mm)
    }
}

/// The plans of one sheet.
struct Plans {
    body: Option<Block>,
    lens: Option<Block>,
}

/// The half-section with the details that it points at.
struct Section {
    block: Block,
    details: Vec<Detail>,
    scale: Scale,
}

impl Views<'_> {
    /// The views in their places; none where they do not fit.
    #[must_use]
    pub fn arranged(&self, room: &Room) -> Option<Arrangement> {
        let asked = self.design.sheet.scale;
        let asked = asked.map_or_else(|| SCALES.to_vec(), |scale| vec![scale]);
        asked
            .into_iter()
            .filter(|scale| self.may_fit(*scale, room))
            .find_map(|scale| self.arranged_at(scale, room))
    }

    /// The same at one scale of the half-section: with its signs where they are read best, else with none of them
    /// outside what the dimensions take.
    fn arranged_at(&self, scale: Scale, room: &Room) -> Option<Arrangement> {
        let required = self.chosen(&[ViewChoice::Always]);
        [Signs::Anywhere, Signs::Inside]
            .into_iter()
            .find_map(|signs| {
                let least = self.section(scale, signs, &required, room)?;
                let (plan_scale, arrangement) = self.with_plans(room, &least, &required)?;
                let more = self.with_more(room, (scale, plan_scale), signs, &required);
                Some(more.unwrap_or(arrangement))
            })
    }

    /// The required views at the largest scale of the plans that fits.
    fn with_plans(
        &self,
        room: &Room,
        section: &Section,
        required: &[Extra],
    ) -> Option<(Scale, Arrangement)> {
        let diameter = self.ring.sizes.flange_diameter;
        SCALES
            .into_iter()
            .filter(|plan| plan.factor() <= section.scale.factor())
            .filter(|plan| diameter * plan.factor() <= room.inside.height())
            .find_map(|plan| {
                let plans = self.plans(plan, required);
                Some((plan, self.attempt(room, section, &plans, required)?))
            })
    }

    /// As many of the further views as there is room for; none where there is none for any.
    fn with_more(
        &self,
        room: &Room,
        (scale, plan_scale): (Scale, Scale),
        signs: Signs,
        required: &[Extra],
    ) -> Option<Arrangement> {
        let mut known: Vec<(Vec<Extra>, Option<Section>)> = Vec::new();
        let sets = self.sets(required);
        sets.iter()
            .filter(|set| set.len() > required.len())
            .find_map(|set| {
                let details: Vec<Extra> = set
                    .iter()
                    .copied()
                    .filter(|extra| extra.is_detail())
                    .collect();
                if !known.iter().any(|(own, _)| *own == details) {
                    known.push((details.clone(), self.section(scale, signs, &details, room)));
                }
                let (_, section) = known.iter().find(|(own, _)| *own == details)?;
                self.attempt(room, section.as_ref()?, &self.plans(plan_scale, set), set)
            })
    }

    /// The half-section with the details of a set; none where it does not fit even by itself.
    fn section(
        &self,
        scale: Scale,
        signs: Signs,
        extras: &[Extra],
        room: &Room,
    ) -> Option<Section> {
        let details: Vec<Detail> = extras
            .iter()
            .filter_map(|extra| self.detail(*extra))
            .collect();
        let section = RingSection {
            design: self.design,
            evaluation: self.evaluation,
            ring: self.ring,
            style: self.style,
            factor: scale.factor(),
            details: &details,
            signs,
        };
        // Its dimensions alone must fit before signs are looked for.
        let dimensioned = section.dimensioned()?;
        let title = format!("A-A ({scale}), lens on the left");
        let fits = |block: &Block| room.row(&[block.size_mm()], false).is_some();
        if !fits(&self.block(dimensioned.0.clone(), title.clone())) {
            return None;
        }
        let block = self.block(section.with_signs(dimensioned)?, title);
        fits(&block).then_some(Section {
            block,
            details,
            scale,
        })
    }

    /// The plans of a set: from the body side, and from the lens side.
    fn plans(&self, scale: Scale, extras: &[Extra]) -> Plans {
        let body = extras
            .contains(&Extra::BodySide)
            .then(|| self.plan(scale, Side::Body, true));
        let lens = extras
            .contains(&Extra::LensSide)
            .then(|| self.plan(scale, Side::Lens, body.is_none()));
        Plans { body, lens }
    }

    fn chosen(&self, choices: &[ViewChoice]) -> Vec<Extra> {
        let is_chosen = |extra: &Extra| choices.contains(&extra.choice(self.design));
        Extra::ALL.into_iter().filter(is_chosen).collect()
    }

    /// Sets of views to try: all that are wanted first, in the end only those that must be.
    fn sets(&self, required: &[Extra]) -> Vec<Vec<Extra>> {
        let optional = self.chosen(&[ViewChoice::WhereRoom]);
        let mut sets: Vec<Vec<Extra>> = vec![Vec::new()];
        for extra in &optional {
            let with: Vec<Vec<Extra>> = sets
                .iter()
                .map(|set| set.iter().copied().chain([*extra]).collect())
                .collect();
            // A set with the earlier extra comes before one without it.
            sets = sets
                .into_iter()
                .zip(with)
                .flat_map(|(without, with)| [with, without])
                .collect();
        }
        sets.sort_by_key(|set| std::cmp::Reverse(set.len()));
        let with_required = |set: Vec<Extra>| required.iter().copied().chain(set).collect();
        sets.into_iter().map(with_required).collect()
    }

    /// Whether the bare ring fits into the room at a scale.
    fn may_fit(&self, scale: Scale, room: &Room) -> bool {
        let sizes = &self.ring.sizes;
        let length = sizes.spigot_length + sizes.seat_height.max(sizes.plate_thickness);
        length * scale.factor() < room.inside.width()
            && sizes.flange_diameter / 2.0 * scale.factor() < room.inside.height()
    }

    fn attempt(
        &self,
        room: &Room,
        section: &Section,
        plans: &Plans,
        extras: &[Extra],
    ) -> Option<Arrangement> {
        let Plans { body, lens } = plans;
        let said = SaidOnViews {
            lock_hole: body.is_some() || lens.is_some(),
            lead_in: section.details.iter().any(Detail::shows_lead_in),
        };
        let mark = self.style.mark;
        let mut lines = note_lines(self.design, self.evaluation, self.ring, mark, said);
        lines.extend(section.block.view.notes.iter().cloned());
        let projection = self.design.sheet.projection;
        let row = in_order(projection, &section.block, body.as_ref(), lens.as_ref());
        let sizes: Vec<(f64, f64)> = row.iter().map(|block| block.size_mm()).collect();
        [true, false].into_iter().find_map(|spread| {
            let mut taken = room.row(&sizes, spread)?;
            let mut views: Vec<PlacedView> = row
                .iter()
                .zip(&taken)
                .map(|(block, area)| self.placed(block, area))
                .collect();
            let notes = note_block(&lines, &room.free(&taken), self.style.height_mm)?;
            taken.extend(notes.iter().filter_map(Item::extent).reduce(Extent::union));
            for detail in &section.details {
                let (block, area) = self.detail_in(*detail, section.scale, &room.free(&taken))?;
                views.push(self.placed(&block, &area));
                taken.push(area);
            }
            Some(Arrangement {
                views,
                notes,
                scale: section.scale,
                left_out: self.left_out(extras),
            })
        })
    }

    /// What was wanted where there is room, and is not among some views.
    fn left_out(&self, extras: &[Extra]) -> Vec<&'static str> {
        self.chosen(&[ViewChoice::WhereRoom])
            .into_iter()
            .filter(|extra| !extras.contains(extra))
            .map(Extra::words)
            .collect()
    }

    fn detail(&self, extra: Extra) -> Option<Detail> {
        match extra {
            Extra::Relief => Detail::of_relief(self.design, self.evaluation, self.ring),
            Extra::Lug => Detail::of_lug(self.ring),
            Extra::BodySide | Extra::LensSide => None,
        }
    }

    fn plan(&self, scale: Scale, side: Side, sizes_lock_hole: bool) -> Block {
        let plan = RingPlan {
            design: self.design,
            evaluation: self.evaluation,
            ring: self.ring,
            style: self.style,
            factor: scale.factor(),
            side,
            sizes_lock_hole,
        };
        let from = match side {
            Side::Body => "from the body side",
            Side::Lens => "from the lens side",
        };
        self.block(plan.drawn(), format!("{from} ({scale})"))
    }

    /// A detail at the largest scale that fits into one of some areas, and its place there.
    fn detail_in(
        &self,
        detail: Detail,
        section: Scale,
        areas: &[Extent],
    ) -> Option<(Block, Extent)> {
        let fits = |scale: &Scale| {
            scale.factor() >= DETAIL_STEP * section.factor()
                && DETAIL_RADIUS
                    .contains(&(detail.radius_mm * scale.factor() / self.style.height_mm))
        };
        SCALES.into_iter().filter(fits).find_map(|scale| {
            let drawn = RingDetail {
                design: self.design,
                evaluation: self.evaluation,
                ring: self.ring,
                style: self.style,
                factor: scale.factor(),
                detail,
            };
            let block = self.block(drawn.drawn()?, format!("{} ({scale})", detail.letter));
            let area = areas
                .iter()
                .find(|area| area.width() >= block.width_mm && area.height() >= block.height_mm)?;
            let corner = Point {
                x: area.left + (area.width() - block.width_mm) / 2.0,
                y: area.top - block.height_mm,
            };
            let area = Extent::sized(corner, block.width_mm, block.height_mm);
            Some((block, area))
        })
    }

    fn block(&self, view: SheetView, title: String) -> Block {
        let nothing = Extent::between(Point { x: 0.0, y: 0.0 }, Point { x: 0.0, y: 0.0 });
        let bounds = view.settled(&self.style).bounds().unwrap_or(nothing);
        let letters = view_letters(&self.style).height_mm;
        Block {
            width_mm: bounds.width().max(width_mm(&title, letters)),
            height_mm: bounds.height() + TITLE_ROOM * self.style.height_mm,
            view,
            title,
            bounds,
        }
    }

    /// A view in the middle of its area under its title.
    fn placed(&self, block: &Block, area: &Extent) -> PlacedView {
        let height = self.style.height_mm;
        let from = block.bounds;
        let moved_mm = (
            area.centre().x - from.centre().x,
            area.top - TITLE_ROOM * height - from.top,
        );
        let middle = Point {
            x: area.centre().x,
            y: area.top - 2.0 * height,
        };
        PlacedView {
            view: block.view.clone(),
            moved_mm,
            title: view_title(&block.title, middle, &self.style),
        }
    }
}

/// The views from left to right (ISO 5456-2): in first angle projection what is seen from the left stands on the right.
fn in_order<'a>(
    projection: Projection,
    section: &'a Block,
    body: Option<&'a Block>,
    lens: Option<&'a Block>,
) -> Vec<&'a Block> {
    let (left, right) = match projection {
        Projection::FirstAngle => (body, lens),
        Projection::ThirdAngle => (lens, body),
    };
    left.into_iter().chain([section]).chain(right).collect()
}
