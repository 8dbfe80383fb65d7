//! What events are made of: the moment, the frozen lawn, label, kit and plan, and what a person answered.
//!
//! Invariant: nothing in here is a name, an address or a free text; what a person wrote is named by a [`NoteRef`].

use chrono::{DateTime, NaiveDate};
use uuid::Uuid;

use crate::coverage::{Earlier as Lies, EarlierGround, without_slivers};
use crate::kit::{Calibration, Kit};
use crate::lawn::{Measured, NetArea, Survey};
use crate::plan::{Cause, Choice, OwnFill, Plan};
use crate::product::{Label, Purpose, Situation};
use crate::quantity::{Acidity, Code, Figure, Hardness, Length, ProductAmount, ProductDose, Said, Temperature, Volume};

/// When something happened: the wall clock for the record, the steady clock of one run for how long things took.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct At {
    /// Milliseconds since 1970 in UTC.
    pub utc_ms: i64,
    /// Local offset in minutes east.
    pub offset_min: i32,
    /// Milliseconds of a clock that is never set, within `run`.
    pub mono_ms: i64,
    /// The run of the program that clock belongs to.
    pub run: Uuid,
}

impl At {
    /// The local date: intervals between treatments count these.
    pub fn local_date(self) -> NaiveDate {
        let local_ms = self.utc_ms.saturating_add(i64::from(self.offset_min).saturating_mul(60_000));
        DateTime::from_timestamp_millis(local_ms).map_or(NaiveDate::MIN, |moment| moment.date_naive())
    }

    /// Seconds since `earlier`: by the steady clock within one run, by the wall clock across runs; never negative.
    pub fn seconds_since(self, earlier: Self) -> f64 {
        let ms = if self.run == earlier.run {
            self.mono_ms.saturating_sub(earlier.mono_ms)
        } else {
            self.utc_ms.saturating_sub(earlier.utc_ms)
        };
        #[expect(clippy::cast_precision_loss, reason = "milliseconds between two taps of one visit are far below 2^53")]
        let seconds = ms.max(0) as f64 / 1_000.0;
        seconds
    }
}

/// A text that a person wrote, kept elsewhere and erasable; the hash still proves what stood there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoteRef {
    /// The erasable entry.
    pub id: Uuid,
    /// Hex SHA-256 over salt and text.
    pub hash: String,
}

/// How much of the lawn the trouble covers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Share {
    /// A few spots: a hand fork may do.
    Few,
    /// Here and there.
    Some,
    /// Over most of it.
    Much,
}

/// What anyone applied this year, as far as the operator could learn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Applied {
    /// Nothing, the client says.
    Nothing,
    /// Something, perhaps on a known day.
    Something {
        /// What, in words.
        what: Option<NoteRef>,
        /// When, if known.
        on: Option<NaiveDate>,
    },
    /// Nobody knows.
    Unknown,
}

/// What survived the treatment before, seen about two weeks later.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Survivors {
    /// Nothing.
    None,
    /// Along the edges.
    Edges,
    /// In patches.
    Patches,
    /// Along a strip's line: a miss.
    AlongStrip,
}

/// What the operator found, before anything is chosen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// What a treatment is wanted for; nothing when there is nothing to treat.
    pub target: Option<Purpose>,
    /// How much of the lawn; nothing when it was not looked at.
    pub share: Option<Share>,
    /// What was applied this year.
    pub applied: Applied,
    /// The look-back on an earlier visit, when one was due.
    pub look_back: Option<LookBack>,
    /// What kind of turf it is, when said.
    pub situation: Option<Situation>,
    /// When it was sown, when known.
    pub sown_on: Option<NaiveDate>,
    /// When it was last mown, when known.
    pub mown_on: Option<NaiveDate>,
}

/// The look-back on an earlier visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LookBack {
    /// The visit looked back on.
    pub visit: Uuid,
    /// What survived.
    pub survivors: Survivors,
}

/// The lawn as it was measured when the visit was opened.
#[derive(Debug, Clone, PartialEq)]
pub struct FrozenLawn {
    /// The lawn.
    pub lawn_id: Uuid,
    /// The client, if any.
    pub client_id: Option<Uuid>,
    /// The client's name and place as they stood, erasable.
    pub client: Option<NoteRef>,
    /// The survey it comes from: a label's margin to open water is applied to it later.
    pub survey: Survey,
    /// The survey worked out without a label's margin.
    pub measured: Measured,
    /// The visit of which this one treats the rest, when it was broken off.
    pub rest_of: Option<RestOf>,
}

/// A visit that was broken off, and the ground that it treated: the visit that finishes it leaves that ground alone.
#[derive(Debug, Clone, PartialEq)]
pub struct RestOf {
    /// The visit that was broken off.
    pub visit: Uuid,
    /// What it treated, on the lawn as it was measured then.
    pub earlier: EarlierGround,
}

impl FrozenLawn {
    /// The lawn by a survey of it, with a label's margin to open water, and without what is treated already where this visit
    /// treats the rest.
    ///
    /// # Errors
    /// Every reason why nothing could be measured, among them that nothing is left, and that the lawn has been measured
    /// otherwise since: then nobody knows where the rest lies.
    pub fn measure(&self, survey: &Survey, margin: Option<Length>) -> Result<Measured, Vec<Said>> {
        let measured = survey.measure(margin);
        let measured =
            measured.map_err(|refusals| refusals.into_iter().map(|refusal| refusal.said).collect::<Vec<_>>())?;
        let Some(rest) = &self.rest_of else { return Ok(measured) };
        if rest.earlier.lies_on(&measured) != Lies::AsDrawn {
            return Err(vec![Said::new("rest-measured-anew")]);
        }
        let net = without_slivers(&measured.net.without(&rest.earlier.ground));
        if net.is_empty() {
            return Err(vec![Said::new("nothing-left-to-treat")]);
        }
        let net_area = NetArea { area: net.area(), doubt: measured.net_area.doubt };
        Ok(Measured { net, net_area, ..measured })
    }
}

