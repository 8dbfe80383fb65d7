//! From what a screen sends to a command of the trade: figures parsed, ids looked up, free texts put into erasable entries.
//!
//! Invariant: all reasons at once, each at its field; nothing reaches the decider that was not parsed.

use evensward_core::plan::{Cause, Choice, Heading, StartSide};
use evensward_core::product::Purpose;
use evensward_core::quantity::{self as q, Arg, Code, Figure, Pace, ProductAmount, ProductDose, Volume};
use evensward_core::visit::Position;
use evensward_core::visit::command::{Command, Facts};
use evensward_core::visit::event::{
    Applied, CorrectionKind, Found, FrozenKit, Guide, LookBack, NoteRef, Share, StopReason, Survivors, TypedFigure,
    UseUpKind,
};
use evensward_core::visit::item::PauseReason;
use evensward_format::private::PrivateText;
use uuid::Uuid;

use super::facts::is_first_use;
use super::journal::note_ref;
use super::weather;
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{FieldProblem, Typed};
use crate::dto::visit::{Act, AssessInput, CloseInput, PlanChoice};
use crate::{failure, show};

/// A command with the personal texts it names.
pub(crate) struct Parsed {
    /// The command.
    pub command: Command,
    /// Texts to keep beside the journal.
    pub private: Vec<PrivateText>,
}

/// Collects what is wrong, field by field.
#[derive(Default)]
pub(crate) struct Problems(Vec<FieldProblem>);

impl Problems {
    pub(crate) fn add(&mut self, field: &str, what: &q::Said) {
        self.0.push(show::problem(field, what));
    }

    /// A code of a closed list, or a problem at its field.
    pub(crate) fn code<T: Copy>(&mut self, field: &str, code: &str, known: &[(&str, T)]) -> Option<T> {
        let found = known.iter().find(|(name, _)| *name == code).map(|(_, value)| *value);
        if found.is_none() {
            let what = if code.is_empty() { "choose-one" } else { "not-one-of-these" };
            self.add(field, &q::Said::new(what));
        }
        found
    }

    /// A figure that may be left empty.
    pub(crate) fn optional<T>(
        &mut self,
        field: &str,
        typed: &Typed,
        parse: impl FnOnce(&Figure) -> Result<T, q::FigureProblem>,
    ) -> Option<T> {
        if typed.text.trim().is_empty() {
            return None;
        }
        match show::figure(typed).and_then(|figure| parse(&figure).map_err(|problem| problem.said())) {
            Ok(value) => Some(value),
            Err(said) => {
                self.add(field, &said);
                None
            }
        }
    }

    pub(crate) fn settle<T>(self, value: Option<T>) -> Result<T, Failure> {
        match value {
            Some(value) if self.0.is_empty() => Ok(value),
            _ => Err(Failure::refused(self.0)),
        }
    }
}

