//! A visit's record from its fold: what the law and the next year's self ask for, nothing that the events do not say.

use chrono::{DateTime, FixedOffset};
use evensward_core::checks::wind::{WindFrom, WindReading};
use evensward_core::coverage::all_ground;
use evensward_core::plan::Heading;
use evensward_core::product::Phase;
use evensward_core::quantity::{ProductAmount, ProductDose, Volume};
use evensward_core::visit::Position;
use evensward_core::visit::correct::dose_given;
use evensward_core::visit::decide::is_seen_at_end;
use evensward_core::visit::event::{At, CorrectionKind};
use evensward_core::visit::item::pieces;
use evensward_core::visit::state::{DriedOut, MadeFill};
use evensward_format::record::{
    Deviation, Fill, ForWhom, LeftRead, Pass, Person, Place, Quantity, Record, SCHEMA, Sprayer, TreatedLawn, Weather,
};

use super::codes::{HEADINGS, STOPS, USE_UPS, code_of};
use super::ground;
use super::journal::Folded;
use super::texts::{lawn_name, optional_words, word, words};
use super::weather::{self, SKIES};
use super::{record_checks, record_mixing};
use crate::Companion;
use crate::dto::ask::Failure;

/// The record of a visit, as it stands or as it would stand.
pub(crate) fn of(companion: &Companion, folded: &Folded) -> Result<Record, Failure> {
    let position = &folded.state.position;
    let closed = position.closed.as_ref();
    let signature = closed.map(|closed| &closed.signature);
    let client = position.lawn.as_ref().and_then(|lawn| lawn.client.as_ref());
    let walk = &position.walk;
    let by_lawn = position.by_lawn();
    let first = by_lawn.first().unwrap_or(position);
    let untreated: Vec<Position> =
        position.left_out.iter().chain(position.later.iter()).map(|later| position.at_later(later)).collect();
    let lawns = by_lawn.iter().chain(&untreated).map(|lawn| treated_lawn(companion, lawn));
    let lawns = lawns.collect::<Result<Vec<TreatedLawn>, Failure>>()?;
    Ok(Record {
        schema: SCHEMA.to_owned(),
        visit_id: folded.visit_id.to_string(),
        is_part: position.stopped.is_some() || lawns.iter().any(|lawn| lawn.is_part || lawn.is_untreated),
        is_untreated: !position.has_sprayed_any(),
        operator: operator(companion, position)?,
        client: ForWhom {
            name: client.map_or(Ok(None), |note| word(companion, note, "name"))?,
            address: client.map_or(Ok(None), |note| word(companion, note, "address"))?,
        },
        place: place(companion, first)?,
        purpose: position.found.as_ref().and_then(|found| found.target).map(|target| target.code().to_owned()),
        product: record_mixing::product(companion, position)?,
        partners: record_mixing::partners(companion, position)?,
        jar_test: record_mixing::jar_test(companion, position)?,
        mix_water: record_mixing::water(companion, position)?,
        water_l: by_lawn.iter().map(water_l).sum(),
        mixture_l: by_lawn.iter().map(mixture_l).sum(),
        sprayer: sprayer(position),
        started: by_lawn.iter().find_map(|lawn| lawn.walk.began).map(moment),
        ended: by_lawn.iter().rev().find_map(|lawn| lawn.walk.ended).map(moment),
        date: position.treated_on().map(|date| date.to_string()),
        weather: position.weather.iter().map(weather_line).collect(),
        is_weather_seen_at_end: position.has_sprayed_any().then(|| is_seen_at_end(position)),
        kept_back_m: first.kept_back.as_ref().map(|kept| kept.width.m()),
        protective: protective(position),
        protective_mixing: record_mixing::worn(position, Phase::Mixing),
        protective_washing: record_mixing::worn(position, Phase::Washing),
        fills: by_lawn
            .iter()
            .flat_map(|lawn| lawn.walk.made.iter())
            .map(|fill| Fill {
                at: moment(fill.at),
                mixture_l: fill.mixture.l(),
                left_before_l: fill.left_before.l(),
                left_read: left_read(position, fill),
                product: amount(fill.product),
                partners: record_mixing::of_fill(position, fill),
                batches: record_mixing::batches(position, fill),
            })
            .collect(),
        passes: by_lawn.iter().flat_map(passes).collect(),
        checks: record_checks::written(position),
        deviations: deviations(companion, position, &by_lawn, untreated.len())?,
        used_up: walk.used_up.map(|used| code_of(&used.kind, USE_UPS).to_owned()),
        leftover_l: walk.used_up.map_or(0.0, |used| used.leftover.l()),
        advice: signature
            .map(|signature| signature.advice.iter().map(ToString::to_string).collect())
            .unwrap_or_default(),
        look_back_on: signature.and_then(|signature| signature.look_back_on).map(|date| date.to_string()),
        note: optional_words(companion, signature.and_then(|signature| signature.note.as_ref()))?,
        signed: closed.map(|closed| moment(closed.at)),
        lawns,
    })
}

