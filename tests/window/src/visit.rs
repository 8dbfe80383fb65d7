//! The whole visit as one person would go through it: measures an invented lawn, answers, plans, ticks, mixes, walks
//! with refills, puts right what the passes showed, uses up, washes, signs, and looks at the next visit.
//!
//! It follows what the screen says: the heading decides what is done next, and everything is found by role and name.
//! All that is typed is invented. The same drive serves for pictures and for kills.

use std::path::Path;

use crate::cases::Programs;
use crate::display::Size;
use crate::drive::{Drive, Manner};
use crate::hand::Hand;
use crate::sought::the;
use crate::trouble::Trouble;
use crate::window::{Setting, Window};
use crate::{begin, clicker, walk};

/// The lawn that is measured.
pub(crate) const LAWN: &str = "Lawn by the orchard (invented)";

/// Fills a fresh data folder with the invented firm, drives the whole visit on a display of its own, and leaves
/// pictures, `record.json` and `summary.txt` in this folder.
///
/// # Errors
///
/// Says at which step it stopped and what the screen showed; the pictures up to there stay.
pub async fn drive_whole(
    programs: &Programs,
    out: &Path,
    size: Size,
    manner: Manner,
    hand: Hand,
) -> Result<Drive, Trouble> {
    std::fs::create_dir_all(out).map_err(Trouble::with_file(out))?;
    let data = out.join("data");
    crate::cases::fill(&programs.serve, &data)?;
    let window = Window::open(Setting { app: programs.app.clone(), data, size, dusk: false }).await?;
    let mut drive = Drive::new(window, out, manner, hand);
    let end = whole(&mut drive, out).await;
    ended(drive, out, end).await
}

/// From the first fill to the signature by a clicker alone, which is then typed and signed by keyboard.
pub(crate) async fn drive_by_clicker(window: Window, out: &Path) -> Result<Drive, Trouble> {
    let mut drive = Drive::new(window, out, Manner::Onward, Hand::Keyboard);
    let end = async {
        clicker::until_the_signature(&mut drive).await?;
        walk::signing(&mut drive).await?;
        record(&mut drive, out).await
    };
    let end = end.await;
    ended(drive, out, end).await
}

/// Leaves the summary, and of a drive that stopped a picture of where.
pub(crate) async fn ended(drive: Drive, out: &Path, end: Result<(), Trouble>) -> Result<Drive, Trouble> {
    let summary = out.join("summary.txt");
    let last_line = match &end {
        Ok(()) => "The visit reached its closed record.".to_owned(),
        Err(why) => format!("The visit stopped: {why}"),
    };
    std::fs::write(&summary, format!("{}\n{last_line}\n", drive.summary())).map_err(Trouble::with_file(&summary))?;
    if end.is_err() {
        // It has failed already; a picture that cannot be taken must not hide why.
        let _shown = drive.window.screenshot(&out.join("stopped-here.png")).await;
    }
    end.map(|()| drive)
}

async fn whole(drive: &mut Drive, out: &Path) -> Result<(), Trouble> {
    begin::lawn(drive).await?;
    begin::need_product_and_kit(drive, LAWN).await?;
    begin::plan(drive).await?;
    begin::ready(drive).await?;
    walk::until_signed(drive).await?;
    record(drive, out).await?;
    next_time(drive).await
}

/// Reads the record and keeps its JSON.
pub(crate) async fn record(drive: &mut Drive, out: &Path) -> Result<(), Trouble> {
    drive.window.wait_for_words("Closed and signed.").await?;
    drive.step("the signed record").await?;
    drive.press(the("button", "The record as JSON")).await?;
    let field = drive.window.find(the("textbox", "The record as JSON")).await?;
    let text = field.prop("value").await.map_err(Trouble::while_doing("reading the record"))?;
    let text = text.unwrap_or_default();
    let json: serde_json::Value =
        serde_json::from_str(&text).map_err(|why| Trouble::Wrong(format!("the record is not JSON ({why}): {text}")))?;
    let path = out.join("record.json");
    std::fs::write(&path, format!("{json:#}\n")).map_err(Trouble::with_file(&path))?;
    drive.glance("the record as JSON").await
}

/// The lawns again, with what was learned, and the next visit to the same lawn.
async fn next_time(drive: &mut Drive) -> Result<(), Trouble> {
    drive.tap(the("button", "Back to the lawns")).await?;
    drive.window.find(the("heading", "Lawns")).await?;
    drive.window.wait_for_words(LAWN).await?;
    drive.step("the lawns with what was learned").await?;
    let again = format!("Begin a visit {LAWN}");
    drive.tap(the("button", &again)).await?;
    drive.window.find(the("heading", "Is a treatment right?")).await?;
    drive.step("the next visit looks back").await
}

impl Drive {
    /// The page's own heading just now.
    pub(crate) async fn heading(&self) -> Result<String, Trouble> {
        let text = "const h = document.querySelector('h1'); return h ? h.innerText : '';";
        let heading = self.window.run(text, serde_json::json!([])).await?;
        Ok(heading.as_str().unwrap_or_default().to_owned())
    }
}
