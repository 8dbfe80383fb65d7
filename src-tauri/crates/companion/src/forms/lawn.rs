//! The form of a lawn: shapes as taped, what lies beyond the first one's sides, and the doubt of it all.
//!
//! A side that the form does not list has nothing beside it and no margin; all sides of the first shape reach the
//! trade, so that each is drawn and can be asked about for the wind.

use evensward_core::lawn::{Beside, FieldRefusal, Measured, Part, PatchKind, Shape, Side, Survey};
use evensward_core::quantity::{Angle, Arg, Doubt, Figure, FigureProblem, Length, Said, Unit};

use super::{Problems, code_of};
use crate::dto::figures::FieldProblem;
use crate::dto::lawn::{LawnInput, LawnView, PartInput, PartView, PartWay, ShapeKind};
use crate::{drawing, show};

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

/// More shapes or sides than any lawn that is taped has.
const N_PARTS_MOST: usize = 60;

/// The lawn as the trade takes it, or everything that is wrong with the form.
pub(crate) fn parse(input: &LawnInput) -> Result<Survey, Vec<FieldProblem>> {
    let read = read(input);
    let survey = read.problems.give(read.survey)?;
    match survey.measure(None) {
        Ok(_) => Ok(survey),
        Err(refusals) => Err(problems_of(&refusals, input)),
    }
}

/// The form with what the trade makes of it.
pub(crate) fn view(input: &LawnInput) -> LawnView {
    let Read { shapes, survey, problems } = read(input);
    let mut problems = problems.into_list();
    let parts = shapes
        .iter()
        .map(|shape| PartView {
            area: shape.as_ref().and_then(|shape| shape.area().ok()).map(show::area),
            ..PartView::default()
        })
        .collect();
    let mut measured = None;
    if let Some(survey) = &survey
        && problems.is_empty()
    {
        match survey.measure(None) {
            Ok(found) => measured = Some(found),
            Err(refusals) => problems = problems_of(&refusals, input),
        }
    }
    LawnView {
        input: input.clone(),
        problems,
        net_area: measured.as_ref().map(|measured| show::area(measured.net_area.area)),
        doubt_area: measured.as_ref().map(doubt_area),
        parts,
        drawing: measured.as_ref().map(drawing::lawn),
        notes: notes(input, measured.as_ref()),
    }
}

fn doubt_area(measured: &Measured) -> crate::dto::figures::Shown {
    show::area(measured.net_area.area.less(measured.net_area.lower()))
}

/// What came out of reading the form.
struct Read {
    /// Each part's shape, where its figures could be read.
    shapes: Vec<Option<Shape>>,
    /// The whole, if every field could be read.
    survey: Option<Survey>,
    problems: Problems,
}

fn read(input: &LawnInput) -> Read {
    let mut problems = Problems::default();
    problems.line("name", &input.name);
    for (field, n_given) in [("parts", input.parts.len()), ("sides", input.sides.len())] {
        if n_given > N_PARTS_MOST {
            let limit = Arg::Count(u32::try_from(N_PARTS_MOST).unwrap_or(u32::MAX));
            problems.add(field, &Said::new("too-many").with("limit", limit));
        }
    }
    if input.parts.is_empty() {
        problems.add("parts", &Said::new("no-parts"));
    }
    let mut shapes = Vec::new();
    let mut parts = Vec::new();
    for (part_idx, part) in input.parts.iter().enumerate().take(N_PARTS_MOST) {
        let path = |field: &str| format!("parts.{part_idx}.{field}");
        let shape = shape(&mut problems, part, &path);
        if let Some(shape) = &shape {
            for problem in shape.problems() {
                problems.add(path(problem.field), &problem.said);
            }
        }
        let taken_out = taken_out(&mut problems, part, &path);
        if part_idx == 0 && taken_out.flatten().is_some() {
            problems.add(path("taken_out"), &Said::new("first-part-taken-out"));
        }
        let at = place(&mut problems, part, &path);
        shapes.push(shape.clone());
        let part = shape.zip(taken_out).zip(at);
        parts.push(part.map(|((shape, taken_out), at)| Part { taken_out, at, ..Part::taped(shape) }));
    }
    let sides = sides(&mut problems, input, shapes.first().and_then(Option::as_ref));
    let doubt = problems.optional("doubt", &input.doubt, doubt_from_figure);
    let parts: Option<Vec<Part>> = parts.into_iter().collect();
    let survey = parts.zip(sides).zip(doubt).map(|((parts, sides), doubt)| Survey {
        sides,
        doubt: doubt.unwrap_or(Doubt::NONE),
        ..Survey::of(parts)
    });
    Read { shapes, survey, problems }
}

fn doubt_from_figure(figure: &Figure) -> Result<Doubt, FigureProblem> {
    if figure.unit == Unit::Percent {
        Doubt::from_figure(figure)
    } else {
        Err(FigureProblem::WrongUnit { unit: figure.unit })
    }
}

