//! Every process that a verb starts, and the promise that none of them outlives it.
//!
//! A browser or a driver starts processes of its own, some of them in groups or sessions of their
//! own, so ending the direct child is not enough. On Linux the verb therefore adopts every orphan
//! below it (`PR_SET_CHILD_SUBREAPER`), and the sweep walks `/proc` for all its descendants: they
//! are asked to end, given a short grace, then killed. The sweep runs on success, on failure and on
//! SIGINT, SIGTERM and SIGHUP. Nothing here may start a process once the sweep has begun.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::{BufRead as _, BufReader};
use std::os::unix::process::CommandExt as _;
use std::process::{Child, Command, ExitCode, ExitStatus, Stdio};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, WaitOptions, getpid, kill_process, kill_process_group};
use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
use signal_hook::iterator::Signals;

/// How long a process may take to tidy up after it was asked to end.
const GRACE: Duration = Duration::from_millis(2_500);
/// How often the sweep looks whether anything is left.
const LOOK_AGAIN: Duration = Duration::from_millis(25);

/// The process groups started so far; `None` once the sweep has begun and no more may start.
static GROUPS: Mutex<Option<Vec<i32>>> = Mutex::new(Some(Vec::new()));

/// Adopts orphans and answers signals with a sweep. Call it once, before any child is started.
///
/// # Errors
///
/// Says why the system refused to let this process watch for signals or adopt orphans.
pub fn keep_house() -> Result<(), String> {
    #[cfg(target_os = "linux")]
    rustix::process::set_child_subreaper(Some(getpid()))
        .map_err(|why| format!("could not adopt the processes started below: {why}"))?;
    let mut signals =
        Signals::new([SIGINT, SIGTERM, SIGHUP]).map_err(|why| format!("could not watch for Ctrl-C: {why}"))?;
    std::thread::spawn(move || {
        if let Some(signal) = signals.forever().next() {
            eprintln!("\nStopped: ending everything that was started.");
            sweep();
            std::process::exit(128 + signal);
        }
    });
    Ok(())
}

/// Ends every process below this one and starts none any more. Returns how many had to be ended.
pub fn sweep() -> usize {
    let groups = GROUPS.lock().unwrap_or_else(PoisonError::into_inner).take().unwrap_or_default();
    let n_left = descendants().len();
    for &group in &groups {
        if let Some(group) = Pid::from_raw(group) {
            // A group that has already ended is no failure: that is what is wanted.
            let _gone = kill_process_group(group, Signal::TERM);
        }
    }
    signal_all(&descendants(), Signal::TERM);
    let asked_at = Instant::now();
    loop {
        let left = descendants();
        if left.is_empty() {
            // Adopted orphans that have ended are taken leave of, so that no zombie is handed on.
            while let Ok(Some(_)) = rustix::process::wait(WaitOptions::NOHANG) {}
            return n_left;
        }
        if asked_at.elapsed() > GRACE {
            signal_all(&left, Signal::KILL);
        }
        std::thread::sleep(LOOK_AGAIN);
    }
}

/// Ends the program: sweeps, says why if something failed, and gives the exit code. After a signal the
/// thread that answered it has the last word, since whatever failed then failed because of the sweep.
pub fn leave(outcome: Result<(), String>) -> ExitCode {
    yield_to_the_sweep();
    sweep();
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("\n{why}");
            ExitCode::FAILURE
        }
    }
}

fn signal_all(pids: &[i32], signal: Signal) {
    for pid in pids.iter().filter_map(|&pid| Pid::from_raw(pid)) {
        // It may have ended since the look at `/proc`; the next look tells.
        let _gone = kill_process(pid, signal);
    }
}

/// Every living process below this one, near or far; zombies are not living.
#[must_use]
pub fn descendants() -> Vec<i32> {
    below(getpid().as_raw_nonzero().get())
}

