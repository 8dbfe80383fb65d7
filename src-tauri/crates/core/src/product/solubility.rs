//! How much of a product dissolves in so much water at a temperature: crystals as they are weighed, with the water
//! that is bound in them, in water that is added to them.
//!
//! Invariant: grams of crystals are never held against a figure for the anhydrous salt; a table says its basis.
//! Invariant: beyond the ends of a table nothing is guessed.
//!
//! Source of the iron sulphate table: grams of anhydrous FeSO4 in 100 g of water over the heptahydrate,
//! <https://www.alignchemical.com/products/ironii-sulfate/>; the page does not name its basis, which follows from the
//! mass percentages of the CRC Handbook (100 w / (100 - w) gives the same figures within 0.2 %). Between its points the
//! mass fraction is taken as straight. Of 100 g of crystals 54.64 g are FeSO4 (151.91 / 278.01) and 45.36 g are water, so
//! that x = 100 r / (54.64 - 0.4536 r) grams of crystals dissolve in 100 g of added water.

use crate::quantity::{Arg, Mass, Said, Temperature, Unit, Volume};

/// Temperature in degrees Celsius and grams of anhydrous FeSO4 in 100 g of water.
const IRON_SULPHATE_ANHYDROUS: &[(f64, f64)] =
    &[(0.0, 15.65), (10.0, 20.5), (25.0, 29.51), (40.1, 39.89), (54.0, 51.35)];
/// The anhydrous share of the heptahydrate, in per cent.
const ANHYDROUS_PERCENT: f64 = 54.64;
/// A litre of water in grams, for dissolving.
const WATER_G_PER_L: f64 = 1_000.0;

/// How a product dissolves.
#[derive(Debug, Clone, PartialEq)]
pub enum Dissolving {
    /// Iron(II) sulphate heptahydrate, by the published table.
    IronSulphateHeptahydrate,
    /// By the operator's own table.
    Own(OwnTable),
}

/// The operator's own table: grams of the product as it is weighed that dissolve in a litre of water.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnTable {
    points: Vec<SolubilityPoint>,
}

/// One line of a table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SolubilityPoint {
    /// The water's temperature.
    pub temperature: Temperature,
    /// Grams of the product, as it is weighed, in a litre of added water.
    pub g_per_l: f64,
}

impl OwnTable {
    /// A table of at least one line, warmer and warmer. A table with one line holds for that temperature alone.
    ///
    /// # Errors
    /// Refuses an empty table, two lines of one temperature, and an amount that is not above zero.
    pub fn new(mut points: Vec<SolubilityPoint>) -> Result<Self, Said> {
        if points.is_empty() {
            return Err(Said::new("solubility-empty"));
        }
        if points.iter().any(|point| !(point.g_per_l.is_finite() && point.g_per_l > 0.0)) {
            return Err(Said::new("solubility-not-above-zero"));
        }
        points.sort_by(|a, b| a.temperature.deg_c().total_cmp(&b.temperature.deg_c()));
        let twice = points.iter().zip(points.iter().skip(1)).find(|(a, b)| a.temperature == b.temperature);
        match twice {
            Some((point, _)) => Err(Said::new("solubility-temperature-twice")
                .with("temperature", Arg::number(point.temperature.deg_c(), Unit::Celsius, 1))),
            None => Ok(Self { points }),
        }
    }

    /// Its lines, warmer and warmer.
    #[must_use]
    pub fn points(&self) -> &[SolubilityPoint] {
        &self.points
    }
}

impl Dissolving {
    /// Grams of the product, as it is weighed, that dissolve in a litre of added water; nothing outside the table.
    ///
    /// ```
    /// use evensward_core::product::solubility::Dissolving;
    /// use evensward_core::quantity::Temperature;
    /// let at = |deg_c| Dissolving::IronSulphateHeptahydrate.g_per_l(Temperature::from_deg_c(deg_c).unwrap());
    /// assert!((at(10.0).unwrap() - 452.0).abs() < 2.0); // not 205, which is the anhydrous salt
    /// assert!(at(60.0).is_none());
    /// ```
    #[must_use]
    pub fn g_per_l(&self, temperature: Temperature) -> Option<f64> {
        let at = temperature.deg_c();
        match self {
            Self::IronSulphateHeptahydrate => {
                let mass_fraction = |r: f64| r / (100.0 + r);
                let points = IRON_SULPHATE_ANHYDROUS.iter().map(|(deg_c, r)| (*deg_c, mass_fraction(*r)));
                let fraction = between(points, at)?;
                let anhydrous = 100.0 * fraction / (1.0 - fraction);
                let bound_share = (100.0 - ANHYDROUS_PERCENT) / 100.0;
                Some(WATER_G_PER_L * anhydrous / (ANHYDROUS_PERCENT - bound_share * anhydrous))
            }
            Self::Own(table) => {
                between(table.points.iter().map(|point| (point.temperature.deg_c(), point.g_per_l)), at)
            }
        }
    }

