//! Slips of the pen by ten and a hundred: figures that do not fit what a label itself states, and would with the point moved.
//!
//! Invariant: a slip is only ever named, with the figure that was likely meant; nothing is changed, and nothing is refused here.

use super::{Label, highest_concentration};
use crate::quantity::{Arg, Concentration, ProductDose, Said, Unit, VolumePerArea};

/// How far the point may have slipped.
const SLIPS: [f64; 4] = [10.0, 100.0, 0.1, 0.01];
/// A concentration is taken for slipped when it is off by one of these, give or take this share (own setting).
const SLIP_SHARE: f64 = 0.5;

/// The dose that was likely meant, when the one that was typed stands outside the label's own range and would stand inside it
/// with the point moved.
#[must_use]
pub fn slip_of_dose(dose: ProductDose, least: Option<ProductDose>, most: Option<ProductDose>) -> Option<Said> {
    let base_of = |limit: Option<ProductDose>| limit.filter(|limit| limit.kind() == dose.kind()).map(ProductDose::base);
    let (least, most) = (base_of(least), base_of(most));
    let is_inside = |base: f64| {
        least.is_none_or(|least| !crate::quantity::is_below(base, least))
            && most.is_none_or(|most| !crate::quantity::is_above(base, most))
    };
    if is_inside(dose.base()) {
        return None;
    }
    let meant = SLIPS.map(|times| dose.base() * times).into_iter().find(|base| is_inside(*base))?;
    let figure = |base| Arg::number(base, dose.base_unit(), 3);
    Some(Said::new("slip-dose").with("value", figure(dose.base())).with("meant", figure(meant)))
}

/// The concentration that dose and least water make, when the label's own is off from it by ten or a hundred.
#[must_use]
pub fn slip_of_concentration(stated: Concentration, highest: ProductDose, least_water: VolumePerArea) -> Option<Said> {
    let made = highest_concentration(highest, least_water).filter(|made| made.kind() == stated.kind())?;
    let times = made.per_l() / stated.per_l();
    let is_slip = SLIPS.into_iter().any(|slip| (times / slip - 1.0).abs() < SLIP_SHARE);
    let figure = |per_l| Arg::number(per_l, stated.unit(), 2);
    is_slip.then(|| {
        Said::new("slip-concentration").with("value", figure(stated.per_l())).with("meant", figure(made.per_l()))
    })
}

/// From this many times the least water on, the most water is too far from it to be right (own setting).
const MOST_OVER_LEAST_WATER: f64 = 10.0;
/// Water outside these, in mL/m2 for a visit's passes together, is unusual on foot (own setting; hand-held work on turf
/// usually takes 40 to 80, and spots up to 100: reference values R022 and R046).
const USUAL_WATER_ML_PER_M2: (f64, f64) = (10.0, 500.0);

/// What a label's least and most water show: a range far too wide, or water that is unusual on foot; where the point moved
/// in one of them would put that right, with the figure that was likely meant.
#[must_use]
pub fn slips_of_water(least: Option<VolumePerArea>, most: Option<VolumePerArea>) -> Vec<Said> {
    let ml = |water: Option<VolumePerArea>| water.map(VolumePerArea::ml_per_m2);
    let (least, most) = (ml(least), ml(most));
    let is_usual = |water: f64| (USUAL_WATER_ML_PER_M2.0..=USUAL_WATER_ML_PER_M2.1).contains(&water);
    let fits = |least: f64, most: f64| least <= most && most < least * MOST_OVER_LEAST_WATER;
    let is_wide = least.zip(most).is_some_and(|(least, most)| most >= least * MOST_OVER_LEAST_WATER);
    let moved = |water: f64, fits_other: &dyn Fn(f64) -> bool| {
        SLIPS.map(|times| water * times).into_iter().find(|meant| is_usual(*meant) && fits_other(*meant))
    };
    let figure = |water| Arg::number(water, Unit::MillilitrePerSquareMetre, 1);
    let slip = |water, meant| Said::new("slip-water").with("value", figure(water)).with("meant", figure(meant));
    if let Some((least, most)) = least.zip(most).filter(|_| is_wide) {
        let of_most = || moved(most, &|meant| is_usual(least) && fits(least, meant)).map(|meant| slip(most, meant));
        let of_least = || moved(least, &|meant| is_usual(most) && fits(meant, most)).map(|meant| slip(least, meant));
        // One that is unusual in itself slipped; else the higher one.
        let one = if is_usual(least) { of_most().or_else(of_least) } else { of_least().or_else(of_most) };
        if let Some(slip) = one {
            return vec![slip];
        }
    }
    let wide = is_wide.then(|| Said::new("look-again-water-range-wide"));
    let unusual = least.into_iter().chain(most).filter(|water| !is_usual(*water)).map(|water| {
        let code = "look-again-water-unusual";
        moved(water, &|_| true).map_or_else(|| Said::new(code).with("value", figure(water)), |meant| slip(water, meant))
    });
    wide.into_iter().chain(unusual).collect()
}

