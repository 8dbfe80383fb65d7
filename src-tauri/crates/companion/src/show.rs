//! How the trade's values become what a screen shows: sentences, checks and figures with the decimals that mean
//! something; and how a figure as typed is handed to the trade.
//!
//! Invariant: nothing is worked out here. A value is only turned into the unit in which it is shown.

use evensward_core::checks::{self, Check};
use evensward_core::product;
use evensward_core::product::stock::Balance;
use evensward_core::quantity::{
    self as q, Area, Arg, Figure, FlowRate, Length, Pace, Pressure, ProductAmount, ProductDose, Unit, Volume,
    VolumePerArea, Weight,
};

use crate::dto::figures::{Argument, Beside, CheckView, FieldProblem, Said, Shown, Tag, Typed, Verdict};

/// A value in its unit, with the decimals that mean something, and its customary counterpart where the trade has one.
pub(crate) fn shown(value: f64, unit: Unit, decimals: u8) -> Shown {
    let beside = q::customary(value, unit, decimals).map(|beside| Beside {
        value: beside.value,
        unit: beside.unit.code().to_owned(),
        decimals: beside.decimals,
    });
    Shown { value, unit: unit.code().to_owned(), decimals, beside }
}

/// The same argument as a record has it: metric alone.
pub(crate) fn recorded(arg: &Arg) -> Argument {
    match argument(arg) {
        Argument::Number(shown) => Argument::Number(Shown { beside: None, ..shown }),
        other => other,
    }
}

/// Decimals that show about three figures of a value, and no more than four places.
fn three_figures(value: f64) -> u8 {
    match value.abs() {
        size if size >= 100.0 => 0,
        size if size >= 10.0 => 1,
        size if size >= 1.0 => 2,
        size if size >= 0.1 || size == 0.0 => 3,
        _ => 4,
    }
}

/// A length in metres.
pub(crate) fn length(value: Length) -> Shown {
    shown(value.m(), Unit::Metre, 2)
}

/// An area in square metres.
pub(crate) fn area(value: Area) -> Shown {
    shown(value.m2(), Unit::SquareMetre, 1)
}

/// A weight in kilograms.
pub(crate) fn weight(value: Weight) -> Shown {
    shown(value.kg(), Unit::Kilogram, 1)
}

/// A flow in litres per minute.
pub(crate) fn flow(value: FlowRate) -> Shown {
    shown(value.l_per_min(), Unit::LitrePerMinute, 3)
}

/// A pace in metres per second.
pub(crate) fn pace(value: Pace) -> Shown {
    shown(value.m_per_s(), Unit::MetrePerSecond, 2)
}

/// A pressure in bar.
pub(crate) fn pressure(value: Pressure) -> Shown {
    shown(value.bar(), Unit::Bar, 2)
}

/// Mixture or water per area, in mL/m² and L/ha.
pub(crate) fn per_area(value: VolumePerArea) -> Vec<Shown> {
    vec![shown(value.ml_per_m2(), Unit::MillilitrePerSquareMetre, 1), shown(value.l_per_ha(), Unit::LitrePerHectare, 0)]
}

/// A dose per square metre, per 100 square metres and per hectare.
pub(crate) fn dose(value: ProductDose) -> Vec<Shown> {
    value.in_units().into_iter().map(|(value, unit)| shown(value, unit, three_figures(value))).collect()
}

/// An argument of a sentence.
pub(crate) fn argument(arg: &Arg) -> Argument {
    match arg {
        Arg::Number { value, unit, decimals } => Argument::Number(shown(*value, *unit, *decimals)),
        Arg::Text(text) => Argument::Text(text.clone()),
        Arg::Count(count) => Argument::Count(*count),
        Arg::Code(code) => Argument::Code(code.to_string()),
        Arg::Date(date) => Argument::Date(date.to_string()),
    }
}

/// A sentence.
pub(crate) fn said(said: &q::Said) -> Said {
    said_by(said, argument)
}

/// A sentence as a record has it: metric alone.
pub(crate) fn recorded_said(said: &q::Said) -> Said {
    said_by(said, recorded)
}

fn said_by(said: &q::Said, argument: impl Fn(&Arg) -> Argument) -> Said {
    Said {
        code: said.code.to_string(),
        args: said.args.iter().map(|(name, arg)| (name.to_string(), argument(arg))).collect(),
    }
}

/// How a check came out.
pub(crate) fn verdict(verdict: checks::Verdict) -> Verdict {
    match verdict {
        checks::Verdict::Go => Verdict::Go,
        checks::Verdict::Caution => Verdict::Caution,
        checks::Verdict::Stop => Verdict::Stop,
    }
}

/// A limit's force.
pub(crate) fn tag(tag: product::Tag) -> Tag {
    match tag {
        product::Tag::Statutory => Tag::Statutory,
        product::Tag::Advisory => Tag::Advisory,
        product::Tag::Own => Tag::Own,
    }
}

/// A check, with the reason for which it was passed if it was.
pub(crate) fn check(check: &Check, passed_because: Option<&str>) -> CheckView {
    CheckView {
        rule: check.rule.to_string(),
        verdict: verdict(check.verdict),
        said: said(&check.said),
        value: check.value.as_ref().map(argument),
        limit: check.limit.as_ref().map(argument),
        tag: tag(check.tag),
        source: check.source.to_string(),
        can_be_passed: check.can_be_passed(),
        passed_because: passed_because.map(str::to_owned),
    }
}

/// What is wrong with one field.
pub(crate) fn problem(field: impl Into<String>, what: &q::Said) -> FieldProblem {
    FieldProblem { field: field.into(), said: said(what) }
}

/// A figure as typed, for the trade; refused when its unit is none that the trade knows.
pub(crate) fn figure(typed: &Typed) -> Result<Figure, q::Said> {
    match Unit::from_code(&typed.unit) {
        Some(unit) => Ok(Figure::new(typed.text.clone(), unit)),
        None => Err(q::Said::new("unit-unknown").with("unit", Arg::Text(typed.unit.clone()))),
    }
}

/// A volume in litres with the decimals that a tank's marks can show.
pub(crate) fn litres(volume: Volume) -> Shown {
    shown(volume.l(), Unit::Litre, if volume.l() < 10.0 { 2 } else { 1 })
}

/// An amount of product in the unit of jug or scales.
pub(crate) fn product(amount: ProductAmount) -> Shown {
    match amount {
        ProductAmount::Volume(volume) if volume.ml() >= 10_000.0 => shown(volume.l(), Unit::Litre, 2),
        ProductAmount::Volume(volume) => shown(volume.ml(), Unit::Millilitre, decimals(volume.ml())),
        ProductAmount::Mass(mass) if mass.g() >= 10_000.0 => shown(mass.g() / 1_000.0, Unit::Kilogram, 2),
        ProductAmount::Mass(mass) => shown(mass.g(), Unit::Gram, decimals(mass.g())),
    }
}

/// What a ledger says, in a container's own unit.
pub(crate) fn balance(balance: Balance, unit: Unit) -> Shown {
    let (value, unit, decimals) = balance.in_unit(unit);
    shown(value, unit, decimals)
}

fn decimals(value: f64) -> u8 {
    u8::from(value < 100.0)
}
