//! Laws of a visit, held over random worlds and random taps: mostly what the stage asks for, now and then what it does not.
//!
//! Each law is asked after every accepted command: the fold is the state, and the fold of what was written and read back
//! (the trial itself asks that); no statutory Stop is ever behind an event, and no other one without its reason; taking back
//! restores the position before; corrections move no product; litres in are litres out; and whatever happened, the plainest
//! taps still lead to a closed record. `PROPTEST_CASES` runs more of them.

use evensward_core::checks::mixing::JarOutcome;
use evensward_core::checks::{Check, Verdict};
use evensward_core::kit::LastIn;
use evensward_core::lawn::Shape;
use evensward_core::plan::{Choice, Heading};
use evensward_core::product::{Form, Label, Purpose, Tag, Tagged};
use evensward_core::quantity::{
    Acidity, Code, Density, Doubt, FlowRate, ProductAmount, ProductDose, ProductKind, Temperature, Volume,
    VolumePerArea,
};
use evensward_core::visit::command::{Command, Refusal, TickList, Treatment};
use evensward_core::visit::event::{
    Applied, At, CorrectionKind, Guide, MixWater, Payload, Stamped, StopReason, UseUpKind, look_back_day,
};
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::state::{Position, Stage, State};
use evensward_core::visit::{evolve, fold};
use proptest::prelude::*;
use uuid::Uuid;

use crate::properties::cases;
use crate::visit_sample::{
    Trial, World, day, fill, fine, found, l, left, left_as_planned, m, note, plainest, see, stop,
};

/// One random tap: what kind, and two numbers from 0 to 1 that mean something by its kind.
#[derive(Debug, Clone, Copy)]
struct Tap {
    kind: u8,
    a: f64,
    b: f64,
}

/// Mostly the plainest tap.
fn taps() -> impl Strategy<Value = Vec<Tap>> {
    let tap = (prop_oneof![4 => Just(0_u8), 1 => 1..34_u8], 0.0..1.0_f64, 0.0..1.0_f64);
    proptest::collection::vec(tap.prop_map(|(kind, a, b)| Tap { kind, a, b }), 0..180)
}

fn tag(number: u8) -> Tag {
    [Tag::Statutory, Tag::Advisory, Tag::Own][usize::from(number % 3)]
}

