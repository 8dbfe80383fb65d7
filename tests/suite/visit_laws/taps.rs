//! Random taps: drawn by the stage that the visit stands at, mostly what is legal there, now and then what is not.
//!
//! A tap is three numbers that mean something only once the stage is known, so that a case that failed can be made shorter:
//! without one of its taps the others still say something.

use evensward_core::checks::RULES;
use evensward_core::checks::mixing::JarOutcome;
use evensward_core::checks::weather::{Observation, Sky};
use evensward_core::checks::wind::{Wind, WindFrom, WindReading};
use evensward_core::product::{Label, Purpose, Tagged};
use evensward_core::quantity::{Acidity, Angle, Code, Humidity, Length, Temperature, Volume, WindSpeed};
use evensward_core::visit::cause::PassCause;
use evensward_core::visit::command::{Command, Refusal, TickList};
use evensward_core::visit::event::{Applied, CorrectionKind, Found, MixWater, StopReason, UseUpKind};
use evensward_core::visit::item::PauseReason;
use evensward_core::visit::state::{Position, Stage};
use proptest::prelude::*;
use uuid::Uuid;

use super::worlds::tag;
use crate::visit_sample::{
    Trial, World, day, fill, fine, found, l, left, left_as_planned, m, note, plainest, see, stop,
};

/// One random tap: which of the stage's kinds, and two numbers from 0 to 1 that mean something by the kind.
#[derive(Debug, Clone, Copy)]
pub struct Tap {
    which: f64,
    a: f64,
    b: f64,
}

pub fn taps() -> impl Strategy<Value = Vec<Tap>> {
    let tap = (0.0..1.0_f64, 0.0..1.0_f64, 0.0..1.0_f64).prop_map(|(which, a, b)| Tap { which, a, b });
    proptest::collection::vec(tap, 0..180)
}

#[derive(Debug, Clone, Copy)]
enum Kind {
    /// The plainest tap.
    Plain,
    /// Something that was found and is not plain.
    Found,
    Partner,
    LeaveOut,
    OtherPlan,
    Water,
    Jar,
    Tick,
    TickAll,
    Weather,
    KeepBack,
    GiveBack,
    /// Passes what barred last.
    Pass,
    Fill,
    FillHigh,
    StripDone,
    PassDone,
    Refill,
    RanShort,
    Pause,
    Resume,
    /// What an operator reads is seldom what was planned.
    LeftNear,
    LeftAny,
    Correct,
    UseUp,
    Stop,
    Undo,
    /// Several steps at once.
    UndoTo,
    ReadLeft,
    TellPauseReason,
    TellCause,
    /// What belongs to another stage.
    Elsewhere,
}

