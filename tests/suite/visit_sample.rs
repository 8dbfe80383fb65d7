//! An invented visit in code: a lawn beside a hedge, an iron product at its highest dose, a 15 L kit, and a driver that
//! finishes any visit by the plainest taps.
//!
//! Each command goes through `decide`, and each of its events through `evolve` twice: as decided, and as written by the
//! format and read back. Both states must be equal at every step, so that no test of a visit can miss what is lost on disk.

use chrono::NaiveDate;
use evensward_core::checks::mixing::JarOutcome;
use evensward_core::checks::weather::{Observation, Sky};
use evensward_core::checks::wind::{Wind, WindFrom, WindReading};
use evensward_core::kit::{Calibration, JugSteps, Kit, LastIn};
use evensward_core::lawn::{Beside, Part, Shape, Side, Survey};
use evensward_core::plan::{Cause, Choice, Mixtures};
use evensward_core::product::{
    Form, Label, LegalClass, Protective, ProtectiveByPhase, Purpose, Rain, Situation, Tagged, WaterRange,
};
use evensward_core::quantity::{
    Angle, Code, FlowRate, Length, Mass, Pace, ProductAmount, ProductDose, ProductKind, Said, Span, Swath, Temperature,
    Volume, VolumePerArea, Weight,
};
use evensward_core::visit::command::{Command, Facts, LaterWanted, Refusal};
use evensward_core::visit::correct::{corrections, use_ups};
use evensward_core::visit::decide::{is_due_at_fill, waits_for_items, weather_due};
use evensward_core::visit::event::{
    Applied, At, CorrectionKind, Found, FrozenKit, FrozenLawn, Guide, MixWater, NoteRef, Payload, Share, Stamped,
    StopReason, UseUpKind,
};
use evensward_core::visit::state::{Position, Stage, State};
use evensward_core::visit::{decide, evolve};
use evensward_format::payload;
use uuid::Uuid;

use crate::visit_several::at_the_border;

mod held;

pub use held::{is_near, unless_weather_is_old, waiting};

/// 2026-05-04 09:00:00 in UTC.
const BEGUN_UTC_MS: i64 = 1_777_885_200_000;

pub fn l(value: f64) -> Volume {
    Volume::from_l(value).unwrap()
}

pub fn g(value: f64) -> ProductAmount {
    ProductAmount::of(ProductKind::Mass, value).unwrap()
}

pub fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

fn rate(value: f64) -> VolumePerArea {
    VolumePerArea::from_ml_per_m2(value).unwrap()
}

pub fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

pub fn note(number: u128) -> NoteRef {
    NoteRef { id: Uuid::from_u128(number), hash: format!("{number:064x}") }
}

/// What a trial is made of. The plain one is the lawn of 15.4 m by 20 m with a hedge on its right.
#[derive(Debug, Clone)]
pub struct World {
    pub survey: Survey,
    pub label: Label,
    pub kit: Kit,
    pub calibration: Calibration,
    pub is_first_use: bool,
    pub choice: Choice,
    pub guide: Guide,
    pub facts: Facts,
    /// Lawns that are treated after this one.
    pub later: Vec<LaterWanted>,
    pub mixtures: Mixtures,
}

impl World {
    pub fn plain() -> Self {
        let dose = ProductDose::of(ProductKind::Mass, 2.5).unwrap();
        let lawn = Part::taped(Shape::Rectangle { width: m(15.4), length: m(20.0) });
        let hedge = Side { part_idx: 0, side_idx: 1, beside: Beside::Hedge, margin: Length::ZERO };
        Self {
            survey: Survey { sides: vec![hedge], ..Survey::of(vec![lawn]) },
            label: label(dose),
            kit: Kit {
                tank: l(15.0),
                empty_weight: Weight::from_kg(4.2).unwrap(),
                dead_volume: l(0.25),
                nozzle: "flat fan 110-03".into(),
                swath: Swath::from_m(1.0).unwrap(),
                jug_steps: JugSteps { volume: Volume::from_ml(5.0).unwrap(), mass: Mass::from_g(5.0).unwrap() },
                last_in: LastIn::CleanWater,
                cleaned_since: true,
                fill_limit: None,
                reach: None,
                head: None,
                clean_signed_on: None,
                checked_on: None,
            },
            calibration: Calibration {
                flow: FlowRate::from_l_per_min(0.9).unwrap(),
                pace: Pace::from_m_per_s(1.0).unwrap(),
                steps_per_min: Some(96.0),
                made_on: day("2026-04-20"),
                evidence: None,
            },
            is_first_use: true,
            choice: Choice::plain(3, dose),
            guide: Guide::ByPass,
            facts: Facts::default(),
            later: Vec::new(),
            mixtures: Mixtures::One,
        }
    }

