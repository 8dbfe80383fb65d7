//! The reference libraries (GEOS through shapely, GeographicLib) and the real outlines and tracks beside them.
//!
//! `cargo xtask test` keeps them all in one folder of the checkout, [`folder`]:
//! - `outlines.json`: real plots and buildings, read by [`outlines`];
//! - `gpx/gpxpy/` and `gpx/crate/`: GPX files of real devices and pathological ones, listed by [`tracks`];
//! - `venv/`: the Python that runs `tests/reference/answer.py`, asked through [`answers`].
//!
//! Invariant: where the folder is missing, the caller fails and says what to run; nothing is left out in silence.

#![expect(clippy::disallowed_methods, reason = "reads what the set-up left and starts the reference libraries")]

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use evensward_core::lawn::{How, Part, PatchKind, Ring, Shape, Survey};
use serde_json::{Value, json};

/// What to do where the folder or a part of it is missing.
const WHAT_TO_DO: &str = "Run `cargo xtask set-up` once (`cargo xtask test` does it by itself).";

/// A real outline.
#[derive(Debug, Clone)]
pub struct Outline {
    /// What it is called where it comes from.
    pub name: String,
    /// Its polygon in metres of a plane about its own middle.
    pub ring: Ring,
    /// The latitude and longitude of each corner of the outer ring and the holes, for plots.
    pub lat_lon: Vec<Vec<(f64, f64)>>,
}

/// All real outlines.
#[derive(Debug, Clone)]
pub struct Outlines {
    /// The 407 plots of a real quarter.
    pub plots: Vec<Outline>,
    /// Some buildings.
    pub buildings: Vec<Outline>,
}

/// The folder with everything the set-up left for the tests: `target/reference` of the checkout.
#[must_use]
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/reference")
}

/// The real outlines.
///
/// # Errors
/// Says what to run where they are missing.
pub fn outlines() -> Result<Outlines, String> {
    let path = folder().join("outlines.json");
    let text = std::fs::read_to_string(&path).map_err(|why| missing(&path, &why))?;
    let value: Value =
        serde_json::from_str(&text).map_err(|why| format!("could not read {}: {why}", path.display()))?;
    let all = |name: &str| -> Option<Vec<Outline>> { value.get(name)?.as_array()?.iter().map(outline).collect() };
    let made = || Some(Outlines { plots: all("plots")?, buildings: all("buildings")? });
    made().ok_or_else(|| format!("{} has another shape than expected. {WHAT_TO_DO}", path.display()))
}

/// Every GPX file, in the order of their names.
///
/// # Errors
/// Says what to run where they are missing.
pub fn tracks() -> Result<Vec<PathBuf>, String> {
    let mut tracks = Vec::new();
    for from in ["gpx/crate", "gpx/gpxpy"] {
        let path = folder().join(from);
        let entries = std::fs::read_dir(&path).map_err(|why| missing(&path, &why))?;
        for entry in entries {
            tracks.push(entry.map_err(|why| missing(&path, &why))?.path());
        }
    }
    tracks.sort();
    Ok(tracks)
}

/// What the reference libraries say, case by case; the cases are described in `tests/reference/answer.py`.
///
/// # Errors
/// Says what to run where the libraries are missing, and which case was refused.
pub fn answers(cases: &[Value]) -> Result<Vec<Value>, String> {
    let python = folder().join("venv/bin/python");
    let program = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/answer.py");
    let mut child = Command::new(&python)
        .arg(&program)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|why| missing(&python, &why))?;
    // The program reads every case before it writes, so that neither side waits for the other.
    let question = serde_json::to_vec(cases).map_err(|why| format!("could not write the cases: {why}"))?;
    let asked = child.stdin.take().map(|mut stdin| stdin.write_all(&question));
    let output = child.wait_with_output().map_err(|why| format!("lost {}: {why}", program.display()))?;
    if !output.status.success() || !matches!(asked, Some(Ok(()))) {
        return Err(format!("{} ended with {}", program.display(), output.status));
    }
    let answers: Vec<Value> =
        serde_json::from_slice(&output.stdout).map_err(|why| format!("could not read the answers: {why}"))?;
    for (case_idx, answer) in answers.iter().enumerate() {
        if let Some(error) = answer.get("error") {
            return Err(format!("case {case_idx} was refused: {error}"));
        }
    }
    if answers.len() == cases.len() { Ok(answers) } else { Err("not every case was answered".to_owned()) }
}

/// A real outline as an operator would have it from a file: corners, with its holes as beds, and nothing beside it.
///
/// # Errors
/// Names the outline that is refused, with the reasons.
pub fn survey_of(outline: &Outline) -> Result<Survey, String> {
    let part = |ring: &Vec<(f64, f64)>, taken_out: Option<PatchKind>| -> Result<Part, String> {
        let shape = Shape::corners(ring.clone()).map_err(|why| format!("{} is refused: {why:?}", outline.name))?;
        Ok(Part { taken_out, how: How::File, ..Part::taped(shape) })
    };
    let beds = outline.ring.holes.iter().map(|hole| part(hole, Some(PatchKind::Bed)));
    let parts = core::iter::once(part(&outline.ring.outer, None)).chain(beds).collect::<Result<Vec<Part>, String>>()?;
    Ok(Survey::of(parts))
}

/// Ground as the reference libraries are given it.
#[must_use]
pub fn ground(rings: &[Ring]) -> Value {
    rings.iter().map(|ring| json!({"outer": ring.outer, "holes": ring.holes})).collect()
}

fn missing(path: &Path, why: &std::io::Error) -> String {
    format!("{} is not there ({why}). {WHAT_TO_DO}", path.display())
}

fn outline(value: &Value) -> Option<Outline> {
    let rings = |name: &str| -> Option<Vec<Vec<(f64, f64)>>> { serde_json::from_value(value.get(name)?.clone()).ok() };
    let mut of_plane = rings("rings")?.into_iter();
    let ring = Ring { outer: of_plane.next()?, holes: of_plane.collect() };
    Some(Outline { name: value.get("name")?.as_str()?.to_owned(), ring, lat_lon: rings("lat_lon")? })
}
