//! The plan on the screen: the choice it starts from, the plan that comes of a choice, and its sums laid open.
//!
//! Core plans; here a choice is put together from what was chosen, and a plan is turned into what a screen shows.

use chrono::NaiveDate;
use evensward_core::checks::is_barred;
use evensward_core::plan::{
    self, Choice, Heading, NarrowOption, NarrowReport, PASSES_LOOKED_AT, PASSES_MOST, PASSES_USUAL, Plan, Remedy,
    Walkable,
};
use evensward_core::product::fed;
use evensward_core::quantity::{
    Angle, Area, Arg, Doubt, FlowRate, Pace, ProductAmount, ProductDose, RELATIVE_TOLERANCE, Said as Sentence, Unit,
};
use evensward_core::visit::command::{Facts, Refusal};
use evensward_core::visit::decide::make_plan;
use evensward_core::visit::event::Guide;
use evensward_core::visit::{Position, gates};

use super::codes::{GUIDES, HEADINGS, NARROW_AT, STARTS, code_of};
use super::directions;
use super::fills::fill_views;
use super::parsing::Problems;
use super::refusal;
use super::strips;
use crate::dto::ask::{Failure, PlanPreview};
use crate::dto::figures::{FieldProblem, Said, Shown, Typed};
use crate::dto::visit::{NarrowOptionView, NarrowView, NutrientView, PlanChoice, PlanView, SumLine, WaterOptionView};
use crate::show;

/// Less than this at the ends of a pass is not worth a sentence, in square metres (own setting).
const ENDS_SAID_M2: f64 = 0.1;

/// A plan's choice as typed, for the planner.
pub(crate) fn plan_choice(position: &Position, facts: &Facts, input: &PlanChoice) -> Result<(Choice, Guide), Failure> {
    let mut problems = Problems::default();
    let n_passes = u8::try_from(input.n_passes).ok().filter(|passes| (1..=PASSES_MOST).contains(passes));
    if n_passes.is_none() {
        let most = Arg::Count(PASSES_MOST.into());
        let said = Sentence::new("passes-out-of-range").with("least", Arg::Count(1)).with("most", most);
        problems.add("n_passes", &said);
    }
    let dose = problems.optional("dose", &input.dose, ProductDose::from_figure);
    if input.dose.text.trim().is_empty() {
        problems.add("dose", &Sentence::new("empty"));
    }
    let pace = problems.optional("pace", &input.pace, Pace::from_figure);
    let start_side = problems.code("start", &input.start, STARTS);
    let guide = problems.code("guide", &input.guide, GUIDES);
    let headings: Vec<Heading> =
        input.headings.iter().filter_map(|heading| problems.code("headings", heading, HEADINGS)).collect();
    let angle = Angle::from_deg(input.angle_deg).ok().filter(|angle| angle.deg() < 180.0);
    if angle.is_none() {
        problems.add("angle_deg", &Sentence::new("angle-out-of-range"));
    }
    let narrow_at = problems.code("narrow_at", &input.narrow_at, NARROW_AT);
    let made = match (n_passes, dose, start_side, guide, angle, narrow_at) {
        (Some(n_passes), Some(dose), Some(start_side), Some(guide), Some(angle), Some(narrow_at)) => {
            let mut choice = Choice::plain(n_passes, dose);
            let wanted = headings.iter().copied().chain(std::iter::repeat(Heading::Along));
            choice.headings = wanted.take(usize::from(n_passes)).collect();
            choice.start_side = start_side;
            choice.angle = angle;
            choice.narrow_at = narrow_at;
            choice.edge_first = input.edge_first;
            choice.pace = pace;
            choice.trim = position.kit.as_ref().map_or(1.0, |kit| facts.trim_for(kit.kit_id));
            Some((choice, guide))
        }
        _ => None,
    };
    let (choice, guide) = problems.settle(made)?;
    if input.narrow.is_empty() {
        return Ok((choice, guide));
    }
    Ok((with_remedy(position, choice, &input.narrow)?, guide))
}

/// The choice with the remedy of that code for every narrow strip.
pub(crate) fn with_remedy(position: &Position, choice: Choice, code: &str) -> Result<Choice, Failure> {
    let plan = make_plan(position, &choice).map_err(|refusal| refusal::failure(position, refusal))?;
    let mut chosen = choice;
    for report in &plan.narrow {
        let remedy = best_of_code(report, code).or((code == "as_it_is").then_some(Remedy::AsItIs));
        let Some(remedy) = remedy else {
            let problem = show::problem("narrow", &Sentence::new("not-one-of-these"));
            return Err(Failure::refused(vec![problem]));
        };
        chosen.narrow = chosen.narrow.with(report.heading, Some(remedy));
    }
    Ok(chosen)
}