/// What is tapped at a stage, and how often of all weights together.
fn kinds_at(stage: Stage) -> &'static [(u32, Kind)] {
    use Kind::{
        Correct, Elsewhere, Fill, FillHigh, Found, GiveBack, Jar, KeepBack, LeaveOut, LeftAny, LeftNear, OtherPlan,
        Partner, Pass, PassDone, Pause, Plain, RanShort, ReadLeft, Refill, Resume, Stop, StripDone, TellCause,
        TellPauseReason, Tick, TickAll, Undo, UndoTo, UseUp, Water, Weather,
    };
    match stage {
        Stage::Assess => &[(16, Plain), (3, Found), (2, Pass), (1, Elsewhere), (1, Undo)],
        Stage::Choose | Stage::Kit => &[(14, Plain), (6, Pass), (1, Elsewhere), (1, Undo)],
        Stage::Plan => {
            &[(12, Plain), (6, Partner), (1, LeaveOut), (2, OtherPlan), (6, Pass), (1, Elsewhere), (1, Undo)]
        }
        Stage::Ready => &[
            (40, Plain),
            (5, Weather),
            (3, Water),
            (3, Jar),
            (2, Tick),
            (2, TickAll),
            (4, KeepBack),
            (1, GiveBack),
            (6, Pass),
            (1, Elsewhere),
            (1, Undo),
        ],
        Stage::Mix => &[
            (40, Plain),
            (3, Weather),
            (2, Water),
            (4, Fill),
            (1, FillHigh),
            (3, ReadLeft),
            (2, Tick),
            (2, TickAll),
            (5, Pass),
            (1, Elsewhere),
            (1, Undo),
        ],
        Stage::Walk => &[
            (24, Plain),
            (8, StripDone),
            (3, PassDone),
            (2, Refill),
            (1, RanShort),
            (5, Weather),
            (3, Pause),
            (2, Resume),
            (1, TellPauseReason),
            (3, Pass),
            (1, Stop),
            (1, Elsewhere),
            (1, Undo),
            (1, UndoTo),
        ],
        Stage::PassEnd => {
            &[(4, Plain), (12, LeftNear), (1, LeftAny), (2, Weather), (1, Stop), (1, Elsewhere), (1, Undo)]
        }
        Stage::Correct => {
            &[(6, Plain), (10, Correct), (2, TellCause), (4, Pass), (1, Weather), (1, Stop), (1, Elsewhere), (1, Undo)]
        }
        Stage::UseUp => {
            &[(5, Plain), (10, UseUp), (1, TellCause), (3, Pass), (2, Weather), (1, Stop), (1, Elsewhere), (1, Undo)]
        }
        Stage::NextLawn => &[(24, Plain), (3, Weather), (2, Tick), (3, Pass), (1, Stop), (1, Elsewhere), (1, Undo)],
        Stage::Wash => &[(24, Plain), (2, Weather), (2, Tick), (2, TickAll), (1, Stop), (1, Elsewhere), (1, Undo)],
        Stage::Close => &[(12, Plain), (1, Elsewhere), (1, Undo)],
        Stage::Closed => &[(1, Plain), (1, Elsewhere), (1, Undo)],
    }
}

fn pick<T: Copy>(list: &[T], share: f64) -> T {
    list[((share * list.len() as f64) as usize).min(list.len() - 1)]
}

fn kind_of(tap: Tap, stage: Stage) -> Kind {
    let kinds = kinds_at(stage);
    let all: u32 = kinds.iter().map(|(weight, _)| weight).sum();
    let mut at = tap.which * f64::from(all);
    for (weight, kind) in kinds {
        at -= f64::from(*weight);
        if at < 0.0 {
            return *kind;
        }
    }
    Kind::Plain
}

