//! One Fluent catalogue serves the screens and Rust: it parses, says each thing once in every language, and has a word
//! for every code that the trade and the use cases can send.
//!
//! The languages say the same things from the same arguments: a figure that one of them shows and another swallows
//! would be a defect of the trade, not of style.
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

/// The full languages: their folders beside each other in the catalogue.
fn languages() -> Vec<String> {
    let mut found: Vec<String> = std::fs::read_dir(root().join("ui/src/lib/words"))
        .unwrap()
        .map(|entry| entry.unwrap())
        .filter(|entry| entry.path().is_dir())
        .map(|entry| entry.file_name().into_string().unwrap())
        .collect();
    found.sort();
    found
}

fn catalogue(language: &str) -> Vec<(PathBuf, String)> {
    let found = files(&root().join("ui/src/lib/words").join(language), "ftl");
    assert!(!found.is_empty(), "there is no catalogue of {language}");
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

/// The words of a pattern in every form it can take, without what stands for a variable.
fn words(pattern: &Pattern<&str>, into: &mut Vec<String>) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => into.push((*value).to_owned()),
            PatternElement::Placeable { expression: Expression::Select { variants, .. } } => {
                for variant in variants {
                    assert!(!variant.value.elements.is_empty(), "a variant says nothing");
                    words(&variant.value, into);
                }
            }
            PatternElement::Placeable { expression: Expression::Inline(_) } => {}
        }
    }
}

/// A message of one language.
struct Message {
    file: String,
    variables: BTreeSet<String>,
    words: String,
}

/// Every message of a language.
fn messages(language: &str) -> BTreeMap<String, Message> {
    let mut known = BTreeMap::new();
    for (path, text) in catalogue(language) {
        let file = path.file_name().unwrap().to_str().unwrap().to_owned();
        let resource = parse(text.as_str()).unwrap_or_else(|(_, errors)| panic!("{}: {errors:?}", path.display()));
        for entry in &resource.body {
            let Entry::Message(message) = entry else { continue };
            let pattern = message.value.as_ref().expect("a message says something");
            let mut named = BTreeSet::new();
            variables(pattern, &mut named);
            let mut said = Vec::new();
            words(pattern, &mut said);
            let message_known = Message { file: file.clone(), variables: named, words: said.join(" ") };
            let before = known.insert(message.id.name.to_owned(), message_known);
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
fn the_catalogue_parses_and_says_each_thing_once_in_every_language() {
    assert!(languages().len() > 1, "there is one language only");
    for language in languages() {
        let n_messages = messages(&language).len();
        assert!(n_messages > 1_000, "only {n_messages} messages were found in {language}");
    }
}

/// Where two catalogues differ in what they say and from which arguments.
fn differences(one: &BTreeMap<String, Message>, other: &BTreeMap<String, Message>) -> Vec<String> {
    let mut found = Vec::new();
    for (id, message) in one {
        match other.get(id) {
            None => found.push(format!("{id} is not said")),
            Some(same) if same.variables != message.variables => {
                found.push(format!("{id} is said from {:?}, not from {:?}", same.variables, message.variables));
            }
            Some(same) if same.file != message.file => {
                found.push(format!("{id} stands in {}, not in {}", same.file, message.file));
            }
            Some(_) => {}
        }
    }
    found.extend(other.keys().filter(|id| !one.contains_key(*id)).map(|id| format!("{id} is said alone")));
    found
}

#[test]
fn all_languages_say_the_same_things_from_the_same_arguments() {
    let english = messages("en");
    for language in languages() {
        let found = differences(&english, &messages(&language));
        assert!(found.is_empty(), "{language}: {found:#?}");
    }
    let mut breach = messages("en");
    breach.remove("app-name");
    breach.get_mut("kit-drained-of").unwrap().variables.clear();
    assert_eq!(differences(&english, &breach).len(), 2, "a breach is not noticed");
}

/// Words that English sentences are joined with and that no German sentence has.
const ENGLISH_ALONE: &[&str] = &[
    "the", "and", "of", "with", "is", "are", "from", "this", "your", "it", "be", "to", "for", "by", "no", "not", "or",
];

/// The same in both, and why: the rest must differ.
const SAME_IN_BOTH: &[(&str, &str)] = &[
    ("app-name", "a name"),
    ("uk-code-of-practice-2006", "the title of a publication"),
    ("settings-language-en", "a language is named as its speakers name it"),
    ("settings-language-de", "a language is named as its speakers name it"),
    ("label-form", "the same word"),
    ("nozzle-colour-orange", "the same word"),
    ("stage-plan", "the same word"),
    ("walk-pause", "the same word"),
    ("pause-wind", "the same word"),
    ("look-vibration", "the same word"),
];

/// A message that another language left in English, if it did.
fn left_in_english(id: &str, english: &str, other: &str) -> bool {
    if SAME_IN_BOTH.iter().any(|(same, _)| *same == id) {
        return false;
    }
    let is_word = |word: &&str| word.len() > 3 && word.chars().all(char::is_alphabetic);
    let is_same = english == other && english.split_whitespace().any(|word| is_word(&word));
    let is_joined = other
        .split(|letter: char| !letter.is_alphanumeric())
        .any(|word| ENGLISH_ALONE.contains(&word.to_lowercase().as_str()));
    is_same || is_joined
}

#[test]
fn nothing_is_left_in_english() {
    let english = messages("en");
    for language in languages().into_iter().filter(|language| language != "en") {
        let found: Vec<String> = messages(&language)
            .iter()
            .filter(|(id, message)| left_in_english(id, &english[*id].words, &message.words))
            .map(|(id, message)| format!("{id} = {}", message.words))
            .collect();
        assert!(found.is_empty(), "{language}: {found:#?}");
    }
    assert!(left_in_english("a", "Begin a visit", "Begin a visit"), "a breach is not noticed");
    assert!(left_in_english("a", "Wash the boots", "Wasche the Stiefel"), "a breach is not noticed");
    assert!(!left_in_english("a", "{ $n } mL", "{ $n } mL"), "units are no English");
}

#[test]
fn every_code_that_is_sent_has_its_word() {
    let known = messages("en");
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
fn rust_can_say_every_message_in_every_language() {
    for name in languages() {
        let language: unic_langid::LanguageIdentifier = name.parse().unwrap();
        let mut bundle = FluentBundle::new(vec![language]);
        bundle.set_use_isolating(false);
        for (path, text) in catalogue(&name) {
            let resource = FluentResource::try_new(text).unwrap_or_else(|_| panic!("{}", path.display()));
            bundle.add_resource(resource).unwrap_or_else(|errors| panic!("{}: {errors:?}", path.display()));
        }
        for (id, message) in messages(&name) {
            let mut args = FluentArgs::new();
            for variable in &message.variables {
                args.set(variable.clone(), FluentValue::from(7));
            }
            let mut errors = Vec::new();
            let found = bundle.get_message(&id).unwrap_or_else(|| panic!("no {id} in {name}"));
            let said = bundle.format_pattern(found.value().unwrap(), Some(&args), &mut errors);
            assert!(errors.is_empty(), "{name}, {id}: {errors:?}");
            assert!(!said.trim().is_empty(), "{id} says nothing in {name}");
        }
    }
}
