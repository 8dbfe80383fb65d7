//! Kits in the register: their calibrations, each kept with what it was made with, the cleaning that is signed, and the
//! questions asked from the other end.
//!
//! Invariant: a signature holds for what was last in the sprayer when it was given; whatever goes in afterwards ends it.

use evensward_core::checks::kit::{calibration_kit, calibration_repeats, nozzle_wear};
use evensward_core::checks::water::pace_walkable;
use evensward_core::kit::{Calibration, Kit, SetUp, flow_for, pace_for, passes_for, share_of_pass, sizes_for};
use evensward_core::plan::Walkable;
use evensward_core::quantity::{Arg, Pace, Said, VolumePerArea};
use evensward_format::register::{CALIBRATION, CLEANING, Entry, ImmutableEntry};
use serde_json::{Value, json};
use uuid::Uuid;

use super::{Edit, KIT, fields_of, form_from, form_from_body, pointer, text_of};
use crate::dto::ask::Failure;
use crate::dto::figures::Typed;
use crate::dto::kit::{
    CalibrationInput, CalibrationPoint, CalibrationView, CleaningInput, KitAnswersView, KitInput, KitView, PassesView,
    SizeView,
};
use crate::forms::calibration::Made;
use crate::forms::kit::Beside;
use crate::forms::{self, Problems};
use crate::{Companion, show};

/// The kit's field that names its current calibration.
const CURRENT_CALIBRATION: &str = "current_calibration";
/// The kit's field that names the cleaning signed after what was last in it.
const CURRENT_CLEANING: &str = "current_cleaning";
/// A calibration's key beside its form: the kit's form as it stood, as far as a calibration depends on it.
const MADE_WITH: &str = "made_with";
/// The fields of a kit's form that a calibration depends on.
const MADE_WITH_FIELDS: &[&str] = &[
    "nozzle",
    "nozzle_by",
    "nozzle_size",
    "rated_flow",
    "rated_pressure",
    "fan_angle",
    "pattern",
    "height",
    "pressure",
    "valve",
    "swath",
    "swath_by",
    "paving",
];
/// The most passes that are asked about.
const MOST_PASSES: u32 = 12;
/// So many passes are told at least.
const PASSES_TOLD: u32 = 6;

/// A calibration as it is kept.
pub(crate) struct KeptCalibration {
    pub id: Uuid,
    pub typed: CalibrationInput,
    /// What it was made with; not known of one kept before this was written down.
    pub made_with: Option<SetUp>,
}

impl KeptCalibration {
    fn from_entry(made: &ImmutableEntry) -> Result<Self, Failure> {
        let typed = form_from_body(&made.body)?;
        let body: Value = serde_json::from_str(&made.body).map_err(|error| Failure::unreadable(error.to_string()))?;
        let made_with = match body.get(MADE_WITH) {
            None | Some(Value::Null) => None,
            Some(kit) => forms::head::set_up(&form_from_body(&kit.to_string())?),
        };
        Ok(Self { id: made.entry_id, typed, made_with })
    }

    fn parse(&self) -> Result<Calibration, Failure> {
        forms::calibration::parse(&self.typed, self.made_with.clone(), Made::Before).map_err(Failure::refused)
    }
}

impl Companion {
    /// A kit as typed and its current calibration, if it has one.
    pub(crate) fn kit_of(&self, entry: &Entry) -> Result<(KitInput, Option<KeptCalibration>), Failure> {
        let calibration = match pointer(entry, CURRENT_CALIBRATION)? {
            None => None,
            Some(calibration_id) => {
                let made = self.store.immutable(calibration_id)?.ok_or_else(|| Failure::not_found("calibration"))?;
                Some(KeptCalibration::from_entry(&made)?)
            }
        };
        Ok((form_from(&entry.fields)?, calibration))
    }

