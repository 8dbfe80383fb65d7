//! The chain of closed records: each device binds every record it closes to the one before.
//!
//! Who changes a closed visit's event, its time, or the order of records breaks every later link, and
//! [`verify`] names the first one that is broken. The chain shows that nothing was changed after the
//! closing; it can't show that what was written was true, and the last links could be cut off: that is
//! seen only by somebody who has kept a later hash, such as a record handed out or handed in.
//!
//! SHA-256 is that of FIPS 180-4, <https://doi.org/10.6028/NIST.FIPS.180-4>. Every part that is hashed has
//! a fixed length or ends with a zero byte, which neither a kind, a zone nor a JSON text can contain, so
//! two different lists of events never give the same bytes. This layout is a published format: it is never
//! changed, a new one would be a new kind of link.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use uuid::Uuid;

use crate::journal::EventRow;

/// A SHA-256 hash; in JSON and on screen its 64 hexadecimal digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Digest(pub [u8; 32]);

impl Digest {
    /// What a device's first link has in place of the link before.
    pub const NONE: Self = Self([0; 32]);
}

impl fmt::Display for Digest {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&to_hex(&self.0))
    }
}

impl From<Digest> for String {
    fn from(digest: Digest) -> Self {
        to_hex(&digest.0)
    }
}

impl TryFrom<String> for Digest {
    type Error = NotHex;

    fn try_from(text: String) -> Result<Self, NotHex> {
        from_hex(&text).map(Self)
    }
}

/// A text that should have been hexadecimal digits of a certain number.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("expected {expected} hexadecimal digits and found {found:?}")]
pub struct NotHex {
    /// How many digits there should be.
    pub expected: usize,
    /// The text.
    pub found: String,
}

pub(crate) fn to_hex(bytes: &[u8]) -> String {
    use fmt::Write as _;
    bytes.iter().fold(String::with_capacity(bytes.len() * 2), |mut text, byte| {
        write!(text, "{byte:02x}").expect("writing to a String never fails");
        text
    })
}

pub(crate) fn from_hex<const N: usize>(text: &str) -> Result<[u8; N], NotHex> {
    let not_hex = || NotHex { expected: N * 2, found: text.to_owned() };
    let mut bytes = [0; N];
    if text.len() != N * 2 {
        return Err(not_hex());
    }
    for (byte, pair) in bytes.iter_mut().zip(text.as_bytes().chunks(2)) {
        for digit in pair {
            let value = char::from(*digit).to_digit(16).and_then(|value| u8::try_from(value).ok());
            *byte = (*byte << 4) | value.ok_or_else(not_hex)?;
        }
    }
    Ok(bytes)
}

/// One closed record in a device's chain.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ChainLink {
    /// The device whose chain it is.
    pub device_id: Uuid,
    /// Its place in the chain, from 1 and without gaps.
    pub position: u32,
    /// The visit whose record was closed.
    pub visit_id: Uuid,
    /// The last event that the link covers; a look-back comes later and is bound by a link of its own.
    pub last_seq: u32,
    /// The hash of the link before, or [`Digest::NONE`].
    pub previous: Digest,
    /// The hash of the visit's events up to `last_seq`.
    pub events_hash: Digest,
    /// The hash of this link.
    pub hash: Digest,
}

impl ChainLink {
    /// Binds all these events of one visit, in order, to the device's chain.
    ///
    /// ```
    /// use evensward_format::chain::{ChainLink, verify};
    /// use evensward_format::journal::{EventRow, Stamp};
    /// use uuid::Uuid;
    /// let (device, visit) = (Uuid::from_u128(1), Uuid::from_u128(2));
    /// let event = EventRow {
    ///     event_id: Uuid::from_u128(3), visit_id: visit, seq: 1, device_id: device, command_id: Uuid::from_u128(4),
    ///     at: Stamp { utc_ms: 0, offset_min: 60, zone: "Europe/London".into(), mono_ms: 5, run_id: Uuid::from_u128(6) },
    ///     kind: "closed".into(), version: 1, payload: "{}".into(),
    /// };
    /// let mut events = vec![event];
    /// let link = ChainLink::close(None, device, visit, &events);
    /// assert!(verify(std::slice::from_ref(&link), &events).is_ok());
    /// events[0].payload = "{\"water_l\":1}".into();
    /// assert_eq!(verify(&[link], &events).unwrap_err().position, 1);
    /// ```
    #[must_use]
    pub fn close(before: Option<&Self>, device_id: Uuid, visit_id: Uuid, events: &[EventRow]) -> Self {
        let position = before.map_or(1, |link| link.position.saturating_add(1));
        let previous = before.map_or(Digest::NONE, |link| link.hash);
        let last_seq = events.last().map_or(0, |event| event.seq);
        let events_hash = events_hash(events);
        let hash = link_hash(previous, device_id, position, visit_id, last_seq, events_hash);
        Self { device_id, position, visit_id, last_seq, previous, events_hash, hash }
    }
}

