//! Everything a screen may ask, and everything it may be told.
//!
//! There is one door: an `Ask` goes in, an `Answer` of the matching kind comes out, or a `Failure` from a small closed
//! set of codes. Asking twice is harmless: whoever makes an entry names its id, and every act carries a command id.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::drawing::PointM;
use super::figures::{FieldProblem, Said, Typed};
use super::home::HomeView;
use super::kit::{CalibrationInput, CalibrationView, CleaningInput, KitAnswersView, KitInput, KitView};
use super::label::{LabelPageView, LabelVersionsView};
use super::lawn::{FileView, ImportedView, LawnInput, LawnView};
use super::limits::{LimitsInput, LimitsView};
use super::product::{ProductInput, ProductView};
use super::record::RecordView;
use super::register::{ClientInput, OperatorInput};
use super::stock::{ContainerInput, ContainerView, ShelfView, StockCountInput};
use super::visit::{Act, PlanChoice, PlanView, VisitView};

/// A question or a request.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum Ask {
    /// The first screen.
    Home,
    /// Put a damaged file aside and start a new one.
    PutAsideDamaged,
    /// The operator.
    Operator,
    /// Keep the operator.
    SaveOperator {
        /// The form.
        input: OperatorInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// The profiles of weather limits, the own one as typed.
    Limits {
        /// The form.
        input: LimitsInput,
    },
    /// All clients.
    Clients,
    /// Keep a client.
    SaveClient {
        /// Its id, made by whoever makes the entry.
        client_id: String,
        /// The form.
        input: ClientInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// What the trade makes of a lawn while it is typed.
    PreviewLawn {
        /// The form.
        input: LawnInput,
    },
    /// A lawn kept.
    Lawn {
        /// Which.
        lawn_id: String,
    },
    /// Keep a lawn.
    SaveLawn {
        /// Its id.
        lawn_id: String,
        /// The form.
        input: LawnInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// What a file of outlines holds, as parts for a lawn's form. Answered with [`Answer::Imported`]. Nothing is kept.
    ImportOutline {
        /// `geojson` or `gpx`.
        kind: String,
        /// The file's text.
        text: String,
        /// The form that it is brought into: what lies there already keeps its place, and the file's ground is laid
        /// beside it. Without one the file lies in a frame of its own.
        #[serde(default)]
        lawn: Option<LawnInput>,
        /// The part of that form whose place the first ring takes.
        #[serde(default)]
        part_idx: u32,
    },
    /// A lawn's outline as a GeoJSON file. Answered with [`Answer::File`].
    ExportLawn {
        /// The lawn.
        lawn_id: String,
    },
    /// The form with one corner of one part moved. Answered with [`Answer::Moved`]. Nothing is kept.
    MoveCorner {
        /// The form before.
        input: LawnInput,
        /// Which part, counted from 0.
        part_idx: u32,
        /// Which corner of it, counted from 0.
        corner_idx: u32,
        /// Where to, in metres of the lawn's frame.
        to: PointM,
        /// Whether the corner jumps to a right or straight angle that is near.
        snap: bool,
    },
    /// What the trade makes of a label while it is typed.
    PreviewProduct {
        /// The form.
        input: ProductInput,
    },
    /// All products.
    Products,
    /// A product kept.
    Product {
        /// Which.
        product_id: String,
    },
    /// Keep a product: a new version of its label.
    SaveProduct {
        /// Its id.
        product_id: String,
        /// The id of this label version.
        label_id: String,
        /// The form.
        input: ProductInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// The versions of a product's label, with what each changed. Answered with [`Answer::LabelVersions`].
    LabelVersions {
        /// The product.
        product_id: String,
    },
    /// One version of a label, to be read. Answered with [`Answer::LabelVersion`].
    LabelVersion {
        /// The version.
        label_id: String,
    },
    /// What the trade makes of a kit while it is typed.
    PreviewKit {
        /// The form.
        input: KitInput,
    },
    /// All kits.
    Kits,
    /// A kit kept.
    Kit {
        /// Which.
        kit_id: String,
    },
    /// Keep a kit.
    SaveKit {
        /// Its id.
        kit_id: String,
        /// The form.
        input: KitInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// What the trade makes of a calibration while it is typed.
    PreviewCalibration {
        /// The kit.
        kit_id: String,
        /// The form.
        input: CalibrationInput,
    },
    /// Keep a calibration: it becomes the kit's current one.
    SaveCalibration {
        /// The kit.
        kit_id: String,
        /// The id of this calibration.
        calibration_id: String,
        /// The form.
        input: CalibrationInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// Sign that a sprayer was cleaned after what was last in it.
    SignCleaning {
        /// The kit.
        kit_id: String,
        /// The id of this cleaning.
        cleaning_id: String,
        /// What was done, and who signs.
        input: CleaningInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// Ask a kit from the other end: which pace, how many passes, which nozzle.
    KitQuestions {
        /// The kit.
        kit_id: String,
        /// The wanted volume per area, of all passes together.
        wanted: Typed,
        /// In so many passes.
        n_passes: u32,
        /// The pace to walk; empty for the calibrated one.
        pace: Typed,
    },
    /// Everything on the shelf, by product. Answered with [`Answer::Shelf`].
    Shelf,
    /// What the trade makes of a container while it is typed. Answered with [`Answer::Container`].
    PreviewContainer {
        /// The form.
        input: ContainerInput,
    },
    /// A container kept, taken out or not.
    Container {
        /// Which.
        container_id: String,
    },
    /// Keep a container. Answered with [`Answer::Container`], as are the next three.
    SaveContainer {
        /// Its id.
        container_id: String,
        /// The form.
        input: ContainerInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// Take a container off the shelf: empty, given back or disposed of.
    TakeOutContainer {
        /// Which.
        container_id: String,
    },
    /// Put a container back that was taken out.
    PutBackContainer {
        /// Which.
        container_id: String,
    },
    /// Keep what somebody counted in a container.
    CountContainer {
        /// Which.
        container_id: String,
        /// The id of this count.
        count_id: String,
        /// The form.
        input: StockCountInput,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// Open a visit to a lawn.
    OpenVisit {
        /// Its id.
        visit_id: String,
        /// The command's id: a retry does nothing twice.
        command_id: String,
        /// The lawn.
        lawn_id: String,
        /// The visit of which only the rest is to be treated, when it was broken off.
        #[serde(default)]
        rest_of: Option<String>,
    },
    /// A visit as it stands.
    Visit {
        /// Which.
        visit_id: String,
    },
    /// What a plan would be.
    PreviewPlan {
        /// The visit.
        visit_id: String,
        /// The choice.
        choice: PlanChoice,
    },
    /// Do something in a visit.
    Act {
        /// Which.
        visit_id: String,
        /// The command's id: a retry does nothing twice.
        command_id: String,
        /// The state the screen saw.
        expected_seq: u32,
        /// What is done.
        act: Act,
        /// Draft to clear with it.
        draft_key: Option<String>,
    },
    /// A visit's record.
    Record {
        /// Which.
        visit_id: String,
    },
    /// What to do when something goes wrong; in a visit, with its product's words.
    Emergency {
        /// The visit, if one is open.
        visit_id: Option<String>,
    },
    /// Keep a half-typed form.
    PutDraft {
        /// Its key, such as `lawn:ID`.
        key: String,
        /// The form as JSON text.
        body: String,
    },
    /// A half-typed form.
    Draft {
        /// Its key.
        key: String,
    },
    /// Throw a half-typed form away, on the operator's word.
    ClearDraft {
        /// Its key.
        key: String,
    },
}

/// An entry of a list.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct Kept<T: TS> {
    /// Its id.
    pub id: String,
    /// What is kept.
    pub entry: T,
}

/// First aid and numbers to ring.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct EmergencyView {
    /// Whom to ring, as the operator wrote them, a line each.
    pub contacts: Vec<String>,
    /// The words of each product that may be in the tank: the visit's one, or all kept.
    pub products: Vec<EmergencyWords>,
}

/// A product's first-aid words.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct EmergencyWords {
    /// The product.
    pub name: String,
    /// Its authorisation number, to read out.
    pub authorisation_number: String,
    /// Hazard words of the label.
    pub hazard: String,
    /// Splash.
    pub splash: String,
    /// Spill.
    pub spill: String,
    /// Swallowed.
    pub swallowed: String,
}

/// What a plan would be, or why there is none.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct PlanPreview {
    /// The choice as understood.
    pub choice: PlanChoice,
    /// The plan.
    pub plan: Option<Box<PlanView>>,
    /// Why there is none.
    pub problems: Vec<FieldProblem>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[allow(
    clippy::large_enum_variant,
    reason = "one is on its way at a time, and a box saves nothing, whichever is largest"
)]
#[serde(tag = "answer", content = "value", rename_all = "snake_case")]
pub enum Answer {
    /// The first screen.
    Home(HomeView),
    /// The operator.
    Operator(OperatorInput),
    /// The profiles of weather limits.
    Limits(LimitsView),
    /// All clients.
    Clients(Vec<Kept<ClientInput>>),
    /// A lawn, kept or previewed.
    Lawn(LawnView),
    /// What a file held.
    Imported(ImportedView),
    /// A file to be handed out.
    File(FileView),
    /// A lawn's form with a corner moved; the view holds the form.
    Moved(LawnView),
    /// All products.
    Products(Vec<Kept<ProductView>>),
    /// A product, kept or previewed.
    Product(ProductView),
    /// The versions of a product's label.
    LabelVersions(LabelVersionsView),
    /// One version of a label.
    LabelVersion(LabelPageView),
    /// All kits.
    Kits(Vec<Kept<KitView>>),
    /// A kit, kept or previewed.
    Kit(KitView),
    /// A calibration, kept or previewed.
    Calibration(CalibrationView),
    /// A kit's answers from the other end.
    KitAnswers(KitAnswersView),
    /// The shelf.
    Shelf(ShelfView),
    /// A container, kept or previewed.
    Container(ContainerView),
    /// A visit.
    Visit(Box<VisitView>),
    /// A plan to look at.
    Plan(PlanPreview),
    /// A record.
    Record(Box<RecordView>),
    /// What to do when something goes wrong.
    Emergency(EmergencyView),
    /// A half-typed form, if there is one.
    Draft(Option<String>),
    /// It is done; nothing more to say.
    Done,
}

/// The closed set of what can go wrong at the door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum FailureCode {
    /// A field is wrong: see `problems`.
    Refused,
    /// A check stands in the way: see `said`.
    Barred,
    /// The screen saw an older state: ask again and draw that.
    Stale,
    /// There is no such thing.
    NotFound,
    /// The file is from a newer version, or the visit holds what this version does not know: reading only.
    ReadOnly,
    /// The disk is full.
    NoRoom,
    /// The file cannot be written.
    CannotWrite,
    /// The file is damaged.
    Damaged,
    /// Another program holds the file.
    Busy,
    /// The request itself makes no sense: a fault of the program.
    Malformed,
}

/// What went wrong, and what to do.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct Failure {
    /// Which kind.
    pub code: FailureCode,
    /// What to do, in words.
    pub said: Said,
    /// Field by field.
    pub problems: Vec<FieldProblem>,
    /// Checks that stand in the way.
    pub checks: Vec<super::figures::CheckView>,
}
