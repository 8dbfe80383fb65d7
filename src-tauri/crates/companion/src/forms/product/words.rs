//! A label in words: every field that states something, as a line under the heading of its group, in the form's order.
//!
//! A figure is shown with the unit and the decimals that were typed: it is what the operator copied, not what the trade made
//! of it. Invariant: every field of the form has its line, so that two versions which differ at all differ in words.

use evensward_core::quantity::{Unit, parse_number};

use crate::dto::figures::{Argument, Typed};
use crate::dto::label::LabelChangeView;
use crate::dto::product::{AnalysisInput, ProductInput};
use crate::dto::record::{RecordLine, RecordSection};
use crate::show;

/// The lines of one group, with the form that they are read from.
struct Group<'a> {
    input: &'a ProductInput,
    lines: Vec<RecordLine>,
}

impl<'a> Group<'a> {
    fn of(input: &'a ProductInput) -> Self {
        Self { input, lines: Vec::new() }
    }

    /// A line; one without values states nothing and only keeps its place.
    fn line(mut self, label: &str, values: Vec<Argument>) -> Self {
        self.lines.push(RecordLine { label: label.to_owned(), values, said: Vec::new() });
        self
    }

    fn text(self, label: &str, text: &str) -> Self {
        self.line(label, words(text).into_iter().collect())
    }

    fn day(self, label: &str, day: &str) -> Self {
        let day = day.trim();
        self.line(label, if day.is_empty() { Vec::new() } else { vec![Argument::Date(day.to_owned())] })
    }

    /// One of a list of codes, with where it stands when the form says so.
    fn choice(self, label: &str, field: &str, family: &str, code: &str) -> Self {
        let values = coded(family, code).into_iter();
        let values: Vec<Argument> = values.chain(self.source(field, !code.is_empty())).collect();
        self.line(label, values)
    }

    fn choices(self, label: &str, field: &str, family: &str, codes: &[String]) -> Self {
        let values = codes.iter().filter_map(|code| coded(family, code));
        let values: Vec<Argument> = values.chain(self.source(field, !codes.is_empty())).collect();
        self.line(label, values)
    }

    fn tick(self, label: &str, field: &str, is_on: bool, tag: Option<&str>) -> Self {
        let mut values = Vec::new();
        if is_on {
            values.push(Argument::Code("answer-yes".to_owned()));
            values.extend(tag.and_then(|tag| coded("tag", tag)));
            values.extend(self.source(field, true));
        }
        self.line(label, values)
    }

    fn figure(self, label: &str, typed: &Typed) -> Self {
        self.line(label, figure(typed).into_iter().collect())
    }

    /// A limit with its force and, when it is not the label, where it stands.
    fn limit(self, label: &str, field: &str, typed: &Typed, tag: &str) -> Self {
        let values = figure(typed).into_iter().collect();
        let values = self.held(values, field, tag);
        self.line(label, values)
    }

    /// Values of a limit with its force and source; no limit has neither.
    fn held(&self, mut values: Vec<Argument>, field: &str, tag: &str) -> Vec<Argument> {
        if !values.is_empty() {
            values.extend(coded("tag", tag));
            values.extend(self.source(field, true));
        }
        values
    }

    fn source(&self, field: &str, is_stated: bool) -> Option<Argument> {
        let source = self.input.sources.get(field).filter(|_| is_stated)?;
        coded("limit-from", source)
    }

    fn section(self, heading: &str) -> RecordSection {
        RecordSection { heading: heading.to_owned(), lines: self.lines }
    }
}

fn words(text: &str) -> Option<Argument> {
    let text = text.trim();
    (!text.is_empty()).then(|| Argument::Text(text.to_owned()))
}

/// The word of a code within its family; a code that this version does not know is shown as it is kept.
fn coded(family: &str, code: &str) -> Option<Argument> {
    (!code.is_empty()).then(|| Argument::Code(format!("{family}-{code}")))
}

/// A figure with the unit and the decimals as typed; one that is no number, or in no known unit, is shown as it is kept.
fn figure(typed: &Typed) -> Option<Argument> {
    let text = typed.text.trim();
    if text.is_empty() {
        return None;
    }
    Some(match (parse_number(text), Unit::from_code(&typed.unit)) {
        (Ok(value), Some(unit)) => {
            let n_decimals = text.split_once(['.', ',']).map_or(0, |(_, fraction)| fraction.len());
            let decimals = u8::try_from(n_decimals.min(9)).unwrap_or(0);
            Argument::Number(show::shown(value, unit, decimals))
        }
        (Err(_), _) | (_, None) => Argument::Text(format!("{text} {}", typed.unit)),
    })
}