/// The hash of events in their order, over for each: event id (16 bytes), seq (4, big-endian), version (2,
/// big-endian), UTC milliseconds (8, big-endian), offset in minutes (4, big-endian), zone and a zero byte, kind and a
/// zero byte, payload and a zero byte.
///
/// The time is part of it because the date of a treatment is part of the lawful record. The monotonic
/// clock is not: it means nothing outside its run.
///
/// ```
/// use evensward_format::chain::events_hash;
/// // The hash of nothing is the well-known one of FIPS 180-4 for the empty message.
/// assert_eq!(events_hash(&[]).to_string(), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
/// ```
#[must_use]
pub fn events_hash<'a>(events: impl IntoIterator<Item = &'a EventRow>) -> Digest {
    let mut sha = Sha256::new();
    for event in events {
        sha.update(event.event_id.as_bytes());
        sha.update(event.seq.to_be_bytes());
        sha.update(event.version.to_be_bytes());
        sha.update(event.at.utc_ms.to_be_bytes());
        sha.update(event.at.offset_min.to_be_bytes());
        for text in [&event.at.zone, &event.kind, &event.payload] {
            sha.update(text.as_bytes());
            sha.update([0]);
        }
    }
    Digest(sha.finalize().into())
}

/// The hash of a link, over: previous (32 bytes), device id (16), position (4, big-endian), visit id (16), last seq (4,
/// big-endian), events' hash (32).
///
/// ```
/// use evensward_format::chain::{Digest, events_hash, link_hash};
/// use uuid::Uuid;
/// let nothing = events_hash(&[]);
/// let one = link_hash(Digest::NONE, Uuid::nil(), 1, Uuid::nil(), 0, nothing);
/// assert_ne!(one, link_hash(one, Uuid::nil(), 2, Uuid::nil(), 0, nothing));
/// ```
#[must_use]
pub fn link_hash(
    previous: Digest,
    device_id: Uuid,
    position: u32,
    visit_id: Uuid,
    last_seq: u32,
    events_hash: Digest,
) -> Digest {
    let mut sha = Sha256::new();
    sha.update(previous.0);
    sha.update(device_id.as_bytes());
    sha.update(position.to_be_bytes());
    sha.update(visit_id.as_bytes());
    sha.update(last_seq.to_be_bytes());
    sha.update(events_hash.0);
    Digest(sha.finalize().into())
}

/// The first link that does not hold.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("link {position} of device {device_id} does not hold: {fault}")]
pub struct Broken {
    /// The device whose chain is broken.
    pub device_id: Uuid,
    /// The place of the broken link.
    pub position: u32,
    /// The visit it stands for.
    pub visit_id: Uuid,
    /// What is wrong.
    pub fault: Fault,
}

/// What can be wrong with a link.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Fault {
    /// A link is missing before this one, or one is there twice.
    #[error("the links before it are not complete")]
    Gap,
    /// It does not continue from the link before.
    #[error("it does not follow from the link before")]
    Previous,
    /// Events of its visit are missing.
    #[error("events of its visit are missing")]
    EventsMissing,
    /// An event of its visit was changed.
    #[error("an event of its visit was changed")]
    EventsChanged,
    /// The link itself was changed.
    #[error("the link itself was changed")]
    Link,
}

/// The events of one visit by their number: more than one where two devices both went on with it.
type Accounts<'a> = BTreeMap<u32, Vec<&'a EventRow>>;

