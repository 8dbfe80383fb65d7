//! The lawn's plane beside GeographicLib on real plots, and walked rounds whose truth is known.
//!
//! The rounds are walked on invented lawns with an error that drifts and one that jumps, as a receiver's does: white noise
//! and a first-order Gauss–Markov error that fades over a stated time. The stated doubt must hold what it says.

use evensward_core::lawn::{Fix, Plane, Position, WalkRules, Walked, compare, walked_round};
use evensward_core::quantity::{Length, Span};
use evensward_tests::reference;
use serde_json::{Value, json};

use crate::reference_lawns::Chance;

#[test]
fn the_lawn_s_plane_holds_the_areas_and_corners_of_real_plots() {
    let plots = reference::outlines().unwrap().plots;
    let rings: Vec<&Vec<(f64, f64)>> = plots.iter().flat_map(|plot| &plot.lat_lon).collect();
    let cases: Vec<Value> = rings.iter().map(|ring| json!({"op": "geodesic", "lat_lon": ring})).collect();
    let mut n_small = 0;
    for (ring, answer) in rings.iter().zip(reference::answers(&cases).unwrap()) {
        let positions: Vec<Position> =
            ring.iter().map(|(lat_deg, lon_deg)| Position::from_deg(*lat_deg, *lon_deg).unwrap()).collect();
        let plane = Plane::north_up(positions[0]);
        let flat: Vec<(f64, f64)> = positions.iter().map(|at| plane.to_plane(*at)).collect();
        let figure = |name: &str| answer[name].as_f64().unwrap();
        if figure("perimeter") < 400.0 {
            n_small += 1;
            // A square centimetre or two: what GeographicLib's own versions differ by.
            let apart_m2 = (plane_area_m2(&flat) - figure("area").abs()).abs();
            assert!(apart_m2 < 2e-4, "{apart_m2} m2 of {} m2", figure("area"));
        }
        for (at, corner) in flat.iter().zip(&positions) {
            assert!(plane.from_plane(*at).distance(*corner).m() < 1e-6, "{at:?} is not {corner:?}");
        }
    }
    assert!(n_small > 100, "{n_small}");
}

fn plane_area_m2(ring: &[(f64, f64)]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|((x, y), (u, v))| x * v - u * y).sum::<f64>().abs() / 2.0
}

/// A normal deviate of mean 0 and standard deviation 1 (Box and Muller 1958).
fn normal(chance: &mut Chance) -> f64 {
    let radius = (-2.0 * chance.between(1e-12, 1.0).ln()).sqrt();
    radius * chance.between(0.0, core::f64::consts::TAU).cos()
}

/// How a receiver errs, in either direction.
#[derive(Clone, Copy)]
struct Receiver {
    drift_sd_m: f64,
    drift_s: f64,
    jump_sd_m: f64,
}

impl Receiver {
    /// What a device that knows itself would state: the root mean square over both directions.
    fn accuracy_m(self) -> f64 {
        (2.0 * (self.drift_sd_m.powi(2) + self.jump_sd_m.powi(2))).sqrt()
    }
}

/// An ellipse walked once round at 1.2 m/s, a fix a second.
fn ellipse(half_width_m: f64, half_length_m: f64) -> Vec<(f64, f64)> {
    let turn_at = |share: f64| (share * core::f64::consts::TAU).sin_cos();
    let fine: Vec<(f64, f64)> = (0..20_000)
        .map(|step| turn_at(f64::from(step) / 20_000.0))
        .map(|(sin, cos)| (half_width_m * cos, half_length_m * sin))
        .collect();
    let mut walk = vec![fine[0]];
    let mut since_m = 0.0;
    for pair in fine.windows(2) {
        since_m += (pair[1].0 - pair[0].0).hypot(pair[1].1 - pair[0].1);
        if since_m >= 1.2 {
            walk.push(pair[1]);
            since_m -= 1.2;
        }
    }
    walk
}

