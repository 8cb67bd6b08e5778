//! The menus: which commands stand in which, in their order.

use super::command::Command;
use super::help::Help;
use super::look::LookChoice;
use super::page::Page;
use super::print_out::PrintOut;
use super::room_work::RoomWish;

/// A group of commands in the menu bar.
#[derive(Clone, Debug)]
pub struct Menu {
    /// Its title.
    pub title: &'static str,
    /// Its commands; none stands for a line between them.
    pub commands: Vec<Option<Command>>,
}

/// The menus, in the order of the menu bar.
#[must_use]
pub fn menus() -> Vec<Menu> {
    let file = vec![
        Some(Command::New),
        Some(Command::Open),
        None,
        Some(Command::Save),
        Some(Command::SaveAs),
        Some(Command::Export),
        Some(Command::CopyDrawing),
        Some(Command::Print(PrintOut::Plan)),
        Some(Command::Print(PrintOut::Inspection)),
        None,
        Some(Command::BringIn),
        Some(Command::ExportComparison),
        None,
        Some(Command::KeepLens),
        Some(Command::KeepBody),
        Some(Command::ImportMounts),
        Some(Command::WriteWorkshop),
        None,
        Some(Command::NextTab),
        Some(Command::TabBefore),
        Some(Command::CloseTab),
        Some(Command::Recover),
        None,
        Some(Command::Quit),
    ];
    let change = vec![
        Some(Command::Undo),
        Some(Command::Redo),
        None,
        Some(Command::KeepVariant),
    ];
    let view = vec![
        Some(Command::Fit),
        Some(Command::ShowAll),
        Some(Command::ZoomIn),
        Some(Command::ZoomOut),
        None,
        Some(Command::TurnPlan),
        Some(Command::CutClockwise),
        Some(Command::CutAnticlockwise),
        None,
        Some(Command::Room(RoomWish::Toggle)),
        None,
    ];
    let view = view
        .into_iter()
        .chain(LookChoice::ALL.map(|choice| Some(Command::Look(choice))))
        .collect();
    let help = Help::ALL.map(|help| Some(Command::Help(help))).to_vec();
    let pages = Page::ALL
        .into_iter()
        .map(|page| Some(Command::Show(page)))
        .collect();
    vec![
        Menu {
            title: "File",
            commands: file,
        },
        Menu {
            title: "Change",
            commands: change,
        },
        Menu {
            title: "View",
            commands: view,
        },
        Menu {
            title: "Page",
            commands: pages,
        },
        Menu {
            title: "Help",
            commands: help,
        },
    ]
}
