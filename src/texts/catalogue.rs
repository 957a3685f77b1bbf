//! The catalogues: parsed once, each for its language. The one place that knows the crate which reads them.

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};

use super::{Language, Told};

type Bundle = FluentBundle<FluentResource>;

macro_rules! files {
    ($folder:literal) => {
        files!($folder: "published" "engine" "reading" "lays" "findings" "session" "panels" "window" "command_line")
    };
    ($folder:literal: $($file:literal)*) => {
        &[$(include_str!(concat!("../../assets/texts/", $folder, "/", $file, ".ftl"))),*]
    };
}

fn sources(language: Language) -> &'static [&'static str] {
    match language {
        Language::English => files!("en"),
        Language::German => files!("de"),
    }
}

/// The texts of a language. An entry that cannot be read is left out, which tests find.
fn bundle(language: Language) -> &'static Bundle {
    static PARSED: [OnceLock<Bundle>; Language::ALL.len()] = [const { OnceLock::new() }; Language::ALL.len()];
    PARSED[language as usize].get_or_init(|| {
        let mut bundle = Bundle::new_concurrent(language.word().parse().into_iter().collect());
        // Marks around what is put in are for scripts of two directions; here they would be letters that no font has.
        bundle.set_use_isolating(false);
        for source in sources(language) {
            let (resource, faults) = match FluentResource::try_new((*source).to_owned()) {
                Ok(resource) => (resource, Vec::new()),
                Err((resource, faults)) => (resource, faults),
            };
            debug_assert!(faults.is_empty(), "{language:?}: {faults:?}");
            let added = bundle.add_resource(resource);
            debug_assert!(added.is_ok(), "{language:?}: {added:?}");
        }
        bundle
    })
}

/// A text with its values; none where the language has no such text or it wants other values.
pub(super) fn text(language: Language, id: &str, values: &[(&str, Told<'_>)]) -> Option<String> {
    let bundle = bundle(language);
    let pattern = bundle.get_message(id).and_then(|m| m.value());
    debug_assert!(pattern.is_some(), "{language:?} has no text {id}");
    let mut args = FluentArgs::with_capacity(values.len());
    for (name, told) in values {
        match told {
            Told::Words(words) => args.set(*name, FluentValue::from(*words)),
            Told::Count(count) => args.set(*name, *count),
        }
    }
    let mut faults = Vec::new();
    let out = bundle.format_pattern(pattern?, Some(&args), &mut faults).into_owned();
    debug_assert!(faults.is_empty(), "{language:?}, {id}: {faults:?}");
    faults.is_empty().then_some(out)
}

/// A text as it stands, with `{name}` where a value will be.
pub(super) fn unfilled(language: Language, id: &str) -> Option<String> {
    let bundle = bundle(language);
    let pattern = bundle.get_message(id).and_then(|m| m.value())?;
    // The names of what is lacking are written in their places, as `{$name}`.
    Some(bundle.format_pattern(pattern, None, &mut Vec::new()).replace("{$", "{"))
}
