//! Laws of the trade over many invented lawns, kits and choices. A law says what must hold whatever the numbers;
//! it must never repeat the formula it holds in check. `PROPTEST_CASES` runs more of them.

use evensward_core::checks::{Check, Verdict, strictest};
use evensward_core::lawn::Ring;
use evensward_core::plan::{Fill, FillMoment, Layout, Leg, Pass, Plan, Remedy, plan, product_for};
use evensward_core::quantity::{Pace, Volume};
use proptest::prelude::*;
use proptest::test_runner::Config;

use crate::properties_given::{Given, any_lawn, given, joined, rectangular};

/// A modest number of cases, more by `PROPTEST_CASES`.
pub fn cases(n_cases: u32) -> Config {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|text| text.parse().ok());
    Config { cases: asked.unwrap_or(n_cases), failure_persistence: None, ..Config::default() }
}

/// The plan, or nothing where the choice itself is refused (both headings turned, nothing left, tank too small).
fn planned(given: &Given) -> Option<Plan> {
    match plan(&given.measured, &given.kit, &given.calibration, &given.label, &given.choice) {
        Ok(plan) => Some(plan),
        Err(refusals) => {
            let known = [
                "both-headings-turned",
                "nothing-left-to-treat",
                "tank-too-small-for-a-strip",
                "too-many-fills",
                "no-such-number-of-passes",
            ];
            for said in refusals {
                assert!(known.contains(&&*said.code), "{} is no reason here", said.code);
            }
            None
        }
    }
}

fn is_near(a: f64, b: f64, relative: f64) -> bool {
    (a - b).abs() <= relative * a.abs().max(b.abs()).max(1e-9)
}

fn fill_of(plan: &Plan, pass: &Pass, leg: &Leg) -> Fill {
    let order = |moment: FillMoment| -> (u8, usize) {
        let pass = plan.passes.iter().find(|pass| pass.number == moment.pass).unwrap();
        (moment.pass, pass.moments().iter().position(|(at, _)| *at == moment).unwrap())
    };
    let (moment, _) = pass.moments().into_iter().find(|(_, legs)| legs.contains(leg)).unwrap();
    let at = order(moment);
    plan.fills.iter().rev().find(|fill| order(fill.from) <= at).unwrap().clone()
}

fn holds(ring: &[(f64, f64)], x: f64, y: f64) -> bool {
    let mut is_inside = false;
    for (from, to) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        if (from.1 > y) != (to.1 > y) && x < (to.0 - from.0) * (y - from.1) / (to.1 - from.1) + from.0 {
            is_inside = !is_inside;
        }
    }
    is_inside
}

fn is_on(ground: &[Ring], x: f64, y: f64) -> bool {
    ground.iter().any(|ring| holds(&ring.outer, x, y) && !ring.holes.iter().any(|hole| holds(hole, x, y)))
}

/// Product per square metre at a place, from first principles: what each leg that covers it lets fall there.
fn dose_at(plan: &Plan, x: f64, y: f64) -> f64 {
    let mut total = 0.0;
    for pass in &plan.passes {
        let layout = plan.layout(pass.heading).unwrap();
        for leg in &pass.legs {
            let strip = layout.strip(leg.strip).unwrap();
            if is_on(&strip.runs[leg.run_idx].ground, x, y) {
                let fill = fill_of(plan, pass, leg);
                let per_l = fill.product.base() / fill.mixture.l();
                // A lawn a hair off a whole number of swaths has strips that are a hair wider than the swath.
                assert!(strip.width.m() <= plan.swath.m() * 1.002 + 1e-9, "{:?}", strip.width);
                total += per_l * plan.flow.l_per_min() / 60.0 / (leg.pace.m_per_s() * strip.width.m());
            }
        }
    }
    total
}