/// The remedy of a code: of several numbers of passes the one that core takes or suggests, else the first walkable one.
fn best_of_code(report: &NarrowReport, code: &str) -> Option<Remedy> {
    let of_code = |remedy: &Remedy| remedy_code(*remedy) == code;
    [report.taken, report.suggested].into_iter().find(of_code).or_else(|| {
        let mut options = report.options.iter().filter(|option| of_code(&option.remedy));
        let first = options.clone().next();
        options.find(|option| option.is_walkable).or(first).map(|option| option.remedy)
    })
}

/// The code of a remedy on the screen.
pub(crate) const fn remedy_code(remedy: Remedy) -> &'static str {
    match remedy {
        Remedy::AsItIs => "as_it_is",
        Remedy::SomePasses { .. } => "some_passes",
        Remedy::EvenOut => "even_out",
        Remedy::OtherDirection => "other_direction",
        Remedy::Leave => "leave",
    }
}

/// The choice that a plan starts from: the label's dose as typed, the own pace, passes that keep the water in range.
pub(crate) fn first_choice(position: &Position, dose_as_typed: Typed) -> PlanChoice {
    let n_passes = suggested_passes(position);
    let headings = vec!["along".to_owned(); usize::from(n_passes)];
    let best = directions::best(position);
    PlanChoice {
        n_passes: u32::from(n_passes),
        headings,
        start: best.as_ref().map_or("left", |best| code_of(&best.start_side, STARTS)).to_owned(),
        narrow: String::new(),
        pace: Typed::empty("m/s"),
        dose: dose_as_typed,
        guide: "pass".to_owned(),
        angle_deg: best.map_or(0.0, |best| best.angle.deg()),
        narrow_at: "last".to_owned(),
        edge_first: false,
        later: Vec::new(),
        mixtures: "one".to_owned(),
    }
}

/// The passes that keep the label's water at the own pace: the usual number where it will do, else the nearest.
fn suggested_passes(position: &Position) -> u8 {
    let own =
        options(position, None).options.into_iter().filter(|option| option.is_own_pace).map(|option| option.n_passes);
    own.min_by_key(|passes| passes.abs_diff(PASSES_USUAL)).unwrap_or(PASSES_USUAL)
}

fn options(position: &Position, walkable: Option<Walkable>) -> plan::WaterOptions {
    let (Some(label), Some(kit)) = (&position.label, &position.kit) else {
        return plan::WaterOptions { options: Vec::new(), ways_out: Vec::new() };
    };
    let calibration = &kit.calibration;
    plan::water_options(
        calibration.flow,
        calibration.pace,
        kit.kit.swath,
        &label.label.water,
        walkable.unwrap_or_default(),
        PASSES_LOOKED_AT,
    )
}

/// What comes of a choice: a plan, or what stands against it, field by field.
pub(crate) fn preview(position: &Position, facts: &Facts, today: NaiveDate, input: PlanChoice) -> PlanPreview {
    let parsed = match plan_choice(position, facts, &input) {
        Ok((choice, _)) => choice,
        Err(failure) => return PlanPreview { choice: input, plan: None, problems: failure.problems },
    };
    match make_plan(position, &parsed) {
        Ok(plan) => {
            let mut view = Box::new(plan_view(position, &parsed, &plan));
            let mut beside = gates::dose_checks(position, facts, parsed.dose, today);
            beside.extend(gates::shelf_checks(position, facts, &plan, today));
            view.checks.extend(beside.iter().map(|check| show::check(check, None)));
            view.nutrients = nutrients(position, facts, today, &plan);
            PlanPreview { choice: understood(input, &plan), plan: Some(view), problems: Vec::new() }
        }
        Err(refusal) => PlanPreview { choice: input, plan: None, problems: problems(refusal) },
    }
}

/// The choice as it was understood: the remedy that core took where none was chosen, headings as they will be walked.
pub(crate) fn understood(mut input: PlanChoice, plan: &Plan) -> PlanChoice {
    if input.narrow.is_empty()
        && let Some(report) = plan.narrow.first()
    {
        remedy_code(report.taken).clone_into(&mut input.narrow);
    }
    input
}

