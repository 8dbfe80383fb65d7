//! The planning figures: from a survey to its plan (margins, cut, the best angle over the full sweep, order), on the real
//! plots and on invented lawns that grow, and the same cut done by GEOS through shapely in the same run.
//!
//! A lawn's time is the middle one of a few runs; medians and the like are taken over lawns.

use std::time::Instant;

use evensward_core::lawn::{Measured, Survey, ValidOutline};
use evensward_core::plan::{self, Choice, Laying, Layout};
use evensward_tests::reference;
use serde_json::{Value, json};

use crate::lawns::{Given, hedged, invented};
use crate::{Outcome, quantile};

/// How often each lawn is planned.
const N_RUNS: usize = 5;
/// How often all plots are cut, by us and by GEOS; the quickest round counts.
const N_CUTS: usize = 5;
/// The invented lawns.
const N_CORNERS: &[u32] = &[10, 30, 100, 300, 1_000, 3_000, 5_000];
const N_BEDS: &[u32] = &[0, 10, 50];

/// Takes all planning figures.
pub fn figures() -> Outcome<Value> {
    let given = Given::new()?;
    let plots = reference::outlines()?.plots;
    let surveys = plots.iter().map(|plot| hedged(reference::survey_of(plot)?)).collect::<Outcome<Vec<Survey>>>()?;
    // Some plots are narrower than their margins, and are no lawns.
    let lawns: Vec<&Survey> = surveys.iter().filter(|survey| survey.measure(None).is_ok()).collect();
    let mut times_ms = lawns.iter().map(|survey| planned_ms(survey, &given)).collect::<Outcome<Vec<f64>>>()?;
    let mut measure_ms =
        lawns.iter().map(|survey| middle_ms(|| measured(survey).map(drop))).collect::<Outcome<Vec<f64>>>()?;
    Ok(json!({
        "real_plots": {
            "n": times_ms.len(),
            "plan_ms": spread(&mut times_ms),
            "measure_ms": spread(&mut measure_ms),
            "plan_ms_p50_aim": 2.0,
        },
        "cut": cut(&lawns)?,
        "invented_lawns": grown(&given)?,
        "drag_corner_of_200_ms": planned_ms(&invented(200, 5)?, &given)?,
        "drag_corner_of_200_ms_aim": 16.0,
    }))
}

fn measured(survey: &Survey) -> Outcome<Measured> {
    survey.measure(None).map_err(|why| format!("{why:?}").into())
}

fn planned_ms(survey: &Survey, given: &Given) -> Outcome<f64> {
    middle_ms(|| {
        let measured = measured(survey)?;
        let choice = Choice::plain(2, given.label.dose);
        plan::plan(&measured, &given.kit, &given.calibration, &given.label, &choice)
            .map(drop)
            .map_err(|why| format!("{why:?}").into())
    })
}

fn middle_ms(mut work: impl FnMut() -> Outcome<()>) -> Outcome<f64> {
    let mut times_ms = Vec::with_capacity(N_RUNS);
    for _ in 0..N_RUNS {
        let started_at = Instant::now();
        work()?;
        times_ms.push(started_at.elapsed().as_secs_f64() * 1e3);
    }
    quantile(&mut times_ms, 0.5).ok_or_else(|| "nothing was timed".into())
}

fn spread(times_ms: &mut [f64]) -> Value {
    json!({"p50": quantile(times_ms, 0.5), "p99": quantile(times_ms, 0.99), "most": quantile(times_ms, 1.0)})
}

/// Cuts every plot into strips, and lets GEOS cut the same ground by the same bands.
fn cut(lawns: &[&Survey]) -> Outcome<Value> {
    let measured = lawns.iter().map(|survey| measured(survey)).collect::<Outcome<Vec<Measured>>>()?;
    let swath = Given::new()?.kit.swath;
    let dry = ValidOutline::recalled(&[])?;
    let lay_out = |lawn: &Measured| -> Outcome<Layout> {
        plan::lay_out(&lawn.net, &dry, &Laying::plain(swath)).map_err(|why| format!("{why:?}").into())
    };
    let mut ours_s = f64::INFINITY;
    for _ in 0..N_CUTS {
        let started_at = Instant::now();
        for lawn in &measured {
            lay_out(lawn)?;
        }
        ours_s = ours_s.min(started_at.elapsed().as_secs_f64());
    }
    let (mut of, mut by, mut n_bands) = (Vec::new(), Vec::new(), 0);
    for lawn in &measured {
        let ((left, front), (_, back)) = lawn.net.bounds().ok_or("a lawn without ground")?;
        let bands: Vec<Value> = lay_out(lawn)?
            .strips
            .iter()
            .map(|strip| {
                let (from, to) = (left + strip.centre.m() - strip.width.m() / 2.0, strip.width.m());
                let (front, back) = (front - 1.0, back + 1.0);
                json!([{"outer": [[from, front], [from + to, front], [from + to, back], [from, back]], "holes": []}])
            })
            .collect();
        n_bands += bands.len();
        of.push(reference::ground(&lawn.net.rings()));
        by.push(bands);
    }
    let answers = reference::answers(&[json!({"op": "timed_cut", "of": of, "by": by, "n_times": N_CUTS})])?;
    let theirs_s = answers.first().and_then(|answer| answer["seconds"].as_f64()).ok_or("GEOS gave no time")?;
    Ok(json!({
        "n_lawns": measured.len(),
        "n_bands": n_bands,
        "ours_ms": ours_s * 1e3,
        "geos_ms": theirs_s * 1e3,
        "times_as_fast": theirs_s / ours_s,
        "times_as_fast_aim": 20.0,
    }))
}

/// Times on lawns that grow, and the power of the number of corners with which they grow.
fn grown(given: &Given) -> Outcome<Value> {
    let mut rows = Vec::new();
    let mut powers = Vec::new();
    for n_beds in N_BEDS {
        let mut points = Vec::new();
        for n_corners in N_CORNERS {
            let time_ms = planned_ms(&invented(*n_corners, *n_beds)?, given)?;
            rows.push(json!({"n_corners": n_corners, "n_beds": n_beds, "plan_ms": time_ms}));
            points.push((f64::from(*n_corners).ln(), time_ms.ln()));
        }
        // Few corners cost next to nothing beside the strips themselves: growth is read off the larger lawns.
        points.drain(..points.len().saturating_sub(4));
        powers.push(json!({"n_beds": n_beds, "power": slope(&points)}));
    }
    Ok(json!({"rows": rows, "growth": powers, "power_aim": 1.1}))
}

/// The slope of the line through the points with the least squares.
fn slope(points: &[(f64, f64)]) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a handful")]
    let n = points.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / n;
    let (x, y) = (mean(|point| point.0), mean(|point| point.1));
    let along: f64 = points.iter().map(|point| (point.0 - x) * (point.1 - y)).sum();
    along / points.iter().map(|point| (point.0 - x).powi(2)).sum::<f64>()
}
