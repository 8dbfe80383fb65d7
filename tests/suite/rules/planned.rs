//! The rules that only a plan or a visit asks: driven by a small lawn, a kit of 1 m swath and 0.9 L/min at 1 m/s.

use evensward_core::checks::Check;
use evensward_core::coverage::EarlierGround;
use evensward_core::lawn::{Beside, Part, PatchKind, Ring, Shape, Side, Survey, ValidOutline};
use evensward_core::plan::{Choice, Plan, Remedy, plan};
use evensward_core::quantity::{Length, ProductDose, ProductKind};
use evensward_core::visit::command::Treatment;
use evensward_core::visit::correct::{corrections, use_ups};
use evensward_core::visit::event::{Applied, CorrectionKind, Found};
use evensward_core::visit::gates;
use evensward_core::visit::state::{Position, Stage};
use uuid::Uuid;

use super::given::Given;
use crate::visit_sample::{Trial, World, day, found, l, left, m};

fn grams(g_per_m2: f64) -> ProductDose {
    ProductDose::of(ProductKind::Mass, g_per_m2).unwrap()
}

fn rectangle(width_m: f64, length_m: f64) -> Shape {
    Shape::Rectangle { width: m(width_m), length: m(length_m) }
}

/// 6 m wide and 10 m deep on the left, 4 m deep on the right: the back slants by 45 degrees.
fn slanting() -> Shape {
    Shape::corners(vec![(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (0.0, 10.0)]).unwrap()
}

fn planned(shape: Shape, beside: Option<Side>, bed: Option<Part>, choice: &Choice) -> Plan {
    let mut world = World::plain();
    world.kit.dead_volume = l(0.0);
    let parts = std::iter::once(Part::taped(shape)).chain(bed).collect();
    let survey = Survey { sides: beside.into_iter().collect(), ..Survey::of(parts) };
    plan(&survey.measure(None).unwrap(), &world.kit, &world.calibration, &world.label, choice).unwrap()
}

fn once() -> Choice {
    Choice::plain(1, grams(2.5))
}

fn found_in(checks: Vec<Check>, rule: &str) -> Option<Check> {
    checks.into_iter().find(|check| check.rule == rule)
}

fn beside_of(given: &Given<'_>) -> Beside {
    match given.text("beside") {
        "open-water" => Beside::OpenWater,
        "neighbour" => Beside::Neighbour,
        "hedge" => Beside::Hedge,
        other => panic!("nothing lies beside as {other}"),
    }
}

/// The plan's own rules.
pub fn by_plan(rule: &str, given: &Given<'_>) -> Option<Check> {
    let checks = match rule {
        "clean-water-in-tank" => {
            let mut choice = Choice::plain(4, grams(2.5));
            choice.clean_water_in_tank = l(given.number("in_tank_l"));
            planned(rectangle(15.0, 20.0), None, None, &choice).checks
        }
        "ends-beyond" => {
            let side_idx = usize::from(given.count("side_idx"));
            let side = Side { part_idx: 0, side_idx, beside: beside_of(given), margin: Length::ZERO };
            planned(slanting(), Some(side), None, &once()).checks
        }
        "ends-missed" => {
            let margin = m(given.number("margin_m"));
            let side = Side { part_idx: 0, side_idx: 2, beside: Beside::Hedge, margin };
            planned(slanting(), Some(side), None, &once()).checks
        }
        "ends-on-the-lap" => {
            let mut lapped = once();
            lapped.edge_first = true;
            let shape = if given.is("slants") { slanting() } else { rectangle(8.0, 12.0) };
            planned(shape, None, None, &lapped).checks
        }
        "fan-over-dry-ground" => {
            let bed = Part::taped(rectangle(given.number("bed_width_m"), 4.0));
            let bed = bed.taken_out(PatchKind::Bed).placed_at(Some((1.0, 8.0)));
            planned(rectangle(3.0, 20.0), None, Some(bed), &once()).checks
        }
        "narrow-pace" => {
            let mut choice = Choice::plain(3, grams(2.5));
            choice.narrow.along = Some(Remedy::SomePasses { k: 2 });
            planned(rectangle(given.number("width_m"), 20.0), None, None, &choice).checks
        }
        "other-direction" => {
            let plan = planned(rectangle(15.4, given.number("length_m")), None, None, &once());
            let mut options = plan.narrow.into_iter().flat_map(|narrow| narrow.options);
            options.find(|option| option.remedy == Remedy::OtherDirection).unwrap().checks
        }
        _ => panic!("no plan asks {rule}"),
    };
    found_in(checks, rule)
}

/// 15 m by 20 m in three passes of 4.5 L, with a dose below the highest: everything is sprayed, then so much is left.
fn with_left(left_l: f64) -> Position {
    let mut world = World::plain().without_narrow_strip();
    world.choice = Choice::plain(3, grams(2.0));
    let mut position = Trial::at(world, Stage::UseUp).position().clone();
    position.walk.in_tank = l(left_l);
    position
}

/// The lawn of 15 m by 20 m, treated in January from its left edge so far right, when its outline was so wide.
pub fn by_history(given: &Given<'_>) -> Option<Check> {
    let up_to = |right_m: f64| {
        let outer = vec![(0.0, 0.0), (right_m, 0.0), (right_m, 20.0), (0.0, 20.0)];
        ValidOutline::from_rings(&[Ring { outer, holes: Vec::new() }]).unwrap()
    };
    let mut world = World::plain().without_narrow_strip();
    let ground = EarlierGround { outline: up_to(given.number("outline_m")), ground: up_to(given.number("treated_m")) };
    world.facts.history = vec![Treatment {
        visit: Uuid::from_u128(0x77),
        product: Uuid::from_u128(0xf1),
        on: day("2026-01-05"),
        dose: None,
        actives: Vec::new(),
        nutrients: Vec::new(),
        ground: Some(ground),
    }];
    let trial = Trial::at(world, Stage::Choose);
    let (world, position) = (&trial.world, trial.position());
    let measured = world.survey.measure(None).unwrap();
    let today = day("2026-05-04");
    let checks = gates::product_checks(position, &world.facts, Uuid::from_u128(0xf1), &world.label, &measured, today);
    found_in(checks, "earlier-ground")
}

/// The rules that are asked while a visit goes on.
pub fn by_visit(rule: &str, given: &Given<'_>) -> Option<Check> {
    let checks: Vec<Check> = match rule {
        "applied-by-others" => {
            let applied = match given.text("applied") {
                "nothing" => Applied::Nothing,
                "unknown" => Applied::Unknown,
                "something" => Applied::Something { what: None, on: given.maybe_day("on") },
                other => panic!("nobody applied {other}"),
            };
            gates::assess_checks(&Found { applied, ..found() })
        }
        "leftover-area" | "leftover-kept" | "room-in-tank" => {
            let ways = use_ups(&with_left(given.number("left_l")));
            let checks = ways.into_iter().flat_map(|way| way.checks);
            // More passes than one are said under the same rule, and are another question.
            checks.filter(|check| check.said.code != "leftover-takes-passes").collect()
        }
        "use-against-plan" => {
            let mut trial = Trial::at(World::plain().without_narrow_strip(), Stage::PassEnd);
            // What the tank should hold now, less what the pass took more.
            let planned_l = trial.position().walk.in_tank.l();
            trial.act(left(planned_l - given.number("more_used_l")));
            if trial.stage() != Stage::Correct {
                return None;
            }
            let ways = corrections(trial.position());
            ways.into_iter().find(|way| way.kind == CorrectionKind::AsPlanned).unwrap().checks
        }
        _ => panic!("no visit asks {rule}"),
    };
    found_in(checks, rule)
}
