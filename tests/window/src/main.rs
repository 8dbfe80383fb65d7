//! `evensward-window`: the program that the verbs start to drive the real window.
//!
//! It ends everything it started on success, on failure and on a signal, by the same sweep as the
//! verbs, so that it may also be run by itself.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, Parser, Subcommand};
use evensward_window::display::Size;
use evensward_window::drive::Manner;
use evensward_window::hand::Hand;
use evensward_window::trouble::Trouble;
use evensward_window::{cases, start, taps, visit};
use xtask::children;

/// Drives the real window, on a display of its own.
#[derive(Parser)]
struct Arguments {
    #[command(subcommand)]
    task: Task,
}

#[derive(Args, Clone)]
struct Programs {
    /// The app's program; by default the one cargo built beside this.
    #[arg(long)]
    app: Option<PathBuf>,
    /// The loopback server's program, which fills a data folder; by default the one beside this.
    #[arg(long)]
    serve: Option<PathBuf>,
}

#[derive(Subcommand)]
enum Task {
    /// Run the cases whose names hold one of these words; all of them without any.
    Test {
        #[command(flatten)]
        programs: Programs,
        /// Where pictures of failures go.
        #[arg(long)]
        out: Option<PathBuf>,
        /// Words in the names of the cases to run.
        names: Vec<String>,
    },
    /// Drive the whole visit and leave pictures, record.json and summary.txt.
    Visit {
        #[command(flatten)]
        programs: Programs,
        /// Where they go.
        #[arg(long)]
        out: PathBuf,
    },
    /// Measure how long a tap takes until its answer is painted, and the memory of a long walk.
    Taps {
        #[command(flatten)]
        programs: Programs,
        /// The program with an empty window, built the same way as the app.
        #[arg(long)]
        empty: PathBuf,
        /// How many taps.
        #[arg(long, default_value_t = 500)]
        taps: usize,
        /// How many events the long walk has.
        #[arg(long, default_value_t = 5_000)]
        events: u64,
    },
    /// Measure how long a program takes from its start until its window shows a heading.
    Start {
        /// The program to start.
        #[arg(long)]
        app: PathBuf,
        /// The loopback server's program, to start on the invented firm; without it on nothing.
        #[arg(long)]
        serve: Option<PathBuf>,
        /// How many times.
        #[arg(long, default_value_t = 9)]
        runs: usize,
    },
}

impl Programs {
    fn found(self) -> Result<cases::Programs, Trouble> {
        let beside = |name| xtask::place::program("debug", name).map_err(Trouble::Process);
        Ok(cases::Programs {
            app: self.app.map_or_else(|| beside("evensward"), Ok)?,
            serve: self.serve.map_or_else(|| beside("evensward-serve"), Ok)?,
        })
    }
}

async fn run(task: Task) -> Result<(), Trouble> {
    match task {
        Task::Test { programs, out, names } => {
            let out = out.unwrap_or_else(|| xtask::place::left_behind("test/window"));
            cases::run(&programs.found()?, &out, &names).await
        }
        Task::Visit { programs, out } => {
            let programs = programs.found()?;
            visit::drive_whole(&programs, &out, Size::PHONE, Manner::Pictures, Hand::Pointer).await?;
            println!("The visit reached its closed record: {}", out.display());
            Ok(())
        }
        Task::Taps { programs, empty, taps: n_taps, events } => {
            taps::measure(&programs.found()?, &empty, n_taps, events).await
        }
        Task::Start { app, serve, runs } => start::measure(&app, serve.as_deref(), runs).await,
    }
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let outcome = children::keep_house().and_then(|()| {
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()
            .map_err(|why| format!("could not start the runtime: {why}"))?;
        runtime.block_on(run(arguments.task)).map_err(|why| why.to_string())
    });
    children::leave(outcome)
}
