//! `compare`: what differs between two drafts.

use std::path::Path;

use serde_json::{Map, Value as Json, json};

use super::{CompareCall, Done, FINE, NO, Stopped, internal, open};
use crate::base::{DisplayUnit, Language};
use crate::compute::{CaseError, Engine, Model};
use crate::document::{Draft, Part};
use crate::finish::{Finished, finish};
use crate::output::{Change, Comparison, Difference, Missing, Pair, Side, Thing, Unit, compare};
use crate::texts::{self, own, say, speaking};

/// A draft computed and finished.
struct Whole {
    draft: Draft,
    model: Model,
    finished: Finished,
}

impl Whole {
    fn of(path: &Path) -> Result<Self, Stopped> {
        let draft = open(path)?.draft;
        let model = Engine::new().compute_guarded(&draft, &[]).map_err(|f| internal(&f))?;
        let finished = finish(&draft, &model);
        Ok(Self { draft, model, finished })
    }

    fn side(&self) -> Side<'_> {
        Side { draft: &self.draft, model: &self.model, finished: &self.finished }
    }

    fn has(&self, frame: &str) -> bool {
        self.model.plan.frames().iter().any(|f| *f.name == *frame)
    }
}

pub(super) fn run(call: &CompareCall) -> Result<Done, Stopped> {
    let (old, new) = (Whole::of(&call.old)?, Whole::of(&call.new)?);
    if let Some(piece) = call.pieces.iter().find(|p| !old.has(p) && !new.has(p)) {
        let known: Vec<&str> = new.model.plan.frames().iter().map(|f| &*f.name).collect();
        return Err(Stopped::trouble(say!("cli-compare-piece", piece, known = known.join(", "))));
    }
    // What is for buyers is in the language of the draft; scripts look for words in JSON.
    let language = match (call.errata, call.json) {
        (true, _) => new.draft.language,
        (_, true) => Language::English,
        _ => own(),
    };
    let told = speaking(language, || texts::outward(|| told(call, &old, &new)));
    told.map_err(|e| Stopped::trouble(e.to_string()))
}

/// The differences, as they are asked for.
fn told(call: &CompareCall, old: &Whole, new: &Whole) -> Result<Done, CaseError> {
    let compared = compare(old.side(), new.side(), &call.sizes, &call.views)?.only(&call.pieces);
    let exit = if compared.counts().0 == 0 { FINE } else { NO };
    let unit = new.draft.display;
    let data = if call.json {
        as_json(&compared, unit)
    } else if call.errata {
        compared.errata(&old.draft, &new.draft)
    } else {
        compared.text(unit)
    };
    Ok(Done { data, exit, ..Done::default() })
}

fn as_json(compared: &Comparison, unit: DisplayUnit) -> String {
    let (differences, notes) = compared.counts();
    let list: Vec<Json> = compared.differences.iter().map(|d| difference(d, compared, unit)).collect();
    let missing: Vec<Json> = compared
        .not_compared
        .iter()
        .map(|n| json!({ "part": n.part.word(), "name": full_name(&n.part), "what": n.what, "sizes": n.sizes }))
        .collect();
    let whole = json!({
        "version": 1,
        "counts": { "difference": differences, "note": notes },
        "sizes": compared.sizes.list,
        "differences": list,
        "not_compared": missing,
    });
    serde_json::to_string_pretty(&whole).unwrap_or_default() + "\n"
}

fn full_name(part: &Part) -> String {
    match part {
        Part::Inner(frame, _, name) => format!("{frame}.{name}"),
        Part::Step(i) => format!("{}", i + 1),
        other => other.name().to_owned(),
    }
}

fn difference(d: &Difference, compared: &Comparison, unit: DisplayUnit) -> Json {
    let (change, was, is) = match &d.change {
        Change::Came => ("came", Json::Null, Json::Null),
        Change::Went => ("went", Json::Null, Json::Null),
        Change::Renamed(name) => ("renamed", json!(name), json!(d.part.name())),
        Change::Other(_) => ("changed", Json::Null, Json::Null),
        Change::Written(old, new) => ("written", json!(old), json!(new)),
    };
    let mut out = Map::new();
    let is_size = matches!(d.part, Part::Draft) && d.what.is_empty();
    let name = if is_size { d.called.trim_start_matches("size ").to_owned() } else { full_name(&d.part) };
    out.insert("part".to_owned(), json!(if is_size { "size" } else { d.part.word() }));
    out.insert("name".to_owned(), json!(name));
    out.insert("piece".to_owned(), json!(d.part.frame()));
    out.insert("view".to_owned(), if d.view.is_empty() { Json::Null } else { json!(d.view) });
    out.insert("what".to_owned(), if d.what.is_empty() { Json::Null } else { json!(d.what) });
    out.insert("change".to_owned(), json!(change));
    out.insert("note".to_owned(), json!(d.is_note));
    out.insert("old".to_owned(), was);
    out.insert("new".to_owned(), is);
    let mut sizes = Map::new();
    if let Change::Other(pairs) = &d.change {
        for p in pairs {
            if p.size.is_empty() {
                out.insert("old".to_owned(), thing(&p.old));
                out.insert("new".to_owned(), thing(&p.new));
            } else {
                sizes.insert(p.size.clone(), pair(p));
            }
        }
    }
    out.insert("sizes".to_owned(), Json::Object(sizes));
    out.insert("message".to_owned(), json!(d.sentences(&compared.sizes, unit)));
    Json::Object(out)
}

/// What was and is in a size: mm, degrees, plain.
fn pair(p: &Pair) -> Json {
    let mut out = Map::new();
    let is_line = [&p.old, &p.new].iter().any(|t| matches!(t, Ok(Thing::Line(_))));
    if !is_line {
        out.insert("old".to_owned(), thing(&p.old));
        out.insert("new".to_owned(), thing(&p.new));
    }
    for (name, side) in [("old_missing", &p.old), ("new_missing", &p.new)] {
        if let Err(missing) = side {
            out.insert(name.to_owned(), json!(word(*missing)));
        }
    }
    if let (Some(amount), Ok(Thing::Number(_, unit))) = (p.amount(), &p.new) {
        out.insert("amount".to_owned(), json!(outward(amount, *unit)));
    }
    if let Some(apart) = p.apart {
        out.insert("apart".to_owned(), json!(apart));
    }
    if let Some([start, end]) = p.moved() {
        out.insert("start_moved".to_owned(), json!(start));
        out.insert("end_moved".to_owned(), json!(end));
    }
    if p.turned != 0.0 {
        out.insert("turned".to_owned(), json!(p.turned.to_degrees()));
    }
    Json::Object(out)
}

fn word(missing: Missing) -> &'static str {
    match missing {
        Missing::NotSaid => "not said",
        Missing::NotComputed => "not computed",
    }
}

fn outward(v: f64, unit: Unit) -> f64 {
    if unit == Unit::Angle { v.to_degrees() } else { v }
}

fn thing(side: &Result<Thing, Missing>) -> Json {
    match side {
        Ok(Thing::Number(v, unit)) => json!(outward(*v, *unit)),
        Ok(Thing::Place(p)) => json!([p.x, p.y]),
        Ok(Thing::Words(words)) => json!(words),
        Ok(Thing::Line(_)) | Err(_) => Json::Null,
    }
}