prop_compose! {
    fn worlds()(
        size in (0.9..16.0_f64, 4.0..24.0_f64),
        tank_l in prop_oneof![1.5..6.0_f64, 4.0..18.0_f64],
        dead_l in 0.0..0.4_f64,
        flow in 0.5..1.4_f64,
        n_passes in 1..6_u8,
        across in any::<[bool; 5]>(),
        guide in any::<bool>(),
        is_liquid in any::<bool>(),
        dose in (1.0..6.0_f64, 0.7..1.02_f64, 0..5_u8),
        water in (5.0..40.0_f64, 20.0..160.0_f64, 0..5_u8),
        concentration in (40.0..400.0_f64, 0..6_u8),
        doubt_percent in prop_oneof![Just(0.0), 0.0..8.0_f64],
        jug_step in prop_oneof![Just(0.0), Just(5.0), Just(10.0)],
        intervals in (0..60_u16, 1..4_u8, 0..3_u8),
        days_ago in prop_oneof![4 => Just(Vec::new()), 1 => proptest::collection::vec(0..400_u64, 1..3)],
        last_in in 0..16_u8,
        is_first_use in any::<bool>(),
    ) -> World {
        let kind = if is_liquid { ProductKind::Volume } else { ProductKind::Mass };
        let mut world = World::plain();
        world.survey.parts[0].shape = Shape::Rectangle { width: m(size.0), length: m(size.1) };
        world.survey.doubt = Doubt::from_percent(doubt_percent).unwrap();
        world.kit.tank = l(tank_l);
        world.kit.dead_volume = l(dead_l);
        world.kit.last_in = match last_in {
            0 => LastIn::TotalHerbicide,
            1 => LastIn::Unknown,
            2 => LastIn::Product { name: "Invented Feed".into() },
            _ => LastIn::CleanWater,
        };
        world.kit.cleaned_since = last_in > 2;
        world.is_first_use = is_first_use;
        world.calibration.flow = FlowRate::from_l_per_min(flow).unwrap();
        world.guide = if guide { Guide::ByStrip } else { Guide::ByPass };
        let of = |base: f64| ProductDose::of(kind, base).unwrap();
        let label = &mut world.label;
        label.form = if is_liquid { Form::Liquid } else { Form::Crystals };
        label.density = is_liquid.then(|| Density::from_g_per_ml(1.1).unwrap());
        label.dose = of(dose.0);
        label.highest_dose = (dose.2 < 4).then(|| Tagged { tag: tag(dose.2), ..Tagged::own(of(dose.0)) });
        let rate = |ml_per_m2: f64| VolumePerArea::from_ml_per_m2(ml_per_m2).unwrap();
        let limit = |ml_per_m2| (water.2 < 4).then(|| Tagged { tag: tag(water.2), ..Tagged::own(rate(ml_per_m2)) });
        label.water.least = limit(water.0 / 2.0);
        label.water.most = limit(water.0 + water.1);
        label.highest_concentration = (concentration.1 < 3).then(|| Tagged {
            tag: tag(concentration.1),
            ..Tagged::own(evensward_core::quantity::Concentration::of(kind, concentration.0).unwrap())
        });
        label.least_days = Some(Tagged { tag: tag(intervals.2), ..Tagged::own(intervals.0) });
        label.most_per_year = Some(Tagged { tag: tag(intervals.2), ..Tagged::own(intervals.1) });
        world.facts.history = days_ago
            .into_iter()
            .map(|days| Treatment {
                visit: Uuid::from_u128(0x77),
                product: Uuid::from_u128(0xf1),
                on: day("2026-05-04") - chrono::Days::new(days),
                dose: None,
                actives: Vec::new(), nutrients: Vec::new(),
                ground: None,
            })
            .collect();
        let mut choice = Choice::plain(n_passes, of(dose.0 * dose.1));
        for (heading, is_across) in choice.headings.iter_mut().zip(across) {
            *heading = if is_across { Heading::Across } else { Heading::Along };
        }
        choice.jug_step = Some(ProductAmount::of(kind, jug_step).unwrap());
        world.choice = choice;
        world
    }
}

const RULES: &[&str] = &[
    "dose",
    "dose-on-ground",
    "water",
    "concentration",
    "pace",
    "narrow-pace",
    "weight",
    "interval",
    "number-this-year",
    "last-in-sprayer",
    "wind",
    "rain",
    "frozen",
    "drought",
    "room-in-tank",
    "need",
    "rounding",
    "leftover-area",
    "partner-label",
    "jar-test",
    "dissolving",
    "protective",
];

fn pick<T: Copy>(list: &[T], share: f64) -> T {
    list[((share * list.len() as f64) as usize).min(list.len() - 1)]
}

