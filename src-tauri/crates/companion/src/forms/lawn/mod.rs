//! The form of a lawn: its parts in whatever way each is measured, what lies beyond its sides, and the doubt of it all.
//!
//! Every way of measuring becomes a part of the trade by the trade's own function; here figures are read, and what comes out
//! is shown. All sides of all grass parts reach the trade, so that each is drawn and can be asked about for the wind; it
//! leaves out those between joined parts.
//! Invariant: a form is never changed on its way, but for the place of its frame, which the first walk round sets, and for
//! corners given clockwise, which are turned with what was said of their sides.

mod braces;
mod corners;
mod frame;
mod moved;
mod notes;
mod offsets;
mod shapes;
mod sides;
mod walked;

use evensward_core::lawn::{Beside, FieldRefusal, How, Measured, Part, PatchKind, Shape, Survey, is_clockwise};
use evensward_core::quantity::{Area, Arg, Doubt, Figure, FigureProblem, Said, Unit};

use self::frame::Frame;
use super::Problems;
use crate::dto::figures::{FieldProblem, Shown};
use crate::dto::lawn::{LawnInput, LawnView, PartInput, PartView, PartWay, SideInput};
use crate::{drawing, show};

pub(crate) use frame::frame_among;
pub(crate) use moved::moved;
pub(crate) use sides::side_name;

/// The codes of what a taken-out part is.
pub(crate) const PATCHES: &[(&str, PatchKind)] = &[
    ("bed", PatchKind::Bed),
    ("pond", PatchKind::Pond),
    ("tree_ring", PatchKind::TreeRing),
    ("path", PatchKind::Path),
    ("other", PatchKind::Other),
];

/// The codes of what lies beyond a side.
pub(crate) const BESIDE: &[(&str, Beside)] = &[
    ("unknown", Beside::Unknown),
    ("nothing", Beside::Nothing),
    ("hedge", Beside::Hedge),
    ("open_water", Beside::OpenWater),
    ("neighbour", Beside::Neighbour),
    ("food_plants", Beside::FoodPlants),
    ("paving", Beside::Paving),
    ("wall", Beside::Wall),
    ("drain", Beside::Drain),
];

/// More parts than any lawn has that is treated on foot.
const N_PARTS_MOST: usize = 120;
/// A frame set by a walk is set anew when its first part now lies further off than this, in metres.
const FRAME_REACHES_M: f64 = 5_000.0;

/// The path of a field of one part.
type Path<'a> = dyn Fn(&str) -> String + 'a;

/// What came of reading one part.
struct Found {
    shape: Shape,
    how: How,
    area_sd: Option<Area>,
    /// Whether its numbers say where on the lawn it lies.
    has_own_place: bool,
    view: PartView,
}

impl Found {
    fn new(shape: Shape, how: How) -> Self {
        Self { shape, how, area_sd: None, has_own_place: false, view: PartView::default() }
    }
}

/// The lawn as the trade takes it, or everything that is wrong with the form.
pub(crate) fn parse(input: &LawnInput) -> Result<Survey, Vec<FieldProblem>> {
    let read = read(&settled(input));
    let survey = read.problems.give(read.survey)?;
    match survey.measure(None) {
        Ok(_) => Ok(survey),
        Err(refusals) => Err(problems_of(&refusals, input)),
    }
}

/// The form with the place of its frame, which the first walk round sets when nobody has, and with all corners
/// anticlockwise.
pub(crate) fn settled(input: &LawnInput) -> LawnInput {
    let input = &turned(input);
    let Some(frame) = input.parts.first().filter(|part| part.way == PartWay::Walked) else { return input.clone() };
    let Some(walked) = walked::first_round(frame) else { return input.clone() };
    let is_near = input.origin.is_some_and(|[lat_deg, lon_deg]| {
        evensward_core::lawn::Position::from_deg(lat_deg, lon_deg)
            .is_ok_and(|origin| origin.distance(walked.origin).m() <= FRAME_REACHES_M)
    });
    if is_near {
        return input.clone();
    }
    LawnInput { origin: Some([walked.origin.lat_deg(), walked.origin.lon_deg()]), ..input.clone() }
}

/// The form with the corners of every part anticlockwise from the same first one, as the trade numbers them. What was said
/// of a side stays with the two corners that it joins.
fn turned(input: &LawnInput) -> LawnInput {
    let mut turned = input.clone();
    for (part_idx, part) in turned.parts.iter_mut().enumerate() {
        let ring: Vec<(f64, f64)> = part.corners.iter().map(|[x, y]| (*x, *y)).collect();
        let Some((_, others)) = part.corners.split_first_mut() else { continue };
        if part.way != PartWay::Corners || !is_clockwise(&ring) || Shape::corners(ring).is_err() {
            continue;
        }
        others.reverse();
        let last = u32::try_from(others.len()).unwrap_or(u32::MAX);
        let is_of_part =
            |side: &&mut SideInput| usize::try_from(side.part_idx) == Ok(part_idx) && side.side_idx <= last;
        for side in turned.sides.iter_mut().filter(is_of_part) {
            side.side_idx = last - side.side_idx;
        }
    }
    turned
}

