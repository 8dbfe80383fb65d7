//! `cargo xtask VERB`: reads the verb, runs it, and leaves nothing running behind it.

use std::process::ExitCode;

use clap::{Parser, Subcommand, ValueEnum};
use xtask::set_up::Wants;
use xtask::{bench, checks, children, reference, set_up, shots, test, try_out};

/// The verbs of the house. Each installs what it needs first and can be stopped at any time with
/// Ctrl-C: nothing it started is left running.
#[derive(Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask", arg_required_else_help = true)]
struct Arguments {
    #[command(subcommand)]
    verb: Verb,
}

#[derive(Subcommand)]
enum Verb {
    /// Install what is missing and build the user interface; every other verb does what it needs of this first.
    ///
    /// On Debian and Ubuntu missing system packages are installed by name, as root or through sudo,
    /// after saying what each is for. Elsewhere the list is printed and the verb stops. Node 20 or
    /// newer must be there already. The reference libraries of the tests go into target/reference/.
    SetUp,
    /// Run every check. This is what continuous integration runs.
    ///
    /// Prints the seconds each lane took; a lane that cannot run fails. The last line counts the
    /// tests: `N passed, N failed`.
    Test {
        /// How much to run.
        #[arg(value_enum, default_value_t = Width::Ci)]
        width: Width,
    },
    /// Open the app on a fresh copy of the invented firm.
    ///
    /// Never opens the operator's own file. Without a display it starts a virtual one and drives a
    /// whole visit in the real window by itself: a picture of every step, record.json and summary.txt
    /// are left in target/try/. The exit code is 0 only if the visit reached its closed record.
    Try,
    /// Hold our figures against the published ones.
    ///
    /// One line a check: topic, our value, the published one, tolerance, source, kind and verdict.
    /// The last line reads `N checks, N passed`; any failure gives a non-zero exit code.
    Checks,
    /// Measure speed and size in release builds; JSON on standard output.
    ///
    /// A tap until it is committed against the bare cost of one SQLite commit of the same bytes,
    /// replay of a long visit, planning of real and of growing lawns and the same cut done by GEOS,
    /// start against an empty window built the same way, size of the UI's script and of the program.
    /// In the real window: a tap until its answer is painted against a tap in an empty window, and the
    /// memory after a walk of 5,000 events against its start. Progress goes to standard error.
    Bench {
        /// What to measure.
        #[arg(value_enum, default_value_t = Part::All)]
        part: Part,
    },
    /// Take screenshots of every screen into target/shots/, with a contact sheet.
    ///
    /// At 360x740, 412x915 and 1280x800, in daylight and at dusk.
    Shots,
}

#[derive(Clone, Copy, ValueEnum)]
enum Part {
    /// Everything.
    All,
    /// Taps until they are committed, and replay.
    Journal,
    /// Measuring and planning, beside GEOS.
    Planning,
    /// Taps in the real window until they are painted, and the memory of a long walk.
    Walk,
    /// Starting the app, and an empty window beside it.
    Start,
    /// Sizes of the program and of the UI's script.
    Sizes,
}

#[derive(Clone, Copy, ValueEnum)]
enum Width {
    /// Format, lints and unit tests: for while you work.
    Quick,
    /// Everything: also browser tests and the real window.
    Ci,
    /// Everything, with many more cases in property and crash tests.
    Long,
}

fn run(verb: &Verb) -> Result<(), String> {
    match verb {
        Verb::SetUp => set_up::set_up(Wants::Driving).and_then(|()| reference::set_up()),
        Verb::Test { width } => test::test(match width {
            Width::Quick => test::Width::Quick,
            Width::Ci => test::Width::Ci,
            Width::Long => test::Width::Long,
        }),
        Verb::Try => try_out::try_out(),
        Verb::Checks => checks::checks(),
        Verb::Bench { part } => bench::bench(match part {
            Part::All => bench::Part::All,
            Part::Journal => bench::Part::Journal,
            Part::Planning => bench::Part::Planning,
            Part::Walk => bench::Part::Walk,
            Part::Start => bench::Part::Start,
            Part::Sizes => bench::Part::Sizes,
        }),
        Verb::Shots => shots::shots(),
    }
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let outcome = children::keep_house().and_then(|()| run(&arguments.verb));
    children::leave(outcome)
}