fn command_of(tap: Tap, trial: &Trial) -> Command {
    let Tap { kind, a, b } = tap;
    let (position, world) = (trial.position(), &trial.world);
    let walk = &position.walk;
    let strips = f64::from(position.n_strips(walk.pass)) + 1.0;
    match kind {
        1 => {
            let due = walk.due.first().map(|due| due.product.times(0.6 + a));
            fill(due, Some(world.kit.tank.times(0.3 + 0.8 * b)))
        }
        2 => fill(None, Some((walk.in_tank + world.kit.dead_volume).times(1.0 + b))),
        3 | 4 => left(walk.available.l() * a),
        5 | 6 => left((walk.in_tank.l() + (a - 0.5) * walk.available.l() * 0.5).max(0.0)),
        7 => Command::RanShort { strips_done: (a * strips) as u16 },
        8 => {
            let reasons = [PauseReason::Wind, PauseReason::Rain, PauseReason::Phone, PauseReason::Other];
            Command::Pause { reason: pick(&reasons, a), note: (b > 0.5).then(|| note(9)) }
        }
        9 => Command::Resume { seen: Vec::new() },
        10 => {
            let mut sky = fine();
            sky.rain_now = Some(a < 0.3);
            sky.frozen = (b < 0.8).then_some(b < 0.2);
            sky.dry_hours_expected = Some(b * 12.0);
            see(sky)
        }
        11 | 12 => Command::PassAdvisory { rule: Code::Borrowed(pick(RULES, a)), because: note(10) },
        13 => {
            let kinds = [CorrectionKind::AddWater, CorrectionKind::LessWater, CorrectionKind::AsPlanned];
            Command::Correct(pick(&kinds, a))
        }
        14 => Command::Correct(pick(&[CorrectionKind::FewerPasses, CorrectionKind::MorePasses], a)),
        15 => Command::UseUp(pick(&[UseUpKind::WholePass, UseUpKind::Part, UseUpKind::None], a)),
        16 if a < 0.15 => Command::StopForGood { reason: StopReason::Health, note: Some(note(11)) },
        17 | 18 => Command::Undo,
        19 => Command::StripDone,
        20 if a < 0.5 => Command::PassDoneAsPlanned,
        20 => Command::PassDone,
        21 => Command::Refill,
        22 => Command::TickReady { item: Code::Borrowed("ready-gloves"), on: a < 0.5 },
        23 => Command::TickMix { item: Code::Borrowed("mix-close"), on: a < 0.5 },
        24 => Command::TickWash { item: Code::Borrowed("wash-boots"), on: a < 0.5 },
        25 => pick_of_any_stage(a, world),
        26 => {
            let mut choice = world.choice.clone();
            choice.dose = choice.dose.times(0.5 + b);
            Command::AgreePlan { choice: Box::new(choice), guide: world.guide, typed: Vec::new() }
        }
        27 => {
            let applied =
                if a < 0.5 { Applied::Unknown } else { Applied::Something { what: None, on: Some(day("2026-04-30")) } };
            let target = (b < 0.9).then_some(Purpose::Moss);
            Command::Assess(evensward_core::visit::event::Found { target, applied, ..found() })
        }
        28.. => shared_tank(tap, trial),
        // What an operator reads is seldom what was planned.
        _ if position.stage == Stage::PassEnd && b < 0.6 => {
            left((walk.in_tank.l() + (a - 0.5) * walk.available.l() * 0.6).max(0.0))
        }
        _ => plainest(position, world),
    }
}

/// Partners, water, jar, ticks and ground kept back; kinds from 28 on.
fn shared_tank(tap: Tap, trial: &Trial) -> Command {
    let Tap { kind, a, b } = tap;
    match kind {
        28 => {
            let own = &trial.world.label;
            let label = Label {
                name: "Invented Partner".into(),
                dose: own.dose.times(0.2 + a),
                partners: (b < 0.8).then(|| Tagged { tag: tag((b * 4.0) as u8), ..Tagged::own(a < 0.7) }),
                ..own.clone()
            };
            let (product_id, label_id) = (Uuid::from_u128(0x90 + u128::from(b < 0.4)), Uuid::from_u128(0x92));
            Command::AddPartner { product_id, label_id, dose: label.dose, label: Box::new(label), typed: Vec::new() }
        }
        29 => Command::SeeWater {
            water: MixWater {
                source: None,
                ph: Acidity::from_ph(4.0 + a * 6.0).ok(),
                hardness: None,
                temperature: (b < 0.7).then(|| Temperature::from_deg_c(b * 30.0).unwrap()),
                bucket: (a < 0.5).then(|| l(0.1 + b)),
            },
            typed: Vec::new(),
        },
        30 => {
            let outcomes = [JarOutcome::Fine, JarOutcome::Heat, JarOutcome::Clumps, JarOutcome::Layers];
            Command::JarTested { outcome: pick(&outcomes, a), note: None }
        }
        31 => {
            let list = pick(&[TickList::Ready, TickList::Mix, TickList::Wash], a);
            Command::TickAll {
                list,
                group: Code::Borrowed(pick(&["group-protective", "group-sprayer", "group-site"], b)),
            }
        }
        32 => Command::KeepBack { width: m(0.1 + a * 3.0), typed: Vec::new() },
        _ => Command::LeaveOutPartner { product_id: Uuid::from_u128(0x90 + u128::from(b < 0.4)) },
    }
}

fn pick_of_any_stage(share: f64, world: &World) -> Command {
    match (share * 6.0) as u8 {
        0 => Command::Open(Box::new(world.lawn())),
        1 => Command::BeginMixing,
        2 => Command::WashDone,
        3 => left_as_planned(),
        4 => world.choose_product(),
        _ => Command::Close { by: note(0xe1), cause: None, advice: Vec::new(), note: None },
    }
}

