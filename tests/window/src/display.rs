//! A private display: `Xvfb` on a number it finds free by itself, ended when dropped.
//!
//! There is no window manager on it, so a window is placed and sized by the app alone.

use std::io::{BufRead as _, BufReader};
use std::process::{Child, Command, Stdio};

use xtask::children::{self, Footing};

use crate::trouble::Trouble;

/// Width and height of a screen.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Size {
    /// Width in pixels.
    pub width_px: u32,
    /// Height in pixels.
    pub height_px: u32,
}

impl Size {
    /// A common phone held upright.
    pub const PHONE: Self = Self { width_px: 412, height_px: 915 };
    /// The smallest phone we serve, held upright.
    pub const SMALL_PHONE: Self = Self { width_px: 360, height_px: 740 };
    /// A window on a desk.
    pub const DESK: Self = Self { width_px: 1280, height_px: 800 };
}

/// A display of its own.
pub struct Display {
    server: Child,
    name: String,
}

impl Display {
    /// Starts a display of this size.
    ///
    /// # Errors
    ///
    /// Says that `Xvfb` could not be started or named no display.
    pub fn start(size: Size) -> Result<Self, Trouble> {
        let screen = format!("{}x{}x24", size.width_px, size.height_px);
        let mut command = Command::new("Xvfb");
        command
            .args(["-displayfd", "1", "-nolisten", "tcp", "-screen", "0", &screen])
            // Without this the display starts anew when its last window is gone, and a window that opens just then
            // finds none.
            .arg("-noreset")
            .stdout(Stdio::piped())
            .stderr(Stdio::null());
        let mut server = children::start(&mut command, Footing::Apart).map_err(Trouble::Process)?;
        let mut number = String::new();
        if let Some(stdout) = server.stdout.take() {
            // An unreadable answer leaves the number empty, which is told just below.
            let _n_read = BufReader::new(stdout).read_line(&mut number);
        }
        let display = Self { server, name: format!(":{}", number.trim()) };
        if number.trim().is_empty() {
            return Err(Trouble::Process("Xvfb found no free display".to_owned()));
        }
        Ok(display)
    }

    /// The value for `DISPLAY`.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }
}

impl Drop for Display {
    fn drop(&mut self) {
        end(&mut self.server);
    }
}

/// Ends a process at once and takes leave of it. One that has ended already is as wanted.
pub(crate) fn end(process: &mut Child) {
    let _ended = process.kill();
    let _left = process.wait();
}
