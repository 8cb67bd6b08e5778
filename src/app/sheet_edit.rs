//! Every way in which the window can change the sheet of a design.

use crate::document::{DimensionId, Lengths, Projection, Sheet, SheetViews, ViewChoice};
use crate::standards::Scale;

/// A view that may be left out of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SheetPart {
    /// The plan from the body side.
    BodySide,
    /// The plan from the lens side.
    LensSide,
    /// The detail of the relief.
    ReliefDetail,
    /// The detail of a lug.
    LugDetail,
}

impl SheetPart {
    /// Every one, in the order shown.
    pub const ALL: [Self; 4] = [
        Self::BodySide,
        Self::LensSide,
        Self::ReliefDetail,
        Self::LugDetail,
    ];

    /// The label on screen.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::BodySide => "Lug pattern, body side",
            Self::LensSide => "Plan, lens side",
            Self::ReliefDetail => "Relief enlarged",
            Self::LugDetail => "Lug enlarged",
        }
    }

    /// What is chosen for it.
    #[must_use]
    pub const fn of(self, views: &SheetViews) -> ViewChoice {
        match self {
            Self::BodySide => views.body_side,
            Self::LensSide => views.lens_side,
            Self::ReliefDetail => views.relief_detail,
            Self::LugDetail => views.lug_detail,
        }
    }

    const fn place(self, views: &mut SheetViews) -> &mut ViewChoice {
        match self {
            Self::BodySide => &mut views.body_side,
            Self::LensSide => &mut views.lens_side,
            Self::ReliefDetail => &mut views.relief_detail,
            Self::LugDetail => &mut views.lug_detail,
        }
    }
}

/// A field of the title block that the user fills in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TitleField {
    /// Legal owner.
    Owner,
    /// Identification number.
    Number,
    /// Title.
    Title,
    /// Supplementary title.
    Supplement,
    /// Creator.
    Creator,
    /// Approval person.
    Approved,
    /// Date of issue.
    Date,
    /// Revision.
    Revision,
    /// Status.
    Status,
}

impl TitleField {
    /// Every one, in the order shown.
    pub const ALL: [Self; 9] = [
        Self::Title,
        Self::Supplement,
        Self::Owner,
        Self::Number,
        Self::Revision,
        Self::Date,
        Self::Creator,
        Self::Approved,
        Self::Status,
    ];

    /// The label on screen.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Owner => "Legal owner",
            Self::Number => "Number",
            Self::Title => "Title",
            Self::Supplement => "Second title",
            Self::Creator => "Created by",
            Self::Approved => "Approved by",
            Self::Date => "Date of issue",
            Self::Revision => "Revision",
            Self::Status => "Status",
        }
    }

    /// What stands there while it is empty.
    #[must_use]
    pub const fn hint(self) -> &'static str {
        match self {
            Self::Title => "the name of the design",
            Self::Supplement => "lens on body",
            Self::Owner
            | Self::Number
            | Self::Creator
            | Self::Approved
            | Self::Date
            | Self::Revision
            | Self::Status => "",
        }
    }

    /// What it holds.
    #[must_use]
    pub fn of(self, sheet: &Sheet) -> &str {
        match self {
            Self::Owner => &sheet.owner,
            Self::Number => &sheet.number,
            Self::Title => &sheet.title,
            Self::Supplement => &sheet.supplement,
            Self::Creator => &sheet.creator,
            Self::Approved => &sheet.approved,
            Self::Date => &sheet.date,
            Self::Revision => &sheet.revision,
            Self::Status => &sheet.status,
        }
    }

    fn place(self, sheet: &mut Sheet) -> &mut String {
        match self {
            Self::Owner => &mut sheet.owner,
            Self::Number => &mut sheet.number,
            Self::Title => &mut sheet.title,
            Self::Supplement => &mut sheet.supplement,
            Self::Creator => &mut sheet.creator,
            Self::Approved => &mut sheet.approved,
            Self::Date => &mut sheet.date,
            Self::Revision => &mut sheet.revision,
            Self::Status => &mut sheet.status,
        }
    }
}

