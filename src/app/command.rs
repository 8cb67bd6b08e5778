//! Everything a person can ask of the window: menus, keys and tooltips come from here.

use std::path::PathBuf;

use egui::{Key, KeyboardShortcut, Modifiers};

use super::edit::Edit;
use super::help::Help;
use super::look::LookChoice;
use super::menus::menus;
use super::page::Page;
use super::print_out::PrintOut;
use super::room_work::RoomWish;
use super::shop_edit::ShopEdit;
use crate::document::Design;
use crate::mount::{Body, Lens};

/// One wish. The window changes its document in no other way.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    /// Change the design; one step of undo.
    Edit(Edit),
    /// Change the design while something is dragged; the step ends with [`Command::DragEnded`].
    Drag(Edit),
    /// The drag is over.
    DragEnded,
    /// The drag is given up: the design is as it was before.
    DragGivenUp,
    /// Change the user's workshop; one step of its own undo.
    Shop(ShopEdit),
    /// Ask for two mounts and start a new design.
    New,
    /// Start a new design from these two.
    Start(Box<Lens>, Box<Body>),
    /// Start from a copy of this design, as one that nobody has saved.
    StartFrom(Box<Design>),
    /// Ask for a file and open it.
    Open,
    /// Save to the file it came from.
    Save,
    /// Ask for a file and save there.
    SaveAs,
    /// Ask for a file and write the drawing or the solid.
    Export,
    /// Ask for a file and write a sheet to be printed there.
    Print(PrintOut),
    /// Copy the drawing to the clipboard as a picture.
    CopyDrawing,
    /// Keep the lens of the design in the user's own mounts.
    KeepLens,
    /// Keep the body of the design in the user's own mounts.
    KeepBody,
    /// Ask for a file and take its mounts into the user's own.
    ImportMounts,
    /// Write the shipped workshop to the user's folder, to be edited there.
    WriteWorkshop,
    /// Keep the ring at work as a variant.
    KeepVariant,
    /// Ask for a file and bring its design in beside the open one.
    BringIn,
    /// Take a design that was brought in out again, by its number.
    TakeOut(u64),
    /// Ask for a file and write the comparison.
    ExportComparison,
    /// Go to the open design at this place, from 0.
    ShowTab(usize),
    /// Go to the open design to the right, round the end.
    NextTab,
    /// Go to the open design to the left, round the end.
    TabBefore,
    /// Close the design in hand.
    CloseTab,
    /// Ask about unsaved work that a crash has left.
    Recover,
    /// Open one of the recent files.
    OpenRecent(PathBuf),
    /// Empty the list of recent files.
    ClearRecent,
    /// Close the window.
    Quit,
    /// One step back.
    Undo,
    /// One step forward.
    Redo,
    /// Show the ring in both views.
    Fit,
    /// Show everything in both views.
    ShowAll,
    /// Enlarge the half-section.
    ZoomIn,
    /// Make the half-section smaller.
    ZoomOut,
    /// See the plan from the other side.
    TurnPlan,
    /// Turn the cutting line clockwise by a step.
    CutClockwise,
    /// Turn the cutting line back by a step.
    CutAnticlockwise,
    /// Go to a page.
    Show(Page),
    /// Show the room to move, or change what it shows.
    Room(RoomWish),
    /// Colours, contrast, size of the text.
    Look(LookChoice),
    /// Show help.
    Help(Help),
}

/// How far one press of a key turns the cutting line, degrees.
pub const CUT_STEP_DEG: f64 = 5.0;

const fn key(modifiers: Modifiers, key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(modifiers, key)
}

