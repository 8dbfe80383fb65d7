//! Laws of the strips over many invented lawns: bent outlines with beds and margins, walked at any angle. What a law says is
//! worked out from the runs as they are walked, never from the cutter. `PROPTEST_CASES` runs more of them.

use evensward_core::lawn::{Beside, Measured, Part, PatchKind, Ring, Shape, Side, Slope, Survey, ValidOutline};
use evensward_core::plan::{
    Choice, Direction, Gait, Heading, Layout, NarrowAt, NarrowChoice, Plan, Remedy, Run, StartSide, Strip, Walker,
    directions, plan,
};
use evensward_core::quantity::{Angle, Arg, FlowRate, Pace, ProductDose, ProductKind, Swath, Volume};
use proptest::prelude::*;

use crate::properties::cases;
use crate::properties_given::{calibration, kit, label, m};

/// A bent lawn with beds in it, in its own plane.
#[derive(Debug, Clone)]
struct Bent {
    ring: Vec<(f64, f64)>,
    beds: Vec<Vec<(f64, f64)>>,
    margins: Vec<(usize, f64)>,
}

fn deg(value: f64) -> Angle {
    Angle::from_deg(value).unwrap()
}

impl Bent {
    fn measured(&self) -> Option<Measured> {
        self.survey().measure(None).ok()
    }

    fn survey(&self) -> Survey {
        let part = |ring: &Vec<(f64, f64)>| Part::taped(Shape::corners(ring.clone()).unwrap());
        let beds = self.beds.iter().map(|bed| part(bed).taken_out(PatchKind::Bed));
        let sides = self.margins.iter().map(|(side_idx, margin)| Side {
            part_idx: 0,
            side_idx: side_idx % self.ring.len(),
            beside: Beside::Hedge,
            margin: m(*margin),
        });
        Survey { sides: sides.collect(), ..Survey::of(std::iter::once(part(&self.ring)).chain(beds).collect()) }
    }

    /// The lawn with those of its beds that lie well inside. A bed across the edge is cut out of it or left as a hole that
    /// touches it, by a rounding, and either is right.
    fn with_beds_inside(self) -> Self {
        let outline = |ring: &Vec<(f64, f64)>| {
            ValidOutline::from_rings(&[Ring { outer: ring.clone(), holes: Vec::new() }]).unwrap()
        };
        let lawn = outline(&self.ring);
        let beds = self.beds.into_iter().filter(|bed| outline(bed).without(&lawn).is_empty()).collect();
        Self { beds, ..self }
    }

    /// Turned clockwise, as angles on the lawn are counted, then shifted.
    fn moved(&self, turn_deg: f64, shift: (f64, f64)) -> Self {
        let (sin, cos) = turn_deg.to_radians().sin_cos();
        let place = |(x, y): &(f64, f64)| (x * cos + y * sin + shift.0, y * cos - x * sin + shift.1);
        let moved = |ring: &Vec<(f64, f64)>| ring.iter().map(place).collect::<Vec<_>>();
        Self { ring: moved(&self.ring), beds: self.beds.iter().map(moved).collect(), margins: self.margins.clone() }
    }
}

fn bent() -> impl Strategy<Value = Bent> {
    let corners = prop::collection::vec((5.0..16.0f64, 0.1..0.9f64), 3..12);
    let bed = (0.0..6.3f64, 1.0..4.0f64, 0.3..1.6f64, 0.3..1.6f64, 0.0..90.0f64);
    let margins = prop::collection::vec((0usize..12, 0.2..1.2f64), 0..4);
    (corners, prop::collection::vec(bed, 0..3), margins).prop_map(|(corners, beds, margins)| {
        let n = corners.len() as f64;
        let ring = corners
            .iter()
            .enumerate()
            .map(|(idx, (radius, share))| {
                let angle = (idx as f64 + share) / n * std::f64::consts::TAU;
                (radius * angle.cos(), radius * angle.sin())
            })
            .collect();
        let beds = beds
            .into_iter()
            .map(|(about, out, width, length, turn)| {
                let (sin, cos) = f64::to_radians(turn).sin_cos();
                let (x, y) = (out * f64::cos(about), out * f64::sin(about));
                [(0.0, 0.0), (width, 0.0), (width, length), (0.0, length)]
                    .map(|(a, b)| (x + a * cos - b * sin, y + a * sin + b * cos))
                    .to_vec()
            })
            .collect();
        Bent { ring, beds, margins }
    })
}

