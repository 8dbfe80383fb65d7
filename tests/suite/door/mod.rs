//! A visit through the door, as a screen would do it: the invented firm's front lawn, one act after the other.
//!
//! What is done next comes from the view alone, so that whatever the door says is acted on; a hand may be steady (the plainest
//! act of every panel) or restless (anything, drawn from a seed). Must never look into the file while it works.

mod clocks;
mod crash;
mod faults;

use std::hash::{DefaultHasher, Hash as _, Hasher as _};
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

use evensward_companion::Companion;
use evensward_companion::dto::ask::{Answer, Ask, Failure};
use evensward_companion::dto::figures::Typed;
use evensward_companion::dto::visit::{Act, AssessInput, CloseInput, Panel, VisitView, WeatherInput};
use evensward_companion::ports::{Clock, Ports};
use evensward_core::visit::event::{At, Stamped};
use evensward_core::visit::fold;
use evensward_core::visit::state::{Stage, State};
use evensward_format::journal::{EventRow, Stamp};
use evensward_format::payload;
use evensward_store::{Opened, Store};
use uuid::Uuid;

const FRONT_LAWN: &str = "01900000-0000-7000-8000-000000000201";
const MOSS_IRON: &str = "01900000-0000-7000-8000-000000000301";
const KIT: &str = "01900000-0000-7000-8000-000000000401";

/// 2026-11-24, noon in UTC.
const NOON_UTC_MS: i64 = 1_795_521_600_000;

fn typed(text: &str, unit: &str) -> Typed {
    Typed { text: text.into(), unit: unit.into() }
}

/// Numbers from a seed: the same ones each time. Splitmix, <https://doi.org/10.1145/2714064.2660195>.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    fn below(&mut self, n: u64) -> u64 {
        self.next() % n
    }
}

/// A clock that a test sets: the wall clock and its offset for themselves, and the steady one.
pub struct SetClock {
    utc_ms: AtomicI64,
    offset_min: AtomicI64,
    mono_ms: AtomicI64,
    run: Uuid,
}

impl SetClock {
    fn at_noon() -> Arc<Self> {
        Self::at(NOON_UTC_MS, 0)
    }

    fn at(utc_ms: i64, offset_min: i64) -> Arc<Self> {
        let (utc_ms, offset_min, mono_ms) = (utc_ms.into(), offset_min.into(), 1_000.into());
        Arc::new(Self { utc_ms, offset_min, mono_ms, run: Uuid::now_v7() })
    }

    /// Time goes by.
    fn goes_on(&self, ms: i64) {
        self.utc_ms.fetch_add(ms, Ordering::Relaxed);
        self.mono_ms.fetch_add(ms, Ordering::Relaxed);
    }

    /// Somebody sets the wall clock.
    fn is_set_by(&self, ms: i64) {
        self.utc_ms.fetch_add(ms, Ordering::Relaxed);
    }

    /// The local time is another from now on.
    fn local_offset_is(&self, offset_min: i64) {
        self.offset_min.store(offset_min, Ordering::Relaxed);
    }
}

impl Clock for SetClock {
    fn now(&self) -> Stamp {
        Stamp {
            utc_ms: self.utc_ms.load(Ordering::Relaxed),
            offset_min: i32::try_from(self.offset_min.load(Ordering::Relaxed)).unwrap(),
            zone: "Europe/London".into(),
            mono_ms: self.mono_ms.load(Ordering::Relaxed),
            run_id: self.run,
        }
    }
}

fn ports(clock: Arc<SetClock>) -> Ports {
    Ports { clock, ..evensward_companion::system::ports() }
}

/// Everything the invented firm would type, kept in a folder.
fn firm_in(folder: &Path) {
    let firm = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-data/firm.json");
    let asks: Vec<Ask> = serde_json::from_str(&std::fs::read_to_string(firm).unwrap()).unwrap();
    let mut companion = entered(Store::open(folder).unwrap(), folder, SetClock::at_noon());
    for ask in asks {
        companion.ask(ask).unwrap();
    }
}

fn entered(opened: Opened, folder: &Path, clock: Arc<SetClock>) -> Companion {
    Companion::new(opened.store, opened.condition, folder, ports(clock)).unwrap()
}