/// The form with what the trade makes of it.
pub(crate) fn view(input: &LawnInput) -> LawnView {
    let input = settled(input);
    let Read { parts, survey, problems } = read(&input);
    let mut problems = problems.into_list();
    let mut measured = None;
    // A lawn without a name is drawn all the same: it is measured first and named when there is time.
    if let Some(survey) = &survey
        && problems.iter().all(|problem| problem.field == "name")
    {
        match sides::with_all(survey).measure(None) {
            Ok(found) => measured = Some(found),
            Err(refusals) => problems.extend(problems_of(&refusals, &input)),
        }
    }
    let drawing = measured.as_ref().zip(survey.as_ref()).map(|(measured, survey)| {
        let mut drawn = drawing::lawn(&sides::only_listed(measured, survey), Some(survey));
        drawn.corners = sides::corners_to_hold(measured, survey);
        drawn
    });
    let notes = notes::of(&input, survey.as_ref(), measured.as_ref());
    let is_joined = survey.as_ref().is_some_and(|survey| sides::n_grass(survey) > 1);
    let parts = parts.into_iter().enumerate().map(|(idx, part)| part_view(idx, part, measured.as_ref(), is_joined));
    LawnView {
        parts: parts.collect(),
        problems,
        net_area: measured.as_ref().map(|measured| show::area(measured.net_area.area)),
        doubt_area: measured.as_ref().map(doubt_area),
        drawing,
        notes,
        input,
    }
}

fn doubt_area(measured: &Measured) -> Shown {
    show::area(measured.net_area.area.less(measured.net_area.lower()))
}

/// A part with its corners and sides: as they lie on the lawn, or by themselves while the lawn as a whole is not measured.
fn part_view(part_idx: usize, read: ReadPart, measured: Option<&Measured>, is_joined: bool) -> PartView {
    let Some((part, slope)) = read.part else { return read.view };
    let mut view = read.view;
    let alone;
    let (idx, measured, is_joined) = if let Some(measured) = measured {
        (part_idx, measured, is_joined)
    } else {
        let survey = Survey { slope, ..Survey::of(vec![Part { taken_out: None, ..part.clone() }]) };
        let Ok(found) = sides::with_all(&survey).measure(None) else { return view };
        alone = found;
        (0, &alone, false)
    };
    view.at = part.at.map(|(right, away)| [right, away]).or_else(|| sides::place(&part, idx, measured));
    view.area = view.area.or_else(|| part.shape.area().ok().map(show::area));
    view.sd = part.area_sd.map(show::area);
    view.sides = sides::names(&part, idx, measured, is_joined);
    view.corners = sides::corners(&part, idx, measured).into_iter().map(|(x, y)| [x, y]).collect();
    view.corner_names = (0..view.corners.len()).map(sides::corner_name).collect();
    view
}

/// One part as it was read.
struct ReadPart {
    part: Option<(Part, Option<evensward_core::lawn::Slope>)>,
    view: PartView,
}

/// What came out of reading the form.
struct Read {
    parts: Vec<ReadPart>,
    /// The whole, if every field could be read.
    survey: Option<Survey>,
    problems: Problems,
}

fn read(input: &LawnInput) -> Read {
    let mut problems = Problems::default();
    problems.line("name", &input.name);
    if input.parts.len() > N_PARTS_MOST {
        let limit = Arg::Count(u32::try_from(N_PARTS_MOST).unwrap_or(u32::MAX));
        problems.add("parts", &Said::new("too-many").with("limit", limit));
    }
    if input.parts.is_empty() {
        problems.add("parts", &Said::new("no-parts"));
    }
    let frame = Frame::read(&mut problems, input);
    let read: Vec<(Option<Part>, PartView)> = input
        .parts
        .iter()
        .enumerate()
        .take(N_PARTS_MOST)
        .map(|(part_idx, part)| read_part(&mut problems, part_idx, part, &frame))
        .collect();
    let shapes: Vec<Option<&Part>> = read.iter().map(|(part, _)| part.as_ref()).collect();
    let sides = sides::read(&mut problems, input, &shapes);
    let doubt = problems.optional("doubt", &input.doubt, doubt_from_figure);
    let parts: Option<Vec<Part>> = read.iter().map(|(part, _)| part.clone()).collect();
    let survey = parts.zip(sides).zip(doubt).map(|((parts, sides), doubt)| Survey {
        sides,
        doubt: doubt.unwrap_or(Doubt::NONE),
        away_bearing: frame.away_bearing,
        instrument: frame.instrument,
        slope: frame.slope,
        origin: frame.origin,
        entry: frame.entry,
        tap: frame.tap,
        ..Survey::of(parts)
    });
    let parts = read.into_iter().map(|(part, view)| ReadPart { part: part.map(|part| (part, frame.slope)), view });
    Read { parts: parts.collect(), survey, problems }
}

