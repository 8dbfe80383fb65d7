//! The record on the screen: sections of lines, made from the same document that is given out as JSON.

use evensward_core::visit::Position;
use evensward_core::visit::event::At;
use evensward_format::record::{
    Deviation, Fill, LeftRead, MixWater, Pass, Product, Quantity, Record, TreatedLawn, Weather,
};

use super::journal::Folded;
use super::{panels, record, record_checks, strips, texts};
use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{Argument, Said, Shown};
use crate::dto::record::{RecordLine, RecordSection, RecordView};
use crate::dto::several::RecordLawnView;
use crate::failure::said;

/// The record of a visit.
pub(crate) fn of(companion: &Companion, folded: &Folded) -> Result<RecordView, Failure> {
    let position = &folded.state.position;
    let document = record::of(companion, folded)?;
    let is_closed = position.closed.is_some();
    let json = serde_json::to_string_pretty(&document).map_err(|error| Failure::malformed(error.to_string()))?;
    let hash = if is_closed { hash(companion, folded.visit_id)? } else { None };
    Ok(RecordView {
        visit_id: folded.visit_id.to_string(),
        is_closed,
        is_part: document.is_part,
        sections: sections(position, &document),
        advice: panels::advice(position),
        json: is_closed.then_some(json),
        hash,
        drawing: strips::of_position(position).unwrap_or_default(),
        lawns: drawn(companion, position)?,
    })
}

/// Each lawn as it was walked, where the visit was agreed for several; one that was not treated has no strips.
fn drawn(companion: &Companion, position: &Position) -> Result<Vec<RecordLawnView>, Failure> {
    if !position.is_of_several() {
        return Ok(Vec::new());
    }
    let untreated = position.left_out.iter().chain(position.later.iter());
    let untreated = untreated.map(|later| Position { plan: None, ..position.at_later(later) });
    let lawns = position.by_lawn().into_iter().chain(untreated).map(|lawn| {
        let lawn_id = lawn.lawn.as_ref().map(|lawn| lawn.lawn_id);
        Ok(RecordLawnView {
            lawn: lawn_id.map_or(Ok(String::new()), |lawn_id| texts::lawn_name(companion, lawn_id))?,
            drawing: strips::of_position(&lawn).unwrap_or_default(),
        })
    });
    lawns.collect()
}

fn hash(companion: &Companion, visit_id: uuid::Uuid) -> Result<Option<String>, Failure> {
    let links = companion.store.links()?;
    Ok(links.iter().find(|link| link.visit_id == visit_id).map(|link| link.hash.to_string()))
}

/// What a lawful record still lacks.
pub(crate) fn missing(companion: &Companion, position: &Position) -> Result<Vec<Said>, Failure> {
    let mut lines = Vec::new();
    let has_client = position.lawn.as_ref().is_some_and(|lawn| lawn.client_id.is_some());
    if !has_client {
        lines.push(said("missing-client", []));
    }
    let operator = companion.operator()?.map(|(_, operator)| operator).unwrap_or_default();
    if operator.certificate.trim().is_empty() {
        lines.push(said("missing-certificate", []));
    }
    let needs_number = position.label.as_ref().is_some_and(|label| {
        label.label.legal_class == evensward_core::product::LegalClass::PlantProtection
            && label.label.authorisation_number.is_none()
    });
    if needs_number {
        lines.push(said("missing-authorisation-number", []));
    }
    Ok(lines)
}

fn text(value: impl Into<String>) -> Argument {
    Argument::Text(value.into())
}

fn number(value: f64, unit: &str, decimals: u8) -> Argument {
    Argument::Number(Shown { value, unit: unit.to_owned(), decimals, beside: None })
}

fn quantity(quantity: &Quantity) -> Argument {
    let decimals = match quantity.value.abs() {
        size if size >= 100.0 => 0,
        size if size >= 10.0 => 1,
        size if size >= 1.0 => 2,
        _ => 3,
    };
    number(quantity.value, &quantity.unit, decimals)
}

fn line(label: &str, values: Vec<Argument>) -> RecordLine {
    RecordLine { label: label.to_owned(), values, said: Vec::new() }
}

fn optional(label: &str, value: Option<&String>) -> Option<RecordLine> {
    value.map(|value| line(label, vec![text(value)]))
}

