//! The look that a user chooses: colours, contrast, size of the text.

use egui::{Context, Key, KeyboardShortcut, Modifiers, ThemePreference};
use serde::{Deserialize, Serialize};

use super::palette::dress_in;

/// The look in force.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Look {
    /// Light, dark, or as the system has it.
    pub colours: ThemePreference,
    /// Whether lettering and edges stand out as far as they can.
    pub strong_contrast: bool,
    /// Size of text and everything with it, percent.
    pub text_percent: u16,
}

impl Default for Look {
    fn default() -> Self {
        Self {
            colours: ThemePreference::System,
            strong_contrast: false,
            text_percent: USUAL_PERCENT,
        }
    }
}

/// The size of the text that nobody has changed, percent.
const USUAL_PERCENT: u16 = 100;
/// The sizes there are, percent.
pub const TEXT_SIZES: [u16; 8] = [80, 90, 100, 110, 125, 150, 175, 200];

impl Look {
    /// The look after one choice.
    #[must_use]
    pub fn after(self, choice: LookChoice) -> Self {
        match choice {
            LookChoice::Colours(colours) => Self { colours, ..self },
            LookChoice::Contrast(strong_contrast) => Self {
                strong_contrast,
                ..self
            },
            LookChoice::TextLarger => self.sized(
                TEXT_SIZES
                    .into_iter()
                    .find(|size| *size > self.text_percent),
            ),
            LookChoice::TextSmaller => self.sized(
                TEXT_SIZES
                    .into_iter()
                    .rev()
                    .find(|size| *size < self.text_percent),
            ),
            LookChoice::TextUsual => self.sized(Some(USUAL_PERCENT)),
        }
    }

    /// At the ends of the list the size stays.
    fn sized(self, percent: Option<u16>) -> Self {
        Self {
            text_percent: percent.unwrap_or(self.text_percent),
            ..self
        }
    }

    /// Brings a size from a file into the span of the list.
    #[must_use]
    pub fn within_the_sizes(self) -> Self {
        let [least, .., most] = TEXT_SIZES;
        Self {
            text_percent: self.text_percent.clamp(least, most),
            ..self
        }
    }

    /// Whether a choice would change nothing because it is in force.
    #[must_use]
    pub fn has(self, choice: LookChoice) -> bool {
        match choice {
            LookChoice::Colours(colours) => self.colours == colours,
            LookChoice::Contrast(strong) => self.strong_contrast == strong,
            LookChoice::TextUsual => self.text_percent == USUAL_PERCENT,
            LookChoice::TextLarger | LookChoice::TextSmaller => false,
        }
    }

    /// Puts the look on the window.
    pub fn put_on(self, context: &Context) {
        dress_in(context, self.strong_contrast);
        context.set_theme(self.colours);
        context.set_zoom_factor(f32::from(self.text_percent) / 100.0);
    }
}

/// One choice in the look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LookChoice {
    /// Light, dark, or as the system has it.
    Colours(ThemePreference),
    /// Strong contrast or the usual one.
    Contrast(bool),
    /// Everything a step larger.
    TextLarger,
    /// Everything a step smaller.
    TextSmaller,
    /// Everything at its usual size.
    TextUsual,
}

impl LookChoice {
    /// Every choice, in the order of the menu.
    pub const ALL: [Self; 8] = [
        Self::Colours(ThemePreference::System),
        Self::Colours(ThemePreference::Light),
        Self::Colours(ThemePreference::Dark),
        Self::Contrast(false),
        Self::Contrast(true),
        Self::TextLarger,
        Self::TextSmaller,
        Self::TextUsual,
    ];

    /// The words in the menu.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Colours(ThemePreference::System) => "Colours as the system",
            Self::Colours(ThemePreference::Light) => "Light colours",
            Self::Colours(ThemePreference::Dark) => "Dark colours",
            Self::Contrast(false) => "Usual contrast",
            Self::Contrast(true) => "Strong contrast",
            Self::TextLarger => "Larger text",
            Self::TextSmaller => "Smaller text",
            Self::TextUsual => "Text at its usual size",
        }
    }

    /// What it does.
    #[must_use]
    pub const fn explains(self) -> &'static str {
        match self {
            Self::Colours(ThemePreference::System) => "light or dark, as the system is set",
            Self::Colours(ThemePreference::Light) => "dark lines on a light ground",
            Self::Colours(ThemePreference::Dark) => "light lines on a dark ground",
            Self::Contrast(false) => "the calm colours, for a good screen in a room without glare",
            Self::Contrast(true) => {
                "lettering and edges as far from their ground as can be, for a screen in the workshop or tired eyes"
            }
            Self::TextLarger => "text and everything with it a step larger, up to twice its size",
            Self::TextSmaller => "text and everything with it a step smaller, down to 80 %",
            Self::TextUsual => "text and everything with it at 100 %",
        }
    }

    /// The keys for it; the first is shown in the menu.
    #[must_use]
    pub fn keys(self) -> Vec<KeyboardShortcut> {
        let held = |key| KeyboardShortcut::new(Modifiers::COMMAND, key);
        match self {
            Self::Colours(_) | Self::Contrast(_) => Vec::new(),
            Self::TextLarger => vec![held(Key::Plus), held(Key::Equals)],
            Self::TextSmaller => vec![held(Key::Minus)],
            Self::TextUsual => vec![held(Key::Num0)],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_text_grows_to_twice_its_size_and_no_further() {
        let mut look = Look::default();
        for _ in 0..20 {
            look = look.after(LookChoice::TextLarger);
        }
        assert_eq!(look.text_percent, 200);
        assert_eq!(look.after(LookChoice::TextSmaller).text_percent, 175);
        for _ in 0..20 {
            look = look.after(LookChoice::TextSmaller);
        }
        assert_eq!(look.text_percent, 80);
        assert_eq!(look.after(LookChoice::TextUsual).text_percent, 100);
    }

    #[test]
    fn a_size_from_a_file_is_brought_between_the_ends() {
        let of = |text_percent| Look {
            text_percent,
            ..Look::default()
        };
        assert_eq!(of(0).within_the_sizes().text_percent, 80);
        assert_eq!(of(9000).within_the_sizes().text_percent, 200);
        assert_eq!(of(130).within_the_sizes().text_percent, 130);
        // Between two sizes of the list the next one is taken.
        assert_eq!(of(130).after(LookChoice::TextLarger).text_percent, 150);
    }
}
