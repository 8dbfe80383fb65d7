//! The weather as a screen sees it: the air worked out, each edge with the wind against it, what could be kept dry, and
//! whether it is time to look again. Everything comes from the trade; nothing is judged here.

use evensward_core::checks::Check;
use evensward_core::checks::limits::LimitProfile;
use evensward_core::lawn::Measured;
use evensward_core::quantity::{Arg, Said as Sentence, Unit};
use evensward_core::visit::decide::{KeepBack, keep_back_offer, weather_due};
use evensward_core::visit::{Position, Stage};

use super::facts;
use super::journal::at;
use crate::Companion;
use crate::drawing;
use crate::dto::ask::Failure;
use crate::dto::figures::Said;
use crate::dto::visit::{AirView, EdgeWindView, KeepBackView};
use crate::forms::code_of;
use crate::forms::lawn::{BESIDE, side_name};
use crate::show;

/// The air as last seen, when its temperature and humidity were.
pub(crate) fn air(position: &Position) -> Option<AirView> {
    let seen = position.last_weather()?;
    let air = seen.observation.air()?;
    // What the difference means stood among the checks when the weather was seen; an older look has no such check.
    let said = seen.checks.iter().find(|check| check.rule == "drying-difference").map_or_else(
        || Sentence::new("drying-worked-out").with("value", Arg::number(air.drying_difference_k, Unit::Kelvin, 1)),
        |check| check.said.clone(),
    );
    let celsius = |deg_c: f64| show::shown(deg_c, Unit::Celsius, 1);
    Some(AirView {
        wet_bulb: celsius(air.wet_bulb.deg_c()),
        drying_difference: show::shown(air.drying_difference_k, Unit::Kelvin, 1),
        dew_point: celsius(air.dew_point.deg_c()),
        pressure: show::shown(air.pressure.bar() * 100.0, Unit::Kilopascal, 1),
        said: show::said(&said),
    })
}

/// The wind as last seen against each edge that must not get drift.
pub(crate) fn edges(position: &Position) -> Vec<EdgeWindView> {
    let checks = position.last_weather().map(|seen| seen.checks.as_slice()).unwrap_or_default();
    checks.iter().filter(|check| check.rule == "wind-direction").filter_map(|check| edge(position, check)).collect()
}

fn edge(position: &Position, check: &Check) -> Option<EdgeWindView> {
    let count = |name| match check.said.arg(name) {
        Some(Arg::Count(count)) => Some(*count),
        _ => None,
    };
    let (part_idx, side_idx) = (count("part")?, count("side")?);
    let idx = |count: u32| usize::try_from(count).ok();
    let lawn = position.lawn.as_ref()?;
    let part = lawn.survey.parts.get(idx(part_idx)?)?;
    let is_it = |part: usize, side: usize| Some(part) == idx(part_idx) && Some(side) == idx(side_idx);
    let beside = lawn.survey.sides.iter().find(|side| is_it(side.part_idx, side.side_idx))?.beside;
    Some(EdgeWindView {
        part_idx,
        side_idx,
        name: show::said(&side_name(&part.shape, idx(side_idx)?)),
        beside: code_of(beside, BESIDE).to_owned(),
        verdict: show::verdict(check.verdict),
        said: show::said(&check.said),
    })
}

/// What can still be done where the wind blows towards an edge; nothing where it does not, or no longer before mixing.
pub(crate) fn keep_back(companion: &Companion, position: &Position) -> Result<Option<KeepBackView>, Failure> {
    if !matches!(position.stage, Stage::Plan | Stage::Ready) {
        return Ok(None);
    }
    let limits = facts::limits(companion)?;
    Ok(keep_back_offer(position, &limits).map(|offer| keep_back_view(&offer)))
}

fn keep_back_view(offer: &KeepBack) -> KeepBackView {
    let KeepBack { kept, with, without, is_kept } = offer;
    let idx = |idx: usize| u32::try_from(idx).unwrap_or(u32::MAX);
    let said = Sentence::new(if *is_kept { "keep-back-kept" } else { "keep-back-offered" })
        .with("width", Arg::number(kept.width.m(), Unit::Metre, 1))
        .with("left", area(with))
        .with("all", area(without));
    KeepBackView {
        sides: kept.sides.iter().map(|(part, side)| [idx(*part), idx(*side)]).collect(),
        width: show::length(kept.width),
        area_left: show::area(with.net_area.area),
        area_all: show::area(without.net_area.area),
        rings: without.net.without(&with.net).rings().into_iter().flat_map(drawing::rings).collect(),
        is_kept: *is_kept,
        said: show::said(&said),
    }
}

fn area(measured: &Measured) -> Arg {
    Arg::number(measured.net_area.area.m2(), Unit::SquareMetre, 1)
}

/// Why the weather should be looked at now, when it should.
pub(crate) fn due(companion: &Companion, position: &Position) -> Result<Option<Said>, Failure> {
    let limits: LimitProfile = facts::limits(companion)?;
    let now = at(&companion.ports.clock.now());
    Ok(weather_due(position, &limits, now).map(|said| show::said(&said)))
}
