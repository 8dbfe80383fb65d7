//! The visit up to the first drop: the lawn, the need, the product, the kit, the plan and the ready list.

use crate::drive::Drive;
use crate::sought::{like, the};
use crate::trouble::Trouble;
use crate::visit::LAWN;

/// A lawn of the invented firm, measured already.
const SHORT_LAWN: &str = "Front lawn";

/// The shortest way to the first fill: a lawn that is there already, and the plan as it is advised.
pub(crate) async fn short(drive: &mut Drive) -> Result<(), Trouble> {
    need_product_and_kit(drive, SHORT_LAWN).await?;
    drive.tap(the("button", "Agree to this plan")).await?;
    drive.window.find(the("heading", "Ready list")).await?;
    ready(drive).await
}

/// Measures the lawn by tape and keeps it; a length that cannot be is tried first.
pub(crate) async fn lawn(drive: &mut Drive) -> Result<(), Trouble> {
    drive.window.find(the("heading", "Lawns")).await?;
    drive.step("the lawns").await?;
    drive.tap(the("button", "Measure a new lawn")).await?;
    drive.window.find(the("heading", "Measure a lawn")).await?;
    drive.type_in(the("textbox", "What you call this lawn"), LAWN).await?;
    drive.type_in(the("textbox", "Width, along the front"), "0").await?;
    drive.type_in(the("textbox", "Length, away from the front"), "20").await?;
    drive.glance("a width that cannot be").await?;
    drive.type_in(the("textbox", "Width, along the front"), "14.5").await?;
    drive.window.wait_for_words("290").await?;
    drive.step("the grass by tape").await?;
    drive.tap(the("button", "Take out a bed or pond")).await?;
    drive.type_in(the("textbox", "Width, along the front").within("region", "Taken out"), "2").await?;
    drive.type_in(the("textbox", "Length, away from the front").within("region", "Taken out"), "3").await?;
    drive.window.wait_for_words("284").await?;
    drive.pick(the("combobox", "What lies beyond: Right"), "hedge").await?;
    drive.pick(the("combobox", "What lies beyond: Front"), "paving").await?;
    drive.pick(the("combobox", "Client"), "Invented Client, Long Border").await?;
    drive.step("the bed taken out, the sides named").await?;
    drive.tap(the("button", "Keep this lawn")).await?;
    drive.window.find(the("heading", LAWN)).await?;
    drive.step("the lawn is kept").await
}

/// Opens the visit, answers whether a treatment is right, and takes product and kit.
pub(crate) async fn need_product_and_kit(drive: &mut Drive, lawn: &str) -> Result<(), Trouble> {
    let begin = format!("Begin a visit {lawn}");
    drive.tap(the("button", &begin)).await?;
    drive.window.find(the("heading", "Is a treatment right?")).await?;
    drive.step("is a treatment right").await?;
    drive.choose("What is there", "Moss").await?;
    drive.choose("How much of it", "Here and there").await?;
    drive.choose("Was anything put on this lawn", "Nothing").await?;
    drive.step("the need is answered").await?;
    drive.tap(the("button", "Go on to the product")).await?;
    drive.window.find(the("heading", "Which product?")).await?;
    drive.press(like("radio", "Demo Moss Iron")).await?;
    drive.step("which product").await?;
    drive.tap(like("button", "Take this product")).await?;
    drive.window.find(the("heading", "Which kit?")).await?;
    drive.press(like("radio", "15 L knapsack")).await?;
    drive.step("which kit").await?;
    drive.tap(like("button", "Take this kit")).await?;
    drive.window.find(the("heading", "The plan")).await?;
    drive.step("the plan").await
}

/// Looks at the plan's choices, takes the way that leaves a narrow strip, settles that and the last pass, and agrees.
pub(crate) async fn plan(drive: &mut Drive) -> Result<(), Trouble> {
    drive.choose("Which way to walk", "Along Right").await?;
    drive.step("another way to walk").await?;
    drive.choose("The narrow strip", "Make all strips equal").await?;
    drive.step("all strips equal").await?;
    drive.choose("The narrow strip", "Spray it on some passes only").await?;
    drive.step("the narrow strip on some passes only").await?;
    drive.tap(the("button", "Agree to this plan")).await?;
    drive.window.find(the("heading", "Ready list")).await?;
    drive.step("the ready list").await
}

/// Ticks everything, writes down the weather, and begins to mix.
pub(crate) async fn ready(drive: &mut Drive) -> Result<(), Trouble> {
    let mut n_ticked = 0;
    while let Some(item) = drive.window.first_unticked().await? {
        drive.tap(the("checkbox", &item)).await?;
        n_ticked += 1;
        if n_ticked == 2 {
            drive.step("two things ticked").await?;
        }
    }
    drive.step("everything ticked").await?;
    let water = |name| the("textbox", name).within("region", "The water to mix with");
    drive.type_in(water("Where does it come from?"), "Invented: the water butt").await?;
    drive.type_in(water("How warm it is"), "12").await?;
    drive.type_in(water("pH"), "6.5").await?;
    drive.type_in(water("Hardness"), "80").await?;
    drive.tap(the("button", "Write down the water")).await?;
    drive.step("the water is written down").await?;
    drive.choose("The wind by", "What it moves").await?;
    drive.choose("What does the wind move", "Light breeze").await?;
    drive.choose("Which way does it blow", "To the front").await?;
    drive.choose("Gusts", "No").await?;
    drive.choose("Rain now", "No").await?;
    drive.type_in(like("textbox", "How long does the forecast stay dry"), "12").await?;
    drive.type_in(the("textbox", "Air temperature"), "14").await?;
    drive.choose("The grass", "Dry").await?;
    drive.choose("The sky", "Cloudy").await?;
    drive.choose("The ground", "Open").await?;
    drive.choose("Drought", "No sign of it").await?;
    drive.step("the weather is typed").await?;
    drive.tap(the("button", "Write down the weather")).await?;
    drive.step("the weather is written down").await?;
    while drive.window.shows(the("button", "Go on with a reason")).await? {
        drive.press(the("button", "Go on with a reason")).await?;
        let why = "Seen and thought over, invented for this trial.";
        drive.type_in(the("textbox", "Why? It goes into the record."), why).await?;
        drive.tap(the("button", "Pass this with the reason")).await?;
        drive.step("an advisory stop passed with its reason").await?;
    }
    drive.tap(the("button", "Begin mixing")).await?;
    drive.window.find(like("heading", "Mix fill 1")).await?;
    drive.step("mixing begins").await
}
