//! The planning figures: from a survey to its plan (margins, cut, the best angle over the full sweep, order), on the real
//! plots and on invented lawns that grow, and the same cut done by GEOS through shapely in the same run.
//!
//! A lawn's time is the quickest of a few runs; medians and the like are taken over lawns.

use std::path::Path;
use std::time::Instant;

use evensward_core::lawn::{Measured, Survey, ValidOutline};
use evensward_core::plan::{self, Choice, Gait, Laying, Layout, Walker};
use evensward_tests::reference;
use serde_json::{Value, json};

use crate::drag::moved_ms;
use crate::lawns::{Given, hedged, invented};
use crate::{Outcome, quantile};

/// How often each lawn is planned.
const N_RUNS: usize = 5;
/// How often all plots are cut, by us and by GEOS; the quickest round counts.
const N_CUTS: usize = 5;
/// The invented lawns.
const N_CORNERS: &[u32] = &[10, 30, 100, 300, 1_000, 3_000, 5_000];
const N_BEDS: &[u32] = &[0, 10, 50];

/// Takes all planning figures, with an empty folder for the store.
pub fn figures(folder: &Path) -> Outcome<Value> {
    let given = Given::new()?;
    let plots = reference::outlines()?.plots;
    let surveys = plots.iter().map(|plot| hedged(reference::survey_of(plot)?)).collect::<Outcome<Vec<Survey>>>()?;
    // Some plots are narrower than their margins, and are no lawns.
    let lawns: Vec<&Survey> = surveys.iter().filter(|survey| survey.measure(None).is_ok()).collect();
    let times = lawns.iter().map(|survey| planned(survey, &given)).collect::<Outcome<Vec<Times>>>()?;
    let all = |of: fn(&Times) -> f64| spread(&mut times.iter().map(of).collect::<Vec<f64>>());
    let dragged = invented(200, 5)?;
    let replanned = planned(&dragged, &given)?;
    let moved_ms = moved_ms(&dragged, folder)?;
    Ok(json!({
        "real_plots": {
            "n": times.len(),
            "all_ms": all(Times::all_ms),
            "all_ms_p50_aim": 2.0,
            "measure_ms": all(|times| times.measure_ms),
            "search_ms": all(|times| times.search_ms),
            "plan_ms": all(|times| times.plan_ms),
        },
        "cut": cut(&lawns)?,
        "invented_lawns": grown(&given)?,
        "drag_corner_of_200": {
            "moved_and_drawn_ms": moved_ms,
            "planned_anew": replanned.told(),
            "both_ms": moved_ms + replanned.all_ms(),
            "both_ms_aim": 16.0,
        },
    }))
}

/// What a lawn takes from its corners to its plan.
#[derive(Clone, Copy)]
struct Times {
    /// The outline, its patches and margins.
    measure_ms: f64,
    /// The best direction over the full sweep.
    search_ms: f64,
    /// Strips, order, water and fills.
    plan_ms: f64,
}

impl Times {
    fn all_ms(&self) -> f64 {
        self.measure_ms + self.search_ms + self.plan_ms
    }

    fn told(&self) -> Value {
        json!({
            "all_ms": self.all_ms(),
            "measure_ms": self.measure_ms,
            "search_ms": self.search_ms,
            "plan_ms": self.plan_ms,
        })
    }
}

fn measured(survey: &Survey) -> Outcome<Measured> {
    survey.measure(None).map_err(|why| format!("{why:?}").into())
}

fn planned(survey: &Survey, given: &Given) -> Outcome<Times> {
    let (measure_ms, measured) = quickest_ms(|| measured(survey))?;
    let gait = Gait { flow: given.calibration.flow, pace: given.calibration.pace, swath: given.kit.swath };
    let walker = Walker { gait, wind_from: None, start_side: None, edge_first: false };
    let (search_ms, best) = quickest_ms(|| {
        let best = plan::directions(&measured, &walker).into_iter().next();
        best.ok_or_else(|| "no direction was found".into())
    })?;
    let choice = Choice { angle: best.angle, start_side: best.start_side, ..Choice::plain(2, given.label.dose) };
    let (plan_ms, _) = quickest_ms(|| {
        plan::plan(&measured, &given.kit, &given.calibration, &given.label, &choice)
            .map_err(|why| format!("{why:?}").into())
    })?;
    Ok(Times { measure_ms, search_ms, plan_ms })
}

/// The quickest of a few runs, which other work on the machine held up least, and what the last one gave.
fn quickest_ms<T>(mut work: impl FnMut() -> Outcome<T>) -> Outcome<(f64, T)> {
    let mut quickest_ms = f64::INFINITY;
    let mut last = None;
    for _ in 0..N_RUNS {
        let started_at = Instant::now();
        last = Some(work()?);
        quickest_ms = quickest_ms.min(started_at.elapsed().as_secs_f64() * 1e3);
    }
    Ok((quickest_ms, last.ok_or("nothing was timed")?))
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
            let times = planned(&invented(*n_corners, *n_beds)?, given)?;
            rows.push(json!({"n_corners": n_corners, "n_beds": n_beds, "times": times.told()}));
            points.push((f64::from(*n_corners).ln(), times.all_ms().ln()));
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