    /// The coldest and the warmest water that the table knows, in degrees Celsius.
    #[must_use]
    pub fn range_deg_c(&self) -> (f64, f64) {
        let of = |mut temperatures: Box<dyn DoubleEndedIterator<Item = f64> + '_>| {
            let first = temperatures.next().unwrap_or(0.0);
            (first, temperatures.next_back().unwrap_or(first))
        };
        match self {
            Self::IronSulphateHeptahydrate => of(Box::new(IRON_SULPHATE_ANHYDROUS.iter().map(|(deg_c, _)| *deg_c))),
            Self::Own(table) => of(Box::new(table.points.iter().map(|point| point.temperature.deg_c()))),
        }
    }

    /// The most of the product that dissolves in so much water at a temperature; nothing outside the table.
    #[must_use]
    pub fn most_in(&self, water: Volume, temperature: Temperature) -> Option<Mass> {
        Mass::from_g(self.g_per_l(temperature)? * water.l()).ok()
    }

    /// The basis and source of its table, as a code.
    #[must_use]
    pub const fn source(&self) -> &'static str {
        match self {
            Self::IronSulphateHeptahydrate => "iron-sulphate-table",
            Self::Own(_) => "own",
        }
    }
}

/// The value at a place between the points of a table that rises in its first column; nothing beyond its ends.
fn between(points: impl Iterator<Item = (f64, f64)>, at: f64) -> Option<f64> {
    let mut before: Option<(f64, f64)> = None;
    for (x, y) in points {
        #[expect(clippy::float_cmp, reason = "a point of the table is met to the last bit or not at all")]
        if x == at {
            return Some(y);
        }
        match before {
            Some((x0, y0)) if x0 < at && at < x => return Some(y0 + (y - y0) * (at - x0) / (x - x0)),
            _ => before = Some((x, y)),
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    fn deg_c(value: f64) -> Temperature {
        Temperature::from_deg_c(value).unwrap()
    }

    #[test]
    fn crystals_are_counted_with_their_water() {
        // By R = 100 w / (100 - w) of the CRC Handbook's mass percentages (from memory) and x as in the head of the file.
        for (at, g_per_100_g) in [(0.0, 32.8), (10.0, 45.2), (20.0, 61.5), (25.0, 71.6), (30.0, 83.1), (40.0, 111.5)] {
            let found = Dissolving::IronSulphateHeptahydrate.g_per_l(deg_c(at)).unwrap() / 10.0;
            assert!((found / g_per_100_g - 1.0).abs() < 0.03, "{at}: {found} for {g_per_100_g}");
        }
    }

    #[test]
    fn beyond_the_ends_of_a_table_nothing_is_known() {
        let iron = Dissolving::IronSulphateHeptahydrate;
        assert!(iron.g_per_l(deg_c(-0.1)).is_none() && iron.g_per_l(deg_c(54.1)).is_none());
        assert!(iron.g_per_l(deg_c(54.0)).is_some() && iron.g_per_l(deg_c(0.0)).is_some());
        assert_eq!(iron.range_deg_c(), (0.0, 54.0));
    }

    #[test]
    fn an_own_table_is_sorted_and_straight_between_its_lines() {
        let line = |at, g_per_l| SolubilityPoint { temperature: deg_c(at), g_per_l };
        let table = OwnTable::new(vec![line(20.0, 400.0), line(10.0, 300.0)]).unwrap();
        let own = Dissolving::Own(table);
        assert!((own.g_per_l(deg_c(15.0)).unwrap() - 350.0).abs() < 1e-9);
        assert!((own.most_in(Volume::from_l(2.0).unwrap(), deg_c(10.0)).unwrap().g() - 600.0).abs() < 1e-9);
        assert_eq!(OwnTable::new(Vec::new()).unwrap_err().code, "solubility-empty");
        assert_eq!(OwnTable::new(vec![line(1.0, 0.0)]).unwrap_err().code, "solubility-not-above-zero");
        let twice = OwnTable::new(vec![line(1.0, 2.0), line(1.0, 3.0)]).unwrap_err();
        assert_eq!(twice.code, "solubility-temperature-twice");
    }
}
