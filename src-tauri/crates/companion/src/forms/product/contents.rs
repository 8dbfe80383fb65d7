//! What a product contains and how it goes into water: active substances, doses by target, what it feeds, how it dissolves.
//!
//! Invariant: a share of the mass of a liquid becomes grams only with a density; without one the field says so.

use evensward_core::product::solubility::{OwnTable, SolubilityPoint};
use evensward_core::product::{
    Active, Analysis, AnalysisBasis, Content, Dissolving, Formulation, Nutrient, Source, Stated, StatedAs, Tag, Tagged,
    TargetUse,
};
use evensward_core::quantity::{Arg, Density, FigureProblem, ProductDose, Said, Temperature, parse_number};

use super::super::Problems;
use super::{PURPOSES, legal_tag};
use crate::dto::figures::Typed;
use crate::dto::product::{AnalysisInput, ProductInput};

const BASES: &[(&str, AnalysisBasis)] = &[("ww", AnalysisBasis::ByMass), ("wv", AnalysisBasis::ByVolume)];
const STATED_AS: &[(&str, StatedAs)] =
    &[("element", StatedAs::Element), ("oxide", StatedAs::Oxide), ("", StatedAs::Element)];
/// More of a substance than this in a litre of product there is none, in grams (common practice, no source).
const MOST_G_PER_L: f64 = 2_500.0;
/// More of a product than this does not dissolve in a litre of water, in grams (common practice, no source).
const MOST_DISSOLVED_G_PER_L: f64 = 5_000.0;

/// What this part of the form came to.
#[derive(Debug)]
pub(super) struct Contents {
    pub actives: Vec<Active>,
    pub formulation: Option<Formulation>,
    pub uses: Vec<TargetUse>,
    pub analysis: Option<Analysis>,
    pub dissolving: Option<Dissolving>,
}

/// Reads it; every field that is wrong is named.
pub(super) fn read(input: &ProductInput, density: Option<Density>, problems: &mut Problems) -> Option<Contents> {
    let formulation = formulation(input, problems);
    let actives = actives(input, density, problems);
    let uses = uses(input, problems);
    let analysis = analysis(&input.analysis, problems);
    let dissolving = dissolving(input, problems);
    Some(Contents {
        actives: actives?,
        formulation: formulation?,
        uses: uses?,
        analysis: analysis?,
        dissolving: dissolving?,
    })
}

/// A number between nothing and the most, not nothing.
fn number(problems: &mut Problems, field: &str, text: &str, most: f64) -> Option<f64> {
    let said = match parse_number(text) {
        Ok(value) if value > 0.0 && value <= most => return Some(value),
        Ok(value) if value <= 0.0 => FigureProblem::Zero.said(),
        Ok(_) => Said::new("number-too-large").with("limit", Arg::Text(format!("{most}"))),
        Err(problem) => FigureProblem::from(problem).said(),
    };
    problems.add(field, &said);
    None
}

fn formulation(input: &ProductInput, problems: &mut Problems) -> Option<Option<Formulation>> {
    let code = input.formulation.trim();
    if code.is_empty() {
        return Some(None);
    }
    let found = Formulation::from_code(&code.to_uppercase());
    if found.is_none() {
        problems.add("formulation", &Said::new("formulation-unknown").with("code", Arg::Text(code.to_owned())));
    }
    found.map(Some)
}

fn actives(input: &ProductInput, density: Option<Density>, problems: &mut Problems) -> Option<Vec<Active>> {
    let read: Vec<Option<Active>> = input
        .actives
        .iter()
        .enumerate()
        .map(|(idx, active)| {
            problems.line(&format!("actives.{idx}.name"), &active.name);
            let field = format!("actives.{idx}.content");
            let most = match active.content.unit.as_str() {
                "percent_ww" | "percent_wv" => 100.0,
                "g/kg" => 1_000.0,
                "g/L" => MOST_G_PER_L,
                _ => {
                    problems.add(&field, &Said::new("wrong-unit"));
                    return None;
                }
            };
            let value = number(problems, &field, &active.content.text, most)?;
            let content = match active.content.unit.as_str() {
                "percent_wv" => Content::of_volume_percent(value),
                "percent_ww" => Content::of_mass_percent(value, density),
                "g/L" => Content::GramsPerLitre(value),
                _ => Content::GramsPerKilogram(value),
            };
            Some(Active { name: active.name.trim().to_owned(), content })
        })
        .collect();
    read.into_iter().collect()
}

