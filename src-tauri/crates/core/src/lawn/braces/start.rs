//! Layouts to start the adjustment from: corners laid out one by one where two lengths to known corners meet.
//!
//! A corner that hangs on two others may lie on either side of them. Three corners taken in the outline's order turn
//! anticlockwise wherever their triangle lies inside the outline, so that side is tried first; lengths to further corners
//! overrule it. A pattern of lengths that cannot be laid out so (a hexagon with its three long diagonals) is started from
//! many simple outlines instead.
//! Invariant: the same lengths give the same candidates in the same order, the likeliest first.

use super::Given;
use super::layout::{Layout, Point, distance, turn};

/// How many layouts are carried on from corner to corner.
const N_CARRIED: usize = 48;
/// How many layouts are adjusted.
const N_CANDIDATES: usize = 12;
/// How many simple outlines are tried where no layout can be constructed.
const N_STARS: usize = 60;
/// What it costs to lie on the unlikelier side, in squared standard uncertainties.
const COST_OF_OTHER_SIDE: f64 = 2.0;

/// A layout worth adjusting.
pub(super) struct Candidate {
    pub(super) layout: Layout,
    /// How badly the lengths fit it, where it was laid out from them. Candidates that are mirror images of each other in some
    /// of their corners share it.
    pub(super) misfit: Option<f64>,
}

/// Layouts worth adjusting, the likeliest first.
pub(super) fn candidates(given: &Given<'_>) -> Vec<Candidate> {
    let neighbours = Neighbours::of(given);
    match order(&neighbours) {
        Some(order) => laid_out(given, &neighbours, &order),
        None => stars(given),
    }
}

/// Who is joined to whom, and by what length; lengths that were taped twice are averaged.
struct Neighbours(Vec<Vec<(usize, f64)>>);

impl Neighbours {
    fn of(given: &Given<'_>) -> Self {
        let n_corners = given.n_corners();
        let of_corner = |here: usize| -> Vec<(usize, f64)> {
            (0..n_corners)
                .filter_map(|there| {
                    let between = given
                        .lines
                        .iter()
                        .filter(|line| (line.from, line.to) == (here, there) || (line.from, line.to) == (there, here));
                    let (n, sum_m) = between.fold((0_u32, 0.0), |(n, sum), line| (n + 1, sum + line.length.m()));
                    (n > 0).then(|| (there, sum_m / f64::from(n)))
                })
                .collect()
        };
        Self((0..n_corners).map(of_corner).collect())
    }

    fn at(&self, here: usize) -> &[(usize, f64)] {
        self.0.get(here).map_or(&[], Vec::as_slice)
    }

    fn length_m(&self, here: usize, there: usize) -> Option<f64> {
        self.at(here).iter().find(|(known, _)| *known == there).map(|(_, length_m)| *length_m)
    }
}

/// An order in which each corner from the fourth on is joined to at least two before it, from the best-shaped triangle.
fn order(neighbours: &Neighbours) -> Option<Vec<usize>> {
    let mut triangles: Vec<(f64, [usize; 3])> = Vec::new();
    for (a, of_a) in neighbours.0.iter().enumerate() {
        for (b, ab) in of_a.iter().filter(|(b, _)| *b > a) {
            for (c, ac) in of_a.iter().filter(|(c, _)| c > b) {
                if let Some(bc) = neighbours.length_m(*b, *c) {
                    let (sum, longest) = (ab + ac + bc, ab.max(*ac).max(bc));
                    // How far the longest side is from the other two together: nothing for corners in one line.
                    triangles.push(((sum - 2.0 * longest) / sum, [a, *b, *c]));
                }
            }
        }
    }
    triangles.sort_by(|one, other| other.0.total_cmp(&one.0));
    triangles.into_iter().find_map(|(_, seed)| order_from(neighbours, seed))
}

fn order_from(neighbours: &Neighbours, seed: [usize; 3]) -> Option<Vec<usize>> {
    let mut order = seed.to_vec();
    while order.len() < neighbours.0.len() {
        let n_known = |corner_idx: usize| neighbours.at(corner_idx).iter().filter(|(to, _)| order.contains(to)).count();
        let open = (0..neighbours.0.len()).filter(|corner_idx| !order.contains(corner_idx));
        // The first of those joined to most, so that lengths decide before likelihood has to.
        let (n_most, next) = open
            .map(|corner_idx| (n_known(corner_idx), corner_idx))
            .fold((0, None), |best, one| if one.0 > best.0 { (one.0, Some(one.1)) } else { best });
        match next {
            Some(next) if n_most >= 2 => order.push(next),
            _ => return None,
        }
    }
    Some(order)
}

/// A layout under construction.
#[derive(Clone)]
struct Partial {
    points: Vec<Option<Point>>,
    misfit: f64,
    unlikely: f64,
}

impl Partial {
    fn at(&self, corner_idx: usize) -> Option<Point> {
        self.points.get(corner_idx).copied().flatten()
    }

    fn cost(&self) -> f64 {
        self.misfit + self.unlikely
    }

    fn with(&self, corner_idx: usize, point: Point, misfit: f64, unlikely: f64) -> Self {
        let mut next = self.clone();
        if let Some(slot) = next.points.get_mut(corner_idx) {
            *slot = Some(point);
        }
        next.misfit += misfit;
        next.unlikely += unlikely;
        next
    }
}