/// The label as it was read when the product was chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct FrozenLabel {
    /// The product.
    pub product_id: Uuid,
    /// The label version.
    pub label_id: Uuid,
    /// Its content.
    pub label: Label,
    /// The lawn with the label's margin to open water taken off.
    pub measured: Measured,
}

/// A product that shares the tank, with its label as it was read when it was chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct FrozenPartner {
    /// Its label.
    pub label: FrozenLabel,
    /// Its dose.
    pub dose: ProductDose,
}

/// The water to mix with, as it was looked at. What was not looked at stays unknown.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct MixWater {
    /// Where it comes from, in words.
    pub source: Option<NoteRef>,
    /// Its pH.
    pub ph: Option<Acidity>,
    /// Its lime.
    pub hardness: Option<Hardness>,
    /// How warm it is.
    pub temperature: Option<Temperature>,
    /// The water that a product is dissolved in first; nothing means half of the fill.
    pub bucket: Option<Volume>,
}

/// The kit as it stood when it was chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct FrozenKit {
    /// The kit.
    pub kit_id: Uuid,
    /// The calibration.
    pub calibration_id: Uuid,
    /// Its content.
    pub kit: Kit,
    /// The calibration's content.
    pub calibration: Calibration,
    /// Whether this kit has never sprayed before: a clean-water trial is asked for.
    pub is_first_use: bool,
}

/// How often the guide wants a tap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Guide {
    /// Once per pass and per refill.
    ByPass,
    /// Once per strip.
    ByStrip,
}

/// The finished plan.
#[derive(Debug, Clone, PartialEq)]
pub struct FrozenPlan {
    /// What was chosen.
    pub choice: Choice,
    /// What came of it.
    pub plan: Plan,
    /// How often the guide wants a tap.
    pub guide: Guide,
}

/// A place in the walk: a pass from 1, and how many of its strips lie behind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// Pass from 1.
    pub pass: u8,
    /// Strips of that pass already done.
    pub strips_done: u16,
}

/// A tankful that is still to be made, as it stands after corrections.
#[derive(Debug, Clone, PartialEq)]
pub struct DueFill {
    /// From here.
    pub from: Place,
    /// To here: the end of a pass, or a refill in mid-pass.
    pub to: Place,
    /// Fresh mixture: product and water of this fill.
    pub mixture: Volume,
    /// Product, rounded to the jug.
    pub product: ProductAmount,
    /// Product before rounding.
    pub product_exact: ProductAmount,
    /// Clean water to pour.
    pub water: Volume,
}

impl DueFill {
    /// What the partners follow of it: only what is made between two passes may differ from the fill before.
    #[must_use]
    pub const fn own(&self) -> OwnFill {
        OwnFill { exact: self.product_exact, is_between_passes: self.from.strips_done == 0 }
    }
}

/// What a fill took from one container.
#[derive(Debug, Clone, PartialEq)]
pub struct FromContainer {
    /// The product.
    pub product_id: Uuid,
    /// The container.
    pub container_id: Uuid,
    /// Its batch, as it stood on the shelf then.
    pub batch: String,
    /// How much.
    pub amount: ProductAmount,
}

/// How the operator puts right what a pass showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CorrectionKind {
    /// More water, no product.
    AddWater,
    /// Less water in the fills still to be made, no product.
    LessWater,
    /// Fewer passes.
    FewerPasses,
    /// One pass more.
    MorePasses,
    /// Go on as planned.
    AsPlanned,
}

/// How the rest is used up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UseUpKind {
    /// Diluted to one more whole pass.
    WholePass,
    /// On the smallest area where the dose still allows it.
    Part,
    /// Nothing to speak of is left, or it goes into a closed container for the next lawful use.
    None,
}

/// Why a visit was stopped for good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StopReason {
    /// The weather turned.
    Weather,
    /// Something broke.
    Equipment,
    /// The client changed their mind.
    Client,
    /// Somebody is unwell.
    Health,
    /// The rest is treated on another day.
    AnotherDay,
    /// The visit only looked back on an earlier one: nothing was to be treated.
    LookedBack,
    /// Something else.
    Other,
}

/// The signature under a record.
#[derive(Debug, Clone, PartialEq)]
pub struct Signature {
    /// Name and certificate of the person who signed, erasable.
    pub by: NoteRef,
    /// Why the use differed, when it did.
    pub cause: Option<Cause>,
    /// Advice given to the client: codes.
    pub advice: Vec<Code>,
    /// When to look back.
    pub look_back_on: Option<NaiveDate>,
    /// A note for next time.
    pub note: Option<NoteRef>,
    /// Real use over planned use, when it was learned from at least one whole pass.
    pub learned_factor: Option<f64>,
}

/// Ground kept dry along edges because the wind blows towards them.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptBack {
    /// The width; none when the ground was given back.
    pub width: Length,
    /// The edges: part and side, counted from 0.
    pub sides: Vec<(usize, usize)>,
}

impl KeptBack {
    /// Whether ground is kept dry along this side.
    pub fn covers(&self, part_idx: usize, side_idx: usize) -> bool {
        self.width > Length::ZERO && self.sides.contains(&(part_idx, side_idx))
    }
}

/// A figure as it was typed, beside the value that was worked out from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TypedFigure {
    /// The field it was typed into.
    pub field: Code,
    /// The text and its unit.
    pub figure: Figure,
}