/// The files of a folder beside another: what was kept there is there too.
fn copied(from: &Path, to: &Path) {
    for entry in std::fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        std::fs::copy(entry.path(), to.join(entry.file_name())).unwrap();
    }
}

/// Somebody at work on one visit.
struct Hand {
    companion: Companion,
    clock: Arc<SetClock>,
    view: VisitView,
    /// The command that was asked last.
    asked: Uuid,
}

fn view_of(answer: Answer) -> VisitView {
    match answer {
        Answer::Visit(view) => *view,
        other => panic!("not a visit: {other:?}"),
    }
}

impl Hand {
    /// Opens a visit.
    fn opens(mut companion: Companion, clock: Arc<SetClock>) -> Result<Self, Failure> {
        let (visit_id, asked) = (Uuid::now_v7(), Uuid::now_v7());
        let view = companion.ask(Ask::OpenVisit {
            visit_id: visit_id.to_string(),
            command_id: asked.to_string(),
            lawn_id: FRONT_LAWN.into(),
            rest_of: None,
        })?;
        Ok(Self { companion, clock, view: view_of(view), asked })
    }

    /// Goes on with a visit that is open.
    fn takes_up(mut companion: Companion, clock: Arc<SetClock>, visit_id: Uuid) -> Self {
        let view = view_of(companion.ask(Ask::Visit { visit_id: visit_id.to_string() }).unwrap());
        Self { companion, clock, view, asked: Uuid::nil() }
    }

    fn visit_id(&self) -> Uuid {
        self.view.visit_id.parse().unwrap()
    }

    fn try_act(&mut self, act: Act) -> Result<(), Failure> {
        self.asked = Uuid::now_v7();
        self.asks(self.asked, act)
    }

    fn asks(&mut self, command: Uuid, act: Act) -> Result<(), Failure> {
        self.clock.goes_on(20_000);
        let ask = Ask::Act {
            visit_id: self.view.visit_id.clone(),
            command_id: command.to_string(),
            expected_seq: self.view.seq,
            act,
            draft_key: None,
        };
        self.view = view_of(self.companion.ask(ask)?);
        Ok(())
    }

    #[track_caller]
    fn act(&mut self, act: Act) {
        let said = format!("{act:?}");
        self.try_act(act).unwrap_or_else(|failure| panic!("{said}\nfailed: {failure:#?}"));
    }

    fn is_closed(&self) -> bool {
        matches!(self.view.panel, Panel::Closed { .. })
    }

    /// Goes on by the plainest acts until something holds of the view.
    #[track_caller]
    fn goes_until(&mut self, holds: impl Fn(&VisitView) -> bool) {
        for _ in 0..300 {
            if holds(&self.view) {
                return;
            }
            let act = plain(&self.view);
            self.act(act);
        }
        panic!("never came there, stands at {:?}", stage_of(&self.view.panel));
    }
}

/// A dry, mild morning with a light breeze towards the hedge.
fn fine() -> WeatherInput {
    WeatherInput {
        wind_by: "sign".into(),
        wind_force: Some(2),
        wind_speed: typed("", "m/s"),
        wind_height: typed("", "m"),
        wind_towards: "right".into(),
        gusts: "no".into(),
        rain_now: "no".into(),
        dry_hours: typed("12", "hour"),
        temperature: typed("14", "degC"),
        grass: "dry".into(),
        ground: "open".into(),
        drought: "no".into(),
        humidity: typed("70", "percent"),
        sky: "cloudy".into(),
        ..WeatherInput::default()
    }
}

fn raining() -> WeatherInput {
    WeatherInput { rain_now: "yes".into(), ..fine() }
}

