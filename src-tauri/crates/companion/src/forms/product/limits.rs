//! The limits of a label's form beside its main ones, each with its force and where it stands.
//!
//! Invariant: a limit that is not typed is none; its tag and source are then not asked for. Where a tag is left empty the
//! legal class decides: on a plant protection product a limit binds by law, on anything else it is advice.

use chrono::NaiveDate;
use evensward_core::product::{Label, Months, Rain, Situation, Source, Tag, Tagged};
use evensward_core::quantity::{Arg, Length, ProductDose, Said, Temperature, Unit};

use super::super::Problems;
use super::TAGS;
use crate::dto::figures::Typed;
use crate::dto::product::{LimitView, ProductInput};
use crate::show;

/// The codes of turf that a label names.
pub(crate) const SITUATIONS: &[(&str, Situation)] = &[
    ("lawn", Situation::Lawn),
    ("amenity_turf", Situation::AmenityTurf),
    ("sports_turf", Situation::SportsTurf),
    ("other_turf", Situation::OtherTurf),
];
const HAND_HELD: &[(&str, bool)] = &[("allowed", true), ("not_allowed", false)];
const PARTNERS: &[(&str, bool)] = &[("allowed", true), ("forbidden", false)];
const SOURCES: &[(&str, Source)] = &[
    ("label", Source::Label),
    ("safety-sheet", Source::SafetySheet),
    ("law", Source::Law),
    ("code-of-practice", Source::CodeOfPractice),
    ("own", Source::Own),
];
/// More days or months than this are no limit of a label.
const MOST_DAYS: u32 = 366;
const MOST_MONTHS: u32 = 60;

/// A form with what its legal class says of limits without a tag.
#[derive(Debug, Clone, Copy)]
pub(super) struct Placed<'a> {
    pub input: &'a ProductInput,
    pub by_law: Tag,
}

impl Placed<'_> {
    /// The tag as chosen, or what the legal class says.
    pub(super) fn tag(self, problems: &mut Problems, field: &str, code: &str) -> Option<Tag> {
        if code.is_empty() { Some(self.by_law) } else { problems.choice(field, code, TAGS) }
    }

    /// The limit with its force and where it stands.
    pub(super) fn at<T>(self, field: &str, tag: Tag) -> impl Fn(T) -> Tagged<T> {
        let stated = self.input.sources.get(field).map(String::as_str);
        let source = SOURCES.iter().find(|(code, _)| Some(*code) == stated).map(|(_, source)| *source);
        let source = source.unwrap_or(if tag == Tag::Own { Source::Own } else { Source::Label });
        move |value| Tagged { value, tag, source }
    }
}

/// What this part of the form came to.
#[derive(Debug)]
pub(super) struct Limits {
    pub situations: Vec<Situation>,
    pub hand_held: Option<Tagged<bool>>,
    pub least_dose: Option<Tagged<ProductDose>>,
    pub most_amount: Option<Tagged<ProductDose>>,
    pub months: Option<Tagged<Months>>,
    pub least_temperature: Option<Tagged<Temperature>>,
    pub most_temperature: Option<Tagged<Temperature>>,
    pub mowing_before: Option<Tagged<u16>>,
    pub mowing_after: Option<Tagged<u16>>,
    pub young_turf: Option<Tagged<u16>>,
    pub no_drought: Option<Tagged<bool>>,
    pub water_margin_boom: Option<Tagged<Length>>,
    pub partners: Option<Tagged<bool>>,
    pub authorised_until: Option<NaiveDate>,
    pub use_up_by: Option<NaiveDate>,
}

/// Reads them; every field that is wrong is named.
pub(super) fn read(placed: Placed<'_>, problems: &mut Problems) -> Option<Limits> {
    let input = placed.input;
    for (field, code) in &input.sources {
        problems.choice(&format!("sources.{field}"), code, SOURCES);
    }
    let situations = problems.choices("situations", &input.situations, SITUATIONS);
    let hand_held = yes_or_no(problems, "hand_held", &input.hand_held, HAND_HELD);
    let partners = yes_or_no(problems, "partners", &input.partners, PARTNERS);
    let least_dose = problems.optional("least_dose", &input.least_dose, ProductDose::from_figure);
    let most_amount = problems.optional("most_amount", &input.most_amount, ProductDose::from_figure);
    let months = if input.months.is_empty() {
        Some(None)
    } else {
        let months = Months::of(&input.months);
        if months.is_none() {
            problems.add("months", &Said::new("no-such-month"));
        }
        months.map(Some)
    };
    let least_temperature = problems.optional("temp_min", &input.temp_min, Temperature::from_figure);
    let most_temperature = problems.optional("temp_max", &input.temp_max, Temperature::from_figure);
    if let (Some(Some(least)), Some(Some(most))) = (least_temperature, most_temperature)
        && least >= most
    {
        problems.add("temp_max", &Said::new("label-temperatures-reversed"));
    }
    let mowing_before = days(problems, "mow_before", &input.mow_before, &["day"], MOST_DAYS);
    let mowing_after = days(problems, "mow_after", &input.mow_after, &["day"], MOST_DAYS);
    let young_turf = days(problems, "young_turf", &input.young_turf, &["month"], MOST_MONTHS);
    let boom = problems.optional("water_margin_boom", &input.water_margin_boom, Length::from_figure_or_zero);
    let authorised_until = problems.optional_date("authorised_until", &input.authorised_until);
    let use_up_by = problems.optional_date("use_up_by", &input.use_up_by);
    let tags = [
        ("least_dose_tag", &input.least_dose_tag),
        ("most_amount_tag", &input.most_amount_tag),
        ("months_tag", &input.months_tag),
        ("temp_tag", &input.temp_tag),
        ("mow_tag", &input.mow_tag),
        ("young_turf_tag", &input.young_turf_tag),
        ("drought_tag", &input.drought_tag),
        ("water_margin_tag", &input.water_margin_tag),
    ];
    let [dose_tag, amount_tag, months_tag, temp_tag, mow_tag, young_tag, drought_tag, margin_tag] =
        tags.map(|(field, code)| placed.tag(problems, field, code));
    Some(Limits {
        situations: situations?,
        hand_held: hand_held?.map(placed.at("hand_held", placed.by_law)),
        least_dose: least_dose?.map(placed.at("least_dose", dose_tag?)),
        most_amount: most_amount?.map(placed.at("most_amount", amount_tag?)),
        months: months?.map(placed.at("months", months_tag?)),
        least_temperature: least_temperature?.map(placed.at("temp_min", temp_tag?)),
        most_temperature: most_temperature?.map(placed.at("temp_max", temp_tag?)),
        mowing_before: mowing_before?.map(placed.at("mow_before", mow_tag?)),
        mowing_after: mowing_after?.map(placed.at("mow_after", mow_tag?)),
        young_turf: young_turf?.map(placed.at("young_turf", young_tag?)),
        no_drought: input.no_drought.then(|| placed.at("no_drought", drought_tag.unwrap_or(placed.by_law))(true)),
        water_margin_boom: boom?.map(placed.at("water_margin_boom", margin_tag?)),
        partners: partners?.map(placed.at("partners", placed.by_law)),
        authorised_until: authorised_until?,
        use_up_by: use_up_by?,
    })
}

