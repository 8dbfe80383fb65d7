//! A draft: strips and passes for one set of remedies, without fills. The narrow strip's ways are compared as
//! drafts, and the plan is made from the one that is taken.
//!
//! Invariant: `Leave` takes the narrow strip out of the treated area before anything is worked out from it.

use std::cell::RefCell;

use geo::{LineString, MultiPolygon, Polygon};

use super::choice::{Choice, Heading, Remedy, StartSide};
use super::ends::LEAST_TWICE_M2;
use super::frame::rings_of;
use super::lap::{Lapped, laps};
use super::layout::{Laid, Laying, RunEnds, Spacing, lay};
use super::types::{Layout, Pass, Strip, StripId};
use super::walk::{Gait, Places, walk};
use crate::lawn::{Measured, NetArea, ValidOutline};
use crate::quantity::{Angle, Area, Length, ProductAmount, ProductDose, Said, Volume};

/// How often a strip is left before what is still narrow is taken as it is.
const MOST_LEFT: usize = 4;

/// The remedies of both headings, settled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Remedies {
    pub(super) along: Remedy,
    pub(super) across: Remedy,
}

impl Remedies {
    pub(super) const fn of(self, heading: Heading) -> Remedy {
        match heading {
            Heading::Along => self.along,
            Heading::Across => self.across,
        }
    }

    pub(super) const fn with(self, heading: Heading, remedy: Remedy) -> Self {
        match heading {
            Heading::Along => Self { along: remedy, ..self },
            Heading::Across => Self { across: remedy, ..self },
        }
    }
}

/// The narrow strip of a heading before anything is done about it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NarrowStrip {
    pub(super) strip: StripId,
    pub(super) width: Length,
}

/// Strips and passes for one set of remedies.
#[derive(Debug, Clone)]
pub(super) struct Draft {
    pub(super) headings: Vec<Heading>,
    pub(super) layouts: Vec<Layout>,
    /// What square ends do, run by run, for each layout.
    pub(super) ends: Vec<Vec<RunEnds>>,
    pub(super) passes: Vec<Pass>,
    pub(super) treated: NetArea,
    pub(super) left_out: Area,
    pub(super) walked: Volume,
}

impl Draft {
    /// The highest rate that lands on any ground, in mL/m2: strips of crossing headings meet somewhere.
    pub(super) fn highest_rate_ml_per_m2(&self) -> f64 {
        self.layouts.iter().zip(&self.ends).map(|(layout, ends)| self.highest_rate_on(layout, ends)).sum()
    }

    /// The highest rate in one layout, with what a lap sprays twice: two of its legs on each other, or a strip's square end
    /// on it. Where three meet it is taken for two: there the lance has to be closed anyway.
    fn highest_rate_on(&self, layout: &Layout, ends: &[RunEnds]) -> f64 {
        let lap_rate = self.highest_rate_in(layout, |strip| strip.is_lap);
        let strip_rate = self.highest_rate_in(layout, |strip| !strip.is_lap);
        let is_lap = |id: StripId| layout.strip(id).is_some_and(|strip| strip.is_lap);
        let is_twice = |on_laps: bool| {
            let of_kind = ends.iter().filter(|run| is_lap(run.strip) == on_laps);
            of_kind.map(|run| run.overlap_m2).sum::<f64>() > LEAST_TWICE_M2
        };
        let on_lap = if is_twice(true) { 2.0 * lap_rate } else { lap_rate };
        let on_strip = if is_twice(false) { lap_rate + strip_rate } else { strip_rate };
        on_lap.max(on_strip)
    }

    /// The rate on the narrow strip of a heading where it is crossed the most, in mL/m2.
    pub(super) fn narrow_rate_ml_per_m2(&self, heading: Heading) -> f64 {
        self.layouts
            .iter()
            .map(|layout| {
                if layout.heading == heading {
                    self.highest_rate_in(layout, |strip| strip.is_narrow)
                } else {
                    self.highest_rate_in(layout, |_| true)
                }
            })
            .sum()
    }

    fn highest_rate_in(&self, layout: &Layout, takes: impl Fn(&Strip) -> bool) -> f64 {
        layout
            .strips
            .iter()
            .filter(|strip| takes(strip))
            .map(|strip| {
                let passes = self.passes.iter().filter(|pass| pass.heading == layout.heading);
                passes
                    .filter_map(|pass| pass.legs.iter().find(|leg| leg.strip == strip.id))
                    .map(|leg| leg.rate().ml_per_m2())
                    .sum::<f64>()
            })
            .fold(0.0, f64::max)
    }
}

