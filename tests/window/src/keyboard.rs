//! A person without a pointer: real key presses go to whatever has the focus, and the focus is seen to move.
//!
//! Scripts only look where the focus is and how many presses of Tab lie between it and what is wanted; nothing is ever
//! given the focus or clicked by them. What was come to by Tab must show that it has the focus, and lie in sight.

use std::time::{Duration, Instant};

use fantoccini::actions::{InputSource as _, KeyAction, KeyActions};
use fantoccini::elements::Element;
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::sought::Sought;
use crate::trouble::Trouble;
use crate::window::{LOOK_AGAIN, PATIENCE, Window, is_passing};

const KEYWAY: &str = include_str!("keyway.js");

/// Presses of Tab in a row before looking again.
const N_TABS_AT_ONCE: i64 = 16;
/// More keys than lie between any two things on a page.
const N_KEYS_MOST: i64 = 600;
/// A field for a day has three parts, each a stop of Tab, between which the page sees no focus move.
const N_PARTS_OF_A_FIELD: usize = 3;
/// How long a page may take to scroll to what has the focus.
const SCROLLED_WITHIN: Duration = Duration::from_secs(3);

/// What `keyway.js` answers.
struct Way {
    keys: String,
    n: i64,
    focus: String,
    n_focus_moves: i64,
    is_shown: bool,
    is_in_sight: bool,
}

impl Way {
    fn read(told: &Value) -> Self {
        let flag = |name: &str| told.get(name).and_then(Value::as_bool).unwrap_or_default();
        let number = |name: &str| told.get(name).and_then(Value::as_i64).unwrap_or_default();
        let text = |name: &str| told.get(name).and_then(Value::as_str).unwrap_or_default().to_owned();
        Self {
            keys: text("keys"),
            n: number("n"),
            focus: text("focus"),
            n_focus_moves: number("nFocusMoves"),
            is_shown: flag("isShown"),
            is_in_sight: flag("isInSight"),
        }
    }
}

