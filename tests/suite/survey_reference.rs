//! Our adjustment of sides and braces beside numpy's least squares, which holds no corner still: residuals, the area and its
//! uncertainty must not depend on which corners are held.
//!
//! Invariant: both sides adjust the same taped lengths in the same run; no figure is kept.

use evensward_core::lawn::braces::adjust;
use evensward_core::lawn::{Instrument, LengthSpread};
use evensward_tests::reference;
use serde_json::{Value, json};

use crate::survey_laws::{Chance, Truth};

const N_SURVEYS: usize = 300;
/// A taped triangle less high than this is flat: our uncertainty is then wider than linear sums say, and rightly so.
const FLAT_M: f64 = 3.0;

fn is_linear(truth: &Truth) -> bool {
    let n_corners = truth.corners.len();
    let taped_m = |pair: (usize, usize)| {
        let is_taped = truth.pairs.contains(&pair) || truth.pairs.contains(&(pair.1, pair.0));
        is_taped.then(|| truth.length_m(pair))
    };
    let triples =
        (0..n_corners).flat_map(|a| (a + 1..n_corners).flat_map(move |b| (b + 1..n_corners).map(move |c| (a, b, c))));
    triples.filter_map(|(a, b, c)| Some([taped_m((a, b))?, taped_m((b, c))?, taped_m((a, c))?])).all(|sides| {
        let [a, b, c] = sides;
        let half = (a + b + c) / 2.0;
        let doubled_m2 = 2.0 * (half * (half - a) * (half - b) * (half - c)).max(0.0).sqrt();
        doubled_m2 / a.max(b).max(c) > FLAT_M
    })
}

#[test]
fn adjusted_outlines_agree_with_numpy_whichever_corners_are_held() {
    let mut chance = Chance(0x5eed_0008);
    let spread = LengthSpread { scale: 0.0, ..Instrument::Tape.spread() };
    let (mut cases, mut ours) = (Vec::new(), Vec::new());
    while ours.len() < N_SURVEYS {
        let n_more = 1 + chance.below(5);
        let truth = Truth::drawn(&mut chance, n_more);
        if !is_linear(&truth) {
            continue;
        }
        let lines = truth.taped(&mut chance, spread);
        let Ok(outline) = adjust(truth.names(), &lines, spread) else { continue };
        // Where another outline fits as well, our uncertainty reaches that one and is no spread of lengths.
        if outline.notes.iter().any(|note| note.code == "outline-not-settled") {
            continue;
        }
        let taped: Vec<Value> =
            lines.iter().map(|line| json!([line.from, line.to, line.length.m(), spread.own_m(line.length)])).collect();
        // Started from the truth, which our side never saw.
        cases.push(json!({"op": "adjust", "corners": truth.corners, "lines": taped}));
        ours.push(outline);
    }
    for (outline, theirs) in ours.iter().zip(reference::answers(&cases).unwrap()) {
        let figure = |name: &str| theirs[name].as_f64().unwrap();
        let near = |ours: f64, theirs: f64, within: f64| {
            assert!((ours - theirs).abs() <= within, "{ours} and numpy says {theirs}: {outline:?}");
        };
        near(outline.area.m2(), figure("area"), 1e-6);
        // The residuals' own spread, where they refute the instrument's, is a factor of ours alone.
        let factor = if outline.spread_from == evensward_core::lawn::braces::SpreadFrom::Residuals {
            outline.sigma0.unwrap()
        } else {
            1.0
        };
        near(outline.area_sd.m2(), factor * figure("area_sd"), 1e-4 * outline.area_sd.m2());
        for (line, (residual, standardised)) in outline
            .lines
            .iter()
            .zip(theirs["residuals"].as_array().unwrap().iter().zip(theirs["standardised"].as_array().unwrap()))
        {
            near(line.residual_m, residual.as_f64().unwrap(), 1e-6);
            if let Some(ours) = line.standardised {
                near(ours, standardised.as_f64().unwrap(), 1e-3 * ours.abs().max(1.0));
            }
        }
    }
}
