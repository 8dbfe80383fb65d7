//! Our geometry beside GEOS (shapely 2.2.0) and GeographicLib (Python 2.1) on real outlines and invented lawns.
//!
//! Invariant: every figure is worked out by both sides in the same run from the same corners; none is kept.

use evensward_core::lawn::{
    Beside, Measured, Part, PatchKind, Position, Ring, Shape, Side, Survey, ValidOutline, geodesic_area,
    geodesic_perimeter,
};
use evensward_core::plan::{Heading, Laying, NarrowAt, Spacing, StartSide, lay_out};
use evensward_core::quantity::{Angle, Length, Swath};
use evensward_tests::reference::{self, Outline};
use serde_json::{Value, json};

use crate::reference_lawns::{self, Chance};

/// How far areas may lie apart in the plane, relative to the lawn.
const PLANE: f64 = 1e-9;
/// How far areas may lie apart on the ellipsoid, in square metres, at the size of a lawn.
const ELLIPSOID_M2: f64 = 1e-6;
/// How far GeographicLib's own versions, in C (as in PROJ) and in Python, lie apart on these plots: each side's area down
/// to the equator is rounded.
const BETWEEN_VERSIONS_M2: f64 = 3e-5;

fn figure(answer: &Value, name: &str) -> f64 {
    answer[name].as_f64().unwrap_or_else(|| panic!("no {name} in {answer}"))
}

fn valid(outline: &Outline) -> ValidOutline {
    ValidOutline::from_rings(std::slice::from_ref(&outline.ring))
        .unwrap_or_else(|why| panic!("{} is refused: {why}", outline.name))
}

#[test]
fn areas_agree() {
    let outlines = reference::outlines().unwrap();
    assert_eq!(outlines.plots.len(), 407);
    let all: Vec<Outline> = outlines.plots.into_iter().chain(outlines.buildings).chain(invented(300..600)).collect();
    let cases: Vec<Value> = all
        .iter()
        .map(|outline| json!({"op": "area", "of": reference::ground(std::slice::from_ref(&outline.ring))}))
        .collect();
    let answers = reference::answers(&cases).unwrap();
    for (outline, answer) in all.iter().zip(&answers) {
        let (ours_m2, theirs_m2) = (valid(outline).area().m2(), figure(answer, "area"));
        assert!((ours_m2 - theirs_m2).abs() <= PLANE * theirs_m2, "{}: {ours_m2} for {theirs_m2}", outline.name);
    }
}

/// A polygon of this many corners about a place, by hand and not by our own shapes.
fn round(x: f64, y: f64, radius: f64, n_corners: u32) -> Ring {
    let corner = |idx: u32| {
        let (sin, cos) = (f64::from(idx) * core::f64::consts::TAU / f64::from(n_corners)).sin_cos();
        (x + radius * cos, y + radius * sin)
    };
    Ring { outer: (0..n_corners).map(corner).collect(), holes: Vec::new() }
}

/// Ground laid over an outline: a copy of itself turned and shifted, a round bed, a path of the outline's own width.
fn laid_over(outline: &Outline) -> Vec<Ring> {
    let (xs, ys): (Vec<f64>, Vec<f64>) = outline.ring.outer.iter().copied().unzip();
    let least_and_most =
        |of: &[f64]| (of.iter().copied().fold(f64::MAX, f64::min), of.iter().copied().fold(f64::MIN, f64::max));
    let ((left, right), (front, back)) = (least_and_most(&xs), least_and_most(&ys));
    let (wide, deep) = (right - left, back - front);
    let (sin, cos) = 0.3_f64.sin_cos();
    let turned = |ring: &Vec<(f64, f64)>| -> Vec<(f64, f64)> {
        ring.iter().map(|(x, y)| (x * cos - y * sin + wide * 0.1, x * sin + y * cos + deep * 0.07)).collect()
    };
    let copy = Ring { outer: turned(&outline.ring.outer), holes: outline.ring.holes.iter().map(turned).collect() };
    let bed = round(left + wide * 0.45, front + deep * 0.55, wide.min(deep) * 0.21, 37);
    let path = vec![
        (left, front + deep * 0.31),
        (right, front + deep * 0.36),
        (right, front + deep * 0.41),
        (left, front + deep * 0.33),
    ];
    vec![copy, bed, Ring { outer: path, holes: Vec::new() }]
}

/// Pairs of ground and what is to be done with them, collected to be asked in one go.
#[derive(Default)]
struct Booleans {
    cases: Vec<Value>,
    names: Vec<(String, f64)>,
}