impl Label {
    /// Every slip that this label's figures show against each other.
    #[must_use]
    pub fn slips(&self) -> Vec<Said> {
        let highest = self.highest_dose.as_ref().map(|highest| highest.value);
        let dose = slip_of_dose(self.dose, self.least_dose.as_ref().map(|least| least.value), highest);
        let concentration = self
            .highest_concentration
            .zip(highest)
            .zip(self.water.least)
            .and_then(|((stated, highest), least)| slip_of_concentration(stated.value, highest, least.value));
        dose.into_iter().chain(concentration).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::ProductKind;

    fn dose(ml_per_m2: f64) -> ProductDose {
        ProductDose::of(ProductKind::Volume, ml_per_m2).unwrap()
    }

    #[test]
    fn a_slipped_point_is_named_with_what_was_meant() {
        let check = |typed: f64, meant: Option<f64>| {
            let said = slip_of_dose(dose(typed), Some(dose(0.1)), Some(dose(0.2)));
            let found = said.as_ref().and_then(|said| said.arg("meant")).map(|arg| match arg {
                Arg::Number { value, .. } => *value,
                other => panic!("{other:?}"),
            });
            assert_eq!(found.map(|found| (found * 1e6).round() / 1e6), meant, "{typed}");
        };
        check(0.12, None);
        check(0.2, None);
        check(1.2, Some(0.12));
        check(12.0, Some(0.12));
        check(0.012, Some(0.12));
        check(0.0012, Some(0.12));
        // Outside, but by no slip of the point.
        check(0.5, None);
    }

    #[test]
    fn water_that_slipped_by_ten_or_a_hundred_is_named_with_what_was_meant() {
        let check = |least: Option<f64>, most: Option<f64>, expected: &[(&str, Option<f64>)]| {
            let water = |ml: Option<f64>| ml.map(|ml| VolumePerArea::from_ml_per_m2(ml).unwrap());
            let meant = |said: &Said| match said.arg("meant") {
                Some(Arg::Number { value, .. }) => Some((value * 1e6).round() / 1e6),
                _ => None,
            };
            let found = slips_of_water(water(least), water(most));
            let found: Vec<(&str, Option<f64>)> = found.iter().map(|said| (said.code.as_ref(), meant(said))).collect();
            assert_eq!(found, expected, "{least:?} to {most:?}");
        };
        check(Some(20.0), Some(40.0), &[]);
        check(Some(20.0), Some(199.0), &[]);
        check(None, Some(500.0), &[]);
        // Both are usual: the higher one slipped.
        check(Some(20.0), Some(400.0), &[("slip-water", Some(40.0))]);
        check(Some(20.0), Some(4_000.0), &[("slip-water", Some(40.0))]);
        // The lower one is unusual in itself.
        check(Some(2.0), Some(40.0), &[("slip-water", Some(20.0))]);
        check(Some(0.2), Some(40.0), &[("slip-water", Some(20.0))]);
        // Both in the wrong unit, and one alone.
        check(Some(2.0), Some(4.0), &[("slip-water", Some(20.0)), ("slip-water", Some(40.0))]);
        check(Some(800.0), None, &[("slip-water", Some(80.0))]);
        // Wide, and by no slip of the point.
        check(Some(12.0), Some(450.0), &[("slip-water", Some(45.0))]);
        check(Some(45.0), Some(449.9), &[]);
        check(
            Some(40.0),
            Some(400_000.0),
            &[("look-again-water-range-wide", None), ("look-again-water-unusual", None)],
        );
    }

    #[test]
    fn a_concentration_ten_times_off_is_named_and_one_that_fits_is_not() {
        let water = VolumePerArea::from_ml_per_m2(40.0).unwrap();
        let stated = |per_l: f64| Concentration::of(ProductKind::Volume, per_l).unwrap();
        // 0.12 mL/m2 in 40 mL/m2 are 3 mL in a litre.
        assert!(slip_of_concentration(stated(3.0), dose(0.12), water).is_none());
        assert!(slip_of_concentration(stated(30.0), dose(0.12), water).is_some());
        assert!(slip_of_concentration(stated(0.3), dose(0.12), water).is_some());
        assert!(slip_of_concentration(stated(5.0), dose(0.12), water).is_none());
    }
}
