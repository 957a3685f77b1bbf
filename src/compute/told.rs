//! What is found in several views, told once.

use super::model::Model;
use crate::base::Finding;

/// The findings of all views as one list: what all views that have its thing say alike is told once, without a view; what only some say
/// names them.
pub(crate) fn told_once(views: &[Model], lists: Vec<Vec<Finding>>) -> Vec<Finding> {
    let mut out: Vec<(Finding, Vec<usize>)> = Vec::new();
    for (view, list) in lists.into_iter().enumerate() {
        // In order, each behind what stood before it in this view.
        let mut place = 0;
        let mut taken = Vec::new();
        for finding in list {
            let known = (0..out.len()).find(|i| out[*i].0 == finding && !taken.contains(i));
            match known {
                Some(i) => {
                    out[i].1.push(view);
                    taken.push(i);
                    place = i + 1;
                }
                None => {
                    taken.iter_mut().filter(|i| **i >= place).for_each(|i| *i += 1);
                    out.insert(place, (finding, vec![view]));
                    taken.push(place);
                    place += 1;
                }
            }
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