impl Booleans {
    fn add(&mut self, name: &str, a: &ValidOutline, b: &ValidOutline) {
        for (op, ours) in [("union", a.union(b)), ("difference", a.without(b)), ("intersection", a.common(b))] {
            // What comes out is fit to go in again.
            let rings = ours.rings();
            assert!(rings.is_empty() || ValidOutline::from_rings(&rings).is_ok(), "{op} of {name} is not valid");
            let [a_ground, b_ground] = [a, b].map(|ground| reference::ground(&ground.rings()));
            self.cases.push(json!({"op": op, "a": a_ground, "b": b_ground, "ours": reference::ground(&rings)}));
            self.names.push((format!("{op} of {name}"), a.area().m2()));
        }
    }

    fn check(&self) {
        let answers = reference::answers(&self.cases).unwrap();
        for ((name, lawn_m2), answer) in self.names.iter().zip(answers) {
            let apart_m2 = [(figure(&answer, "area") - figure(&answer, "ours")).abs(), figure(&answer, "apart")];
            let is_close = apart_m2.iter().all(|apart| *apart <= PLANE * lawn_m2);
            assert!(is_close, "{name}: {apart_m2:?} of {lawn_m2} m2 apart");
        }
    }
}

#[test]
fn unions_differences_and_intersections_agree_on_real_outlines() {
    let outlines = reference::outlines().unwrap();
    let mut booleans = Booleans::default();
    for outline in outlines.plots.iter().chain(&outlines.buildings) {
        for (over_idx, ring) in laid_over(outline).into_iter().enumerate() {
            let over = ValidOutline::from_rings(&[ring]).unwrap();
            booleans.add(&format!("{} with {over_idx}", outline.name), &valid(outline), &over);
        }
    }
    booleans.check();
}

#[test]
fn unions_differences_and_intersections_agree_on_invented_ground() {
    let (mut booleans, mut n_refused) = (Booleans::default(), 0);
    for seed in 0..400 {
        let mut chance = Chance::new(seed);
        let lawns = [reference_lawns::lawn(&mut chance), reference_lawns::lawn(&mut chance)];
        let pieces = [reference_lawns::on_lattice(&mut chance), reference_lawns::on_lattice(&mut chance)];
        for (kind, [a, b]) in [("lawns", lawns), ("lattice", pieces)] {
            let both = ValidOutline::from_rings(&[a]).and_then(|a| Ok((a, ValidOutline::from_rings(&[b])?)));
            match both {
                Ok((a, b)) => booleans.add(&format!("{kind} {seed}"), &a, &b),
                Err(_) => n_refused += 1,
            }
        }
    }
    // A few holes reach out of their lawns, and a few rings on the lattice run back along themselves.
    assert!(n_refused < 200, "{n_refused} pairs of 800 were refused");
    booleans.check();
}

/// Keeps a margin along each side of the first part, of the width that is given for it.
fn with_margins(mut survey: Survey, width_m: impl Fn(usize) -> f64) -> Option<Measured> {
    let n_sides = survey.parts[0].shape.n_sides();
    survey.sides = (0..n_sides)
        .map(|side_idx| Side {
            part_idx: 0,
            side_idx,
            beside: Beside::Hedge,
            margin: Length::from_m(width_m(side_idx)).unwrap(),
        })
        .collect();
    match survey.measure(None) {
        Ok(measured) => Some(measured),
        // A strip of ground can be so thin that its margins take all of it.
        Err(why) if why[0].said.code == "nothing-left-to-treat" => None,
        Err(why) => panic!("{why:?}"),
    }
}

/// Invented lawns with bays and holes that are outlines: a hole may reach out of a deep bay.
fn invented(seeds: core::ops::Range<u64>) -> impl Iterator<Item = Outline> {
    seeds.filter_map(|seed| {
        let ring = reference_lawns::lawn(&mut Chance::new(seed));
        ValidOutline::from_rings(std::slice::from_ref(&ring)).ok()?;
        Some(Outline { name: format!("lawn {seed}"), ring, lat_lon: Vec::new() })
    })
}

