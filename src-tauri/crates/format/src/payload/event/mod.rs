//! Every event kind as it is written: its name, its version and its JSON body. This is a published format.
//!
//! New kinds are added; a kind's body changes only with a new version and an upcast from every version before it. A kind or
//! version that is not known makes the visit readable only, never wrong.

mod bodies;
mod several;

use std::sync::Arc;

use bodies::{
    AdvisoryPassedBody, AssessedBody, CauseToldBody, CorrectedBody, EmptyBody, FillMadeBody, GroundKeptBackBody,
    JarTestedBody, KitChosenBody, LeftReadBody, MixingBegunBody, PartnerChosenBody, PartnerLeftOutBody, PausedBody,
    PlanAgreedBody, ProductChosenBody, RanShortBody, RefillCalledBody, ResumedBody, StoppedBody, TankMeasuredBody,
    TickedBody, UndoneBody, UsedUpBody, WaterSeenBody, WeatherSeenBody,
};
use evensward_core::quantity::Area;
use evensward_core::visit::event::{
    Found, FrozenKit, FrozenLabel, FrozenLawn, FrozenPartner, FrozenPlan, Payload, Signature,
};
use serde::Serialize;
use serde::de::DeserializeOwned;
use several::{LawnLeftOutBody, NextLawnBegunBody};

use super::frozen::{Frozen, Unreadable};
use super::weather;

/// A payload as it goes into a row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// The kind's name.
    pub kind: &'static str,
    /// The version of its body.
    pub version: u16,
    /// The JSON text.
    pub payload: String,
}

/// Every kind that this version writes.
pub const KINDS: &[&str] = &[
    "opened",
    "assessed",
    "product-chosen",
    "kit-chosen",
    "plan-agreed",
    "ready-ticked",
    "weather-seen",
    "advisory-passed",
    "mixing-begun",
    "mix-ticked",
    "fill-made",
    "strip-done",
    "pass-done",
    "refill-called",
    "ran-short",
    "paused",
    "resumed",
    "tank-measured",
    "corrected",
    "used-up",
    "wash-ticked",
    "washed",
    "stopped",
    "closed",
    "undone",
    "partner-chosen",
    "partner-left-out",
    "water-seen",
    "jar-tested",
    "ground-kept-back",
    "left-read",
    "cause-told",
    "pause-reason-told",
    "next-lawn-begun",
    "lawn-left-out",
];

