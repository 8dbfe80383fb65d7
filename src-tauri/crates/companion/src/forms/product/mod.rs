//! The form of a product's label: what it is, its dose, water and limits, as the operator copied them.
//!
//! What the law needs of a plant protection product (its authorisation number, its highest dose) must be there; what
//! a label may leave out stays empty and is never guessed. Limits without a tag of their own in the form (keep-off,
//! margin to water, concentration) bind by law on a plant protection product and are advice on anything else.
//! A second look is asked for where a figure is possible and unlikely: these thresholds are common practice, no source.

mod contents;
mod limits;
mod second_look;
mod words;

use chrono::NaiveDate;
use evensward_core::product::{
    FirstAid, Form, Label, LegalClass, Protective, ProtectiveByPhase, Purpose, Rain, Tag, WaterRange, Year,
    slip_of_dose, slips_of_water,
};
use evensward_core::quantity::{
    Arg, Concentration, Density, Figure, Length, ProductDose, ProductKind, Said, Span, VolumePerArea,
};

use self::contents::Contents;
pub(crate) use self::limits::SITUATIONS;
use self::limits::{Limits, Placed};
pub(crate) use self::words::{changes, sections};
use super::Problems;
use crate::dto::figures::{FieldProblem, Shown};
use crate::dto::product::{ProductInput, ProductView};
use crate::show;

const LEGAL_CLASSES: &[(&str, LegalClass)] = &[
    ("plant_protection", LegalClass::PlantProtection),
    ("fertiliser", LegalClass::Fertiliser),
    ("wetting_agent", LegalClass::WettingAgent),
    ("other", LegalClass::Other),
];

/// The codes of what a treatment is for.
pub(crate) const PURPOSES: &[(&str, Purpose)] = &[
    ("weeds", Purpose::Weeds),
    ("moss", Purpose::Moss),
    ("disease", Purpose::Disease),
    ("pests", Purpose::Pests),
    ("growth", Purpose::Growth),
    ("feeding", Purpose::Feeding),
    ("colour", Purpose::Colour),
    ("water", Purpose::Water),
];

const FORMS: &[(&str, Form)] = &[("liquid", Form::Liquid), ("crystals", Form::Crystals), ("granules", Form::Powder)];

const TAGS: &[(&str, Tag)] = &[("statutory", Tag::Statutory), ("advisory", Tag::Advisory), ("own", Tag::Own)];

const YEARS: &[(&str, Year)] = &[("calendar", Year::Calendar), ("rolling", Year::Rolling)];

const PROTECTIVE: &[(&str, Protective)] = &[
    ("gloves", Protective::Gloves),
    ("coverall", Protective::Coverall),
    ("boots", Protective::Boots),
    ("face_shield", Protective::FaceShield),
    ("glasses", Protective::Glasses),
    ("apron", Protective::Apron),
    ("respirator", Protective::Respirator),
];

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum RainWords {
    Free,
    Wanted,
    NotStated,
}

const RAIN: &[(&str, RainWords)] =
    &[("free_hours", RainWords::Free), ("wanted", RainWords::Wanted), ("not_stated", RainWords::NotStated)];

/// From this many times the dose on, a highest dose looks like a slipped point.
const HIGHEST_OVER_DOSE: f64 = 5.0;
/// Product that is more than this share of the mixture looks like a wrong unit.
const SHARE_OF_MIXTURE: f64 = 0.25;

/// The label as the trade takes it, or everything that is wrong with the form.
pub(crate) fn parse(input: &ProductInput) -> Result<Label, Vec<FieldProblem>> {
    let (label, _, mut problems) = read(input);
    if let Some(label) = &label {
        contradictions(label, &mut problems);
    }
    problems.give(label)
}

/// Whether a label may be kept as a new version: it stands, and its dose was looked at a second time.
pub(crate) fn check_new(input: &ProductInput) -> Result<(), Vec<FieldProblem>> {
    parse(input)?;
    if second_look::is_seen(input) {
        return Ok(());
    }
    Err(vec![show::problem("dose_seen", &Said::new("look-at-the-dose-again"))])
}

