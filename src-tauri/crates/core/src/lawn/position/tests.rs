//! Rounds walked on invented lawns whose area is known.

use super::*;
use crate::quantity::{Arg, Said};

fn home() -> Plane {
    Plane::north_up(Position::from_deg(51.5, -0.12).unwrap())
}

/// A fix every `step_m` round a rectangle from its south-west corner, at 1.2 m/s.
fn round(width_m: f64, length_m: f64, step_m: f64) -> Vec<Fix> {
    let corners = [(0.0, 0.0), (width_m, 0.0), (width_m, length_m), (0.0, length_m), (0.0, 0.0)];
    let mut fixes = Vec::new();
    for pair in corners.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let side_m = (to.0 - from.0).hypot(to.1 - from.1);
        let n_steps = (side_m / step_m).round() as usize;
        for step in 0..n_steps {
            let share = step as f64 / n_steps as f64;
            let at = (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1));
            fixes.push(fix(at, 4.0, fixes.len()));
        }
    }
    fixes
}

fn fix(at: (f64, f64), accuracy_m: f64, second: usize) -> Fix {
    Fix {
        position: home().from_plane(at),
        accuracy: Some(Length::from_m(accuracy_m).unwrap()),
        at_ms: Some(second as i64 * 1_000),
    }
}

fn walk(fixes: &[Fix]) -> Walked {
    walked_round(fixes, &WalkRules::default()).unwrap()
}

fn codes(said: &[Said]) -> Vec<&str> {
    said.iter().map(|said| &*said.code).collect()
}

fn refused(fixes: &[Fix]) -> Vec<Said> {
    walked_round(fixes, &WalkRules::default()).unwrap_err()
}

fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} and not {expected}");
}

#[test]
fn a_round_gives_its_area_on_the_ellipsoid_and_in_the_plane() {
    let walked = walk(&round(40.0, 25.0, 1.25));
    // Smoothing rounds the corners by less than the fixes are unsure of.
    near(walked.area.m2(), 1_000.0, 3.0);
    near(walked.perimeter.m(), 130.0, 3.0);
    let ring: Vec<Position> = walked.ring.iter().map(|at| Plane::north_up(walked.origin).from_plane(*at)).collect();
    near(geodesic_area(&ring).m2(), walked.area.m2(), 1e-9);
    let next = walked.ring.iter().cycle().skip(1);
    let plane_m2: f64 = walked.ring.iter().zip(next).map(|((x, y), (u, v))| x * v - u * y).sum::<f64>() / 2.0;
    near(plane_m2, walked.area.m2(), 1e-4);
    assert!(walked.ring.iter().all(|(x, y)| *x > -1e-6 && *y > -1e-6));
    assert_eq!(walked.n_kept, 104);
}

#[test]
fn a_clockwise_round_and_one_begun_elsewhere_are_the_same_lawn() {
    let fixes = round(40.0, 25.0, 1.25);
    let forward = walk(&fixes);
    let mut backward = fixes.clone();
    backward.reverse();
    for (second, fix) in backward.iter_mut().enumerate() {
        fix.at_ms = Some(second as i64 * 1_000);
    }
    near(walk(&backward).area.m2(), forward.area.m2(), 0.2);
    let mut later = fixes;
    later.rotate_left(30);
    for (second, fix) in later.iter_mut().enumerate() {
        fix.at_ms = Some(second as i64 * 1_000);
    }
    near(walk(&later).area.m2(), forward.area.m2(), 0.2);
}

#[test]
fn one_fix_a_corner_is_a_round() {
    let at = |x: f64, y: f64| Fix { position: home().from_plane((x, y)), accuracy: None, at_ms: None };
    let walked = walk(&[at(0.0, 0.0), at(40.0, 0.0), at(40.0, 25.0), at(0.0, 25.0)]);
    near(walked.area.m2(), 1_000.0, 1e-3);
    assert!(codes(&walked.advice).contains(&"walk-accuracy-not-stated"));
    assert!(codes(&walked.advice).contains(&"walk-tape-instead"));
}