fn section(heading: &str, lines: impl IntoIterator<Item = RecordLine>) -> RecordSection {
    RecordSection { heading: heading.to_owned(), lines: lines.into_iter().collect() }
}

/// What was done on one of several lawns.
fn treated_lawn(lawn: &TreatedLawn) -> RecordSection {
    let area = line("record-treated-area", vec![number(lawn.place.treated_area_m2, "m2", 1)]);
    let mut lines = vec![line("record-lawn", vec![text(lawn.place.lawn.clone())]), area];
    if lawn.is_untreated {
        lines.push(RecordLine {
            said: vec![said("record-lawn-not-treated", [])],
            ..line("record-lawn-done", Vec::new())
        });
    } else {
        lines.push(line("record-lawn-sprayed", vec![number(lawn.sprayed_l, "L", 2)]));
        lines.extend(lawn.product.as_ref().map(|product| line("record-lawn-product", vec![quantity(product)])));
        lines.extend(lawn.dose_given.as_ref().map(|dose| line("record-dose-given", vec![quantity(dose)])));
        lines.push(line(
            "record-lawn-passes",
            vec![Argument::Count(u32::try_from(lawn.passes.len()).unwrap_or(u32::MAX))],
        ));
        if lawn.is_part {
            lines.push(RecordLine { said: vec![said("record-lawn-part", [])], ..line("record-lawn-done", Vec::new()) });
        }
    }
    section("record-one-lawn", lines)
}

fn sections(position: &Position, record: &Record) -> Vec<RecordSection> {
    let mut sections = vec![who(record), place(record)];
    sections.extend(record.product.as_ref().map(|product| section("record-product", own_product(record, product))));
    sections.extend(record.partners.iter().map(|partner| section("record-partner", product(partner))));
    sections.push(section("record-mix-water", record.mix_water.iter().flat_map(mix_water)));
    sections.extend(record.jar_test.as_ref().map(|jar| {
        let outcome = Argument::Code(format!("jar-outcome-{}", jar.outcome));
        section(
            "record-jar-test",
            [line("record-jar", std::iter::once(outcome).chain(jar.note.as_ref().map(text)).collect())],
        )
    }));
    sections.extend(sprayer(record));
    sections.push(times(position, record));
    let at_end = record.is_weather_seen_at_end.filter(|is_seen| !is_seen);
    let at_end = at_end.map(|_| line("record-weather-at-end", vec![Argument::Code("not-looked-at".to_owned())]));
    let kept = record.kept_back_m.map(|width_m| line("record-kept-back", vec![number(width_m, "m", 1)]));
    sections.push(section(
        "record-weather",
        record
            .weather
            .iter()
            .zip(position.weather.iter())
            .flat_map(|(looked, seen)| weather(looked, seen.at))
            .chain(at_end)
            .chain(kept),
    ));
    let worn = [
        ("record-worn-mixing", &record.protective_mixing),
        ("record-worn", &record.protective),
        ("record-worn-washing", &record.protective_washing),
    ];
    let worn = worn.into_iter().filter(|(_, pieces)| !pieces.is_empty());
    let codes = |pieces: &[String]| pieces.iter().map(|piece| Argument::Code(piece.clone())).collect();
    sections.push(section("record-protective", worn.map(|(label, pieces)| line(label, codes(pieces)))));
    sections
        .push(section("record-fills", (1_u32..).zip(&record.fills).flat_map(|(number, fill)| filled(number, fill))));
    sections.push(section(
        "record-passes",
        record.passes.iter().map(|pass| {
            let code = if pass.is_as_planned { "record-pass-as-planned" } else { "record-pass-measured" };
            let values = vec![
                Argument::Count(u32::from(pass.pass)),
                Argument::Code(format!("heading-{}", pass.heading)),
                number(pass.used_l, "L", 2),
            ];
            let mut said = vec![said(code, [("planned", number(pass.planned_l, "L", 2))])];
            said.extend(pass_time(pass));
            RecordLine { label: "record-pass".to_owned(), values, said }
        }),
    ));
    if position.is_of_several() {
        sections.extend(record.lawns.iter().map(treated_lawn));
    }
    if !record.deviations.is_empty() {
        sections.push(section("record-deviations", record.deviations.iter().map(deviation)));
    }
    sections.push(section("record-checks", record_checks::lines(position)));
    sections.retain(|section| !section.lines.is_empty());
    sections
}