/// The form with what the trade makes of it.
pub(crate) fn view(input: &ProductInput, today: NaiveDate) -> ProductView {
    let (label, figures, mut problems) = read(input);
    if let Some(label) = &label {
        contradictions(label, &mut problems);
    }
    ProductView {
        input: input.clone(),
        problems: problems.into_list(),
        dose_in_units: figures.dose.map(show::dose).unwrap_or_default(),
        highest_dose_in_units: figures.highest_dose.map(show::dose).unwrap_or_default(),
        water_in_units: water_in_units(&figures),
        notes: notes(&figures, label.as_ref(), today).iter().map(show::said).collect(),
        second_look: second_look::questions(input, figures.dose),
        limits: label.as_ref().map(limits::listed).unwrap_or_default(),
    }
}

/// The figures that are shown while the rest of the form is still wrong.
#[derive(Debug, Clone, Copy, Default)]
struct Figures {
    dose: Option<ProductDose>,
    highest_dose: Option<ProductDose>,
    water_min: Option<VolumePerArea>,
    water_max: Option<VolumePerArea>,
}

fn read(input: &ProductInput) -> (Option<Label>, Figures, Problems) {
    let mut problems = Problems::default();
    read_words(input, &mut problems);
    let legal_class = problems.choice("legal_class", &input.legal_class, LEGAL_CLASSES);
    let by_law = legal_tag(legal_class);
    let purposes = problems.choices("purposes", &input.purposes, PURPOSES);
    if input.purposes.is_empty() {
        problems.add("purposes", &Said::new("choose-at-least-one"));
    }
    let form = problems.choice("form", &input.form, FORMS);
    let density = problems.optional("density", &input.density, Density::from_figure);
    let dose = problems.figure("dose", &input.dose, ProductDose::from_figure);
    if dose.is_some_and(|dose| dose.kind() == ProductKind::Mass) && form == Some(Form::Liquid) && density == Some(None)
    {
        problems.add("density", &Said::new("density-needed-for-dose-by-mass"));
    }
    let highest_dose = problems.optional("highest_dose", &input.highest_dose, ProductDose::from_figure);
    if legal_class == Some(LegalClass::PlantProtection) {
        needed_by_law(input, &mut problems);
    }
    let highest_tag = tag(&mut problems, "highest_dose_tag", &input.highest_dose_tag, &highest_dose);
    let water_min = problems.optional("water_min", &input.water_min, VolumePerArea::from_figure);
    let water_max = problems.optional("water_max", &input.water_max, VolumePerArea::from_figure);
    let has_water = Some(water_min.flatten().or(water_max.flatten()));
    let water_tag = tag(&mut problems, "water_tag", &input.water_tag, &has_water);
    let concentration = concentration(&mut problems, input, dose);
    let least_days = problems.count("least_days", &input.least_days, &["day"], 3_660);
    let least_days_tag = tag(&mut problems, "least_days_tag", &input.least_days_tag, &least_days);
    let most_per_year = problems.count("most_per_year", &input.most_per_year, &["times", "count"], 99);
    let most_tag = tag(&mut problems, "most_per_year_tag", &input.most_per_year_tag, &most_per_year);
    let year = match most_per_year {
        // Without a number for a year it does not matter how a year is counted.
        Some(None) => Some(Year::Calendar),
        _ => problems.choice("year", &input.year, YEARS),
    };
    let keep_off = problems.optional("keep_off", &input.keep_off, Span::from_figure);
    let rain = rain(Placed { input, by_law }, &mut problems);
    let mixing = problems.choices("protective_mixing", &input.protective_mixing, PROTECTIVE);
    let spraying = problems.choices("protective_spraying", &input.protective_spraying, PROTECTIVE);
    let washing = problems.choices("protective_washing", &input.protective_washing, PROTECTIVE);
    let water_margin = problems.optional("water_margin", &input.water_margin, Length::from_figure_or_zero);
    let entered_on = problems.date("entered_on", &input.entered_on);
    let placed = Placed { input, by_law };
    let limits = limits::read(placed, &mut problems);
    let contents = contents::read(input, density.flatten(), &mut problems);
    let [keep_off_tag, margin_tag, concentration_tag] = [
        ("keep_off_tag", &input.keep_off_tag),
        ("water_margin_tag", &input.water_margin_tag),
        ("concentration_tag", &input.concentration_tag),
    ]
    .map(|(field, code)| placed.tag(&mut problems, field, code));
    let figures = Figures {
        dose,
        highest_dose: highest_dose.flatten(),
        water_min: water_min.flatten(),
        water_max: water_max.flatten(),
    };
    let label = (|| {
        let (limits, contents): (Limits, Contents) = (limits?, contents?);
        Some(Label {
            name: input.name.trim().to_owned(),
            legal_class: legal_class?,
            purposes: purposes?,
            form: form?,
            density: density?,
            dose: dose?,
            highest_dose: highest_dose?.map(placed.at("highest_dose", highest_tag?)),
            water: WaterRange {
                least: water_min?.map(placed.at("water_min", water_tag?)),
                most: water_max?.map(placed.at("water_max", water_tag?)),
            },
            highest_concentration: concentration?.map(placed.at("highest_concentration", concentration_tag?)),
            least_days: least_days?
                .and_then(|days| u16::try_from(days).ok())
                .map(placed.at("least_days", least_days_tag?)),
            most_per_year: most_per_year?
                .and_then(|most| u8::try_from(most).ok())
                .map(placed.at("most_per_year", most_tag?)),
            year: year?,
            keep_off: keep_off?.map(placed.at("keep_off", keep_off_tag?)),
            rain: rain?,
            mowing: input.mowing_words.trim().to_owned(),
            protective: ProtectiveByPhase { mixing: mixing?, spraying: spraying?, washing: washing? },
            water_margin: water_margin?.map(placed.at("water_margin", margin_tag?)),
            authorisation_number: filled(&input.authorisation_number),
            is_total_herbicide: input.kills_grass,
            contains_iron: input.contains_iron,
            entered_by: input.entered_by.trim().to_owned(),
            entered_on: entered_on?,
            label_version: input.label_version.trim().to_owned(),
            first_aid: FirstAid {
                splash: input.splash_words.clone(),
                spill: input.spill_words.clone(),
                swallowed: input.swallowed_words.clone(),
                whom_to_call: String::new(),
            },
            situations: limits.situations,
            hand_held: limits.hand_held,
            actives: contents.actives,
            formulation: contents.formulation,
            uses: contents.uses,
            least_dose: limits.least_dose,
            most_amount: limits.most_amount,
            months: limits.months,
            least_temperature: limits.least_temperature,
            most_temperature: limits.most_temperature,
            mowing_before: limits.mowing_before,
            mowing_after: limits.mowing_after,
            young_turf: limits.young_turf,
            no_drought: limits.no_drought,
            water_margin_boom: limits.water_margin_boom,
            partners: limits.partners,
            authorised_until: limits.authorised_until,
            use_up_by: limits.use_up_by,
            hazard_words: input.hazard_words.trim().to_owned(),
            analysis: contents.analysis,
            dissolving: contents.dissolving,
        })
    })();
    (label, figures, problems)
}