    /// The cleaning that was signed after what was last in a kit.
    fn cleaning_of(&self, entry: &Entry) -> Result<Option<CleaningInput>, Failure> {
        let Some(cleaning_id) = pointer(entry, CURRENT_CLEANING)? else { return Ok(None) };
        let signed = self.store.immutable(cleaning_id)?.ok_or_else(|| Failure::not_found("cleaning"))?;
        form_from_body(&signed.body).map(Some)
    }

    fn parsed_kit(&self, entry: &Entry, input: &KitInput) -> Result<Kit, Failure> {
        let kit = forms::kit::parse(input).map_err(Failure::refused)?;
        let clean_signed_on = self.cleaning_of(entry)?.and_then(|cleaning| cleaning.on.trim().parse().ok());
        Ok(Kit { clean_signed_on, ..kit })
    }

    /// A kit as typed and as the trade takes it, with its current calibration if it has one.
    ///
    /// # Errors
    /// When there is no such kit, or a form no longer stands.
    #[expect(clippy::type_complexity, reason = "each part is the form beside what it came to")]
    pub fn load_kit(
        &self,
        kit_id: Uuid,
    ) -> Result<(KitInput, Kit, Option<(Uuid, CalibrationInput, Calibration)>), Failure> {
        let entry = self.entry(KIT, kit_id)?;
        let (input, kept) = self.kit_of(&entry)?;
        let kit = self.parsed_kit(&entry, &input)?;
        let calibration = match kept {
            None => None,
            Some(kept) => {
                let parsed = kept.parse()?;
                Some((kept.id, kept.typed, parsed))
            }
        };
        Ok((input, kit, calibration))
    }

    /// The kit's view with all that stands beside it.
    pub(crate) fn kit_view(&self, entry: &Entry) -> Result<KitView, Failure> {
        let (input, kept) = self.kit_of(entry)?;
        let today = self.today();
        let now = forms::head::set_up(&input);
        let mut checks = Vec::new();
        if let (Some(kept), Some(now)) = (&kept, &now)
            && let Ok(calibration) = kept.parse()
        {
            let evidence = calibration.evidence.as_ref();
            checks.extend([calibration_kit(evidence, now), calibration_repeats(evidence)]);
            let read = evidence.and_then(|evidence| evidence.pressure);
            checks.extend(now.head.nominal(read).map(|nominal| nozzle_wear(calibration.flow, nominal)));
        }
        let calibration = kept.as_ref().map(|kept| {
            let made_with = kept.made_with.as_ref().or(now.as_ref());
            forms::calibration::view(&kept.typed, made_with, today, Made::Before)
        });
        let history = self.calibrations(entry.entry_id, kept.map(|kept| kept.id), now.as_ref())?;
        let beside = Beside { calibration, history, checks, cleaning: self.cleaning_of(entry)? };
        Ok(forms::kit::view(&input, beside, today))
    }

    /// A kit's calibrations, the oldest first, each with what ended it.
    fn calibrations(
        &self,
        kit_id: Uuid,
        current: Option<Uuid>,
        now: Option<&SetUp>,
    ) -> Result<Vec<CalibrationPoint>, Failure> {
        let kept = self.store.immutables(CALIBRATION, kit_id)?;
        let kept = Self::readable(kept.iter().map(|made| {
            let kept = KeptCalibration::from_entry(made)?;
            let parsed = kept.parse()?;
            Ok((kept, parsed))
        }))?;
        let mut points = Vec::new();
        for (idx, (made, calibration)) in kept.iter().enumerate() {
            let is_current = current == Some(made.id);
            let next = kept.get(idx + 1).and_then(|(next, _)| next.made_with.as_ref());
            let changed = made.made_with.as_ref().zip(if is_current { now } else { next });
            let ended =
                changed.and_then(|(made_with, then)| made_with.ended_by(then)).map(|ended| Said::new(ended.code()));
            let ended =
                if is_current { ended } else { ended.or_else(|| Some(Said::new("calibration-ended-by-later"))) };
            let read = calibration.evidence.as_ref().and_then(|evidence| evidence.pressure);
            let nominal = made.made_with.as_ref().and_then(|made_with| made_with.head.nominal(read));
            points.push(CalibrationPoint {
                calibration_id: made.id.to_string(),
                made_on: made.typed.made_on.clone(),
                flow: show::flow(calibration.flow),
                pace: show::pace(calibration.pace),
                percent_of_nominal: nominal.map(|nominal| calibration.flow.l_per_min() / nominal.l_per_min() * 100.0),
                is_current,
                ended_by: ended.as_ref().map(show::said),
            });
        }
        points.sort_by(|a, b| a.made_on.cmp(&b.made_on));
        Ok(points)
    }

