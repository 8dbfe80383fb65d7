//! From what a screen sends to a command of the trade: figures parsed, ids looked up, free texts put into erasable entries.
//!
//! Invariant: all reasons at once, each at its field; nothing reaches the decider that was not parsed.

use evensward_core::quantity::{self as q, Code, Length, ProductAmount, Volume};
use evensward_core::visit::Position;
use evensward_core::visit::cause::PassCause;
use evensward_core::visit::command::{Command, Facts};
use evensward_core::visit::event::{Applied, Found, FrozenKit, LookBack, NoteRef, StopReason};
use evensward_format::private::PrivateText;
use uuid::Uuid;

use super::codes::{CAUSES, CORRECTIONS, JAR_OUTCOMES, PAUSES, SHARES, STOPS, SURVIVORS, TARGETS, TICK_LISTS, USE_UPS};
use super::facts::is_first_use;
use super::journal::note_ref;
use super::mixing;
use super::parsing::{Problems, typed_figures};
use super::planning::plan_choice;
use super::{several, stock, weather};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::visit::{Act, AssessInput, CloseInput};
use crate::{failure, forms, show};

/// A command with the personal texts it names.
pub(crate) struct Parsed {
    /// The command.
    pub command: Command,
    /// Texts to keep beside the journal.
    pub private: Vec<PrivateText>,
}

