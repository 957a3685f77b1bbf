//! Reading and writing a large draft beside serde and the `ron` crate alone.
//!
//! Ours also walks over the text first (limits, format, version, comments, errors with a place and what to do), keeps the path for messages,
//! and writes the standard form; the other reads into the same types by the same derived code, with the two extensions that the format uses, and
//! writes its pretty form. What each reads is compared, and what the other writes is read by ours.

use serde_json::json;
use tracewheel::document::Draft;
use tracewheel::file;

use crate::{generate, millis, told};

fn options() -> ron::Options {
    ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .with_default_extension(ron::extensions::Extensions::UNWRAP_VARIANT_NEWTYPES)
}

pub fn run(rounds: usize) {
    let made = |pieces, sizes| {
        generate::draft(&generate::Options {
            pieces,
            points: 60,
            sizes,
            found: 2 * pieces,
            broken: 0.0,
            views: 0,
            seed: 7,
        })
    };
    for (name, draft) in [
        ("the check block", file::read(include_str!("../../../examples/bodice-sleeve.ron")).unwrap().draft),
        ("a smock in ten sizes", file::read(include_str!("../../../examples/work-smock.ron")).unwrap().draft),
        ("30 pieces x 60 points x 20 sizes", made(30, 20)),
        ("120 pieces x 60 points x 20 sizes", made(120, 20)),
    ] {
        let text = file::write(&draft);
        let options = options();
        let pretty = || options.to_string_pretty(&draft, ron::ser::PrettyConfig::default()).unwrap();
        let plain: Draft = options.from_str(&text).unwrap();
        let own = file::read(&text).unwrap().draft;
        let theirs = pretty();
        let again = file::read(&theirs).map(|o| o.draft);
        let (mut reads, mut writes) = (Vec::new(), Vec::new());
        for _ in 0..rounds {
            reads.push([
                millis(|| drop(file::read(&text).unwrap())),
                millis(|| drop(options.from_str::<Draft>(&text).unwrap())),
            ]);
            writes.push([millis(|| drop(file::write(&draft))), millis(|| drop(pretty()))]);
        }
        told(&json!({
            "name": name, "bytes": [text.len(), theirs.len()], "read_ms": reads, "write_ms": writes,
            "same_read": plain == own, "own_reads_theirs": again.is_ok_and(|d| d == draft),
        }));
    }
}
