//! The program around the server: opens a folder, fills it with questions from a file if told to, and serves it.

use std::error::Error;
use std::io::Write as _;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::Parser;
use evensward_companion::doorway::Doorway;
use evensward_companion::dto::ask::Ask;
use evensward_companion::system;
use evensward_serve::{Door, Pages, routes};
use tokio::net::TcpListener;

/// Serves the companion's screens on this machine alone, to a browser.
#[derive(Debug, Parser)]
#[command(version)]
struct Arguments {
    /// The folder that holds the data; it is made if it is not there.
    #[arg(long)]
    data: PathBuf,
    /// The port to listen on; 0 takes any free one. The address is printed.
    #[arg(long, default_value_t = 0)]
    port: u16,
    /// The folder with the built screens.
    #[arg(long, required_unless_present = "load_only")]
    ui: Option<PathBuf>,
    /// Asks all questions of this file first: a JSON array, as in demo-data/firm.json. Asked twice, it comes to the same.
    #[arg(long)]
    load: Option<PathBuf>,
    /// Ends after that, and serves nothing.
    #[arg(long, requires = "load")]
    load_only: bool,
}

fn main() -> ExitCode {
    tracing_subscriber::fmt().with_max_level(tracing::Level::INFO).with_writer(std::io::stderr).init();
    match run(Arguments::parse()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            tracing::error!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: Arguments) -> Result<(), Box<dyn Error>> {
    let mut doorway = Doorway::new(arguments.data, system::ports());
    if let Some(file) = arguments.load {
        load(&mut doorway, &file)?;
    }
    match arguments.ui {
        Some(ui) if !arguments.load_only => {
            let pages = Pages::read(&ui).map_err(|error| format!("no screens in {}: {error}", ui.display()))?;
            let door: Door = Box::new(move |ask| doorway.ask(ask));
            tokio::runtime::Runtime::new()?.block_on(serve(door, pages, arguments.port))
        }
        _ => Ok(()),
    }
}

/// Asks every question of a file, and stops at the first that is refused.
#[expect(clippy::disallowed_methods, reason = "the file is named on the command line, and read before serving")]
fn load(doorway: &mut Doorway, file: &Path) -> Result<(), Box<dyn Error>> {
    let refused = |why: String| format!("{}: {why}", file.display());
    let text = std::fs::read(file).map_err(|error| refused(error.to_string()))?;
    let questions: Vec<Ask> = serde_json::from_slice(&text).map_err(|error| refused(error.to_string()))?;
    let n_questions = questions.len();
    for (number, question) in (1..).zip(questions) {
        doorway.ask(question).map_err(|failure| refused(format!("question {number} was refused: {failure:#?}")))?;
    }
    tracing::info!(n_questions, file = %file.display(), "loaded");
    Ok(())
}

async fn serve(door: Door, pages: Pages, port: u16) -> Result<(), Box<dyn Error>> {
    let listener = TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port))).await?;
    let address = listener.local_addr()?;
    let routes = routes(door, pages, address);
    let mut out = std::io::stdout();
    writeln!(out, "http://{address}/")?;
    // Whoever started this reads the address from a pipe, and waits for it.
    out.flush()?;
    axum::serve(listener, routes).with_graceful_shutdown(told_to_end()).await?;
    Ok(())
}

/// Waits for Ctrl-C or, where there is such a thing, the signal to terminate.
async fn told_to_end() {
    #[cfg(unix)]
    let terminated = async {
        match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
            Ok(mut signal) => {
                signal.recv().await;
            }
            Err(error) => {
                tracing::warn!(%error, "only Ctrl-C will end this");
                std::future::pending::<()>().await;
            }
        }
    };
    #[cfg(not(unix))]
    let terminated = std::future::pending::<()>();
    tokio::select! {
        interrupted = tokio::signal::ctrl_c() => {
            if let Err(error) = interrupted {
                tracing::warn!(%error, "the signal to end can't be heard");
            }
        }
        () = terminated => {}
    }
}
