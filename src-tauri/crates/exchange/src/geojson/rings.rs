//! From rings in degrees to parts in metres: looked at, laid in one plane, turned one way round.
//!
//! Invariant: nothing is mended in silence. A ring closed for the file and corners that stood twice are noted; a ring
//! that crosses itself is refused with the sides that cross, never bent.

use evensward_core::lawn::{OutlineProblem, PatchKind, Plane, Position, Ring, ValidOutline, first_crossing_within};
use evensward_core::quantity::{Arg, Said, Unit};

use super::gather::{Gathered, Piece};
use super::{Imported, ImportedPart};
use crate::limits::count;

/// No lawn is treated on foot that is longer than this, in metres.
const LARGEST_M: f64 = 2_000.0;
/// So many problems are told one by one; the rest are counted.
const MOST_TOLD: usize = 20;
/// Corners nearer than this are one corner, in metres: far below what any tape or receiver tells apart.
const SAME_CORNER_M: f64 = 1e-4;

/// What was mended on the way, for the notes.
#[derive(Default)]
struct Mended {
    n_closed: usize,
    n_doubled: usize,
    n_holes: usize,
}

pub(super) fn measured(mut gathered: Gathered) -> Result<Imported, Vec<Said>> {
    refuse_places(&gathered.pieces)?;
    unwrap_round_the_back(&mut gathered.pieces);
    let bounds = Bounds::of(&gathered.pieces).ok_or_else(|| vec![Said::new("geojson-no-ground")])?;
    let origin = position(bounds.least_lon_deg, bounds.least_lat_deg)?;
    refuse_size(origin, &bounds, &gathered.pieces)?;
    let plane = Plane::north_up(origin);
    let mut mended = Mended::default();
    let mut problems = Vec::new();
    let (mut grass, mut taken_out) = (Vec::new(), Vec::new());
    for (piece_idx, piece) in gathered.pieces.iter().enumerate() {
        let Some(outer) = ring(&plane, &piece.outer, piece_idx, &mut mended, &mut problems) else { continue };
        for hole in &piece.holes {
            let Some(hole) = ring(&plane, hole, piece_idx, &mut mended, &mut problems) else { continue };
            if !do_meet(&outer, &hole) {
                problems.push(about("geojson-hole-outside", piece_idx));
            }
            mended.n_holes += 1;
            taken_out.push(ImportedPart { ring: hole, taken_out: Some(PatchKind::Other) });
        }
        let to = if piece.taken_out.is_some() { &mut taken_out } else { &mut grass };
        to.push(ImportedPart { ring: outer, taken_out: piece.taken_out });
    }
    if !problems.is_empty() {
        return Err(told(problems));
    }
    grass.append(&mut taken_out);
    Ok(Imported { origin, parts: grass, notes: notes(origin, &gathered, &mended) })
}

fn about(code: &'static str, piece_idx: usize) -> Said {
    Said::new(code).with("piece", count(piece_idx + 1))
}

fn told(mut problems: Vec<Said>) -> Vec<Said> {
    let n_more = problems.len().saturating_sub(MOST_TOLD);
    problems.truncate(MOST_TOLD);
    if n_more > 0 {
        problems.push(Said::new("geojson-more-problems").with("found", count(n_more)));
    }
    problems
}

fn notes(origin: Position, gathered: &Gathered, mended: &Mended) -> Vec<Said> {
    // A file with latitude and longitude swapped throughout is a good file elsewhere: only the operator can see it.
    let degrees = |value: f64| Arg::number(value, Unit::Degree, 4);
    let mut notes = vec![
        Said::new("geojson-lies-at")
            .with("latitude", degrees(origin.lat_deg()))
            .with("longitude", degrees(origin.lon_deg())),
    ];
    let mut note = |code: &'static str, n: usize| {
        if n > 0 {
            notes.push(Said::new(code).with("found", count(n)));
        }
    };
    note("geojson-rings-closed", mended.n_closed);
    note("geojson-corners-doubled", mended.n_doubled);
    note("geojson-holes-taken-out", mended.n_holes);
    note("geojson-without-area", gathered.n_without_area);
    note("geojson-worked-out-left", gathered.n_left_out);
    notes
}

fn position(lon_deg: f64, lat_deg: f64) -> Result<Position, Vec<Said>> {
    // A ring round the back of the globe was unwrapped beyond 180 degrees.
    let lon_deg = if lon_deg > 180.0 { lon_deg - 360.0 } else { lon_deg };
    Position::from_deg(lat_deg, lon_deg).map_err(|problem| vec![Said::new(problem.code())])
}

fn all_corners(pieces: &[Piece]) -> impl Iterator<Item = &(f64, f64)> {
    pieces.iter().flat_map(|piece| piece.outer.iter().chain(piece.holes.iter().flatten()))
}

/// Numbers that are no longitude and latitude in degrees.
fn refuse_places(pieces: &[Piece]) -> Result<(), Vec<Said>> {
    let is_beyond = |(lon_deg, lat_deg): &&(f64, f64)| {
        // Written so that a NaN is beyond, too.
        !(lon_deg.abs() <= 180.0 && lat_deg.abs() <= 90.0)
    };
    let Some((lon_deg, lat_deg)) = all_corners(pieces).find(is_beyond) else { return Ok(()) };
    if lon_deg.is_nan() || lat_deg.is_nan() {
        return Err(vec![Said::new("geojson-position-incomplete")]);
    }
    let is_swapped = lon_deg.abs() <= 90.0 && lat_deg.abs() <= 180.0;
    Err(vec![Said::new(if is_swapped { "geojson-looks-swapped" } else { "geojson-not-degrees" })])
}

