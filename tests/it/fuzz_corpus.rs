//! The corpora of the fuzz targets (`tests/fuzz`) through the same assertions.

#[path = "../fuzz/bodies/mod.rs"]
mod bodies;

fn each(target: &str, body: fn(&[u8])) {
    let folder = format!("{}/tests/fuzz/corpus/{target}", env!("CARGO_MANIFEST_DIR"));
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|f| f.unwrap().path()).collect();
    files.sort();
    assert!(files.len() >= 5, "{target}");
    for path in files {
        let data = std::fs::read(&path).unwrap();
        let result = std::panic::catch_unwind(|| body(&data));
        assert!(result.is_ok(), "{}", path.display());
    }
}

#[test]
fn formula() {
    each("formula", bodies::formula);
}

#[test]
fn file() {
    each("file", bodies::file);
}

#[test]
fn edits() {
    each("edits", bodies::edits);
}

#[test]
fn brought() {
    each("brought", bodies::brought);
}

#[test]
fn published() {
    each("published", bodies::published);
}

#[test]
fn packed() {
    each("packed", bodies::packed);
}
