//! A baseline with offsets: the lawn's edges by their distances left and right of a taped line.
//!
//! The baseline runs away from the front, along y: left offsets lie to its left and right ones to its right, and the whole
//! is shifted so that the furthest left lies at x = 0 and the first station at y = 0. The area that counts is the outline's,
//! which is the trapezoid rule; Simpson's rule stands beside it where the stations allow, because it follows a curved edge
//! better, and how far the two differ goes into the uncertainty.
//! Formulas: trapezoid A = sum (c[i+1] - c[i]) (o[i] + o[i+1]) / 2; Simpson A = h/3 (o[0] + 4 odd + 2 even + o[n]) for an
//! even number of equal spaces (any surveying textbook, e.g. Ghilani and Wolf, Elementary Surveying, from memory).
//! Invariant: the ring is simple, and its area is the trapezoid area to rounding.

use super::corners;
use super::instrument::LengthSpread;
use super::survey::FieldRefusal;
use crate::quantity::{Area, Arg, Length, Said, Unit};

/// The longest chainage or offset that is believed, in metres.
const LONGEST_M: f64 = 2_000.0;
/// The most stations of one baseline.
const N_STATIONS_MOST: usize = 1_000;
/// Spaces that differ by less are equal, in metres.
const SAME_SPACE_M: f64 = 1e-6;

/// One station of the baseline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// How far along the baseline.
    pub chainage: Length,
    /// From the baseline to the left-hand edge; zero where the edge is the baseline itself.
    pub left: Length,
    /// From the baseline to the right-hand edge; zero where the edge is the baseline itself.
    pub right: Length,
}

/// What the offsets make.
#[derive(Debug, Clone, PartialEq)]
pub struct OffsetLawn {
    /// The outline, anticlockwise, in metres: x from the furthest left to the right, y along the baseline from its first
    /// station. It begins at the front left.
    pub ring: Vec<(f64, f64)>,
    /// The area by the trapezoid rule, which is the outline's.
    pub trapezoid: Area,
    /// The area by Simpson's rule, where the stations allow it.
    pub simpson: Option<Area>,
    /// Why there is no Simpson area.
    pub why_no_simpson: Option<Said>,
    /// The standard uncertainty (k = 1) of the trapezoid area.
    pub area_sd: Area,
}

/// Makes the outline and its areas. Refuses with every reason at once.
///
/// Fields of the refusals: `offsets`, `offsets.2.chainage`, `offsets.2.left`, `offsets.2.right`.
///
/// ```
/// use evensward_core::lawn::Instrument;
/// use evensward_core::lawn::offsets::{Station, measure};
/// use evensward_core::quantity::Length;
/// let m = |value| Length::from_m(value).unwrap();
/// let offsets = [0.0, 5.0, 8.0, 6.0, 0.0];
/// let stations: Vec<Station> = offsets
///     .iter()
///     .enumerate()
///     .map(|(idx, left)| Station { chainage: m(10.0 * idx as f64), left: m(*left), right: Length::ZERO })
///     .collect();
/// let lawn = measure(&stations, Instrument::Tape.spread()).unwrap();
/// assert!((lawn.trapezoid.m2() - 190.0).abs() < 1e-9);
/// assert!((lawn.simpson.unwrap().m2() - 200.0).abs() < 1e-9);
/// ```
///
/// # Errors
/// Fewer than two stations, chainages that run back, a lawn without width.
pub fn measure(stations: &[Station], spread: LengthSpread) -> Result<OffsetLawn, Vec<FieldRefusal>> {
    let refusals = refusals(stations);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let ring = ring(stations);
    if let Some(said) = corners::problem(&ring) {
        return Err(vec![FieldRefusal { field: "offsets".to_owned(), said }]);
    }
    let trapezoid_m2 = corners::signed_area_m2(&ring);
    let (simpson, why_no_simpson) = match simpson_m2(stations) {
        Ok(area_m2) => (Some(Area::computed(area_m2)), None),
        Err(said) => (None, Some(said)),
    };
    let between_rules_m2 = simpson.map_or(0.0, |area| area.m2() - trapezoid_m2);
    let area_sd_m2 = sd_of_lengths_m2(stations, spread)
        .hypot(2.0 * spread.scale * trapezoid_m2)
        // The edge between two stations lies anywhere between the rules: evenly spread, which is 1/sqrt(3) of the difference.
        .hypot(between_rules_m2 / 3.0_f64.sqrt());
    Ok(OffsetLawn {
        ring,
        trapezoid: Area::computed(trapezoid_m2),
        simpson,
        why_no_simpson,
        area_sd: Area::computed(area_sd_m2),
    })
}

