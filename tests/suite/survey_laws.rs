//! Simulated surveys: a lawn whose true outline is known is taped with errors of known size, and what the adjustment says is
//! held against the truth.
//!
//! The errors are drawn here, by a seeded generator of its own, from the instrument's stated standard uncertainty; the
//! adjustment never sees the truth. The lawns are stars of four to eight corners with a fan of braces and some more.

use evensward_core::lawn::braces::{Taped, adjust};
use evensward_core::lawn::offsets::{Station, measure};
use evensward_core::lawn::{Beside, How, Instrument, LengthSpread, Part, PatchKind, Shape, Side, Slope, Survey};
use evensward_core::quantity::{Angle, Length};

const N_TRIALS: usize = 2_000;
const NAMES: [&str; 8] = ["A", "B", "C", "D", "E", "F", "G", "H"];

/// Numbers by SplitMix64 (G. L. Steele, D. Lea and C. H. Flood, Fast splittable pseudorandom number generators, 2014).
pub struct Chance(pub u64);

impl Chance {
    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, n: usize) -> usize {
        (self.bits() % n as u64) as usize
    }

    /// One draw from the normal distribution (Box and Muller).
    fn normal(&mut self) -> f64 {
        let radius = (-2.0 * self.between(1e-300, 1.0).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.between(0.0, 1.0)).cos()
    }
}

/// A lawn as it truly is, and which lengths of it are taped.
pub struct Truth {
    pub corners: Vec<(f64, f64)>,
    pub pairs: Vec<(usize, usize)>,
}

impl Truth {
    pub fn drawn(chance: &mut Chance, n_more: usize) -> Self {
        let n_corners = 4 + chance.below(5);
        let size_m = chance.between(5.0, 25.0);
        let corners: Vec<(f64, f64)> = (0..n_corners)
            .map(|idx| {
                let turned = idx as f64 + chance.between(-0.25, 0.25);
                let (sin, cos) = (std::f64::consts::TAU * turned / n_corners as f64).sin_cos();
                let out_m = size_m * chance.between(0.6, 1.2);
                (out_m * cos, out_m * sin)
            })
            .collect();
        let sides = (0..n_corners).map(|idx| (idx, (idx + 1) % n_corners));
        let fan = (2..n_corners - 1).map(|idx| (0, idx));
        let mut pairs: Vec<(usize, usize)> = sides.chain(fan).collect();
        let mut others: Vec<(usize, usize)> = (1..n_corners)
            .flat_map(|from| (from + 2..n_corners).map(move |to| (from, to)))
            .filter(|pair| !pairs.contains(pair))
            .collect();
        for _ in 0..n_more.min(others.len()) {
            pairs.push(others.swap_remove(chance.below(others.len())));
        }
        Self { corners, pairs }
    }

    pub fn length_m(&self, (from, to): (usize, usize)) -> f64 {
        let (a, b) = (self.corners[from], self.corners[to]);
        (a.0 - b.0).hypot(a.1 - b.1)
    }

    fn area_m2(&self) -> f64 {
        let next = self.corners.iter().cycle().skip(1);
        self.corners.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 2.0
    }

    pub fn names(&self) -> &'static [&'static str] {
        &NAMES[..self.corners.len()]
    }

    fn n_lengths_of_least_held(&self) -> usize {
        let of_corner = |idx: usize| self.pairs.iter().filter(|(from, to)| *from == idx || *to == idx).count();
        (0..self.corners.len()).map(of_corner).min().unwrap()
    }

    /// The lengths as somebody with that instrument would read them.
    pub fn taped(&self, chance: &mut Chance, spread: LengthSpread) -> Vec<Taped> {
        let stretch = 1.0 + spread.scale * chance.normal();
        let read = |pair: (usize, usize)| {
            let true_m = self.length_m(pair);
            let own_m = spread.own_m(Length::from_m(true_m).unwrap());
            let length = Length::from_m(stretch * true_m + own_m * chance.normal()).unwrap();
            Taped { from: pair.0, to: pair.1, length }
        };
        self.pairs.iter().copied().map(read).collect()
    }
}