fn laid_out(given: &Given<'_>, neighbours: &Neighbours, order: &[usize]) -> Vec<Candidate> {
    let mut order = order.iter().copied();
    let (Some(first), Some(second)) = (order.next(), order.next()) else { return Vec::new() };
    let Some(base_m) = neighbours.length_m(first, second) else { return Vec::new() };
    let nowhere = Partial { points: vec![None; given.n_corners()], misfit: 0.0, unlikely: 0.0 };
    let mut carried = vec![nowhere.with(first, (0.0, 0.0), 0.0, 0.0).with(second, (base_m, 0.0), 0.0, 0.0)];
    for corner_idx in order {
        let mut next: Vec<Partial> =
            carried.iter().flat_map(|partial| placed(given, neighbours, partial, corner_idx)).collect();
        next.sort_by(|one, other| one.cost().total_cmp(&other.cost()));
        next.truncate(N_CARRIED);
        carried = next;
    }
    let least = carried.first().map_or(0.0, Partial::cost);
    let worth = |partial: &Partial| partial.cost() <= 2.0 * least + 50.0;
    let whole = carried.into_iter().filter(worth).filter_map(|partial| {
        let points: Option<Vec<Point>> = partial.points.into_iter().collect();
        points.map(|points| Candidate { layout: Layout(points), misfit: Some(partial.misfit) })
    });
    whole.take(N_CANDIDATES).collect()
}

/// The two places of a corner, each with what it costs.
fn placed(given: &Given<'_>, neighbours: &Neighbours, partial: &Partial, corner_idx: usize) -> Vec<Partial> {
    let known: Vec<(usize, Point, f64)> = neighbours
        .at(corner_idx)
        .iter()
        .filter_map(|(to, length_m)| partial.at(*to).map(|point| (*to, point, *length_m)))
        .collect();
    // The pair whose lengths meet most squarely tells the place best.
    let pairs =
        known.iter().enumerate().flat_map(|(idx, one)| known.iter().skip(idx + 1).map(move |other| (one, other)));
    let skewness = |one: &(usize, Point, f64), other: &(usize, Point, f64)| {
        let base_m = distance(one.1, other.1);
        ((one.2 * one.2 + other.2 * other.2 - base_m * base_m) / (2.0 * one.2 * other.2)).abs()
    };
    let best = pairs.min_by(|a, b| skewness(a.0, a.1).total_cmp(&skewness(b.0, b.1)));
    let Some((one, other)) = best else { return Vec::new() };
    let base_m = distance(one.1, other.1).max(1e-6);
    let along_m = (one.2 * one.2 + base_m * base_m - other.2 * other.2) / (2.0 * base_m);
    let height_m = (one.2 * one.2 - along_m * along_m).max(0.0).sqrt();
    let (ux, uy) = ((other.1.0 - one.1.0) / base_m, (other.1.1 - one.1.1) / base_m);
    [height_m, -height_m]
        .into_iter()
        .map(|height_m| {
            let point = (one.1.0 + along_m * ux - height_m * uy, one.1.1 + along_m * uy + height_m * ux);
            let misfit: f64 = known
                .iter()
                .map(|(_, there, length_m)| {
                    let sd_m = 3.0 * given.sd_m(crate::quantity::Length::computed(*length_m));
                    ((distance(point, *there) - length_m) / sd_m).powi(2)
                })
                .sum();
            let mut ring = [(one.0, one.1), (other.0, other.1), (corner_idx, point)];
            ring.sort_by_key(|(idx, _)| *idx);
            let [a, b, c] = ring.map(|(_, point)| point);
            let unlikely = if turn(a, b, c) >= 0.0 { 0.0 } else { COST_OF_OTHER_SIDE };
            partial.with(corner_idx, point, misfit, unlikely)
        })
        .collect()
}

/// Simple outlines about a middle, of the right size, with radii that differ more and more.
fn stars(given: &Given<'_>) -> Vec<Candidate> {
    let n_corners = given.n_corners();
    let n_lines = given.lines.len().max(1) as f64;
    let radius_m = given.lines.iter().map(|line| line.length.m()).sum::<f64>() / n_lines;
    // A fixed sequence of numbers between 0 and 1 (Weyl's, of the golden ratio): no two are alike, and none is chance.
    let golden = 0.618_033_988_749_895;
    let share = |star_idx: usize, corner_idx: usize| {
        ((star_idx * n_corners + corner_idx + 1) as f64 * golden + (star_idx * star_idx) as f64 * 0.13).fract()
    };
    (0..N_STARS)
        .map(|star_idx| {
            let unevenness = 0.8 * star_idx as f64 / N_STARS as f64;
            let points = (0..n_corners).map(|corner_idx| {
                let turned = corner_idx as f64 + 0.8 * unevenness * (share(star_idx, corner_idx) - 0.5);
                let (sin, cos) = (core::f64::consts::TAU * turned / n_corners as f64).sin_cos();
                let out_m = radius_m * (1.0 - unevenness * share(star_idx + 7, corner_idx));
                (out_m * cos, out_m * sin)
            });
            Candidate { layout: Layout(points.collect()), misfit: None }
        })
        .collect()
}