#[test]
fn margins_agree_with_buffers() {
    let outlines: Vec<Outline> = reference::outlines().unwrap().plots.into_iter().chain(invented(0..300)).collect();
    let (mut cases, mut measured) = (Vec::new(), Vec::new());
    for (outline_idx, outline) in outlines.iter().enumerate() {
        // Widths that differ and that agree from side to side, some sides without any.
        let widths_m = [0.3, 0.3, 0.0, 1.0, 0.5, 0.5];
        let width_m = |side: usize| widths_m[(side + outline_idx) % 6];
        let Some(lawn) = with_margins(reference::survey_of(outline).unwrap(), width_m) else { continue };
        let kept = lawn.sides.iter().filter(|side| side.side.margin.m() > 0.0);
        let lines: Vec<Value> = kept.map(|side| json!({"line": side.line, "distance": side.side.margin.m()})).collect();
        let beds: Vec<Value> = lawn.patches.iter().map(|patch| reference::ground(&patch.outline.rings())).collect();
        let [of, margins, net] = [&lawn.outline, &lawn.margins, &lawn.net].map(|part| reference::ground(&part.rings()));
        cases.push(json!({"op": "margins", "of": of, "lines": lines, "quad_segs": 64, "ours": margins}));
        cases.push(json!({"op": "difference", "a": of, "b": margins, "more": beds, "ours": net}));
        measured.push((outline, lawn));
    }
    assert!(measured.len() > 600, "{} of {} lawns have ground left", measured.len(), outlines.len());
    let answers = reference::answers(&cases).unwrap();
    for ((outline, lawn), answers) in measured.iter().zip(answers.chunks(2)) {
        let most_m2 = PLANE * lawn.outline.area().m2();
        let missing_m2 = figure(&answers[0], "missing");
        assert!(missing_m2 <= most_m2, "{}: {missing_m2} m2 of the margins are missing", outline.name);
        // Round ends reach a millimetre too far at most; theirs fall short by the sagitta of their own steps.
        let around_ends = |width_m: f64| core::f64::consts::TAU * width_m * (1e-3 + 6e-5 * width_m);
        let allowed_m2: f64 = lawn.sides.iter().map(|side| around_ends(side.side.margin.m())).sum();
        let excess_m2 = figure(&answers[0], "excess");
        assert!(excess_m2 <= allowed_m2, "{}: margins take {excess_m2} m2 too much", outline.name);
        let apart_m2 = figure(&answers[1], "apart");
        assert!(apart_m2 <= most_m2, "{}: the net ground is {apart_m2} m2 apart", outline.name);
    }
}

#[test]
fn beds_that_touch_overlap_and_reach_out_are_taken_out_once() {
    let outlines = reference::outlines().unwrap();
    let (mut cases, mut lawns) = (Vec::new(), Vec::new());
    for outline in outlines.plots.iter().filter(|plot| valid(plot).area().m2() > 60.0) {
        let mut survey = reference::survey_of(outline).unwrap();
        let (x, y) = outline.ring.outer[outline.ring.outer.len() / 2];
        let square = |x: f64, y: f64, size: f64| vec![(x, y), (x + size, y), (x + size, y + size), (x, y + size)];
        // About a corner of the outline: two beds that share a side, one that touches a corner, one over all of them,
        // one over the next corner.
        let (next_x, next_y) = outline.ring.outer[outline.ring.outer.len() / 2 - 1];
        let outlined = valid(outline);
        let is_on_lawn = |bed: &Vec<(f64, f64)>| {
            let bed = ValidOutline::from_rings(&[Ring { outer: bed.clone(), holes: Vec::new() }]).unwrap();
            !bed.common(&outlined).is_empty()
        };
        // One that lies beside the lawn altogether is refused.
        let beds = [
            square(x - 1.0, y - 1.0, 1.0),
            square(x, y - 1.0, 1.0),
            square(x + 1.0, y, 0.7),
            round(x, y, 1.3, 17).outer,
            square(next_x - 0.9, next_y - 0.8, 1.7),
        ];
        let beds: Vec<Vec<(f64, f64)>> = beds.into_iter().filter(is_on_lawn).collect();
        for bed in &beds {
            let shape = Shape::corners(bed.clone()).unwrap();
            survey.parts.push(Part { taken_out: Some(PatchKind::Bed), ..Part::taped(shape) });
        }
        let Ok(lawn) = survey.measure(None) else { continue };
        let own_beds = outline.ring.holes.iter().cloned();
        let more: Vec<Value> = beds
            .into_iter()
            .chain(own_beds)
            .map(|outer| reference::ground(&[Ring { outer, holes: Vec::new() }]))
            .collect();
        let [a, ours] = [&lawn.outline, &lawn.net].map(|part| reference::ground(&part.rings()));
        cases.push(json!({"op": "difference", "a": a, "b": more[0], "more": more[1..], "ours": ours}));
        lawns.push((&outline.name, lawn.outline.area().m2()));
    }
    assert!(lawns.len() > 300, "{} lawns only", lawns.len());
    for ((name, lawn_m2), answer) in lawns.iter().zip(reference::answers(&cases).unwrap()) {
        let apart_m2 = figure(&answer, "apart");
        assert!(apart_m2 <= PLANE * lawn_m2, "{name}: {apart_m2} m2 of {lawn_m2} m2 apart");
    }
}