/// The exact product for an area: dose x area, and never more than the highest dose on its lower bound.
///
/// This is where the dose is worked out. Nothing else moves the product: no pass, fill, dead volume or trim. At
/// the label's highest dose this is the highest dose on the lower bound of an uncertain area.
///
/// ```
/// use evensward_core::lawn::NetArea;
/// use evensward_core::plan::product_for;
/// use evensward_core::quantity::{Area, Doubt, ProductDose, ProductKind};
/// let treated = NetArea { area: Area::from_m2(300.0).unwrap(), doubt: Doubt::from_percent(5.0).unwrap() };
/// let dose = ProductDose::of(ProductKind::Mass, 2.5).unwrap();
/// assert!((product_for(dose, treated, None).base() - 750.0).abs() < 1e-9);
/// assert!((product_for(dose, treated, Some(dose)).base() - 712.5).abs() < 1e-9);
/// ```
#[must_use]
pub fn product_for(dose: ProductDose, treated: NetArea, highest: Option<ProductDose>) -> ProductAmount {
    let wanted = dose * treated.area;
    match highest {
        Some(highest) if highest.kind() == dose.kind() => {
            let most = highest * treated.lower();
            if wanted.base() > most.base() { most } else { wanted }
        }
        _ => wanted,
    }
}

/// The headings as they are walked once passes have been turned the other way.
pub(super) fn turned(choice: &Choice, remedies: Remedies) -> Vec<Heading> {
    let turn = |heading: Heading| match remedies.of(heading) {
        Remedy::OtherDirection => heading.other(),
        _ => heading,
    };
    choice.headings.iter().copied().map(turn).collect()
}

/// The different headings in the order in which they are first walked.
pub(super) fn different(headings: &[Heading]) -> Vec<Heading> {
    let mut found: Vec<Heading> = Vec::new();
    for heading in headings {
        if !found.contains(heading) {
            found.push(*heading);
        }
    }
    found
}

/// The ground of a plan: the lawn, and the strips laid on it so far.
///
/// The ways of treating a narrow strip share most of their strips, and cutting strips is the dear part of a plan.
pub(super) struct Ground<'a> {
    measured: &'a Measured,
    laying: Laying,
    pub(super) dry: ValidOutline,
    dry_rings: Vec<Vec<(f64, f64)>>,
    net_rings: Vec<Vec<(f64, f64)>>,
    lapped: Option<Lapped>,
    laid: RefCell<Vec<(Heading, Spacing, Laid)>>,
}

impl<'a> Ground<'a> {
    /// The ground under strips that are laid so; the edge is sprayed round first where that is wanted.
    pub(super) fn new(measured: &'a Measured, laying: &Laying, edge_first: bool) -> Self {
        let dry = dry_of(measured);
        let lapped = edge_first.then(|| laps(&measured.net, &dry, laying.swath, measured.slope)).flatten();
        Self {
            measured,
            laying: *laying,
            dry_rings: rings_of(&dry),
            net_rings: rings_of(&measured.net),
            dry,
            lapped,
            laid: RefCell::new(Vec::new()),
        }
    }

    /// What the strips are laid on: all of the net outline, or what is left inside the laps.
    pub(super) fn base(&self) -> &ValidOutline {
        self.lapped.as_ref().map_or(&self.measured.net, |lapped| &lapped.inside)
    }

    fn layout(&self, heading: Heading, spacing: Spacing) -> Result<Laid, Said> {
        let mut laid = self.laid.borrow_mut();
        if let Some((_, _, layout)) = laid.iter().find(|known| (known.0, known.1) == (heading, spacing)) {
            return Ok(layout.clone());
        }
        let layout = self.layout_on(self.base(), heading, spacing)?;
        laid.push((heading, spacing, layout.clone()));
        Ok(layout)
    }

    fn layout_on(&self, inside: &ValidOutline, heading: Heading, spacing: Spacing) -> Result<Laid, Said> {
        self.lay(inside, &Laying { heading, spacing, ..self.laying })
    }

    fn lay(&self, inside: &ValidOutline, laying: &Laying) -> Result<Laid, Said> {
        let Some(lapped) = &self.lapped else { return lay(&rings_of(inside), None, &self.dry_rings, laying) };
        let mut laid = if inside.is_empty() {
            Laid::nothing(laying)
        } else {
            lay(&rings_of(inside), Some(&self.net_rings), &self.dry_rings, laying)?
        };
        // The laps are walked first, so that they have the first numbers.
        let n_laps = u16::try_from(lapped.strips.len()).unwrap_or(u16::MAX);
        let after_laps = |id: StripId| StripId(id.0.saturating_add(n_laps));
        for strip in &mut laid.layout.strips {
            strip.id = after_laps(strip.id);
        }
        for ends in &mut laid.ends {
            ends.strip = after_laps(ends.strip);
        }
        laid.layout.strips.splice(0..0, lapped.strips.iter().cloned());
        laid.ends.splice(0..0, lapped.ends.iter().cloned());
        Ok(laid)
    }

