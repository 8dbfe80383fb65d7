//! A visit that stands at its first fill: made once in a run, and copied for everything that begins there.

use std::path::{Path, PathBuf};

use tokio::sync::OnceCell;

use crate::begin;
use crate::cases::{Programs, fill};
use crate::display::Size;
use crate::drive::{Drive, Manner};
use crate::hand::Hand;
use crate::sought::like;
use crate::trouble::Trouble;
use crate::window::{Setting, Window};

/// The folder that is copied, once it is made.
#[derive(Default)]
pub(crate) struct Prepared {
    data: OnceCell<PathBuf>,
}

impl Prepared {
    /// Opens the window on a copy of the visit at its first fill, in a folder of its own.
    pub(crate) async fn open(
        &self,
        programs: &Programs,
        all: &Path,
        folder: &Path,
        size: Size,
    ) -> Result<Window, Trouble> {
        let made = self.data.get_or_try_init(|| make(programs, all.join("at_the_first_fill"))).await?;
        let data = folder.join("data");
        copy(made, &data)?;
        let window = Window::open(Setting { app: programs.app.clone(), data, size, dusk: false }).await?;
        window.find(like("heading", "Mix fill 1")).await.map(|_heading| window)
    }
}

/// Answers, plans and ticks in the window, as far as the first fill, and leaves the data folder behind.
async fn make(programs: &Programs, folder: PathBuf) -> Result<PathBuf, Trouble> {
    let data = folder.join("data");
    if folder.exists() {
        std::fs::remove_dir_all(&folder).map_err(Trouble::with_file(&folder))?;
    }
    fill(&programs.serve, &data)?;
    let setting = Setting { app: programs.app.clone(), data: data.clone(), size: Size::PHONE, dusk: false };
    let mut drive = Drive::new(Window::open(setting).await?, &folder, Manner::Onward, Hand::Pointer);
    begin::short(&mut drive).await?;
    drive.settled().await?;
    // Everything was acknowledged, so it is on the disk.
    drive.window.kill().await?;
    Ok(data)
}

/// Copies the files of a data folder whose app has ended; what the web view keeps for itself stays behind.
fn copy(from: &Path, to: &Path) -> Result<(), Trouble> {
    if to.exists() {
        std::fs::remove_dir_all(to).map_err(Trouble::with_file(to))?;
    }
    std::fs::create_dir_all(to).map_err(Trouble::with_file(to))?;
    for entry in std::fs::read_dir(from).map_err(Trouble::with_file(from))?.flatten() {
        let path = entry.path();
        if path.is_file() {
            std::fs::copy(&path, to.join(entry.file_name())).map_err(Trouble::with_file(path))?;
        }
    }
    Ok(())
}