/// Whether the chains of all devices hold, links and events given in any order.
///
/// Where two devices both went on with a visit, a link covers the account that its own device gave, and what that device
/// took over: the other account stands beside it and breaks nothing.
///
/// # Errors
/// The first broken link, by device and position.
pub fn verify(links: &[ChainLink], events: &[EventRow]) -> Result<(), Broken> {
    let mut by_visit: BTreeMap<Uuid, Accounts<'_>> = BTreeMap::new();
    for event in events {
        let here = by_visit.entry(event.visit_id).or_default().entry(event.seq).or_default();
        if !here.iter().any(|known| known.event_id == event.event_id) {
            here.push(event);
        }
    }
    let mut ordered: Vec<&ChainLink> = links.iter().collect();
    ordered.sort_by_key(|link| (link.device_id, link.position));
    let mut before: Option<&ChainLink> = None;
    for link in ordered {
        let previous = before.filter(|before| before.device_id == link.device_id);
        check(link, previous, by_visit.get(&link.visit_id)).map_err(|fault| Broken {
            device_id: link.device_id,
            position: link.position,
            visit_id: link.visit_id,
            fault,
        })?;
        before = Some(link);
    }
    Ok(())
}

/// More accounts of one visit than there ever are; it keeps made-up rows from growing into an endless search.
const N_ACCOUNTS_MOST: usize = 64;

/// The accounts that a link may cover, each in order: from the last event back its own device's, and where that has none,
/// those of each device that the visit may have been taken over from.
fn accounts_of<'a>(link: &ChainLink, by_seq: &Accounts<'a>) -> Vec<Vec<&'a EventRow>> {
    let mut accounts: Vec<(Uuid, Vec<&EventRow>)> = vec![(link.device_id, Vec::new())];
    for events in by_seq.range(..=link.last_seq).rev().map(|(_, events)| events) {
        accounts = accounts
            .into_iter()
            .flat_map(|(owner, account)| {
                let own: Vec<&EventRow> = events.iter().copied().filter(|event| event.device_id == owner).collect();
                let earlier = if own.is_empty() { events.clone() } else { own };
                earlier.into_iter().map(move |event| {
                    let mut account = account.clone();
                    account.push(event);
                    (event.device_id, account)
                })
            })
            .take(N_ACCOUNTS_MOST)
            .collect();
    }
    let in_order = accounts.into_iter().map(|(_, account)| account.into_iter().rev().collect());
    in_order.collect()
}

