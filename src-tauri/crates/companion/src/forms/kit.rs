//! The form of a kit: a sprayer with its nozzle, and what was last in it.

use evensward_core::checks::ready::last_in_sprayer;
use evensward_core::checks::weight::weight_on_the_back;
use evensward_core::kit::{JugSteps, Kit, LastIn};
use evensward_core::quantity::{
    Figure, FigureProblem, Length, Mass, Said, Swath, Unit, Volume, Weight, is_above, is_below,
};

use super::Problems;
use crate::dto::figures::FieldProblem;
use crate::dto::kit::{CalibrationView, KitInput, KitView};
use crate::show;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum LastWords {
    Nothing,
    CleanWater,
    LawnProduct,
    TotalHerbicide,
    Unknown,
}

const LAST_IN: &[(&str, LastWords)] = &[
    ("nothing", LastWords::Nothing),
    ("clean_water", LastWords::CleanWater),
    ("lawn_product", LastWords::LawnProduct),
    ("total_herbicide", LastWords::TotalHerbicide),
    ("unknown", LastWords::Unknown),
];

/// A tank larger than this is none that is carried; in litres (common practice, no source).
const LARGEST_TANK_L: f64 = 40.0;
/// A jug with steps larger than this measures no product for a lawn; in litres (common practice, no source).
const COARSEST_JUG_L: f64 = 1.0;
/// A lance that sprays further ahead of the feet than this is none that is carried; in metres (common practice, no source).
const FURTHEST_REACH_M: f64 = 3.0;
/// Scales with steps larger than this weigh no product for a lawn; in grams (common practice, no source).
const COARSEST_SCALES_G: f64 = 500.0;

fn tank(figure: &Figure) -> Result<Volume, FigureProblem> {
    let tank = Volume::from_figure(figure)?;
    at_most(tank.l(), LARGEST_TANK_L, figure.unit).map(|()| tank)
}

fn jug_step(figure: &Figure) -> Result<Volume, FigureProblem> {
    let step = Volume::from_figure(figure)?;
    at_most(step.l(), COARSEST_JUG_L, figure.unit).map(|()| step)
}

fn scales_step(figure: &Figure) -> Result<Mass, FigureProblem> {
    let step = Mass::from_figure(figure)?;
    at_most(step.g(), COARSEST_SCALES_G, figure.unit).map(|()| step)
}

fn reach(figure: &Figure) -> Result<Length, FigureProblem> {
    let reach = Length::from_figure(figure)?;
    at_most(reach.m(), FURTHEST_REACH_M, figure.unit).map(|()| reach)
}

fn at_most(base: f64, limit_base: f64, unit: Unit) -> Result<(), FigureProblem> {
    if is_above(base, limit_base) {
        Err(FigureProblem::TooLarge { limit: unit.from_base(limit_base), unit })
    } else {
        Ok(())
    }
}

/// The kit as the trade takes it, or everything that is wrong with the form.
pub(crate) fn parse(input: &KitInput) -> Result<Kit, Vec<FieldProblem>> {
    let mut problems = Problems::default();
    problems.line("name", &input.name);
    problems.line("nozzle", &input.nozzle);
    let tank = problems.figure("tank", &input.tank, tank);
    let empty_weight = problems.figure("empty_weight", &input.empty_weight, Weight::from_figure);
    let dead_volume = problems.figure("dead_volume", &input.dead_volume, Volume::from_figure_or_zero);
    if let (Some(tank), Some(dead_volume)) = (tank, dead_volume)
        && !is_below(dead_volume.l(), tank.l())
    {
        problems.add("dead_volume", &Said::new("dead-volume-fills-the-tank"));
    }
    let swath = problems.figure("swath", &input.swath, Swath::from_figure);
    let jug_step = problems.optional("jug_step", &input.jug_step, jug_step);
    let scales_step = problems.optional("scales_step", &input.scales_step, scales_step);
    if jug_step == Some(None) && scales_step == Some(None) {
        problems.add("jug_step", &Said::new("jug-or-scales-needed"));
    }
    let reach = problems.optional("reach", &input.reach, reach);
    let last_in = problems.choice("last_in", &input.last_in, LAST_IN);
    let kit = (|| {
        Some(Kit {
            tank: tank?,
            empty_weight: empty_weight?,
            dead_volume: dead_volume?,
            nozzle: input.nozzle.trim().to_owned(),
            swath: swath?,
            // A measure that is not there is never asked for: without scales no product by mass is measured.
            jug_steps: JugSteps { volume: jug_step?.unwrap_or(Volume::ZERO), mass: scales_step?.unwrap_or(Mass::ZERO) },
            last_in: match last_in? {
                LastWords::Nothing => LastIn::Nothing,
                LastWords::CleanWater => LastIn::CleanWater,
                LastWords::LawnProduct => LastIn::Product { name: String::new() },
                LastWords::TotalHerbicide => LastIn::TotalHerbicide,
                LastWords::Unknown => LastIn::Unknown,
            },
            cleaned_since: input.cleaned,
            fill_limit: None,
            reach: reach?,
            head: None,
            clean_signed_on: None,
            checked_on: None,
        })
    })();
    problems.give(kit)
}

/// The form with what the trade makes of it, and its current calibration.
pub(crate) fn view(input: &KitInput, calibration: Option<CalibrationView>) -> KitView {
    let parsed = parse(input);
    let full = parsed.as_ref().ok().map(Kit::weight_full_of_water);
    let last_in = parsed.as_ref().ok().map(|kit| last_in_sprayer(&kit.last_in, kit.cleaned_since));
    let checks = [full.map(weight_on_the_back), last_in];
    KitView {
        input: input.clone(),
        problems: parsed.err().unwrap_or_default(),
        calibration,
        full_weight: full.map(show::weight),
        pattern_base: None,
        spacing_swath: None,
        nominal_flow: None,
        colour: None,
        history: Vec::new(),
        cleaning: None,
        cleaning_owed: None,
        cleaning_steps: Vec::new(),
        checks: checks.iter().flatten().map(|check| show::check(check, None)).collect(),
    }
}