    /// A calibration's view on a kit while it is typed.
    pub(crate) fn calibration_view(&self, kit: &KitInput, typed: &CalibrationInput) -> CalibrationView {
        forms::calibration::view(typed, forms::head::set_up(kit).as_ref(), self.today(), Made::Now)
    }

    pub(crate) fn save_kit(&mut self, kit_id: Uuid, input: &KitInput, draft_key: Option<&str>) -> Result<(), Failure> {
        let mut problems = forms::kit::parse(input).err().unwrap_or_default();
        let kept = self.store.entry(KIT, kit_id)?;
        let before: Option<KitInput> = kept.as_ref().map(|entry| form_from(&entry.fields)).transpose()?;
        let is_other = before.as_ref().is_some_and(|before| before.last_in != input.last_in);
        let is_signed = match &kept {
            Some(entry) => pointer(entry, CURRENT_CLEANING)?.is_some(),
            None => false,
        };
        // What kills a lawn leaves a sprayer by a signed cleaning, never by another answer in a form.
        if is_other && !is_signed && before.is_some_and(|before| before.last_in == "total_herbicide") {
            problems.push(show::problem("last_in", &Said::new("sign-the-cleaning-first")));
        }
        if !problems.is_empty() {
            return Err(Failure::refused(problems));
        }
        let mut fields = fields_of(input)?;
        if is_signed && (is_other || !input.cleaned) {
            fields.insert(CURRENT_CLEANING.to_owned(), Value::Null);
        }
        self.keep(KIT, kit_id, Edit { fields, clear_draft: draft_key, ..Edit::default() })
    }

    /// Writes down what is in a kit now: `last_in` and `cleaned` as the kit's form names them, and the product's name.
    ///
    /// # Errors
    /// When there is no such kit, the form refuses the code, or the file can't be written.
    pub fn set_last_in(
        &mut self,
        kit_id: Uuid,
        last_in: &str,
        product: Option<&str>,
        cleaned: bool,
    ) -> Result<(), Failure> {
        let (mut input, _) = self.kit_of(&self.entry(KIT, kit_id)?)?;
        last_in.clone_into(&mut input.last_in);
        product.unwrap_or_default().clone_into(&mut input.last_product);
        input.cleaned = cleaned;
        self.save_kit(kit_id, &input, None)
    }

    pub(crate) fn save_calibration(
        &mut self,
        kit_id: Uuid,
        calibration_id: Uuid,
        input: &CalibrationInput,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        let (kit, _) = self.kit_of(&self.entry(KIT, kit_id)?)?;
        forms::calibration::parse(input, None, Made::Now).map_err(Failure::refused)?;
        // A late retry finds the kit as it is now; what it was made with stands as it was kept the first time.
        let made_with = match self.store.immutable(calibration_id)? {
            Some(made) => serde_json::from_str::<Value>(&made.body)
                .map_err(|error| Failure::unreadable(error.to_string()))?
                .get(MADE_WITH)
                .cloned(),
            None => {
                let fields = fields_of(&kit)?;
                let kept = fields.into_iter().filter(|(name, _)| MADE_WITH_FIELDS.contains(&name.as_str()));
                Some(Value::Object(kept.collect()))
            }
        };
        let mut fields = fields_of(input)?;
        fields.extend(made_with.map(|made_with| (MADE_WITH.to_owned(), made_with)));
        let body = Value::Object(fields.into_iter().collect()).to_string();
        self.keep_current((KIT, CURRENT_CALIBRATION), kit_id, (CALIBRATION, calibration_id), body, draft_key)
    }

