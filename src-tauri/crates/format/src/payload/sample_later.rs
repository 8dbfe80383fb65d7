//! Payloads with everything that came once their kinds had been published: keys that older events lack.

use std::sync::Arc;

use evensward_core::lawn::{How, Instrument, Part, Position, Ring, Shape, Slope, Survey};
use evensward_core::plan::{Ends, NarrowAt};
use evensward_core::quantity::{Angle, Area, Length, Volume};
use evensward_core::visit::event::Payload;

use super::sample::each_kind;

fn m(value: f64) -> Length {
    Length::from_m(value).unwrap()
}

fn m2(value: f64) -> Area {
    Area::from_m2(value).unwrap()
}

fn deg(value: f64) -> Angle {
    Angle::from_deg(value).unwrap()
}

/// A lawn by braces with a part that was walked round, paced, on a slope, at a place at sea.
fn survey(before: &Survey) -> Survey {
    let ring = Shape::corners(vec![(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]).unwrap();
    let braced = Part { how: How::Braced, area_sd: Some(m2(0.125)), ..Part::taped(ring) };
    let walked = Part { how: How::Walked, area_sd: Some(m2(0.5)), ..braced.clone() };
    Survey {
        parts: vec![braced, walked],
        instrument: Some(Instrument::Paces { length: m(0.75), sd: m(0.03) }),
        slope: Some(Slope::new(0.125, deg(90.0)).unwrap()),
        origin: Some(Position::from_deg(54.5, 4.0).unwrap()),
        entry: Some((0.5, 0.0)),
        tap: Some((4.0, 1.5)),
        ..before.clone()
    }
}

/// One payload of each kind that has later keys, with all of them said.
pub(super) fn with_later_keys() -> Vec<Payload> {
    each_kind().into_iter().filter_map(later).collect()
}

fn later(payload: Payload) -> Option<Payload> {
    Some(match payload {
        Payload::Opened(mut lawn) => {
            let now = Arc::make_mut(&mut lawn);
            now.survey = survey(&now.survey);
            now.measured.slope = now.survey.slope;
            now.measured.origin = now.survey.origin;
            now.measured.entry = now.survey.entry;
            now.measured.tap = now.survey.tap;
            Payload::Opened(lawn)
        }
        Payload::KitChosen { mut kit, checks } => {
            Arc::make_mut(&mut kit).kit.reach = Some(m(0.6));
            Payload::KitChosen { kit, checks }
        }
        Payload::PlanAgreed { mut plan, fills, typed, checks, later } => {
            let now = Arc::make_mut(&mut plan);
            now.choice.angle = deg(30.0);
            now.choice.narrow_at = NarrowAt::First;
            now.choice.edge_first = true;
            for layout in &mut now.plan.layouts {
                layout.angle = deg(30.0);
                layout.strips.iter_mut().for_each(|strip| strip.is_lap = true);
            }
            for pass in &mut now.plan.passes {
                pass.empty = m(7.5);
                pass.n_turns = 3;
                pass.legs.iter_mut().for_each(|leg| leg.empty_before = m(2.5));
            }
            now.plan.fills.iter_mut().for_each(|fill| fill.to.nth = 1);
            let wedge = Ring { outer: vec![(0.0, 0.0), (1.0, 0.0), (0.0, 0.5)], holes: Vec::new() };
            now.plan.ends = Ends {
                missed: m2(0.25),
                overshot: m2(0.5),
                overshot_water: Volume::from_l(0.0075).unwrap(),
                missed_ground: vec![wedge.clone()],
                overshot_ground: vec![wedge],
            };
            Payload::PlanAgreed { plan, fills, typed, checks, later }
        }
        _ => return None,
    })
}
