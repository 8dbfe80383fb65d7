//! The two ways of doing what the screen asks for: a pointer on what is seen, or keys alone. The same drive takes either.
//!
//! The web view takes a driver's touch for a mouse's press, so a finger and a mouse are one here: real pointer events in
//! the middle of the thing. What is typed after touching a field is typed by keys, as on a phone's own keyboard.

use std::time::Instant;

use crate::drive::Drive;
use crate::sought::{Sought, like};
use crate::trouble::Trouble;

/// What a person has to drive with.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Hand {
    /// Touches what is seen.
    Pointer,
    /// Presses keys; there is no pointer.
    Keyboard,
}

impl Drive {
    /// Presses something, whether the screen shows a change of it or not.
    pub(crate) async fn press(&mut self, sought: Sought<'_>) -> Result<(), Trouble> {
        match self.hand() {
            Hand::Pointer => self.window.click(sought).await,
            Hand::Keyboard => self.window.press_by_keys(sought).await,
        }
    }

    /// Presses something and waits until the screen shows something else than before. Buttons are tapped as a hand can:
    /// a second touch within half a second is taken for a wet glove's bounce.
    pub(crate) async fn tap(&mut self, sought: Sought<'_>) -> Result<(), Trouble> {
        if sought.role() == "button" {
            self.rest_the_hand().await;
        }
        let before = self.window.screen().await?;
        self.press(sought).await?;
        self.tapped(Instant::now());
        self.window.wait_for_change(&before, &sought.to_string()).await
    }

    /// Picks one of a few: the radio button whose name holds these words, in the group with this question.
    pub(crate) async fn choose(&mut self, question: &str, answer: &str) -> Result<(), Trouble> {
        self.press(like("radio", answer).within("group", question)).await
    }

    /// Types into a field in place of what stood there.
    pub(crate) async fn type_in(&mut self, field: Sought<'_>, text: &str) -> Result<(), Trouble> {
        match self.hand() {
            Hand::Pointer => self.window.type_in(field, text).await,
            Hand::Keyboard => self.window.type_by_keys(field, text).await,
        }
    }

    /// Picks an entry from a list by its words.
    pub(crate) async fn pick(&mut self, list: Sought<'_>, entry: &str) -> Result<(), Trouble> {
        match self.hand() {
            Hand::Pointer => self.window.pick(list, entry).await,
            Hand::Keyboard => self.window.pick_by_keys(list, entry).await,
        }
    }
}