/// The plainest act of a panel.
fn plain(view: &VisitView) -> Act {
    let look = Act::SeeWeather { input: fine() };
    let is_look_owed = view.weather_due.is_some() || view.weather.rain_now != "no";
    match &view.panel {
        Panel::Assess { look_back, .. } => Act::Assess {
            input: AssessInput {
                target: "moss".into(),
                share: "much".into(),
                applied: "nothing".into(),
                survivors: if look_back.is_some() { "none".into() } else { String::new() },
                ..AssessInput::default()
            },
        },
        Panel::Choose { .. } => Act::ChooseProduct { product_id: MOSS_IRON.into() },
        Panel::Kit { .. } => Act::ChooseKit { kit_id: KIT.into() },
        Panel::Plan { choice, .. } => Act::AgreePlan { choice: choice.clone() },
        Panel::Ready { items, water, .. } => match items.iter().find(|item| !item.is_ticked) {
            Some(item) => Act::TickReady { item: item.item.clone(), on: true },
            None => match water {
                Some(water) if !water.is_seen => Act::SeeWater { input: water.input.clone() },
                _ if is_look_owed => look,
                _ => Act::BeginMixing,
            },
        },
        Panel::Mix { steps, .. } => match steps.iter().find(|step| !step.is_ticked) {
            Some(step) => Act::TickMix { item: step.item.clone(), on: true },
            None if is_look_owed => look,
            None => Act::FillMade {
                product: typed("", "mL"),
                volume: typed("", "L"),
                partners: Vec::new(),
                containers: Vec::new(),
            },
        },
        Panel::Walk(_) if is_look_owed => look,
        Panel::Walk(walk) if walk.paused.is_some() => {
            Act::Resume { seen: walk.again.iter().map(|item| item.item.clone()).collect() }
        }
        Panel::Walk(walk) => walk.main.as_ref().clone(),
        // What is left is typed where no plan can say it.
        Panel::PassEnd { is_broken_off, .. } => {
            Act::TankLeft { left: typed(if *is_broken_off { "0" } else { "" }, "L") }
        }
        Panel::Correct { options, .. } => {
            let way = options.iter().find(|way| way.is_advised).or(options.last()).unwrap();
            Act::Correct { choice: way.choice.clone() }
        }
        Panel::NextLawn(next) => match next.items.iter().find(|item| !item.is_ticked) {
            Some(item) => Act::TickReady { item: item.item.clone(), on: true },
            None if is_look_owed => look,
            None => Act::BeginNextLawn,
        },
        Panel::UseUp { options, .. } => {
            let way = options.iter().find(|way| way.is_advised).or(options.last()).unwrap();
            Act::UseUp { choice: way.choice.clone() }
        }
        Panel::Wash { steps, .. } => match steps.iter().find(|step| !step.is_ticked) {
            Some(step) => Act::TickWash { item: step.item.clone(), on: true },
            None => Act::WashDone,
        },
        Panel::Close { input, asks_cause, .. } => {
            let cause = if *asks_cause { "pace_or_flow".into() } else { String::new() };
            Act::Close { input: CloseInput { cause, ..input.clone() } }
        }
        Panel::Closed { .. } => Act::Undo,
    }
}

/// Anything: mostly the plainest act, often enough another, sometimes one that makes no sense here.
fn any(view: &VisitView, chance: &mut Chance) -> Act {
    match (chance.below(100), &view.panel) {
        (0..8, _) => Act::Undo,
        (8..13, _) if view.can_see_weather => {
            Act::SeeWeather { input: if chance.below(2) == 0 { raining() } else { fine() } }
        }
        (13..16, Panel::Walk(_)) => Act::Pause { reason: "phone".into(), note: "an invented call".into() },
        (16..22, Panel::Walk(_)) => Act::PassDone,
        (22..24, Panel::Walk(walk)) => Act::RanShort { strips_done: walk.strip.n_strips / 2 },
        (13..60, Panel::PassEnd { planned_left, .. }) => {
            let share = 0.6 + chance.below(60) as f64 / 100.0;
            Act::TankLeft { left: typed(&format!("{:.2}", planned_left.value * share), "L") }
        }
        (24..25, _) if view.can_stop => Act::StopForGood { reason: "client".into(), note: String::new() },
        (25..27, _) => Act::BeginMixing,
        (27..29, _) => Act::PassAdvisory { rule: "need".into(), reason: "an invented reason".into() },
        _ => plain(view),
    }
}

