//! Laws of the visit over random sequences of commands, sensible and senseless ones mixed. Whatever is tapped, no
//! statutory Stop is passed, taking back restores the state, and a closed record can still be reached.

use evensward_core::checks::weather::Observation;
use evensward_core::checks::wind::{Wind, WindReading};
use evensward_core::checks::{Check, Verdict};
use evensward_core::kit::{Kit, LastIn};
use evensward_core::lawn::Survey;
use evensward_core::plan::Cause;
use evensward_core::product::{Label, LegalClass, Purpose, Tag};
use evensward_core::quantity::{Angle, Temperature, Volume};
use evensward_core::visit::correct::{corrections, use_ups};
use evensward_core::visit::event::{
    Applied, At, CorrectionKind, Found, FrozenKit, FrozenLawn, Guide, NoteRef, Payload, Share, Stamped, StopReason,
    UseUpKind,
};
use evensward_core::visit::evolve::what;
use evensward_core::visit::item::{PauseReason, mix_steps, ready_items, wash_steps};
use evensward_core::visit::{Command, Facts, Position, Refusal, Stage, State, decide, evolve, fold};
use proptest::prelude::*;
use uuid::Uuid;

use crate::properties::cases;
use crate::properties_given::{Given, given_on, joined, rectangular};

/// A visit as it is driven: its state and every event so far.
struct Visit {
    survey: Survey,
    given: Given,
    state: State,
    events: Vec<Stamped>,
    n_commands: u128,
}

impl Visit {
    fn open(survey: Survey, given: Given) -> Self {
        let mut visit = Self { survey, given, state: State::default(), events: Vec::new(), n_commands: 0 };
        let lawn = FrozenLawn {
            lawn_id: Uuid::from_u128(1),
            client_id: None,
            client: None,
            survey: visit.survey.clone(),
            measured: visit.given.measured.clone(),
        };
        visit.give(Command::Open(Box::new(lawn))).unwrap();
        visit
    }

    /// Gives one command and holds every law on what came of it.
    fn give(&mut self, command: Command) -> Result<(), Refusal> {
        self.n_commands += 1;
        let (is_undo, before) = (command == Command::Undo, self.state.clone());
        let n_ms = i64::try_from(self.n_commands).unwrap() * 1_000;
        let at = At { utc_ms: 1_777_000_000_000 + n_ms, offset_min: 60, mono_ms: n_ms, run: Uuid::nil() };
        let payloads = decide(&self.state, &Facts::default(), at, command)?;
        assert!(!payloads.is_empty(), "what is accepted leaves an event");
        for payload in payloads {
            no_stop_is_passed(&self.state.position, &payload);
            let seq = self.state.seq + 1;
            let event = Stamped { seq, command: Uuid::from_u128(self.n_commands), at, payload };
            self.state = evolve(std::mem::take(&mut self.state), &event);
            self.events.push(event);
        }
        self.product_stays_lawful();
        if !is_undo && !matches!(self.state.position.stage, Stage::Closed) && self.n_commands > 1 {
            self.taking_back_restores(&before, at);
        }
        Ok(())
    }

    fn taking_back_restores(&self, before: &State, at: At) {
        let payloads = decide(&self.state, &Facts::default(), at, Command::Undo).unwrap();
        let seq = self.state.seq + 1;
        let event = Stamped { seq, command: Uuid::from_u128(u128::MAX), at, payload: payloads[0].clone() };
        let restored = evolve(self.state.clone(), &event);
        assert_eq!(restored.position, before.position);
        assert_eq!(restored.steps, before.steps);
    }

    fn product_stays_lawful(&self) {
        let position = &self.state.position;
        let (Some(label), Some(plan), Some(made)) = (&position.label, &position.plan, position.product_made()) else {
            return;
        };
        if let Some(highest) = label.label.highest_dose.filter(|highest| highest.tag == Tag::Statutory) {
            let most = highest.value.base() * plan.plan.treated.area.m2();
            assert!(made.base() <= most * (1.0 + 1e-9), "{made:?} on {:?}", plan.plan.treated);
        }
    }