fn swath_m() -> impl Strategy<Value = f64> {
    prop_oneof![Just(1.0), 0.5..1.5f64]
}

fn start_side() -> impl Strategy<Value = StartSide> {
    prop_oneof![Just(StartSide::Left), Just(StartSide::Right)]
}

/// What is planned on a lawn.
#[derive(Debug, Clone)]
struct Asked {
    angle: f64,
    swath: f64,
    start_side: StartSide,
    is_narrow_first: bool,
    edge_first: bool,
}

fn asked() -> impl Strategy<Value = Asked> {
    let angle = prop_oneof![1 => Just(0.0), 3 => 0.0..180.0f64];
    (angle, swath_m(), start_side(), any::<bool>(), any::<bool>()).prop_map(
        |(angle, swath, start_side, is_narrow_first, edge_first)| Asked {
            angle,
            swath,
            start_side,
            is_narrow_first,
            edge_first,
        },
    )
}

const FLOW_L_PER_MIN: f64 = 0.9;

/// One pass along and one across, the narrow strips as they are, so that nothing but geometry decides.
fn planned(measured: &Measured, asked: &Asked) -> Plan {
    let dose = ProductDose::of(ProductKind::Volume, 1.0).unwrap();
    let mut choice = Choice::plain(2, dose);
    choice.headings = vec![Heading::Along, Heading::Across];
    choice.angle = deg(asked.angle);
    choice.start_side = asked.start_side;
    choice.narrow_at = if asked.is_narrow_first { NarrowAt::First } else { NarrowAt::Last };
    choice.narrow = NarrowChoice { along: Some(Remedy::AsItIs), across: Some(Remedy::AsItIs) };
    choice.edge_first = asked.edge_first;
    choice.carry_limit = None;
    let mut kit = some(kit());
    kit.swath = Swath::from_m(asked.swath).unwrap();
    kit.tank = Volume::from_l(200.0).unwrap();
    let mut calibration = some(calibration());
    calibration.flow = FlowRate::from_l_per_min(FLOW_L_PER_MIN).unwrap();
    calibration.pace = Pace::from_m_per_s(1.0).unwrap();
    plan(measured, &kit, &calibration, &label(dose, None), &choice).unwrap()
}

/// One value of a strategy, always the same one.
fn some<T: std::fmt::Debug>(of: impl Strategy<Value = T>) -> T {
    use proptest::strategy::ValueTree as _;
    of.new_tree(&mut proptest::test_runner::TestRunner::deterministic()).unwrap().current()
}

/// The ground that a run's swath passes over, from where it is walked and how wide it is.
fn swept(strip: &Strip, run: &Run) -> ValidOutline {
    let (from, to, half) = (run.from, run.to, strip.width.m() / 2.0);
    let (dx, dy) = ((to.0 - from.0) / run.length.m(), (to.1 - from.1) / run.length.m());
    let (aside_x, aside_y) = (-dy * half, dx * half);
    let outer = vec![
        (from.0 + aside_x, from.1 + aside_y),
        (from.0 - aside_x, from.1 - aside_y),
        (to.0 - aside_x, to.1 - aside_y),
        (to.0 + aside_x, to.1 + aside_y),
    ];
    ValidOutline::recalled(&[Ring { outer, holes: Vec::new() }]).unwrap()
}

/// The figure that a check gives.
fn number(value: &Arg) -> f64 {
    match value {
        Arg::Number { value, .. } => *value,
        other => panic!("{other:?} is no figure"),
    }
}

fn dry_of(measured: &Measured) -> ValidOutline {
    measured.patches.iter().fold(measured.margins.clone(), |dry, patch| dry.union(&patch.outline))
}

fn runs(layout: &Layout) -> impl Iterator<Item = (&Strip, &Run)> {
    layout.strips.iter().flat_map(|strip| strip.runs.iter().map(move |run| (strip, run)))
}

