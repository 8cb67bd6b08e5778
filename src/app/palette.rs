//! The colours, one set for a light ground and one for a dark one, and the look of the widgets.

use egui::{
    Color32, CornerRadius, FontData, FontDefinitions, FontFamily, FontId, FontTweak, Stroke,
    TextStyle, Theme, Visuals,
};

use crate::checks::Severity;
use crate::drawing::{Role, font};

/// The colours of one theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Palette {
    /// Ground of bars and columns.
    pub ground: Color32,
    /// Ground of the drawings.
    pub paper: Color32,
    /// Ground of text fields.
    pub field: Color32,
    /// Borders and rules.
    pub border: Color32,
    /// Lettering.
    pub ink: Color32,
    /// Lettering that stands back.
    pub faint_ink: Color32,
    /// What is chosen, lit or grabbed.
    pub accent: Color32,
    /// Ground of what is chosen.
    pub accent_ground: Color32,
    /// Clash.
    pub clash: Color32,
    /// Caution.
    pub caution: Color32,
    /// Note.
    pub note: Color32,
    /// Fine.
    pub fine: Color32,
    ring: Color32,
    hatch: Color32,
    lens: Color32,
    body: Color32,
    pin: Color32,
    axis: Color32,
    grid: Color32,
    dimension: Color32,
    light: Color32,
}

const fn rgb(hex: u32) -> Color32 {
    let [_, red, green, blue] = hex.to_be_bytes();
    Color32::from_rgb(red, green, blue)
}

const LIGHT: Palette = Palette {
    ground: rgb(0x00f2_f1ed),
    paper: rgb(0x00fd_fdfb),
    field: rgb(0x00ff_ffff),
    border: rgb(0x00d2_cfc6),
    ink: rgb(0x0026_2a2e),
    faint_ink: rgb(0x0063_686c),
    accent: rgb(0x000f_6f86),
    accent_ground: rgb(0x00cf_e7ec),
    clash: rgb(0x00b3_261e),
    caution: rgb(0x0099_5f00),
    note: rgb(0x003f_5f9e),
    fine: rgb(0x0033_7a46),
    ring: rgb(0x001d_2328),
    hatch: rgb(0x008f_8a7c),
    lens: rgb(0x0038_7089),
    body: rgb(0x0075_5493),
    pin: rgb(0x00a8_6a12),
    axis: rgb(0x0080_4a3c),
    grid: rgb(0x00e9_e7e0),
    dimension: rgb(0x0040_464c),
    light: rgb(0x00b5_8900),
};

const DARK: Palette = Palette {
    ground: rgb(0x0023_2729),
    paper: rgb(0x001a_1d1f),
    field: rgb(0x0017_1a1c),
    border: rgb(0x0040_4649),
    ink: rgb(0x00e2_e1dc),
    faint_ink: rgb(0x00a2_a6a6),
    accent: rgb(0x0062_c4da),
    accent_ground: rgb(0x001f_4a55),
    clash: rgb(0x00ff_7f70),
    caution: rgb(0x00f0_b550),
    note: rgb(0x008f_b2f2),
    fine: rgb(0x0075_c98b),
    ring: rgb(0x00ec_ebe6),
    hatch: rgb(0x0078_7668),
    lens: rgb(0x007f_bdd8),
    body: rgb(0x00bf_9ddd),
    pin: rgb(0x00e8_b162),
    axis: rgb(0x00d0_917f),
    grid: rgb(0x0028_2c2e),
    dimension: rgb(0x00c4_c8ca),
    light: rgb(0x00e6_c34a),
};

/// Strong contrast on a light ground.
const LIGHT_STRONG: Palette = Palette {
    ground: rgb(0x00ff_ffff),
    paper: rgb(0x00ff_ffff),
    field: rgb(0x00ff_ffff),
    border: rgb(0x0045_4545),
    ink: rgb(0x0000_0000),
    faint_ink: rgb(0x0033_3333),
    accent: rgb(0x0000_428a),
    accent_ground: rgb(0x00ff_e14d),
    clash: rgb(0x008f_0000),
    caution: rgb(0x006b_3f00),
    note: rgb(0x0000_3a8c),
    fine: rgb(0x0000_5220),
    ring: rgb(0x0000_0000),
    hatch: rgb(0x0066_6666),
    lens: rgb(0x0000_4d73),
    body: rgb(0x0055_1f80),
    pin: rgb(0x007a_4300),
    axis: rgb(0x0080_1a00),
    grid: rgb(0x00e2_e2e2),
    dimension: rgb(0x0000_0000),
    light: rgb(0x0080_5a00),
};

