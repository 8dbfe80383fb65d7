//! What an operator does in a visit: the one list of acts that `Ask::Act` may carry.
//!
//! An act names what was done, never what follows from it: that is decided by the trade and comes back as a view.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::figures::Typed;
use super::mixing::{MixWaterInput, PartnerAmountInput};
use super::plan::PlanChoice;
use super::stock::FillContainerInput;
use super::visit::{AssessInput, CloseInput, WeatherInput};

/// What an operator does in a visit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[expect(clippy::large_enum_variant, reason = "one is on its way at a time, and a box saves nothing")]
#[serde(tag = "act", rename_all = "snake_case")]
pub enum Act {
    /// Answer whether a treatment is right.
    Assess {
        /// The answers.
        input: AssessInput,
    },
    /// Take a product; its label is frozen into the visit.
    ChooseProduct {
        /// The product.
        product_id: String,
    },
    /// Take a kit; its calibration is frozen into the visit.
    ChooseKit {
        /// The kit.
        kit_id: String,
    },
    /// Agree to a plan; it is frozen into the visit.
    AgreePlan {
        /// The choice it is made from.
        choice: PlanChoice,
    },
    /// The site of the next lawn was looked at: begin it.
    BeginNextLawn,
    /// Leave out the lawn that was come to.
    LeaveLawnOut,
    /// Let a product share the tank.
    AddPartner {
        /// The product.
        product_id: String,
        /// Its dose; empty text is its label's.
        dose: Typed,
    },
    /// Leave a partner out again.
    LeaveOutPartner {
        /// The product.
        product_id: String,
    },
    /// Write down the water to mix with.
    SeeWater {
        /// What was seen.
        input: MixWaterInput,
    },
    /// Say what the jar showed.
    JarTested {
        /// `fine`, `heat`, `clumps` or `layers`.
        outcome: String,
        /// More words, if any.
        #[serde(default)]
        note: String,
    },
    /// Tick all that is open of one group; it is taken back as one.
    TickAll {
        /// `ready`, `mix` or `wash`.
        list: String,
        /// The group's code.
        group: String,
    },
    /// Tick or untick an item of the ready list.
    TickReady {
        /// The item.
        item: String,
        /// Ticked or not.
        on: bool,
    },
    /// Write down the weather.
    SeeWeather {
        /// What was seen.
        input: WeatherInput,
    },
    /// Keep ground dry along the edges that the wind blows towards; the plan is made anew. Zero gives it back.
    KeepBack {
        /// The width.
        width: Typed,
    },
    /// Pass an advisory or own Stop with a reason.
    PassAdvisory {
        /// The rule.
        rule: String,
        /// The reason, which goes into the record.
        reason: String,
    },
    /// Everything is ready: mix.
    BeginMixing,
    /// Tick a mixing step.
    TickMix {
        /// The step.
        item: String,
        /// Ticked or not.
        on: bool,
    },
    /// The tank is made up.
    FillMade {
        /// Product really measured; empty text is as planned.
        product: Typed,
        /// Volume really in the tank now; empty text is as planned.
        volume: Typed,
        /// What was really measured of partners; one that is not named is as planned.
        #[serde(default)]
        partners: Vec<PartnerAmountInput>,
        /// The containers that it was taken from; a product without one is taken off none.
        #[serde(default)]
        containers: Vec<FillContainerInput>,
    },
    /// This strip is done.
    StripDone,
    /// This pass, or the rest of it, is done, and the tank differs from the plan: what is left is asked.
    PassDone,
    /// This pass, or the rest of it, is done, and the tank holds what the plan says.
    PassDoneAsPlanned,
    /// The tank needs its next fill now.
    Refill,
    /// What is left in the tank before a refill in mid-pass.
    ReadLeft {
        /// Litres left; empty text is as planned.
        left: Typed,
    },
    /// The tank ran dry before the pass was done and no fill is left.
    RanShort {
        /// Strips of this pass that were wholly done.
        strips_done: u32,
    },
    /// Stop spraying for now.
    Pause {
        /// `wind`, `rain`, `person_or_animal`, `phone`, `equipment`, `weather` or `other`.
        reason: String,
        /// More words, if any.
        note: String,
    },
    /// Say why it was stopped, once it stands still.
    TellPauseReason {
        /// As for a pause.
        reason: String,
        /// More words, if any.
        note: String,
    },
    /// Go on; the items named were looked at again.
    Resume {
        /// Items looked at again.
        seen: Vec<String>,
    },
    /// What is left in the tank after the pass.
    TankLeft {
        /// Litres left; empty text is as planned.
        left: Typed,
    },
    /// Say why the pass took clearly more or less than it should.
    TellCause {
        /// A code of those that were offered.
        cause: String,
        /// More words, if any.
        note: String,
    },
    /// Choose how to put it right.
    Correct {
        /// `add_water`, `fewer_passes`, `more_passes` or `as_planned`.
        choice: String,
    },
    /// Choose how to use up what is left.
    UseUp {
        /// `whole_pass`, `part` or `none`.
        choice: String,
    },
    /// Tick a washing step.
    TickWash {
        /// The step.
        item: String,
        /// Ticked or not.
        on: bool,
    },
    /// Washing is done.
    WashDone,
    /// Stop the visit for good; it becomes a part record.
    StopForGood {
        /// `weather`, `equipment`, `client`, `health`, `another_day` or `other`.
        reason: String,
        /// More words, if any.
        note: String,
    },
    /// Sign and close.
    Close {
        /// Name, certificate and the rest.
        input: CloseInput,
    },
    /// Take back the last step.
    Undo,
    /// Take back a step and all after it.
    UndoTo {
        /// The step's command.
        command_id: String,
    },
}