/// What the visit did on the one lawn that a position shows.
fn treated_lawn(companion: &Companion, lawn: &Position) -> Result<TreatedLawn, Failure> {
    let has_sprayed = lawn.has_sprayed();
    Ok(TreatedLawn {
        place: place(companion, lawn)?,
        is_untreated: !has_sprayed,
        is_part: lawn.stopped.is_some() || lawn.walk.short.is_some(),
        sprayed_l: lawn.mixture_sprayed().l(),
        product: lawn.product_sprayed().filter(|_| has_sprayed).map(amount),
        dose_given: dose_given(lawn).filter(|_| has_sprayed).map(dose),
        started: lawn.walk.began.map(moment),
        ended: lawn.walk.ended.map(moment),
        kept_back_m: lawn.kept_back.as_ref().map(|kept| kept.width.m()),
        passes: passes(lawn),
        deviations: on_lawn(companion, lawn)?,
    })
}

/// A moment as RFC 3339 with its own offset.
pub(crate) fn moment(at: At) -> String {
    let offset = FixedOffset::east_opt(at.offset_min.saturating_mul(60));
    match (DateTime::from_timestamp_millis(at.utc_ms), offset) {
        (Some(utc), Some(offset)) => utc.with_timezone(&offset).to_rfc3339(),
        (Some(utc), None) => utc.to_rfc3339(),
        (None, _) => String::new(),
    }
}

pub(crate) fn amount(amount: ProductAmount) -> Quantity {
    let (value, unit) = match amount {
        ProductAmount::Volume(volume) => (volume.ml(), "mL"),
        ProductAmount::Mass(mass) => (mass.g(), "g"),
    };
    Quantity { value, unit: unit.to_owned() }
}

pub(crate) fn dose(dose: ProductDose) -> Quantity {
    Quantity { value: dose.base(), unit: dose.base_unit().code().to_owned() }
}

/// Who signed; before that, who would.
fn operator(companion: &Companion, position: &Position) -> Result<Person, Failure> {
    Ok(match position.closed.as_ref() {
        Some(closed) => Person {
            name: word(companion, &closed.signature.by, "name")?,
            certificate: word(companion, &closed.signature.by, "certificate")?,
        },
        None => {
            let operator = companion.operator()?.map(|(_, operator)| operator).unwrap_or_default();
            let filled = |words: String| (!words.is_empty()).then_some(words);
            Person { name: filled(operator.name), certificate: filled(operator.certificate) }
        }
    })
}

fn place(companion: &Companion, position: &Position) -> Result<Place, Failure> {
    let Some(lawn) = &position.lawn else { return Ok(Place::default()) };
    let measured = position.label.as_ref().map_or(&lawn.measured, |label| &label.measured);
    let treated = position.plan.as_ref().map_or(measured.net_area, |plan| plan.plan.treated);
    let covered = if position.has_sprayed() { position.treated_ground() } else { None }.unwrap_or_default();
    Ok(Place {
        lawn_id: lawn.lawn_id.to_string(),
        lawn: lawn_name(companion, lawn.lawn_id)?,
        outline_area_m2: measured.outline_area.m2(),
        treated_area_m2: treated.area.m2(),
        area_doubt_percent: treated.doubt.percent(),
        treated_ground_m: ground::written(&measured.net),
        covered: covered.iter().map(ground::covered).collect(),
        covered_geojson: all_ground(&covered).and_then(|all| ground::on_earth(measured, &all)),
    })
}

/// Mixture in all: what was made, and the water that corrections and the use-up put to it.
fn mixture_l(position: &Position) -> f64 {
    position.mixture_made().l() + added_l(position)
}

fn added_l(position: &Position) -> f64 {
    let walk = &position.walk;
    let corrected: f64 = walk.trims.iter().map(|trim| trim.water_now.l()).sum();
    corrected + walk.used_up.map_or(0.0, |used| used.water.l())
}