/// A concentration; per cent are by volume for a liquid and grams in 100 mL for what is weighed.
fn concentration(
    problems: &mut Problems,
    input: &ProductInput,
    dose: Option<ProductDose>,
) -> Option<Option<Concentration>> {
    let read = match dose.map(ProductDose::kind) {
        Some(ProductKind::Mass) => |figure: &Figure| Concentration::from_figure_of(figure, ProductKind::Mass),
        Some(ProductKind::Volume) | None => {
            |figure: &Figure| Concentration::from_figure_of(figure, ProductKind::Volume)
        }
    };
    problems.optional("highest_concentration", &input.highest_concentration, read)
}

fn read_words(input: &ProductInput, problems: &mut Problems) {
    problems.line("name", &input.name);
    problems.line("label_version", &input.label_version);
    problems.line("entered_by", &input.entered_by);
    problems.optional_line("authorisation_number", &input.authorisation_number);
    for (field, words) in [
        ("keep_off_words", &input.keep_off_words),
        ("mowing_words", &input.mowing_words),
        ("splash_words", &input.splash_words),
        ("spill_words", &input.spill_words),
        ("swallowed_words", &input.swallowed_words),
        ("hazard_words", &input.hazard_words),
        ("partners_words", &input.partners_words),
    ] {
        problems.words(field, words);
    }
}

