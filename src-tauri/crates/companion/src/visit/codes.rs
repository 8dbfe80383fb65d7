//! The codes of closed lists as screens and records name them: one table a list, read in both directions.

use evensward_core::checks::mixing::JarOutcome;
use evensward_core::plan::{Cause, Heading, Mixtures, NarrowAt, StartSide};
use evensward_core::product::Purpose;
use evensward_core::visit::command::TickList;
use evensward_core::visit::event::{CorrectionKind, Guide, Share, StopReason, Survivors, UseUpKind};
use evensward_core::visit::item::PauseReason;

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
pub(crate) const JAR_OUTCOMES: &[(&str, JarOutcome)] = &[
    ("fine", JarOutcome::Fine),
    ("heat", JarOutcome::Heat),
    ("clumps", JarOutcome::Clumps),
    ("layers", JarOutcome::Layers),
];
pub(crate) const TICK_LISTS: &[(&str, TickList)] =
    &[("ready", TickList::Ready), ("mix", TickList::Mix), ("wash", TickList::Wash)];
pub(crate) const PAUSES: &[(&str, PauseReason)] = &[
    ("wind", PauseReason::Wind),
    ("rain", PauseReason::Rain),
    ("person_or_animal", PauseReason::PersonOrAnimal),
    ("phone", PauseReason::Phone),
    ("equipment", PauseReason::Equipment),
    ("weather", PauseReason::Weather),
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
    ("another_day", StopReason::AnotherDay),
    ("looked_back", StopReason::LookedBack),
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
/// Empty is what was meant before it could be chosen.
pub(crate) const NARROW_AT: &[(&str, NarrowAt)] =
    &[("last", NarrowAt::Last), ("first", NarrowAt::First), ("", NarrowAt::Last)];
pub(crate) const GUIDES: &[(&str, Guide)] = &[("pass", Guide::ByPass), ("strip", Guide::ByStrip)];
pub(crate) const HEADINGS: &[(&str, Heading)] = &[("along", Heading::Along), ("across", Heading::Across)];

/// The code of a value in one of these lists.
pub(crate) fn code_of<T: PartialEq>(value: &T, list: &[(&'static str, T)]) -> &'static str {
    list.iter().find(|(_, known)| known == value).map_or("", |(code, _)| code)
}
pub(crate) const MIXTURES_SAID: &[(&str, Mixtures)] = &[("one", Mixtures::One), ("each", Mixtures::Each)];
/// Where nothing was said, one mixture serves all.
pub(crate) const MIXTURES: &[(&str, Mixtures)] =
    &[("one", Mixtures::One), ("each", Mixtures::Each), ("", Mixtures::One)];
