//! `finish`: cut lines, notches, marks and grain lines, for scripts and for checking.

use std::sync::Arc;

use std::path::Path;

use kurbo::{BezPath, Point, Shape};
use serde_json::{Map, Value as Json, json};

use super::{Done, FINE, NO, Stopped, asked, internal, open};
use crate::compute::{Engine, InView};
use crate::finish::{FinishedPiece, Symmetry, cut_words, finish, unfolded};
use crate::output::fold_of;
use crate::texts::{own_number, owned, say};

/// Prints what is cut: JSON with `--json` (mm, x right, y down), else a line for each cut.
pub(super) fn run(
    path: &Path,
    (sizes, views): (&[String], &[String]),
    whole: bool,
    as_json: bool,
) -> Result<Done, Stopped> {
    let draft = open(path)?.draft;
    let model = Engine::new().compute_guarded(&draft, &[]).map_err(|f| internal(&f))?;
    let draft = Arc::clone(&model.draft);
    let finished = finish(&draft, &model);
    let (mut all, mut lines, mut missing) = (Map::new(), String::new(), false);
    for InView { view, case } in asked(&model, sizes, views)? {
        let (model, finished) = (&model.of_views()[view], &finished.of_views()[view]);
        let size = model.address(case);
        let mut of_size = Map::new();
        for (frame, piece) in draft.pieces.iter().enumerate().filter(|(f, _)| model.plan.has_frame(*f)) {
            let made = finished.cases[case][frame].as_ref();
            missing |= made.is_none_or(|p| p.cuts.iter().any(|c| c.outline.is_none()));
            let Some(made) = made else {
                of_size.insert(piece.name.clone(), Json::Null);
                lines.push_str(&format!("{size}\t{}\t{}\n", piece.name, say!("cli-finish-not")));
                continue;
            };
            for cut in &made.cuts {
                let area = cut.outline.as_ref().map_or(0.0, |o| o.area().abs() / 100.0);
                let words = words(model, frame, made, cut.place);
                let area = say!("change-square-cm", area = own_number(format_args!("{area:.1}")));
                lines.push_str(&format!("{size}\t{}\t{words}\t{area}\n", piece.name));
            }
            of_size.insert(
                piece.name.clone(),
                of_piece(
                    model,
                    frame,
                    made,
                    whole.then(|| fold_of(model, case, &model.plan.frames()[frame])).flatten(),
                ),
            );
        }
        all.insert(size, Json::Object(of_size));
    }
    let exit = if missing { NO } else { FINE };
    let is_nothing = lines.is_empty() && !as_json;
    let messages = if is_nothing { format!("{}\n", say!("cli-finish-nothing")) } else { String::new() };
    let data = if as_json { serde_json::to_string(&all).unwrap_or_default() + "\n" } else { lines };
    Ok(Done { data, messages, exit })
}

/// How often and from what a piece is cut.
fn words(model: &crate::compute::Model, frame: usize, made: &FinishedPiece, place: usize) -> String {
    let cut = model.plan.frames()[frame].finishing.cuts.get(place);
    let told = |cut| owned(|| cut_words(cut, Symmetry::of(&made.stitch, 0.0)));
    cut.map_or_else(|| say!("cli-finish-unsaid"), told)
}

fn path(path: &BezPath) -> Json {
    json!(path.to_svg())
}

fn at(p: Point) -> Json {
    json!([p.x, p.y])
}

fn of_piece(model: &crate::compute::Model, frame: usize, made: &FinishedPiece, fold: Option<(Point, Point)>) -> Json {
    let plan = &model.plan.frames()[frame];
    let whole = |half: &BezPath| fold.map_or_else(|| half.clone(), |fold| unfolded(half, fold));
    let edge = |i: usize| model.plan.nodes[plan.edges[i] as usize].part.edge.to_string();
    let cuts: Vec<Json> = made
        .cuts
        .iter()
        .map(|cut| {
            let told = plan.finishing.cuts.get(cut.place);
            json!({
                "material": told.map(|c| c.material.to_string()),
                "count": told.map(|c| c.count),
                "words": words(model, frame, made, cut.place),
                "outline": cut.outline.as_ref().map(|o| path(&whole(o))),
                "trimmed": cut.trimmed.map(at),
                "grain": cut.grain.map(|g| [at(g[0]), at(g[1])]),
            })
        })
        .collect();
    let notches: Vec<Json> = made
        .notches
        .iter()
        .map(|n| {
            let strokes: Vec<Json> = n.strokes.iter().map(|s| json!([at(s[0]), at(s[1])])).collect();
            let seam = &*model.plan.seams[n.seam].name;
            json!({ "seam": seam, "name": &*n.name, "edge": edge(n.edge), "strokes": strokes, "allowance": n.allowance })
        })
        .collect();
    let marks: Vec<Json> = made
        .marks
        .iter()
        .map(|m| json!({ "name": &*plan.finishing.marks[m.place].name, "number": m.number, "at": at(m.at) }))
        .collect();
    let places: Vec<Json> = made.places.iter().map(path).collect();
    json!({ "stitch": path(&whole(&made.stitch)), "cuts": cuts, "notches": notches, "marks": marks, "places": places, "pleats": made.pleats.iter().map(path).collect::<Vec<_>>() })
}
