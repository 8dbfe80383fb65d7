//! One real window: its display, its driver, the app with a data folder, and what a person can do.
//!
//! The app is found among the driver's descendants by the file it runs, so that a kill reaches the
//! app and nothing else. The display and driver outlive the app: it can be killed and opened again
//! on the same folder as often as a test likes. Everything ends when the window is dropped.

use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use fantoccini::elements::{Element, ElementRef};
use fantoccini::error::{CmdError, ErrorStatus};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use xtask::children::{self, Footing};

use crate::display::{self, Display, Size};
use crate::sought::Sought;
use crate::trouble::Trouble;

/// How long a person would wait before calling it broken; the machine may be busy.
pub(crate) const PATIENCE: Duration = Duration::from_secs(20);
/// How often to look again.
pub(crate) const LOOK_AGAIN: Duration = Duration::from_millis(40);

const LOCATE: &str = include_str!("locate.js");

/// Collects what the page complains of, from the moment the session stands.
const LISTEN_FOR_COMPLAINTS: &str = r#"
    if (!window.complaints) {
        window.complaints = [];
        const note = (text) => window.complaints.push(String(text));
        window.addEventListener("error", (event) => note(event.message));
        window.addEventListener("unhandledrejection", (event) => note(event.reason));
        const complain = console.error;
        console.error = (...words) => { note(words.join(" ")); complain(...words); };
    }"#;

/// What to open and where.
#[derive(Clone, Debug)]
pub struct Setting {
    /// The app's program.
    pub app: PathBuf,
    /// The app's data folder.
    pub data: PathBuf,
    /// The screen's size.
    pub size: Size,
    /// Dusk instead of daylight.
    pub dusk: bool,
}

/// An open window.
pub struct Window {
    client: Client,
    driver: Driver,
    setting: Setting,
    // Dropped last: the driver and the app are on it.
    _display: Display,
}

struct Driver {
    process: Child,
    address: String,
}

impl Drop for Driver {
    fn drop(&mut self) {
        if let Ok(pid) = i32::try_from(self.process.id())
            && let Some(group) = rustix::process::Pid::from_raw(pid)
        {
            // The driver's group holds the app too; a group that is gone is as wanted.
            let _gone = rustix::process::kill_process_group(group, rustix::process::Signal::KILL);
        }
        display::end(&mut self.process);
    }
}

impl Window {
    /// Starts display and driver and opens the app.
    ///
    /// # Errors
    ///
    /// Says which of them did not come up.
    pub async fn open(setting: Setting) -> Result<Self, Trouble> {
        let display = Display::start(setting.size)?;
        let driver = start_driver(&setting, &display).await?;
        let client = start_app(&setting.app, &driver.address).await?;
        Ok(Self { client, driver, setting, _display: display })
    }

    /// The session with the driver.
    pub(crate) fn client(&self) -> &Client {
        &self.client
    }