/// What the tank was found to hold before a fill in mid-pass.
fn left_read(read: &LeftRead) -> Said {
    let code = if read.is_as_planned { "record-left-as-planned" } else { "record-left-measured" };
    let litres = |value| number(value, "L", 2);
    said(code, [("left", litres(read.left_l)), ("used", litres(read.used_l)), ("planned", litres(read.planned_l))])
}

/// How long a pass took against the plan.
fn pass_time(pass: &Pass) -> Option<Said> {
    let minutes = |seconds: f64| number(seconds / 60.0, "min", 1);
    let (walked, planned) = (minutes(pass.walked_s?), minutes(pass.planned_s?));
    Some(said("record-pass-time", [("walked", walked), ("planned", planned)]))
}

/// A tankful, and which batch of which product it came from.
fn filled(fill_number: u32, fill: &Fill) -> Vec<RecordLine> {
    let count = Argument::Count(fill_number);
    let mut values = vec![count.clone(), number(fill.mixture_l, "L", 2), quantity(&fill.product)];
    values.extend(fill.partners.iter().map(quantity));
    let batches = fill.batches.iter().map(|from| {
        let batch = from.batch.as_ref().map_or_else(|| Argument::Code("batch-not-named".to_owned()), text);
        line("record-batch", vec![count.clone(), text(&from.product), batch, quantity(&from.amount)])
    });
    let said = fill.left_read.as_ref().map(left_read).into_iter().collect();
    std::iter::once(RecordLine { said, ..line("record-fill", values) }).chain(batches).collect()
}

fn who(record: &Record) -> RecordSection {
    let lines = [
        optional("record-operator", record.operator.name.as_ref()),
        optional("record-certificate", record.operator.certificate.as_ref()),
        optional("record-client", record.client.name.as_ref()),
        optional("record-address", record.client.address.as_ref()),
    ];
    section("record-who", lines.into_iter().flatten())
}

fn place(record: &Record) -> RecordSection {
    let place = &record.place;
    let mut lines = vec![
        line("record-lawn", vec![text(&place.lawn)]),
        line("record-treated-area", vec![number(place.treated_area_m2, "m2", 1)]),
        line("record-outline-area", vec![number(place.outline_area_m2, "m2", 1)]),
    ];
    if record.lawns.len() > 1 {
        // Each has a section of its own.
        lines.clear();
    }
    if let Some(purpose) = &record.purpose {
        lines.push(line("record-purpose", vec![Argument::Code(purpose.clone())]));
    }
    section("record-place", lines)
}

/// The visit's own product, and what became of the mixture.
fn own_product(record: &Record, own: &Product) -> Vec<RecordLine> {
    let mut lines = product(own);
    lines.push(line("record-water", vec![number(record.water_l, "L", 2)]));
    lines.push(line("record-mixture", vec![number(record.mixture_l, "L", 2)]));
    if let Some(used_up) = &record.used_up {
        let code = Argument::Code(format!("used-up-{}", used_up.replace('_', "-")));
        lines.push(line("record-leftover", vec![number(record.leftover_l, "L", 2), code]));
    }
    lines
}

fn product(product: &Product) -> Vec<RecordLine> {
    let class = Argument::Code(format!("legal-{}", product.legal_class));
    let mut lines =
        vec![line("record-product-name", vec![text(&product.name)]), line("record-legal-class", vec![class])];
    lines.extend(optional("record-authorisation-number", product.authorisation_number.as_ref()));
    let mut label = vec![text(&product.label_version), Argument::Date(product.label_entered_on.clone())];
    label.extend(product.label_entered_by.as_ref().map(text));
    lines.push(line("record-label", label));
    lines.push(line("record-dose-planned", vec![quantity(&product.dose_planned)]));
    lines.extend(product.dose_given.as_ref().map(|dose| line("record-dose-given", vec![quantity(dose)])));
    lines.extend(product.total.as_ref().map(|total| line("record-product-total", vec![quantity(total)])));
    lines
}

fn mix_water(water: &MixWater) -> Vec<RecordLine> {
    let figures = [
        ("record-water-ph", water.ph, "pH", 1),
        ("record-water-hardness", water.hardness_mg_per_l, "mg/L", 0),
        ("record-water-temperature", water.temperature_deg_c, "degC", 1),
        ("record-water-bucket", water.bucket_l, "L", 1),
    ];
    let figures = figures
        .into_iter()
        .filter_map(|(label, value, unit, decimals)| Some(line(label, vec![number(value?, unit, decimals)])));
    optional("record-water-source", water.source.as_ref()).into_iter().chain(figures).collect()
}