#[test]
fn a_simulated_survey_gives_an_area_within_its_stated_uncertainty_in_95_of_100_trials() {
    let mut chance = Chance(0x5eed_0001);
    let instruments = [Instrument::Tape, Instrument::Wheel];
    let mut n_within = 0;
    let mut refused = Vec::new();
    for trial_idx in 0..N_TRIALS {
        let n_more = chance.below(4);
        let truth = Truth::drawn(&mut chance, n_more);
        let spread = instruments[trial_idx % instruments.len()].spread();
        let lines = truth.taped(&mut chance, spread);
        match adjust(truth.names(), &lines, spread) {
            Ok(outline) => {
                let off_m2 = (outline.area.m2() - truth.area_m2()).abs();
                n_within += usize::from(off_m2 <= 2.0 * outline.area_sd.m2());
            }
            Err(refusals) => refused.push(refusals),
        }
    }
    // A refused survey gives no area, and counts against the share as one outside would.
    let percent = 100.0 * n_within as f64 / N_TRIALS as f64;
    assert!((93.0..=97.0).contains(&percent), "{percent} % within, {} refused: {:?}", refused.len(), refused.first());
}

#[test]
fn a_blunder_of_half_a_metre_to_a_metre_is_named_where_every_corner_is_held_twice() {
    let mut chance = Chance(0x5eed_0002);
    let (mut n_named, mut n_wrongly_named, mut n_trials) = (0, 0, 0);
    while n_trials < 300 {
        let n_more = 3 + chance.below(8);
        let truth = Truth::drawn(&mut chance, n_more);
        // A corner that hangs on three lengths shows that one of them is wrong, never which.
        if truth.n_lengths_of_least_held() < 4 {
            continue;
        }
        n_trials += 1;
        let spread = Instrument::Tape.spread();
        let mut lines = truth.taped(&mut chance, spread);
        let wrong_idx = chance.below(lines.len());
        let sign = if chance.below(2) == 0 { -1.0 } else { 1.0 };
        let wrong_m = lines[wrong_idx].length.m() + sign * chance.between(0.5, 1.0);
        lines[wrong_idx].length = Length::from_m(wrong_m).unwrap();
        let named = adjust(truth.names(), &lines, spread).ok().and_then(|outline| outline.likely_blunder);
        match named {
            Some(named_idx) if named_idx == wrong_idx => n_named += 1,
            Some(_) => n_wrongly_named += 1,
            None => {}
        }
    }
    let percent = |n: usize| 100.0 * n as f64 / n_trials as f64;
    assert!(percent(n_named) > 80.0, "{} % named", percent(n_named));
    assert!(percent(n_wrongly_named) < 5.0, "{} % wrongly named", percent(n_wrongly_named));
}

#[test]
fn good_lengths_are_seldom_called_blunders() {
    let mut chance = Chance(0x5eed_0003);
    let n_trials = 500;
    let n_called = (0..n_trials)
        .filter(|_| {
            let truth = Truth::drawn(&mut chance, 3);
            let spread = Instrument::Tape.spread();
            let lines = truth.taped(&mut chance, spread);
            adjust(truth.names(), &lines, spread).is_ok_and(|outline| outline.likely_blunder.is_some())
        })
        .count();
    assert!(n_called * 100 <= 3 * n_trials, "{n_called} of {n_trials}");
}