    /// Signs that a sprayer was cleaned after what was last in it.
    pub(crate) fn sign_cleaning(
        &mut self,
        kit_id: Uuid,
        cleaning_id: Uuid,
        input: &CleaningInput,
        draft_key: Option<&str>,
    ) -> Result<(), Failure> {
        self.entry(KIT, kit_id)?;
        forms::cleaning::check(input, self.today()).map_err(Failure::refused)?;
        let body = Value::Object(fields_of(input)?.into_iter().collect()).to_string();
        let mut edit = Edit { clear_draft: draft_key, ..Edit::default() };
        // A late retry must not make a sprayer clean again that was used since.
        if let Some(signed) = self.once(CLEANING, cleaning_id, kit_id, body)? {
            edit.immutables.push(signed);
            edit.fields.insert(CURRENT_CLEANING.to_owned(), text_of(cleaning_id));
            edit.fields.insert("cleaned".to_owned(), json!(true));
        }
        self.keep(KIT, kit_id, edit)
    }

    /// The pace, the passes and the nozzles for a wanted volume.
    pub(crate) fn kit_questions(
        &self,
        kit_id: Uuid,
        wanted: &Typed,
        n_passes: u32,
        pace: &Typed,
    ) -> Result<KitAnswersView, Failure> {
        let (input, kept) = self.kit_of(&self.entry(KIT, kit_id)?)?;
        let set_up = forms::head::set_up(&input);
        let calibration = kept.and_then(|kept| kept.parse().ok());
        let mut problems = Problems::default();
        let wanted = problems.figure("wanted", wanted, VolumePerArea::from_figure);
        let n_passes = Some(n_passes).filter(|n_passes| (1..=MOST_PASSES).contains(n_passes));
        if n_passes.is_none() {
            problems.add("n_passes", &Said::new("kit-passes-out-of-range").with("limit", Arg::Count(MOST_PASSES)));
        }
        let typed_pace = problems.optional("pace", pace, Pace::from_figure);
        let walkable = Walkable::default();
        let mut answers = KitAnswersView {
            problems: Vec::new(),
            pace_for: None,
            pace_check: None,
            passes: Vec::new(),
            sizes: Vec::new(),
        };
        if let (Some(wanted), Some(n_passes), Some(set_up)) = (wanted, n_passes, &set_up) {
            let share = share_of_pass(wanted, n_passes);
            if let Some(calibration) = &calibration {
                let found = pace_for(calibration.flow, set_up.swath, share);
                answers.pace_for = found.map(show::pace);
                answers.pace_check = found.map(|pace| show::check(&pace_walkable(pace, walkable), None));
                let rates = (calibration.flow, calibration.pace, set_up.swath);
                let passes = passes_for(rates, wanted, walkable, n_passes.max(PASSES_TOLD));
                answers.passes = passes.into_iter().map(passes_view).collect();
            }
            let own_pace = calibration.as_ref().map(|calibration| calibration.pace);
            if let Some(pace) = typed_pace.and_then(|typed| typed.or(own_pace)) {
                let sizes = sizes_for(flow_for(pace, set_up.swath, share), set_up.head.pressure);
                answers.sizes = sizes.iter().map(size_view).collect();
            } else if typed_pace.is_some() {
                problems.add("pace", &Said::new("kit-not-calibrated"));
            }
        }
        answers.problems = problems.into_list();
        Ok(answers)
    }
}

fn passes_view(passes: evensward_core::kit::PassesFor) -> PassesView {
    PassesView {
        n_passes: passes.n_passes,
        total: show::per_area(passes.total),
        pace: show::pace(passes.pace),
        is_walkable: passes.is_walkable,
    }
}

fn size_view(size: &evensward_core::kit::SizeFor) -> SizeView {
    SizeView {
        size: size.size.size.to_owned(),
        colour: size.size.colour.to_owned(),
        flow: show::flow(size.flow),
        pressure: show::pressure(size.pressure),
        is_fitting: size.is_fitting,
    }
}
