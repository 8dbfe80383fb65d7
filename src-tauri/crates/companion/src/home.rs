//! The first screen: the lawns with what is owed on each, what the shelf says, and whether everything is there to begin.
//!
//! Visits under way come first, the latest touched at the top; then look-backs that are due, the longest owed first;
//! then the rest by name. Of a closed visit only its row's small summary is read, never its events.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use evensward_format::journal::VisitRow;
use evensward_format::register::Entry;
use evensward_store::Condition;
use serde::Deserialize;
use uuid::Uuid;

use crate::dto::ask::Failure;
use crate::dto::figures::Said;
use crate::dto::home::{HomeView, LawnLine, UnfinishedView};
use crate::register::{CLIENT, KIT, LAWN, PRODUCT};
use crate::{Companion, failure, forms, visit};

/// What a list shows of a closed visit; the rest of the summary belongs to other lists.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Summary {
    said: Option<Said>,
    next: Vec<Said>,
}

/// Where a lawn stands in the list.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Place {
    UnderWay(Reverse<i64>),
    LookBackDue(String),
    Rest,
}

impl Companion {
    pub(crate) fn home(&self) -> Result<HomeView, Failure> {
        let today = self.today().to_string();
        let under_way: BTreeMap<Uuid, VisitRow> =
            self.store.lawns_under_way()?.into_iter().map(|visit| (visit.lawn_id, visit)).collect();
        let mut lawns = Vec::new();
        let mut unfinished = Vec::new();
        let mut n_unreadable = 0;
        for entry in self.entries(LAWN)? {
            let open = under_way.get(&entry.entry_id);
            let line = match self.lawn_line(&entry, open, &today) {
                Ok((line, rest)) => {
                    unfinished.extend(rest);
                    line
                }
                Err(failure) if failure.is_of_one_entry() => {
                    tracing::error!(?failure, lawn_id = %entry.entry_id, "a lawn can't be read");
                    n_unreadable += 1;
                    continue;
                }
                Err(failure) => return Err(failure),
            };
            let place = match (open, &line.look_back_on) {
                (Some(visit), _) => Place::UnderWay(Reverse(visit.changed_utc_ms)),
                (None, Some(day)) if line.is_look_back_due => Place::LookBackDue(day.clone()),
                (None, _) => Place::Rest,
            };
            lawns.push((place, line.name.to_lowercase(), line));
        }
        lawns.sort_by(|(place, name, line), (other_place, other_name, other)| {
            (place, name, &line.lawn_id).cmp(&(other_place, other_name, &other.lawn_id))
        });
        let kits = self.entries(KIT)?;
        let calibrated = Self::readable(kits.iter().map(|kit| Ok(self.kit_of(kit)?.1.is_some())))?;
        Ok(HomeView {
            operator: self.operator()?.map(|(_, operator)| operator.name),
            today,
            lawns: lawns.into_iter().map(|(_, _, line)| line).collect(),
            unfinished,
            shelf: self.shelf_remarks()?,
            n_products: count(self.entries(PRODUCT)?.len()),
            n_kits: count(kits.len()),
            n_calibrated: count(calibrated.into_iter().filter(|is_calibrated| *is_calibrated).count()),
            drafts: self.store.drafts()?.into_iter().map(|(key, _)| key).collect(),
            file: match self.condition {
                Condition::Newer { version } => Some(failure::newer(version)),
                Condition::Made | Condition::Current | Condition::BroughtForward { .. } => {
                    (n_unreadable > 0).then(|| failure::some_unreadable(n_unreadable))
                }
            },
            data_folder: self.folder.display().to_string(),
        })
    }

    fn lawn_line(
        &self,
        entry: &Entry,
        open: Option<&VisitRow>,
        today: &str,
    ) -> Result<(LawnLine, Option<UnfinishedView>), Failure> {
        let input = self.lawn_of(entry)?;
        let client = match &input.client_id {
            Some(client_id) => {
                let client_id =
                    client_id.parse().map_err(|_| Failure::unreadable(format!("{client_id:?} is no id")))?;
                self.store.entry(CLIENT, client_id)?.map(|client| self.client_of(&client)).transpose()?
            }
            None => None,
        };
        let visits = self.store.visits_of_lawn(entry.entry_id)?;
        let last = visits.iter().find(|visit| visit.closed_utc_ms.is_some());
        let summary = match last {
            Some(visit) => {
                serde_json::from_str(&visit.summary).map_err(|error| Failure::unreadable(error.to_string()))?
            }
            None => Summary::default(),
        };
        let last_visit_id = last.map(|visit| visit.visit_id.to_string());
        let visits = visit::with_summaries(self, visits)?;
        let look_back_on = visit::look_back_due(&visits).map(|due| due.on.to_string());
        let filled = |words: &str| (!words.is_empty()).then(|| words.to_owned());
        let rest = if open.is_none() { visit::unfinished(&visits, &input.name) } else { None };
        let line = LawnLine {
            lawn_id: entry.entry_id.to_string(),
            name: input.name.clone(),
            client: client.as_ref().and_then(|client| filled(&client.name)),
            address: client.as_ref().and_then(|client| filled(&client.address)),
            view: forms::lawn::view(&input),
            open_visit_id: open.map(|visit| visit.visit_id.to_string()),
            open_stage: open.map(|visit| visit.stage.clone()),
            last: summary.said,
            last_visit_id,
            // Days written as year, month and day sort as they follow.
            is_look_back_due: look_back_on.as_deref().is_some_and(|day| day <= today),
            look_back_on,
            next: summary.next,
        };
        Ok((line, rest))
    }
}

fn count(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}
