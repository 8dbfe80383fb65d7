//! The form of a kit: a sprayer with its nozzle, and what was last in it.

use chrono::NaiveDate;
use evensward_core::checks::Check;
use evensward_core::checks::kit::{cleaning_owed, last_in_sprayer, sprayer_check, swath_by_pattern};
use evensward_core::checks::weight::weight_on_the_back;
use evensward_core::kit::{JugSteps, Kit, LastIn, NozzleSize, SprayHead, cleaning_steps};
use evensward_core::quantity::{Figure, FigureProblem, Length, Mass, Said, Unit, Volume, Weight, is_above, is_below};

use super::{Problems, cleaning, head};
use crate::dto::figures::FieldProblem;
use crate::dto::kit::{CalibrationPoint, CalibrationView, CleaningInput, KitInput, KitView};
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

pub(super) fn at_most(base: f64, limit_base: f64, unit: Unit) -> Result<(), FigureProblem> {
    if is_above(base, limit_base) {
        Err(FigureProblem::TooLarge { limit: unit.from_base(limit_base), unit })
    } else {
        Ok(())
    }
}

/// The kit as the trade takes it, or everything that is wrong with the form. When its cleaning was signed stands outside
/// the form.
pub(crate) fn parse(input: &KitInput) -> Result<Kit, Vec<FieldProblem>> {
    let mut problems = Problems::default();
    problems.line("name", &input.name);
    problems.line("nozzle", &input.nozzle);
    let tank = problems.figure("tank", &input.tank, tank);
    let empty_weight = problems.figure("empty_weight", &input.empty_weight, Weight::from_figure);
    let dead_volume = head::dead_volume(&mut problems, input);
    if let (Some(tank), Some(dead_volume)) = (tank, dead_volume)
        && !is_below(dead_volume.l(), tank.l())
    {
        problems.add("dead_volume", &Said::new("dead-volume-fills-the-tank"));
    }
    let head = head::head(&mut problems, input);
    let swath = head::swath(&mut problems, input, head.as_ref());
    let jug_step = problems.optional("jug_step", &input.jug_step, jug_step);
    let scales_step = problems.optional("scales_step", &input.scales_step, scales_step);
    if jug_step == Some(None) && scales_step == Some(None) {
        problems.add("jug_step", &Said::new("jug-or-scales-needed"));
    }
    let reach = problems.optional("reach", &input.reach, reach);
    let last_in = problems.choice("last_in", &input.last_in, LAST_IN);
    problems.optional_line("last_product", &input.last_product);
    let checked_on = if input.checked_on.trim().is_empty() {
        Some(None)
    } else {
        problems.date("checked_on", &input.checked_on).map(Some)
    };
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
                LastWords::LawnProduct => LastIn::Product { name: input.last_product.trim().to_owned() },
                LastWords::TotalHerbicide => LastIn::TotalHerbicide,
                LastWords::Unknown => LastIn::Unknown,
            },
            cleaned_since: input.cleaned,
            fill_limit: None,
            reach: reach?,
            // A head of which nothing is said is none, as in a kit kept before there was one.
            head: head.filter(|head| *head != SprayHead::default()),
            clean_signed_on: None,
            checked_on: checked_on?,
        })
    })();
    problems.give(kit)
}

/// What stands beside a kit's form in the register.
#[derive(Debug, Default)]
pub(crate) struct Beside {
    /// Its current calibration.
    pub calibration: Option<CalibrationView>,
    /// All its calibrations.
    pub history: Vec<CalibrationPoint>,
    /// Rules that hold between the kit and its calibration.
    pub checks: Vec<Check>,
    /// The cleaning that was signed after what was last in it.
    pub cleaning: Option<CleaningInput>,
}

/// The form with what the trade makes of it, and what stands beside it.
pub(crate) fn view(input: &KitInput, beside: Beside, today: NaiveDate) -> KitView {
    let parsed = parse(input);
    let kit = parsed.as_ref().ok();
    let signed_on = beside.cleaning.as_ref().and_then(|cleaning| cleaning.on.parse().ok());
    let head = head::head(&mut Problems::default(), input).unwrap_or_default();
    let full = kit.map(Kit::weight_full_of_water);
    let spacing = head::paved_width(input).or_else(|| head.spacing());
    let mut checks: Vec<Check> = full.map(weight_on_the_back).into_iter().collect();
    if let Some(kit) = kit {
        checks.push(last_in_sprayer(&kit.last_in, kit.cleaned_since, signed_on, None));
        checks.push(sprayer_check(kit.checked_on, today));
        checks.extend(spacing.map(|spacing| swath_by_pattern(kit.swath, spacing)));
    }
    checks.extend(beside.checks);
    let owed = kit.and_then(|kit| cleaning_owed(&kit.last_in, kit.cleaned_since, signed_on));
    let steps = kit.filter(|_| owed.is_some()).map_or(&[][..], |kit| cleaning_steps(&kit.last_in));
    KitView {
        input: input.clone(),
        calibration: beside.calibration,
        full_weight: full.map(show::weight),
        pattern_base: head.base().map(show::length),
        spacing_swath: spacing.map(show::length),
        nominal_flow: head.nominal(None).map(show::flow),
        colour: NozzleSize::named(input.nozzle_size.trim())
            .filter(|_| input.nozzle_by == "size")
            .map(|size| size.colour.to_owned()),
        history: beside.history,
        cleaning: beside.cleaning.as_ref().map(cleaning::view),
        cleaning_owed: owed.map(|code| show::said(&Said { code, args: Vec::new() })),
        cleaning_steps: steps.iter().map(|code| show::said(&Said::new(code))).collect(),
        checks: checks.iter().map(|check| show::check(check, None)).collect(),
        problems: parsed.err().unwrap_or_default(),
    }
}