    /// The strips along at another angle from another side, for setting directions side by side.
    pub(super) fn laid_at(&self, angle: Angle, start_side: StartSide) -> Result<Laid, Said> {
        self.lay(self.base(), &Laying { angle, start_side, ..self.laying })
    }

    /// The narrow strip of a heading on the whole net outline, if there is one.
    pub(super) fn narrow_strip(&self, heading: Heading) -> Result<Option<NarrowStrip>, Said> {
        let laid = self.layout(heading, Spacing::BySwath)?;
        let narrow = laid.layout.strips.iter().find(|strip| strip.is_narrow);
        Ok(narrow.map(|strip| NarrowStrip { strip: strip.id, width: strip.width }))
    }

    /// Strips and passes for these remedies.
    pub(super) fn draft(&self, choice: &Choice, gait: Gait, remedies: Remedies) -> Result<Draft, Said> {
        let headings = turned(choice, remedies);
        let walked_headings = different(&headings);
        let base = self.without_left_strips(remedies, &walked_headings)?;
        let mut layouts = Vec::with_capacity(walked_headings.len());
        let mut ends = Vec::with_capacity(walked_headings.len());
        for heading in walked_headings {
            let remedy = remedies.of(heading);
            let spacing = match remedy {
                Remedy::EvenOut => Spacing::EvenOut,
                _ => Spacing::BySwath,
            };
            let mut laid = match &base {
                Some(base) => self.layout_on(base, heading, spacing)?,
                None => self.layout(heading, spacing)?,
            };
            let has_narrow = laid.layout.strips.iter().any(|strip| strip.is_narrow);
            laid.layout.remedy = (has_narrow || spacing == Spacing::EvenOut).then_some(remedy);
            layouts.push(laid.layout);
            ends.push(laid.ends);
        }
        let passes = walk(&layouts, &headings, gait, Places::of(self.measured));
        let walked = passes.iter().map(|pass| pass.volume).sum();
        let left_out = base.as_ref().map_or(Area::ZERO, |base| self.base().area().less(base.area()));
        let net = self.measured.net_area;
        let treated = NetArea { area: net.area.less(left_out), doubt: net.doubt };
        Ok(Draft { headings, layouts, ends, passes, treated, left_out, walked })
    }

    /// What the strips are laid on without those that are left; nothing when none is.
    fn without_left_strips(&self, remedies: Remedies, headings: &[Heading]) -> Result<Option<ValidOutline>, Said> {
        let mut left: Option<ValidOutline> = None;
        for _ in 0..MOST_LEFT {
            let mut is_changed = false;
            for heading in headings.iter().copied().filter(|heading| remedies.of(*heading) == Remedy::Leave) {
                let base = left.as_ref().unwrap_or(self.base());
                let laid = self.layout_on(base, heading, Spacing::BySwath)?;
                let Some(narrow) = laid.layout.strips.iter().find(|strip| strip.is_narrow) else { continue };
                let smaller = base.without(&ground_of(narrow));
                if smaller.is_empty() && self.lapped.is_none() {
                    return Err(Said::new("nothing-left-to-treat"));
                }
                left = Some(smaller);
                is_changed = true;
            }
            if !is_changed {
                break;
            }
        }
        Ok(left)
    }

    /// What is treated once the strips that are left are taken out.
    pub(super) fn treated(&self, drafted: &Draft) -> ValidOutline {
        if drafted.left_out.m2() <= 0.0 {
            return self.measured.net.clone();
        }
        let strips = drafted.layouts.first().into_iter().flat_map(|layout| &layout.strips);
        strips.fold(ValidOutline::nothing(), |treated, strip| treated.union(&ground_of(strip)))
    }
}

/// All that must stay dry, in two joins however many patches there are.
fn dry_of(measured: &Measured) -> ValidOutline {
    let Some((first, others)) = measured.patches.split_first() else { return measured.margins.clone() };
    let others = others.iter().flat_map(|patch| patch.outline.polygons().iter().cloned()).collect();
    let patches = first.outline.union(&ValidOutline::trusted(MultiPolygon::new(others)));
    measured.margins.union(&patches)
}

/// The ground of one strip as an outline.
fn ground_of(strip: &Strip) -> ValidOutline {
    let polygons = strip.runs.iter().flat_map(|run| &run.ground).map(|ring| {
        let line = |points: &[(f64, f64)]| -> LineString<f64> { points.to_vec().into() };
        Polygon::new(line(&ring.outer), ring.holes.iter().map(|hole| line(hole)).collect())
    });
    ValidOutline::trusted(MultiPolygon::new(polygons.collect()))
}