/// The command of a tap. `barred` is why the last refused one was refused.
pub fn command_of(tap: Tap, trial: &Trial, barred: Option<&Refusal>) -> Command {
    let Tap { a, b, .. } = tap;
    let (position, world) = (trial.position(), &trial.world);
    let walk = &position.walk;
    match kind_of(tap, position.stage) {
        Kind::Plain => plainest(position, world),
        Kind::Found => odd_found(a, b),
        Kind::Partner => partner(a, b, &world.label),
        Kind::LeaveOut => Command::LeaveOutPartner { product_id: partner_id(b) },
        Kind::OtherPlan => {
            let mut choice = world.choice.clone();
            choice.dose = choice.dose.times(0.5 + b);
            let (later, mixtures) = (world.later.clone(), world.mixtures);
            Command::AgreePlan { choice: Box::new(choice), guide: world.guide, typed: Vec::new(), later, mixtures }
        }
        Kind::Water => water(a, b),
        Kind::Jar => {
            let odd = [JarOutcome::Heat, JarOutcome::Clumps, JarOutcome::Layers];
            Command::JarTested { outcome: if b < 0.5 { JarOutcome::Fine } else { pick(&odd, a) }, note: None }
        }
        Kind::Tick => tick(a, b, position),
        Kind::TickAll => {
            let list = match position.stage {
                Stage::Ready => TickList::Ready,
                Stage::Mix => TickList::Mix,
                _ => TickList::Wash,
            };
            let groups = ["group-protective", "group-again", "group-sprayer", "group-site"];
            Command::TickAll { list, group: Code::Borrowed(pick(&groups, b)) }
        }
        Kind::Weather => see(sky(a, b)),
        Kind::KeepBack => Command::KeepBack { width: m(0.1 + a * 3.0), typed: Vec::new() },
        Kind::GiveBack => Command::KeepBack { width: Length::ZERO, typed: Vec::new() },
        Kind::Pass => pass(a, b, barred),
        Kind::Fill => {
            let due = walk.due.first().map(|due| due.product.times(0.6 + a));
            fill(due, Some(world.kit.tank.times(0.3 + 0.8 * b)))
        }
        Kind::FillHigh => fill(None, Some((walk.in_tank + world.kit.dead_volume).times(1.0 + b))),
        Kind::StripDone => Command::StripDone,
        Kind::PassDone if a < 0.5 => Command::PassDoneAsPlanned,
        Kind::PassDone => Command::PassDone,
        Kind::Refill => Command::Refill,
        Kind::RanShort => {
            let strips = f64::from(position.n_strips(walk.pass)) + 1.0;
            Command::RanShort { strips_done: (a * strips) as u16 }
        }
        Kind::Pause => {
            let reasons = [PauseReason::Wind, PauseReason::Rain, PauseReason::Phone, PauseReason::Other];
            Command::Pause { reason: pick(&reasons, a), note: (b > 0.5).then(|| note(9)) }
        }
        Kind::Resume => Command::Resume { seen: Vec::new() },
        Kind::LeftNear => left(near(walk.in_tank, walk.available, a)),
        Kind::LeftAny => left(walk.available.l() * a * 1.1),
        Kind::Correct => {
            let water = [CorrectionKind::AddWater, CorrectionKind::LessWater, CorrectionKind::AsPlanned];
            let passes = [CorrectionKind::FewerPasses, CorrectionKind::MorePasses];
            Command::Correct(if b < 0.6 { pick(&water, a) } else { pick(&passes, a) })
        }
        Kind::UseUp => Command::UseUp(pick(&[UseUpKind::WholePass, UseUpKind::Part, UseUpKind::None], a)),
        Kind::Stop if a < 0.5 => Command::StopForGood { reason: StopReason::Health, note: Some(note(11)) },
        Kind::Stop => plainest(position, world),
        Kind::Undo => Command::Undo,
        Kind::UndoTo => {
            let newest = trial.state.steps.iter().rev().nth((a * 4.0) as usize);
            newest.map_or(Command::Undo, |step| Command::UndoTo { command: step.command })
        }
        Kind::ReadLeft => {
            let left = near(walk.in_tank, walk.available, a);
            Command::ReadLeft { left: (b < 0.8).then(|| l(left)), typed: Vec::new() }
        }
        Kind::TellPauseReason => Command::TellPauseReason { reason: PauseReason::Equipment, note: Some(note(12)) },
        Kind::TellCause => {
            let cause = pick(&PassCause::ALL, a);
            Command::TellCause { cause, note: (b > 0.5).then(|| note(13)) }
        }
        Kind::Elsewhere => elsewhere(a, world),
    }
}

/// A reading near what the tank should hold.
fn near(expected: Volume, available: Volume, share: f64) -> f64 {
    (expected.l() + (share - 0.5) * available.l() * 0.6).max(0.0)
}

fn odd_found(a: f64, b: f64) -> Command {
    let applied =
        if a < 0.5 { Applied::Unknown } else { Applied::Something { what: None, on: Some(day("2026-04-30")) } };
    Command::Assess(Found { target: (b < 0.9).then_some(Purpose::Moss), applied, ..found() })
}

fn partner_id(share: f64) -> Uuid {
    Uuid::from_u128(0x90 + u128::from(share < 0.4))
}

fn partner(a: f64, b: f64, own: &Label) -> Command {
    let label = Label {
        name: "Invented Partner".into(),
        dose: own.dose.times(0.2 + a * 0.9),
        partners: (b < 0.8).then(|| Tagged { tag: tag((b * 4.0) as u8), ..Tagged::own(a < 0.8) }),
        ..own.clone()
    };
    let label_id = Uuid::from_u128(0x92);
    Command::AddPartner {
        product_id: partner_id(b),
        label_id,
        dose: label.dose,
        label: Box::new(label),
        typed: Vec::new(),
    }
}

fn water(a: f64, b: f64) -> Command {
    let water = MixWater {
        source: None,
        ph: Acidity::from_ph(4.0 + a * 6.0).ok(),
        hardness: None,
        temperature: (b < 0.7).then(|| Temperature::from_deg_c(b * 30.0).unwrap()),
        bucket: (a < 0.3).then(|| l(0.1 + b)),
    };
    Command::SeeWater { water, typed: Vec::new() }
}

