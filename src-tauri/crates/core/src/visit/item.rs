//! What is ticked: the ready list, the mixing steps and the washing steps, each a code that the catalogue says in words.
//!
//! The lists depend on the visit (its label, its kit, what was carried over from this morning), never on a screen.
//! Invariant: an item that is not ticked is unknown, and unknown is never Go.
//! Source of the steps: general stewardship guidance (equipment first, half the water, rinse the measure and the emptied
//! container three times into the tank); the label's own words come first. Common practice where no source is named.

use std::collections::BTreeSet;

use super::event::FrozenKit;
use super::state::Position;
use crate::checks::ready::SiteItem;
use crate::product::formulation::AddingGroup;
use crate::product::{Form, Formulation, Label, Phase, Protective};
use crate::quantity::{Arg, Code, Said};

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
    /// The weather was seen to be worse.
    Weather,
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
            Self::Weather => "weather",
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
            Self::Weather => &["again-weather-allows-it"],
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
pub fn ready_items(labels: &[&Label], kit: &FrozenKit) -> Vec<ReadyItem> {
    let mut items: Vec<ReadyItem> = pieces(labels, Phase::Spraying)
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

/// A step to tick while mixing or washing.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkStep {
    /// The item that is ticked: one for each step and product.
    pub item: Code,
    /// The sentence, with the product's name where there are several.
    pub said: Said,
    /// The heading's code.
    pub group: &'static str,
    /// The product it is about, from 0: the visit's own one, then its partners as they were chosen.
    pub product_idx: usize,
}

/// The heading of the pieces to wear.
const WEAR: &str = "group-protective";
const MIXING: &str = "group-mixing";
const WASHING: &str = "group-washing";
/// What was worn for the walk before and is looked at again.
const AGAIN: &str = "group-again";

/// Whether a group's items may be ticked at one touch: what is worn is put on together. The site, the sprayer and the work
/// itself are looked at one by one, since a row of ticks at one touch would say that somebody looked.
#[must_use]
pub fn goes_on_together(group: &str) -> bool {
    [WEAR, AGAIN].contains(&group)
}

fn step(code: &'static str, group: &'static str) -> WorkStep {
    WorkStep { item: Code::Borrowed(code), said: Said::new(code), group, product_idx: 0 }
}

/// A piece to wear: the item names the phase, so that a tick of one phase never counts for another.
fn wear(phase: Phase, piece: Protective, group: &'static str) -> WorkStep {
    let item = Code::Owned(format!("{}-{}", phase.code(), piece.ready_code()));
    WorkStep { item, said: Said::new(piece.ready_code()), group, product_idx: 0 }
}

/// The pieces that any of the labels asks for in a phase, each once.
#[must_use]
pub fn pieces(labels: &[&Label], phase: Phase) -> Vec<Protective> {
    let all: BTreeSet<Protective> = labels.iter().flat_map(|label| label.protective.of(phase)).copied().collect();
    all.into_iter().collect()
}

/// The products in the order in which they go into the tank: by their formulation, and those of one group as chosen.
///
/// Where the formulation is not known, what is dry goes first and a liquid goes last.
#[must_use]
pub fn adding_order(labels: &[&Label]) -> Vec<usize> {
    let group = |label: &Label| {
        label.formulation.and_then(Formulation::adding_group).unwrap_or(match label.form {
            Form::Crystals | Form::Powder => AddingGroup::Dry,
            Form::Liquid => AddingGroup::Solution,
        })
    };
    let mut order: Vec<(AddingGroup, usize)> =
        labels.iter().enumerate().map(|(idx, label)| (group(label), idx)).collect();
    order.sort_unstable();
    order.into_iter().map(|(_, idx)| idx).collect()
}

