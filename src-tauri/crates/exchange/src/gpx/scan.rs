//! Walks through the elements of a GPX file and gathers its runs of fixes.
//!
//! Elements are known by their local names, so that a prefix does not matter, and only where they belong: a name is a
//! name inside a track, a time is a time inside a point.
//! Invariant: nothing is kept of what is not asked for; the memory goes with the fixes, not with the file.

use chrono::{DateTime, NaiveDateTime};
use evensward_core::lawn::{Fix, Position};
use evensward_core::quantity::{Length, Said};
use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

use super::{METRES_PER_DILUTION, TrackKind};
use crate::limits::count;

/// More positions than a month of walking at one a second, all runs together.
const MOST_FIXES: usize = 300_000;
/// More runs than anybody chooses from.
const MOST_RUNS: usize = 500;
/// Letters of a name that a list can show.
const LONGEST_NAME: usize = 80;
/// Letters of a text that can still be a number, a time or a name.
const LONGEST_TEXT: usize = 400;

/// One run of fixes as found.
pub(super) struct Run {
    pub(super) name: Option<String>,
    pub(super) kind: TrackKind,
    pub(super) fixes: Vec<Fix>,
    pub(super) n_unreadable: usize,
    pub(super) n_from_dilution: usize,
}

impl Run {
    const fn new(kind: TrackKind) -> Self {
        Self { name: None, kind, fixes: Vec::new(), n_unreadable: 0, n_from_dilution: 0 }
    }
}

/// What a file holds.
pub(super) struct Scanned {
    pub(super) runs: Vec<Run>,
    pub(super) is_broken_off: bool,
}

/// What an open element is to us.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Open {
    Gpx,
    Track,
    Segment,
    Route,
    Point,
    Leaf(Leaf),
    Other,
}

/// An element whose text is asked for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Leaf {
    Name,
    Time,
    HorizontalDilution,
    PositionDilution,
    Accuracy,
}

/// The point that is being read.
#[derive(Default)]
struct Point {
    position: Option<Position>,
    at_ms: Option<i64>,
    horizontal_dilution: Option<f64>,
    position_dilution: Option<f64>,
    accuracy_m: Option<f64>,
}

pub(super) fn scan(text: &str) -> Result<Scanned, Said> {
    let mut reader = Reader::from_str(text);
    reader.config_mut().allow_dangling_amp = true;
    let mut scan = Scan::default();
    let is_broken_off = loop {
        match reader.read_event() {
            Ok(Event::Start(element)) => scan.open(&element)?,
            Ok(Event::Empty(element)) => {
                scan.open(&element)?;
                scan.close()?;
            }
            Ok(Event::End(_)) => scan.close()?,
            Ok(Event::Text(text)) => scan.add_text(&text.xml10_content()),
            Ok(Event::CData(text)) => scan.add_text(&text.xml10_content()),
            Ok(Event::GeneralRef(reference)) => scan.add_text(&resolved(&reference)),
            Ok(Event::Eof) => break !scan.open.is_empty(),
            Ok(Event::Comment(_) | Event::Decl(_) | Event::PI(_) | Event::DocType(_)) => {}
            Err(_) if scan.is_gpx => break true,
            Err(_) => return Err(Said::new("gpx-not-gpx")),
        }
    };
    if !scan.is_gpx {
        return Err(Said::new("gpx-not-gpx"));
    }
    Ok(Scanned { runs: scan.finished(), is_broken_off })
}

/// The letter that a reference stands for; one that is not known stays as it is written.
fn resolved(reference: &quick_xml::events::BytesRef<'_>) -> String {
    match (&**reference, reference.resolve_char_ref()) {
        (_, Ok(Some(letter))) => letter.to_string(),
        ("amp", _) => "&".to_owned(),
        ("lt", _) => "<".to_owned(),
        ("gt", _) => ">".to_owned(),
        ("quot", _) => "\"".to_owned(),
        ("apos", _) => "'".to_owned(),
        (name, _) => format!("&{name};"),
    }
}

#[derive(Default)]
struct Scan {
    is_gpx: bool,
    open: Vec<Open>,
    text: String,
    is_in_point: bool,
    point: Point,
    n_fixes: usize,
    finished: Vec<Run>,
    /// The track or route that is open, and its finished segments.
    run: Option<Run>,
    segments: Vec<Run>,
    segment: Option<Run>,
    waypoints: Option<Run>,
}

impl Scan {
    fn open(&mut self, element: &BytesStart<'_>) -> Result<(), Said> {
        let local_name = element.local_name();
        let name = local_name.as_ref();
        let open = match (self.open.last(), name) {
            (None, "gpx") => {
                self.is_gpx = true;
                Open::Gpx
            }
            (None, _) if !self.is_gpx => return Err(Said::new("gpx-not-gpx")),
            (Some(Open::Gpx), "trk") => {
                self.run = Some(Run::new(TrackKind::Track));
                Open::Track
            }
            (Some(Open::Gpx), "rte") => {
                self.run = Some(Run::new(TrackKind::Route));
                Open::Route
            }
            (Some(Open::Track), "trkseg") => {
                self.segment = Some(Run::new(TrackKind::Segment));
                Open::Segment
            }
            (Some(Open::Gpx), "wpt") | (Some(Open::Segment), "trkpt") | (Some(Open::Route), "rtept") => {
                self.point = Point { position: position(element), ..Point::default() };
                self.is_in_point = true;
                Open::Point
            }
            (Some(Open::Track | Open::Route), "name") => Open::Leaf(Leaf::Name),
            _ if self.is_in_point => leaf_of_point(name).map_or(Open::Other, Open::Leaf),
            _ => Open::Other,
        };
        self.text.clear();
        self.open.push(open);
        Ok(())
    }

