//! What is found in several views, told once.

use super::model::Model;
use crate::base::Finding;

/// The findings of all views as one list: what all views that have its thing say alike is told once, without a view; what only some say
/// names them.
pub(crate) fn told_once(views: &[Model], lists: Vec<Vec<Finding>>) -> Vec<Finding> {
    let mut out: Vec<(Finding, Vec<usize>)> = Vec::new();
    for (view, list) in lists.into_iter().enumerate() {
        // Each behind what stood before it in this view, and behind what only earlier views say there.
        let mut place = 0;
        for (i, finding) in list.iter().enumerate() {
            let known = (0..out.len()).find(|k| out[*k].0 == *finding && !out[*k].1.contains(&view));
            if let Some(k) = known {
                out[k].1.push(view);
                place = k + 1;
                continue;
            }
            while out.get(place).is_some_and(|(f, _)| !list[i + 1..].contains(f)) {
                place += 1;
            }
            out.insert(place, (finding.clone(), vec![view]));
            place += 1;
        }
    }
    let dressed = out.into_iter().map(|(mut finding, said)| {
        let all = (0..views.len()).all(|v| said.contains(&v) || !views[v].plan.knows(&finding.place));
        if !all && finding.place.view.is_empty() {
            let names: Vec<&str> = said.iter().map(|v| views[*v].view()).collect();
            finding.place.view = names.join(", ");
        }
        finding
    });
    dressed.collect()
}