/// The mixing steps of one fill, in order: worn first, half the water, each product in its turn, made up.
///
/// `labels` holds the visit's own product and then its partners. After the first fill what is worn for the walk is put on
/// again before it goes on.
#[must_use]
pub fn mix_steps(labels: &[&Label], is_refill: bool) -> Vec<WorkStep> {
    let worn = pieces(labels, Phase::Mixing);
    let mut steps: Vec<WorkStep> = worn.iter().map(|piece| wear(Phase::Mixing, *piece, WEAR)).collect();
    if worn.is_empty() {
        steps.push(step("mix-protective-on", WEAR));
    }
    steps.push(step("mix-half-water", MIXING));
    let order = adding_order(labels);
    let n_products = order.len();
    for (nth, idx) in order.into_iter().enumerate() {
        let Some(label) = labels.get(idx) else { continue };
        let codes: &[(&'static str, &'static str)] = match label.form {
            Form::Liquid => &[("mix-measure-liquid", "mix-measure-liquid-of")],
            Form::Crystals => {
                &[("mix-weigh", "mix-weigh-of"), ("mix-dissolve-and-strain", "mix-dissolve-and-strain-of")]
            }
            Form::Powder => &[("mix-weigh", "mix-weigh-of"), ("mix-make-paste", "mix-make-paste-of")],
        };
        let last = [(POUR, "mix-pour-product-of"), ("mix-rinse-measure", "mix-rinse-measure-of")];
        let named = codes.iter().copied().chain(last).map(|(alone, of)| WorkStep {
            item: numbered(alone, idx),
            said: if n_products > 1 {
                Said::new(of).with("name", Arg::Text(label.name.clone()))
            } else {
                Said::new(alone)
            },
            group: MIXING,
            product_idx: idx,
        });
        steps.extend(named);
        if nth + 1 < n_products {
            let item = numbered("mix-agitate-before-next", idx);
            let said = Said::new("mix-agitate-before-next");
            steps.push(WorkStep { item, said, group: MIXING, product_idx: idx });
        }
    }
    steps.extend(["mix-make-up", "mix-close", "mix-agitate"].map(|code| step(code, MIXING)));
    if is_refill {
        steps.extend(pieces(labels, Phase::Spraying).into_iter().map(|piece| wear(Phase::Spraying, piece, AGAIN)));
    }
    steps
}

const POUR: &str = "mix-pour-product";

/// The own product keeps the plain code; a partner's item carries its number.
fn numbered(code: &'static str, product_idx: usize) -> Code {
    if product_idx == 0 { Code::Borrowed(code) } else { Code::Owned(format!("{code}-{}", product_idx + 1)) }
}

/// Whether any product was poured into the tank, by what is ticked of a fill.
#[must_use]
pub fn has_poured(mix: &BTreeSet<Code>) -> bool {
    mix.iter().any(|item| item.starts_with(POUR))
}

/// The washing steps, in order: what the labels want worn for it comes first.
#[must_use]
pub fn wash_steps(labels: &[&Label]) -> Vec<WorkStep> {
    let worn = pieces(labels, Phase::Washing).into_iter().map(|piece| wear(Phase::Washing, piece, WEAR));
    let work = [
        "wash-rinse-tank",
        "wash-spray-rinsings",
        "wash-nozzle-and-strainer",
        "wash-outside",
        "wash-containers",
        "wash-boots",
        "wash-phone-and-clicker",
        "wash-gloves-then-hands",
        "wash-product-locked-away",
    ];
    worn.chain(work.map(|code| step(code, WASHING))).collect()
}

impl Position {
    /// The labels of all products in the tank: the visit's own one, then its partners as they were chosen.
    #[must_use]
    pub fn labels(&self) -> Vec<&Label> {
        let own = self.label.iter().map(|chosen| &chosen.label);
        own.chain(self.partners.iter().map(|partner| &partner.label.label)).collect()
    }

    /// The ready list of this visit.
    #[must_use]
    pub fn ready_items(&self) -> Vec<ReadyItem> {
        self.kit.as_ref().map_or_else(Vec::new, |kit| ready_items(&self.labels(), kit))
    }

    /// The mixing steps of the fill that is made now.
    #[must_use]
    pub fn mix_steps(&self) -> Vec<WorkStep> {
        mix_steps(&self.labels(), self.has_mixture())
    }

    /// The washing steps of this visit.
    #[must_use]
    pub fn wash_steps(&self) -> Vec<WorkStep> {
        wash_steps(&self.labels())
    }
}