/// Parses an act against the visit it is done in.
pub(crate) fn parse(companion: &Companion, position: &Position, facts: &Facts, act: Act) -> Result<Parsed, Failure> {
    let mut private = Vec::new();
    let command = match act {
        Act::Assess { input } => Command::Assess(found(companion, facts, &input, &mut private)?),
        Act::ChooseProduct { product_id } => {
            let product_id = failure::id(&product_id)?;
            let (label_id, _, mut label) = companion.load_label(product_id)?;
            // Who copied the label is personal: it stays in the label's own entry, which the id names.
            label.entered_by = String::new();
            Command::ChooseProduct { product_id, label_id, label: Box::new(label) }
        }
        Act::ChooseKit { kit_id } => choose_kit(companion, &kit_id)?,
        Act::AgreePlan { choice } => {
            let (parsed, guide) = plan_choice(position, facts, &choice)?;
            let (later, mixtures) = several::wanted(companion, position, facts, &choice)?;
            let typed = typed_figures([("dose", &choice.dose), ("pace", &choice.pace)]);
            Command::AgreePlan { choice: Box::new(parsed), guide, typed, later, mixtures }
        }
        Act::BeginNextLawn => Command::BeginNextLawn,
        Act::LeaveLawnOut => Command::LeaveLawnOut,
        Act::AddPartner { product_id, dose } => mixing::add_partner(companion, &product_id, &dose)?,
        Act::LeaveOutPartner { product_id } => Command::LeaveOutPartner { product_id: failure::id(&product_id)? },
        Act::SeeWater { input } => mixing::see_water(companion, &input, &mut private)?,
        Act::JarTested { outcome, note: words } => {
            let mut problems = Problems::default();
            let outcome = problems.code("outcome", &outcome, JAR_OUTCOMES);
            let note = optional_note(companion, &words, &mut private);
            problems.settle(outcome.map(|outcome| Command::JarTested { outcome, note }))?
        }
        Act::TickAll { list, group } => {
            let mut problems = Problems::default();
            let list = problems.code("list", &list, TICK_LISTS);
            problems.settle(list.map(|list| Command::TickAll { list, group: Code::Owned(group) }))?
        }
        Act::TickReady { item, on } => Command::TickReady { item: item.into(), on },
        Act::SeeWeather { input } => {
            let (observation, typed) = weather::parse(&input)?;
            Command::SeeWeather { observation, typed }
        }
        Act::KeepBack { width } => {
            let mut problems = Problems::default();
            let typed = typed_figures([("width", &width)]);
            if width.text.trim().is_empty() {
                problems.add("width", &q::Said::new("empty"));
            }
            let width = problems.optional("width", &width, Length::from_figure_or_zero);
            problems.settle(width.map(|width| Command::KeepBack { width, typed }))?
        }
        Act::PassAdvisory { rule, reason } => {
            if reason.trim().is_empty() {
                let problem = show::problem("reason", &q::Said::new("reason-missing"));
                return Err(Failure::refused(vec![problem]));
            }
            let because = note(companion, &reason, &mut private);
            Command::PassAdvisory { rule: rule.into(), because }
        }
        Act::BeginMixing => Command::BeginMixing,
        Act::TickMix { item, on } => Command::TickMix { item: item.into(), on },
        Act::FillMade { product, volume, partners, containers } => {
            let mut problems = Problems::default();
            let mut typed = typed_figures([("product", &product), ("volume", &volume)]);
            let product = problems.optional("product", &product, ProductAmount::from_figure);
            let in_tank = problems.optional("volume", &volume, Volume::from_figure);
            let partners = mixing::really_measured(&partners, &mut problems)?;
            let (containers, amounts) = stock::named(&containers, &mut problems)?;
            typed.extend(amounts);
            problems.settle(Some(Command::FillMade { product, in_tank, typed, partners, containers }))?
        }
        Act::StripDone => Command::StripDone,
        Act::PassDone => Command::PassDone,
        Act::PassDoneAsPlanned => Command::PassDoneAsPlanned,
        Act::Refill => Command::Refill,
        Act::RanShort { strips_done } => {
            Command::RanShort { strips_done: u16::try_from(strips_done).unwrap_or(u16::MAX) }
        }
        Act::Pause { reason, note: words } => {
            let mut problems = Problems::default();
            let reason = problems.code("reason", &reason, PAUSES);
            let note = optional_note(companion, &words, &mut private);
            problems.settle(reason.map(|reason| Command::Pause { reason, note }))?
        }
        Act::ReadLeft { left } => {
            let mut problems = Problems::default();
            let typed = typed_figures([("left", &left)]);
            let left = problems.optional("left", &left, Volume::from_figure_or_zero);
            problems.settle(Some(Command::ReadLeft { left, typed }))?
        }
        Act::TellPauseReason { reason, note: words } => {
            let mut problems = Problems::default();
            let reason = problems.code("reason", &reason, PAUSES);
            let note = optional_note(companion, &words, &mut private);
            problems.settle(reason.map(|reason| Command::TellPauseReason { reason, note }))?
        }
        Act::TellCause { cause, note: words } => {
            let mut problems = Problems::default();
            let known = PassCause::ALL.map(|cause| (cause.code(), cause));
            let cause = problems.code("cause", &cause, &known);
            let note = optional_note(companion, &words, &mut private);
            problems.settle(cause.map(|cause| Command::TellCause { cause, note }))?
        }
        Act::Resume { seen } => Command::Resume { seen: seen.into_iter().map(Code::Owned).collect() },
        Act::TankLeft { left } => {
            let mut problems = Problems::default();
            let typed = typed_figures([("left", &left)]);
            let left = problems.optional("left", &left, Volume::from_figure_or_zero);
            problems.settle(Some(Command::TankLeft { left, typed }))?
        }
        Act::Correct { choice } => {
            let mut problems = Problems::default();
            let kind = problems.code("choice", &choice, CORRECTIONS);
            problems.settle(kind.map(Command::Correct))?
        }
        Act::UseUp { choice } => {
            let mut problems = Problems::default();
            let kind = problems.code("choice", &choice, USE_UPS);
            problems.settle(kind.map(Command::UseUp))?
        }
        Act::TickWash { item, on } => Command::TickWash { item: item.into(), on },
        Act::WashDone => Command::WashDone,
        Act::StopForGood { reason, note: words } => {
            let mut problems = Problems::default();
            let among: Vec<_> = STOPS.iter().copied().filter(|(_, reason)| *reason != StopReason::LookedBack).collect();
            let reason = problems.code("reason", &reason, &among);
            let note = optional_note(companion, &words, &mut private);
            problems.settle(reason.map(|reason| Command::StopForGood { reason, note }))?
        }
        Act::Close { input } => close(companion, &input, &mut private)?,
        Act::Undo => Command::Undo,
        Act::UndoTo { command_id } => Command::UndoTo { command: failure::id(&command_id)? },
    };
    Ok(Parsed { command, private })
}

/// A free text as an erasable entry, named by its id and hash.
pub(crate) fn note(companion: &Companion, words: &str, private: &mut Vec<PrivateText>) -> NoteRef {
    let text = PrivateText::new(companion.ports.ids.id(), companion.ports.ids.salt(), words.trim().to_owned());
    let reference = note_ref(&text);
    private.push(text);
    reference
}

