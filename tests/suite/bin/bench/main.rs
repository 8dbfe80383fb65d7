//! Figures for `cargo xtask bench`, as one JSON object on standard output.
//!
//! `bench journal FOLDER` times taps and replay in an empty folder; `bench planning FOLDER` times measuring and
//! planning, and wants the reference libraries.

#![expect(clippy::disallowed_methods, reason = "the bench reads the clock and the disk, that is its purpose")]

mod drag;
mod journal;
mod lawns;
mod planning;

use std::error::Error;
use std::path::PathBuf;

type Outcome<T> = Result<T, Box<dyn Error>>;

/// The figure below which this part of the figures lie.
fn quantile(figures: &mut [f64], part: f64) -> Option<f64> {
    figures.sort_by(f64::total_cmp);
    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "an index"
    )]
    let idx = (figures.len() as f64 * part) as usize;
    figures.get(idx.min(figures.len().checked_sub(1)?)).copied()
}

fn main() -> Outcome<()> {
    let mut arguments = std::env::args_os().skip(1);
    let figures = match (arguments.next().as_ref().and_then(|what| what.to_str()), arguments.next().map(PathBuf::from))
    {
        (Some("journal"), Some(folder)) => journal::figures(&folder)?,
        (Some("planning"), Some(folder)) => planning::figures(&folder)?,
        _ => return Err("say `journal` or `planning`, and an empty folder to work in".into()),
    };
    println!("{figures}");
    Ok(())
}