    pub fn with_tank(mut self, tank_l: f64) -> Self {
        self.kit.tank = l(tank_l);
        self
    }

    pub fn by_strip(mut self) -> Self {
        self.guide = Guide::ByStrip;
        self
    }

    pub fn with_passes(mut self, n_passes: u8) -> Self {
        self.choice = Choice::plain(n_passes, self.choice.dose);
        self
    }

    /// 15 m wide: fifteen whole strips of 0.3 L, so that a pass is 4.5 L.
    pub fn without_narrow_strip(mut self) -> Self {
        self.survey.parts[0].shape = Shape::Rectangle { width: m(15.0), length: m(20.0) };
        self
    }

    pub fn lawn(&self) -> FrozenLawn {
        FrozenLawn {
            lawn_id: Uuid::from_u128(0x1a),
            client_id: Some(Uuid::from_u128(0xc1)),
            client: Some(note(0xc2)),
            survey: self.survey.clone(),
            measured: self.survey.measure(None).unwrap(),
            rest_of: None,
        }
    }

    pub fn frozen_kit(&self) -> FrozenKit {
        FrozenKit {
            kit_id: Uuid::from_u128(0xb1),
            calibration_id: Uuid::from_u128(0xb2),
            kit: self.kit.clone(),
            calibration: self.calibration.clone(),
            is_first_use: self.is_first_use,
        }
    }

    pub fn choose_product(&self) -> Command {
        Command::ChooseProduct {
            product_id: Uuid::from_u128(0xf1),
            label_id: Uuid::from_u128(0xf2),
            label: Box::new(self.label.clone()),
        }
    }
}

/// An invented iron product against moss: 2.5 g/m2 and never more, in 30 to 60 mL/m2 of water.
fn label(dose: ProductDose) -> Label {
    Label {
        highest_dose: Some(Tagged::statutory(dose)),
        water: WaterRange { least: Some(Tagged::statutory(rate(30.0))), most: Some(Tagged::statutory(rate(60.0))) },
        least_days: Some(Tagged::statutory(42)),
        most_per_year: Some(Tagged::statutory(2)),
        rain: Rain::Free(Tagged::statutory(Span::from_s(4.0 * 3_600.0).unwrap())),
        mowing: "Mow three days before.".into(),
        protective: ProtectiveByPhase {
            mixing: vec![Protective::Gloves, Protective::FaceShield],
            spraying: vec![Protective::Gloves, Protective::Boots],
            washing: vec![Protective::Gloves],
        },
        authorisation_number: Some("DEMO-0".into()),
        contains_iron: true,
        entered_on: day("2026-01-10"),
        label_version: "1".into(),
        ..Label::plain("Invented Iron", LegalClass::PlantProtection, Purpose::Moss, Form::Crystals, dose)
    }
}

pub fn found() -> Found {
    Found {
        target: Some(Purpose::Moss),
        share: Some(Share::Much),
        applied: Applied::Nothing,
        look_back: None,
        situation: Some(Situation::Lawn),
        sown_on: None,
        mown_on: None,
    }
}

/// A dry, mild morning with a light breeze.
pub fn fine() -> Observation {
    Observation {
        wind: Some(Wind {
            reading: WindReading::BySign { force: 2 },
            from: Some(WindFrom::Lawn(Angle::from_deg(270.0).unwrap())),
        }),
        gusts: Some(false),
        rain_now: Some(false),
        dry_hours_expected: Some(12.0),
        temperature: Some(Temperature::from_deg_c(14.0).unwrap()),
        grass_wet: Some(false),
        frozen: Some(false),
        drought: Some(false),
        sky: Some(Sky::Cloudy),
        ..Observation::default()
    }
}

pub fn see(observation: Observation) -> Command {
    Command::SeeWeather { observation, typed: Vec::new() }
}

pub fn fill_as_planned() -> Command {
    Command::FillMade { product: None, in_tank: None, typed: Vec::new(), partners: Vec::new(), containers: Vec::new() }
}

pub fn fill(product: Option<ProductAmount>, in_tank: Option<Volume>) -> Command {
    Command::FillMade { product, in_tank, typed: Vec::new(), partners: Vec::new(), containers: Vec::new() }
}

/// Ticks every mixing step, and looks at the weather where a refill waits for it.
pub fn tick_all_mixing(trial: &mut Trial) {
    for step in trial.position().mix_steps() {
        trial.act(Command::TickMix { item: step.item, on: true });
    }
    if is_due_at_fill(trial.position()) {
        trial.act(see(fine()));
    }
}

