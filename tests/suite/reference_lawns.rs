//! Invented ground for the reference runs: lawns with bays and holes, and pieces on a coarse lattice, whose corners,
//! edges and holes lie on each other all the time.
//!
//! Invariant: the same number gives the same ground in every run, so that a difference can be looked at again.

use core::f64::consts::TAU;

use evensward_core::lawn::Ring;

/// Numbers without a pattern from a seed (SplitMix64: Steele, Lea and Flood 2014).
pub struct Chance(u64);

impl Chance {
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// From 0 up to 1.
    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    /// From 0 up to a number.
    pub fn below(&mut self, n: u32) -> u32 {
        (self.share() * f64::from(n)) as u32
    }
}

/// A ring about a place whose corners lie at growing angles: it never crosses itself.
pub fn ring(chance: &mut Chance, about: (f64, f64), radius_m: (f64, f64), n_corners: u32) -> Vec<(f64, f64)> {
    (0..n_corners)
        .map(|idx| {
            let angle_rad = TAU * (f64::from(idx) + chance.between(0.05, 0.95)) / f64::from(n_corners);
            let radius_m = chance.between(radius_m.0, radius_m.1);
            (about.0 + radius_m * angle_rad.cos(), about.1 + radius_m * angle_rad.sin())
        })
        .collect()
}

/// A lawn with bays, with up to three holes in its middle.
pub fn lawn(chance: &mut Chance) -> Ring {
    let n_corners = 3 + chance.below(40);
    let outer = ring(chance, (0.0, 0.0), (9.0, 24.0), n_corners.max(5));
    let holes = (0..chance.below(4)).map(|hole_idx| {
        let (sin, cos) = (TAU * f64::from(hole_idx) / 3.0).sin_cos();
        let n_corners = 3 + chance.below(9);
        let mut hole = ring(chance, (2.3 * cos, 2.3 * sin), (0.3, 1.2), n_corners);
        hole.reverse();
        hole
    });
    Ring { outer, holes: holes.collect() }
}

/// A piece whose corners lie on a lattice of 0.7 m, which `f64` can't write down exactly.
pub fn on_lattice(chance: &mut Chance) -> Ring {
    loop {
        let about = (chance.below(6), chance.below(6));
        let mut corners: Vec<(u32, u32)> =
            (0..3 + chance.below(5)).map(|_| (about.0 + chance.below(5), about.1 + chance.below(5))).collect();
        let middle = (f64::from(about.0) + 2.13, f64::from(about.1) + 1.87);
        let angle = |corner: &(u32, u32)| (f64::from(corner.1) - middle.1).atan2(f64::from(corner.0) - middle.0);
        corners.sort_by(|a, b| angle(a).total_cmp(&angle(b)));
        corners.dedup_by(|a, b| (angle(a) - angle(b)).abs() < 1e-9);
        if corners.len() > 2 {
            let outer = corners.iter().map(|(x, y)| (f64::from(*x) * 0.7, f64::from(*y) * 0.7)).collect();
            return Ring { outer, holes: Vec::new() };
        }
    }
}