fn refusals(stations: &[Station]) -> Vec<FieldRefusal> {
    let mut refusals = Vec::new();
    let mut refuse = |field: String, said: Said| refusals.push(FieldRefusal { field, said });
    if stations.len() < 2 {
        refuse("offsets".to_owned(), Said::new("offsets-too-few"));
    }
    if stations.len() > N_STATIONS_MOST {
        let limit = Arg::Count(u32::try_from(N_STATIONS_MOST).unwrap_or(u32::MAX));
        refuse("offsets".to_owned(), Said::new("too-many").with("limit", limit));
    }
    for (idx, station) in stations.iter().enumerate() {
        let lengths = [("chainage", station.chainage), ("left", station.left), ("right", station.right)];
        for (field, length) in lengths.iter().filter(|(_, length)| length.m() > LONGEST_M) {
            let limit = Arg::number(LONGEST_M, Unit::Metre, 0);
            let said = Said::new("too-large").with("limit", limit);
            refuse(format!("offsets.{idx}.{field}"), said.with("value", Arg::number(length.m(), Unit::Metre, 2)));
        }
    }
    for (idx, (before, here)) in stations.iter().zip(stations.iter().skip(1)).enumerate() {
        if here.chainage < before.chainage || here == before {
            let limit = Arg::number(before.chainage.m(), Unit::Metre, 2);
            let said = Said::new("chainage-not-rising").with("limit", limit);
            refuse(format!("offsets.{}.chainage", idx + 1), said);
        }
    }
    let has_no_width = |station: &Station| width_m(station) <= 0.0;
    let n_inner = stations.len().saturating_sub(2);
    for (idx, station) in stations.iter().enumerate().skip(1).take(n_inner) {
        if has_no_width(station) {
            let at = Arg::number(station.chainage.m(), Unit::Metre, 2);
            refuse(format!("offsets.{idx}.left"), Said::new("offset-without-width").with("at", at));
        }
    }
    if stations.len() >= 2 && stations.iter().all(has_no_width) {
        refuse("offsets".to_owned(), Said::new("outline-without-area"));
    }
    refusals
}

fn width_m(station: &Station) -> f64 {
    station.left.m() + station.right.m()
}

/// Along the front, away along the right-hand edge and back along the left-hand one. Of stations in a row that lie on the
/// baseline itself only the first and the last are corners.
fn ring(stations: &[Station]) -> Vec<(f64, f64)> {
    let start_m = stations.first().map_or(0.0, |station| station.chainage.m());
    let baseline_x_m = stations.iter().map(|station| station.left.m()).fold(0.0, f64::max);
    let edge = |offset_m: fn(&Station) -> f64, rightwards: f64| -> Vec<(f64, f64)> {
        let offset_at = |idx: Option<usize>| idx.and_then(|idx| stations.get(idx)).map(offset_m);
        let is_inner = |idx: usize| {
            let around = [offset_at(idx.checked_sub(1)), offset_at(Some(idx)), offset_at(idx.checked_add(1))];
            around.iter().all(|offset| *offset == Some(0.0))
        };
        let kept = stations.iter().enumerate().filter(|(idx, _)| !is_inner(*idx));
        kept.map(|(_, station)| (baseline_x_m + rightwards * offset_m(station), station.chainage.m() - start_m))
            .collect()
    };
    let right = edge(|station| station.right.m(), 1.0);
    let left = edge(|station| station.left.m(), -1.0);
    let mut ring: Vec<(f64, f64)> = Vec::new();
    for point in right.into_iter().chain(left.into_iter().rev()) {
        if ring.last() != Some(&point) {
            ring.push(point);
        }
    }
    if ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    } else {
        // The front edge is the first side, as it is of a rectangle.
        let n_steps = ring.len().min(1);
        ring.rotate_right(n_steps);
    }
    ring
}

