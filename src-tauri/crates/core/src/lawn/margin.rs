//! Margins: the width kept dry along an edge, as the ground within that distance of the edge.
//!
//! Invariant: the drawn margin is never narrower than asked. Its round ends are drawn around the true
//! circle, with flats where a straight neighbouring edge would touch it, so that a margin along one side
//! of a rectangle takes exactly its width and nothing more.

use geo::{Coord, LineString, MultiPolygon, Polygon, unary_union};

/// Steps of each half circle at the ends; even, so that one flat faces straight ahead.
const N_STEPS_OF_HALF_CIRCLE: usize = 16;

/// The ground within `margin_m` of a chain of points. Empty when the margin or the chain is nothing.
pub(super) fn around(chain: &[Coord<f64>], margin_m: f64) -> MultiPolygon<f64> {
    let segments = chain.iter().zip(chain.iter().skip(1));
    let capsules: Vec<Polygon<f64>> = segments.filter_map(|(from, to)| capsule(*from, *to, margin_m)).collect();
    if capsules.is_empty() {
        return MultiPolygon::new(Vec::new());
    }
    unary_union(&capsules)
}

fn capsule(from: Coord<f64>, to: Coord<f64>, margin_m: f64) -> Option<Polygon<f64>> {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let length_m = dx.hypot(dy);
    if margin_m <= 0.0 || length_m <= 0.0 {
        return None;
    }
    let ahead_rad = dy.atan2(dx);
    let step_rad = core::f64::consts::PI / N_STEPS_OF_HALF_CIRCLE as f64;
    let radius_m = margin_m / (step_rad / 2.0).cos();
    let half_circle = |about: Coord<f64>, start_rad: f64| {
        (0..N_STEPS_OF_HALF_CIRCLE).map(move |idx| {
            let (sin, cos) = (start_rad + step_rad * (idx as f64 + 0.5)).sin_cos();
            Coord { x: about.x + radius_m * cos, y: about.y + radius_m * sin }
        })
    };
    let quarter_rad = core::f64::consts::FRAC_PI_2;
    let ring: Vec<Coord<f64>> =
        half_circle(to, ahead_rad - quarter_rad).chain(half_circle(from, ahead_rad + quarter_rad)).collect();
    Some(Polygon::new(LineString::new(ring), Vec::new()))
}