fn shape(problems: &mut Problems, part: &PartInput, path: &impl Fn(&str) -> String) -> Option<Shape> {
    if part.way != PartWay::Shape {
        problems.add(path("way"), &Said::new("way-not-yet"));
        return None;
    }
    let mut length = |field: &str, typed| problems.figure(&path(field), typed, Length::from_figure);
    match part.shape {
        ShapeKind::Rectangle => {
            let (width, length) = (length("width", &part.width), length("length", &part.length));
            Some(Shape::Rectangle { width: width?, length: length? })
        }
        ShapeKind::Triangle => {
            let (a, b, c) = (length("a", &part.a), length("b", &part.b), length("c", &part.c));
            Some(Shape::Triangle { a: a?, b: b?, c: c? })
        }
        ShapeKind::Circle => Some(Shape::Circle { diameter: length("diameter", &part.diameter)? }),
        ShapeKind::PartCircle => {
            let radius = length("radius", &part.radius);
            let angle = problems.figure(&path("angle"), &part.angle, Angle::from_figure);
            Some(Shape::PartCircle { radius: radius?, angle: angle? })
        }
    }
}

fn taken_out(problems: &mut Problems, part: &PartInput, path: &impl Fn(&str) -> String) -> Option<Option<PatchKind>> {
    match &part.taken_out {
        None => Some(None),
        Some(code) => problems.choice(&path("taken_out"), code, PATCHES).map(Some),
    }
}

fn place(
    problems: &mut Problems,
    part: &PartInput,
    path: &impl Fn(&str) -> String,
) -> Option<Option<(Length, Length)>> {
    let x = problems.optional(&path("at_x"), &part.at_x, Length::from_figure_or_zero);
    let y = problems.optional(&path("at_y"), &part.at_y, Length::from_figure_or_zero);
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

/// Every side of the first shape, with what the form says of it.
fn sides(problems: &mut Problems, input: &LawnInput, frame: Option<&Shape>) -> Option<Vec<Side>> {
    let mut listed: Vec<Option<Side>> = Vec::new();
    for (idx, side) in input.sides.iter().enumerate().take(N_PARTS_MOST) {
        let path = |field: &str| format!("sides.{idx}.{field}");
        let side_idx = usize::try_from(side.side_idx).unwrap_or(usize::MAX);
        if frame.is_some_and(|frame| side_idx >= frame.n_sides()) {
            problems.add(path("side_idx"), &Said::new("no-such-side"));
        }
        if input.sides.iter().take(idx).any(|earlier| earlier.side_idx == side.side_idx) {
            problems.add(path("side_idx"), &Said::new("side-twice"));
        }
        let beside = problems.choice(&path("beside"), &side.beside, BESIDE);
        let margin = problems.optional(&path("margin"), &side.margin, Length::from_figure_or_zero);
        listed.push(beside.zip(margin).map(|(beside, margin)| Side {
            part_idx: 0,
            side_idx,
            beside,
            margin: margin.unwrap_or(Length::ZERO),
        }));
    }
    let mut sides: Vec<Side> = listed.into_iter().collect::<Option<_>>()?;
    for side_idx in 0..frame?.n_sides() {
        if !sides.iter().any(|side| side.side_idx == side_idx) {
            sides.push(Side { part_idx: 0, side_idx, beside: Beside::Unknown, margin: Length::ZERO });
        }
    }
    Some(sides)
}

/// The trade's refusals, each at the field of the form that a person can change.
fn problems_of(refusals: &[FieldRefusal], input: &LawnInput) -> Vec<FieldProblem> {
    let in_form = |field: &str| match field.rsplit_once('.') {
        Some((part, "at")) => format!("{part}.at_x"),
        Some((side, "side")) => format!("{side}.side_idx"),
        // Sides that the form does not list have no margin that could be refused.
        _ if field.starts_with("sides.") && input.sides.is_empty() => "sides".to_owned(),
        _ => field.to_owned(),
    };
    refusals.iter().map(|refusal| show::problem(in_form(&refusal.field), &refusal.said)).collect()
}

fn notes(input: &LawnInput, measured: Option<&Measured>) -> Vec<crate::dto::figures::Said> {
    let Some(measured) = measured else { return Vec::new() };
    let mut notes = Vec::new();
    for patch in measured.patches.iter().filter(|patch| patch.is_place_assumed) {
        let what = Arg::Code(format!("taken-out-{}", code_of(patch.kind, PATCHES)).into());
        notes.push(Said::new("patch-place-assumed").with("what", what));
    }
    let is_set_beside = |part: &PartInput| part.taken_out.is_none() && part.at_x.text.trim().is_empty();
    for (part_idx, _) in input.parts.iter().enumerate().skip(1).filter(|(_, part)| is_set_beside(part)) {
        let number = Arg::Count(u32::try_from(part_idx).unwrap_or(u32::MAX).saturating_add(1));
        notes.push(Said::new("part-set-beside").with("part", number));
    }
    if input.doubt.text.trim().is_empty() {
        notes.push(Said::new("doubt-not-stated"));
    }
    notes.iter().map(show::said).collect()
}
