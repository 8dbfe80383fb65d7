//! What is ticked: the ready list, the mixing steps and the washing steps, each a code that the catalogue says in words.
//!
//! The lists depend on the visit (its label, its kit, what was carried over from this morning), never on a screen.
//! Invariant: an item that is not ticked is unknown, and unknown is never Go.
//! Source of the steps: general stewardship guidance (equipment first, half the water, rinse the measure and the emptied
//! container three times into the tank); the label's own words come first. Common practice where no source is named.

use std::collections::BTreeSet;

use super::event::FrozenKit;
use crate::checks::ready::SiteItem;
use crate::product::{Form, Label, Phase, Protective};
use crate::quantity::Code;

/// Where an item stands on the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Protective equipment.
    Protective,
    /// The sprayer and what goes with it, once a day.
    Sprayer,
    /// The walk round the site.
    Site,
}

impl Group {
    /// The heading's code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Protective => "group-protective",
            Self::Sprayer => "group-sprayer",
            Self::Site => "group-site",
        }
    }
}

/// Why spraying was interrupted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PauseReason {
    /// The wind rose or turned.
    Wind,
    /// It began to rain.
    Rain,
    /// A person or an animal came onto the lawn.
    PersonOrAnimal,
    /// The phone rang.
    Phone,
    /// Something about the sprayer.
    Equipment,
    /// Something else.
    Other,
}

impl PauseReason {
    /// Its code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Wind => "wind",
            Self::Rain => "rain",
            Self::PersonOrAnimal => "person_or_animal",
            Self::Phone => "phone",
            Self::Equipment => "equipment",
            Self::Other => "other",
        }
    }

    /// What may have changed meanwhile and is looked at again before going on.
    pub const fn again(self) -> &'static [&'static str] {
        match self {
            Self::Wind => &["again-wind-is-as-seen"],
            Self::Rain => &["again-rain-has-stopped", "again-grass-is-dry"],
            Self::PersonOrAnimal => &["ready-people-away", "ready-pets-away"],
            Self::Phone => &["again-gloves-back-on", "ready-people-away"],
            Self::Equipment => &["ready-nozzle-sound", "ready-hoses-sound", "again-gloves-back-on"],
            Self::Other => &["ready-people-away", "ready-pets-away", "again-wind-is-as-seen"],
        }
    }
}

/// One item of the ready list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadyItem {
    /// Its code.
    pub code: Code,
    /// Where it stands.
    pub group: Group,
    /// Ticked once a day: a tick from an earlier visit of the same day, with the same kit, still holds.
    pub is_daily: bool,
}

const DAILY: &[&str] =
    &["ready-nozzle-sound", "ready-hoses-sound", "ready-emergency-water", "ready-label-at-hand", "ready-phone-charged"];

/// The ready list of a visit.
pub fn ready_items(label: &Label, kit: &FrozenKit) -> Vec<ReadyItem> {
    let worn: BTreeSet<Protective> = label.protective.of(Phase::Spraying).iter().copied().collect();
    let mut items: Vec<ReadyItem> = worn
        .into_iter()
        .map(|piece| ReadyItem { code: Code::Borrowed(piece.ready_code()), group: Group::Protective, is_daily: false })
        .collect();
    items.extend(DAILY.iter().map(|code| ReadyItem {
        code: Code::Borrowed(code),
        group: Group::Sprayer,
        is_daily: true,
    }));
    // Not once a day: the visit before this one has put something into the sprayer.
    items.push(ReadyItem { code: Code::Borrowed("ready-sprayer-clean"), group: Group::Sprayer, is_daily: false });
    if kit.is_first_use {
        items.push(ReadyItem {
            code: Code::Borrowed("ready-clean-water-trial"),
            group: Group::Sprayer,
            is_daily: false,
        });
    }
    items.extend(SiteItem::ALL.iter().map(|item| ReadyItem {
        code: Code::Borrowed(item.code()),
        group: Group::Site,
        is_daily: false,
    }));
    items
}

/// The mixing steps of one fill, in order.
pub fn mix_steps(label: &Label) -> Vec<&'static str> {
    let mut steps = vec!["mix-protective-on", "mix-half-water"];
    match label.form {
        Form::Liquid => steps.push("mix-measure-liquid"),
        Form::Crystals => steps.extend(["mix-weigh", "mix-dissolve-and-strain"]),
        Form::Powder => steps.extend(["mix-weigh", "mix-make-paste"]),
    }
    steps.extend(["mix-pour-product", "mix-rinse-measure", "mix-make-up", "mix-close", "mix-agitate"]);
    steps
}

/// The washing steps, in order.
pub fn wash_steps() -> &'static [&'static str] {
    &[
        "wash-rinse-tank",
        "wash-spray-rinsings",
        "wash-nozzle-and-strainer",
        "wash-outside",
        "wash-containers",
        "wash-boots",
        "wash-phone-and-clicker",
        "wash-gloves-then-hands",
        "wash-product-locked-away",
    ]
}
