//! The panels after a pass: what it really took and why, how to put it right, and where the rest goes.

use evensward_core::checks::is_barred;
use evensward_core::quantity::{Arg, Said as Sentence, Unit, Volume};
use evensward_core::visit::Position;
use evensward_core::visit::correct::{Correction, Term, UseUp, corrections, is_believable, use_ups};
use evensward_core::visit::event::{CorrectionKind, UseUpKind};

use super::super::codes::{CORRECTIONS, USE_UPS, code_of};
use super::super::fills;
use super::plain_checks;
use crate::dto::figures::Shown;
use crate::dto::visit::{CorrectionView, Panel, StrayedView, SumLine, TimeView, UseUpView};
use crate::show;

fn sum_lines(terms: &[Term]) -> Vec<SumLine> {
    let last_idx = terms.len().saturating_sub(1);
    let line =
        |(idx, term): (usize, &Term)| sum_line(term.code, show::shown(term.litres, Unit::Litre, 1), idx == last_idx);
    terms.iter().enumerate().map(line).collect()
}

fn sum_line(code: &'static str, value: Shown, is_result: bool) -> SumLine {
    SumLine { said: show::said(&Sentence::new(code)), value, is_result }
}

pub(super) fn correct(position: &Position) -> Panel {
    // What a pass really takes, by all passes since the tank was last read.
    let factor = position.shown_factor(position.walk.pass).unwrap_or(1.0);
    let planned = position.walk.truths.last().map_or(Volume::ZERO, |truth| truth.planned);
    let passed = position.passed_rules();
    let options = corrections(position)
        .into_iter()
        .map(|way| CorrectionView {
            choice: code_of(&way.kind, CORRECTIONS).to_owned(),
            said: show::said(&correction_said(&way)),
            sums: sum_lines(&way.terms),
            checks: plain_checks(&way.checks),
            can_be_chosen: !is_barred(&way.checks, &passed),
            is_advised: way.is_advised,
        })
        .collect();
    let said = show::said(&Sentence::new(match factor > 1.0 {
        _ if !is_believable(factor) => "pass-used-far-off",
        true => "pass-used-more",
        false => "pass-used-less",
    }));
    let used = show::litres(planned.times(factor));
    let planned = show::litres(planned);
    Panel::Correct { used, planned, time: time(position), strayed: strayed(position), said, options }
}

fn correction_said(way: &Correction) -> Sentence {
    let water = way.water_now + way.water_more;
    let code = match way.kind {
        CorrectionKind::AddWater if way.water_more <= Volume::ZERO => "correct-add-water-now",
        CorrectionKind::AddWater if way.water_now > Volume::ZERO => "correct-add-water-now-and-later",
        CorrectionKind::AddWater => "correct-add-water-later",
        CorrectionKind::LessWater => "correct-less-water",
        CorrectionKind::FewerPasses if water > Volume::ZERO => "correct-fewer-passes-more-water",
        CorrectionKind::FewerPasses if way.water_less > Volume::ZERO => "correct-fewer-passes-less-water",
        CorrectionKind::FewerPasses => "correct-fewer-passes",
        CorrectionKind::MorePasses if water > Volume::ZERO => "correct-more-passes-more-water",
        CorrectionKind::MorePasses if way.water_less > Volume::ZERO => "correct-more-passes-less-water",
        CorrectionKind::MorePasses => "correct-more-passes",
        CorrectionKind::AsPlanned => "correct-as-planned",
    };
    Sentence::new(code)
        .with("water", Arg::number(water.max(way.water_less).l(), Unit::Litre, 1))
        .with("now", Arg::number(way.water_now.l(), Unit::Litre, 1))
        .with("later", Arg::number(way.water_more.l(), Unit::Litre, 1))
        .with("passes", Arg::Count(u32::from(way.n_passes)))
}

/// How long the last pass took against the plan.
fn time(position: &Position) -> Option<TimeView> {
    let truth = position.walk.truths.last().filter(|truth| truth.walked_s > 0.0)?;
    let minutes = |seconds: f64| show::shown(seconds / 60.0, Unit::Minute, 1);
    Some(TimeView { walked: minutes(truth.walked_s), planned: minutes(position.walking_s(truth.pass, 0)) })
}