/// A tick of the list that is open, or taken back.
fn tick(a: f64, b: f64, position: &Position) -> Command {
    let on = b < 0.6;
    match position.stage {
        Stage::Ready => {
            let items: Vec<Code> = position.ready_items().into_iter().map(|item| item.code).collect();
            Command::TickReady { item: nth(&items, a), on }
        }
        Stage::Mix => {
            let items: Vec<Code> = position.mix_steps().into_iter().map(|step| step.item).collect();
            Command::TickMix { item: nth(&items, a), on }
        }
        _ => {
            let items: Vec<Code> = position.wash_steps().into_iter().map(|step| step.item).collect();
            Command::TickWash { item: nth(&items, a), on }
        }
    }
}

fn nth(items: &[Code], share: f64) -> Code {
    items.get((share * items.len() as f64) as usize).cloned().unwrap_or(Code::Borrowed("no-such-item"))
}

/// A look at the sky: half of them harmless but for the side that the wind comes from, the others anything.
fn sky(a: f64, b: f64) -> Observation {
    // More numbers than the two that a tap has: the digits further back of both.
    let more = |factor: f64| ((a * 7.0 + b * 3.0) * factor).fract();
    let degrees = Angle::from_deg(more(11.0) * 359.0).unwrap();
    let from = if more(13.0) < 0.7 { WindFrom::Lawn(degrees) } else { WindFrom::Compass(degrees) };
    let from = (more(17.0) < 0.9).then_some(from);
    if a < 0.5 {
        let wind = Wind { reading: WindReading::BySign { force: 2 }, from };
        return Observation { wind: Some(wind), ..fine() };
    }
    let reading = if more(19.0) < 0.5 {
        WindReading::BySign { force: (b * 6.0) as u8 }
    } else {
        WindReading::ByMeter { speed: WindSpeed::from_m_per_s(b * 4.0).unwrap(), height: m(0.5 + more(23.0)) }
    };
    let maybe = |factor: f64| (more(factor) < 0.9).then_some(more(factor) < 0.12);
    Observation {
        wind: (more(29.0) < 0.9).then_some(Wind { reading, from }),
        gusts: maybe(31.0),
        rain_now: maybe(37.0),
        dry_hours_expected: (more(41.0) < 0.9).then_some(more(43.0) * 12.0),
        temperature: Temperature::from_deg_c(2.0 + more(47.0) * 30.0).ok(),
        grass_wet: maybe(53.0),
        frozen: maybe(59.0),
        drought: maybe(61.0),
        gust_speed: None,
        humidity: Humidity::from_percent(20.0 + more(67.0) * 80.0).ok(),
        altitude: None,
        sky: Some(pick(&[Sky::Clear, Sky::Cloudy, Sky::Cloudy, Sky::Mist], more(71.0))),
    }
}

/// A reason for what barred last; now and then for anything.
fn pass(a: f64, b: f64, barred: Option<&Refusal>) -> Command {
    let stops: Vec<Code> = match barred {
        Some(Refusal::Barred(checks)) => {
            checks.iter().filter(|check| check.bars(&[])).map(|check| check.rule.clone()).collect()
        }
        _ => Vec::new(),
    };
    let rule = if b < 0.1 || stops.is_empty() { Code::Borrowed(pick(RULES, a)) } else { nth(&stops, a) };
    Command::PassAdvisory { rule, because: note(10) }
}

fn elsewhere(share: f64, world: &World) -> Command {
    match (share * 12.0) as u8 {
        0 => Command::Open(Box::new(world.lawn())),
        1 => Command::BeginMixing,
        2 => Command::WashDone,
        3 => left_as_planned(),
        4 => world.choose_product(),
        5 => Command::TickReady { item: Code::Borrowed("ready-gloves"), on: true },
        6 => Command::JarTested { outcome: JarOutcome::Fine, note: None },
        7 => Command::StripDone,
        8 => Command::Refill,
        9 => Command::UseUp(UseUpKind::WholePass),
        10 => stop(),
        _ => Command::Close { by: note(0xe1), cause: None, advice: Vec::new(), note: None },
    }
}