pub(crate) fn optional_note(companion: &Companion, words: &str, private: &mut Vec<PrivateText>) -> Option<NoteRef> {
    (!words.trim().is_empty()).then(|| note(companion, words, private))
}

/// A local date that may stay empty.
pub(crate) fn optional_date(problems: &mut Problems, field: &str, text: &str) -> Option<chrono::NaiveDate> {
    let text = text.trim();
    if text.is_empty() {
        return None;
    }
    let date = text.parse().ok();
    if date.is_none() {
        problems.add(field, &q::Said::new("not-a-date"));
    }
    date
}

fn found(
    companion: &Companion,
    facts: &Facts,
    input: &AssessInput,
    private: &mut Vec<PrivateText>,
) -> Result<Found, Failure> {
    let mut problems = Problems::default();
    let target = problems.code("target", &input.target, TARGETS);
    let share = if input.share.is_empty() { None } else { problems.code("share", &input.share, SHARES) };
    let applied = match input.applied.as_str() {
        "nothing" => Some(Applied::Nothing),
        "unknown" => Some(Applied::Unknown),
        "something" => {
            let on = optional_date(&mut problems, "applied_on", &input.applied_on);
            Some(Applied::Something { what: optional_note(companion, &input.applied_what, private), on })
        }
        other => {
            let what = if other.is_empty() { "choose-one" } else { "not-one-of-these" };
            problems.add("applied", &q::Said::new(what));
            None
        }
    };
    let survivors =
        if input.survivors.is_empty() { None } else { problems.code("survivors", &input.survivors, SURVIVORS) };
    let look_back = match (survivors, facts.look_back_due) {
        (Some(survivors), Some(due)) => Some(LookBack { visit: due.visit, survivors }),
        _ => None,
    };
    let situation = if input.situation.is_empty() {
        None
    } else {
        problems.code("situation", &input.situation, forms::product::SITUATIONS)
    };
    let sown_on = optional_date(&mut problems, "sown_on", &input.sown_on);
    let mown_on = optional_date(&mut problems, "mown_on", &input.mown_on);
    let found = target.zip(applied).map(|(target, applied)| Found {
        target,
        share,
        applied,
        look_back,
        situation,
        sown_on,
        mown_on,
    });
    problems.settle(found)
}

fn choose_kit(companion: &Companion, kit_id: &str) -> Result<Command, Failure> {
    let kit_id = failure::id(kit_id)?;
    let (_, kit, calibration) = companion.load_kit(kit_id)?;
    let Some((calibration_id, _, calibration)) = calibration else {
        let problem = show::problem("kit_id", &q::Said::new("kit-not-calibrated"));
        return Err(Failure::refused(vec![problem]));
    };
    let is_first_use = is_first_use(companion, kit_id)?;
    Ok(Command::ChooseKit(Box::new(FrozenKit { kit_id, calibration_id, kit, calibration, is_first_use })))
}

fn close(companion: &Companion, input: &CloseInput, private: &mut Vec<PrivateText>) -> Result<Command, Failure> {
    let mut problems = Problems::default();
    if input.name.trim().is_empty() {
        problems.add("name", &q::Said::new("name-missing"));
    }
    if input.certificate.trim().is_empty() {
        problems.add("certificate", &q::Said::new("certificate-missing"));
    }
    let cause = if input.cause.is_empty() { None } else { problems.code("cause", &input.cause, CAUSES) };
    problems.settle(Some(()))?;
    let signature = serde_json::json!({ "name": input.name.trim(), "certificate": input.certificate.trim() });
    let by = note(companion, &signature.to_string(), private);
    let advice = input.advice.iter().cloned().map(Code::Owned).collect();
    let note = optional_note(companion, &input.note, private);
    Ok(Command::Close { by, cause, advice, note })
}

/// A client's erasable entry as it is frozen into a visit.
pub(crate) fn client_note(
    companion: &Companion,
    client_id: Uuid,
    private: &mut Vec<PrivateText>,
) -> Result<NoteRef, Failure> {
    let client = companion.client(client_id)?;
    let words = serde_json::json!({ "name": client.name, "address": client.address });
    Ok(note(companion, &words.to_string(), private))
}
