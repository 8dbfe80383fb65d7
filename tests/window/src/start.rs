//! How long a program takes until its window can be used, for the bench.
//!
//! Taken through the driver from asking for the session to seeing the first heading, so the same
//! cost of the driver is in every figure: only the ratio of two programs means something.

use std::path::Path;
use std::time::Instant;

use xtask::place;

use crate::cases;
use crate::display::Size;
use crate::sought::like;
use crate::trouble::Trouble;
use crate::window::{Setting, Window};

/// Starts the program again and again on a fresh folder and prints the milliseconds as JSON. With the
/// loopback server's program at hand the folder holds the invented firm, else it is empty.
///
/// # Errors
///
/// Says that a window did not open or showed no heading.
pub async fn measure(app: &Path, serve: Option<&Path>, n_runs: usize) -> Result<(), Trouble> {
    let data = place::emptied("start").map_err(Trouble::Process)?;
    let mut started_in_ms = Vec::with_capacity(n_runs);
    for _ in 0..n_runs {
        match serve {
            Some(serve) => cases::fill(serve, &data)?,
            None => std::fs::create_dir_all(&data).map_err(Trouble::with_file(&data))?,
        }
        let setting = Setting { app: app.to_owned(), data: data.clone(), size: Size::PHONE, dusk: false };
        let mut window = Window::open(setting).await?;
        // The first start also warms the disk cache and the driver; only the second is timed.
        window.kill().await?;
        let started_at = Instant::now();
        window.reopen().await?;
        window.find(like("heading", "")).await?;
        started_in_ms.push(started_at.elapsed().as_secs_f64() * 1e3);
        drop(window);
        std::fs::remove_dir_all(&data).map_err(Trouble::with_file(&data))?;
    }
    println!("{}", serde_json::json!({ "app": app, "start_ms": started_in_ms }));
    Ok(())
}