/// Clean water in all: the mixture made without the products' own room, and what corrections and the use-up added.
fn water_l(position: &Position) -> f64 {
    let density = position.label.as_ref().and_then(|label| label.label.density);
    let room = |fill: &MadeFill| fill.product.own_volume(density) + position.partners_room(&fill.partners);
    let made: f64 = position.walk.made.iter().map(|fill| fill.mixture.less(room(fill)).l()).sum();
    made + added_l(position)
}

/// What the tank was found to hold before a fill in mid-pass, and what the strips until then took.
fn left_read(position: &Position, fill: &MadeFill) -> Option<LeftRead> {
    let reads = position.walk.reads.iter().rev();
    let read = reads.filter(|read| read.place == fill.place).find(|read| read.at.utc_ms <= fill.at.utc_ms)?;
    Some(LeftRead {
        left_l: read.left.l(),
        is_as_planned: read.is_as_planned,
        used_l: read.used.l(),
        planned_l: read.planned.l(),
    })
}

fn sprayer(position: &Position) -> Option<Sprayer> {
    let frozen = position.kit.as_ref()?;
    let pace = position.plan.as_ref().map_or(frozen.calibration.pace, |plan| plan.plan.pace);
    Some(Sprayer {
        kit_id: frozen.kit_id.to_string(),
        calibration_id: frozen.calibration_id.to_string(),
        nozzle: frozen.kit.nozzle.clone(),
        swath_m: frozen.kit.swath.m(),
        flow_l_per_min: frozen.calibration.flow.l_per_min(),
        pace_m_per_s: pace.m_per_s(),
        calibrated_on: frozen.calibration.made_on.to_string(),
    })
}

fn weather_line(seen: &evensward_core::visit::state::SeenWeather) -> Weather {
    let observation = &seen.observation;
    let (wind_force, wind_m_per_s, wind_height_m) = match observation.wind.map(|wind| wind.reading) {
        Some(WindReading::BySign { force }) => (Some(force), None, None),
        Some(WindReading::ByMeter { speed, height }) => (None, Some(speed.m_per_s()), Some(height.m())),
        None => (None, None, None),
    };
    Weather {
        at: moment(seen.at),
        wind_force,
        wind_m_per_s,
        wind_height_m,
        wind_towards: weather::towards(observation).to_owned(),
        wind_from_deg: match observation.wind.and_then(|wind| wind.from) {
            Some(WindFrom::Compass(from)) => Some(from.deg()),
            Some(WindFrom::Lawn(_)) | None => None,
        },
        gusts: observation.gusts,
        gust_m_per_s: observation.gust_speed.map(|speed| speed.m_per_s()),
        humidity_percent: observation.humidity.map(|humidity| humidity.percent()),
        altitude_m: observation.altitude.map(|altitude| altitude.m()),
        wet_bulb_deg_c: observation.air().map(|air| air.wet_bulb.deg_c()),
        sky: observation.sky.map(|sky| code_of(&sky, SKIES).to_owned()),
        limits: seen.limits.as_ref().map(ToString::to_string),
        rain: observation.rain_now,
        dry_hours_expected: observation.dry_hours_expected,
        temperature_deg_c: observation.temperature.map(|temperature| temperature.deg_c()),
        grass_wet: observation.grass_wet,
        frozen: observation.frozen,
        drought: observation.drought,
    }
}

fn protective(position: &Position) -> Vec<String> {
    let asked = pieces(&position.labels(), Phase::Spraying).into_iter();
    asked.filter(|piece| position.ready.contains(piece.ready_code())).map(|piece| piece.code().to_owned()).collect()
}

fn passes(position: &Position) -> Vec<Pass> {
    position
        .walk
        .truths
        .iter()
        .map(|truth| Pass {
            pass: truth.pass,
            heading: code_of(&position.pass_plan(truth.pass).map_or(Heading::Along, |pass| pass.heading), HEADINGS)
                .to_owned(),
            began: moment(truth.began),
            ended: moment(truth.ended),
            paused_s: truth.paused_s,
            planned_l: truth.planned.l(),
            used_l: truth.used.l(),
            left_l: truth.left.l(),
            is_as_planned: truth.is_as_planned,
            walked_s: (truth.walked_s > 0.0).then_some(truth.walked_s),
            planned_s: (truth.walked_s > 0.0).then(|| position.walking_s(truth.pass, 0)),
            cause: position.told_cause(truth.pass).map(|told| told.cause.code().to_owned()),
        })
        .collect()
}

