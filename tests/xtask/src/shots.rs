//! The verb `shots`: screenshots of every screen, to be looked at side by side.
//!
//! Most are taken in Chromium against the loopback server, which is quick and knows a phone's
//! sizes; some in the real window, whose type and spacing may differ. Nothing here judges them.

use std::path::Path;
use std::process::Command;

use crate::set_up::{self, Wants};
use crate::{children, place};

/// Takes the screenshots and lays them out on contact sheets.
///
/// # Errors
///
/// Says what could not be taken or laid out.
pub fn shots() -> Result<(), String> {
    set_up::set_up(Wants::Driving)?;
    eprintln!("shots: building");
    children::run_aside(place::cargo().args(["build", "--workspace"]))?;
    let out = place::emptied("shots")?;
    eprintln!("shots: every screen in Chromium");
    children::run(
        place::npm()
            .args(["run", "shots"])
            .env("EVENSWARD_SERVE", place::program("debug", "evensward-serve")?)
            .env("EVENSWARD_SHOTS", &out),
    )?;
    eprintln!("shots: the visit in the real window");
    children::run(
        Command::new(place::program("debug", "evensward-window")?)
            .args(["visit", "--app"])
            .arg(place::program("debug", "evensward")?)
            .arg("--serve")
            .arg(place::program("debug", "evensward-serve")?)
            .arg("--out")
            .arg(out.join("real-window")),
    )?;
    contact_sheets(&out)
}

/// Pictures on one sheet; ImageMagick refuses a picture of more than 16,000 pixels either way.
const N_ON_A_SHEET: usize = 40;

/// Sheets for each folder that holds pictures. A screen pictured whole as well, with what lies below the fold, is on
/// the sheet as a person sees it; the whole picture lies beside.
fn contact_sheets(folder: &Path) -> Result<(), String> {
    let mut pictures = Vec::new();
    let entries =
        std::fs::read_dir(folder).map_err(|why| format!("could not look into {}: {why}", folder.display()))?;
    for entry in entries.flatten() {
        let path = entry.path();
        let name = entry.file_name().to_string_lossy().into_owned();
        if path.is_dir() {
            contact_sheets(&path)?;
        } else if name.ends_with(".png") && !name.ends_with("-whole.png") {
            pictures.push(path);
        }
    }
    pictures.sort();
    for (sheet_idx, lot) in pictures.chunks(N_ON_A_SHEET).enumerate() {
        let sheet = folder.join(format!("sheet-{}.jpg", sheet_idx + 1));
        let mut montage = Command::new("montage");
        montage.args(["-label", "%t", "-tile", "8x", "-geometry", "240x+6+6", "-background", "#ddd"]);
        children::run(montage.args(lot).arg(&sheet))?;
        println!("shots: {} pictures on {}", lot.len(), sheet.display());
    }
    Ok(())
}