fn is_near(a: f64, b: f64, relative: f64) -> bool {
    (a - b).abs() <= relative * a.abs().max(b.abs()).max(1.0)
}

proptest! {
    #![proptest_config(cases(32))]

    #[test]
    fn strips_are_the_net_area_to_a_billionth_at_any_angle(bent in bent(), asked in asked()) {
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        for layout in &plan.layouts {
            let area_m2: f64 = runs(layout).map(|(_, run)| run.area.m2()).sum();
            prop_assert!(is_near(area_m2, measured.net_area.area.m2(), 1e-9), "{area_m2} {:?}", measured.net_area);
        }
    }

    #[test]
    fn every_run_lies_in_one_band(bent in bent(), mut asked in asked()) {
        asked.edge_first = false;
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        for layout in &plan.layouts {
            let (sin, cos) = layout.angle.deg().to_radians().sin_cos();
            for (strip, run) in runs(layout) {
                let aside = |(x, y): (f64, f64)| ((x - run.from.0) * cos - (y - run.from.1) * sin).abs();
                prop_assert!(aside(run.to) < 1e-6);
                for corner in run.ground.iter().flat_map(|ring| &ring.outer) {
                    // The outer bands take the millimetre that a lawn is wider than whole swaths.
                    prop_assert!(aside(*corner) <= strip.width.m() / 2.0 + 1e-6, "{corner:?} of {:?}", strip.id);
                }
            }
        }
    }

    #[test]
    fn nothing_reaches_a_patch_or_a_margin(bent in bent(), asked in asked()) {
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        let dry = dry_of(&measured);
        for layout in &plan.layouts {
            for (strip, run) in runs(layout).filter(|(_, run)| !run.is_beside_dry) {
                let wetted_m2 = swept(strip, run).common(&dry).area().m2();
                // A millimetre along the run is as exact as anyone walks.
                prop_assert!(wetted_m2 <= 0.002 * run.length.m().max(1.0), "{wetted_m2} in {:?}", strip.id);
            }
        }
        // A run is marked only where its swath truly reaches what must stay dry, or where pieces on both sides of it are one.
        for layout in &plan.layouts {
            for (strip, run) in runs(layout).filter(|(_, run)| run.is_beside_dry && run.ground.len() == 1) {
                prop_assert!(swept(strip, run).common(&dry).area().m2() > 1e-12, "{:?} is marked for nothing", strip.id);
            }
        }
    }

    #[test]
    fn what_is_swept_is_reached_or_overshot_to_the_litre(bent in bent(), asked in asked()) {
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        let dry = dry_of(&measured);
        let (mut overshot_m2, mut overshot_l) = (0.0, 0.0);
        for layout in &plan.layouts {
            for (strip, run) in runs(layout) {
                let beyond = swept(strip, run).without(&measured.net);
                let beyond = if run.is_beside_dry { beyond.without(&dry) } else { beyond };
                overshot_m2 += beyond.area().m2();
                overshot_l += FLOW_L_PER_MIN / 60.0 / strip.width.m() * beyond.area().m2();
            }
        }
        let slack = 1e-6 + 0.002 * plan.passes.iter().map(|pass| pass.legs.len() as f64).sum::<f64>();
        prop_assert!((plan.ends.overshot.m2() - overshot_m2).abs() < slack, "{:?} {overshot_m2}", plan.ends.overshot);
        prop_assert!((plan.ends.overshot_water.l() - overshot_l).abs() < 0.015 * slack + 1e-6);
        let metres: f64 = plan.passes.iter().flat_map(|pass| &pass.legs).map(|leg| leg.length.m()).sum();
        prop_assert!(is_near(plan.walked.l(), FLOW_L_PER_MIN / 60.0 * metres, 1e-9));
    }

    #[test]
    fn a_lap_and_the_strips_inside_it_cover_the_lawn(bent in bent(), mut asked in asked()) {
        asked.edge_first = true;
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        let net_m2 = measured.net_area.area.m2();
        for layout in &plan.layouts {
            let covered = runs(layout).fold(ValidOutline::recalled(&[]).unwrap(), |covered, (strip, run)| {
                covered.union(&swept(strip, run))
            });
            let missed_m2 = measured.net.without(&covered).area().m2();
            prop_assert!(missed_m2 <= 0.001 * net_m2, "{missed_m2} of {net_m2}");
        }
    }

    #[test]
    fn what_a_layout_sprays_twice_is_said_and_held_against_the_dose(bent in bent(), asked in asked()) {
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        let (mut twice_m2, mut n_runs, mut n_twice) = (0.0, 0.0, 0.0);
        for layout in &plan.layouts {
            let (mut all_m2, mut covered) = (0.0, ValidOutline::recalled(&[]).unwrap());
            for (strip, run) in runs(layout) {
                let on_lawn = swept(strip, run).common(&measured.net);
                all_m2 += on_lawn.area().m2();
                covered = covered.union(&on_lawn);
                n_runs += 1.0;
            }
            let here_m2 = all_m2 - covered.area().m2();
            n_twice += if here_m2 > 0.1 { 1.0 } else { 0.0 };
            twice_m2 += here_m2;
        }
        let check = plan.checks.iter().find(|check| check.rule == "ends-on-the-lap");
        let said_m2 = check.and_then(|check| check.value.clone()).map_or(0.0, |value| number(&value));
        prop_assert!((said_m2 - twice_m2).abs() < 0.01 + 0.002 * n_runs, "{said_m2} {twice_m2}");
        // Each layout that sprays ground twice adds its rate once more.
        let rate = FLOW_L_PER_MIN / 60.0 / (1.002 * asked.swath);
        let on_ground = plan.highest_on_ground.base() / plan.concentration.per_l();
        prop_assert!(on_ground >= rate * (2.0 + n_twice) - 1e-9, "{on_ground} {rate} {n_twice}");
    }

    #[test]
    fn without_dry_ground_nothing_is_missed(bent in bent(), mut asked in asked()) {
        asked.edge_first = false;
        let bent = Bent { beds: Vec::new(), margins: Vec::new(), ..bent };
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        prop_assert!(plan.ends.missed.m2() < 1e-6, "{:?}", plan.ends.missed);
    }

    #[test]
    fn a_lawn_turned_and_shifted_has_the_same_plan(
        bent in bent(),
        mut asked in asked(),
        turn in 0.0..90.0f64,
        shift in (-500.0..500.0f64, -500.0..500.0f64),
    ) {
        // Half a turn would change left and right.
        asked.angle /= 2.0;
        let bent = bent.with_beds_inside();
        let moved = bent.moved(turn, shift);
        let (Some(one), Some(other)) = (bent.measured(), moved.measured()) else { return Ok(()) };
        let one_plan = planned(&one, &asked);
        let other_plan = planned(&other, &Asked { angle: asked.angle + turn, ..asked.clone() });
        prop_assert!(is_near(one_plan.walked.l(), other_plan.walked.l(), 1e-6));
        prop_assert!(is_near(one_plan.ends.missed.m2(), other_plan.ends.missed.m2(), 1e-6));
        prop_assert!(is_near(one_plan.ends.overshot.m2(), other_plan.ends.overshot.m2(), 1e-6));
        for (one, other) in one_plan.passes.iter().zip(&other_plan.passes) {
            prop_assert_eq!(one.legs.len(), other.legs.len());
            prop_assert!(is_near(one.empty.m(), other.empty.m(), 1e-6), "{:?} {:?}", one.empty, other.empty);
            for (one, other) in one.legs.iter().zip(&other.legs) {
                // Laps are numbered as the rings of the outline come.
                prop_assert!(asked.edge_first || one.strip == other.strip);
                prop_assert!(is_near(one.length.m(), other.length.m(), 1e-6));
            }
        }
    }

    #[test]
    fn a_slope_is_the_same_lawn_stretched_along_it(bent in bent(), mut asked in asked(), gradient in 0.0..0.5f64) {
        // Up is straight ahead, so that only lengths along the walk are stretched.
        asked.angle = 0.0;
        let bent = bent.with_beds_inside();
        let Some(level) = bent.measured() else { return Ok(()) };
        let stretch = 1.0_f64.hypot(gradient);
        let stretched = Bent {
            ring: bent.ring.iter().map(|(x, y)| (*x, y * stretch)).collect(),
            beds: bent.beds.iter().map(|bed| bed.iter().map(|(x, y)| (*x, y * stretch)).collect()).collect(),
            margins: Vec::new(),
        };
        let sloping = Measured { slope: Some(Slope::new(gradient, deg(0.0)).unwrap()), ..level };
        let bare = Bent { margins: Vec::new(), ..bent };
        let (Some(bare), Some(stretched)) = (bare.measured(), stretched.measured()) else { return Ok(()) };
        let sloping = Measured { outline: bare.outline, net: bare.net, margins: bare.margins, patches: bare.patches,
            net_area: bare.net_area, ..sloping };
        let (one, other) = (planned(&sloping, &asked), planned(&stretched, &asked));
        prop_assert!(is_near(one.walked.l(), other.walked.l(), 1e-6));
        prop_assert!(is_near(one.ends.overshot.m2() * stretch, other.ends.overshot.m2(), 1e-5));
        // The product is by the plan area.
        prop_assert!(is_near(one.product_exact.base(), sloping.net_area.area.m2(), 1e-9));
    }

    #[test]
    fn directions_turn_with_the_lawn(bent in bent(), swath in swath_m(), turn in 0.0..180.0f64) {
        let moved = bent.moved(turn, (3.0, -4.0));
        let (Some(one), Some(other)) = (bent.measured(), moved.measured()) else { return Ok(()) };
        let gait = Gait {
            flow: FlowRate::from_l_per_min(FLOW_L_PER_MIN).unwrap(),
            pace: Pace::from_m_per_s(1.0).unwrap(),
            swath: Swath::from_m(swath).unwrap(),
        };
        let walker = Walker { gait, wind_from: None, start_side: None, edge_first: false };
        let (one, other) = (directions(&one, &walker), directions(&other, &walker));
        prop_assert!(!one.is_empty() && !other.is_empty(), "no direction was found");
        let apart = |a: &Direction, b: &Direction| {
            let apart = (a.angle.deg() + turn - b.angle.deg()).rem_euclid(180.0);
            apart.min(180.0 - apart)
        };
        for a in &one {
            // What both lists have is the same there. Half a turn changes sides, and with them where a narrow strip lies.
            for b in other.iter().filter(|b| apart(a, b) < 1e-9) {
                prop_assert_eq!(a.n_strips, b.n_strips);
                prop_assert_eq!(a.narrow.is_some(), b.narrow.is_some());
                if a.narrow.is_none() {
                    prop_assert!(is_near(a.metres.m(), b.metres.m(), 1e-6), "{a:?} {b:?} {turn}");
                    prop_assert!(is_near(a.overshot.m2(), b.overshot.m2(), 1e-6), "{a:?} {b:?} {turn}");
                }
            }
        }
    }

    #[test]
    fn the_walk_takes_every_run_once_and_ends_where_its_legs_do(bent in bent(), asked in asked()) {
        let Some(measured) = bent.measured() else { return Ok(()) };
        let plan = planned(&measured, &asked);
        for pass in &plan.passes {
            let layout = plan.layout(pass.heading).unwrap();
            let mut walked: Vec<_> = pass.legs.iter().map(|leg| (leg.strip, leg.run_idx)).collect();
            walked.sort_unstable();
            let all: Vec<_> = layout
                .strips
                .iter()
                .flat_map(|strip| (0..strip.runs.len()).map(|run_idx| (strip.id, run_idx)))
                .collect();
            prop_assert_eq!(walked, all);
            let ends: Vec<((f64, f64), (f64, f64))> = pass
                .legs
                .iter()
                .map(|leg| {
                    let run = &layout.strip(leg.strip).unwrap().runs[leg.run_idx];
                    if leg.reversed { (run.to, run.from) } else { (run.from, run.to) }
                })
                .collect();
            for (pair, leg) in ends.windows(2).zip(pass.legs.iter().skip(1)) {
                let apart = (pair[0].1.0 - pair[1].0.0).hypot(pair[0].1.1 - pair[1].0.1);
                prop_assert!(is_near(leg.empty_before.m(), apart, 1e-9));
            }
        }
    }
}