fn walk(truth: &[(f64, f64)], receiver: Receiver, rules: &WalkRules, chance: &mut Chance) -> Walked {
    let plane = Plane::north_up(Position::from_deg(52.0, 21.0).unwrap());
    let kept = (-1.0 / receiver.drift_s).exp();
    let fresh = (1.0 - kept * kept).sqrt();
    let mut drift = (receiver.drift_sd_m * normal(chance), receiver.drift_sd_m * normal(chance));
    let accuracy = Length::from_m(receiver.accuracy_m()).unwrap();
    let mut fixes = Vec::new();
    for (second, (x, y)) in truth.iter().enumerate() {
        let at = (x + drift.0 + receiver.jump_sd_m * normal(chance), y + drift.1 + receiver.jump_sd_m * normal(chance));
        let at_ms = Some(i64::try_from(second).unwrap() * 1_000);
        fixes.push(Fix { position: plane.from_plane(at), accuracy: Some(accuracy), at_ms });
        drift = (
            kept * drift.0 + fresh * receiver.drift_sd_m * normal(chance),
            kept * drift.1 + fresh * receiver.drift_sd_m * normal(chance),
        );
    }
    walked_round(&fixes, rules).unwrap_or_else(|said| panic!("{said:?}"))
}

/// The share of rounds whose truth lies within the expanded uncertainty, k = 2.
fn share_within(receiver: Receiver, rules: &WalkRules, n_rounds: u32, seed: u64) -> f64 {
    let truth = ellipse(30.0, 20.0);
    let truth_m2 = core::f64::consts::PI * 30.0 * 20.0;
    let mut chance = Chance::new(seed);
    let n_within = (0..n_rounds)
        .filter(|_| {
            let walked = walk(&truth, receiver, rules, &mut chance);
            (walked.area.m2() - truth_m2).abs() <= 2.0 * walked.area_sd.m2()
        })
        .count();
    n_within as f64 / f64::from(n_rounds)
}

#[test]
fn where_the_receiver_is_known_the_stated_doubt_holds_95_rounds_of_100() {
    for (drift_s, seed) in [(10.0, 1), (30.0, 2), (90.0, 3)] {
        let receiver = Receiver { drift_sd_m: 1.5, drift_s, jump_sd_m: 0.0 };
        let rules = WalkRules { error_lasts: Some(Span::from_s(drift_s).unwrap()), ..WalkRules::default() };
        let share = share_within(receiver, &rules, 1_000, seed);
        println!("known, {drift_s} s: {share}");
        assert!((share - 0.95).abs() <= 0.03, "{drift_s} s: {share}");
    }
}

#[test]
fn where_it_is_not_known_the_stated_doubt_holds_at_least_that() {
    for (drift_s, jump_sd_m, seed) in [(0.5, 0.0, 4), (5.0, 0.5, 5), (20.0, 0.5, 6), (60.0, 0.5, 7), (300.0, 0.5, 8)] {
        let receiver = Receiver { drift_sd_m: 1.5, drift_s, jump_sd_m };
        let share = share_within(receiver, &WalkRules::default(), 500, seed);
        println!("not known, {drift_s} s: {share}");
        assert!(share >= 0.94, "{drift_s} s: {share}");
    }
}

#[test]
fn two_rounds_of_one_lawn_agree_and_two_lawns_do_not() {
    let receiver = Receiver { drift_sd_m: 1.0, drift_s: 20.0, jump_sd_m: 0.3 };
    let mut chance = Chance::new(9);
    let rules = WalkRules::default();
    let n_agreeing = (0..200)
        .filter(|_| {
            let round = || ellipse(30.0, 20.0);
            let (first, second) =
                (walk(&round(), receiver, &rules, &mut chance), walk(&round(), receiver, &rules, &mut chance));
            compare(&first, &second).do_agree
        })
        .count();
    assert!(n_agreeing >= 188, "{n_agreeing} of 200");
    let small = walk(&ellipse(30.0, 20.0), receiver, &rules, &mut chance);
    let large = walk(&ellipse(60.0, 40.0), receiver, &rules, &mut chance);
    assert!(!compare(&small, &large).do_agree);
}