/// Everything that a label states, group by group; a group that states nothing is left out.
pub(crate) fn sections(input: &ProductInput) -> Vec<RecordSection> {
    let mut sections = every_line(input);
    sections.iter_mut().for_each(|section| section.lines.retain(|line| !line.values.is_empty()));
    sections.retain(|section| !section.lines.is_empty());
    sections
}

/// Every line of the form, those that state nothing among them.
fn every_line(input: &ProductInput) -> Vec<RecordSection> {
    vec![
        what_it_is(input),
        contents(input),
        use_of_it(input),
        dose(input),
        water(input),
        again(input),
        when(input),
        after(input),
        mowing(input),
        margins(input),
        mixing(input),
        protective(input),
        first_aid(input),
        signed(input),
    ]
}

fn what_it_is(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .text("label-name", &input.name)
        .choice("label-legal-class", "legal_class", "legal", &input.legal_class)
        .text("label-authorisation-number", &input.authorisation_number)
        .day("label-authorised-until", &input.authorised_until)
        .day("label-use-up-by", &input.use_up_by)
        .choice("label-form", "form", "form", &input.form)
        .section("label-group-name")
}

fn contents(input: &ProductInput) -> RecordSection {
    // A list keeps its place even when nothing stands in it.
    let mut group = Group::of(input).figure("label-density", &input.density).line("label-actives", Vec::new());
    for active in &input.actives {
        group = group.line("label-actives", words(&active.name).into_iter().chain(figure(&active.content)).collect());
    }
    group
        .line("label-analysis", analysis(&input.analysis))
        .tick("label-kills-grass", "kills_grass", input.kills_grass, None)
        .tick("label-contains-iron", "contains_iron", input.contains_iron, None)
        .section("label-group-contents")
}

fn analysis(input: &AnalysisInput) -> Vec<Argument> {
    let lines = [
        ("nutrient-n", &input.n, None),
        ("nutrient-p", &input.p, Some(("nutrient-p", &input.p_as))),
        ("nutrient-k", &input.k, Some(("nutrient-k", &input.k_as))),
        ("nutrient-fe", &input.fe, None),
    ];
    let mut values: Vec<Argument> = coded("analysis-basis", &input.basis).into_iter().collect();
    for (word, share, stated_as) in lines {
        let Some(share) = figure(share) else { continue };
        values.push(Argument::Code(word.to_owned()));
        values.push(share);
        values.extend(stated_as.and_then(|(family, code)| coded(family, code)));
    }
    values
}

fn use_of_it(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .choices("label-purposes", "purposes", "purpose", &input.purposes)
        .choices("label-situations", "situations", "situation", &input.situations)
        .choice("label-hand-held", "hand_held", "by-hand", &input.hand_held)
        .section("label-group-use")
}

fn dose(input: &ProductInput) -> RecordSection {
    let mut group = Group::of(input)
        .figure("label-dose", &input.dose)
        .limit("label-highest-dose", "highest_dose", &input.highest_dose, &input.highest_dose_tag)
        .limit("label-least-dose", "least_dose", &input.least_dose, &input.least_dose_tag)
        .line("label-targets", Vec::new());
    for target in &input.targets {
        let mut values: Vec<Argument> = coded("purpose", &target.purpose).into_iter().collect();
        values.extend(words(&target.target));
        values.extend(figure(&target.dose));
        if let Some(highest) = figure(&target.highest_dose) {
            values.push(Argument::Code("label-highest-dose".to_owned()));
            values.push(highest);
        }
        group = group.line("label-targets", values);
    }
    group.section("label-group-dose")
}

fn water(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .limit("label-water-min", "water_min", &input.water_min, &input.water_tag)
        .limit("label-water-max", "water_max", &input.water_max, &input.water_tag)
        .limit(
            "label-highest-concentration",
            "highest_concentration",
            &input.highest_concentration,
            &input.concentration_tag,
        )
        .section("label-group-water")
}