/// Whether the ground behind the place where the tank ran dry has had more than the label's highest dose.
pub(crate) fn over_dosed(position: &Position, dried_out: &DriedOut) -> bool {
    let highest = position.label.as_ref().and_then(|label| label.label.highest_dose.as_ref());
    dried_out.dose.is_some_and(|dose| {
        evensward_core::checks::dose::dose_on_ground(dose, highest).verdict == evensward_core::checks::Verdict::Stop
    })
}

fn litres(volume: Volume) -> Quantity {
    Quantity { value: volume.l(), unit: "L".to_owned() }
}

fn deviations(
    companion: &Companion,
    position: &Position,
    by_lawn: &[Position],
    n_untreated: usize,
) -> Result<Vec<Deviation>, Failure> {
    let mut lines = Vec::new();
    for passed in position.passed.iter() {
        lines.push(Deviation {
            code: format!("passed-{}", passed.rule),
            reason: words(companion, &passed.because)?,
            ..Deviation::default()
        });
    }
    for lawn in by_lawn {
        lines.extend(on_lawn(companion, lawn)?);
    }
    lines.extend((0..n_untreated).map(|_| Deviation { code: "lawn-not-treated".to_owned(), ..Deviation::default() }));
    if let Some(stopped) = &position.stopped {
        lines.push(Deviation {
            code: format!("stopped-{}", code_of(&stopped.reason, STOPS)),
            at: Some(moment(stopped.at)),
            reason: optional_words(companion, stopped.note.as_ref())?,
            quantity: None,
        });
    }
    Ok(lines)
}

/// What differed on the one lawn that a position shows.
fn on_lawn(companion: &Companion, position: &Position) -> Result<Vec<Deviation>, Failure> {
    let walk = &position.walk;
    let mut lines = Vec::new();
    for pause in walk.pauses.iter() {
        let seconds = pause.ended.map(|ended| ended.seconds_since(pause.began));
        lines.push(Deviation {
            code: format!("paused-{}", pause.reason.code()),
            at: Some(moment(pause.began)),
            reason: optional_words(companion, pause.note.as_ref())?,
            quantity: seconds.map(|value| Quantity { value, unit: "s".to_owned() }),
        });
    }
    for told in walk.causes.iter() {
        lines.push(Deviation {
            code: format!("pass-cause-{}", told.cause.code()),
            quantity: walk.truths.iter().find(|truth| truth.pass == told.pass).map(|truth| litres(truth.used)),
            reason: optional_words(companion, told.note.as_ref())?,
            ..Deviation::default()
        });
    }
    for trim in walk.trims.iter() {
        let (code, volume) = match trim.kind {
            CorrectionKind::AddWater => ("water-added", trim.water_now + trim.water_more),
            CorrectionKind::LessWater => ("water-left-out", trim.water_less),
            CorrectionKind::FewerPasses => ("passes-left-out", Volume::ZERO),
            CorrectionKind::MorePasses => ("pass-added", trim.water_now + trim.water_more),
            CorrectionKind::AsPlanned => ("went-on-as-planned", Volume::ZERO),
        };
        let quantity = (volume > Volume::ZERO).then(|| litres(volume));
        lines.push(Deviation { code: code.to_owned(), quantity, ..Deviation::default() });
    }
    for dried_out in walk.dried_out.iter() {
        let is_over = over_dosed(position, dried_out);
        lines.push(Deviation {
            code: if is_over { "over-dosed-where-it-ran-dry" } else { "ran-dry-before-its-time" }.to_owned(),
            quantity: dried_out.dose.map(dose),
            ..Deviation::default()
        });
    }
    if let Some(short) = walk.short {
        let strips = f64::from(short.place.strips_done);
        lines.push(Deviation {
            code: "ran-short".to_owned(),
            quantity: Some(Quantity { value: strips, unit: "strips".to_owned() }),
            ..Deviation::default()
        });
    }
    if let Some(plan) = position.plan.as_ref().filter(|plan| plan.plan.left_out.m2() > 0.0) {
        let left_out = Quantity { value: plan.plan.left_out.m2(), unit: "m2".to_owned() };
        lines.push(Deviation {
            code: "narrow-strip-left-out".to_owned(),
            quantity: Some(left_out),
            ..Deviation::default()
        });
    }
    Ok(lines)
}