/// One change to the sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum SheetEdit {
    /// Set the scale of the half-section, or let it fit.
    Scale(Option<Scale>),
    /// Choose how the views are arranged.
    Projection(Projection),
    /// Choose whether a view is drawn.
    View(SheetPart, ViewChoice),
    /// Choose the unit of lengths.
    Lengths(Lengths),
    /// Choose the decimal comma.
    DecimalComma(bool),
    /// Leave the white ground out of pictures.
    Transparent(bool),
    /// Fill in a field of the title block.
    Title(TitleField, String),
    /// Write the further notes.
    Notes(String),
    /// Leave a dimension out, or show it again.
    Hide(DimensionId, bool),
    /// Move a dimension so far from the program's place, mm on paper: right, up.
    Move(DimensionId, (f64, f64)),
    /// Add a distance for information.
    Add(DimensionId),
    /// Give a dimension back its place; takes out one that was added.
    Restore(DimensionId),
    /// Give all dimensions back their places; takes out those that were added.
    RestoreAll,
}

/// Makes a change.
pub(super) fn put_sheet(sheet: &mut Sheet, edit: SheetEdit) {
    match edit {
        SheetEdit::Scale(scale) => sheet.scale = scale,
        SheetEdit::Projection(projection) => sheet.projection = projection,
        SheetEdit::View(part, choice) => *part.place(&mut sheet.views) = choice,
        SheetEdit::Lengths(lengths) => sheet.lengths = lengths,
        SheetEdit::DecimalComma(comma) => sheet.decimal_comma = comma,
        SheetEdit::Transparent(clear) => sheet.transparent = clear,
        SheetEdit::Title(field, text) => *field.place(sheet) = text,
        SheetEdit::Notes(text) => sheet.notes = text,
        SheetEdit::Hide(dimension, hidden) => sheet.override_mut(dimension).hidden = hidden,
        SheetEdit::Move(dimension, moved_mm) => sheet.override_mut(dimension).moved_mm = moved_mm,
        SheetEdit::Add(dimension) => {
            sheet.override_mut(dimension);
        }
        SheetEdit::Restore(dimension) => {
            sheet.overrides.retain(|own| own.dimension != dimension);
        }
        SheetEdit::RestoreAll => sheet.overrides.clear(),
    }
    sheet.tidy();
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Face, RingKey};

    #[test]
    fn what_is_put_back_leaves_no_trace() {
        let mut sheet = Sheet::default();
        let bore = DimensionId::Size(RingKey::LipBore);
        let added = DimensionId::between(Face::Seat, Face::Nose).unwrap();
        put_sheet(&mut sheet, SheetEdit::Hide(bore, true));
        put_sheet(&mut sheet, SheetEdit::Move(DimensionId::Thread, (2.0, 0.0)));
        put_sheet(&mut sheet, SheetEdit::Add(added));
        assert_eq!(sheet.overrides.len(), 3);
        put_sheet(&mut sheet, SheetEdit::Hide(bore, false));
        put_sheet(&mut sheet, SheetEdit::Move(DimensionId::Thread, (0.0, 0.0)));
        assert_eq!(sheet.overrides.len(), 1);
        put_sheet(&mut sheet, SheetEdit::Restore(added));
        assert_eq!(sheet, Sheet::default());
    }

    #[test]
    fn every_title_field_has_a_place_of_its_own() {
        let mut sheet = Sheet::default();
        for (place, field) in TitleField::ALL.into_iter().enumerate() {
            put_sheet(&mut sheet, SheetEdit::Title(field, place.to_string()));
        }
        for (place, field) in TitleField::ALL.into_iter().enumerate() {
            assert_eq!(field.of(&sheet), place.to_string());
        }
    }
}