/// One part, and the view of what is known of it even when it does not stand.
fn read_part(problems: &mut Problems, part_idx: usize, part: &PartInput, frame: &Frame) -> (Option<Part>, PartView) {
    let path = |field: &str| format!("parts.{part_idx}.{field}");
    let mut refused = PartView::default();
    let found = match part.way {
        PartWay::Shape => shapes::read(problems, part, &path, frame),
        PartWay::Braces => braces::read(problems, part, &path, frame, &mut refused),
        PartWay::Offsets => offsets::read(problems, part, &path, frame),
        PartWay::Walked => walked::read(problems, part, &path, frame),
        PartWay::Corners => corners::read(problems, part, &path),
    };
    let taken_out = taken_out(problems, part, &path);
    if part_idx == 0 && taken_out.flatten().is_some() {
        problems.add(path("taken_out"), &Said::new("first-part-taken-out"));
    }
    let at = place(problems, part, &path);
    let Some(found) = found else { return (None, refused) };
    let is_ring = found.shape.has_own_place();
    let at = match at {
        // It lies where its own numbers say, whatever was typed for another way of measuring.
        _ if found.has_own_place => Some(None),
        // A ring without a place of its own is neither set beside the others nor in the middle.
        Some(None) if is_ring && part_idx > 0 => {
            problems.add(path("at_x"), &Said::new("place-needed"));
            None
        }
        at => at,
    };
    let part = taken_out.zip(at).map(|(taken_out, at)| Part {
        shape: found.shape,
        taken_out,
        at,
        how: found.how,
        area_sd: found.area_sd,
    });
    (part, found.view)
}

fn doubt_from_figure(figure: &Figure) -> Result<Doubt, FigureProblem> {
    if figure.unit == Unit::Percent {
        Doubt::from_figure(figure)
    } else {
        Err(FigureProblem::WrongUnit { unit: figure.unit })
    }
}

fn taken_out(problems: &mut Problems, part: &PartInput, path: &Path<'_>) -> Option<Option<PatchKind>> {
    match &part.taken_out {
        None => Some(None),
        Some(code) => problems.choice(&path("taken_out"), code, PATCHES).map(Some),
    }
}

fn place(problems: &mut Problems, part: &PartInput, path: &Path<'_>) -> Option<Option<(f64, f64)>> {
    let x = problems.optional(&path("at_x"), &part.at_x, frame::along_m);
    let y = problems.optional(&path("at_y"), &part.at_y, frame::along_m);
    match (x?, y?) {
        (Some(x), Some(y)) => Some(Some((x, y))),
        (None, None) => Some(None),
        (Some(_), None) => {
            problems.add(path("at_y"), &Said::new("place-needs-both"));
            None
        }
        (None, Some(_)) => {
            problems.add(path("at_x"), &Said::new("place-needs-both"));
            None
        }
    }
}

/// The field of the form that makes a part's ring.
fn ring_field(part: &str, input: &LawnInput) -> &'static str {
    let part_idx = part.rsplit_once('.').and_then(|(_, idx)| idx.parse::<usize>().ok());
    match part_idx.and_then(|idx| input.parts.get(idx)).map(|part| part.way) {
        Some(PartWay::Braces) => "braces.lines",
        Some(PartWay::Offsets) => "offsets",
        Some(PartWay::Walked) => "walked",
        Some(PartWay::Shape | PartWay::Corners) | None => "corners",
    }
}

/// The trade's refusals, each at the field of the form that a person can change.
fn problems_of(refusals: &[FieldRefusal], input: &LawnInput) -> Vec<FieldProblem> {
    let n_listed = input.sides.len();
    let in_form = |field: &str| match field.rsplit_once('.') {
        Some((part, "at")) => format!("{part}.at_x"),
        Some((part, "corners")) => format!("{part}.{}", ring_field(part, input)),
        Some((side, "side")) => format!("{side}.side_idx"),
        // Sides that the form does not list have no margin that could be refused.
        _ if field.starts_with("sides.") && n_listed == 0 => "sides".to_owned(),
        _ => field.to_owned(),
    };
    refusals.iter().map(|refusal| show::problem(in_form(&refusal.field), &refusal.said)).collect()
}