/// A lawn on the 180th meridian has longitudes near 180 and near -180; they are laid side by side.
fn unwrap_round_the_back(pieces: &mut [Piece]) {
    let lons = || all_corners(pieces).map(|(lon_deg, _)| *lon_deg);
    let (least_deg, most_deg) = (lons().fold(f64::INFINITY, f64::min), lons().fold(f64::NEG_INFINITY, f64::max));
    if most_deg - least_deg <= 180.0 {
        return;
    }
    for piece in pieces {
        for (lon_deg, _) in piece.outer.iter_mut().chain(piece.holes.iter_mut().flatten()) {
            if *lon_deg < 0.0 {
                *lon_deg += 360.0;
            }
        }
    }
}

struct Bounds {
    least_lon_deg: f64,
    least_lat_deg: f64,
    most_lon_deg: f64,
    most_lat_deg: f64,
}

impl Bounds {
    fn of(pieces: &[Piece]) -> Option<Self> {
        let (lon_deg, lat_deg) = *all_corners(pieces).next()?;
        let start =
            Self { least_lon_deg: lon_deg, least_lat_deg: lat_deg, most_lon_deg: lon_deg, most_lat_deg: lat_deg };
        Some(all_corners(pieces).fold(start, |bounds, (lon_deg, lat_deg)| Self {
            least_lon_deg: bounds.least_lon_deg.min(*lon_deg),
            least_lat_deg: bounds.least_lat_deg.min(*lat_deg),
            most_lon_deg: bounds.most_lon_deg.max(*lon_deg),
            most_lat_deg: bounds.most_lat_deg.max(*lat_deg),
        }))
    }
}

fn refuse_size(origin: Position, bounds: &Bounds, pieces: &[Piece]) -> Result<(), Vec<Said>> {
    let far_corner = position(bounds.most_lon_deg, bounds.most_lat_deg)?;
    let across_m = origin.distance(far_corner).m();
    if across_m <= LARGEST_M {
        return Ok(());
    }
    if is_one_piece_swapped(pieces) {
        return Err(vec![Said::new("geojson-looks-swapped")]);
    }
    let said = Said::new("geojson-too-large").with("found", Arg::number(across_m, Unit::Metre, 0));
    Err(vec![said.with("limit", Arg::number(LARGEST_M, Unit::Metre, 0))])
}

/// Whether a piece lies beside the first one once its coordinates are swapped.
fn is_one_piece_swapped(pieces: &[Piece]) -> bool {
    let Some((first_lon_deg, first_lat_deg)) = pieces.first().and_then(|piece| piece.outer.first()) else {
        return false;
    };
    let is_near =
        |lon_deg: f64, lat_deg: f64| (lon_deg - first_lon_deg).abs() < 0.05 && (lat_deg - first_lat_deg).abs() < 0.05;
    pieces
        .iter()
        .filter_map(|piece| piece.outer.first())
        .any(|(lon_deg, lat_deg)| !is_near(*lon_deg, *lat_deg) && is_near(*lat_deg, *lon_deg))
}

/// One ring in metres, or nothing after its problems were told.
fn ring(
    plane: &Plane,
    corners: &[(f64, f64)],
    piece_idx: usize,
    mended: &mut Mended,
    problems: &mut Vec<Said>,
) -> Option<Vec<(f64, f64)>> {
    let mut ring: Vec<(f64, f64)> = Vec::with_capacity(corners.len());
    let is_same = |a: (f64, f64), b: (f64, f64)| (a.0 - b.0).hypot(a.1 - b.1) < SAME_CORNER_M;
    for (lon_deg, lat_deg) in corners {
        let corner = plane.to_plane(position(*lon_deg, *lat_deg).ok()?);
        if ring.last().is_some_and(|last| is_same(*last, corner)) {
            mended.n_doubled += 1;
        } else {
            ring.push(corner);
        }
    }
    match (ring.first(), ring.last()) {
        (Some(first), Some(last)) if ring.len() > 1 && is_same(*first, *last) => {
            ring.pop();
        }
        _ => mended.n_closed += 1,
    }
    if ring.len() < 3 {
        problems.push(about("geojson-ring-too-few-corners", piece_idx));
        return None;
    }
    if let Some(crossing) = first_crossing_within(&ring, SAME_CORNER_M) {
        let said = about("geojson-ring-crosses-itself", piece_idx)
            .with("first", count(crossing.first_side + 1))
            .with("second", count(crossing.second_side + 1));
        problems.push(said);
        return None;
    }
    match ValidOutline::from_rings(&[Ring { outer: ring.clone(), holes: Vec::new() }]) {
        Ok(_) => {}
        Err(OutlineProblem::NoArea) => {
            problems.push(about("geojson-ring-without-area", piece_idx));
            return None;
        }
        Err(problem) => {
            problems.push(about(problem.code(), piece_idx));
            return None;
        }
    }
    if signed_area_m2(&ring) < 0.0 {
        ring.reverse();
    }
    Some(ring)
}

pub(super) fn signed_area_m2(ring: &[(f64, f64)]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|((x, y), (next_x, next_y))| x * next_y - next_x * y).sum::<f64>() / 2.0
}

fn do_meet(outer: &[(f64, f64)], hole: &[(f64, f64)]) -> bool {
    let outline = |ring: &[(f64, f64)]| ValidOutline::from_rings(&[Ring { outer: ring.to_vec(), holes: Vec::new() }]);
    match (outline(outer), outline(hole)) {
        (Ok(outer), Ok(hole)) => !outer.common(&hole).is_empty(),
        _ => false,
    }
}