pub(crate) fn problems(refusal: Refusal) -> Vec<FieldProblem> {
    match refusal {
        Refusal::NoPlan(reasons) => reasons.iter().map(|said| show::problem(field_of(&said.code), said)).collect(),
        Refusal::Lawn { lawn_idx, because } => {
            let of_lawn = |problem: FieldProblem| FieldProblem {
                field: format!("later.{}.{}", lawn_idx.saturating_sub(1), problem.field),
                ..problem
            };
            problems(*because).into_iter().map(of_lawn).collect()
        }
        Refusal::First(reasons) => reasons.iter().map(|said| show::problem("plan", said)).collect(),
        Refusal::Field { field, said } => vec![show::problem(field, &said)],
        other => vec![show::problem("plan", &Sentence::new("plan-not-now").with("why", Arg::Text(other.to_string())))],
    }
}

fn field_of(code: &str) -> &'static str {
    match code {
        "dose-kinds-differ" | "no-dose" => "dose",
        "number-of-passes" | "headings-and-passes-differ" => "n_passes",
        "both-headings-turned" | "no-such-number-of-passes" => "narrow",
        _ => "plan",
    }
}

/// A plan as a screen shows it.
pub(crate) fn plan_view(position: &Position, choice: &Choice, plan: &Plan) -> PlanView {
    let kit = position.kit.as_ref();
    let passed = position.passed_rules();
    let steps = kit.and_then(|kit| kit.calibration.steps_per_min_at(plan.pace));
    let metres: f64 = plan.passes.iter().flat_map(|pass| &pass.legs).map(|leg| leg.length.m()).sum();
    let empty: f64 = plan.passes.iter().map(|pass| pass.empty.m()).sum();
    let seconds: f64 = plan.passes.iter().map(|pass| pass.time_in_all(plan.pace).s()).sum();
    PlanView {
        treated: show::area(plan.treated.area),
        product: show::product(plan.product),
        mixture: show::litres(plan.mixture),
        water: show::litres(plan.clean_water),
        per_pass: plan.passes.iter().map(|pass| show::litres(pass.volume)).collect(),
        dose_in_units: show::dose(plan.dose),
        water_in_units: show::per_area(plan.water),
        pace: show::pace(plan.pace),
        steps_per_min: steps.map(|steps| show::shown(steps, Unit::StepsPerMinute, 0)),
        minutes: show::shown(seconds / 60.0, Unit::Minute, 0),
        metres: show::shown(metres, Unit::Metre, 0),
        empty: show::shown(empty, Unit::Metre, 0),
        turns: plan.passes.iter().map(|pass| u32::from(pass.n_turns)).sum(),
        ends: ends(plan),
        rounding_error: show::shown(plan.rounding_error_percent, Unit::Percent, 1),
        weight: show::weight(plan.weight_full),
        fills: fill_views(position, plan),
        sums: sums(choice, plan),
        narrow: plan.narrow.first().map(|report| narrow_view(report, &passed)),
        directions: directions::views(position, choice),
        water_options: water_options(position, choice),
        checks: plan.checks.iter().map(|check| show::check(check, None)).collect(),
        drawing: strips::of_plan(position, plan),
        pass_drawings: plan.passes.iter().map(|pass| strips::of_pass(position, plan, pass.number)).collect(),
        notes: notes(position, choice, plan),
        nutrients: Vec::new(),
        several: None,
    }
}

/// What the products of a plan feed, and with it what this calendar year has fed, as if all lay on the same ground.
pub(crate) fn nutrients(position: &Position, facts: &Facts, today: NaiveDate, plan: &Plan) -> Vec<NutrientView> {
    let own = position.label.iter().map(|own| (&own.label, plan.dose));
    let partners = position.partners.iter().map(|partner| (&partner.label.label, partner.dose));
    let grams = |value: f64| show::shown(value, Unit::GramPerSquareMetre, 2);
    fed(own.chain(partners))
        .into_iter()
        .map(|(nutrient, g_per_m2)| NutrientView {
            element: nutrient.code().to_owned(),
            now: grams(g_per_m2),
            season: grams(g_per_m2 + facts.fed_in_year_of(today, nutrient)),
        })
        .collect()
}

fn line(code: &'static str, value: Shown, is_result: bool) -> SumLine {
    SumLine { said: show::said(&Sentence::new(code)), value, is_result }
}