fn needed_by_law(input: &ProductInput, problems: &mut Problems) {
    if filled(&input.authorisation_number).is_none() {
        problems.add("authorisation_number", &Said::new("needed-for-plant-protection"));
    }
    if filled(&input.highest_dose.text).is_none() {
        problems.add("highest_dose", &Said::new("needed-for-plant-protection"));
    }
}

fn filled(text: &str) -> Option<String> {
    let text = text.trim();
    (!text.is_empty()).then(|| text.to_owned())
}

fn legal_tag(legal_class: Option<LegalClass>) -> Tag {
    match legal_class {
        Some(LegalClass::PlantProtection) | None => Tag::Statutory,
        Some(LegalClass::Fertiliser | LegalClass::WettingAgent | LegalClass::Other) => Tag::Advisory,
    }
}

/// The tag of a limit; of a limit that is not there, any will do.
fn tag<T>(problems: &mut Problems, field: &str, code: &str, limit: &Option<Option<T>>) -> Option<Tag> {
    match limit {
        Some(None) => Some(Tag::Statutory),
        Some(Some(_)) | None => problems.choice(field, code, TAGS),
    }
}

fn rain(placed: Placed<'_>, problems: &mut Problems) -> Option<Rain> {
    let input = placed.input;
    let words = problems.choice("rain", &input.rain, RAIN)?;
    if words == RainWords::NotStated {
        return Some(Rain::NotStated);
    }
    let hours = problems.figure("rain_hours", &input.rain_hours, Span::from_figure);
    let tag = problems.choice("rain_tag", &input.rain_tag, TAGS);
    let hours = placed.at("rain_hours", tag?)(hours?);
    Some(if words == RainWords::Free { Rain::Free(hours) } else { Rain::WantedWithin(hours) })
}

/// What the label's figures say against each other, each at the field that is most likely mistyped.
fn contradictions(label: &Label, problems: &mut Problems) {
    for said in label.contradictions() {
        let field = match said.code.as_ref() {
            // These are named at their fields already, with or without a whole label.
            "label-without-name" | "label-without-purpose" | "label-without-authorisation-number" => continue,
            "label-dose-kinds-differ" => "highest_dose",
            "label-water-range-reversed" => "water_max",
            "label-concentration-kind-differs" => "highest_concentration",
            _ => "dose",
        };
        problems.add(field, &said);
    }
}

fn water_in_units(figures: &Figures) -> Vec<Shown> {
    figures.water_min.into_iter().chain(figures.water_max).flat_map(show::per_area).collect()
}

/// Slips of the pen worth a second look.
fn notes(figures: &Figures, label: Option<&Label>, today: NaiveDate) -> Vec<Said> {
    // A slipped dose is said as soon as it is typed, long before the label is whole.
    let mut notes: Vec<Said> = match label {
        Some(label) => label.slips(),
        None => figures.dose.and_then(|dose| slip_of_dose(dose, None, figures.highest_dose)).into_iter().collect(),
    };
    if let (Some(dose), Some(highest)) = (figures.dose, figures.highest_dose)
        && dose.kind() == highest.kind()
    {
        let times = highest.base() / dose.base();
        if times >= HIGHEST_OVER_DOSE {
            let times = Arg::number(times, evensward_core::quantity::Unit::Times, 0);
            notes.push(Said::new("look-again-highest-far-above-dose").with("times", times));
        }
    }
    notes.extend(slips_of_water(figures.water_min, figures.water_max));
    if let (Some(ProductDose::Volume(dose)), Some(least)) = (figures.dose, figures.water_min)
        && dose.ml_per_m2() > least.ml_per_m2() * SHARE_OF_MIXTURE
    {
        notes.push(Said::new("look-again-dose-much-for-the-water"));
    }
    let Some(label) = label else { return notes };
    if label.legal_class == LegalClass::PlantProtection {
        if label.protective.mixing.is_empty() {
            notes.push(Said::new("look-again-no-equipment-for-mixing"));
        }
        if label.water_margin.is_none() {
            notes.push(Said::new("look-again-no-margin-to-water"));
        }
    }
    if label.is_total_herbicide {
        notes.push(Said::new("look-again-kills-grass"));
    }
    if label.entered_on > today {
        notes.push(Said::new("look-again-date-in-future").with("date", Arg::Date(label.entered_on)));
    }
    notes
}
