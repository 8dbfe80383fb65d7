//! The walk by a clicker alone: a keyboard of two or four keys, from the first fill to the end of washing. What the
//! screen asks for next is never read here: a key for going on is pressed until the record waits for its signature,
//! which is then written by keyboard.

use std::time::Instant;

use fantoccini::key::Key;

use crate::drive::{Drive, differs};
use crate::trouble::Trouble;

/// The keys that go on, of one clicker or another; each has its turn.
const FORWARD: [Key; 5] = [Key::Space, Key::Enter, Key::PageDown, Key::Right, Key::Down];
/// The keys that take back.
const BACK: [Key; 3] = [Key::PageUp, Key::Left, Key::Up];

/// More presses than any visit takes.
const N_PRESSES_MOST: usize = 200;

/// Where the clicker's work ends.
const SIGNATURE: &str = "Sign the record";

/// Presses keys until the record waits for its signature. On the way each backward key takes a step back once, which
/// must show the screen of before.
pub(crate) async fn until_the_signature(drive: &mut Drive) -> Result<(), Trouble> {
    let mut back = BACK.into_iter();
    let mut last_heading = String::new();
    for (n_presses, key) in FORWARD.into_iter().cycle().take(N_PRESSES_MOST).enumerate() {
        let heading = drive.heading().await?;
        if heading == SIGNATURE {
            return drive.step(&format!("the signature waits after {n_presses} presses of a clicker's keys")).await;
        }
        let before = press(drive, key).await?;
        if heading != last_heading {
            drive.step(&format!("the first press on \"{heading}\"")).await?;
            // The first press on a page may have changed it for another: what is taken back then is on that one.
            if let Some(key) = (drive.heading().await? == heading).then(|| back.next()).flatten() {
                press(drive, key).await?;
                let now = drive.settled().await?;
                if now != before {
                    return Err(differs(&format!("a press on \"{heading}\" was taken back"), &before, &now));
                }
            }
            last_heading = heading;
        }
    }
    Err(Trouble::Wrong(format!("{N_PRESSES_MOST} presses of a clicker's keys did not lead to the signature")))
}

/// Presses one of the keys until this page is open.
pub(crate) async fn until(drive: &mut Drive, heading: &str) -> Result<(), Trouble> {
    for _ in 0..N_PRESSES_MOST {
        if drive.heading().await? == heading {
            return Ok(());
        }
        press(drive, Key::PageDown).await?;
    }
    Err(Trouble::Wrong(format!("{N_PRESSES_MOST} presses of a clicker's keys did not lead to \"{heading}\"")))
}

/// Presses one key, as soon as it counts, and waits for what it does. Answers the screen of before.
async fn press(drive: &mut Drive, key: Key) -> Result<String, Trouble> {
    drive.rest_the_hand().await;
    let before = drive.settled().await?;
    drive.window.press_keys([char::from(key)], None).await?;
    drive.tapped(Instant::now());
    drive.window.wait_for_change(&before, &format!("the key {key:?}")).await?;
    Ok(before)
}