    /// What a person would do next here.
    fn natural(&self, seed: u8) -> Command {
        let position = &self.state.position;
        match position.stage {
            Stage::Assess => Command::Assess(found(Some(Purpose::Weeds))),
            Stage::Choose => self.choose(self.given.label.clone()),
            Stage::Kit => self.take_kit(self.given.kit.clone()),
            Stage::Plan => Command::AgreePlan {
                choice: Box::new(self.given.choice.clone()),
                guide: if seed.is_multiple_of(2) { Guide::ByPass } else { Guide::ByStrip },
                typed: vec![],
            },
            Stage::Ready => {
                let (label, kit) = (position.label.as_ref().unwrap(), position.kit.as_ref().unwrap());
                let open = ready_items(&label.label, kit).into_iter().find(|item| !position.ready.contains(&item.code));
                match open {
                    Some(item) => Command::TickReady { item: item.code, on: true },
                    None if position.last_weather().is_none() => see(fair()),
                    None => Command::BeginMixing,
                }
            }
            Stage::Mix => {
                let steps = mix_steps(&position.label.as_ref().unwrap().label);
                match steps.into_iter().find(|step| !position.mix.contains(*step)) {
                    Some(step) => Command::TickMix { item: step.into(), on: true },
                    None => Command::FillMade { product: None, in_tank: None, typed: vec![] },
                }
            }
            Stage::Walk => match position.pause() {
                Some(pause) => {
                    Command::Resume { seen: pause.reason.again().iter().map(|item| (*item).into()).collect() }
                }
                None if position.stretch_end() < position.n_strips(position.walk.pass) => Command::Refill,
                None => Command::PassDone,
            },
            Stage::PassEnd => {
                // No more can be left than the pass had, nor than the tank held when it was last filled.
                let filled = position.walk.made.last().map_or(Volume::ZERO, |made| made.in_tank);
                let most = position.walk.available.min(filled);
                let left = position.walk.in_tank.times(f64::from(seed % 32) / 16.0).min(most);
                Command::TankLeft { left: (seed.is_multiple_of(2)).then_some(left), typed: vec![] }
            }
            Stage::Correct => {
                let ways = corrections(position);
                let advised = ways.iter().find(|way| way.is_advised).or(ways.first()).unwrap();
                Command::Correct(advised.kind)
            }
            Stage::UseUp => {
                let ways = use_ups(position);
                let advised = ways.iter().find(|way| way.is_advised).or(ways.last()).unwrap();
                Command::UseUp(advised.kind)
            }
            Stage::Wash => match wash_steps().iter().find(|step| !position.wash.contains(**step)) {
                Some(step) => Command::TickWash { item: (*step).into(), on: true },
                None => Command::WashDone,
            },
            Stage::Close | Stage::Closed => {
                Command::Close { by: note(), cause: Some(Cause::Unknown), advice: vec![], note: None }
            }
        }
    }

    /// What wet sleeves, haste or ill will might do.
    fn wild(&self, what: u8, seed: u8) -> Command {
        let position = &self.state.position;
        let share = f64::from(seed) / 64.0;
        match what % 20 {
            0..=3 => Command::Undo,
            4 => Command::StripDone,
            5 => Command::PassDone,
            6 => Command::Refill,
            7 => Command::RanShort { strips_done: u16::from(seed % 12) },
            8 => Command::Pause { reason: PauseReason::Rain, note: None },
            9 => Command::Resume { seen: vec![] },
            10 => Command::PassAdvisory { rule: RULES[usize::from(seed) % RULES.len()].into(), because: note() },
            11 => see(Observation { rain_now: Some(true), ..fair() }),
            12 => {
                let planned = position.walk.due.first().map(|due| due.product.times(share));
                Command::FillMade { product: planned, in_tank: None, typed: vec![] }
            }
            13 => Command::StopForGood { reason: StopReason::Weather, note: None },
            14 => Command::Correct(CORRECTIONS[usize::from(seed) % CORRECTIONS.len()]),
            15 => Command::UseUp([UseUpKind::WholePass, UseUpKind::Part, UseUpKind::None][usize::from(seed) % 3]),
            16 => self.choose(Label { legal_class: LegalClass::Fertiliser, ..self.given.label.clone() }),
            17 => {
                let kit = Kit { last_in: LastIn::TotalHerbicide, cleaned_since: false, ..self.given.kit.clone() };
                self.take_kit(kit)
            }
            18 => Command::BeginMixing,
            _ => Command::Assess(found(None)),
        }
    }

    fn choose(&self, label: Label) -> Command {
        let (product_id, label_id) = (Uuid::from_u128(2), Uuid::from_u128(3));
        Command::ChooseProduct { product_id, label_id, label: Box::new(label) }
    }

    fn take_kit(&self, kit: Kit) -> Command {
        Command::ChooseKit(Box::new(FrozenKit {
            kit_id: Uuid::from_u128(4),
            calibration_id: Uuid::from_u128(5),
            kit,
            calibration: self.given.calibration,
            is_first_use: false,
        }))
    }