/// Strong contrast on a dark ground.
const DARK_STRONG: Palette = Palette {
    ground: rgb(0x0000_0000),
    paper: rgb(0x0000_0000),
    field: rgb(0x0000_0000),
    border: rgb(0x00b4_b4b4),
    ink: rgb(0x00ff_ffff),
    faint_ink: rgb(0x00d8_d8d8),
    accent: rgb(0x0066_e0ff),
    accent_ground: rgb(0x0000_4a66),
    clash: rgb(0x00ff_a090),
    caution: rgb(0x00ff_cc4d),
    note: rgb(0x00b3_ccff),
    fine: rgb(0x0099_f0ad),
    ring: rgb(0x00ff_ffff),
    hatch: rgb(0x00a0_a0a0),
    lens: rgb(0x0099_ddff),
    body: rgb(0x00dc_baff),
    pin: rgb(0x00ff_c266),
    axis: rgb(0x00ff_b199),
    grid: rgb(0x002a_2a2a),
    dimension: rgb(0x00ff_ffff),
    light: rgb(0x00ff_dd55),
};

impl Palette {
    /// The colours of a theme, with strong contrast or the usual one.
    #[must_use]
    pub const fn of(theme: Theme, strong: bool) -> Self {
        match (theme, strong) {
            (Theme::Light, false) => LIGHT,
            (Theme::Dark, false) => DARK,
            (Theme::Light, true) => LIGHT_STRONG,
            (Theme::Dark, true) => DARK_STRONG,
        }
    }

    /// The colour of a severity; word and sign say the same.
    #[must_use]
    pub const fn severity(&self, severity: Severity) -> Color32 {
        match severity {
            Severity::Clash => self.clash,
            Severity::Caution => self.caution,
            Severity::Note => self.note,
            Severity::Ok => self.fine,
        }
    }

    /// The colour of lines by what they stand for.
    #[must_use]
    pub const fn line(&self, role: Role) -> Color32 {
        match role {
            Role::Ring => self.ring,
            Role::RingHatch => self.hatch,
            Role::Lens => self.lens,
            Role::Body => self.body,
            Role::Axis => self.axis,
            Role::Grid => self.grid,
            Role::Dimension => self.dimension,
            Role::Annotation | Role::Frame => self.ink,
            Role::Highlight => self.accent,
            Role::Hidden => self.faint_ink,
            Role::Pin => self.pin,
            Role::Light => self.light,
            Role::Added => self.fine,
            Role::Removed => self.clash,
        }
    }

    /// The tint of areas by what they stand for.
    #[must_use]
    pub fn tint(&self, role: Role) -> Color32 {
        self.line(role).gamma_multiply(match role {
            Role::Ring => 0.10,
            Role::Pin => 0.35,
            Role::Added | Role::Removed => 0.28,
            Role::RingHatch
            | Role::Lens
            | Role::Body
            | Role::Axis
            | Role::Grid
            | Role::Dimension
            | Role::Annotation
            | Role::Frame
            | Role::Highlight
            | Role::Hidden
            | Role::Light => 0.16,
        })
    }

    /// The colours of a sheet as it prints: black on white, whatever the theme.
    #[must_use]
    pub const fn printed(&self) -> Self {
        const BLACK: Color32 = rgb(0x0016_1616);
        Self {
            paper: rgb(0x00ff_ffff),
            ink: BLACK,
            faint_ink: BLACK,
            accent: LIGHT.accent,
            ring: BLACK,
            hatch: BLACK,
            lens: BLACK,
            body: BLACK,
            pin: BLACK,
            axis: BLACK,
            grid: BLACK,
            dimension: BLACK,
            light: BLACK,
            ..*self
        }
    }

    fn visuals(&self, theme: Theme) -> Visuals {
        let mut visuals = match theme {
            Theme::Light => Visuals::light(),
            Theme::Dark => Visuals::dark(),
        };
        visuals.panel_fill = self.ground;
        visuals.window_fill = self.ground;
        visuals.window_stroke = Stroke::new(1.0, self.border);
        visuals.extreme_bg_color = self.field;
        visuals.faint_bg_color = self.border.gamma_multiply(0.25);
        visuals.hyperlink_color = self.accent;
        visuals.error_fg_color = self.clash;
        visuals.warn_fg_color = self.caution;
        visuals.weak_text_color = Some(self.faint_ink);
        visuals.selection.bg_fill = self.accent_ground;
        visuals.selection.stroke = Stroke::new(1.0, self.accent);
        let widgets = &mut visuals.widgets;
        widgets.noninteractive.fg_stroke = Stroke::new(1.0, self.ink);
        widgets.noninteractive.bg_stroke = Stroke::new(1.0, self.border);
        for (state, edge) in [
            (&mut widgets.inactive, self.border),
            (&mut widgets.hovered, self.accent),
            (&mut widgets.active, self.accent),
            (&mut widgets.open, self.accent),
        ] {
            state.bg_stroke = Stroke::new(1.0, edge);
            state.fg_stroke = Stroke::new(1.0, self.ink);
            state.weak_bg_fill = self.paper;
            state.bg_fill = self.paper;
            state.corner_radius = CornerRadius::same(3);
            state.expansion = 0.0;
        }
        widgets.active.weak_bg_fill = self.accent_ground;
        widgets.open.weak_bg_fill = self.accent_ground;
        visuals
    }
}