proptest! {
    #![proptest_config(cases(24))]

    #[test]
    fn no_square_metre_takes_more_than_the_highest_dose_unless_a_stop_is_shown(given in given(any_lawn())) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        let Some(highest) = given.label.highest_dose else { return Ok(()) };
        let is_stopped = plan.checks.iter().any(|check| {
            check.verdict == Verdict::Stop && (check.rule == "dose-on-ground" || check.rule == "dose")
        });
        let ((left, front), (right, back)) = given.measured.net.bounds().unwrap();
        for i in 0..24 {
            for j in 0..24 {
                let x = left + (right - left) * (f64::from(i) + 0.377) / 24.0;
                let y = front + (back - front) * (f64::from(j) + 0.613) / 24.0;
                let dose = dose_at(&plan, x, y);
                prop_assert!(dose <= plan.highest_on_ground.base() * (1.0 + 1e-6), "{dose} at {x}, {y}");
                prop_assert!(is_stopped || dose <= highest.value.base() * (1.0 + 1e-6), "{dose} at {x}, {y}");
            }
        }
    }
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn product_is_untouched_by_passes_pace_flow_trim_dead_volume_and_tank(
        one in given(any_lawn()),
        other in given(any_lawn()),
    ) {
        // The same lawn, label and dose; everything else is the other's.
        let mut changed = other;
        changed.measured = one.measured.clone();
        changed.label = one.label.clone();
        changed.choice.dose = one.choice.dose;
        changed.choice.jug_step = None;
        let (Some(one_plan), Some(other_plan)) = (planned(&one), planned(&changed)) else { return Ok(()) };
        // A strip that is left takes its product with it, and nothing else does.
        let per_m2 = |plan: &Plan| plan.product_exact.base() / plan.treated.area.m2();
        prop_assert!(is_near(per_m2(&one_plan), per_m2(&other_plan), 1e-9));
        if one_plan.left_out.m2() == 0.0 && other_plan.left_out.m2() == 0.0 {
            prop_assert!(is_near(one_plan.product_exact.base(), other_plan.product_exact.base(), 1e-9));
        }
    }

    #[test]
    fn trim_moves_the_water_and_only_the_water(given in given(any_lawn()), trim in 0.8..1.25f64) {
        let mut plain = given.clone();
        plain.choice.trim = 1.0;
        let mut trimmed = given;
        trimmed.choice.trim = trim;
        let (Some(plain), Some(trimmed)) = (planned(&plain), planned(&trimmed)) else { return Ok(()) };
        // A suggested remedy may change with the water; a chosen one does not.
        if plain.layouts == trimmed.layouts {
            prop_assert!(is_near(trimmed.walked.l(), plain.walked.l() * trim, 1e-9));
            prop_assert_eq!(trimmed.product_exact, plain.product_exact);
        }
    }

    #[test]
    fn exact_fills_sum_to_the_total_and_measured_ones_never_pass_the_maximum(given in given(any_lawn())) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        let exact: f64 = plan.fills.iter().map(|fill| fill.product_exact.base()).sum();
        let measured: f64 = plan.fills.iter().map(|fill| fill.product.base()).sum();
        prop_assert!(is_near(exact, plan.product_exact.base(), 1e-9));
        prop_assert!(is_near(measured, plan.product.base(), 1e-9));
        let step = given.kit.jug_steps.step(plan.product.kind()).base();
        for fill in &plan.fills {
            if step > 0.0 {
                let steps = fill.product.base() / step;
                prop_assert!((steps - steps.round()).abs() < 1e-6, "{steps} steps");
            }
        }
        if let Some(highest) = given.label.highest_dose {
            let most = highest.value.base() * plan.treated.lower().m2();
            prop_assert!(measured <= most * (1.0 + 1e-9));
            for fill in &plan.fills {
                let share = fill.mixture.l() / plan.mixture.l();
                prop_assert!(fill.product.base() <= most * share * (1.0 + 1e-9) + 1e-9);
            }
        }
        // Never further off than a step a fill, unless the label's maximum held it down.
        if given.label.highest_dose.is_none() && step > 0.0 {
            let n_fills = plan.fills.len() as f64;
            prop_assert!((measured - exact).abs() <= step * n_fills / 2.0 + 1e-6);
        }
    }

    #[test]
    fn litres_out_are_litres_in(given in given(any_lawn())) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        let legs: f64 = plan.passes.iter().flat_map(|pass| &pass.legs).map(|leg| leg.volume.l()).sum();
        let mixed: f64 = plan.fills.iter().map(|fill| fill.mixture.l()).sum();
        prop_assert!(is_near(legs, plan.walked.l(), 1e-9));
        prop_assert!(is_near(mixed, plan.walked.l() + given.kit.dead_volume.l(), 1e-9));
        for fill in &plan.fills {
            let clean_l = if fill.number == 1 { fill.in_tank_before.l() } else { 0.0 };
            let parts = fill.water.l() + fill.own_volume.l() + clean_l;
            prop_assert!(is_near(parts, fill.mixture.l(), 1e-9));
        }
    }

    #[test]
    fn the_tank_never_overflows_nor_runs_dry_in_mid_strip(given in given(any_lawn())) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        let mut in_kit_l = 0.0;
        let mut fills = plan.fills.iter().peekable();
        for pass in &plan.passes {
            for (moment, legs) in pass.moments() {
                if fills.peek().is_some_and(|fill| fill.from == moment) {
                    in_kit_l += fills.next().unwrap().mixture.l();
                    prop_assert!(in_kit_l <= given.kit.tank.l() * (1.0 + 1e-9));
                }
                in_kit_l -= legs.iter().map(|leg| leg.volume.l()).sum::<f64>();
                prop_assert!(in_kit_l >= given.kit.dead_volume.l() - 1e-6, "dry in {moment:?}");
            }
        }
        prop_assert!(fills.next().is_none());
        prop_assert!((in_kit_l - given.kit.dead_volume.l()).abs() < 1e-6);
        for refill in &plan.refills {
            let fill = &plan.fills[usize::from(refill.fill) - 1];
            prop_assert_eq!(refill.before, fill.from);
        }
    }

    #[test]
    fn one_pass_has_one_concentration(given in given(any_lawn())) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        for pass in &plan.passes {
            let strengths: Vec<f64> = pass
                .legs
                .iter()
                .map(|leg| fill_of(&plan, pass, leg))
                .map(|fill| fill.product.base() / fill.mixture.l())
                .collect();
            prop_assert!(strengths.windows(2).all(|pair| is_near(pair[0], pair[1], 1e-9)));
        }
    }

    #[test]
    fn every_leg_takes_flow_times_length_over_pace(given in given(any_lawn())) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        for pass in &plan.passes {
            let layout = plan.layout(pass.heading).unwrap();
            for leg in &pass.legs {
                let run = &layout.strip(leg.strip).unwrap().runs[leg.run_idx];
                let litres = plan.flow.l_per_min() / 60.0 * run.length.m() / leg.pace.m_per_s();
                prop_assert!(is_near(leg.volume.l(), litres, 1e-9));
            }
        }
    }

    #[test]
    fn strips_together_are_the_net_area(given in given(prop_oneof![rectangular(Just(0.0).boxed()), joined()])) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        for layout in &plan.layouts {
            let runs = layout.strips.iter().flat_map(|strip| &strip.runs);
            let area_m2: f64 = runs.map(|run| run.area.m2()).sum();
            prop_assert!(is_near(area_m2, plan.treated.area.m2(), 1e-9), "{area_m2} of {:?}", plan.treated);
        }
        let whole_m2 = plan.treated.area.m2() + plan.left_out.m2();
        prop_assert!(is_near(whole_m2, given.measured.net_area.area.m2(), 1e-9));
    }

    #[test]
    fn water_on_a_rectangle_is_area_times_rate_when_the_narrow_strip_is_paced(
        given in given(rectangular(Just(0.0).boxed())),
    ) {
        let mut given = given.square();
        given.choice.narrow.along = Some(Remedy::SomePasses { k: 1 });
        given.choice.narrow.across = Some(Remedy::SomePasses { k: 1 });
        let Some(plan) = planned(&given) else { return Ok(()) };
        let per_pass_l = plan.flow.l_per_min() / 60.0 / plan.pace.m_per_s() / plan.swath.m() * plan.treated.area.m2();
        // Where the lawn is up to a fiftieth of a swath off a whole number of swaths, that number of strips is walked.
        let has_narrow = |layout: &Layout| layout.strips.iter().any(|strip| strip.is_narrow);
        let whole = plan.layouts.iter().filter(|layout| !has_narrow(layout));
        let within = whole.map(|layout| 0.02 / layout.strips.len() as f64).fold(1e-6, f64::max);
        prop_assert!(is_near(plan.walked.l(), per_pass_l * plan.passes.len() as f64, within));
    }

    #[test]
    fn even_out_takes_more_water_and_the_same_product(given in given(rectangular(Just(0.0).boxed()))) {
        let mut given = given.square();
        given.choice.narrow.along = Some(Remedy::SomePasses { k: 1 });
        given.choice.narrow.across = Some(Remedy::SomePasses { k: 1 });
        let paced = planned(&given);
        given.choice.narrow.along = Some(Remedy::EvenOut);
        given.choice.narrow.across = Some(Remedy::EvenOut);
        let (Some(paced), Some(evened)) = (paced, planned(&given)) else { return Ok(()) };
        prop_assert!(evened.walked.l() >= paced.walked.l() * (1.0 - 1e-3));
        prop_assert_eq!(evened.product_exact, paced.product_exact);
    }

    #[test]
    fn a_walk_down_and_back_never_jumps_to_the_other_end(given in given(rectangular(Just(0.0).boxed()))) {
        let given = given.square();
        let Some(plan) = planned(&given) else { return Ok(()) };
        for pass in &plan.passes {
            prop_assert!(pass.legs.windows(2).all(|pair| pair[0].reversed != pair[1].reversed));
        }
        for pair in plan.passes.windows(2) {
            if pair[0].heading == pair[1].heading {
                let (last, first) = (pair[0].legs.last().unwrap(), pair[1].legs.first().unwrap());
                prop_assert!(last.reversed != first.reversed);
            }
        }
    }

    #[test]
    fn adding_a_check_only_makes_the_whole_stricter(given in given(any_lawn()), n_kept in 0usize..8) {
        let Some(plan) = planned(&given) else { return Ok(()) };
        let fewer: Vec<Check> = plan.checks.iter().take(n_kept).cloned().collect();
        prop_assert!(strictest(&fewer) <= strictest(&plan.checks));
    }

    #[test]
    fn the_product_never_passes_the_highest_dose_on_the_lower_bound(given in given(any_lawn())) {
        let treated = given.measured.net_area;
        let Some(highest) = given.label.highest_dose else { return Ok(()) };
        let product = product_for(given.choice.dose, treated, Some(highest.value));
        prop_assert!(product.base() <= highest.value.base() * treated.lower().m2() * (1.0 + 1e-12));
        prop_assert!(product.base() <= given.choice.dose.base() * treated.area.m2() * (1.0 + 1e-12));
    }

    #[test]
    fn odd_but_finite_choices_are_answered(
        mut given in given(any_lawn()),
        pace in 0.000_001..1000.0f64,
        trim in prop_oneof![Just(f64::NAN), Just(f64::INFINITY), -2.0..3.0f64],
        n_passes in any::<u8>(),
        clean in 0.0..100.0f64,
    ) {
        given.choice.pace = Some(Pace::from_m_per_s(pace).unwrap());
        given.choice.trim = trim;
        given.choice.n_passes = n_passes;
        given.choice.clean_water_in_tank = Volume::from_l(clean).unwrap();
        // Answered with a plan or with reasons, never with a panic.
        if let Err(refusals) = plan(&given.measured, &given.kit, &given.calibration, &given.label, &given.choice) {
            prop_assert!(!refusals.is_empty());
        }
    }
}