/// Every living process below another.
#[must_use]
pub fn below(pid: i32) -> Vec<i32> {
    let mut children_of: BTreeMap<i32, Vec<(i32, bool)>> = BTreeMap::new();
    let entries = std::fs::read_dir("/proc").into_iter().flatten().flatten();
    for entry in entries {
        let Some(pid) = entry.file_name().to_str().and_then(|name| name.parse().ok()) else {
            continue;
        };
        let Ok(stat) = std::fs::read_to_string(entry.path().join("stat")) else {
            continue;
        };
        // The name in brackets may itself hold brackets and spaces, so count from the last one.
        let Some((_, rest)) = stat.rsplit_once(") ") else {
            continue;
        };
        let mut fields = rest.split(' ');
        let alive = !matches!(fields.next(), Some("Z" | "X"));
        if let Some(parent) = fields.next().and_then(|parent| parent.parse().ok()) {
            children_of.entry(parent).or_default().push((pid, alive));
        }
    }
    let mut found = Vec::new();
    let mut to_visit = vec![pid];
    while let Some(parent) = to_visit.pop() {
        for (pid, alive) in children_of.remove(&parent).unwrap_or_default() {
            to_visit.push(pid);
            if alive {
                found.push(pid);
            }
        }
    }
    found
}

/// How a started process meets the terminal.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Footing {
    /// In a process group of its own, with no standard input.
    Apart,
    /// In our group with our standard input: only for `sudo`, which may ask for a password.
    WithTerminal,
}

/// Starts a process that the sweep will end.
///
/// # Errors
///
/// Names the program and says why it could not start, or that everything is being ended.
pub fn start(command: &mut Command, footing: Footing) -> Result<Child, String> {
    let mut groups = GROUPS.lock().unwrap_or_else(PoisonError::into_inner);
    let Some(groups) = groups.as_mut() else {
        return Err(format!("not starting {}: everything is being ended", named(command)));
    };
    if footing == Footing::Apart {
        command.process_group(0).stdin(Stdio::null());
    }
    let child = command.spawn().map_err(|why| format!("could not start {}: {why}", named(command)))?;
    if footing == Footing::Apart
        && let Ok(pid) = i32::try_from(child.id())
    {
        groups.push(pid);
    }
    Ok(child)
}

/// Runs a process to its end with its output shown as it comes.
///
/// # Errors
///
/// Says that the program could not start, or with what it ended when that was not success.
pub fn run(command: &mut Command) -> Result<(), String> {
    let status = wait(&mut start(command, Footing::Apart)?, command)?;
    succeeded(status, command)
}

/// As [`run`], with the program's output on our standard error: progress, not an answer.
///
/// # Errors
///
/// As [`run`].
pub fn run_aside(command: &mut Command) -> Result<(), String> {
    run(command.stdout(std::io::stderr()))
}

/// As [`run`], with the terminal at hand for a password.
///
/// # Errors
///
/// As [`run`].
pub fn run_with_terminal(command: &mut Command) -> Result<(), String> {
    let status = wait(&mut start(command, Footing::WithTerminal)?, command)?;
    succeeded(status, command)
}

/// Runs a process to its end, shows its standard output as it comes, and hands it back with the
/// way it ended, so that a runner's own count can be read whether it passed or not.
///
/// # Errors
///
/// Says that the program could not start or be waited for.
pub fn run_and_read(command: &mut Command) -> Result<(String, Result<(), String>), String> {
    command.stdout(Stdio::piped());
    let mut child = start(command, Footing::Apart)?;
    let mut text = String::new();
    if let Some(stdout) = child.stdout.take() {
        for line in BufReader::new(stdout).split(b'\n') {
            let line = line.map_err(|why| format!("lost the output of {}: {why}", named(command)))?;
            let line = String::from_utf8_lossy(&line);
            println!("{line}");
            // Writing to a String cannot fail.
            let _written = writeln!(text, "{line}");
        }
    }
    let status = wait(&mut child, command)?;
    Ok((text, succeeded(status, command)))
}

/// Runs a quiet question to its end and hands back what it answered on standard output.
///
/// # Errors
///
/// Says that the program could not start, or how it failed, with what it wrote to standard error.
pub fn ask(command: &mut Command) -> Result<String, String> {
    ask_bytes(command).map(|bytes| String::from_utf8_lossy(&bytes).into_owned())
}