#[test]
fn a_corner_in_a_straight_side_is_not_promised_more_than_it_holds() {
    let mut chance = Chance(0x5eed_0004);
    let n_trials = 400;
    let n_within = (0..n_trials)
        .filter(|_| {
            let (width_m, length_m) = (chance.between(6.0, 20.0), chance.between(5.0, 20.0));
            let middle_m = width_m * chance.between(0.3, 0.7);
            let corners = vec![(0.0, 0.0), (middle_m, 0.0), (width_m, 0.0), (width_m, length_m), (0.0, length_m)];
            // The middle corner hangs on its neighbours alone.
            let pairs = vec![(0, 1), (1, 2), (2, 3), (3, 4), (4, 0), (0, 2), (0, 3), (2, 4)];
            let truth = Truth { corners, pairs };
            let spread = Instrument::Tape.spread();
            let lines = truth.taped(&mut chance, spread);
            adjust(truth.names(), &lines, spread).is_ok_and(|outline| {
                let (off_m2, sd_m2) = ((outline.area.m2() - truth.area_m2()).abs(), outline.area_sd.m2());
                off_m2 <= 2.0 * sd_m2 && sd_m2 < 0.1 * truth.area_m2()
            })
        })
        .count();
    assert!(100 * n_within >= 93 * n_trials, "{n_within} of {n_trials}");
}

fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

/// A length of a lawn, or one that nobody would tape.
fn odd_length(chance: &mut Chance) -> Length {
    m(match chance.below(12) {
        0 => 0.0,
        1 => 1e-9,
        2 => 5_000.0,
        3 => 1e11,
        4 | 5 => chance.below(6) as f64,
        _ => chance.between(0.1, 30.0),
    })
}

#[test]
fn any_lengths_between_any_corners_are_adjusted_or_refused_and_never_break() {
    let mut chance = Chance(0x5eed_0005);
    let (mut n_adjusted, mut n_refused) = (0, 0);
    for trial_idx in 0..600 {
        let n_corners = chance.below(8);
        // Corners on a coarse grid fall into lines, and sometimes together.
        let grid: Vec<(f64, f64)> = (0..8).map(|_| (chance.below(7) as f64, chance.below(7) as f64)).collect();
        let pairs = (0..n_corners).flat_map(|from| (from + 1..n_corners).map(move |to| (from, to)));
        let mut lines: Vec<Taped> = Vec::new();
        for (from, to) in pairs {
            let (a, b) = (grid[from], grid[to]);
            let length_m = (a.0 - b.0).hypot(a.1 - b.1);
            match chance.below(40) {
                0..10 => {}
                10 => lines.push(Taped { from, to, length: odd_length(&mut chance) }),
                11 if trial_idx % 5 == 0 => lines.push(Taped { from, to: to + 1, length: m(length_m) }),
                12..15 => lines.push(Taped { from: to, to: from, length: m((length_m + chance.normal()).abs()) }),
                _ => lines.push(Taped { from, to, length: m(length_m) }),
            }
        }
        match adjust(&NAMES[..n_corners], &lines, Instrument::Wheel.spread()) {
            Ok(outline) => {
                n_adjusted += 1;
                assert_eq!(Shape::corners(outline.corners.clone()), Ok(Shape::Corners(outline.corners)), "{lines:?}");
                assert!(outline.area.m2() > 0.0 && outline.area_sd.m2() > 0.0, "{lines:?}");
                assert!(outline.lines.iter().all(|line| line.residual_m.is_finite()), "{lines:?}");
            }
            Err(refusals) => {
                n_refused += 1;
                assert!(!refusals.is_empty());
            }
        }
    }
    assert!(n_adjusted > 10 && n_refused > 10, "{n_adjusted} and {n_refused}");
}