#[test]
fn margins_all_round_leave_the_exact_inset_of_a_lawn_without_bays() {
    let outlines = reference::outlines().unwrap();
    let (mut cases, mut insets) = (Vec::new(), Vec::new());
    for outline in &outlines.plots {
        let hull = Outline { ring: hull(&outline.ring.outer), ..outline.clone() };
        let Some(lawn) = with_margins(reference::survey_of(&hull).unwrap(), |_| 0.4) else { continue };
        let [of, net] = [&lawn.outline, &lawn.net].map(|part| reference::ground(&part.rings()));
        cases.push(json!({"op": "buffer", "of": of, "distance": -0.4, "join": "mitre", "ours": net}));
        insets.push((&outline.name, lawn.outline.area().m2()));
    }
    assert!(insets.len() > 400, "{} plots only have ground left", insets.len());
    for ((name, lawn_m2), answer) in insets.iter().zip(reference::answers(&cases).unwrap()) {
        let apart_m2 = figure(&answer, "missing") + figure(&answer, "excess");
        assert!(apart_m2 <= PLANE * lawn_m2, "{name}: {apart_m2} m2 of {lawn_m2} m2 apart");
    }
}

/// The corners around all others, by going along the least and back along the greatest ones (Andrew's chain).
fn hull(corners: &[(f64, f64)]) -> Ring {
    let mut sorted = corners.to_vec();
    sorted.sort_by(|a, b| a.partial_cmp(b).unwrap());
    let chain = |corners: &mut dyn Iterator<Item = &(f64, f64)>| {
        let mut chain: Vec<(f64, f64)> = Vec::new();
        for corner in corners {
            while let [.., a, b] = chain[..]
                && (b.0 - a.0) * (corner.1 - a.1) - (b.1 - a.1) * (corner.0 - a.0) <= 0.0
            {
                chain.pop();
            }
            chain.push(*corner);
        }
        chain.pop();
        chain
    };
    let (there, back) = (chain(&mut sorted.iter()), chain(&mut sorted.iter().rev()));
    Ring { outer: there.into_iter().chain(back).collect(), holes: Vec::new() }
}

#[test]
fn areas_and_perimeters_on_the_ellipsoid_agree_on_real_plots() {
    let plots = reference::outlines().unwrap().plots;
    let rings: Vec<Vec<(f64, f64)>> = plots.iter().flat_map(|plot| plot.lat_lon.clone()).collect();
    assert!(rings.len() > 407, "plots have holes as well");
    let cases: Vec<Value> = rings.iter().map(|ring| json!({"op": "geodesic", "lat_lon": ring})).collect();
    for (ring, answer) in rings.iter().zip(reference::answers(&cases).unwrap()) {
        let at = |(lat_deg, lon_deg): &(f64, f64)| Position::from_deg(*lat_deg, *lon_deg).unwrap();
        let positions: Vec<Position> = ring.iter().map(at).collect();
        let (ours_m2, theirs_m2) = (geodesic_area(&positions).m2(), figure(&answer, "area").abs());
        // Where GeographicLib's own versions round differently, ours must be one of them.
        let apart_m2 = [theirs_m2, figure(&answer, "area_in_c").abs()].map(|theirs| (ours_m2 - theirs).abs());
        assert!(apart_m2.iter().any(|apart| *apart <= ELLIPSOID_M2), "{ours_m2} m2 lies {apart_m2:?} from theirs");
        assert!(
            apart_m2.iter().all(|apart| *apart <= BETWEEN_VERSIONS_M2),
            "{ours_m2} m2 lies {apart_m2:?} from theirs"
        );
        let (ours_m, theirs_m) = (geodesic_perimeter(&positions).m(), figure(&answer, "perimeter"));
        assert!((ours_m - theirs_m).abs() <= 1e-8, "{ours_m} m for {theirs_m}");
    }
}