impl Window {
    /// Presses keys one after the other on whatever has the focus, while another is held down or none.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn press_keys(&self, keys: impl IntoIterator<Item = char>, held: Option<Key>) -> Result<(), Trouble> {
        let held = held.map(char::from);
        let mut actions = KeyActions::new("keyboard".to_owned());
        if let Some(value) = held {
            actions = actions.then(KeyAction::Down { value });
        }
        for value in keys {
            actions = actions.then(KeyAction::Down { value }).then(KeyAction::Up { value });
        }
        if let Some(value) = held {
            actions = actions.then(KeyAction::Up { value });
        }
        self.client().perform_actions(actions).await.map_err(Trouble::while_doing("pressing keys"))
    }

    /// Brings the focus to something by Tab and, among radio buttons, by the arrows; a radio button is chosen by that.
    ///
    /// # Errors
    ///
    /// Says that no key leads there, that the focus did not move, or that it can't be seen there.
    pub(crate) async fn reach(&self, sought: Sought<'_>) -> Result<Element, Trouble> {
        let since = Instant::now();
        let mut n_pressed = 0;
        // How often the focus had moved before Tab was pressed, and how many looks ago that was.
        let mut tabbed_at = None;
        let mut n_looks_still = 0;
        loop {
            let element = self.find_by(sought, true, since).await?;
            let Some(way) = self.way_to(&element).await? else { continue };
            n_looks_still = if tabbed_at == Some(way.n_focus_moves) { n_looks_still + 1 } else { 0 };
            if n_looks_still > N_PARTS_OF_A_FIELD {
                return Err(Trouble::Wrong(format!(
                    "on the way to {sought} Tab does not move the focus on from {}",
                    way.focus
                )));
            }
            match way.keys.as_str() {
                "" => {
                    if tabbed_at.is_some() {
                        self.holds_the_focus_in_sight(&element, sought).await?;
                    }
                    return Ok(element);
                }
                "space" => self.press_keys([' '], None).await?,
                "arrow" => {
                    self.press_keys([char::from(if way.n > 0 { Key::Down } else { Key::Up })], None).await?;
                }
                "tab" => {
                    let n_tabs = way.n.clamp(-N_TABS_AT_ONCE, N_TABS_AT_ONCE);
                    let tabs = (0..n_tabs.abs()).map(|_| char::from(Key::Tab));
                    self.press_keys(tabs, (n_tabs < 0).then_some(Key::Shift)).await?;
                    n_pressed += n_tabs.abs();
                }
                _ => return Err(Trouble::Wrong(format!("no key leads to {sought}"))),
            }
            tabbed_at = (way.keys == "tab").then_some(way.n_focus_moves);
            if n_pressed > N_KEYS_MOST || since.elapsed() > PATIENCE {
                let focus = way.focus;
                return Err(self.did_not_come(format!("keys to lead to {sought}; the focus was on {focus}")).await);
            }
        }
    }

    /// The way by keys; nothing when what was found is gone again.
    async fn way_to(&self, element: &Element) -> Result<Option<Way>, Trouble> {
        let reference = serde_json::to_value(element)
            .map_err(|why| Trouble::Wrong(format!("an element could not be named to the driver: {why}")))?;
        match self.run(KEYWAY, json!([reference])).await {
            Ok(told) => Ok(Some(Way::read(&told))),
            Err(Trouble::Driver { source, .. }) if is_passing(&source) => Ok(None),
            Err(why) => Err(why),
        }
    }

    async fn holds_the_focus_in_sight(&self, element: &Element, sought: Sought<'_>) -> Result<(), Trouble> {
        let since = Instant::now();
        loop {
            let Some(way) = self.way_to(element).await? else { return Ok(()) };
            if way.is_shown && way.is_in_sight {
                return Ok(());
            }
            if since.elapsed() > SCROLLED_WITHIN {
                let what = if way.is_shown { "lies out of sight" } else { "does not show it" };
                return Err(Trouble::Wrong(format!("{sought} has the focus and {what} (it is on {})", way.focus)));
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
    }

    /// Presses something by keys: a box by Space, anything else by Enter; a radio button is chosen by coming to it.
    ///
    /// # Errors
    ///
    /// As [`Window::reach`].
    pub(crate) async fn press_by_keys(&self, sought: Sought<'_>) -> Result<(), Trouble> {
        self.reach(sought).await?;
        match sought.role() {
            "radio" => Ok(()),
            "checkbox" => self.press_keys([' '], None).await,
            _ => self.press_keys([char::from(Key::Enter)], None).await,
        }
    }

    /// Types into a field in place of what stood there, and sees that it stands there.
    ///
    /// # Errors
    ///
    /// As [`Window::reach`], or says that the field holds something else.
    pub(crate) async fn type_by_keys(&self, field: Sought<'_>, text: &str) -> Result<(), Trouble> {
        self.reach(field).await?;
        self.press_keys(['a'], Some(Key::Control)).await?;
        self.press_keys(text.chars(), None).await?;
        self.wait_for_value(field, text).await
    }

    /// Picks an entry from a list by its words, with the arrow keys.
    ///
    /// # Errors
    ///
    /// As [`Window::reach`], or says that the list has no such entry or did not come to it.
    pub(crate) async fn pick_by_keys(&self, list: Sought<'_>, entry: &str) -> Result<(), Trouble> {
        const STEPS: &str = "const [list, entry] = arguments;
            const at = [...list.options].findIndex((option) => option.label.trim() === entry);
            return at < 0 ? null : at - list.selectedIndex;";
        let since = Instant::now();
        loop {
            let element = self.reach(list).await?;
            let reference = serde_json::to_value(&element)
                .map_err(|why| Trouble::Wrong(format!("an element could not be named to the driver: {why}")))?;
            match self.run(STEPS, json!([reference, entry])).await?.as_i64() {
                Some(0) => return Ok(()),
                Some(steps) if since.elapsed() < PATIENCE => {
                    self.press_keys([char::from(if steps > 0 { Key::Down } else { Key::Up })], None).await?;
                }
                _ => return Err(self.did_not_come(format!("\"{entry}\" in {list}")).await),
            }
        }
    }
}
