//! How uncertain the net area is: from the instrument for plain shapes, from its own measurements for any other part.
//!
//! Formulas (JCGM 100:2008, 5.1.2, propagation through the partial derivatives): a rectangle (l s(w))^2 + (w s(l))^2; a
//! triangle dA/da = a (b^2 + c^2 - a^2) / (8 A), from Heron's formula; a circle pi d/2 s(d); a part of a circle r theta s(r)
//! and r^2/2 s(theta). The expanded uncertainty takes k = 2, about 95 in 100 (JCGM 100:2008, 6.3.3).
//! Simplified: parts count whole, though a margin, an overlap or the lawn's edge may cut some of them away, and margins count
//! as exact. That makes the doubt of a cut lawn a little too large, never too small by what was cut.
//! Invariant: what is known counts even where nobody knows how sure another part is; a lawn of which nothing is known has no
//! stated doubt.

use super::{How, Instrument, LengthSpread, Part, Shape, Survey};
use crate::quantity::{Area, Doubt, Length};

/// The standard uncertainty of an angle by eye or by a folding rule, in degrees. Common practice, no source.
const ANGLE_SD_DEG: f64 = 1.0;
/// The coverage factor of the doubt.
const K: f64 = 2.0;

impl Shape {
    /// The standard uncertainty (k = 1) of its area from its lengths' own spread, the share common to all lengths left out.
    /// Nothing for free corners: their numbers do not say what was measured.
    #[must_use]
    pub fn area_sd(&self, spread: LengthSpread) -> Option<Area> {
        let parts_m2 = match self {
            Self::Rectangle { width, length } => {
                vec![length.m() * spread.own_m(*width), width.m() * spread.own_m(*length)]
            }
            Self::Triangle { a, b, c } => {
                let area_m2 = self.area().ok()?.m2();
                let of_side = |side: Length, other: Length, third: Length| {
                    let squares = other.m().powi(2) + third.m().powi(2) - side.m().powi(2);
                    side.m() * squares / (8.0 * area_m2) * spread.own_m(side)
                };
                vec![of_side(*a, *b, *c), of_side(*b, *a, *c), of_side(*c, *a, *b)]
            }
            Self::Circle { diameter } => {
                vec![core::f64::consts::FRAC_PI_2 * diameter.m() * spread.own_m(*diameter)]
            }
            Self::PartCircle { radius, angle } => {
                // A whole turn is not measured.
                let angle_sd_deg = if angle.deg() < 360.0 { ANGLE_SD_DEG } else { 0.0 };
                let of_angle_m2 = radius.m().powi(2) / 2.0 * angle_sd_deg.to_radians();
                vec![radius.m() * angle.deg().to_radians() * spread.own_m(*radius), of_angle_m2]
            }
            Self::Corners(_) => return None,
        };
        Some(Area::computed(parts_m2.iter().map(|part| part * part).sum::<f64>().sqrt()))
    }
}

/// What a plain shape was measured with, as far as anybody said.
fn instrument_of(part: &Part, of_lawn: Option<Instrument>) -> Option<Instrument> {
    match (part.how, of_lawn) {
        (How::Taped, of_lawn) => of_lawn,
        (How::Wheeled, _) => Some(Instrument::Wheel),
        (How::Paced, Some(paces @ Instrument::Paces { .. })) => Some(paces),
        _ => None,
    }
}

/// The doubt of the net area: what the operator said, else what the measurements say, else none.
pub(super) fn of(survey: &Survey, net: Area) -> Doubt {
    if survey.doubt > Doubt::NONE {
        return survey.doubt;
    }
    measured_sd(survey).filter(|_| net > Area::ZERO).map_or(Doubt::NONE, |sd| {
        let percent = 100.0 * K * sd.m2() / net.m2();
        Doubt::computed(percent)
    })
}

/// What a part says of its own area's uncertainty.
struct OwnSd {
    sd: Area,
    /// The share that all lengths of its instrument have in common.
    scale: f64,
    area: Area,
}

/// Nothing where nobody knows how sure the part is.
fn own_sd(part: &Part, of_lawn: Option<Instrument>) -> Option<OwnSd> {
    let area = part.shape.area().ok()?;
    match part.area_sd {
        // What its lengths have in common is in it already.
        Some(sd) => Some(OwnSd { sd, scale: 0.0, area }),
        None => {
            let spread = instrument_of(part, of_lawn)?.spread();
            Some(OwnSd { sd: part.shape.area_sd(spread)?, scale: spread.scale, area })
        }
    }
}

/// Beside parts that say how well they were measured, one that says nothing was taped.
fn instrument_of_lawn(survey: &Survey) -> Option<Instrument> {
    let is_any_stated = survey.parts.iter().any(|part| part.area_sd.is_some());
    survey.instrument.or_else(|| is_any_stated.then_some(Instrument::Tape))
}

/// The parts of which nobody knows how sure they are, counted from 0.
pub(super) fn unknown_parts(survey: &Survey) -> Vec<usize> {
    let of_lawn = instrument_of_lawn(survey);
    let unknown = survey.parts.iter().enumerate().filter(|(_, part)| own_sd(part, of_lawn).is_none());
    unknown.map(|(part_idx, _)| part_idx).collect()
}

/// The standard uncertainty of the net area on the plan from the parts that say theirs; nothing when none does.
fn measured_sd(survey: &Survey) -> Option<Area> {
    let of_lawn = instrument_of_lawn(survey);
    let mut is_any_known = false;
    let mut variance_m4 = 0.0;
    // What all lengths of an instrument share moves grass and beds together, so that it adds up with their signs.
    let mut shared_m2 = 0.0;
    for part in &survey.parts {
        let Some(own) = own_sd(part, of_lawn) else { continue };
        let on_plan = match survey.slope {
            Some(slope) if part.how.is_along_the_ground() => slope.plan_share(),
            _ => 1.0,
        };
        let sign = if part.taken_out.is_some() { -1.0 } else { 1.0 };
        is_any_known = true;
        shared_m2 += sign * 2.0 * own.scale * own.area.m2() * on_plan;
        variance_m4 += (own.sd.m2() * on_plan).powi(2);
    }
    is_any_known.then(|| Area::computed(variance_m4.sqrt().hypot(shared_m2)))
}