fn sprayer(record: &Record) -> Option<RecordSection> {
    let sprayer = record.sprayer.as_ref()?;
    let lines = [
        line("record-nozzle", vec![text(&sprayer.nozzle)]),
        line("record-swath", vec![number(sprayer.swath_m, "m", 2)]),
        line("record-flow", vec![number(sprayer.flow_l_per_min, "L/min", 3)]),
        line("record-pace", vec![number(sprayer.pace_m_per_s, "m/s", 2)]),
        line("record-calibrated-on", vec![Argument::Date(sprayer.calibrated_on.clone())]),
    ];
    Some(section("record-sprayer", lines))
}

fn times(position: &Position, record: &Record) -> RecordSection {
    let by_lawn = position.by_lawn();
    let instants = [
        ("record-started", by_lawn.iter().find_map(|lawn| lawn.walk.began)),
        ("record-ended", by_lawn.iter().rev().find_map(|lawn| lawn.walk.ended)),
        ("record-signed", position.closed.as_ref().map(|closed| closed.at)),
    ];
    let mut lines: Vec<RecordLine> =
        instants.into_iter().filter_map(|(label, at)| Some(line(label, vec![texts::instant(at?)]))).collect();
    lines.extend(record.look_back_on.as_ref().map(|day| line("record-look-back", vec![Argument::Date(day.clone())])));
    section("record-times", lines)
}

fn weather(weather: &Weather, at: At) -> Vec<RecordLine> {
    let mut lines = vec![line("record-weather-at", vec![texts::instant(at)])];
    let towards = match (weather.wind_from_deg, weather.wind_towards.as_str()) {
        (Some(_), _) => Argument::Code("record-wind-by-compass".to_owned()),
        (None, "") => Argument::Code("wind-towards-unknown".to_owned()),
        (None, side) => Argument::Code(format!("wind-towards-{side}")),
    };
    match (weather.wind_force, weather.wind_m_per_s, weather.wind_height_m) {
        (Some(force), _, _) => {
            lines.push(line("record-wind-force", vec![Argument::Count(u32::from(force)), towards]));
        }
        (None, Some(speed), Some(height)) => {
            lines.push(line("record-wind-speed", vec![number(speed, "m/s", 1), number(height, "m", 1), towards]));
        }
        _ => lines.push(line("record-wind-force", vec![Argument::Code("not-looked-at".to_owned())])),
    }
    if let Some(temperature) = weather.temperature_deg_c {
        lines.push(line("record-temperature", vec![number(temperature, "degC", 0)]));
    }
    for (label, value, unit, decimals) in [
        ("record-wind-from", weather.wind_from_deg, "deg", 0),
        ("record-gust-speed", weather.gust_m_per_s, "m/s", 1),
        ("record-humidity", weather.humidity_percent, "percent", 0),
        ("record-altitude", weather.altitude_m, "m", 0),
        ("record-wet-bulb", weather.wet_bulb_deg_c, "degC", 1),
    ] {
        lines.extend(value.map(|value| line(label, vec![number(value, unit, decimals)])));
    }
    lines.extend(weather.sky.as_ref().map(|sky| line("record-sky", vec![Argument::Code(format!("record-sky-{sky}"))])));
    if let Some(hours) = weather.dry_hours_expected {
        lines.push(line("record-dry-hours", vec![number(hours, "hour", 0)]));
    }
    for (label, answer) in [
        ("record-gusts", weather.gusts),
        ("record-rain", weather.rain),
        ("record-grass-wet", weather.grass_wet),
        ("record-frozen", weather.frozen),
        ("record-drought", weather.drought),
    ] {
        let code = match answer {
            Some(true) => "answer-yes",
            Some(false) => "answer-no",
            None => "not-looked-at",
        };
        lines.push(line(label, vec![Argument::Code(code.to_owned())]));
    }
    lines
}

fn deviation(deviation: &Deviation) -> RecordLine {
    let mut values: Vec<Argument> = deviation.quantity.iter().map(quantity).collect();
    values.extend(deviation.reason.as_ref().map(text));
    let code = deviation.code.replace('_', "-");
    RecordLine { label: "record-deviation".to_owned(), values, said: vec![said(&format!("deviation-{code}"), [])] }
}