fn uses(input: &ProductInput, problems: &mut Problems) -> Option<Vec<TargetUse>> {
    let tag = match input.legal_class.as_str() {
        "plant_protection" => legal_tag(None),
        _ => Tag::Advisory,
    };
    let read: Vec<Option<TargetUse>> = input
        .targets
        .iter()
        .enumerate()
        .map(|(idx, target)| {
            let purpose = problems.choice(&format!("targets.{idx}.purpose"), &target.purpose, PURPOSES);
            problems.line(&format!("targets.{idx}.target"), &target.target);
            let dose = problems.figure(&format!("targets.{idx}.dose"), &target.dose, ProductDose::from_figure);
            let field = format!("targets.{idx}.highest_dose");
            let highest = problems.optional(&field, &target.highest_dose, ProductDose::from_figure);
            if let (Some(dose), Some(Some(highest))) = (dose, highest)
                && (dose.kind() != highest.kind() || dose.base() > highest.base())
            {
                problems.add(&field, &Said::new("target-dose-above-its-highest"));
            }
            Some(TargetUse {
                purpose: purpose?,
                target: target.target.trim().to_owned(),
                dose: dose?,
                highest: highest?.map(|value| Tagged { value, tag, source: Source::Label }),
            })
        })
        .collect();
    read.into_iter().collect()
}

fn analysis(input: &AnalysisInput, problems: &mut Problems) -> Option<Option<Analysis>> {
    let lines = [
        ("analysis.n", &input.n, Nutrient::Nitrogen, ""),
        ("analysis.p", &input.p, Nutrient::Phosphorus, input.p_as.as_str()),
        ("analysis.k", &input.k, Nutrient::Potassium, input.k_as.as_str()),
        ("analysis.fe", &input.fe, Nutrient::Iron, ""),
    ];
    let typed: Vec<_> = lines.into_iter().filter(|(_, share, _, _)| !share.text.trim().is_empty()).collect();
    if typed.is_empty() {
        return Some(None);
    }
    let basis = problems.choice("analysis.basis", &input.basis, BASES);
    let stated: Vec<Option<Stated>> = typed
        .into_iter()
        .map(|(field, share, nutrient, stated_as)| {
            let percent = number(problems, field, &share.text, 100.0);
            let stated_as = problems.choice(&format!("{field}_as"), stated_as, STATED_AS);
            Some(Stated { nutrient, percent: percent?, stated_as: stated_as? })
        })
        .collect();
    let stated: Option<Vec<Stated>> = stated.into_iter().collect();
    if let Some(stated) = &stated
        && basis == Some(AnalysisBasis::ByMass)
        && stated.iter().map(|line| line.percent).sum::<f64>() > 100.0
    {
        problems.add("analysis.n", &Said::new("analysis-above-hundred"));
    }
    Some(Some(Analysis { basis: basis?, stated: stated? }))
}

fn dissolving(input: &ProductInput, problems: &mut Problems) -> Option<Option<Dissolving>> {
    match input.dissolves.as_str() {
        "" => Some(None),
        "iron_sulphate_7" => Some(Some(Dissolving::IronSulphateHeptahydrate)),
        "own" => {
            let points: Vec<Option<SolubilityPoint>> = input
                .own_solubility
                .iter()
                .enumerate()
                .map(|(idx, line)| {
                    let field = format!("own_solubility.{idx}");
                    let temperature =
                        problems.figure(&format!("{field}.temperature"), &line.temperature, Temperature::from_figure);
                    let g_per_l = grams(problems, &format!("{field}.per_litre"), &line.per_litre);
                    Some(SolubilityPoint { temperature: temperature?, g_per_l: g_per_l? })
                })
                .collect();
            let points: Option<Vec<SolubilityPoint>> = points.into_iter().collect();
            let table = OwnTable::new(points?);
            table
                .inspect_err(|said| problems.add("own_solubility", said))
                .ok()
                .map(|table| Some(Dissolving::Own(table)))
        }
        other => {
            problems.add("dissolves", &Said::new("choice-unknown").with("choice", Arg::Text(other.to_owned())));
            None
        }
    }
}

fn grams(problems: &mut Problems, field: &str, typed: &Typed) -> Option<f64> {
    if typed.unit != "g/L" {
        problems.add(field, &Said::new("wrong-unit"));
        return None;
    }
    number(problems, field, &typed.text, MOST_DISSOLVED_G_PER_L)
}