/// The figures of a form as typed; empty ones say nothing.
pub(crate) fn typed_figures<const N: usize>(figures: [(&'static str, &Typed); N]) -> Vec<TypedFigure> {
    figures
        .into_iter()
        .filter(|(_, typed)| !typed.text.trim().is_empty())
        .filter_map(|(field, typed)| {
            Some(TypedFigure { field: Code::Borrowed(field), figure: show::figure(typed).ok()? })
        })
        .collect()
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
            let typed = typed_figures([("dose", &choice.dose), ("pace", &choice.pace)]);
            Command::AgreePlan { choice: Box::new(parsed), guide, typed }
        }
        Act::TickReady { item, on } => Command::TickReady { item: item.into(), on },
        Act::SeeWeather { input } => {
            let (observation, typed) = weather::parse(&input)?;
            Command::SeeWeather { observation, typed }
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
        Act::FillMade { product, volume } => {
            let mut problems = Problems::default();
            let typed = typed_figures([("product", &product), ("volume", &volume)]);
            let product = problems.optional("product", &product, ProductAmount::from_figure);
            let in_tank = problems.optional("volume", &volume, Volume::from_figure);
            problems.settle(Some(Command::FillMade { product, in_tank, typed }))?
        }
        Act::StripDone => Command::StripDone,
        Act::PassDone => Command::PassDone,
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
            let reason = problems.code("reason", &reason, STOPS);
            let note = optional_note(companion, &words, &mut private);
            problems.settle(reason.map(|reason| Command::StopForGood { reason, note }))?
        }
        Act::Close { input } => close(companion, &input, &mut private)?,
        Act::Undo => Command::Undo,
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

fn optional_note(companion: &Companion, words: &str, private: &mut Vec<PrivateText>) -> Option<NoteRef> {
    (!words.trim().is_empty()).then(|| note(companion, words, private))
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
            let on = match input.applied_on.trim() {
                "" => None,
                text => match text.parse() {
                    Ok(date) => Some(date),
                    Err(_) => {
                        problems.add("applied_on", &q::Said::new("not-a-date"));
                        None
                    }
                },
            };
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
    let found = target.zip(applied).map(|(target, applied)| Found { target, share, applied, look_back });
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

/// A plan's choice as typed, for the planner.
pub(crate) fn plan_choice(position: &Position, facts: &Facts, input: &PlanChoice) -> Result<(Choice, Guide), Failure> {
    let mut problems = Problems::default();
    let n_passes = u8::try_from(input.n_passes).ok().filter(|passes| (1..=12).contains(passes));
    if n_passes.is_none() {
        let said = q::Said::new("passes-out-of-range").with("least", Arg::Count(1)).with("most", Arg::Count(12));
        problems.add("n_passes", &said);
    }
    let dose = problems.optional("dose", &input.dose, ProductDose::from_figure);
    if input.dose.text.trim().is_empty() {
        problems.add("dose", &q::Said::new("empty"));
    }
    let pace = problems.optional("pace", &input.pace, Pace::from_figure);
    let start_side = problems.code("start", &input.start, STARTS);
    let guide = problems.code("guide", &input.guide, GUIDES);
    let headings: Vec<Heading> =
        input.headings.iter().filter_map(|heading| problems.code("headings", heading, HEADINGS)).collect();
    let made = match (n_passes, dose, start_side, guide) {
        (Some(n_passes), Some(dose), Some(start_side), Some(guide)) => {
            let mut choice = Choice::plain(n_passes, dose);
            let wanted = headings.iter().copied().chain(std::iter::repeat(Heading::Along));
            choice.headings = wanted.take(usize::from(n_passes)).collect();
            choice.start_side = start_side;
            choice.pace = pace;
            choice.trim = position.kit.as_ref().map_or(1.0, |kit| facts.trim_for(kit.kit_id));
            Some((choice, guide))
        }
        _ => None,
    };
    let (choice, guide) = problems.settle(made)?;
    if input.narrow.is_empty() {
        return Ok((choice, guide));
    }
    Ok((super::planning::with_remedy(position, choice, &input.narrow)?, guide))
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

pub(crate) const TARGETS: &[(&str, Option<Purpose>)] = &[
    ("weeds", Some(Purpose::Weeds)),
    ("moss", Some(Purpose::Moss)),
    ("disease", Some(Purpose::Disease)),
    ("pests", Some(Purpose::Pests)),
    ("growth", Some(Purpose::Growth)),
    ("feeding", Some(Purpose::Feeding)),
    ("colour", Some(Purpose::Colour)),
    ("water", Some(Purpose::Water)),
    ("nothing", None),
];
pub(crate) const SHARES: &[(&str, Share)] = &[("few", Share::Few), ("some", Share::Some), ("much", Share::Much)];
pub(crate) const SURVIVORS: &[(&str, Survivors)] = &[
    ("none", Survivors::None),
    ("edges", Survivors::Edges),
    ("patches", Survivors::Patches),
    ("along_strip", Survivors::AlongStrip),
];
pub(crate) const PAUSES: &[(&str, PauseReason)] = &[
    ("wind", PauseReason::Wind),
    ("rain", PauseReason::Rain),
    ("person_or_animal", PauseReason::PersonOrAnimal),
    ("phone", PauseReason::Phone),
    ("equipment", PauseReason::Equipment),
    ("other", PauseReason::Other),
];
pub(crate) const CORRECTIONS: &[(&str, CorrectionKind)] = &[
    ("add_water", CorrectionKind::AddWater),
    ("less_water", CorrectionKind::LessWater),
    ("fewer_passes", CorrectionKind::FewerPasses),
    ("more_passes", CorrectionKind::MorePasses),
    ("as_planned", CorrectionKind::AsPlanned),
];
pub(crate) const USE_UPS: &[(&str, UseUpKind)] =
    &[("whole_pass", UseUpKind::WholePass), ("part", UseUpKind::Part), ("none", UseUpKind::None)];
pub(crate) const STOPS: &[(&str, StopReason)] = &[
    ("weather", StopReason::Weather),
    ("equipment", StopReason::Equipment),
    ("client", StopReason::Client),
    ("health", StopReason::Health),
    ("other", StopReason::Other),
];
pub(crate) const CAUSES: &[(&str, Cause)] = &[
    ("pace_or_flow", Cause::PaceOrFlow),
    ("missed_strip", Cause::MissedStrip),
    ("area_wrong", Cause::AreaWrong),
    ("nozzle", Cause::Nozzle),
    ("unknown", Cause::Unknown),
];
pub(crate) const STARTS: &[(&str, StartSide)] =
    &[("left", StartSide::Left), ("right", StartSide::Right), ("front", StartSide::Front), ("back", StartSide::Back)];
pub(crate) const GUIDES: &[(&str, Guide)] = &[("pass", Guide::ByPass), ("strip", Guide::ByStrip)];
pub(crate) const HEADINGS: &[(&str, Heading)] = &[("along", Heading::Along), ("across", Heading::Across)];

/// The code of a value in one of these lists.
pub(crate) fn code_of<T: PartialEq>(value: &T, list: &[(&'static str, T)]) -> &'static str {
    list.iter().find(|(_, known)| known == value).map_or("", |(code, _)| code)
}