#[test]
fn fixes_that_cannot_be_right_are_dropped_and_counted() {
    let good = round(40.0, 25.0, 1.25);
    let mut fixes = good.clone();
    fixes.insert(50, Fix { accuracy: Some(Length::from_m(35.0).unwrap()), ..fixes[50] });
    let half_past = |fix: Fix| Fix { at_ms: fix.at_ms.map(|at_ms| at_ms + 500), ..fix };
    let wild = Fix { position: home().from_plane((300.0, -200.0)), ..half_past(fixes[20]) };
    fixes.insert(21, wild);
    fixes.insert(11, half_past(fixes[10]));
    let early = Fix { at_ms: Some(-5_000), ..fixes[30] };
    fixes.insert(31, early);
    let walked = walk(&fixes);
    assert_eq!(walked.dropped, Dropped { n_inaccurate: 1, n_unreachable: 2, n_standing: 1, n_after_closing: 0 });
    near(walked.area.m2(), walk(&good).area.m2(), 1e-6);
}

#[test]
fn a_wild_first_fix_does_not_drop_the_walk() {
    let mut fixes = round(40.0, 25.0, 1.25);
    fixes.insert(0, Fix { position: home().from_plane((500.0, 0.0)), at_ms: Some(-1_000), ..fixes[0] });
    let walked = walk(&fixes);
    assert_eq!((walked.n_kept, walked.dropped.n_unreachable), (104, 1));
}

#[test]
fn a_clock_that_stands_still_drops_nothing() {
    let mut fixes = round(40.0, 25.0, 1.25);
    for fix in &mut fixes {
        fix.at_ms = Some(-2_147_483_648_000);
    }
    let walked = walk(&fixes);
    assert_eq!((walked.n_kept, walked.dropped), (104, Dropped::default()));
}

#[test]
fn the_walk_closes_where_it_came_back() {
    let mut fixes = round(40.0, 25.0, 1.25);
    let n_round = fixes.len();
    for step in 0..8 {
        fixes.push(fix((1.25 * step as f64, 0.4), 4.0, n_round + step));
    }
    let walked = walk(&fixes);
    assert!(walked.dropped.n_after_closing >= 6, "{:?}", walked.dropped);
    near(walked.area.m2(), 1_000.0, 6.0);
    let mut short = round(40.0, 25.0, 1.25);
    short.truncate(short.len() - 5);
    let walked = walk(&short);
    near(walked.gap.m(), 7.5, 1e-6);
    assert!(codes(&walked.advice).contains(&"walk-gap-closed"));
    near(walked.area.m2(), 1_000.0, 4.0);
}

#[test]
fn what_is_no_round_is_refused() {
    let check = |fixes: &[Fix], expected: &[&str]| assert_eq!(codes(&refused(fixes)), expected);
    check(&[], &["walk-too-few-fixes"]);
    check(&round(40.0, 25.0, 1.25)[..3], &["walk-too-few-fixes"]);
    let mut open = round(40.0, 25.0, 1.25);
    open.truncate(70);
    check(&open, &["walk-not-closed"]);
    let along: Vec<Fix> = (0..40).map(|step| fix((step as f64, 0.0), 4.0, step)).collect();
    let back = (0..40).map(|step| fix((39.0 - step as f64, 0.0), 4.0, 40 + step));
    check(&along.iter().copied().chain(back).collect::<Vec<_>>(), &["walk-without-area"]);
    let far: Vec<Fix> = round(3_000.0, 3_000.0, 50.0).into_iter().map(|fix| Fix { at_ms: None, ..fix }).collect();
    check(&far, &["walk-too-large"]);
    let still: Vec<Fix> = (0..60).map(|second| fix((0.0, 0.0), 4.0, second)).collect();
    check(&still, &["walk-too-few-fixes"]);
}

#[test]
fn a_walk_like_an_eight_is_refused_with_the_place() {
    let turn = |step: usize| core::f64::consts::TAU * step as f64 / 120.0;
    let eight: Vec<Fix> =
        (0..120).map(|step| fix((20.0 * turn(step).sin(), 10.0 * (2.0 * turn(step)).sin()), 4.0, step)).collect();
    let said = refused(&eight);
    assert_eq!(codes(&said), ["walk-crosses-itself"]);
    assert!(matches!(said[0].arg("after"), Some(Arg::Number { value, .. }) if (0.0..70.0).contains(value)));
}

#[test]
fn a_small_loop_is_cut() {
    let mut fixes = round(40.0, 25.0, 1.25);
    // Sure fixes are not smoothed, so that the loop stays as it is.
    for fix in &mut fixes {
        fix.accuracy = Some(Length::from_m(1.0).unwrap());
    }
    let knot = [(13.0, 1.0), (12.0, 2.0), (11.0, 1.0), (12.0, -0.5)];
    for (offset, at) in knot.iter().enumerate() {
        fixes.insert(11 + offset, fix(*at, 1.0, 0));
    }
    for (second, fix) in fixes.iter_mut().enumerate() {
        fix.at_ms = Some(second as i64 * 1_000);
    }
    let walked = walk(&fixes);
    assert!(codes(&walked.advice).contains(&"walk-loops-cut"), "{:?}", walked.advice);
    near(walked.area.m2(), 1_000.0, 4.0);
}