    /// Closes the app as a person closing its window would.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn close(self) -> Result<(), Trouble> {
        self.client.clone().close().await.map_err(Trouble::while_doing("closing the window"))
    }

    /// Kills the app with SIGKILL, as a phone that dies, and waits until it is gone.
    ///
    /// # Errors
    ///
    /// Says that the app was not running or did not go.
    pub async fn kill(&self) -> Result<(), Trouble> {
        self.kill_amid(async || (), Duration::ZERO).await
    }

    /// As [`Window::kill`], this long after something was begun, whether it has come to its end by then or not.
    ///
    /// # Errors
    ///
    /// As [`Window::kill`].
    pub async fn kill_amid(&self, deed: impl AsyncFnOnce(), after: Duration) -> Result<(), Trouble> {
        // Looked up beforehand, so that nothing but the signal lies between the moment and the kill.
        let pid = self.app_pid()?;
        let kill = async {
            tokio::time::sleep(after).await;
            rustix::process::kill_process(pid, rustix::process::Signal::KILL)
        };
        let ((), killed) = tokio::join!(deed(), kill);
        killed.map_err(|why| Trouble::Process(format!("could not kill the app: {why}")))?;
        let killed_at = Instant::now();
        while self.app_pid().is_ok() {
            if killed_at.elapsed() > PATIENCE {
                return Err(Trouble::Process("the app outlived SIGKILL".to_owned()));
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        Ok(())
    }

    /// Opens the app again on the same data folder after [`Window::kill`].
    ///
    /// # Errors
    ///
    /// Says that the window did not open.
    pub async fn reopen(&mut self) -> Result<(), Trouble> {
        // The driver must forget the dead session before it grants a new one; that the session is
        // invalid by now is what was meant to happen.
        let _forgotten = self.client.clone().close().await;
        self.client = start_app(&self.setting.app, &self.driver.address).await?;
        Ok(())
    }

    /// The number of the app's process.
    ///
    /// # Errors
    ///
    /// Says that the app is not running.
    pub(crate) fn app_pid(&self) -> Result<rustix::process::Pid, Trouble> {
        let app = std::fs::canonicalize(&self.setting.app).map_err(Trouble::with_file(&self.setting.app))?;
        children::descendants()
            .into_iter()
            .filter(|pid| std::fs::read_link(format!("/proc/{pid}/exe")).is_ok_and(|running| running == app))
            .filter(|pid| environment_names(*pid, &self.setting.data))
            .find_map(rustix::process::Pid::from_raw)
            .ok_or_else(|| Trouble::Process("the app is not running".to_owned()))
    }

    /// Waits for something to be seen.
    ///
    /// # Errors
    ///
    /// Says that it did not come, with what the screen shows instead.
    pub async fn find(&self, sought: Sought<'_>) -> Result<Element, Trouble> {
        self.find_by(sought, false, Instant::now()).await
    }

    /// As [`Window::find`], from this moment on; `ready` waits until it can be used as well.
    pub(crate) async fn find_by(&self, sought: Sought<'_>, ready: bool, since: Instant) -> Result<Element, Trouble> {
        loop {
            if let Some(first) = self.locate(sought, ready).await?.into_iter().next() {
                return Ok(first);
            }
            if since.elapsed() > PATIENCE {
                return Err(self.did_not_come(sought.to_string()).await);
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
    }

    /// Whether something can be seen just now.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn shows(&self, sought: Sought<'_>) -> Result<bool, Trouble> {
        Ok(!self.locate(sought, false).await?.is_empty())
    }

    /// All of these that can be seen just now.
    pub(crate) async fn locate(&self, sought: Sought<'_>, ready: bool) -> Result<Vec<Element>, Trouble> {
        let since = Instant::now();
        let answer = loop {
            match self.run(LOCATE, sought.arguments(ready)).await {
                // What was found was gone before the driver could name it: look again.
                Err(Trouble::Driver { source, .. }) if is_passing(&source) && since.elapsed() < PATIENCE => {}
                other => break other?,
            }
        };
        let elements = answer.as_array().into_iter().flatten().filter_map(|reference| {
            let id = reference.as_object()?.values().next()?.as_str()?;
            Some(Element::from_element_id(self.client.clone(), ElementRef::from(id.to_owned())))
        });
        Ok(elements.collect())
    }

    pub(crate) async fn did_not_come(&self, what: String) -> Trouble {
        let screen = self.outline().await.unwrap_or_else(|why| why.to_string());
        Trouble::DidNotCome { what, seconds: PATIENCE.as_secs(), screen }
    }

    /// The roles and names that can be seen, one a line, in the page's order.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn outline(&self) -> Result<String, Trouble> {
        let lines = self.run(LOCATE, json!([null, null, false, null, false])).await?;
        let lines: Vec<&str> = lines.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        Ok(lines.join("\n"))
    }

    /// All that can be seen: the outline, then every line of text. A running clock and figures that run are left out,
    /// since they may move between two looks.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn screen(&self) -> Result<String, Trouble> {
        let clocks = "return [...document.querySelectorAll('[role=timer], [data-runs=true]')].flatMap((e) => e.innerText.split('\\n'));";
        let clocks = self.run(clocks, json!([])).await?;
        let text = self.text().await?;
        let lines = text.lines().filter(|line| !line.trim().is_empty());
        let still = lines.filter(|line| !clocks.as_array().is_some_and(|all| all.iter().any(|clock| clock == line)));
        let still: Vec<&str> = still.collect();
        Ok(format!("{}\n{}", self.outline().await?, still.join("\n")))
    }

    /// Everything the page says, as one text.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn text(&self) -> Result<String, Trouble> {
        let text = self.run("return document.body ? document.body.innerText : '';", json!([])).await?;
        Ok(text.as_str().unwrap_or_default().to_owned())
    }

    /// Waits until the page says these words.
    ///
    /// # Errors
    ///
    /// Says that they did not come, with what the screen shows instead.
    pub async fn wait_for_words(&self, words: &str) -> Result<(), Trouble> {
        let looked_at = Instant::now();
        while !self.text().await?.contains(words) {
            if looked_at.elapsed() > PATIENCE {
                return Err(self.did_not_come(format!("the words \"{words}\"")).await);
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        Ok(())
    }

    /// Waits until a field holds this text.
    ///
    /// # Errors
    ///
    /// Says that it did not come to, with what the screen shows.
    pub async fn wait_for_value(&self, field: Sought<'_>, value: &str) -> Result<(), Trouble> {
        let looked_at = Instant::now();
        loop {
            let element = self.find(field).await?;
            let held = element.prop("value").await.map_err(Trouble::while_doing(format!("reading {field}")))?;
            if held.as_deref() == Some(value) {
                return Ok(());
            }
            if looked_at.elapsed() > PATIENCE {
                return Err(self.did_not_come(format!("\"{value}\" in {field}")).await);
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
    }

    /// Waits until the screen shows something else than this.
    ///
    /// # Errors
    ///
    /// Says after what it stayed the same, with what it shows.
    pub async fn wait_for_change(&self, before: &str, after: &str) -> Result<(), Trouble> {
        let looked_at = Instant::now();
        while self.screen().await? == before {
            if looked_at.elapsed() > PATIENCE {
                return Err(self.did_not_come(format!("anything to change after {after}")).await);
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        Ok(())
    }

    /// The name of the first box that can be seen and is not ticked.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn first_unticked(&self) -> Result<Option<String>, Trouble> {
        let outline = self.outline().await?;
        let unticked = outline.lines().find_map(|line| line.trim().strip_prefix("checkbox \"")?.strip_suffix('"'));
        Ok(unticked.map(ToOwned::to_owned))
    }

    /// Runs a script in the page. Only for looking: what a person does goes through clicks and keys.
    ///
    /// # Errors
    ///
    /// Says what the driver answered.
    pub async fn run(&self, script: &str, arguments: Value) -> Result<Value, Trouble> {
        let arguments = match arguments {
            Value::Array(arguments) => arguments,
            other => vec![other],
        };
        self.client.execute(script, arguments).await.map_err(Trouble::while_doing("looking at the page"))
    }

    /// What the page has complained of since it opened.
    ///
    /// # Errors
    ///
    /// Says that the driver lost the session.
    pub async fn complaints(&self) -> Result<Vec<String>, Trouble> {
        let list = self.run("return window.complaints || [];", json!([])).await?;
        Ok(list.as_array().into_iter().flatten().map(ToString::to_string).collect())
    }

    /// Writes what the window shows to a PNG file.
    ///
    /// # Errors
    ///
    /// Says that the picture could not be taken or written.
    pub async fn screenshot(&self, path: &Path) -> Result<(), Trouble> {
        let png = self.client.screenshot().await.map_err(Trouble::while_doing("taking a picture"))?;
        std::fs::write(path, png).map_err(Trouble::with_file(path))
    }
}

/// Whether a refusal is one that looking again may mend; nothing was clicked when it is.
pub(crate) fn is_passing(why: &CmdError) -> bool {
    matches!(why, CmdError::Standard(said) if matches!(
        said.error,
        ErrorStatus::StaleElementReference
            | ErrorStatus::ElementClickIntercepted
            | ErrorStatus::ElementNotInteractable
    ))
}

/// Whether a process was started for this data folder: several windows may be open at once.
fn environment_names(pid: i32, data: &Path) -> bool {
    let wanted = [b"EVENSWARD_DATA=", data.as_os_str().as_encoded_bytes()].concat();
    std::fs::read(format!("/proc/{pid}/environ"))
        .is_ok_and(|all| all.split(|&byte| byte == 0).any(|entry| entry == wanted))
}

async fn start_driver(setting: &Setting, display: &Display) -> Result<Driver, Trouble> {
    let port = free_port()?;
    // What the web view and the app say of themselves, such as that there is no sound card.
    let log = setting.data.join("window.log");
    let log = std::fs::File::create(&log).map_err(Trouble::with_file(&log))?;
    let mut command = Command::new("WebKitWebDriver");
    command
        .arg(format!("--port={port}"))
        .arg("--host=127.0.0.1")
        .env("DISPLAY", display.name())
        .env_remove("WAYLAND_DISPLAY")
        .env("GDK_BACKEND", "x11")
        .env("TAURI_WEBVIEW_AUTOMATION", "true")
        .env("EVENSWARD_DATA", &setting.data)
        // What the web view keeps for itself must not land in the operator's home.
        .env("XDG_DATA_HOME", setting.data.join("webview"))
        .env("XDG_CACHE_HOME", setting.data.join("webview"))
        .env("GTK_THEME", if setting.dusk { "Adwaita:dark" } else { "Adwaita" })
        .stdout(Stdio::null())
        .stderr(log);
    let process = children::start(&mut command, Footing::Apart).map_err(Trouble::Process)?;
    let driver = Driver { process, address: format!("http://127.0.0.1:{port}") };
    let started_at = Instant::now();
    while tokio::net::TcpStream::connect(("127.0.0.1", port)).await.is_err() {
        if started_at.elapsed() > PATIENCE {
            return Err(Trouble::Process("WebKitWebDriver does not answer".to_owned()));
        }
        tokio::time::sleep(LOOK_AGAIN).await;
    }
    Ok(driver)
}

fn free_port() -> Result<u16, Trouble> {
    TcpListener::bind(("127.0.0.1", 0))
        .and_then(|listener| listener.local_addr())
        .map(|address| address.port())
        .map_err(|why| Trouble::Process(format!("no free port: {why}")))
}

async fn start_app(app: &Path, driver: &str) -> Result<Client, Trouble> {
    let mut wishes = serde_json::Map::new();
    wishes.insert("webkitgtk:browserOptions".to_owned(), json!({"binary": app, "args": []}));
    let mut builder = ClientBuilder::new(HttpConnector::new());
    // The driver itself waits for an app that never comes up for as long as it takes.
    let opening = tokio::time::timeout(PATIENCE, builder.capabilities(wishes).connect(driver)).await;
    let client = opening.map_err(|_late| {
        Trouble::Process(format!("{} opened no window in {} s", app.display(), PATIENCE.as_secs()))
    })??;
    client
        .execute(LISTEN_FOR_COMPLAINTS, Vec::new())
        .await
        .map_err(Trouble::while_doing("listening for complaints"))?;
    Ok(client)
}
