//! `roll`: one side of a seam along the other, for scripts and for checking.

use std::sync::Arc;

use std::path::Path;

use serde_json::{Value as Json, json};

use super::{Done, FINE, NO, Stopped, asked, internal, named, open, report};
use crate::compute::{Engine, InView, Model, RunPart, run_of};
use crate::finish::{finish, roll};
use crate::language::nearest;
use crate::texts::{own_length, own_number, say};

/// Prints notches of a seam on both sides, and how the pieces lie when side two is rolled that far.
pub(super) fn run(
    path: &Path,
    seam: &str,
    (size, view): (Option<&str>, Option<&str>),
    to: f64,
    as_json: bool,
) -> Result<Done, Stopped> {
    let draft = open(path)?.draft;
    let model = Engine::new().compute_guarded(&draft, &[]).map_err(|f| internal(&f))?;
    let draft = Arc::clone(&model.draft);
    let place = model.plan.seams.iter().position(|s| *s.name == *seam).ok_or_else(|| {
        let near = nearest(seam, draft.seams.iter().map(|s| s.name.as_str()));
        Stopped::trouble(match near {
            Some(near) => say!("cli-roll-seam-near", seam, near),
            None => {
                let all: Vec<&str> = draft.seams.iter().map(|s| s.name.as_str()).collect();
                say!("cli-roll-seam", seam, all = all.join(", "))
            }
        })
    })?;
    let all = finish(&draft, &model);
    let at = at(&model, place, size, view)?;
    let (model, finished, case) = (&model.of_views()[at.view], &all.of_views()[at.view], at.case);
    if !model.plan.has_seam(place) {
        return Err(Stopped::trouble(say!("cli-roll-view", view = model.view(), seam)));
    }
    let notches = finished.notches.get(case).map_or(&[][..], |n| n.as_slice());
    let Some(rolled) = roll(model, case, place, &finished.sewing, notches, to) else {
        return Ok(Done {
            messages: named(&say!("cli-roll-cannot", seam, file = path.display().to_string())),
            exit: NO,
            ..Done::default()
        });
    };
    if as_json {
        let side = |i: usize| -> Json {
            let run = run_of(model, &model.plan, case, model.plan.seams[place].sides[i]);
            let paths = run.into_iter().flat_map(|r| r.parts).map(|p| match p {
                RunPart::Edge(edge, ..) => json!(edge.curve.to_path().to_svg()),
                RunPart::Strip(length) => json!(length),
            });
            json!({ "length": rolled.lengths[i], "at": rolled.at[i], "parts": paths.collect::<Vec<_>>() })
        };
        let notches: Vec<Json> = rolled
            .notches
            .iter()
            .map(|n| json!({ "name": n.name, "places": n.places, "points": n.points.map(|p| p.map(|p| [p.x, p.y])), "gap": n.gap }))
            .collect();
        let pieces: Vec<Json> = rolled
            .pieces
            .iter()
            .map(|p| json!({ "piece": &*model.plan.frames()[p.frame].name, "rolled": p.rolled, "motion": p.motion.as_coeffs() }))
            .collect();
        let whole = json!({ "sides": [side(0), side(1)], "notches": notches, "pieces": pieces, "contact": [rolled.contact.x, rolled.contact.y] });
        return Ok(Done {
            data: serde_json::to_string(&whole).unwrap_or_default() + "\n",
            exit: FINE,
            ..Done::default()
        });
    }
    let length = |mm: f64| own_length(mm, draft.display);
    let apart = |mm: f64| format!("{} mm", own_number(format_args!("{mm:.2}")));
    let mut rows =
        vec![vec![say!("cli-roll-notch"), say!("field-side-one"), say!("field-side-two"), say!("cli-roll-apart")]];
    for notch in &rolled.notches {
        let name = if notch.name.is_empty() { say!("fact-match-mark") } else { notch.name.to_string() };
        rows.push(vec![name, length(notch.places[0]), length(notch.places[1]), apart(notch.gap)]);
    }
    rows.push(vec![
        say!("cli-roll-end"),
        length(rolled.lengths[0]),
        length(rolled.lengths[1]),
        apart(rolled.lengths[0] - rolled.lengths[1]),
    ]);
    Ok(Done { data: report::table(&rows), exit: FINE, ..Done::default() })
}

/// The case in which a seam is rolled: the one that is asked for; in the first view that has the seam, in the base size.
fn at(model: &Model, seam: usize, size: Option<&str>, view: Option<&str>) -> Result<InView, Stopped> {
    let views: Vec<String> = view.iter().map(|v| (*v).to_owned()).collect();
    let base = model.plan.cases.base.unwrap_or(0);
    let all = match size {
        Some(size) => asked(model, &[size.to_owned()], &views)?,
        None => asked(model, &[], &views)?.into_iter().filter(|at| at.case == base).collect(),
    };
    let has = |at: &&InView| model.of_views()[at.view].plan.has_seam(seam);
    Ok(all.iter().find(has).or(all.first()).copied().unwrap_or(InView { view: 0, case: base }))
}