/// As [`ask`], for an answer that is not text.
///
/// # Errors
///
/// As [`ask`].
pub fn ask_bytes(command: &mut Command) -> Result<Vec<u8>, String> {
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    let child = start(command, Footing::Apart)?;
    let output = child.wait_with_output();
    yield_to_the_sweep();
    let output = output.map_err(|why| format!("could not wait for {}: {why}", named(command)))?;
    succeeded(output.status, command).map_err(|why| {
        let complaint = String::from_utf8_lossy(&output.stderr);
        format!("{why}\n{}", complaint.trim_end())
    })?;
    Ok(output.stdout)
}

fn wait(child: &mut Child, command: &Command) -> Result<ExitStatus, String> {
    let status = child.wait();
    yield_to_the_sweep();
    status.map_err(|why| format!("could not wait for {}: {why}", named(command)))
}

/// A child that ended because of the sweep has not failed: the thread that sweeps ends the program,
/// so this one must not go on to complain or to start the next thing.
fn yield_to_the_sweep() {
    while GROUPS.lock().unwrap_or_else(PoisonError::into_inner).is_none() {
        std::thread::park();
    }
}

fn succeeded(status: ExitStatus, command: &Command) -> Result<(), String> {
    if status.success() { Ok(()) } else { Err(format!("{} ended with {status}", named(command))) }
}

/// Arguments named in a message; a list of files may be hundreds long.
const N_ARGUMENTS_NAMED: usize = 12;

/// The command as one would type it, for messages.
fn named(command: &Command) -> String {
    let mut line = command.get_program().to_string_lossy().into_owned();
    for argument in command.get_args().take(N_ARGUMENTS_NAMED) {
        line.push(' ');
        line.push_str(&argument.to_string_lossy());
    }
    if command.get_args().len() > N_ARGUMENTS_NAMED {
        line.push_str(" …");
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Set in the copy of this test program that plays the verb.
    const PLAY_THE_VERB: &str = "EVENSWARD_PLAY_THE_VERB";

    /// Not a test of its own: the copy that the next test starts and stops runs it as a verb that
    /// has started a process, which has started another in a session of its own.
    #[test]
    fn the_verb_that_is_stopped() {
        let Ok(marker) = std::env::var(PLAY_THE_VERB) else {
            return;
        };
        keep_house().unwrap();
        let script = format!("setsid sh -c 'trap \"\" TERM; : {marker}; while :; do sleep 1; done' & wait");
        run(Command::new("sh").args(["-c", &script])).unwrap();
    }

    fn with_marker(marker: &str) -> Vec<String> {
        std::fs::read_dir("/proc")
            .unwrap()
            .flatten()
            .filter_map(|entry| std::fs::read_to_string(entry.path().join("cmdline")).ok())
            .filter(|command_line| command_line.contains(marker))
            .collect()
    }

    fn stopped_by(signal: Signal, marker: &str) {
        let mut verb = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "children::tests::the_verb_that_is_stopped", "--nocapture"])
            .env(PLAY_THE_VERB, marker)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let started_at = Instant::now();
        // The plain case first: without a signal the far process does run.
        while with_marker(&format!(": {marker}; while")).len() < 2 {
            assert!(started_at.elapsed() < Duration::from_secs(20), "the verb started nothing");
            std::thread::sleep(LOOK_AGAIN);
        }
        kill_process(Pid::from_child(&verb), signal).unwrap();
        let status = verb.wait().unwrap();
        assert_eq!(status.code(), Some(128 + signal.as_raw()));
        assert_eq!(with_marker(marker), Vec::<String>::new());
    }

    #[test]
    fn a_verb_stopped_by_ctrl_c_leaves_nothing_running() {
        stopped_by(Signal::INT, "sward-stopped-by-ctrl-c");
    }

    #[test]
    fn a_verb_asked_to_end_leaves_nothing_running() {
        stopped_by(Signal::TERM, "sward-asked-to-end");
    }

    #[test]
    fn a_process_that_fails_is_named_with_the_way_it_ended() {
        let why = run(Command::new("sh").args(["-c", "exit 3"])).unwrap_err();
        assert_eq!(why, "sh -c exit 3 ended with exit status: 3");
    }

    #[test]
    fn output_is_handed_back_even_when_the_process_fails() {
        let (text, end) = run_and_read(Command::new("sh").args(["-c", "echo said; exit 1"])).unwrap();
        assert_eq!(text, "said\n");
        assert!(end.is_err());
    }
}