fn again(input: &ProductInput) -> RecordSection {
    let year = if input.most_per_year.text.trim().is_empty() && input.most_amount.text.trim().is_empty() {
        ""
    } else {
        &input.year
    };
    Group::of(input)
        .limit("label-least-days", "least_days", &input.least_days, &input.least_days_tag)
        .limit("label-most-per-year", "most_per_year", &input.most_per_year, &input.most_per_year_tag)
        .limit("label-most-amount", "most_amount", &input.most_amount, &input.most_amount_tag)
        .choice("label-year", "year", "year", year)
        .section("label-group-again")
}

fn when(input: &ProductInput) -> RecordSection {
    let months = input.months.iter().map(|month| Argument::Code(format!("month-{month}"))).collect();
    let group = Group::of(input);
    let months = group.held(months, "months", &input.months_tag);
    group
        .line("label-months", months)
        .limit("label-air-not-below", "temp_min", &input.temp_min, &input.temp_tag)
        .limit("label-air-not-above", "temp_max", &input.temp_max, &input.temp_tag)
        .limit("label-young-turf", "young_turf", &input.young_turf, &input.young_turf_tag)
        .tick("label-no-drought", "no_drought", input.no_drought, Some(&input.drought_tag))
        .section("label-group-when")
}

fn after(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .limit("label-keep-off", "keep_off", &input.keep_off, &input.keep_off_tag)
        .text("label-keep-off-words", &input.keep_off_words)
        .choice("label-rain", "rain", "rain", &input.rain)
        .limit("label-rain-for", "rain_hours", &input.rain_hours, &input.rain_tag)
        .section("label-group-after")
}

fn mowing(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .limit("label-mow-before", "mow_before", &input.mow_before, &input.mow_tag)
        .limit("label-mow-after", "mow_after", &input.mow_after, &input.mow_tag)
        .text("label-mowing-words", &input.mowing_words)
        .section("label-group-mowing")
}

fn margins(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .limit("label-water-margin", "water_margin", &input.water_margin, &input.water_margin_tag)
        .limit("label-water-margin-boom", "water_margin_boom", &input.water_margin_boom, &input.water_margin_tag)
        .section("label-group-margins")
}

fn mixing(input: &ProductInput) -> RecordSection {
    let formulation = input.formulation.trim().to_lowercase();
    let mut group = Group::of(input)
        .choice("label-formulation", "formulation", "label-formulation", &formulation)
        .choice("label-partners", "partners", "with-others", &input.partners)
        .text("label-partners-words", &input.partners_words)
        .choice("label-dissolves", "dissolves", "dissolves", &input.dissolves)
        .line("label-solubility", Vec::new());
    for line in &input.own_solubility {
        let values = figure(&line.temperature).into_iter().chain(figure(&line.per_litre)).collect();
        group = group.line("label-solubility", values);
    }
    group.section("label-group-mixing")
}

fn protective(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .choices("label-protective-mixing", "protective_mixing", "protective", &input.protective_mixing)
        .choices("label-protective-spraying", "protective_spraying", "protective", &input.protective_spraying)
        .choices("label-protective-washing", "protective_washing", "protective", &input.protective_washing)
        .section("label-group-protective")
}

fn first_aid(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .text("label-splash", &input.splash_words)
        .text("label-swallowed", &input.swallowed_words)
        .text("label-spill", &input.spill_words)
        .text("label-hazard", &input.hazard_words)
        .section("label-group-first-aid")
}

fn signed(input: &ProductInput) -> RecordSection {
    Group::of(input)
        .text("label-version", &input.label_version)
        .text("label-entered-by", &input.entered_by)
        .day("label-copied-on", &input.entered_on)
        .section("label-group-signed")
}

/// What differs between two versions, line by line in the form's order.
pub(crate) fn changes(before: &ProductInput, after: &ProductInput) -> Vec<LabelChangeView> {
    let (before, after) = (every_line(before), every_line(after));
    let stated = |sections: &[RecordSection], label: &str| -> Vec<Vec<Argument>> {
        let lines = sections.iter().flat_map(|section| &section.lines).filter(|line| line.label == label);
        lines.map(|line| line.values.clone()).filter(|values| !values.is_empty()).collect()
    };
    let mut changes: Vec<LabelChangeView> = Vec::new();
    for RecordLine { label, .. } in after.iter().flat_map(|section| &section.lines) {
        let (was, now) = (stated(&before, label), stated(&after, label));
        // A list has a line for each of its entries, and is compared as one.
        if was != now && !changes.iter().any(|change| change.label == *label) {
            changes.push(LabelChangeView { label: label.clone(), was, now });
        }
    }
    changes
}