pub fn left(left_l: f64) -> Command {
    Command::TankLeft { left: Some(l(left_l)), typed: Vec::new() }
}

pub fn left_as_planned() -> Command {
    Command::TankLeft { left: None, typed: Vec::new() }
}

pub fn stop() -> Command {
    Command::StopForGood { reason: StopReason::Weather, note: None }
}

/// A visit under way.
pub struct Trial {
    pub world: World,
    pub state: State,
    /// The same, from events that were written and read back.
    pub reread: State,
    pub events: Vec<Stamped>,
    n_commands: u32,
    /// Minutes that were let go by besides.
    pub waited_min: i64,
}

impl Trial {
    pub fn new(world: World) -> Self {
        Self {
            world,
            state: State::default(),
            reread: State::default(),
            events: Vec::new(),
            n_commands: 0,
            waited_min: 0,
        }
    }

    /// Does whatever mixing still waits for, but the weather.
    pub fn settle_what_waits(&mut self) {
        while let Some(open) = waits_for_items(self.position(), &self.world.facts).first() {
            let command = settle(open);
            self.act(command);
        }
    }

    pub fn opened(world: World) -> Self {
        let mut trial = Self::new(world);
        let lawn = trial.world.lawn();
        trial.act(Command::Open(Box::new(lawn)));
        trial
    }

    /// A visit of this world that has come to a stage by the plainest taps.
    pub fn at(world: World, stage: Stage) -> Self {
        let mut trial = Self::opened(world);
        trial.drive_to(stage);
        trial
    }

    pub fn position(&self) -> &Position {
        &self.state.position
    }

    pub fn stage(&self) -> Stage {
        self.state.position.stage
    }

    /// Every command a minute after the one before.
    pub fn now(&self) -> At {
        let minutes = i64::from(self.n_commands) + self.waited_min;
        At {
            utc_ms: BEGUN_UTC_MS + minutes * 60_000,
            offset_min: 60,
            mono_ms: 5_000 + minutes * 60_000,
            run: Uuid::from_u128(0x4e),
        }
    }

    pub fn try_act(&mut self, command: Command) -> Result<Vec<Payload>, Refusal> {
        let at = self.now();
        let payloads = decide(&self.state, &self.world.facts, at, command)?;
        self.n_commands += 1;
        let command = Uuid::from_u128(0x1000 + u128::from(self.n_commands));
        for payload in &payloads {
            let written = payload::write(payload).unwrap();
            let read = payload::read(written.kind, written.version, &written.payload).unwrap();
            let stamped = Stamped { seq: self.state.seq + 1, command, at, payload: payload.clone() };
            let reread = Stamped { payload: read, ..stamped.clone() };
            self.state = evolve(std::mem::take(&mut self.state), &stamped);
            self.reread = evolve(std::mem::take(&mut self.reread), &reread);
            self.events.push(stamped);
        }
        assert!(self.is_reread(), "{} is not read back as it was written", payloads_of(&payloads));
        Ok(payloads)
    }

    /// Whether what was read back comes to the same. The positions before earlier steps were compared when they were the
    /// position, so that only what is new is compared here.
    fn is_reread(&self) -> bool {
        let newest = |state: &State| {
            let step = state.steps.last().map(|step| (step.command, step.what, step.at));
            (state.seq, state.steps.len(), step)
        };
        newest(&self.state) == newest(&self.reread) && self.state.position == self.reread.position
    }

    #[track_caller]
    pub fn act(&mut self, command: Command) -> Vec<Payload> {
        let said = format!("{command:?}");
        match self.try_act(command) {
            Ok(payloads) => payloads,
            Err(refusal) => panic!("at {:?}\n{said}\nwas refused: {refusal:?}", self.stage()),
        }
    }

    #[track_caller]
    pub fn acts(&mut self, commands: impl IntoIterator<Item = Command>) {
        for command in commands {
            self.act(command);
        }
    }

    /// Goes on by the plainest taps until the visit stands at a stage.
    #[track_caller]
    pub fn drive_to(&mut self, stage: Stage) {
        for _ in 0..2_000 {
            if self.stage() == stage {
                return;
            }
            let command = plainest(self.position(), &self.world);
            if self.try_act(command.clone()).is_err() {
                self.give_way(command);
            }
        }
        panic!("never came to {stage:?}, stands at {:?}", self.stage());
    }

