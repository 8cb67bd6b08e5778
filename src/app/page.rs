//! The pages of the window.

use egui::Key;

/// A page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Page {
    /// The ring with its two mating parts, live.
    #[default]
    Design,
    /// What to measure on lens and body, and how.
    Measure,
    /// Light and focus.
    Optics,
    /// What the tolerances come to at infinity.
    Tolerance,
    /// The sheet as it prints.
    Drawing,
    /// The order of cuts, settings and passes.
    ShopPlan,
    /// What is read on the finished ring, and what puts it right.
    Inspection,
    /// The user's machines and tools.
    Workshop,
    /// The limits and clearances it is derived and judged by.
    Limits,
}

/// The keys of the pages, by their place in the page bar; 0 is the key of the text's usual size.
const KEYS: [Key; 10] = [
    Key::Num1,
    Key::Num2,
    Key::Num3,
    Key::Num4,
    Key::Num5,
    Key::Num6,
    Key::Num7,
    Key::Num8,
    Key::Num9,
    Key::L,
];

impl Page {
    /// Every page, in the order of the page bar.
    pub const ALL: [Self; 9] = [
        Self::Design,
        Self::Measure,
        Self::Optics,
        Self::Tolerance,
        Self::Drawing,
        Self::ShopPlan,
        Self::Inspection,
        Self::Workshop,
        Self::Limits,
    ];

    /// The key that shows it, with the command key held: the number of its place in the page bar as far as they go.
    #[must_use]
    pub fn key(self) -> Option<Key> {
        let place = Self::ALL.iter().position(|page| *page == self)?;
        KEYS.get(place).copied()
    }

    /// The name on the page bar.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Design => "Design",
            Self::Measure => "Measure",
            Self::Optics => "Optics",
            Self::Tolerance => "Tolerance",
            Self::Drawing => "Drawing",
            Self::ShopPlan => "Shop plan",
            Self::Inspection => "Inspection",
            Self::Workshop => "Workshop",
            Self::Limits => "Limits",
        }
    }

    /// What it is for.
    #[must_use]
    pub const fn explains(self) -> &'static str {
        match self {
            Self::Design => "half-section, lug pattern, every value and every finding",
            Self::Measure => {
                "what to measure on lens and body, how, and how sure the readings make it"
            }
            Self::Optics => "light in the corners, sharpness, what the ring does to focus",
            Self::Tolerance => "what adds up at infinity, and how many rings reach it",
            Self::Drawing => "the sheet as it prints: views, dimensions, title block, export",
            Self::ShopPlan => {
                "the order of cuts with the part at every step, settings of the head, passes of the thread"
            }
            Self::Workshop => {
                "your machines, cutters, instruments and materials, apart from the designs"
            }
            Self::Inspection => {
                "readings of the finished ring, what they prove, the infinity trial, the correction"
            }
            Self::Limits => "the limits and clearances that the ring is derived and judged by",
        }
    }
}