/// The stage whose panel has the word.
const fn stage_of(panel: &Panel) -> Stage {
    match panel {
        Panel::Assess { .. } => Stage::Assess,
        Panel::Choose { .. } => Stage::Choose,
        Panel::Kit { .. } => Stage::Kit,
        Panel::Plan { .. } => Stage::Plan,
        Panel::Ready { .. } => Stage::Ready,
        Panel::Mix { .. } => Stage::Mix,
        Panel::Walk(_) => Stage::Walk,
        Panel::PassEnd { .. } => Stage::PassEnd,
        Panel::Correct { .. } => Stage::Correct,
        Panel::NextLawn(_) => Stage::NextLawn,
        Panel::UseUp { .. } => Stage::UseUp,
        Panel::Wash { .. } => Stage::Wash,
        Panel::Close { .. } => Stage::Close,
        Panel::Closed { .. } => Stage::Closed,
    }
}

/// What a screen shows, as one number: all of the view but what follows from the time that goes by.
fn shown(view: &VisitView) -> u64 {
    let mut view = VisitView { weather_due: None, ..view.clone() };
    if let Panel::Ready { waits_for, can_begin, .. } = &mut view.panel {
        waits_for.clear();
        *can_begin = false;
    }
    if let Panel::Walk(walk) = &mut view.panel {
        walk.course.passed_s = 0.0;
    }
    let mut hasher = DefaultHasher::new();
    serde_json::to_string(&view).unwrap().hash(&mut hasher);
    hasher.finish()
}

/// The fold of a visit's events as they stand in the file.
fn fold_of(events: &[EventRow]) -> State {
    let stamped: Vec<Stamped> = events
        .iter()
        .map(|event| {
            let Stamp { utc_ms, offset_min, mono_ms, run_id, .. } = event.at;
            let at = At { utc_ms, offset_min, mono_ms, run: run_id };
            let payload = payload::read(&event.kind, event.version, &event.payload).unwrap();
            Stamped { seq: event.seq, command: event.command_id, at, payload }
        })
        .collect();
    fold(&stamped)
}

/// What was acknowledged last: the visit, its last event, and what the screen showed then.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Acknowledged {
    visit_id: Uuid,
    seq: u32,
    shown: u64,
}

impl Acknowledged {
    fn of(view: &VisitView) -> Self {
        Self { visit_id: view.visit_id.parse().unwrap(), seq: view.seq, shown: shown(view) }
    }
}

/// After whatever happened to the program: the events are the acknowledged ones and at most those of the one command in
/// flight, the screen shows their fold, and what was acknowledged last it shows as it did. Comes back with the hand that goes
/// on, and whether the command in flight was kept.
#[track_caller]
fn nothing_is_lost(folder: &Path, last: Acknowledged, in_flight: Uuid, what: &str) -> (Hand, bool) {
    let opened = Store::open(folder).unwrap_or_else(|error| panic!("{what}: {error:?}"));
    let events = opened.store.events(last.visit_id).unwrap();
    let n_events = u32::try_from(events.len()).unwrap();
    assert!(n_events >= last.seq, "{what}: {} acknowledged and {n_events} there", last.seq);
    assert!((1..).zip(&events).all(|(seq, event)| event.seq == seq), "{what}: a gap");
    let beyond = events.iter().filter(|event| event.seq > last.seq);
    for event in beyond {
        assert_eq!(event.command_id, in_flight, "{what}: event {} was never asked for", event.seq);
    }
    let state = fold_of(&events);
    let clock = SetClock::at_noon();
    // The program was started again after what happened, not months before it: what is past its day follows the date.
    clock.goes_on(events.last().map_or(0, |event| event.at.utc_ms - NOON_UTC_MS).max(0));
    let hand = Hand::takes_up(entered(opened, folder, Arc::clone(&clock)), clock, last.visit_id);
    assert_eq!((hand.view.seq, stage_of(&hand.view.panel)), (n_events, state.position.stage), "{what}");
    assert_eq!(usize::try_from(hand.view.n_undo).unwrap(), state.steps.len(), "{what}");
    let is_kept = n_events > last.seq;
    if !is_kept {
        assert_eq!(shown(&hand.view), last.shown, "{what}: the screen shows something else");
    }
    (hand, is_kept)
}