fn yes_or_no(problems: &mut Problems, field: &str, code: &str, among: &[(&str, bool)]) -> Option<Option<bool>> {
    if code.is_empty() { Some(None) } else { problems.choice(field, code, among).map(Some) }
}

fn days(problems: &mut Problems, field: &str, typed: &Typed, units: &[&str], most: u32) -> Option<Option<u16>> {
    problems.count(field, typed, units, most).map(|count| count.and_then(|count| u16::try_from(count).ok()))
}

/// Every limit of a label, with its force and where it stands.
pub(super) fn listed(label: &Label) -> Vec<LimitView> {
    let mut found = Vec::new();
    let dose = |dose: ProductDose| Arg::number(dose.base(), dose.base_unit(), 3);
    let days = |days: u16| Arg::number(f64::from(days), Unit::Day, 0);
    add(&mut found, "highest_dose", label.highest_dose.as_ref(), |value| dose(*value));
    add(&mut found, "least_dose", label.least_dose.as_ref(), |value| dose(*value));
    add(&mut found, "most_amount", label.most_amount.as_ref(), |value| dose(*value));
    let rate = |value: f64| Arg::number(value, Unit::MillilitrePerSquareMetre, 1);
    add(&mut found, "water_min", label.water.least.as_ref(), |value| rate(value.ml_per_m2()));
    add(&mut found, "water_max", label.water.most.as_ref(), |value| rate(value.ml_per_m2()));
    add(&mut found, "highest_concentration", label.highest_concentration.as_ref(), |value| {
        Arg::number(value.per_l(), value.unit(), 2)
    });
    add(&mut found, "least_days", label.least_days.as_ref(), |value| days(*value));
    add(&mut found, "most_per_year", label.most_per_year.as_ref(), |value| Arg::Count(u32::from(*value)));
    add(&mut found, "months", label.months.as_ref(), |value| {
        Arg::Text(value.numbers().iter().map(u32::to_string).collect::<Vec<_>>().join(", "))
    });
    let degrees = |value: &Temperature| Arg::number(value.deg_c(), Unit::Celsius, 0);
    add(&mut found, "temp_min", label.least_temperature.as_ref(), degrees);
    add(&mut found, "temp_max", label.most_temperature.as_ref(), degrees);
    let hours = |value: f64| Arg::number(value, Unit::Hour, 1);
    if let Rain::Free(span) | Rain::WantedWithin(span) = &label.rain {
        add(&mut found, "rain_hours", Some(span), |value| hours(value.hours()));
    }
    add(&mut found, "keep_off", label.keep_off.as_ref(), |value| hours(value.hours()));
    add(&mut found, "mow_before", label.mowing_before.as_ref(), |value| days(*value));
    add(&mut found, "mow_after", label.mowing_after.as_ref(), |value| days(*value));
    add(&mut found, "young_turf", label.young_turf.as_ref(), |value| Arg::number(f64::from(*value), Unit::Month, 0));
    let metres = |value: &Length| Arg::number(value.m(), Unit::Metre, 1);
    add(&mut found, "water_margin", label.water_margin.as_ref(), metres);
    add(&mut found, "water_margin_boom", label.water_margin_boom.as_ref(), metres);
    let word =
        |yes: &'static str, no: &'static str| move |value: &bool| Arg::Code(if *value { yes } else { no }.into());
    add(&mut found, "hand_held", label.hand_held.as_ref(), word("limit-allowed", "limit-not-allowed"));
    add(&mut found, "partners", label.partners.as_ref(), word("limit-allowed", "limit-not-allowed"));
    add(&mut found, "no_drought", label.no_drought.as_ref(), word("limit-not-in-drought", "limit-allowed"));
    found
}

fn add<T>(found: &mut Vec<LimitView>, field: &str, limit: Option<&Tagged<T>>, arg: impl Fn(&T) -> Arg) {
    let Some(limit) = limit else { return };
    let said = Said::new("limit-is").with("limit", arg(&limit.value));
    found.push(LimitView {
        field: field.to_owned(),
        said: show::said(&said),
        tag: show::tag(limit.tag),
        source: limit.source.code().to_owned(),
    });
}