    /// What an operator does when the plain tap is refused: look at the sky again, fill to the brim, put no more
    /// product in, or stop.
    #[track_caller]
    pub fn give_way(&mut self, refused: Command) {
        let tank = self.world.kit.tank;
        let none = self.position().walk.due.first().map(|due| ProductAmount::zero(due.product.kind()));
        let mut ways = match refused {
            Command::FillMade { .. } => {
                vec![fill(None, Some(tank)), fill(none, None), fill(none, Some(tank))]
            }
            Command::TankLeft { .. } => vec![left(0.0)],
            Command::Correct(_) => vec![Command::Correct(CorrectionKind::AsPlanned)],
            Command::UseUp(_) => vec![Command::UseUp(UseUpKind::None)],
            _ => Vec::new(),
        };
        if weather_due(self.position(), &self.world.facts.limits, self.now()).is_some() {
            ways.insert(0, see(fine()));
        }
        ways.push(stop());
        for way in ways {
            if self.try_act(way).is_ok() {
                return;
            }
        }
        panic!("stuck at {:?}: {:#?}", self.stage(), self.position().walk);
    }
}

fn payloads_of(payloads: &[Payload]) -> String {
    payloads.iter().map(evolve::what).collect::<Vec<_>>().join(", ")
}

/// The plainest tap that takes a visit on.
pub fn plainest(position: &Position, world: &World) -> Command {
    if position.opened.is_none() {
        return Command::Open(Box::new(world.lawn()));
    }
    match position.stage {
        Stage::Assess => Command::Assess(found()),
        Stage::Choose => world.choose_product(),
        Stage::Kit => Command::ChooseKit(Box::new(world.frozen_kit())),
        Stage::Plan => Command::AgreePlan {
            choice: Box::new(world.choice.clone()),
            guide: world.guide,
            typed: Vec::new(),
            later: world.later.clone(),
            mixtures: world.mixtures,
        },
        Stage::Ready => get_ready(position, world),
        Stage::Mix => {
            let steps = position.mix_steps();
            match steps.into_iter().find(|step| !position.mix.contains(&step.item)) {
                Some(step) => Command::TickMix { item: step.item, on: true },
                None if is_due_at_fill(position) => see(fine()),
                None => unless_weather_is_old(position, fill_as_planned()),
            }
        }
        Stage::Walk => match position.pause() {
            Some(pause) => {
                let seen = pause.reason.again().iter().map(|item| Code::Borrowed(*item)).collect();
                unless_weather_is_old(position, Command::Resume { seen })
            }
            None => unless_weather_is_old(position, walk_on(position)),
        },
        Stage::PassEnd => left_as_planned(),
        Stage::Correct => {
            let ways = corrections(position);
            Command::Correct(ways.iter().find(|way| way.is_advised).map_or(CorrectionKind::AsPlanned, |way| way.kind))
        }
        Stage::NextLawn => at_the_border(position),
        Stage::UseUp => {
            let ways = use_ups(position);
            Command::UseUp(ways.iter().find(|way| way.is_advised).map_or(UseUpKind::None, |way| way.kind))
        }
        Stage::Wash => match position.wash_steps().into_iter().find(|step| !position.wash.contains(&step.item)) {
            Some(step) => Command::TickWash { item: step.item, on: true },
            None => Command::WashDone,
        },
        Stage::Close => Command::Close {
            by: note(0xe1),
            cause: Some(Cause::Unknown),
            advice: vec!["advice-keep-off".into()],
            note: None,
        },
        Stage::Closed => Command::Undo,
    }
}

fn settle(open: &Said) -> Command {
    match open.code.as_ref() {
        "water-not-looked-at" => Command::SeeWater { water: MixWater::default(), typed: Vec::new() },
        "jar-test-owed" => Command::JarTested { outcome: JarOutcome::Fine, note: None },
        _ => Command::TickReady { item: open.code.clone(), on: true },
    }
}

fn get_ready(position: &Position, world: &World) -> Command {
    if let Some(item) = waits_for_items(position, &world.facts).first() {
        return settle(item);
    }
    let is_fine = |seen: &evensward_core::visit::state::SeenWeather| seen.observation == fine();
    if position.last_weather().is_some_and(is_fine) { Command::BeginMixing } else { see(fine()) }
}

fn walk_on(position: &Position) -> Command {
    let is_refill_ahead = position.stretch_end() < position.n_strips(position.walk.pass);
    match (position.guide(), is_refill_ahead) {
        (Guide::ByStrip, _) => Command::StripDone,
        (Guide::ByPass, true) => Command::Refill,
        (Guide::ByPass, false) => Command::PassDone,
    }
}