    /// Goes on as a person would, passing what can be passed and stopping for good where nothing else is left.
    fn bring_home(&mut self, seed: u8) {
        for _ in 0..2_000 {
            if self.state.position.stage == Stage::Closed {
                return;
            }
            let Err(refusal) = self.give(self.natural(seed)) else { continue };
            let passable = match &refusal {
                Refusal::Barred(checks) => checks
                    .iter()
                    .filter(|check| check.can_be_passed())
                    .find(|check| !self.state.position.passed_rules().contains(&check.rule.as_ref()))
                    .map(|check| check.rule.clone()),
                _ => None,
            };
            let way_out = match passable {
                Some(rule) => Command::PassAdvisory { rule, because: note() },
                None => Command::StopForGood { reason: StopReason::Other, note: None },
            };
            self.give(way_out).unwrap_or_else(|again| {
                let told: Vec<&str> = self.events.iter().map(|event| what(&event.payload)).collect();
                panic!("no way on at {:?}: {refusal:?}, {again:?} after {told:?}", self.state.position.stage);
            });
        }
        panic!("no end at {:?}", self.state.position.stage);
    }
}

const RULES: &[&str] = &["use", "dose", "dose-on-ground", "water", "wind", "rain", "last-in-sprayer", "protective"];
const CORRECTIONS: &[CorrectionKind] = &[
    CorrectionKind::AddWater,
    CorrectionKind::LessWater,
    CorrectionKind::FewerPasses,
    CorrectionKind::MorePasses,
    CorrectionKind::AsPlanned,
];

fn note() -> NoteRef {
    NoteRef { id: Uuid::from_u128(9), hash: "00".to_owned() }
}

fn found(target: Option<Purpose>) -> Found {
    Found { target, share: Some(Share::Much), applied: Applied::Nothing, look_back: None }
}

fn fair() -> Observation {
    Observation {
        wind: Some(Wind { reading: WindReading::BySign { force: 2 }, from: Some(Angle::from_deg(90.0).unwrap()) }),
        gusts: Some(false),
        rain_now: Some(false),
        dry_hours_expected: Some(24.0),
        temperature: Some(Temperature::from_deg_c(15.0).unwrap()),
        grass_wet: Some(false),
        frozen: Some(false),
        drought: Some(false),
    }
}

fn see(observation: Observation) -> Command {
    Command::SeeWeather { observation, typed: vec![] }
}

/// The checks that a step was taken on; what was merely seen is no step.
fn gate_of(payload: &Payload) -> &[Check] {
    match payload {
        Payload::Assessed { checks, .. }
        | Payload::ProductChosen { checks, .. }
        | Payload::KitChosen { checks, .. }
        | Payload::PlanAgreed { checks, .. }
        | Payload::MixingBegun { checks, .. }
        | Payload::Corrected { checks, .. }
        | Payload::UsedUp { checks, .. } => checks,
        _ => &[],
    }
}

fn no_stop_is_passed(before: &Position, payload: &Payload) {
    for check in gate_of(payload).iter().filter(|check| check.verdict == Verdict::Stop) {
        assert_ne!(check.tag, Tag::Statutory, "{check:?}");
        assert!(before.passed_rules().contains(&check.rule.as_ref()), "passed without a reason: {check:?}");
    }
}

fn drive(visit: &mut Visit, moves: &[(bool, u8, u8)]) {
    for (is_natural, what, seed) in moves {
        if visit.state.position.stage == Stage::Closed {
            break;
        }
        let command = if *is_natural { visit.natural(*seed) } else { visit.wild(*what, *seed) };
        let product_before = all_product(&visit.state.position);
        let is_correction = matches!(command, Command::Correct(_));
        // A refusal is an answer too; it must leave the state as it was.
        let before = visit.state.clone();
        match visit.give(command) {
            Err(_) => assert_eq!(visit.state, before),
            Ok(()) if is_correction => {
                let after = all_product(&visit.state.position);
                assert!((after - product_before).abs() <= 1e-9 * product_before.abs(), "{product_before} {after}");
            }
            Ok(()) => {}
        }
    }
}

/// Product made and still to be made.
fn all_product(position: &Position) -> f64 {
    let made = position.product_made().map_or(0.0, |made| made.base());
    made + position.walk.due.iter().map(|due| due.product.base()).sum::<f64>()
}

fn moves() -> impl Strategy<Value = Vec<(bool, u8, u8)>> {
    prop::collection::vec((prop::bool::weighted(0.85), any::<u8>(), any::<u8>()), 0..160)
}

proptest! {
    #![proptest_config(cases(32))]

    #[test]
    fn any_sequence_of_commands_keeps_the_laws_and_can_reach_a_closed_record(
        (survey, given) in given_on(prop_oneof![rectangular((0.0..8.0f64).boxed()), joined()]),
        moves in moves(),
        seed in any::<u8>(),
    ) {
        let mut visit = Visit::open(survey, given);
        drive(&mut visit, &moves);
        visit.bring_home(seed);
        prop_assert_eq!(&fold(&visit.events), &visit.state);
        prop_assert_eq!(decide(&visit.state, &Facts::default(), visit.events[0].at, Command::Undo),
            Err(Refusal::NothingToUndo));
    }
}