/// Checks that stand behind an event.
fn checks_behind(payload: &Payload) -> &[Check] {
    match payload {
        Payload::Assessed { checks, .. }
        | Payload::ProductChosen { checks, .. }
        | Payload::KitChosen { checks, .. }
        | Payload::PartnerChosen { checks, .. }
        | Payload::PlanAgreed { checks, .. }
        | Payload::MixingBegun { checks, .. }
        | Payload::Corrected { checks, .. }
        | Payload::UsedUp { checks, .. } => checks,
        _ => &[],
    }
}

fn due_product(position: &Position) -> f64 {
    position.walk.due.iter().map(|fill| fill.product.base()).sum()
}

/// Every law of one accepted command.
fn laws_hold(before: &State, trial: &Trial, payloads: &[Payload]) -> Result<(), TestCaseError> {
    let after = trial.position();
    for payload in payloads {
        for check in checks_behind(payload).iter().filter(|check| check.verdict == Verdict::Stop) {
            prop_assert!(check.tag != Tag::Statutory, "a statutory Stop was passed: {check:?}");
            let is_passed =
                before.position.passed.iter().any(|p| p.stage == before.position.stage && p.rule == check.rule);
            prop_assert!(is_passed, "passed without a reason: {check:?}");
        }
        match payload {
            Payload::Corrected { .. } => {
                let (was, is) = (due_product(&before.position), due_product(after));
                prop_assert!((was - is).abs() <= was.max(1.0) * 1e-12, "product moved from {was} to {is}");
            }
            Payload::FillMade { .. } => fill_is_lawful(after)?,
            Payload::StripDone | Payload::PassDone => weather_is_lawful(after)?,
            _ => {}
        }
    }
    let passes: Vec<u8> = after.walk.truths.iter().map(|truth| truth.pass).collect();
    let counted: Vec<u8> = (1..=u8::try_from(passes.len()).unwrap()).collect();
    prop_assert_eq!(passes, counted, "each pass is counted once");
    Ok(())
}

fn weather_is_lawful(position: &Position) -> Result<(), TestCaseError> {
    let seen = position.last_weather().unwrap();
    let stops = seen.checks.iter().find(|check| check.verdict == Verdict::Stop && check.tag == Tag::Statutory);
    prop_assert!(stops.is_none(), "against {stops:?}");
    Ok(())
}

fn fill_is_lawful(position: &Position) -> Result<(), TestCaseError> {
    weather_is_lawful(position)?;
    let label = &position.label.as_ref().unwrap().label;
    let area = position.plan.as_ref().unwrap().plan.treated.lower();
    if let Some(highest) = label.highest_dose.filter(|highest| highest.tag == Tag::Statutory) {
        let dose = position.product_made().unwrap().base() / area.m2();
        prop_assert!(dose <= highest.value.base() * (1.0 + 1e-6), "{dose} on each square metre");
    }
    if let Some(limit) = label.highest_concentration.filter(|limit| limit.tag == Tag::Statutory) {
        let per_l = position.walk.concentration.unwrap().per_l();
        prop_assert!(per_l <= limit.value.per_l() * (1.0 + 1e-6), "{per_l} in each litre");
    }
    Ok(())
}

/// What was made and watered is what whole passes used, what was left, and what stays in the hose.
fn litres_in_are_litres_out(position: &Position) -> Result<(), TestCaseError> {
    let walk = &position.walk;
    let Some(used_up) = walk.used_up.filter(|_| position.stopped.is_none() && walk.short.is_none()) else {
        return Ok(());
    };
    let watered: Volume = walk.trims.iter().map(|trim| trim.water_now).sum();
    let made_l = (position.mixture_made() + watered).l();
    let used: Volume = walk.truths.iter().map(|truth| truth.used).sum();
    let found_l = (used + used_up.leftover + position.dead()).l();
    prop_assert!((made_l - found_l).abs() <= made_l * 1e-9, "{made_l} L in and {found_l} L out");
    Ok(())
}

