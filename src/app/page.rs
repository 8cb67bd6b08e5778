//! The pages of the window.

/// A page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Page {
    /// The ring with its two mating parts, live.
    #[default]
    Design,
    /// The limits and clearances it is derived and judged by.
    Limits,
}

impl Page {
    /// Every page, in the order of the page bar.
    pub const ALL: [Self; 2] = [Self::Design, Self::Limits];

    /// The name on the page bar.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Design => "Design",
            Self::Limits => "Limits",
        }
    }

    /// What it is for.
    #[must_use]
    pub const fn explains(self) -> &'static str {
        match self {
            Self::Design => "half-section, lug pattern, every value and every finding",
            Self::Limits => "the limits and clearances that the ring is derived and judged by",
        }
    }
}