#[test]
fn the_tape_is_advised_where_the_doubt_is_too_large() {
    let small = walk(&round(20.0, 15.0, 1.25));
    assert!(small.doubt_percent() > 5.0);
    assert!(codes(&small.advice).contains(&"walk-tape-instead"));
    let sure: Vec<Fix> = round(150.0, 100.0, 2.0)
        .into_iter()
        .map(|fix| Fix { accuracy: Some(Length::from_m(1.0).unwrap()), ..fix })
        .collect();
    let large = walk(&sure);
    assert!(large.doubt_percent() < 5.0, "{}", large.doubt_percent());
    assert_eq!(codes(&large.advice), ["walk-again-to-compare", "walk-gap-closed"]);
}

#[test]
fn two_rounds_are_compared_by_their_doubt() {
    let one = walk(&round(40.0, 25.0, 1.25));
    let near_it = walk(&round(41.0, 25.0, 1.25));
    let compared = compare(&one, &near_it);
    assert!(compared.do_agree);
    near(compared.difference.m2(), (one.area.m2() - near_it.area.m2()).abs(), 1e-9);
    let other = walk(&round(90.0, 60.0, 1.25));
    let compared = compare(&one, &other);
    assert_eq!((compared.do_agree, &*compared.said.code), (false, "walk-rounds-differ"));
    assert!(compared.difference.m2() > 2.0 * one.area_sd.m2().hypot(other.area_sd.m2()));
}

#[test]
fn the_plane_and_the_ellipsoid_are_each_other_s_way_back() {
    for (lat_deg, lon_deg) in [(51.5, -0.12), (0.0, 10.0), (-41.3, 174.8), (-17.0, 179.99999), (89.9, 30.0)] {
        for away_deg in [0.0, 63.0, 299.5] {
            let origin = Position::from_deg(lat_deg, lon_deg).unwrap();
            let plane = Plane::new(origin, crate::quantity::Angle::from_deg(away_deg).unwrap());
            for at in [(0.0, 0.0), (30.0, 0.0), (-12.5, 40.25), (800.0, -900.0)] {
                let back = plane.to_plane(plane.from_plane(at));
                near(back.0, at.0, 1e-6);
                near(back.1, at.1, 1e-6);
            }
        }
    }
    let plane = home();
    assert_eq!(plane.from_plane((f64::NAN, 1.0)), plane.origin());
    assert_eq!(plane.from_plane((f64::INFINITY, 1.0)), plane.origin());
}

#[test]
fn crossings_are_found_and_touching_corners_are_none() {
    assert_eq!(first_crossing(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]), None);
    let spike = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (4.0, 2.0), (0.0, 2.0)];
    assert_eq!(first_crossing(&spike).map(|crossing| (crossing.first_side, crossing.second_side)), Some((1, 2)));
    let touching = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 0.0), (0.0, 4.0)];
    assert_eq!(first_crossing(&touching).map(|crossing| crossing.at), Some((2.0, 0.0)));
    assert_eq!(first_crossing(&[]), None);
    assert_eq!(first_crossing(&[(0.0, 0.0)]), None);
    let nearly = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 1e-5), (0.0, 4.0)];
    assert_eq!(first_crossing(&nearly), None);
    assert_eq!(first_crossing_within(&nearly, 1e-3).map(|crossing| crossing.at), Some((2.0, 1e-5)));
    let square = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)];
    assert_eq!(first_crossing_within(&square, 1e-3), None);
}

#[test]
fn rings_of_no_corner_one_and_two_enclose_nothing() {
    let at = Position::from_deg(51.5, -0.12).unwrap();
    for ring in [&[][..], &[at], &[at, home().from_plane((3.0, 4.0))]] {
        assert_eq!(geodesic_area(ring), Area::ZERO);
    }
    assert_eq!((geodesic_perimeter(&[]), geodesic_perimeter(&[at])), (Length::ZERO, Length::ZERO));
    near(geodesic_perimeter(&[at, home().from_plane((3.0, 4.0))]).m(), 10.0, 1e-6);
}
