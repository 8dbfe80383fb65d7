//! Strips at any angle on invented lawns small enough to be worked out by hand.

use super::tests::{bed, calibration, choice, kit, label, lawn_of, m, near, planned, rectangle, verdict};
use super::*;
use crate::checks::Verdict;
use crate::lawn::{Beside, Measured, Part, Shape, Side, Slope, Survey};
use crate::quantity::{Angle, Arg, FlowRate, Pace, Swath, Volume};

fn deg(value: f64) -> Angle {
    Angle::from_deg(value).unwrap()
}

fn corners(ring: &[(f64, f64)]) -> Part {
    Part::taped(Shape::corners(ring.to_vec()).unwrap())
}

/// 6 m wide and 10 m deep on the left, 4 m deep on the right: the back slants by 45 degrees.
fn slanting() -> Part {
    corners(&[(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (0.0, 10.0)])
}

fn with_margin(part: Part, side_idx: usize, margin: f64) -> Measured {
    let side = Side { part_idx: 0, side_idx, beside: Beside::Hedge, margin: m(margin) };
    Survey { sides: vec![side], ..Survey::of(vec![part]) }.measure(None).unwrap()
}

fn walker() -> Walker {
    let gait = Gait {
        flow: FlowRate::from_l_per_min(0.9).unwrap(),
        pace: Pace::from_m_per_s(1.0).unwrap(),
        swath: Swath::from_m(1.0).unwrap(),
    };
    Walker { gait, wind_from: None, start_side: None, edge_first: false }
}

#[test]
fn passes_along_at_a_right_angle_are_the_passes_across() {
    let measured = lawn_of(vec![rectangle(10.3, 7.6), bed(1.2, 2.0, (3.0, 3.0))], 0.0);
    let mut across = choice(1);
    across.headings = vec![Heading::Across];
    across.start_side = StartSide::Back;
    across.narrow.across = Some(Remedy::AsItIs);
    let mut along = choice(1);
    along.angle = deg(90.0);
    along.narrow.along = Some(Remedy::AsItIs);
    let (across, along) = (planned(&measured, &across), planned(&measured, &along));
    near(across.layouts[0].angle.deg(), 90.0);
    assert_eq!(across.layouts[0].strips, along.layouts[0].strips);
}

#[test]
fn a_slanting_edge_is_overshot_by_half_a_swath_times_the_tangent() {
    // w tan(45 degrees) is 1 m, and each of the six strips overshoots half a square metre: 15 mL on each square metre.
    let plan = planned(&lawn_of(vec![slanting()], 0.0), &choice(1));
    near(plan.ends.overshot.m2(), 3.0);
    near(plan.ends.overshot_water.l(), 3.0 * 0.015);
    near(plan.ends.missed.m2(), 0.0);
    near(plan.walked.l(), (10.0 + 9.0 + 8.0 + 7.0 + 6.0 + 5.0) * 0.015);
    let drawn: f64 = plan.ends.overshot_ground.iter().map(|ring| cut::area_of(&ring.outer).abs()).sum();
    near(drawn, 3.0);
}

#[test]
fn a_run_stops_short_of_a_margin_and_the_wedge_is_missed() {
    let measured = with_margin(slanting(), 2, 1.0);
    let plan = planned(&measured, &choice(1));
    let lengths: Vec<f64> = plan.layouts[0].strips.iter().map(|strip| strip.runs[0].length.m()).collect();
    // The margin's edge lies 1.414 m in front of the back, so that strips end where it first comes into their width.
    let expected = |idx: f64| 10.0 - 2f64.sqrt() - idx - 1.0;
    for (idx, length) in lengths.iter().enumerate().skip(1).take(4) {
        near(*length, expected(idx as f64));
    }
    assert_eq!(verdict(&plan.checks, "ends-missed"), Verdict::Caution);
    assert!(plan.ends.missed.m2() > 2.4 && plan.ends.missed.m2() < 3.1, "{:?}", plan.ends.missed);
    near(plan.ends.overshot.m2(), 0.0);
}

#[test]
fn a_lap_round_the_edge_covers_what_square_ends_would_miss() {
    let measured = with_margin(slanting(), 2, 1.0);
    let mut lapped = choice(1);
    lapped.edge_first = true;
    let plan = planned(&measured, &lapped);
    assert!(plan.ends.missed.m2() < 1e-6, "{:?}", plan.ends.missed);
    let first = &plan.passes[0].legs[0];
    assert!(plan.layouts[0].strip(first.strip).unwrap().is_lap);
    assert_eq!(verdict(&plan.checks, "ends-on-the-lap"), Verdict::Caution);
}

#[test]
fn a_lap_of_a_rectangle_goes_half_a_swath_inside_it() {
    let mut lapped = choice(1);
    lapped.edge_first = true;
    let plan = planned(&lawn_of(vec![rectangle(8.0, 12.0)], 0.0), &lapped);
    let strips = &plan.layouts[0].strips;
    let lap: f64 = strips[0].runs.iter().map(|run| run.length.m()).sum();
    // Each leg begins where the swath of the one before ends, so that each corner is sprayed once.
    near(lap, 2.0 * (8.0 + 12.0) - 4.0);
    near(strips[0].runs.iter().map(|run| run.area.m2()).sum(), 96.0 - 6.0 * 10.0);
    assert_eq!(strips.iter().filter(|strip| !strip.is_lap).count(), 6);
    near(plan.walked.l(), (36.0 + 60.0) * 0.015);
    near(plan.product_exact.base(), 2.5 * 96.0);
    near(plan.highest_on_ground.base(), 2.5);
    assert!(plan.checks.iter().all(|check| check.rule != "ends-on-the-lap"));
}

#[test]
fn a_lap_of_an_inward_right_angle_sprays_it_once() {
    let inward = corners(&[(0.0, 0.0), (12.0, 0.0), (12.0, 5.0), (5.0, 5.0), (5.0, 12.0), (0.0, 12.0)]);
    let mut lapped = choice(1);
    lapped.edge_first = true;
    let plan = planned(&lawn_of(vec![inward], 0.0), &lapped);
    // Five corners outwards take a metre off the edges' 48 m, the one inwards adds it.
    let lap: f64 = plan.layouts[0].strips[0].runs.iter().map(|run| run.length.m()).sum();
    near(lap, 48.0 - 5.0 + 1.0);
    near(plan.ends.missed.m2(), 0.0);
    assert!(plan.checks.iter().all(|check| check.rule != "ends-on-the-lap"));
}

#[test]
fn ground_that_a_lap_sprays_twice_is_held_against_the_highest_dose() {
    let mut lapped = choice(1);
    lapped.edge_first = true;
    let measured = lawn_of(vec![slanting()], 0.0);
    let once = planned(&measured, &choice(1));
    let twice = planned(&measured, &lapped);
    assert_eq!(verdict(&twice.checks, "ends-on-the-lap"), Verdict::Caution);
    near(once.highest_on_ground.base() / once.concentration.per_l(), 0.015);
    near(twice.highest_on_ground.base() / twice.concentration.per_l(), 0.030);
}

#[test]
fn what_is_overshot_beside_water_is_a_stop_and_beside_a_neighbour_a_caution() {
    let beside = |side_idx: usize, beside: Beside| {
        let side = Side { part_idx: 0, side_idx, beside, margin: m(0.0) };
        let measured = Survey { sides: vec![side], ..Survey::of(vec![slanting()]) }.measure(None).unwrap();
        planned(&measured, &choice(1)).checks.into_iter().find(|check| check.rule == "ends-beyond")
    };
    // The slanting side alone is overshot, by 3 square metres.
    let water = beside(2, Beside::OpenWater).unwrap();
    assert_eq!(water.verdict, Verdict::Stop);
    let Some(Arg::Number { value, .. }) = water.value else { panic!("{water:?}") };
    near(value, 3.0);
    assert_eq!(beside(2, Beside::Neighbour).unwrap().verdict, Verdict::Caution);
    assert_eq!(beside(2, Beside::FoodPlants).unwrap().verdict, Verdict::Caution);
    assert!(beside(2, Beside::Hedge).is_none());
    assert!(beside(0, Beside::OpenWater).is_none());
}

#[test]
fn the_narrow_strip_lies_where_it_is_wanted() {
    let measured = lawn_of(vec![rectangle(10.3, 20.0)], 0.0);
    let mut first = choice(4);
    first.narrow_at = NarrowAt::First;
    let plan = planned(&measured, &first);
    let strips = &plan.layouts[0].strips;
    assert!(strips[0].is_narrow && !strips[10].is_narrow);
    near(strips[0].width.m(), 0.3);
    near(strips[1].centre.m(), 0.8);
    assert_eq!(plan.narrow[0].strip, StripId(1));
    near(plan.walked.l(), 10.3 * 20.0 * 0.06);
}

#[test]
fn on_a_slope_water_goes_by_the_ground_and_product_by_the_plan() {
    let level = lawn_of(vec![rectangle(4.0, 20.0)], 0.0);
    let sloping = Measured { slope: Some(Slope::from_percent(30.0, deg(0.0)).unwrap()), ..level };
    let plan = planned(&sloping, &choice(1));
    let along_m = 20.0 * 1.0_f64.hypot(0.3);
    near(plan.layouts[0].strips[0].runs[0].length.m(), along_m);
    near(plan.walked.l(), 4.0 * along_m * 0.015);
    near(plan.product_exact.base(), 2.5 * 80.0);
    // Whole strips put the dose on each square metre of plan: 200 mL on 80 m², not on the 83.5 m² of ground.
    near(plan.highest_on_ground.base(), 2.5);
    // Across the slope the strips lie a swath apart on the ground: 20.88 m take 21.
    let mut across = choice(1);
    across.headings = vec![Heading::Across];
    across.narrow.across = Some(Remedy::AsItIs);
    assert_eq!(planned(&sloping, &across).layouts[0].strips.len(), 21);
}

#[test]
fn the_walk_begins_at_the_entry_and_a_refill_goes_by_the_tap() {
    let level = lawn_of(vec![rectangle(4.0, 20.0)], 0.0);
    let measured = Measured { entry: Some((0.0, 20.0)), tap: Some((10.5, 0.0)), ..level };
    let mut small = kit();
    small.tank = Volume::from_l(1.25).unwrap();
    let plan = plan(&measured, &small, &calibration(), &label(), &choice(2)).unwrap();
    let first = &plan.passes[0].legs[0];
    assert!(first.reversed);
    near(first.empty_before.m(), 0.5);
    // Half a metre to the first strip, and a swath between strips.
    near(plan.passes[0].empty.m(), 3.5);
    assert_eq!(plan.passes[0].n_turns, 3);
    // The second pass begins where the first one ended, at the back on the right, by way of the tap.
    assert!(plan.refills[0].is_between_passes);
    let at = plan.passes[1].legs[0].empty_before.m();
    near(at, 2.0 * 7.0_f64.hypot(20.0));
    // It ends in the first strip at the back again, half a metre from the way out.
    near(plan.passes[1].empty.m(), at + 3.0 + 0.5);
}

#[test]
fn the_long_way_is_taken_and_a_narrow_strip_is_shunned() {
    let found = directions(&lawn_of(vec![rectangle(9.0, 30.0)], 0.0), &walker());
    near(found[0].angle.deg(), 0.0);
    assert_eq!(&*found[0].why.code, "direction-quickest");
    near(found[0].metres.m(), 270.0);
    near(found[0].empty.m(), 8.0);
    assert_eq!(found[0].n_turns, 8);
    // 270 m and 8 m at 1 m/s and eight turns of 3 s.
    near(found[0].time.s(), 270.0 + 8.0 + 24.0);
    assert_eq!(found.iter().filter(|direction| direction.is_recommended).count(), 1);
    // 12 runs of 10 m are a little slower than 11 of 12 m, one of which would be narrow.
    let found = directions(&lawn_of(vec![rectangle(10.2, 12.0)], 0.0), &walker());
    near(found[0].angle.deg(), 90.0);
    assert_eq!(found[0].narrow, None);
}

#[test]
fn the_start_lies_where_the_wind_blows_to() {
    let level = lawn_of(vec![rectangle(9.0, 30.0)], 0.0);
    let facing_north = Measured { away_bearing: Some(deg(0.0)), ..level.clone() };
    let from = |wind: f64| Walker { wind_from: Some(deg(wind)), ..walker() };
    let start = |measured: &Measured, walker: &Walker| {
        let best = directions(measured, walker).remove(0);
        (best.start_side, best.start_why.code.to_string())
    };
    let downwind = "start-downwind".to_owned();
    assert_eq!(start(&facing_north, &from(270.0)), (StartSide::Right, downwind.clone()));
    assert_eq!(start(&facing_north, &from(90.0)), (StartSide::Left, downwind));
    // On a lawn whose bearing nobody took the wind is told by the lawn itself.
    assert_eq!(start(&level, &from(270.0)), (StartSide::Right, "start-downwind".to_owned()));
    let facing_east = Measured { away_bearing: Some(deg(90.0)), ..level.clone() };
    assert_eq!(start(&facing_east, &from(0.0)).0, StartSide::Right);
    assert_eq!(start(&facing_north, &walker()).1, "start-wind-unknown");
}