impl Command {
    /// The words in a menu or on a button.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        match self {
            Self::Edit(_) | Self::Drag(_) | Self::DragEnded | Self::DragGivenUp => "Change",
            Self::Shop(_) => "Change the workshop",
            Self::New => "New…",
            Self::Start(..) | Self::StartFrom(_) => "Start",
            Self::KeepLens => "Keep the lens in my mounts",
            Self::KeepBody => "Keep the body in my mounts",
            Self::ImportMounts => "Import mounts…",
            Self::WriteWorkshop => "Write the workshop file",
            Self::Open => "Open…",
            Self::Save => "Save",
            Self::SaveAs => "Save as…",
            Self::Export => "Export…",
            Self::CopyDrawing => "Copy the drawing",
            Self::KeepVariant => "Keep this as a variant",
            Self::BringIn => "Bring in to compare…",
            Self::TakeOut(_) => "Take out",
            Self::ExportComparison => "Export the comparison…",
            Self::ShowTab(_) => "Show the design",
            Self::NextTab => "Next design",
            Self::TabBefore => "Design before",
            Self::CloseTab => "Close the design",
            Self::Recover => "Unsaved work of a crash…",
            Self::OpenRecent(_) => "Open a recent file",
            Self::ClearRecent => "Clear this list",
            Self::Print(sheet) => sheet.label(),
            Self::Quit => "Quit",
            Self::Undo => "Undo",
            Self::Redo => "Redo",
            Self::Fit => "Show the ring",
            Self::ShowAll => "Show everything",
            Self::ZoomIn => "Larger",
            Self::ZoomOut => "Smaller",
            Self::TurnPlan => "Plan from the other side",
            Self::CutClockwise => "Turn the cut clockwise",
            Self::CutAnticlockwise => "Turn the cut anticlockwise",
            Self::Room(RoomWish::Toggle) => "Room to move on or off",
            Self::Room(RoomWish::SetAside(_) | RoomWish::Again) => "Room to move",
            Self::Show(page) => page.title(),
            Self::Look(choice) => choice.label(),
            Self::Help(help) => help.label(),
        }
    }

    /// What it does, for the hover text.
    #[must_use]
    pub const fn explains(&self) -> &'static str {
        match self {
            Self::Edit(_) | Self::Drag(_) | Self::DragEnded | Self::DragGivenUp => {
                "changes the design"
            }
            Self::Shop(_) => "changes the workshop and evaluates the design anew",
            Self::New => "choose a lens and a body and start a ring between them",
            Self::Start(..) => "start a ring between the two chosen mounts",
            Self::StartFrom(_) => "start from a copy of this design",
            Self::KeepLens => {
                "keep the lens with its readings in the list for new designs; a name that is taken is asked about"
            }
            Self::KeepBody => {
                "keep the body with its readings in the list for new designs; a name that is taken is asked about"
            }
            Self::ImportMounts => "take the mounts of a file into your own list",
            Self::WriteWorkshop => {
                "write machines, tools, instruments and materials to a file of your own, to be edited there"
            }
            Self::Open => "open a design from a file",
            Self::Save => "save the design to its file",
            Self::SaveAs => "save the design to another file",
            Self::Export => {
                "write the drawing as PNG, SVG, PDF or DXF, or the ring as a solid for a trial print"
            }
            Self::Print(sheet) => sheet.explains(),
            Self::CopyDrawing => {
                "put the drawing on the clipboard as a picture, to be pasted elsewhere"
            }
            Self::KeepVariant => "keep the ring as it is now, to be compared and brought back",
            Self::BringIn => "show the design of another file beside this one, to read only",
            Self::TakeOut(_) => "take this design out of the comparison; its file stays as it is",
            Self::ExportComparison => "write the comparison as a picture (PNG) or a table (CSV)",
            Self::ShowTab(_) => "go to this design",
            Self::NextTab => "go to the open design to the right",
            Self::TabBefore => "go to the open design to the left",
            Self::CloseTab => "close the design in hand; unsaved work is asked about",
            Self::Recover => {
                "what was not saved when the program was cut short, to be brought back or discarded"
            }
            Self::OpenRecent(_) => "open this file, in a tab of its own",
            Self::ClearRecent => "empty the list of recent files; the files themselves stay",
            Self::Quit => "close the window; unsaved work is asked about",
            Self::Undo => "take the last change back",
            Self::Redo => "make the change again that was taken back",
            Self::Fit => {
                "show the ring as large as it fits in both drawings; a double click does the same"
            }
            Self::ShowAll => "show lens, body and obstacles whole in both drawings",
            Self::ZoomIn => "enlarge the half-section; the mouse wheel does the same",
            Self::ZoomOut => "make the half-section smaller",
            Self::TurnPlan => "see the plan from the lens side or from the body side",
            Self::CutClockwise => {
                "turn the cutting line by 5 degrees, clockwise seen from the lens side"
            }
            Self::CutAnticlockwise => {
                "turn the cutting line by 5 degrees, anticlockwise seen from the lens side"
            }
            Self::Room(RoomWish::Toggle) => {
                "show under every dimension of the ring how far it can move, or leave it"
            }
            Self::Room(RoomWish::SetAside(_) | RoomWish::Again) => "work out the room to move",
            Self::Show(page) => page.explains(),
            Self::Look(choice) => choice.explains(),
            Self::Help(help) => help.explains(),
        }
    }

    /// The keys for it; the first is shown in the menu.
    #[must_use]
    pub fn keys(&self) -> Vec<KeyboardShortcut> {
        const WITH: Modifiers = Modifiers::COMMAND;
        const BARE: Modifiers = Modifiers::NONE;
        let shifted = WITH.plus(Modifiers::SHIFT);
        match self {
            Self::New => vec![key(WITH, Key::N)],
            Self::Open => vec![key(WITH, Key::O)],
            Self::Save => vec![key(WITH, Key::S)],
            Self::SaveAs => vec![key(shifted, Key::S)],
            Self::Export => vec![key(WITH, Key::E)],
            Self::CopyDrawing => vec![key(shifted, Key::C)],
            Self::KeepVariant => vec![key(WITH, Key::K)],
            Self::ExportComparison => vec![key(shifted, Key::E)],
            Self::NextTab => vec![key(WITH, Key::PageDown)],
            Self::TabBefore => vec![key(WITH, Key::PageUp)],
            Self::CloseTab => vec![key(WITH, Key::W)],
            Self::Quit => vec![key(WITH, Key::Q)],
            Self::Undo => vec![key(WITH, Key::Z)],
            Self::Redo => vec![key(shifted, Key::Z), key(WITH, Key::Y)],
            Self::Fit => vec![key(BARE, Key::F)],
            Self::ShowAll => vec![key(BARE, Key::A)],
            Self::ZoomIn => vec![key(BARE, Key::Plus), key(BARE, Key::Equals)],
            Self::ZoomOut => vec![key(BARE, Key::Minus)],
            Self::TurnPlan => vec![key(BARE, Key::B)],
            Self::CutClockwise => vec![key(BARE, Key::CloseBracket)],
            Self::CutAnticlockwise => vec![key(BARE, Key::OpenBracket)],
            Self::Show(page) => page
                .key()
                .map(|number| key(WITH, number))
                .into_iter()
                .collect(),
            Self::Look(choice) => choice.keys(),
            Self::Help(Help::Keys) => vec![key(BARE, Key::F1)],
            Self::Help(Help::Mounts | Help::Hints)
            | Self::Edit(_)
            | Self::Shop(_)
            | Self::Drag(_)
            | Self::DragEnded
            | Self::DragGivenUp
            | Self::Start(..)
            | Self::StartFrom(_)
            | Self::KeepLens
            | Self::KeepBody
            | Self::ImportMounts
            | Self::WriteWorkshop
            | Self::BringIn
            | Self::TakeOut(_)
            | Self::Room(_)
            | Self::ShowTab(_)
            | Self::Recover
            | Self::OpenRecent(_)
            | Self::ClearRecent
            | Self::Print(_) => Vec::new(),
        }
    }

    /// Whether its key may be taken while text is being typed: the text is finished first.
    #[must_use]
    pub const fn ends_typing(&self) -> bool {
        match self {
            Self::New
            | Self::Open
            | Self::Save
            | Self::SaveAs
            | Self::Export
            | Self::CopyDrawing
            | Self::KeepLens
            | Self::KeepBody
            | Self::ImportMounts
            | Self::WriteWorkshop
            | Self::KeepVariant
            | Self::BringIn
            | Self::TakeOut(_)
            | Self::ExportComparison
            | Self::ShowTab(_)
            | Self::NextTab
            | Self::TabBefore
            | Self::CloseTab
            | Self::Recover
            | Self::OpenRecent(_)
            | Self::ClearRecent
            | Self::Print(_)
            | Self::Quit
            | Self::Look(_)
            | Self::Help(_)
            | Self::Show(_) => true,
            Self::Edit(_)
            | Self::Shop(_)
            | Self::Drag(_)
            | Self::DragEnded
            | Self::DragGivenUp
            | Self::Start(..)
            | Self::StartFrom(_)
            | Self::Undo
            | Self::Redo
            | Self::Fit
            | Self::ShowAll
            | Self::ZoomIn
            | Self::ZoomOut
            | Self::TurnPlan
            | Self::CutClockwise
            | Self::CutAnticlockwise
            | Self::Room(_) => false,
        }
    }
}

/// The commands with a key, the key with most modifiers first: a looser one would take its press.
#[must_use]
pub fn keyed() -> Vec<(KeyboardShortcut, Command)> {
    let mut keyed: Vec<(KeyboardShortcut, Command)> = menus()
        .into_iter()
        .flat_map(|menu| menu.commands.into_iter().flatten())
        .flat_map(|command| {
            command
                .keys()
                .into_iter()
                .map(move |key| (key, command.clone()))
        })
        .collect();
    keyed.sort_by_key(|(key, _)| std::cmp::Reverse(held(key.modifiers)));
    keyed
}

fn held(modifiers: Modifiers) -> u8 {
    [
        modifiers.alt,
        modifiers.ctrl,
        modifiers.shift,
        modifiers.mac_cmd,
        modifiers.command,
    ]
    .map(u8::from)
    .iter()
    .sum()
}

#[cfg(test)]
#[path = "command_tests.rs"]
mod tests;