/// Writes a payload.
///
/// # Errors
/// Only if a figure cannot be written as JSON, which core's constructors rule out.
pub fn write(payload: &Payload) -> Result<Written, Unreadable> {
    Ok(match payload {
        Payload::Opened(lawn) => written("opened", &lawn.freeze())?,
        Payload::Assessed { found, checks } => {
            written("assessed", &AssessedBody { found: found.freeze(), checks: checks.freeze() })?
        }
        Payload::ProductChosen { label, checks } => {
            written("product-chosen", &ProductChosenBody { label: label.freeze(), checks: checks.freeze() })?
        }
        Payload::KitChosen { kit, checks } => {
            written("kit-chosen", &KitChosenBody { kit: kit.freeze(), checks: checks.freeze() })?
        }
        Payload::PlanAgreed { plan, fills, typed, checks, later } => written(
            "plan-agreed",
            &PlanAgreedBody {
                plan: plan.freeze(),
                fills: fills.freeze(),
                typed: typed.freeze(),
                checks: checks.freeze(),
                later: later.freeze(),
            },
        )?,
        Payload::PartnerChosen { partner, typed, checks } => written(
            "partner-chosen",
            &PartnerChosenBody { partner: partner.freeze(), typed: typed.freeze(), checks: checks.freeze() },
        )?,
        Payload::PartnerLeftOut { product_id } => {
            written("partner-left-out", &PartnerLeftOutBody { product_id: *product_id })?
        }
        Payload::WaterSeen { water, typed, checks } => written(
            "water-seen",
            &WaterSeenBody { water: water.freeze(), typed: typed.freeze(), checks: checks.freeze() },
        )?,
        Payload::JarTested { outcome, note } => {
            written("jar-tested", &JarTestedBody { outcome: outcome.freeze(), note: note.freeze() })?
        }
        Payload::ReadyTicked { item, on } => written("ready-ticked", &TickedBody { item: item.freeze(), on: *on })?,
        Payload::WeatherSeen { observation, checks, typed, limits } => written(
            "weather-seen",
            &WeatherSeenBody {
                observation: observation.freeze(),
                typed: typed.freeze(),
                checks: checks.freeze(),
                limits: limits.freeze(),
            },
        )?,
        Payload::GroundKeptBack { kept, measured, typed, checks } => written(
            "ground-kept-back",
            &GroundKeptBackBody {
                kept: kept.freeze(),
                measured: measured.freeze(),
                typed: typed.freeze(),
                checks: checks.freeze(),
            },
        )?,
        Payload::AdvisoryPassed { rule, because } => {
            written("advisory-passed", &AdvisoryPassedBody { rule: rule.freeze(), because: because.freeze() })?
        }
        Payload::MixingBegun { carried, checks } => {
            written("mixing-begun", &MixingBegunBody { carried: carried.freeze(), checks: checks.freeze() })?
        }
        Payload::MixTicked { item, on } => written("mix-ticked", &TickedBody { item: item.freeze(), on: *on })?,
        Payload::FillMade { fill, product, mixture, in_tank, typed, partners, checks, containers } => written(
            "fill-made",
            &FillMadeBody {
                fill: *fill,
                product: product.freeze(),
                mixture_l: mixture.freeze(),
                in_tank_l: in_tank.freeze(),
                typed: typed.freeze(),
                partners: partners.freeze(),
                checks: checks.freeze(),
                containers: containers.freeze(),
            },
        )?,
        Payload::StripDone => written("strip-done", &EmptyBody {})?,
        Payload::PassDone => written("pass-done", &EmptyBody {})?,
        Payload::RefillCalled { strips_done } => {
            written("refill-called", &RefillCalledBody { strips_done: *strips_done })?
        }
        Payload::LeftRead { left, is_as_planned, typed } => written(
            "left-read",
            &LeftReadBody { left_l: left.freeze(), is_as_planned: *is_as_planned, typed: typed.freeze() },
        )?,
        Payload::RanShort { strips_done } => written("ran-short", &RanShortBody { strips_done: *strips_done })?,
        Payload::Paused { reason, note } => {
            written("paused", &PausedBody { reason: reason.freeze(), note: note.freeze() })?
        }
        Payload::PauseReasonTold { reason, note } => {
            written("pause-reason-told", &PausedBody { reason: reason.freeze(), note: note.freeze() })?
        }
        Payload::Resumed { seen } => written("resumed", &ResumedBody { seen: seen.freeze() })?,
        Payload::TankMeasured { left, is_as_planned, typed } => written(
            "tank-measured",
            &TankMeasuredBody { left_l: left.freeze(), is_as_planned: *is_as_planned, typed: typed.freeze() },
        )?,
        Payload::CauseTold { pass, cause, note } => {
            written("cause-told", &CauseToldBody { pass: *pass, cause: cause.freeze(), note: note.freeze() })?
        }
        Payload::Corrected { kind, water_now, water_more, water_less, n_passes, fills, checks } => written(
            "corrected",
            &CorrectedBody {
                kind: kind.freeze(),
                water_now_l: water_now.freeze(),
                water_more_l: water_more.freeze(),
                water_less_l: water_less.freeze(),
                n_passes: *n_passes,
                fills: fills.freeze(),
                checks: checks.freeze(),
            },
        )?,
        Payload::UsedUp { kind, leftover, water, area_m2, checks, strips } => written(
            "used-up",
            &UsedUpBody {
                kind: kind.freeze(),
                leftover_l: leftover.freeze(),
                water_l: water.freeze(),
                area_m2: area_m2.freeze(),
                checks: checks.freeze(),
                strips: strips.freeze(),
            },
        )?,
        Payload::NextLawnBegun { checks } => {
            written("next-lawn-begun", &NextLawnBegunBody { checks: checks.freeze() })?
        }
        Payload::LawnLeftOut { fills } => written("lawn-left-out", &LawnLeftOutBody { fills: fills.freeze() })?,
        Payload::WashTicked { item, on } => written("wash-ticked", &TickedBody { item: item.freeze(), on: *on })?,
        Payload::Washed => written("washed", &EmptyBody {})?,
        Payload::Stopped { reason, note } => {
            written("stopped", &StoppedBody { reason: reason.freeze(), note: note.freeze() })?
        }
        Payload::Closed(signature) => written("closed", &signature.freeze())?,
        Payload::Undone { command } => written("undone", &UndoneBody { command: *command })?,
    })
}