    fn add_text(&mut self, text: &str) {
        if matches!(self.open.last(), Some(Open::Leaf(_))) && self.text.len() < LONGEST_TEXT {
            self.text.extend(text.chars().take(LONGEST_TEXT));
        }
    }

    fn close(&mut self) -> Result<(), Said> {
        match self.open.pop() {
            Some(Open::Leaf(leaf)) => self.take_leaf(leaf),
            Some(Open::Point) => self.take_point()?,
            Some(Open::Segment) => self.take_segment(),
            Some(Open::Track | Open::Route) => self.take_run(),
            Some(Open::Gpx | Open::Other) | None => {}
        }
        self.text.clear();
        if self.finished.len() > MOST_RUNS {
            return Err(Said::new("gpx-too-many-tracks").with("limit", count(MOST_RUNS)));
        }
        Ok(())
    }

    fn take_leaf(&mut self, leaf: Leaf) {
        let text = self.text.trim();
        let number = || text.parse::<f64>().ok().filter(|value| *value > 0.0 && *value < 1e6);
        match leaf {
            Leaf::Name => {
                let name: String = text.chars().filter(|letter| !letter.is_control()).take(LONGEST_NAME).collect();
                if let Some(run) = self.run.as_mut().filter(|_| !name.is_empty()) {
                    run.name = Some(name);
                }
            }
            Leaf::Time => self.point.at_ms = milliseconds(text),
            Leaf::HorizontalDilution => self.point.horizontal_dilution = number(),
            Leaf::PositionDilution => self.point.position_dilution = number(),
            Leaf::Accuracy => self.point.accuracy_m = number(),
        }
    }

    fn take_point(&mut self) -> Result<(), Said> {
        let point = core::mem::take(&mut self.point);
        self.is_in_point = false;
        let run = match self.open.last() {
            Some(Open::Segment) => self.segment.as_mut(),
            Some(Open::Route) => self.run.as_mut(),
            _ => Some(self.waypoints.get_or_insert_with(|| Run::new(TrackKind::Waypoints))),
        };
        let Some(run) = run else { return Ok(()) };
        let Some(position) = point.position else {
            run.n_unreadable += 1;
            return Ok(());
        };
        // The position's dilution takes the height in, and so is never the better of the two.
        let dilution = point.horizontal_dilution.or(point.position_dilution);
        let accuracy_m = point.accuracy_m.or(dilution.map(|dilution| dilution * METRES_PER_DILUTION));
        run.n_from_dilution += usize::from(point.accuracy_m.is_none() && dilution.is_some());
        let accuracy = accuracy_m.and_then(|accuracy_m| Length::from_m(accuracy_m).ok());
        run.fixes.push(Fix { position, accuracy, at_ms: point.at_ms });
        self.n_fixes += 1;
        if self.n_fixes > MOST_FIXES {
            return Err(Said::new("gpx-too-many-positions").with("limit", count(MOST_FIXES)));
        }
        Ok(())
    }

    fn take_segment(&mut self) {
        if let Some(segment) =
            self.segment.take().filter(|segment| !segment.fixes.is_empty() || segment.n_unreadable > 0)
        {
            self.segments.push(segment);
        }
    }

    /// A track is its segments one after the other; where it has several, each is offered as well.
    fn take_run(&mut self) {
        let Some(mut run) = self.run.take() else { return };
        let segments = core::mem::take(&mut self.segments);
        for segment in &segments {
            run.fixes.extend_from_slice(&segment.fixes);
            run.n_unreadable += segment.n_unreadable;
            run.n_from_dilution += segment.n_from_dilution;
        }
        if segments.len() > 1 {
            let named = segments.into_iter().map(|segment| Run { name: run.name.clone(), ..segment });
            self.finished.extend(named.filter(|segment| !segment.fixes.is_empty()));
        }
        if !run.fixes.is_empty() {
            self.finished.push(run);
        }
    }

    /// Everything found, also what was still open when the file broke off.
    fn finished(mut self) -> Vec<Run> {
        self.take_segment();
        self.take_run();
        let mut runs = self.finished;
        runs.extend(self.waypoints.filter(|waypoints| !waypoints.fixes.is_empty()));
        runs
    }
}

fn leaf_of_point(name: &str) -> Option<Leaf> {
    match name {
        "time" => Some(Leaf::Time),
        "hdop" => Some(Leaf::HorizontalDilution),
        "pdop" => Some(Leaf::PositionDilution),
        // No standard names it; recorders that state metres call it so in their extensions.
        _ if name.eq_ignore_ascii_case("accuracy") || name.eq_ignore_ascii_case("hacc") => Some(Leaf::Accuracy),
        _ => None,
    }
}

fn position(element: &BytesStart<'_>) -> Option<Position> {
    let (mut lat_deg, mut lon_deg) = (None, None);
    for attribute in element.attributes().with_checks(false).flatten() {
        let number = || attribute.value.trim().parse::<f64>().ok();
        match attribute.key.local_name().as_ref() {
            "lat" => lat_deg = number(),
            "lon" => lon_deg = number(),
            _ => {}
        }
    }
    Position::from_deg(lat_deg?, lon_deg?).ok()
}

/// Milliseconds since 1970; a time without a zone is taken as UTC, since only differences count.
fn milliseconds(text: &str) -> Option<i64> {
    if let Ok(time) = DateTime::parse_from_rfc3339(text) {
        return Some(time.timestamp_millis());
    }
    ["%Y-%m-%dT%H:%M:%S%.f", "%Y-%m-%d %H:%M:%S%.f", "%Y-%m-%dT%H:%M:%S%.f%#z"]
        .iter()
        .find_map(|form| NaiveDateTime::parse_from_str(text, form).ok())
        .map(|time| time.and_utc().timestamp_millis())
}