/// The bands of a laying on an outline and how wide they are, worked out anew with plain trigonometry: one swath each from
/// the starting side, or a whole number of equal ones where the lawn is up to a fiftieth of a swath off it and
/// none is more than two thousandths wider than a swath.
fn bands(rings: &[Ring], angle_deg: f64, start_side: StartSide, swath_m: f64) -> (Vec<Ring>, f64) {
    let (sin, cos) = angle_deg.to_radians().sin_cos();
    let (ahead, mut across) = ((sin, cos), (cos, -sin));
    if start_side == StartSide::Right {
        across = (-across.0, -across.1);
    }
    let along = |at: (f64, f64), by: (f64, f64)| at.0 * by.0 + at.1 * by.1;
    let corners: Vec<(f64, f64)> = rings.iter().flat_map(|ring| ring.outer.clone()).collect();
    let extent = |by: (f64, f64)| {
        let places = corners.iter().map(|corner| along(*corner, by));
        (places.clone().fold(f64::MAX, f64::min), places.fold(f64::MIN, f64::max))
    };
    let ((begin, end), (front, back)) = (extent(across), extent(ahead));
    let at = |u: f64, t: f64| (u * across.0 + t * ahead.0, u * across.1 + t * ahead.1);
    let (n_swaths, nearest) = ((end - begin) / swath_m, ((end - begin) / swath_m).round());
    let excess = n_swaths - nearest;
    let is_whole = nearest >= 1.0 && excess.abs() <= 0.02 && excess <= 0.002 * nearest;
    let (n_bands, band_m) =
        if is_whole { (nearest as u32, (end - begin) / nearest) } else { (n_swaths.ceil() as u32, swath_m) };
    let band = |idx: u32| {
        let from = begin + f64::from(idx) * band_m;
        // The outer lines reach a hair outside, so that no rounding is taken off the lawn.
        let left = if idx == 0 { from - 0.5 } else { from };
        let right = if idx + 1 == n_bands { from + band_m + 0.5 } else { from + band_m };
        let (front, back) = (front - 1.0, back + 1.0);
        Ring { outer: vec![at(left, front), at(right, front), at(right, back), at(left, back)], holes: Vec::new() }
    };
    ((0..n_bands).map(band).collect(), band_m)
}

#[test]
fn strips_agree_with_cuts_by_bands() {
    let outlines = reference::outlines().unwrap();
    let real = outlines.plots.iter().map(|plot| (plot.name.clone(), plot.ring.clone()));
    let invented = (0..400).map(|seed| (format!("lawn {seed}"), reference_lawns::lawn(&mut Chance::new(seed))));
    let dry = ValidOutline::recalled(&[]).unwrap();
    let (mut cases, mut laid) = (Vec::new(), Vec::new());
    for (idx, (name, ring)) in real.chain(invented).enumerate() {
        let Ok(net) = ValidOutline::from_rings(&[ring]) else { continue };
        let mut chance = Chance::new(1_000 + idx as u64);
        let (angle_deg, swath_m) = ([0.0, 90.0, 37.5, chance.between(0.0, 180.0)][idx % 4], chance.between(0.6, 1.4));
        let laying = Laying {
            heading: Heading::Along,
            angle: Angle::from_deg(angle_deg).unwrap(),
            start_side: if idx % 2 == 0 { StartSide::Left } else { StartSide::Right },
            narrow_at: NarrowAt::Last,
            spacing: Spacing::BySwath,
            ..Laying::plain(Swath::from_m(swath_m).unwrap())
        };
        let layout = lay_out(&net, &dry, &laying).unwrap();
        let rings = net.rings();
        let (by, band_m) = bands(&rings, angle_deg, laying.start_side, swath_m);
        let by: Vec<Value> = by.into_iter().map(|band| reference::ground(&[band])).collect();
        cases.push(json!({"op": "cut", "of": reference::ground(&rings), "by": by}));
        laid.push((name, layout, net.area().m2(), band_m));
    }
    for ((name, layout, lawn_m2, band_m), answer) in laid.iter().zip(reference::answers(&cases).unwrap()) {
        let theirs: Vec<f64> = answer["areas"].as_array().unwrap().iter().map(|area| area.as_f64().unwrap()).collect();
        // A strip is known by where its centre lies; a band without ground has none.
        let mut ours = vec![0.0; theirs.len()];
        for strip in &layout.strips {
            let band_idx = ((strip.centre.m() / band_m) as usize).min(ours.len() - 1);
            ours[band_idx] += strip.runs.iter().map(|run| run.area.m2()).sum::<f64>();
        }
        for (band_idx, (ours_m2, theirs_m2)) in ours.iter().zip(&theirs).enumerate() {
            let apart_m2 = (ours_m2 - theirs_m2).abs();
            assert!(apart_m2 <= PLANE * lawn_m2, "{name}, band {band_idx}: {ours_m2} for {theirs_m2} of {lawn_m2} m2");
        }
    }
}