fn check(link: &ChainLink, before: Option<&ChainLink>, accounts: Option<&Accounts<'_>>) -> Result<(), Fault> {
    if link.position != before.map_or(1, |before| before.position.saturating_add(1)) {
        return Err(Fault::Gap);
    }
    if link.previous != before.map_or(Digest::NONE, |before| before.hash) {
        return Err(Fault::Previous);
    }
    let accounts = accounts.map(|accounts| accounts_of(link, accounts)).unwrap_or_default();
    let is_whole = |account: &&Vec<&EventRow>| u32::try_from(account.len()) == Ok(link.last_seq);
    if !accounts.iter().any(|account| is_whole(&account)) {
        return Err(Fault::EventsMissing);
    }
    if !accounts.iter().filter(is_whole).any(|account| events_hash(account.iter().copied()) == link.events_hash) {
        return Err(Fault::EventsChanged);
    }
    let hash = link_hash(link.previous, link.device_id, link.position, link.visit_id, link.last_seq, link.events_hash);
    if hash == link.hash { Ok(()) } else { Err(Fault::Link) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::journal::Stamp;

    fn event(visit: u128, seq: u32) -> EventRow {
        EventRow {
            event_id: Uuid::from_u128(visit * 1000 + u128::from(seq)),
            visit_id: Uuid::from_u128(visit),
            seq,
            device_id: Uuid::from_u128(1),
            command_id: Uuid::from_u128(visit * 1000 + u128::from(seq)),
            at: Stamp {
                utc_ms: i64::from(seq) * 1000,
                offset_min: 0,
                zone: "Etc/UTC".into(),
                mono_ms: 0,
                run_id: Uuid::nil(),
            },
            kind: "walked".into(),
            version: 1,
            payload: format!("{{\"strip\":{seq}}}"),
        }
    }

    /// Two visits of three events, closed one after the other, and a look-back on the first.
    fn chain() -> (Vec<ChainLink>, Vec<EventRow>) {
        let device = Uuid::from_u128(1);
        let mut events: Vec<EventRow> = (1..=3).map(|seq| event(10, seq)).collect();
        let first = ChainLink::close(None, device, Uuid::from_u128(10), &events);
        let others: Vec<EventRow> = (1..=3).map(|seq| event(11, seq)).collect();
        let second = ChainLink::close(Some(&first), device, Uuid::from_u128(11), &others);
        events.push(event(10, 4));
        let third = ChainLink::close(Some(&second), device, Uuid::from_u128(10), &events);
        events.extend(others);
        (vec![first, second, third], events)
    }

    fn check_fault(position: u32, fault: Fault, spoil: impl Fn(&mut Vec<ChainLink>, &mut Vec<EventRow>)) {
        let (mut links, mut events) = chain();
        assert_eq!(verify(&links, &events), Ok(()));
        spoil(&mut links, &mut events);
        let broken = verify(&links, &events).unwrap_err();
        assert_eq!((broken.position, broken.fault), (position, fault));
    }

    #[test]
    fn whatever_is_changed_after_the_closing_breaks_the_chain() {
        check_fault(1, Fault::EventsChanged, |_, events| events[1].payload = "{\"strip\":9}".into());
        check_fault(1, Fault::EventsChanged, |_, events| events[1].at.utc_ms += 86_400_000);
        check_fault(1, Fault::EventsChanged, |_, events| events[1].kind = "skipped".into());
        check_fault(3, Fault::EventsChanged, |_, events| events[3].payload.push(' '));
        check_fault(1, Fault::EventsMissing, |_, events| {
            events.retain(|event| event.visit_id != Uuid::from_u128(10) || event.seq != 1)
        });
        check_fault(2, Fault::Gap, |links, _| links.retain(|link| link.position != 1));
        check_fault(3, Fault::Gap, |links, _| links.retain(|link| link.position != 2));
        check_fault(1, Fault::Link, |links, _| links[0].hash = Digest([9; 32]));
        check_fault(2, Fault::Previous, |links, _| links[1].previous = Digest([9; 32]));
    }

    #[test]
    fn a_second_account_of_a_visit_breaks_the_chain_of_neither_device() {
        let of = |device: u128, id: u128, seq: u32| EventRow {
            device_id: Uuid::from_u128(device),
            event_id: Uuid::from_u128(id + u128::from(seq)),
            command_id: Uuid::from_u128(id + u128::from(seq)),
            ..event(10, seq)
        };
        // Device 1 begins; 2 takes over after the second event and 3 after the fourth; 1 went on without knowing.
        let begun: Vec<EventRow> = (1..=2).map(|seq| of(1, 100, seq)).collect();
        let went_on: Vec<EventRow> = (3..=4).map(|seq| of(1, 200, seq)).collect();
        let taken_over: Vec<EventRow> = (3..=4).map(|seq| of(2, 300, seq)).chain([of(3, 300, 5)]).collect();
        let link = |device: u128, events: &[EventRow]| {
            ChainLink::close(None, Uuid::from_u128(device), Uuid::from_u128(10), events)
        };
        let links = [
            link(1, &[begun.clone(), went_on.clone()].concat()),
            link(3, &[begun.clone(), taken_over.clone()].concat()),
        ];
        for events in [[&begun, &went_on, &taken_over], [&taken_over, &went_on, &begun]] {
            assert_eq!(verify(&links, &events.map(Clone::clone).concat()), Ok(()));
        }
        let mut spoiled = [begun, went_on, taken_over].concat();
        spoiled[5].payload.push(' ');
        let broken = verify(&links, &spoiled).unwrap_err();
        assert_eq!((broken.device_id, broken.fault), (Uuid::from_u128(3), Fault::EventsChanged));
    }

    #[test]
    fn the_order_in_which_links_and_events_are_read_does_not_matter() {
        let (mut links, mut events) = chain();
        links.reverse();
        events.reverse();
        assert_eq!(verify(&links, &events), Ok(()));
    }

    #[test]
    fn hexadecimal_of_the_wrong_length_or_with_other_letters_is_refused() {
        assert!(from_hex::<2>("00f").is_err());
        assert!(from_hex::<2>("00fg").is_err());
        assert!(from_hex::<2>("0é0").is_err());
        assert_eq!(from_hex::<2>("00fF"), Ok([0, 255]));
    }
}