fn sums(choice: &Choice, plan: &Plan) -> Vec<SumLine> {
    let [dose, ..] = choice.dose.in_units();
    let own_volume = ProductAmount::Volume(plan.own_volume);
    let mut lines = vec![line("sum-treated", show::area(plan.treated.area), false)];
    if (choice.dose * plan.treated.area).base() > plan.product_exact.base() * (1.0 + RELATIVE_TOLERANCE) {
        lines.push(line("sum-lower-area", show::area(plan.treated.lower()), false));
    }
    lines.extend([
        line("sum-dose", show::shown(dose.0, dose.1, 3), false),
        line("sum-product-exact", show::product(plan.product_exact), false),
        line("sum-product-measured", show::product(plan.product), true),
        line("sum-walked", show::litres(plan.walked), false),
        line("sum-dead-volume", show::litres(plan.dead), false),
        line("sum-own-volume", show::product(own_volume), false),
        line("sum-clean-water-in-tank", show::litres(choice.clean_water_in_tank), false),
        line("sum-clean-water", show::litres(plan.clean_water), true),
    ]);
    lines
}

pub(crate) fn narrow_view(report: &NarrowReport, passed: &[&str]) -> NarrowView {
    let as_it_is = Sentence::new("narrow-as-it-is")
        .with("width", Arg::number(report.width.m(), Unit::Metre, 2))
        .with("factor", Arg::number(report.as_it_is_factor, Unit::Times, 1));
    // Of the numbers of passes that would do, the one taken or suggested stands for all; walking it like the others is
    // what the sentence above warns of, and no way to treat it.
    let shown = |option: &&NarrowOption| match option.remedy {
        Remedy::SomePasses { .. } => Some(option.remedy) == best_of_code(report, "some_passes"),
        Remedy::AsItIs => report.taken == Remedy::AsItIs,
        Remedy::EvenOut | Remedy::OtherDirection | Remedy::Leave => true,
    };
    NarrowView {
        width: show::length(report.width),
        as_is_factor: report.as_it_is_factor,
        said: show::said(&as_it_is),
        options: report.options.iter().filter(shown).map(|option| narrow_option(report, option, passed)).collect(),
    }
}

fn narrow_option(report: &NarrowReport, option: &NarrowOption, passed: &[&str]) -> NarrowOptionView {
    let code = match option.remedy {
        Remedy::AsItIs => "narrow-option-as-it-is",
        Remedy::SomePasses { .. } => "narrow-option-some-passes",
        Remedy::EvenOut => "narrow-option-even-out",
        Remedy::OtherDirection => "narrow-option-other-direction",
        Remedy::Leave => "narrow-option-leave",
    };
    let mut said = Sentence::new(code)
        .with("water", Arg::number(option.water.ml_per_m2(), Unit::MillilitrePerSquareMetre, 1))
        .with("extra", Arg::number(option.extra_water.l(), Unit::Litre, 1))
        .with("left_out", Arg::number(option.left_out.m2(), Unit::SquareMetre, 1))
        .with("turn", Arg::number(report.fan_turn.deg(), Unit::Degree, 0));
    if let Remedy::SomePasses { k } = option.remedy {
        said = said.with("passes", Arg::Count(u32::from(k)));
    }
    if let Some(pace) = option.pace {
        said = said.with("pace", Arg::number(pace.m_per_s(), Unit::MetrePerSecond, 2));
    }
    NarrowOptionView {
        remedy: remedy_code(option.remedy).to_owned(),
        said: show::said(&said),
        checks: option.checks.iter().map(|check| show::check(check, None)).collect(),
        can_be_chosen: !is_barred(&option.checks, passed),
        is_chosen: option.remedy == report.taken,
    }
}

fn water_options(position: &Position, choice: &Choice) -> Vec<WaterOptionView> {
    options(position, Some(choice.walkable))
        .options
        .into_iter()
        .map(|option| WaterOptionView {
            n_passes: u32::from(option.n_passes),
            pace: show::pace(option.pace),
            is_own_pace: option.is_own_pace,
            water: show::shown(option.water.ml_per_m2(), Unit::MillilitrePerSquareMetre, 1),
            is_in_range: true,
        })
        .collect()
}