/// Reads a payload.
///
/// # Errors
/// Says what this version does not know or cannot believe.
pub fn read(kind: &str, version: u16, payload: &str) -> Result<Payload, Unreadable> {
    if version != 1 {
        return Err(Unreadable::UnknownKind { kind: kind.to_owned(), version });
    }
    Ok(match kind {
        "opened" => Payload::Opened(Arc::new(FrozenLawn::thaw(parsed(kind, payload)?)?)),
        "assessed" => {
            let body: AssessedBody = parsed(kind, payload)?;
            Payload::Assessed { found: Arc::new(Found::thaw(body.found)?), checks: Frozen::thaw(body.checks)? }
        }
        "product-chosen" => {
            let body: ProductChosenBody = parsed(kind, payload)?;
            Payload::ProductChosen {
                label: Arc::new(FrozenLabel::thaw(body.label)?),
                checks: Frozen::thaw(body.checks)?,
            }
        }
        "kit-chosen" => {
            let body: KitChosenBody = parsed(kind, payload)?;
            Payload::KitChosen { kit: Arc::new(FrozenKit::thaw(body.kit)?), checks: Frozen::thaw(body.checks)? }
        }
        "plan-agreed" => {
            let body: PlanAgreedBody = parsed(kind, payload)?;
            Payload::PlanAgreed {
                plan: Arc::new(FrozenPlan::thaw(body.plan)?),
                fills: Frozen::thaw(body.fills)?,
                typed: Frozen::thaw(body.typed)?,
                checks: Frozen::thaw(body.checks)?,
                later: Frozen::thaw(body.later)?,
            }
        }
        "partner-chosen" => {
            let body: PartnerChosenBody = parsed(kind, payload)?;
            Payload::PartnerChosen {
                partner: Arc::new(FrozenPartner::thaw(body.partner)?),
                typed: Frozen::thaw(body.typed)?,
                checks: Frozen::thaw(body.checks)?,
            }
        }
        "partner-left-out" => {
            let body: PartnerLeftOutBody = parsed(kind, payload)?;
            Payload::PartnerLeftOut { product_id: body.product_id }
        }
        "water-seen" => {
            let body: WaterSeenBody = parsed(kind, payload)?;
            Payload::WaterSeen {
                water: Frozen::thaw(body.water)?,
                typed: Frozen::thaw(body.typed)?,
                checks: Frozen::thaw(body.checks)?,
            }
        }
        "jar-tested" => {
            let body: JarTestedBody = parsed(kind, payload)?;
            Payload::JarTested { outcome: Frozen::thaw(body.outcome)?, note: Frozen::thaw(body.note)? }
        }
        "ready-ticked" => {
            let body: TickedBody = parsed(kind, payload)?;
            Payload::ReadyTicked { item: Frozen::thaw(body.item)?, on: body.on }
        }
        "weather-seen" => {
            let body: WeatherSeenBody = parsed(kind, payload)?;
            Payload::WeatherSeen {
                observation: Frozen::thaw(body.observation)?,
                checks: weather::with_differences(Frozen::thaw(body.checks)?),
                typed: Frozen::thaw(body.typed)?,
                limits: Frozen::thaw(body.limits)?,
            }
        }
        "ground-kept-back" => {
            let body: GroundKeptBackBody = parsed(kind, payload)?;
            Payload::GroundKeptBack {
                kept: Frozen::thaw(body.kept)?,
                measured: Arc::new(Frozen::thaw(body.measured)?),
                typed: Frozen::thaw(body.typed)?,
                checks: Frozen::thaw(body.checks)?,
            }
        }
        "advisory-passed" => {
            let body: AdvisoryPassedBody = parsed(kind, payload)?;
            Payload::AdvisoryPassed { rule: Frozen::thaw(body.rule)?, because: Frozen::thaw(body.because)? }
        }
        "mixing-begun" => {
            let body: MixingBegunBody = parsed(kind, payload)?;
            Payload::MixingBegun { carried: Frozen::thaw(body.carried)?, checks: Frozen::thaw(body.checks)? }
        }
        "mix-ticked" => {
            let body: TickedBody = parsed(kind, payload)?;
            Payload::MixTicked { item: Frozen::thaw(body.item)?, on: body.on }
        }
        "fill-made" => {
            let body: FillMadeBody = parsed(kind, payload)?;
            Payload::FillMade {
                fill: body.fill,
                product: Frozen::thaw(body.product)?,
                mixture: Frozen::thaw(body.mixture_l)?,
                in_tank: Frozen::thaw(body.in_tank_l)?,
                typed: Frozen::thaw(body.typed)?,
                partners: Frozen::thaw(body.partners)?,
                checks: Frozen::thaw(body.checks)?,
                containers: Frozen::thaw(body.containers)?,
            }
        }
        "strip-done" => empty(kind, payload, Payload::StripDone)?,
        "pass-done" => empty(kind, payload, Payload::PassDone)?,
        "refill-called" => {
            let body: RefillCalledBody = parsed(kind, payload)?;
            Payload::RefillCalled { strips_done: body.strips_done }
        }
        "left-read" => {
            let body: LeftReadBody = parsed(kind, payload)?;
            Payload::LeftRead {
                left: Frozen::thaw(body.left_l)?,
                is_as_planned: body.is_as_planned,
                typed: Frozen::thaw(body.typed)?,
            }
        }
        "ran-short" => {
            let body: RanShortBody = parsed(kind, payload)?;
            Payload::RanShort { strips_done: body.strips_done }
        }
        "paused" => {
            let body: PausedBody = parsed(kind, payload)?;
            Payload::Paused { reason: Frozen::thaw(body.reason)?, note: Frozen::thaw(body.note)? }
        }
        "pause-reason-told" => {
            let body: PausedBody = parsed(kind, payload)?;
            Payload::PauseReasonTold { reason: Frozen::thaw(body.reason)?, note: Frozen::thaw(body.note)? }
        }
        "resumed" => {
            let body: ResumedBody = parsed(kind, payload)?;
            Payload::Resumed { seen: Frozen::thaw(body.seen)? }
        }
        "tank-measured" => {
            let body: TankMeasuredBody = parsed(kind, payload)?;
            Payload::TankMeasured {
                left: Frozen::thaw(body.left_l)?,
                is_as_planned: body.is_as_planned,
                typed: Frozen::thaw(body.typed)?,
            }
        }
        "cause-told" => {
            let body: CauseToldBody = parsed(kind, payload)?;
            Payload::CauseTold { pass: body.pass, cause: Frozen::thaw(body.cause)?, note: Frozen::thaw(body.note)? }
        }
        "corrected" => {
            let body: CorrectedBody = parsed(kind, payload)?;
            Payload::Corrected {
                kind: Frozen::thaw(body.kind)?,
                water_now: Frozen::thaw(body.water_now_l)?,
                water_more: Frozen::thaw(body.water_more_l)?,
                water_less: Frozen::thaw(body.water_less_l)?,
                n_passes: body.n_passes,
                fills: Frozen::thaw(body.fills)?,
                checks: Frozen::thaw(body.checks)?,
            }
        }
        "used-up" => {
            let body: UsedUpBody = parsed(kind, payload)?;
            Payload::UsedUp {
                kind: Frozen::thaw(body.kind)?,
                leftover: Frozen::thaw(body.leftover_l)?,
                water: Frozen::thaw(body.water_l)?,
                area_m2: Area::thaw(f64::thaw(body.area_m2)?)?.m2(),
                checks: Frozen::thaw(body.checks)?,
                strips: body.strips,
            }
        }
        "next-lawn-begun" => {
            let body: NextLawnBegunBody = parsed(kind, payload)?;
            Payload::NextLawnBegun { checks: Frozen::thaw(body.checks)? }
        }
        "lawn-left-out" => {
            let body: LawnLeftOutBody = parsed(kind, payload)?;
            Payload::LawnLeftOut { fills: Frozen::thaw(body.fills)? }
        }
        "wash-ticked" => {
            let body: TickedBody = parsed(kind, payload)?;
            Payload::WashTicked { item: Frozen::thaw(body.item)?, on: body.on }
        }
        "washed" => empty(kind, payload, Payload::Washed)?,
        "stopped" => {
            let body: StoppedBody = parsed(kind, payload)?;
            Payload::Stopped { reason: Frozen::thaw(body.reason)?, note: Frozen::thaw(body.note)? }
        }
        "closed" => Payload::Closed(Arc::new(Signature::thaw(parsed(kind, payload)?)?)),
        "undone" => {
            let body: UndoneBody = parsed(kind, payload)?;
            Payload::Undone { command: body.command }
        }
        _ => return Err(Unreadable::UnknownKind { kind: kind.to_owned(), version }),
    })
}

fn written(kind: &'static str, body: &impl Serialize) -> Result<Written, Unreadable> {
    let payload = serde_json::to_string(body)
        .map_err(|why| Unreadable::Malformed { kind: kind.to_owned(), why: why.to_string() })?;
    Ok(Written { kind, version: 1, payload })
}

fn parsed<T: DeserializeOwned>(kind: &str, payload: &str) -> Result<T, Unreadable> {
    serde_json::from_str(payload).map_err(|why| Unreadable::Malformed { kind: kind.to_owned(), why: why.to_string() })
}

fn empty(kind: &str, payload: &str, event: Payload) -> Result<Payload, Unreadable> {
    let EmptyBody {} = parsed(kind, payload)?;
    Ok(event)
}
