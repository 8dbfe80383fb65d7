//! The visit from the first fill to the signature: whatever the screen asks for next is done, until the record is
//! closed. On the way a pass is paused and carried on, a step is taken back and done again, and one pass is said to
//! have used more than planned.

use crate::drive::Drive;
use crate::sought::{like, the};
use crate::trouble::Trouble;
use crate::window::Window;

/// More panels than any visit has; a drive that gets here goes round in circles.
const N_PANELS_MOST: usize = 80;

/// What was shown once already.
#[derive(Default)]
struct Shown {
    emergency: bool,
    pause: bool,
    undo: bool,
    cut_off: bool,
    other_use: bool,
}

/// Does what the screen asks for until it shows the closed record.
pub(crate) async fn until_signed(drive: &mut Drive) -> Result<(), Trouble> {
    let mut shown = Shown::default();
    for _ in 0..N_PANELS_MOST {
        let heading = drive.heading().await?;
        match heading.as_str() {
            mix if mix.starts_with("Mix fill") => mixing(drive, mix).await?,
            "Walk" => walking(drive, &mut shown).await?,
            "What is left in the tank?" => left(drive, &mut shown).await?,
            "Put it right" => {
                if drive.window.shows(like("button", "This is why")).await? {
                    drive.step("why the pass took so much").await?;
                    drive.tap(like("button", "This is why")).await?;
                }
                drive.step("put it right").await?;
                drive.tap(like("button", "Do this")).await?;
            }
            "Use up what is left" => {
                drive.step("use up what is left").await?;
                drive.tap(like("button", "Do this")).await?;
            }
            "Wash" => washing(drive).await?,
            "Sign the record" => return signing(drive).await,
            other => return Err(Trouble::Wrong(format!("a visit does not go on from the page \"{other}\""))),
        }
    }
    Err(Trouble::Wrong("the visit goes round in circles".to_owned()))
}

async fn mixing(drive: &mut Drive, heading: &str) -> Result<(), Trouble> {
    if drive.window.shows(like("button", "As planned: go on")).await? {
        drive.step(&format!("{heading}, what is left before it")).await?;
        drive.tap(like("button", "As planned: go on")).await?;
    }
    let mut n_done = 0;
    while !drive.window.shows(like("button", "The fill is made")).await? {
        // A refill waits for a look at the weather.
        if drive.window.shows(like("button", "Looked: it is as it was")).await? {
            drive.tap(like("button", "Looked: it is as it was")).await?;
            drive.step(&format!("{heading}, the weather looked at again")).await?;
            continue;
        }
        drive.tap(like("button", "Done, next step")).await?;
        n_done += 1;
        if n_done == 3 {
            drive.step(&format!("{heading}, three steps done")).await?;
        }
    }
    drive.step(&format!("{heading}, all steps done")).await?;
    drive.tap(like("button", "The fill is made")).await?;
    drive.step(&format!("{heading}, made")).await
}

async fn walking(drive: &mut Drive, shown: &mut Shown) -> Result<(), Trouble> {
    if !shown.emergency {
        shown.emergency = true;
        drive.tap(the("button", "Emergency")).await?;
        drive.glance("help from everywhere").await?;
        drive.tap(the("button", "Close")).await?;
    }
    if !shown.pause {
        shown.pause = true;
        drive.tap(the("button", "More")).await?;
        drive.glance("more on the walk").await?;
        drive.tap(the("button", "A person or animal")).await?;
        drive.window.find(the("heading", "Paused")).await?;
        drive.step("paused: someone on the lawn").await?;
        while drive.window.shows(like("button", "Seen, it is all right")).await? {
            drive.tap(like("button", "Seen, it is all right")).await?;
        }
        drive.tap(the("button", "Carry on walking")).await?;
        drive.window.find(the("heading", "Walk")).await?;
        drive.step("carried on after the pause").await?;
    }
    if drive.window.shows(like("button", "Refill now")).await? {
        drive.step("the tank needs its next fill").await?;
        drive.tap(like("button", "Refill now")).await?;
        return Ok(());
    }
    if shown.undo && !shown.cut_off && drive.kills() {
        shown.cut_off = true;
        let tap = async |window: &Window| window.click(the("button", "Tank differs")).await;
        let asked = the("heading", "What is left in the tank?");
        if drive.deed_cut_off("the tap at the end of a pass, cut off", tap, asked).await? {
            return Ok(());
        }
    }
    if shown.undo && !shown.other_use {
        return drive.tap(the("button", "Tank differs")).await;
    }
    drive.tap(like("button", " done")).await?;
    if !shown.undo {
        shown.undo = true;
        drive.step("the first pass is done").await?;
        if !drive.window.shows(the("button", "Take back")).await? {
            drive.press(like("button", "Take back:")).await?;
        }
        drive.tap(the("button", "Take back")).await?;
        drive.window.find(the("heading", "Walk")).await?;
        return drive.step("and taken back").await;
    }
    drive.step("a pass is done as planned").await
}

async fn left(drive: &mut Drive, shown: &mut Shown) -> Result<(), Trouble> {
    if !shown.other_use {
        shown.other_use = true;
        drive.press(the("button", "Less")).await?;
        drive.step("less is left than planned").await?;
        return drive.tap(like("button", "Write down what is left")).await;
    }
    drive.step("what is left, as planned").await?;
    drive.tap(like("button", "Confirm what is left")).await
}

async fn washing(drive: &mut Drive) -> Result<(), Trouble> {
    drive.step("washing").await?;
    if drive.window.shows(like("button", "Looked: it is as it was")).await? {
        drive.tap(like("button", "Looked: it is as it was")).await?;
        drive.step("the weather at the end").await?;
    }
    while !drive.window.shows(like("button", "Washing is done")).await? {
        drive.tap(like("button", "Done, next step")).await?;
    }
    drive.step("washed").await?;
    drive.tap(like("button", "Washing is done")).await
}

pub(crate) async fn signing(drive: &mut Drive) -> Result<(), Trouble> {
    drive.step("sign the record").await?;
    sign(drive).await?;
    drive.step("the signature is typed").await?;
    drive.tap(the("button", "Sign and close")).await?;
    drive.window.find(the("heading", "The record")).await.map(|_heading| ())
}

/// Answers what is asked before the signature, and types it.
pub(crate) async fn sign(drive: &mut Drive) -> Result<(), Trouble> {
    if drive.window.shows(like("group", "Why did the use differ")).await? {
        drive.choose("Why did the use differ", "Pace or flow").await?;
    }
    while let Some(item) = drive.window.first_unticked().await? {
        drive.tap(the("checkbox", &item)).await?;
    }
    let note = "Invented: the gate sticks, ask for the key.";
    drive.type_in(the("textbox", "Worth knowing next time"), note).await?;
    drive.type_in(the("textbox", "Signed by"), "Demo Operator").await?;
    drive.type_in(the("textbox", "Certificate or licence number"), "DEMO-CERT-0001").await
}