#[test]
fn any_offsets_are_measured_or_refused_and_never_break() {
    let mut chance = Chance(0x5eed_0006);
    let (mut n_measured, mut n_refused) = (0, 0);
    for trial_idx in 0..1_500 {
        let mut along_m = 0.0;
        let stations: Vec<Station> = (0..chance.below(9))
            .map(|_| {
                along_m += chance.below(4) as f64;
                let chainage = if trial_idx % 4 == 0 { odd_length(&mut chance) } else { m(along_m) };
                let offset = |chance: &mut Chance| if chance.below(3) == 0 { m(0.0) } else { odd_length(chance) };
                Station { chainage, left: offset(&mut chance), right: offset(&mut chance) }
            })
            .collect();
        match measure(&stations, Instrument::Tape.spread()) {
            Ok(lawn) => {
                n_measured += 1;
                let area = Shape::corners(lawn.ring.clone()).unwrap().area().unwrap();
                assert!((area.m2() - lawn.trapezoid.m2()).abs() <= 1e-9 * area.m2(), "{stations:?}");
                assert!(lawn.area_sd.m2().is_finite() && lawn.simpson.is_some() != lawn.why_no_simpson.is_some());
            }
            Err(refusals) => {
                n_refused += 1;
                assert!(!refusals.is_empty());
            }
        }
    }
    assert!(n_measured > 50 && n_refused > 50, "{n_measured} and {n_refused}");
}

#[test]
fn any_parts_are_measured_or_refused_and_never_break() {
    let mut chance = Chance(0x5eed_0007);
    let odd = |chance: &mut Chance| match chance.below(60) {
        0 => f64::NAN,
        1 => f64::INFINITY,
        2 => -1e300,
        3..30 => chance.below(8) as f64,
        _ => chance.between(-3.0, 10.0),
    };
    let (mut n_measured, mut n_refused) = (0, 0);
    for _ in 0..500 {
        let parts: Vec<Part> = (0..1 + chance.below(4))
            .map(|part_idx| {
                let shape = match chance.below(5) {
                    0 => Shape::Circle { diameter: m(chance.between(0.5, 6.0)) },
                    1 => Shape::Triangle { a: m(chance.between(2.0, 8.0)), b: m(5.0), c: m(6.0) },
                    2 => {
                        let n_corners = 2 + chance.below(4);
                        Shape::Corners((0..n_corners).map(|_| (odd(&mut chance), odd(&mut chance))).collect())
                    }
                    _ => {
                        Shape::Rectangle { width: m(1.0 + chance.below(9) as f64), length: m(chance.between(0.5, 9.0)) }
                    }
                };
                let at = (chance.below(2) == 0).then(|| (chance.below(9) as f64 - 2.0, chance.below(9) as f64 - 2.0));
                let is_out = part_idx > 0 && chance.below(2) == 0;
                let how = if chance.below(3) == 0 { How::Walked } else { How::Taped };
                Part { taken_out: is_out.then_some(PatchKind::Pond), at, how, ..Part::taped(shape) }
            })
            .collect();
        let sides = (0..chance.below(4)).map(|_| Side {
            part_idx: chance.below(3),
            side_idx: chance.below(4),
            beside: if chance.below(2) == 0 { Beside::OpenWater } else { Beside::Hedge },
            margin: m(chance.between(0.0, 2.0)),
        });
        let sides: Vec<Side> = sides.collect();
        let uphill = Angle::from_deg(chance.between(0.0, 360.0)).unwrap();
        let survey = Survey {
            sides,
            slope: Slope::from_percent(chance.between(-20.0, 60.0), uphill).ok(),
            instrument: (chance.below(2) == 0).then_some(Instrument::Tape),
            entry: Some((odd(&mut chance), 0.0)),
            ..Survey::of(parts)
        };
        match survey.measure(Some(m(1.0))) {
            Ok(measured) => {
                n_measured += 1;
                let (net, whole) = (measured.net_area.area.m2(), measured.outline_area.m2());
                assert!(net > 0.0 && net <= whole * (1.0 + 1e-6), "{net} of {whole}: {survey:?}");
                assert!(measured.net_area.doubt.percent().is_finite());
            }
            Err(refusals) => {
                n_refused += 1;
                assert!(!refusals.is_empty());
            }
        }
    }
    assert!(n_measured > 60 && n_refused > 60, "{n_measured} and {n_refused}");
}
