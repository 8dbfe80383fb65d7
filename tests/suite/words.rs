//! One Fluent catalogue serves the screens and Rust: it parses, says each thing once, and has a word for every code that
//! the trade and the use cases can send.
//!
//! Codes are read out of the sources, where they stand as literals in the few calls that make a sentence. A code put
//! together from parts at run time is held by its family instead: every member that the sources name has its word.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser::parse;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display())) {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files(&path, ending));
        } else if path.extension().is_some_and(|extension| extension == ending) {
            found.push(path);
        }
    }
    found.sort();
    found
}

fn catalogue() -> Vec<(PathBuf, String)> {
    let found = files(&root().join("ui/src/lib/words/en"), "ftl");
    assert!(!found.is_empty(), "there is no catalogue");
    found.into_iter().map(|path| (path.clone(), std::fs::read_to_string(path).unwrap())).collect()
}

/// The variables that a pattern names.
fn variables(pattern: &Pattern<&str>, into: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            in_expression(expression, into);
        }
    }
}

fn in_expression(expression: &Expression<&str>, into: &mut BTreeSet<String>) {
    match expression {
        Expression::Inline(inline) => in_inline(inline, into),
        Expression::Select { selector, variants } => {
            in_inline(selector, into);
            for variant in variants {
                variables(&variant.value, into);
            }
        }
    }
}

fn in_inline(inline: &InlineExpression<&str>, into: &mut BTreeSet<String>) {
    match inline {
        InlineExpression::VariableReference { id } => {
            into.insert(id.name.to_owned());
        }
        InlineExpression::Placeable { expression } => in_expression(expression, into),
        _ => {}
    }
}

/// Every message with the variables it names.
fn messages() -> BTreeMap<String, BTreeSet<String>> {
    let mut known = BTreeMap::new();
    for (path, text) in catalogue() {
        let resource = parse(text.as_str()).unwrap_or_else(|(_, errors)| panic!("{}: {errors:?}", path.display()));
        for entry in &resource.body {
            let Entry::Message(message) = entry else { continue };
            let mut named = BTreeSet::new();
            variables(message.value.as_ref().expect("a message says something"), &mut named);
            let before = known.insert(message.id.name.to_owned(), named);
            assert!(before.is_none(), "{} stands twice, again in {}", message.id.name, path.display());
        }
    }
    known
}

/// The text between `call(` and the literal's closing quote, for every call of that name.
fn literals_after(source: &str, call: &str) -> Vec<String> {
    source
        .match_indices(call)
        // A method of that name parses a field: its first argument is the field.
        .filter(|(at, _)| !source[..*at].ends_with('.'))
        .filter_map(|(at, _)| {
            let rest = source[at + call.len()..].trim_start().strip_prefix('"')?;
            let literal = &rest[..rest.find('"')?];
            let is_code = literal.contains(|letter: char| letter.is_ascii_lowercase())
                && literal
                    .chars()
                    .all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-');
            is_code.then(|| literal.to_owned())
        })
        .collect()
}

/// The last of the five arguments of `Check::new` is its sentence, and it may be a variable: then its literals stand in the
/// tuples before it, which are read as well.
fn codes_of_checks(source: &str) -> Vec<String> {
    source
        .match_indices("Verdict::")
        .filter_map(|(at, _)| {
            let line = source[at..].lines().next()?;
            let (_, rest) = line.split_once(", \"")?;
            Some(rest[..rest.find('"')?].to_owned())
        })
        .filter(|code| code.contains('-'))
        .collect()
}

const CALLS: &[&str] =
    &["Said::new(", "Sentence::new(", " said(", "(said(", "line(", "optional(", "section(", "Argument::Code("];

fn sources() -> Vec<(PathBuf, String)> {
    ["core", "exchange", "companion"]
        .iter()
        .flat_map(|name| files(&root().join("src-tauri/crates").join(name).join("src"), "rs"))
        .filter(|path| !path.to_string_lossy().contains("/src/tests"))
        .map(|path| {
            let text = std::fs::read_to_string(&path).unwrap();
            // Doc examples and unit tests name codes of their own.
            let code = text.split("#[cfg(test)]\nmod tests").next().unwrap_or_default();
            let code: Vec<&str> = code.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
            (path, code.join("\n"))
        })
        .collect()
}

#[test]
fn the_catalogue_parses_and_says_each_thing_once() {
    assert!(messages().len() > 1_000, "only {} messages were found", messages().len());
}

#[test]
fn every_code_that_is_sent_has_its_word() {
    let known = messages();
    let mut missing = BTreeSet::new();
    let mut n_seen = 0;
    for (path, source) in sources() {
        let in_calls = CALLS.iter().flat_map(|call| literals_after(&source, call));
        let in_checks = codes_of_checks(&source);
        for code in in_calls.chain(in_checks) {
            n_seen += 1;
            if !known.contains_key(&code) && !NOT_SAID.contains(&code.as_str()) {
                missing.insert(format!("{code} ({})", path.file_name().unwrap().to_string_lossy()));
            }
        }
    }
    assert!(n_seen > 300, "only {n_seen} codes were found: the sources are written otherwise now");
    assert!(missing.is_empty(), "no word for: {missing:#?}");
}

/// Literals in such calls that are no sentences: sources of limits, and fields of the operator's form.
const NOT_SAID: &[&str] = &["common-practice", "certificate", "firm", "phone"];

#[test]
fn rust_can_say_every_message() {
    let language: unic_langid::LanguageIdentifier = "en-GB".parse().unwrap();
    let mut bundle = FluentBundle::new(vec![language]);
    bundle.set_use_isolating(false);
    for (path, text) in catalogue() {
        let resource = FluentResource::try_new(text).unwrap_or_else(|_| panic!("{}", path.display()));
        bundle.add_resource(resource).unwrap_or_else(|errors| panic!("{}: {errors:?}", path.display()));
    }
    for (id, named) in messages() {
        let mut args = FluentArgs::new();
        for name in &named {
            args.set(name.clone(), FluentValue::from(7));
        }
        let mut errors = Vec::new();
        let message = bundle.get_message(&id).unwrap_or_else(|| panic!("no {id}"));
        let said = bundle.format_pattern(message.value().unwrap(), Some(&args), &mut errors);
        assert!(errors.is_empty(), "{id}: {errors:?}");
        assert!(!said.trim().is_empty(), "{id} says nothing");
    }
}