/// Does the taps, asking every law, and comes back with what can be taken back by now.
fn play(trial: &mut Trial, taps: &[Tap]) -> Result<(), TestCaseError> {
    let mut positions: Vec<Position> = trial.state.steps.iter().map(|step| step.before.clone()).collect();
    for tap in taps {
        let command = command_of(*tap, trial);
        let is_undo = command == Command::Undo;
        let before = trial.state.clone();
        match trial.try_act(command) {
            Ok(payloads) => {
                laws_hold(&before, trial, &payloads)?;
                if is_undo {
                    prop_assert!(positions.pop().is_some_and(|position| position == trial.state.position));
                } else {
                    positions.push(before.position);
                }
                if matches!(trial.stage(), Stage::Closed) || matches!(payloads[0], Payload::Opened(_)) {
                    positions.clear();
                }
                prop_assert_eq!(positions.len(), trial.state.steps.len());
            }
            Err(refusal) => {
                prop_assert_eq!(trial.state.seq, before.seq);
                prop_assert!(before.position.stage != Stage::Closed || is_closed_answer(&refusal), "{:?}", refusal);
            }
        }
    }
    Ok(())
}

fn is_closed_answer(refusal: &Refusal) -> bool {
    matches!(refusal, Refusal::NotNow(Stage::Closed) | Refusal::NothingToUndo)
}

proptest! {
    #![proptest_config(cases(64))]

    #[test]
    fn whatever_is_tapped_the_laws_hold_and_the_visit_can_be_closed(
        world in worlds(), begins_walking in any::<bool>(), taps in taps(),
    ) {
        let mut trial = Trial::new(world);
        if begins_walking {
            for _ in 0..60 {
                let command = plainest(trial.position(), &trial.world);
                if trial.stage() == Stage::Walk || trial.try_act(command).is_err() {
                    break;
                }
            }
        }
        play(&mut trial, &taps)?;
        trial.drive_to(Stage::Closed);
        litres_in_are_litres_out(trial.position())?;
        prop_assert!(fold(&trial.events) == trial.state, "the fold of the events is the state");
        let position = trial.position();
        prop_assert_eq!(position.has_sprayed(), position.closed.as_ref().unwrap().signature.look_back_on.is_some());
        let due = position.treated_on().and_then(look_back_day);
        prop_assert!(position.closed.as_ref().unwrap().signature.look_back_on.is_none_or(|on| Some(on) == due));
        prop_assert!(trial.try_act(Command::Undo).is_err() && trial.try_act(stop()).is_err());
    }

    #[test]
    fn a_visit_as_planned_makes_the_plans_product_and_no_other(world in worlds()) {
        let mut trial = Trial::new(world);
        for _ in 0..400 {
            let command = plainest(trial.position(), &trial.world);
            if trial.stage() == Stage::UseUp {
                break;
            }
            if let Err(refusal) = trial.try_act(command) {
                let is_before = trial.stage() < Stage::Mix;
                prop_assert!(is_before, "an agreed plan was refused at {:?}: {refusal:?}", trial.stage());
                return Ok(());
            }
        }
        prop_assert_eq!(trial.stage(), Stage::UseUp);
        let position = trial.position();
        let plan = &position.plan.as_ref().unwrap().plan;
        let made = position.product_made().unwrap().base();
        prop_assert!((made - plan.product.base()).abs() <= made.max(1.0) * 1e-9, "{made} and {}", plan.product.base());
        prop_assert!((position.mixture_made().l() - plan.mixture.l()).abs() <= plan.mixture.l() * 1e-9);
        prop_assert!(position.walk.in_tank.l() < 1e-6, "{} L over", position.walk.in_tank.l());
        prop_assert!(position.walk.trims.is_empty() && position.walk.due.is_empty());
    }

    #[test]
    fn no_order_of_events_makes_the_fold_panic(
        world in worlds(), taps in taps(), order in proptest::collection::vec((0..1_000_usize, any::<i64>()), 0..120),
    ) {
        let mut trial = Trial::new(world);
        play(&mut trial, &taps)?;
        trial.drive_to(Stage::Closed);
        let mut state = State::default();
        for (idx, utc_ms) in order {
            let event = &trial.events[idx % trial.events.len()];
            let at = At { utc_ms, mono_ms: utc_ms, ..event.at };
            let was_closed = state.position.closed.is_some().then(|| state.position.clone());
            let seq = state.seq.saturating_add(1);
            state = evolve(state, &Stamped { seq, at, ..event.clone() });
            prop_assert!(was_closed.is_none_or(|position| position == state.position), "what is signed changed");
        }
    }
}