/// What the square ends miss and wet beyond the lawn, for one pass of each heading.
fn ends(plan: &Plan) -> Vec<Said> {
    let area = |area: Area| Arg::number(area.m2(), Unit::SquareMetre, 1);
    let mut said = Vec::new();
    if plan.ends.missed.m2() >= ENDS_SAID_M2 {
        said.push(Sentence::new("plan-ends-missed").with("area", area(plan.ends.missed)));
    }
    if plan.ends.overshot.m2() >= ENDS_SAID_M2 {
        let water = Arg::number(plan.ends.overshot_water.l(), Unit::Litre, 2);
        said.push(Sentence::new("plan-ends-overshot").with("area", area(plan.ends.overshot)).with("water", water));
    }
    said.iter().map(show::said).collect()
}

fn notes(position: &Position, choice: &Choice, plan: &Plan) -> Vec<Said> {
    let percent = (choice.trim - 1.0) * 100.0;
    let mut notes: Vec<Said> = ways_out(position, choice).into_iter().collect();
    if plan.own_volume.l() <= 0.0 && plan.product.base() > 0.0 {
        notes.push(show::said(&Sentence::new("plan-room-unknown")));
    }
    if percent.abs() >= 0.5 {
        let code = if percent > 0.0 { "plan-water-trimmed-up" } else { "plan-water-trimmed-down" };
        notes.push(show::said(&Sentence::new(code).with("percent", Arg::number(percent.abs(), Unit::Percent, 1))));
    }
    notes.extend(doubt(position, choice, plan).map(|said| show::said(&said)));
    if let Some(reach) = position.kit.as_ref().and_then(|kit| kit.kit.reach) {
        let reach = Arg::number(reach.m(), Unit::Metre, 2);
        notes.push(show::said(&Sentence::new("plan-stop-short").with("reach", reach)));
    }
    notes
}

/// The area's doubt, where it matters: it takes from the product, or moves it by more than a step of the measure.
fn doubt(position: &Position, choice: &Choice, plan: &Plan) -> Option<Sentence> {
    let doubt = plan.treated.doubt;
    let area = Arg::number(plan.treated.area.less(plan.treated.lower()).m2(), Unit::SquareMetre, 1);
    let said = |code| Sentence::new(code).with("area", area.clone()).with("percent", percent_of(doubt));
    let is_lower_counted =
        (choice.dose * plan.treated.area).base() > plan.product_exact.base() * (1.0 + RELATIVE_TOLERANCE);
    if is_lower_counted {
        return Some(
            said("plan-lower-area-counts").with("lower", Arg::number(plan.treated.lower().m2(), Unit::SquareMetre, 1)),
        );
    }
    let moved = choice.dose * plan.treated.area.less(plan.treated.lower());
    let steps = position.kit.as_ref().map(|kit| kit.kit.jug_steps)?;
    let step = match moved {
        ProductAmount::Volume(_) => ProductAmount::Volume(steps.volume),
        ProductAmount::Mass(_) => ProductAmount::Mass(steps.mass),
    };
    let step = choice.jug_step.unwrap_or(step);
    (moved.base() > step.base()).then(|| {
        let [amount] = [show::product(moved)];
        let unit = Unit::from_code(&amount.unit).unwrap_or(Unit::Times);
        said("plan-doubt-moves-product").with("product", Arg::number(amount.value, unit, amount.decimals))
    })
}

fn percent_of(doubt: Doubt) -> Arg {
    Arg::number(doubt.percent(), Unit::Percent, 1)
}

/// Where no passes at a walkable pace bring the water into the label's range: what the nozzle would have to give.
fn ways_out(position: &Position, choice: &Choice) -> Option<Said> {
    let found = options(position, Some(choice.walkable));
    let way = found.ways_out.iter().find(|way| way.n_passes == choice.n_passes).or(found.ways_out.first())?;
    let flow = |flow: FlowRate| Arg::number(flow.l_per_min(), Unit::LitrePerMinute, 2);
    let passes = Arg::Count(u32::from(way.n_passes));
    let said = match (way.least_flow, way.most_flow) {
        (Some(least), Some(most)) => {
            Sentence::new("plan-nozzle-between").with("least", flow(least)).with("most", flow(most))
        }
        (Some(least), None) => Sentence::new("plan-nozzle-at-least").with("least", flow(least)),
        (None, Some(most)) => Sentence::new("plan-nozzle-at-most").with("most", flow(most)),
        (None, None) => return None,
    };
    Some(show::said(&said.with("passes", passes)))
}