/// The colours in force.
#[must_use]
pub fn palette(ui: &egui::Ui, strong: bool) -> Palette {
    let theme = if ui.visuals().dark_mode {
        Theme::Dark
    } else {
        Theme::Light
    };
    Palette::of(theme, strong)
}

/// The family of the drawing's own lettering.
#[must_use]
pub fn lettering_family() -> FontFamily {
    FontFamily::Name("lettering".into())
}

/// Size of small print, points.
pub const SMALL: f32 = 11.0;
/// Size of ordinary lettering, points.
pub const BODY: f32 = 12.5;

/// Gives the window its lettering.
pub fn dress(context: &egui::Context) {
    let mut fonts = FontDefinitions::default();
    // Fitted to the dots of the screen this font loses minus signs.
    let tweak = FontTweak {
        hinting: Some(false),
        ..FontTweak::default()
    };
    fonts.font_data.insert(
        "lettering".to_owned(),
        FontData::from_static(font::FONT).tweak(tweak).into(),
    );
    let mut chain = vec!["lettering".to_owned()];
    chain.extend(
        fonts
            .families
            .get(&FontFamily::Proportional)
            .into_iter()
            .flatten()
            .cloned(),
    );
    fonts
        .families
        .insert(FontFamily::Proportional, chain.clone());
    fonts.families.insert(lettering_family(), chain);
    context.set_fonts(fonts);
    dress_in(context, false);
}

/// Dresses both themes in their colours, with strong contrast or the usual one.
pub fn dress_in(context: &egui::Context, strong: bool) {
    // The text sizes are commands of our own, which are remembered.
    context.options_mut(|options| options.zoom_with_keyboard = false);
    for theme in [Theme::Light, Theme::Dark] {
        let palette = Palette::of(theme, strong);
        context.style_mut_of(theme, |style| {
            style.visuals = palette.visuals(theme);
            style.spacing.item_spacing = egui::vec2(6.0, 4.0);
            style.spacing.button_padding = egui::vec2(7.0, 2.0);
            style.spacing.interact_size = egui::vec2(24.0, 20.0);
            style.spacing.indent = 12.0;
            style.spacing.tooltip_width = 380.0;
            for (which, size) in [
                (TextStyle::Small, SMALL),
                (TextStyle::Body, BODY),
                (TextStyle::Button, BODY),
                (TextStyle::Heading, 15.0),
            ] {
                style.text_styles.insert(which, FontId::proportional(size));
            }
            style
                .text_styles
                .insert(TextStyle::Monospace, FontId::monospace(BODY));
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn brightness(colour: Color32) -> f32 {
        // Relative luminance of WCAG 2.1, from memory.
        let part = |byte: u8| {
            let share = f32::from(byte) / 255.0;
            if share <= 0.04045 {
                share / 12.92
            } else {
                ((share + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * part(colour.r()) + 0.7152 * part(colour.g()) + 0.0722 * part(colour.b())
    }

    #[test]
    fn lettering_stands_out_from_its_ground() {
        // WCAG 2.1 success criteria 1.4.3: 4.5 to 1 for text, 1.4.6: 7 to 1 for enhanced contrast (from memory).
        for (palette, least) in [
            (LIGHT, 4.5),
            (DARK, 4.5),
            (LIGHT_STRONG, 7.0),
            (DARK_STRONG, 7.0),
        ] {
            for ground in [palette.ground, palette.paper] {
                let inks = [
                    palette.ink,
                    palette.faint_ink,
                    palette.clash,
                    palette.caution,
                    palette.note,
                    palette.fine,
                ];
                for ink in inks {
                    let (a, b) = (brightness(ink) + 0.05, brightness(ground) + 0.05);
                    assert!(
                        a.max(b) / a.min(b) >= least,
                        "{ink:?} on {ground:?}: {}",
                        a.max(b) / a.min(b)
                    );
                }
            }
        }
    }

    #[test]
    fn edges_and_what_has_the_keyboard_are_seen() {
        // WCAG 2.1 success criterion 1.4.11: 3 to 1 for edges and signs (from memory).
        let ratio = |one: Color32, other: Color32| {
            let (a, b) = (brightness(one) + 0.05, brightness(other) + 0.05);
            a.max(b) / a.min(b)
        };
        for palette in [LIGHT, DARK, LIGHT_STRONG, DARK_STRONG] {
            assert!(ratio(palette.accent, palette.ground) >= 3.0);
            assert!(ratio(palette.accent, palette.paper) >= 3.0);
        }
        for palette in [LIGHT_STRONG, DARK_STRONG] {
            assert!(ratio(palette.border, palette.ground) >= 3.0);
            assert!(ratio(palette.ink, palette.accent_ground) >= 7.0);
        }
    }
}