fn simpson_m2(stations: &[Station]) -> Result<f64, Said> {
    let spaces: Vec<f64> =
        stations.iter().zip(stations.iter().skip(1)).map(|(from, to)| to.chainage.m() - from.chainage.m()).collect();
    let Some(&space_m) = spaces.first() else { return Err(Said::new("simpson-needs-odd-stations")) };
    if spaces.iter().any(|other_m| (other_m - space_m).abs() > SAME_SPACE_M) {
        return Err(Said::new("simpson-needs-equal-spaces"));
    }
    if !spaces.len().is_multiple_of(2) {
        return Err(Said::new("simpson-needs-odd-stations"));
    }
    let weighted = stations.iter().enumerate().map(|(idx, station)| {
        let weight = match idx {
            idx if idx == 0 || idx == spaces.len() => 1.0,
            idx if idx % 2 == 1 => 4.0,
            _ => 2.0,
        };
        weight * width_m(station)
    });
    Ok(space_m / 3.0 * weighted.sum::<f64>())
}

/// The spread of the trapezoid area from each length's own: dA/do = (next - previous chainage) / 2 and
/// dA/dc = (previous - next width) / 2, the ends having themselves as the neighbour that they lack.
fn sd_of_lengths_m2(stations: &[Station], spread: LengthSpread) -> f64 {
    let variance_m4 = stations.iter().enumerate().map(|(idx, here)| {
        let before = idx.checked_sub(1).and_then(|idx| stations.get(idx)).unwrap_or(here);
        let after = stations.get(idx + 1).unwrap_or(here);
        let of_offset_m = (after.chainage.m() - before.chainage.m()) / 2.0;
        // The end stations also carry the end of the area itself: dA/dc there is half of both widths.
        let of_chainage_m = match (idx, idx + 1 == stations.len()) {
            (0, _) | (_, true) => (width_m(before) + width_m(after)) / 2.0,
            _ => (width_m(before) - width_m(after)) / 2.0,
        };
        let offsets = [here.left, here.right].into_iter().filter(|offset| offset.m() > 0.0);
        let of_offsets: f64 = offsets.map(|offset| (of_offset_m * spread.own_m(offset)).powi(2)).sum();
        of_offsets + (of_chainage_m * spread.own_m(here.chainage)).powi(2)
    });
    variance_m4.sum::<f64>().sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lawn::Instrument;

    fn m(value: f64) -> Length {
        Length::from_m(value).unwrap()
    }

    fn stations(rows: &[(f64, f64, f64)]) -> Vec<Station> {
        rows.iter().map(|&(c, left, right)| Station { chainage: m(c), left: m(left), right: m(right) }).collect()
    }

    fn lawn(rows: &[(f64, f64, f64)]) -> OffsetLawn {
        measure(&stations(rows), Instrument::Tape.spread()).unwrap()
    }

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found} and not {expected}");
    }

    #[test]
    fn one_side_both_sides_and_uneven_spaces_make_their_trapezoids() {
        near(lawn(&[(0.0, 4.0, 0.0), (10.0, 4.0, 0.0)]).trapezoid.m2(), 40.0);
        near(lawn(&[(5.0, 4.0, 3.0), (15.0, 4.0, 3.0)]).trapezoid.m2(), 70.0);
        // 0-4 m: (2 + 6)/2 * 4 = 16; 4-10 m: (6 + 3)/2 * 6 = 27, on the right; and 2 m on the left all along.
        let uneven = lawn(&[(0.0, 2.0, 2.0), (4.0, 2.0, 6.0), (10.0, 2.0, 3.0)]);
        near(uneven.trapezoid.m2(), 63.0);
        assert_eq!(uneven.simpson, None);
        assert_eq!(uneven.why_no_simpson.unwrap().code, "simpson-needs-equal-spaces");
        let even = lawn(&[(0.0, 0.0, 0.0), (10.0, 5.0, 0.0), (20.0, 6.0, 0.0), (30.0, 0.0, 0.0)]);
        assert_eq!(even.why_no_simpson.unwrap().code, "simpson-needs-odd-stations");
    }

    #[test]
    fn simpson_is_exact_for_a_parabola() {
        // y = x(10 - x) over 0..10 encloses 1000/6.
        let rows: Vec<(f64, f64, f64)> =
            (0..=4).map(|idx| 2.5 * f64::from(idx)).map(|x| (x, x * (10.0 - x), 0.0)).collect();
        near(lawn(&rows).simpson.unwrap().m2(), 1_000.0 / 6.0);
    }

    #[test]
    fn the_ring_is_anticlockwise_and_keeps_the_baseline_whole() {
        let found = lawn(&[(0.0, 0.0, 0.0), (10.0, 5.0, 0.0), (20.0, 6.0, 0.0), (30.0, 0.0, 0.0)]);
        assert_eq!(found.ring, [(6.0, 0.0), (6.0, 30.0), (0.0, 20.0), (1.0, 10.0)]);
        near(corners::signed_area_m2(&found.ring), found.trapezoid.m2());
        // A step: two offsets at one chainage.
        let step = lawn(&[(0.0, 5.0, 0.0), (10.0, 5.0, 0.0), (10.0, 8.0, 0.0), (20.0, 8.0, 0.0)]);
        near(step.trapezoid.m2(), 130.0);
    }

    #[test]
    fn the_baseline_runs_away_from_the_front_with_left_on_the_left() {
        // 3 m of front lie left of the baseline and 1 m right of it; 10 m further on nothing is left of it.
        let found = lawn(&[(5.0, 3.0, 1.0), (15.0, 0.0, 2.0)]);
        assert_eq!(found.ring, [(0.0, 0.0), (4.0, 0.0), (5.0, 10.0), (3.0, 10.0)]);
        let right_only = lawn(&[(0.0, 0.0, 2.0), (4.0, 0.0, 1.0), (8.0, 0.0, 3.0)]);
        assert_eq!(right_only.ring, [(0.0, 0.0), (2.0, 0.0), (1.0, 4.0), (3.0, 8.0), (0.0, 8.0)]);
    }

    #[test]
    fn the_uncertainty_is_that_of_the_rectangle_it_may_be() {
        let spread = LengthSpread { fixed: m(0.02), proportional: 0.0, scale: 0.0 };
        let found = measure(&stations(&[(0.0, 4.0, 0.0), (10.0, 4.0, 0.0)]), spread).unwrap();
        // Two offsets of 5 m each and two ends of 4 m each, all with 0.02 m.
        near(found.area_sd.m2(), 0.02 * (25.0_f64 + 25.0 + 16.0 + 16.0).sqrt());
        let curved = lawn(&[(0.0, 0.0, 0.0), (10.0, 5.0, 0.0), (20.0, 8.0, 0.0), (30.0, 6.0, 0.0), (40.0, 0.0, 0.0)]);
        assert!(curved.area_sd.m2() > 10.0 / 3.0_f64.sqrt());
    }

    #[test]
    fn offsets_that_cannot_be_are_refused_with_every_reason() {
        let refused = |rows: &[(f64, f64, f64)]| -> Vec<(String, String)> {
            let refusals = measure(&stations(rows), Instrument::Tape.spread()).unwrap_err();
            refusals.into_iter().map(|refusal| (refusal.field, refusal.said.code.into_owned())).collect()
        };
        let is = |found: Vec<(String, String)>, expected: &[(&str, &str)]| {
            let found: Vec<(&str, &str)> = found.iter().map(|(field, code)| (&**field, &**code)).collect();
            assert_eq!(found, expected);
        };
        is(refused(&[]), &[("offsets", "offsets-too-few")]);
        is(refused(&[(0.0, 0.0, 0.0), (5.0, 0.0, 0.0)]), &[("offsets", "outline-without-area")]);
        is(
            refused(&[(0.0, 2.0, 0.0), (5.0, 0.0, 0.0), (3.0, 2.0, 0.0), (3.0, 2.0, 0.0), (9_000.0, 1.0, 0.0)]),
            &[
                ("offsets.4.chainage", "too-large"),
                ("offsets.2.chainage", "chainage-not-rising"),
                ("offsets.3.chainage", "chainage-not-rising"),
                ("offsets.1.left", "offset-without-width"),
            ],
        );
    }
}