/// What may lie behind a pass that took clearly more or less than it should, and what to do about what was told.
fn strayed(position: &Position) -> Option<StrayedView> {
    let strayed = position.strayed()?;
    let percent = Arg::number((strayed.use_share - 1.0).abs() * 100.0, Unit::Percent, 0);
    let told = strayed.told.as_ref().map(|told| told.cause);
    Some(StrayedView {
        pass: u32::from(strayed.pass),
        said: show::said(&strayed.said().with("percent", percent)),
        causes: strayed.causes.iter().map(|cause| cause.code().to_owned()).collect(),
        told: told.map_or("", |cause| cause.code()).to_owned(),
        advice: told.map(|cause| show::said(&Sentence::new(cause.advice()))),
    })
}

pub(super) fn use_up(position: &Position) -> Panel {
    let passed = position.passed_rules();
    let options = use_ups(position)
        .into_iter()
        .map(|way| UseUpView {
            choice: code_of(&way.kind, USE_UPS).to_owned(),
            said: show::said(&use_up_said(&way)),
            strips: strips(&way),
            sums: use_up_sums(position, &way),
            checks: plain_checks(&way.checks),
            can_be_chosen: !is_barred(&way.checks, &passed),
            is_advised: way.is_advised,
        })
        .collect();
    Panel::UseUp {
        leftover: show::litres(position.walk.in_tank),
        product: show::product(position.product_in_tank().unwrap_or_else(fills::no_product)),
        strayed: strayed(position),
        options,
    }
}

fn strips(way: &UseUp) -> Vec<u32> {
    let strips = way.strips.iter().flat_map(|rest| &rest.strips);
    strips.map(|place| u32::from(place.saturating_add(1))).collect()
}

fn use_up_said(way: &UseUp) -> Sentence {
    let is_nothing = way.checks.iter().any(|check| check.said.code == "leftover-none");
    let said = Sentence::new(match (way.kind, &way.strips) {
        (UseUpKind::WholePass, _) => "using-up-whole-pass",
        (UseUpKind::Part, Some(rest)) if rest.times > 1.0 => "using-up-part-several-times",
        (UseUpKind::Part, Some(_)) => "using-up-part-on-strips",
        (UseUpKind::Part, None) => "using-up-part",
        (UseUpKind::None, _) if is_nothing => "using-up-nothing-left",
        (UseUpKind::None, _) => "using-up-keep",
    });
    let said = said
        .with("water", Arg::number(way.water.l(), Unit::Litre, 1))
        .with("area", Arg::number(way.area.m2(), Unit::SquareMetre, 1));
    let Some(rest) = &way.strips else { return said };
    let number = |place: Option<&u16>| Arg::Count(place.map_or(0, |place| u32::from(place.saturating_add(1))));
    // Bounded, so that the cast keeps the whole part.
    let times = rest.times.ceil().clamp(1.0, 100.0) as u32;
    said.with("first", number(rest.strips.first()))
        .with("last", number(rest.strips.last()))
        .with("ground", Arg::number(rest.area.m2(), Unit::SquareMetre, 1))
        .with("times", Arg::Count(times))
}

/// The sum of a rest laid open: dilution to a whole pass, or the smallest ground that may take it.
fn use_up_sums(position: &Position, way: &UseUp) -> Vec<SumLine> {
    let litres = |volume: Volume| show::litres(volume);
    match (way.kind, way.product, way.open) {
        (UseUpKind::WholePass, _, _) => vec![
            sum_line("term-whole-pass-takes", litres(position.walk.in_tank + way.water), false),
            sum_line("term-left-in-tank", litres(position.walk.in_tank), false),
            sum_line("term-water-to-add", litres(way.water), true),
        ],
        (UseUpKind::Part, Some(product), Some(open)) => vec![
            sum_line("term-product-left", show::product(product), false),
            sum_line("term-dose-still-open", show::shown(open.base(), open.base_unit(), 2), false),
            sum_line("term-smallest-ground", show::area(way.area), true),
        ],
        _ => Vec::new(),
    }
}
